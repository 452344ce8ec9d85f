package ampersheet.marking;

import ampersheet.answer.Verdict;
import ampersheet.diagnostic.Printable;
import ampersheet.language.Language;
import ampersheet.sheet.Roster;
import java.util.List;

/**
 * How what came in is shown. Where that is wished, names of learners stay out of it; and wherever it came from, nothing
 * in it acts on whoever looks at it ({@link Printable}).
 */
final class Privacy {
    /** No answer is longer; what is might hold anything. */
    private static final int LONGEST = 2 * TextLines.LONGEST_ANSWER;

    private final boolean on;
    private final NameSpellings names;
    private final Language language;

    private Privacy(boolean on, List<String> names, Language language) {
        this.on = on;
        this.names = new NameSpellings(names);
        this.language = language;
    }

    /** @param language in which is told what stands in place of a name */
    static Privacy of(Roster roster, Language language) {
        return new Privacy(true, roster.seats().stream().map(Roster.Seat::name).toList(), language);
    }

    /** Names stand where they belong. */
    static Privacy none(Language language) {
        return new Privacy(false, List.of(), language);
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
        String number = Integer.toString(seat.number());
        return name.isEmpty()
                ? language.say("report.seat", "seat", number)
                : language.say("report.seat.named", "seat", number, "name", name);
    }

    /** How a file is called: file names often hold the name of who sent them. */
    String file(String name, int number) {
        return on ? language.say("report.withheld.file", "number", Integer.toString(number)) : Printable.line(name);
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
                ? language.say("report.withheld.said")
                : Printable.line(verdict.message());
    }

    private String text(String typed, String understood) {
        if (on && typed.length() > LONGEST) {
            return language.say("report.withheld.text");
        }
        return on && names.in(typed, understood) ? language.say("report.withheld.name") : Printable.line(typed);
    }
}
