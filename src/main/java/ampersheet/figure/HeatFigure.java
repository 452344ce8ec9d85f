package ampersheet.figure;

import ampersheet.thermal.HeatNetwork;
import java.util.Map;

/** Draws a heat path from the losses to the ambients. */
public final class HeatFigure {
  private HeatFigure() {}

  /** @param labels by name of ambient, node, resistance or loss */
  public static Figure draw(String title, HeatNetwork network, Map<String, Label> labels, SymbolStyle style,
      String idPrefix) {
    throw new UnsupportedOperationException("being written");
  }
}
