package ampersheet.circuit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Every kind of part does what its documentation says, and impossible circuits are told apart. */
class PartLawsTest {
    private static Outcome outcome(Bench bench) {
        return OperatingPointSolver.solve(bench.netlist());
    }

    private static Outcome.Unfit unfit(Bench bench) {
        return assertInstanceOf(Outcome.Unfit.class, outcome(bench));
    }

    @Test
    void anLedPassesThroughItsStatedPointExactly() {
        for (double series : new double[] {0, 10}) {
            OperatingPoint point = new Bench()
                    .source("V1", "0", "a", 9)
                    .resistor("R1", "a", "k", (9 - 2.1) / 0.012)
                    .part(PartKind.LED, "D1", List.of("k", "0"), "volts", 2.1, "amps", 0.012, "series", series)
                    .solved();
            assertEquals(0.012, point.current("D1"), 1e-14);
            assertEquals(2.1, point.across("D1"), 1e-12);
        }
    }

    @Test
    void aReversedLedBlocks() {
        OperatingPoint point = new Bench()
                .source("V1", "0", "a", 9)
                .resistor("R1", "a", "k", 470)
                .part(PartKind.LED, "D1", List.of("0", "k"), "volts", 2.1, "amps", 0.012)
                .solved();
        assertEquals(0, point.current("D1"), 1e-13);
        assertEquals(9, point.voltage("k"), 1e-9);
    }

    @Test
    void twoReversedJunctionsInSeriesSettle() {
        OperatingPoint point = new Bench()
                .source("V1", "0", "a", 9)
                .part(PartKind.LED, "D1", List.of("m", "a"), "volts", 2.1, "amps", 0.012)
                .part(PartKind.LED, "D2", List.of("0", "m"), "volts", 2.1, "amps", 0.012)
                .solved();
        assertEquals(4.5, point.voltage("m"), 1e-6);
    }

    @Test
    void aZenerFollowsItsSlopeFromTheStatedPoint() {
        OperatingPoint point = new Bench()
                .part(PartKind.SINK, "I1", List.of("0", "k"), "amps", 0.025)
                .part(PartKind.ZENER, "D1", List.of("0", "k"), "volts", 5.1, "amps", 0.005, "slope", 7)
                .solved();
        assertEquals(5.1 + 7 * 0.020, point.voltage("k"), 1e-4);
        OperatingPoint stated = new Bench()
                .part(PartKind.SINK, "I1", List.of("0", "k"), "amps", 0.005)
                .part(PartKind.ZENER, "D1", List.of("0", "k"), "volts", 5.1, "amps", 0.005, "slope", 7)
                .solved();
        assertEquals(5.1, stated.voltage("k"), 1e-12);
    }

    @Test
    void aZenerIsADiodeForwards() {
        OperatingPoint point = new Bench()
                .part(PartKind.SINK, "I1", List.of("0", "k"), "amps", 0.005)
                .part(PartKind.ZENER, "D1", List.of("k", "0"), "volts", 5.1)
                .solved();
        assertEquals(0.7, point.voltage("k"), 1e-12);
    }

    /** T. R. Kuphaldt, Lessons in Electric Circuits, Vol. III, ch. 3: two opposed 10 V zeners clip at 10.7 V. */
    @Test
    void twoOpposedZenersClipAtZenerPlusForwardVoltage() {
        OperatingPoint point = new Bench()
                .source("V1", "0", "a", 20)
                .resistor("R1", "a", "k", 9.3 / 0.005)
                .part(PartKind.ZENER, "D1", List.of("m", "k"), "volts", 10)
                .part(PartKind.ZENER, "D2", List.of("m", "0"), "volts", 10)
                .solved();
        assertEquals(10.7, point.voltage("k"), 1e-9);
    }

    @Test
    void aReferenceHoldsAboveItsMinimumAndFallsShortBelow() {
        assertEquals(2.5, reference(1000, 1e-3), 1e-4);
        assertEquals(2.5 * 0.5e-3 / 1e-3, reference(7500.0 / 0.5 - 2500, 1e-3), 1e-6);
    }

