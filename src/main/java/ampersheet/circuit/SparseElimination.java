package ampersheet.circuit;

import java.util.Arrays;

/**
 * Gaussian elimination that stores only entries that are not 0. Each pivot is the one among some of the shortest rows
 * that fills in least (H. M. Markowitz, Management Science 3, 1957) and is not small in its row. Of several that fill
 * in alike it is the one with the largest share of its row: in a mesh of copper that is a node's own conductance, and
 * what is left stays a mesh. Of rows alike the one that became so first goes first, so that a mesh is taken away from
 * all sides and not along a front that grows.
 */
final class SparseElimination {
    private static final double NOT_SMALL = 0.1;
    private static final int ROWS_TRIED = 16;

    private final int size;
    private final int[][] columns;
    private final double[][] values;
    private final int[] length;
    private final int[] pivotRow;
    private final int[] pivotColumn;
    private final double[] pivotValue;
    /** Rows changed by each pivot, and how many times the pivot row was taken off them. */
    private final int[][] targets;

    private final double[][] factors;
    /** Rows without a pivot yet, in lists by how many entries they have. */
    private final int[] firstOfLength;

    private final int[] lastOfLength;

    private final int[] next;
    private final int[] previous;
    /** Entries of each column in rows without a pivot, and the rows in which it ever had one. */
    private final int[] columnCount;

    private final int[][] rowsOf;
    private final int[] rowsOfLength;
    private final boolean[] rowDone;
    /** Where the columns of the row at hand stand in it; -1 elsewhere. */
    private final int[] place;

    SparseElimination(int size) {
        this.size = size;
        columns = new int[size][4];
        values = new double[size][4];
        length = new int[size];
        pivotRow = new int[size];
        pivotColumn = new int[size];
        pivotValue = new double[size];
        targets = new int[size][];
        factors = new double[size][];
        firstOfLength = new int[size + 1];
        Arrays.fill(firstOfLength, -1);
        lastOfLength = new int[size + 1];
        Arrays.fill(lastOfLength, -1);
        next = new int[size];
        previous = new int[size];
        columnCount = new int[size];
        rowsOf = new int[size][4];
        rowsOfLength = new int[size];
        rowDone = new boolean[size];
        place = new int[size];
        Arrays.fill(place, -1);
    }

    void set(int row, int column, double value) {
        append(row, column, value);
    }

    /** False when no pivot is left: the matrix is singular. */
    boolean decompose() {
        fileByColumn();
        for (int row = 0; row < size; row++) {
            file(row);
        }
        for (int step = 0; step < size; step++) {
            int at = choose(step);
            if (at < 0) {
                return false;
            }
            int pivot = pivotRow[step];
            pivotValue[step] = values[pivot][at];
            rowDone[pivot] = true;
            take(pivot, length[pivot]);
            for (int i = 0; i < length[pivot]; i++) {
                columnCount[columns[pivot][i]]--;
            }
            eliminate(step);
        }
        return true;
    }

    private void fileByColumn() {
        for (int row = 0; row < size; row++) {
            for (int i = 0; i < length[row]; i++) {
                int column = columns[row][i];
                columnCount[column]++;
                rowsOf[column] = append(rowsOf[column], rowsOfLength[column]++, row);
            }
        }
    }

    /** Takes the pivot's row off every row that has an entry in its column. */
    private void eliminate(int step) {
        int column = pivotColumn[step];
        int[] changed = new int[rowsOfLength[column]];
        double[] factor = new double[rowsOfLength[column]];
        int count = 0;
        for (int i = 0; i < rowsOfLength[column]; i++) {
            int row = rowsOf[column][i];
            int found = rowDone[row] ? -1 : find(row, column);
            if (found < 0) {
                continue;
            }
            double times = values[row][found] / pivotValue[step];
            take(row, length[row]);
            remove(row, found);
            columnCount[column]--;
            subtract(row, pivotRow[step], column, times);
            file(row);
            changed[count] = row;
            factor[count++] = times;
        }
        targets[step] = Arrays.copyOf(changed, count);
        factors[step] = Arrays.copyOf(factor, count);
    }

