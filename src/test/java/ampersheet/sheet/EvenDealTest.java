package ampersheet.sheet;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.OnlyDeep;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.issue.Issue;
import ampersheet.issue.WrittenFiles;
import ampersheet.problem.Difficulty;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Plans that say {@code even: yes}. */
class EvenDealTest {
    private static final TemplateLibrary LIBRARY = new TemplateLibrary(List.of(TemplateFiles.builtIn()));
    private static final int CLASS = 30;
    private static final boolean DEEP = Boolean.getBoolean("ampersheet.deep");
    private static final int SEEDS = DEEP ? 3 : 1;
    /** Evidence 5.4. */
    private static final double MOST_OF_RANDOM = 0.6;

    private static final String TWO_PLACES = """
      title: Lanterns
      seed: even
      problems:
        - {template: current-limiting/indicator, count: 2, example: yes}
        - {pool: [current-limiting/indicator, voltage-dividers/plain-divider]}
      """;

    @TempDir
    private Path folder;

    private static SheetMaker maker(String plan, TemplateLibrary library) {
        return new SheetMaker(ProblemSet.of(PlanReader.read("plan.yaml", plan), library));
    }

    private static SheetMaker maker(String plan) {
        return SmallLibrary.maker(plan);
    }

    private static String even(String plan) {
        return plan + "even: yes\n";
    }

    private static List<String> numbers(SheetMaker maker, int seat) {
        return maker.sheet(seat).problems().stream()
                .map(problem -> problem.template().name() + " "
                        + problem.problem().givens().quantities())
                .toList();
    }

    private static List<String> sorted(SheetMaker maker, int first, int last) {
        return IntStream.rangeClosed(first, last)
                .boxed()
                .flatMap(seat -> numbers(maker, seat).stream())
                .sorted()
                .toList();
    }

    private static double spread(SheetMaker maker) {
        double[] sums = IntStream.rangeClosed(1, CLASS)
                .mapToDouble(seat -> maker.sheet(seat).problems().stream()
                        .filter(problem -> !problem.places().isEmpty())
                        .mapToInt(problem -> Difficulty.of(problem.problem()).points())
                        .sum())
                .toArray();
        double mean = Arrays.stream(sums).average().orElseThrow();
        return Math.sqrt(Arrays.stream(sums)
                .map(sum -> (sum - mean) * (sum - mean))
                .average()
                .orElseThrow());
    }

    private static Map<String, String> realPlans() throws IOException {
        Map<String, String> plans = new LinkedHashMap<>();
        for (String name : DEEP ? List.of("plan", "first-evening", "design-week") : List.of("first-evening")) {
            plans.put(name, Files.readString(Path.of("problem-templates", "demo", name + ".yaml")));
        }
        plans.put("one template four times", """
            title: Four
            seed: x
            problems:
              - {template: thermal-rise/regulator-junction, count: 4}
            """);
        plans.put("two templates", """
            title: Two
            seed: x
            problems:
              - {template: current-limiting/one-indicator}
              - {template: voltage-dividers/loaded-divider}
            """);
        plans.put("a skill", """
            title: Skill
            seed: x
            problems:
              - {skill: junction temperature, count: 2}
              - {template: voltage-dividers/loaded-divider}
              - {template: current-limiting/shared-current}
            """);
        return plans;
    }

    @Test
    void theSpreadOfSummedDifficultyIsAtMostSixTenthsOfThatByChance() throws IOException {
        realPlans().forEach((name, plan) -> {
            for (int seed = 1; seed <= SEEDS; seed++) {
                String seeded = plan.replaceFirst("(?m)^seed:.*$", "seed: even-" + seed);
                double byChance = spread(maker(seeded, LIBRARY));
                double evenly = spread(maker(even(seeded), LIBRARY));
                String told = String.format(
                        Locale.ROOT,
                        "%s, seed even-%d, %d learners: %.2f evenly, %.2f by chance, %.2f of it",
                        name,
                        seed,
                        CLASS,
                        evenly,
                        byChance,
                        evenly / byChance);
                System.out.println(told);
                assertTrue(evenly <= MOST_OF_RANDOM * byChance, told);
            }
        });
    }

