package ampersheet.quantity;

import ampersheet.language.Saying;
import java.util.List;
import java.util.Optional;

/**
 * Reads a quantity as people type it. Never folds m and M; never guesses between two readings.
 *
 * <ul>
 *   <li>A number by {@link TypedNumber}, then a unit by {@link UnitWords}, with any space or none between them.
 *   <li>Letter codes of IEC 60062, in which a letter stands at the decimal marker: {@code 4k7}, {@code 4R7},
 *       {@code R47}, {@code 2u2}; also {@code 3V3}, which the standard does not have but every bench does. A letter for
 *       the tolerance after the code is not read.
 *   <li>A prefix without unit ({@code 4.7k}) is against the SI and common all the same. {@code K} and {@code m} alone
 *       are then a prefix or a unit: the unit asked for decides; where none is known, the reading is ambiguous.
 *   <li>{@code C} after a number is the degree Celsius, never the coulomb, which no sheet asks for; in a ratio such as
 *       {@code °C/W} it is the kelvin, as a difference.
 *   <li>{@code R = 470 Ω}, {@code approx. 470 Ω}, {@code 470 Ω ± 5 %} and {@code 470 Ω?} lose what stands around the
 *       number ({@link WordsAround}); whole numbers are also read in words ({@link NumberWords}).
 *   <li>A count may have its noun behind it ({@code 26 pairs}) or be a place in a row ({@code 7th}, {@code nr 7}).
 * </ul>
 */
public final class QuantityReader {
    private static final int LONGEST = 80;

    private final String asTyped;
    private final Optional<Unit> expected;
    private final DecimalMarker decimal;

    private QuantityReader(String asTyped, Optional<Unit> expected, DecimalMarker decimal) {
        this.asTyped = asTyped;
        this.expected = expected;
        this.decimal = decimal;
    }

    /** Without knowing what is asked: {@code 4.7 K} is ambiguous. */
    public static Reading read(String typed) {
        return read(typed, DecimalMarker.POINT);
    }

    /** @param decimal as in {@link #read(String, Unit, DecimalMarker)} */
    public static Reading read(String typed, DecimalMarker decimal) {
        return new QuantityReader(typed, Optional.empty(), decimal).read();
    }

    /**
     * @param expected the unit of the question. It decides only whether {@code K} or {@code m} alone is a unit or a
     *     prefix, whether {@code 5m2} is an area, and whether degrees are those of temperature or of angle
     */
    public static Reading read(String typed, Unit expected) {
        return read(typed, expected, DecimalMarker.POINT);
    }

    /** @param decimal of the sheet: the other mark before three digits may stand between thousands */
    public static Reading read(String typed, Unit expected, DecimalMarker decimal) {
        return new QuantityReader(typed, Optional.of(expected), decimal).read();
    }

    private Reading read() {
        if (asTyped.length() > LONGEST) {
            return unreadable(Saying.of("reading.too-long"));
        }
        String text = WordsAround.withoutTail(
                WordsAround.withoutLead(replaced(TypedText.fold(asTyped), "+/-", "±")), asksForNumber());
        if (text.isEmpty()) {
            return unreadable(Saying.of("reading.nothing"));
        }
        if ("<>≤≥".indexOf(text.charAt(0)) >= 0 && (text.length() == 1 || !UnitReader.isLetter(text.charAt(1)))) {
            return unreadable(Saying.of("reading.limit"));
        }
        if (text.indexOf('=') >= 0) {
            return unreadable(Saying.of("reading.equation"));
        }
        try {
            String number = NumberWords.inDigits(text);
            Reading code = letterCode(number);
            return code != null ? code : numberWithUnit(number);
        } catch (TypedNumber.Fault fault) {
            return unreadable(fault.said());
        }
    }

    private static String replaced(String text, String from, String to) {
        int at = text.indexOf(from);
        return at < 0 ? text : text.substring(0, at) + to + text.substring(at + from.length());
    }

