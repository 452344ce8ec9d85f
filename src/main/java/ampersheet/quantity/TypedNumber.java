package ampersheet.quantity;

import ampersheet.language.Saying;

/**
 * The number at the start of a folded text. Point and comma are both decimal markers; groups of three are set apart by
 * a space, an apostrophe or by whichever of point and comma is not the marker.
 *
 * <p>On a sheet with decimal points {@code 4,700} can be read in two ways and is told so; {@code 4.700} is not, for
 * there a single point is a decimal marker. On one with decimal commas it is the other way round. {@code 1,234,567} and
 * {@code 1.234.567} can only be groups, for no number has two markers.
 */
final class TypedNumber {
    /** The smallest and largest powers of ten an answer on a bench can have, with room to spare. */
    private static final int LARGEST_EXPONENT = 30;

    private static final int MOST_DIGITS = 30;

    private final String text;
    private final DecimalMarker decimal;
    private int at;
    private boolean negative;
    private final StringBuilder digits = new StringBuilder();
    private int decimals;
    private boolean marked;
    private int exponent;
    private boolean twoReadings;

    private TypedNumber(String text, DecimalMarker decimal) {
        this.text = text;
        this.decimal = decimal;
    }

    /** What could not be read; its message is the key of a sentence for the learner. */
    static final class Fault extends Exception {
        private static final long serialVersionUID = 1L;

        Fault(String key) {
            super(key);
        }

        Saying said() {
            return Saying.of(getMessage());
        }
    }

    static TypedNumber read(String text, DecimalMarker decimal) throws Fault {
        TypedNumber number = new TypedNumber(text, decimal);
        number.sign();
        number.mantissa();
        number.power();
        return number;
    }

    /** A letter code such as 4k7 gives its digits here: {@code whole} before the letter, {@code fraction} after it. */
    static double ofDigits(String whole, String fraction) {
        return value(whole + fraction, -fraction.length());
    }

    double value() {
        double magnitude = value(digits.toString(), exponent - decimals);
        return negative ? -magnitude : magnitude;
    }

    /** Index of the first character after the number. */
    int end() {
        return at;
    }

    boolean hasTwoReadings() {
        return twoReadings;
    }

    /** For {@link #hasTwoReadings}: its mark as a decimal marker, written with that of the sheet. */
    String readAsDecimal() {
        return shown(
                digits.substring(0, digits.length() - 3) + decimal.character() + digits.substring(digits.length() - 3));
    }

    /** For {@link #hasTwoReadings}: its mark as one between thousands, left out. */
    String readAsGrouped() {
        return shown(digits.toString());
    }

    /** Digits only, so that an ordinal's ending may follow. */
    boolean isWholeAsWritten() {
        return !marked && decimals == 0 && exponent == 0 && !negative;
    }

    /** Leading zeros never count, trailing ones only after a decimal marker. */
    int significantFigures() {
        return significantFigures(digits.toString(), marked);
    }

    static int significantFigures(String digits, boolean marked) {
        int from = 0;
        int to = digits.length();
        while (from < to && digits.charAt(from) == '0') {
            from++;
        }
        while (!marked && to > from && digits.charAt(to - 1) == '0') {
            to--;
        }
        return Math.max(1, to - from);
    }

    private String shown(String magnitude) {
        String power = exponent == 0 ? "" : "×10^" + exponent;
        return (negative ? String.valueOf(QuantityWriter.MINUS) : "") + magnitude + power;
    }

    private static double value(String digits, int power) {
        double accumulated = 0;
        int taken = 0;
        int exponent = power;
        for (int i = 0; i < digits.length(); i++) {
            if (taken < Decimal.MOST_DIGITS) {
                accumulated = accumulated * 10 + (digits.charAt(i) - '0');
                taken += accumulated > 0 ? 1 : 0;
            } else {
                exponent++;
            }
        }
        return PowerOfTen.scale(accumulated, exponent);
    }

    private void sign() {
        if (peek(0) == '-' || peek(0) == '+') {
            negative = peek(0) == '-';
            at++;
            skipBlank();
        }
    }

