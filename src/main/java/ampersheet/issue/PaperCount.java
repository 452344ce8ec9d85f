package ampersheet.issue;

import java.util.Optional;

/**
 * The paper that a run of handouts takes, told before any is used.
 *
 * @param sheets how many learners have one
 * @param least sides of a sheet
 * @param most sides of a sheet
 * @param all sides of all sheets
 * @param besides what is printed besides the sheets
 * @param compact sides of the first sheet in the compact profile, where another one was asked for
 * @param folded whether each side holds two pages of a booklet
 */
public record PaperCount(
        int sheets, int least, int most, int all, Besides besides, Optional<Integer> compact, boolean folded) {
    private static final int PAGES_OF_A_FOLDED_SIDE = 2;

    /** What an office printer makes on both sides; common practice, no source. */
    private static final int SIDES_A_MINUTE = 20;

    /**
     * Sides.
     *
     * @param keys of answers and keys
     * @param host of the page for whoever runs the evening
     * @param examples of worked examples for all
     */
    public record Besides(int keys, int host, int examples) {}

    PaperCount withHost(int sides) {
        return new PaperCount(
                sheets, least, most, all, new Besides(keys(), sides, besides.examples()), compact, folded);
    }

    /** Sides of answers and keys. */
    public int keys() {
        return besides.keys();
    }

    /** Of all. */
    public int sides() {
        return all + besides.keys() + besides.host() + besides.examples();
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
        String each = folded ? range(PAGES_OF_A_FOLDED_SIDE, "page") + ", two on a side" : range(1, "side");
        return count(sheets, folded ? "booklet" : "sheet") + " of " + each + also(besides.keys(), "of answers")
                + also(besides.host(), "for the host") + also(besides.examples(), "of examples for all") + ": "
                + (leaves() == 1 ? "1 leaf" : leaves() + " leaves") + " printed on both sides, about "
                + count(minutes(), "minute") + " at " + SIDES_A_MINUTE + " sides a minute.";
    }

    /** What would take less paper, or empty. */
    public Optional<String> saving() {
        if (compact.isPresent() && compact.get() < most) {
            return Optional.of("With --profile compact a sheet takes " + count(compact.get(), "side") + ".");
        }
        return keys() > 2 && keys() >= sheets
                ? Optional.of("With --keys grid the answers of all stand on a few sides instead of " + keys() + ".")
                : Optional.empty();
    }

    private String range(int times, String what) {
        return least == most ? count(times * least, what) : times * least + " to " + count(times * most, what);
    }

    private static String also(int sides, String what) {
        return sides == 0 ? "" : ", " + count(sides, "side") + " " + what;
    }

    private static String count(int number, String what) {
        return number + " " + what + (number == 1 ? "" : "s");
    }
}
