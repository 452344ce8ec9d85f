package ampersheet.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.problem.Difficulty;
import ampersheet.render.markdown.MarkdownPage;
import ampersheet.sheet.Document;
import ampersheet.sheet.FingerprintText;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Roster;
import ampersheet.sheet.SheetMaker;
import ampersheet.sheet.SheetProblem;
import ampersheet.source.Languages;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Simulated classes of sixty with the fingerprints of real sheets. */
class FairnessTest {
    private static final int LEARNERS = 60;
    private static final int CLASSES = 200;
    private static final long SEED = 20261130L;
    private static final double RIGHT = 0.85;
    private static final double RIGHT_IF_HARDER = 0.25;

    private static final SheetMaker MAKER = new SheetMaker(
            ProblemSet.of(PlanReader.read("plan.yaml", """
                title: Lanterns
                seed: fair
                problems:
                  - {template: chain-addressing/serpentine-tile}
                  - {template: current-limiting/one-indicator}
                  - {template: voltage-dividers/battery-sense}
                """), new TemplateLibrary(List.of(TemplateFiles.builtIn()))));

    /** A place on a sheet: which question, how hard, and whether the planted difficulty is in it. */
    private record Met(int seat, Standing.Item item, int problem, String fingerprint, boolean runsBack) {}

    private static final List<Met> MET = met();

    private static List<Met> met() {
        List<Met> met = new ArrayList<>();
        for (int seat = 1; seat <= LEARNERS; seat++) {
            List<SheetProblem> problems = MAKER.sheet(seat).problems();
            for (int place = 0; place < problems.size(); place++) {
                SheetProblem problem = problems.get(place);
                Difficulty of = Difficulty.of(problem.problem());
                met.add(new Met(
                        seat,
                        new Standing.Item(
                                place,
                                problem.template().name(),
                                problem.places().get(0).step()),
                        place + 1,
                        FingerprintText.shared(of, Languages.ENGLISH),
                        of.branches().equals(List.of(1))));
            }
        }
        return met;
    }

    /** @param planted whether rows that run back are harder */
    private static List<Standing> standings(Random random, boolean planted) {
        List<Standing> standings = new ArrayList<>();
        for (int seat = 1; seat <= LEARNERS; seat++) {
            List<Standing.Outcome> outcomes = new ArrayList<>();
            for (Met one : MET) {
                if (one.seat() == seat) {
                    double chance = planted && one.runsBack() ? RIGHT_IF_HARDER : RIGHT;
                    Credit credit = random.nextDouble() < chance ? Credit.RIGHT : Credit.WRONG;
                    outcomes.add(new Standing.Outcome(
                            one.item(), one.problem(), credit, Optional.empty(), one.fingerprint(), false));
                }
            }
            standings.add(new Standing(new Roster.Seat(seat, ""), MAKER.set().id(seat), outcomes));
        }
        return standings;
    }

    private static String report(List<Standing> standings) {
        ClassResults results = new ClassResults(MAKER.set().templates(), standings, Languages.ENGLISH);
        return MarkdownPage.render(new Document(
                Document.Kind.REPORT, Languages.ENGLISH, "", "", "", Document.Paper.A4, QuestionReport.of(results)));
    }

    @Test
    void aPlantedDifficultyIsToldWithWhatWasExpectedAndNothingIsMarkedAgain() {
        String report = report(standings(new Random(SEED), true));
        assertTrue(report.contains("the difference is larger than chance makes it"), report);
        assertTrue(report.contains("nothing is marked again"), report);
        assertTrue(
                report.replace("\\", "")
                        .contains("cases: [1], a known mistake within 5\u00a0% | 19\u00a0% of 32 (9–35) "),
                report);
    }

    @Test
    void withoutOneTheReportSaysThatChanceIsEnough() {
        String report = report(standings(new Random(SEED), false));
        assertTrue(report.contains("No difference is larger than chance makes it."), report);
        assertFalse(report.contains("the difference is larger"), report);
    }

    @Test
    void plantedDifficultiesAreFoundAndChanceIsRarelyTakenForOne() {
        Random random = new Random(SEED);
        int found = 0;
        int falsely = 0;
        for (int i = 0; i < CLASSES; i++) {
            found += Fairness.of(standings(random, true)).stream()
                            .anyMatch(one -> one.isUnequal() && one.difficulty().contains("cases: [1]"))
                    ? 1
                    : 0;
            falsely += Fairness.of(standings(random, false)).stream().anyMatch(Fairness::isUnequal) ? 1 : 0;
        }
        String told = "seed " + SEED + ": of " + CLASSES + " classes of " + LEARNERS
                + " the planted difficulty is found in " + found + ", one that is not there in " + falsely;
        System.out.println(told);
        assertTrue(found >= 0.9 * CLASSES, told);
        assertTrue(falsely <= 0.05 * CLASSES, told);
    }

    @Test
    void smallGroupsAreSummedUpAndEveryLearnerIsInOneGroup() {
        List<Standing> standings = standings(new Random(SEED), false);
        int learners = Fairness.of(standings).stream()
                        .mapToInt(one -> one.solved().all())
                        .sum()
                + Fairness.few(standings).values().stream()
                        .mapToInt(few -> few.solved().all())
                        .sum();
        assertEquals(3 * LEARNERS, learners);
    }
}
