package ampersheet.circuit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Strips and panels: loads along copper. */
class CopperTest {
    private static final double VOLTS = 24;
    private static final double AMPS = 0.01;
    private static final double OHMS = 0.05;

    private static OperatingPoint solved(PartKind kind, String feed, Object... values) {
        return ((Outcome.Solved) outcome(kind, feed, values)).point();
    }

    private static Outcome outcome(PartKind kind, String feed, Object... values) {
        Map<PartValue, Double> numbers = new LinkedHashMap<>();
        for (int i = 0; i < values.length; i += 2) {
            numbers.put(Bench.valueNamed((String) values[i]), ((Number) values[i + 1]).doubleValue());
        }
        GridPoint top = new GridPoint(0, 4);
        GridPoint bottom = new GridPoint(0, 0);
        return OperatingPointSolver.solve(new Schematic(List.of(
                        new PlacedPart(
                                PartKind.SOURCE,
                                "V1",
                                Map.of("from", bottom, "to", top),
                                Map.of(PartValue.VOLTS, VOLTS)),
                        new PlacedPart(kind, "L1", Map.of("plus", top, "minus", bottom), numbers, Map.of("feed", feed)),
                        new PlacedPart(PartKind.GROUND, "ground1", Map.of("at", bottom), Map.of())))
                .netlist());
    }

    private static OperatingPoint strip(String feed, int taps) {
        return solved(PartKind.STRIP, feed, "taps", taps, "ohms", OHMS, "amps", AMPS);
    }

    private static OperatingPoint panel(String feed, int columns, int rows, double bus, Object... more) {
        Object[] values = {"columns", columns, "rows", rows, "ohms", OHMS, "bus", bus, "amps", AMPS};
        Object[] all = java.util.Arrays.copyOf(values, values.length + more.length);
        System.arraycopy(more, 0, all, values.length, more.length);
        return solved(PartKind.PANEL, feed, all);
    }

    /** Drops of both conductors, in units of one load's current through one section of one conductor. */
    private static List<Double> drops(OperatingPoint point) {
        return point.loads("L1").stream()
                .map(volts -> (VOLTS - volts) / (2 * AMPS * OHMS))
                .toList();
    }

    private static void assertDrops(List<Double> expected, OperatingPoint point) {
        List<Double> found = drops(point);
        assertEquals(expected.size(), found.size());
        for (int i = 0; i < found.size(); i++) {
            assertEquals(expected.get(i), found.get(i), 1e-9, "tap " + (i + 1) + " of " + found);
        }
        assertTrue(point.currentResidual() < 1e-12, "amperes left: " + point.currentResidual());
        assertTrue(Math.abs(point.powerResidual()) < 1e-9, "watts left: " + point.powerResidual());
    }

    /** Worked by hand: the sections carry 4, 3, 2 and 1 loads. */
    @Test
    void fedAtOneEndEverySectionCarriesTheLoadsBeyondIt() {
        assertDrops(List.of(4.0, 7.0, 9.0, 10.0), strip("start", 4));
        assertDrops(List.of(10.0, 9.0, 7.0, 4.0), strip("end", 4));
        assertDrops(List.of(1.0), strip("start", 1));
    }

    /** Worked by hand: of four loads each end feeds two, of three one and a half. */
    @Test
    void fedAtBothEndsTheLowestTapsLieInTheMiddle() {
        assertDrops(List.of(2.0, 3.0, 3.0, 2.0), strip("both ends", 4));
        assertDrops(List.of(1.5, 2.0, 1.5), strip("both ends", 3));
        assertDrops(List.of(0.5), strip("both ends", 1));
    }

    /**
     * Worked by hand: of four loads each half of the middle section carries two; of five the third is the feed itself.
     */
    @Test
    void fedInTheMiddleTheLowestTapsLieAtTheEnds() {
        assertDrops(List.of(2.0, 1.0, 1.0, 2.0), strip("middle", 4));
        assertDrops(List.of(3.0, 2.0, 0.0, 2.0, 3.0), strip("middle", 5));
        assertDrops(List.of(0.0), strip("middle", 1));
    }

