package ampersheet.formula;

import ampersheet.quantity.Unit;
import java.util.ArrayList;
import java.util.List;

/**
 * Reads formulas. Infix, lowest to highest: {@code or}, {@code and}, {@code not}, one comparison, {@code + -}, {@code *
 * /}, prefix {@code -}, {@code ^} (binds to the right, and tighter than a minus before it). A number may be followed by
 * a unit ({@code 1.2 V}, {@code 25 degC}, {@code 50 K/W}). Function calls as {@code parallel(R1, R2)}.
 *
 * <p><b>Units.</b> A unit stands after its number, with or without a blank between. It is the longest text that is a
 * unit: one unit word, then, without any blank, {@code ^} and a whole number, {@code /} or {@code *} and another unit
 * word, or {@code /} and units in parentheses. {@code 50 K/W} is one number with a unit; {@code 50 K / W} divides 50 K
 * by the quantity W; {@code 2 V*3} is 6 V; {@code 3 m^2} is 3 square metres; the square of 3 V is {@code (3 V)^2}, and
 * {@code 3 V ^ 2} is refused since it could be either. {@code -40 degC} is a point on the scale, 233.15 K, not the
 * negative of 40 degC.
 *
 * <p><b>Words.</b> {@code order == serpentine} compares a word given; a word with a blank is quoted: {@code "top
 * left"}.
 *
 * <p><b>Limits.</b> 1000 characters and 100 nestings, so that a hostile template ends in a fault, not in a full stack.
 */
public final class FormulaReader {
    static final int MOST_CHARACTERS = 1000;
    static final int MOST_NESTINGS = 100;

    private static final int OR = 1;
    private static final int AND = 2;
    private static final int NOT = 3;
    private static final int COMPARISON = 4;
    private static final int SUM = 5;
    private static final int PRODUCT = 6;
    private static final int PREFIX = 7;
    private static final int POWER = 8;

    /** What has been read so far is one of these. */
    private sealed interface Read {}

    private record AQuantity(Expression expression) implements Read {}

    private record ACondition(Condition condition) implements Read {}

    private record AQuotedWord(Expression.Name word) implements Read {}

    private final List<Token> tokens;
    private int at;
    private int nestings;

    private FormulaReader(String text) {
        if (text.length() > MOST_CHARACTERS) {
            throw new FormulaFault(
                    MOST_CHARACTERS,
                    "the formula is longer than " + MOST_CHARACTERS + " characters",
                    "a shorter formula",
                    "Split it into several steps.");
        }
        this.tokens = Lexer.tokens(text);
    }

    /** @throws FormulaFault at the character that does not fit */
    public static Expression expression(String text) {
        FormulaReader reader = new FormulaReader(text);
        Expression expression = reader.quantity(reader.whole());
        return expression;
    }

    /** @throws FormulaFault at the character that does not fit */
    public static Condition condition(String text) {
        FormulaReader reader = new FormulaReader(text);
        return reader.condition(reader.whole());
    }

    /**
     * Whether the text can name a quantity, a word or a step: a letter, then letters, digits and {@code _}; not
     * {@code and}, {@code or}, {@code not} or {@code pi}, which the language uses itself.
     */
    public static boolean isName(String text) {
        if (text.isEmpty()
                || !Lexer.letter(text.charAt(0))
                || Lexer.KEYWORDS.contains(text)
                || text.equals(Evaluation.PI)) {
            return false;
        }
        for (int i = 1; i < text.length(); i++) {
            if (!Lexer.letter(text.charAt(i)) && !Lexer.digit(text.charAt(i)) && text.charAt(i) != '_') {
                return false;
            }
        }
        return true;
    }

    /** Whether the language uses the word itself, so that nothing else may have it as its name. */
    public static boolean isReserved(String text) {
        return Lexer.KEYWORDS.contains(text)
                || text.equals(Evaluation.PI)
                || Function.named(text).isPresent()
                || Function.series(new Expression.Name(text, 0)).isPresent();
    }

    private Read whole() {
        if (peek().kind() == Token.Kind.END) {
            throw new FormulaFault(0, "the formula is empty", "a formula such as (Vs - Vf) / If", "Write the formula.");
        }
        Read read = parse(OR);
        if (peek().kind() != Token.Kind.END) {
            throw leftOver(peek());
        }
        return read;
    }

