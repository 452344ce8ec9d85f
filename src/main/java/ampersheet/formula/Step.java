package ampersheet.formula;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * One named line of a working: a formula, or several of which the first whose condition holds applies.
 *
 * @param cases at least one; only the last may be without condition
 */
public record Step(String id, List<Case> cases) {

    /** @param when empty: applies always */
    public record Case(Optional<Condition> when, Expression is) {}

    public Step {
        cases = List.copyOf(cases);
        if (cases.isEmpty()) {
            throw new IllegalArgumentException("step " + id + " has no formula");
        }
    }

    public static Step of(String id, Expression is) {
        return new Step(id, List.of(new Case(Optional.empty(), is)));
    }

    /** Names that any of the cases uses, in its formula or its condition. */
    public Set<String> uses() {
        Set<String> names = new LinkedHashSet<>();
        for (Case each : cases) {
            names.addAll(Evaluation.names(each.is()));
            each.when().ifPresent(when -> names.addAll(Evaluation.names(when)));
        }
        return names;
    }

    /**
     * Index of the case that applies.
     *
     * @throws NoValue if none does
     */
    public int applying(Values values) {
        for (int i = 0; i < cases.size(); i++) {
            Optional<Condition> when = cases.get(i).when();
            if (when.isEmpty() || Evaluation.holds(when.get(), values)) {
                return i;
            }
        }
        throw new NoValue("no case of step " + id + " applies");
    }
}
