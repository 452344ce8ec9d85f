package ampersheet.formula;

import ampersheet.quantity.Dimension;
import java.util.List;
import java.util.OptionalInt;

/** What the arithmetic asks of dimensions, and the sentence for each way of getting it wrong. */
final class DimensionRules {
    private static final int LARGEST_POWER = 9;
    private static final int LARGEST_EXPONENT = 99;

    private DimensionRules() {}

    static Dimension sum(Expression.Sum sum, Dimension left, Dimension right) {
        if (!left.equals(right)) {
            throw unlike(
                    sum.position(),
                    "+",
                    sum.left(),
                    left,
                    sum.right(),
                    right,
                    TradeWords.plural(right) + " are added to " + TradeWords.plural(left));
        }
        if (isPointOnScale(sum.left()) && isPointOnScale(sum.right())) {
            throw pointOnScale(sum.right(), "two temperatures are added");
        }
        return left;
    }

    static Dimension difference(Expression.Difference difference, Dimension left, Dimension right) {
        if (!left.equals(right)) {
            throw unlike(
                    difference.position(),
                    "-",
                    difference.left(),
                    left,
                    difference.right(),
                    right,
                    TradeWords.plural(right) + " are taken from " + TradeWords.plural(left));
        }
        return left;
    }

    static void compared(Condition.Comparison comparison, Dimension left, Dimension right) {
        if (!left.equals(right)) {
            throw unlike(
                    comparison.position(),
                    comparison.relation().asWritten(),
                    comparison.left(),
                    left,
                    comparison.right(),
                    right,
                    TradeWords.plural(left) + " are compared with " + TradeWords.plural(right));
        }
    }

    static Dimension negative(Expression.Negative negative, Dimension of) {
        if (isPointOnScale(negative.of())) {
            throw pointOnScale(negative.of(), "a temperature is made negative");
        }
        return of;
    }

    static Dimension product(Expression.Product product, Dimension left, Dimension right) {
        notScaled(product.left(), "a temperature in degrees Celsius is multiplied");
        notScaled(product.right(), "a temperature in degrees Celsius is multiplied");
        return left.times(right);
    }

    static Dimension quotient(Expression.Quotient quotient, Dimension numerator, Dimension denominator) {
        notScaled(quotient.numerator(), "a temperature in degrees Celsius is divided");
        notScaled(quotient.denominator(), "something is divided by a temperature in degrees Celsius");
        return numerator.over(denominator);
    }

    static Dimension power(Expression.Power power, Dimension base, Dimension exponent) {
        if (!exponent.equals(Dimension.ONE)) {
            throw new FormulaFault(
                    power.exponent().position(),
                    "the power is in " + TradeWords.symbol(exponent) + ", but a power is a plain number",
                    "a plain number after ^",
                    "Divide the power by a unit first, for example (t / (1 s)).");
        }
        if (base.equals(Dimension.ONE)) {
            return base;
        }
        OptionalInt whole = wholeNumber(power.exponent());
        if (whole.isEmpty() || Math.abs(whole.getAsInt()) > LARGEST_POWER) {
            throw new FormulaFault(
                    power.exponent().position(),
                    TradeWords.plural(base) + " can only be raised to a whole number from -9 to 9 that is written out",
                    "a whole number after ^, or a plain number before it",
                    "Use sqrt( ) for a root, or divide by a unit first, for example (x / (1 " + TradeWords.symbol(base)
                            + "))^1.5.");
        }
        Dimension result = base.power(whole.getAsInt());
        if (farFromOne(result)) {
            throw new FormulaFault(
                    power.position(),
                    "no quantity has a unit with powers this high",
                    "powers of units up to " + LARGEST_EXPONENT,
                    "Write the formula with smaller powers.");
        }
        return result;
    }

