package ampersheet.model;

import ampersheet.formula.Values;
import java.util.Set;

/** A model with numbers in, solved when first asked; for several threads. */
public sealed interface Model permits CircuitModel, HeatModel, ChainModel, AssemblyModel {
    ModelPlan plan();

    /**
     * The model with other values.
     *
     * @param changed names whose values are others; what takes none of them may be kept
     * @param others measures of the models that it may measure
     */
    default Model with(Values values, Set<String> changed, Values.Measured others) {
        return plan().with(values, others);
    }
}