    private Reading letterCode(String text) {
        boolean negative = text.charAt(0) == '-';
        int start = negative || text.charAt(0) == '+' ? 1 : 0;
        int letterAt = digitsEnd(text, start);
        if (letterAt >= text.length() - 1) {
            return null;
        }
        char letter = text.charAt(letterAt);
        int end = digitsEnd(text, letterAt + 1);
        boolean leading = letterAt == start;
        if (end == letterAt + 1 || !(leading ? "RkKMGmµunpL" : "RkKMGmµunpLVAFW").contains(String.valueOf(letter))) {
            return null;
        }
        String whole = text.substring(start, letterAt);
        String fraction = text.substring(letterAt + 1, end);
        String rest = text.substring(end).trim();
        if (letter == 'm' && !leading && rest.isEmpty() && (fraction.equals("2") || fraction.equals("3"))) {
            if (expected.isEmpty()) {
                return new Reading.Ambiguous(
                        asTyped,
                        List.of(
                                Saying.of("reading.meaning.thousandths", "number", whole + "." + fraction),
                                meaning(whole + (fraction.equals("2") ? " m²" : " m³"))));
            }
            if (isLengthPower(expected.get())) {
                return null;
            }
        }
        if (!rest.isEmpty() && !UnitReader.isLetter(rest.charAt(0))) {
            return unreadable(Saying.of("reading.code-end"));
        }
        Optional<Unit> coded = switch (letter) {
            case 'R', 'L' -> Optional.of(Unit.parse("ohm"));
            case 'V', 'A', 'F', 'W' -> Optional.of(Unit.parse(String.valueOf(letter)));
            default -> codedPart(letter);
        };
        if (!rest.isEmpty()) {
            Unit unit = UnitReader.readOrNull(UnitWords.symbols(rest, asksForTemperature()));
            if (unit == null) {
                return unknownUnit(rest);
            }
            boolean fits = unit.equals(unit.withoutPrefix())
                    && (coded.isEmpty() || coded.get().dimension().equals(unit.dimension()));
            if (!fits) {
                return unreadable(Saying.of("reading.code-unit", "code", text.substring(0, end), "typed", shown(rest)));
            }
            coded = Optional.of(unit);
        }
        int power = letter == 'K' ? 3 : letter == 'L' ? -3 : UnitReader.powerOf(letter);
        double number = TypedNumber.ofDigits(whole, fraction);
        return value(negative ? -number : number, power, coded, TypedNumber.significantFigures(whole + fraction, true));
    }

    /**
     * The standard's codes are for resistors and capacitors: where one of these is asked for, the code has its unit.
     */
    private Optional<Unit> codedPart(char letter) {
        if (expected.isPresent()
                && expected.get().dimension().equals(Dimension.RESISTANCE)
                && "kKMG".indexOf(letter) >= 0) {
            return Optional.of(Unit.parse("ohm"));
        }
        if (expected.isPresent()
                && expected.get().dimension().equals(Dimension.CAPACITANCE)
                && "pnuµm".indexOf(letter) >= 0) {
            return Optional.of(Unit.parse("F"));
        }
        return Optional.empty();
    }

    private static int digitsEnd(String text, int from) {
        int end = from;
        while (end < text.length() && TypedText.isDigit(text.charAt(end))) {
            end++;
        }
        return end;
    }

