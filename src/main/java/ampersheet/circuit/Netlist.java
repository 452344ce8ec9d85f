package ampersheet.circuit;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Which part ends are connected: ends on one grid point are, and so are the two ends of a wire and all ground symbols.
 * Lines that cross without an end there are not.
 *
 * @param nodes names, the reference node first. A node carries the name of the first {@link PartKind#NODE} on it;
 *     otherwise the grounded node is {@code ground} and the others are numbered, 1, 2, 3 … in order of parts. The
 *     reference is the grounded node, or, without a ground symbol, the minus of the first source
 * @param nodeAt the node at each grid point where a part ends
 * @param doubts what is drawn in a way that its author hardly meant
 */
public record Netlist(List<Connected> parts, List<String> nodes, Map<GridPoint, String> nodeAt, List<Doubt> doubts) {
    /** What the grounded node is called where its schematic gives it no name. */
    public static final String GROUND = "ground";

    public Netlist {
        parts = List.copyOf(parts);
        nodes = List.copyOf(nodes);
        nodeAt = Collections.unmodifiableMap(new LinkedHashMap<>(nodeAt));
        doubts = List.copyOf(doubts);
    }

    /** A part (no wires, grounds or node names) with the node of each terminal. */
    public record Connected(PlacedPart part, Map<String, String> node) {
        public Connected {
            node = Collections.unmodifiableMap(new LinkedHashMap<>(node));
        }
    }

    static Netlist of(Schematic schematic) {
        return new Wiring(schematic.parts()).netlist();
    }

    public String reference() {
        return nodes.get(0);
    }
}
