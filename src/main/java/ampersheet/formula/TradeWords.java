package ampersheet.formula;

import ampersheet.language.Saying;
import ampersheet.quantity.Dimension;

/** Dimensions in the words of the trade, for messages: "volts", "Ω", "K/W". */
public final class TradeWords {
    private TradeWords() {}

    private record Named(Dimension dimension, String symbol, String plural, String key) {}

    /** In the order in which they are tried as numerator and denominator of the others. */
    private static final Named[] NAMED = {
        new Named(Dimension.VOLTAGE, "V", "volts", "practice.units.volts"),
        new Named(Dimension.CURRENT, "A", "amperes", "practice.units.amperes"),
        new Named(Dimension.RESISTANCE, "Ω", "ohms", "practice.units.ohms"),
        new Named(Dimension.POWER, "W", "watts", "practice.units.watts"),
        new Named(Dimension.TEMPERATURE, "K", "kelvins", "practice.units.kelvins"),
        new Named(Dimension.TIME, "s", "seconds", "practice.units.seconds"),
        new Named(Dimension.LENGTH, "m", "metres", "practice.units.metres"),
        new Named(Dimension.ENERGY, "J", "joules", "practice.units.joules"),
        new Named(Dimension.CAPACITANCE, "F", "farads", "practice.units.farads"),
        new Named(Dimension.INDUCTANCE, "H", "henries", "practice.units.henries"),
        new Named(Dimension.FREQUENCY, "Hz", "hertz", "practice.units.hertz"),
        new Named(Dimension.MASS, "kg", "kilograms", "practice.units.kilograms"),
        new Named(Dimension.LENGTH.power(2), "m²", "square metres", "practice.units.square-metres"),
        new Named(Dimension.LENGTH.power(3), "m³", "cubic metres", "practice.units.cubic-metres"),
        new Named(Dimension.RESISTANCE.power(-1), "S", "siemens", "practice.units.siemens"),
        new Named(Dimension.CURRENT.times(Dimension.TIME), "C", "coulombs", "practice.units.coulombs"),
    };

    /** "volts"; "plain numbers" for dimension one; "quantities in K/W" where there is no word. */
    public static String plural(Dimension dimension) {
        if (dimension.equals(Dimension.ONE)) {
            return "plain numbers";
        }
        for (Named named : NAMED) {
            if (named.dimension().equals(dimension)) {
                return named.plural();
            }
        }
        return "quantities in " + symbol(dimension);
    }

    /** The same for learners, in any language. */
    public static Saying plurals(Dimension dimension) {
        if (dimension.equals(Dimension.ONE)) {
            return Saying.of("practice.units.none");
        }
        for (Named named : NAMED) {
            if (named.dimension().equals(dimension)) {
                return Saying.of(named.key());
            }
        }
        return Saying.of("practice.units.others", "unit", symbol(dimension));
    }

    /** "V", "K/W", "A·s"; base units with exponents where nothing shorter fits; empty for dimension one. */
    public static String symbol(Dimension dimension) {
        if (dimension.equals(Dimension.ONE)) {
            return "";
        }
        for (Named named : NAMED) {
            if (named.dimension().equals(dimension)) {
                return named.symbol();
            }
        }
        for (Named squared : NAMED) {
            if (squared.dimension().power(2).equals(dimension)) {
                return squared.symbol() + "²";
            }
        }
        for (Named above : NAMED) {
            for (Named below : NAMED) {
                if (above.dimension().over(below.dimension()).equals(dimension)) {
                    return above.symbol() + "/" + below.symbol();
                }
            }
        }
        for (Named first : NAMED) {
            for (Named second : NAMED) {
                if (first.dimension().times(second.dimension()).equals(dimension)) {
                    return first.symbol() + "·" + second.symbol();
                }
            }
        }
        for (Named below : NAMED) {
            if (below.dimension().power(-1).equals(dimension)) {
                return "1/" + below.symbol();
            }
        }
        StringBuilder text = new StringBuilder();
        base(text, "kg", dimension.kilogram());
        base(text, "m", dimension.metre());
        base(text, "s", dimension.second());
        base(text, "A", dimension.ampere());
        base(text, "K", dimension.kelvin());
        return text.toString();
    }

    private static void base(StringBuilder text, String symbol, int exponent) {
        if (exponent == 0) {
            return;
        }
        if (text.length() > 0) {
            text.append('·');
        }
        text.append(symbol);
        if (exponent != 1) {
            text.append(Superscript.of(exponent));
        }
    }
}
