package ampersheet.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Random;
import org.junit.jupiter.api.Test;

class DecimalTest {
    private static BigDecimal asBigDecimal(Decimal decimal) {
        BigDecimal digits = BigDecimal.ZERO;
        for (int digit : decimal.digits()) {
            digits = digits.movePointRight(1).add(BigDecimal.valueOf(digit));
        }
        BigDecimal value = digits.scaleByPowerOfTen(decimal.point() - decimal.digits().length);
        return decimal.negative() ? value.negate() : value;
    }

    /** Against the decimal arithmetic of the Java library, which the browser would have to carry. */
    @Test
    void digitsAreThoseOfExactArithmetic() {
        long seed = 20260101L;
        Random random = new Random(seed);
        for (int i = 0; i < 5_000; i++) {
            double value = i % 2 == 0
                    ? Double.longBitsToDouble(random.nextLong())
                    : (random.nextDouble() - 0.5) * Math.pow(10, random.nextInt(30) - 15);
            if (value - value != 0) {
                continue;
            }
            int figures = 1 + random.nextInt(Decimal.MOST_DIGITS);
            BigDecimal expected = new BigDecimal(value).round(new MathContext(figures, RoundingMode.HALF_UP));
            BigDecimal found = asBigDecimal(Decimal.of(value, figures));
            assertEquals(
                    0,
                    expected.compareTo(found),
                    "seed " + seed + ", draw " + i + ": " + value + " to " + figures + " figures gave " + found);
        }
    }

    @Test
    void theExtremesOfTheNumberLineAreWrittenExactly() {
        for (double value :
                new double[] {Double.MIN_VALUE, Double.MAX_VALUE, -Double.MIN_NORMAL, 0x1p-1022, 1e22, 1e23}) {
            BigDecimal expected = new BigDecimal(value).round(new MathContext(15, RoundingMode.HALF_UP));
            assertEquals(0, expected.compareTo(asBigDecimal(Decimal.of(value, 15))), Double.toHexString(value));
        }
    }

    @Test
    void anyDecimalOfFifteenDigitsSurvivesTheWayThroughADouble() {
        long seed = 7L;
        Random random = new Random(seed);
        for (int i = 0; i < 5_000; i++) {
            long digits = 1 + (long) (random.nextDouble() * 999_999_999_999_998.0);
            int power = random.nextInt(40) - 30;
            BigDecimal written = BigDecimal.valueOf(digits).scaleByPowerOfTen(power);
            assertEquals(
                    0,
                    written.compareTo(asBigDecimal(Decimal.of(written.doubleValue(), 15))),
                    "seed " + seed + ", draw " + i + ": " + written);
        }
    }

    @Test
    void zeroHasNoDigitsAndNoSign() {
        assertEquals(0, Decimal.of(0.0, 3).digits().length);
        assertEquals(false, Decimal.of(-0.0, 3).negative());
    }

    @Test
    void onlyAFiniteNumberHasDigits() {
        assertThrows(IllegalArgumentException.class, () -> Decimal.of(Double.NaN, 3));
        assertThrows(IllegalArgumentException.class, () -> Decimal.of(Double.NEGATIVE_INFINITY, 3));
    }
}
