package ampersheet.thermal;

import java.util.List;
import java.util.Map;

/** Solves heat networks numerically. */
public final class HeatSolver {
  private HeatSolver() {}

  public sealed interface Outcome {
    /** @param kelvin by node name, ambients included; @param watts through each resistance and of each loss */
    record Solved(Map<String, Double> kelvin, Map<String, Double> watts) implements Outcome {}

    /** These nodes have no path to an ambient. */
    record Isolated(List<String> nodes) implements Outcome {}

    /** The loss grows faster with temperature than the network carries away: thermal runaway. */
    record Runaway(int iterations) implements Outcome {}

    /** A sought temperature is never reached. */
    record NeverReached(String node, double steadyKelvin) implements Outcome {}
  }

  public static Outcome steady(HeatNetwork network) {
    throw new UnsupportedOperationException("being written");
  }

  /** Temperatures after {@code seconds}. */
  public static Outcome after(HeatNetwork network, double seconds) {
    throw new UnsupportedOperationException("being written");
  }

  /** Seconds until the node passes {@code kelvin}. */
  public static TimeOutcome timeUntil(HeatNetwork network, String node, double kelvin) {
    throw new UnsupportedOperationException("being written");
  }

  /** Seconds, or why there are none. */
  public sealed interface TimeOutcome {
    record Reached(double seconds) implements TimeOutcome {}

    record Failed(Outcome why) implements TimeOutcome {}
  }
}
