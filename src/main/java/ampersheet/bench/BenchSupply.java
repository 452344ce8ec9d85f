package ampersheet.bench;

/** The adjustable supply and the electronic load that are taken as at hand, and what is set on them. */
public final class BenchSupply {
    public static final double LEAST_VOLTS = 0.5;
    public static final double MOST_VOLTS = 30;
    public static final double MOST_AMPS = 3;
    public static final int OUTPUTS = 2;

    /** Of the electronic load. */
    public static final double LEAST_SUNK_AMPS = 0.05;

    public static final double MOST_SUNK_WATTS = 50;
    /** Below, an electronic load does not hold its current. */
    static final double LEAST_SUNK_VOLTS = 1;

    /** An electronic load is set to hundredths of an ampere: so many to one. */
    private static final double SINK_SETTINGS = 100;
    /** What the limit lies above the largest current that the parts can bring about. */
    private static final double MARGIN = 1.25;

    private BenchSupply() {}

    static double sunk(double amps) {
        return Math.rint(amps * SINK_SETTINGS) / SINK_SETTINGS;
    }

    /**
     * What the current limit is set to: a quarter above the largest current that the tolerances allow, rounded up to
     * what a knob is set to.
     */
    static double limit(double largestAmps) {
        double wanted = MARGIN * largestAmps;
        double step = wanted <= 0.1 ? 0.01 : wanted <= 1 ? 0.05 : 0.1;
        double steps = Math.max(1, Math.ceil(wanted / step - 1e-9));
        return Math.rint(steps * step * 100) / 100;
    }
}
