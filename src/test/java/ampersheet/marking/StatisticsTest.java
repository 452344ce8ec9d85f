package ampersheet.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.source.Languages;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Statistics of the class report against published tables and values worked by hand. */
class StatisticsTest {
    /**
     * Law School Admission Test, section 6: five items, 1,000 examinees, by response pattern. Bock and Lieberman 1970,
     * Psychometrika 35:179, table 1 (from memory; the sums below are the published ones).
     */
    private static final int[] PATTERNS = {
        3, 6, 2, 11, 1, 1, 3, 4, 1, 8, 0, 16, 0, 3, 2, 15, 10, 29, 14, 81, 3, 28, 15, 80, 16, 56, 21, 173, 11, 61, 28,
        298
    };

    private static final int ITEMS = 5;

    private static double[][] admissionTest() {
        List<double[]> rows = new ArrayList<>();
        for (int pattern = 0; pattern < PATTERNS.length; pattern++) {
            double[] row = new double[ITEMS];
            for (int item = 0; item < ITEMS; item++) {
                row[item] = pattern >> (ITEMS - 1 - item) & 1;
            }
            for (int i = 0; i < PATTERNS[pattern]; i++) {
                rows.add(row);
            }
        }
        return rows.toArray(new double[0][]);
    }

    private static ItemScores item(double[][] scores, int item) {
        List<ItemScores.Score> of = new ArrayList<>();
        for (double[] row : scores) {
            double total = 0;
            for (double score : row) {
                total += score;
            }
            of.add(new ItemScores.Score(row[item] == 1, total / row.length, (total - row[item]) / (row.length - 1)));
        }
        return new ItemScores(of, 0);
    }

    /** Values printed for these data by Rizopoulos 2006, J Stat Softw 17(5), and its package's manual (from memory). */
    @Test
    void facilityCorrelationAndReliabilityAreThosePublishedForTheAdmissionTest() {
        double[][] scores = admissionTest();
        assertEquals(1000, scores.length);
        double[] facility = {0.924, 0.709, 0.553, 0.763, 0.870};
        double[] withRest = {0.1128, 0.1532, 0.1728, 0.1444, 0.1216};
        for (int i = 0; i < ITEMS; i++) {
            assertEquals(facility[i], item(scores, i).facility().share(), 1e-12, "item " + (i + 1));
            assertEquals(withRest[i], item(scores, i).pointBiserial(), 2e-4, "item " + (i + 1));
        }
        assertEquals(0.2950, Reliability.of(scores).orElseThrow().alpha(), 5e-5);
    }

    /** Newcombe 1998, Statistics in Medicine 17:857, table I, method 3 (score interval without correction). */
    @Test
    void wilsonIntervalsAreNewcombes() {
        int[][] counts = {{81, 263}, {15, 148}, {0, 20}, {1, 29}};
        double[][] ends = {{0.2553, 0.3662}, {0.0624, 0.1605}, {0, 0.1611}, {0.0061, 0.1718}};
        for (int i = 0; i < counts.length; i++) {
            Proportion proportion = new Proportion(counts[i][0], counts[i][1]);
            assertEquals(ends[i][0], proportion.low(), 5e-5, proportion.toString());
            assertEquals(ends[i][1], proportion.high(), 5e-5, proportion.toString());
        }
        assertThrows(IllegalArgumentException.class, () -> new Proportion(3, 2));
    }

    /** Quantiles as in printed tables of the F distribution: F(0.975; 10, 20) = 2.77, F(0.975; 20, 10) = 3.42. */
    @Test
    void theIntervalOfAlphaIsFeldts() {
        double[] ends = Reliability.interval(0.8, 3, 11);
        assertEquals(1 - 0.2 * 2.77, ends[0], 0.2 * 0.005);
        assertEquals(1 - 0.2 / 3.42, ends[1], 0.2 * 0.001);
    }

    @Test
    void reliabilityIsNotDefinedForTwoPartsOrEqualTotals() {
        assertEquals(Optional.empty(), Reliability.of(new double[][] {{1, 0}, {0, 1}, {1, 1}}));
        assertEquals(Optional.empty(), Reliability.of(new double[][] {{1, 0, 1}, {1, 1, 0}, {0, 1, 1}}));
        assertEquals(Optional.empty(), Reliability.of(new double[0][]));
    }

