package ampersheet.formula;

/**
 * All values from {@code low} to {@code high}, both included, in SI units. Bounds may be infinite.
 */
public record Interval(double low, double high) {
  static final Interval EVERYTHING = new Interval(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);

  /** @throws IllegalArgumentException if the bounds are exchanged or not numbers */
  public Interval {
    if (!(low <= high)) {
      throw new IllegalArgumentException("no interval from " + low + " to " + high);
    }
  }

  public static Interval exactly(double value) {
    return new Interval(value, value);
  }

  /** A nominal value with a tolerance to both sides, as a share of it: 0.05 for 5 %. */
  public static Interval around(double nominal, double tolerance) {
    double reach = Math.abs(nominal * tolerance);
    return new Interval(nominal - reach, nominal + reach);
  }

  public boolean contains(double value) {
    return low <= value && value <= high;
  }

  /** From the smallest to the largest of the values; everything if one of them is no number. */
  static Interval spanning(double... values) {
    double low = values[0];
    double high = values[0];
    for (double value : values) {
      if (Double.isNaN(value)) {
        return EVERYTHING;
      }
      low = Math.min(low, value);
      high = Math.max(high, value);
    }
    return new Interval(low, high);
  }
}
