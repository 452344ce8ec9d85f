package ampersheet.marking;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.special.Erf;

/**
 * Wilcoxon's rank sum test (1945): whether some learners stand higher than the others. Exact for classes of usual size,
 * learners of equal height included; for larger ones by the normal distribution.
 */
final class RankTest {
    /** Steps of the exact count that are still done at once. */
    private static final long MOST_WORK = 20_000_000;

    private RankTest() {}

    /**
     * How often chance alone puts a group as high as it stands, or higher.
     *
     * @param in whether each is in the group
     * @param heights of each
     */
    static double higher(List<Boolean> in, List<Double> heights) {
        int all = in.size();
        int group = (int) in.stream().filter(one -> one).count();
        if (group == 0 || group == all) {
            return 1;
        }
        long[] ranks = doubledRanks(heights);
        long sum = 0;
        for (int i = 0; i < all; i++) {
            sum += in.get(i) ? ranks[i] : 0;
        }
        // The other group's sum tells the same, and the smaller group is counted faster.
        boolean fewer = group <= all - group;
        int counted = fewer ? group : all - group;
        long most = (long) counted * 2 * all;
        return (double) all * counted * most <= MOST_WORK
                ? exact(ranks, counted, fewer ? sum : total(ranks) - sum, !fewer)
                : normal(ranks, group, sum);
    }

    private static long total(long[] ranks) {
        long total = 0;
        for (long rank : ranks) {
            total += rank;
        }
        return total;
    }

    /** From 1, doubled, so that the mean rank of equals is whole. */
    private static long[] doubledRanks(List<Double> values) {
        List<Integer> rising = new ArrayList<>();
        for (int i = 0; i < values.size(); i++) {
            rising.add(i);
        }
        rising.sort((one, other) -> Double.compare(values.get(one), values.get(other)));
        long[] ranks = new long[values.size()];
        for (int from = 0; from < rising.size(); ) {
            int to = from;
            while (to < rising.size() && values.get(rising.get(to)).equals(values.get(rising.get(from)))) {
                to++;
            }
            for (int i = from; i < to; i++) {
                ranks[rising.get(i)] = from + 1L + to;
            }
            from = to;
        }
        return ranks;
    }

    /** Share of all groups of this size whose sum is at most (or at least) the one seen. */
    private static double exact(long[] ranks, int group, long seen, boolean atMost) {
        int most = (int) (2L * ranks.length * group);
        double[][] ways = new double[group + 1][most + 1];
        ways[0][0] = 1;
        int reached = 0;
        for (int i = 0; i < ranks.length; i++) {
            int rank = (int) ranks[i];
            reached = Math.min(most, reached + rank);
            for (int size = Math.min(group, i + 1); size >= 1; size--) {
                for (int sum = reached; sum >= rank; sum--) {
                    ways[size][sum] += ways[size - 1][sum - rank];
                }
            }
        }
        double within = 0;
        double all = 0;
        for (int sum = 0; sum <= most; sum++) {
            all += ways[group][sum];
            within += (atMost ? sum <= seen : sum >= seen) ? ways[group][sum] : 0;
        }
        return within / all;
    }

    private static double normal(long[] ranks, int group, long seen) {
        int all = ranks.length;
        double mean = (double) total(ranks) / all;
        double squares = 0;
        for (long rank : ranks) {
            squares += (rank - mean) * (rank - mean);
        }
        double variance = squares / all * group * (all - group) / (all - 1);
        if (variance == 0) {
            return 1;
        }
        // Doubled ranks: the next sum is two away, half of it is one.
        double distance = (seen - 1 - group * mean) / Math.sqrt(variance);
        return 0.5 * Erf.erfc(distance / Math.sqrt(2));
    }
}
