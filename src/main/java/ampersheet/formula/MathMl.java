package ampersheet.formula;

/** Folds a tree into MathML Core, the children of a {@code math} element; units upright, symbols italic. */
public final class MathMl {
  private MathMl() {}

  public static String symbol(Symbol symbol) {
    throw new UnsupportedOperationException("being written");
  }

  /** A printed value: number, no-break space, upright unit. */
  public static String value(ampersheet.quantity.QuantityWriter.Printed value) {
    throw new UnsupportedOperationException("being written");
  }

  public static String symbolic(Expression expression, Notation notation) {
    throw new UnsupportedOperationException("being written");
  }

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
