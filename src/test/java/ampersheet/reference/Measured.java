package ampersheet.reference;

import ampersheet.formula.Evaluation;
import ampersheet.formula.Expression;
import ampersheet.formula.FormulaReader;
import ampersheet.formula.Values;
import ampersheet.quantity.Quantity;
import java.util.List;
import java.util.Map;

/** What the program found, to be asked for values in SI units. */
interface Measured {
    List<Double> values(String formula);

    /** What speaks against the result as a whole, whatever is asked of it. */
    default List<String> faults() {
        return List.of();
    }

    /** A formula over the measures of a model, read and evaluated by the program. */
    static Measured by(Values.Measured model) {
        Values values = Values.of(Map.of(), Map.of()).measuring(model);
        return formula -> List.of(
                Evaluation.evaluate(FormulaReader.expression(formula), values).value());
    }

    /** The name that an argument is. */
    static String name(List<Expression> arguments, int index) {
        return ((Expression.Name) arguments.get(index)).id();
    }

    /** The number, in SI units, that an argument is. */
    static double number(List<Expression> arguments, int index) {
        return number(arguments.get(index));
    }

    static double number(Expression expression) {
        return Evaluation.evaluate(expression, Values.of(Map.of(), Map.of())).value();
    }

    static Quantity unknown(String measure) {
        throw new AssertionError("nothing here measures " + measure);
    }
}
