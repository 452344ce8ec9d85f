package ampersheet.model;

import static ampersheet.model.Argument.HEAT_FLOW;
import static ampersheet.model.Argument.HEAT_NODE;
import static ampersheet.model.Argument.TIME;

import ampersheet.quantity.Dimension;
import ampersheet.thermal.HeatNetwork;
import ampersheet.thermal.HeatSolver;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import java.util.function.ToDoubleBiFunction;

/** A heat path with numbers, and its steady state. */
public final class HeatModel implements Model {
    /** The one measure that a loss may take of its own heat path. */
    static final String TEMPERATURE = "temperature";

    static final List<Measure> MEASURES = List.of(
            measure(
                    TEMPERATURE,
                    List.of(HEAT_NODE),
                    Dimension.TEMPERATURE,
                    "steady temperature of a node",
                    (heat, asked) -> found(heat.steady().kelvin(), asked.name(0), "node")),
            measure(
                    "temperature_after",
                    List.of(HEAT_NODE, TIME),
                    Dimension.TEMPERATURE,
                    "temperature of a node after a time",
                    (heat, asked) -> found(
                            Solutions.of(HeatSolver.after(heat.network(), asked.seconds(1)))
                                    .kelvin(),
                            asked.name(0),
                            "node")),
            measure(
                    "time_until",
                    List.of(HEAT_NODE, Argument.TEMPERATURE),
                    Dimension.TIME,
                    "time until a node reaches a temperature",
                    (heat, asked) ->
                            Solutions.of(HeatSolver.timeUntil(heat.network(), asked.name(0), asked.number(1)))),
            measure(
                    "heat",
                    List.of(HEAT_FLOW),
                    Dimension.POWER,
                    "heat through a resistance or of a loss",
                    (heat, asked) -> found(heat.steady().watts(), asked.name(0), "resistance or loss")));

    private final HeatPlan plan;
    private final Once<HeatNetwork> network;
    private final Once<HeatSolver.Outcome.Solved> steady;

    HeatModel(HeatPlan plan, Supplier<HeatNetwork> network) {
        this.plan = plan;
        this.network = new Once<>(network);
        this.steady = new Once<>(() -> Solutions.of(HeatSolver.steady(network())));
    }

    private static Measure measure(
            String name,
            List<Argument> arguments,
            Dimension dimension,
            String meaning,
            ToDoubleBiFunction<HeatModel, Arguments> reading) {
        return Measure.of(ModelKind.HEAT, HeatModel.class, name, arguments, dimension, meaning, reading);
    }

    @Override
    public HeatPlan plan() {
        return plan;
    }

    public HeatNetwork network() {
        return network.get();
    }

    /** @throws Unsolved with the network's own reason */
    public HeatSolver.Outcome.Solved steady() {
        return steady.get();
    }

    private static double found(Map<String, Double> solved, String name, String what) {
        Double value = solved.get(name);
        if (value == null) {
            throw new IllegalArgumentException("no " + what + " " + name + " in the heat path");
        }
        return value;
    }
}
