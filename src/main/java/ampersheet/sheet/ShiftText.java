package ampersheet.sheet;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.model.Reality;
import ampersheet.problem.RealityCheck;
import ampersheet.problem.RealityCheck.Shift;
import ampersheet.quantity.Unit;
import java.util.ArrayList;
import java.util.List;

/** Says what a dropped idealisation makes of the answers: "With a source of 0.1 Ω, q2a would be 1.3 % less." */
final class ShiftText {
    /** A share of the key below which nobody could tell the difference. */
    private static final double UNNOTICED = 5e-4;

    private static final Unit PERCENT = Unit.parse("%");
    private static final Unit KELVIN = Unit.parse("K");
    private static final int FIGURES = 2;

    private ShiftText() {}

    static String of(SheetProblem problem, Reality reality) {
        List<String> same = new ArrayList<>();
        List<String> shifted = new ArrayList<>();
        for (Shift shift : RealityCheck.shifts(problem.problem(), reality)) {
            AnswerKey key = problem.answers().stream()
                    .filter(answer -> answer.step().equals(shift.of()))
                    .findFirst()
                    .orElseThrow();
            String told = told(problem, key, shift);
            if (told.isEmpty()) {
                same.add(key.question());
            } else {
                shifted.add(key.question() + " " + told);
            }
        }
        String with = "With " + reality.named() + ", ";
        if (shifted.isEmpty()) {
            return with + "the answers stay the same.";
        }
        return with + String.join("; ", shifted)
                + (same.isEmpty() ? "" : "; " + list(same) + (same.size() == 1 ? " stays" : " stay") + " the same")
                + ".";
    }

    private static String list(List<String> questions) {
        int last = questions.size() - 1;
        return last == 0
                ? questions.get(0)
                : String.join(", ", questions.subList(0, last)) + " and " + questions.get(last);
    }

    /** Empty where it stays the same. */
    private static String told(SheetProblem problem, AnswerKey key, Shift shift) {
        if (Double.isNaN(shift.low()) || Double.isNaN(shift.high())) {
            return "has no answer";
        } else if (!(key.acceptance() instanceof Acceptance.Within)) {
            double other = shift.farthest();
            return other == shift.key()
                    ? ""
                    : (shift.low() < shift.high() ? "may become " : "would be ")
                            + (key.acceptance() instanceof Acceptance.Choice
                                    ? "“" + ProblemText.precise(key, other, problem.writer()) + "”"
                                    : ProblemText.precise(key, other, problem.writer()));
        }
        double unnoticed = key.unit().offset() != 0 ? 0.05 : UNNOTICED * Math.abs(shift.key());
        boolean less = shift.key() - shift.low() > unnoticed;
        boolean more = shift.high() - shift.key() > unnoticed;
        if (less && more) {
            return "may be up to " + amount(problem, key, shift, shift.low()) + " less or "
                    + amount(problem, key, shift, shift.high()) + " more";
        }
        String how = shift.low() < shift.high() ? "may be up to " : "would be ";
        return less
                ? how + amount(problem, key, shift, shift.low()) + " less"
                : more ? how + amount(problem, key, shift, shift.high()) + " more" : "";
    }

    /** In kelvins for a temperature, in its unit where the key is zero, else in percent. */
    private static String amount(SheetProblem problem, AnswerKey key, Shift shift, double really) {
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
