package ampersheet.bench;

import ampersheet.problem.Inventory;
import ampersheet.quantity.Dimension;
import java.util.List;
import java.util.Optional;

/**
 * What a meter shows and how far it may be off. Where no meter is listed, one of 4000 counts (3¾ digits) that chooses
 * its ranges itself is assumed, as commonly sold.
 */
public final class BenchMeter {
    /** Between the probes when it measures voltage. */
    public static final double VOLTMETER_OHMS = 10e6;

    /** In the way of a current, on the ranges for microamperes, for milliamperes, and on that for ten amperes. */
    public static final double MICROAMMETER_OHMS = 100;

    public static final double MILLIAMMETER_OHMS = 2;
    public static final double AMMETER_OHMS = 0.05;

    public static final double VOLTS_SHARE = 0.005;
    public static final int VOLTS_DIGITS = 2;
    public static final double AMPS_SHARE = 0.012;
    public static final int AMPS_DIGITS = 3;

    /** Fewer counts than this tell next to nothing. */
    private static final int LEAST_COUNTS = 50;

    /**
     * @param full largest reading, SI
     * @param step what the last digit is worth, SI
     * @param share of the reading that it may be off
     * @param amount that it may be off besides, SI
     * @param ohms in the way of a current
     */
    public record Range(double full, double step, double share, double amount, double ohms) {
        /** Whether it can be read there. */
        boolean holds(double si) {
            return Math.abs(si) < full - step / 2;
        }

        double error(double reading) {
            return share * Math.abs(reading) + amount;
        }

        /** As shown: to the nearest step. */
        double shown(double si) {
            return Math.rint(si / step) * step;
        }

        double below(double si) {
            return Math.floor(si / step + 1e-9) * step;
        }

        double above(double si) {
            return Math.ceil(si / step - 1e-9) * step;
        }

        boolean tells(double si) {
            return Math.abs(si) >= LEAST_COUNTS * step;
        }
    }

    private static final List<Range> VOLTS = List.of(volts(0.4), volts(4), volts(40), volts(400));
    /** Microamperes, milliamperes, and the ten amperes beside them. */
    private static final List<Range> AMPS = List.of(
            amps(0.004, MICROAMMETER_OHMS),
            amps(0.04, MILLIAMMETER_OHMS),
            amps(0.4, MILLIAMMETER_OHMS),
            new Range(10, 0.01, AMPS_SHARE, AMPS_DIGITS * 0.01, AMMETER_OHMS));

    private final Optional<Inventory> bins;

    public BenchMeter(Optional<Inventory> bins) {
        this.bins = bins;
    }

    private static Range volts(double full) {
        return new Range(full, full / 4000, VOLTS_SHARE, VOLTS_DIGITS * full / 4000, 0);
    }

    private static Range amps(double full, double ohms) {
        return new Range(full, full / 4000, AMPS_SHARE, AMPS_DIGITS * full / 4000, ohms);
    }

    /** Whether the workshop lists a meter for it. */
    public boolean isListed(Dimension quantity) {
        return bins.flatMap(listed -> listed.meter(quantity)).isPresent();
    }

    /** Finest first; a listed meter has one step on all, and is taken to be in the way as others are. */
    public List<Range> ranges(Dimension quantity) {
        List<Range> assumed = quantity.equals(Dimension.CURRENT) ? AMPS : VOLTS;
        return bins.flatMap(listed -> listed.meter(quantity))
                .map(meter -> assumed.stream()
                        .map(range ->
                                new Range(range.full(), meter.step(), meter.share(), meter.amount(), range.ohms()))
                        .toList())
                .orElse(assumed);
    }
}
