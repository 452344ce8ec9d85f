package ampersheet.quantity;

/** Reads a quantity as people type it. Never folds m and M; never guesses between two readings. */
public final class QuantityReader {
  private QuantityReader() {}

  public static Reading read(String typed) {
    throw new UnsupportedOperationException("being written");
  }
}