    private Reading numberWithUnit(String text) throws TypedNumber.Fault {
        TypedNumber number = TypedNumber.read(text, decimal);
        String rest = text.substring(number.end()).trim();
        if (rest.endsWith(".")) {
            rest = rest.substring(0, rest.length() - 1).trim();
        }
        if (rest.isEmpty()) {
            return reading(number, 0, Optional.empty(), rest);
        }
        int ordinal = number.isWholeAsWritten() ? ordinalEnd(rest) : 0;
        if (ordinal > 0) {
            String counted = rest.substring(ordinal).trim();
            if (counted.isEmpty() || WordsAround.namesWhatIsCounted(counted)) {
                return reading(number, 0, Optional.of(Unit.ONE), "");
            }
        }
        char prefix = UnitWords.prefixAlone(rest);
        if (prefix != 0) {
            return prefixAlone(number, prefix, rest.length() == 1);
        }
        if (rest.length() > 1 && rest.charAt(0) == '/' && UnitReader.isLetter(rest.charAt(1))) {
            rest = "1" + rest;
        }
        if (UnitWords.isFahrenheit(rest)) {
            return unreadable(Saying.of("reading.fahrenheit"));
        }
        try {
            Unit unit = Unit.parse(UnitWords.symbols(rest, asksForTemperature()));
            return reading(number, 0, Optional.of(unit), rest);
        } catch (UnitFault none) {
            return WordsAround.namesWhatIsCounted(rest)
                    ? reading(number, 0, Optional.of(Unit.ONE), rest)
                    : notAUnit(rest);
        }
    }

    /** Length of {@code th} and its like at the start; 0 if there is none. */
    private static int ordinalEnd(String rest) {
        String lower = TypedText.lowerCase(rest);
        boolean suffix =
                lower.startsWith("st") || lower.startsWith("nd") || lower.startsWith("rd") || lower.startsWith("th");
        return suffix && (lower.length() == 2 || !UnitReader.isLetter(lower.charAt(2))) ? 2 : 0;
    }

    /** @param mayBeUnit whether a single letter was typed, not the word milli */
    private Reading prefixAlone(TypedNumber number, char letter, boolean mayBeUnit) {
        int power = letter == 'K' ? 3 : UnitReader.powerOf(letter);
        if (mayBeUnit && (letter == 'K' || letter == 'm')) {
            Unit unit = Unit.parse(String.valueOf(letter));
            if (expected.isEmpty()) {
                String digits = number.hasTwoReadings() ? number.readAsDecimal() : typedNumber(number);
                return new Reading.Ambiguous(
                        asTyped,
                        letter == 'K'
                                ? List.of(
                                        Saying.of("reading.meaning.thousand", "number", digits),
                                        Saying.of("reading.meaning.kelvin", "number", digits))
                                : List.of(
                                        Saying.of("reading.meaning.thousandths", "number", digits),
                                        Saying.of("reading.meaning.metres", "number", digits)));
            }
            boolean isUnit = letter == 'K' ? expected.get().dimension().kelvin() != 0 : isLengthPower(expected.get());
            if (isUnit) {
                return reading(number, 0, Optional.of(unit), String.valueOf(letter));
            }
        }
        return reading(number, power, Optional.empty(), String.valueOf(letter));
    }

    private String typedNumber(TypedNumber number) {
        return new QuantityWriter(decimal)
                .plain(number.value(), Unit.ONE, Decimal.MOST_DIGITS)
                .number();
    }

    private Reading reading(TypedNumber number, int power, Optional<Unit> unit, String rest) {
        if (number.hasTwoReadings()) {
            String behind = rest.isEmpty() ? "" : " " + rest;
            return new Reading.Ambiguous(
                    asTyped,
                    List.of(meaning(number.readAsDecimal() + behind), meaning(number.readAsGrouped() + behind)));
        }
        return value(number.value(), power, unit, number.significantFigures());
    }

    private Reading value(double number, int power, Optional<Unit> unit, int figures) {
        double prefixFactor = PowerOfTen.scale(1, power);
        double scaled = Unit.scaled(number, prefixFactor);
        return new Reading.Value(asTyped, number, prefixFactor, unit, figures, scaled == Math.floor(scaled));
    }

    /** Whether a count, a place, a ratio or a share is asked for. */
    private boolean asksForNumber() {
        return expected.isPresent() && expected.get().dimension().equals(Dimension.ONE);
    }

    private boolean asksForTemperature() {
        return expected.isPresent() && expected.get().dimension().equals(Dimension.TEMPERATURE);
    }

