package ampersheet.circuit;

import java.util.List;
import java.util.Map;

/**
 * Which part ends are connected.
 *
 * @param nodes names, the reference node first; a node without a name given gets a letter, A, B, C … in order of parts
 * @param nodeAt the node at each grid point where a part ends
 */
public record Netlist(List<Connected> parts, List<String> nodes, Map<GridPoint, String> nodeAt) {

  /** A part (no wires, grounds or node names) with the node of each terminal. */
  public record Connected(PlacedPart part, Map<String, String> node) {}

  static Netlist of(Schematic schematic) {
    throw new UnsupportedOperationException("being written");
  }

  public String reference() {
    return nodes.get(0);
  }
}
