package ampersheet.circuit;

import java.util.Collections;
import java.util.Map;
import java.util.TreeMap;

/**
 * A part on the grid.
 *
 * @param name unique, such as {@code R1}; for a wire or ground without name, a made-up one
 * @param ends grid point of each terminal of the kind
 * @param values SI value of each needed, and of some optional, value of the kind
 */
public record PlacedPart(PartKind kind, String name, Map<String, GridPoint> ends, Map<String, Double> values) {
  public PlacedPart {
    ends = Collections.unmodifiableMap(new TreeMap<>(ends));
    values = Collections.unmodifiableMap(new TreeMap<>(values));
  }

  public GridPoint end(String terminal) {
    return ends.get(terminal);
  }
}