    private FormulaFault leftOver(Token token) {
        if (token.is(")")) {
            return new FormulaFault(
                    token.position(),
                    "a parenthesis closes that was never opened",
                    "an operator or the end",
                    "Take it out, or put the opening parenthesis in its place.");
        }
        if (token.is(",")) {
            return new FormulaFault(
                    token.position(),
                    "a comma only stands between the arguments of a function",
                    "an operator or the end",
                    "Write a decimal point in numbers: 1.5.");
        }
        return new FormulaFault(
                token.position(),
                token.described() + " stands here without an operator before it",
                "an operator such as + - * / ^ or the end",
                "For a product write *.");
    }

    /**
     * Reads on while operators bind at least as tightly as {@code weakest} (Pratt, "Top down operator precedence",
     * 1973).
     */
    private Read parse(int weakest) {
        nestings++;
        if (nestings > MOST_NESTINGS) {
            throw new FormulaFault(
                    peek().position(),
                    "the formula is nested more than " + MOST_NESTINGS + " deep",
                    "fewer parentheses and powers inside each other",
                    "Split it into several steps.");
        }
        Read left = operand();
        while (true) {
            Token operator = peek();
            int binding = binding(operator);
            if (binding < weakest) {
                break;
            }
            left = joined(left, operator, binding);
        }
        nestings--;
        return left;
    }

    private static int binding(Token token) {
        if (token.kind() == Token.Kind.NAME) {
            return token.text().equals("or") ? OR : token.text().equals("and") ? AND : 0;
        }
        if (token.kind() != Token.Kind.SIGN) {
            return 0;
        }
        return switch (token.text()) {
            case "<", "<=", ">", ">=", "==", "!=" -> COMPARISON;
            case "+", "-" -> SUM;
            case "*", "/" -> PRODUCT;
            case "^" -> POWER;
            default -> 0;
        };
    }

    private Read joined(Read left, Token operator, int binding) {
        int position = operator.position();
        if (binding == COMPARISON) {
            return comparison(left, operator);
        }
        if (binding == OR || binding == AND) {
            Condition first = condition(left);
            at++;
            Condition second = condition(parse(binding + 1));
            return new ACondition(
                    binding == OR
                            ? new Condition.Either(first, second, position)
                            : new Condition.Both(first, second, position));
        }
        Expression first = quantity(left);
        if (binding == POWER) {
            refuseUnitBeforePower(first, position);
        }
        at++;
        // A power binds to the right: its own strength is enough for what follows.
        Expression second = quantity(parse(binding == POWER ? POWER : binding + 1));
        return new AQuantity(
                switch (operator.text()) {
                    case "+" -> new Expression.Sum(first, second, position);
                    case "-" -> new Expression.Difference(first, second, position);
                    case "*" -> new Expression.Product(first, second, position);
                    case "/" -> new Expression.Quotient(first, second, position);
                    default -> new Expression.Power(first, second, position);
                });
    }

    private void refuseUnitBeforePower(Expression base, int position) {
        boolean parenthesised = at > 0 && tokens.get(at - 1).is(")");
        if (base instanceof Expression.Constant constant
                && !constant.unit().symbol().isEmpty()
                && !parenthesised) {
            throw new FormulaFault(
                    position,
                    "the power could be of the number with its unit or of the unit alone",
                    "parentheses around " + constant.asWritten() + " and its unit",
                    "Write (" + constant.asWritten() + " " + constant.unit().symbol() + ")^2,"
                            + " or without blanks for the power of a unit: 3 m^2.");
        }
    }

    private Read comparison(Read left, Token operator) {
        if (left instanceof ACondition) {
            throw new FormulaFault(
                    operator.position(),
                    "comparisons cannot be chained",
                    "and, or, or the end",
                    "Write two comparisons joined by and: a < b and b < c.");
        }
        at++;
        Condition.Relation relation = relation(operator.text());
        Read right = parse(COMPARISON + 1);
        if (left instanceof AQuotedWord quoted) {
            throw new FormulaFault(
                    quoted.word().position(),
                    "a quoted word stands on the left of " + relation.asWritten(),
                    "the name of a word given on the left",
                    "Exchange the two sides.");
        }
        if (!(right instanceof AQuotedWord quoted)) {
            return new ACondition(
                    new Condition.Comparison(quantity(left), relation, quantity(right), operator.position()));
        }
        if (relation != Condition.Relation.EQUAL && relation != Condition.Relation.UNEQUAL) {
            throw new FormulaFault(
                    operator.position(),
                    "words have no order",
                    "== or != before a quoted word",
                    "Compare a word with == or !=.");
        }
        return new ACondition(new Condition.Comparison(quantity(left), relation, quoted.word(), operator.position()));
    }

