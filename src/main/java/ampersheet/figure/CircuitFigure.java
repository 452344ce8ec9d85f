package ampersheet.figure;

import ampersheet.circuit.GridPoint;
import ampersheet.circuit.PlacedPart;
import ampersheet.circuit.Schematic;
import java.util.Map;
import java.util.Set;

/** Draws a schematic. */
public final class CircuitFigure {
  /** Between columns of the grid, in pixels: as usual, and closer where a page is too narrow for that. */
  private static final double[] GAPS = {Spacing.USUAL, 21, 18, 16};
  private static final int ATTEMPTS = 24;
  private static final double STRETCH = 12;

  private CircuitFigure() {}

  /**
   * @param labels by part name; a part without one is drawn without text, a node with its own name
   * @param emphasised names of parts drawn heavier
   * @param idPrefix makes ids unique in a page
   */
  public static Figure draw(String title, Schematic schematic, Map<String, Label> labels, SymbolStyle style,
      Set<String> emphasised, String idPrefix) {
    return draw(title, schematic, labels, style, emphasised, idPrefix, Figure.PAGE_WIDTH);
  }

  /** @param widest width in pixels that is not exceeded where the drawing stays legible */
  public static Figure draw(String title, Schematic schematic, Map<String, Label> labels, SymbolStyle style,
      Set<String> emphasised, String idPrefix, double widest) {
    CircuitWords words = new CircuitWords(schematic, labels);
    Drawing drawing = layOut(schematic, labels, style, emphasised, widest).drawing();
    return new Figure(drawing.svg(title, words.summary(), idPrefix), title, words.summary(), words.table(),
        words.walk());
  }

  static CircuitDrawing layOut(Schematic schematic, Map<String, Label> labels, SymbolStyle style,
      Set<String> emphasised) {
    return layOut(schematic, labels, style, emphasised, Figure.PAGE_WIDTH);
  }

  static CircuitDrawing layOut(Schematic schematic, Map<String, Label> labels, SymbolStyle style, Set<String> emphasised,
      double widest) {
    CircuitDrawing best = null;
    for (double gap : GAPS) {
      CircuitDrawing drawing = layOut(schematic, labels, style, emphasised, widest, gap);
      if (best == null || drawing.legible()) {
        best = drawing;
      }
      if (best.drawing().bounds().width() <= widest) {
        break;
      }
    }
    return best;
  }

  private static CircuitDrawing layOut(Schematic schematic, Map<String, Label> labels, SymbolStyle style,
      Set<String> emphasised, double widest, double gap) {
    Spacing spacing =
        new Spacing(schematic.parts().stream().flatMap(part -> part.ends().values().stream()).toList(), gap);
    CircuitDrawing best = null;
    for (int attempt = 0; attempt < ATTEMPTS; attempt++) {
      CircuitDrawing drawing = new CircuitDrawing(schematic, labels, style, emphasised, spacing);
      boolean wide = drawing.drawing().bounds().width() > widest - 10;
      if (best == null || !wide && (drawing.legible() || !best.legible()) || drawing.legible() && !best.legible()) {
        best = drawing;
      }
      if (drawing.cramped().isEmpty() || wide && best.legible()) {
        break;
      }
      spacing = spacing.copy();
      for (PlacedPart part : drawing.cramped()) {
        stretch(spacing, part, drawing.vertical(part), attempt % 2 == 0);
      }
    }
    return best;
  }

  /** Makes room where text goes first: beside upright parts, over lying ones; by turns along the part and across it. */
  private static void stretch(Spacing spacing, PlacedPart part, boolean vertical, boolean firstTurn) {
    int left = part.ends().values().stream().mapToInt(GridPoint::x).min().getAsInt();
    int right = part.ends().values().stream().mapToInt(GridPoint::x).max().getAsInt();
    int low = part.ends().values().stream().mapToInt(GridPoint::y).min().getAsInt();
    int high = part.ends().values().stream().mapToInt(GridPoint::y).max().getAsInt();
    if (vertical == firstTurn) {
      boolean outermost = right == spacing.rightmost();
      spacing.widen(vertical ? outermost ? left - 1 : right : left, vertical ? outermost ? left : right + 1 : right,
          STRETCH);
    } else {
      boolean outermost = high == spacing.topmost();
      spacing.heighten(vertical ? low : outermost ? low - 1 : high, vertical ? high : outermost ? low : high + 1,
          STRETCH);
    }
  }
}
