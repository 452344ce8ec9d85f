package ampersheet.formula;

import java.util.ArrayList;
import java.util.List;

/** One pass over a tree, from the leaves up: a value, a dimension, a line of text, an interval. */
public interface Fold<T> {
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
        return expression.fold(this);
    }

    default List<T> of(List<Expression> expressions) {
        List<T> folded = new ArrayList<>();
        for (Expression expression : expressions) {
            folded.add(of(expression));
        }
        return folded;
    }
}
