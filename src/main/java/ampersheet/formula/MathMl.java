package ampersheet.formula;

import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.QuantityWriter.Printed;
import java.util.List;
import java.util.OptionalInt;

/**
 * Folds a tree into MathML Core, the children of a {@code math} element; units upright, symbols italic. U+2062 stands
 * between factors, U+2061 after the name of a function, a no-break space between number and unit.
 */
public final class MathMl {
    private static final String INVISIBLE_TIMES = "<mo>\u2062</mo>";
    private static final String DOT = "<mo>\u22c5</mo>";
    private static final String CROSS = "<mo>×</mo>";
    private static final String APPLIED = "<mo>\u2061</mo>";
    private static final String MINUS = "<mo>−</mo>";

    private static final String ROW = "<mrow>";
    private static final String END_OF_ROW = "</mrow>";

    /** Where markup goes among words: characters that no text has. */
    private static final String FIRST = "\ue000";

    private static final String SECOND = "\ue001";

    private MathMl() {}

    public static String symbol(Symbol symbol) {
        String letters;
        if (symbol.isDifference()) {
            letters = row("<mi mathvariant=\"normal\">Δ</mi><mi>"
                    + escaped(symbol.letters().substring(1)) + "</mi>");
        } else if (symbol.isWord()) {
            letters = text(symbol.letters());
        } else {
            letters = "<mi>" + escaped(symbol.letters()) + "</mi>";
        }
        if (symbol.subscript().isEmpty()) {
            return letters;
        }
        String below = isNumber(symbol.subscript()) ? "<mn>" + symbol.subscript() + "</mn>" : text(symbol.subscript());
        return "<msub>" + letters + below + "</msub>";
    }

    /** A printed value: number, no-break space, upright unit. */
    public static String value(Printed value) {
        String number = value.number();
        boolean negative = number.indexOf(QuantityWriter.MINUS) == 0;
        String digits = negative ? number.substring(1) : number;
        String markup = (negative ? MINUS : "") + positive(digits);
        if (value.unit().isEmpty()) {
            return negative || markup.indexOf("<mo>") >= 0 ? row(markup) : markup;
        }
        String between = value.unit().equals("°") ? "" : String.valueOf(QuantityWriter.NO_BREAK_SPACE);
        return row(markup + "<mtext>" + between + escaped(value.unit()) + "</mtext>");
    }

    public static String symbolic(Expression expression, Notation notation) {
        return new Markup(notation, Shown.SYMBOLS).of(expression).text();
    }

    /** Names replaced by their printed values; negative values in parentheses unless they stand first. */
    public static String substituted(Expression expression, Notation notation) {
        return new Markup(notation, Shown.VALUES).of(expression).text();
    }

    public static String symbolic(Condition condition, Notation notation) {
        return new Conditions(notation, Shown.SYMBOLS).of(condition);
    }

    public static String substituted(Condition condition, Notation notation) {
        return new Conditions(notation, Shown.VALUES).of(condition);
    }

    private static String positive(String digits) {
        int ten = digits.indexOf("×10");
        if (ten < 0) {
            return "<mn>" + escaped(digits) + "</mn>";
        }
        StringBuilder exponent = new StringBuilder();
        for (char c : digits.substring(ten + "×10".length()).toCharArray()) {
            exponent.append(Superscript.read(c));
        }
        return "<mn>" + escaped(digits.substring(0, ten)) + "</mn>" + CROSS
                + superscript("<mn>10</mn>", whole(exponent.toString()));
    }

    /** Blanks at the ends of an element are dropped by browsers; no-break ones are kept. */
    private static String text(String text) {
        return "<mtext>" + escaped(text) + "</mtext>";
    }

    private static String row(String markup) {
        return ROW + markup + END_OF_ROW;
    }

    /** What may stand in an element that is a row by itself: {@code math}, {@code mtd}, {@code msqrt}. */
    public static String inRow(String markup) {
        if (!markup.startsWith(ROW) || !markup.endsWith(END_OF_ROW)) {
            return markup;
        }
        int depth = 0;
        int at = 0;
        do {
            int opens = markup.indexOf(ROW, at);
            int closes = markup.indexOf(END_OF_ROW, at);
            boolean opened = opens >= 0 && opens < closes;
            depth += opened ? 1 : -1;
            at = opened ? opens + ROW.length() : closes + END_OF_ROW.length();
        } while (depth > 0);
        return at == markup.length() ? markup.substring(ROW.length(), at - END_OF_ROW.length()) : markup;
    }

    /** A number with its unit needs no row of its own inside another. */
    private static String inside(String markup) {
        String bare = inRow(markup);
        return bare.indexOf("<mo>") < 0 && bare.indexOf("<mn>") == 0 ? bare : markup;
    }

