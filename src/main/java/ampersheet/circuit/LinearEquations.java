package ampersheet.circuit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.DecompositionSolver;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.linear.SingularMatrixException;

/**
 * A square system of linear equations, entered coefficient by coefficient. Small ones are solved by dense LU
 * decomposition, large ones by elimination that keeps to the entries that are not 0; either way the answer is refined
 * once with its own residual.
 */
final class LinearEquations {
    private static final int DENSE_UP_TO = 70;

    private record Entry(int column, double value) {}

    /** One of the two is used: the whole square of a small system, the entries that are not 0 of a large one. */
    private final double[][] square;

    private final List<List<Entry>> rows = new ArrayList<>();
    private final double[] right;

    LinearEquations(int size) {
        right = new double[size];
        square = new double[size <= DENSE_UP_TO ? size : 0][size];
        for (int i = square.length; i < size; i++) {
            rows.add(new ArrayList<>());
        }
    }

    private boolean isSmall() {
        return rows.isEmpty();
    }

    /** Adds to a coefficient. */
    void add(int row, int column, double value) {
        if (isSmall()) {
            square[row][column] += value;
            return;
        }
        if (value == 0) {
            return;
        }
        List<Entry> entries = rows.get(row);
        for (int i = 0; i < entries.size(); i++) {
            if (entries.get(i).column() == column) {
                entries.set(i, new Entry(column, entries.get(i).value() + value));
                return;
            }
        }
        entries.add(new Entry(column, value));
    }

    void addRight(int row, double value) {
        right[row] += value;
    }

    /** The unknowns; empty when the equations do not determine them. */
    Optional<double[]> solve() {
        int size = right.length;
        if (size == 0) {
            return Optional.of(new double[0]);
        }
        return isSmall() ? solveDense() : solveSparse(size);
    }

    private Optional<double[]> solveDense() {
        DecompositionSolver solver =
                new LUDecomposition(new Array2DRowRealMatrix(square, false), Double.MIN_NORMAL).getSolver();
        try {
            RealVector answer = solver.solve(new ArrayRealVector(right, false));
            RealVector correction = solver.solve(new ArrayRealVector(residual(answer.toArray()), false));
            return finite(answer.add(correction).toArray());
        } catch (SingularMatrixException undetermined) {
            return Optional.empty(); // the caller's outcome says so in terms of the circuit
        }
    }

    private Optional<double[]> solveSparse(int size) {
        SparseElimination elimination = new SparseElimination(size);
        for (int row = 0; row < size; row++) {
            for (Entry entry : rows.get(row)) {
                elimination.set(row, entry.column(), entry.value());
            }
        }
        if (!elimination.decompose()) {
            return Optional.empty();
        }
        double[] answer = elimination.solve(right);
        double[] correction = elimination.solve(residual(answer));
        for (int i = 0; i < size; i++) {
            answer[i] += correction[i];
        }
        return finite(answer);
    }

    private double[] residual(double[] answer) {
        double[] residual = right.clone();
        for (int row = 0; row < square.length; row++) {
            for (int column = 0; column < residual.length; column++) {
                residual[row] -= square[row][column] * answer[column];
            }
        }
        for (int row = 0; row < rows.size(); row++) {
            for (Entry entry : rows.get(row)) {
                residual[row] -= entry.value() * answer[entry.column()];
            }
        }
        return residual;
    }

    private static Optional<double[]> finite(double[] answer) {
        for (double value : answer) {
            if (Double.isNaN(value) || Double.isInfinite(value)) {
                return Optional.empty();
            }
        }
        return Optional.of(answer);
    }
}