    /** For functions of the language; a series argument has no dimension and is not in {@code arguments}. */
    static Dimension call(Function function, Expression.Call call, List<Dimension> arguments) {
        Dimension first = arguments.get(0);
        switch (function.takes()) {
            case SERIES -> {
                return first;
            }
            case SQUARE -> {
                if (!first.isSquare()) {
                    throw new FormulaFault(
                            call.arguments().get(0).position(),
                            "the square root of " + TradeWords.plural(first) + " has no unit",
                            "a quantity whose unit is a square, such as V² or P * R",
                            "Check the formula under the root: its unit is " + TradeWords.symbol(first) + ".");
                }
                return first.squareRoot();
            }
            case NUMBER -> {
                for (int i = 0; i < arguments.size(); i++) {
                    if (!arguments.get(i).equals(Dimension.ONE)) {
                        String unit = TradeWords.symbol(arguments.get(i));
                        throw new FormulaFault(
                                call.arguments().get(i).position(),
                                function.written() + " is given " + TradeWords.plural(arguments.get(i)),
                                "a plain number in the parentheses of " + function.written(),
                                "Divide by a unit or by a quantity in " + unit + " first, for example x / (1 " + unit
                                        + ").");
                    }
                }
                return first;
            }
            default -> {
                for (int i = 1; i < arguments.size(); i++) {
                    Expression other = call.arguments().get(i);
                    Dimension second = arguments.get(i);
                    if (!first.equals(second)) {
                        throw unlike(
                                other.position(),
                                function.written(),
                                call.arguments().get(0),
                                first,
                                other,
                                second,
                                function.written() + " is given " + TradeWords.plural(first) + " and "
                                        + TradeWords.plural(second));
                    }
                }
                return first;
            }
        }
    }

    /** A whole number written out, perhaps with a minus: the only power that a unit can have. */
    static OptionalInt wholeNumber(Expression exponent) {
        if (exponent instanceof Expression.Negative negative && negative.of() instanceof Expression.Constant) {
            OptionalInt positive = wholeNumber(negative.of());
            return positive.isEmpty() ? positive : OptionalInt.of(-positive.getAsInt());
        }
        if (exponent instanceof Expression.Constant constant
                && constant.unit().factor() == 1
                && constant.unit().dimension().equals(Dimension.ONE)
                && constant.number() == (int) constant.number()) {
            return OptionalInt.of((int) constant.number());
        }
        return OptionalInt.empty();
    }

    private static FormulaFault unlike(
            int position,
            String sign,
            Expression left,
            Dimension leftDimension,
            Expression right,
            Dimension rightDimension,
            String problem) {
        return new FormulaFault(
                position,
                problem,
                "one unit for all of " + sign + "; here the left is " + in(leftDimension) + ", the right "
                        + in(rightDimension),
                remedy(left, leftDimension, right, rightDimension));
    }

    private static String in(Dimension dimension) {
        return dimension.equals(Dimension.ONE) ? "a plain number" : "in " + TradeWords.symbol(dimension);
    }

    private static String remedy(Expression left, Dimension leftDimension, Expression right, Dimension rightDimension) {
        if (left instanceof Expression.Constant constant && leftDimension.equals(Dimension.ONE)) {
            return giveUnit(constant, rightDimension);
        }
        if (right instanceof Expression.Constant constant && rightDimension.equals(Dimension.ONE)) {
            return giveUnit(constant, leftDimension);
        }
        if (leftDimension.equals(Dimension.ONE) || rightDimension.equals(Dimension.ONE)) {
            String unit = TradeWords.symbol(leftDimension.times(rightDimension));
            return "Check both sides: one of them lacks a factor in " + unit + ", or a division by one.";
        }
        return "Check both sides: the right one lacks a factor in "
                + TradeWords.symbol(leftDimension.over(rightDimension)) + ", or a name is not the one meant.";
    }

    private static String giveUnit(Expression.Constant constant, Dimension wanted) {
        return "Give the number its unit: " + constant.asWritten() + " " + TradeWords.symbol(wanted) + ".";
    }

    private static boolean farFromOne(Dimension dimension) {
        return Math.abs(dimension.metre()) > LARGEST_EXPONENT
                || Math.abs(dimension.kilogram()) > LARGEST_EXPONENT
                || Math.abs(dimension.second()) > LARGEST_EXPONENT
                || Math.abs(dimension.ampere()) > LARGEST_EXPONENT
                || Math.abs(dimension.kelvin()) > LARGEST_EXPONENT;
    }

    private static boolean isPointOnScale(Expression expression) {
        return expression instanceof Expression.Constant constant
                && constant.unit().offset() != 0;
    }

    private static void notScaled(Expression operand, String problem) {
        if (isPointOnScale(operand)) {
            throw pointOnScale(operand, problem);
        }
    }

    /** 25 degC is 298.15 K inside: adding or scaling two such points gives what no author means. */
    private static FormulaFault pointOnScale(Expression constant, String problem) {
        String number = ((Expression.Constant) constant).asWritten();
        return new FormulaFault(
                constant.position(),
                problem,
                "a temperature difference or rise here, in K",
                "Write " + number
                        + " K for a difference. In degC only a point on the scale is written, such as an ambient.");
    }
}
