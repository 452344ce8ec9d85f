package ampersheet.sheet;

import java.util.Objects;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * The name of one sheet, short enough to be typed from paper: {@code A7K3M-007-R}.
 *
 * <p>Two characters stand for the plan, three for the version of its templates, then comes the seat number, then a
 * check character by ISO/IEC 7064, MOD 37,36. The characters are those of a base 32 without look-alikes (no I, L, O,
 * U). The seat is padded with zeros to three digits, and with one more for as long as the check character would be a
 * look-alike or would miss a swap of neighbours behind the plan's five characters, which that check does not rule out
 * by itself. For some five characters no padding catches a swap of the last of them with the zero behind the hyphen;
 * then that one is let pass: it leads to the characters of another plan, or to a letter where the seat should be.
 *
 * @param plan two characters
 * @param templates three characters
 * @param seat from 1 to {@value #LAST_SEAT}
 */
public record SheetId(String plan, String templates, int seat) {
    public static final int LAST_SEAT = 999_999;
    /** What looks like one, as it is printed. */
    public static final Pattern PRINTED = Pattern.compile("[0-9A-Za-z]{5}-[0-9]{3,9}-[0-9A-Za-z]");

    static final String ALPHABET = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
    static final int PLAN_CHARACTERS = 2;
    static final int TEMPLATE_CHARACTERS = 3;
    /** As many as {@link #abbreviate} can tell apart. */
    static final int MOST_CHARACTERS = 8;

    private static final int LEAST_SEAT_DIGITS = 3;
    private static final int MOST_SEAT_DIGITS = 9;
    /** Where the hyphen stands. */
    private static final int SET_CHARACTERS = PLAN_CHARACTERS + TEMPLATE_CHARACTERS;

    public SheetId {
        Objects.requireNonNull(plan);
        Objects.requireNonNull(templates);
        if (plan.length() != PLAN_CHARACTERS || templates.length() != TEMPLATE_CHARACTERS) {
            throw new IllegalArgumentException("a sheet ID begins with two and three characters: " + plan + templates);
        }
        if (seat < 1 || seat > LAST_SEAT) {
            throw new IllegalArgumentException("seats are numbered from 1 to " + LAST_SEAT + ": " + seat);
        }
    }

    /**
     * What all IDs of one set of sheets begin with, of one as it is typed; empty for anything but a whole ID without a
     * slip.
     */
    public static Optional<String> set(String typed) {
        return SheetIdReader.set(typed);
    }

    /** What all IDs of the same set begin with. */
    public String set() {
        return plan + templates;
    }

    /** Whether two of these beginnings stand for the same version of the same templates. */
    public static boolean haveTemplatesAlike(String set, String other) {
        return set.length() == SET_CHARACTERS
                && other.length() == SET_CHARACTERS
                && set.substring(PLAN_CHARACTERS).equals(other.substring(PLAN_CHARACTERS));
    }

    /** As printed: the five characters of the set, the seat, the check character. */
    @Override
    public String toString() {
        String digits = seatDigits();
        return plan + templates + "-" + digits + "-" + CheckCharacter.of(plan + templates + digits);
    }

    /** As printed, without hyphens. */
    String characters() {
        String digits = seatDigits();
        return plan + templates + digits + CheckCharacter.of(plan + templates + digits);
    }

    private String seatDigits() {
        StringBuilder digits = new StringBuilder(Integer.toString(seat));
        while (digits.length() < LEAST_SEAT_DIGITS) {
            digits.insert(0, '0');
        }
        // All swaps; all but that over the hyphen; and for one seat of many thousands beyond 99 999, none.
        for (int first : new int[] {SET_CHARACTERS - 1, SET_CHARACTERS, Integer.MAX_VALUE - 1}) {
            StringBuilder padded = new StringBuilder(digits);
            while (padded.length() <= MOST_SEAT_DIGITS) {
                if (catchesEverySwap(padded.toString(), first)) {
                    return padded.toString();
                }
                padded.insert(0, '0');
            }
        }
        throw new IllegalStateException("no check character for " + plan + templates + " and seat " + seat);
    }

    /** @param first number of the first character that is exchanged with its neighbour */
    private boolean catchesEverySwap(String digits, int first) {
        String protectedPart = plan + templates + digits;
        char check = CheckCharacter.of(protectedPart);
        if (ALPHABET.indexOf(check) < 0) {
            return false;
        }
        String whole = protectedPart + check;
        for (int i = first; i + 1 < whole.length(); i++) {
            if (whole.charAt(i) != whole.charAt(i + 1) && CheckCharacter.fits(swapped(whole, i))) {
                return false;
            }
        }
        return true;
    }

    /** The text with the characters at {@code i} and {@code i + 1} exchanged. */
    static String swapped(String text, int i) {
        return text.substring(0, i) + text.charAt(i + 1) + text.charAt(i) + text.substring(i + 2);
    }

    /** The first {@code characters} × 5 bits of a hash in hexadecimal, in the alphabet of sheet IDs. */
    static String abbreviate(String hexadecimalHash, int characters) {
        long bits = Long.parseLong(hexadecimalHash.substring(0, 10), 16);
        StringBuilder out = new StringBuilder();
        for (int i = 0; i < characters; i++) {
            out.append(ALPHABET.charAt((int) (bits >>> (35 - 5 * i)) & 31));
        }
        return out.toString();
    }
}
