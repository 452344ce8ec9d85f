package ampersheet.circuit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Follows the lines of a drawing: makes the netlist and notes what looks unintended. Order is that of the parts. */
final class Wiring {
    private final List<PlacedPart> drawn;
    private final Map<GridPoint, Integer> pointIndex = new LinkedHashMap<>();
    private final Sets joined;
    private final List<End> ends = new ArrayList<>();
    private final List<Doubt> doubts = new ArrayList<>();

    Wiring(List<PlacedPart> drawn) {
        this.drawn = drawn;
        for (int i = 0; i < drawn.size(); i++) {
            PlacedPart part = drawn.get(i);
            for (String terminal : part.kind().terminals()) {
                GridPoint end = part.end(terminal);
                if (end == null) {
                    throw new IllegalArgumentException("part " + part.name() + " has no place for its end " + terminal);
                }
                pointIndex.putIfAbsent(end, pointIndex.size());
                ends.add(new End(i, terminal, end));
            }
        }
        joined = new Sets(pointIndex.size());
        int ground = -1;
        for (PlacedPart part : drawn) {
            if (part.kind() == PartKind.WIRE) {
                joined.join(at(part, "from"), at(part, "to"));
            } else if (part.kind() == PartKind.GROUND) {
                if (ground >= 0) {
                    joined.join(ground, at(part, "at"));
                }
                ground = at(part, "at");
            }
        }
    }

    Netlist netlist() {
        Map<Integer, String> names = names();
        Map<GridPoint, String> nodeAt = new LinkedHashMap<>();
        for (GridPoint point : pointIndex.keySet()) {
            nodeAt.put(point, names.get(root(point)));
        }
        List<Netlist.Connected> parts = new ArrayList<>();
        for (PlacedPart part : drawn) {
            if (isDevice(part)) {
                Map<String, String> node = new LinkedHashMap<>();
                for (String terminal : part.kind().terminals()) {
                    node.put(terminal, nodeAt.get(part.end(terminal)));
                }
                parts.add(new Netlist.Connected(part, node));
            }
        }
        Set<String> nodes = new LinkedHashSet<>();
        referencePoint().ifPresent(reference -> nodes.add(nodeAt.get(reference)));
        nodes.addAll(nodeAt.values());
        noteDuplicateNames();
        noteShortedParts();
        noteLooseEnds();
        noteLines();
        return new Netlist(parts, List.copyOf(nodes), nodeAt, doubts);
    }

    private static boolean isDevice(PlacedPart part) {
        return switch (part.kind()) {
            case WIRE, GROUND, NODE -> false;
            default -> true;
        };
    }

    private int at(PlacedPart part, String terminal) {
        return pointIndex.get(part.end(terminal));
    }

    private int root(GridPoint point) {
        return joined.root(pointIndex.get(point));
    }

    /** None where nothing is drawn. */
    private Optional<GridPoint> referencePoint() {
        for (PlacedPart part : drawn) {
            if (part.kind() == PartKind.GROUND) {
                return Optional.of(part.end("at"));
            }
        }
        for (PlacedPart part : drawn) {
            if (part.kind() == PartKind.SOURCE) {
                return Optional.of(part.end("from"));
            }
        }
        return pointIndex.keySet().stream().findFirst();
    }

    /** Name of each set of joined points, by its root; numbers, because letters stand at anodes and cathodes. */
    private Map<Integer, String> names() {
        Map<Integer, String> names = new LinkedHashMap<>();
        Set<String> taken = new LinkedHashSet<>();
        for (int i = 0; i < drawn.size(); i++) {
            PlacedPart part = drawn.get(i);
            if (part.kind() == PartKind.NODE && taken.add(part.name())) {
                String kept = names.putIfAbsent(root(part.end("at")), part.name());
                if (kept != null) {
                    doubts.add(new Doubt.SecondNodeName(i, part.name(), kept));
                }
            }
        }
        for (PlacedPart part : drawn) {
            if (part.kind() == PartKind.GROUND) {
                String ground = taken.contains(Netlist.GROUND) ? "0" : Netlist.GROUND;
                names.putIfAbsent(root(part.end("at")), ground);
                taken.add(ground);
            }
        }
        int number = 0;
        for (GridPoint point : pointIndex.keySet()) {
            if (!names.containsKey(root(point))) {
                names.put(root(point), Integer.toString(++number));
            }
        }
        return names;
    }

