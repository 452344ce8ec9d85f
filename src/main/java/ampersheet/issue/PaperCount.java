package ampersheet.issue;

import java.util.Optional;

/**
 * The paper that a run of handouts takes, told before any is used.
 *
 * @param sheets how many learners have one
 * @param least sides of a sheet
 * @param most sides of a sheet
 * @param all sides of all sheets
 * @param keys sides of answers and keys
 * @param host sides of the host's page
 * @param compact sides of the first sheet in the compact profile, where another one was asked for
 */
public record PaperCount(int sheets, int least, int most, int all, int keys, int host, Optional<Integer> compact) {
    /** What an office printer makes on both sides; common practice, no source. */
    private static final int SIDES_A_MINUTE = 20;

    PaperCount withHost(int sides) {
        return new PaperCount(sheets, least, most, all, keys, sides, compact);
    }

    /** Of all. */
    public int sides() {
        return all + keys + host;
    }

    /** Printed on both sides. */
    public int leaves() {
        return sides() / 2;
    }

    public int minutes() {
        return Math.max(1, (sides() + SIDES_A_MINUTE - 1) / SIDES_A_MINUTE);
    }

    /** {@code 12 sheets of 8 sides, 2 sides of answers …: 49 leaves, about 5 minutes …}. */
    public String sentence() {
        String each = least == most ? count(least, "side") : least + " to " + count(most, "side");
        return count(sheets, "sheet") + " of " + each + (keys > 0 ? ", " + count(keys, "side") + " of answers" : "")
                + (host > 0 ? ", " + count(host, "side") + " for the host" : "") + ": "
                + (leaves() == 1 ? "1 leaf" : leaves() + " leaves") + " printed on both sides, about "
                + count(minutes(), "minute") + " at " + SIDES_A_MINUTE + " sides a minute.";
    }

    /** What would take less paper, or empty. */
    public Optional<String> saving() {
        if (compact.isPresent() && compact.get() < most) {
            return Optional.of("With --profile compact a sheet takes " + count(compact.get(), "side") + ".");
        }
        return keys > 2 && keys >= sheets
                ? Optional.of("With --keys grid the answers of all stand on a few sides instead of " + keys + ".")
                : Optional.empty();
    }

    private static String count(int number, String what) {
        return number + " " + what + (number == 1 ? "" : "s");
    }
}
