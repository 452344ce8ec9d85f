package ampersheet.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.model.Unsolved;
import ampersheet.quantity.Dimension;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

class RootSearchTest {

    private static double find(DoubleUnaryOperator measure, double target, Dimension dimension) {
        return RootSearch.find(x -> measure.applyAsDouble(x) - target, target, dimension);
    }

    @Test
    void aResistanceIsFoundOverTwentyFourDecades() {
        for (double ohms : new double[] {3e-11, 0.0047, 0.68, 1, 470, 1e3, 82_000, 2.2e9, 7e11}) {
            double found = find(r -> 5 / r, 5 / ohms, Dimension.RESISTANCE);
            assertEquals(ohms, found, 1e-11 * ohms, "5 V over " + ohms + " ohms");
        }
    }

    @Test
    void aPositionIsFoundBetweenZeroAndOne() {
        assertEquals(0.3, find(position -> 12 * position, 3.6, Dimension.ONE), 1e-12);
        assertEquals(0, find(position -> 12 * position, 0, Dimension.ONE), 1e-12);
    }

    /** 0.1 × 3 is not 0.3 in binary: the function nearly vanishes at 1000 ohms, a point of the scale, but not quite. */
    @Test
    void aRootOnAPointOfTheScaleIsFoundWithTargetZero() {
        double found = find(r -> 0.1 * 3 - 0.3 * r / 1e3, 0, Dimension.RESISTANCE);
        assertEquals(1e3, found, 1e-9);
    }

    @Test
    void aTemperatureIsFoundInKelvin() {
        assertEquals(358.15, find(ambient -> ambient + 40, 398.15, Dimension.TEMPERATURE), 1e-9);
    }

    /** A matched load takes the most power; half of that is taken at two resistances, and neither is "the" answer. */
    @Test
    void twoRootsAreNoAnswer() {
        DoubleUnaryOperator power = load -> 100 * load / ((10 + load) * (10 + load));
        Unsolved none = assertThrows(Unsolved.class, () -> find(power, 1.25, Dimension.RESISTANCE));
        assertTrue(none.getMessage().contains("2 values"), none.getMessage());
    }

    /** They lie within one decade, so that powers of ten alone do not see the sign change. */
    @Test
    void closeRootsAreSeenToo() {
        DoubleUnaryOperator power = load -> 100 * load / ((10 + load) * (10 + load));
        Unsolved none = assertThrows(Unsolved.class, () -> find(power, 2.4, Dimension.RESISTANCE));
        assertTrue(none.getMessage().contains("2 values"), none.getMessage());
    }

    @Test
    void aJumpIsNotARoot() {
        assertThrows(Unsolved.class, () -> find(r -> r < 47 ? 3 : 5, 4, Dimension.RESISTANCE));
    }

    @Test
    void aPoleIsNotARoot() {
        assertThrows(Unsolved.class, () -> find(r -> 1 / (r - 47), 0, Dimension.RESISTANCE));
    }

    @Test
    void whatIsNeverReachedIsToldSo() {
        Unsolved none = assertThrows(Unsolved.class, () -> find(r -> 5 / (r + 100), 1, Dimension.RESISTANCE));
        assertTrue(none.getMessage().contains("no value"), none.getMessage());
    }

    @Test
    void placesWithoutASolutionAreSteppedOver() {
        assertEquals(470, find(r -> r < 1 || r > 1e6 ? Double.NaN : 5 / r, 5 / 470.0, Dimension.RESISTANCE), 1e-9);
    }
}
