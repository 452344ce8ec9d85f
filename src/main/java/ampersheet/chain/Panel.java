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
 * @param cabled whether a cable leads from each tile's output to the input of the next in {@code places}, wherever
 *     these lie; otherwise tiles pass data on where they touch, and by links at the edge of the panel
 */
public record Panel(
        Tile tile,
        List<Place> places,
        int first,
        boolean returnLine,
        int bitsPerPixel,
        double bitTime,
        double resetTime,
        boolean cabled) {
    public Panel {
        places = List.copyOf(places);
        if (first < 0 || first >= places.size()) {
            throw new IllegalArgumentException("no tile " + first + " among " + places.size() + " to feed");
        }
        if (cabled && first != 0) {
            throw new IllegalArgumentException("cables begin at the first place, not at " + first);
        }
        if (bitsPerPixel < 1) {
            throw new IllegalArgumentException("a pixel takes at least one bit: " + bitsPerPixel);
        }
    }

    /** @param quarterTurns clockwise, 0 to 3 */
    public record Place(int column, int row, int quarterTurns) {}
}
