package ampersheet.quantity;

import java.util.ArrayList;
import java.util.List;

/**
 * Reads a unit: {@code product}, {@code product/term} or {@code product/(product)}, where a product is terms joined by
 * {@code *} or {@code ·} and a term is a symbol with an optional whole exponent. SI writing rules forbid a second
 * solidus and an unparenthesised product after one, because they can be read in two ways; so does this reader.
 */
final class UnitReader {
    private static final double CELSIUS_ZERO = 273.15;
    private static final String EVERY_PREFIX = "pnµmkMGT";

    private static final String TURN = "turn";

    /** How text books print a turn: as a speed ({@code r/min}, in German {@code U/min}) and by itself. */
    private static final List<String> TURNS = List.of("r/", "U/", "turns", "Umdrehungen");

    private static final Dimension CHARGE = Dimension.CURRENT.times(Dimension.TIME);
    private static final Dimension FORCE = Dimension.ENERGY.over(Dimension.LENGTH);

    /**
     * A unit without prefix.
     *
     * @param names as written; the first is the symbol by SI rules
     * @param power of ten in its factor
     * @param factor the rest of its factor
     * @param read prefixes understood before it
     * @param printed prefixes that printing may choose
     */
    private record Atom(
            List<String> names, Dimension dimension, int power, double factor, String read, String printed) {
        String symbol() {
            return names.get(0);
        }
    }

    private record Term(char prefix, Atom atom, int exponent) {}

    private static final char NO_PREFIX = ' ';

    private static final List<Atom> ATOMS = List.of(
            electrical(Dimension.VOLTAGE, "V"),
            electrical(Dimension.CURRENT, "A"),
            electrical(Dimension.RESISTANCE, "Ω", "ohm", "\u2126"),
            electrical(Dimension.POWER, "W"),
            electrical(Dimension.CAPACITANCE, "F"),
            electrical(Dimension.INDUCTANCE, "H"),
            electrical(Dimension.ENERGY, "J"),
            electrical(Dimension.FREQUENCY, "Hz"),
            electrical(FORCE, "N"),
            new Atom(List.of("s"), Dimension.TIME, 0, 1, "pnµm", "pnµm"),
            new Atom(List.of("min"), Dimension.TIME, 0, 60, "", ""),
            new Atom(List.of("h"), Dimension.TIME, 0, 3600, "", ""),
            new Atom(List.of("m"), Dimension.LENGTH, 0, 1, "nµmck", "nµmk"),
            new Atom(List.of("g"), Dimension.MASS, -3, 1, "µmk", "µmk"),
            new Atom(List.of("K"), Dimension.TEMPERATURE, 0, 1, "µm", ""),
            new Atom(List.of("°C", "degC", "\u2103"), Dimension.TEMPERATURE, 0, 1, "", ""),
            new Atom(List.of("A·h", "Ah"), CHARGE, 0, 3600, EVERY_PREFIX, EVERY_PREFIX),
            new Atom(List.of("W·h", "Wh"), Dimension.ENERGY, 0, 3600, EVERY_PREFIX, EVERY_PREFIX),
            new Atom(List.of("bit"), Dimension.ONE, 0, 1, "kMGT", "kMGT"),
            new Atom(List.of("B"), Dimension.ONE, 0, 8, "kMGT", "kMGT"),
            new Atom(List.of(TURN), Dimension.ONE, 0, 1, "", ""),
            new Atom(List.of("px"), Dimension.ONE, 0, 1, "", ""),
            new Atom(List.of("frame"), Dimension.ONE, 0, 1, "", ""),
            new Atom(List.of("%"), Dimension.ONE, -2, 1, "", ""),
            new Atom(List.of("ppm"), Dimension.ONE, -6, 1, "", ""),
            new Atom(List.of("rad"), Dimension.ONE, 0, 1, "µm", ""),
            new Atom(List.of("°", "deg"), Dimension.ONE, 0, Math.PI / 180, "", ""));

    private static Atom electrical(Dimension dimension, String... names) {
        return new Atom(List.of(names), dimension, 0, 1, EVERY_PREFIX, EVERY_PREFIX);
    }

    private final String text;
    private final List<Term> terms = new ArrayList<>();
    private int at;

    private UnitReader(String text) {
        this.text = text;
    }

    static Unit read(String text) {
        String name = text.strip();
        for (String printed : TURNS) {
            boolean speed = printed.endsWith("/");
            if (speed ? name.startsWith(printed) : name.equals(printed)) {
                Unit unit = read(TURN + (speed ? name.substring(printed.length() - 1) : ""));
                String symbol = speed ? printed + unit.symbol().substring(TURN.length() + 1) : printed;
                return new Unit(symbol, unit.dimension(), unit.factor(), unit.offset(), symbol, unit.prefixable());
            }
        }
        UnitReader reader = new UnitReader(text);
        reader.unit();
        return reader.build();
    }

