package ampersheet.render;

/**
 * The prose that most pages consist of: paragraphs of words with some of them emphasised. It is written at once,
 * without a tree of nodes, for a class has hundreds of thousands of such lines; whatever else may mean something in
 * Markdown is left to its parser.
 */
final class PlainProse {
    /** What may stand in a plain paragraph besides letters, digits, blanks, {@code *} and escapes. */
    private static final String HARMLESS = ".,;:()/'\"%=+-?";

    private static final char NO_BREAK_SPACE = '\u00A0';
    private static final int STRONG = 2;

    private final String prose;
    private final Markup markup = new Markup();
    private final StringBuilder text = new StringBuilder();
    /** Number of marks that opened the emphasis at hand; 0 outside. */
    private int open;

    private PlainProse(String prose) {
        this.prose = prose;
    }

    /** Whether it is such prose; if not, nothing is written. */
    static boolean write(String prose, Markup to) {
        PlainProse plain = new PlainProse(Wording.lines(prose));
        boolean done = plain.paragraphs();
        if (done) {
            to.trusted(plain.markup.toString());
        }
        return done;
    }

    private boolean paragraphs() {
        int from = 0;
        while (from <= prose.length()) {
            int end = prose.indexOf("\n\n", from);
            int to = end < 0 ? prose.length() : end;
            markup.open("p");
            if (!paragraph(from, to)) {
                return false;
            }
            markup.close("p").newline();
            from = end < 0 ? prose.length() + 1 : end + 2;
        }
        return true;
    }

    /** One line that begins with a letter or an emphasis: so it is no list, heading, table or code. */
    private boolean paragraph(int from, int to) {
        if (from == to || !begins(from, to) || isBlank(prose.charAt(to - 1)) || prose.charAt(to - 1) == '\\') {
            return false;
        }
        for (int i = from; i < to; i++) {
            char c = prose.charAt(i);
            if (c == '*') {
                int marks = i + 1 < to && prose.charAt(i + 1) == '*' ? STRONG : 1;
                if (!emphasis(i, marks, from, to)) {
                    return false;
                }
                i += marks - 1;
            } else if (c == '\\') {
                i++;
                if (!isPunctuation(prose.charAt(i))) {
                    return false;
                }
                text.append(prose.charAt(i));
            } else if (isWord(c) || c == ' ' || HARMLESS.indexOf(c) >= 0 || c >= NO_BREAK_SPACE && !isLineEnd(c)) {
                text.append(c);
            } else {
                return false;
            }
        }
        flush();
        return open == 0;
    }

    private boolean begins(int from, int to) {
        char first = prose.charAt(from);
        return Character.isLetter(first) && isWord(first)
                || first == '*' && from + 1 < to && prose.charAt(from + 1) != ' ';
    }

    /** Only where it is beyond doubt what the marks mean: blank or bracket outside, a word inside. */
    private boolean emphasis(int at, int marks, int from, int to) {
        char before = at == from ? ' ' : prose.charAt(at - 1);
        char behind = at + marks >= to ? ' ' : prose.charAt(at + marks);
        boolean escaped = at - 1 > from && prose.charAt(at - 2) == '\\';
        if (open == 0 && (before == ' ' || before == '(') && isWord(behind)) {
            flush();
            open = marks;
            markup.open(marks == STRONG ? "strong" : "em");
            return true;
        }
        boolean closes = open == marks
                && (isWord(before) || before == '.' || before == ':' || escaped && isPunctuation(before))
                && " .,:;?)".indexOf(behind) >= 0;
        // Behind punctuation a mark closes only before a blank or punctuation, which is all that is let through.
        if (closes) {
            flush();
            open = 0;
            markup.close(marks == STRONG ? "strong" : "em");
        }
        return closes;
    }

    private void flush() {
        markup.text(Wording.bound(text.toString()));
        text.setLength(0);
    }

    private static boolean isBlank(char c) {
        return Character.isWhitespace(c) || Character.isSpaceChar(c);
    }

    private static boolean isLineEnd(char c) {
        return c == '\u2028' || c == '\u2029';
    }

    /** Letters and digits. */
    private static boolean isWord(char c) {
        return c < 0x80
                ? c >= '0' && c <= '9' || c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z'
                : Character.isLetterOrDigit(c);
    }

    private static boolean isPunctuation(char c) {
        return c > ' ' && c < 0x7F && !(c >= '0' && c <= '9' || c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z');
    }
}
