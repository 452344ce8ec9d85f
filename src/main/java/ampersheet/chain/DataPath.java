package ampersheet.chain;

import java.util.List;

/** Follows a token through a panel, pixel by pixel, and notes each pixel's turn. */
public final class DataPath {
  private DataPath() {}

  public sealed interface Outcome {
    /**
     * @param stops in the order the data reaches them
     * @param tileOrder indices of places in the order the data enters them
     * @param returnOrder indices of places the return line passes on the way back; empty without a return line
     */
    record Traced(List<Stop> stops, List<Integer> tileOrder, List<Integer> returnOrder) implements Outcome {
      /** Turn of the pixel at panel column x and row y, from 0; -1 if the data never reaches it. */
      public int turn(int x, int y) {
        for (Stop stop : stops) {
          if (stop.x() == x && stop.y() == y) {
            return stop.turn();
          }
        }
        return -1;
      }
    }

    /** Data leaves one tile towards a neighbour that has no input on that side. */
    record Mismatched(int fromPlace, int toPlace) implements Outcome {}

    /** Two tiles lie on one place, or a tile that is not square is turned by one or three quarters. */
    record Misplaced(int place, String why) implements Outcome {}

    /** Tiles the data never reaches. */
    record Unreached(List<Integer> places) implements Outcome {}
  }

  /** @param x panel column, @param y panel row, both from 0 */
  public record Stop(int turn, int place, int x, int y) {}

  public static Outcome trace(Panel panel) {
    throw new UnsupportedOperationException("being written");
  }

  /**
   * Seconds from the first bit until the frame is shown, by sending it bit by bit through the pixels: each takes its own
   * bits and passes on the rest.
   */
  public static double frameTime(Panel panel) {
    throw new UnsupportedOperationException("being written");
  }
}
