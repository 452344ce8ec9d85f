package ampersheet.circuit;

import java.util.List;

/**
 * Where each nonlinear branch is linearised.
 *
 * @param across junction voltage, or voltage along a channel, by branch
 * @param drive gate drive of a channel, by branch
 */
record Linearisation(double[] across, double[] drive) {
  /** Junctions at the edge of conducting, channels off. */
  static Linearisation start(List<Branch> branches) {
    Linearisation start = new Linearisation(new double[branches.size()], new double[branches.size()]);
    for (int i = 0; i < branches.size(); i++) {
      if (branches.get(i).law() instanceof Law.Conducting conducting && conducting.junction().offset() > 0) {
        start.across[i] = conducting.junction().limited(Double.MAX_VALUE, Double.NEGATIVE_INFINITY);
      }
    }
    return start;
  }
}