    private static String fenced(String open, String markup, String close) {
        return row("<mo>" + open + "</mo>" + inside(markup) + "<mo>" + close + "</mo>");
    }

    private static String superscript(String base, String exponent) {
        return "<msup>" + base + exponent + "</msup>";
    }

    private static String whole(String number) {
        return number.startsWith("-") ? row(MINUS + "<mn>" + number.substring(1) + "</mn>") : "<mn>" + number + "</mn>";
    }

    private static boolean isNumber(String text) {
        for (char c : text.toCharArray()) {
            if (!Lexer.digit(c)) {
                return false;
            }
        }
        return true;
    }

    /**
     * Words with markup in their slots. The language decides what comes first; a blank beside markup is a no-break one,
     * since browsers drop others at the ends of an element.
     *
     * @param said with {@link #FIRST} and {@link #SECOND} where the markup goes
     */
    private static String woven(String said, String... markup) {
        StringBuilder row = new StringBuilder();
        int at = 0;
        for (int i = 0; i < said.length(); i++) {
            int slot = said.charAt(i) - FIRST.charAt(0);
            if (slot >= 0 && slot < markup.length) {
                row.append(words(said.substring(at, i))).append(markup[slot]);
                at = i + 1;
            }
        }
        return row(row.append(words(said.substring(at))).toString());
    }

    private static String words(String between) {
        if (between.isEmpty()) {
            return "";
        }
        boolean first = between.charAt(0) == ' ';
        boolean last = between.length() > 1 && between.charAt(between.length() - 1) == ' ';
        return text((first ? "\u00a0" : "")
                + between.substring(first ? 1 : 0, between.length() - (last ? 1 : 0))
                + (last ? "\u00a0" : ""));
    }

    private static String escaped(String text) {
        StringBuilder safe = new StringBuilder();
        for (char c : text.toCharArray()) {
            switch (c) {
                case '&' -> safe.append("&amp;");
                case '<' -> safe.append("&lt;");
                case '>' -> safe.append("&gt;");
                case '"' -> safe.append("&quot;");
                default -> safe.append(c);
            }
        }
        return safe.toString();
    }

    private static final class Conditions extends ConditionLine {
        private final Notation notation;
        private final Shown shown;

        Conditions(Notation notation, Shown shown) {
            this.notation = notation;
            this.shown = shown;
        }

        @Override
        public String comparison(Condition.Comparison comparison) {
            String sign = "<mo>" + escaped(comparison.relation().printed()) + "</mo>";
            if (ofWords(comparison, notation)) {
                return row(text(leftWord(comparison, notation, shown)) + sign + text(rightWord(comparison, notation)));
            }
            Markup markup = new Markup(notation, shown);
            return row(markup.of(comparison.left()).text()
                    + sign
                    + markup.of(comparison.right()).text());
        }

        @Override
        String and(String left, String right) {
            return woven(notation.language().say("spoken.printed.and", "left", FIRST, "right", SECOND), left, right);
        }

        @Override
        String or(String left, String right) {
            return woven(notation.language().say("spoken.printed.or", "left", FIRST, "right", SECOND), left, right);
        }

        @Override
        String not(String condition) {
            return woven(notation.language().say("spoken.printed.not", "condition", FIRST), condition);
        }

        @Override
        String parenthesised(String condition) {
            return fenced("(", condition, ")");
        }
    }

    private static final class Markup implements Fold<Piece> {
        private final Notation notation;
        private final Shown shown;

        Markup(Notation notation, Shown shown) {
            this.notation = notation;
            this.shown = shown;
        }

        @Override
        public Piece constant(Expression.Constant constant) {
            Printed printed = PrintedConstant.of(constant, notation.marker());
            return Piece.value(value(printed), printed);
        }

        @Override
        public Piece name(Expression.Name name) {
            Printed value = notation.values().get(name.id());
            if (shown == Shown.VALUES && value != null) {
                return Piece.value(value(value), value);
            }
            if (name.id().equals(Evaluation.PI)) {
                return Piece.atom("<mi mathvariant=\"normal\">π</mi>");
            }
            return Piece.atom(symbol(notation.symbol(name.id())));
        }

        @Override
        public Piece negative(Expression.Negative negative) {
            Piece of = unsigned(of(negative.of()), Piece.Level.PRODUCT);
            return new Piece(row(MINUS + inside(of.text())), Piece.Level.PRODUCT, true, false, false, of.numberLast());
        }

        @Override
        public Piece sum(Expression.Sum sum) {
            return joined(
                    first(of(sum.left()), Piece.Level.SUM),
                    "<mo>+</mo>",
                    unsigned(of(sum.right()), Piece.Level.SUM),
                    Piece.Level.SUM);
        }

