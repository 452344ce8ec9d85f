package ampersheet.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.Judge;
import ampersheet.answer.ProblemKey;
import ampersheet.answer.Rung;
import ampersheet.answer.Verdict;
import ampersheet.circuit.GridPoint;
import ampersheet.circuit.OperatingPoint;
import ampersheet.circuit.OperatingPointSolver;
import ampersheet.circuit.Outcome;
import ampersheet.circuit.PartKind;
import ampersheet.circuit.PartValue;
import ampersheet.circuit.PlacedPart;
import ampersheet.circuit.Schematic;
import ampersheet.quantity.PreferredSeries;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateReader;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * Design tasks: what a brute-force search by the circuit solver accepts is what the check accepts, and nothing else.
 */
class DesignTest {
    private static final int DRAWS = Boolean.getBoolean("ampersheet.deep") ? 8 : 2;
    private static final int CHOICES = Boolean.getBoolean("ampersheet.deep") ? 50 : 10;
    /** What the solver may be off; a pair this near a limit must lie exactly on it. */
    private static final double SOLVED = 1e-9;

    private static Draws draws(String template, String seed) {
        return new Draws(new Workshop(TemplateReader.read(TemplateFiles.builtIn(), template)), seed);
    }

    /** Drawn here by hand, not by the template: a source, an upper and a lower resistor. */
    private static OperatingPoint divider(double volts, double upper, double lower) {
        GridPoint bottom = new GridPoint(0, 0);
        GridPoint top = new GridPoint(0, 8);
        GridPoint middle = new GridPoint(0, 4);
        Schematic schematic = new Schematic(List.of(
                new PlacedPart(
                        PartKind.SOURCE, "V1", Map.of("from", bottom, "to", top), Map.of(PartValue.VOLTS, volts)),
                new PlacedPart(
                        PartKind.RESISTOR, "RU", Map.of("from", top, "to", middle), Map.of(PartValue.OHMS, upper)),
                new PlacedPart(
                        PartKind.RESISTOR, "RL", Map.of("from", middle, "to", bottom), Map.of(PartValue.OHMS, lower)),
                new PlacedPart(PartKind.GROUND, "ground", Map.of("at", bottom), Map.of())));
        return ((Outcome.Solved) OperatingPointSolver.solve(schematic.netlist())).point();
    }

    private static String typed(double ohms) {
        return ohms / 1000 + " kohm";
    }

    private static Rung judged(ProblemKey key, double upper, double lower) {
        List<Verdict> verdicts = Judge.judge(key, Map.of("q1b", typed(upper), "q1c", typed(lower)));
        assertEquals(
                verdicts.get(1).rung() == Rung.CORRECT,
                verdicts.get(2).rung() == Rung.CORRECT,
                "both blanks are right together, or neither");
        return verdicts.get(1).rung();
    }

    @Test
    void aDesignTaskAcceptsEveryValidPairOfABruteForceSearchAndNoInvalidOne() {
        List<Double> values = PreferredSeries.E24.between(1, 1e7);
        Draws draws = draws("voltage-dividers/design-pair", "brute force");
        for (int k = 0; k < DRAWS; k++) {
            Problem problem = draws.draw(k);
            ProblemKey key = AnswerKeys.keyOf(problem, "q1", true);
            double supply = problem.givens().quantity("Vin").value();
            double wanted = problem.givens().quantity("Vout").value();
            double error = problem.givens().quantity("tol").value();
            double most = problem.givens().quantity("Imax").value();
            int accepted = 0;
            int solved = 0;
            List<String> differences = new ArrayList<>();
            for (double upper : values) {
                for (double lower : values) {
                    OperatingPoint point = divider(supply, upper, lower);
                    solved++;
                    double off = Math.abs(point.across("RL") / wanted - 1);
                    double draw = point.current("RU") / most;
                    boolean inDrawer = upper >= 1e3 && upper <= 1e6 && lower >= 1e3 && lower <= 1e6;
                    boolean valid = inDrawer && off <= error * (1 + SOLVED) && draw <= 1 + SOLVED;
                    boolean told = judged(key, upper, lower) == Rung.CORRECT;
                    accepted += told ? 1 : 0;
                    if (told != valid) {
                        differences.add(upper + " over " + lower + ": by the solver " + off + " off and " + draw
                                + " of the current");
                    }
                }
            }
            assertEquals(List.of(), differences, Notations.givensInOneLine(problem.template(), problem.givens()));
            assertTrue(solved >= 28_000 && accepted >= 1, solved + " solved, " + accepted + " accepted");
            assertEquals(accepted, problem.designs().get(0).accepted(), "as counted when drawn");
            System.out.println("design-pair, draw " + k + ": " + solved + " pairs solved, " + accepted + " right");
        }
    }

