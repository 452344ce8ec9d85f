package ampersheet.circuit;

/** Finds the direct-current operating point by modified nodal analysis and Newton's method. */
public final class OperatingPointSolver {
  private OperatingPointSolver() {}

  public static Outcome solve(Netlist netlist) {
    throw new UnsupportedOperationException("being written");
  }
}
