package ampersheet.thermal;

import ampersheet.thermal.HeatNetwork.Ambient;
import ampersheet.thermal.HeatNetwork.Loss;
import ampersheet.thermal.HeatNetwork.Node;
import ampersheet.thermal.HeatNetwork.Resistance;
import ampersheet.thermal.HeatNetwork.Temperatures;
import ampersheet.thermal.HeatSolver.Outcome;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.SingularMatrixException;

/**
 * The balance of heat at the nodes of a network: losses into a node less what its resistances carry away. Sought nodes
 * are numbered first, ambients after them.
 */
final class HeatBalance {
    private static final double HOTTEST = 1e5;
    private static final int MOST_ITERATIONS = 200;
    /** Kelvin; small against what bends a loss, large against rounding. */
    private static final double DIFFERENCE = 1e-3;

    private final HeatNetwork network;
    private final Map<String, Integer> number = new LinkedHashMap<>();
    private final int nodes;
    private final Optional<Outcome> unfit;
    private int iterations;

    HeatBalance(HeatNetwork network) {
        this.network = network;
        nodes = network.nodes().size();
        for (Node node : network.nodes()) {
            enter(node.name());
        }
        for (Ambient ambient : network.ambients()) {
            enter(ambient.name());
        }
        for (Resistance resistance : network.resistances()) {
            number(resistance.from());
            number(resistance.to());
        }
        for (Loss loss : network.losses()) {
            number(loss.into());
        }
        unfit = findUnfit();
    }

    private void enter(String name) {
        if (number.putIfAbsent(name, number.size()) != null) {
            throw new IllegalArgumentException("two nodes are named " + name);
        }
    }

    /** The first impossible value. */
    Optional<Outcome> unfit() {
        return unfit;
    }

    private Optional<Outcome> findUnfit() {
        for (Resistance resistance : network.resistances()) {
            if (!(resistance.kelvinPerWatt() > 0) || Double.isInfinite(resistance.kelvinPerWatt())) {
                return Optional.of(new Outcome.Unfit(
                        resistance.name(), "is " + resistance.kelvinPerWatt() + " K/W; needs more than 0"));
            }
        }
        for (Node node : network.nodes()) {
            if (!(node.capacity() >= 0) || Double.isInfinite(node.capacity())) {
                return Optional.of(new Outcome.Unfit(
                        node.name(), "has a capacity of " + node.capacity() + " J/K; needs 0 or more"));
            }
            if (node.capacity() > 0 && !isTemperature(node.initial())) {
                return Optional.of(
                        new Outcome.Unfit(node.name(), "starts at " + node.initial() + " K; needs more than 0"));
            }
        }
        for (Ambient ambient : network.ambients()) {
            if (!isTemperature(ambient.kelvin())) {
                return Optional.of(
                        new Outcome.Unfit(ambient.name(), "is at " + ambient.kelvin() + " K; needs more than 0"));
            }
        }
        return Optional.empty();
    }

    private static boolean isTemperature(double kelvin) {
        return kelvin > 0 && !Double.isInfinite(kelvin);
    }

    HeatNetwork network() {
        return network;
    }

    int number(String name) {
        Integer found = number.get(name);
        if (found == null) {
            throw new IllegalArgumentException("no node is named " + name);
        }
        return found;
    }

    /** Kelvin of every node and ambient: nodes as told, ambients as they are. */
    double[] withAmbients(double[] kelvin) {
        double[] all = new double[number.size()];
        System.arraycopy(kelvin, 0, all, 0, nodes);
        for (int i = 0; i < network.ambients().size(); i++) {
            all[nodes + i] = network.ambients().get(i).kelvin();
        }
        return all;
    }

    /** Watts into each node and ambient that stay there: 0 at a node in balance. */
    double[] surplus(double[] all) {
        double[] surplus = new double[all.length];
        for (Resistance resistance : network.resistances()) {
            double watts = flow(resistance, all);
            surplus[number(resistance.from())] -= watts;
            surplus[number(resistance.to())] += watts;
        }
        Temperatures temperatures = name -> all[number(name)];
        for (Loss loss : network.losses()) {
            surplus[number(loss.into())] += loss.watts().watts(temperatures);
        }
        return surplus;
    }

    private double flow(Resistance resistance, double[] all) {
        return (all[number(resistance.from())] - all[number(resistance.to())]) / resistance.kelvinPerWatt();
    }