    private void noteDuplicateNames() {
        Map<String, Integer> parts = new LinkedHashMap<>();
        Map<String, Integer> nodeNames = new LinkedHashMap<>();
        for (int i = 0; i < drawn.size(); i++) {
            PlacedPart part = drawn.get(i);
            if (part.kind() == PartKind.WIRE || part.kind() == PartKind.GROUND) {
                continue;
            }
            Integer earlier = (part.kind() == PartKind.NODE ? nodeNames : parts).putIfAbsent(part.name(), i);
            if (earlier != null) {
                doubts.add(new Doubt.DuplicateName(i, part.name(), earlier));
            }
        }
    }

    private void noteShortedParts() {
        for (int i = 0; i < drawn.size(); i++) {
            PlacedPart part = drawn.get(i);
            if (part.kind().terminals().size() < 2) {
                continue;
            }
            Set<GridPoint> points = new LinkedHashSet<>();
            Set<Integer> nodes = new LinkedHashSet<>();
            for (String terminal : part.kind().terminals()) {
                points.add(part.end(terminal));
                nodes.add(root(part.end(terminal)));
            }
            if (points.size() == 1 || (nodes.size() == 1 && isDevice(part))) {
                doubts.add(new Doubt.ShortedPart(i, points.size() == 1));
            }
        }
    }

    private void noteLooseEnds() {
        int[] meeting = new int[pointIndex.size()];
        for (End end : ends) {
            meeting[pointIndex.get(end.point())]++;
        }
        for (End end : ends) {
            if (meeting[pointIndex.get(end.point())] == 1) {
                doubts.add(new Doubt.LooseEnd(end.part(), end.terminal(), end.point()));
            }
        }
    }

    private void noteLines() {
        for (int i = 0; i < drawn.size(); i++) {
            if (drawn.get(i).kind() == PartKind.WIRE && isDiagonal(drawn.get(i))) {
                doubts.add(new Doubt.DiagonalWire(i));
            }
        }
        List<Line> lines = new ArrayList<>();
        for (int i = 0; i < drawn.size(); i++) {
            if (isLine(drawn.get(i))) {
                lines.add(new Line(i, drawn.get(i).end("from"), drawn.get(i).end("to")));
            }
        }
        for (Line line : lines) {
            Set<Integer> overlapping = new LinkedHashSet<>();
            for (Line other : lines) {
                if (other.part() != line.part() && line.overlaps(other)) {
                    overlapping.add(other.part());
                    if (other.part() > line.part()) {
                        doubts.add(new Doubt.Overlap(other.part(), line.part()));
                    }
                }
            }
            for (End end : ends) {
                if (end.part() != line.part() && line.passes(end.point()) && !overlapping.contains(end.part())) {
                    doubts.add(new Doubt.EndOnLine(end.part(), end.terminal(), end.point(), line.part()));
                }
            }
        }
    }

    private static boolean isLine(PlacedPart part) {
        return part.kind().terminals().containsAll(List.of("from", "to"))
                && !part.end("from").equals(part.end("to"));
    }

    private static boolean isDiagonal(PlacedPart wire) {
        return wire.end("from").x() != wire.end("to").x()
                && wire.end("from").y() != wire.end("to").y();
    }

    private record End(int part, String terminal, GridPoint point) {}

    private record Line(int part, GridPoint from, GridPoint to) {
        /** Whether the point lies on the line, its ends apart. */
        boolean passes(GridPoint point) {
            return isNear(point, point) && area(point) == 0 && along(point) > 0 && along(point) < along(to);
        }

        /** Whether the lines share more than a point. */
        boolean overlaps(Line other) {
            if (!isNear(other.from, other.to) || area(other.from) != 0 || area(other.to) != 0) {
                return false;
            }
            long a = along(other.from);
            long b = along(other.to);
            return Math.max(Math.min(a, b), 0) < Math.min(Math.max(a, b), along(to));
        }

        private boolean isNear(GridPoint a, GridPoint b) {
            return Math.max(a.x(), b.x()) >= Math.min(from.x(), to.x())
                    && Math.min(a.x(), b.x()) <= Math.max(from.x(), to.x())
                    && Math.max(a.y(), b.y()) >= Math.min(from.y(), to.y())
                    && Math.min(a.y(), b.y()) <= Math.max(from.y(), to.y());
        }

        /** Twice the area of the triangle with this line as base: 0 when the point lies in line. */
        private long area(GridPoint point) {
            return ((long) to.x() - from.x()) * ((long) point.y() - from.y())
                    - ((long) to.y() - from.y()) * ((long) point.x() - from.x());
        }

        /** Where the point lies along the line: 0 at {@code from}. */
        private long along(GridPoint point) {
            return ((long) point.x() - from.x()) * ((long) to.x() - from.x())
                    + ((long) point.y() - from.y()) * ((long) to.y() - from.y());
        }
    }
}
