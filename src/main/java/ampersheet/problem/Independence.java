package ampersheet.problem;

import ampersheet.formula.Values;
import ampersheet.model.ModelPlans;
import ampersheet.model.Unsolved;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Elementary;
import ampersheet.quantity.Quantity;
import ampersheet.template.ProblemTemplate.Proof;
import java.util.ArrayList;
import java.util.List;

/**
 * Tests that the second route does not lean on the first: the first route's value of a step is made wrong on purpose,
 * and the second route must find what it found before.
 */
final class Independence {
    /** Where a draw that was accepted is solved once more. */
    static final Objections NONE = (reason, detail) -> {};

    private static final double UNMOVED = 1e-7;

    private Independence() {}

    /** Steps whose second route follows a wrong first route. */
    static List<String> leaning(Workshop workshop, ModelPlans plans, Values givens, Values values) {
        List<String> leaning = new ArrayList<>();
        for (int i = 0; i < workshop.template().proofs().size(); i++) {
            Proof proof = workshop.template().proofs().get(i);
            Quantity right = values.quantity(proof.of());
            double before = found(workshop, plans, givens, values, i);
            double after = found(workshop, plans, givens, values.with(proof.of(), wrong(right)), i);
            boolean moved = !(Math.abs(before - after) <= UNMOVED * Math.abs(before));
            if (moved && !Double.isNaN(before) && !leaning.contains(proof.of())) {
                leaning.add(proof.of());
            }
        }
        return leaning;
    }

    private static Quantity wrong(Quantity right) {
        boolean count = right.dimension().equals(Dimension.ONE) && Elementary.isWhole(right.value());
        return new Quantity(count ? right.value() + 1 : right.value() * 1.03, right.dimension());
    }

    /** By the second route alone, with the models built from {@code values}; the proofs before it go first. */
    private static double found(Workshop workshop, ModelPlans plans, Values givens, Values values, int proof) {
        SecondRoute route = new SecondRoute(plans.with(values), givens, values, NONE);
        double found = Double.NaN;
        for (int i = 0; i <= proof; i++) {
            try {
                found = route.find(workshop.template().proofs().get(i));
            } catch (Unsolved unsolved) {
                found = Double.NaN;
            }
        }
        return found;
    }
}