    /** Whether it counts whole turns, whatever they are called where it is printed. */
    static boolean countsTurns(String symbol) {
        for (String printed : TURNS) {
            if (symbol.startsWith(printed)) {
                return true;
            }
        }
        return symbol.startsWith(TURN);
    }

    /** The unit, or null where {@link #read} would throw. */
    static Unit readOrNull(String text) {
        try {
            return read(text);
        } catch (UnitFault notAUnit) {
            return null;
        }
    }

    /** Whether the word is one unit, with or without prefix. */
    static boolean isSymbol(String word) {
        return !word.isEmpty() && known(word, 1) != null;
    }

    /** The prefixes printing may put before this base unit. */
    static String printedPrefixes(String base) {
        int end = 0;
        while (end < base.length() && isLetter(base.charAt(end))) {
            end++;
        }
        Atom first = atom(base.substring(0, end));
        return first == null ? "" : first.printed();
    }

    /** The power of ten a prefix stands for; {@code u} and both micro characters are the same. */
    static int powerOf(char prefix) {
        return switch (prefix) {
            case 'p' -> -12;
            case 'n' -> -9;
            case 'u', 'µ', 'μ' -> -6;
            case 'm' -> -3;
            case 'c' -> -2;
            case 'k' -> 3;
            case 'M' -> 6;
            case 'G' -> 9;
            case 'T' -> 12;
            default -> 0;
        };
    }

    static boolean isPrefix(char c) {
        return powerOf(c) != 0;
    }

    private void unit() {
        skipBlanks();
        if (at == text.length()) {
            throw new UnitFault(0, "there is no unit; write 1 for a plain number");
        }
        if (text.charAt(at) == '1') {
            at++;
            skipBlanks();
            if (at < text.length() && text.charAt(at) != '/') {
                throw new UnitFault(at, "after 1 only the end or a / can follow");
            }
        } else {
            product(1);
        }
        if (at < text.length() && text.charAt(at) == '/') {
            denominator();
        }
        if (at < text.length()) {
            char found = text.charAt(at);
            if (found == '/') {
                throw new UnitFault(
                        at, "a second / can be read in two ways; put the units below the line in parentheses");
            }
            if (isTimes(found)) {
                throw new UnitFault(
                        at, "a product after / can be read in two ways; put the units below the line in parentheses");
            }
            throw new UnitFault(at, "this does not belong to a unit: " + text.substring(at));
        }
    }

    private void denominator() {
        at++;
        skipBlanks();
        if (at < text.length() && text.charAt(at) == '(') {
            int open = at++;
            product(-1);
            if (at == text.length() || text.charAt(at) != ')') {
                throw new UnitFault(at == text.length() ? open : at, "this parenthesis is not closed");
            }
            at++;
            skipBlanks();
        } else {
            term(-1);
        }
    }

    private void product(int sign) {
        term(sign);
        while (at < text.length() && isTimes(text.charAt(at))) {
            at++;
            term(sign);
        }
    }

    private void term(int sign) {
        skipBlanks();
        int start = at;
        while (at < text.length() && isLetter(text.charAt(at))) {
            at++;
        }
        if (at == start) {
            throw new UnitFault(
                    start, start == text.length() ? "a unit is missing at the end" : "a unit was expected here");
        }
        String symbol = text.substring(start, at);
        int exponent = exponent();
        skipBlanks();
        Term known = known(symbol, sign * exponent);
        if (known == null) {
            throw new UnitFault(start, "there is no unit " + symbol + hint(symbol));
        }
        terms.add(known);
    }

    private int exponent() {
        int start = at;
        boolean caret = at < text.length() && text.charAt(at) == '^';
        if (caret) {
            at++;
        }
        boolean negative = false;
        if (at < text.length() && (text.charAt(at) == '⁻' || caret && isMinus(text.charAt(at)))) {
            negative = true;
            at++;
        }
        if (at == text.length() || digit(text.charAt(at)) < 0) {
            if (at > start) {
                throw new UnitFault(start, "a whole exponent is missing");
            }
            return 1;
        }
        int exponent = digit(text.charAt(at++));
        if (exponent == 0 || exponent > 4 || at < text.length() && digit(text.charAt(at)) >= 0) {
            throw new UnitFault(start, "an exponent of a unit is 1, 2, 3 or 4");
        }
        return negative ? -exponent : exponent;
    }

