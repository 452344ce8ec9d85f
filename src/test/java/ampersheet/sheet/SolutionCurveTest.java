package ampersheet.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.figure.Audit;
import ampersheet.figure.CurveFigure;
import ampersheet.figure.Figure;
import ampersheet.problem.Draws;
import ampersheet.problem.Problem;
import ampersheet.problem.Workshop;
import ampersheet.quantity.DecimalMarker;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.FigureBlock;
import ampersheet.sheet.Document.ProblemBlock;
import ampersheet.sheet.Document.Steps;
import ampersheet.template.ChosenTemplates;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateReader;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

class SolutionCurveTest {
    private static final String SEED = "solution-curves";
    private static final int DRAWS = Boolean.getBoolean("ampersheet.deep") ? 60 : 12;
    /** The column of large print. */
    private static final double NARROW = 438;

    private static SheetProblem drawn(ProblemTemplate template, int draw) {
        Problem problem = new Draws(new Workshop(template), SEED).draw(draw);
        return SheetProblem.alone(problem, DecimalMarker.POINT);
    }

    private static ProblemTemplate template(String name) {
        return TemplateReader.read(TemplateFiles.builtIn(), name);
    }

    @TestFactory
    Stream<DynamicTest> everyCurveKeepsToItsColumnAndItsLabelsStandClear() {
        TemplateFiles files = TemplateFiles.builtIn();
        return ChosenTemplates.of(files).stream()
                .map(name -> TemplateReader.read(files, name))
                .filter(template -> template.curve().isPresent())
                .map(template -> DynamicTest.dynamicTest(template.name(), () -> {
                    Draws draws = new Draws(new Workshop(template), SEED);
                    for (int draw = 0; draw < DRAWS; draw++) {
                        CurveFigure.Plot plot = SolutionCurve.plot(
                                        SheetProblem.alone(draws.draw(draw), DecimalMarker.POINT))
                                .orElseThrow();
                        String replay = template.name() + ", seed " + SEED + ", draw " + draw;
                        Audit.clear(plot, Figure.PAGE_WIDTH, replay);
                        Audit.clear(plot, NARROW, replay);
                    }
                }));
    }

    @Test
    void theCurveStandsBehindTheStepsWithTheAskedValueAndNowhereElse() {
        SheetProblem problem = drawn(template("thermal-rise/warm-up-time"), 0);
        List<Block> blocks =
                Composer.alone(problem.problem(), DecimalMarker.POINT).blocks();
        int steps = blocks.indexOf(
                blocks.stream().filter(Steps.class::isInstance).findFirst().orElseThrow());
        Figure curve = ((FigureBlock) blocks.get(steps + 1)).figure();
        assertEquals("Curve of problem 1", curve.title());
        String asked = Composer.answer(problem, problem.answers().get(2));
        assertTrue(
                curve.walk().stream().anyMatch(sentence -> sentence.contains("t = " + asked)), curve.walk()::toString);
        ProblemBlock open =
                Composer.onItsOwn(new SheetProblem(1, new Support.Bare(), false, problem.plan(), problem.problem()));
        assertTrue(
                open.blocks().stream()
                        .noneMatch(block -> block instanceof FigureBlock figure
                                && figure.figure().title().startsWith("Curve")),
                "an open problem shows no curve: it would give answers away");
    }

    @Test
    void aTemplateWithoutACurveHasNoneInItsSolution() {
        assertTrue(SolutionCurve.of(drawn(template("current-limiting/one-indicator"), 0), Figure.PAGE_WIDTH)
                .isEmpty());
    }
}
