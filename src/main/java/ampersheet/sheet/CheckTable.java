package ampersheet.sheet;

import ampersheet.quantity.Elementary;
import java.util.ArrayList;
import java.util.List;

/**
 * The printed table by which a learner with a pencil turns an answer into a letter. Each of its rows stands for numbers
 * within 6 % of each other, in three ways ({@code A}, {@code B}, {@code C}) whose limits lie a third of a row apart, so
 * that the accepted band of any answer lies within one row of one of them. Along a row no letter comes twice, so that a
 * wrong power of ten has another letter; down a column each comes two or three times, so that a letter does not give
 * its row away.
 */
final class CheckTable {
    static final int ROWS = 38;
    static final int COLUMNS = 10;
    static final int WAYS = 3;
    /** No look-alikes, printed or by hand. */
    static final String LETTERS = "ACEFHJKLMNPRTWXY";
    /** In the column above, a letter must not have stood within so many rows. */
    private static final int APART = 2;

    private static final double THOUSANDTHS = 1000;

    private static final double[][] LIMITS = limits();
    private static final char[][] TABLE = filled();

    private CheckTable() {}

    /** The least number, from 1 to 10, of a row; rounded as printed. */
    static double limit(int way, int row) {
        return LIMITS[way][row];
    }

    static char letter(int row, int column) {
        return TABLE[row][column];
    }

    private static double[][] limits() {
        double[][] limits = new double[WAYS][ROWS];
        for (int way = 0; way < WAYS; way++) {
            for (int row = 0; row < ROWS; row++) {
                double exact = Elementary.power(10, (row + way / (double) WAYS) / ROWS);
                limits[way][row] = Math.floor(exact * THOUSANDTHS + 0.5) / THOUSANDTHS;
            }
        }
        return limits;
    }

    private static char[][] filled() {
        for (int attempt = 0; ; attempt++) {
            char[][] table = new char[ROWS][COLUMNS];
            if (fill(table, attempt)) {
                return table;
            }
        }
    }

    /** Letters in the order of a hash, the least used of a column first; false if a place is left without one. */
    private static boolean fill(char[][] table, int attempt) {
        int[][] used = new int[COLUMNS][LETTERS.length()];
        for (int row = 0; row < ROWS; row++) {
            for (int column = 0; column < COLUMNS; column++) {
                char letter = 0;
                int least = Integer.MAX_VALUE;
                for (char candidate : order(attempt, row, column)) {
                    int times = used[column][LETTERS.indexOf(candidate)];
                    if (times < least && fits(table, row, column, candidate)) {
                        letter = candidate;
                        least = times;
                    }
                }
                if (letter == 0 || least > 2) {
                    return false;
                }
                table[row][column] = letter;
                used[column][LETTERS.indexOf(letter)]++;
            }
        }
        return true;
    }

    private static boolean fits(char[][] table, int row, int column, char letter) {
        for (int other = 0; other < column; other++) {
            if (table[row][other] == letter) {
                return false;
            }
        }
        for (int above = Math.max(0, row - APART); above < row; above++) {
            if (table[above][column] == letter) {
                return false;
            }
        }
        return true;
    }

    private static List<Character> order(int attempt, int row, int column) {
        List<Character> left = new ArrayList<>();
        LETTERS.chars().forEach(c -> left.add((char) c));
        String hash = Fingerprint.of(
                "check letters", Integer.toString(attempt), Integer.toString(row), Integer.toString(column));
        List<Character> order = new ArrayList<>();
        for (int i = 0; !left.isEmpty(); i += 2) {
            order.add(left.remove(Integer.parseInt(hash.substring(i, i + 2), 16) % left.size()));
        }
        return order;
    }
}
