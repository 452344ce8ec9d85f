package ampersheet.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.answer.Acceptance;
import ampersheet.formula.Evaluation;
import ampersheet.formula.Step;
import ampersheet.formula.Values;
import ampersheet.template.ChosenTemplates;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Workings with one wrong line, over the templates. */
class FaultyWorkingTest {
    private static final boolean DEEP = Boolean.getBoolean("ampersheet.deep");
    private static final int SHARE = DEEP ? 1 : 6;
    private static final int DRAWS = DEEP ? 6 : 2;

    @Test
    void exactlyOneLineDoesNotFollowFromWhatStandsBeforeIt() {
        TemplateLibrary library = new TemplateLibrary(List.of(TemplateFiles.builtIn()));
        List<String> names = ChosenTemplates.of(TemplateFiles.builtIn());
        List<String> without = new ArrayList<>();
        int found = 0;
        for (int i = 0; i < names.size(); i += Math.min(SHARE, names.size())) {
            ProblemTemplate template = library.template(names.get(i));
            Draws draws = new Draws(new Workshop(template), "faulty");
            int ofThis = 0;
            for (int draw = 0; draw < DRAWS; draw++) {
                Problem problem = draws.draw(draw);
                for (FaultyWorking faulty : FaultyWorking.of(problem)) {
                    assertEquals(
                            List.of(faulty.step()),
                            faultyLines(problem, faulty.shown().values()),
                            template.name() + " " + faulty.mistake());
                    assertOutside(problem, faulty);
                    ofThis++;
                }
            }
            found += ofThis;
            if (ofThis == 0) {
                without.add(template.name());
            }
        }
        System.out.println(found + " faulty workings; none of " + without);
        assertTrue(found > 0);
    }

    /** By the right formulas, with the values that stand in the lines before. */
    private static List<String> faultyLines(Problem problem, Values shown) {
        List<String> faulty = new ArrayList<>();
        for (Step step : problem.template().working().steps()) {
            double follows = Evaluation.evaluate(
                            step.cases().get(step.applying(shown)).is(), shown)
                    .value();
            double stands = shown.quantity(step.id()).value();
            if (Math.abs(follows - stands) > 1e-9 * Math.abs(follows)) {
                faulty.add(step.id());
            }
        }
        return faulty;
    }

    private static void assertOutside(Problem problem, FaultyWorking faulty) {
        Acceptance acceptance = Mistakes.judgedSteps(problem.template()).get(faulty.step());
        double right = problem.values().quantity(faulty.step()).value();
        double wrong = faulty.shown().values().quantity(faulty.step()).value();
        assertTrue(!acceptance.accepts(right, wrong), faulty.step() + ": " + wrong + " would be right");
    }
}
