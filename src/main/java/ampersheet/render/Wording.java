package ampersheet.render;

import ampersheet.language.Language;
import ampersheet.quantity.Unit;
import ampersheet.sheet.Document.Assumption;
import ampersheet.sheet.Document.Assumptions;
import java.util.List;

/** How a phrase becomes a sentence or a line, the same in every format. */
public final class Wording {
    private static final String UNIT_SIGNS = "%\u00b0";

    private Wording() {}

    /** {@code Taken for granted: the input draws no current; the supply is stiff.} */
    public static String takenForGranted(Assumptions assumptions, Language language) {
        List<String> all = assumptions.all().stream().map(Assumption::that).toList();
        return language.say("print.taken-for-granted.short", "all", String.join("; ", all));
    }

    /** With a capital first letter and a full stop; empty stays empty. */
    public static String sentence(String phrase) {
        String capital = capitalised(phrase.strip());
        if (capital.isEmpty()) {
            return capital;
        }
        char last = capital.charAt(capital.length() - 1);
        return ".!?:…".indexOf(last) >= 0 ? capital : capital + ".";
    }

    /**
     * With a capital first letter, unless the first word is a symbol ({@code n}, {@code mA}, {@code pH}, {@code V_s}):
     * its letters mean what they are.
     */
    public static String capitalised(String phrase) {
        int end = 0;
        while (end < phrase.length() && !Character.isWhitespace(phrase.charAt(end))) {
            end++;
        }
        String first = phrase.substring(0, end);
        boolean word = first.length() > 1
                && first.codePoints().allMatch(c -> Character.isLowerCase(c) || "-'’,.:".indexOf(c) >= 0);
        if (!word && !first.equals("a")) {
            return phrase;
        }
        int letter = first.codePointAt(0);
        return new StringBuilder(phrase.length())
                .appendCodePoint(Character.toTitleCase(letter))
                .append(phrase, Character.charCount(letter), phrase.length())
                .toString();
    }

    /** No line ends between a number and its unit, as authors write them with a blank: {@code 30 %}. */
    static String bound(String text) {
        StringBuilder bound = null;
        for (int i = 1; i < text.length() - 1; i++) {
            if (text.charAt(i) == ' ' && isDigit(text.charAt(i - 1)) && Unit.isSymbol(word(text, i + 1))) {
                bound = bound == null ? new StringBuilder(text) : bound;
                bound.setCharAt(i, '\u00a0');
            }
        }
        return bound == null ? text : bound.toString();
    }

    private static boolean isDigit(char c) {
        return c >= '0' && c <= '9';
    }

    /** Up to what can be part of no symbol of one unit. */
    private static String word(String text, int from) {
        int end = from;
        while (end < text.length()
                && (Character.isLetter(text.charAt(end)) || UNIT_SIGNS.indexOf(text.charAt(end)) >= 0)) {
            end++;
        }
        return text.substring(from, end);
    }

    /**
     * One line of text in which every character may stand in XML and shows what it is: line breaks and tabs become
     * spaces, other control characters, those that turn the direction of writing around, and lone surrogates become
     * U+FFFD.
     */
    public static String oneLine(String text) {
        StringBuilder line = new StringBuilder(text.length());
        for (int i = 0; i < text.length(); ) {
            int c = text.codePointAt(i);
            i += Character.charCount(c);
            if (c == '\n' || c == '\r' || c == '\t' || c == 0x85 || c == 0x2028 || c == 0x2029) {
                line.append(' ');
            } else {
                line.appendCodePoint(isPrintable(c) ? c : 0xFFFD);
            }
        }
        return line.toString();
    }

    /** The same over several lines: only {@code \n} and tabs are kept of the control characters. */
    public static String lines(String text) {
        StringBuilder kept = new StringBuilder(text.length());
        for (int i = 0; i < text.length(); ) {
            int c = text.codePointAt(i);
            i += Character.charCount(c);
            if (c == '\r') {
                if (i >= text.length() || text.charAt(i) != '\n') {
                    kept.append('\n');
                }
            } else if (c == '\n' || c == '\t') {
                kept.append((char) c);
            } else {
                kept.appendCodePoint(isPrintable(c) ? c : 0xFFFD);
            }
        }
        return kept.toString();
    }

    /** XML 1.0 characters other than controls, overrides of the writing direction and noncharacters. */
    private static boolean isPrintable(int c) {
        boolean turning = c >= 0x202A && c <= 0x202E || c >= 0x2066 && c <= 0x2069;
        boolean control = c < 0x20 || c >= 0x7F && c < 0xA0;
        boolean surrogate = c >= 0xD800 && c <= 0xDFFF;
        boolean noncharacter = (c & 0xFFFE) == 0xFFFE || c >= 0xFDD0 && c <= 0xFDEF;
        return !control && !turning && !surrogate && !noncharacter;
    }
}
