package ampersheet.circuit;

/**
 * LU decomposition by columns with partial pivoting, Crout's way. Every circuit is solved many times over, so that the
 * numbers are worked in place.
 */
final class DenseDecomposition {
    private final double[][] matrix;
    private final int[] pivot;
    private final boolean regular;

    /** @param matrix its own from now on */
    DenseDecomposition(double[][] matrix) {
        this.matrix = matrix;
        this.pivot = new int[matrix.length];
        this.regular = decompose();
    }

    /** Whether it determines a solution. */
    boolean isRegular() {
        return regular;
    }

    private boolean decompose() {
        int size = matrix.length;
        for (int row = 0; row < size; row++) {
            pivot[row] = row;
        }
        for (int column = 0; column < size; column++) {
            for (int row = 0; row < column; row++) {
                eliminate(row, column, row);
            }
            int largest = column;
            double most = Double.NEGATIVE_INFINITY;
            for (int row = column; row < size; row++) {
                double here = Math.abs(eliminate(row, column, column));
                if (here > most) {
                    most = here;
                    largest = row;
                }
            }
            if (Math.abs(matrix[largest][column]) < Double.MIN_NORMAL) {
                return false;
            }
            if (largest != column) {
                double[] row = matrix[largest];
                matrix[largest] = matrix[column];
                matrix[column] = row;
                int from = pivot[largest];
                pivot[largest] = pivot[column];
                pivot[column] = from;
            }
            double diagonal = matrix[column][column];
            for (int row = column + 1; row < size; row++) {
                matrix[row][column] /= diagonal;
            }
        }
        return true;
    }

    /** Takes the first {@code known} columns out of one entry. */
    private double eliminate(int row, int column, int known) {
        double[] of = matrix[row];
        double sum = of[column];
        for (int i = 0; i < known; i++) {
            sum -= of[i] * matrix[i][column];
        }
        of[column] = sum;
        return sum;
    }

    double[] solve(double[] right) {
        int size = matrix.length;
        double[] solution = new double[size];
        for (int row = 0; row < size; row++) {
            solution[row] = right[pivot[row]];
        }
        for (int column = 0; column < size; column++) {
            for (int row = column + 1; row < size; row++) {
                solution[row] -= solution[column] * matrix[row][column];
            }
        }
        for (int column = size - 1; column >= 0; column--) {
            solution[column] /= matrix[column][column];
            for (int row = 0; row < column; row++) {
                solution[row] -= solution[column] * matrix[row][column];
            }
        }
        return solution;
    }
}
