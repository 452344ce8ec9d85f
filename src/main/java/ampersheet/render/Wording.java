package ampersheet.render;

import ampersheet.quantity.Unit;
import ampersheet.sheet.Document.Assumption;
import ampersheet.sheet.Document.Assumptions;

/** The words that a page adds to the document's own, the same in every format; and how a phrase becomes a sentence. */
public final class Wording {
    /** Of one whose school is not named: on paper a picture must have words. */
    public static final String LOGO = "Logo";

    public static final String SHEET = "Sheet";
    public static final String PROBLEM = "Problem";
    public static final String KEY_NOTICE = "Key — not for handing out";
    public static final String GIVEN = "Given";
    public static final String FIGURE = "Figure";
    public static final String FIGURE_IN_WORDS = "The figure in words";
    public static final String WALK = "Following it through";
    public static final String WORKED_STEPS = "Worked steps";
    public static final String WORKED_EXAMPLE = "Worked example";
    public static final String YOUR_TURN = "Your turn";
    public static final String RULE_USED = "Rule used";
    public static final String CASE = "This case applies because";
    public static final String CASE_HERE = "here";
    public static final String CAUTION = "Caution";
    public static final String STEP = "Step";
    public static final String PLACE_FOR = "Place to write";
    public static final String TICK_ONE = "Tick one.";
    public static final String ANSWERS = "Answers";
    public static final String QUESTION = "Question";
    public static final String ANSWER = "Answer";
    public static final String ACCEPTED = "Accepted";
    public static final String SECOND_ROUTE = "Second route";
    public static final String WRONG_METHODS = "Wrong methods recognised";
    public static final String TAKEN_FOR_GRANTED = "Taken for granted";
    public static final String PREFERRED_VALUES = "Preferred values, times any power of ten";
    public static final String SHARE_HINT = "in % or as a fraction";
    public static final String END_OF = "End of";

    private static final String UNIT_SIGNS = "%\u00b0";

    private Wording() {}

    /** {@code Taken for granted: the input draws no current; the supply is stiff.} */
    public static String takenForGranted(Assumptions assumptions) {
        return TAKEN_FOR_GRANTED + ": "
                + String.join(
                        "; ", assumptions.all().stream().map(Assumption::that).toList()) + ".";
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
