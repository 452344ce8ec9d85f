package ampersheet.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.OnlyDeep;
import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.Judge;
import ampersheet.answer.LadderProbe;
import ampersheet.answer.ProblemKey;
import ampersheet.answer.Rung;
import ampersheet.answer.Spellings;
import ampersheet.answer.Verdict;
import ampersheet.circuit.OperatingPoint;
import ampersheet.circuit.OperatingPointSolver;
import ampersheet.circuit.Outcome;
import ampersheet.circuit.PartKind;
import ampersheet.circuit.Schematic;
import ampersheet.circuit.TransientSolver;
import ampersheet.formula.Evaluation;
import ampersheet.formula.Expression;
import ampersheet.formula.Values;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Elementary;
import ampersheet.quantity.Quantity;
import ampersheet.template.ChosenTemplates;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.ChoiceAsk;
import ampersheet.template.ProblemTemplate.ChoiceOption;
import ampersheet.template.ProblemTemplate.StepLine;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateReader;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * What holds for whatever is drawn from any template in the jar. A failure names the seed and the number of the draw.
 */
class EveryTemplateTest {
    private static final String SEED = "every-template";
    private static final int DRAWS = Boolean.getBoolean("ampersheet.deep") ? 200 : 12;
    private static final int LATEST = Math.max(DRAWS, 75);
    private static final int SPELLINGS = 10_000;
    private static final int LEAST_VARIANTS = 2_000;

    /**
     * Of two sides of a verdict, relative to the larger; of temperatures, of the kelvins: 0.1 K at a junction's limit.
     */
    private static final double LEAST_MARGIN = 3e-4;

    /** Of the largest current, and of the power delivered. */
    private static final double RESIDUAL = 1e-9;

    private static final Map<String, List<Problem>> PROBLEMS = new TreeMap<>();

    @BeforeAll
    static void draw() {
        TemplateFiles files = TemplateFiles.builtIn();
        ChosenTemplates.of(files).parallelStream().forEach(name -> {
            Draws draws = new Draws(new Workshop(TemplateReader.read(files, name)), SEED);
            List<Problem> drawn =
                    IntStream.range(0, DRAWS).mapToObj(draws::draw).toList();
            synchronized (PROBLEMS) {
                PROBLEMS.put(name, drawn);
            }
        });
    }

    private static Stream<DynamicTest> forEachTemplate(java.util.function.Consumer<List<Problem>> test) {
        return PROBLEMS.entrySet().stream()
                .map(each -> DynamicTest.dynamicTest(each.getKey(), () -> test.accept(each.getValue())));
    }

    private static String replay(List<Problem> problems, int draw) {
        Problem problem = problems.get(draw);
        return problem.template().name() + ", seed " + SEED + ", draw " + draw + " ("
                + Notations.givensInOneLine(problem.template(), problem.givens()) + ")";
    }

    @TestFactory
    Stream<DynamicTest> currentsAndPowersOfEveryDrawnCircuitBalance() {
        return forEachTemplate(problems -> {
            for (int draw = 0; draw < problems.size(); draw++) {
                if (problems.get(draw).schematic().isPresent()) {
                    balance(problems.get(draw).schematic().get(), replay(problems, draw));
                }
            }
        });
    }

    /** Steady, and where a capacitor may stop every current in the end, also as the sources come on. */
    private static void balance(Schematic schematic, String replay) {
        boolean fills = schematic.parts().stream().anyMatch(part -> part.kind() == PartKind.CAPACITOR);
        if (fills) {
            balance(schematic, TransientSolver.after(schematic.netlist(), 0), true, replay + " at the start");
        }
        balance(schematic, OperatingPointSolver.solve(schematic.netlist()), !fills, replay);
    }

    private static void balance(Schematic schematic, Outcome outcome, boolean flows, String replay) {
        OperatingPoint point =
                assertInstanceOf(Outcome.Solved.class, outcome, replay).point();
        double amps = 0;
        double watts = 0;
        for (var connected : schematic.netlist().parts()) {
            amps = Math.max(amps, Math.abs(point.current(connected.part().name())));
            if (connected.part().kind() == PartKind.SOURCE) {
                watts += Math.abs(point.power(connected.part().name()));
            }
        }
        assertTrue(!flows || amps > 0 && watts > 0, replay + ": nothing flows");
        assertTrue(
                Math.abs(point.currentResidual()) <= RESIDUAL * amps,
                replay + ": " + point.currentResidual() + " A left");
        assertTrue(
                Math.abs(point.powerResidual()) <= RESIDUAL * watts, replay + ": " + point.powerResidual() + " W left");
    }

