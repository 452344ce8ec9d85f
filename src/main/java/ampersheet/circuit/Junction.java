package ampersheet.circuit;

import ampersheet.quantity.Elementary;

/**
 * A conducting junction after Shockley, {@code i = Is (exp(v / (n Vt)) − 1)}, in series with a resistance; also the
 * knee of a breakdown, which has the same shape far from 0 V.
 *
 * <p>Written around a point of its curve instead of its saturation current, {@code i = amps (exp((v − volts) / width) −
 * offset)}, so that a knee of 12 V that is 10 µV wide stays within the numbers a computer has.
 *
 * @param amps scale of the current, A
 * @param volts junction voltage of the point, V; 0 when {@code amps} is the saturation current
 * @param width volts for a factor e in current: emission coefficient times thermal voltage
 * @param offset {@code exp(−volts / width)}, so that no voltage means no current; 0 for a knee, where that is beyond
 *     what numbers hold
 * @param leak siemens beside the junction; keeps the middle of two reversed junctions at a definite voltage
 * @param series ohms in series with both
 */
record Junction(double amps, double volts, double width, double offset, double leak, double series) {
    /** Boltzmann constant times 300.15 K (27 °C) over the elementary charge, V; SI Brochure, 9th edition, table 1. */
    static final double THERMAL_VOLTAGE = 1.380649e-23 * 300.15 / 1.602176634e-19;

    /** A petaohm: a picoampere at a kilovolt, far below what real junctions leak. */
    static final double LEAK = 1e-15;

    private static final double KNEE_WIDTH = 10e-6;

    /** The junction that has {@code volts}, series resistance included, at {@code amps}. */
    static Junction through(double volts, double amps, double emission, double series) {
        double width = emission * THERMAL_VOLTAGE;
        double inner = volts - amps * series;
        double scale = (amps - LEAK * inner) / -Elementary.expm1(-inner / width);
        return new Junction(scale, inner, width, Elementary.exp(-inner / width), LEAK, series);
    }

    /** A breakdown that has {@code volts} at {@code amps}; from there on {@code slope} ohms. */
    static Junction knee(double volts, double amps, double slope) {
        return new Junction(amps, volts - amps * slope, KNEE_WIDTH, 0, LEAK, slope);
    }

    /** The junction by saturation current, emission coefficient and series resistance. */
    static Junction saturating(double amps, double emission, double series) {
        return new Junction(amps, 0, emission * THERMAL_VOLTAGE, 1, 0, series);
    }

    /** Volts over junction and series resistance at a current, A. */
    double voltageAt(double current) {
        // Newton on the voltage; starts beyond the answer, from where the convex curve is descended without overshoot.
        double v = volts + width * Elementary.ln1p(current / amps);
        for (int i = 0; i < 50; i++) {
            double step = (current(v) - current) / conductance(v);
            v -= step;
            if (Math.abs(step) <= 1e-15 * Math.abs(v)) {
                break;
            }
        }
        return v + current * series;
    }

    /** Amperes at {@code v} over the junction itself. */
    double current(double v) {
        if (offset == 0 || v > width) {
            return amps * (exponential(v) - offset) + leak * v;
        }
        return amps * offset * Elementary.expm1(v / width) + leak * v;
    }

    double conductance(double v) {
        return amps * exponential(v) / width + leak;
    }

    /** Whether the curve is its own tangent up to {@code v}: blocked, with leakage only. */
    boolean isStraightBelow(double v) {
        return v < (offset > 0 ? 0 : volts) - 100 * width;
    }

    private double exponential(double v) {
        return Elementary.exp(Math.min((v - volts) / width, 500));
    }

    /** Where to linearise first: a diode at the edge of conducting, a knee blocked. */
    double start() {
        return offset > 0 ? critical() : Math.min(0, volts - 100 * width);
    }

    /** Where the curve bends most sharply. */
    private double critical() {
        return volts + width * Elementary.ln(width / (amps * 1.4142135623730951));
    }

    /**
     * Where to linearise next when Newton's method asks for {@code wanted} after {@code last}: a long step up the
     * exponential is shortened to its logarithm (junction voltage limiting; L. W. Nagel, SPICE2, UCB/ERL M520, 1975).
     */
    double limited(double wanted, double last) {
        double critical = critical();
        if (wanted <= critical || Math.abs(wanted - last) <= 2 * width) {
            return wanted;
        }
        if (last < critical - 20 * width) {
            return critical;
        }
        double ratio = 1 + (wanted - last) / width;
        return ratio > 0 ? last + width * Elementary.ln(ratio) : critical;
    }
}
