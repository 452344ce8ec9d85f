package ampersheet.quantity;

/**
 * What people write around a number without changing it: {@code R =}, {@code approx.}, {@code nr}, {@code ± 5 %}, a
 * question mark. What does change it (a limit, a second value) is left for the reader to refuse.
 */
final class WordsAround {
    private static final String[] BEFORE = {
        "approximately",
        "approx.",
        "approx",
        "about",
        "around",
        "roughly",
        "circa",
        "ca.",
        "ca",
        "c.",
        "nearly",
        "almost",
        "exactly",
        "number",
        "nr.",
        "nr",
        "no.",
        "no",
        "№",
        "#",
        "it is",
        "it's",
        "the answer is",
        "answer",
        "ans.",
        "ans",
        "the",
    };
    private static final String[] BEHIND = {
        "approximately",
        "approx.",
        "approx",
        "roughly",
        "circa",
        "ca.",
        "or so",
        "in total",
        "total",
        "altogether",
        "in all",
        "each",
    };
    private static final String CLOSING = "?! ";

    /** What is counted on these sheets. */
    private static final String[] NOUNS = {
        "led",
        "leds",
        "tile",
        "tiles",
        "resistor",
        "resistors",
        "piece",
        "pieces",
        "pcs",
        "pc",
        "pair",
        "pairs",
        "string",
        "strings",
        "row",
        "rows",
        "column",
        "columns",
        "group",
        "groups",
        "branch",
        "branches",
        "chip",
        "chips",
        "part",
        "parts",
        "place",
        "places",
        "count",
        "counts",
        "code",
        "codes",
        "cell",
        "cells",
        "panel",
        "panels",
        "strip",
        "strips",
        "arm",
        "arms",
        "side",
        "sides",
        "edge",
        "edges",
        "plug",
        "plugs",
        "socket",
        "sockets",
        "connector",
        "connectors",
        "contact",
        "contacts",
        "wire",
        "wires",
        "cable",
        "cables",
        "joint",
        "joints",
        "address",
        "addresses",
        "channel",
        "channels",
        "position",
        "positions",
        "value",
        "values",
        "step",
        "steps",
        "level",
        "levels",
        "unit",
        "units",
        "item",
        "items",
        "time",
        "times",
        "corner",
        "corners",
        "screw",
        "screws",
        "diode",
        "diodes",
        "fuse",
        "fuses",
        "transistor",
        "transistors",
        "supply",
        "supplies",
        "layer",
        "layers",
        "pulse",
        "pulses",
        "sample",
        "samples",
        "node",
        "nodes",
        "colour",
        "colours",
        "color",
        "colors",
        "crossing",
        "crossings",
        "pin",
        "pins",
        "motor",
        "motors",
        "load",
        "loads",
        "combination",
        "combinations",
        "turn",
        "turns",
        "pixel",
        "pixels",
        "frame",
        "frames",
        "bit",
        "bits",
        "byte",
        "bytes",
        "packet",
        "packets",
        "slot",
        "slots",
        "line",
        "lines",
        "section",
        "sections",
        "probe",
        "probes",
        "clash",
        "clashes",
    };

    private static final String[] BETWEEN = {
        "of", "in", "series", "parallel", "the", "per", "and", "each", "whole", "full"
    };

    private WordsAround() {}

    static String withoutLead(String text) {
        String left = text;
        while (true) {
            String less = withoutOneLead(left);
            if (less.equals(left)) {
                return left;
            }
            left = less;
        }
    }

    private static String withoutOneLead(String text) {
        String named = withoutName(text);
        if (!named.equals(text)) {
            return named;
        }
        String lower = TypedText.lowerCase(text);
        if (startsWithWord(lower, "minus") && lower.length() > "minus ".length()) {
            return "-" + text.substring("minus".length()).trim();
        }
        for (String[] words : new String[][] {BEFORE, GermanWords.BEFORE}) {
            for (String word : words) {
                if (startsWithWord(lower, word) && lower.length() > word.length()) {
                    return text.substring(word.length()).trim();
                }
            }
        }
        int blank = lower.indexOf(' ');
        boolean noun = blank > 0 && isNoun(lower.substring(0, blank)) && blank + 1 < lower.length();
        if (noun
                && (TypedText.isDigit(lower.charAt(blank + 1))
                        || lower.startsWith("#", blank + 1)
                        || lower.startsWith("no", blank + 1)
                        || lower.startsWith("nr", blank + 1))) {
            return text.substring(blank + 1);
        }
        return text;
    }

    private static boolean isNoun(String word) {
        return contains(NOUNS, word) || contains(GermanWords.NOUNS, word);
    }