    Outcome steady() {
        List<String> isolated = new ArrayList<>();
        boolean[] tied = tiedTo(i -> i >= nodes);
        for (int i = 0; i < nodes; i++) {
            if (!tied[i]) {
                isolated.add(network.nodes().get(i).name());
            }
        }
        if (!isolated.isEmpty()) {
            return new Outcome.Isolated(isolated);
        }
        boolean[] sought = new boolean[nodes];
        Arrays.fill(sought, true);
        double[] cold = withAmbients(new double[nodes]);
        iterations = 0;
        if (!carry(cold, sought, new double[nodes])) {
            throw new IllegalStateException("nodes tied to an ambient find no balance without losses");
        }
        double[] answer = cold.clone();
        if (balance(answer, sought) && isStable(answer, sought)) {
            return solved(answer);
        }
        // Newton's method may jump past the state that warming up ends in; warming up step by step does not.
        return warmedUp(cold, sought)
                .filter(warmed -> balance(warmed, sought) && isStable(warmed, sought))
                .<Outcome>map(this::solved)
                .orElseGet(() -> new Outcome.Runaway(iterations));
    }

    /** Nodes connected, over resistances, with one that is an anchor. */
    boolean[] tiedTo(IntPredicate anchor) {
        boolean[] tied = new boolean[number.size()];
        for (int i = 0; i < tied.length; i++) {
            tied[i] = anchor.test(i);
        }
        boolean grown = true;
        while (grown) {
            grown = false;
            for (Resistance resistance : network.resistances()) {
                int from = number(resistance.from());
                int to = number(resistance.to());
                if (tied[from] != tied[to]) {
                    tied[from] = true;
                    tied[to] = true;
                    grown = true;
                }
            }
        }
        return tied;
    }

    Outcome.Solved solved(double[] all) {
        Map<String, Double> kelvin = new LinkedHashMap<>();
        number.forEach((name, i) -> kelvin.put(name, all[i]));
        Map<String, Double> watts = new LinkedHashMap<>();
        for (Resistance resistance : network.resistances()) {
            watts.put(resistance.name(), flow(resistance, all));
        }
        Temperatures temperatures = name -> all[number(name)];
        for (Loss loss : network.losses()) {
            watts.put(loss.name(), loss.watts().watts(temperatures));
        }
        return new Outcome.Solved(kelvin, watts);
    }

    /** Moves the sought temperatures to where their heat balances; false if there is no such place in reach. */
    boolean balance(double[] all, boolean[] sought) {
        return balance(all, sought, new double[nodes], new double[nodes]);
    }

    /**
     * The same with every node also tied to a place of its own.
     *
     * @param conductance to that place, W/K
     * @param held its temperature, K
     */
    boolean balance(double[] all, boolean[] sought, double[] conductance, double[] held) {
        for (int i = 0; i < MOST_ITERATIONS; i++) {
            iterations++;
            double[] surplus = surplus(all);
            double[][] jacobian = jacobian(all, sought);
            for (int node = 0; node < nodes; node++) {
                surplus[node] -= conductance[node] * (all[node] - held[node]);
                jacobian[node][node] += conductance[node];
            }
            Optional<double[]> step = solve(jacobian, surplus, sought);
            if (step.isEmpty()) {
                return false;
            }
            double[] move = step.get();
            double largest = 0;
            for (int node = 0; node < nodes; node++) {
                if (sought[node]) {
                    all[node] += move[node];
                    largest = Math.max(largest, Math.abs(move[node]) / Math.max(1, Math.abs(all[node])));
                    if (!(Math.abs(all[node]) < HOTTEST)) {
                        return false;
                    }
                }
            }
            if (largest < 1e-13) {
                return true;
            }
            if (largest < 1e-10 && i > 20) {
                return true; // as close as rounding in the losses allows
            }
        }
        return false;
    }

    /** Each round the losses of the last temperatures are carried away; empty when that never ends. */
    private Optional<double[]> warmedUp(double[] cold, boolean[] sought) {
        double[] all = cold.clone();
        for (int i = 0; i < 50 * MOST_ITERATIONS; i++) {
            iterations++;
            double[] losses = lossesAt(all);
            double[] next = all.clone();
            if (!carry(next, sought, losses)) {
                return Optional.empty();
            }
            double largest = 0;
            for (int node = 0; node < nodes; node++) {
                largest = Math.max(largest, Math.abs(next[node] - all[node]));
                if (!(Math.abs(next[node]) < HOTTEST)) {
                    return Optional.empty();
                }
            }
            all = next;
            if (largest < 1e-9) {
                return Optional.of(all);
            }
        }
        return Optional.of(all);
    }

