package ampersheet.circuit;

import ampersheet.quantity.Elementary;

/**
 * What voltage v = v(from) − v(to) and current j, from to to, of a branch have to do with each other. Nodes are
 * numbers, the reference 0.
 */
sealed interface Law {
    /** v = volts. */
    record Voltage(double volts) implements Law {}

    /** j = amps. */
    record Current(double amps) implements Law {}

    /** v = ohms · j + volts. */
    record Resistance(double ohms, double volts) implements Law {}

    /** j as {@link Junction} says of v. */
    record Conducting(Junction junction) implements Law {}

    /** j = gain · current of an earlier branch. */
    record Gain(int branch, double gain) implements Law {}

    /** v(out) − v(ground) = volts, by whatever j that takes. */
    record Regulation(int out, int ground, double volts) implements Law {}

    /**
     * j = G · v; the conductance G of a MOSFET channel depends on gate drive, volts from source to gate: {@code 1 / on}
     * from {@code threshold} upwards, 1 pS from half of it downwards, between them its logarithm follows a smooth step.
     *
     * @param sign 1 for an N channel, −1 for a P channel
     */
    record Channel(int gate, int source, int sign, double on, double threshold) implements Law {
        private static final double OFF = 1e-12;

        double start() {
            return threshold / 2;
        }

        double conductance(double drive) {
            double t = passage(drive);
            if (t == 1) {
                return 1 / on;
            }
            return OFF * Elementary.exp(t * t * (3 - 2 * t) * decades());
        }

        /** Siemens per volt of drive. */
        double steepness(double drive) {
            double t = passage(drive);
            return conductance(drive) * decades() * 6 * t * (1 - t) / (threshold / 2);
        }

        /** Newton's method enters the passage at its edge and crosses it in tenths. */
        double limited(double wanted, double last) {
            double stride = threshold / 20;
            if (last <= start()) {
                return Math.min(wanted, start() + stride);
            }
            if (last >= threshold) {
                return Math.max(wanted, threshold - stride);
            }
            return Math.max(last - stride, Math.min(last + stride, wanted));
        }

        private double passage(double drive) {
            return Math.max(0, Math.min(1, (drive - start()) / (threshold - start())));
        }

        private double decades() {
            return Elementary.ln(1 / (on * OFF));
        }
    }
}
