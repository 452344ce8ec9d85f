package ampersheet.template;

import ampersheet.diagnostic.Place;
import ampersheet.formula.Condition;
import ampersheet.formula.Working;
import ampersheet.template.ProblemTemplate.Constant;
import ampersheet.template.ProblemTemplate.Given;
import java.util.List;
import java.util.Map;

/**
 * What of a template can be worked without a model.
 *
 * @param requirements with the place of each
 * @param sound whether nothing is wrong with any of it
 */
record Numerics(
        List<Given> givens,
        List<Constant> constants,
        Map<Condition, Place> requirements,
        List<StepsSection.Read> steps,
        boolean sound) {
    Working working() {
        return new Working(steps.stream().map(StepsSection.Read::step).toList());
    }
}