    private static Term known(String symbol, int exponent) {
        Atom plain = atom(symbol);
        if (plain != null) {
            return new Term(NO_PREFIX, plain, exponent);
        }
        char prefix = symbol.charAt(0) == 'u' || symbol.charAt(0) == 'μ' ? 'µ' : symbol.charAt(0);
        Atom atom = isPrefix(prefix) ? atom(symbol.substring(1)) : null;
        return atom != null && atom.read().indexOf(prefix) >= 0 ? new Term(prefix, atom, exponent) : null;
    }

    private static Atom atom(String name) {
        for (Atom atom : ATOMS) {
            if (atom.names().contains(name)) {
                return atom;
            }
        }
        return null;
    }

    private static String hint(String symbol) {
        if (symbol.equals("C")) {
            return "; a temperature is in degC";
        }
        List<String> similar = similarTo(symbol);
        return similar.isEmpty() ? "" : "; is it " + String.join(" or ", similar) + "?";
    }

    /** Units that differ only in the case of their letters are worth naming; none is ever taken silently. */
    static List<String> similarTo(String symbol) {
        List<String> found = new ArrayList<>();
        for (Atom atom : ATOMS) {
            for (String name : atom.names()) {
                if (Letters.sameButForCase(name, symbol)) {
                    found.add(name);
                }
                for (int i = 0; i < atom.read().length(); i++) {
                    String prefixed = atom.read().charAt(i) + name;
                    if (Letters.sameButForCase(prefixed, symbol)) {
                        found.add(prefixed);
                    }
                }
            }
        }
        return found;
    }

    private Unit build() {
        boolean celsius = false;
        Dimension dimension = Dimension.ONE;
        int power = 0;
        double above = 1;
        double below = 1;
        for (Term term : terms) {
            Atom atom = term.atom();
            celsius |= atom.symbol().equals("°C");
            dimension = dimension.times(atom.dimension().power(term.exponent()));
            power += (atom.power() + powerOf(term.prefix())) * term.exponent();
            for (int i = Math.abs(term.exponent()); i > 0; i--) {
                if (term.exponent() > 0) {
                    above *= atom.factor();
                } else {
                    below *= atom.factor();
                }
            }
        }
        if (celsius && (terms.size() > 1 || terms.get(0).exponent() != 1)) {
            throw new UnitFault(0, "degC is a temperature only by itself; in a unit made of several, write K");
        }
        String symbol = symbol(true);
        String base = symbol(false);
        return new Unit(
                symbol,
                dimension,
                PowerOfTen.scale(above, power) / below,
                celsius ? CELSIUS_ZERO : 0,
                base.isEmpty() ? "1" : base,
                takesPrefix());
    }

    /** Only the first of a product or of a simple ratio; W/(m·K) and its like are always printed without. */
    private boolean takesPrefix() {
        int below = 0;
        for (Term term : terms) {
            below += term.exponent() < 0 ? 1 : 0;
        }
        return !terms.isEmpty()
                && terms.get(0).exponent() == 1
                && !terms.get(0).atom().printed().isEmpty()
                && below <= 1;
    }

    private String symbol(boolean withFirstPrefix) {
        StringBuilder above = new StringBuilder();
        StringBuilder below = new StringBuilder();
        int termsBelow = 0;
        for (int i = 0; i < terms.size(); i++) {
            Term term = terms.get(i);
            StringBuilder side = term.exponent() > 0 ? above : below;
            termsBelow += term.exponent() > 0 ? 0 : 1;
            if (side.length() > 0) {
                side.append('·');
            }
            if (term.prefix() != NO_PREFIX && (i > 0 || withFirstPrefix)) {
                side.append(term.prefix());
            }
            side.append(term.atom().symbol());
            if (Math.abs(term.exponent()) > 1) {
                side.append("⁰¹²³⁴".charAt(Math.abs(term.exponent())));
            }
        }
        if (termsBelow == 0) {
            return above.toString();
        }
        String denominator = termsBelow > 1 ? "(" + below + ")" : below.toString();
        return (above.length() == 0 ? "1" : above.toString()) + "/" + denominator;
    }

    private void skipBlanks() {
        while (at < text.length() && text.charAt(at) == ' ') {
            at++;
        }
    }

    private static boolean isTimes(char c) {
        return c == '*' || c == '·' || c == '⋅';
    }

    private static boolean isMinus(char c) {
        return c == '-' || c == '−';
    }

    static boolean isLetter(char c) {
        return c >= 'a' && c <= 'z'
                || c >= 'A' && c <= 'Z'
                || c == 'Ω'
                || c == '\u2126'
                || c == 'µ'
                || c == 'μ'
                || c == '°'
                || c == '\u2103'
                || c == '%';
    }

    private static int digit(char c) {
        if (c >= '0' && c <= '9') {
            return c - '0';
        }
        return switch (c) {
            case '¹' -> 1;
            case '²' -> 2;
            case '³' -> 3;
            case '⁴' -> 4;
            default -> -1;
        };
    }
}
