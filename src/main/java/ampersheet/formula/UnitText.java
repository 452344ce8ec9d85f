package ampersheet.formula;

import ampersheet.quantity.Unit;
import ampersheet.quantity.UnitFault;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Finds the unit that belongs to a number in a formula. */
final class UnitText {
    private UnitText() {}

    /** @param end index after the unit */
    record Found(Unit unit, int end) {}

    /**
     * The longest text from {@code start} that is a unit: a unit word, then without any blank {@code ^} and a whole
     * number, or {@code /} or {@code *} and another unit word, or {@code /} and a parenthesis of units. So {@code 50
     * K/W} carries a unit, {@code 50 K / W} is a division by W, and {@code 2 V*3} is a product.
     */
    static Optional<Found> longest(String text, int start) {
        List<Integer> ends = new ArrayList<>();
        int end = word(text, start);
        while (end > 0) {
            ends.add(end);
            end = longer(text, end);
        }
        for (int i = ends.size() - 1; i >= 0; i--) {
            String candidate = text.substring(start, ends.get(i));
            try {
                return Optional.of(new Found(Unit.parse(candidate), ends.get(i)));
            } catch (UnitFault notThisLong) {
                continue; // a shorter text may be a unit: in "9 V/R1" it is V
            }
        }
        return Optional.empty();
    }

    static boolean isUnit(String text) {
        return longest(text, 0).map(found -> found.end() == text.length()).orElse(false);
    }

    /** Whether a unit may start with it. */
    static boolean starts(char c) {
        return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || "%\u00b0\u03a9\u2126\u00b5\u03bc\u2103".indexOf(c) >= 0;
    }

    /** Index after the word of unit characters at {@code start}, or -1 if there is none. */
    static int word(String text, int start) {
        if (start >= text.length() || !starts(text.charAt(start))) {
            return -1;
        }
        int end = start + 1;
        while (end < text.length() && within(text.charAt(end))) {
            end++;
        }
        return end;
    }

    private static boolean within(char c) {
        return starts(c) || digit(c) || c == '_' || "⁰¹²³⁴⁵⁶⁷⁸⁹⁻".indexOf(c) >= 0;
    }

    private static boolean digit(char c) {
        return c >= '0' && c <= '9';
    }

    private static int longer(String text, int end) {
        if (end + 1 >= text.length()) {
            return -1;
        }
        char sign = text.charAt(end);
        if (sign == '^') {
            int digits = text.charAt(end + 1) == '-' ? end + 2 : end + 1;
            int after = digits;
            while (after < text.length() && digit(text.charAt(after))) {
                after++;
            }
            return after > digits ? after : -1;
        }
        if (sign == '/' && text.charAt(end + 1) == '(') {
            int close = end + 2;
            while (close < text.length() && (within(text.charAt(close)) || "*·^/-".indexOf(text.charAt(close)) >= 0)) {
                close++;
            }
            return close < text.length() && text.charAt(close) == ')' ? close + 1 : -1;
        }
        return sign == '/' || sign == '*' || sign == '·' ? word(text, end + 1) : -1;
    }
}
