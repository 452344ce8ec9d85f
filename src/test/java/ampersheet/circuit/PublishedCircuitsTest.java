package ampersheet.circuit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Circuits whose numbers are printed in a book. */
class PublishedCircuitsTest {
    private static void near(double printed, double found, double relative) {
        assertEquals(printed, found, relative * Math.abs(printed));
    }

    /** T. R. Kuphaldt, Lessons in Electric Circuits, Vol. I DC, ch. 10 (Millman, Thévenin, Norton). */
    @Test
    void twoSourcesFeedOneLoad() {
        OperatingPoint point = new Bench()
                .source("V1", "0", "a", 28)
                .resistor("R1", "a", "n", 4)
                .source("V3", "0", "b", 7)
                .resistor("R3", "b", "n", 1)
                .resistor("R2", "n", "0", 2)
                .solved();
        near(8, point.voltage("n"), 1e-12);
        near(5, point.current("R1"), 1e-12);
        near(4, point.current("R2"), 1e-12);
        near(-1, point.current("R3"), 1e-12);
        near(140, point.power("V1"), 1e-12);
        near(-7, point.power("V3"), 1e-12);
    }

    /** The same chapter, node voltage method. */
    @Test
    void twoNodesBetweenTwoSources() {
        OperatingPoint point = new Bench()
                .source("V1", "0", "a", 10)
                .source("V2", "0", "b", -4)
                .resistor("R1", "a", "e1", 2)
                .resistor("R2", "e1", "0", 4)
                .resistor("R3", "e1", "e2", 2.5)
                .resistor("R4", "e2", "0", 5)
                .resistor("R5", "e2", "b", 1)
                .solved();
        near(3.809524, point.voltage("e1"), 1e-6);
        near(-1.547619, point.voltage("e2"), 1e-6);
    }

    /** The same chapter, three nodes fed by a current. */
    @Test
    void threeNodesFedByOneCurrent() {
        OperatingPoint point = new Bench()
                .part(PartKind.SINK, "I1", List.of("0", "e1"), "amps", 0.136092)
                .resistor("R1", "e1", "e2", 150)
                .resistor("R2", "e1", "e3", 50)
                .resistor("R3", "e2", "e3", 100)
                .resistor("R4", "e2", "0", 300)
                .resistor("R5", "e3", "0", 250)
                .solved();
        near(24, point.voltage("e1"), 3e-5);
        near(17.655, point.voltage("e2"), 3e-5);
        near(19.31, point.voltage("e3"), 3e-5);
    }

    /** OpenStax, College Physics 2e, section 21.1, worked example. */
    @Test
    void threeResistorsInParallelOnTwelveVolts() {
        OperatingPoint point = new Bench()
                .source("V1", "0", "a", 12)
                .resistor("R1", "a", "0", 1)
                .resistor("R2", "a", "0", 6)
                .resistor("R3", "a", "0", 13)
                .solved();
        near(14.92, point.current("V1"), 4e-4);
        near(0.804, point.across("V1") / point.current("V1"), 4e-4);
        near(0.92, point.current("R3"), 4e-3);
        near(144, point.power("R1"), 1e-12);
        near(179, point.power("V1"), 1e-3);
    }

    /** OpenStax, College Physics 2e, section 21.5 Null measurements: R2/R1 = 0.625 and 2.50 kΩ balance 1.56 kΩ. */
    @Test
    void aBalancedBridgeCarriesNoCurrentInItsMeter() {
        OperatingPoint point = new Bench()
                .source("V1", "0", "top", 9)
                .resistor("R1", "top", "left", 1000)
                .resistor("R2", "left", "0", 625)
                .resistor("R3", "top", "right", 2500)
                .resistor("Rx", "right", "0", 1562.5)
                .part(PartKind.AMMETER, "A1", List.of("left", "right"))
                .solved();
        assertEquals(0, point.current("A1"), 1e-15);
        OperatingPoint printed = new Bench()
                .source("V1", "0", "top", 9)
                .resistor("R1", "top", "left", 1000)
                .resistor("R2", "left", "0", 625)
                .resistor("R3", "top", "right", 2500)
                .resistor("Rx", "right", "0", 1560)
                .part(PartKind.AMMETER, "A1", List.of("left", "right"))
                .solved();
        assertTrue(Math.abs(printed.current("A1")) < 1e-3 * printed.current("V1"), "nearly balanced as printed");
    }

