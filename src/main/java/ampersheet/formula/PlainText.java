package ampersheet.formula;

/** Folds a tree into one line of text: {@code (V_s − V_f) / I_f} and {@code (9 V − 2 V) / 16 mA}. */
public final class PlainText {
  private PlainText() {}

  public static String symbolic(Expression expression, Notation notation) {
    throw new UnsupportedOperationException("being written");
  }

  /** Names replaced by their printed values; negative values in parentheses. */
  public static String substituted(Expression expression, Notation notation) {
    throw new UnsupportedOperationException("being written");
  }

  public static String symbolic(Condition condition, Notation notation) {
    throw new UnsupportedOperationException("being written");
  }

  public static String substituted(Condition condition, Notation notation) {
    throw new UnsupportedOperationException("being written");
  }
}
