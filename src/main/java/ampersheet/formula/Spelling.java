package ampersheet.formula;

import ampersheet.quantity.Letters;
import java.util.Collection;
import java.util.Optional;
import java.util.TreeSet;

/** Finds what a mistyped name was probably meant to be. */
public final class Spelling {
    private Spelling() {}

    /**
     * The known name the fewest single-character slips away: at most two, and fewer for short names, of which most are
     * two slips apart. Equal distances go to the first in alphabetical order.
     */
    public static Optional<String> nearest(String typed, Collection<String> known) {
        int fewest = typed.length() <= 1 ? 0 : typed.length() <= 3 ? 1 : 2;
        String found = null;
        for (String candidate : new TreeSet<>(known)) {
            int slips = Letters.sameButForCase(typed, candidate) ? 0 : slips(typed, candidate);
            if (slips < fewest || slips == fewest && found == null) {
                fewest = slips;
                found = candidate;
            }
        }
        return Optional.ofNullable(found);
    }

    /** {@code a, b or c}, in alphabetical order; at most twelve, or all where only one more would be left out. */
    public static String list(Collection<String> names) {
        StringBuilder text = new StringBuilder();
        int listed = 0;
        int all = names.size();
        for (String name : new TreeSet<>(names)) {
            if (listed == 12 && all > 13) {
                return text.append(" and ").append(all - listed).append(" more").toString();
            }
            if (listed > 0) {
                text.append(listed == all - 1 ? " or " : ", ");
            }
            text.append(name);
            listed++;
        }
        return text.toString();
    }

    /** Insertions, deletions and exchanges that turn one into the other (Levenshtein distance). */
    private static int slips(String a, String b) {
        int[] above = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            above[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int[] row = new int[b.length() + 1];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int exchanged = above[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                row[j] = Math.min(exchanged, Math.min(above[j], row[j - 1]) + 1);
            }
            above = row;
        }
        return above[b.length()];
    }
}