    /** Variances 0.25, 1/3, 0.25 and of the totals 5/3, by hand: alpha = 3/2 (1 − (5/6) / (5/3)) = 0.75. */
    @Test
    void alphaByHand() {
        double[][] scores = {{1, 1, 1}, {1, 1, 0}, {1, 0, 0}, {0, 0, 0}};
        Reliability found = Reliability.of(scores).orElseThrow();
        assertEquals(0.75, found.alpha(), 1e-12);
        assertEquals(Math.sqrt(5.0 / 3 * 0.25), found.error(), 1e-12);
    }

    /** The lady who tasted tea: Fisher 1935, The Design of Experiments, chapter 2; 34 of 70 arrangements. */
    @Test
    void theExactTestIsFishers() {
        assertEquals(34.0 / 70, ExactTest.twoSided(3, 1, 1, 3), 1e-9);
        assertEquals(2.0 / 70, ExactTest.twoSided(4, 0, 0, 4), 1e-9);
        assertEquals(1, ExactTest.twoSided(2, 2, 2, 2), 1e-9);
    }

    /**
     * By hand: 4 × 0.005, 3 × 0.01, 2 × 0.03, and 0.06 again because a larger probability is never corrected to less.
     */
    @Test
    void holmRaisesEachProbabilityByHowManyAreLeft() {
        List<Double> corrected = ExactTest.holm(List.of(0.01, 0.04, 0.03, 0.005));
        double[] expected = {0.03, 0.06, 0.06, 0.02};
        for (int i = 0; i < expected.length; i++) {
            assertEquals(expected[i], corrected.get(i), 1e-12);
        }
        assertEquals(List.of(), ExactTest.holm(List.of()));
    }

    /** Eleven learners, groups of three (27 % of 11 is 2.97): 3 of 3 against 1 of 3. */
    @Test
    void discriminationComparesTheUpperWithTheLowerGroup() {
        boolean[] right = {false, true, false, true, false, true, false, true, true, true, true};
        List<ItemScores.Score> scores = new ArrayList<>();
        for (int i = 0; i < right.length; i++) {
            scores.add(new ItemScores.Score(right[i], i / 10.0, i / 10.0));
        }
        assertEquals(1 - 1.0 / 3, new ItemScores(scores, 0).discrimination(), 1e-12);
    }

    /** Groups of two of six; three share the lowest total, one of them right: each counts two thirds. */
    @Test
    void learnersOfEqualTotalAtTheEdgeOfAGroupCountInEqualParts() {
        List<ItemScores.Score> scores = new ArrayList<>();
        boolean[] right = {true, false, false, true, true, false};
        double[] totals = {0.2, 0.2, 0.2, 0.5, 0.8, 0.9};
        for (int i = 0; i < right.length; i++) {
            scores.add(new ItemScores.Score(right[i], totals[i], totals[i]));
        }
        double lower = 1.0 / 3;
        double upper = 1.0 / 2;
        assertEquals(upper - lower, new ItemScores(scores, 0).discrimination(), 1e-12);
        java.util.Collections.reverse(scores);
        assertEquals(
                upper - lower,
                new ItemScores(scores, 0).discrimination(),
                1e-12,
                "the order of the class is no matter");
    }

    @Test
    void whatDoesNotVaryHasNoCorrelation() {
        assertTrue(Double.isNaN(
                new ItemScores(List.of(new ItemScores.Score(true, 0.1, 0.1), new ItemScores.Score(true, 0.9, 0.9)), 0)
                        .pointBiserial()));
        assertTrue(Double.isNaN(new ItemScores(List.of(), 3).discrimination()));
    }

    @Test
    void numbersAreWrittenTheSameEverywhere() {
        assertEquals("−0.13", Amounts.decimal(-0.125, 2, Languages.ENGLISH));
        assertEquals("0.00", Amounts.decimal(-0.001, 2, Languages.ENGLISH));
        assertEquals("7.5", Amounts.marks(750));
        assertEquals("83\u00A0%", Amounts.percent(0.825, Languages.ENGLISH));
        assertEquals("not defined", Amounts.decimal(Double.NaN, 2, Languages.ENGLISH));
    }
}
