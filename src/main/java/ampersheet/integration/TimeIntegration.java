package ampersheet.integration;

import ampersheet.integration.Course.Arrived;
import ampersheet.integration.Course.AtRest;
import ampersheet.integration.Course.Diverged;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.exception.MaxCountExceededException;
import org.apache.commons.math3.ode.FirstOrderDifferentialEquations;
import org.apache.commons.math3.ode.events.EventHandler;
import org.apache.commons.math3.ode.nonstiff.DormandPrince853Integrator;

/**
 * Integrates rates over time, to 1e-9 of the largest value.
 *
 * <p>An explicit method (Dormand and Prince, order 8) does it until it needs suspiciously many steps: then some part of
 * the system is much quicker than what is looked at, and extrapolated implicit steps take over, which pass over the
 * quick part. Time advances in spans of doubling length, after each of which it is seen whether the state is at rest.
 */
public final class TimeIntegration {
    private static final int EXPLICIT_EVALUATIONS = 4_000;
    private static final int MOST_SPANS = 1_000;
    private static final double RELATIVE = 1e-12;
    /** Share of a value that is not noticed; above what integration leaves open, below what is promised. */
    private static final double UNNOTICED = 1e-9;

    private final Rates rates;
    private final double[] start;
    private final Optional<double[]> rest;
    private final double scale;
    private final double largest;
    private final double firstSpan;
    private boolean implicit;

    /**
     * @param rest the state at which all will come to rest, if there is one and it is known
     * @param scale what counts as a large value of the state
     * @param largest beyond it the state counts as diverged
     * @param firstSpan seconds; about the shortest time constant
     */
    public TimeIntegration(
            Rates rates, double[] start, Optional<double[]> rest, double scale, double largest, double firstSpan) {
        this.rates = rates;
        this.start = start.clone();
        this.rest = rest.map(double[]::clone);
        this.scale = scale;
        this.largest = largest;
        this.firstSpan = firstSpan;
        implicit = !rates.isExplicit();
    }

    /** {@link Arrived} after so many seconds, or {@link Diverged}. */
    public Course after(double seconds) {
        Course course = run(seconds, Optional.empty());
        return course instanceof AtRest atRest ? new Arrived(seconds, atRest.state()) : course;
    }

    /**
     * {@link Arrived} where the gap passes 0.
     *
     * @param gap a function of the state; may throw {@link NoBalance}
     */
    public Course until(ToDoubleFunction<double[]> gap) {
        return run(Double.POSITIVE_INFINITY, Optional.of(gap));
    }

    private Course run(double seconds, Optional<ToDoubleFunction<double[]>> gap) {
        double[] state = start.clone();
        double time = 0;
        double span = firstSpan;
        try {
            if (isClosed(gap, state)) {
                return new Arrived(0, state);
            }
            if (isAtRest(state, span)) {
                return atRest(state); // what no longer moves would be followed step by step
            }
            for (int i = 0; i < MOST_SPANS && time < seconds; i++) {
                double end = Math.min(seconds, time + span);
                Optional<Advanced> reached = advance(state, time, end, gap);
                if (reached.isEmpty()) {
                    return new Diverged(i);
                }
                state = reached.get().state();
                if (reached.get().passed() || isClosed(gap, state)) {
                    return new Arrived(reached.get().seconds(), state);
                }
                for (double value : state) {
                    if (!(Math.abs(value) < largest)) {
                        return new Diverged(i);
                    }
                }
                time = end;
                if (isAtRest(state, span)) {
                    return atRest(state);
                }
                span *= 2;
            }
        } catch (NoBalance unbalanced) {
            return new Diverged(0);
        }
        return time < seconds ? new Diverged(MOST_SPANS) : new Arrived(seconds, state);
    }

    private static boolean isClosed(Optional<ToDoubleFunction<double[]>> gap, double[] state) {
        return gap.isPresent() && gap.get().applyAsDouble(state) == 0;
    }

    private AtRest atRest(double[] state) {
        return new AtRest(rest.map(double[]::clone).orElse(state));
    }

    private boolean isAtRest(double[] state, double span) {
        if (rest.isPresent()) {
            double[] known = rest.get();
            for (int i = 0; i < state.length; i++) {
                if (Math.abs(state[i] - known[i]) > UNNOTICED * Math.max(scale, Math.abs(state[i]))) {
                    return false;
                }
            }
            return true;
        }
        double[] next = rates.implicitStep(state, span);
        for (int i = 0; i < state.length; i++) {
            if (Math.abs(next[i] - state[i]) > 1e-3 * UNNOTICED * Math.max(scale, Math.abs(state[i]))) {
                return false;
            }
        }
        return true;
    }