    /** Resistors side by side across a source, each drawn by itself. */
    private static OperatingPoint sideBySide(double volts, List<Double> ohms) {
        List<PlacedPart> parts = new ArrayList<>();
        GridPoint bottom = new GridPoint(0, 0);
        GridPoint top = new GridPoint(0, 8);
        parts.add(new PlacedPart(
                PartKind.SOURCE, "V1", Map.of("from", bottom, "to", top), Map.of(PartValue.VOLTS, volts)));
        for (int i = 0; i < ohms.size(); i++) {
            parts.add(new PlacedPart(
                    PartKind.RESISTOR,
                    "R" + i,
                    Map.of("from", top, "to", bottom),
                    Map.of(PartValue.OHMS, ohms.get(i))));
        }
        parts.add(new PlacedPart(PartKind.GROUND, "ground", Map.of("at", bottom), Map.of()));
        return ((Outcome.Solved) OperatingPointSolver.solve(new Schematic(parts).netlist())).point();
    }

    @Test
    void everyPairSideBySideIsAcceptedIfItsSolvedCurrentIsWithinTheError() {
        List<Double> values = PreferredSeries.E24.between(10, 1e7);
        Problem problem =
                draws("current-limiting/design-odd-value", "brute force").draw(0);
        ProblemKey key = AnswerKeys.keyOf(problem, "q1", true);
        double error = problem.givens().quantity("tol").value();
        int accepted = 0;
        List<String> differences = new ArrayList<>();
        for (double one : values) {
            for (double other : values) {
                double amps = sideBySide(problem.givens().quantity("V").value(), List.of(one, other))
                        .current("V1");
                double off = Math.abs(amps / problem.givens().quantity("I").value() - 1);
                boolean valid =
                        Math.min(one, other) >= 100 && Math.max(one, other) <= 1e6 && off <= error * (1 + SOLVED);
                boolean told = judged(key, one, other) == Rung.CORRECT;
                accepted += told ? 1 : 0;
                if (told != valid) {
                    differences.add(one + " beside " + other + ": by the solver " + off + " off");
                }
            }
        }
        assertEquals(List.of(), differences, Notations.givensInOneLine(problem.template(), problem.givens()));
        assertEquals(problem.designs().get(0).accepted(), accepted);
        System.out.println(
                "design-odd-value: " + values.size() * values.size() + " pairs solved, " + accepted + " right");
    }

    @Test
    void everyTestLoadIsAcceptedIfItsSolvedCurrentAndHeatKeepTheLimits() {
        List<Double> values = PreferredSeries.E24.between(10, 1e4);
        Draws draws = draws("thermal-rise/design-test-load", "brute force");
        for (int k = 0; k < 3; k++) {
            Problem problem = draws.draw(k);
            ProblemKey key = AnswerKeys.keyOf(problem, "q1", true);
            double theta = problem.givens().quantity("theta").value();
            double room = problem.givens().quantity("Tmax").value()
                    - problem.givens().quantity("Ta").value();
            int accepted = 0;
            List<String> differences = new ArrayList<>();
            for (int n = 1; n <= 24; n++) {
                for (double ohms : values) {
                    OperatingPoint point =
                            sideBySide(problem.givens().quantity("V").value(), Collections.nCopies(n, ohms));
                    double off = Math.abs(
                            point.current("V1") / problem.givens().quantity("I").value() - 1);
                    double rise = point.power("R0") * theta;
                    boolean valid = off <= 0.05 * (1 + SOLVED) && rise <= room * (1 + SOLVED);
                    boolean told = Judge.judge(key, Map.of("q1b", Integer.toString(n), "q1c", typed(ohms)))
                                    .get(1)
                                    .rung()
                            == Rung.CORRECT;
                    accepted += told ? 1 : 0;
                    if (told != valid) {
                        differences.add(
                                n + " of " + ohms + ": by the solver " + off + " off, " + rise + " K of " + room);
                    }
                }
            }
            assertEquals(List.of(), differences, Notations.givensInOneLine(problem.template(), problem.givens()));
            assertEquals(problem.designs().get(0).accepted(), accepted);
        }
    }

