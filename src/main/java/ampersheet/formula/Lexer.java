package ampersheet.formula;

import ampersheet.quantity.Dimension;
import ampersheet.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Cuts the text of a formula into tokens; a number and its unit are one token. */
final class Lexer {
    static final Set<String> KEYWORDS = Set.of("and", "or", "not");
    static final Unit NO_UNIT = new Unit("", Dimension.ONE, 1, 0, "", false);

    private static final double[] POWERS_OF_TEN = {
        1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19,
        1e20, 1e21, 1e22
    };
    private static final int MOST_DIGITS = 15;
    private static final String[] SIGNS = {"<=", ">=", "==", "!=", "+", "-", "*", "/", "^", "(", ")", ",", "<", ">"};

    /** Signs that authors paste or know from elsewhere, and what is written here instead. Longer ones first. */
    private static final String[][] FOREIGN = {
        {"&&", "and"},
        {"||", "or"},
        {"=<", "<="},
        {"=>", ">="},
        {"<>", "!="},
        {"=", "=="},
        {"!", "not"},
        {"\u2212", "-"},
        {"\u2013", "-"},
        {"\u00d7", "*"},
        {"\u00b7", "*"},
        {"\u22c5", "*"},
        {"\u00f7", "/"},
        {"\u2264", "<="},
        {"\u2265", ">="},
        {"\u2260", "!="},
        {"\u00b2", "^2"},
        {"\u00b3", "^3"},
        {"\u221a", "sqrt( )"},
        {"\u2225", "parallel( , )"},
        {"[", "("},
        {"]", ")"},
        {"{", "("},
        {"}", ")"},
        {"%", "mod(a, b)"},
        {"'", "\""},
        {";", ","},
        {"\u03c0", "pi"},
    };

    private final String text;
    private int at;

    private Lexer(String text) {
        this.text = text;
    }

    static List<Token> tokens(String text) {
        return new Lexer(text).all();
    }

    private List<Token> all() {
        List<Token> tokens = new ArrayList<>();
        skipBlanks();
        while (at < text.length()) {
            tokens.add(next());
            skipBlanks();
        }
        tokens.add(Token.of(Token.Kind.END, "", text.length()));
        return tokens;
    }

    private Token next() {
        int start = at;
        char c = text.charAt(at);
        if (digit(c)) {
            return number();
        }
        if (letter(c)) {
            while (at < text.length()
                    && (letter(text.charAt(at)) || digit(text.charAt(at)) || text.charAt(at) == '_')) {
                at++;
            }
            return Token.of(Token.Kind.NAME, text.substring(start, at), start);
        }
        if (c == '"') {
            return quoted();
        }
        for (String sign : SIGNS) {
            if (text.startsWith(sign, at)
                    && !text.startsWith("**", at)
                    && !text.startsWith("=<", at)
                    && !text.startsWith("<>", at)) {
                at += sign.length();
                return Token.of(Token.Kind.SIGN, sign, start);
            }
        }
        throw foreign();
    }

    private Token quoted() {
        int start = at;
        int close = text.indexOf('"', start + 1);
        if (close < 0) {
            throw new FormulaFault(
                    start,
                    "the quoted word has no end",
                    "a second double quote",
                    "Close the word with a double quote, as in start == \"top left\".");
        }
        at = close + 1;
        return Token.of(Token.Kind.QUOTED, text.substring(start + 1, close), start);
    }

    private FormulaFault foreign() {
        if (text.startsWith("**", at)) {
            return new FormulaFault(at, "** is not an operator", "^ for a power", "Write ^ instead.");
        }
        if (text.charAt(at) == '.') {
            return new FormulaFault(
                    at,
                    "a number starts with a decimal point",
                    "a digit before the point",
                    "Write a zero before the point: 0.5.");
        }
        for (String[] pair : FOREIGN) {
            if (text.startsWith(pair[0], at)) {
                return new FormulaFault(
                        at, pair[0] + " does not belong in a formula", pair[1], "Write " + pair[1] + " instead.");
            }
        }
        int character = text.codePointAt(at);
        boolean shown = character >= ' '
                && character != 0x7f
                && !(character >= 0x80 && character < 0xa0)
                && !(character >= 0xd800 && character < 0xe000)
                && !(character >= 0x200b && character <= 0x206f)
                && character != 0xfeff;
        return new FormulaFault(
                at,
                (shown
                                ? new StringBuilder().appendCodePoint(character).toString()
                                : "the character U+" + Integer.toHexString(character))
                        + " does not belong in a formula",
                "a number, a name, an operator or a parenthesis",
                "Write names with the letters a to z, Greek ones as words (theta), operators as + - * / ^.");
    }

