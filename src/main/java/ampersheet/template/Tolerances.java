package ampersheet.template;

import ampersheet.formula.Expression;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Unit;
import ampersheet.source.Faults;
import ampersheet.source.Yaml;
import ampersheet.template.ProblemTemplate.Given;
import ampersheet.template.ProblemTemplate.QuantityGiven;
import ampersheet.template.ProblemTemplate.Tolerance;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Reads how far the quantities that are given may lie from what is drawn; once all givens and constants have names. */
final class Tolerances {
    /** Wider, a part would not be sold with a tolerance. */
    private static final double WIDEST = 0.5;

    private static final int NOWHERE = 0;

    private final Formulas formulas;
    private final Faults faults;
    private final Map<String, Yaml.Scalar> written = new LinkedHashMap<>();

    Tolerances(Formulas formulas, Faults faults) {
        this.formulas = formulas;
        this.faults = faults;
    }

    void note(String given, Yaml.Scalar tolerance) {
        written.put(given, tolerance);
    }

    /** Givens that have one, read or not. */
    Set<String> noted() {
        return written.keySet();
    }

    /** The same givens, with their tolerances. */
    List<Given> of(List<Given> givens) {
        List<Given> with = new ArrayList<>();
        for (Given given : givens) {
            Yaml.Scalar text = written.get(given.name());
            with.add(text != null && given instanceof QuantityGiven quantity ? with(quantity, text) : given);
        }
        return with;
    }

    private QuantityGiven with(QuantityGiven given, Yaml.Scalar text) {
        Optional<Formulas.Checked> read = formulas.expression(text, Formulas.ALL_NAMES);
        if (read.isEmpty() || read.get().dimension().isEmpty()) {
            return given;
        }
        Expression amount = read.get().expression();
        Dimension dimension = read.get().dimension().get();
        boolean share = dimension.equals(Dimension.ONE);
        Optional<Expression.Constant> constant =
                amount instanceof Expression.Constant number ? Optional.of(number) : Optional.empty();
        if (constant.isEmpty() && !(amount instanceof Expression.Name)) {
            faults.error(
                    text.place(),
                    "the tolerance of " + given.name() + " is worked out",
                    "5 %, an amount such as 0.2 V, or the name of a given or constant",
                    "Give it a name of its own.");
        } else if (!share && !dimension.equals(given.unit().dimension())) {
            faults.error(
                    text.place(),
                    "the tolerance is not in the unit of " + given.name(),
                    "a percentage, or an amount in " + Numbers.shown(given.unit()),
                    "Write for example 5 %.");
        } else if (constant.isPresent()
                        && (constant.get().number() <= 0
                                || share && constant.get().si() > WIDEST)
                || constant.filter(number -> number.unit().offset() != 0).isPresent()) {
            faults.error(
                    text.place(),
                    "\"" + text.text() + "\" is no tolerance to both sides",
                    "above 0 and at most 50 %, or an amount; for temperatures in K",
                    "Correct it.");
        } else {
            Expression value = new Expression.Name(given.name(), NOWHERE);
            Tolerance tolerance = share && !given.unit().dimension().equals(Dimension.ONE) || share && isPercent(amount)
                    ? new Tolerance(given.name(), amount, share(value, amount, false), share(value, amount, true))
                    : new Tolerance(
                            given.name(),
                            amount,
                            new Expression.Difference(value, amount, NOWHERE),
                            new Expression.Sum(value, amount, NOWHERE));
            return new QuantityGiven(
                    given.name(),
                    given.meaning(),
                    given.symbol(),
                    given.unit(),
                    given.values(),
                    Optional.of(tolerance));
        }
        return given;
    }

    /** Of a plain number, a constant with the percent sign is a share, and everything else an amount. */
    private static boolean isPercent(Expression amount) {
        return amount instanceof Expression.Constant constant
                && constant.unit().symbol().equals("%");
    }

    private static Expression share(Expression value, Expression share, boolean more) {
        Expression one = new Expression.Constant(1, Unit.ONE, "1", NOWHERE);
        return new Expression.Product(
                value,
                more ? new Expression.Sum(one, share, NOWHERE) : new Expression.Difference(one, share, NOWHERE),
                NOWHERE);
    }
}
