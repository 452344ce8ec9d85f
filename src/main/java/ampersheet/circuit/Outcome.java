package ampersheet.circuit;

import java.util.List;

/** What became of solving a circuit. */
public sealed interface Outcome {
  record Solved(OperatingPoint point) implements Outcome {}

  /** No path for current ties these nodes to the reference. */
  record Floating(List<String> nodes) implements Outcome {}

  /** Ideal sources, ammeters and wires contradict each other around a loop through these parts. */
  record SourceLoop(List<String> parts) implements Outcome {}

  record NotSettled(int iterations, double residual) implements Outcome {}
}
