package ampersheet.problem;

import ampersheet.model.Unsolved;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Elementary;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.exception.NoBracketingException;
import org.apache.commons.math3.exception.TooManyEvaluationsException;

/**
 * Looks for the one value at which a function is zero, over everything that could be meant: from 1e-12 to 1e12 of the
 * SI unit, and for numbers without a dimension also evenly from 0 to 1. It is told nothing of where the first route
 * found it.
 */
final class RootSearch {
    private static final int DECADES = 12;
    private static final int EVENLY = 32;
    /** Points per decade, tried in this order until the function is seen to change its sign. */
    private static final int[] DENSITIES = {1, 4, 16};

    /** Shares of a value, tried in this order. */
    private static final double[] NEARBY = {0.01, 0.1, 0.4};

    private static final int MOST_EVALUATIONS = 200;
    private static final double RELATIVE_ACCURACY = 1e-13;
    /**
     * At a root the function has all but vanished against its size nearby; at a jump or a pole it has not. The larger
     * end tells the size: the smaller one may itself lie on the root, but for the last bits.
     */
    private static final double VANISHED = 1e-6;

    private static final double SAME_ROOT = 1e-9;

    private RootSearch() {}

    /**
     * @param function not a number where the model has no solution
     * @param target what was taken off to make the function, as the measure of its size
     * @throws Unsolved if there is no such value, or more than one
     */
    static double find(DoubleUnaryOperator function, double target, Dimension dimension) {
        for (int density : DENSITIES) {
            List<Double> roots = roots(function, target, scale(dimension, density));
            if (roots.size() == 1) {
                return roots.get(0);
            } else if (roots.size() > 1) {
                throw new Unsolved("the search finds " + roots.size() + " values for which the model fits: " + roots);
            }
        }
        throw new Unsolved("the search finds no value for which the model fits");
    }

    /**
     * The same, but looked for round a value first: what departs a little from it is found in a few steps.
     *
     * @throws Unsolved as {@link #find}, which has the word where nothing is found nearby
     */
    static double near(double value, DoubleUnaryOperator function, double target, Dimension dimension) {
        for (double apart : value > 0 ? NEARBY : new double[0]) {
            List<Double> roots = roots(function, target, new double[] {value * (1 - apart), value * (1 + apart)});
            if (roots.size() == 1) {
                return roots.get(0);
            }
        }
        return find(function, target, dimension);
    }

    private static List<Double> roots(DoubleUnaryOperator function, double target, double[] scale) {
        List<Double> roots = new ArrayList<>();
        double before = Double.NaN;
        for (int i = 0; i < scale.length; i++) {
            double here = function.applyAsDouble(scale[i]);
            if (here == 0) {
                add(scale[i], roots);
            } else if (before < 0 && here > 0 || before > 0 && here < 0) {
                double root = between(function, scale[i - 1], scale[i], target);
                double size = Math.max(Math.abs(target), Math.max(Math.abs(before), Math.abs(here)));
                if (Math.abs(function.applyAsDouble(root)) <= VANISHED * size) {
                    add(root, roots);
                }
            }
            before = here;
        }
        return roots;
    }

    private static void add(double root, List<Double> roots) {
        boolean known = !roots.isEmpty() && Math.abs(roots.get(roots.size() - 1) - root) <= SAME_ROOT * Math.abs(root);
        if (!known) {
            roots.add(root);
        }
    }

    private static double between(DoubleUnaryOperator function, double low, double high, double target) {
        double finest = RELATIVE_ACCURACY * (low > 0 ? low : high);
        BrentSolver brent = new BrentSolver(RELATIVE_ACCURACY, finest, 1e-15 * Math.abs(target));
        try {
            return brent.solve(MOST_EVALUATIONS, x -> solvedAt(function, x), low, high);
        } catch (NoBracketingException | TooManyEvaluationsException failed) {
            throw new Unsolved("the search between " + low + " and " + high + " does not settle");
        }
    }

    private static double solvedAt(DoubleUnaryOperator function, double x) {
        double value = function.applyAsDouble(x);
        if (Double.isNaN(value)) {
            throw new Unsolved("the model has no solution at " + x);
        }
        return value;
    }

    private static double[] scale(Dimension dimension, int density) {
        List<Double> points = new ArrayList<>();
        if (dimension.equals(Dimension.ONE)) {
            for (int i = 0; i < EVENLY * density; i++) {
                points.add((double) i / (EVENLY * density));
            }
        }
        double step = Elementary.power(10, 1.0 / density);
        for (int decade = dimension.equals(Dimension.ONE) ? 0 : -DECADES; decade < DECADES; decade++) {
            double point = Elementary.power(10, decade);
            for (int i = 0; i < density; i++) {
                points.add(point);
                point *= step;
            }
        }
        points.add(Elementary.power(10, DECADES));
        return points.stream().mapToDouble(Double::doubleValue).toArray();
    }
}
