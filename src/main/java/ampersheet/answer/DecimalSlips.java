package ampersheet.answer;

/** Slips of the decimal point and of prefixes that are looked for in a wrong answer. */
public final class DecimalSlips {
    /** One or two places, or one, two or three prefixes; up or down. */
    private static final int[] POWERS = {1, 2, 3, 6, 9};

    private DecimalSlips() {}

    /** Powers of ten by which an answer may be too large or too small, the likeliest first. */
    public static int[] powers() {
        return POWERS.clone();
    }

    /** Ten to this power, as near as a number can be. */
    public static double factor(int power) {
        double factor = 1;
        for (int i = 0; i < Math.abs(power); i++) {
            factor *= 10;
        }
        return power < 0 ? 1 / factor : factor;
    }
}
