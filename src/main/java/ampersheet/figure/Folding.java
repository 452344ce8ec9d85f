package ampersheet.figure;

import ampersheet.circuit.GridPoint;
import ampersheet.circuit.Netlist;
import ampersheet.circuit.PartKind;
import ampersheet.circuit.PlacedPart;
import ampersheet.circuit.Schematic;
import ampersheet.language.Language;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * Ways to draw a schematic in two pieces, one below the other, as is usual where a page is too narrow: wires at 0 V are
 * cut and each piece has its own ground symbol; wires at a source's plus are cut and end in terminals of the same name.
 * The pieces together are the same circuit, because all ground symbols are one node and so are terminals of one name.
 */
final class Folding {
    private static final int STUB = 2;

    record Fold(Schematic upper, Schematic lower) {}

    private final Schematic schematic;
    private final Netlist netlist;
    /** What a terminal is called on a node that may be cut; the empty name for 0 V. */
    private final Map<String, String> cuttable = new TreeMap<>();

    private Folding(Schematic schematic, Map<String, Label> labels, Language language) {
        this.schematic = schematic;
        this.netlist = schematic.netlist();
        for (Netlist.Connected connected : netlist.parts()) {
            PlacedPart part = connected.part();
            if (part.kind() == PartKind.SOURCE && connected.node().get("from").equals(netlist.reference())) {
                Label label = labels.get(part.name());
                cuttable.putIfAbsent(
                        connected.node().get("to"),
                        language.say(
                                "figure.circuit.drawn.supply", "part", label == null ? part.name() : label.name()));
            }
        }
        cuttable.put(netlist.reference(), "");
    }

    /**
     * From left to right.
     *
     * @param atGround whether nothing but 0 V shall join the pieces; else a supply too, and no piece is a single
     *     component
     */
    static List<Fold> of(Schematic schematic, Map<String, Label> labels, boolean atGround, Language language) {
        if (schematic.parts().stream().noneMatch(part -> part.kind() == PartKind.GROUND)) {
            return List.of();
        }
        Folding folding = new Folding(schematic, labels, language);
        Set<Integer> columns = new TreeSet<>();
        schematic.parts().forEach(part -> part.ends().values().forEach(end -> columns.add(end.x())));
        Set<Fold> folds = new LinkedHashSet<>();
        for (int column : columns) {
            folding.at(column, true, atGround).ifPresent(folds::add);
            folding.at(column, false, atGround).ifPresent(folds::add);
        }
        return List.copyOf(folds);
    }

    /** @param toTheLeft where the parts in the column itself go */
    private Optional<Fold> at(int column, boolean toTheLeft, boolean atGround) {
        List<PlacedPart> left = new ArrayList<>();
        List<PlacedPart> right = new ArrayList<>();
        for (PlacedPart part : schematic.parts()) {
            int first =
                    part.ends().values().stream().mapToInt(GridPoint::x).min().getAsInt();
            int last =
                    part.ends().values().stream().mapToInt(GridPoint::x).max().getAsInt();
            if (last < column || last == column && (first < column || toTheLeft)) {
                left.add(part);
            } else if (first >= column) {
                right.add(part);
            } else if (part.kind() != PartKind.WIRE) {
                return Optional.empty();
            }
        }
        Set<String> shared = new TreeSet<>(nodes(left));
        shared.retainAll(nodes(right));
        boolean onlyGround = shared.equals(Set.of(netlist.reference()));
        if (shared.isEmpty()
                || !cuttable.keySet().containsAll(shared)
                || onlyGround != atGround
                || !atGround
                        && Stream.of(left, right)
                                .anyMatch(piece -> piece.stream()
                                                .filter(Folding::isComponent)
                                                .count()
                                        < 2)) {
            return Optional.empty();
        }
        Optional<Schematic> upper = piece(left, shared, 1);
        Optional<Schematic> lower = piece(right, shared, -1);
        return upper.isEmpty() || lower.isEmpty() ? Optional.empty() : Optional.of(new Fold(upper.get(), lower.get()));
    }

    private static boolean isComponent(PlacedPart part) {
        return part.kind() != PartKind.WIRE && part.kind() != PartKind.GROUND && part.kind() != PartKind.NODE;
    }

