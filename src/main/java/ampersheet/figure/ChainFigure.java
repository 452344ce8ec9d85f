package ampersheet.figure;

import ampersheet.chain.DataPath;
import ampersheet.chain.Panel;
import java.util.List;

/** Draws a panel of tiles with ports, rotation, data path and return line. */
public final class ChainFigure {
  private static final double PAGE_HEIGHT = 700;
  private static final double WIDEST_PITCH = 28;
  /** Rather than draw pixels closer, tiles are left out, where they can be. */
  private static final double NARROWEST_PITCH = 10;
  private static final double NARROWEST_OF_ALL = 5;
  /** Down to this the controller stands beside its tile; closer together it needs the width. */
  private static final double BESIDE_PITCH = 14;

  private ChainFigure() {}

  /** @param mark a pixel that is asked about or pointed at, in panel columns and rows from 0, with a short label */
  public record Mark(int x, int y, String label) {}

  /**
   * The numbers of pixels are not printed, so that the figure gives no answer away; the path of the data is. In a long
   * single row of tiles those in the middle are left out.
   *
   * @throws IllegalArgumentException if the data does not pass through every tile, or a mark lies on no pixel
   */
  public static Figure draw(String title, Panel panel, List<Mark> marks, String idPrefix) {
    return draw(title, panel, marks, idPrefix, Figure.PAGE_WIDTH);
  }

  /** @param widest width in pixels that is not exceeded where pixels can be told apart */
  public static Figure draw(String title, Panel panel, List<Mark> marks, String idPrefix, double widest) {
    DataPath.Outcome.Traced path = trace(panel);
    for (Mark mark : marks) {
      if (path.turn(mark.x(), mark.y()) < 0) {
        throw new IllegalArgumentException("the mark at column " + mark.x() + ", row " + mark.y() + " is on no pixel");
      }
    }
    ChainWords words = new ChainWords(panel, path, marks);
    return new Figure(layOut(panel, path, marks, widest).svg(title, words.summary(), idPrefix), title, words.summary(),
        words.table(), words.walk());
  }

  static DataPath.Outcome.Traced trace(Panel panel) {
    DataPath.Outcome outcome = DataPath.trace(panel);
    if (outcome instanceof DataPath.Outcome.Traced traced) {
      return traced;
    }
    throw new IllegalArgumentException("a panel that the data does not pass through cannot be drawn: " + outcome);
  }

  /** The widest distance between pixels that fits the page; the controller moves, then tiles are left out, to allow it. */
  static Drawing layOut(Panel panel, DataPath.Outcome.Traced path, List<Mark> marks) {
    return layOut(panel, path, marks, Figure.PAGE_WIDTH);
  }

  private static Drawing layOut(Panel panel, DataPath.Outcome.Traced path, List<Mark> marks, double widest) {
    boolean oneRow = panel.places().stream().allMatch(p -> p.row() == panel.places().get(0).row());
    boolean canElide = oneRow && panel.places().size() > 4;

    for (boolean elided : canElide ? new boolean[] {false, true} : new boolean[] {false}) {
      double pitch = WIDEST_PITCH;
      boolean outlineOnly = true;
      while (pitch >= (elided || !canElide ? NARROWEST_OF_ALL : NARROWEST_PITCH)) {
        Drawing drawing = new ChainDrawing(panel, path, marks, pitch, elided, pitch < BESIDE_PITCH, outlineOnly).drawing();
        Box bounds = drawing.bounds().grown(4);
        double across = (bounds.width() - widest) / pixelsAcross(panel, elided);
        double down = (bounds.height() - PAGE_HEIGHT) / pixelsDown(panel);
        boolean fits = across <= 0 && down <= 0;
        if (fits && !outlineOnly) {
          return drawing;
        }
        outlineOnly = !fits;
        pitch -= fits ? 0 : Math.max(1, Math.floor(Math.max(across, down)));
      }
    }
    return new ChainDrawing(panel, path, marks, NARROWEST_OF_ALL, canElide, true, false).drawing();
  }

  private static int pixelsAcross(Panel panel, boolean elided) {
    int tiles = panel.places().stream().mapToInt(Panel.Place::column).max().orElse(0) + 1;
    return (elided ? Math.min(3, tiles) : tiles) * panel.tile().columns();
  }

  private static int pixelsDown(Panel panel) {
    return (panel.places().stream().mapToInt(Panel.Place::row).max().orElse(0) + 1) * panel.tile().rows();
  }
}
