package ampersheet.formula;

/**
 * Reads formulas. Infix, lowest to highest: {@code or}, {@code and}, {@code not}, one comparison, {@code + -},
 * {@code * /}, prefix {@code -}, {@code ^} (binds to the right, and tighter than a minus before it). A number may be
 * followed by a unit ({@code 1.2 V}, {@code 25 degC}, {@code 50 K/W}). Function calls as {@code parallel(R1, R2)}.
 */
public final class FormulaReader {
  private FormulaReader() {}

  /** @throws FormulaFault at the character that does not fit */
  public static Expression expression(String text) {
    throw new UnsupportedOperationException("being written");
  }

  /** @throws FormulaFault at the character that does not fit */
  public static Condition condition(String text) {
    throw new UnsupportedOperationException("being written");
  }
}
