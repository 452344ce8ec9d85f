package ampersheet.quantity;

/** Rounding to significant figures, half up on the decimal digits, as {@link QuantityWriter} prints them. */
public final class SignificantFigures {
    private SignificantFigures() {}

    /** @throws IllegalArgumentException if the value is not finite */
    public static double round(double value, int figures) {
        return Decimal.of(value, Decimal.MOST_DIGITS).rounded(figures).value();
    }
}