    private void mantissa() throws Fault {
        int start = at;
        while (isDigit(0)
                || isMark(peek(0)) && (isDigit(1) || at > start && isDigit(-1))
                || isGroupSpace(peek(0)) && at > start && isDigit(-1) && groupFollows()) {
            at++;
        }
        String written = text.substring(start, at);
        if (!written.isEmpty() && isMark(written.charAt(written.length() - 1))) {
            marked = written.charAt(written.length() - 1) == '.';
            written = written.substring(0, written.length() - 1);
        }
        if (written.isEmpty()) {
            throw new Fault("reading.no-number");
        }
        take(written);
        if (digits.length() > MOST_DIGITS) {
            throw new Fault("reading.too-many-digits");
        }
    }

    private void take(String written) throws Fault {
        int points = count(written, '.');
        int commas = count(written, ',');
        int lastMark = Math.max(written.lastIndexOf('.'), written.lastIndexOf(','));
        boolean spaced = count(written, ' ') + count(written, '\'') > 0;
        int marker = -1;
        if (points > 0 && commas > 0) {
            marker = lastMark;
            if (count(written, written.charAt(lastMark)) > 1) {
                throw new Fault("reading.mixed-marks");
            }
        } else if (points + commas == 1) {
            marker = lastMark;
        }
        String whole = marker < 0 ? written : written.substring(0, marker);
        String fraction = marker < 0 ? "" : written.substring(marker + 1);
        String wholeDigits = ungrouped(whole, 1);
        String fractionDigits = ungrouped(fraction, 3);
        if (wholeDigits.length() < whole.length() && wholeDigits.charAt(0) == '0') {
            throw badGroups();
        }
        decimals = fractionDigits.length();
        marked |= marker >= 0;
        digits.append(wholeDigits).append(fractionDigits);
        boolean point = decimal == DecimalMarker.POINT;
        twoReadings = commas == (point ? 1 : 0)
                && points == (point ? 0 : 1)
                && !spaced
                && decimals == 3
                && !wholeDigits.isEmpty()
                && wholeDigits.length() <= 3
                && wholeDigits.charAt(0) != '0';
    }

    /** Digits without their group marks, which must all be alike and stand before every third digit from the marker. */
    private static String ungrouped(String part, int shortestFirst) throws Fault {
        StringBuilder out = new StringBuilder();
        int sinceMark = 0;
        char mark = 0;
        for (int i = 0; i < part.length(); i++) {
            char c = part.charAt(i);
            if (TypedText.isDigit(c)) {
                out.append(c);
                sinceMark++;
                continue;
            }
            boolean firstGroup = mark == 0 && sinceMark >= shortestFirst && sinceMark <= 3;
            if (!firstGroup && !(mark == c && sinceMark == 3)) {
                throw badGroups();
            }
            mark = c;
            sinceMark = 0;
        }
        if (mark != 0 && sinceMark != 3 && !(mark == ' ' && sinceMark > 0)) {
            throw badGroups();
        }
        return out.toString();
    }

    private static Fault badGroups() {
        return new Fault("reading.groups");
    }

    private void power() throws Fault {
        int start = at;
        boolean ten =
                digits.length() == 2 && digits.charAt(0) == '1' && digits.charAt(1) == '0' && decimals == 0 && !marked;
        if (ten && (isPowerMark() || superscript(peek(0)) != NOT_SUPERSCRIPT)) {
            digits.setLength(1);
            exponent = exponentOfTen();
            return;
        }
        skipBlank();
        if ((peek(0) == 'e' || peek(0) == 'E') && (isDigit(1) || isSign(peek(1)) && isDigit(2))) {
            at++;
            exponent = signedDigits();
            return;
        }
        if (isTimes(peek(0))) {
            at++;
            skipBlank();
            if (peek(0) == '1' && peek(1) == '0' && !isDigit(2)) {
                at += 2;
                if (isPowerMark() || superscript(peek(0)) != NOT_SUPERSCRIPT) {
                    exponent = exponentOfTen();
                    return;
                }
            }
            throw new Fault("reading.times");
        }
        at = start;
    }

