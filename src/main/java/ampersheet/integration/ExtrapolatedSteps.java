package ampersheet.integration;

import ampersheet.quantity.Elementary;
import java.util.Optional;

/**
 * Steps of high order from backward Euler steps: a step is taken whole, in halves, in thirds …, and the results are
 * extrapolated to endlessly many parts (P. Deuflhard, SIAM Review 27, 1985). Quick parts of the system die away in each
 * of them, so that they do not dictate the step.
 */
final class ExtrapolatedSteps {
    private static final int MOST_PARTS = 8;

    private final Rates rates;
    private final double tolerance;
    private final double scale;
    private double factor;

    /** @param tolerance error of one step, as a share of the state or of {@code scale} */
    ExtrapolatedSteps(Rates rates, double tolerance, double scale) {
        this.rates = rates;
        this.tolerance = tolerance;
        this.scale = scale;
    }

    /** By what to multiply the last step for the next. */
    double factor() {
        return factor;
    }

    /** The state {@code seconds} on; empty when the error would be too large. */
    Optional<double[]> step(double[] from, double seconds) {
        double[][] row = new double[MOST_PARTS][];
        return extrapolate(from, seconds, row) <= 1 ? Optional.of(row[MOST_PARTS - 1]) : Optional.empty();
    }

    /** The state {@code seconds} on, where a longer step was good enough. */
    double[] accepting(double[] from, double seconds) {
        double[][] row = new double[MOST_PARTS][];
        extrapolate(from, seconds, row);
        return row[MOST_PARTS - 1];
    }

    /** Fills the last row of the tableau; returns the error as a share of what is allowed. */
    private double extrapolate(double[] from, double seconds, double[][] row) {
        for (int parts = 1; parts <= MOST_PARTS; parts++) {
            double[] best = from;
            for (int part = 0; part < parts; part++) {
                best = rates.implicitStep(best, seconds / parts);
            }
            for (int k = 0; k < parts - 1; k++) {
                double[] before = row[k];
                row[k] = best;
                best = improved(best, before, (double) parts / (parts - k - 1) - 1);
            }
            row[parts - 1] = best;
        }
        double worst = 0;
        for (int i = 0; i < from.length; i++) {
            double error = Math.abs(row[MOST_PARTS - 1][i] - row[MOST_PARTS - 2][i]);
            double size = Math.max(scale, Math.max(Math.abs(from[i]), Math.abs(row[MOST_PARTS - 1][i])));
            worst = Math.max(worst, error / (tolerance * size));
        }
        factor = Math.max(0.1, Math.min(4, 0.9 * Elementary.power(Math.max(worst, 1e-12), -1.0 / MOST_PARTS)));
        return worst;
    }

    private static double[] improved(double[] finer, double[] coarser, double divisor) {
        double[] improved = new double[finer.length];
        for (int i = 0; i < finer.length; i++) {
            improved[i] = finer[i] + (finer[i] - coarser[i]) / divisor;
        }
        return improved;
    }
}
