package ampersheet.figure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.formula.Symbol;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class CurveFigureTest {
  private static final CurveFigure.Axis TIME = new CurveFigure.Axis(new Symbol("t", ""), "s", 0, 600);
  private static final CurveFigure.Axis TEMPERATURE = new CurveFigure.Axis(new Symbol("T", ""), "°C", 20, 80);

  /** Warming towards {@code end} with a time constant of 120 s. */
  static CurveFigure.Curve warming(String name, double end) {
    List<CurveFigure.Sample> samples = new ArrayList<>();
    for (int i = 0; i <= 60; i++) {
      samples.add(new CurveFigure.Sample(10 * i, 22 + (end - 22) * (1 - StrictMath.exp(-10.0 * i / 120))));
    }
    return new CurveFigure.Curve(name, samples);
  }

  private static final List<CurveFigure.Curve> TWO = List.of(warming("bare", 74), warming("with fan", 48));
  private static final List<CurveFigure.Mark> MARKS = List.of(
      new CurveFigure.Mark(120, 22 + 52 * (1 - StrictMath.exp(-1)), "?", CurveFigure.Guides.TO_X));

  static Figure example() {
    return CurveFigure.draw("Warming up", TIME, TEMPERATURE, TWO, MARKS, "q1");
  }

  @Test
  void thePlotIsWellFormedAndItsTextStandsClear() {
    Audit.svg(example(), "q1", "curve");
    Audit.clear(CurveFigure.layOut(TIME, TEMPERATURE, TWO, MARKS), "curve");
  }

  @Test
  void aSampleLiesWhereTheAxesSay() {
    Drawing drawing = CurveFigure.layOut(TIME, TEMPERATURE, List.of(new CurveFigure.Curve("", List.of(
        new CurveFigure.Sample(0, 20), new CurveFigure.Sample(600, 80)))), List.of());
    Shape.Line curve = (Shape.Line) drawing.shapes("curve ").get(0);
    assertEquals(List.of(new Point(0, 0), new Point(380, -230)), curve.points());
  }

  @Test
  void whatLiesOutsideTheAxesIsCutOffAtTheirEdge() {
    Drawing drawing = CurveFigure.layOut(TIME, TEMPERATURE, List.of(new CurveFigure.Curve("", List.of(
        new CurveFigure.Sample(0, 50), new CurveFigure.Sample(200, 110), new CurveFigure.Sample(400, 50)))), List.of());
    List<Shape> pieces = drawing.shapes("curve ");
    assertEquals(2, pieces.size());
    Point leaving = ((Shape.Line) pieces.get(0)).points().get(1);
    Point entering = ((Shape.Line) pieces.get(1)).points().get(0);
    assertEquals(-230, leaving.y(), 1e-9);
    assertEquals(100.0 / 600 * 380, leaving.x(), 1e-9);
    assertEquals(-230, entering.y(), 1e-9);
    assertEquals(300.0 / 600 * 380, entering.x(), 1e-9);
  }

  @Test
  void curvesDifferInDashes() {
    Drawing drawing = CurveFigure.layOut(TIME, TEMPERATURE, TWO, List.of());
    assertEquals("", ((Shape.Line) drawing.shapes("curve bare").get(0)).stroke().dashes());
    assertEquals("8 4", ((Shape.Line) drawing.shapes("curve with fan").get(0)).stroke().dashes());
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
  void aMarkSaysOnlyWhatItsGuidesShow() {
    List<String> walk = example().walk();
    assertEquals("The curve bare rises from 22 to 74.", walk.get(1));
    assertEquals("A point is marked ? at t = 120.", walk.get(3));
  }

  @Test
  void aMarkOutsideTheAxesIsRefused() {
    IllegalArgumentException refused = assertThrows(IllegalArgumentException.class, () -> CurveFigure.draw("", TIME,
        TEMPERATURE, TWO, List.of(new CurveFigure.Mark(700, 30, "P", CurveFigure.Guides.NONE)), "q1"));
    assertTrue(refused.getMessage().contains("P"));
  }
}
