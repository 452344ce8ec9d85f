package ampersheet.chain;

import java.util.List;

/**
 * Tiles on a grid of tile places; column 0 left, row 0 top. Rotated tiles must be square.
 *
 * @param first index in {@code places} of the tile the controller feeds
 * @param returnLine whether the data comes back on a return line
 * @param bitsPerPixel taken by each pixel before it passes the rest on
 * @param bitTime seconds per bit
 * @param resetTime seconds of silence that end a frame
 */
public record Panel(Tile tile, List<Place> places, int first, boolean returnLine, int bitsPerPixel, double bitTime,
    double resetTime) {
  public Panel {
    places = List.copyOf(places);
  }

  /** @param quarterTurns clockwise, 0 to 3 */
  public record Place(int column, int row, int quarterTurns) {}
}
