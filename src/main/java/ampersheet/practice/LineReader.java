package ampersheet.practice;

import ampersheet.answer.ProblemKey;
import ampersheet.formula.TradeWords;
import ampersheet.formula.Values;
import ampersheet.language.Language;
import ampersheet.quantity.DecimalMarker;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Quantity;
import ampersheet.quantity.QuantityReader;
import ampersheet.quantity.Reading;
import ampersheet.quantity.Unit;
import ampersheet.quantity.UnitFault;

/**
 * Works a line of calculation as people type it: quantities as in an answer, names of givens, {@code + - * / ^} and the
 * signs that mean the same, parentheses, {@code sqrt}, {@code ||} and {@code parallel} for resistances side by side,
 * which bind closer than {@code *}. A unit behind a parenthesis or a power belongs to it.
 */
final class LineReader {
    private static final String SIGNS = "+-*/^×·÷:²³√|∥";
    private static final String OPERATORS = SIGNS + "();";

    private final String text;
    private final Values known;
    private final LineSentences sentences;
    private final Spoken spoken;
    private int at;
    private int nested;
    private boolean bareNumber;

    private LineReader(String text, Values known, Spoken spoken) {
        this.text = text;
        this.known = known;
        this.sentences = new LineSentences(spoken.language());
        this.spoken = spoken;
    }

    /** What does not fit, as sentences for the learner. */
    static final class Fault extends Exception {
        private static final long serialVersionUID = 1L;

        Fault(String sentences) {
            super(sentences);
        }
    }

    /** @param bareNumber whether a number without unit and prefix stands in it, other than the 2 of {@code 2 * R} */
    record Worked(Quantity quantity, boolean bareNumber) {}

    /** @param text folded */
    static Worked work(String text, Values known, Spoken spoken) throws Fault {
        LineReader reader = new LineReader(text, known, spoken);
        Quantity worked = reader.sum();
        if (reader.at < text.length()) {
            throw new Fault(
                    reader.peek() == ')'
                            ? reader.sentences.neverOpened()
                            : reader.sentences.lineStops(text.substring(reader.at)));
        }
        return new Worked(worked, reader.bareNumber);
    }

    /** Whether something is to be worked; words in parentheses are nothing of the kind. */
    static boolean hasOperator(String text) {
        for (int i = 0; i < text.length(); i++) {
            if (SIGNS.indexOf(text.charAt(i)) >= 0 && !(i == 0 && text.charAt(i) == '-')) {
                return true;
            }
        }
        return text.trim().startsWith("parallel(") || text.trim().startsWith("sqrt(");
    }

    /** Whether it may be the symbol before an equals sign. */
    static boolean isName(String text) {
        boolean name = !text.isEmpty() && isLetter(text.charAt(0));
        for (int i = 0; i < text.length(); i++) {
            name &= isLetter(text.charAt(i)) || isDigit(text.charAt(i)) || "_?,".indexOf(text.charAt(i)) >= 0;
        }
        return name;
    }

    /** How a calculation is written, and how it is spoken of. */
    record Spoken(Language language, DecimalMarker decimal) {
        static Spoken of(ProblemKey key) {
            return new Spoken(key.language(), key.decimal());
        }
    }

    private String units(Dimension dimension) {
        return spoken.language().say(TradeWords.plurals(dimension));
    }

    private Quantity sum() throws Fault {
        nested++;
        if (nested > 40) {
            throw new Fault(sentences.tooDeep());
        }
        Quantity sum = product();
        while (peek() == '+' || peek() == '-') {
            boolean plus = text.charAt(at++) == '+';
            Quantity next = product();
            if (!next.dimension().equals(sum.dimension())) {
                throw new Fault(sentences.notAlike(units(next.dimension()), plus, units(sum.dimension())));
            }
            sum = new Quantity(plus ? sum.value() + next.value() : sum.value() - next.value(), sum.dimension());
        }
        nested--;
        return sum;
    }

