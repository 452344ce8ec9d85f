package ampersheet.formula;

import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.QuantityWriter.Printed;

/**
 * Part of a printed formula, with what decides whether it needs parentheses where it goes.
 *
 * @param signed begins with a minus
 * @param solidus a product that ends in a division on the line, after which ISO 80000-2 wants neither × nor another /
 * @param numberFirst begins with digits
 * @param numberLast ends with a number
 */
record Piece(String text, Level level, boolean signed, boolean solidus, boolean numberFirst, boolean numberLast) {

    /** From what binds least to what never needs parentheses. */
    enum Level {
        /** A phrase, as "next E24 value at or above R". */
        PHRASE,
        SUM,
        PRODUCT,
        /** A number whose unit has a division in it: fine as a factor, not beside a solidus. */
        RATIO,
        /** A power, a call, a number with a unit: fine in a product, but not below an exponent. */
        FACTOR,
        ATOM
    }

    static Piece atom(String text) {
        return new Piece(text, Level.ATOM, false, false, false, false);
    }

    static Piece factor(String text) {
        return new Piece(text, Level.FACTOR, false, false, false, false);
    }

    static Piece phrase(String text) {
        return new Piece(text, Level.PHRASE, false, false, false, false);
    }

    /** A printed value: its text may be in any markup, the rest is seen from what was printed. */
    static Piece value(String text, Printed printed) {
        boolean signed = printed.number().indexOf(QuantityWriter.MINUS) == 0;
        Level level = signed || printed.number().indexOf('×') >= 0
                ? Level.PRODUCT
                : printed.unit().indexOf('/') >= 0
                        ? Level.RATIO
                        : printed.unit().isEmpty() ? Level.ATOM : Level.FACTOR;
        boolean solidus = level == Level.PRODUCT && printed.unit().indexOf('/') >= 0;
        return new Piece(text, level, signed, solidus, !signed, true);
    }

    boolean atLeast(Level lowest) {
        return level.compareTo(lowest) >= 0;
    }
}
