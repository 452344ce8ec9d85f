package ampersheet.sheet;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.DesignKey;
import ampersheet.answer.KnownMistake;
import ampersheet.formula.Notation;
import ampersheet.formula.Values;
import ampersheet.language.Language;
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

    static String accepted(AnswerKey key, QuantityWriter writer, Language language) {
        if (key.acceptance() instanceof Acceptance.Within within) {
            double band = within.band(key.expected());
            String low = end(key, key.expected() - band, writer);
            String high = end(key, key.expected() + band, writer);
            return key.isShare()
                    ? language.say("sheet.key.accepted.share", "low", low, "high", high)
                    : language.say("sheet.key.accepted.band", "low", low, "high", high);
        } else if (key.acceptance() instanceof Acceptance.Preferred preferred) {
            return language.say(
                    "sheet.key.accepted.preferred", "series", preferred.series().toString());
        } else if (key.acceptance() instanceof Acceptance.Count) {
            return language.say("sheet.key.accepted.number");
        } else if (key.acceptance() instanceof Acceptance.Designed designed) {
            String low = writer.plain(designed.from(), key.unit(), FIGURES).text();
            String high = writer.plain(designed.to(), key.unit(), FIGURES).text();
            return designed.series()
                    .map(series -> language.say(
                            "sheet.key.accepted.design-value", "series", series.toString(), "low", low, "high", high))
                    .orElseGet(() -> language.say("sheet.key.accepted.design-number", "low", low, "high", high));
        }
        return language.say("sheet.key.accepted.option");
    }

    static String secondRoute(AnswerKey key, Problem.Answer answer, QuantityWriter writer, Language language) {
        if (key.acceptance() instanceof Acceptance.Designed) {
            return answer.agrees()
                    ? language.say("sheet.key.route.design-meets")
                    : language.say("sheet.key.route.design-fails");
        }
        if (Double.isNaN(answer.second())) {
            return language.say("sheet.key.route.none");
        }
        String second = precise(key, answer.second(), writer);
        if (key.acceptance() instanceof Acceptance.Choice || answer.gap() <= TWELVE_DIGITS) {
            return language.say("sheet.key.route.same", "value", second);
        }
        if (answer.gap() < ROUNDING) {
            String least = writer.plain(ROUNDING, PERCENT, 1).text();
            return language.say("sheet.key.route.close", "value", second, "gap", least);
        }
        return language.say(
                "sheet.key.route.apart",
                "value",
                second,
                "gap",
                share(answer.gap(), writer),
                "allowed",
                share(answer.allowed(), writer));
    }

    /** What makes a design right, in Markdown, and how many do. */
    static String designRule(DesignKey design, Problem.JudgedDesign judged, List<String> questions, Language language) {
        List<String> wanted = design.criteria().stream()
                .map(criterion -> Statement.escape(criterion.wanted()))
                .toList();
        String rule = language.count(
                "sheet.key.design",
                questions.size(),
                "questions",
                OneOrOther.and(questions, language),
                "criteria",
                OneOrOther.and(wanted, language));
        String choices = language.count(
                "sheet.key.design-choices",
                judged.accepted(),
                "choices",
                Integer.toString(judged.choices()),
                "solved",
                Integer.toString(judged.solved()));
        return rule + " " + choices;
    }

    private static String share(double of, QuantityWriter writer) {
        return writer.plain(of, PERCENT, 2).text();
    }
}
