package ampersheet.render;

/** Decides where a link may lead. */
public final class Address {
    private Address() {}

    /**
     * Whether a link may lead there: a place beside or below the page, a fragment of it, or the web and mail.
     * Everything else, such as {@code javascript:}, {@code data:}, {@code file:} and whatever is invented next, is
     * shown as text.
     */
    public static boolean isAllowed(String address) {
        boolean asWritten =
                address.equals(Wording.oneLine(address)) && address.indexOf(' ') < 0 && address.indexOf('\\') < 0;
        if (!asWritten || address.isEmpty() || address.startsWith("//")) {
            return false; // browsers drop blanks and controls and turn backslashes, and then read another address
        }
        int colon = address.indexOf(':');
        if (colon < 0 || colon > firstOf(address, '/', '?', '#')) {
            return true;
        }
        String scheme = address.substring(0, colon);
        return scheme.equalsIgnoreCase("https") || scheme.equalsIgnoreCase("http") || scheme.equalsIgnoreCase("mailto");
    }

    private static int firstOf(String text, char... wanted) {
        int first = text.length();
        for (char c : wanted) {
            int at = text.indexOf(c);
            if (at >= 0 && at < first) {
                first = at;
            }
        }
        return first;
    }

    /** With the characters percent-encoded that would end it early in HTML or Markdown. */
    public static String encoded(String address) {
        StringBuilder encoded = new StringBuilder(address.length());
        for (int i = 0; i < address.length(); i++) {
            char c = address.charAt(i);
            if (c == ' ' || "\"'<>()[]`|\\*".indexOf(c) >= 0) {
                encoded.append('%')
                        .append(Character.toUpperCase(Character.forDigit(c >> 4, 16)))
                        .append(Character.toUpperCase(Character.forDigit(c & 15, 16)));
            } else {
                encoded.append(c);
            }
        }
        return encoded.toString();
    }
}