    private static double reference(double series, double minimum) {
        return new Bench()
                .source("V1", "0", "a", 7.5)
                .resistor("R1", "a", "k", series)
                .part(PartKind.REFERENCE, "U1", List.of("0", "k"), "volts", 2.5, "minimum", minimum)
                .solved()
                .voltage("k");
    }

    @Test
    void anNChannelSwitchHasItsOnResistanceAboveThresholdAndBlocksBelow() {
        assertEquals(12.0 / (10 + 0.05), lowSide(5).current("RL"), 1e-12);
        assertEquals(12.0 / (10 + 0.05), lowSide(2).current("RL"), 1e-12);
        assertTrue(lowSide(1).current("RL") < 1e-10);
        assertTrue(lowSide(0).current("RL") < 1e-10);
        double between = lowSide(1.5).current("RL");
        assertTrue(between > 1e-8 && between < 1, "smooth between: " + between);
    }

    private static OperatingPoint lowSide(double gate) {
        return new Bench()
                .source("V1", "0", "a", 12)
                .source("VG", "0", "g", gate)
                .resistor("RL", "a", "d", 10)
                .part(PartKind.NMOS, "Q1", List.of("d", "g", "0"), "on", 0.05, "threshold", 2)
                .solved();
    }

    @Test
    void aPChannelProtectsAgainstReversedSupply() {
        OperatingPoint right = reversible(12);
        assertEquals(12 / (10 + 0.02), right.current("RL"), 1e-12);
        assertEquals(12 / (10 + 0.02), right.current("Q1"), 1e-9);
        assertTrue(Math.abs(reversible(-12).current("RL")) < 1e-9);
    }

    /** Drain at the supply, source at the load, gate at ground. */
    private static OperatingPoint reversible(double volts) {
        return new Bench()
                .source("V1", "0", "in", volts)
                .resistor("RL", "s", "0", 10)
                .part(PartKind.PMOS, "Q1", List.of("in", "0", "s"), "on", 0.02, "threshold", 2)
                .solved();
    }

    @Test
    void theBodyDiodeOfAnNChannelConductsFromSourceToDrain() {
        OperatingPoint point = new Bench()
                .part(PartKind.SINK, "I1", List.of("0", "s"), "amps", 0.01)
                .part(PartKind.NMOS, "Q1", List.of("0", "s", "s"), "on", 0.02, "threshold", 2)
                .solved();
        assertEquals(0.7, point.voltage("s"), 1e-9);
    }

    @Test
    void aTransistorSwitchSaturatesWithEnoughBaseCurrentAndAmplifiesWithLess() {
        OperatingPoint saturated = transistor((5 - 0.7) / 0.002);
        assertEquals(0.002, saturated.current("Q1", "base"), 1e-12);
        assertEquals(0.2, saturated.across("Q1"), 1e-3);
        assertEquals((12 - 0.2) / 240, saturated.current("Q1"), 1e-5);
        OperatingPoint active = transistor(100_000);
        assertEquals(100 * active.current("Q1", "base"), active.current("Q1"), 1e-9);
        assertTrue(active.across("Q1") > 1);
    }

    private static OperatingPoint transistor(double base) {
        return new Bench()
                .source("V1", "0", "a", 12)
                .source("VB", "0", "in", 5)
                .resistor("RL", "a", "c", 240)
                .resistor("RB", "in", "b", base)
                .part(
                        PartKind.NPN,
                        "Q1",
                        List.of("c", "b", "0"),
                        "gain",
                        100,
                        "volts",
                        0.7,
                        "amps",
                        0.002,
                        "saturation",
                        0.2)
                .solved();
    }

    @Test
    void aTrimpotDividesFromEndToEnd() {
        for (double position : new double[] {0, 0.25, 1}) {
            OperatingPoint point = new Bench()
                    .source("V1", "0", "a", 10)
                    .part(PartKind.TRIMPOT, "P1", List.of("0", "a", "w"), "ohms", 10_000, "position", position)
                    .part(PartKind.VOLTMETER, "M1", List.of("w", "0"))
                    .solved();
            assertEquals(10 * position, point.across("M1"), 1e-12);
            assertEquals(0.01, point.power("P1"), 1e-14);
        }
    }