    private double[] lossesAt(double[] all) {
        double[] losses = new double[nodes];
        Temperatures temperatures = name -> all[number(name)];
        for (Loss loss : network.losses()) {
            int into = number(loss.into());
            if (into < nodes) {
                losses[into] += loss.watts().watts(temperatures);
            }
        }
        return losses;
    }

    /**
     * Sets the sought temperatures to those at which the resistances carry the given losses away, if these are finite.
     */
    private boolean carry(double[] all, boolean[] sought, double[] losses) {
        double[] surplus = new double[all.length];
        for (Resistance resistance : network.resistances()) {
            double watts = flow(resistance, all);
            surplus[number(resistance.from())] -= watts;
            surplus[number(resistance.to())] += watts;
        }
        for (int i = 0; i < nodes; i++) {
            surplus[i] += losses[i];
        }
        Optional<double[]> move = solve(conductances(), surplus, sought);
        if (move.isEmpty()) {
            return false;
        }
        for (int i = 0; i < nodes; i++) {
            if (sought[i]) {
                all[i] += move.get()[i];
            }
        }
        return true;
    }

    private double[][] conductances() {
        double[][] matrix = new double[nodes][nodes];
        for (Resistance resistance : network.resistances()) {
            int from = number(resistance.from());
            int to = number(resistance.to());
            double conductance = 1 / resistance.kelvinPerWatt();
            if (from < nodes) {
                matrix[from][from] += conductance;
            }
            if (to < nodes) {
                matrix[to][to] += conductance;
            }
            if (from < nodes && to < nodes) {
                matrix[from][to] -= conductance;
                matrix[to][from] -= conductance;
            }
        }
        return matrix;
    }

    /** Watts more carried away than lost, per kelvin: conductances less what the losses grow by. */
    private double[][] jacobian(double[] all, boolean[] sought) {
        double[][] matrix = conductances();
        for (int column = 0; column < nodes; column++) {
            if (!sought[column] || network.losses().isEmpty()) {
                continue;
            }
            double[] warmer = all.clone();
            warmer[column] += DIFFERENCE;
            double[] cooler = all.clone();
            cooler[column] -= DIFFERENCE;
            double[] more = lossesAt(warmer);
            double[] less = lossesAt(cooler);
            for (int row = 0; row < nodes; row++) {
                matrix[row][column] -= (more[row] - less[row]) / (2 * DIFFERENCE);
            }
        }
        return matrix;
    }

    /** Whether a small warming dies away: no eigenvalue has a real part of 0 or less. */
    private boolean isStable(double[] all, boolean[] sought) {
        for (double value :
                new EigenDecomposition(new Array2DRowRealMatrix(jacobian(all, sought), false)).getRealEigenvalues()) {
            if (!(value > 0)) {
                return false;
            }
        }
        return true;
    }

    /** Solves for the sought nodes only; empty when singular. */
    private Optional<double[]> solve(double[][] matrix, double[] right, boolean[] sought) {
        int[] rows = IntStream.range(0, nodes).filter(i -> sought[i]).toArray();
        double[][] part = new double[rows.length][rows.length];
        double[] partRight = new double[rows.length];
        for (int i = 0; i < rows.length; i++) {
            partRight[i] = right[rows[i]];
            for (int j = 0; j < rows.length; j++) {
                part[i][j] = matrix[rows[i]][rows[j]];
            }
        }
        double[] answer = new double[nodes];
        if (rows.length == 0) {
            return Optional.of(answer);
        }
        try {
            double[] found = new LUDecomposition(new Array2DRowRealMatrix(part, false), Double.MIN_NORMAL)
                    .getSolver()
                    .solve(new ArrayRealVector(partRight, false))
                    .toArray();
            for (int i = 0; i < rows.length; i++) {
                if (Double.isNaN(found[i]) || Double.isInfinite(found[i])) {
                    return Optional.empty();
                }
                answer[rows[i]] = found[i];
            }
            return Optional.of(answer);
        } catch (SingularMatrixException noBalance) {
            return Optional.empty(); // loss and conduction grow alike: the caller reports a runaway
        }
    }
}
