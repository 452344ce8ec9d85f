package ampersheet.sheet;

import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.figure.Figure;
import ampersheet.figure.FigureAudit;
import ampersheet.problem.Draws;
import ampersheet.problem.Workshop;
import ampersheet.quantity.DecimalMarker;
import ampersheet.render.pdf.Profile;
import ampersheet.sheet.Document.Paper;
import ampersheet.template.ChosenTemplates;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.BiConsumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * Whoever needs large print gets the figures laid out for it, not shrunk. A4 leaves a figure less width than Letter. A
 * failure names the seed and the number of the draw.
 */
class LargePrintFiguresTest {
    private static final String SEED = "large-print";
    private static final int DRAWS = Boolean.getBoolean("ampersheet.deep") ? 30 : 1;
    private static final double WIDEST = Profile.LARGE.widestDrawing(Paper.A4);
    /** Of US Letter, which is lower than A4. */
    private static final double TALLEST = 585;
    /** Sizes are rounded up to whole pixels. */
    private static final double ROUNDING = 1;

    /** The drawings of each draw of a template, by what they are. */
    private static final Map<String, List<List<Figure>>> FIGURES = new TreeMap<>();

    @BeforeAll
    static void draw() {
        TemplateFiles files = TemplateFiles.builtIn();
        ChosenTemplates.of(files).parallelStream().forEach(name -> {
            Draws draws = new Draws(new Workshop(TemplateReader.read(files, name)), SEED);
            List<List<Figure>> drawn = new ArrayList<>();
            for (int draw = 0; draw < DRAWS; draw++) {
                drawn.add(ModelFigures.of(SheetProblem.alone(draws.draw(draw), DecimalMarker.POINT), WIDEST));
            }
            synchronized (FIGURES) {
                FIGURES.put(name, drawn);
            }
        });
    }

    private static Stream<DynamicTest> forEachTemplate(BiConsumer<Figure, String> test) {
        return FIGURES.entrySet().stream()
                .map(each -> DynamicTest.dynamicTest(each.getKey(), () -> {
                    for (int draw = 0; draw < DRAWS; draw++) {
                        for (Figure figure : each.getValue().get(draw)) {
                            test.accept(
                                    figure,
                                    figure.title() + " in " + each.getKey() + ", seed " + SEED + ", draw " + draw);
                        }
                    }
                }));
    }

    @TestFactory
    Stream<DynamicTest> everyFigureFitsTheColumnAtFullSize() {
        return forEachTemplate((figure, replay) -> assertTrue(
                FigureAudit.width(figure) <= WIDEST + ROUNDING,
                replay + " is " + FigureAudit.width(figure) + " px wide, the column " + WIDEST));
    }

    /** Or its lower end would go on at the top of the next page. */
    @TestFactory
    Stream<DynamicTest> everyFigureFitsThePageAtFullSizeWithItsTitleBelow() {
        return forEachTemplate((figure, replay) -> assertTrue(
                figure.picture().height() <= TALLEST,
                replay + " is " + figure.picture().height() + " px high"));
    }

    @TestFactory
    Stream<DynamicTest> labelsStandClearOfEachOtherAndOfTheLines() {
        return forEachTemplate((figure, replay) -> {
            assertTrue(FigureAudit.texts(figure) > 0, replay);
            FigureAudit.labelsStandClear(figure, replay);
        });
    }
}
