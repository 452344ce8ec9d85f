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
 * @param words what is said in words, of what the kind lets be said so
 */
public record PlacedPart(
        PartKind kind,
        String name,
        Map<String, GridPoint> ends,
        Map<PartValue, Double> values,
        Map<String, String> words) {
    public PlacedPart {
        ends = Collections.unmodifiableMap(new TreeMap<>(ends));
        values = Collections.unmodifiableMap(new TreeMap<>(values));
        words = Collections.unmodifiableMap(new TreeMap<>(words));
    }

    public PlacedPart(PartKind kind, String name, Map<String, GridPoint> ends, Map<PartValue, Double> values) {
        this(kind, name, ends, values, Map.of());
    }

    /** What is said, or holds when nothing is. */
    public String word(String key) {
        return words.getOrDefault(key, kind.words().get(key).get(0));
    }

    public GridPoint end(String terminal) {
        return ends.get(terminal);
    }
}
