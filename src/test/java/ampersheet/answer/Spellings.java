package ampersheet.answer;

import ampersheet.quantity.Dimension;
import ampersheet.quantity.Unit;
import ampersheet.quantity.UnitFault;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * Writes a value as a person might: other prefixes, commas, letter codes, powers of ten, words for units, every width
 * of space. Its decimal arithmetic is that of the Java library, so that it shares nothing with the reader it tests.
 */
public final class Spellings {
    private static final String PREFIXES = "pnµmkMG";
    private static final int[] POWERS = {-12, -9, -6, -3, 3, 6, 9};
    private static final String[] WORDS = {"pico", "nano", "micro", "milli", "kilo", "mega", "giga"};
    private final Random random;

    public Spellings(Random random) {
        this.random = random;
    }

    /** One way of writing the value: the number, how its unit is written, and the unit as symbol. */
    private record Form(BigDecimal number, String unit) {}

    /**
     * @param si in coherent SI units
     * @param figures the value is rounded to; 15 for a value that must be exact
     * @param unitPrinted whether a bare number, in {@code unit}, is complete
     */
    public String of(double si, Unit unit, int figures, boolean unitPrinted) {
        BigDecimal inBase = number(si, unit.withoutPrefix(), figures);
        BigDecimal inUnit = number(si, unit, figures);
        List<Form> forms = new ArrayList<>();
        forms.add(new Form(inUnit, unit.symbol()));
        if (unitPrinted || unit.dimension().equals(Dimension.ONE)) {
            forms.add(new Form(inUnit, ""));
        }
        boolean scalable = unit.prefixable() && inBase.signum() != 0;
        if (scalable) {
            forms.add(new Form(inBase, unit.base()));
            addPrefixed(forms, inBase, unit);
        }
        String code = scalable && random.nextInt(6) == 0 ? letterCode(inBase, unit) : "";
        if (!code.isEmpty()) {
            return code;
        }
        Form form = forms.get(random.nextInt(forms.size()));
        String number = number(form.number());
        String written = form.unit().isEmpty() ? "" : space() + respell(form.unit());
        return pick("", "", "", "", "x = ", "≈ ", "R1 = ", "= ", " ") + number + written + pick("", "", "", " ");
    }

    private static BigDecimal number(double si, Unit unit, int figures) {
        double value = unit.fromSi(si);
        int sure = unit.offset() == 0 ? 15 : 12;
        return new BigDecimal(value)
                .round(new MathContext(sure, RoundingMode.HALF_UP))
                .round(new MathContext(Math.min(sure, figures), RoundingMode.HALF_UP))
                .stripTrailingZeros();
    }

    private void addPrefixed(List<Form> forms, BigDecimal inBase, Unit unit) {
        boolean length = unit.dimension().equals(Dimension.LENGTH);
        for (int i = 0; i < POWERS.length; i++) {
            String prefixed = PREFIXES.charAt(i) + unit.base();
            BigDecimal number = inBase.scaleByPowerOfTen(-POWERS[i]);
            if (!isUnit(prefixed) || Math.abs(number.precision() - number.scale() - 2) > 6) {
                continue;
            }
            forms.add(new Form(number, prefixed));
            String word = word(unit.base());
            if (!word.isEmpty()) {
                forms.add(new Form(number, WORDS[i] + word));
                forms.add(new Form(number, PREFIXES.charAt(i) + " " + unit.base()));
            }
            if (!length) {
                forms.add(new Form(number, String.valueOf(PREFIXES.charAt(i))));
            }
        }
    }

    private static boolean isUnit(String text) {
        try {
            Unit.parse(text);
            return true;
        } catch (UnitFault notAUnit) {
            return false;
        }
    }

    /** For resistors and capacitors: 4k7, 470R, R47, 2u2. */
    private String letterCode(BigDecimal inBase, Unit unit) {
        boolean resistor = unit.base().equals("Ω");
        if (!resistor && !unit.base().equals("F") || inBase.signum() < 0) {
            return "";
        }
        String letters = resistor ? "RkMG" : "pnuµm";
        int[] powers = resistor ? new int[] {0, 3, 6, 9} : new int[] {-12, -9, -6, -6, -3};
        int chosen = random.nextInt(letters.length());
        BigDecimal number = inBase.scaleByPowerOfTen(-powers[chosen]);
        String plain = number.toPlainString();
        if (plain.length() > 16) {
            return "";
        }
        char letter = letters.charAt(chosen) == 'k' && random.nextBoolean() ? 'K' : letters.charAt(chosen);
        if (plain.indexOf('.') < 0) {
            return letter == 'R' ? plain + "R" : plain + letter + "0";
        }
        String code = plain.replace('.', letter);
        return code.startsWith("0" + letter) && random.nextBoolean() ? code.substring(1) : code;
    }

    private String number(BigDecimal number) {
        for (int tries = 0; tries < 20; tries++) {
            String written = tryNumber(number);
            if (!isCommaGroupAlone(written)) {
                return written;
            }
        }
        return number.toPlainString();
    }