    @Test
    void aRegulatorHoldsItsOutputAndTurnsTheRestIntoHeat() {
        OperatingPoint point = new Bench()
                .source("V1", "0", "in", 12)
                .part(PartKind.REGULATOR, "U1", List.of("in", "out", "0"), "volts", 5, "quiescent", 0.004)
                .resistor("RL", "out", "0", 50)
                .solved();
        assertEquals(5, point.voltage("out"), 1e-12);
        assertEquals(0.1, point.current("U1"), 1e-12);
        assertEquals(0.104, point.current("V1"), 1e-12);
        assertEquals(7 * 0.1 + 12 * 0.004, point.power("U1"), 1e-12);
        assertEquals(7, point.across("U1"), 1e-12);
    }

    @Test
    void aRegulatorWithoutHeadroomIsUnfit() {
        Outcome.Unfit unfit = unfit(new Bench()
                .source("V1", "0", "in", 6)
                .part(PartKind.REGULATOR, "U1", List.of("in", "out", "0"), "volts", 5, "dropout", 2)
                .resistor("RL", "out", "0", 50));
        assertEquals("U1", unfit.part());
        assertTrue(unfit.fault().contains("input"), unfit.fault());
    }

    @Test
    void anOpenSwitchPartsAndAClosedOneJoins() {
        for (double closed : new double[] {0, 1}) {
            OperatingPoint point = new Bench()
                    .source("V1", "0", "a", 10)
                    .part(PartKind.SWITCH, "S1", List.of("a", "b"), "closed", closed)
                    .resistor("R1", "b", "0", 100)
                    .solved();
            assertEquals(0.1 * closed, point.current("S1"), 1e-15);
        }
    }

    @Test
    void aCapacitorCarriesNoDirectCurrent() {
        OperatingPoint point = new Bench()
                .source("V1", "0", "a", 10)
                .resistor("R1", "a", "b", 100)
                .part(PartKind.CAPACITOR, "C1", List.of("b", "0"), "farads", 1e-6)
                .solved();
        assertEquals(0, point.current("C1"));
        assertEquals(10, point.across("C1"), 1e-12);
    }

    @Test
    void anAmmeterMeasuresAndAZeroOhmResistorJoins() {
        OperatingPoint point = new Bench()
                .source("V1", "0", "a", 10)
                .part(PartKind.AMMETER, "A1", List.of("a", "b"))
                .resistor("R1", "b", "c", 0)
                .resistor("R2", "c", "0", 100)
                .solved();
        assertEquals(0.1, point.current("A1"), 1e-15);
    }

    @Test
    void nodesThatNothingTiesDownAreListed() {
        Outcome outcome = outcome(new Bench()
                .source("V1", "0", "a", 10)
                .resistor("R1", "a", "0", 100)
                .resistor("R2", "x", "y", 100)
                .part(PartKind.CAPACITOR, "C1", List.of("a", "x"), "farads", 1e-6));
        assertEquals(new Outcome.Floating(List.of("x", "y")), outcome);
    }

    @Test
    void aCurrentForcedIntoANodeDoesNotTieIt() {
        assertEquals(
                new Outcome.Floating(List.of("x")),
                outcome(new Bench()
                        .source("V1", "0", "a", 10)
                        .resistor("R1", "a", "0", 100)
                        .part(PartKind.SINK, "I1", List.of("a", "x"), "amps", 0.01)));
    }

    @Test
    void sourcesThatContradictEachOtherAreListedRoundTheLoop() {
        Outcome outcome = outcome(new Bench()
                .source("V1", "0", "a", 10)
                .part(PartKind.AMMETER, "A1", List.of("a", "b"))
                .source("V2", "c", "b", 5)
                .resistor("R1", "b", "0", 100)
                .source("V3", "0", "c", 4));
        assertEquals(new Outcome.SourceLoop(List.of("V3", "V2", "A1", "V1")), outcome);
    }

