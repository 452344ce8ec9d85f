package ampersheet.sheet;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.DesignKey;
import ampersheet.answer.KnownMistake;
import ampersheet.formula.Notation;
import ampersheet.formula.Values;
import ampersheet.problem.Notations;
import ampersheet.problem.Problem;
import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.Unit;
import ampersheet.template.Statement;
import java.util.List;

/** How the numbers of a problem are printed. */
final class ProblemText {
    /** Of a value that has no short exact decimal; one more than most questions ask for. */
    static final int FIGURES = 4;

    private static final int EXACT_FIGURES = 9;
    private static final Unit PERCENT = Unit.parse("%");
    /** A smaller gap between the routes is rounding of the arithmetic and not worth a number. */
    private static final double ROUNDING = 1e-6;

    /** Two routes that agree so far are told as the same: what is left is the last bits of a long sum. */
    private static final double TWELVE_DIGITS = 1e-12;

    private ProblemText() {}

    /** @param values those that may be printed; other names print as symbols */
    static Notation of(SheetProblem problem, Values values) {
        return Notations.of(problem.template(), problem.plan().language(), values, problem.writer(), FIGURES);
    }

    /** As a right answer is written. */
    static String answer(AnswerKey key, QuantityWriter writer) {
        return value(key, key.expected(), writer);
    }

    private static String value(AnswerKey key, double value, QuantityWriter writer) {
        if (key.acceptance() instanceof Acceptance.Choice choice) {
            return choice.option(value).text();
        }
        return key.acceptance() instanceof Acceptance.Within
                ? writer.rounded(value, key.unit(), key.figures()).text()
                : writer.plain(value, key.unit(), EXACT_FIGURES).text();
    }

    /** With more figures than asked for, to be compared. */
    static String precise(AnswerKey key, double value, QuantityWriter writer) {
        if (key.acceptance() instanceof Acceptance.Choice choice) {
            return choice.option(value).text();
        }
        return writer.working(value, key.unit(), Math.max(FIGURES, key.figures() + 1))
                .text();
    }

    /** What a learner writes who makes a mistake. */
    static String mistaken(AnswerKey key, KnownMistake mistake, QuantityWriter writer) {
        return value(key, mistake.value(), writer);
    }

    /** Both ends of a band with as many figures. */
    private static String end(AnswerKey key, double value, QuantityWriter writer) {
        return writer.rounded(value, key.unit(), Math.max(FIGURES, key.figures() + 1))
                .text();
    }

    static String accepted(AnswerKey key, QuantityWriter writer) {
        if (key.acceptance() instanceof Acceptance.Within within) {
            double band = within.band(key.expected());
            String range = end(key, key.expected() - band, writer) + " to " + end(key, key.expected() + band, writer);
            return key.isShare() ? range + ", also as a fraction of 1" : range;
        } else if (key.acceptance() instanceof Acceptance.Preferred preferred) {
            return "exactly this value of " + preferred.series();
        } else if (key.acceptance() instanceof Acceptance.Count) {
            return "exactly this number";
        } else if (key.acceptance() instanceof Acceptance.Designed designed) {
            return "any " + designed.series().map(series -> series + " value").orElse("whole number") + " from "
                    + writer.plain(designed.from(), key.unit(), FIGURES).text() + " to "
                    + writer.plain(designed.to(), key.unit(), FIGURES).text()
                    + " that meets the criteria; this is one of them";
        }
        return "this option";
    }

    static String secondRoute(AnswerKey key, Problem.Answer answer, QuantityWriter writer) {
        if (key.acceptance() instanceof Acceptance.Designed) {
            return answer.agrees()
                    ? "the model solved with it meets the criteria, too"
                    : "the model solved with it fails a criterion";
        }
        if (Double.isNaN(answer.second())) {
            return "none with these numbers";
        }
        String second = precise(key, answer.second(), writer);
        if (key.acceptance() instanceof Acceptance.Choice || answer.gap() <= TWELVE_DIGITS) {
            return second + ", the same";
        }
        if (answer.gap() < ROUNDING) {
            return second + ", apart by less than "
                    + writer.plain(ROUNDING, PERCENT, 1).text();
        }
        return second + ", apart by " + gap(answer, writer) + "; the model allows " + share(answer.allowed(), writer);
    }

    /** What makes a design right, in Markdown, and how many do. */
    static String designRule(DesignKey design, Problem.JudgedDesign judged, List<String> questions) {
        List<String> wanted = design.criteria().stream()
                .map(criterion -> Statement.escape(criterion.wanted()))
                .toList();
        return String.join(" and ", questions) + (questions.size() == 1 ? " is right" : " are right together") + " if "
                + String.join(" and ", wanted) + ". Of " + judged.choices() + " choices " + judged.accepted()
                + (judged.accepted() == 1 ? " does" : " do") + "; " + judged.solved()
                + " near a limit were solved by the model as well, which agreed on each.";
    }

    private static String gap(Problem.Answer answer, QuantityWriter writer) {
        return share(answer.gap(), writer);
    }

    private static String share(double of, QuantityWriter writer) {
        return writer.plain(of, PERCENT, 2).text();
    }
}
