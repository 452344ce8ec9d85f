package ampersheet.model;

import ampersheet.formula.Evaluation;
import ampersheet.formula.Expression;
import ampersheet.formula.Values;
import ampersheet.quantity.Elementary;
import java.util.List;

/** Reads numbers that formulas give a model; what cannot be a size is {@link Unsolved}. */
final class ModelNumbers {
    private ModelNumbers() {}

    static double number(Expression formula, Values values) {
        return Evaluation.evaluate(formula, values).value();
    }

    static int whole(String what, Expression formula, Values values) {
        double number = number(formula, values);
        if (!Elementary.isWhole(number) || Math.abs(number) > 1e6) {
            throw new Unsolved("the " + what + " must be a whole number, not " + number);
        }
        return (int) number;
    }

    static int size(String what, Expression formula, Values values) {
        int size = whole(what, formula, values);
        if (size < 1) {
            throw new Unsolved("the " + what + " must be at least 1, not " + size);
        }
        return size;
    }

    static int size(String what, Expression formula, Values values, int most) {
        int size = size(what, formula, values);
        few(what, size, most);
        return size;
    }

    static List<Integer> sizes(String what, List<Expression> formulas, Values values) {
        return formulas.stream().map(formula -> size(what, formula, values)).toList();
    }

    static void few(String what, long count, long most) {
        if (count > most) {
            throw new Unsolved("so many " + what + ", " + count + ", are not laid out; at most " + most + " are");
        }
    }
}
