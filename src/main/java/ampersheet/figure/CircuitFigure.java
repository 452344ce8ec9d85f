package ampersheet.figure;

import ampersheet.circuit.Schematic;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Draws a schematic. */
public final class CircuitFigure {
  /** Tried in turn until every label has a place of its own; text needs room across sooner than upwards. */
  private static final List<CircuitDrawing.Step> STEPS = List.of(new CircuitDrawing.Step(24, 24),
      new CircuitDrawing.Step(27, 24), new CircuitDrawing.Step(30, 24), new CircuitDrawing.Step(33, 27),
      new CircuitDrawing.Step(37, 30), new CircuitDrawing.Step(42, 34), new CircuitDrawing.Step(48, 40));

  /** Fits a page of A4 with its margins. */
  private static final double COMFORTABLE_WIDTH = 560;

  private CircuitFigure() {}

  /**
   * @param labels by part name; a part without one is drawn without text, a node with its own name
   * @param emphasised names of parts drawn heavier
   * @param idPrefix makes ids unique in a page
   */
  public static Figure draw(String title, Schematic schematic, Map<String, Label> labels, SymbolStyle style,
      Set<String> emphasised, String idPrefix) {
    CircuitWords words = new CircuitWords(schematic, labels);
    Drawing drawing = layOut(schematic, labels, style, emphasised).drawing();
    return new Figure(drawing.svg(title, words.summary(), idPrefix), title, words.summary(), words.table(),
        words.walk());
  }

  static CircuitDrawing layOut(Schematic schematic, Map<String, Label> labels, SymbolStyle style,
      Set<String> emphasised) {
    CircuitDrawing fitting = null;
    CircuitDrawing last = null;
    for (CircuitDrawing.Step step : STEPS) {
      last = new CircuitDrawing(schematic, labels, style, emphasised, step);
      boolean wide = last.drawing().bounds().width() > COMFORTABLE_WIDTH;
      if (!last.crowded() && !last.displaced() && !wide) {
        return last;
      }
      fitting = fitting == null && !last.crowded() ? last : fitting;
      if (fitting != null && wide) {
        break;
      }
    }
    return fitting == null ? last : fitting;
  }
}
