package ampersheet.formula;

import ampersheet.quantity.Dimension;
import ampersheet.quantity.Quantity;
import java.util.Set;

/** Checks and evaluates trees. */
public final class Evaluation {
  private Evaluation() {}

  /**
   * The dimension the expression has.
   *
   * @throws FormulaFault for an unknown name or function, volts added to amps, a root of no square, and the like
   */
  public static Dimension check(Expression expression, Scope scope) {
    throw new UnsupportedOperationException("being written");
  }

  /** @throws FormulaFault as for expressions, and where the two sides of a comparison differ in dimension */
  public static void check(Condition condition, Scope scope) {
    throw new UnsupportedOperationException("being written");
  }

  /** The value; NaN or infinite where the arithmetic says so (division by zero, root of a negative number). */
  public static Quantity evaluate(Expression expression, Values values) {
    throw new UnsupportedOperationException("being written");
  }

  public static boolean holds(Condition condition, Values values) {
    throw new UnsupportedOperationException("being written");
  }

  /** Names of quantities and words used, in order of appearance, without function names and series names. */
  public static Set<String> names(Expression expression) {
    throw new UnsupportedOperationException("being written");
  }

  public static Set<String> names(Condition condition) {
    throw new UnsupportedOperationException("being written");
  }
}
