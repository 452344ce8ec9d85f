package ampersheet.figure;

import ampersheet.circuit.GridPoint;
import ampersheet.circuit.PlacedPart;
import ampersheet.circuit.Schematic;
import java.util.Map;
import java.util.Set;

/** Draws a schematic. */
public final class CircuitFigure {
  /** Fits a page of A4 with its margins. */
  private static final double PAGE_WIDTH = 640;
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
    CircuitWords words = new CircuitWords(schematic, labels);
    Drawing drawing = layOut(schematic, labels, style, emphasised).drawing();
    return new Figure(drawing.svg(title, words.summary(), idPrefix), title, words.summary(), words.table(),
        words.walk());
  }

  static CircuitDrawing layOut(Schematic schematic, Map<String, Label> labels, SymbolStyle style,
      Set<String> emphasised) {
    Spacing spacing = new Spacing(schematic.parts().stream().flatMap(part -> part.ends().values().stream()).toList());
    CircuitDrawing best = null;
    for (int attempt = 0; attempt < ATTEMPTS; attempt++) {
      CircuitDrawing drawing = new CircuitDrawing(schematic, labels, style, emphasised, spacing);
      boolean wide = drawing.drawing().bounds().width() > PAGE_WIDTH - 10;
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
