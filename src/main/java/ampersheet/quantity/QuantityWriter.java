package ampersheet.quantity;

/**
 * Prints a value by the SI writing rules: engineering prefix, no-break space (U+00A0) before the unit (also before %
 * and °C; none before the ° of an angle), leading zero, the real minus sign U+2212, digits in groups of three by a
 * narrow no-break space (U+202F) from five digits on. A value far from 1 whose unit takes no prefix is printed with a
 * power of ten: {@code 1.7×10⁻⁵ 1/K}.
 *
 * <p>Rounding is half up on the decimal digits of the value, seen to fifteen figures: what a person would do who reads
 * 2.675, not what the binary number just below it would give. If rounding carries to 1000, the next prefix is taken.
 */
public record QuantityWriter(DecimalMarker marker) {
    public static final QuantityWriter POINT = new QuantityWriter(DecimalMarker.POINT);
    public static final char NO_BREAK_SPACE = '\u00A0';
    public static final char GROUP_SPACE = '\u202F';
    public static final char MINUS = '\u2212';
    private static final double SAME = 1e-12;
    /** More digits than this do not help a reader: a longer decimal is rounded instead. */
    private static final int LONGEST_EXACT = 6;

    private static final int SMALLEST_PLAIN_POINT = -3;
    private static final int LARGEST_PLAIN_POINT = 9;

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
     * The shortest decimal that equals the value to within 1e-12, if it has at most six digits (or {@code figures}, if
     * that is more) or is a whole number printed without prefix; or else the value rounded half up to {@code figures}
     * significant figures with trailing zeros dropped: for givens and steps.
     *
     * @param si in coherent SI units
     * @param unit whose prefix may be exchanged for the engineering prefix that puts the number in [1, 1000)
     * @throws IllegalArgumentException if the value is not finite
     */
    public Printed plain(double si, Unit unit, int figures) {
        Decimal value = decimal(si, unit);
        int longest = Math.max(figures, LONGEST_EXACT);
        if (!unit.prefixable()) {
            longest = Math.max(longest, Math.min(value.point(), Decimal.MOST_DIGITS));
        }
        for (int digits = 0; digits <= longest; digits++) {
            Decimal shorter = value.rounded(digits);
            if (same(shorter, value, si, unit)) {
                return print(shorter, shorter.digits().length, unit, true);
            }
        }
        Decimal rounded = value.rounded(figures);
        return print(rounded, rounded.digits().length, unit, false);
    }

    /**
     * As {@link #plain}, for a line of working from which a reader rounds the answer to one figure less: more digits
     * are shown where rounding the rounded number would give another answer than rounding the value (434.48 as 434.5,
     * and then 435 instead of 434).
     */
    public Printed working(double si, Unit unit, int figures) {
        double shown = unit.fromSi(si);
        int enough = figures;
        while (Double.isFinite(shown)
                && enough < figures + 3
                && SignificantFigures.round(SignificantFigures.round(shown, enough), figures - 1)
                        != SignificantFigures.round(shown, figures - 1)) {
            enough++;
        }
        return plain(si, unit, enough);
    }

    /**
     * Rounded half up to {@code figures} significant figures, trailing zeros kept: for final answers.
     *
     * @throws IllegalArgumentException if the value is not finite
     */
    public Printed rounded(double si, Unit unit, int figures) {
        Decimal value = decimal(si, unit);
        Decimal rounded = value.rounded(figures);
        return print(rounded, figures, unit, same(rounded, value, si, unit));
    }

    /** In the unit without prefix if printing chooses one, else in the unit itself. */
    private static Decimal decimal(double si, Unit unit) {
        double value = (unit.prefixable() ? unit.withoutPrefix() : unit).fromSi(si);
        Decimal decimal = Decimal.of(value, Decimal.MOST_DIGITS);
        if (unit.offset() == 0) {
            return decimal;
        }
        // Taking 273.15 away leaves the rounding error of the larger number in the smaller: those digits mean nothing.
        int lost = Decimal.of(unit.offset(), 1).point() - decimal.point();
        return decimal.rounded(Decimal.MOST_DIGITS - 1 - Math.max(0, lost));
    }

    private static boolean same(Decimal shorter, Decimal value, double si, Unit unit) {
        double difference = Math.abs(shorter.value() - value.value());
        return unit.offset() == 0
                ? difference <= SAME * Math.abs(value.value())
                : difference <= SAME * Math.abs(si) / unit.factor();
    }

    private Printed print(Decimal value, int figures, Unit unit, boolean exact) {
        if (unit.prefixable() && !value.isZero()) {
            char prefix = prefix(value.point() - 1, UnitReader.printedPrefixes(unit.base()));
            int power = UnitReader.powerOf(prefix);
            String symbol = power == 0 ? unit.base() : prefix + unit.base();
            return printed(number(value, value.point() - power, figures), symbol, exact);
        }
        return printed(number(value, value.point(), figures), unit.symbol(), exact);
    }

    private static Printed printed(String number, String symbol, boolean exact) {
        if (symbol.isEmpty()) {
            return new Printed(number, number, symbol, exact);
        }
        String between = symbol.equals("°") ? "" : String.valueOf(NO_BREAK_SPACE);
        return new Printed(number + between + symbol, number, symbol, exact);
    }

    /** The allowed prefix next below the leading digit's power of ten; below all of them, the smallest. */
    private static char prefix(int leading, String allowed) {
        char chosen = ' ';
        char smallest = ' ';
        for (int i = 0; i < allowed.length(); i++) {
            char prefix = allowed.charAt(i);
            int power = UnitReader.powerOf(prefix);
            if (power < UnitReader.powerOf(smallest)) {
                smallest = prefix;
            }
            boolean fits = power <= leading;
            boolean better = leading < 0 && chosen == ' ' || power > UnitReader.powerOf(chosen);
            if (fits && better) {
                chosen = prefix;
            }
        }
        return leading < 0 && chosen == ' ' ? smallest : chosen;
    }

    private String number(Decimal value, int point, int figures) {
        StringBuilder out = new StringBuilder();
        if (value.isZero()) {
            return "0";
        }
        if (value.negative()) {
            out.append(MINUS);
        }
        boolean plain = point >= SMALLEST_PLAIN_POINT && point <= LARGEST_PLAIN_POINT || point == value.digits().length;
        digits(out, value, plain ? point : 1, figures);
        if (!plain) {
            out.append("×10").append(superscript(point - 1));
        }
        return out.toString();
    }

    private void digits(StringBuilder out, Decimal value, int point, int figures) {
        int whole = Math.max(1, point);
        for (int i = 0; i < whole; i++) {
            if (i > 0 && whole >= 5 && (whole - i) % 3 == 0) {
                out.append(GROUP_SPACE);
            }
            out.append(digit(value, point - whole + i));
        }
        int decimals = figures - point;
        if (decimals <= 0) {
            return;
        }
        out.append(marker.character());
        for (int i = 0; i < decimals; i++) {
            if (i > 0 && decimals >= 5 && i % 3 == 0) {
                out.append(GROUP_SPACE);
            }
            out.append(digit(value, point + i));
        }
    }

    private static char digit(Decimal value, int index) {
        return index < 0 || index >= value.digits().length ? '0' : (char) ('0' + value.digits()[index]);
    }

    private static String superscript(int power) {
        StringBuilder out = new StringBuilder(power < 0 ? "⁻" : "");
        String digits = Integer.toString(Math.abs(power));
        for (int i = 0; i < digits.length(); i++) {
            out.append("⁰¹²³⁴⁵⁶⁷⁸⁹".charAt(digits.charAt(i) - '0'));
        }
        return out.toString();
    }
}
