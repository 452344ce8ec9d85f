package ampersheet.circuit;

import java.util.Arrays;

/**
 * A square system of linear equations, entered coefficient by coefficient. Small ones are solved by dense LU
 * decomposition, large ones by elimination that keeps to the entries that are not 0; either way the answer is refined
 * once with its own residual.
 */
final class LinearEquations {
    private static final int DENSE_UP_TO = 70;
    private static final int USUAL_ENTRIES = 6;

    /** Of each row, in the order entered: sums are taken in this order, so that their last bits stay what they were. */
    private final int[][] columns;

    private final double[][] values;
    private final int[] entries;
    private final double[] right;

    LinearEquations(int size) {
        right = new double[size];
        entries = new int[size];
        columns = new int[size][USUAL_ENTRIES];
        values = new double[size][USUAL_ENTRIES];
    }

    /** Adds to a coefficient. */
    void add(int row, int column, double value) {
        if (value == 0) {
            return;
        }
        int count = entries[row];
        for (int i = 0; i < count; i++) {
            if (columns[row][i] == column) {
                values[row][i] += value;
                return;
            }
        }
        if (count == columns[row].length) {
            columns[row] = Arrays.copyOf(columns[row], 2 * count);
            values[row] = Arrays.copyOf(values[row], 2 * count);
        }
        columns[row][count] = column;
        values[row][count] = value;
        entries[row]++;
    }

    void addRight(int row, double value) {
        right[row] += value;
    }

    /** The unknowns, or null when the equations do not determine them. */
    double[] solve() {
        int size = right.length;
        if (size == 0) {
            return new double[0];
        }
        return size <= DENSE_UP_TO ? solveDense(size) : solveSparse(size);
    }

    private double[] solveDense(int size) {
        double[][] matrix = new double[size][size];
        for (int row = 0; row < size; row++) {
            for (int i = 0; i < entries[row]; i++) {
                matrix[row][columns[row][i]] = values[row][i];
            }
        }
        DenseDecomposition decomposition = new DenseDecomposition(matrix);
        if (!decomposition.isRegular()) {
            return null; // the caller's outcome says so in terms of the circuit
        }
        double[] answer = decomposition.solve(right);
        return refined(answer, decomposition.solve(residual(answer)));
    }

    private double[] solveSparse(int size) {
        SparseElimination elimination = new SparseElimination(size);
        for (int row = 0; row < size; row++) {
            for (int i = 0; i < entries[row]; i++) {
                elimination.set(row, columns[row][i], values[row][i]);
            }
        }
        if (!elimination.decompose()) {
            return null;
        }
        double[] answer = elimination.solve(right);
        return refined(answer, elimination.solve(residual(answer)));
    }

    private double[] residual(double[] answer) {
        double[] residual = right.clone();
        for (int row = 0; row < residual.length; row++) {
            for (int i = 0; i < entries[row]; i++) {
                residual[row] -= values[row][i] * answer[columns[row][i]];
            }
        }
        return residual;
    }

    /** Null where a number is none. */
    private static double[] refined(double[] answer, double[] correction) {
        for (int i = 0; i < answer.length; i++) {
            answer[i] += correction[i];
            if (Double.isNaN(answer[i]) || Double.isInfinite(answer[i])) {
                return null;
            }
        }
        return answer;
    }
}
