package ampersheet.formula;

/** Whole numbers as superscript characters. */
final class Superscript {
    private static final String DIGITS = "⁰¹²³⁴⁵⁶⁷⁸⁹";
    private static final char MINUS = '⁻';

    private Superscript() {}

    static String of(int number) {
        StringBuilder text = new StringBuilder();
        for (char c : Integer.toString(number).toCharArray()) {
            text.append(c == '-' ? MINUS : DIGITS.charAt(c - '0'));
        }
        return text.toString();
    }

    /** The digit or minus that a superscript character stands for; 0 if it is none. */
    static char read(char superscript) {
        int digit = DIGITS.indexOf(superscript);
        return superscript == MINUS ? '-' : digit >= 0 ? (char) ('0' + digit) : 0;
    }
}
