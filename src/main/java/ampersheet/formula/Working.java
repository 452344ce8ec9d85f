package ampersheet.formula;

import ampersheet.quantity.Quantity;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Steps in the order a learner works them: each may use the givens and the steps before it. */
public record Working(List<Step> steps) {
    public Working {
        steps = List.copyOf(steps);
    }

    /** The steps that follow from any of these names, in order; a step named itself is not among them for that. */
    public Set<String> following(Collection<String> names) {
        Set<String> sources = new LinkedHashSet<>(names);
        Set<String> following = new LinkedHashSet<>();
        for (Step step : steps) {
            for (String used : step.uses()) {
                if (sources.contains(used)) {
                    following.add(step.id());
                }
            }
            if (following.contains(step.id())) {
                sources.add(step.id());
            }
        }
        return Collections.unmodifiableSet(following);
    }

    /**
     * The givens and every step's value.
     *
     * @throws NoValue if no case of a step applies
     */
    public Values work(Values givens) {
        return work(givens, Map.of());
    }

    /**
     * The same, but the steps named in {@code instead} take those values: an earlier answer carried forward.
     *
     * @throws NoValue if no case of a step applies then
     */
    public Values work(Values givens, Map<String, Quantity> instead) {
        Values known = givens;
        for (Step step : steps) {
            Quantity given = instead.get(step.id());
            Quantity value = given != null
                    ? given
                    : Evaluation.evaluate(step.cases().get(step.applying(known)).is(), known);
            known = known.with(step.id(), value);
        }
        return known;
    }
}
