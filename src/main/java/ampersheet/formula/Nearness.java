package ampersheet.formula;

/**
 * How near counts as equal. Decimal inputs such as 0.1 have no exact binary form, so that a sum meant to be 3 may
 * arrive as 2.9999999999999996; without a stated nearness {@code floor} would turn that into 2 and a wrong key.
 */
final class Nearness {
    /** Of two compared values, relative to the larger. */
    static final double COMPARED = 1e-12;
    /** Of a value from a whole number: relative above 1, but never more than a millionth. */
    static final double WHOLE = 1e-9;

    private static final double WHOLE_AT_MOST = 1e-6;

    private Nearness() {}

    static boolean equal(double a, double b) {
        return a == b || Math.abs(a - b) <= COMPARED * Math.max(Math.abs(a), Math.abs(b));
    }

    private static double reach(double x) {
        return Math.min(WHOLE_AT_MOST, WHOLE * Math.max(1, Math.abs(x)));
    }

    // Adding 0.0 turns the negative zero, which would print as "−0", into zero.

    static double floor(double x) {
        return Math.floor(x + reach(x)) + 0.0;
    }

    static double ceiling(double x) {
        return Math.ceil(x - reach(x)) + 0.0;
    }

    /** Halves, and what is near them, go away from zero. */
    static double round(double x) {
        double magnitude = Math.floor(Math.abs(x) + 0.5 + reach(x));
        return (x < 0 ? -magnitude : magnitude) + 0.0;
    }

    /**
     * What is left of {@code a} after whole multiples of {@code b}; has the sign of {@code b}. What is near whole
     * numbers is divided as whole numbers; otherwise a rest near 0 or near {@code b} is none.
     */
    static double mod(double a, double b) {
        double wholeA = round(a);
        double wholeB = round(b);
        if (Math.abs(a - wholeA) <= reach(a) && Math.abs(b - wholeB) <= reach(b)) {
            return rest(wholeA, wholeB);
        }
        double rest = rest(a, b);
        double near = WHOLE * Math.abs(b);
        return Math.abs(rest) <= near || Math.abs(b - rest) <= near ? 0 : rest;
    }

    private static double rest(double a, double b) {
        double rest = a % b;
        return (rest != 0 && (rest < 0) != (b < 0) ? rest + b : rest) + 0.0;
    }
}
