package ampersheet.quantity;

import java.util.List;

/** The preferred number series of IEC 60063. */
public enum PreferredSeries {
  E3, E6, E12, E24, E48, E96, E192;

  /** Mantissas in [1, 10), ascending, as the standard lists them. */
  public List<Double> mantissas() {
    throw new UnsupportedOperationException("being written");
  }

  /** The smallest member not below {@code value}; a value within 1e-9 of a member counts as that member. */
  public double nextUp(double value) {
    throw new UnsupportedOperationException("being written");
  }

  /** The largest member not above {@code value}; a value within 1e-9 of a member counts as that member. */
  public double nextDown(double value) {
    throw new UnsupportedOperationException("being written");
  }

  /** The member with the least ratio to {@code value}. */
  public double nearest(double value) {
    throw new UnsupportedOperationException("being written");
  }

  public boolean contains(double value) {
    throw new UnsupportedOperationException("being written");
  }

  /** Members from {@code low} to {@code high}, both inclusive, ascending. */
  public List<Double> between(double low, double high) {
    throw new UnsupportedOperationException("being written");
  }
}
