package ampersheet.bench;

import ampersheet.circuit.Netlist;
import ampersheet.circuit.Netlist.Connected;
import ampersheet.circuit.OperatingPoint;
import ampersheet.circuit.OperatingPointSolver;
import ampersheet.circuit.Outcome;
import ampersheet.circuit.PartKind;
import ampersheet.circuit.PartValue;
import ampersheet.circuit.PlacedPart;
import ampersheet.model.CircuitModel;
import ampersheet.model.Unsolved;
import ampersheet.quantity.Dimension;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A circuit with the meter in it: a large resistance between two nodes, or a small one in the way of a current. */
final class MeteredCircuit {
    private static final String METER = "meter in the circuit";

    private final CircuitModel wired;
    private final Probes probes;
    private final BenchMeter meter;

    /** @param wired any parts with the circuit's connections */
    MeteredCircuit(CircuitModel wired, Probes probes, BenchMeter meter) {
        this.wired = wired;
        this.probes = probes;
        this.meter = meter;
    }

    /**
     * What flows or lies there with these parts, whatever the meter makes of it.
     *
     * @param range on which the meter stands
     */
    double measured(List<PlacedPart> parts, BenchMeter.Range range) {
        Netlist netlist = wired.with(parts).netlist();
        if (probes instanceof Probes.Current current) {
            return opened(netlist, current, range.ohms()).current(METER);
        }
        Probes.Voltage voltage = (Probes.Voltage) probes;
        List<Connected> all = new ArrayList<>(netlist.parts());
        all.add(resistor(BenchMeter.VOLTMETER_OHMS, voltage.red(), voltage.black()));
        return solve(new Netlist(all, netlist.nodes(), netlist.nodeAt(), netlist.doubts()))
                .across(METER);
    }

    /**
     * The finest range for what the coarsest one shows, which is least in the way: a circuit need not work with more.
     */
    BenchMeter.Range range(List<PlacedPart> parts) {
        List<BenchMeter.Range> ranges =
                meter.ranges(probes instanceof Probes.Current ? Dimension.CURRENT : Dimension.VOLTAGE);
        BenchMeter.Range coarsest = ranges.get(ranges.size() - 1);
        double undisturbed = measured(parts, coarsest);
        return ranges.stream()
                .filter(range -> range.holds(undisturbed))
                .findFirst()
                .orElse(coarsest);
    }

    private static OperatingPoint opened(Netlist netlist, Probes.Current current, double ohms) {
        List<Connected> all = new ArrayList<>();
        String at = "";
        for (Connected connected : netlist.parts()) {
            if (connected.part().name().equals(current.part())) {
                Map<String, String> moved = new LinkedHashMap<>(connected.node());
                at = moved.put(current.terminal(), METER);
                all.add(new Connected(connected.part(), moved));
            } else {
                all.add(connected);
            }
        }
        all.add(current.redAtPart() ? resistor(ohms, METER, at) : resistor(ohms, at, METER));
        List<String> nodes = new ArrayList<>(netlist.nodes());
        nodes.add(METER);
        return solve(new Netlist(all, nodes, netlist.nodeAt(), netlist.doubts()));
    }

    private static Connected resistor(double ohms, String from, String to) {
        return new Connected(
                new PlacedPart(PartKind.RESISTOR, METER, Map.of(), Map.of(PartValue.OHMS, ohms)),
                Map.of("from", from, "to", to));
    }

    private static OperatingPoint solve(Netlist netlist) {
        if (OperatingPointSolver.solve(netlist) instanceof Outcome.Solved solved) {
            return solved.point();
        }
        throw new Unsolved("the circuit with the meter in it has no solution");
    }
}
