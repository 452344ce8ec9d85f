package ampersheet.practice;

import java.util.ArrayList;
import java.util.List;

/** Lines, words and numbers of the texts that are kept. */
public final class Texts {
    private Texts() {}

    static List<String> parts(String text, char separator) {
        List<String> parts = new ArrayList<>();
        int from = 0;
        for (int i = 0; i <= text.length(); i++) {
            if (i == text.length() || text.charAt(i) == separator) {
                parts.add(text.substring(from, i));
                from = i + 1;
            }
        }
        return parts;
    }

    /** @throws UnfitText for what is no whole number */
    public static int whole(String text) {
        boolean negative = text.startsWith("-");
        int digits = negative ? 1 : 0;
        if (text.length() == digits || text.length() > digits + 9) {
            throw new UnfitText("practice.unfit.number", "word", text);
        }
        int value = 0;
        for (int i = digits; i < text.length(); i++) {
            int digit = text.charAt(i) - '0';
            if (digit < 0 || digit > 9) {
                throw new UnfitText("practice.unfit.number", "word", text);
            }
            value = value * 10 + digit;
        }
        return negative ? -value : value;
    }

    /** On one line, whatever was typed. */
    static String escaped(String text) {
        StringBuilder out = new StringBuilder();
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == '\\') {
                out.append("\\\\");
            } else if (c == '\n') {
                out.append("\\n");
            } else if (c == '\r') {
                out.append("\\r");
            } else {
                out.append(c);
            }
        }
        return out.toString();
    }

    /** What {@link #escaped} was given. */
    static String unescaped(String text) {
        StringBuilder out = new StringBuilder();
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == '\\' && i + 1 < text.length()) {
                i++;
                char next = text.charAt(i);
                out.append(next == 'n' ? '\n' : next == 'r' ? '\r' : next);
            } else {
                out.append(c);
            }
        }
        return out.toString();
    }
}