    /** T. R. Kuphaldt, Vol. III, ch. 3, zener diodes: 45 V, 1 kΩ, 12.6 V. */
    @Test
    void aZenerHoldsItsVoltageAndTakesTheRest() {
        OperatingPoint point = zener(1000, 1e9);
        near(0.0324, point.current("R1"), 5e-5);
        near(0.40824, point.power("D1"), 5e-5);
        near(1.0498, point.power("R1"), 5e-5);
    }

    /** The same chapter: 100 kΩ and a load of 500 Ω leave the zener without current. */
    @Test
    void aZenerStarvedOfCurrentDoesNotConduct() {
        OperatingPoint point = zener(100_000, 500);
        near(0.224, point.voltage("out"), 1e-3);
        assertEquals(0, point.current("D1"), 1e-12);
    }

    /** The same chapter's condition in numbers: R · Vz / (Vs − Vz) = 388.889 Ω is the smallest load. */
    @Test
    void aZenerLetsGoJustBelowTheSmallestLoad() {
        assertTrue(-zener(1000, 388.889 * 1.001).current("D1") > 1e-5);
        assertTrue(-zener(1000, 388.889 * 0.999).current("D1") < 1e-9);
    }

    private static OperatingPoint zener(double series, double load) {
        return new Bench()
                .source("V1", "0", "a", 45)
                .resistor("R1", "a", "out", series)
                .part(PartKind.ZENER, "D1", List.of("0", "out"), "volts", 12.6)
                .resistor("RL", "out", "0", load)
                .solved();
    }

    /**
     * T. R. Kuphaldt, Vol. III, ch. 3 SPICE models: 18.8 nA, n = 2, 28.6 mΩ at five voltages; printed by a simulator.
     */
    @Test
    void aDiodeWithSeriesResistanceFollowsTheSimulatorsTable() {
        double[] volts = {0.9, 0.925, 1.0, 1.2, 1.4};
        double[] amps = {0.5102139, 0.7318536, 1.76352, 6.419621, 12.2447};
        for (int i = 0; i < volts.length; i++) {
            near(amps[i], shockley(1.88e-8, 2, 0.0286, volts[i]), 1e-3);
        }
    }

    /** The same table: 76.9 nA, n = 1.45, 42 mΩ. */
    @Test
    void aRectifierModelFollowsTheSimulatorsTable() {
        double[] volts = {0.7, 0.9, 0.925, 1.0, 1.2, 1.4};
        double[] amps = {1.612924, 5.31074, 5.823654, 7.395953, 11.74489, 16.21861};
        for (int i = 0; i < volts.length; i++) {
            near(amps[i], shockley(7.69e-8, 1.45, 0.042, volts[i]), 1e-3);
        }
    }

    /** The same table: 10 fA, n = 1; the simulator's older constants show in the exponent as 1e-3. */
    @Test
    void aDiodeWithoutSeriesResistanceFollowsTheSimulatorsTable() {
        near(0.005674683, shockley(1e-14, 1, 0, 0.7), 2e-3);
        near(12.94824, shockley(1e-14, 1, 0, 0.9), 2e-3);
        near(618.5078, shockley(1e-14, 1, 0, 1.0), 2e-3);
    }

    /** The diode is given by a point of its curve, as a template gives it; the point chosen makes no difference. */
    private static double shockley(double saturation, double emission, double series, double volts) {
        double first = Double.NaN;
        for (double statedAmps : new double[] {1e-3, 1}) {
            Map<PartValue, Double> stated = Diodes.stated(saturation, emission, series, statedAmps);
            OperatingPoint point = new Bench()
                    .source("V1", "0", "a", volts)
                    .part(
                            PartKind.DIODE,
                            "D1",
                            List.of("a", "0"),
                            "volts",
                            stated.get(PartValue.VOLTS),
                            "amps",
                            statedAmps,
                            "emission",
                            emission,
                            "series",
                            series)
                    .solved();
            if (!Double.isNaN(first)) {
                near(first, point.current("D1"), 1e-9);
            }
            first = point.current("D1");
        }
        return first;
    }
}
