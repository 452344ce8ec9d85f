package ampersheet.circuit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.OnlyDeep;
import ampersheet.formula.Evaluation;
import ampersheet.formula.Expression;
import ampersheet.formula.Values;
import ampersheet.model.CircuitModel;
import ampersheet.model.CircuitPlan;
import ampersheet.model.Models;
import ampersheet.problem.Draws;
import ampersheet.problem.Notations;
import ampersheet.problem.Problem;
import ampersheet.problem.Workshop;
import ampersheet.quantity.Quantity;
import ampersheet.template.ChosenTemplates;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.Proof;
import ampersheet.template.ProblemTemplate.Tolerance;
import ampersheet.template.ProblemTemplate.Way;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateReader;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * A proof may ask for another state than the one that is drawn: a load taken off, the other end of a range, every
 * corner of the tolerances. Each such circuit goes to a general circuit simulator, as {@link SimulatorTest} does with
 * those that are drawn: ten draws of each template.
 */
class ProofStatesInTheSimulatorTest {
    private static final String SEED = "proof-states";
    private static final int DRAWS = 10;
    private static final Map<String, Integer> STATES = new ConcurrentSkipListMap<>();
    private static final Map<String, Double> LARGEST = new ConcurrentSkipListMap<>();

    @OnlyDeep
    @TestFactory
    Stream<DynamicTest> theSimulatorAgreesInEveryStateThatAProofAsksFor() {
        CircuitSimulator.need();
        TemplateFiles files = TemplateFiles.builtIn();
        return ChosenTemplates.of(files).stream()
                .map(name -> TemplateReader.read(files, name))
                .filter(template -> template.model(CircuitPlan.class).isPresent())
                .filter(template ->
                        template.proofs().stream().anyMatch(ProofStatesInTheSimulatorTest::isOfAnotherState))
                .map(template -> DynamicTest.dynamicTest(template.name(), () -> judge(template)));
    }

    @AfterAll
    static void tell() {
        STATES.forEach((template, states) -> System.out.printf(
                Locale.ROOT, "states of proofs: %s %d, largest gap %.1e%n", template, states, LARGEST.get(template)));
    }

    private static boolean isOfAnotherState(Proof proof) {
        return !proof.with().isEmpty() || proof.way() instanceof Way.Extreme;
    }

    private static void judge(ProblemTemplate template) throws IOException, InterruptedException {
        Draws draws = new Draws(new Workshop(template), SEED);
        List<String> faults = new ArrayList<>();
        int judged = 0;
        for (int draw = 0; draw < DRAWS; draw++) {
            Problem problem = draws.draw(draw);
            String where = "seed " + SEED + ", draw " + draw + " ("
                    + Notations.givensInOneLine(template, problem.givens()) + ")";
            for (Map<String, Quantity> state : states(problem)) {
                Netlist netlist = in(problem, state).netlist();
                LARGEST.merge(
                        template.name(), SimulatedPoint.compare(netlist, where + " with " + state, faults), Math::max);
                judged++;
            }
        }
        STATES.put(template.name(), judged);
        assertEquals(List.of(), faults);
        assertTrue(judged > 0, "no state was judged");
    }

    private static CircuitModel in(Problem problem, Map<String, Quantity> state) {
        Values values = problem.values();
        for (Map.Entry<String, Quantity> other : state.entrySet()) {
            values = values.with(other.getKey(), other.getValue());
        }
        return Models.of(problem.model(CircuitModel.class).orElseThrow())
                .with(values, state.keySet())
                .find(CircuitModel.class)
                .orElseThrow();
    }

    /** The values that are other than drawn. */
    private static List<Map<String, Quantity>> states(Problem problem) {
        List<Map<String, Quantity>> states = new ArrayList<>();
        for (Proof proof : problem.template().proofs()) {
            Map<String, Quantity> set = new LinkedHashMap<>();
            for (Map.Entry<String, Expression> other : proof.with().entrySet()) {
                set.put(other.getKey(), Evaluation.evaluate(other.getValue(), problem.values()));
            }
            if (proof.way() instanceof Way.Extreme extreme) {
                states.addAll(corners(extreme.tolerances(), set, problem.values()));
            } else if (!set.isEmpty()) {
                states.add(set);
            }
        }
        return states.stream().distinct().toList();
    }

    private static List<Map<String, Quantity>> corners(
            List<Tolerance> tolerances, Map<String, Quantity> set, Values nominal) {
        List<Map<String, Quantity>> corners = new ArrayList<>();
        for (int ends = 0; ends < 1 << tolerances.size(); ends++) {
            Map<String, Quantity> corner = new LinkedHashMap<>(set);
            for (int i = 0; i < tolerances.size(); i++) {
                Tolerance tolerance = tolerances.get(i);
                corner.put(
                        tolerance.of(),
                        Evaluation.evaluate((ends >> i & 1) == 1 ? tolerance.high() : tolerance.low(), nominal));
            }
            corners.add(corner);
        }
        return corners;
    }
}