    @Test
    void everyTemplateWithADesignOffersAChoiceAndSolvesWhatLiesNearItsLimits() {
        for (String name : TemplateFiles.builtIn().names()) {
            Draws draws = draws(name, "choices");
            if (draws.template().designs().isEmpty()) {
                continue;
            }
            List<Problem> problems =
                    IntStream.range(0, CHOICES).mapToObj(draws::draw).toList();
            long several = problems.stream()
                    .filter(problem -> problem.designs().get(0).accepted() > 1)
                    .count();
            long solved = problems.stream()
                    .mapToLong(problem -> problem.designs().get(0).solved())
                    .sum();
            assertTrue(
                    several >= 0.9 * CHOICES, name + ": only " + several + " of " + CHOICES + " draws leave a choice");
            // Of a single preferred value few lie near a limit.
            for (int draw = CHOICES; solved == 0 && draw < 400; draw++) {
                solved = draws.draw(draw).designs().get(0).solved();
            }
            assertTrue(solved > 0, name + ": no choice near a limit was solved in 400 draws");
        }
    }

    @Test
    void aBlankWithoutItsPartnerIsNotJudgedYet() {
        ProblemKey key = AnswerKeys.keyOf(
                draws("voltage-dividers/design-pair", "partner").draw(0), "q1", true);
        AnswerKey upper = key.answers().get(1);
        List<Verdict> verdicts = Judge.judge(key, Map.of("q1b", typed(upper.expected())));
        assertEquals(Rung.INCOMPLETE, verdicts.get(1).rung());
        assertEquals(Rung.BLANK, verdicts.get(2).rung());
        assertTrue(verdicts.get(1).message().contains("q1c"), verdicts.get(1).message());
        List<Verdict> unreadable = Judge.judge(key, Map.of("q1b", typed(upper.expected()), "q1c", "what"));
        assertEquals(Rung.INCOMPLETE, unreadable.get(1).rung());
        assertEquals(Rung.UNREADABLE, unreadable.get(2).rung());
    }

    @Test
    void aFailedCriterionTellsWhatTheValuesGiveAndWhatWasWanted() {
        Problem problem = ((Attempt.Worked) draws("voltage-dividers/design-pair", "told")
                        .work(ChosenGivens.read(
                                TemplateReader.read(TemplateFiles.builtIn(), "voltage-dividers/design-pair"),
                                new LinkedHashMap<>(Map.of("Vin", "12V", "Vout", "3.3V", "Imax", "1mA", "tol", "3%")))))
                .problem();
        ProblemKey key = AnswerKeys.keyOf(problem, "q1", true);
        Verdict high = Judge.judge(key, Map.of("q1b", "10k", "q1c", "4k7")).get(1);
        assertEquals("too-high", high.mistake().orElseThrow());
        // 12 V · 4.7 kΩ / 14.7 kΩ = 3.837 V; 3 % above 3.3 V is 3.399 V
        assertEquals(
                "The output is too high: the upper resistor is too small beside the lower one. Your values give "
                        + "V = 3.837 V, but V ≤ 3.399 V is wanted.",
                high.message().replace('\u00a0', ' '));
        Verdict current = Judge.judge(key, Map.of("q1b", "5k1", "q1c", "2k")).get(2);
        // 12 V / 7.1 kΩ = 1.690 mA; 12 V · 2 kΩ / 7.1 kΩ = 3.380 V lies within 3 %
        assertEquals("current", current.mistake().orElseThrow());
        assertTrue(
                current.message().replace('\u00a0', ' ').contains("I = 1.69 mA, but I ≤ 1 mA is wanted"),
                current.message());
    }

    @Test
    void whatFollowsFromAnAcceptedDesignIsRightThoughItIsNotTheKey() {
        Problem problem = draws("voltage-dividers/design-pair", "own").draw(3);
        ProblemKey key = AnswerKeys.keyOf(problem, "q1", true);
        Acceptance.Designed designed =
                (Acceptance.Designed) key.answers().get(1).acceptance();
        double supply = problem.givens().quantity("Vin").value();
        int others = 0;
        for (double upper : designed.members()) {
            for (double lower : designed.members()) {
                double amps = divider(supply, upper, lower).current("RU");
                if (judged(key, upper, lower) == Rung.CORRECT
                        && Math.abs(amps / key.answers().get(3).expected() - 1) > 0.05) {
                    others++;
                    Verdict verdict = Judge.judge(
                                    key, Map.of("q1b", typed(upper), "q1c", typed(lower), "q1d", amps * 1000 + " mA"))
                            .get(3);
                    assertEquals(Rung.CORRECT, verdict.rung(), upper + " over " + lower + ": " + verdict);
                }
            }
        }
        assertTrue(others > 0, "no other pair");
    }
}