    private static Condition.Relation relation(String sign) {
        for (Condition.Relation relation : Condition.Relation.values()) {
            if (relation.asWritten().equals(sign)) {
                return relation;
            }
        }
        throw new IllegalArgumentException(sign + " is no comparison");
    }

    private Read operand() {
        Token token = peek();
        at++;
        switch (token.kind()) {
            case NUMBER:
                return new AQuantity(
                        new Expression.Constant(token.number(), token.unit(), token.text(), token.position()));
            case QUOTED:
                return new AQuotedWord(new Expression.Name(token.text(), token.position()));
            case NAME:
                return named(token);
            case SIGN:
                if (token.is("(")) {
                    Read inside = parse(OR);
                    close(token);
                    return inside;
                }
                if (token.is("-")) {
                    return negative(token);
                }
                throw missingOperand(token);
            default:
                throw missingOperand(token);
        }
    }

    private Read named(Token token) {
        if (token.text().equals("not")) {
            return new ACondition(new Condition.Not(condition(parse(NOT)), token.position()));
        }
        if (Lexer.KEYWORDS.contains(token.text())) {
            throw missingOperand(token);
        }
        if (!peek().is("(")) {
            return new AQuantity(new Expression.Name(token.text(), token.position()));
        }
        Token open = peek();
        at++;
        List<Expression> arguments = new ArrayList<>();
        if (!peek().is(")")) {
            arguments.add(quantity(parse(OR)));
            while (peek().is(",")) {
                at++;
                arguments.add(quantity(parse(OR)));
            }
        }
        close(open);
        return new AQuantity(new Expression.Call(token.text(), arguments, token.position()));
    }

    private Read negative(Token minus) {
        Token next = peek();
        boolean pointOnScale = next.kind() == Token.Kind.NUMBER && next.unit().offset() != 0;
        if (pointOnScale && !tokens.get(at + 1).is("^")) {
            at++;
            Unit unit = next.unit();
            return new AQuantity(new Expression.Constant(-next.number(), unit, "-" + next.text(), minus.position()));
        }
        return new AQuantity(new Expression.Negative(quantity(parse(PREFIX)), minus.position()));
    }

    private void close(Token open) {
        Token token = peek();
        if (!token.is(")")) {
            throw new FormulaFault(
                    token.position(),
                    "the parenthesis opened at character " + (open.position() + 1) + " is not closed before "
                            + token.described(),
                    "an operator or )",
                    "Close it, or write * for a product.");
        }
        at++;
    }

    private FormulaFault missingOperand(Token token) {
        Token before = at >= 2 ? tokens.get(at - 2) : null;
        String after = before == null ? "at the start" : "after " + before.described();
        if (token.is("+") && (before == null || before.is("("))) {
            return new FormulaFault(
                    token.position(),
                    "a plus needs something on its left",
                    "a number, a name or (",
                    "Leave the plus out.");
        }
        return new FormulaFault(
                token.position(),
                token.described() + " stands " + after + ", where a quantity is missing",
                "a number, a name, a function or (",
                token.kind() == Token.Kind.END
                        ? "Finish the formula, or take the last sign off."
                        : "Write the missing quantity, or take one of the signs out.");
    }

    private Expression quantity(Read read) {
        if (read instanceof AQuantity quantity) {
            return quantity.expression();
        }
        if (read instanceof AQuotedWord quoted) {
            throw new FormulaFault(
                    quoted.word().position(),
                    "a quoted word is not a quantity",
                    "a number, a name or (",
                    "A quoted word only stands after == or !=; names are written without quotes.");
        }
        throw new FormulaFault(
                ((ACondition) read).condition().position(),
                "a condition holds or does not; it has no value to go on with",
                "a formula that gives a quantity",
                "Take the comparison out, or write it under when: or require:.");
    }

    private Condition condition(Read read) {
        if (read instanceof ACondition condition) {
            return condition.condition();
        }
        Expression expression =
                read instanceof AQuantity quantity ? quantity.expression() : ((AQuotedWord) read).word();
        throw new FormulaFault(
                expression.position(),
                "this is a quantity, not something that holds or does not",
                "a comparison with < <= > >= == or !=",
                "Compare it with something, for example x > 0 V.");
    }

    private Token peek() {
        return tokens.get(at);
    }
}
