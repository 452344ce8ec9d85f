package ampersheet.quantity;

/**
 * Scaling by powers of ten that gives the nearest double on every machine and in every browser as long as the digits
 * are a whole number below 2^53 and the exponent lies within ±22: both operands are then exact and there is only one
 * rounding. Library parsers do not agree in the last bit.
 */
final class PowerOfTen {
    private static final double[] EXACT = {
        1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19,
        1e20, 1e21, 1e22
    };
    private static final int LARGEST = 22;

    private PowerOfTen() {}

    static double scale(double digits, int exponent) {
        double scaled = digits;
        int left = exponent;
        while (left > LARGEST) {
            scaled *= EXACT[LARGEST];
            left -= LARGEST;
        }
        while (left < -LARGEST) {
            scaled /= EXACT[LARGEST];
            left += LARGEST;
        }
        return left >= 0 ? scaled * EXACT[left] : scaled / EXACT[-left];
    }
}
