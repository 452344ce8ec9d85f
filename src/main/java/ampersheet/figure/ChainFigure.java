package ampersheet.figure;

import ampersheet.chain.Panel;
import java.util.List;

/** Draws a panel of tiles with ports, rotation, data path and return line. */
public final class ChainFigure {
  private ChainFigure() {}

  /** @param mark a pixel that is asked about or pointed at, in panel columns and rows from 0, with a short label */
  public record Mark(int x, int y, String label) {}

  /** The numbers of pixels are not printed, so that the figure gives no answer away; the path of the data is. */
  public static Figure draw(String title, Panel panel, List<Mark> marks, String idPrefix) {
    throw new UnsupportedOperationException("being written");
  }
}
