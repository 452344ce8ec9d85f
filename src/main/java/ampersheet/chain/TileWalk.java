package ampersheet.chain;

import java.util.ArrayList;
import java.util.List;

/** Walks over the pixels of one unrotated tile the way its copper does: along a line to its end, then one line on. */
final class TileWalk {
    /** @param column from the left of the tile, @param row from its top */
    record Pixel(int column, int row) {
        /** Where the pixel comes to lie when a tile of so many rows is turned a quarter clockwise. */
        Pixel turnedQuarter(int rows) {
            return new Pixel(rows - 1 - row, column);
        }

        /** A record's own gives most pixels of a panel the hash of several others. */
        @Override
        public int hashCode() {
            return 10_007 * column + row;
        }
    }

    private final Tile tile;

    TileWalk(Tile tile) {
        this.tile = tile;
    }

    /** The pixels in the order the data reaches them. */
    List<Pixel> pixels() {
        boolean left = tile.start() == Tile.Corner.TOP_LEFT || tile.start() == Tile.Corner.BOTTOM_LEFT;
        boolean top = tile.start() == Tile.Corner.TOP_LEFT || tile.start() == Tile.Corner.TOP_RIGHT;
        int column = left ? 0 : tile.columns() - 1;
        int row = top ? 0 : tile.rows() - 1;
        int columnStep = tile.along() == Tile.Along.ROWS ? (left ? 1 : -1) : 0;
        int rowStep = tile.along() == Tile.Along.COLUMNS ? (top ? 1 : -1) : 0;
        int nextLineColumns = tile.along() == Tile.Along.COLUMNS ? (left ? 1 : -1) : 0;
        int nextLineRows = tile.along() == Tile.Along.ROWS ? (top ? 1 : -1) : 0;

        List<Pixel> walked = new ArrayList<>();
        Pixel lineStart = new Pixel(column, row);
        while (isInside(column, row)) {
            walked.add(new Pixel(column, row));
            if (isInside(column + columnStep, row + rowStep)) {
                column += columnStep;
                row += rowStep;
            } else if (tile.order() == Tile.Order.SERPENTINE) {
                columnStep = -columnStep;
                rowStep = -rowStep;
                column += nextLineColumns;
                row += nextLineRows;
            } else {
                lineStart = new Pixel(lineStart.column() + nextLineColumns, lineStart.row() + nextLineRows);
                column = lineStart.column();
                row = lineStart.row();
            }
        }
        return walked;
    }

    private boolean isInside(int column, int row) {
        return column >= 0 && column < tile.columns() && row >= 0 && row < tile.rows();
    }
}
