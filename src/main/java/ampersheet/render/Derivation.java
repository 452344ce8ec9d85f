package ampersheet.render;

import ampersheet.formula.Expression;
import ampersheet.formula.PlainText;
import ampersheet.sheet.Document.StepBlock;
import java.util.function.Function;

/**
 * Which lines of a worked step say something new: {@code symbol = formula}, {@code = numbers put in}, {@code = result}.
 * A line that would only repeat the one before is left out.
 *
 * @param width of the longest line in characters, about as MathML sets it: fractions upright
 */
public record Derivation(boolean formula, boolean numbers, boolean result, int width) {
    /** With the blanks around it. */
    private static final int SIGN = 3;

    /** @param step one that is shown */
    public static Derivation of(StepBlock step) {
        String result = step.result().orElseThrow().text();
        if (step.formula().isEmpty()) {
            return new Derivation(false, false, true, result.length());
        }
        String letters = PlainText.symbolic(step.formula().get(), step.notation());
        String numbers = PlainText.substituted(step.formula().get(), step.notation());
        boolean exact = step.result().get().exact();
        boolean numbersAreNew = !numbers.equals(letters) && !(exact && numbers.equals(result));
        boolean resultIsNew = !(exact && letters.equals(result));
        int width = width(step.formula().get(), part -> PlainText.symbolic(part, step.notation()));
        if (numbersAreNew) {
            width = Math.max(width, width(step.formula().get(), part -> PlainText.substituted(part, step.notation())));
        }
        return new Derivation(true, numbersAreNew, resultIsNew, width);
    }

    private static int width(Expression expression, Function<Expression, String> printed) {
        if (expression instanceof Expression.Quotient fraction) {
            return Math.max(width(fraction.numerator(), printed), width(fraction.denominator(), printed));
        } else if (expression instanceof Expression.Product product) {
            return width(product.left(), printed) + SIGN + width(product.right(), printed);
        } else if (expression instanceof Expression.Sum sum) {
            return width(sum.left(), printed) + SIGN + width(sum.right(), printed);
        } else if (expression instanceof Expression.Difference difference) {
            return width(difference.left(), printed) + SIGN + width(difference.right(), printed);
        }
        return printed.apply(expression).length();
    }
}
