package ampersheet.template;

import ampersheet.formula.Expression;
import ampersheet.formula.FormulaFault;
import ampersheet.formula.FormulaReader;
import ampersheet.formula.TradeWords;
import ampersheet.quantity.Unit;
import ampersheet.quantity.UnitFault;
import ampersheet.source.Faults;
import ampersheet.source.Yaml;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Optional;

/** Reads units, and numbers with or without a unit of their own. */
final class Numbers {
    /** Enough for every decimal an author writes; what a change of prefix adds beyond is rounding. */
    private static final MathContext DECIMALS = new MathContext(15);

    private final Faults faults;

    Numbers(Faults faults) {
        this.faults = faults;
    }

    Optional<Unit> unit(Yaml.Scalar text) {
        try {
            return Optional.of(Unit.parse(text.text()));
        } catch (UnitFault fault) {
            faults.error(
                    text.at(fault.position()),
                    fault.getMessage(),
                    "a unit such as V, mA, kohm, K/W, degC, %, or \"1\" for a plain number",
                    "Correct the unit.");
            return Optional.empty();
        }
    }

    /** Whether the text is a number, with or without a unit. */
    static boolean isNumber(String text) {
        try {
            return constant(FormulaReader.expression(text)).isPresent();
        } catch (FormulaFault notANumber) {
            return false;
        }
    }

    /** A number in a unit, exact as written; a bare number is taken in that unit. */
    Optional<BigDecimal> in(Unit unit, Yaml.Scalar text) {
        Optional<Expression.Constant> read = constant(text);
        if (read.isEmpty()) {
            return Optional.empty();
        }
        Expression.Constant constant = read.get();
        if (isBare(constant)) {
            return Optional.of(new BigDecimal(constant.asWritten()));
        }
        if (!constant.unit().dimension().equals(unit.dimension())) {
            faults.error(
                    text.place(),
                    "this is in " + TradeWords.plural(constant.unit().dimension()) + ", but the unit is " + shown(unit),
                    "a number in " + shown(unit) + ", or with a unit of the same kind",
                    "Correct the number or the unit.");
            return Optional.empty();
        }
        if (constant.unit().equals(unit)) {
            return Optional.of(new BigDecimal(constant.asWritten()));
        }
        double converted = unit.fromSi(constant.si());
        return Optional.of(BigDecimal.valueOf(converted).round(DECIMALS));
    }

    /** A number that carries its unit, or none. */
    Optional<Expression.Constant> constant(Yaml.Scalar text) {
        try {
            Optional<Expression.Constant> constant = constant(FormulaReader.expression(text.text()));
            if (constant.isEmpty()) {
                faults.error(
                        text.place(),
                        "\"" + text.text() + "\" is not a number",
                        "a number such as 4.7, or with a unit: 4.7 kohm",
                        "Write a number.");
            }
            return constant;
        } catch (FormulaFault fault) {
            faults.error(
                    text.at(fault.position()),
                    "\"" + text.text() + "\" is not a number: " + fault.getMessage(),
                    "a number such as 4.7, or with a unit: 4.7 kohm",
                    "Write a number.");
            return Optional.empty();
        }
    }

    /** A whole number in a range. */
    Optional<Integer> whole(Yaml.Scalar text, int least, int most) {
        try {
            int number = Integer.parseInt(text.text());
            if (number >= least && number <= most && text.text().equals(Integer.toString(number))) {
                return Optional.of(number);
            }
        } catch (NumberFormatException notWhole) {
            // told below, as is a number out of range
        }
        faults.error(
                text.place(),
                "\"" + text.text() + "\" is not a whole number from " + least + " to " + most,
                "a whole number from " + least + " to " + most,
                "Correct the number.");
        return Optional.empty();
    }

    static boolean isBare(Expression.Constant constant) {
        return constant.unit().symbol().isEmpty();
    }

    static String shown(Unit unit) {
        return unit.symbol().isEmpty() ? "1" : unit.symbol();
    }

    private static Optional<Expression.Constant> constant(Expression expression) {
        if (expression instanceof Expression.Constant constant) {
            return Optional.of(constant);
        }
        if (expression instanceof Expression.Negative negative && negative.of() instanceof Expression.Constant of) {
            return Optional.of(
                    new Expression.Constant(-of.number(), of.unit(), "-" + of.asWritten(), negative.position()));
        }
        return Optional.empty();
    }
}
