package ampersheet.render;

/**
 * Writes markup that is both HTML and XML: every element closed, every attribute quoted, every text escaped. Attributes
 * are given as name and value by turns.
 */
public final class Markup {
    private static final int LINE = 100;

    private final int line;
    private int lineBegan;
    private final StringBuilder out = new StringBuilder();

    public Markup() {
        this(0);
    }

    private Markup(int line) {
        this.line = line;
    }

    /** For pages that are sent: each break of a line is a byte more. */
    public static Markup inLongLines() {
        return new Markup(LINE);
    }

    public Markup open(String element, String... attributes) {
        tag(element, attributes);
        out.append('>');
        return this;
    }

    public Markup close(String element) {
        out.append("</").append(element).append('>');
        return this;
    }

    /** An element that HTML never closes, such as {@code meta}. */
    public Markup single(String element, String... attributes) {
        tag(element, attributes);
        out.append("/>");
        return this;
    }

    /** An element with nothing but text in it. */
    public Markup element(String element, String text, String... attributes) {
        return open(element, attributes).text(text).close(element);
    }

    public Markup text(String text) {
        escape(Wording.lines(text));
        return this;
    }

    /** Text in which a line break is only a space. */
    public Markup line(String text) {
        escape(Wording.oneLine(text));
        return this;
    }

    /** Markup from our own rooms: figures, formulas, the style sheet. */
    public Markup trusted(String markup) {
        out.append(markup);
        return this;
    }

    /** Between elements where white space is nothing: the line ends there, once it is long enough. */
    public Markup newline() {
        if (out.length() - lineBegan >= line) {
            out.append('\n');
            lineBegan = out.length();
        }
        return this;
    }

    private void tag(String element, String... attributes) {
        out.append('<').append(element);
        for (int i = 0; i < attributes.length; i += 2) {
            out.append(' ').append(attributes[i]).append("=\"");
            escape(Wording.oneLine(attributes[i + 1]));
            out.append('"');
        }
    }

    private void escape(String text) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            switch (c) {
                case '&' -> out.append("&amp;");
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '"' -> out.append("&quot;");
                default -> out.append(c);
            }
        }
    }

    @Override
    public String toString() {
        return out.toString();
    }
}
