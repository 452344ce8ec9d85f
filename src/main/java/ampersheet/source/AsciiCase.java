package ampersheet.source;

import ampersheet.quantity.Letters;

/**
 * Small letters for names that are compared, all of which are ASCII. The language's own rules for every script take
 * time with the square of a text's length where one letter becomes two, as the capital İ does.
 */
public final class AsciiCase {
    private AsciiCase() {}

    public static String small(String text) {
        StringBuilder out = new StringBuilder(text.length());
        for (int i = 0; i < text.length(); i++) {
            out.append(Letters.small(text.charAt(i)));
        }
        return out.toString();
    }
}
