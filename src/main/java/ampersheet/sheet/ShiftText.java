package ampersheet.sheet;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.language.Language;
import ampersheet.model.Reality;
import ampersheet.problem.RealityCheck;
import ampersheet.problem.RealityCheck.Shift;
import ampersheet.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Says what a dropped idealisation makes of the answers: "With a source of 0.1 Ω, q2a would be 1.3 % less." */
final class ShiftText {
    /** A share of the key below which nobody could tell the difference. */
    private static final double UNNOTICED = 5e-4;

    private static final Unit PERCENT = Unit.parse("%");
    private static final Unit KELVIN = Unit.parse("K");
    private static final int FIGURES = 2;

    private final SheetProblem problem;
    private final Language language;

    private ShiftText(SheetProblem problem) {
        this.problem = problem;
        this.language = problem.plan().language();
    }

    static String of(SheetProblem problem, Reality reality) {
        return new ShiftText(problem).of(reality);
    }

    private String of(Reality reality) {
        List<String> same = new ArrayList<>();
        List<String> shifted = new ArrayList<>();
        for (Shift shift : RealityCheck.shifts(problem.problem(), reality)) {
            AnswerKey key = problem.answers().stream()
                    .filter(answer -> answer.step().equals(shift.of()))
                    .findFirst()
                    .orElseThrow();
            told(key, shift).ifPresentOrElse(shifted::add, () -> same.add(key.question()));
        }
        if (shifted.isEmpty()) {
            return language.say("sheet.shift.nothing", "reality", reality.named());
        }
        if (!same.isEmpty()) {
            shifted.add(language.count("sheet.shift.same", same.size(), "questions", language.all(same)));
        }
        return language.say("sheet.shift.changes", "reality", reality.named(), "changes", String.join("; ", shifted));
    }

    /** Empty where it stays the same. */
    private Optional<String> told(AnswerKey key, Shift shift) {
        String question = key.question();
        if (Double.isNaN(shift.low()) || Double.isNaN(shift.high())) {
            return Optional.of(language.say("sheet.shift.no-answer", "question", question));
        } else if (!(key.acceptance() instanceof Acceptance.Within)) {
            return other(key, shift);
        }
        double unnoticed = key.unit().offset() != 0 ? 0.05 : UNNOTICED * Math.abs(shift.key());
        boolean less = shift.key() - shift.low() > unnoticed;
        boolean more = shift.high() - shift.key() > unnoticed;
        boolean may = shift.low() < shift.high();
        String lower = amount(key, shift, shift.low());
        String higher = amount(key, shift, shift.high());
        if (less && more) {
            return Optional.of(language.say(
                    "sheet.shift.may-be-less-or-more", "question", question, "less", lower, "more", higher));
        } else if (less) {
            return Optional.of(
                    may
                            ? language.say("sheet.shift.may-be-less", "question", question, "amount", lower)
                            : language.say("sheet.shift.would-be-less", "question", question, "amount", lower));
        } else if (more) {
            return Optional.of(
                    may
                            ? language.say("sheet.shift.may-be-more", "question", question, "amount", higher)
                            : language.say("sheet.shift.would-be-more", "question", question, "amount", higher));
        }
        return Optional.empty();
    }

    /** Of an answer that must be met exactly: what it becomes. */
    private Optional<String> other(AnswerKey key, Shift shift) {
        double other = shift.farthest();
        if (other == shift.key()) {
            return Optional.empty();
        }
        boolean may = shift.low() < shift.high();
        String question = key.question();
        String value = ProblemText.precise(key, other, problem.writer());
        if (key.acceptance() instanceof Acceptance.Choice) {
            return Optional.of(
                    may
                            ? language.say("sheet.shift.may-become-option", "question", question, "value", value)
                            : language.say("sheet.shift.would-be-option", "question", question, "value", value));
        }
        return Optional.of(
                may
                        ? language.say("sheet.shift.may-become", "question", question, "value", value)
                        : language.say("sheet.shift.would-be", "question", question, "value", value));
    }

    /** In kelvins for a temperature, in its unit where the key is zero, else in percent. */
    private String amount(AnswerKey key, Shift shift, double really) {
        double change = Math.abs(really - shift.key());
        if (key.unit().offset() != 0) {
            return problem.writer().rounded(change, KELVIN, FIGURES).text();
        } else if (shift.key() == 0) {
            return problem.writer().rounded(change, key.unit(), FIGURES).text();
        }
        return problem.writer()
                .rounded(change / Math.abs(shift.key()), PERCENT, FIGURES)
                .text();
    }
}