    @TestFactory
    Stream<DynamicTest> bothRoutesAgreeAndNoTwoDrawsAreAlike() {
        return forEachTemplate(problems -> {
            for (int draw = 0; draw < problems.size(); draw++) {
                for (Problem.Answer answer : problems.get(draw).answers()) {
                    assertTrue(
                            answer.agrees() && answer.gap() <= answer.allowed(),
                            replay(problems, draw) + ": " + answer);
                }
            }
            assertEquals(
                    DRAWS,
                    problems.stream()
                            .map(problem -> problem.givens().quantities() + ""
                                    + problem.givens().words())
                            .distinct()
                            .count());
        });
    }

    /** Nobody at a bench could stand up for a verdict on 109.9 °C against 110 °C. */
    @TestFactory
    Stream<DynamicTest> noVerdictHangsOnDigitsThatNobodyWrites() {
        return forEachTemplate(problems -> {
            for (int draw = 0; draw < problems.size(); draw++) {
                Problem problem = problems.get(draw);
                Set<String> worked =
                        problem.template().lines().stream().map(StepLine::id).collect(Collectors.toSet());
                String replay = replay(problems, draw);
                verdicts(problem.template())
                        .flatMap(option -> Boundaries.comparisons(option.when()).stream())
                        .filter(each -> names(each.left(), worked) || names(each.right(), worked))
                        .filter(each ->
                                !isCount(each.left(), problem.values()) || !isCount(each.right(), problem.values()))
                        .forEach(each -> assertTrue(
                                Boundaries.margin(each, problem.values()) >= LEAST_MARGIN, () -> replay + ": " + each));
            }
        });
    }

    private static Stream<ChoiceOption> verdicts(ProblemTemplate template) {
        return template.asks().stream()
                .filter(ChoiceAsk.class::isInstance)
                .flatMap(ask -> ((ChoiceAsk) ask).options().stream());
    }

    private static boolean names(Expression expression, Set<String> worked) {
        return expression instanceof Expression.Name name && worked.contains(name.id())
                || expression.parts().stream().anyMatch(part -> names(part, worked));
    }

    private static boolean isCount(Expression expression, Values values) {
        Quantity quantity = Evaluation.evaluate(expression, values);
        return quantity.dimension().equals(Dimension.ONE) && Elementary.isWhole(quantity.value());
    }

    /** A large class over several years gets no variant twice. */
    @TestFactory
    @OnlyDeep
    Stream<DynamicTest> thereAreTwoThousandDistinctVariants() {
        return forEachTemplate(problems -> {
            Variants variants = Variants.count(new Workshop(problems.get(0).template()), 3 * LEAST_VARIANTS);
            assertTrue(variants.count() >= LEAST_VARIANTS, variants.toString());
        });
    }

    /** Every rung that the kinds of questions of the template have is reached, and nothing lands on another rung. */
    @TestFactory
    Stream<DynamicTest> everyRungOfTheLadderIsReached() {
        return forEachTemplate(problems -> {
            Set<Rung> reached = EnumSet.noneOf(Rung.class);
            Set<String> mistakes = new java.util.TreeSet<>();
            for (int draw = 0; draw < problems.size(); draw++) {
                ProblemKey key = AnswerKeys.keyOf(problems.get(draw), "q1", draw % 2 == 0);
                for (LadderProbe probe : LadderProbe.of(key)) {
                    Verdict verdict = probe.verdict(key);
                    int at = draw;
                    assertEquals(
                            probe.rung(),
                            verdict.rung(),
                            () -> replay(problems, at) + ": " + probe + " gives " + verdict);
                    assertEquals(
                            probe.mistake(), verdict.mistake().orElse(""), () -> replay(problems, at) + ": " + probe);
                    assertTrue(verdict.message().length() > 5, () -> replay(problems, at) + ": " + verdict);
                    if (!LadderProbe.BY_CHANCE.contains(probe.rung())) {
                        reached.add(probe.rung());
                    }
                    mistakes.add(probe.mistake());
                }
                // Those of steps that nobody asks for, and that a sheet may leave blank.
                problems.get(draw)
                        .mistakes()
                        .values()
                        .forEach(made -> made.forEach(mistake -> mistakes.add(mistake.id())));
            }
            assertEquals(rungsOf(AnswerKeys.keyOf(problems.get(0), "q1", false)), reached);
            problems.get(0)
                    .template()
                    .mistakes()
                    .forEach(mistake -> assertTrue(
                            mistakes.contains(mistake.id())
                                    || isMadeLater(problems.get(0).template(), mistake.id()),
                            mistake.id() + " is never made in " + LATEST + " draws"));
        });
    }

