package ampersheet.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.OnlyDeep;
import ampersheet.render.html.HtmlPage;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Roster;
import ampersheet.sheet.SheetMaker;
import ampersheet.sheet.SmallLibrary;
import ampersheet.source.Languages;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

class ClassReportTest {
    private static final String INDICATOR = SmallLibrary.INDICATOR;
    private static final ProblemSet SET = ProblemSet.of(
            PlanReader.read(
                    "plan.yaml", "title: Lanterns\nproblems:\n" + "  - {template: " + INDICATOR + ", count: 3}\n"),
            SmallLibrary.open());
    private static final Cause CAUSE = new Cause("no-forward-voltage", "no forward voltage", "Take it off.", true);

    private static Standing standing(int seat, Credit... credits) {
        List<Standing.Outcome> outcomes = new ArrayList<>();
        for (int i = 0; i < credits.length; i++) {
            outcomes.add(new Standing.Outcome(
                    new Standing.Item(i, INDICATOR, "R"),
                    i + 1,
                    credits[i],
                    credits[i] == Credit.WRONG ? Optional.of(CAUSE) : Optional.empty(),
                    "easy",
                    false));
        }
        return new Standing(new Roster.Seat(seat, "N" + seat), SET.id(seat), outcomes);
    }

    private static String report(List<Standing> standings) {
        ClassResults results = new ClassResults(SET.templates(), standings, Languages.ENGLISH);
        return HtmlPage.render(ClassReport.compose(
                SET.plan(),
                results,
                Tomorrow.of(results, new SheetMaker(SET), Optional.empty(), Privacy.none(Languages.ENGLISH)),
                new ClassReport.CameIn(List.of(), 0, 0, 0, List.of()),
                Optional.empty(),
                List.of(),
                Privacy.none(Languages.ENGLISH)));
    }

    /** Question 1 is missed by the strong half and got right by the weak one. */
    private static List<Standing> withAWrongKey(int learners) {
        List<Standing> standings = new ArrayList<>();
        for (int seat = 1; seat <= learners; seat++) {
            boolean strong = seat % 2 == 0;
            standings.add(standing(
                    seat,
                    strong ? Credit.WRONG : Credit.RIGHT,
                    strong ? Credit.RIGHT : Credit.WRONG,
                    strong ? Credit.RIGHT : Credit.WRONG));
        }
        return standings;
    }

    @Test
    void aQuestionThatStrongLearnersMissIsAskedToBeChecked() {
        assertTrue(report(withAWrongKey(20)).contains("CHECK THIS KEY"));
        assertFalse(report(withAWrongKey(19)).contains("CHECK THIS KEY"), "no verdict under twenty learners");
        assertTrue(report(withAWrongKey(19)).contains("too few for a verdict"));
    }

    @Test
    void theCaveatIsPrinted() {
        assertTrue(report(withAWrongKey(20)).contains("everyone has other numbers"));
    }

    @Test
    void aBlankIsNoMistakeAndNotAmongTheAnswers() {
        List<Standing> standings = List.of(
                standing(1, Credit.BLANK, Credit.RIGHT, Credit.WRONG),
                standing(2, Credit.RIGHT, Credit.BLANK, Credit.UNREADABLE));
        ItemScores first = new ClassResults(SET.templates(), standings, Languages.ENGLISH)
                .items()
                .values()
                .iterator()
                .next();
        assertEquals(1, first.blank());
        assertEquals(new Proportion(1, 1), first.facility());
        List<MistakeCount.OfProblem> mistakes = MistakeCount.of(standings);
        assertEquals(1, mistakes.get(0).wrong());
        assertEquals(1, mistakes.get(0).found().get(0).matches());
        assertEquals(0, mistakes.get(0).unexplained());
    }