    private static boolean isLengthPower(Unit unit) {
        Dimension d = unit.dimension();
        return d.metre() != 0 && d.kilogram() == 0 && d.ampere() == 0 && d.kelvin() == 0;
    }

    private Reading notAUnit(String rest) {
        char first = rest.charAt(0);
        if (first == '(' && rest.length() > 1 && !TypedText.isDigit(rest.charAt(1))) {
            return unreadable(Saying.of("reading.parentheses"));
        }
        if (first == '/'
                || first == '+'
                || first == '-'
                || first == '*'
                || first == '^'
                || first == '('
                || rest.indexOf('|') >= 0
                || rest.indexOf('∥') >= 0
                || first == '·'
                || first == '×') {
            return unreadable(
                    first == '/' && rest.length() > 1 && TypedText.isDigit(rest.charAt(1))
                            ? Saying.of("reading.fraction")
                            : Saying.of("reading.calculation"));
        }
        if (first == '±' || rest.indexOf('±') > 0) {
            return unreadable(Saying.of("reading.plus-minus"));
        }
        if (TypedText.isDigit(first) || hasSecondNumber(rest)) {
            return unreadable(Saying.of("reading.two-numbers"));
        }
        int wordEnd = rest.indexOf(' ') < 0 ? rest.length() : rest.indexOf(' ');
        if (NumberWords.changesTheNumber(rest.substring(0, wordEnd))) {
            return unreadable(NumberWords.inWords().said());
        }
        if (wordEnd < rest.length() && isUnit(rest.substring(0, wordEnd)) && !isUnit(rest.substring(wordEnd + 1))) {
            return unreadable(Saying.of("reading.behind-unit", "typed", shown(rest.substring(wordEnd + 1))));
        }
        if (asksForNumber()) {
            return unreadable(Saying.of("reading.behind-number", "typed", shown(rest)), hint());
        }
        return isOneWord(rest) ? unreadable(noUnit(rest), hint()) : unknownUnit(rest);
    }

    private boolean isUnit(String word) {
        return UnitReader.readOrNull(UnitWords.symbols(word, asksForTemperature())) != null;
    }

    private Reading unknownUnit(String rest) {
        return unreadable(Saying.of("reading.unknown-unit", "typed", shown(rest)), hint());
    }

    private static Saying noUnit(String word) {
        List<String> similar = UnitReader.similarTo(word);
        return switch (similar.size()) {
            case 0 -> Saying.of("reading.no-unit", "unit", word);
            case 1 -> Saying.of("reading.no-unit.similar", "unit", word, "similar", similar.get(0));
            default -> Saying.of("reading.no-unit.two", "unit", word, "one", similar.get(0), "other", similar.get(1));
        };
    }

    private Saying hint() {
        if (!asksForNumber()) {
            return Saying.of("reading.hint.unit");
        }
        return expected.get().symbol().equals("%") ? Saying.of("reading.hint.share") : Saying.of("reading.hint.number");
    }

    private static Saying meaning(String value) {
        return Saying.of("reading.meaning", "value", value);
    }

    private static boolean hasSecondNumber(String rest) {
        for (int i = 1; i < rest.length(); i++) {
            if (TypedText.isDigit(rest.charAt(i)) && (rest.charAt(i - 1) == ' ' || rest.charAt(i - 1) == ',')) {
                return true;
            }
        }
        return false;
    }

    private static boolean isOneWord(String rest) {
        for (int i = 0; i < rest.length(); i++) {
            if (!UnitReader.isLetter(rest.charAt(i))) {
                return false;
            }
        }
        return true;
    }

    private static String shown(String typed) {
        return typed.length() <= 20 ? "“" + typed + "”" : "“" + typed.substring(0, 20) + "…”";
    }

    private Reading unreadable(Saying... problem) {
        return new Reading.Unreadable(asTyped, List.of(problem));
    }
}
