package ampersheet.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.Judge;
import ampersheet.answer.ProblemKey;
import ampersheet.answer.Rung;
import ampersheet.formula.Values;
import ampersheet.quantity.Quantity;
import ampersheet.quantity.QuantityWriter;
import ampersheet.render.markdown.MarkdownPage;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** A design on sheets that show part of its working. */
class FadedDesignTest {
    private static Sheet sheet(String support) {
        return new SheetMaker(ProblemSet.of(
                        PlanReader.read(
                                "plan.yaml",
                                "title: T\nproblems:\n" + "  - {template: voltage-dividers/design-pair, " + support
                                        + "}\n"),
                        new TemplateLibrary(List.of(TemplateFiles.builtIn()))))
                .sheet(1);
    }

    private static String typed(AnswerKey key, double si) {
        return QuantityWriter.POINT.plain(si, key.unit(), 9).text();
    }

    @Test
    void blanksOfADesignAreLeftOpenTogetherAndWithThemAllThatFollows() {
        SheetProblem problem =
                sheet("support: faded, fade: backward, blank: 3").problems().get(0);
        assertEquals(
                List.of("R2", "Rx", "R1", "V", "I"),
                problem.places().stream().map(AnswerKey::step).toList());
        String page = MarkdownPage.render(Composer.sheet(sheet("support: faded, fade: backward, blank: 3"), ""));
        // A candidate that is chosen stands among the candidates.
        for (AnswerKey place : problem.places().stream()
                .filter(key -> List.of("Rx", "V", "I").contains(key.step()))
                .toList()) {
            assertFalse(page.contains("= " + typed(place, place.expected())), place.step() + " is given away");
        }
    }

    @Test
    void anotherRightChoiceAndTheStepsThatFollowFromItAreRight() {
        SheetProblem problem =
                sheet("support: faded, fade: backward, blank: 3").problems().get(0);
        ProblemKey key = problem.key();
        Acceptance.Designed drawer =
                (Acceptance.Designed) problem.answers().get(1).acceptance();
        int others = 0;
        for (double upper : drawer.members()) {
            for (double lower : drawer.members()) {
                Values own = problem.template()
                        .working()
                        .work(
                                problem.problem().givens(),
                                Map.of(
                                        "R1",
                                                new Quantity(
                                                        upper,
                                                        problem.template()
                                                                .line("R1")
                                                                .unit()
                                                                .dimension()),
                                        "R2",
                                                new Quantity(
                                                        lower,
                                                        problem.template()
                                                                .line("R2")
                                                                .unit()
                                                                .dimension())));
                Map<String, String> typed = new LinkedHashMap<>();
                problem.places()
                        .forEach(place -> typed.put(
                                place.question(),
                                typed(place, own.quantity(place.step()).value())));
                typed.put(place(problem, "R1"), typed(problem.answers().get(1), upper));
                List<Rung> rungs = Judge.judge(key, typed).stream()
                        .filter(verdict -> typed.containsKey(verdict.question()))
                        .map(verdict -> verdict.rung())
                        .toList();
                boolean right = rungs.get(0) == Rung.CORRECT;
                if (right) {
                    others++;
                    assertTrue(rungs.stream().allMatch(rung -> rung == Rung.CORRECT), typed + ": " + rungs);
                }
            }
        }
        assertEquals(problem.problem().designs().get(0).accepted(), others);
    }

    private static String place(SheetProblem problem, String step) {
        return problem.places().stream()
                .filter(key -> key.step().equals(step))
                .findFirst()
                .orElseThrow()
                .question();
    }

    @Test
    void aWorkedExampleSaysThatOtherChoicesAreRightAsWell() {
        String page = MarkdownPage.render(Composer.sheet(sheet("support: full"), ""));
        assertTrue(page.contains("Other values that meet the same limits are right as well."), page);
    }
}
