package ampersheet.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class PreferredSeriesTest {
    /** IEC 60063, the lists of E3, E6, E12 and E24. */
    @Test
    void theCoarseSeriesAreTheListsOfTheStandard() {
        assertEquals(List.of(1.0, 2.2, 4.7), PreferredSeries.E3.mantissas());
        assertEquals(List.of(1.0, 1.5, 2.2, 3.3, 4.7, 6.8), PreferredSeries.E6.mantissas());
        assertEquals(
                List.of(1.0, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2), PreferredSeries.E12.mantissas());
        assertEquals(
                List.of(
                        1.0, 1.1, 1.2, 1.3, 1.5, 1.6, 1.8, 2.0, 2.2, 2.4, 2.7, 3.0, 3.3, 3.6, 3.9, 4.3, 4.7, 5.1, 5.6,
                        6.2, 6.8, 7.5, 8.2, 9.1),
                PreferredSeries.E24.mantissas());
    }

    /** IEC 60063, E48 (list from memory). */
    @Test
    void e48IsTheListOfTheStandard() {
        assertEquals(
                List.of(
                        1.00, 1.05, 1.10, 1.15, 1.21, 1.27, 1.33, 1.40, 1.47, 1.54, 1.62, 1.69, 1.78, 1.87, 1.96, 2.05,
                        2.15, 2.26, 2.37, 2.49, 2.61, 2.74, 2.87, 3.01, 3.16, 3.32, 3.48, 3.65, 3.83, 4.02, 4.22, 4.42,
                        4.64, 4.87, 5.11, 5.36, 5.62, 5.90, 6.19, 6.49, 6.81, 7.15, 7.50, 7.87, 8.25, 8.66, 9.09, 9.53),
                PreferredSeries.E48.mantissas());
    }

    /** IEC 60063, E96: spot values at the indices 4, 11, 29, 47, 68, 77 and 95. */
    @Test
    void e96HasTheSpotValuesOfTheStandard() {
        List<Double> e96 = PreferredSeries.E96.mantissas();
        assertEquals(96, e96.size());
        assertEquals(
                List.of(1.10, 1.30, 2.00, 3.09, 5.11, 6.34, 9.76),
                List.of(e96.get(4), e96.get(11), e96.get(29), e96.get(47), e96.get(68), e96.get(77), e96.get(95)));
    }

    /** IEC 60063, E192: the geometric series rounded to three figures, 9.20 the one exception. */
    @Test
    void e192FollowsTheRuleWithItsOneException() {
        List<Double> e192 = PreferredSeries.E192.mantissas();
        assertEquals(192, e192.size());
        int exceptions = 0;
        for (int i = 0; i < 192; i++) {
            double rule = Math.round(100 * Math.pow(10, i / 192.0)) / 100.0;
            if (rule != e192.get(i)) {
                exceptions++;
                assertEquals(9.20, e192.get(i));
                assertEquals(9.19, rule);
            }
        }
        assertEquals(1, exceptions);
        assertEquals(List.of(1.00, 1.01, 1.02, 1.04, 1.05), e192.subList(0, 5));
        assertEquals(List.of(9.65, 9.76, 9.88), e192.subList(189, 192));
    }

    @Test
    void aSeriesIsContainedInTheFinerOneOfItsKind() {
        assertTrue(PreferredSeries.E24.mantissas().containsAll(PreferredSeries.E12.mantissas()));
        assertTrue(PreferredSeries.E96.mantissas().containsAll(PreferredSeries.E48.mantissas()));
        assertTrue(PreferredSeries.E192.mantissas().containsAll(PreferredSeries.E96.mantissas()));
    }

    /** T. R. Kuphaldt, Lessons in Electric Circuits, Vol. III: 1.12 kilohm, with the series of IEC 60063. */
    @Test
    void theNextPreferredValueUpKeepsTheCurrentBelowItsLimit() {
        assertEquals(1200.0, PreferredSeries.E12.nextUp(1120));
        assertEquals(1200.0, PreferredSeries.E24.nextUp(1120));
        assertEquals(1100.0, PreferredSeries.E24.nearest(1120));
        assertEquals(1100.0, PreferredSeries.E24.nextDown(1120));
    }

    @Test
    void theNextValueMayLieInAnotherDecade() {
        assertEquals(1000.0, PreferredSeries.E24.nextUp(911));
        assertEquals(910.0, PreferredSeries.E24.nextDown(999.9));
        assertEquals(1e-6, PreferredSeries.E6.nextUp(0.9e-6));
        assertEquals(1000.0, PreferredSeries.E3.nearest(900));
        assertEquals(1e-3, PreferredSeries.E12.nextUp(1e-3));
        assertEquals(1e-3, PreferredSeries.E12.nextDown(1e-3));
    }

    @Test
    void aMemberIsItsOwnNeighbourDespiteTheLastBits() {
        for (PreferredSeries series : PreferredSeries.values()) {
            for (double mantissa : series.mantissas()) {
                for (int decade = -12; decade <= 9; decade++) {
                    double member = PowerOfTen.scale(Math.floor(mantissa * 100 + 0.5), decade - 2);
                    for (double near : new double[] {member, member * (1 + 1e-12), member * (1 - 1e-12)}) {
                        assertEquals(member, series.nextUp(near), () -> series + " up from " + near);
                        assertEquals(member, series.nextDown(near), () -> series + " down from " + near);
                        assertTrue(series.contains(near), () -> series + " contains " + near);
                    }
                }
            }
        }
    }

    @Test
    void nearestHasTheLeastRatioNotTheLeastDifference() {
        // The geometric mean of 1.0 and 2.2 is 1.483: 1.49 is nearer to 2.2 by ratio, nearer to 1.0 by difference.
        assertEquals(2.2, PreferredSeries.E3.nearest(1.49));
        assertEquals(1.0, PreferredSeries.E3.nearest(1.48));
    }

    @Test
    void whatIsNotInTheListIsNotAMember() {
        assertFalse(PreferredSeries.E24.contains(500));
        assertFalse(PreferredSeries.E12.contains(510));
        assertFalse(PreferredSeries.E24.contains(0));
        assertFalse(PreferredSeries.E24.contains(-470));
        assertFalse(PreferredSeries.E24.contains(Double.NaN));
    }

    @Test
    void membersBetweenTwoValuesIncludeBothEnds() {
        assertEquals(List.of(820.0, 1000.0, 1200.0, 1500.0), PreferredSeries.E12.between(820, 1500));
        assertEquals(List.of(), PreferredSeries.E12.between(830, 990));
        assertEquals(25, PreferredSeries.E12.between(1e3, 1e5).size());
    }

    @Test
    void onlyAPositiveValueHasNeighbours() {
        assertThrows(IllegalArgumentException.class, () -> PreferredSeries.E24.nextUp(0));
        assertThrows(IllegalArgumentException.class, () -> PreferredSeries.E24.nextDown(-1));
        assertThrows(IllegalArgumentException.class, () -> PreferredSeries.E24.nearest(Double.POSITIVE_INFINITY));
    }
}
