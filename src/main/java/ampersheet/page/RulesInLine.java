package ampersheet.page;

import ampersheet.formula.Evaluation;
import ampersheet.formula.Expression;
import ampersheet.formula.NoValue;
import ampersheet.formula.Step;
import ampersheet.formula.Values;
import ampersheet.quantity.Dimension;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * The rules that a line rests on beside the one it is named by, as its formula shows: who adds two voltages in it uses
 * the law of voltages, whatever the line as a whole is called. None of them may be called wrong.
 */
final class RulesInLine {
    private static final Set<String> PREFERRED = Set.of("next_up", "next_down", "nearest");
    private static final Set<String> WHOLE = Set.of("floor", "ceiling", "round", "mod");
    private static final Set<String> GROWTH = Set.of("exp", "ln", "log10");
    private static final Dimension THERMAL = Dimension.TEMPERATURE.over(Dimension.POWER);

    private final Values values;
    private final Set<String> found = new TreeSet<>();

    private RulesInLine(Values values) {
        this.values = values;
    }

    /** @param values givens and steps, which tell what each name is */
    static Set<String> of(Step step, Values values) {
        RulesInLine rules = new RulesInLine(values);
        for (Step.Case each : step.cases()) {
            rules.look(each.is());
        }
        return rules.found;
    }

    private void look(Expression expression) {
        expression.parts().forEach(this::look);
        if (expression instanceof Expression.Sum || expression instanceof Expression.Difference) {
            added(dimension(expression));
        } else if (expression instanceof Expression.Product product) {
            multiplied(dimension(product.left()), dimension(product.right()), dimension(product));
        } else if (expression instanceof Expression.Quotient quotient) {
            divided(dimension(quotient.numerator()), dimension(quotient.denominator()), dimension(quotient));
        } else if (expression instanceof Expression.Power power && isPower(dimension(power))) {
            found.addAll(Set.of("electrical power", "Joule heating"));
        } else if (expression instanceof Expression.Call call) {
            called(call.function());
        }
    }

    private Optional<Dimension> dimension(Expression expression) {
        try {
            return Optional.of(Evaluation.evaluate(expression, values).dimension());
        } catch (NoValue nothing) {
            return Optional.empty();
        }
    }

    private static boolean is(Optional<Dimension> dimension, Dimension one) {
        return dimension.isPresent() && dimension.get().equals(one);
    }

    private static boolean isPower(Optional<Dimension> dimension) {
        return is(dimension, Dimension.POWER);
    }

    private void added(Optional<Dimension> of) {
        if (is(of, Dimension.VOLTAGE)) {
            found.addAll(Set.of("Kirchhoff's voltage law", "voltage drop", "logic levels"));
        } else if (is(of, Dimension.CURRENT)) {
            found.add("Kirchhoff's current law");
        } else if (is(of, Dimension.RESISTANCE)) {
            found.addAll(Set.of("series resistance", "out and back", "Kirchhoff's voltage law"));
        } else if (is(of, Dimension.TEMPERATURE) || is(of, THERMAL)) {
            found.add("thermal resistance");
        } else if (is(of, Dimension.TIME)) {
            found.add("serial transmission");
        } else if (is(of, Dimension.ONE)) {
            found.addAll(Set.of("counting", "proportion", "worst case", "safety margin"));
        }
    }

    private void multiplied(Optional<Dimension> left, Optional<Dimension> right, Optional<Dimension> whole) {
        if (isPower(whole)) {
            found.addAll(Set.of("electrical power", "Joule heating"));
        } else if (is(whole, Dimension.VOLTAGE) && !is(left, Dimension.ONE) && !is(right, Dimension.ONE)) {
            found.add("Ohm's law");
        } else if (is(whole, Dimension.TEMPERATURE)) {
            found.add("thermal resistance");
        } else if (is(whole, Dimension.TIME)) {
            found.addAll(Set.of("time constant", "serial transmission", "frequency and period"));
        } else if (is(whole, Dimension.ONE)) {
            found.addAll(Set.of("counting", "counting from zero", "proportion"));
        }
        if (is(left, Dimension.ONE) || is(right, Dimension.ONE)) {
            // So many times the same is a sum, too.
            added(whole);
            found.addAll(Set.of("proportion", "safety margin", "out and back"));
        }
    }

    private void divided(Optional<Dimension> above, Optional<Dimension> below, Optional<Dimension> whole) {
        if (is(above, Dimension.VOLTAGE) && (is(whole, Dimension.CURRENT) || is(whole, Dimension.RESISTANCE))) {
            found.add("Ohm's law");
        } else if (isPower(above) || isPower(whole)) {
            found.addAll(Set.of("electrical power", "Joule heating", "thermal resistance"));
        } else if (is(whole, THERMAL) || is(whole, Dimension.TEMPERATURE)) {
            found.add("thermal resistance");
        } else if (is(whole, Dimension.VOLTAGE)) {
            found.addAll(Set.of("voltage divider", "Ohm's law"));
        } else if (is(whole, Dimension.CURRENT)) {
            found.add("current divider");
        } else if (is(whole, Dimension.RESISTANCE)) {
            found.addAll(Set.of("parallel resistance", "voltage divider"));
        } else if (is(whole, Dimension.TIME)) {
            found.addAll(Set.of("frequency and period", "bit time", "serial transmission"));
        }
        if (is(whole, Dimension.ONE)) {
            // How many times one goes into the other: a sum read backwards.
            added(above);
        }
        if (is(whole, Dimension.ONE) || is(below, Dimension.ONE)) {
            found.addAll(Set.of("proportion", "division with remainder", "safety margin", "voltage divider"));
        }
    }

    private void called(String function) {
        if (PREFERRED.contains(function)) {
            found.add("preferred values");
        } else if (WHOLE.contains(function)) {
            found.addAll(Set.of("division with remainder", "counting", "whole tiles only", "resolution"));
        } else if (GROWTH.contains(function)) {
            found.addAll(Set.of("exponential approach", "time constant", "diode equation"));
        } else if (function.equals("parallel")) {
            found.addAll(Set.of("parallel resistance", "Thevenin's theorem", "Thévenin equivalent"));
        }
    }
}
