package ampersheet.marking;

import ampersheet.answer.Verdict;
import ampersheet.diagnostic.Printable;
import ampersheet.sheet.Roster;
import java.util.List;

/**
 * How what came in is shown. Where that is wished, names of learners stay out of it; and wherever it came from, nothing
 * in it acts on whoever looks at it ({@link Printable}).
 */
final class Privacy {
    static final Privacy NONE = new Privacy(false, List.of());
    private static final String WITHHELD = "(a name, withheld)";
    private static final String LONG = "(a long text, withheld)";
    /** No answer is longer; what is might hold anything. */
    private static final int LONGEST = 2 * TextLines.LONGEST_ANSWER;

    private final boolean on;
    private final NameSpellings names;

    private Privacy(boolean on, List<String> names) {
        this.on = on;
        this.names = new NameSpellings(names);
    }

    static Privacy of(Roster roster) {
        return new Privacy(true, roster.seats().stream().map(Roster.Seat::name).toList());
    }

    boolean isOn() {
        return on;
    }

    /** A learner's name on a page, or nothing. */
    String name(Roster.Seat seat) {
        return on ? "" : seat.name();
    }

    /** Who is meant, in a list of learners. */
    String seat(Roster.Seat seat) {
        String name = name(seat);
        return "Seat " + seat.number() + (name.isEmpty() ? "" : ", " + name);
    }

    /** How a file is called: file names often hold the name of who sent them. */
    String file(String name, int number) {
        return on ? "file " + number : Printable.line(name);
    }

    /** A line quoted from a file may hold anything. */
    String line(String source) {
        return on ? "" : source;
    }

    /** What a learner typed where nobody knows what it should be. */
    String text(String typed) {
        return text(typed, "");
    }

    /** What a learner typed as an answer. Around a number that is read anything may stand, too. */
    String typed(Verdict verdict) {
        return text(verdict.asTyped(), verdict.understood());
    }

    /** What is said of an answer; where it cannot be read, its words are quoted. */
    String said(Verdict verdict) {
        return verdict.understood().isEmpty() && !typed(verdict).equals(Printable.line(verdict.asTyped()))
                ? "This could not be read as an answer."
                : Printable.line(verdict.message());
    }

    private String text(String typed, String understood) {
        if (on && typed.length() > LONGEST) {
            return LONG;
        }
        return on && names.in(typed, understood) ? WITHHELD : Printable.line(typed);
    }
}
