package ampersheet.model;

import ampersheet.formula.Values;
import java.util.List;
import java.util.Set;

/** The plans of a template, with what is found once for all draws. */
public final class ModelPlans {
    private final List<ModelPlan> plans;
    private final List<Set<String>> names;

    public ModelPlans(List<ModelPlan> plans) {
        this.plans = List.copyOf(plans);
        this.names = plans.stream().map(ModelPlan::names).toList();
    }

    /** @param values of everything the plans name: givens, constants, steps */
    public Models with(Values values) {
        return Models.of(plans, names, values);
    }
}
