package ampersheet.circuit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class CopperWireTest {

    /**
     * The table against the rule it was made by: d = 0.127 mm · 92^((36 − n)/39) (ASTM B258), copper of 1.7241·10⁻⁸ Ω·m
     * at 20 °C (IEC 60028). Four printed figures leave 5 in 10,000.
     */
    @Test
    void theHandbookTableFollowsTheGaugeRuleToItsRounding() {
        for (int gauge : new int[] {10, 12, 14, 16, 18, 20, 22, 24, 26, 28, 30}) {
            double diameter = 0.127e-3 * StrictMath.pow(92, (36 - gauge) / 39.0);
            double byRule = 1.7241e-8 / (Math.PI / 4 * diameter * diameter);
            assertEquals(byRule, CopperWire.ohmsPerMetre(gauge).orElseThrow(), 5e-4 * byRule, "gauge " + gauge);
        }
    }

    /** Diameters and areas by the same rule; the handbook prints them with four figures or three. */
    @Test
    void theTableOfGaugesFollowsTheRuleInDiameterAndArea() {
        assertEquals(11, CopperWire.table().size());
        for (CopperWire.Gauge row : CopperWire.table()) {
            double diameter = 0.127e-3 * StrictMath.pow(92, (36 - row.number()) / 39.0);
            assertEquals(diameter, row.diameter(), 1e-3 * diameter, "gauge " + row.number());
            assertEquals(Math.PI / 4 * diameter * diameter, row.area(), 1e-3 * row.area(), "gauge " + row.number());
            assertEquals(CopperWire.ohmsPerMetre(row.number()).orElseThrow(), row.ohmsPerMetre());
        }
    }

    @Test
    void aGaugeOutsideTheTableIsRefusedWithTheGaugesThereAre() {
        for (double gauge : new double[] {21, 22.5, -3, Double.MAX_VALUE}) {
            Outcome.Unfit unfit = assertInstanceOf(
                    Outcome.Unfit.class,
                    OperatingPointSolver.solve(new Bench()
                            .source("V1", "0", "a", 5)
                            .part(PartKind.CABLE, "W1", List.of("a", "0"), "gauge", gauge, "metres", 1)
                            .netlist()));
            assertEquals("W1", unfit.part());
            assertTrue(
                    unfit.fault().endsWith("the wire table holds 10, 12, 14, 16, 18, 20, 22, 24, 26, 28, 30"),
                    unfit.fault());
        }
    }

    @Test
    void aCableIsAResistorAsLongAsItIs() {
        OperatingPoint point = new Bench()
                .source("V1", "0", "a", 5)
                .part(PartKind.CABLE, "W1", List.of("a", "b"), "gauge", 22, "metres", 2)
                .part(PartKind.SINK, "L1", List.of("b", "c"), "amps", 1.5)
                .part(PartKind.CABLE, "W2", List.of("c", "0"), "gauge", 22, "metres", 2)
                .solved();
        assertEquals(1.5 * 2 * 16.14 / 304.8, point.across("W1"), 1e-12);
        assertEquals(5 - 2 * 1.5 * 2 * 16.14 / 304.8, point.across("L1"), 1e-12);
    }
}
