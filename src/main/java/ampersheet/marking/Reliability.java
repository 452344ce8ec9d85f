package ampersheet.marking;

import java.util.Optional;
import org.apache.commons.math3.distribution.FDistribution;
import org.apache.commons.math3.stat.descriptive.moment.Variance;

/**
 * Coefficient alpha (Cronbach 1951) over the parts of a test, with its interval by the F distribution (Feldt 1965).
 *
 * @param error standard error of measurement, in the units of the scores
 */
record Reliability(double alpha, double low, double high, double error, int parts) {
    private static final int LEAST_PARTS = 3;
    private static final int LEAST_LEARNERS = 3;

    /**
     * @param scores one row for each learner, one column for each part
     * @return empty where it is not defined: fewer than three parts or learners, or all have the same total
     */
    static Optional<Reliability> of(double[][] scores) {
        int learners = scores.length;
        int parts = learners == 0 ? 0 : scores[0].length;
        if (parts < LEAST_PARTS || learners < LEAST_LEARNERS) {
            return Optional.empty();
        }
        Variance variance = new Variance();
        double[] totals = new double[learners];
        double within = 0;
        for (int part = 0; part < parts; part++) {
            double[] column = new double[learners];
            for (int learner = 0; learner < learners; learner++) {
                column[learner] = scores[learner][part];
                totals[learner] += scores[learner][part];
            }
            within += variance.evaluate(column);
        }
        double total = variance.evaluate(totals);
        if (!(total > 1e-12)) {
            return Optional.empty();
        }
        double alpha = parts / (parts - 1.0) * (1 - within / total);
        double[] ends = interval(alpha, parts, learners);
        return Optional.of(new Reliability(alpha, ends[0], ends[1], Math.sqrt(total * Math.max(0, 1 - alpha)), parts));
    }

    /** Feldt: (1 − α) / (1 − estimate) follows F with n − 1 and (n − 1)(k − 1) degrees of freedom. */
    static double[] interval(double alpha, int parts, int learners) {
        FDistribution f = new FDistribution(learners - 1.0, (learners - 1.0) * (parts - 1));
        double tail = (1 - Proportion.CONFIDENCE) / 2;
        return new double[] {
            1 - (1 - alpha) * f.inverseCumulativeProbability(1 - tail),
            1 - (1 - alpha) * f.inverseCumulativeProbability(tail)
        };
    }
}