    private Token number() {
        int start = at;
        double mantissa = 0;
        int significant = 0;
        int scale = 0;
        boolean point = false;
        while (at < text.length() && (digit(text.charAt(at)) || text.charAt(at) == '.' && !point)) {
            char c = text.charAt(at);
            if (c == '.') {
                point = true;
                if (at + 1 == text.length() || !digit(text.charAt(at + 1))) {
                    throw new FormulaFault(
                            at,
                            "the decimal point has no digit after it",
                            "a digit after the point",
                            "Write " + text.substring(start, at) + " or " + text.substring(start, at) + ".0.");
                }
            } else {
                if (c != '0' || significant > 0) {
                    significant++;
                    if (significant > MOST_DIGITS) {
                        throw new FormulaFault(
                                start,
                                "the number has more than " + MOST_DIGITS + " digits",
                                "at most " + MOST_DIGITS + " digits that carry meaning",
                                "Round it, or write large ones as 1.5e20.");
                    }
                }
                mantissa = mantissa * 10 + (c - '0');
                scale -= point ? 1 : 0;
            }
            at++;
        }
        if (at < text.length() && text.charAt(at) == '.') {
            throw new FormulaFault(
                    at,
                    "the number has two decimal points",
                    "one decimal point",
                    "Leave one of them out; digits are written without groups.");
        }
        scale += exponent();
        String written = text.substring(start, at);
        double number = scaled(mantissa, scale);
        if (mantissa != 0 && (number == 0 || number == Double.POSITIVE_INFINITY)) {
            throw new FormulaFault(
                    start,
                    "the number " + written + " is out of range",
                    "a number between 1e-300 and 1e300",
                    "Check its exponent.");
        }
        Unit unit = unit(written);
        return new Token(Token.Kind.NUMBER, written, number, unit, start);
    }

    /** Reads {@code e-3}; an e without digits after it may start a unit. */
    private int exponent() {
        if (at >= text.length() || text.charAt(at) != 'e' && text.charAt(at) != 'E') {
            return 0;
        }
        int digits = at + 1;
        boolean negative = false;
        if (digits < text.length() && (text.charAt(digits) == '-' || text.charAt(digits) == '+')) {
            negative = text.charAt(digits) == '-';
            digits++;
        }
        int end = digits;
        int exponent = 0;
        while (end < text.length() && digit(text.charAt(end))) {
            exponent = Math.min(9999, exponent * 10 + (text.charAt(end) - '0'));
            end++;
        }
        if (end == digits) {
            return 0;
        }
        at = end;
        return negative ? -exponent : exponent;
    }

    /**
     * One multiplication or division by an exact power of ten rounds right for up to 15 digits and exponents to 22;
     * beyond that the last bit may differ from the nearest double, but it is the same on every machine.
     */
    private static double scaled(double mantissa, int exponent) {
        double number = mantissa;
        int left = Math.abs(exponent);
        while (left > 0 && number != 0 && number != Double.POSITIVE_INFINITY) {
            int step = Math.min(left, POWERS_OF_TEN.length - 1);
            number = exponent < 0 ? number / POWERS_OF_TEN[step] : number * POWERS_OF_TEN[step];
            left -= step;
        }
        return number;
    }

    private Unit unit(String number) {
        int afterNumber = at;
        skipBlanks();
        int start = at;
        int end = UnitText.word(text, start);
        if (end < 0 || KEYWORDS.contains(text.substring(start, end))) {
            at = afterNumber;
            return NO_UNIT;
        }
        Optional<UnitText.Found> found = UnitText.longest(text, start);
        if (found.isEmpty()) {
            String word = text.substring(start, end);
            throw new FormulaFault(
                    start,
                    word + " after the number " + number + " is not a unit",
                    "a unit such as V, mA, kohm, us, K/W or degC, or an operator",
                    "For a product write * between them: " + number + " * " + word + ".");
        }
        at = found.get().end();
        return found.get().unit();
    }

    private void skipBlanks() {
        while (at < text.length() && " \t\n\r\u00a0\u2009\u202f".indexOf(text.charAt(at)) >= 0) {
            at++;
        }
    }

    static boolean letter(char c) {
        return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z';
    }

    static boolean digit(char c) {
        return c >= '0' && c <= '9';
    }
}
