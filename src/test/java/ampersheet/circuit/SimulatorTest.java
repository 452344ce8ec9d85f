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
            String where = "seed " + SEED + ", draw " + draw + " ("
                    + Notations.givensInOneLine(template, problem.givens()) + ")";
            LARGEST.merge(template.name(), SimulatedPoint.compare(netlist, where, faults), Math::max);
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
            if (!(gap <= SimulatedPoint.GAP)) {
                faults.add(where + ", after " + at + " s: node " + each + ", simulated " + theirs.get(each.getKey()));
            }
        }
    }
}
