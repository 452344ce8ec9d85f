package ampersheet.quantity;

/**
 * The one place from which elementary functions are called. {@link StrictMath} gives the same bits on every Java
 * virtual machine, which {@link Math} does not promise; an architecture test keeps other callers out.
 */
public final class Elementary {
    private Elementary() {}

    public static double exp(double x) {
        return StrictMath.exp(x);
    }

    public static double expm1(double x) {
        return StrictMath.expm1(x);
    }

    public static double ln(double x) {
        return StrictMath.log(x);
    }

    public static double ln1p(double x) {
        return StrictMath.log1p(x);
    }

    public static double log10(double x) {
        return StrictMath.log10(x);
    }

    public static double power(double base, double exponent) {
        return StrictMath.pow(base, exponent);
    }

    public static double sin(double x) {
        return StrictMath.sin(x);
    }

    public static double cos(double x) {
        return StrictMath.cos(x);
    }

    public static double tan(double x) {
        return StrictMath.tan(x);
    }

    public static double atan(double x) {
        return StrictMath.atan(x);
    }

    /** A number without a fraction, and not endless. */
    public static boolean isWhole(double x) {
        return x == Math.rint(x) && !Double.isInfinite(x);
    }
}
