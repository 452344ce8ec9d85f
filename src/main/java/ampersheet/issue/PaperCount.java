package ampersheet.issue;

import static ampersheet.source.Told.count;
import static ampersheet.source.Told.say;

import ampersheet.language.Language;
import java.util.ArrayList;
import java.util.List;
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
    public String sentence(Language language) {
        List<String> what = new ArrayList<>();
        what.add(
                folded
                        ? language.count("problem.paper.booklets", sheets, "pages", pages(language))
                        : language.count("problem.paper.sheets", sheets, "sides", sidesOfASheet(language)));
        if (besides.keys() > 0) {
            what.add(language.count("problem.paper.answers", besides.keys()));
        }
        if (besides.host() > 0) {
            what.add(language.count("problem.paper.host", besides.host()));
        }
        if (besides.examples() > 0) {
            what.add(language.count("problem.paper.examples", besides.examples()));
        }
        return language.say(
                "problem.paper",
                "what",
                String.join(language.say("list.comma"), what),
                "leaves",
                language.count("problem.paper.leaves", leaves()),
                "minutes",
                language.count("problem.paper.minutes", minutes()),
                "speed",
                Integer.toString(SIDES_A_MINUTE));
    }

    private String sidesOfASheet(Language language) {
        return least == most
                ? language.count("problem.paper.sides", least)
                : language.say(
                        "problem.paper.sides-from-to",
                        "least",
                        Integer.toString(least),
                        "most",
                        Integer.toString(most));
    }

    private String pages(Language language) {
        return least == most
                ? language.count("problem.paper.pages", PAGES_OF_A_FOLDED_SIDE * least)
                : language.say(
                        "problem.paper.pages-from-to",
                        "least",
                        Integer.toString(PAGES_OF_A_FOLDED_SIDE * least),
                        "most",
                        Integer.toString(PAGES_OF_A_FOLDED_SIDE * most));
    }

    /** What would take less paper, or empty: for whoever prints, in the words of the commands. */
    public Optional<String> saving() {
        if (compact.isPresent() && compact.get() < most) {
            return Optional.of(count("folder.paper.compact", compact.get()));
        }
        return keys() > 2 && keys() >= sheets
                ? Optional.of(say("folder.paper.grid", "sides", Integer.toString(keys())))
                : Optional.empty();
    }
}
