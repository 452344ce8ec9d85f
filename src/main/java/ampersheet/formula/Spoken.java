package ampersheet.formula;

import ampersheet.quantity.PreferredSeries;
import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.QuantityWriter.Printed;
import java.util.ArrayList;
import java.util.List;

/**
 * Folds a tree into English as it is read aloud, for the text alternative of an equation: "open bracket V s minus V f
 * close bracket over I f". Brackets are spoken where they are printed, so that it can be understood in one way only.
 */
public final class Spoken {
    private Spoken() {}

    /** "V s", "theta JA", "delta T". */
    public static String symbol(Symbol symbol) {
        return symbol.spoken();
    }

    /** A printed value: "minus 5 V". */
    public static String value(Printed value) {
        StringBuilder text = new StringBuilder();
        for (char c : value.text().toCharArray()) {
            if (c == QuantityWriter.MINUS) {
                text.append("minus ");
            } else if (c == QuantityWriter.NO_BREAK_SPACE) {
                text.append(' ');
            } else if (c != QuantityWriter.GROUP_SPACE) {
                text.append(c);
            }
        }
        return powerOfTen(text.toString());
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

    private static String powerOfTen(String text) {
        int ten = text.indexOf("×10");
        if (ten < 0) {
            return text;
        }
        StringBuilder exponent = new StringBuilder();
        int at = ten + "×10".length();
        while (at < text.length() && Superscript.read(text.charAt(at)) != 0) {
            char c = Superscript.read(text.charAt(at));
            exponent.append(c == '-' ? "minus " : String.valueOf(c));
            at++;
        }
        return text.substring(0, ten) + " times 10 to the power " + exponent + text.substring(at);
    }

    private static String spoken(Condition.Relation relation) {
        return switch (relation) {
            case LESS -> "is less than";
            case AT_MOST -> "is at most";
            case MORE -> "is more than";
            case AT_LEAST -> "is at least";
            case EQUAL -> "equals";
            case UNEQUAL -> "does not equal";
        };
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
            if (ofWords(comparison, notation)) {
                String is = comparison.relation() == Condition.Relation.EQUAL ? " is " : " is not ";
                return leftWord(comparison, notation, shown) + is + rightWord(comparison);
            }
            Line line = new Line(notation, shown);
            return line.of(comparison.left()).text() + " " + spoken(comparison.relation()) + " "
                    + line.of(comparison.right()).text();
        }

        @Override
        String joined(String left, String word, String right) {
            return left + " " + word + " " + right;
        }

        @Override
        String not(String condition) {
            return "not " + condition;
        }

        @Override
        String parenthesised(String condition) {
            return "open bracket " + condition + " close bracket";
        }
    }

    private static final class Line extends LineFold {
        private final Notation notation;
        private final Shown shown;

        Line(Notation notation, Shown shown) {
            this.notation = notation;
            this.shown = shown;
        }

        @Override
        String open() {
            return "open bracket ";
        }

        @Override
        String close() {
            return " close bracket";
        }

        @Override
        String plus() {
            return " plus ";
        }

        @Override
        String minus() {
            return " minus ";
        }

        @Override
        String negative() {
            return "minus ";
        }

        @Override
        String over() {
            return " over ";
        }

        @Override
        String times(boolean numbers) {
            return " times ";
        }

        @Override
        public Piece constant(Expression.Constant constant) {
            Printed printed = PrintedConstant.of(constant, notation.marker());
            return Piece.value(value(printed), printed);
        }

        @Override
        public Piece name(Expression.Name name) {
            Printed value = notation.values().get(name.id());
            return shown == Shown.VALUES && value != null
                    ? Piece.value(value(value), value)
                    : Piece.atom(notation.symbol(name.id()).spoken());
        }

        @Override
        Piece wholePower(Piece base, int exponent) {
            return Piece.factor(base.text()
                    + switch (exponent) {
                        case 2 -> " squared";
                        case 3 -> " cubed";
                        default -> " to the power " + (exponent < 0 ? "minus " : "") + Math.abs(exponent);
                    });
        }

        @Override
        Piece power(Piece base, Piece exponent) {
            return Piece.factor(base.text() + " to the power " + exponent.text());
        }

        @Override
        Piece measure(String name, List<Piece> arguments) {
            return Piece.factor(name.replace('_', ' ') + " of " + listed(arguments));
        }

        @Override
        Piece function(Function function, List<Expression> arguments) {
            Piece first = of(arguments.get(0));
            return switch (function) {
                case SQRT -> applied("the square root of ", first);
                case ABS -> applied("the absolute value of ", first);
                case FLOOR -> applied("the whole number at or below ", first);
                case CEILING -> applied("the whole number at or above ", first);
                case ROUND -> applied("the whole number nearest to ", first);
                case EXP -> applied("the exponential of ", first);
                case LN -> applied("the natural logarithm of ", first);
                case LOG10 -> applied("the logarithm to base 10 of ", first);
                case SIN -> applied("the sine of ", first);
                case COS -> applied("the cosine of ", first);
                case TAN -> applied("the tangent of ", first);
                case ATAN -> applied("the arc tangent of ", first);
                case MIN -> Piece.phrase("the smallest of " + listed(of(arguments)));
                case MAX -> Piece.phrase("the largest of " + listed(of(arguments)));
                case MOD ->
                    Piece.phrase("the remainder of "
                            + unsigned(first, Piece.Level.RATIO).text() + " divided by "
                            + unsigned(of(arguments.get(1)), Piece.Level.RATIO).text());
                case PARALLEL -> Piece.phrase(joined(" in parallel with ", of(arguments)));
                case NEXT_UP -> Piece.phrase("the next " + series(arguments) + " value at or above " + first.text());
                case NEXT_DOWN -> Piece.phrase("the next " + series(arguments) + " value at or below " + first.text());
                case NEAREST -> Piece.phrase("the nearest " + series(arguments) + " value to " + first.text());
            };
        }

        private Piece applied(String words, Piece argument) {
            return Piece.factor(words + unsigned(argument, Piece.Level.FACTOR).text());
        }

        private String listed(List<Piece> arguments) {
            return joined(" and ", arguments);
        }

        private String joined(String words, List<Piece> arguments) {
            List<String> texts = new ArrayList<>();
            for (Piece argument : arguments) {
                texts.add(unsigned(argument, Piece.Level.RATIO).text());
            }
            return String.join(words, texts);
        }

        private static String series(List<Expression> arguments) {
            return Function.series(arguments.get(1)).map(PreferredSeries::name).orElse("");
        }
    }
}
