package ampersheet.diagnostic;

import java.util.Locale;

/**
 * Text that somebody else wrote, fit to be shown. What a terminal would obey, what begins a line of its own and what
 * turns the direction of the text around it is spelled out, such as {@code [U+001B]}: nothing of it is lost, and
 * nothing of it acts. Marks that only say which way a single word runs stay: names need them.
 */
public final class Printable {
    private Printable() {}

    /** Without line ends, so that no text can pass for a line of the program's own. */
    public static String line(String text) {
        return spelled(text, false);
    }

    /** The same with its line feeds. */
    public static String lines(String text) {
        return spelled(text, true);
    }

    /** As {@link #line}, cut where it is longer than anybody reads. */
    static String line(String text, int most) {
        if (text.length() <= most) {
            return line(text);
        }
        int end = Character.isHighSurrogate(text.charAt(most - 1)) ? most - 1 : most;
        return line(text.substring(0, end)) + " … (" + text.length() + " characters)";
    }

    /** One character for each, so that columns keep their places. */
    static String columns(String text) {
        StringBuilder out = null;
        for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
            int c = text.codePointAt(i);
            if (acts(c)) {
                out = out == null ? new StringBuilder(text) : out;
                for (int j = 0; j < Character.charCount(c); j++) {
                    out.setCharAt(i + j, '\uFFFD');
                }
            }
        }
        return out == null ? text : out.toString();
    }

    private static String spelled(String text, boolean lineFeeds) {
        StringBuilder out = null;
        int plain = 0;
        for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
            int c = text.codePointAt(i);
            if (acts(c) && !(lineFeeds && c == '\n')) {
                out = out == null ? new StringBuilder() : out;
                out.append(text, plain, i).append("[U+").append(hexadecimal(c)).append(']');
                plain = i + Character.charCount(c);
            }
        }
        return out == null ? text : out.append(text, plain, text.length()).toString();
    }

    private static String hexadecimal(int c) {
        String digits = Integer.toHexString(c).toUpperCase(Locale.ROOT);
        return "0".repeat(Math.max(0, 4 - digits.length())) + digits;
    }

    /**
     * Whether a character does something other than stand there: controls but for the tab, line and paragraph
     * separators, embeddings, overrides and isolates of direction, marks of annotation, halves of a character, and the
     * tags that nobody sees.
     */
    public static boolean acts(int c) {
        return c < ' ' && c != '\t'
                || c >= 0x7F && c <= 0x9F
                || c == 0x61C
                || c >= 0x2028 && c <= 0x202E
                || c >= 0x2066 && c <= 0x2069
                || c >= 0xD800 && c <= 0xDFFF
                || c >= 0xFFF9 && c <= 0xFFFB
                || c >= 0xE0000 && c <= 0xE007F;
    }
}
