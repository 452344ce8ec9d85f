package ampersheet.formula;

import ampersheet.quantity.Dimension;
import ampersheet.quantity.Elementary;
import ampersheet.quantity.PreferredSeries;
import ampersheet.quantity.Quantity;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Checks and evaluates trees.
 *
 * <p>Comparisons take two values within 1e-12 of each other (relative to the larger) as equal. {@code floor},
 * {@code ceiling}, {@code round} and {@code mod} take a value within 1e-9 of a whole number (relative above 1, at most
 * 1e-6) as that number, and {@code round} takes halves away from zero. Angles are in radians. Temperatures are in
 * kelvin, so {@code 25 degC} is 298.15 K wherever it stands.
 */
public final class Evaluation {
    /** The name every formula may use. */
    static final String PI = "pi";

    private Evaluation() {}

    /**
     * The dimension the expression has.
     *
     * @throws FormulaFault for an unknown name or function, volts added to amps, a root of no square, and the like
     */
    public static Dimension check(Expression expression, Scope scope) {
        return new Check(scope).of(expression);
    }

    /** @throws FormulaFault as for expressions, and where the two sides of a comparison differ in dimension */
    public static void check(Condition condition, Scope scope) {
        condition.forEachComparison(new Check(scope)::comparison);
    }

    /**
     * The value; NaN or infinite where the arithmetic says so (division by zero, root of a negative number).
     *
     * @throws FormulaFault where {@link #check(Expression, Scope)} would have found a fault of dimensions
     * @throws IllegalArgumentException for a name without a value: a checked formula has none
     */
    public static Quantity evaluate(Expression expression, Values values) {
        return new Value(values).of(expression);
    }

    /** Comparisons with NaN do not hold, except {@code !=}. */
    public static boolean holds(Condition condition, Values values) {
        return condition.fold(new Truth(values));
    }

    /**
     * Names of quantities and words used, in order of appearance, without function names, series names and {@code pi}.
     * What only the scope can tell is included: the word on the right of {@code order == serpentine}, and a node or
     * part that is the argument of a measure.
     */
    public static Set<String> names(Expression expression) {
        Set<String> names = new LinkedHashSet<>();
        collect(expression, names);
        return names;
    }

    /** As for an expression. */
    public static Set<String> names(Condition condition) {
        Set<String> names = new LinkedHashSet<>();
        collect(condition, names);
        return names;
    }

    private static void collect(Condition condition, Set<String> names) {
        condition.forEachComparison(comparison -> {
            collect(comparison.left(), names);
            collect(comparison.right(), names);
        });
    }

    private static void collect(Expression expression, Set<String> names) {
        if (expression instanceof Expression.Name name && !name.id().equals(PI) && FormulaReader.isName(name.id())) {
            names.add(name.id());
        }
        List<Expression> parts = expression instanceof Expression.Call call ? quantities(call) : expression.parts();
        parts.forEach(part -> collect(part, names));
    }

    /** The arguments that are quantities: all but the series of a series function. */
    private static List<Expression> quantities(Expression.Call call) {
        boolean series = Function.named(call.function())
                .map(function -> function.takes() == Function.Takes.SERIES
                        && function.accepts(call.arguments().size()))
                .orElse(false);
        return series ? call.arguments().subList(0, 1) : call.arguments();
    }

    /** Arguments of the right number, and a series where one is needed. */
    private static void checkArguments(Function function, Expression.Call call) {
        if (!function.accepts(call.arguments().size())) {
            String example = function.takes() == Function.Takes.SERIES
                    ? function.written() + "(R, E24)"
                    : function.arity().equals("one argument")
                            ? function.written() + "(x)"
                            : function.written() + "(a, b)";
            throw new FormulaFault(
                    call.position(),
                    function.written() + " takes " + function.arity() + ", not "
                            + call.arguments().size(),
                    function.arity() + " in the parentheses",
                    "Write it as " + example + ".");
        }
        if (function.takes() == Function.Takes.SERIES
                && Function.series(call.arguments().get(1)).isEmpty()) {
            throw new FormulaFault(
                    call.arguments().get(1).position(),
                    function.written() + " needs a series of preferred values as its second argument",
                    "E3, E6, E12, E24, E48, E96 or E192",
                    "Write it as " + function.written() + "(R, E24).");
        }
    }

    private record Truth(Values values) implements TruthFold {
        @Override
        public Boolean comparison(Condition.Comparison comparison) {
            return new Value(values).comparison(comparison);
        }
    }

    private static final class Check implements Fold<Dimension> {
        private final Scope scope;

        Check(Scope scope) {
            this.scope = scope;
        }

