package ampersheet.figure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.figure.CurveFigure.Axis;
import ampersheet.figure.CurveFigure.Curve;
import ampersheet.figure.CurveFigure.Mark;
import ampersheet.figure.CurveFigure.Plot;
import ampersheet.figure.CurveFigure.Sample;
import ampersheet.formula.Symbol;
import ampersheet.quantity.DecimalMarker;
import ampersheet.source.Languages;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class CurveFigureTest {
    private static final Axis TIME = new Axis("time", new Symbol("t", ""), "s", 0, 600);
    private static final Axis TEMPERATURE = new Axis("temperature", new Symbol("T", ""), "°C", 20, 80);

    /** Warming towards {@code end} with a time constant of 120 s. */
    private static Curve warming(String name, double end) {
        List<Sample> samples = new ArrayList<>();
        for (int i = 0; i <= 60; i++) {
            samples.add(new Sample(10 * i, 22 + (end - 22) * (1 - StrictMath.exp(-10.0 * i / 120))));
        }
        return new Curve(name, samples);
    }

    private static Mark mark(double x, double y, String symbol, String text) {
        return new Mark(x, y, new Label.Line(Optional.of(Symbol.of(symbol)), text));
    }

    private static final Mark AFTER_ONE_TIME_CONSTANT =
            mark(120, 22 + 52 * (1 - StrictMath.exp(-1)), "T1", "= 54.9 °C");
    private static final Plot TWO =
            plot(List.of(warming("bare", 74), warming("with fan", 48)), List.of(AFTER_ONE_TIME_CONSTANT));

    private static Plot plot(List<Curve> curves, List<Mark> marks) {
        return new Plot(TIME, TEMPERATURE, curves, marks, DecimalMarker.POINT);
    }

    private static Plot straight(double... ys) {
        List<Sample> samples = new ArrayList<>();
        for (int i = 0; i < ys.length; i++) {
            samples.add(new Sample(600.0 * i / (ys.length - 1), ys[i]));
        }
        return plot(List.of(new Curve("", samples)), List.of());
    }

    static Figure example() {
        return CurveFigure.draw("Warming up", TWO, new Figure.Setting("q1", Figure.PAGE_WIDTH, Languages.ENGLISH));
    }

    private static List<Shape> dashed(Plot plot) {
        return CurveFigure.layOut(plot, Figure.PAGE_WIDTH).shapes().stream()
                .filter(shape ->
                        shape instanceof Shape.Line line && line.stroke().equals(Stroke.DASHED))
                .toList();
    }

    @Test
    void thePlotIsWellFormedAndItsTextStandsClear() {
        Audit.svg(example(), "q1", "curve");
        Audit.clear(CurveFigure.layOut(TWO, Figure.PAGE_WIDTH), "curve");
    }

    @Test
    void aSampleLiesWhereTheAxesSay() {
        Shape.Line curve = (Shape.Line) CurveFigure.layOut(straight(20, 80), Figure.PAGE_WIDTH)
                .shapes("curve ")
                .get(0);
        assertEquals(List.of(new Point(0, 0), new Point(320, -160)), curve.points());
    }

    @Test
    void aNarrowColumnGetsANarrowerPlotWithLetteringOfTheSameSize() {
        Drawing drawing = CurveFigure.layOut(TWO, 438);
        assertTrue(drawing.bounds().width() <= 438, () -> drawing.bounds().toString());
        Audit.clear(drawing, "curve");
    }

    @Test
    void samplesOnAStraightPieceAreOneLine() {
        Shape.Line curve = (Shape.Line) CurveFigure.layOut(straight(20, 50, 80, 80, 80), Figure.PAGE_WIDTH)
                .shapes("curve ")
                .get(0);
        assertEquals(List.of(new Point(0, 0), new Point(160, -160), new Point(320, -160)), curve.points());
    }

    @Test
    void whatLiesOutsideTheAxesIsCutOffAtTheirEdge() {
        Drawing drawing = CurveFigure.layOut(
                plot(
                        List.of(new Curve("", List.of(new Sample(0, 50), new Sample(200, 110), new Sample(400, 50)))),
                        List.of()),
                Figure.PAGE_WIDTH);
        List<Shape> pieces = drawing.shapes("curve ");
        assertEquals(2, pieces.size());
        Point leaving = ((Shape.Line) pieces.get(0)).points().get(1);
        Point entering = ((Shape.Line) pieces.get(1)).points().get(0);
        assertEquals(-160, leaving.y(), 1e-9);
        assertEquals(100.0 / 600 * 320, leaving.x(), 1e-9);
        assertEquals(-160, entering.y(), 1e-9);
        assertEquals(300.0 / 600 * 320, entering.x(), 1e-9);
    }

    @Test
    void curvesDifferInDashes() {
        Drawing drawing = CurveFigure.layOut(TWO, Figure.PAGE_WIDTH);
        assertEquals(
                List.of(),
                ((Shape.Line) drawing.shapes("curve bare").get(0)).stroke().dashes());
        assertEquals(
                List.of(8.0, 4.0),
                ((Shape.Line) drawing.shapes("curve with fan").get(0)).stroke().dashes());
    }

    @Test
    void guidesLeadFromAPointToBothAxes() {
        assertEquals(2, dashed(TWO).size());
    }

    @Test
    void noGuideRunsAlongAnAxisALevelCurveOrAnotherGuide() {
        Curve level = new Curve("limit", List.of(new Sample(0, 48), new Sample(600, 48)));
        Curve rising = new Curve("plate", List.of(new Sample(0, 20), new Sample(600, 80)));
        // One on the vertical axis, one on the level curve, two above each other: the lower has no upright guide of its
        // own.
        List<Mark> marks = List.of(
                mark(0, 50, "a", "= 1"),
                mark(280, 48, "b", "= 2"),
                mark(400, 70, "c", "= 3"),
                mark(400, 60, "d", "= 4"));
        assertEquals(0 + 1 + 2 + 1, dashed(plot(List.of(rising, level), marks)).size());
    }

    @Test
    void theTableHasWhatOneReadsOffAtTheNumbersOfTheAxis() {
        Figure.Table table = example().table();
        assertEquals(List.of("t in s", "T in °C, bare", "T in °C, with fan"), table.head());
        assertEquals(List.of("0", "22", "22"), table.rows().get(0));
        // 22 + 52 (1 − e^(−100/120)) = 51.4; 22 + 26 (1 − e^(−100/120)) = 36.7
        assertEquals(List.of("100", "51", "37"), table.rows().get(1));
        assertEquals(7, table.rows().size());
    }

    @Test
    void theWalkTellsAxesLinesAndPoints() {
        assertEquals(
                List.of(
                        "The horizontal axis shows time t in s from 0 to 600, the vertical axis temperature T in "
                                + "°C from 20 to 80.",
                        "The line bare rises from 22 to 74.",
                        "The line with fan rises from 22 to 48.",
                        "The point T_1 = 54.9 °C is marked at t = 120, T = 55."),
                example().walk());
    }

    @Test
    void theNumbersOfTheAxesHaveTheDecimalMarkerOfTheSheet() {
        Plot comma = new Plot(
                TIME,
                new Axis("share", new Symbol("a", ""), "", 0, 1),
                List.of(new Curve("", List.of(new Sample(0, 0), new Sample(600, 1)))),
                List.of(),
                DecimalMarker.COMMA);
        List<String> numbers = CurveFigure.layOut(comma, Figure.PAGE_WIDTH).shapes("axes").stream()
                .filter(Shape.Words.class::isInstance)
                .map(words -> Audit.text((Shape.Words) words))
                .toList();
        assertTrue(numbers.contains("0,2"), numbers::toString);
    }

    @Test
    void aMarkOutsideTheAxesIsRefused() {
        IllegalArgumentException refused = assertThrows(
                IllegalArgumentException.class, () -> plot(TWO.curves(), List.of(mark(700, 30, "P", "= 1 W"))));
        assertTrue(refused.getMessage().contains("P"));
    }
}
