package ampersheet.figure;

import ampersheet.circuit.GridPoint;
import ampersheet.circuit.PartKind;
import ampersheet.circuit.PlacedPart;
import ampersheet.circuit.Schematic;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** What leads from body to body: wires, leads, the dots where they meet and the circles where they end. */
final class Conductors {
    static final double TERMINAL_RADIUS = 3.5;
    private static final double JUNCTION_RADIUS = 3;

    private final Schematic schematic;
    private final Spacing spacing;
    private final Drawing drawing;
    private final Map<GridPoint, Integer> endsAt =
            new TreeMap<>(Comparator.comparingInt(GridPoint::x).thenComparingInt(GridPoint::y));
    private final Set<GridPoint> openTerminals = new LinkedHashSet<>();
    /** In which directions conductors leave a grid point, rounded to the eight winds. */
    private final Map<GridPoint, Set<String>> windsAt = new LinkedHashMap<>();

    Conductors(Schematic schematic, Spacing spacing, Drawing drawing) {
        this.schematic = schematic;
        this.spacing = spacing;
        this.drawing = drawing;
        countEnds();
    }

    Point pixel(GridPoint point) {
        return spacing.pixel(point);
    }

    boolean vertical(PlacedPart part) {
        Point from = pixel(part.end(CircuitWords.first(part)));
        Point to = pixel(part.end(CircuitWords.last(part)));
        return Math.abs(to.y() - from.y()) > Math.abs(to.x() - from.x());
    }

    private void countEnds() {
        for (PlacedPart part : schematic.parts()) {
            if (part.kind() != PartKind.NODE) {
                part.ends().values().forEach(end -> endsAt.merge(end, 1, Integer::sum));
            }
        }
        for (PlacedPart part : schematic.parts()) {
            if (part.kind() == PartKind.NODE && endsAt.getOrDefault(part.end("at"), 0) <= 2) {
                openTerminals.add(part.end("at"));
            }
        }
    }

    /** From a grid point along the points; it stops at the edge of the circle where the point is an open terminal. */
    void lead(PlacedPart part, GridPoint end, Point... rest) {
        List<Point> points = new ArrayList<>();
        points.add(pixel(end));
        for (Point point : rest) {
            if (points.get(points.size() - 1).distanceTo(point) > 0.01) {
                points.add(point);
            }
        }
        if (points.size() < 2) {
            return;
        }
        noteWind(end, points.get(1));
        points.set(0, edge(end, points.get(1)));
        drawing.line(part.name(), Stroke.LINE, points.toArray(new Point[0]));
    }

    private Point edge(GridPoint end, Point next) {
        return openTerminals.contains(end) ? pixel(end).towards(next, TERMINAL_RADIUS) : pixel(end);
    }

    private void noteWind(GridPoint end, Point next) {
        Point here = pixel(end);
        double length = here.distanceTo(next);
        long east = Math.round((next.x() - here.x()) / length);
        long south = Math.round((next.y() - here.y()) / length);
        windsAt.computeIfAbsent(end, e -> new TreeSet<>()).add(east + "," + south);
    }

    boolean wire(PlacedPart part) {
        GridPoint from = part.end("from");
        GridPoint to = part.end("to");
        if (from.equals(to)) {
            return true;
        }
        noteWind(from, pixel(to));
        noteWind(to, pixel(from));
        drawing.line("", Stroke.LINE, edge(from, pixel(to)), edge(to, pixel(from)));
        return true;
    }

    void dots() {
        Set<GridPoint> named = new LinkedHashSet<>();
        for (PlacedPart part : schematic.parts()) {
            if (part.kind() == PartKind.NODE && named.add(part.end("at"))) {
                if (openTerminals.contains(part.end("at"))) {
                    drawing.circle(part.name(), Stroke.LINE, pixel(part.end("at")), TERMINAL_RADIUS);
                } else {
                    drawing.dot(part.name(), pixel(part.end("at")), TERMINAL_RADIUS);
                }
            }
        }
        windsAt.forEach((point, winds) -> {
            if (winds.size() >= 3 && !named.contains(point)) {
                drawing.dot("", pixel(point), JUNCTION_RADIUS);
            }
        });
    }

    /** Whether a conductor leaves the grid point in this direction. */
    boolean leaves(GridPoint point, int east, int south) {
        return windsAt.getOrDefault(point, Set.of()).contains(east + "," + south);
    }
}