        void comparison(Condition.Comparison comparison) {
            if (comparison.left() instanceof Expression.Name name
                    && scope.words().containsKey(name.id())) {
                word(comparison, name);
                return;
            }
            if (comparison.right() instanceof Expression.Name name
                    && scope.words().containsKey(name.id())) {
                throw new FormulaFault(
                        name.position(),
                        name.id() + " is a word and stands on the wrong side",
                        name.id() + " on the left of the comparison",
                        "Write " + name.id() + " " + comparison.relation().asWritten() + " followed by "
                                + Spelling.list(scope.words().get(name.id())) + ".");
            }
            DimensionRules.compared(comparison, of(comparison.left()), of(comparison.right()));
        }

        private void word(Condition.Comparison comparison, Expression.Name name) {
            Set<String> words = scope.words().get(name.id());
            boolean ordering = comparison.relation() != Condition.Relation.EQUAL
                    && comparison.relation() != Condition.Relation.UNEQUAL;
            if (ordering) {
                throw new FormulaFault(
                        comparison.position(),
                        name.id() + " is a word, and words have no order",
                        "== or !=",
                        "Compare it with == or != and one of " + Spelling.list(words) + ".");
            }
            if (!(comparison.right() instanceof Expression.Name word)) {
                throw new FormulaFault(
                        comparison.right().position(),
                        name.id() + " is a word, but is compared with a quantity",
                        Spelling.list(words),
                        "Write one of its words after " + comparison.relation().asWritten() + ".");
            }
            if (!words.contains(word.id())) {
                throw new FormulaFault(
                        word.position(),
                        name.id() + " is never " + word.id(),
                        Spelling.list(words),
                        Spelling.nearest(word.id(), words)
                                .map(near -> "Did you mean " + near + "?")
                                .orElse("Write one of its words, in double quotes if it has a blank in it."));
            }
        }

        @Override
        public Dimension constant(Expression.Constant constant) {
            return constant.unit().dimension();
        }

        @Override
        public Dimension name(Expression.Name name) {
            Dimension dimension = scope.quantities().get(name.id());
            if (dimension != null) {
                return dimension;
            }
            if (name.id().equals(PI)) {
                return Dimension.ONE;
            }
            Set<String> words = scope.words().get(name.id());
            if (words != null) {
                throw new FormulaFault(
                        name.position(),
                        name.id() + " is a word, not a quantity",
                        "a quantity here",
                        "A word can only be compared: " + name.id() + " == followed by " + Spelling.list(words) + ".");
            }
            throw unknown(name);
        }

        private FormulaFault unknown(Expression.Name name) {
            String id = name.id();
            if (Function.named(id).isPresent()) {
                return new FormulaFault(
                        name.position(),
                        id + " is a function, but no parentheses follow it",
                        "parentheses with its arguments",
                        "Write " + id + "( ), or give the quantity another name.");
            }
            if (Function.series(name).isPresent()) {
                return new FormulaFault(
                        name.position(),
                        id + " is a series of preferred values, not a quantity",
                        "a quantity here",
                        "A series only stands in next_up(R, " + id + ") and its like.");
            }
            Set<String> known = scope.quantities().keySet();
            String expected = known.isEmpty() ? "a number: there are no names here yet" : Spelling.list(known);
            Optional<String> near = Spelling.nearest(id, known);
            String next = near.isPresent()
                    ? "Did you mean " + near.get() + "?"
                    : UnitText.isUnit(id)
                            ? "If " + id + " is meant as a unit, a number goes before it: 1 " + id + "."
                            : "Give " + id
                                    + " among the givens, constants or earlier steps, or use one of their names.";
            return new FormulaFault(name.position(), "nothing is named " + id + " here", expected, next);
        }

        @Override
        public Dimension negative(Expression.Negative negative) {
            return DimensionRules.negative(negative, of(negative.of()));
        }

        @Override
        public Dimension sum(Expression.Sum sum) {
            return DimensionRules.sum(sum, of(sum.left()), of(sum.right()));
        }

        @Override
        public Dimension difference(Expression.Difference difference) {
            return DimensionRules.difference(difference, of(difference.left()), of(difference.right()));
        }

        @Override
        public Dimension product(Expression.Product product) {
            return DimensionRules.product(product, of(product.left()), of(product.right()));
        }

        @Override
        public Dimension quotient(Expression.Quotient quotient) {
            return DimensionRules.quotient(quotient, of(quotient.numerator()), of(quotient.denominator()));
        }

        @Override
        public Dimension power(Expression.Power power) {
            return DimensionRules.power(power, of(power.base()), of(power.exponent()));
        }

        @Override
        public Dimension call(Expression.Call call) {
            Optional<Function> function = Function.named(call.function());
            if (function.isPresent()) {
                checkArguments(function.get(), call);
                return DimensionRules.call(function.get(), call, of(quantities(call)));
            }
            return scope.measures().dimension(call.function(), call.arguments()).orElseThrow(() -> unknown(call));
        }

