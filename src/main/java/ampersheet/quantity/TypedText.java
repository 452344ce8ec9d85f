package ampersheet.quantity;

/**
 * Folds the many characters that look or mean the same into one: spaces of every width, minus signs, full-width and
 * other decimal digits, both ohm and both micro characters, units in one character. What Unicode calls compatibility
 * forms, written out because its normaliser is too large for a page. Letters keep their case: m and M differ.
 */
public final class TypedText {
    private TypedText() {}

    public static String fold(String typed) {
        StringBuilder out = new StringBuilder();
        for (int i = 0; i < typed.length(); i++) {
            out.append(fold(typed.charAt(i)));
        }
        return trim(out);
    }

    /** Without spaces at the ends, and with one where there were several. */
    private static String trim(CharSequence text) {
        StringBuilder out = new StringBuilder();
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            boolean first = out.length() == 0;
            if (c != ' ' || !first && out.charAt(out.length() - 1) != ' ') {
                out.append(c);
            }
        }
        if (out.length() > 0 && out.charAt(out.length() - 1) == ' ') {
            out.setLength(out.length() - 1);
        }
        return out.toString();
    }

    private static String fold(char c) {
        if (c >= '\uFF01' && c <= '\uFF5E') {
            return String.valueOf((char) (c - 0xFEE0));
        }
        int digit = digit(c);
        if (digit >= 0) {
            return String.valueOf((char) ('0' + digit));
        }
        if (isSpace(c)) {
            return " ";
        }
        if (isInvisible(c)) {
            return "";
        }
        if (c >= '\u3380' && c <= '\u33C1') {
            return unitInOneCharacter(c);
        }
        return switch (c) {
            case '\u2010', '\u2011', '\u2012', '\u2013', '\u2014', '\u2212', '\uFE63' -> "-";
            case '\u2126' -> "Ω";
            case '\u03BC' -> "µ";
            case '\u212A' -> "K";
            case '\u2103' -> "°C";
            case '\u2109' -> "°F";
            case '\u00BA', '\u02DA' -> "°";
            case '\u2018', '\u2019', '\u02BC', '\u066C' -> "'";
            case '\u066B' -> ".";
            case '\u2715', '\u2716', '\u2A2F' -> "×";
            case '\u2022', '\u2219', '\u22C5' -> "·";
            default -> String.valueOf(c);
        };
    }

    /** Decimal digits of the Arabic and Devanagari scripts; ASCII digits stay as they are. */
    private static int digit(char c) {
        if (c >= '\u0660' && c <= '\u0669') {
            return c - '\u0660';
        }
        if (c >= '\u06F0' && c <= '\u06F9') {
            return c - '\u06F0';
        }
        return c >= '\u0966' && c <= '\u096F' ? c - '\u0966' : -1;
    }

    private static boolean isSpace(char c) {
        return c == '\t'
                || c == '\n'
                || c == '\r'
                || c == '\u00A0'
                || c == '\u1680'
                || c >= '\u2000' && c <= '\u200A'
                || c == '\u202F'
                || c == '\u205F'
                || c == '\u3000';
    }

    private static boolean isInvisible(char c) {
        return c == '\u00AD' || c >= '\u200B' && c <= '\u200F' || c == '\u2060' || c == '\uFEFF';
    }

    private static String unitInOneCharacter(char c) {
        return switch (c) {
            case '\u3380' -> "pA";
            case '\u3381' -> "nA";
            case '\u3382' -> "µA";
            case '\u3383' -> "mA";
            case '\u3384' -> "kA";
            case '\u338A' -> "pF";
            case '\u338B' -> "nF";
            case '\u338C' -> "µF";
            case '\u3390' -> "Hz";
            case '\u3391' -> "kHz";
            case '\u3392' -> "MHz";
            case '\u3393' -> "GHz";
            case '\u339B' -> "µm";
            case '\u339C' -> "mm";
            case '\u339D' -> "cm";
            case '\u339E' -> "km";
            case '\u339F' -> "mm2";
            case '\u33A1' -> "m2";
            case '\u33B1' -> "ns";
            case '\u33B2' -> "µs";
            case '\u33B3' -> "ms";
            case '\u33B6' -> "µV";
            case '\u33B7' -> "mV";
            case '\u33B8' -> "kV";
            case '\u33B9' -> "MV";
            case '\u33BC' -> "µW";
            case '\u33BD' -> "mW";
            case '\u33BE' -> "kW";
            case '\u33BF' -> "MW";
            case '\u33C0' -> "kΩ";
            case '\u33C1' -> "MΩ";
            default -> String.valueOf(c);
        };
    }

    static boolean isDigit(char c) {
        return c >= '0' && c <= '9';
    }

    /** ASCII only, whatever the language of the machine. */
    static String lowerCase(String text) {
        StringBuilder out = new StringBuilder();
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            out.append(Letters.small(c));
        }
        return out.toString();
    }
}
