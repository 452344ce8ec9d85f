package ampersheet.problem;

import ampersheet.formula.Condition;
import ampersheet.formula.Evaluation;
import ampersheet.formula.Expression;
import ampersheet.formula.Values;
import ampersheet.model.Models;
import ampersheet.model.Unsolved;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Elementary;
import ampersheet.quantity.Quantity;
import ampersheet.template.ProblemTemplate.Proof;
import ampersheet.template.ProblemTemplate.Way;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;

/**
 * Finds the values of steps from the solved models, without the formulas of the steps.
 *
 * <p>What it finds is known to the proofs after it, so that nothing the first route found enters a bound or a target.
 * Only the models are built with steps of the first route, since the part that is drawn is the part that is solved;
 * those steps have proofs of their own.
 */
final class SecondRoute {
    /** A bound met so closely that the solver's own accuracy would decide; looser than for formulas. */
    private static final double NEAR_A_BOUND = 1e-7;

    /** The powers of ten, where each search begins. */
    private static final int MOST_KEPT = 32;

    private final Models models;
    private final Values firstRoute;
    private final boolean nearTheSteps;
    private final Objections objections;
    private final List<Models> otherStates = new ArrayList<>();
    private final Map<Varied, Models> solved = new LinkedHashMap<>();
    private Values known;

    /** @param givens with constants; @param firstRoute givens and steps, with which the models are built */
    SecondRoute(Models models, Values givens, Values firstRoute, Objections objections) {
        this(models, givens, firstRoute, objections, false);
    }

    /** @param nearTheSteps whether to look first where the first route found it: then it proves nothing */
    private SecondRoute(Models models, Values givens, Values firstRoute, Objections objections, boolean nearTheSteps) {
        this.nearTheSteps = nearTheSteps;
        this.models = models;
        this.firstRoute = firstRoute;
        this.objections = objections;
        this.known = givens;
    }

    /**
     * The same way for models that are a little otherwise than those of the steps: no proof, so it begins where the
     * steps lead, which spares most of each search.
     */
    static SecondRoute departing(Models models, Values givens, Values firstRoute) {
        return new SecondRoute(models, givens, firstRoute, Independence.NONE, true);
    }

    /** Givens, constants and the steps found so far by this route; a step it could not find is not a number. */
    Values known() {
        return known;
    }

    /** The models as proofs asked for them with other values: a load taken off, the other end of a range. */
    List<Models> otherStates() {
        return List.copyOf(otherStates);
    }

    /**
     * The step's value in SI units.
     *
     * @throws Unsolved if a model or the search has no result
     */
    double find(Proof proof) {
        Dimension dimension = firstRoute.quantity(proof.of()).dimension();
        double found = Double.NaN;
        try {
            found = findBy(proof);
        } finally {
            known = known.with(proof.of(), new Quantity(found, dimension));
        }
        return found;
    }

    private double findBy(Proof proof) {
        Setting setting = new Setting(proof);
        Way way = proof.way();
        if (way instanceof Way.Direct) {
            return setting.measured();
        } else if (way instanceof Way.Extreme extreme) {
            return new WithinTolerances(extreme, setting.asking, setting::measuredWith, objections).find(proof.of());
        } else if (way instanceof Way.Root root) {
            double target = setting.value(root.target());
            DoubleUnaryOperator gap = x -> setting.measuredOrNot(x) - target;
            Dimension dimension = setting.varied().dimension();
            return nearTheSteps
                    ? RootSearch.near(firstRoute.quantity(proof.of()).value(), gap, target, dimension)
                    : RootSearch.find(gap, target, dimension);
        } else if (way instanceof Way.Smallest smallest) {
            double bound = setting.value(smallest.bound());
            return MemberWalk.smallest(smallest.members(), member -> setting.holds(member, smallest.relation(), bound));
        } else if (way instanceof Way.Largest largest) {
            double bound = setting.value(largest.bound());
            return MemberWalk.largest(largest.members(), member -> setting.holds(member, largest.relation(), bound));
        }
        throw new IllegalStateException("a way nobody told of: " + way);
    }

    /** The drawn models with another value for a name. */
    private record Varied(String name, double value) {}

    /** The models and values as one proof wants them. */
    private final class Setting {
        private final Proof proof;
        private final Values asking;
        private final Values building;
        private final Models set;

        Setting(Proof proof) {
            this.proof = proof;
            Values asking = known;
            Values building = firstRoute;
            Set<String> changed = new LinkedHashSet<>();
            for (Map.Entry<String, Expression> other : proof.with().entrySet()) {
                Quantity value = Evaluation.evaluate(other.getValue(), known);
                asking = asking.with(other.getKey(), value);
                building = building.with(other.getKey(), value);
                changed.add(other.getKey());
            }
            this.asking = asking;
            this.building = building;
            this.set = changed.isEmpty() ? models : models.with(building, changed);
            if (!changed.isEmpty()) {
                otherStates.add(set);
            }
        }

        double measured() {
            return Evaluation.evaluate(proof.measure(), set.measuredBy(asking)).value();
        }

        double value(Expression expression) {
            return Evaluation.evaluate(expression, asking).value();
        }

        Quantity varied() {
            return firstRoute.quantity(proof.varies());
        }

        /** With another value for the varied name. */
        double measuredAt(double x) {
            Quantity value = new Quantity(x, varied().dimension());
            Models varied = varied(x, value);
            return Evaluation.evaluate(proof.measure(), varied.measuredBy(asking.with(proof.varies(), value)))
                    .value();
        }

        /** Searches of several steps begin at the same values of the same name, and a model is solved once. */
        private Models varied(double x, Quantity value) {
            Varied at = new Varied(proof.varies(), x);
            Models known = set == models ? solved.get(at) : null;
            if (known != null) {
                return known;
            }
            Models varied = set.with(building.with(proof.varies(), value), Set.of(proof.varies()));
            if (set == models && solved.size() < MOST_KEPT) {
                solved.put(at, varied);
            }
            return varied;
        }

        /** With other values for some names. */
        double measuredWith(Map<String, Quantity> other) {
            Values asking = this.asking;
            Values building = this.building;
            for (Map.Entry<String, Quantity> each : other.entrySet()) {
                asking = asking.with(each.getKey(), each.getValue());
                building = building.with(each.getKey(), each.getValue());
            }
            return Evaluation.evaluate(
                            proof.measure(), set.with(building, other.keySet()).measuredBy(asking))
                    .value();
        }

        double measuredOrNot(double x) {
            try {
                return measuredAt(x);
            } catch (Unsolved elsewhere) {
                return Double.NaN;
            }
        }

        boolean holds(double member, Condition.Relation relation, double bound) {
            double measured = measuredOrNot(member);
            boolean bothWhole = Elementary.isWhole(measured) && Elementary.isWhole(bound);
            if (!bothWhole && Math.abs(measured - bound) <= NEAR_A_BOUND * Math.abs(bound)) {
                objections.raise(
                        Refusal.NEAR_A_BOUNDARY,
                        () -> "at " + member + " the model of " + proof.of() + " meets its bound to within rounding");
                // What the steps take for the limit itself, the model does, too: as near as its solver can tell.
                return switch (relation) {
                    case AT_MOST, AT_LEAST, EQUAL -> true;
                    case LESS, MORE, UNEQUAL -> false;
                };
            }
            return switch (relation) {
                case LESS -> measured < bound;
                case AT_MOST -> measured <= bound;
                case MORE -> measured > bound;
                case AT_LEAST -> measured >= bound;
                case EQUAL -> measured == bound;
                case UNEQUAL -> measured != bound;
            };
        }
    }
}
