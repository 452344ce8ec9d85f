package ampersheet.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import ampersheet.circuit.CircuitSimulator;
import ampersheet.model.HeatModel;
import ampersheet.model.HeatPlan;
import ampersheet.problem.Draws;
import ampersheet.problem.Notations;
import ampersheet.problem.Problem;
import ampersheet.problem.Workshop;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Quantity;
import ampersheet.render.ShortestDecimal;
import ampersheet.template.ChosenTemplates;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateReader;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * A heat path is a network too: kelvins are volts, watts are amperes, K/W ohms and J/K farads. A general circuit
 * simulator solves every drawn one, steady and after every time that the problem speaks of. Losses that follow the
 * temperature are put in at the temperature found: a fixed point of both.
 */
class HeatSimulatorTest {
    private static final String SEED = "simulator";
    private static final int DRAWS = Boolean.getBoolean("ampersheet.deep") ? 20 : 2;
    /** Kelvin; the simulator starts from 0 V, so that some 400 V are 400 K. */
    private static final double GAP = 0.02;

    @TestFactory
    Stream<DynamicTest> theSimulatorFindsTheSameTemperatures() {
        CircuitSimulator.need();
        TemplateFiles files = TemplateFiles.builtIn();
        return ChosenTemplates.of(files).stream()
                .map(name -> TemplateReader.read(files, name))
                .filter(template -> template.model(HeatPlan.class).isPresent())
                .map(template -> DynamicTest.dynamicTest(template.name(), () -> judge(template)));
    }

    private static void judge(ProblemTemplate template) throws IOException, InterruptedException {
        Draws draws = new Draws(new Workshop(template), SEED);
        List<String> faults = new ArrayList<>();
        for (int draw = 0; draw < DRAWS; draw++) {
            Problem problem = draws.draw(draw);
            HeatNetwork network =
                    problem.model(HeatModel.class).map(HeatModel::network).orElseThrow();
            String where = "seed " + SEED + ", draw " + draw + " ("
                    + Notations.givensInOneLine(template, problem.givens()) + ")";
            compare(network, HeatSolver.steady(network), "op", where, faults);
            boolean stores = network.nodes().stream().anyMatch(node -> node.capacity() > 0);
            for (double seconds : stores ? times(problem) : List.<Double>of()) {
                String step = ShortestDecimal.of(seconds / 4000);
                compare(
                        network,
                        HeatSolver.after(network, seconds),
                        "tran " + step + " " + ShortestDecimal.of(seconds) + " 0 " + step + " uic",
                        where + " after " + seconds + " s",
                        faults);
            }
        }
        assertEquals(List.of(), faults);
    }

    private static List<Double> times(Problem problem) {
        return problem.values().quantities().values().stream()
                .filter(quantity -> quantity.dimension().equals(Dimension.TIME) && quantity.value() > 0)
                .map(Quantity::value)
                .distinct()
                .toList();
    }

    private static void compare(
            HeatNetwork network, HeatSolver.Outcome outcome, String analysis, String where, List<String> faults)
            throws IOException, InterruptedException {
        Map<String, Double> kelvin = assertInstanceOf(HeatSolver.Outcome.Solved.class, outcome, where)
                .kelvin();
        Map<String, Integer> number = new LinkedHashMap<>();
        StringBuilder netlist = new StringBuilder("* heat\n");
        for (HeatNetwork.Ambient ambient : network.ambients()) {
            number.put(ambient.name(), number.size() + 1);
            line(netlist, "V" + number.get(ambient.name()), number.get(ambient.name()), 0, ambient.kelvin(), "");
        }
        network.nodes().forEach(node -> number.put(node.name(), number.size() + 1));
        for (HeatNetwork.Node node : network.nodes()) {
            if (node.capacity() > 0) {
                line(
                        netlist,
                        "C" + number.get(node.name()),
                        number.get(node.name()),
                        0,
                        node.capacity(),
                        " IC=" + node.initial());
            }
        }
        int count = 0;
        for (HeatNetwork.Resistance resistance : network.resistances()) {
            line(
                    netlist,
                    "R" + ++count,
                    number.get(resistance.from()),
                    number.get(resistance.to()),
                    resistance.kelvinPerWatt(),
                    "");
        }
        for (HeatNetwork.Loss loss : network.losses()) {
            line(
                    netlist,
                    "I" + ++count,
                    0,
                    number.get(loss.into()),
                    loss.watts().watts(kelvin::get),
                    "");
        }
        Map<String, Double> wanted = new TreeMap<>();
        network.nodes().forEach(node -> wanted.put("v(" + number.get(node.name()) + ")", kelvin.get(node.name())));
        List<String> printed = analysis.equals("op")
                ? List.copyOf(wanted.keySet())
                : wanted.keySet().stream()
                        .map(each -> each + "[length(" + each + ")-1]")
                        .toList();
        Map<String, Double> theirs = CircuitSimulator.run(netlist + ".end\n", analysis, printed);
        wanted.forEach((name, ours) -> {
            double found = theirs.entrySet().stream()
                    .filter(each -> each.getKey().startsWith(name))
                    .findFirst()
                    .orElseThrow()
                    .getValue();
            if (!(Math.abs(found - ours) <= GAP)) {
                faults.add(where + ": " + name + " is " + ours + " K, simulated " + found + "\n" + netlist);
            }
        });
    }

    private static void line(StringBuilder to, String name, int from, int into, double value, String more) {
        to.append(name)
                .append(' ')
                .append(from)
                .append(' ')
                .append(into)
                .append(' ')
                .append(ShortestDecimal.of(value))
                .append(more)
                .append('\n');
    }
}
