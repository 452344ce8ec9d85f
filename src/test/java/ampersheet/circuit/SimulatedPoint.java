package ampersheet.circuit;

import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import ampersheet.render.ShortestDecimal;
import ampersheet.source.Languages;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** An operating point beside that of a general circuit simulator. */
final class SimulatedPoint {
    /**
     * Of the largest voltage or current of the circuit: an ideal diode's knee is some millivolts wide in the simulator.
     */
    static final double GAP = 2e-4;

    private SimulatedPoint() {}

    /**
     * Every node's voltage and every part's current.
     *
     * @param where told with a fault
     * @param faults takes what is further apart than {@link #GAP}
     * @return the largest gap, as a share of the largest voltage or current of the circuit
     */
    static double compare(Netlist netlist, String where, List<String> faults) throws IOException, InterruptedException {
        OperatingPoint point = assertInstanceOf(Outcome.Solved.class, OperatingPointSolver.solve(netlist), where)
                .point();
        Map<String, String> numbers = SpiceNetlist.numbers(netlist);
        Map<String, Double> ours = new TreeMap<>();
        double volts = 0;
        double amps = 0;
        for (String node : netlist.nodes()) {
            if (!node.equals(netlist.reference())) {
                ours.put("v(" + numbers.get(node) + ")", point.voltage(node));
                volts = Math.max(volts, Math.abs(point.voltage(node)));
            }
        }
        for (Netlist.Connected connected : netlist.parts()) {
            PlacedPart part = connected.part();
            double current = point.current(part.name(), part.kind().terminals().get(0));
            ours.put("i(vm_" + part.name().toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9_]", "_") + ")", current);
            amps = Math.max(amps, Math.abs(current));
        }
        Map<String, Double> theirs = CircuitSimulator.run(
                exact(SpiceNetlist.metered(netlist, where, ShortestDecimal::of, Languages.ENGLISH)),
                "op",
                List.copyOf(ours.keySet()));
        double widest = 0;
        for (Map.Entry<String, Double> each : ours.entrySet()) {
            double largest = each.getKey().startsWith("v") ? volts : amps;
            double apart = Math.abs(each.getValue() - theirs.get(each.getKey()));
            double gap = apart / Math.max(largest, 1e-9);
            widest = Math.max(widest, gap);
            if (!(gap <= GAP)) {
                faults.add(where + ": " + each.getKey() + " is " + each.getValue() + ", simulated "
                        + theirs.get(each.getKey()) + "\n"
                        + SpiceNetlist.of(netlist, where, Set.of(), ShortestDecimal::of, Languages.ENGLISH));
            }
        }
        return widest;
    }

    /**
     * Without what the simulator adds of its own: an ideal knee lets its IS through backwards, 1 µA, which is much
     * where nothing else flows; and it tells a short of 1 nΩ from kiloohms to four digits only, so that it gets one of
     * 1 µΩ.
     */
    private static String exact(String netlist) {
        return netlist.replace(" D(IS=1e-6 N=0.001)", " D(IS=1e-9 N=0.001)")
                .replaceAll("(?m)^(R\\S+ \\S+ \\S+) 1e-9$", "$1 1e-6");
    }
}
