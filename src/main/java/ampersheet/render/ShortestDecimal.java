package ampersheet.render;

import java.math.BigDecimal;
import java.math.MathContext;

/** Numbers for other programs. */
public final class ShortestDecimal {
    private static final int ENOUGH_DIGITS = 17;

    private ShortestDecimal() {}

    /** The fewest digits that read back as the same number. Double.toString finds them only since Java 19. */
    public static String of(double value) {
        if (value == 0) {
            return "0";
        }
        BigDecimal exact = new BigDecimal(value);
        for (int digits = 1; digits < ENOUGH_DIGITS; digits++) {
            BigDecimal rounded = exact.round(new MathContext(digits));
            if (rounded.doubleValue() == value) {
                return written(rounded);
            }
        }
        return written(exact.round(new MathContext(ENOUGH_DIGITS)));
    }

    private static String written(BigDecimal number) {
        double size = Math.abs(number.doubleValue());
        return size >= 1e-6 && size < 1e15 ? number.toPlainString() : number.toString();
    }
}