    private Set<String> nodes(List<PlacedPart> parts) {
        Set<String> nodes = new TreeSet<>();
        parts.stream()
                .filter(Folding::isComponent)
                .forEach(part -> part.ends()
                        .values()
                        .forEach(end -> nodes.add(netlist.nodeAt().get(end))));
        return nodes;
    }

    /**
     * The parts with a ground symbol or a named terminal on whatever the cut took from the rest of its node; empty if
     * it took anything from a node that may not be cut.
     *
     * @param outward 1 if the other piece was to the right, -1 if to the left
     */
    private Optional<Schematic> piece(List<PlacedPart> parts, Set<String> shared, int outward) {
        List<PlacedPart> piece = withoutLooseWires(parts);
        List<PlacedPart> marks = new ArrayList<>();
        Map<String, Integer> islands = new TreeMap<>();
        for (Set<GridPoint> island : islands(piece)) {
            String node = netlist.nodeAt().get(island.iterator().next());
            if (islands.merge(node, 1, Integer::sum) > 1 && !shared.contains(node)) {
                return Optional.empty();
            }
            if (shared.contains(node)) {
                String name = cuttable.get(node);
                if (!name.isEmpty()) {
                    terminal(name, island, piece, outward, marks);
                } else if (piece.stream()
                        .noneMatch(part -> part.kind() == PartKind.GROUND && island.contains(part.end("at")))) {
                    GridPoint at = island.stream()
                            .min(Comparator.comparingInt(GridPoint::y).thenComparingInt(GridPoint::x))
                            .orElseThrow();
                    marks.add(new PlacedPart(
                            PartKind.GROUND, "0 V at " + at.x() + "," + at.y(), Map.of("at", at), Map.of()));
                }
            }
        }
        return Optional.of(
                new Schematic(Stream.concat(piece.stream(), marks.stream()).toList()));
    }

    /** At the end of a short wire, beside the topmost conductor or on it. */
    private static void terminal(
            String name, Set<GridPoint> island, List<PlacedPart> piece, int outward, List<PlacedPart> marks) {
        GridPoint from = island.stream()
                .max(Comparator.comparingInt(GridPoint::y).thenComparingInt(point -> outward * point.x()))
                .orElseThrow();
        boolean free = piece.stream()
                .flatMap(part -> part.ends().values().stream())
                .noneMatch(end -> end.y() >= from.y() && outward * (end.x() - from.x()) > 0);
        GridPoint at =
                free ? new GridPoint(from.x() + outward * STUB, from.y()) : new GridPoint(from.x(), from.y() + STUB);
        marks.add(new PlacedPart(PartKind.WIRE, "to " + name + marks.size(), Map.of("from", from, "to", at), Map.of()));
        marks.add(new PlacedPart(PartKind.NODE, name, Map.of("at", at), Map.of()));
    }

    /** What the cut left hanging is taken away. */
    private static List<PlacedPart> withoutLooseWires(List<PlacedPart> parts) {
        List<PlacedPart> kept = new ArrayList<>(parts);
        boolean loose = true;
        while (loose) {
            List<PlacedPart> now = List.copyOf(kept);
            loose = kept.removeIf(part -> part.kind() == PartKind.WIRE
                    && part.ends().values().stream()
                            .anyMatch(end -> now.stream()
                                    .noneMatch(other ->
                                            other != part && other.ends().containsValue(end))));
        }
        return kept;
    }

    /** Points that wires join and at which components end. */
    private static List<Set<GridPoint>> islands(List<PlacedPart> parts) {
        List<Set<GridPoint>> islands = new ArrayList<>();
        for (PlacedPart part : parts) {
            List<Set<GridPoint>> groups = part.kind() == PartKind.WIRE
                    ? List.of(new LinkedHashSet<>(part.ends().values()))
                    : part.ends().values().stream()
                            .<Set<GridPoint>>map(end -> new LinkedHashSet<>(Set.of(end)))
                            .toList();
            for (Set<GridPoint> group : groups) {
                for (Set<GridPoint> island : List.copyOf(islands)) {
                    if (island.stream().anyMatch(group::contains)) {
                        group.addAll(island);
                        islands.remove(island);
                    }
                }
                islands.add(group);
            }
        }
        islands.removeIf(island -> parts.stream()
                .filter(Folding::isComponent)
                .noneMatch(part -> part.ends().values().stream().anyMatch(island::contains)));
        return islands;
    }
}