    @Test
    void oneMatchIsAHypothesisAndTwoProblemsMakeAPattern() {
        assertFalse(Diagnosis.of(standing(1, Credit.WRONG, Credit.RIGHT, Credit.RIGHT))
                .get(0)
                .isPattern());
        assertTrue(Diagnosis.of(standing(1, Credit.WRONG, Credit.RIGHT, Credit.WRONG))
                .get(0)
                .isPattern());
        List<Standing.Outcome> twiceInOneProblem = standing(1, Credit.WRONG, Credit.WRONG).outcomes().stream()
                .map(outcome -> new Standing.Outcome(outcome.item(), 1, outcome.credit(), outcome.cause(), "", false))
                .toList();
        assertFalse(Diagnosis.of(new Standing(new Roster.Seat(1, ""), SET.id(1), twiceInOneProblem))
                .get(0)
                .isPattern());
    }

    @Test
    void variantsThatAreHarderAreFound() {
        List<Standing> standings = new ArrayList<>();
        for (int seat = 1; seat <= 40; seat++) {
            boolean hard = seat % 2 == 0;
            Credit credit = hard && seat % 10 != 0 ? Credit.WRONG : Credit.RIGHT;
            standings.add(new Standing(
                    new Roster.Seat(seat, ""),
                    SET.id(seat),
                    List.of(new Standing.Outcome(
                            new Standing.Item(0, INDICATOR, "R"),
                            1,
                            credit,
                            Optional.empty(),
                            hard ? "2 divisions" : "1 division",
                            false))));
        }
        List<Fairness> compared = Fairness.of(standings);
        assertEquals(2, compared.size());
        assertTrue(compared.stream().allMatch(Fairness::isUnequal));
        assertTrue(report(standings).contains("the difference is larger than chance makes it"));
        assertEquals(List.of(), Fairness.of(standings.subList(0, 8)), "groups of four tell nothing");
    }

    /**
     * Two hundred learners, each holding up to two wrong ideas out of all that the templates model, with open places
     * besides: what was planted and came up is found, and nothing else is named.
     */
    @Test
    void plantedMistakesAreFoundAndOthersAreNotNamed() {
        Simulation simulation = Simulation.run(20260305, 0);
        assertTrue(simulation.answerable() >= 100, simulation.toString());
        assertTrue(simulation.found() >= 0.95 * simulation.answerable(), simulation.toString());
        assertTrue(simulation.learnersMisjudged() <= 0.01 * Simulation.LEARNERS, simulation.toString());
    }

    /**
     * One answer in ten is a slip of any size besides. Now and then such a value is by chance what a mistake gives,
     * which is why one match is only a hypothesis; a pattern must not arise that way.
     */
    @Test
    void slipsOfAttentionMakeNoPattern() {
        Simulation simulation = WithSlips.SIMULATION;
        assertTrue(simulation.found() >= 0.95 * simulation.answerable(), simulation.toString());
        assertTrue(simulation.falsePatterns() <= 0.01 * Simulation.LEARNERS, simulation.toString());
    }

    /**
     * Classes of thirty out of two hundred whose wrong ideas and slips have nothing to do with each other. By the mere
     * sign of the difference most of them would be told to check a right key.
     */
    @OnlyDeep
    @Test
    void atMostTwoClassesOfThirtyInAHundredAreToldToCheckARightKey() {
        Simulation simulation = WithSlips.SIMULATION;
        Random random = new Random(simulation.seed());
        List<Standing> all = new ArrayList<>(simulation.standings());
        int told = 0;
        int bySign = 0;
        int classes = Boolean.getBoolean("ampersheet.deep") ? 200 : 100;
        for (int i = 0; i < classes; i++) {
            Collections.shuffle(all, random);
            Map<Standing.Item, ItemScores> items =
                    new ClassResults(simulation.templates(), all.subList(0, 30), Languages.ENGLISH).items();
            told += KeyCheck.of(items).isEmpty() ? 0 : 1;
            bySign += items.values().stream()
                            .anyMatch(scores -> scores.scores().size() >= ClassResults.LEAST_LEARNERS
                                    && scores.discrimination() < 0)
                    ? 1
                    : 0;
        }
        assertTrue(
                told <= classes / 50, told + " of " + classes + ", by the sign " + bySign + "; " + simulation.seed());
        assertTrue(bySign > classes / 5, "by the sign " + bySign);
    }