    private void subtract(int row, int pivot, int column, double times) {
        for (int k = 0; k < length[row]; k++) {
            place[columns[row][k]] = k;
        }
        for (int k = 0; k < length[pivot]; k++) {
            int other = columns[pivot][k];
            if (other == column) {
                continue;
            }
            double less = times * values[pivot][k];
            if (place[other] >= 0) {
                values[row][place[other]] -= less;
            } else {
                append(row, other, -less);
                columnCount[other]++;
                rowsOf[other] = append(rowsOf[other], rowsOfLength[other]++, row);
            }
        }
        for (int k = 0; k < length[row]; k++) {
            place[columns[row][k]] = -1;
        }
    }

    double[] solve(double[] right) {
        double[] left = right.clone();
        for (int step = 0; step < size; step++) {
            double value = left[pivotRow[step]];
            for (int i = 0; i < targets[step].length; i++) {
                left[targets[step][i]] -= factors[step][i] * value;
            }
        }
        double[] answer = new double[size];
        for (int step = size - 1; step >= 0; step--) {
            int row = pivotRow[step];
            double value = left[row];
            for (int i = 0; i < length[row]; i++) {
                if (columns[row][i] != pivotColumn[step]) {
                    value -= values[row][i] * answer[columns[row][i]];
                }
            }
            answer[pivotColumn[step]] = value / pivotValue[step];
        }
        return answer;
    }

    /** Sets row and column of this step's pivot; returns its place in the row, or −1. */
    private int choose(int step) {
        int best = -1;
        long leastFill = Long.MAX_VALUE;
        double share = 0;
        for (int row : shortestRows()) {
            if (row < 0) {
                break;
            }
            double largest = 0;
            for (int i = 0; i < length[row]; i++) {
                largest = Math.max(largest, Math.abs(values[row][i]));
            }
            if (largest < Double.MIN_NORMAL) {
                return -1;
            }
            for (int i = 0; i < length[row]; i++) {
                long fill = (length[row] - 1L) * (columnCount[columns[row][i]] - 1L);
                double itsShare = Math.abs(values[row][i]) / largest;
                boolean better = fill < leastFill || fill == leastFill && itsShare > share;
                if (better && itsShare >= NOT_SMALL) {
                    leastFill = fill;
                    share = itsShare;
                    best = i;
                    pivotRow[step] = row;
                    pivotColumn[step] = columns[row][i];
                }
            }
        }
        return best;
    }

    private int[] shortestRows() {
        int[] shortest = new int[ROWS_TRIED];
        Arrays.fill(shortest, -1);
        int found = 0;
        for (int entries = 0; entries <= size && found < ROWS_TRIED; entries++) {
            for (int row = firstOfLength[entries]; row >= 0 && found < ROWS_TRIED; row = next[row]) {
                shortest[found++] = row;
            }
        }
        return shortest;
    }

    /** Among the rows of its length, first. */
    private void file(int row) {
        int last = lastOfLength[length[row]];
        next[row] = -1;
        previous[row] = last;
        if (last >= 0) {
            next[last] = row;
        } else {
            firstOfLength[length[row]] = row;
        }
        lastOfLength[length[row]] = row;
    }

    /** @param entries length under which the row was filed */
    private void take(int row, int entries) {
        if (previous[row] >= 0) {
            next[previous[row]] = next[row];
        } else {
            firstOfLength[entries] = next[row];
        }
        if (next[row] >= 0) {
            previous[next[row]] = previous[row];
        } else {
            lastOfLength[entries] = previous[row];
        }
    }

    private int find(int row, int column) {
        for (int i = 0; i < length[row]; i++) {
            if (columns[row][i] == column) {
                return i;
            }
        }
        return -1;
    }

    private void append(int row, int column, double value) {
        columns[row] = append(columns[row], length[row], column);
        if (length[row] == values[row].length) {
            values[row] = Arrays.copyOf(values[row], 2 * length[row]);
        }
        values[row][length[row]++] = value;
    }

    private void remove(int row, int place) {
        int last = --length[row];
        columns[row][place] = columns[row][last];
        values[row][place] = values[row][last];
    }

    private static int[] append(int[] list, int length, int value) {
        int[] grown = length == list.length ? Arrays.copyOf(list, 2 * length) : list;
        grown[length] = value;
        return grown;
    }
}
