package ampersheet.formula;

import java.util.List;
import java.util.OptionalInt;

/**
 * Folds a tree into one line, with parentheses only where the reading would change without them, or where ISO 80000-2
 * asks for them (after a solidus). The words and signs are the subclass's, and so is their order.
 */
abstract class LineFold implements Fold<Piece> {
    abstract String inParentheses(String text);

    abstract String plus(String left, String right);

    abstract String minus(String left, String right);

    abstract String negated(String of);

    abstract String over(String above, String below);

    /** @param numbers whether there are digits on both sides */
    abstract String times(String left, String right, boolean numbers);

    /** @param base already in parentheses if it needs them */
    abstract Piece wholePower(Piece base, int exponent);

    /** @param base already in parentheses if it needs them */
    abstract Piece power(Piece base, Piece exponent);

    abstract Piece function(Function function, List<Expression> arguments);

    abstract Piece measure(String name, List<Piece> arguments);

    final Piece parenthesised(Piece piece) {
        return Piece.atom(inParentheses(piece.text()));
    }

    /** The piece itself if it binds that tightly and has no sign in front; else in parentheses. */
    final Piece unsigned(Piece piece, Piece.Level lowest) {
        return piece.atLeast(lowest) && !piece.signed() ? piece : parenthesised(piece);
    }

    private Piece first(Piece piece, Piece.Level lowest) {
        return piece.atLeast(lowest) ? piece : parenthesised(piece);
    }

    @Override
    public Piece negative(Expression.Negative negative) {
        Piece of = unsigned(of(negative.of()), Piece.Level.PRODUCT);
        boolean solidus = of.solidus() || of.level() == Piece.Level.RATIO;
        return new Piece(negated(of.text()), Piece.Level.PRODUCT, true, solidus, false, of.numberLast());
    }

    @Override
    public Piece sum(Expression.Sum sum) {
        Piece left = first(of(sum.left()), Piece.Level.SUM);
        Piece right = unsigned(of(sum.right()), Piece.Level.SUM);
        return joined(left, right, plus(left.text(), right.text()), Piece.Level.SUM);
    }

    @Override
    public Piece difference(Expression.Difference difference) {
        Piece left = first(of(difference.left()), Piece.Level.SUM);
        Piece right = unsigned(of(difference.right()), Piece.Level.PRODUCT);
        return joined(left, right, minus(left.text(), right.text()), Piece.Level.SUM);
    }

    @Override
    public Piece product(Expression.Product product) {
        Piece left = of(product.left());
        left = left.solidus() ? parenthesised(left) : first(left, Piece.Level.PRODUCT);
        Piece right = unsigned(of(product.right()), Piece.Level.PRODUCT);
        boolean numbers = left.numberLast() && right.numberFirst();
        return joined(left, right, times(left.text(), right.text(), numbers), Piece.Level.PRODUCT);
    }

    @Override
    public Piece quotient(Expression.Quotient quotient) {
        Piece above = of(quotient.numerator());
        boolean ratio = above.level() == Piece.Level.RATIO;
        above = above.solidus() || ratio ? parenthesised(above) : first(above, Piece.Level.PRODUCT);
        Piece below = unsigned(of(quotient.denominator()), Piece.Level.FACTOR);
        return new Piece(
                over(above.text(), below.text()),
                Piece.Level.PRODUCT,
                above.signed(),
                true,
                above.numberFirst(),
                below.numberLast());
    }

    @Override
    public Piece power(Expression.Power power) {
        Piece base = unsigned(of(power.base()), Piece.Level.ATOM);
        OptionalInt whole = DimensionRules.wholeNumber(power.exponent());
        return whole.isPresent() && Math.abs(whole.getAsInt()) < 100
                ? wholePower(base, whole.getAsInt())
                : power(base, unsigned(of(power.exponent()), Piece.Level.ATOM));
    }

    @Override
    public Piece call(Expression.Call call) {
        return Function.named(call.function())
                .map(function -> function(function, call.arguments()))
                .orElseGet(() -> measure(call.function(), of(call.arguments())));
    }

    private static Piece joined(Piece left, Piece right, String text, Piece.Level level) {
        return new Piece(text, level, left.signed(), right.solidus(), left.numberFirst(), right.numberLast());
    }
}
