package ampersheet.quantity;

/**
 * Prints a value by the SI writing rules: engineering prefix, no-break space (U+00A0) before the unit (also before % and
 * °C), leading zero, the real minus sign U+2212, digits in groups of three by a narrow no-break space from five digits on.
 */
public record QuantityWriter(DecimalMarker marker) {
  public static final QuantityWriter POINT = new QuantityWriter(DecimalMarker.POINT);

  /**
   * What was printed.
   *
   * @param text number, no-break space, unit
   * @param number the number alone
   * @param unit the unit symbol alone, with its prefix; may be empty
   * @param exact whether the printed number equals the value within 1e-12, so that "=" may stand before it
   */
  public record Printed(String text, String number, String unit, boolean exact) {}

  /**
   * The shortest decimal that equals the value to within 1e-12, or else the value rounded half-up to
   * {@code figures} significant figures with trailing zeros dropped: for givens and steps.
   *
   * @param si in coherent SI units
   * @param unit whose prefix may be exchanged for the engineering prefix that puts the number in [1, 1000)
   */
  public Printed plain(double si, Unit unit, int figures) {
    throw new UnsupportedOperationException("being written");
  }

  /** Rounded half-up to {@code figures} significant figures, trailing zeros kept: for final answers. */
  public Printed rounded(double si, Unit unit, int figures) {
    throw new UnsupportedOperationException("being written");
  }
}
