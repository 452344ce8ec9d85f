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
  public enum Order { PROGRESSIVE, SERPENTINE }

  public enum Along { ROWS, COLUMNS }

  public enum Corner { TOP_LEFT, TOP_RIGHT, BOTTOM_LEFT, BOTTOM_RIGHT }

  /** Clockwise from the top. */
  public enum Side { NORTH, EAST, SOUTH, WEST }
}
