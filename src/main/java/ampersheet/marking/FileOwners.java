package ampersheet.marking;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.sheet.ClassSheets;
import ampersheet.sheet.Roster;
import ampersheet.sheet.SheetId;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Guesses by a file's name whose it is, for files in which nothing could be read: so that their sender is not told that
 * nothing came in. No mark hangs on it.
 */
final class FileOwners {
    /** A name is short; whoever fills it with IDs means none of them. */
    private static final int MOST_IDS = 3;

    private static final Pattern SEAT = Pattern.compile("(?i)seat[-_ ]?0*([0-9]{1,6})(?![0-9])");
    private static final Pattern NO_LETTERS = Pattern.compile("[^\\p{L}]+");

    private final TreeSet<Integer> seats = new TreeSet<>();

    /** @param files of which nothing else is known */
    FileOwners(List<FileNote> files, ClassSheets sheets, Roster roster) {
        List<String> names =
                files.stream().filter(FileNote::hasErrors).map(FileNote::name).toList();
        for (String name : names) {
            byId(name, sheets).or(() -> bySeat(name)).ifPresent(seats::add);
        }
        List<Set<String>> words = names.stream()
                .map(name -> (Set<String>) new TreeSet<>(words(name.substring(0, Math.max(name.lastIndexOf('.'), 0)))))
                .toList();
        for (Roster.Seat seat : roster.seats()) {
            List<String> name = words(seat.name());
            if (!name.isEmpty() && words.stream().anyMatch(of -> of.containsAll(name))) {
                seats.add(seat.number());
            }
        }
    }

    /** Whether a file that could not be read bears this seat's number, sheet or name. */
    boolean sentFrom(int seat) {
        return seats.contains(seat);
    }

    private static Optional<Integer> byId(String name, ClassSheets sheets) {
        Matcher id = SheetId.PRINTED.matcher(name);
        for (int i = 0; i < MOST_IDS && id.find(); i++) {
            try {
                return Optional.of(sheets.readId(id.group()).seat());
            } catch (DiagnosticException another) {
                // Not an ID of this class; the name may hold more of its kind.
                continue;
            }
        }
        return Optional.empty();
    }

    private static Optional<Integer> bySeat(String name) {
        Matcher seat = SEAT.matcher(name);
        return seat.find() ? Optional.of(Integer.parseInt(seat.group(1))) : Optional.empty();
    }

    private static List<String> words(String text) {
        String plain = Normalizer.normalize(text, Normalizer.Form.NFD)
                .replaceAll("\\p{M}+", "")
                .toLowerCase(Locale.ROOT);
        List<String> words = new ArrayList<>();
        for (String word : NO_LETTERS.split(plain)) {
            if (!word.isEmpty()) {
                words.add(word);
            }
        }
        return words;
    }
}
