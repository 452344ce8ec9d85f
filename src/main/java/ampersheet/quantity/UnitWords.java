package ampersheet.quantity;

/**
 * Turns the units people type ({@code kOhms}, {@code milliamps}, {@code 12 v}, {@code °C/W}, {@code ohms per metre})
 * into the symbols that {@link Unit#parse} reads. Prefix letters keep their case, but K is folded to k where a unit
 * follows, because no unit starts with a kelvin. A unit letter in the wrong case is taken where no other unit has that
 * letter.
 */
final class UnitWords {
    private static final String[][] WORDS = {
        {"volt", "V"},
        {"volts", "V"},
        {"v", "V"},
        {"amp", "A"},
        {"amps", "A"},
        {"ampere", "A"},
        {"amperes", "A"},
        {"a", "A"},
        {"ohm", "Ω"},
        {"ohms", "Ω"},
        {"r", "Ω"},
        {"watt", "W"},
        {"watts", "W"},
        {"w", "W"},
        {"farad", "F"},
        {"farads", "F"},
        {"f", "F"},
        {"henry", "H"},
        {"henrys", "H"},
        {"henries", "H"},
        {"joule", "J"},
        {"joules", "J"},
        {"j", "J"},
        {"hertz", "Hz"},
        {"hz", "Hz"},
        {"newton", "N"},
        {"newtons", "N"},
        {"sec", "s"},
        {"secs", "s"},
        {"second", "s"},
        {"seconds", "s"},
        {"mins", "min"},
        {"minute", "min"},
        {"minutes", "min"},
        {"hr", "h"},
        {"hrs", "h"},
        {"hour", "h"},
        {"hours", "h"},
        {"metre", "m"},
        {"metres", "m"},
        {"meter", "m"},
        {"meters", "m"},
        {"gram", "g"},
        {"grams", "g"},
        {"gramme", "g"},
        {"grammes", "g"},
        {"kelvin", "K"},
        {"kelvins", "K"},
        {"percent", "%"},
        {"pct", "%"},
        {"bits", "bit"},
        {"byte", "B"},
        {"bytes", "B"},
        {"turns", "turn"},
        {"pixel", "px"},
        {"pixels", "px"},
        {"frames", "frame"},
        {"rev", "turn"},
        {"revs", "turn"},
        {"revolution", "turn"},
        {"revolutions", "turn"},
        {"radian", "rad"},
        {"radians", "rad"},
        {"led", "1"},
        {"leds", "1"},
        {"tile", "1"},
        {"tiles", "1"},
        {"resistor", "1"},
        {"resistors", "1"},
        {"pieces", "1"},
        {"pcs", "1"},
        {"vdc", "V"},
        {"adc", "A"},
        {"bps", "bit/s"},
        {"bd", "bit/s"},
        {"baud", "bit/s"},
        {"fps", "frame/s"},
        {"rpm", "turn/min"},
        {"rps", "turn/s"},
        {"newtonmetre", "N·m"},
        {"newtonmetres", "N·m"},
        {"newtonmeter", "N·m"},
        {"newtonmeters", "N·m"},
        {"kilohm", "kΩ"},
        {"kilohms", "kΩ"},
        {"megohm", "MΩ"},
        {"megohms", "MΩ"},
    };

    private static final String[][] PREFIX_WORDS = {
        {"pico", "p"},
        {"nano", "n"},
        {"micro", "µ"},
        {"milli", "m"},
        {"centi", "c"},
        {"kilo", "k"},
        {"mega", "M"},
        {"giga", "G"},
        {"tera", "T"},
    };

    /** The letter r is an ohm elsewhere. */
    private static final String[][] SPEEDS = {
        {"r/min", "turn/min"},
        {"r / min", "turn/min"},
        {"r/s", "turn/s"},
        {"r.p.m", "turn/min"},
        {"r.p.m.", "turn/min"},
        {"r per min", "turn/min"},
        {"r per minute", "turn/min"},
        {"r p m", "turn/min"},
    };

    private static final String[] LENGTHS = {"m", "mm", "cm"};

    private static final String[] CELSIUS = {
        "°c",
        "° c",
        "degc",
        "deg c",
        "degree c",
        "degrees c",
        "deg. c",
        "c",
        "celsius",
        "deg celsius",
        "degree celsius",
        "degrees celsius",
        "°celsius",
        "° celsius",
        "centigrade",
        "degrees centigrade",
    };

    private static final String[] DEGREES = {"°", "deg", "degree", "degrees"};

    private static final String[] FAHRENHEIT = {
        "°f", "° f", "degf", "deg f", "degrees f", "fahrenheit", "degrees fahrenheit"
    };

    private UnitWords() {}

    static boolean isFahrenheit(String typed) {
        return contains(FAHRENHEIT, TypedText.lowerCase(typed));
    }

    /**
     * @param typed folded, not empty
     * @param temperature whether a temperature is asked for, so that degrees are those of Celsius
     * @return the symbols, or {@code typed} itself where a word is not known: reading it then says so
     */
    static String symbols(String typed, boolean temperature) {
        String lower = TypedText.lowerCase(typed);
        if (contains(CELSIUS, lower)) {
            return "°C";
        }
        if (contains(DEGREES, lower)) {
            return temperature ? "°C" : "°";
        }
        if (lower.equals("per cent")) {
            return "%";
        }
        String speed = find(SPEEDS, lower);
        if (!speed.isEmpty()) {
            return speed;
        }
        if (lower.endsWith(" dc")) {
            return compound(typed.substring(0, typed.length() - " dc".length()));
        }
        return compound(typed);
    }

