package ampersheet.answer;

import java.util.List;

/** What is accepted of an answer where nothing else is said, and the words for it. */
public final class UsualAcceptance {
    /** Of the key. */
    public static final double RELATIVE = 0.02;
    /** Of temperatures, of which a percentage means nothing. */
    public static final double KELVIN = 1;
    /** Significant figures that an answer is asked to. */
    public static final int FIGURES = 3;

    private static final List<String> NUMBERS = List.of("no", "one", "two", "three", "four", "five", "six");

    private UsualAcceptance() {}

    /** {@code 2 %}. */
    public static String percent() {
        return Math.round(RELATIVE * 100) + " %";
    }

    /** {@code 1 K}. */
    public static String kelvin() {
        return Math.round(KELVIN) + " K";
    }

    /** {@code three significant figures}. */
    public static String figures() {
        return NUMBERS.get(FIGURES) + " significant figures";
    }
}