    /** Two tests look at the same learners. */
    private static final class WithSlips {
        static final Simulation SIMULATION = Simulation.run(20260306, 0.1);
    }

    /**
     * @param notPlanted for how many learners a mistake was named that they do not hold, by mistake
     * @param learnersMisjudged those for whom any such was named
     * @param falsePatterns those for whom such a mistake was called a pattern
     */
    private record Simulation(
            long seed,
            int answerable,
            int found,
            Map<String, Integer> notPlanted,
            int learnersMisjudged,
            int falsePatterns,
            List<Standing> standings,
            List<ProblemTemplate> templates) {
        static final int LEARNERS = 200;
        private static final String PLAN = """
        title: Lanterns
        seed: simulation
        problems:
          - {template: current-limiting/one-indicator}
          - {template: voltage-dividers/loaded-divider}
          - {template: thermal-rise/regulator-junction}
          - {template: chain-addressing/serpentine-tile}
          - {pool: [current-limiting/driver-test-point, current-limiting/shunt-reference-feed]}
          - {template: voltage-dividers/battery-sense}
          - {template: thermal-rise/panel-brightness}
        """;

        static Simulation run(long seed, double slips) {
            SheetMaker maker = new SheetMaker(ProblemSet.of(
                    PlanReader.read("plan.yaml", PLAN), new TemplateLibrary(List.of(TemplateFiles.builtIn()))));
            SimulatedClass learners = new SimulatedClass(maker, seed);
            SheetMarker marker =
                    new SheetMarker(maker, Optional.empty(), DecisionBook.none(), Privacy.none(Languages.ENGLISH));
            Map<String, Integer> notPlanted = new TreeMap<>();
            List<Standing> standings = new ArrayList<>();
            int answerable = 0;
            int found = 0;
            int misjudged = 0;
            int patterns = 0;
            for (int seat = 1; seat <= LEARNERS; seat++) {
                SimulatedClass.Learner learner = learners.learner(seat, 2, slips, 0.05);
                Standing standing = standing(marker, learner);
                standings.add(standing);
                List<Diagnosis> diagnoses = Diagnosis.of(standing).stream()
                        .filter(diagnosis -> diagnosis.cause().modelled())
                        .toList();
                Set<String> named = new LinkedHashSet<>();
                diagnoses.forEach(diagnosis -> named.add(diagnosis.cause().id()));
                answerable += learner.answerable().size();
                found += (int)
                        learner.answerable().stream().filter(named::contains).count();
                named.removeAll(learner.holds());
                named.forEach(mistake -> notPlanted.merge(mistake, 1, Integer::sum));
                misjudged += named.isEmpty() ? 0 : 1;
                patterns += diagnoses.stream()
                                .anyMatch(diagnosis -> diagnosis.isPattern()
                                        && named.contains(diagnosis.cause().id()))
                        ? 1
                        : 0;
            }
            return new Simulation(
                    seed, answerable, found, notPlanted, misjudged, patterns, standings, maker.templates());
        }

        private static Standing standing(SheetMarker marker, SimulatedClass.Learner learner) {
            ReturnedFile file =
                    AnswerTable.read("a.csv", "a.csv", SimulatedClass.file(learner), Privacy.none(Languages.ENGLISH));
            MarkedSheet marked = marker.mark(
                    new Roster.Seat(learner.seat(), ""),
                    List.of(new HandIn(
                            new FileNote(learner.seat(), "a.csv", "a.csv", Optional.empty(), false),
                            Origin.ofSheet(learner.sheet().id().toString()),
                            file.answers(),
                            false)));
            return marked.standing();
        }
    }
}
