package ampersheet.render;

/** Text as a string of a style sheet. */
public final class CssString {
    private CssString() {}

    /** Everything but ASCII letters, digits and spaces is written as its code, so nothing can end it. */
    public static String of(String text) {
        StringBuilder quoted = new StringBuilder("\"");
        Wording.oneLine(text).codePoints().forEach(c -> {
            boolean plain = c == ' ' || c >= '0' && c <= '9' || c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z';
            if (plain) {
                quoted.append((char) c);
            } else {
                quoted.append('\\').append(Integer.toHexString(c)).append(' ');
            }
        });
        return quoted.append('"').toString();
    }
}
