package ampersheet.formula;

import ampersheet.language.Language;
import ampersheet.quantity.PreferredSeries;
import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.QuantityWriter.Printed;
import java.util.List;

/**
 * Folds a tree into words as they are read aloud, for the text alternative of an equation: "open bracket V s minus V f
 * close bracket over I f". Brackets are spoken where they are printed, so that it can be understood in one way only.
 */
public final class Spoken {
    private Spoken() {}

    /** "V s", "theta JA", "delta T". */
    public static String symbol(Symbol symbol, Language language) {
        String letters = symbol.isDifference()
                ? language.say(
                        "spoken.difference", "of", letters(symbol.letters().substring(1), language))
                : letters(symbol.letters(), language);
        return symbol.subscript().isEmpty()
                ? letters
                : language.say("spoken.subscript", "symbol", letters, "subscript", symbol.subscript());
    }

    /** A printed value: "minus 5 V". */
    public static String value(Printed value, Language language) {
        StringBuilder text = new StringBuilder();
        for (char c : value.text().toCharArray()) {
            if (c == QuantityWriter.NO_BREAK_SPACE) {
                text.append(' ');
            } else if (c != QuantityWriter.GROUP_SPACE) {
                text.append(c);
            }
        }
        boolean negative = text.length() > 0 && text.charAt(0) == QuantityWriter.MINUS;
        String spoken = powerOfTen(text.substring(negative ? 1 : 0), language);
        return negative ? language.say("spoken.negative", "of", spoken) : spoken;
    }

    public static String symbolic(Expression expression, Notation notation) {
        return new Line(notation, Shown.SYMBOLS).of(expression).text();
    }

    /** Names replaced by their printed values. */
    public static String substituted(Expression expression, Notation notation) {
        return new Line(notation, Shown.VALUES).of(expression).text();
    }

    public static String symbolic(Condition condition, Notation notation) {
        return new Conditions(notation, Shown.SYMBOLS).of(condition);
    }

    public static String substituted(Condition condition, Notation notation) {
        return new Conditions(notation, Shown.VALUES).of(condition);
    }

    /** Words in which symbols stand as they are typed, {@code V_s}: the same with the symbols as they are read. */
    public static String words(String typed) {
        StringBuilder read = new StringBuilder(typed);
        for (int i = 1; i + 1 < typed.length(); i++) {
            if (typed.charAt(i) == '_'
                    && Character.isLetter(typed.charAt(i - 1))
                    && Character.isLetterOrDigit(typed.charAt(i + 1))) {
                read.setCharAt(i, ' ');
            }
        }
        return read.toString();
    }

    private static String powerOfTen(String text, Language language) {
        int ten = text.indexOf("×10");
        if (ten < 0) {
            return text;
        }
        StringBuilder digits = new StringBuilder();
        int at = ten + "×10".length();
        while (at < text.length() && Superscript.read(text.charAt(at)) != 0) {
            digits.append(Superscript.read(text.charAt(at)));
            at++;
        }
        boolean negative = digits.length() > 0 && digits.charAt(0) == '-';
        String exponent = negative ? language.say("spoken.negative", "of", digits.substring(1)) : digits.toString();
        return language.say("spoken.power-of-ten", "number", text.substring(0, ten), "exponent", exponent)
                + text.substring(at);
    }

    private static String letters(String letters, Language language) {
        StringBuilder text = new StringBuilder();
        for (char letter : letters.toCharArray()) {
            String key = greek(letter);
            text.append(key.isEmpty() ? String.valueOf(letter) : language.say(key));
        }
        return text.toString();
    }

