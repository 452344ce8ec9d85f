package ampersheet.bench;

import java.util.Optional;

/** Where the two probes of a meter go, so that it shows a positive number. */
public sealed interface Probes {
    /**
     * @param red node
     * @param black node
     * @param across the part whose ends these are; empty where a named node is measured against the reference
     */
    record Voltage(String red, String black, Optional<String> across) implements Probes {
        boolean sameNodes(Voltage other) {
            return red.equals(other.red) && black.equals(other.black)
                    || red.equals(other.black) && black.equals(other.red);
        }
    }

    /**
     * The circuit is opened at an end of a part, and the meter put between.
     *
     * @param part that carries the current
     * @param terminal of the part
     * @param redAtPart whether the current leaves the part there, so that the red probe goes to the part
     */
    record Current(String part, String terminal, boolean redAtPart) implements Probes {}
}