        private FormulaFault unknown(Expression.Call call) {
            String name = call.function();
            if (scope.quantities().containsKey(name) || name.equals(PI)) {
                return new FormulaFault(
                        call.position(),
                        name + " is a quantity, not a function",
                        "an operator between " + name + " and the parenthesis",
                        "Write " + name + " * ( for a product.");
            }
            return new FormulaFault(
                    call.position(),
                    "there is no function " + name,
                    Spelling.list(Function.names()),
                    Spelling.nearest(name, Function.names())
                            .map(near -> "Did you mean " + near + "?")
                            .orElse("Use one of the functions, or write * before the parenthesis for a product."
                                    + " Measures such as current(D1) only stand in proofs."));
        }
    }

    private static final class Value implements Fold<Quantity> {
        private final Values values;

        Value(Values values) {
            this.values = values;
        }

        boolean comparison(Condition.Comparison comparison) {
            Condition.Relation relation = comparison.relation();
            if (comparison.left() instanceof Expression.Name name
                    && values.words().containsKey(name.id())
                    && comparison.right() instanceof Expression.Name word) {
                return values.words().get(name.id()).equals(word.id()) == (relation == Condition.Relation.EQUAL);
            }
            Quantity left = of(comparison.left());
            Quantity right = of(comparison.right());
            DimensionRules.compared(comparison, left.dimension(), right.dimension());
            double a = left.value();
            double b = right.value();
            boolean equal = Nearness.equal(a, b);
            return switch (relation) {
                case LESS -> a < b && !equal;
                case AT_MOST -> a < b || equal;
                case MORE -> a > b && !equal;
                case AT_LEAST -> a > b || equal;
                case EQUAL -> equal;
                case UNEQUAL -> !equal;
            };
        }

        @Override
        public Quantity constant(Expression.Constant constant) {
            return new Quantity(constant.si(), constant.unit().dimension());
        }

        @Override
        public Quantity name(Expression.Name name) {
            boolean pi = name.id().equals(PI) && !values.has(PI);
            return pi ? Quantity.number(Math.PI) : values.quantity(name.id());
        }

        @Override
        public Quantity negative(Expression.Negative negative) {
            Quantity of = of(negative.of());
            return new Quantity(-of.value(), DimensionRules.negative(negative, of.dimension()));
        }

        @Override
        public Quantity sum(Expression.Sum sum) {
            Quantity left = of(sum.left());
            Quantity right = of(sum.right());
            return new Quantity(
                    left.value() + right.value(), DimensionRules.sum(sum, left.dimension(), right.dimension()));
        }

        @Override
        public Quantity difference(Expression.Difference difference) {
            Quantity left = of(difference.left());
            Quantity right = of(difference.right());
            return new Quantity(
                    left.value() - right.value(),
                    DimensionRules.difference(difference, left.dimension(), right.dimension()));
        }

        @Override
        public Quantity product(Expression.Product product) {
            Quantity left = of(product.left());
            Quantity right = of(product.right());
            return new Quantity(
                    left.value() * right.value(), DimensionRules.product(product, left.dimension(), right.dimension()));
        }

        @Override
        public Quantity quotient(Expression.Quotient quotient) {
            Quantity above = of(quotient.numerator());
            Quantity below = of(quotient.denominator());
            return new Quantity(
                    above.value() / below.value(),
                    DimensionRules.quotient(quotient, above.dimension(), below.dimension()));
        }

        @Override
        public Quantity power(Expression.Power power) {
            Quantity base = of(power.base());
            Quantity exponent = of(power.exponent());
            return new Quantity(
                    raised(base.value(), exponent.value()),
                    DimensionRules.power(power, base.dimension(), exponent.dimension()));
        }

        @Override
        public Quantity call(Expression.Call call) {
            Optional<Function> named = Function.named(call.function());
            if (named.isEmpty()) {
                return values.measured().value(call.function(), call.arguments());
            }
            Function function = named.get();
            checkArguments(function, call);
            List<Dimension> dimensions = new ArrayList<>();
            List<Double> numbers = new ArrayList<>();
            for (Quantity argument : of(quantities(call))) {
                dimensions.add(argument.dimension());
                numbers.add(argument.value());
            }
            Optional<PreferredSeries> series = function.takes() == Function.Takes.SERIES
                    ? Function.series(call.arguments().get(1))
                    : Optional.empty();
            double value = series.isPresent() ? function.value(numbers.get(0), series.get()) : function.value(numbers);
            return new Quantity(value, DimensionRules.call(function, call, dimensions));
        }
    }

    /** Small whole powers by multiplication: the same bits wherever the program runs, unlike a general power. */
    static double raised(double base, double exponent) {
        if (exponent == Math.floor(exponent) && Math.abs(exponent) <= 16) {
            double product = 1;
            for (int i = 0; i < Math.abs(exponent); i++) {
                product *= base;
            }
            return exponent < 0 ? 1 / product : product;
        }
        return Elementary.power(base, exponent);
    }
}
