package ampersheet.formula;

import ampersheet.language.Language;
import ampersheet.quantity.PreferredSeries;
import ampersheet.quantity.QuantityWriter.Printed;
import java.util.ArrayList;
import java.util.List;

/**
 * Folds a tree into one line of text: {@code (V_s − V_f) / I_f} and {@code (9 V − 2 V) / 16 mA}. Parentheses only where
 * the reading needs them; {@code ·} between symbols, {@code ×} between numbers; whole powers as superscripts; {@code a
 * ∥ b} for {@code parallel(a, b)}.
 */
public final class PlainText {
    private PlainText() {}

    public static String symbolic(Expression expression, Notation notation) {
        return new Line(notation, Shown.SYMBOLS).of(expression).text();
    }

    /** Names replaced by their printed values; negative values in parentheses unless they stand first. */
    public static String substituted(Expression expression, Notation notation) {
        return new Line(notation, Shown.VALUES).of(expression).text();
    }

    public static String symbolic(Condition condition, Notation notation) {
        return new Conditions(notation, Shown.SYMBOLS).of(condition);
    }

    public static String substituted(Condition condition, Notation notation) {
        return new Conditions(notation, Shown.VALUES).of(condition);
    }

    /** The words for the preferred value beside another. */
    static String preferred(Function function, List<Expression> arguments, String of, Language language) {
        String series =
                Function.series(arguments.get(1)).map(PreferredSeries::name).orElse("");
        return switch (function) {
            case NEXT_UP -> language.say("spoken.printed.next-up", "series", series, "of", of);
            case NEXT_DOWN -> language.say("spoken.printed.next-down", "series", series, "of", of);
            default -> language.say("spoken.printed.nearest", "series", series, "of", of);
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
            String sign = " " + comparison.relation().printed() + " ";
            if (ofWords(comparison, notation)) {
                return leftWord(comparison, notation, shown) + sign + rightWord(comparison, notation);
            }
            Line line = new Line(notation, shown);
            return line.of(comparison.left()).text()
                    + sign
                    + line.of(comparison.right()).text();
        }

        @Override
        String and(String left, String right) {
            return notation.language().say("spoken.printed.and", "left", left, "right", right);
        }

        @Override
        String or(String left, String right) {
            return notation.language().say("spoken.printed.or", "left", left, "right", right);
        }

        @Override
        String not(String condition) {
            return notation.language().say("spoken.printed.not", "condition", condition);
        }

        @Override
        String parenthesised(String condition) {
            return "(" + condition + ")";
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
        String inParentheses(String text) {
            return "(" + text + ")";
        }

        @Override
        String plus(String left, String right) {
            return left + " + " + right;
        }

        @Override
        String minus(String left, String right) {
            return left + " − " + right;
        }

        @Override
        String negated(String of) {
            return "−" + of;
        }

        @Override
        String over(String above, String below) {
            return above + " / " + below;
        }

        @Override
        String times(String left, String right, boolean numbers) {
            return left + (numbers || shown == Shown.VALUES ? " × " : " · ") + right;
        }

        @Override
        public Piece constant(Expression.Constant constant) {
            Printed printed = PrintedConstant.of(constant, notation.marker());
            return Piece.value(printed.text(), printed);
        }

        @Override
        public Piece name(Expression.Name name) {
            Printed value = notation.values().get(name.id());
            if (shown == Shown.VALUES && value != null) {
                return Piece.value(value.text(), value);
            }
            Symbol symbol = notation.symbol(name.id());
            return symbol.letters().indexOf(' ') >= 0 ? Piece.factor(symbol.plain()) : Piece.atom(symbol.plain());
        }

        @Override
        Piece wholePower(Piece base, int exponent) {
            return Piece.factor(base.text() + Superscript.of(exponent));
        }

        @Override
        Piece power(Piece base, Piece exponent) {
            return Piece.factor(base.text() + "^" + exponent.text());
        }

        @Override
        Piece measure(String name, List<Piece> arguments) {
            return called(name, arguments);
        }

        @Override
        Piece function(Function function, List<Expression> arguments) {
            Piece first = of(arguments.get(0));
            return switch (function) {
                case SQRT -> Piece.factor("√(" + first.text() + ")");
                case ABS -> Piece.atom("|" + first.text() + "|");
                case FLOOR -> Piece.atom("⌊" + first.text() + "⌋");
                case CEILING -> Piece.atom("⌈" + first.text() + "⌉");
                case LOG10 -> called("log₁₀", List.of(first));
                case MOD ->
                    Piece.phrase(unsigned(first, Piece.Level.RATIO).text() + " mod "
                            + unsigned(of(arguments.get(1)), Piece.Level.RATIO).text());
                case PARALLEL -> Piece.phrase(between(" ∥ ", arguments));
                case NEXT_UP, NEXT_DOWN, NEAREST ->
                    Piece.phrase(preferred(function, arguments, first.text(), notation.language()));
                default -> called(function.written(), of(arguments));
            };
        }

        private String between(String sign, List<Expression> operands) {
            List<String> texts = new ArrayList<>();
            for (Piece piece : of(operands)) {
                texts.add(unsigned(piece, Piece.Level.RATIO).text());
            }
            return String.join(sign, texts);
        }

        private static Piece called(String name, List<Piece> arguments) {
            List<String> texts = new ArrayList<>();
            for (Piece argument : arguments) {
                texts.add(argument.text());
            }
            return Piece.factor(name + "(" + String.join(", ", texts) + ")");
        }
    }
}
