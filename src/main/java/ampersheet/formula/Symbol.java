package ampersheet.formula;

/**
 * How a name is printed: {@code Vs} as V with subscript s, {@code theta_JA} as θ with subscript JA, {@code tau} as τ,
 * {@code dT} and {@code delta_T} as ΔT. A name that is a word in small letters ({@code columns}, {@code bit_time}) is
 * printed as that word: nobody reads c with subscript olumns.
 *
 * @param letters the quantity symbol itself, printed italic if one letter
 * @param subscript printed upright; may be empty
 */
public record Symbol(String letters, String subscript) {
    private static final int SHORTEST_WORD = 3;
    private static final String DELTA = "\u0394";

    /** Longer names before those they begin with. */
    private static final String[][] GREEK = {
        {"epsilon", "\u03b5"},
        {"lambda", "\u03bb"},
        {"alpha", "\u03b1"},
        {"delta", "\u03b4"},
        {"gamma", "\u03b3"},
        {"kappa", "\u03ba"},
        {"omega", "\u03c9"},
        {"sigma", "\u03c3"},
        {"theta", "\u03b8"},
        {"Delta", DELTA},
        {"Omega", "\u03a9"},
        {"Sigma", "\u03a3"},
        {"Theta", "\u0398"},
        {"Phi", "\u03a6"},
        {"Psi", "\u03a8"},
        {"beta", "\u03b2"},
        {"zeta", "\u03b6"},
        {"eta", "\u03b7"},
        {"chi", "\u03c7"},
        {"phi", "\u03c6"},
        {"psi", "\u03c8"},
        {"rho", "\u03c1"},
        {"tau", "\u03c4"},
        {"mu", "\u03bc"},
        {"nu", "\u03bd"},
        {"pi", "\u03c0"},
        {"xi", "\u03be"},
    };

    /**
     * Derived from the name alone; a template may give another with {@code symbol:}, which is read the same way.
     *
     * @param name not empty
     */
    public static Symbol of(String name) {
        for (String[] pair : GREEK) {
            if (name.startsWith(pair[0]) && !smallLetterAt(name, pair[0].length())) {
                String rest = withoutUnderline(name.substring(pair[0].length()));
                boolean difference = pair[0].equals("delta")
                        && (startsWithCapital(rest) || rest.length() == 1)
                        && Lexer.letter(rest.charAt(0));
                return difference ? difference(rest) : new Symbol(pair[1], subscript(rest));
            }
        }
        if (name.startsWith("d") && (startsWithCapital(name.substring(1)) || name.equals("dt"))) {
            return difference(name.substring(1));
        }
        if (name.startsWith(DELTA) && name.length() > 1 && name.charAt(1) != '_') {
            return difference(name.substring(1));
        }
        if (isWord(name)) {
            return new Symbol(name.replace('_', ' '), "");
        }
        int first = Character.charCount(name.codePointAt(0));
        return new Symbol(name.substring(0, first), subscript(withoutUnderline(name.substring(first))));
    }

    /** For plain text: {@code V_s}. */
    public String plain() {
        return subscript.isEmpty() ? letters : letters + "_" + subscript;
    }

    /** Whether it is a difference, of which Δ is the sign and the rest the quantity. */
    boolean isDifference() {
        return letters.length() > 1 && letters.startsWith(DELTA);
    }

    /** Whether it is a word instead of one letter with subscript. */
    boolean isWord() {
        return letters.length() > 1 && !isDifference();
    }

    private static Symbol difference(String of) {
        Symbol symbol = Symbol.of(of);
        return new Symbol(DELTA + symbol.letters(), symbol.subscript());
    }

    /** Small letters only, in parts of which the first is long enough to be a word. */
    private static boolean isWord(String name) {
        int first = name.indexOf('_') < 0 ? name.length() : name.indexOf('_');
        for (int i = 0; i < name.length(); i++) {
            if (!smallLetterAt(name, i) && name.charAt(i) != '_') {
                return false;
            }
        }
        return first >= SHORTEST_WORD;
    }

    private static String withoutUnderline(String rest) {
        return rest.startsWith("_") ? rest.substring(1) : rest;
    }

    /** Further underlines part what the subscript says: {@code V_s_max} has the subscript s,max. */
    private static String subscript(String rest) {
        return rest.replace('_', ',');
    }

    private static boolean smallLetterAt(String text, int index) {
        return index < text.length() && text.charAt(index) >= 'a' && text.charAt(index) <= 'z';
    }

    private static boolean startsWithCapital(String text) {
        return !text.isEmpty() && text.charAt(0) >= 'A' && text.charAt(0) <= 'Z';
    }
}
