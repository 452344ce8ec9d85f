package ampersheet.sheet;

import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.Unit;

/** Numbers as they stand on parts and knobs: tenths of the unit without a prefix. */
final class MarkedNumbers {
    private static final Unit VOLT = Unit.parse("V");
    private static final Unit AMPERE = Unit.parse("A");
    private static final Unit OHM = Unit.parse("ohm");
    private static final Unit FARAD = Unit.parse("F");
    private static final Unit WATT = Unit.parse("W");
    private static final Unit PERCENT = Unit.parse("%");
    private static final int FIGURES = 3;

    private final QuantityWriter writer;

    MarkedNumbers(QuantityWriter writer) {
        this.writer = writer;
    }

    String volts(double volts) {
        return withTenths(volts, VOLT);
    }

    String amps(double amps) {
        return withTenths(amps, AMPERE);
    }

    String ohms(double ohms) {
        return withTenths(ohms, OHM);
    }

    String watts(double watts) {
        return withTenths(watts, WATT);
    }

    String farads(double farads) {
        return writer.plain(farads, FARAD, FIGURES).text();
    }

    String percent(double share) {
        return writer.plain(share, PERCENT, FIGURES).text();
    }

    /** Without a unit. */
    String plain(double number) {
        return writer.plain(number, Unit.ONE, FIGURES).text();
    }

    private String withTenths(double si, Unit unit) {
        return si >= 0.1 && si < 1
                ? plain(si) + QuantityWriter.NO_BREAK_SPACE + unit.symbol()
                : writer.plain(si, unit, FIGURES).text();
    }
}
