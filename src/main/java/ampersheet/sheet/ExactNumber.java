package ampersheet.sheet;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.OptionalDouble;

/** The shortest decimal that is read back as the very same double, the same under every Java; and the way back. */
final class ExactNumber {
    /** Enough for any double. */
    private static final int MOST_FIGURES = 17;

    private static final int LONGEST = 30;

    private ExactNumber() {}

    static String write(double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("not a number to keep: " + value);
        }
        if (value == 0) {
            return "0";
        }
        BigDecimal exact = new BigDecimal(value);
        for (int figures = 1; figures < MOST_FIGURES; figures++) {
            String text = plain(exact.round(new MathContext(figures, RoundingMode.HALF_EVEN)));
            if (Double.parseDouble(text) == value) {
                return text;
            }
        }
        return plain(exact.round(new MathContext(MOST_FIGURES, RoundingMode.HALF_EVEN)));
    }

    private static String plain(BigDecimal number) {
        BigDecimal stripped = number.stripTrailingZeros();
        int exponent = stripped.precision() - stripped.scale() - 1;
        return exponent >= -6 && exponent < 15 ? stripped.toPlainString() : stripped.toString();
    }

    /** Empty for anything but a plain decimal number of finite size. */
    static OptionalDouble read(String text) {
        if (text.isEmpty()
                || text.length() > LONGEST
                || !text.chars().allMatch(c -> "+-.0123456789eE".indexOf(c) >= 0)) {
            return OptionalDouble.empty();
        }
        try {
            double value = Double.parseDouble(text);
            return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
        } catch (NumberFormatException notOne) {
            return OptionalDouble.empty();
        }
    }
}
