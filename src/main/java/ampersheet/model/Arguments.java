package ampersheet.model;

import ampersheet.formula.Evaluation;
import ampersheet.formula.Expression;
import ampersheet.formula.Values;
import ampersheet.quantity.Elementary;
import ampersheet.quantity.Quantity;
import java.util.List;

/**
 * What a measure is asked with.
 *
 * @param asking the values that formulas among the arguments take
 */
record Arguments(List<Expression> formulas, Values asking) {
    int count() {
        return formulas.size();
    }

    /** The thing of the model that the argument names. */
    String name(int index) {
        return ((Expression.Name) formulas.get(index)).id();
    }

    Quantity quantity(int index) {
        return Evaluation.evaluate(formulas.get(index), asking);
    }

    double number(int index) {
        return quantity(index).value();
    }

    /** @return -1 where it is no whole number */
    int whole(int index) {
        double number = number(index);
        return Elementary.isWhole(number) && Math.abs(number) < Integer.MAX_VALUE ? (int) number : -1;
    }

    /** @throws Unsolved if that is before the beginning */
    double seconds(int index) {
        double seconds = number(index);
        if (seconds < 0) {
            throw new Unsolved("time runs forwards, but " + seconds + " s is before the beginning");
        }
        return seconds;
    }
}