    /**
     * A long ladder of 1 Ω along and 1 Ω across has the golden ratio for its resistance, with the first 1 Ω in series
     * (a classic of ladder networks, R. P. Feynman, Lectures on Physics, Vol. II, section 22-6; the number from
     * memory).
     */
    @Test
    void aLongLadderOfOhmsHasTheGoldenRatioForItsResistance() {
        OperatingPoint point = solved(PartKind.STRIP, "start", "taps", 60, "ohms", 0.5, "load_ohms", 1);
        assertEquals((1 + Math.sqrt(5)) / 2, point.across("L1") / point.current("L1"), 1e-12);
        assertEquals(VOLTS * point.current("L1"), point.power("L1"), 1e-9);
    }

    /** A finely spread load drops half of what it would at the far end, and a quarter of that when fed at both ends. */
    @Test
    void aFineLoadDropsHalfAndFedAtBothEndsAQuarterOfThat() {
        int taps = 1000;
        double atTheFarEnd = taps * taps;
        double oneEnd = drops(strip("start", taps)).get(taps - 1);
        double bothEnds = drops(strip("both ends", taps)).get(taps / 2);
        assertEquals(0.5, oneEnd / atTheFarEnd, 1e-3);
        assertEquals(0.25, bothEnds / oneEnd, 1e-3);
    }

    /** Worked by hand, 3 columns and 2 rows: the bus sections carry 6 and 3 loads, the row sections 3, 2 and 1. */
    @Test
    void theRowsOfAPanelHangOnItsBus() {
        assertDrops(List.of(9.0, 11.0, 12.0, 12.0, 14.0, 15.0), panel("start", 3, 2, OHMS));
        assertDrops(List.of(6.0, 8.0, 9.0, 6.0, 8.0, 9.0), panel("both ends", 3, 2, OHMS));
        assertDrops(List.of(3.0, 5.0, 6.0, 3.0, 5.0, 6.0), panel("start", 3, 2, 0));
    }

    /** Along a solid bar all rows are alike, so that nothing flows between them. */
    @Test
    void copperBetweenEqualRowsChangesNothing() {
        assertDrops(List.of(3.0, 5.0, 6.0, 3.0, 5.0, 6.0, 3.0, 5.0, 6.0), panel("start", 3, 3, 0, "cross", 0.001));
    }

    /**
     * Below a bus that drops, a mesh shares the current out: the worst pixel gets more, Kirchhoff's laws still hold.
     */
    @Test
    void aMeshEvensAPanelOut() {
        OperatingPoint rows = panel("start", 24, 24, OHMS);
        OperatingPoint mesh = panel("start", 24, 24, OHMS, "cross", OHMS);
        double worst = drops(rows).get(24 * 24 - 1);
        assertEquals(24 * 24.0 * 25 / 2 + 24.0 * 25 / 2, worst, 1e-6);
        assertTrue(drops(mesh).stream().allMatch(drop -> drop < worst - 1));
        assertTrue(mesh.currentResidual() < 1e-10, "amperes left: " + mesh.currentResidual());
    }

    /** Half a second on one busy core; a dense solve of its 7,000 unknowns would take minutes. */
    @Test
    void aMeshOfAThousandPixelsIsSolvedQuickly() {
        long started = System.nanoTime();
        assertEquals(
                1024,
                panel("both ends", 32, 32, OHMS, "cross", OHMS).loads("L1").size());
        double seconds = (System.nanoTime() - started) * 1e-9;
        assertTrue(seconds < 20, "took " + seconds + " s");
    }

    @Test
    void valuesThatNoStripOrPanelCanHaveAreTold() {
        assertFault(
                "has 2.5 taps; needs a whole number from 1 to 2000",
                outcome(PartKind.STRIP, "start", "taps", 2.5, "ohms", 1, "amps", 1));
        assertFault(
                "needs either amps or load_ohms, for what each of its loads draws",
                outcome(PartKind.STRIP, "start", "taps", 2, "ohms", 1));
        assertFault(
                "has ohms = 0.0; needs more than 0",
                outcome(PartKind.STRIP, "start", "taps", 2, "ohms", 0, "load_ohms", 1));
        assertFault(
                "has 4000 pixels; no more than 2000 are solved",
                outcome(PartKind.PANEL, "start", "columns", 50, "rows", 80, "ohms", 1, "bus", 0, "load_ohms", 1));
    }

    private static void assertFault(String fault, Outcome outcome) {
        assertEquals(new Outcome.Unfit("L1", fault), outcome);
    }
}