    private static boolean isBehind(String word) {
        return contains(BEHIND, word) || contains(GermanWords.BEHIND, word);
    }

    /** Takes off {@code R =}, {@code R:}, {@code ≈} and the like. */
    private static String withoutName(String text) {
        int end = 0;
        while (end < text.length() && isNameCharacter(text.charAt(end), end)) {
            end++;
        }
        int after = end < text.length() && text.charAt(end) == ' ' ? end + 1 : end;
        if (after < text.length() && (isEquals(text.charAt(after)) || end > 0 && text.charAt(after) == ':')) {
            after++;
            while (after < text.length() && (isEquals(text.charAt(after)) || text.charAt(after) == ' ')) {
                after++;
            }
            return text.substring(after);
        }
        return text;
    }

    private static boolean isEquals(char c) {
        return c == '=' || c == '≈' || c == '~' || c == '≅' || c == '≃' || c == '∼';
    }

    private static boolean isNameCharacter(char c, int index) {
        boolean sign = c >= '\u2000' && c <= '\u2BFF';
        boolean letter = c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '\u00C0' && !sign;
        return letter || index > 0 && (TypedText.isDigit(c) || c == '_');
    }

    /** No letter may follow: {@code ca} is not the start of {@code card}. */
    private static boolean startsWithWord(String text, String word) {
        if (!text.startsWith(word)) {
            return false;
        }
        return text.length() == word.length()
                || !UnitReader.isLetter(text.charAt(word.length()))
                || !UnitReader.isLetter(word.charAt(word.length() - 1));
    }

    /** @param number whether a plain number is asked for, so that % could be its unit */
    static String withoutTail(String text, boolean number) {
        String left = text;
        while (true) {
            String less = withoutTolerance(withoutOneTail(left), number);
            if (less.equals(left)) {
                return left;
            }
            left = less;
        }
    }

    private static String withoutOneTail(String text) {
        int end = text.length();
        while (end > 0 && CLOSING.indexOf(text.charAt(end - 1)) >= 0) {
            end--;
        }
        String left = text.substring(0, end);
        if (left.endsWith(")")) {
            int open = left.lastIndexOf('(');
            String inside = open < 0 ? "" : left.substring(open + 1, left.length() - 1);
            if (open > 0 && (inside.equals("?") || isBehind(TypedText.lowerCase(inside)))) {
                return left.substring(0, open).trim();
            }
        }
        String lower = TypedText.lowerCase(left);
        for (String[] words : new String[][] {BEHIND, GermanWords.BEHIND}) {
            for (String word : words) {
                if (lower.endsWith(" " + word)) {
                    return left.substring(0, left.length() - word.length()).trim();
                }
            }
        }
        return left;
    }

    /**
     * A tolerance in percent says how far off the value may be, not which it is. Left where the percent sign could
     * belong to both numbers, and where the tolerance is a quantity: {@code 4.7 ± 0.1 kΩ} has its unit behind the
     * second number.
     */
    private static String withoutTolerance(String text, boolean number) {
        int sign = text.indexOf('±');
        if (sign <= 0) {
            return text;
        }
        String value = text.substring(0, sign).trim();
        String tolerance = text.substring(sign + 1).trim();
        int end = 0;
        while (end < tolerance.length()
                && (TypedText.isDigit(tolerance.charAt(end))
                        || tolerance.charAt(end) == '.'
                        || tolerance.charAt(end) == ',')) {
            end++;
        }
        String unit = TypedText.lowerCase(tolerance.substring(end).trim());
        boolean percent =
                unit.equals("%") || unit.equals("percent") || unit.equals("per cent") || unit.equals("prozent");
        boolean bare = value.isEmpty() || TypedText.isDigit(value.charAt(value.length() - 1));
        return end > 0 && percent && !(number && bare) ? value : text;
    }

    /**
     * Whether this names what was counted, so that the number stands for itself: {@code pairs}, {@code LEDs in series}.
     */
    static boolean namesWhatIsCounted(String rest) {
        boolean noun = false;
        int from = 0;
        String lower = TypedText.lowerCase(rest);
        while (from < lower.length()) {
            int to = from;
            while (to < lower.length() && lower.charAt(to) != ' ' && lower.charAt(to) != '-') {
                to++;
            }
            String word = lower.substring(from, to);
            if (isNoun(word)) {
                noun = true;
            } else if (!contains(BETWEEN, word) && !contains(GermanWords.BETWEEN, word)) {
                return false;
            }
            from = to + 1;
        }
        return noun;
    }

    private static boolean contains(String[] words, String word) {
        for (String known : words) {
            if (known.equals(word)) {
                return true;
            }
        }
        return false;
    }
}