        @Override
        public Piece difference(Expression.Difference difference) {
            return joined(
                    first(of(difference.left()), Piece.Level.SUM),
                    MINUS,
                    unsigned(of(difference.right()), Piece.Level.PRODUCT),
                    Piece.Level.SUM);
        }

        @Override
        public Piece product(Expression.Product product) {
            Piece left = first(of(product.left()), Piece.Level.PRODUCT);
            Piece right = unsigned(of(product.right()), Piece.Level.PRODUCT);
            String times = shown == Shown.VALUES || left.numberLast() && right.numberFirst()
                    ? CROSS
                    : right.numberFirst() || isWord(product.left()) || isWord(product.right()) ? DOT : INVISIBLE_TIMES;
            return joined(left, times, right, Piece.Level.PRODUCT);
        }

        /** Words side by side without a sign would run into each other. */
        private boolean isWord(Expression factor) {
            if (factor instanceof Expression.Product product) {
                return isWord(product.left()) || isWord(product.right());
            }
            return factor instanceof Expression.Name name
                    && notation.symbol(name.id()).isWord();
        }

        @Override
        public Piece quotient(Expression.Quotient quotient) {
            return Piece.factor("<mfrac>" + of(quotient.numerator()).text()
                    + of(quotient.denominator()).text() + "</mfrac>");
        }

        @Override
        public Piece power(Expression.Power power) {
            Piece base = unsigned(of(power.base()), Piece.Level.ATOM);
            OptionalInt whole = DimensionRules.wholeNumber(power.exponent());
            return Piece.factor(superscript(
                    base.text(),
                    whole.isPresent()
                            ? whole(Integer.toString(whole.getAsInt()))
                            : of(power.exponent()).text()));
        }

        @Override
        public Piece call(Expression.Call call) {
            return Function.named(call.function())
                    .map(function -> function(function, call.arguments()))
                    .orElseGet(() -> called(text(call.function().replace('_', ' ')), of(call.arguments())));
        }

        private Piece function(Function function, List<Expression> arguments) {
            Piece first = of(arguments.get(0));
            return switch (function) {
                case SQRT -> Piece.atom("<msqrt>" + inRow(first.text()) + "</msqrt>");
                case ABS -> Piece.atom(fenced("|", first.text(), "|"));
                case FLOOR -> Piece.atom(fenced("⌊", first.text(), "⌋"));
                case CEILING -> Piece.atom(fenced("⌈", first.text(), "⌉"));
                case LOG10 -> called("<msub><mi>log</mi><mn>10</mn></msub>", List.of(first));
                case MOD ->
                    Piece.phrase(row(unsigned(first, Piece.Level.RATIO).text()
                            + "<mo lspace=\"0.2222em\" rspace=\"0.2222em\">mod</mo>"
                            + unsigned(of(arguments.get(1)), Piece.Level.RATIO).text()));
                case PARALLEL -> parallel(of(arguments));
                case NEXT_UP, NEXT_DOWN, NEAREST ->
                    Piece.phrase(woven(
                            PlainText.preferred(function, arguments, FIRST, notation.language()),
                            inside(first.text())));
                default -> called("<mi>" + function.written() + "</mi>", of(arguments));
            };
        }

        private static Piece parallel(List<Piece> operands) {
            StringBuilder markup = new StringBuilder();
            for (Piece operand : operands) {
                markup.append(markup.length() == 0 ? "" : "<mo>∥</mo>")
                        .append(inside(unsigned(operand, Piece.Level.RATIO).text()));
            }
            return Piece.phrase(row(markup.toString()));
        }

        private static Piece called(String name, List<Piece> arguments) {
            StringBuilder markup = new StringBuilder();
            for (Piece argument : arguments) {
                markup.append(markup.length() == 0 ? "" : "<mo>,</mo>").append(inside(argument.text()));
            }
            return Piece.factor(row(name + APPLIED + fenced("(", markup.toString(), ")")));
        }

        private static Piece joined(Piece left, String sign, Piece right, Piece.Level level) {
            return new Piece(
                    row(beginning(left, level) + sign + inside(right.text())),
                    level,
                    left.signed(),
                    false,
                    left.numberFirst(),
                    right.numberLast());
        }

        /** A sum goes on with the next term, a product with the next factor, in one row. */
        private static String beginning(Piece left, Piece.Level level) {
            return left.level() == level ? inRow(left.text()) : inside(left.text());
        }

        private static Piece first(Piece piece, Piece.Level lowest) {
            return piece.atLeast(lowest) ? piece : parenthesised(piece);
        }

        private static Piece unsigned(Piece piece, Piece.Level lowest) {
            return piece.atLeast(lowest) && !piece.signed() ? piece : parenthesised(piece);
        }

        private static Piece parenthesised(Piece piece) {
            return Piece.atom(fenced("(", piece.text(), ")"));
        }
    }
}