    /**
     * Word by word; the solidus may be the word per, a prefix may stand apart from its unit, and a blank or a hyphen
     * between two units is a product. Behind a solidus that would be read in two ways, and is left for the reader to
     * refuse.
     */
    private static String compound(String typed) {
        StringBuilder out = new StringBuilder();
        String prefix = "";
        boolean ratio = typed.indexOf('/') >= 0
                || TypedText.lowerCase(typed).contains(" per ")
                || TypedText.lowerCase(typed).contains(" pro ");
        boolean afterWord = false;
        int i = 0;
        while (i < typed.length()) {
            char c = typed.charAt(i);
            if (c == '-' && i > 0 && i + 1 < typed.length() && UnitReader.isLetter(typed.charAt(i - 1))) {
                boolean hyphen = UnitReader.isLetter(typed.charAt(i + 1));
                out.append(hyphen ? "·" : perTime(out) ? "^-" : "-");
                afterWord = false;
                i++;
                continue;
            }
            if (!UnitReader.isLetter(c)) {
                out.append(c);
                afterWord &= c == ' ';
                i++;
                continue;
            }
            int start = i;
            while (i < typed.length() && UnitReader.isLetter(typed.charAt(i))) {
                i++;
            }
            String word = typed.substring(start, i);
            if (TypedText.lowerCase(word).equals("per")
                    || TypedText.lowerCase(word).equals("pro")) {
                out.append('/');
                afterWord = false;
                continue;
            }
            if (ratio && contains(DEGREES, TypedText.lowerCase(word)) && startsWithCelsius(typed, i)) {
                i++;
                continue;
            }
            if (i < typed.length() - 1
                    && typed.charAt(i) == ' '
                    && UnitReader.isLetter(typed.charAt(i + 1))
                    && prefix.isEmpty()
                    && out.indexOf("/") < 0
                    && !asPrefix(word).isEmpty()
                    && !nextWordIsPer(typed, i + 1)) {
                prefix = asPrefix(word);
                i++;
                continue;
            }
            String symbol = ratio && isCelsius(word) ? "K" : symbol(prefix + word);
            if (symbol.isEmpty() || afterWord && out.indexOf("/") >= 0) {
                return typed;
            }
            out.append(afterWord ? "·" : "").append(symbol);
            prefix = "";
            afterWord = true;
        }
        return out.toString();
    }

    /** Whether what was read so far ends in a time, so that {@code min-1} is one divided by it. */
    private static boolean perTime(CharSequence out) {
        String read = out.toString();
        return read.equals("min") || read.equals("s") || read.endsWith("·min") || read.endsWith("·s");
    }

    private static boolean nextWordIsPer(String typed, int at) {
        return TypedText.lowerCase(typed.substring(at)).startsWith("per ")
                || TypedText.lowerCase(typed.substring(at)).startsWith("pro ");
    }

    private static boolean startsWithCelsius(String typed, int blankAt) {
        String next = TypedText.lowerCase(typed.substring(blankAt));
        return next.startsWith(" c/") || next.startsWith(" c ");
    }

    private static boolean isCelsius(String word) {
        String lower = TypedText.lowerCase(word);
        return lower.equals("°c") || lower.equals("degc") || lower.equals("c");
    }

    /** The prefix letter, if nothing but a prefix was typed ({@code k}, {@code Meg}, {@code kilo}); otherwise 0. */
    static char prefixAlone(String typed) {
        if (typed.length() == 1) {
            return "pnµumkKMGT".indexOf(typed.charAt(0)) >= 0 ? typed.charAt(0) : 0;
        }
        String lower = TypedText.lowerCase(typed);
        String letter = lower.equals("meg") ? "M" : find(PREFIX_WORDS, lower);
        return letter.isEmpty() ? 0 : letter.charAt(0);
    }

    /** The prefix letter for a prefix standing alone ({@code k}, {@code kilo}), or nothing. */
    private static String asPrefix(String word) {
        if (word.length() == 1) {
            return word.equals("K") ? "k" : UnitReader.isPrefix(word.charAt(0)) ? word : "";
        }
        return find(PREFIX_WORDS, TypedText.lowerCase(word));
    }

    /** The symbol for one word, or nothing if it is not known. */
    private static String symbol(String word) {
        if (UnitReader.isSymbol(word)) {
            return word;
        }
        String lower = TypedText.lowerCase(word);
        String known = unit(lower);
        if (!known.isEmpty()) {
            return known;
        }
        int newton = word.indexOf('N');
        if (newton >= 0
                && newton <= 1
                && contains(LENGTHS, word.substring(newton + 1))
                && UnitReader.isSymbol(word.substring(0, newton + 1))) {
            return word.substring(0, newton + 1) + "·" + word.substring(newton + 1);
        }
        for (String[] prefix : PREFIX_WORDS) {
            if (lower.startsWith(prefix[0])) {
                return prefixed(prefix[1], word.substring(prefix[0].length()));
            }
        }
        String prefix = word.substring(0, 1).equals("K") ? "k" : word.substring(0, 1);
        return UnitReader.isPrefix(prefix.charAt(0)) ? prefixed(prefix, word.substring(1)) : "";
    }

    private static String unit(String word) {
        String english = find(WORDS, word);
        return english.isEmpty() ? find(GermanWords.UNITS, word) : english;
    }

    private static String prefixed(String prefix, String unit) {
        if (!unit.isEmpty() && UnitReader.isSymbol(prefix + unit)) {
            return prefix + unit;
        }
        String known = unit(TypedText.lowerCase(unit));
        return !known.isEmpty() && UnitReader.readOrNull(prefix + known) != null ? prefix + known : "";
    }

    private static String find(String[][] table, String key) {
        for (String[] row : table) {
            if (row[0].equals(key)) {
                return row[1];
            }
        }
        return "";
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
