package ampersheet.model;

import static ampersheet.model.Argument.CIRCUIT_NODE;
import static ampersheet.model.Argument.COLUMN;
import static ampersheet.model.Argument.PANEL;
import static ampersheet.model.Argument.PART;
import static ampersheet.model.Argument.ROW;
import static ampersheet.model.Argument.STRIP;
import static ampersheet.model.Argument.STRIP_OR_PANEL;
import static ampersheet.model.Argument.TAP;
import static ampersheet.model.Argument.TIME;
import static ampersheet.model.Argument.VOLTAGE;

import ampersheet.circuit.Netlist;
import ampersheet.circuit.OperatingPoint;
import ampersheet.circuit.PartValue;
import ampersheet.circuit.PlacedPart;
import ampersheet.circuit.Schematic;
import ampersheet.circuit.TransientSolver;
import ampersheet.formula.Values;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Elementary;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.function.Supplier;
import java.util.function.ToDoubleBiFunction;

/** A circuit with numbers: what is drawn, what is connected, and its operating point. */
public final class CircuitModel implements Model {
    private static final double EQUAL_VOLTAGES = 1e-10;

    static final List<Measure> MEASURES = List.of(
            measure(
                    "voltage",
                    List.of(CIRCUIT_NODE),
                    Dimension.VOLTAGE,
                    "voltage of a node against the reference node",
                    (circuit, asked) -> circuit.operatingPoint().voltage(asked.name(0))),
            measure(
                    "voltage",
                    List.of(CIRCUIT_NODE, CIRCUIT_NODE),
                    Dimension.VOLTAGE,
                    "voltage of the first node against the second",
                    (circuit, asked) -> circuit.operatingPoint().voltage(asked.name(0))
                            - circuit.operatingPoint().voltage(asked.name(1))),
            measure(
                    "across",
                    List.of(PART),
                    Dimension.VOLTAGE,
                    "voltage across a part",
                    (circuit, asked) -> circuit.operatingPoint().across(asked.name(0))),
            measure(
                    "current",
                    List.of(PART),
                    Dimension.CURRENT,
                    "current through a part",
                    (circuit, asked) -> circuit.operatingPoint().current(asked.name(0))),
            measure(
                    "power",
                    List.of(PART),
                    Dimension.POWER,
                    "power a part takes up, a source delivers",
                    (circuit, asked) -> circuit.operatingPoint().power(asked.name(0))),
            measure(
                    "tap_voltage",
                    List.of(STRIP, TAP),
                    Dimension.VOLTAGE,
                    "voltage across the load at a tap of a strip, from 1",
                    (circuit, asked) -> circuit.load(asked.name(0), asked.number(1) - 1, "tap")),
            measure(
                    "pixel_voltage",
                    List.of(PANEL, COLUMN, ROW),
                    Dimension.VOLTAGE,
                    "voltage across the pixel at column x and row y of a panel, from 0",
                    CircuitModel::pixelVoltage),
            measure(
                    "lowest_voltage",
                    List.of(STRIP_OR_PANEL),
                    Dimension.VOLTAGE,
                    "lowest voltage across any load of a strip or panel",
                    (circuit, asked) -> Collections.min(circuit.loads(asked.name(0)))),
            measure(
                    "lowest_tap",
                    List.of(STRIP),
                    Dimension.ONE,
                    "first tap of a strip with the lowest voltage",
                    (circuit, asked) -> lowestTap(circuit.loads(asked.name(0)))),
            measure(
                    "voltage_after",
                    List.of(CIRCUIT_NODE, TIME),
                    Dimension.VOLTAGE,
                    "voltage of a node after a time",
                    (circuit, asked) -> circuit.after(asked.seconds(1)).voltage(asked.name(0))),
            measure(
                    "current_after",
                    List.of(PART, TIME),
                    Dimension.CURRENT,
                    "current through a part after a time",
                    (circuit, asked) -> circuit.after(asked.seconds(1)).current(asked.name(0))),
            measure(
                    "time_until",
                    List.of(CIRCUIT_NODE, VOLTAGE),
                    Dimension.TIME,
                    "time until a node passes a voltage",
                    (circuit, asked) -> Solutions.of(
                            TransientSolver.timeUntil(circuit.netlist(), asked.name(0), asked.number(1)))));

    private final CircuitPlan plan;
    private final Once<List<PlacedPart>> parts;
    private final Once<Netlist> netlist;
    private final Once<OperatingPoint> operatingPoint;

    CircuitModel(CircuitPlan plan, Supplier<List<PlacedPart>> parts) {
        this.plan = plan;
        this.parts = new Once<>(parts);
        this.netlist = new Once<>(() -> plan.netlist(this.parts.get()));
        this.operatingPoint = new Once<>(() -> Solutions.of(netlist()));
    }

    private static Measure measure(
            String name,
            List<Argument> arguments,
            Dimension dimension,
            String meaning,
            ToDoubleBiFunction<CircuitModel, Arguments> reading) {
        return Measure.of(ModelKind.CIRCUIT, CircuitModel.class, name, arguments, dimension, meaning, reading);
    }

    @Override
    public CircuitPlan plan() {
        return plan;
    }

    @Override
    public CircuitModel with(Values values, Set<String> changed, Values.Measured others) {
        return new CircuitModel(plan, () -> plan.again(parts.get(), values, changed));
    }

    /** The same connections, between parts of other values. */
    public CircuitModel with(List<PlacedPart> others) {
        return new CircuitModel(plan, () -> others);
    }

    public Schematic schematic() {
        return new Schematic(parts.get());
    }

    public Netlist netlist() {
        return netlist.get();
    }

    /** @throws Unsolved with the circuit's own reason */
    public OperatingPoint operatingPoint() {
        return operatingPoint.get();
    }

    private OperatingPoint after(double seconds) {
        return Solutions.of(TransientSolver.after(netlist(), seconds));
    }

    private List<Double> loads(String part) {
        return operatingPoint().loads(part);
    }

    /** @param index from 0 */
    private double load(String part, double index, String what) {
        List<Double> loads = loads(part);
        if (!Elementary.isWhole(index) || index < 0 || index >= loads.size()) {
            throw new Unsolved(part + " has no such " + what);
        }
        return loads.get((int) index);
    }

    private double pixelVoltage(Arguments asked) {
        PlacedPart panel = parts.get().stream()
                .filter(part -> part.name().equals(asked.name(0)))
                .findFirst()
                .orElseThrow();
        double columns = panel.values().get(PartValue.COLUMNS);
        double x = asked.number(1);
        double y = asked.number(2);
        return load(panel.name(), x >= 0 && x < columns ? y * columns + x : -1, "pixel");
    }

    /** Of taps that are equal but for rounding, the first. */
    private static int lowestTap(List<Double> loads) {
        double lowest = Collections.min(loads);
        int tap = 0;
        while (loads.get(tap) - lowest > EQUAL_VOLTAGES * Math.abs(lowest)) {
            tap++;
        }
        return tap + 1;
    }
}