    @Test
    void aCurrentForcedAgainstAJunctionIsNotSettled() {
        assertInstanceOf(
                Outcome.NotSettled.class,
                outcome(new Bench()
                        .part(PartKind.SINK, "I1", List.of("k", "0"), "amps", 0.01)
                        .part(PartKind.LED, "D1", List.of("k", "0"), "volts", 2, "amps", 0.01)));
    }

    @Test
    void valuesThatAPartCannotHaveAreUnfit() {
        assertEquals(
                "R1",
                unfit(new Bench().source("V1", "0", "a", 5).resistor("R1", "a", "0", -5))
                        .part());
        assertEquals(
                "P1",
                unfit(new Bench()
                                .source("V1", "0", "a", 5)
                                .part(PartKind.TRIMPOT, "P1", List.of("0", "a", "w"), "ohms", 100, "position", 1.2))
                        .part());
        assertEquals(
                "D1",
                unfit(new Bench()
                                .source("V1", "0", "a", 5)
                                .part(PartKind.LED, "D1", List.of("a", "0"), "volts", 2, "amps", 0.02, "series", 200))
                        .part());
        assertEquals(
                "R1",
                unfit(new Bench().source("V1", "0", "a", 5).resistor("R1", "a", "0", Double.NaN))
                        .part());
    }

    @Test
    void anUnknownNameIsTold() {
        OperatingPoint point = new Bench()
                .source("V1", "0", "a", 5)
                .resistor("R1", "a", "0", 5)
                .solved();
        assertThrows(IllegalArgumentException.class, () -> point.current("R2"));
        assertThrows(IllegalArgumentException.class, () -> point.voltage("z"));
        assertThrows(IllegalArgumentException.class, () -> point.current("R1", "gate"));
    }

    /** 24 by 24 pixels on a grid of supply and return copper, fed at one corner: 1,152 nodes. */
    @Test
    void aLargePanelWithItsLoadSpreadOutIsSolved() {
        for (PartKind load : new PartKind[] {PartKind.SINK, PartKind.LED}) {
            Bench bench = new Bench()
                    .source("V1", "0", "s", 5)
                    .resistor("RF", "s", "p0_0", 0.01)
                    .resistor("RG", "0", "m0_0", 0.01);
            for (int y = 0; y < 24; y++) {
                for (int x = 0; x < 24; x++) {
                    for (String rail : List.of("p", "m")) {
                        if (x < 23) {
                            bench.resistor(
                                    rail + "h" + x + "_" + y, rail + x + "_" + y, rail + (x + 1) + "_" + y, 0.02);
                        }
                        if (y < 23) {
                            bench.resistor(
                                    rail + "v" + x + "_" + y, rail + x + "_" + y, rail + x + "_" + (y + 1), 0.02);
                        }
                    }
                    if (load == PartKind.SINK) {
                        bench.part(
                                load, "L" + x + "_" + y, List.of("p" + x + "_" + y, "m" + x + "_" + y), "amps", 0.02);
                    } else {
                        bench.part(
                                load,
                                "L" + x + "_" + y,
                                List.of("p" + x + "_" + y, "m" + x + "_" + y),
                                "volts",
                                3.0,
                                "amps",
                                0.02,
                                "series",
                                100);
                    }
                }
            }
            OperatingPoint point = bench.solved();
            assertTrue(point.currentResidual() < 1e-11, "current residual " + point.currentResidual());
            assertTrue(Math.abs(point.powerResidual()) < 1e-10, "power residual " + point.powerResidual());
            if (load == PartKind.SINK) {
                assertEquals(576 * 0.02, point.current("V1"), 1e-11);
            }
            assertTrue(point.voltage("p23_23") < point.voltage("p0_0"));
            assertEquals(point.voltage("p23_5"), point.voltage("p5_23"), 1e-11, "the panel is symmetrical");
        }
    }
}
