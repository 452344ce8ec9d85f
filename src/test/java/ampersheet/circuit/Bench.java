package ampersheet.circuit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Builds circuits for tests by node name: every node is a point of its own, no three in line, {@code 0} is ground. */
final class Bench {
    private final List<PlacedPart> parts = new ArrayList<>();
    private final Map<String, GridPoint> points = new LinkedHashMap<>();

    /** @param values name, number, name, number … */
    Bench part(PartKind kind, String name, List<String> nodes, Object... values) {
        Map<String, GridPoint> ends = new LinkedHashMap<>();
        for (int i = 0; i < nodes.size(); i++) {
            ends.put(kind.terminals().get(i), point(nodes.get(i)));
        }
        Map<PartValue, Double> numbers = new LinkedHashMap<>();
        for (int i = 0; i < values.length; i += 2) {
            numbers.put(valueNamed((String) values[i]), ((Number) values[i + 1]).doubleValue());
        }
        parts.add(new PlacedPart(kind, name, ends, numbers));
        return this;
    }

    /** @param minus node, then plus node */
    Bench source(String name, String minus, String plus, double volts) {
        return part(PartKind.SOURCE, name, List.of(minus, plus), "volts", volts);
    }

    Bench resistor(String name, String from, String to, double ohms) {
        return part(PartKind.RESISTOR, name, List.of(from, to), "ohms", ohms);
    }

    /** By its key, which is shorter to write in a test. */
    static PartValue valueNamed(String key) {
        return PartValue.valueOf(key.toUpperCase(Locale.ROOT));
    }

    Netlist netlist() {
        return new Schematic(parts).netlist();
    }

    OperatingPoint solved() {
        Outcome outcome = OperatingPointSolver.solve(netlist());
        if (outcome instanceof Outcome.Solved solved) {
            return solved.point();
        }
        throw new AssertionError("not solved: " + outcome + " for " + parts);
    }

    private GridPoint point(String node) {
        GridPoint point = points.get(node);
        if (point == null) {
            point = new GridPoint(points.size(), points.size() * points.size());
            points.put(node, point);
            PartKind kind = node.equals("0") ? PartKind.GROUND : PartKind.NODE;
            parts.add(new PlacedPart(kind, node.equals("0") ? "ground1" : node, Map.of("at", point), Map.of()));
        }
        return point;
    }
}
