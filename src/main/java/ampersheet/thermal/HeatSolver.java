package ampersheet.thermal;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Solves heat networks numerically.
 *
 * <p>Steady temperatures come from the balance of heat at every node, by Newton's method where losses depend on
 * temperature. Temperatures over time come from numerical integration; nodes without capacity are in balance with their
 * neighbours at every moment. Times and temperatures are good to 1e-8 of their value.
 */
public final class HeatSolver {
    private HeatSolver() {}

    public sealed interface Outcome {
        /** @param kelvin by node name, ambients included; @param watts through each resistance and of each loss */
        record Solved(Map<String, Double> kelvin, Map<String, Double> watts) implements Outcome {
            public Solved {
                kelvin = Collections.unmodifiableMap(new LinkedHashMap<>(kelvin));
                watts = Collections.unmodifiableMap(new LinkedHashMap<>(watts));
            }
        }

        /**
         * These nodes have no path to an ambient, nor, where time is asked for, a capacity that could take their heat.
         */
        record Isolated(List<String> nodes) implements Outcome {}

        /** The loss grows faster with temperature than the network carries away: thermal runaway. */
        record Runaway(int iterations) implements Outcome {}

        /** A sought temperature is never reached. */
        record NeverReached(String node, double steadyKelvin) implements Outcome {}

        /**
         * A value that cannot be.
         *
         * @param fault the rest of a sentence that starts with the name of the resistance, loss or node
         */
        record Unfit(String name, String fault) implements Outcome {}
    }

    public static Outcome steady(HeatNetwork network) {
        HeatBalance balance = new HeatBalance(network);
        return balance.unfit().orElseGet(balance::steady);
    }

    /** Temperatures after {@code seconds}. */
    public static Outcome after(HeatNetwork network, double seconds) {
        if (!(seconds >= 0)) {
            throw new IllegalArgumentException("time runs forwards: " + seconds + " s");
        }
        HeatBalance balance = new HeatBalance(network);
        return balance.unfit().orElseGet(() -> new Warming(balance).after(seconds));
    }

    /** Seconds until the node passes {@code kelvin}. */
    public static TimeOutcome timeUntil(HeatNetwork network, String node, double kelvin) {
        HeatBalance balance = new HeatBalance(network);
        return balance.unfit()
                .<TimeOutcome>map(TimeOutcome.Failed::new)
                .orElseGet(() -> new Warming(balance).until(node, kelvin));
    }

    /** Seconds, or why there are none. */
    public sealed interface TimeOutcome {
        record Reached(double seconds) implements TimeOutcome {}

        record Failed(Outcome why) implements TimeOutcome {}
    }
}
