package ampersheet.quantity;

/**
 * A double written in decimal: {@code ±0.d₁d₂d₃… × 10^point}. Its digits are worked out exactly, by whole-number
 * arithmetic on the binary value, because the shortest text that Java prints for a double is not the same in every
 * version. Fifteen digits are kept at most: any decimal of up to fifteen digits survives the way into a double and
 * back, so that 2.675 is seen as 2.675 and not as the binary number just below it.
 *
 * @param digits most significant first, without leading or trailing zeros; empty for zero
 * @param point how many digits stand before the decimal marker; may be negative
 */
record Decimal(boolean negative, int[] digits, int point) {
    static final int MOST_DIGITS = 15;
    private static final int LIMB = 1_000_000;
    private static final int LIMB_DIGITS = 6;
    private static final double TWO_TO_53 = 9007199254740992.0;

    /** @param figures significant digits to keep, at most {@link #MOST_DIGITS}; the last is rounded half up */
    static Decimal of(double value, int figures) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("only a finite number can be written in decimal");
        }
        return exact(value).rounded(Math.min(figures, MOST_DIGITS));
    }

    boolean isZero() {
        return digits.length == 0;
    }

    /** Half up in magnitude, so that a number and its negative round alike. */
    Decimal rounded(int figures) {
        if (figures >= digits.length) {
            return this;
        }
        if (figures < 0) {
            return new Decimal(false, new int[0], 0);
        }
        boolean up = digits[figures] >= 5;
        int[] kept = new int[figures + 1];
        System.arraycopy(digits, 0, kept, 1, figures);
        if (up) {
            int i = figures;
            while (kept[i] == 9) {
                kept[i--] = 0;
            }
            kept[i]++;
        }
        return trimmed(negative, kept, point + 1);
    }

    /** The value the digits stand for. */
    double value() {
        double magnitude = 0;
        for (int digit : digits) {
            magnitude = magnitude * 10 + digit;
        }
        magnitude = PowerOfTen.scale(magnitude, point - digits.length);
        return negative ? -magnitude : magnitude;
    }

    private static Decimal trimmed(boolean negative, int[] digits, int point) {
        int from = 0;
        int to = digits.length;
        while (from < to && digits[from] == 0) {
            from++;
        }
        while (to > from && digits[to - 1] == 0) {
            to--;
        }
        if (from == to) {
            return new Decimal(false, new int[0], 0);
        }
        int[] kept = new int[to - from];
        System.arraycopy(digits, from, kept, 0, kept.length);
        return new Decimal(negative, kept, point - from);
    }

    /**
     * Every digit of the binary value: an integer times 2^-n is that integer times 5^n, with the point moved n places.
     */
    private static Decimal exact(double value) {
        double whole = Math.abs(value);
        int halvings = 0;
        while (whole != Math.floor(whole)) {
            whole *= 2;
            halvings++;
        }
        int doublings = 0;
        while (whole >= TWO_TO_53) {
            whole /= 2;
            doublings++;
        }
        double[] limbs = new double[2 + (53 + halvings * 7 / 3 + doublings + 19) / 19];
        for (int i = 0; whole > 0; i++) {
            double rest = Math.floor(whole / LIMB);
            limbs[i] = whole - rest * LIMB;
            whole = rest;
        }
        multiply(limbs, 5, halvings);
        multiply(limbs, 2, doublings);
        int[] digits = new int[limbs.length * LIMB_DIGITS];
        for (int i = 0; i < limbs.length; i++) {
            int limb = (int) limbs[i];
            for (int d = 0; d < LIMB_DIGITS; d++) {
                digits[digits.length - 1 - (i * LIMB_DIGITS + d)] = limb % 10;
                limb /= 10;
            }
        }
        return trimmed(value < 0, digits, digits.length - halvings);
    }

    private static void multiply(double[] limbs, int factor, int times) {
        int left = times;
        while (left > 0) {
            double step = 1;
            for (int i = 0; i < 8 && left > 0; i++) {
                step *= factor;
                left--;
            }
            double carry = 0;
            for (int i = 0; i < limbs.length; i++) {
                double product = limbs[i] * step + carry;
                carry = Math.floor(product / LIMB);
                limbs[i] = product - carry * LIMB;
            }
        }
    }
}
