package ampersheet.circuit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import ampersheet.model.CircuitPlan;
import ampersheet.problem.Draws;
import ampersheet.problem.Notations;
import ampersheet.problem.Problem;
import ampersheet.problem.Workshop;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Quantity;
import ampersheet.render.ShortestDecimal;
import ampersheet.source.Languages;
import ampersheet.template.ChosenTemplates;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateReader;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * Every drawn circuit, solved by a general circuit simulator: each node and each part's current, and where there are
 * capacitors each node after every time that the problem speaks of. A draw of each template, 20 with {@code -Pdeep}; a
 * failure names the seed and the number of the draw.
 */
class SimulatorTest {
    private static final String SEED = "simulator";
    private static final int DRAWS = Boolean.getBoolean("ampersheet.deep") ? 20 : 1;
    /**
     * Of the largest voltage or current of the circuit: an ideal diode's knee is some millivolts wide in the simulator.
     */
    private static final double GAP = 2e-4;

    private static final Map<String, Double> LARGEST = new ConcurrentSkipListMap<>();

    @TestFactory
    Stream<DynamicTest> theSimulatorFindsTheSameVoltagesAndCurrents() {
        CircuitSimulator.need();
        TemplateFiles files = TemplateFiles.builtIn();
        return ChosenTemplates.of(files).stream()
                .map(name -> TemplateReader.read(files, name))
                .filter(template -> template.model(CircuitPlan.class).isPresent())
                .map(template -> DynamicTest.dynamicTest(template.name(), () -> judge(template)));
    }

    @AfterAll
    static void tell() {
        LARGEST.entrySet().stream()
                .sorted(Map.Entry.<String, Double>comparingByValue().reversed())
                .limit(10)
                .forEach(entry ->
                        System.out.printf(Locale.ROOT, "simulator: %s %.1e%n", entry.getKey(), entry.getValue()));
        System.out.println("simulator: " + LARGEST.size() + " templates, " + DRAWS + " draws each");
    }

    private static void judge(ProblemTemplate template) throws IOException, InterruptedException {
        Draws draws = new Draws(new Workshop(template), SEED);
        List<String> faults = new ArrayList<>();
        for (int draw = 0; draw < DRAWS; draw++) {
            Problem problem = draws.draw(draw);
            Netlist netlist = problem.schematic().orElseThrow().netlist();
            OperatingPoint point = assertInstanceOf(Outcome.Solved.class, OperatingPointSolver.solve(netlist))
                    .point();
            String where = "seed " + SEED + ", draw " + draw + " ("
                    + Notations.givensInOneLine(template, problem.givens()) + ")";
            compare(template.name(), netlist, point, where, faults);
            if (netlist.parts().stream().anyMatch(connected -> connected.part().kind() == PartKind.CAPACITOR)) {
                for (double seconds : times(problem)) {
                    compareAfter(template.name(), netlist, seconds, where, faults);
                }
            }
        }
        assertEquals(List.of(), faults);
    }

    /** What the problem itself speaks of. */
    private static List<Double> times(Problem problem) {
        return problem.values().quantities().values().stream()
                .filter(quantity -> quantity.dimension().equals(Dimension.TIME) && quantity.value() > 0)
                .map(Quantity::value)
                .distinct()
                .toList();
    }

    /** Over time from the start, by the simulator's own integration. */
    private static void compareAfter(
            String template, Netlist netlist, double seconds, String where, List<String> faults)
            throws IOException, InterruptedException {
        OperatingPoint point = assertInstanceOf(Outcome.Solved.class, TransientSolver.after(netlist, seconds))
                .point();
        double volts = 0;
        List<String> measured = new ArrayList<>();
        Map<String, Double> ours = new TreeMap<>();
        String at = ShortestDecimal.of(seconds);
        for (Map.Entry<String, String> node : SpiceNetlist.numbers(netlist).entrySet()) {
            if (!node.getKey().equals(netlist.reference())) {
                measured.add("meas tran n" + node.getValue() + " find v(" + node.getValue() + ") at=" + at);
                ours.put("n" + node.getValue(), point.voltage(node.getKey()));
                volts = Math.max(volts, Math.abs(point.voltage(node.getKey())));
            }
        }
        String step = ShortestDecimal.of(seconds / 4000);
        String end = ShortestDecimal.of(seconds * 1.001);
        Map<String, Double> theirs = CircuitSimulator.measure(
                SpiceNetlist.of(netlist, where, Set.of(), ShortestDecimal::of, Languages.ENGLISH),
                "tran " + step + " " + end + " 0 " + step + " uic",
                measured,
                ours.keySet());
        for (Map.Entry<String, Double> each : ours.entrySet()) {
            double gap = Math.abs(each.getValue() - theirs.get(each.getKey())) / volts;
            LARGEST.merge(template + " after a time", gap, Math::max);
            if (!(gap <= GAP)) {
                faults.add(where + ", after " + at + " s: node " + each + ", simulated " + theirs.get(each.getKey()));
            }
        }
    }

    private static void compare(
            String template, Netlist netlist, OperatingPoint point, String where, List<String> faults)
            throws IOException, InterruptedException {
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
                SpiceNetlist.metered(netlist, where, ShortestDecimal::of, Languages.ENGLISH),
                "op",
                List.copyOf(ours.keySet()));
        for (Map.Entry<String, Double> each : ours.entrySet()) {
            double largest = each.getKey().startsWith("v") ? volts : amps;
            double gap = Math.abs(each.getValue() - theirs.get(each.getKey())) / Math.max(largest, 1e-9);
            LARGEST.merge(template, gap, Math::max);
            if (!(gap <= GAP)) {
                faults.add(where + ": " + each.getKey() + " is " + each.getValue() + ", simulated "
                        + theirs.get(each.getKey()) + "\n"
                        + SpiceNetlist.of(netlist, where, Set.of(), ShortestDecimal::of, Languages.ENGLISH));
            }
        }
    }
}