    /** The key of a Greek letter's name; empty for other letters. */
    private static String greek(char letter) {
        return switch (letter) {
            case '\u03b1' -> "spoken.greek.alpha";
            case '\u03b2' -> "spoken.greek.beta";
            case '\u03b3' -> "spoken.greek.gamma";
            case '\u03b4' -> "spoken.greek.delta";
            case '\u03b5' -> "spoken.greek.epsilon";
            case '\u03b6' -> "spoken.greek.zeta";
            case '\u03b7' -> "spoken.greek.eta";
            case '\u03b8' -> "spoken.greek.theta";
            case '\u03ba' -> "spoken.greek.kappa";
            case '\u03bb' -> "spoken.greek.lambda";
            case '\u03bc' -> "spoken.greek.mu";
            case '\u03bd' -> "spoken.greek.nu";
            case '\u03be' -> "spoken.greek.xi";
            case '\u03c0' -> "spoken.greek.pi";
            case '\u03c1' -> "spoken.greek.rho";
            case '\u03c3' -> "spoken.greek.sigma";
            case '\u03c4' -> "spoken.greek.tau";
            case '\u03c6' -> "spoken.greek.phi";
            case '\u03c7' -> "spoken.greek.chi";
            case '\u03c8' -> "spoken.greek.psi";
            case '\u03c9' -> "spoken.greek.omega";
            case '\u0394' -> "spoken.greek.capital-delta";
            case '\u0398' -> "spoken.greek.capital-theta";
            case '\u03a3' -> "spoken.greek.capital-sigma";
            case '\u03a6' -> "spoken.greek.capital-phi";
            case '\u03a8' -> "spoken.greek.capital-psi";
            case '\u03a9' -> "spoken.greek.capital-omega";
            default -> "";
        };
    }

    private static final class Conditions extends ConditionLine {
        private final Notation notation;
        private final Shown shown;
        private final Language language;

        Conditions(Notation notation, Shown shown) {
            this.notation = notation;
            this.shown = shown;
            this.language = notation.language();
        }

        @Override
        public String comparison(Condition.Comparison comparison) {
            if (ofWords(comparison, notation)) {
                String left = leftWord(comparison, notation, shown);
                String right = rightWord(comparison, notation);
                return comparison.relation() == Condition.Relation.EQUAL
                        ? language.say("spoken.word-is", "left", left, "right", right)
                        : language.say("spoken.word-is-not", "left", left, "right", right);
            }
            Line line = new Line(notation, shown);
            String left = line.of(comparison.left()).text();
            String right = line.of(comparison.right()).text();
            return switch (comparison.relation()) {
                case LESS -> language.say("spoken.less", "left", left, "right", right);
                case AT_MOST -> language.say("spoken.at-most", "left", left, "right", right);
                case MORE -> language.say("spoken.more", "left", left, "right", right);
                case AT_LEAST -> language.say("spoken.at-least", "left", left, "right", right);
                case EQUAL -> language.say("spoken.equal", "left", left, "right", right);
                case UNEQUAL -> language.say("spoken.unequal", "left", left, "right", right);
            };
        }

        @Override
        String and(String left, String right) {
            return language.say("spoken.and", "left", left, "right", right);
        }

        @Override
        String or(String left, String right) {
            return language.say("spoken.or", "left", left, "right", right);
        }

        @Override
        String not(String condition) {
            return language.say("spoken.not", "condition", condition);
        }

        @Override
        String parenthesised(String condition) {
            return language.say("spoken.brackets", "of", condition);
        }
    }

    private static final class Line extends LineFold {
        private final Notation notation;
        private final Shown shown;
        private final Language language;

        Line(Notation notation, Shown shown) {
            this.notation = notation;
            this.shown = shown;
            this.language = notation.language();
        }

        @Override
        String inParentheses(String text) {
            return language.say("spoken.brackets", "of", text);
        }

        @Override
        String plus(String left, String right) {
            return language.say("spoken.plus", "left", left, "right", right);
        }

        @Override
        String minus(String left, String right) {
            return language.say("spoken.minus", "left", left, "right", right);
        }

        @Override
        String negated(String of) {
            return language.say("spoken.negative", "of", of);
        }

        @Override
        String over(String above, String below) {
            return language.say("spoken.over", "above", above, "below", below);
        }

        @Override
        String times(String left, String right, boolean numbers) {
            return language.say("spoken.times", "left", left, "right", right);
        }

        @Override
        public Piece constant(Expression.Constant constant) {
            Printed printed = PrintedConstant.of(constant, notation.marker());
            return Piece.value(value(printed, language), printed);
        }

        @Override
        public Piece name(Expression.Name name) {
            Printed value = notation.values().get(name.id());
            return shown == Shown.VALUES && value != null
                    ? Piece.value(value(value, language), value)
                    : Piece.atom(symbol(notation.symbol(name.id()), language));
        }

