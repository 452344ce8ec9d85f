package ampersheet.circuit;

/** A solved circuit. Part and node names that do not exist throw {@link IllegalArgumentException}. */
public interface OperatingPoint {
  /** Volts against the reference node. */
  double voltage(String node);

  /** Volts across the part, {@code from} against {@code to}; for a source {@code to} against {@code from}. */
  double across(String part);

  /** Amperes through the part, {@code from} to {@code to}; for a source delivered out of {@code to}. */
  double current(String part);

  /** Watts the part takes up; for a source watts it delivers. */
  double power(String part);

  /** Largest sum of currents at any node, amperes: Kirchhoff's current law says 0. */
  double currentResidual();

  /** Watts delivered less watts taken up: energy conservation says 0. */
  double powerResidual();
}
