package ampersheet.template;

import ampersheet.answer.Acceptance;
import ampersheet.answer.UsualAcceptance;
import ampersheet.formula.Expression;
import ampersheet.formula.Step;
import ampersheet.quantity.Elementary;
import ampersheet.quantity.PreferredSeries;
import ampersheet.quantity.Unit;
import ampersheet.template.ProblemTemplate.Constant;
import ampersheet.template.ProblemTemplate.Given;
import ampersheet.template.ProblemTemplate.QuantityGiven;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * What is accepted where a sheet leaves a step blank that no question asks for: a count and a preferred value exactly,
 * anything else within what is usual for an asked value.
 */
final class BlankStep {
    private static final Set<String> WHOLE = Set.of("floor", "ceiling", "round");
    private static final Set<String> WHOLE_OF_WHOLE = Set.of("abs", "min", "max", "mod");

    /** Givens, constants and steps that are whole numbers, whatever is drawn. */
    private final Set<String> whole = new TreeSet<>();

    private final Map<String, PreferredSeries> preferred = new TreeMap<>();

    BlankStep(List<Given> givens, List<Constant> constants) {
        for (Given given : givens) {
            if (given instanceof QuantityGiven quantity
                    && quantity.unit().symbol().isEmpty()
                    && quantity.values().stream().allMatch(Elementary::isWhole)) {
                whole.add(given.name());
            }
        }
        for (Constant constant : constants) {
            if (constant.unit().symbol().isEmpty() && Elementary.isWhole(constant.si())) {
                whole.add(constant.name());
            }
        }
    }

    static Acceptance within(Unit unit) {
        return unit.offset() != 0
                ? new Acceptance.Within(0, UsualAcceptance.KELVIN)
                : new Acceptance.Within(UsualAcceptance.RELATIVE, 0);
    }

    /** Steps are told in the order of the working. */
    Acceptance of(Step step, Unit unit) {
        if (unit.symbol().isEmpty() && step.cases().stream().allMatch(each -> isWhole(each.is()))) {
            whole.add(step.id());
            return new Acceptance.Count();
        }
        Optional<PreferredSeries> series = series(step);
        series.ifPresent(of -> preferred.put(step.id(), of));
        return series.<Acceptance>map(Acceptance.Preferred::new).orElseGet(() -> within(unit));
    }

    /** The series of which the step's value is a member, whatever case applies. */
    private Optional<PreferredSeries> series(Step step) {
        Set<Optional<PreferredSeries>> found = new LinkedHashSet<>();
        step.cases().forEach(each -> found.add(series(each.is())));
        return found.size() == 1 ? found.iterator().next() : Optional.empty();
    }

    private Optional<PreferredSeries> series(Expression is) {
        if (is instanceof Expression.Name name) {
            return Optional.ofNullable(preferred.get(name.id()));
        }
        boolean member = is instanceof Expression.Call call
                && call.arguments().size() == 2
                && List.of("next_up", "next_down", "nearest").contains(call.function());
        // Where a name was refused, the rest of the formula was not checked: its series may be none.
        return member && ((Expression.Call) is).arguments().get(1) instanceof Expression.Name series
                ? Arrays.stream(PreferredSeries.values())
                        .filter(known -> known.name().equals(series.id()))
                        .findFirst()
                : Optional.empty();
    }

    private boolean isWhole(Expression is) {
        if (is instanceof Expression.Constant constant) {
            return constant.unit().symbol().isEmpty() && Elementary.isWhole(constant.number());
        } else if (is instanceof Expression.Name name) {
            return whole.contains(name.id());
        } else if (is instanceof Expression.Call call) {
            return WHOLE.contains(call.function())
                    || WHOLE_OF_WHOLE.contains(call.function())
                            && call.arguments().stream().allMatch(this::isWhole);
        } else if (is instanceof Expression.Power power) {
            return isWhole(power.base())
                    && power.exponent() instanceof Expression.Constant exponent
                    && exponent.unit().symbol().isEmpty()
                    && Elementary.isWhole(exponent.number())
                    && exponent.number() >= 0;
        }
        return !(is instanceof Expression.Quotient) && is.parts().stream().allMatch(this::isWhole);
    }
}
