package ampersheet.quantity;

import java.util.Objects;

/**
 * A unit as printed, with what one of it is in coherent SI units: {@code SI = value * factor + offset}.
 *
 * @param symbol by SI writing rules, for example {@code kΩ}, {@code °C}, {@code K/W}; empty for dimension one
 * @param dimension of what it measures
 * @param factor coherent SI units in one of these
 * @param offset 273.15 for the degree Celsius, otherwise 0
 * @param base the same unit without its prefix ({@code kΩ} to {@code Ω}), from which printing chooses a prefix again
 * @param prefixable whether printing may choose a prefix
 */
public record Unit(String symbol, Dimension dimension, double factor, double offset, String base, boolean prefixable) {
    public Unit {
        Objects.requireNonNull(symbol);
        Objects.requireNonNull(dimension);
        Objects.requireNonNull(base);
    }

    /**
     * Reads a unit as an author or a learner writes it: {@code mA}, {@code kohm}, {@code kΩ}, {@code K/W},
     * {@code degC}, {@code °C}, {@code %}, {@code 1}, {@code bit/s}, {@code A/V}, {@code W/(m*K)}, {@code mm2},
     * {@code turn}.
     *
     * @throws UnitFault if it is not a unit, with the position of the first character that does not fit
     */
    public static Unit parse(String text) {
        return UnitReader.read(text);
    }

    /** Whether the word is the symbol of one unit, with or without prefix: {@code kΩ}, {@code °C}. */
    public static boolean isSymbol(String word) {
        return UnitReader.isSymbol(word);
    }

    /** A plain number. */
    public static final Unit ONE = new Unit("", Dimension.ONE, 1, 0, "1", false);

    public double toSi(double value) {
        return scaled(value, factor) + offset;
    }

    public double fromSi(double si) {
        return scaled(si - offset, 1 / factor);
    }

    /** Whether it counts whole turns, of which one is 2π rad: {@code r/min}. */
    public boolean countsTurns() {
        return UnitReader.countsTurns(symbol);
    }

    /** Whether it measures an angle, or how fast one grows: {@code rad/s}, {@code °/s}. */
    public boolean measuresAngle() {
        return symbol.startsWith("rad")
                || symbol.startsWith("mrad")
                || symbol.startsWith("µrad")
                || symbol.startsWith("°") && offset == 0;
    }

    /** The same unit without its prefix. */
    public Unit withoutPrefix() {
        return symbol.equals(base) || symbol.isEmpty() ? this : parse(base);
    }

    /** Dividing by a thousand gives the double nearest to 20 mA; multiplying by 0.001, itself rounded, need not. */
    static double scaled(double value, double factor) {
        double inverse = Math.floor(1 / factor + 0.5);
        return factor < 1 && 1 / inverse == factor ? value / inverse : value * factor;
    }
}
