package ampersheet.circuit;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.DecompositionSolver;
import org.apache.commons.math3.linear.LUDecomposition;
import org.junit.jupiter.api.Test;

/** Worked in place, the numbers are those of the library to the last bit, so that no key changes. */
class DenseDecompositionTest {
    @Test
    void everySolutionIsTheLibrarysToTheLastBit() {
        Random random = new Random(3);
        for (int i = 0; i < 3000; i++) {
            int size = 1 + random.nextInt(12);
            double[][] matrix = new double[size][size];
            double[] right = new double[size];
            for (int row = 0; row < size; row++) {
                right[row] = random.nextInt(3) == 0 ? 0 : random.nextGaussian();
                for (int column = 0; column < size; column++) {
                    matrix[row][column] =
                            random.nextInt(3) == 0 ? 0 : random.nextGaussian() * Math.pow(10, random.nextInt(9) - 4);
                }
            }
            DecompositionSolver library =
                    new LUDecomposition(new Array2DRowRealMatrix(matrix, true), Double.MIN_NORMAL).getSolver();
            DenseDecomposition ours = new DenseDecomposition(matrix);
            assertEquals(library.isNonSingular(), ours.isRegular());
            if (ours.isRegular()) {
                assertArrayEquals(
                        library.solve(new ArrayRealVector(right)).toArray(), ours.solve(right), 0.0, "matrix " + i);
            }
        }
    }
}
