package ampersheet.circuit;

import java.util.List;

/** What became of solving a circuit. */
public sealed interface Outcome {
    record Solved(OperatingPoint point) implements Outcome {}

    /** No path for current ties these nodes to the reference. */
    record Floating(List<String> nodes) implements Outcome {}

    /** Ideal sources, ammeters, closed switches and wires contradict each other around a loop through these parts. */
    record SourceLoop(List<String> parts) implements Outcome {}

    /**
     * A value that the part cannot have, or a state that its model does not cover.
     *
     * @param fault the rest of a sentence that starts with the part: "has -5 ohms; needs 0 or more"
     */
    record Unfit(String part, String fault) implements Outcome {}

    record NotSettled(int iterations, double residual) implements Outcome {}
}
