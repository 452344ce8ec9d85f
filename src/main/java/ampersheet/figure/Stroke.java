package ampersheet.figure;

import java.util.List;

/**
 * How a line is drawn. The thinnest is 1.4 px, 0.37 mm in print, so that a photocopy of a photocopy still shows it.
 *
 * @param width pixels
 * @param dashes lengths of dash and gap by turns, in pixels; empty for a solid line
 */
public record Stroke(double width, List<Double> dashes) {
    static final Stroke LINE = new Stroke(1.5);
    static final Stroke FINE = new Stroke(1.4);
    static final Stroke STRONG = new Stroke(2.2);
    static final Stroke DASHED = new Stroke(1.4, 5.0, 3.0);
    /** A wire of the largest gauge number that is drawn heavier than a thinner one would be. */
    static final double THINNEST_GAUGE = 30;

    private static final double THICKEST_GAUGE = 0;
    private static final double PER_GAUGE = 0.25;

    public Stroke {
        dashes = List.copyOf(dashes);
    }

    public Stroke(double width, Double... dashes) {
        this(width, List.of(dashes));
    }

    Stroke rounded() {
        return new Stroke(Decimals.rounded(width), dashes);
    }

    /** The smaller the number of the American wire gauge, the thicker the wire; never thinner than a strong line. */
    static Stroke ofGauge(double gauge) {
        double counted = Math.max(THICKEST_GAUGE, Math.min(THINNEST_GAUGE, gauge));
        return new Stroke(STRONG.width() + PER_GAUGE * (THINNEST_GAUGE - counted));
    }
}
