package ampersheet.render.text;

/** Markdown of a statement or prompt as words for a terminal. */
public final class PlainWords {
    private PlainWords() {}

    /** Drops emphasis and code marks, and the backslash before an escaped character. */
    public static String of(String markdown) {
        StringBuilder out = new StringBuilder();
        for (int i = 0; i < markdown.length(); i++) {
            char c = markdown.charAt(i);
            if (c == '\\' && i + 1 < markdown.length()) {
                i++;
                out.append(markdown.charAt(i));
            } else if (c != '*' && c != '`') {
                out.append(c);
            }
        }
        return out.toString().strip();
    }
}