    /**
     * @param passed whether the gap closed here. The time cannot tell: the explicit method may say the last bit less
     *     than it was asked for.
     */
    private record Advanced(double seconds, double[] state, boolean passed) {}

    /** The state at {@code to}, or earlier where the gap closes; empty when steps become too many. */
    private Optional<Advanced> advance(
            double[] state, double from, double to, Optional<ToDoubleFunction<double[]>> gap) {
        if (state.length == 0) {
            return Optional.of(new Advanced(to, state, false));
        }
        if (!implicit) {
            try {
                return Optional.of(explicitly(state, from, to, gap));
            } catch (MaxCountExceededException | NoBalance quickParts) {
                implicit =
                        true; // too many steps, or one that overshot: go on with a method that passes over quick parts
            }
        }
        return implicitly(state, from, to, gap);
    }

    private Advanced explicitly(double[] state, double from, double to, Optional<ToDoubleFunction<double[]>> gap) {
        DormandPrince853Integrator integrator = new DormandPrince853Integrator(0, to - from, 1e-12 * scale, RELATIVE);
        integrator.setMaxEvaluations(EXPLICIT_EVALUATIONS);
        Optional<Passing> passing = gap.map(Passing::new);
        passing.ifPresent(closing -> integrator.addEventHandler(closing, (to - from) / 10, 1e-14 * to, 200));
        double[] reached = new double[state.length];
        double time = integrator.integrate(new Equations(state.length), from, state.clone(), to, reached);
        boolean passed = passing.filter(closing -> closing.occurred).isPresent();
        return new Advanced(passed ? time : to, reached, passed);
    }

    private Optional<Advanced> implicitly(
            double[] state, double from, double to, Optional<ToDoubleFunction<double[]>> closing) {
        ToDoubleFunction<double[]> gap = closing.orElse(any -> 0);
        ExtrapolatedSteps steps = new ExtrapolatedSteps(rates, 1e-11, scale);
        double[] here = state;
        double time = from;
        double step = to - from;
        double gapHere = gap.applyAsDouble(here);
        while (time < to) {
            double tried = Math.min(step, to - time);
            Optional<double[]> stepped = steps.step(here, tried);
            if (stepped.isEmpty()) {
                step = tried * steps.factor();
                if (step < 1e-14 * to) {
                    return Optional.empty();
                }
                continue;
            }
            double[] next = stepped.get();
            double gapNext = gap.applyAsDouble(next);
            if (gapHere * gapNext < 0) {
                double[] base = here;
                double passes = new BrentSolver(1e-14, 1e-15 * to)
                        .solve(
                                200,
                                h -> {
                                    double[] between = h == 0 ? base : steps.accepting(base, h);
                                    return gap.applyAsDouble(between);
                                },
                                0,
                                tried);
                return Optional.of(new Advanced(time + passes, steps.accepting(base, passes), true));
            }
            here = next;
            gapHere = gapNext;
            time = tried == to - time ? to : time + tried;
            step = Math.max(step, tried) * steps.factor();
        }
        return Optional.of(new Advanced(to, here, false));
    }

    private final class Equations implements FirstOrderDifferentialEquations {
        private final int size;

        Equations(int size) {
            this.size = size;
        }

        @Override
        public int getDimension() {
            return size;
        }

        @Override
        public void computeDerivatives(double time, double[] state, double[] derivatives) {
            System.arraycopy(rates.at(state), 0, derivatives, 0, size);
        }
    }

    /** Stops the explicit method where the gap closes. */
    private static final class Passing implements EventHandler {
        private final ToDoubleFunction<double[]> gap;
        private boolean occurred;

        Passing(ToDoubleFunction<double[]> gap) {
            this.gap = gap;
        }

        @Override
        public void init(double time, double[] state, double end) {}

        @Override
        public double g(double time, double[] state) {
            return gap.applyAsDouble(state);
        }

        @Override
        public Action eventOccurred(double time, double[] state, boolean increasing) {
            occurred = true;
            return Action.STOP;
        }

        @Override
        public void resetState(double time, double[] state) {}
    }
}
