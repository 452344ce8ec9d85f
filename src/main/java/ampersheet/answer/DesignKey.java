package ampersheet.answer;

import ampersheet.formula.Condition;
import ampersheet.quantity.Unit;
import java.util.List;

/**
 * Blanks that are judged together: a design is right if it meets every criterion, whichever values were chosen.
 *
 * @param id unique in its template
 * @param steps that the blanks stand for, in the order asked; the {@link AnswerKey} of each accepts what is
 *     {@link Acceptance.Designed}
 */
public record DesignKey(String id, List<String> steps, List<Criterion> criteria) {
    public DesignKey {
        steps = List.copyOf(steps);
        criteria = List.copyOf(criteria);
    }

    /**
     * A condition that the learner's values must meet once the steps are worked with them.
     *
     * @param id unique in its design
     * @param where over givens and steps
     * @param shown the step whose value is told, with its symbol and unit
     * @param wanted the condition with this problem's numbers in it, such as {@code I_r ≤ 1 mA}
     * @param says what is wrong when it fails
     */
    public record Criterion(
            String id, Condition where, String shown, String symbol, Unit unit, String wanted, String says) {}
}