    private String tryNumber(BigDecimal number) {
        String sign = number.signum() < 0 ? pick("-", "\u2212", "\u2013", "- ") : pick("", "", "", "+");
        BigDecimal magnitude = number.abs();
        int kind = random.nextInt(4);
        boolean extreme = Math.abs(magnitude.precision() - magnitude.scale()) > 9;
        if (magnitude.signum() != 0 && (kind == 0 || extreme)) {
            int shift = random.nextInt(13) - 6;
            if (extreme) {
                shift = magnitude.precision() - magnitude.scale() - 1;
            }
            return sign + marked(magnitude.scaleByPowerOfTen(-shift).toPlainString()) + power(shift);
        }
        String plain = magnitude.toPlainString();
        if (random.nextInt(4) == 0) {
            plain += plain.indexOf('.') < 0 ? ".0" : "0";
        }
        if (plain.startsWith("0.") && random.nextInt(3) == 0) {
            plain = plain.substring(1);
        }
        int point = plain.indexOf('.') < 0 ? plain.length() : plain.indexOf('.');
        if (point > 3 && random.nextBoolean()) {
            return sign + grouped(plain.substring(0, point)) + marked(plain.substring(point));
        }
        return sign + marked(plain);
    }

    private String power(int shift) {
        String minus = shift < 0 ? pick("-", "\u2212") : "";
        String digits = String.valueOf(Math.abs(shift));
        return switch (random.nextInt(5)) {
            case 0 -> "e" + minus + digits;
            case 1 -> "E" + (shift < 0 ? minus : "+") + digits;
            case 2 -> pick("x", " x ", "×", "*", " · ") + "10^" + minus + digits;
            case 3 -> "×10^(" + minus + digits + ")";
            default -> "×10" + (shift < 0 ? "⁻" : "") + superscript(digits);
        };
    }

    private static String superscript(String digits) {
        StringBuilder out = new StringBuilder();
        for (char c : digits.toCharArray()) {
            out.append("⁰¹²³⁴⁵⁶⁷⁸⁹".charAt(c - '0'));
        }
        return out.toString();
    }

    private String marked(String number) {
        return random.nextBoolean() ? number : number.replace('.', ',');
    }

    private String grouped(String whole) {
        String mark = pick(" ", "\u202F", "\u2009", "\u00A0", "'");
        StringBuilder out = new StringBuilder();
        for (int i = 0; i < whole.length(); i++) {
            out.append(i > 0 && (whole.length() - i) % 3 == 0 ? mark : "").append(whole.charAt(i));
        }
        return out.toString();
    }

    /** One to three digits that are not a lone zero, a comma, exactly three digits, and no other mark. */
    private static boolean isCommaGroupAlone(String written) {
        return written.matches("[^0-9.,' \u202F\u2009\u00A0]* ?[1-9][0-9]{0,2},[0-9]{3}([^0-9.,].*)?");
    }

    private String space() {
        return pick("", " ", " ", "\u00A0", "\u202F", "\u2009", "  ");
    }

    private static String word(String base) {
        return switch (base) {
            case "V" -> "volts";
            case "A" -> "amps";
            case "Ω" -> "ohms";
            case "W" -> "watts";
            case "F" -> "farads";
            case "Hz" -> "hertz";
            case "s" -> "seconds";
            case "m" -> "metres";
            default -> "";
        };
    }

    private String respell(String symbol) {
        return switch (symbol) {
            case "°C" -> pick("°C", "degC", "deg C", "C", "\u2103", "degrees C", "celsius");
            case "K/W" -> pick("K/W", "°C/W", "K / W", "kelvin per watt", "degC/W");
            case "V" -> pick("V", "volts", "v", "volt");
            case "A" -> pick("A", "amps", "amperes", "a");
            case "mA" -> pick("mA", "milliamps", "ma", "mAmps");
            case "W" -> pick("W", "watts", "w");
            case "%" -> pick("%", "percent", "per cent");
            case "K" -> pick("K", "kelvin", "\u212A", "°C");
            case "px" -> pick("px", "pixels");
            case "turn", "turns" -> pick("turn", "turns");
            case "r/min" -> pick("r/min", "rpm", "turn/min");
            default -> respellParts(symbol);
        };
    }

    private String respellParts(String symbol) {
        String out = symbol.replace("Ω", pick("Ω", "\u2126", "ohm", "Ohm"));
        out = out.replace("µ", pick("\u00B5", "\u03BC", "u"));
        out = out.replace("·", pick("·", "*", "\u22C5"));
        out = out.replace("²", pick("²", "2", "^2"));
        return out.startsWith("k") && random.nextInt(3) == 0 && out.length() > 1 && !out.startsWith("kW·")
                ? "K" + out.substring(1)
                : out;
    }

    private String pick(String... choices) {
        return choices[random.nextInt(choices.length)];
    }
}
