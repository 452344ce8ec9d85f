package ampersheet.problem;

import ampersheet.formula.Evaluation;
import ampersheet.formula.Expression;
import ampersheet.formula.Values;
import ampersheet.model.ModelPlans;
import ampersheet.model.Models;
import ampersheet.model.Reality;
import ampersheet.model.Unsolved;
import ampersheet.quantity.Quantity;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.Ask;
import ampersheet.template.ProblemTemplate.ChoiceAsk;
import ampersheet.template.ProblemTemplate.DesignAsk;
import ampersheet.template.ProblemTemplate.Proof;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What an idealisation makes of the answers: the second route goes once more, with models without it. The steps keep
 * what they found where a model takes it, since the part that was chosen by the ideal sum is the part that is fitted.
 */
public final class RealityCheck {
    private RealityCheck() {}

    /**
     * An answer without the idealisation.
     *
     * @param of step or choice id
     * @param key the answer with the idealisation by the same route, SI, or the index of the option
     * @param low least that it can be really; not a number where the models have no solution
     * @param high most; {@code low} where nothing lies within a tolerance
     */
    public record Shift(String of, double key, double low, double high) {
        /** The farther end. */
        public double farthest() {
            return Math.abs(low - key) > Math.abs(high - key) ? low : high;
        }
    }

    /** One for each answer that has one value, in the order asked. */
    public static List<Shift> shifts(Problem problem, Reality reality) {
        ProblemTemplate template = problem.template();
        ModelPlans plans = new ModelPlans(
                template.models().stream().map(plan -> plan.departing(reality)).toList());
        List<Map<String, Double>> corners = new ArrayList<>();
        for (int corner = 0; corner < 1 << reality.within().size(); corner++) {
            corners.add(found(problem, reality, plans, corner));
        }
        List<Shift> shifts = new ArrayList<>();
        for (int i = 0; i < template.asks().size(); i++) {
            Ask ask = template.asks().get(i);
            if (!(ask instanceof DesignAsk)) {
                List<Double> values = corners.stream()
                        .map(found -> found.getOrDefault(ask.of(), Double.NaN))
                        .toList();
                shifts.add(new Shift(
                        ask.of(),
                        problem.answers().get(i).second(),
                        values.stream().mapToDouble(Double::doubleValue).min().orElseThrow(),
                        values.stream().mapToDouble(Double::doubleValue).max().orElseThrow()));
            }
        }
        return shifts;
    }

    private static Map<String, Double> found(Problem problem, Reality reality, ModelPlans plans, int corner) {
        ProblemTemplate template = problem.template();
        Map<String, Quantity> other = new LinkedHashMap<>();
        reality.values().forEach((name, formula) -> other.put(name, Evaluation.evaluate(formula, problem.values())));
        int bit = 0;
        for (Map.Entry<String, Expression> within : reality.within().entrySet()) {
            double share =
                    Evaluation.evaluate(within.getValue(), problem.values()).value();
            Quantity nominal =
                    other.getOrDefault(within.getKey(), problem.values().quantity(within.getKey()));
            double sign = (corner >> bit++ & 1) == 1 ? 1 : -1;
            other.put(within.getKey(), new Quantity(nominal.value() * (1 + sign * share), nominal.dimension()));
        }
        Values building = problem.values();
        Values asking = problem.givens();
        for (Map.Entry<String, Quantity> each : other.entrySet()) {
            building = building.with(each.getKey(), each.getValue());
            asking = asking.with(each.getKey(), each.getValue());
        }
        Models models = plans.with(building);
        SecondRoute route = SecondRoute.departing(models, asking, building);
        Map<String, Double> found = new LinkedHashMap<>();
        for (Proof proof : template.proofs()) {
            double value = found(route, proof);
            double key = problem.values().quantity(proof.of()).value();
            found.merge(proof.of(), value, (one, next) -> Math.abs(next - key) > Math.abs(one - key) ? next : one);
        }
        for (Ask ask : template.asks()) {
            if (ask instanceof ChoiceAsk choice) {
                found.put(choice.of(), option(choice, route.known()));
            }
        }
        return found;
    }

    private static double found(SecondRoute route, Proof proof) {
        try {
            return route.find(proof);
        } catch (Unsolved none) {
            return Double.NaN;
        }
    }

    /** Not a number where no one option holds. */
    private static double option(ChoiceAsk choice, Values known) {
        int right = FirstRoute.right(choice, known, Independence.NONE);
        return right < 0 ? Double.NaN : right;
    }
}
