package ampersheet.model;

import ampersheet.formula.Expression;
import ampersheet.formula.Values;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Quantity;
import ampersheet.thermal.HeatNetwork;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Watts may use {@code temperature(node)} and the circuit's {@code power(part)}, {@code current(part)}. */
public record HeatPlan(
        List<PlannedAmbient> ambients,
        List<PlannedNode> nodes,
        List<PlannedResistance> resistances,
        List<PlannedLoss> losses)
        implements ModelPlan {
    public HeatPlan {
        ambients = List.copyOf(ambients);
        nodes = List.copyOf(nodes);
        resistances = List.copyOf(resistances);
        losses = List.copyOf(losses);
    }

    public record PlannedAmbient(String name, Expression at) {}

    public record PlannedNode(String name, Optional<Expression> capacity, Optional<Expression> initial) {}

    public record PlannedResistance(String name, String from, String to, Expression kelvinPerWatt) {}

    public record PlannedLoss(String name, String into, Expression watts) {}

    @Override
    public ModelKind kind() {
        return ModelKind.HEAT;
    }

    @Override
    public Set<ModelKind> measured() {
        return Set.of(ModelKind.CIRCUIT);
    }

    @Override
    public List<Expression> formulas() {
        List<Expression> formulas = new ArrayList<>();
        ambients.forEach(ambient -> formulas.add(ambient.at()));
        nodes.forEach(node -> {
            node.capacity().ifPresent(formulas::add);
            node.initial().ifPresent(formulas::add);
        });
        resistances.forEach(resistance -> formulas.add(resistance.kelvinPerWatt()));
        losses.forEach(loss -> formulas.add(loss.watts()));
        return formulas;
    }

    @Override
    public HeatPlan departing(Reality reality) {
        List<PlannedLoss> warmer = new ArrayList<>(losses);
        reality.warms().forEach((node, watts) -> warmer.add(new PlannedLoss("into " + node, node, watts)));
        return new HeatPlan(ambients, nodes, resistances, warmer);
    }

    @Override
    public HeatModel with(Values values, Values.Measured others) {
        return new HeatModel(this, () -> network(values, others));
    }

    private HeatNetwork network(Values values, Values.Measured circuitMeasured) {
        List<HeatNetwork.Ambient> air = ambients.stream()
                .map(ambient -> new HeatNetwork.Ambient(ambient.name(), ModelNumbers.number(ambient.at(), values)))
                .toList();
        List<HeatNetwork.Node> lumps = nodes.stream()
                .map(node -> new HeatNetwork.Node(
                        node.name(),
                        node.capacity()
                                .map(formula -> ModelNumbers.number(formula, values))
                                .orElse(0.0),
                        node.initial()
                                .map(formula -> ModelNumbers.number(formula, values))
                                .orElseGet(() -> air.get(0).kelvin())))
                .toList();
        List<HeatNetwork.Resistance> paths = resistances.stream()
                .map(resistance -> new HeatNetwork.Resistance(
                        resistance.name(),
                        resistance.from(),
                        resistance.to(),
                        ModelNumbers.number(resistance.kelvinPerWatt(), values)))
                .toList();
        List<HeatNetwork.Loss> heats = losses.stream()
                .map(loss -> new HeatNetwork.Loss(loss.name(), loss.into(), watts(loss, values, circuitMeasured)))
                .toList();
        return new HeatNetwork(air, lumps, paths, heats);
    }

    private static HeatNetwork.PowerLaw watts(PlannedLoss loss, Values values, Values.Measured circuitMeasured) {
        if (!followsTemperature(loss.watts())) {
            double constant = ModelNumbers.number(loss.watts(), values.measuring(circuitMeasured));
            return temperatures -> constant;
        }
        return temperatures -> ModelNumbers.number(
                loss.watts(),
                values.measuring((measure, arguments) -> measure.equals(HeatModel.TEMPERATURE)
                        ? new Quantity(
                                temperatures.kelvin(((Expression.Name) arguments.get(0)).id()), Dimension.TEMPERATURE)
                        : circuitMeasured.value(measure, arguments)));
    }

    private static boolean followsTemperature(Expression expression) {
        return expression instanceof Expression.Call call && call.function().equals(HeatModel.TEMPERATURE)
                || expression.parts().stream().anyMatch(HeatPlan::followsTemperature);
    }
}
