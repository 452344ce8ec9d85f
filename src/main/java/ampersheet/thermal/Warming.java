package ampersheet.thermal;

import ampersheet.integration.Course;
import ampersheet.integration.NoBalance;
import ampersheet.integration.Rates;
import ampersheet.integration.TimeIntegration;
import ampersheet.thermal.HeatNetwork.Node;
import ampersheet.thermal.HeatSolver.Outcome;
import ampersheet.thermal.HeatSolver.TimeOutcome;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Temperatures over time: a heat capacity stores the surplus of heat at its node. */
final class Warming implements Rates {
    private static final double TOO_HOT = 1e5;

    private final HeatBalance balance;
    private final double[] capacity;
    private final boolean[] massless;
    private final boolean[] every;
    /** Node numbers of the state. */
    private final int[] stored;
    /** The last full set of temperatures, from which the next balance is sought. */
    private double[] latest;

    Warming(HeatBalance balance) {
        this.balance = balance;
        List<Node> nodes = balance.network().nodes();
        capacity = new double[nodes.size()];
        massless = new boolean[nodes.size()];
        every = new boolean[nodes.size()];
        Arrays.fill(every, true);
        List<Integer> storing = new ArrayList<>();
        double[] start = new double[nodes.size()];
        for (int i = 0; i < nodes.size(); i++) {
            capacity[i] = nodes.get(i).capacity();
            massless[i] = capacity[i] == 0;
            start[i] = nodes.get(i).initial();
            if (!massless[i]) {
                storing.add(i);
            } else if (!(start[i] > 0)) {
                start[i] = 300; // only where the search for its balance starts
            }
        }
        stored = storing.stream().mapToInt(Integer::intValue).toArray();
        latest = balance.withAmbients(start);
    }

    Outcome after(double seconds) {
        Optional<Outcome> isolated = isolated();
        if (isolated.isPresent()) {
            return isolated.get();
        }
        Course course = integration().after(seconds);
        if (course instanceof Course.Arrived arrived) {
            return settled(arrived.state()).<Outcome>map(balance::solved).orElseGet(() -> new Outcome.Runaway(0));
        }
        return new Outcome.Runaway(((Course.Diverged) course).spans());
    }

    TimeOutcome until(String name, double kelvin) {
        int node = balance.number(name);
        Optional<Outcome> isolated = isolated();
        if (isolated.isPresent()) {
            return new TimeOutcome.Failed(isolated.get());
        }
        Course course = integration().until(state -> allAt(state)[node] - kelvin);
        if (course instanceof Course.Arrived arrived) {
            return new TimeOutcome.Reached(arrived.seconds());
        } else if (course instanceof Course.AtRest atRest) {
            return new TimeOutcome.Failed(settled(atRest.state())
                    .<Outcome>map(all -> new Outcome.NeverReached(name, all[node]))
                    .orElseGet(() -> new Outcome.Runaway(0)));
        }
        return new TimeOutcome.Failed(new Outcome.Runaway(((Course.Diverged) course).spans()));
    }

    private TimeIntegration integration() {
        double[] state = new double[stored.length];
        for (int i = 0; i < stored.length; i++) {
            state[i] = latest[stored[i]];
        }
        return new TimeIntegration(this, state, rest(), 1, TOO_HOT, shortestTimeConstant());
    }

    /** The temperatures of the capacities once all is warm, if that ever ends. */
    private Optional<double[]> rest() {
        if (!(balance.steady() instanceof Outcome.Solved steady)) {
            return Optional.empty();
        }
        double[] rest = new double[stored.length];
        for (int i = 0; i < stored.length; i++) {
            rest[i] =
                    steady.kelvin().get(balance.network().nodes().get(stored[i]).name());
        }
        return Optional.of(rest);
    }

    /** Nodes without capacity that nothing holds, if there are any. */
    private Optional<Outcome> isolated() {
        boolean[] tied = balance.tiedTo(i -> i >= massless.length || !massless[i]);
        List<String> isolated = new ArrayList<>();
        for (int i = 0; i < massless.length; i++) {
            if (!tied[i]) {
                isolated.add(balance.network().nodes().get(i).name());
            }
        }
        return isolated.isEmpty() ? Optional.empty() : Optional.of(new Outcome.Isolated(isolated));
    }

    /** All temperatures that go with those of the capacities, or nothing when the massless nodes find no balance. */
    private Optional<double[]> settled(double[] state) {
        double[] all = latest.clone();
        for (int i = 0; i < stored.length; i++) {
            all[stored[i]] = state[i];
        }
        if (stored.length < massless.length && !balance.balance(all, massless)) {
            return Optional.empty();
        }
        latest = all;
        return Optional.of(all);
    }

    private double[] allAt(double[] state) {
        return settled(state).orElseThrow(() -> new NoBalance("the nodes without capacity find no balance"));
    }

    @Override
    public double[] at(double[] state) {
        double[] surplus = balance.surplus(allAt(state));
        double[] rates = new double[stored.length];
        for (int i = 0; i < stored.length; i++) {
            rates[i] = surplus[stored[i]] / capacity[stored[i]];
        }
        return rates;
    }

    /** Each capacity acts as a resistance of seconds / capacity to a place that keeps the temperature it had. */
    @Override
    public double[] implicitStep(double[] from, double seconds) {
        double[] all = latest.clone();
        double[] before = new double[massless.length];
        double[] storing = new double[massless.length];
        for (int i = 0; i < stored.length; i++) {
            all[stored[i]] = from[i];
            before[stored[i]] = from[i];
            storing[stored[i]] = capacity[stored[i]] / seconds;
        }
        if (!balance.balance(all, every, storing, before)) {
            throw new NoBalance("no temperatures within reach of one step");
        }
        latest = all;
        double[] state = new double[stored.length];
        for (int i = 0; i < stored.length; i++) {
            state[i] = all[stored[i]];
        }
        return state;
    }

    /** The shortest that a node has with its neighbours held, or a second. */
    private double shortestTimeConstant() {
        double shortest = Double.MAX_VALUE;
        for (int node : stored) {
            double conductance = 0;
            for (HeatNetwork.Resistance resistance : balance.network().resistances()) {
                if (balance.number(resistance.from()) == node || balance.number(resistance.to()) == node) {
                    conductance += 1 / resistance.kelvinPerWatt();
                }
            }
            if (conductance > 0) {
                shortest = Math.min(shortest, capacity[node] / conductance);
            }
        }
        return shortest == Double.MAX_VALUE ? 1 : shortest;
    }
}
