package ampersheet.problem;

import ampersheet.answer.Acceptance;
import ampersheet.answer.KnownMistake;
import ampersheet.formula.Evaluation;
import ampersheet.formula.Expression;
import ampersheet.formula.Step;
import ampersheet.formula.Values;
import ampersheet.formula.Working;
import ampersheet.quantity.Quantity;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.Ask;
import ampersheet.template.ProblemTemplate.Mistake;
import ampersheet.template.ProblemTemplate.QuantityAsk;
import ampersheet.template.ProblemTemplate.StepLine;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** What a modelled wrong method gives with a draw's numbers, and whether that can be told from the key. */
final class Mistakes {
    private Mistakes() {}

    /**
     * @param values givens and right steps
     * @return empty if the mistake cannot be made with these numbers, or gives no number
     */
    static Optional<KnownMistake> make(Mistake mistake, Working working, Values values) {
        if (mistake.when().isPresent() && !Evaluation.holds(mistake.when().get(), values)) {
            return Optional.empty();
        }
        if (mistake.is().isEmpty()) {
            return make(mistake, mistake.of(), working, values);
        }
        return known(mistake, Evaluation.evaluate(mistake.is().get(), values).value());
    }

    /** What a mistake with wrong steps gives at {@code step}, one of those or the one that follows from them. */
    static Optional<KnownMistake> make(Mistake mistake, String step, Working working, Values values) {
        return known(mistake, followed(mistake, step, working, values));
    }

    private static Optional<KnownMistake> known(Mistake mistake, double value) {
        return Double.isFinite(value)
                ? Optional.of(new KnownMistake(mistake.id(), value, mistake.says()))
                : Optional.empty();
    }

    /** Works the steps again: those named are worked wrongly, the others rightly from what the wrong ones gave. */
    private static double followed(Mistake mistake, String of, Working working, Values values) {
        Values known = values;
        for (Step step : working.steps()) {
            Expression wrong = mistake.instead().get(step.id());
            Quantity value = Evaluation.evaluate(
                    wrong != null
                            ? wrong
                            : step.cases().get(step.applying(known)).is(),
                    known);
            if (step.id().equals(of)) {
                return value.value();
            }
            known = known.with(step.id(), value);
        }
        throw new IllegalArgumentException("no step " + of);
    }

    /**
     * What is accepted at each step that can be got wrong: all but the blanks of designs, in the order of the working.
     */
    static Map<String, Acceptance> judgedSteps(ProblemTemplate template) {
        Map<String, Acceptance> judged = new LinkedHashMap<>();
        for (StepLine line : template.lines()) {
            if (!template.isDesigned(line.id())) {
                judged.put(line.id(), line.acceptance());
            }
        }
        for (Ask ask : template.asks()) {
            if (ask instanceof QuantityAsk quantity) {
                judged.put(quantity.of(), quantity.acceptance());
            }
        }
        return judged;
    }

    /**
     * How far two values lie apart, in multiples of what their tolerances need together: above 1, no answer is within
     * tolerance of both. Infinite for two preferred values or counts that differ.
     */
    static double separation(Acceptance acceptance, double a, double b) {
        if (!(acceptance instanceof Acceptance.Within)) {
            return acceptance.apart(a, b) ? Double.POSITIVE_INFINITY : 0;
        }
        return a == b ? 0 : Math.abs(a - b) / (acceptance.band(a) + acceptance.band(b));
    }
}
