package ampersheet.circuit;

import java.util.OptionalDouble;
import java.util.StringJoiner;

/**
 * Resistance of solid copper wire by American wire gauge number, at 20 °C, as a handbook prints it: T. Floyd, Electric
 * Circuit Fundamentals, 2nd edition, by way of HyperPhysics, American Wire Gages (AWG) Sizes and Resistances. Printed per
 * 1,000 feet.
 *
 * <p>A table on purpose, not the gauge formula: whoever works a wire by formula finds here what was measured and printed.
 */
final class CopperWire {
  private static final double METRES = 1000 * 0.3048;
  private static final int[] GAUGES = {12, 18, 20, 22, 24, 26, 28, 30};
  private static final double[] OHMS = {1.588, 6.385, 10.15, 16.14, 25.67, 40.81, 64.90, 103.2};

  private CopperWire() {}

  /** Empty for a gauge that the table does not hold. */
  static OptionalDouble ohmsPerMetre(double gauge) {
    for (int i = 0; i < GAUGES.length; i++) {
      if (GAUGES[i] == gauge) {
        return OptionalDouble.of(OHMS[i] / METRES);
      }
    }
    return OptionalDouble.empty();
  }

  /** All gauges of the table, for a sentence. */
  static String gauges() {
    StringJoiner list = new StringJoiner(", ");
    for (int gauge : GAUGES) {
      list.add(Integer.toString(gauge));
    }
    return list.toString();
  }
}