    /** Some mistakes are made with few numbers only. */
    private static boolean isMadeLater(ProblemTemplate template, String mistake) {
        Draws draws = new Draws(new Workshop(template), SEED);
        return IntStream.range(DRAWS, LATEST)
                .mapToObj(draws::draw)
                .flatMap(problem -> problem.mistakes().values().stream())
                .flatMap(List::stream)
                .anyMatch(made -> made.id().equals(mistake));
    }

    private static Set<Rung> rungsOf(ProblemKey key) {
        Set<Rung> rungs = EnumSet.allOf(Rung.class);
        rungs.removeAll(LadderProbe.BY_CHANCE);
        if (key.designs().isEmpty()) {
            rungs.remove(Rung.CRITERION_MISSED);
        }
        if (key.designs().stream().allMatch(design -> design.steps().size() == 1)) {
            rungs.remove(Rung.INCOMPLETE);
        }
        if (key.answers().stream().allMatch(answer -> answer.acceptance() instanceof Acceptance.Designed)) {
            rungs.removeAll(Set.of(Rung.POWER_OF_TEN, Rung.KNOWN_MISTAKE, Rung.CONSISTENT_WITH_EARLIER));
        }
        boolean follows = false;
        for (int i = 0; i < key.answers().size(); i++) {
            Set<String> later =
                    key.working().following(Set.of(key.answers().get(i).step()));
            follows |= key.answers().subList(i, key.answers().size()).stream()
                    .anyMatch(answer -> later.contains(answer.step()));
        }
        if (!follows) {
            rungs.remove(Rung.CONSISTENT_WITH_EARLIER);
        }
        boolean measured = key.answers().stream().anyMatch(answer -> answer.acceptance() instanceof Acceptance.Within);
        if (!measured) {
            rungs.removeAll(Set.of(Rung.TOO_COARSE, Rung.SIGN, Rung.RECIPROCAL));
        }
        if (key.answers().stream().allMatch(answer -> answer.unit().dimension().equals(Dimension.ONE))) {
            rungs.remove(Rung.UNIT_MISSING);
        }
        return rungs;
    }

    @Test
    void rightAnswersReadRightHoweverTheyAreWritten() {
        Random random = new Random(20_260_101);
        Spellings spellings = new Spellings(random);
        List<List<Problem>> all = List.copyOf(PROBLEMS.values());
        for (int written = 0; written < SPELLINGS; ) {
            List<Problem> problems = all.get(random.nextInt(all.size()));
            int draw = random.nextInt(problems.size());
            boolean unitPrinted = random.nextBoolean();
            ProblemKey key = AnswerKeys.keyOf(problems.get(draw), "q1", unitPrinted);
            AnswerKey answer = key.answers().get(random.nextInt(key.answers().size()));
            if (answer.acceptance() instanceof Acceptance.Choice) {
                continue;
            }
            int figures = answer.acceptance() instanceof Acceptance.Within ? answer.figures() + random.nextInt(4) : 15;
            String text = spellings.of(answer.expected(), answer.unit(), figures, unitPrinted);
            int spelling = written;
            Map<String, String> typed = new TreeMap<>();
            if (answer.acceptance() instanceof Acceptance.Designed) {
                key.answers().stream()
                        .filter(other -> other.acceptance() instanceof Acceptance.Designed)
                        .forEach(other -> typed.put(
                                other.question(), spellings.of(other.expected(), other.unit(), 15, unitPrinted)));
            }
            typed.put(answer.question(), text);
            Verdict verdict = Judge.judge(key, typed).stream()
                    .filter(one -> one.question().equals(answer.question()))
                    .findFirst()
                    .orElseThrow();
            assertEquals(
                    Rung.CORRECT,
                    verdict.rung(),
                    () -> replay(problems, draw) + ", spelling " + spelling + ": \"" + text + "\" for " + answer.step()
                            + " = " + answer.expected() + " gives " + verdict);
            written++;
        }
    }
}
