package ampersheet.template;

import ampersheet.diagnostic.Place;
import ampersheet.formula.Condition;
import ampersheet.formula.Evaluation;
import ampersheet.formula.Expression;
import ampersheet.formula.NoValue;
import ampersheet.formula.Values;
import ampersheet.formula.Working;
import ampersheet.quantity.Quantity;
import ampersheet.source.Faults;
import ampersheet.template.ProblemTemplate.Given;
import ampersheet.template.ProblemTemplate.QuantityGiven;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * How large the parts of a template become. What is large is noted where it is written, and told there once the numbers
 * can be worked: a panel that nobody can draw is no template, however well it is proven.
 */
final class Sizes {
    /** Samples around which every given is set to its largest value. */
    private static final int WIDENED = 20;

    /** @param factors multiplied: the size */
    private record Noted(String what, List<Expression> factors, Place place, int most, String reason) {}

    private final List<Noted> noted = new ArrayList<>();

    /**
     * @param what is counted, such as {@code pixels in the tile}
     * @param reason why there may be no more, as the end of a sentence
     */
    void note(String what, List<Expression> factors, Place place, int most, String reason) {
        noted.add(new Noted(what, List.copyOf(factors), place, most, reason));
    }

    /** @param samples of givens and constants that meet the requirements */
    void check(List<Given> givens, List<Condition> requirements, Working working, List<Values> samples, Faults faults) {
        if (noted.isEmpty()) {
            return;
        }
        List<Values> worked = new ArrayList<>();
        for (Values drawn : widened(givens, requirements, samples)) {
            try {
                worked.add(working.work(drawn));
            } catch (NoValue noCase) {
                // Such a draw is refused, whatever its sizes are.
                continue;
            }
        }
        for (Noted each : noted) {
            double largest = worked.stream()
                    .mapToDouble(values -> size(each, values))
                    .max()
                    .orElse(0);
            if (largest > each.most() && faults.isQuietAt(each.place())) {
                faults.error(
                        each.place(),
                        "there can be " + (largest < 1e15 ? Long.toString((long) largest) : "far too many") + " "
                                + each.what(),
                        "at most " + each.most() + ": " + each.reason(),
                        "Make it smaller, or narrow the ranges of the givens it follows from.");
            }
        }
    }

    private static double size(Noted each, Values values) {
        double size = 1;
        for (Expression factor : each.factors()) {
            size *= Evaluation.evaluate(factor, values).value();
        }
        return Double.isNaN(size) ? 0 : size;
    }

    /** The samples, and some of them with one given, or every given, at its largest. */
    private static List<Values> widened(List<Given> givens, List<Condition> requirements, List<Values> samples) {
        List<Values> all = new ArrayList<>(samples);
        for (Values sample : samples.subList(0, Math.min(WIDENED, samples.size()))) {
            Values largest = sample;
            for (Given given : givens) {
                if (given instanceof QuantityGiven quantity) {
                    Quantity most = new Quantity(
                            Collections.max(quantity.values()), quantity.unit().dimension());
                    largest = largest.with(given.name(), most);
                    add(sample.with(given.name(), most), requirements, all);
                }
            }
            add(largest, requirements, all);
        }
        return all;
    }

    private static void add(Values drawn, List<Condition> requirements, List<Values> all) {
        if (requirements.stream().allMatch(requirement -> Evaluation.holds(requirement, drawn))) {
            all.add(drawn);
        }
    }
}
