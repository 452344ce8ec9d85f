package ampersheet.integration;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

class TimeIntegrationTest {
    /** Every member decays to 0 by itself. */
    private record Decay(boolean isExplicit, double... perSecond) implements Rates {
        @Override
        public double[] at(double[] state) {
            double[] rates = new double[state.length];
            for (int i = 0; i < state.length; i++) {
                rates[i] = -perSecond[i] * state[i];
            }
            return rates;
        }

        @Override
        public double[] implicitStep(double[] from, double seconds) {
            double[] next = new double[from.length];
            for (int i = 0; i < from.length; i++) {
                next[i] = from[i] / (1 + seconds * perSecond[i]);
            }
            return next;
        }
    }

    /** y' = y (1 − y): the logistic curve. */
    private record Growth(boolean isExplicit) implements Rates {
        @Override
        public double[] at(double[] state) {
            return new double[] {state[0] * (1 - state[0])};
        }

        @Override
        public double[] implicitStep(double[] from, double seconds) {
            double b = (1 - seconds) / seconds;
            return new double[] {(-b + StrictMath.sqrt(b * b + 4 * from[0] / seconds)) / 2};
        }
    }

    private static double[] after(Rates rates, double[] start, double seconds) {
        return assertInstanceOf(
                        Course.Arrived.class,
                        new TimeIntegration(rates, start, Optional.empty(), 1, 1e9, 0.1).after(seconds))
                .state();
    }

    /** A straight line down. */
    private record Falling(double perSecond) implements Rates {
        @Override
        public double[] at(double[] state) {
            return new double[] {-perSecond};
        }

        @Override
        public double[] implicitStep(double[] from, double seconds) {
            return new double[] {from[0] - seconds * perSecond};
        }
    }

    /**
     * A capacitor under a constant current, its solver's first span as the circuit solver chooses it. The library may
     * end a span the last bit of the time early, which is no event: such a discharge stood still at half its voltage.
     */
    @Test
    void aStraightLineIsFollowedPastTheEndOfEverySpan() {
        long seed = 20_261_129L;
        Random random = new Random(seed);
        for (int i = 0; i < 2_000; i++) {
            double start = 1 + 40 * random.nextDouble();
            double slope = StrictMath.pow(10, 6 * random.nextDouble() - 2);
            double wanted = start * (0.9 * random.nextDouble() - 0.5);
            double time = (start - wanted) / slope;
            String replay = "seed " + seed + ", line " + i;
            TimeIntegration line = new TimeIntegration(
                    new Falling(slope), new double[] {start}, Optional.empty(), start, 1e9, start / slope / 2);
            Course.Arrived passed =
                    assertInstanceOf(Course.Arrived.class, line.until(state -> state[0] - wanted), replay);
            assertEquals(time, passed.seconds(), 1e-9 * time, replay);
            Course.Arrived after = assertInstanceOf(Course.Arrived.class, line.after(time), replay);
            assertEquals(time, after.seconds(), 0, replay);
            assertEquals(wanted, after.state()[0], 1e-9 * start, replay);
        }
    }

    @Test
    void bothMethodsFollowAnExponential() {
        for (boolean explicit : new boolean[] {true, false}) {
            for (double time : new double[] {0, 1e-3, 0.5, 3, 12}) {
                assertEquals(
                        StrictMath.exp(-time),
                        after(new Decay(explicit, 1), new double[] {1}, time)[0],
                        1e-9,
                        explicit + " after " + time);
            }
        }
    }

    @Test
    void bothMethodsFollowTheLogisticCurve() {
        for (boolean explicit : new boolean[] {true, false}) {
            double[] found = after(new Growth(explicit), new double[] {0.01}, 5);
            assertEquals(1 / (1 + 99 * StrictMath.exp(-5)), found[0], 1e-9, "explicit " + explicit);
        }
    }

    @Test
    void partsAMillionTimesQuickerDoNotHoldUpTheSlowOne() {
        double[] found = after(new Decay(true, 1, 1e6), new double[] {1, 1}, 2);
        assertEquals(StrictMath.exp(-2), found[0], 1e-9);
        assertEquals(0, found[1], 1e-9);
    }

    @Test
    void theMomentAGapClosesIsFoundByBothMethods() {
        for (boolean explicit : new boolean[] {true, false}) {
            Course course = new TimeIntegration(
                            new Decay(explicit, 1), new double[] {1}, Optional.of(new double[] {0}), 1, 1e9, 0.1)
                    .until(state -> state[0] - 0.1);
            assertEquals(
                    StrictMath.log(10),
                    assertInstanceOf(Course.Arrived.class, course).seconds(),
                    1e-9);
        }
    }

    @Test
    void whatComesToRestBeforeIsToldSo() {
        for (double[] rest : new double[][] {{0}, null}) {
            Course course = new TimeIntegration(
                            new Decay(true, 1), new double[] {1}, Optional.ofNullable(rest), 1, 1e9, 0.1)
                    .until(state -> state[0] + 0.1);
            assertEquals(0, assertInstanceOf(Course.AtRest.class, course).state()[0], 1e-9);
        }
    }

    @Test
    void whatGrowsWithoutBoundDiverges() {
        assertInstanceOf(
                Course.Diverged.class,
                new TimeIntegration(new Decay(true, -1), new double[] {1}, Optional.empty(), 1, 1e9, 0.1).after(1000));
    }
}
