package ampersheet.circuit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeout;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class TransientSolverTest {
    private static final long SEED = 20_260_104L;

    private static OperatingPoint after(Bench bench, double seconds) {
        return assertInstanceOf(Outcome.Solved.class, TransientSolver.after(bench.netlist(), seconds))
                .point();
    }

    private static double until(Bench bench, String node, double volts) {
        return assertInstanceOf(
                        TransientSolver.TimeOutcome.Reached.class,
                        TransientSolver.timeUntil(bench.netlist(), node, volts))
                .seconds();
    }

    private static Bench rc(double volts, double ohms, double farads) {
        return new Bench()
                .source("V1", "0", "a", volts)
                .resistor("R1", "a", "c", ohms)
                .part(PartKind.CAPACITOR, "C1", List.of("c", "0"), "farads", farads);
    }

    /** OpenStax, University Physics Volume 2, section 10.5: 101 Ω, 50 mF, 80 of 100 V after 8.13 s. */
    @Test
    void aRelaxationOscillatorTakesAsLongAsPrinted() {
        assertEquals(8.13, until(rc(100, 101, 0.05), "c", 80), 5e-4 * 8.13);
    }

    /** The same section: 10 kΩ, 10 mF, 10 of 12 V after 179.18 s. */
    @Test
    void aWiperTimerTakesAsLongAsPrinted() {
        assertEquals(179.18, until(rc(12, 10_000, 0.01), "c", 10), 5e-5 * 179.18);
    }

    /** OpenStax, College Physics 2e, section 21.6: 100 pF through 75.0 MΩ reach 90 % in 0.0173 s. */
    @Test
    void aSmallCapacitorBehindALargeResistorTakesAsLongAsPrinted() {
        assertEquals(0.0173, until(rc(10, 75e6, 100e-12), "c", 9), 2e-3 * 0.0173);
    }

    /** The same section, in scale: 8 µF through 1 kΩ fall to 4.98 % of their voltage in 24 ms. */
    @Test
    void aChargedCapacitorEmptiesAsPrinted() {
        Bench bench = new Bench()
                .resistor("R1", "c", "0", 1000)
                .part(PartKind.CAPACITOR, "C1", List.of("c", "0"), "farads", 8e-6, "initial", 10);
        assertEquals(0.498, after(bench, 0.024).voltage("c"), 1e-3 * 0.498);
        assertEquals(10 * StrictMath.exp(-3), after(bench, 0.024).voltage("c"), 1e-7);
        assertEquals(0.008 * StrictMath.log(10), until(bench, "c", 1), 1e-9);
    }

    /**
     * Found by 10 000 combinations of a template's givens: a switch of 20 MΩ that closes beside a line at rest took
     * seconds.
     */
    @Test
    void numbersThatNeverSettleAreGivenUpInTime() {
        double low = 3.3 * 5e7 / (5e7 + 2_400);
        Bench bench = new Bench()
                .source("V1", "0", "s", 3.3)
                .resistor("RP", "s", "data", 2_400)
                .part(PartKind.NMOS, "Q1", List.of("data", "gate", "0"), "on", 5e7, "threshold", 1.2)
                .source("V2", "0", "gate", 0)
                .part(PartKind.CAPACITOR, "CL", List.of("data", "0"), "farads", 450e-12, "initial", low);
        assertTimeout(
                Duration.ofSeconds(5),
                () -> assertInstanceOf(
                        TransientSolver.TimeOutcome.Failed.class,
                        TransientSolver.timeUntil(bench.netlist(), "data", 2.31)));
    }

    @Test
    void randomRcCircuitsFollowTheExponentialLaw() {
        for (long seed = SEED; seed < SEED + 200; seed++) {
            Random random = new Random(seed);
            double volts = 1 + 23 * random.nextDouble();
            double ohms = StrictMath.pow(10, 6 * random.nextDouble());
            double farads = StrictMath.pow(10, -10 + 8 * random.nextDouble());
            double tau = ohms * farads;
            double share = 0.01 + 0.98 * random.nextDouble();
            double expected = -tau * StrictMath.log1p(-share);
            assertEquals(expected, until(rc(volts, ohms, farads), "c", share * volts), 1e-7 * expected, "seed " + seed);
            OperatingPoint point = after(rc(volts, ohms, farads), expected);
            assertEquals(share * volts, point.voltage("c"), 1e-7 * volts, "seed " + seed);
            assertEquals((1 - share) * volts / ohms, point.current("C1"), 1e-6 * volts / ohms, "seed " + seed);
            assertTrue(point.currentResidual() < 1e-12 * volts / ohms + 1e-18, "seed " + seed);
        }
    }

    @Test
    void atTheStartACapacitorHasItsInitialVoltageAndAtTheEndTheSteadyOne() {
        Bench bench = new Bench()
                .source("V1", "0", "a", 9)
                .resistor("R1", "a", "c", 1000)
                .resistor("R2", "c", "0", 2000)
                .part(PartKind.CAPACITOR, "C1", List.of("c", "0"), "farads", 1e-6, "initial", 1.5);
        assertEquals(1.5, after(bench, 0).voltage("c"), 1e-12);
        assertEquals(7.5e-3 - 0.75e-3, after(bench, 0).current("C1"), 1e-12);
        assertEquals(6, after(bench, 3600).voltage("c"), 1e-9);
        TransientSolver.TimeOutcome.NeverReached never = assertInstanceOf(
                TransientSolver.TimeOutcome.NeverReached.class, TransientSolver.timeUntil(bench.netlist(), "c", 6.5));
        assertEquals(6, never.finalVolts(), 1e-8);
        assertEquals(0, until(bench, "c", 1.5));
    }

    /** Whatever is drawn: the whole is followed as one, and each has its part of the current, its own way round. */
    @Test
    void capacitorsInParallelShareTheCurrentByTheirCapacitancesWhicheverWayTheyAreDrawn() {
        Random random = new Random(7);
        for (int trial = 0; trial < 50; trial++) {
            double volts = 1 + 20 * random.nextDouble();
            double ohms = 100 * (1 + 99 * random.nextDouble());
            double begin = volts * (random.nextDouble() - 0.5);
            double[] farads = {1e-9 * (1 + random.nextInt(99)), 1e-9 * (1 + random.nextInt(99)), 1e-9};
            double sum = farads[0] + farads[1] + farads[2];
            double seconds = ohms * sum * 2 * random.nextDouble();
            Bench bench = new Bench()
                    .source("V1", "0", "a", volts)
                    .resistor("R1", "a", "c", ohms)
                    .part(PartKind.CAPACITOR, "C1", List.of("c", "0"), "farads", farads[0], "initial", begin)
                    .part(PartKind.CAPACITOR, "C2", List.of("0", "c"), "farads", farads[1], "initial", -begin)
                    .part(PartKind.CAPACITOR, "C3", List.of("c", "0"), "farads", farads[2], "initial", begin);
            OperatingPoint point = after(bench, seconds);
            double missing = (volts - begin) * StrictMath.exp(-seconds / (ohms * sum));
            String replay = "seed 7, trial " + trial;
            assertEquals(volts - missing, point.voltage("c"), 1e-8 * volts, replay);
            for (int each = 0; each < 3; each++) {
                double amps = missing / ohms * farads[each] / sum * (each == 1 ? -1 : 1);
                assertEquals(amps, point.current("C" + (each + 1)), 1e-6 * volts / ohms, replay + ": C" + (each + 1));
            }
        }
    }

    @Test
    void capacitorsInParallelAddUpAndInSeriesShare() {
        Bench parallel = rc(10, 1000, 2e-6).part(PartKind.CAPACITOR, "C2", List.of("c", "0"), "farads", 1e-6);
        assertEquals(10 * -StrictMath.expm1(-1), after(parallel, 3e-3).voltage("c"), 1e-7);
        assertEquals(3e-3 * StrictMath.log(2), until(parallel, "c", 5), 1e-9);
        Bench series = new Bench()
                .source("V1", "0", "a", 10)
                .resistor("R1", "a", "c", 1000)
                .part(PartKind.CAPACITOR, "C1", List.of("c", "m"), "farads", 1e-6)
                .part(PartKind.CAPACITOR, "C2", List.of("m", "0"), "farads", 3e-6);
        OperatingPoint point = after(series, 0.75e-3);
        assertEquals(10 * -StrictMath.expm1(-1), point.voltage("c"), 1e-7);
        assertEquals(point.voltage("c") / 4, point.voltage("m"), 1e-7);
        assertInstanceOf(
                TransientSolver.TimeOutcome.NeverReached.class, TransientSolver.timeUntil(series.netlist(), "c", 11));
    }

    /** Two sections, solved by hand: time constants RC · 2 / (3 ± √5). */
    @Test
    void twoSectionsHaveTwoTimeConstants() {
        Bench bench = new Bench()
                .source("V1", "0", "a", 1)
                .resistor("R1", "a", "b", 1000)
                .resistor("R2", "b", "c", 1000)
                .part(PartKind.CAPACITOR, "C1", List.of("b", "0"), "farads", 1e-6)
                .part(PartKind.CAPACITOR, "C2", List.of("c", "0"), "farads", 1e-6);
        double root = StrictMath.sqrt(5);
        double slow = (3 - root) / 2;
        double quick = (3 + root) / 2;
        double t = 2;
        double expected = 1 - (quick * StrictMath.exp(-slow * t) - slow * StrictMath.exp(-quick * t)) / root;
        assertEquals(expected, after(bench, t * 1e-3).voltage("c"), 1e-8);
    }

    @Test
    void aZenerStopsTheChargingAtItsVoltageInTime() {
        Bench bench = rc(12, 1000, 1e-6).part(PartKind.ZENER, "D1", List.of("0", "c"), "volts", 5.1);
        double reaching5 = 1e-3 * StrictMath.log(12 / 7.0);
        assertEquals(reaching5, until(bench, "c", 5), 1e-9);
        assertEquals(5.1, after(bench, 0.01).voltage("c"), 1e-4);
    }

    @Test
    void aConstantCurrentChargesInAStraightLine() {
        Bench bench = new Bench()
                .part(PartKind.SINK, "I1", List.of("0", "c"), "amps", 1e-3)
                .resistor("R1", "c", "0", 1e9)
                .part(PartKind.CAPACITOR, "C1", List.of("c", "0"), "farads", 1e-3);
        // A gigaohm beside it takes its share.
        assertEquals(-1e6 * StrictMath.log1p(-5e-6), until(bench, "c", 5), 5e-7);
    }

    /** What a hold-up capacitor does behind the diode that keeps it from the dead supply: 17.5 V down to 7.2 V. */
    @Test
    void aCapacitorBehindABlockedDiodeIsEmptiedByTheLoadAlone() {
        for (double emission : new double[] {0.5, 1, 1.8, 2}) {
            Bench bench = new Bench()
                    .source("V1", "0", "a", 0)
                    .part(PartKind.DIODE, "D1", List.of("a", "c"), "volts", 0.5, "amps", 0.1, "emission", emission)
                    .part(PartKind.CAPACITOR, "C1", List.of("c", "0"), "farads", 680e-6, "initial", 17.5)
                    .part(PartKind.SINK, "B1", List.of("c", "0"), "amps", 0.1);
            double time = 680e-6 * (17.5 - 7.2) / 0.1;
            assertEquals(time, until(bench, "c", 7.2), 1e-4 * time, "emission " + emission);
            assertEquals(7.2, after(bench, time).voltage("c"), 1e-3, "emission " + emission);
        }
    }

    @Test
    void aCapacitorStraightAcrossASourceIsASourceLoopUnlessItHasThatVoltage() {
        Bench bench = new Bench()
                .source("V1", "0", "a", 9)
                .resistor("R1", "a", "0", 100)
                .part(PartKind.CAPACITOR, "C1", List.of("a", "0"), "farads", 1e-6);
        assertEquals(new Outcome.SourceLoop(List.of("C1", "V1")), TransientSolver.after(bench.netlist(), 1));
        Bench charged = new Bench()
                .source("V1", "0", "a", 9)
                .resistor("R1", "a", "0", 100)
                .part(PartKind.CAPACITOR, "C1", List.of("a", "0"), "farads", 1e-6, "initial", 9);
        assertEquals(9, after(charged, 1).voltage("a"), 1e-9);
    }

    @Test
    void whatNothingTiesDownAndUnknownNodesAreTold() {
        Bench bench = rc(9, 100, 1e-6).resistor("R2", "x", "y", 100);
        assertEquals(new Outcome.Floating(List.of("x", "y")), TransientSolver.after(bench.netlist(), 1));
        assertThrows(IllegalArgumentException.class, () -> TransientSolver.timeUntil(bench.netlist(), "z", 1));
    }
}
