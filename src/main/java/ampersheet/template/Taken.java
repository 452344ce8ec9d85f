package ampersheet.template;

import ampersheet.diagnostic.Place;
import ampersheet.formula.Expression;
import ampersheet.model.ModelKind;
import java.util.EnumMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** The names that each model takes as values. */
final class Taken {
    private final Map<ModelKind, Set<String>> byModel = new EnumMap<>(ModelKind.class);
    private final Map<String, Place> steps = new TreeMap<>();
    private boolean heatMeasuresCircuit;

    Taken() {
        for (ModelKind model : ModelKind.values()) {
            byModel.put(model, new TreeSet<>());
        }
    }

    void take(ModelKind model, Names.Named named, Place place) {
        byModel.get(model).add(named.id());
        if (named.isStep()) {
            steps.putIfAbsent(named.id(), place);
        }
    }

    /** A loss is what a part of the circuit takes up. */
    void heatMeasuresCircuit() {
        heatMeasuresCircuit = true;
    }

    /** Steps that a model takes as values, with the place where one first does. */
    Map<String, Place> steps() {
        return steps;
    }

    Set<String> byAny() {
        Set<String> all = new TreeSet<>();
        byModel.values().forEach(all::addAll);
        return all;
    }

    /** Names on which the models behind these measures depend. */
    Set<String> by(Mentions mentions, MeasureCheck.Things things) {
        Set<String> all = new TreeSet<>();
        for (Expression.Call call : mentions.measures()) {
            MeasureCheck.meant(call, things).forEach(measure -> {
                all.addAll(byModel.get(measure.kind()));
                if (measure.kind() == ModelKind.HEAT && heatMeasuresCircuit) {
                    all.addAll(byModel.get(ModelKind.CIRCUIT));
                }
            });
        }
        return all;
    }
}
