package ampersheet.chain;

import java.util.Arrays;
import java.util.Set;

/**
 * A rectangular tile as it lies unrotated; column 0 left, row 0 top.
 *
 * @param order whether every line of pixels runs the same way or alternates
 * @param start corner of the first pixel
 * @param along whether lines of pixels are rows or columns
 * @param input side on which data enters; the return line leaves beside it
 * @param output side on which data leaves; the return line enters beside it
 */
public record Tile(int columns, int rows, Order order, Corner start, Along along, Side input, Side output) {
    public Tile {
        if (columns < 1 || rows < 1) {
            throw new IllegalArgumentException("a tile has at least one pixel: " + columns + " by " + rows);
        }
    }

    public enum Order {
        ALL_ONE_WAY("all one way", "progressive"),
        SERPENTINE("back and forth", "serpentine");

        private final Set<String> names;

        /** @param names the word that templates use, and the one they used before */
        Order(String... names) {
            this.names = Set.of(names);
        }

        /** @throws IllegalArgumentException if that is no order */
        public static Order called(String word) {
            return Arrays.stream(values())
                    .filter(order -> order.names.contains(word))
                    .findFirst()
                    .orElseThrow(() -> new IllegalArgumentException(
                            "lines of a tile run back and forth or all one way, not \"" + word + "\""));
        }
    }

    public enum Along {
        ROWS("across", "rows"),
        COLUMNS("down", "columns");

        private final Set<String> names;

        /** @param names the word that templates use, and the one they used before */
        Along(String... names) {
            this.names = Set.of(names);
        }

        /** @throws IllegalArgumentException if lines cannot run so */
        public static Along called(String word) {
            return Arrays.stream(values())
                    .filter(along -> along.names.contains(word))
                    .findFirst()
                    .orElseThrow(() ->
                            new IllegalArgumentException("lines of a tile run across or down, not \"" + word + "\""));
        }
    }

    public enum Corner {
        TOP_LEFT,
        TOP_RIGHT,
        BOTTOM_LEFT,
        BOTTOM_RIGHT
    }

    /** Clockwise from the top. */
    public enum Side {
        NORTH(0, -1),
        EAST(1, 0),
        SOUTH(0, 1),
        WEST(-1, 0);

        private final int columnStep;
        private final int rowStep;

        Side(int columnStep, int rowStep) {
            this.columnStep = columnStep;
            this.rowStep = rowStep;
        }

        /** Columns one goes right on leaving through this side. */
        public int columnStep() {
            return columnStep;
        }

        /** Rows one goes down on leaving through this side. */
        public int rowStep() {
            return rowStep;
        }

        public Side turned(int quarterTurnsClockwise) {
            return values()[Math.floorMod(ordinal() + quarterTurnsClockwise, 4)];
        }

        public Side opposite() {
            return turned(2);
        }
    }
}
