package ampersheet.chain;

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

  public enum Order { PROGRESSIVE, SERPENTINE }

  public enum Along { ROWS, COLUMNS }

  public enum Corner { TOP_LEFT, TOP_RIGHT, BOTTOM_LEFT, BOTTOM_RIGHT }

  /** Clockwise from the top. */
  public enum Side {
    NORTH(0, -1), EAST(1, 0), SOUTH(0, 1), WEST(-1, 0);

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