        @Override
        Piece wholePower(Piece base, int exponent) {
            if (exponent == 2) {
                return Piece.factor(language.say("spoken.squared", "base", base.text()));
            } else if (exponent == 3) {
                return Piece.factor(language.say("spoken.cubed", "base", base.text()));
            }
            String size = Integer.toString(Math.abs(exponent));
            return toThePower(base, exponent < 0 ? language.say("spoken.negative", "of", size) : size);
        }

        @Override
        Piece power(Piece base, Piece exponent) {
            return toThePower(base, exponent.text());
        }

        private Piece toThePower(Piece base, String exponent) {
            return Piece.factor(language.say("spoken.power", "base", base.text(), "exponent", exponent));
        }

        @Override
        Piece measure(String name, List<Piece> arguments) {
            String words = name.replace('_', ' ');
            return Piece.factor(
                    arguments.isEmpty()
                            ? words
                            : language.say("spoken.measure", "name", words, "of", listed(arguments)));
        }

        @Override
        Piece function(Function function, List<Expression> arguments) {
            Piece first = of(arguments.get(0));
            return switch (function) {
                case SQRT, ABS, FLOOR, CEILING, ROUND, EXP, LN, LOG10, SIN, COS, TAN, ATAN ->
                    Piece.factor(applied(
                            function, unsigned(first, Piece.Level.FACTOR).text()));
                case MIN -> Piece.phrase(language.say("spoken.smallest", "of", listed(of(arguments))));
                case MAX -> Piece.phrase(language.say("spoken.largest", "of", listed(of(arguments))));
                case MOD ->
                    Piece.phrase(language.say("spoken.remainder", "of", operand(first), "by", second(arguments)));
                case PARALLEL -> Piece.phrase(parallel(of(arguments)));
                case NEXT_UP, NEXT_DOWN, NEAREST -> Piece.phrase(preferred(function, arguments, first.text()));
            };
        }

        private String applied(Function function, String of) {
            return switch (function) {
                case SQRT -> language.say("spoken.square-root", "of", of);
                case ABS -> language.say("spoken.absolute-value", "of", of);
                case FLOOR -> language.say("spoken.floor", "of", of);
                case CEILING -> language.say("spoken.ceiling", "of", of);
                case ROUND -> language.say("spoken.round", "of", of);
                case EXP -> language.say("spoken.exponential", "of", of);
                case LN -> language.say("spoken.natural-logarithm", "of", of);
                case LOG10 -> language.say("spoken.logarithm-to-base-10", "of", of);
                case SIN -> language.say("spoken.sine", "of", of);
                case COS -> language.say("spoken.cosine", "of", of);
                case TAN -> language.say("spoken.tangent", "of", of);
                case ATAN -> language.say("spoken.arc-tangent", "of", of);
                case MIN, MAX, MOD, PARALLEL, NEXT_UP, NEXT_DOWN, NEAREST ->
                    throw new IllegalArgumentException(function.written() + " takes more than one argument");
            };
        }

        private String preferred(Function function, List<Expression> arguments, String of) {
            String series =
                    Function.series(arguments.get(1)).map(PreferredSeries::name).orElse("");
            return switch (function) {
                case NEXT_UP -> language.say("spoken.next-up", "series", series, "of", of);
                case NEXT_DOWN -> language.say("spoken.next-down", "series", series, "of", of);
                default -> language.say("spoken.nearest", "series", series, "of", of);
            };
        }

        private String operand(Piece argument) {
            return unsigned(argument, Piece.Level.RATIO).text();
        }

        private String second(List<Expression> arguments) {
            return operand(of(arguments.get(1)));
        }

        private String listed(List<Piece> arguments) {
            String all = operand(arguments.get(0));
            for (Piece next : arguments.subList(1, arguments.size())) {
                all = language.say("spoken.arguments", "before", all, "next", operand(next));
            }
            return all;
        }

        private String parallel(List<Piece> arguments) {
            String all = operand(arguments.get(0));
            for (Piece next : arguments.subList(1, arguments.size())) {
                all = language.say("spoken.in-parallel", "before", all, "next", operand(next));
            }
            return all;
        }
    }
}
