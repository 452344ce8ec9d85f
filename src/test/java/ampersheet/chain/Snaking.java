package ampersheet.chain;

import java.util.ArrayList;
import java.util.List;

/**
 * Rows of tiles through which data snakes: every second row is turned half around, so that its data runs back. Places
 * are listed row by row, each from left to right.
 */
public final class Snaking {
    private Snaking() {}

    public static List<Panel.Place> places(int columns, int rows) {
        List<Panel.Place> places = new ArrayList<>();
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                places.add(new Panel.Place(column, row, row % 2 == 0 ? 0 : 2));
            }
        }
        return places;
    }

    /** Index of the tile to feed: the end of the top row on which the tile has its input. */
    static int first(Tile tile, int columns) {
        return tile.input() == Tile.Side.EAST ? columns - 1 : 0;
    }
}
