package ampersheet.template;

import freemarker.core.CommonMarkupOutputFormat;
import freemarker.core.CommonTemplateMarkupOutputModel;
import java.io.IOException;
import java.io.Writer;

/**
 * Escapes printed values for Markdown: a backslash before ASCII punctuation makes it stand for itself (CommonMark 0.31,
 * section 2.4). A percent sign, a comma, an apostrophe, and a point, hyphen or solidus within a word never mean
 * anything, and are left alone so that the Markdown stays readable; line breaks become blanks, so that a value cannot
 * begin a block.
 */
final class MarkdownFormat extends CommonMarkupOutputFormat<MarkdownFormat.Escaped> {
    static final MarkdownFormat INSTANCE = new MarkdownFormat();

    private MarkdownFormat() {}

    static final class Escaped extends CommonTemplateMarkupOutputModel<Escaped> {
        private Escaped(String plainText, String markup) {
            super(plainText, markup);
        }

        @Override
        public MarkdownFormat getOutputFormat() {
            return INSTANCE;
        }
    }

    static String escape(String text) {
        StringBuilder out = new StringBuilder(text.length() + 8);
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c < ' ' || c == '\u007F' || c == '\u0085' || c == '\u2028' || c == '\u2029') {
                out.append(' ');
                continue;
            }
            if (isPunctuation(c) && "%,'".indexOf(c) < 0 && !(".-/".indexOf(c) >= 0 && isWithinAWord(text, i))) {
                out.append('\\');
            }
            out.append(c);
        }
        return out.toString();
    }

    private static boolean isPunctuation(char c) {
        return c > ' ' && c < '0' || c > '9' && c < 'A' || c > 'Z' && c < 'a' || c > 'z' && c < '\u007F';
    }

    private static boolean isWithinAWord(String text, int at) {
        return at > 0
                && Character.isLetterOrDigit(text.charAt(at - 1))
                && at + 1 < text.length()
                && Character.isLetterOrDigit(text.charAt(at + 1));
    }

    @Override
    public String getName() {
        return "Markdown";
    }

    @Override
    public String getMimeType() {
        return "text/markdown";
    }

    @Override
    public void output(String text, Writer out) throws IOException {
        out.write(escape(text));
    }

    @Override
    public String escapePlainText(String plainText) {
        return escape(plainText);
    }

    @Override
    public boolean isLegacyBuiltInBypassed(String builtInName) {
        return false;
    }

    @Override
    protected Escaped newTemplateMarkupOutputModel(String plainText, String markup) {
        return new Escaped(plainText, markup);
    }
}
