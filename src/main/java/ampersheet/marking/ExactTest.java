package ampersheet.marking;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.apache.commons.math3.distribution.HypergeometricDistribution;

/** Fisher's exact test of a table with two rows and two columns, and Holm's correction where many are made. */
final class ExactTest {
    /** Tables as unlikely as the one seen, but for the last bits, count with it. */
    private static final double LAST_BITS = 1e-7;

    private ExactTest() {}

    /** How often chance alone gives a table as unlikely as this one, with the same sums. */
    static double twoSided(int oneRight, int oneWrong, int otherRight, int otherWrong) {
        int right = oneRight + otherRight;
        int one = oneRight + oneWrong;
        int all = one + otherRight + otherWrong;
        if (all == 0) {
            return 1;
        }
        HypergeometricDistribution chance = new HypergeometricDistribution(null, all, right, one);
        double seen = chance.probability(oneRight) * (1 + LAST_BITS);
        double sum = 0;
        for (int i = Math.max(0, one + right - all); i <= Math.min(one, right); i++) {
            double probability = chance.probability(i);
            sum += probability <= seen ? probability : 0;
        }
        return Math.min(1, sum);
    }

    /** Holm 1979: the same probabilities in the same order, each raised so that all may be judged together. */
    static List<Double> holm(List<Double> probabilities) {
        List<Integer> rising = new ArrayList<>();
        for (int i = 0; i < probabilities.size(); i++) {
            rising.add(i);
        }
        rising.sort(Comparator.comparing(probabilities::get));
        Double[] corrected = new Double[probabilities.size()];
        double most = 0;
        for (int rank = 0; rank < rising.size(); rank++) {
            most = Math.max(most, Math.min(1, probabilities.get(rising.get(rank)) * (rising.size() - rank)));
            corrected[rising.get(rank)] = most;
        }
        return List.of(corrected);
    }
}