    private Quantity product() throws Fault {
        Quantity product = sideBySide();
        for (char sign = peek(); "*×·/÷:".indexOf(sign) >= 0; sign = peek()) {
            at++;
            Quantity next = sideBySide();
            boolean times = "*×·".indexOf(sign) >= 0;
            product = times
                    ? times(product, next)
                    : new Quantity(
                            product.value() / next.value(), product.dimension().over(next.dimension()));
        }
        return product;
    }

    private Quantity sideBySide() throws Fault {
        Quantity all = signed();
        while (peek() == '|' || peek() == '∥') {
            at += text.startsWith("||", at) ? 2 : 1;
            Quantity next = signed();
            if (!next.dimension().equals(all.dimension())) {
                throw new Fault(sentences.notSideBySide(units(all.dimension()), units(next.dimension())));
            }
            all = new Quantity(1 / (1 / all.value() + 1 / next.value()), all.dimension());
        }
        return all;
    }

    private static Quantity times(Quantity one, Quantity other) {
        return new Quantity(one.value() * other.value(), one.dimension().times(other.dimension()));
    }

    private Quantity signed() throws Fault {
        if (peek() == '-') {
            at++;
            Quantity of = signed();
            return new Quantity(-of.value(), of.dimension());
        }
        Quantity of = power();
        // Behind a parenthesis or a power.
        return isLetter(peek()) || peek() == 'Ω' || peek() == 'µ' || peek() == '°' ? times(of, operand()) : of;
    }

    private Quantity power() throws Fault {
        Quantity base = root();
        char sign = peek();
        if (sign != '^' && sign != '²' && sign != '³') {
            return base;
        }
        at++;
        int exponent = sign == '²' ? 2 : sign == '³' ? 3 : exponent();
        double value = 1;
        for (int i = 0; i < Math.abs(exponent); i++) {
            value *= base.value();
        }
        return new Quantity(exponent < 0 ? 1 / value : value, base.dimension().power(exponent));
    }

    private int exponent() throws Fault {
        boolean open = peek() == '(';
        at += open ? 1 : 0;
        boolean minus = peek() == '-';
        at += minus ? 1 : 0;
        int value = 0;
        int digits = 0;
        for (; at < text.length() && isDigit(text.charAt(at)) && digits < 2; at++, digits++) {
            value = value * 10 + text.charAt(at) - '0';
        }
        if (digits == 0 || open && peek() != ')' || at < text.length() && isDigit(text.charAt(at))) {
            throw new Fault(sentences.wholePowers());
        }
        at += open ? 1 : 0;
        return minus ? -value : value;
    }

    private Quantity root() throws Fault {
        boolean word = text.startsWith("sqrt", at);
        if (peek() != '√' && !word) {
            return peek() == '(' || text.startsWith("parallel", at) ? inParentheses() : operand();
        }
        at += word ? 4 : 1;
        Quantity of = peek() == '(' ? inParentheses() : operand();
        if (!of.dimension().isSquare()) {
            throw new Fault(sentences.noRoot(units(of.dimension())));
        }
        return new Quantity(Math.sqrt(of.value()), of.dimension().squareRoot());
    }

    /** A sum, or resistances side by side. */
    private Quantity inParentheses() throws Fault {
        boolean parallel = text.startsWith("parallel", at);
        at += parallel ? "parallel".length() : 0;
        if (peek() != '(') {
            throw new Fault(sentences.lineStops(text.substring(at)));
        }
        at++;
        Quantity of = sum();
        double conductance = 1 / of.value();
        while (parallel && (peek() == ';' || peek() == ',')) {
            at++;
            conductance += 1 / sum().value();
        }
        if (peek() != ')') {
            throw new Fault(sentences.notClosed());
        }
        at++;
        return parallel ? new Quantity(1 / conductance, of.dimension()) : of;
    }