    @Test
    void aGroupHasTheVariantsThatItWouldHaveAnywayAndNobodyHasAnothers() {
        SheetMaker usual = maker(TWO_PLACES);
        SheetMaker evenly = maker(even(TWO_PLACES));
        for (int first = 1; first <= 51; first += EvenDeal.GROUP) {
            int last = first + EvenDeal.GROUP - 1;
            assertEquals(sorted(usual, first, last), sorted(evenly, first, last));
        }
        List<String> all = sorted(evenly, 1, 75);
        assertEquals(all.size(), new TreeSet<>(all).size());
        int moved = 0;
        for (int seat = 1; seat <= CLASS; seat++) {
            assertEquals(usual.set().places(seat), evenly.set().places(seat));
            List<String> before = numbers(usual, seat);
            List<String> after = numbers(evenly, seat);
            for (int i = 0; i < before.size(); i++) {
                assertEquals(before.get(i).split(" ")[0], after.get(i).split(" ")[0], "the template stays");
                if (usual.sheet(seat).problems().get(i).example()) {
                    assertEquals(before.get(i), after.get(i), "an example stays");
                }
                moved += before.get(i).equals(after.get(i)) ? 0 : 1;
            }
        }
        assertTrue(moved > 0);
    }

    @OnlyDeep
    @Test
    void aSheetIsTheSameWithoutTheOthersAndWhoeverComesLater() {
        SheetMaker all = maker(even(TWO_PLACES));
        all.prepare(60);
        List<List<String>> sheets = IntStream.rangeClosed(1, 60)
                .mapToObj(seat -> numbers(all, seat))
                .toList();
        for (int seat : List.of(60, 1, 25, 26)) {
            SheetMaker alone = maker(even(TWO_PLACES));
            alone.prepare(seat);
            assertEquals(sheets.get(seat - 1), numbers(alone, seat));
        }
    }

    @Test
    @OnlyDeep
    void severalThreadsMakeTheSameSheets() throws IOException {
        Roster roster = new Roster(IntStream.rangeClosed(1, CLASS)
                .mapToObj(seat -> new Roster.Seat(seat, ""))
                .toList());
        List<Map<String, byte[]>> written = new ArrayList<>();
        for (int threads : List.of(1, 4)) {
            Path out = folder.resolve("threads-" + threads);
            Issue.issue(
                    PlanReader.read("plan.yaml", even(TWO_PLACES)), roster, SmallLibrary.open(), out, threads, false);
            written.add(WrittenFiles.under(out));
        }
        assertEquals(written.get(0).keySet(), written.get(1).keySet());
        written.get(0)
                .forEach(
                        (name, bytes) -> assertArrayEquals(bytes, written.get(1).get(name), name));
    }

    @Test
    void theLineGivesOtherIdsAndWithoutItOrWithNoEverythingStays() {
        String usual = maker(TWO_PLACES).set().id(1).toString();
        assertEquals(usual, maker(TWO_PLACES + "even: no\n").set().id(1).toString());
        assertNotEquals(usual, maker(even(TWO_PLACES)).set().id(1).toString());
    }

    @Test
    void itDoesNotGoWithProblemsThatComeAgain() {
        DiagnosticException refused = assertThrows(
                DiagnosticException.class, () -> PlanReader.read("plan.yaml", even(TWO_PLACES) + "repeats: allowed\n"));
        assertEquals(1, refused.diagnostics().size());
        assertTrue(refused.getMessage().contains("cannot do both"), refused.getMessage());
    }

    @Test
    void aTemplateWithTooFewForAWholeGroupIsToldSo() {
        String few = """
            title: Lanterns
            seed: even
            problems:
              - {template: current-limiting/indicator, given: {Vs: 12 V, Vf: 2 V}}
            """;
        SheetMaker usual = maker(few);
        assertThrows(DiagnosticException.class, () -> usual.prepare(2_000));
        int variants = (int) usual.tallies().values().iterator().next().accepted();
        assertNotEquals(0, variants % EvenDeal.GROUP, "or this test needs another plan");
        maker(few).prepare(variants);
        DiagnosticException refused =
                assertThrows(DiagnosticException.class, () -> maker(even(few)).prepare(variants));
        assertTrue(refused.getMessage().contains("Or take even: out of the plan"), refused.getMessage());
    }

    @Test
    void aRetakeLiesBehindTheWholeGroupAndIsGivenOutAsItComes() {
        Plan plan = PlanReader.read("plan.yaml", even(TWO_PLACES));
        Set<String> skills = new TreeSet<>();
        ProblemSet.of(plan, SmallLibrary.open()).templates().forEach(template -> skills.add(template.skill()));
        Plan retake = Retake.of(plan, 30, Map.of(3, skills, 28, skills), SmallLibrary.open());
        SheetMaker first = new SheetMaker(ProblemSet.of(plan, SmallLibrary.open()));
        SheetMaker again = new SheetMaker(ProblemSet.of(retake, SmallLibrary.open()));
        Set<String> met = new TreeSet<>(sorted(first, 1, 50));
        for (int seat : List.of(3, 28)) {
            numbers(again, seat).forEach(problem -> assertTrue(met.add(problem), problem));
        }
    }
}
