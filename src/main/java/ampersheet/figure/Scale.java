package ampersheet.figure;

import ampersheet.quantity.DecimalMarker;
import java.util.ArrayList;
import java.util.List;

/** Round numbers along an axis: a step of 1, 2 or 5 times a power of ten, and its multiples within the range. */
final class Scale {
    private final double from;
    private final double to;
    private final int digit;
    private final int exponent;
    private final DecimalMarker marker;

    /** @param most how many steps there may be */
    Scale(double from, double to, int most) {
        this(from, to, most, DecimalMarker.POINT);
    }

    Scale(double from, double to, int most, DecimalMarker marker) {
        this.marker = marker;
        if (!(to > from) || Double.isInfinite(to - from)) {
            throw new IllegalArgumentException(
                    "an axis needs two different finite ends, the smaller first: " + from + ", " + to);
        }
        this.from = from;
        this.to = to;
        int power = 0;
        while ((to - from) / power(power) > most) {
            power++;
        }
        while ((to - from) / power(power - 1) <= most) {
            power--;
        }
        int leading = 1;
        // The step is 10^power; a smaller one of 2 or 5 times the power below may still be coarse enough.
        for (int smaller : new int[] {2, 5}) {
            if (leading == 1 && (to - from) / (smaller * power(power - 1)) <= most) {
                leading = smaller;
            }
        }
        digit = leading;
        exponent = leading == 1 ? power : power - 1;
    }

    double step() {
        return digit * power(exponent);
    }

    List<Double> ticks() {
        List<Double> ticks = new ArrayList<>();
        for (long k = (long) Math.ceil(from / step() - 1e-9); k * step() <= to + 1e-9 * (to - from); k++) {
            ticks.add(value(k * digit, exponent));
        }
        return ticks;
    }

    /** Rounded to the step, so that neighbours on the axis differ. */
    String print(double value) {
        return decimal((long) Math.floor(value / power(exponent) + 0.5), exponent);
    }

    /** Rounded to a tenth of the step, as one reads off a graph. */
    String printBetween(double value) {
        return decimal((long) Math.floor(value / power(exponent - 1) + 0.5), exponent - 1);
    }

    private static double value(long count, int exponent) {
        return exponent < 0 ? count / power(-exponent) : count * power(exponent);
    }

    private static double power(int exponent) {
        double power = 1;
        for (int i = 0; i < Math.abs(exponent); i++) {
            power *= 10;
        }
        return exponent < 0 ? 1 / power : power;
    }

    /** {@code count} times ten to the {@code exponent}, digit by digit. */
    private String decimal(long count, int exponent) {
        StringBuilder digits = new StringBuilder(Long.toString(Math.abs(count)));
        for (int i = 0; i < exponent && count != 0; i++) {
            digits.append('0');
        }
        if (exponent < 0) {
            while (digits.length() <= -exponent) {
                digits.insert(0, '0');
            }
            digits.insert(digits.length() + exponent, marker.character());
            while (digits.charAt(digits.length() - 1) == '0') {
                digits.setLength(digits.length() - 1);
            }
            if (digits.charAt(digits.length() - 1) == marker.character()) {
                digits.setLength(digits.length() - 1);
            }
        }
        return (count < 0 ? "−" : "") + digits;
    }
}
