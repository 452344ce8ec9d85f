package ampersheet.figure;

import ampersheet.circuit.Schematic;
import java.util.Map;
import java.util.Set;

/** Draws a schematic. */
public final class CircuitFigure {
  private CircuitFigure() {}

  /**
   * @param labels by part name; a part without one is drawn without text
   * @param emphasised names of parts drawn heavier
   * @param idPrefix makes ids unique in a page
   */
  public static Figure draw(String title, Schematic schematic, Map<String, Label> labels, SymbolStyle style,
      Set<String> emphasised, String idPrefix) {
    throw new UnsupportedOperationException("being written");
  }
}