    private Quantity operand() throws Fault {
        peek();
        int start = at;
        while (at < text.length() && !ends(start)) {
            at++;
        }
        String operand = text.substring(start, at).trim();
        if (operand.isEmpty()) {
            throw new Fault(sentences.missingQuantity());
        }
        String named = named(operand);
        if (!named.isEmpty()) {
            return known.quantity(named);
        }
        if (!isDigit(operand.charAt(0)) && operand.charAt(0) != '.') {
            return operand.equals("pi") || operand.equals("π") ? new Quantity(Math.PI, Dimension.ONE) : unit(operand);
        }
        Reading reading = QuantityReader.read(operand, spoken.decimal());
        if (!(reading instanceof Reading.Value value)) {
            throw new Fault(sentences.notInLine(
                    operand,
                    reading instanceof Reading.Unreadable unreadable
                            ? unreadable.problem(spoken.language())
                            : sentences.twoReadings(spoken.decimal())));
        }
        // A prefix alone, or a code such as 4k7, stands for ohms on a bench.
        Unit alone = value.hasPrefix() ? Unit.parse("ohm") : Unit.ONE;
        Unit unit = value.unit().orElse(alone);
        boolean smallWhole = value.wholeNumber() && operand.length() <= 2;
        bareNumber |= value.unit().isEmpty() && !value.hasPrefix() && !smallWhole;
        return new Quantity(value.si(unit), unit.dimension());
    }

    /** The given that is meant: by its name, as its symbol is typed, or with U for a voltage; empty if none is. */
    private String named(String operand) {
        String plain = "";
        for (int i = 0; i < operand.length(); i++) {
            plain += operand.charAt(i) == '_' ? "" : String.valueOf(operand.charAt(i));
        }
        String voltage = plain.startsWith("U") ? "V" + plain.substring(1) : plain;
        return known.has(operand) ? operand : known.has(plain) ? plain : known.has(voltage) ? voltage : "";
    }

    private Quantity unit(String word) throws Fault {
        try {
            Unit unit = Unit.parse(word);
            return new Quantity(unit.factor(), unit.dimension());
        } catch (UnitFault none) {
            throw new Fault(sentences.notGiven(word));
        }
    }

    /** Whether an operand ends here. The slash within a unit, and the sign of an exponent, belong to it. */
    private boolean ends(int start) {
        char c = text.charAt(at);
        if (c == '/'
                && at > start + 1
                && at + 1 < text.length()
                && isDigit(text.charAt(start))
                && isLetter(text.charAt(at - 1))
                && isLetter(text.charAt(at + 1))) {
            int end = at + 1;
            while (end < text.length() && isLetter(text.charAt(end))) {
                end++;
            }
            return !(QuantityReader.read(text.substring(start, end)) instanceof Reading.Value);
        }
        boolean exponent = (c == '-' || c == '+')
                && at > start + 1
                && (text.charAt(at - 1) == 'e' || text.charAt(at - 1) == 'E')
                && isDigit(text.charAt(at - 2))
                && at + 1 < text.length()
                && isDigit(text.charAt(at + 1));
        boolean decimal = c == ','
                && at + 1 < text.length()
                && isDigit(text.charAt(at + 1))
                && at > start
                && isDigit(text.charAt(at - 1));
        boolean times = c == 'x' && at > start && text.charAt(at - 1) == ' ' && text.startsWith(" ", at + 1);
        return !exponent && !decimal && (times || c == ',' || OPERATORS.indexOf(c) >= 0);
    }

    /**
     * The next character that is no blank, at which it then stands; 0 at the end. An x between blanks is a times sign.
     */
    private char peek() {
        while (at < text.length() && text.charAt(at) == ' ') {
            at++;
        }
        char c = at < text.length() ? text.charAt(at) : 0;
        return c == 'x' && at + 1 < text.length() && text.charAt(at + 1) == ' ' ? '×' : c;
    }

    private static boolean isLetter(char c) {
        return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z';
    }

    private static boolean isDigit(char c) {
        return c >= '0' && c <= '9';
    }
}
