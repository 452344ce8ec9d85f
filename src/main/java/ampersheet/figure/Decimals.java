package ampersheet.figure;

/**
 * Numbers of a drawing: at most two decimals, and as text no trailing zeros and no exponent, the same on every machine.
 */
final class Decimals {
    private Decimals() {}

    /** To hundredths: the number that its print is read as. */
    static double rounded(double value) {
        double size = hundredths(value) / 100.0;
        return value < 0 ? -size : size;
    }

    private static long hundredths(double value) {
        return (long) Math.floor(Math.abs(value) * 100 + 0.5);
    }

    static String print(double value) {
        long hundredths = hundredths(value);
        String sign = value < 0 && hundredths != 0 ? "-" : "";
        long whole = hundredths / 100;
        int rest = (int) (hundredths % 100);
        if (rest == 0) {
            return sign + whole;
        }
        String decimals = rest % 10 == 0 ? "" + rest / 10 : rest < 10 ? "0" + rest : "" + rest;
        return sign + whole + "." + decimals;
    }
}
