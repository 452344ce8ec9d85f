package ampersheet.sheet;

import java.util.Optional;

/**
 * How the letter of an answer is found in the {@link CheckTable}: printed as two characters such as {@code B4}.
 *
 * @param way {@code A}, {@code B}, {@code C}: by size. {@code N}, {@code M}: by the digits of a whole number
 * @param column to which the power of ten is added, from 0 to 9
 */
record CheckCode(char way, int column) {
    static final String BY_SIZE = "ABC";
    static final String BY_DIGITS = "NM";
    /** From the last digit to the first, over and over. */
    private static final int[][] WEIGHTS = {{1, 3, 7, 9}, {1, 9, 3, 7}};

    private static final int FOR_MINUS = 5;
    private static final double WHOLE = 1e9;

    /** The letter of a number written without prefix; empty where the code does not apply: to 0, to a broken number. */
    Optional<Character> letter(double number) {
        return BY_SIZE.indexOf(way) >= 0 ? bySize(number) : byDigits(number);
    }

    private Optional<Character> bySize(double number) {
        double digits = Math.abs(number);
        if (digits == 0 || Double.isInfinite(digits) || Double.isNaN(digits)) {
            return Optional.empty();
        }
        int power = 0;
        while (digits >= 10) {
            digits /= 10;
            power++;
        }
        while (digits < 1) {
            digits *= 10;
            power--;
        }
        int limits = BY_SIZE.indexOf(way);
        if (digits < CheckTable.limit(limits, 0)) {
            digits *= 10;
            power--;
        }
        int row = 0;
        while (row + 1 < CheckTable.ROWS && digits >= CheckTable.limit(limits, row + 1)) {
            row++;
        }
        return Optional.of(at(row, column + power + (number < 0 ? FOR_MINUS : 0)));
    }

    private Optional<Character> byDigits(double number) {
        double whole = Math.floor(Math.abs(number) + 0.5);
        if (whole > WHOLE || Math.abs(Math.abs(number) - whole) > 1e-6) {
            return Optional.empty();
        }
        int[] weights = WEIGHTS[BY_DIGITS.indexOf(way)];
        int sum = 0;
        long rest = (long) whole;
        for (int i = 0; rest > 0; i++) {
            sum += weights[i % weights.length] * (int) (rest % 10);
            rest /= 10;
        }
        return Optional.of(at(sum % CheckTable.ROWS, column + (number < 0 ? FOR_MINUS : 0)));
    }

    private static char at(int row, int column) {
        return CheckTable.letter(row, Math.floorMod(column, CheckTable.COLUMNS));
    }

    @Override
    public String toString() {
        return way + Integer.toString(column);
    }
}
