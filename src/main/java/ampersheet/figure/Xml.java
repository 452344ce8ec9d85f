package ampersheet.figure;

/** Text made safe for an XML attribute or element. */
final class Xml {
    private Xml() {}

    static String escape(String text) {
        StringBuilder out = new StringBuilder(text.length() + 8);
        text.codePoints().forEach(c -> {
            switch (c) {
                case '&' -> out.append("&amp;");
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '"' -> out.append("&quot;");
                default -> out.appendCodePoint(allowed(c) ? c : 0xFFFD);
            }
        });
        return out.toString();
    }

    /** Characters of XML 1.0, production 2; anything else would make the page unreadable. */
    private static boolean allowed(int c) {
        return c == '\t'
                || c == '\n'
                || c == '\r'
                || c >= 0x20 && c <= 0xD7FF
                || c >= 0xE000 && c <= 0xFFFD
                || c >= 0x10000;
    }
}
