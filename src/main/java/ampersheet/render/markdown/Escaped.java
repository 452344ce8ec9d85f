package ampersheet.render.markdown;

import ampersheet.render.Wording;

/**
 * Plain text as Markdown that shows exactly that text, with no more backslashes than it needs: {@code V_s = 4.7 kΩ}
 * stays as it is, {@code <script>} and {@code [x](y)} do not.
 */
final class Escaped {
    private Escaped() {}

    /** In the middle of a line. */
    static String text(String plain) {
        String line = Wording.oneLine(plain).strip();
        StringBuilder escaped = new StringBuilder(line.length() + 8);
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            if (meansSomething(line, i)) {
                escaped.append('\\');
            }
            escaped.append(c);
        }
        return escaped.toString();
    }

    /** In a cell of a table, where a bar would end it. */
    static String cell(String plain) {
        return text(plain).replace("|", "\\|");
    }

    /** At the start of a line, where {@code 1. }, {@code - }, {@code #} and {@code >} begin something. */
    static String start(String plain) {
        String line = text(plain);
        int digits = 0;
        while (digits < line.length() && line.charAt(digits) >= '0' && line.charAt(digits) <= '9') {
            digits++;
        }
        if (digits == line.length()) {
            return line;
        }
        char mark = line.charAt(digits);
        boolean blankAfter = digits + 1 == line.length() || Character.isWhitespace(line.charAt(digits + 1));
        boolean numbered = digits > 0 && (mark == '.' || mark == ')') && blankAfter;
        boolean begins = digits == 0
                && (mark == '#'
                        || mark == '>'
                        || (mark == '-' || mark == '+') && (blankAfter || line.charAt(1) == mark));
        return numbered || begins ? line.substring(0, digits) + "\\" + line.substring(digits) : line;
    }

    static String bold(String plain) {
        String text = text(plain);
        return text.isEmpty() ? "" : "**" + text + "**";
    }

    private static boolean meansSomething(String line, int i) {
        return switch (line.charAt(i)) {
            case '\\', '`', '*', '[', ']', '<', '~' -> true;
            case '#' -> i == line.length() - 1; // at the end of a heading it would be dropped
            case '_' -> !insideWord(line, i);
            case '&' -> i + 1 < line.length() && (line.charAt(i + 1) == '#' || Character.isLetter(line.charAt(i + 1)));
            default -> false;
        };
    }

    /** Between letters or digits an underscore never starts or ends emphasis. */
    private static boolean insideWord(String line, int i) {
        return i > 0
                && i + 1 < line.length()
                && Character.isLetterOrDigit(line.charAt(i - 1))
                && Character.isLetterOrDigit(line.charAt(i + 1));
    }
}
