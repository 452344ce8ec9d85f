package ampersheet.problem;

import ampersheet.formula.Condition;
import ampersheet.formula.Evaluation;
import ampersheet.formula.Expression;
import ampersheet.formula.Values;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Elementary;
import ampersheet.quantity.PreferredSeries;
import ampersheet.quantity.Quantity;
import ampersheet.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * Where a value jumps: preferred values, whole numbers, comparisons, printed digits. A draw this close to a jump would
 * let the last bits of the arithmetic decide what a learner is told.
 */
final class Boundaries {
    static final double NEAR = 1e-9;

    private Boundaries() {}

    /** Every call in the tree whose value jumps. */
    static List<Expression.Call> jumps(Expression expression) {
        List<Expression.Call> found = new ArrayList<>();
        collect(expression, found);
        return List.copyOf(found);
    }

    /** Every comparison in the tree. */
    static List<Condition.Comparison> comparisons(Condition condition) {
        List<Condition.Comparison> found = new ArrayList<>();
        condition.forEachComparison(found::add);
        return List.copyOf(found);
    }

    private static void collect(Expression expression, List<Expression.Call> found) {
        for (Expression part : expression.parts()) {
            collect(part, found);
        }
        if (expression instanceof Expression.Call call) {
            switch (call.function()) {
                case "next_up", "next_down", "nearest", "floor", "ceiling", "round", "mod" -> found.add(call);
                default -> {}
            }
        }
    }

    /** Whether the argument of a jumping function lies within 1e-9 of the jump. */
    static boolean near(Expression.Call jump, Values values) {
        double x = Evaluation.evaluate(jump.arguments().get(0), values).value();
        switch (jump.function()) {
            case "next_up", "next_down": {
                double member = x > 0 ? series(jump).nearest(x) : Double.NaN;
                return Math.abs(x / member - 1) <= NEAR;
            }
            case "nearest": {
                if (!(x > 0)) {
                    return false;
                }
                double below = series(jump).nextDown(x);
                double above = series(jump).nextUp(x);
                return above > below && Math.abs(x / below - above / x) <= NEAR * (above / x);
            }
            case "floor", "ceiling":
                return nearWhole(x);
            case "round":
                return Math.abs(x - Math.floor(x) - 0.5) <= NEAR * Math.max(1, Math.abs(x));
            case "mod": {
                double divisor =
                        Evaluation.evaluate(jump.arguments().get(1), values).value();
                return !(Elementary.isWhole(x) && Elementary.isWhole(divisor))
                        && (nearWhole(x / divisor) || Elementary.isWhole(x / divisor));
            }
            default:
                throw new IllegalArgumentException(jump.function() + " does not jump");
        }
    }

    /**
     * Whether rounding errors could turn the comparison: its sides are within 1e-9 of each other, unless both are whole
     * numbers, or are numbers as they were drawn or written, which no arithmetic has touched.
     *
     * @param drawn names of givens and constants
     */
    static boolean near(Condition.Comparison comparison, Values values, Set<String> drawn) {
        Expression left = comparison.left();
        Expression right = comparison.right();
        if (isWord(left, values) || isWord(right, values)) {
            return false;
        }
        Quantity a = Evaluation.evaluate(left, values);
        Quantity b = Evaluation.evaluate(right, values);
        if (a.dimension().equals(Dimension.ONE) && Elementary.isWhole(a.value()) && Elementary.isWhole(b.value())) {
            return false;
        }
        if (untouched(left, drawn) && untouched(right, drawn)) {
            return false;
        }
        return margin(comparison, values) <= NEAR;
    }

    /** How far the sides lie apart, relative to the larger; of words, infinite. */
    static double margin(Condition.Comparison comparison, Values values) {
        Expression left = comparison.left();
        Expression right = comparison.right();
        if (isWord(left, values) || isWord(right, values)) {
            return Double.POSITIVE_INFINITY;
        }
        double a = Evaluation.evaluate(left, values).value();
        double b = Evaluation.evaluate(right, values).value();
        double scale = Math.max(scale(left, a, values), scale(right, b, values));
        return scale == 0 ? 0 : Math.abs(a - b) / scale;
    }

    /** Whether the printed digits hang on a rounding of exactly five, to within 1e-9 of the value. */
    static boolean roundingTie(double si, Unit unit, int figures) {
        double shown = Math.abs(unit.fromSi(si));
        if (shown == 0 || figures < 1) {
            return false;
        }
        double leading = Math.floor(Elementary.log10(shown));
        double digits = shown / Elementary.power(10, leading - figures + 1);
        return Math.abs(digits - Math.floor(digits) - 0.5) <= NEAR * digits;
    }

    /** Close to a whole number without being one. */
    private static boolean nearWhole(double x) {
        return !Elementary.isWhole(x) && Math.abs(x - Math.rint(x)) <= NEAR * Math.max(1, Math.abs(x));
    }

    private static boolean isWord(Expression side, Values values) {
        return side instanceof Expression.Name name && values.words().containsKey(name.id());
    }

    private static boolean untouched(Expression side, Set<String> drawn) {
        return side instanceof Expression.Name name && drawn.contains(name.id()) || side instanceof Expression.Constant;
    }

    /** The size of the largest summand: what is left of 5 V − 4.9 V carries the rounding error of 5 V. */
    private static double scale(Expression expression, double value, Values values) {
        if (expression instanceof Expression.Sum
                || expression instanceof Expression.Difference
                || expression instanceof Expression.Negative) {
            double largest = 0;
            for (Expression part : expression.parts()) {
                largest = Math.max(
                        largest, scale(part, Evaluation.evaluate(part, values).value(), values));
            }
            return largest;
        }
        return Math.abs(value);
    }

    private static PreferredSeries series(Expression.Call call) {
        Expression named = call.arguments().get(1);
        return PreferredSeries.valueOf(((Expression.Name) named).id().toUpperCase(Locale.ROOT));
    }
}
