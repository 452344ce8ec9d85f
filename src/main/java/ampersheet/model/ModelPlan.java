package ampersheet.model;

import ampersheet.formula.Evaluation;
import ampersheet.formula.Expression;
import ampersheet.formula.Values;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** A model before any number is known: formulas and words that become a {@link Model} when names have values. */
public sealed interface ModelPlan permits CircuitPlan, HeatPlan, ChainPlan, AssemblyPlan {
    ModelKind kind();

    /** All formulas that are values of the model. */
    List<Expression> formulas();

    /** Words of the model, each as it stands or the name of a word given. */
    default List<String> words() {
        return List.of();
    }

    /** What its drawing alone is labelled with. */
    default List<PlannedMark> marks() {
        return List.of();
    }

    /** Models whose measures its formulas may take. */
    default Set<ModelKind> measured() {
        return Set.of();
    }

    /**
     * The model with these values, not solved yet.
     *
     * @param values of everything the plan names: givens, constants, steps
     * @param others measures of the models that it may measure
     */
    Model with(Values values, Values.Measured others);

    /** The plan with what happens really; itself where that lies outside this model. */
    default ModelPlan departing(Reality reality) {
        return this;
    }

    /** All that it takes its values and words from, with the words that stand for word givens. */
    default Set<String> names() {
        Set<String> names = new LinkedHashSet<>();
        formulas().forEach(formula -> names.addAll(Evaluation.names(formula)));
        names.addAll(words());
        return names;
    }
}
