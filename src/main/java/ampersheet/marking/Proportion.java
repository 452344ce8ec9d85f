package ampersheet.marking;

import org.apache.commons.math3.stat.interval.ConfidenceInterval;
import org.apache.commons.math3.stat.interval.WilsonScoreInterval;

/** A share of a class, with the interval that a class of this size leaves open (Wilson 1927, without correction). */
record Proportion(int of, int all) {
    static final double CONFIDENCE = 0.95;

    Proportion {
        if (of < 0 || of > all) {
            throw new IllegalArgumentException(of + " of " + all);
        }
    }

    /** {@code NaN} of nobody. */
    double share() {
        return all == 0 ? Double.NaN : (double) of / all;
    }

    double low() {
        return of == 0 ? 0 : interval().getLowerBound();
    }

    double high() {
        return of == all ? 1 : interval().getUpperBound();
    }

    private ConfidenceInterval interval() {
        return new WilsonScoreInterval().createInterval(all, of, CONFIDENCE);
    }
}
