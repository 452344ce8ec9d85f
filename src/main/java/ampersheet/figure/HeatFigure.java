package ampersheet.figure;

import ampersheet.thermal.HeatNetwork;
import java.util.Map;

/** Draws a heat path from the losses to the ambients. */
public final class HeatFigure {
  private HeatFigure() {}

  /**
   * @param labels by name of ambient, node, resistance or loss; of a node's capacity by {@link #capacityOf}
   * @param idPrefix makes ids unique in a page
   */
  public static Figure draw(String title, HeatNetwork network, Map<String, Label> labels, SymbolStyle style,
      String idPrefix) {
    return draw(title, network, labels, style, idPrefix, Figure.PAGE_WIDTH);
  }

  /** @param widest width in pixels that columns are not moved apart beyond */
  public static Figure draw(String title, HeatNetwork network, Map<String, Label> labels, SymbolStyle style,
      String idPrefix, double widest) {
    HeatWords words = new HeatWords(network, labels);
    Drawing drawing = layOut(network, labels, style, widest).drawing();
    return new Figure(drawing.svg(title, words.summary(), idPrefix), title, words.summary(), words.table(),
        words.walk());
  }

  /** The key of a node's capacity among the labels. */
  public static String capacityOf(String node) {
    return HeatDrawing.capacityKey(node);
  }

  /** Columns move apart until every label has its place or the page is full. */
  static HeatDrawing layOut(HeatNetwork network, Map<String, Label> labels, SymbolStyle style) {
    return layOut(network, labels, style, Figure.PAGE_WIDTH);
  }

  private static HeatDrawing layOut(HeatNetwork network, Map<String, Label> labels, SymbolStyle style, double widest) {
    HeatDrawing best = null;
    for (int attempt = 0; attempt < 14; attempt++) {
      HeatDrawing drawing = new HeatDrawing(network, labels, style, 96 + 12 * attempt, 62 + 4 * attempt);
      if (best != null && drawing.drawing().bounds().width() > widest - 10) {
        break;
      }
      best = drawing;
      if (!drawing.cramped()) {
        break;
      }
    }
    return best;
  }
}
