package ampersheet.sheet;

import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.figure.Figure;
import ampersheet.figure.FigureAudit;
import ampersheet.problem.Draws;
import ampersheet.problem.Workshop;
import ampersheet.quantity.DecimalMarker;
import ampersheet.render.pdf.Profile;
import ampersheet.sheet.Document.Paper;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateReader;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** Fuses, motors and body diodes of the templates that have them: drawn clear of their names, and said in words. */
class DrawnSymbolsTest {
    private static final String SEED = "symbols";
    private static final int DRAWS = Boolean.getBoolean("ampersheet.deep") ? 30 : 3;

    private static final Map<String, String> SAID = new TreeMap<>(Map.of(
            "current-limiting/string-fuse", "fuse F1 (fuse)",
            "current-limiting/fused-length", "fuse F1 (fuse)",
            "current-limiting/motor-start", "motor M1 (motor)",
            "thermal-rise/reverse-polarity-loss", "the body diode leads from drain to source",
            "thermal-rise/mosfet-or-schottky", "the body diode leads from drain to source"));

    @Test
    void symbolsOfTheirOwnStandClearAndAreSaidInWords() {
        SAID.forEach((name, said) -> {
            Draws draws = new Draws(new Workshop(TemplateReader.read(TemplateFiles.builtIn(), name)), SEED);
            for (int draw = 0; draw < DRAWS; draw++) {
                SheetProblem problem = SheetProblem.alone(draws.draw(draw), DecimalMarker.POINT);
                for (double width : List.of(
                        Figure.PAGE_WIDTH,
                        Profile.COMPACT.widestDrawing(Paper.A4),
                        Profile.LARGE.widestDrawing(Paper.A4))) {
                    String replay = name + ", seed " + SEED + ", draw " + draw + ", width " + width;
                    List<Figure> figures = ModelFigures.of(problem, width);
                    figures.forEach(figure -> FigureAudit.labelsStandClear(figure, replay));
                    assertTrue(
                            figures.stream()
                                    .anyMatch(figure ->
                                            figure.table().rows().toString().contains(said)),
                            replay + " does not say: " + said);
                }
            }
        });
    }
}