    private boolean isPowerMark() {
        return peek(0) == '^' || peek(0) == '*' && peek(1) == '*';
    }

    private int exponentOfTen() throws Fault {
        if (superscript(peek(0)) != NOT_SUPERSCRIPT) {
            return superscriptDigits();
        }
        at += peek(0) == '^' ? 1 : 2;
        skipBlank();
        boolean open = peek(0) == '(';
        at += open ? 1 : 0;
        int exponent = signedDigits();
        if (open) {
            if (peek(0) != ')') {
                throw new Fault("reading.exponent-open");
            }
            at++;
        }
        return exponent;
    }

    private int signedDigits() throws Fault {
        boolean minus = peek(0) == '-';
        at += isSign(peek(0)) ? 1 : 0;
        if (!isDigit(0)) {
            throw new Fault("reading.exponent-missing");
        }
        int exponent = 0;
        while (isDigit(0)) {
            exponent = Math.min(1000, exponent * 10 + peek(0) - '0');
            at++;
        }
        return checked(minus ? -exponent : exponent);
    }

    private static final int NOT_SUPERSCRIPT = -2;
    private static final int SUPERSCRIPT_MINUS = -1;

    private int superscriptDigits() throws Fault {
        boolean minus = superscript(peek(0)) == SUPERSCRIPT_MINUS;
        at += minus ? 1 : 0;
        if (superscript(peek(0)) < 0) {
            throw new Fault("reading.exponent-missing");
        }
        int exponent = 0;
        while (superscript(peek(0)) >= 0) {
            exponent = Math.min(1000, exponent * 10 + superscript(peek(0)));
            at++;
        }
        return checked(minus ? -exponent : exponent);
    }

    private static int checked(int exponent) throws Fault {
        if (exponent > LARGEST_EXPONENT || exponent < -LARGEST_EXPONENT) {
            throw new Fault("reading.exponent-large");
        }
        return exponent;
    }

    private static int superscript(char c) {
        return switch (c) {
            case '⁻' -> SUPERSCRIPT_MINUS;
            case '⁰' -> 0;
            case '¹' -> 1;
            case '²' -> 2;
            case '³' -> 3;
            case '⁴' -> 4;
            case '⁵' -> 5;
            case '⁶' -> 6;
            case '⁷' -> 7;
            case '⁸' -> 8;
            case '⁹' -> 9;
            default -> NOT_SUPERSCRIPT;
        };
    }

    private boolean groupFollows() {
        if (peek(0) == '\'') {
            return isDigit(1);
        }
        int run = 0;
        while (isDigit(1 + run)) {
            run++;
        }
        return run == 3 || run > 0 && run < 3 && peek(1 + run) != '/' && afterMarker();
    }

    /** Whether a decimal marker was passed: behind it, a last group may be shorter, unless it is the 1 of 1/K. */
    private boolean afterMarker() {
        for (int i = at - 1;
                i >= 0 && (TypedText.isDigit(text.charAt(i)) || text.charAt(i) == ' ' || isMark(text.charAt(i)));
                i--) {
            if (isMark(text.charAt(i))) {
                return at - i == 4 || peek(-4) == ' ';
            }
        }
        return false;
    }

    private static int count(String text, char c) {
        int found = 0;
        for (int i = 0; i < text.length(); i++) {
            found += text.charAt(i) == c ? 1 : 0;
        }
        return found;
    }

    private char peek(int ahead) {
        int index = at + ahead;
        return index >= 0 && index < text.length() ? text.charAt(index) : 0;
    }

    private boolean isDigit(int ahead) {
        return TypedText.isDigit(peek(ahead));
    }

    private static boolean isMark(char c) {
        return c == '.' || c == ',';
    }

    private static boolean isGroupSpace(char c) {
        return c == ' ' || c == '\'';
    }

    private static boolean isSign(char c) {
        return c == '-' || c == '+';
    }

    private static boolean isTimes(char c) {
        return c == 'x' || c == 'X' || c == '×' || c == '*' || c == '·';
    }

    private void skipBlank() {
        if (peek(0) == ' ') {
            at++;
        }
    }
}
