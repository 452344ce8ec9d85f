package ampersheet.formula;

import java.util.ArrayList;
import java.util.List;

/** One pass over a tree, from the leaves up: a value, a dimension, a line of text, an interval. */
interface Fold<T> {
    T constant(Expression.Constant constant);

    T name(Expression.Name name);

    T negative(Expression.Negative negative);

    T sum(Expression.Sum sum);

    T difference(Expression.Difference difference);

    T product(Expression.Product product);

    T quotient(Expression.Quotient quotient);

    T power(Expression.Power power);

    T call(Expression.Call call);

    default T of(Expression expression) {
        if (expression instanceof Expression.Name name) {
            return name(name);
        }
        if (expression instanceof Expression.Constant constant) {
            return constant(constant);
        }
        if (expression instanceof Expression.Product product) {
            return product(product);
        }
        if (expression instanceof Expression.Quotient quotient) {
            return quotient(quotient);
        }
        if (expression instanceof Expression.Sum sum) {
            return sum(sum);
        }
        if (expression instanceof Expression.Difference difference) {
            return difference(difference);
        }
        if (expression instanceof Expression.Negative negative) {
            return negative(negative);
        }
        if (expression instanceof Expression.Power power) {
            return power(power);
        }
        return call((Expression.Call) expression);
    }

    default List<T> of(List<Expression> expressions) {
        List<T> folded = new ArrayList<>();
        for (Expression expression : expressions) {
            folded.add(of(expression));
        }
        return folded;
    }
}
