package ampersheet.model;

import ampersheet.circuit.GridPoint;
import ampersheet.circuit.Netlist;
import ampersheet.circuit.PartKind;
import ampersheet.circuit.PartValue;
import ampersheet.circuit.PlacedPart;
import ampersheet.circuit.Schematic;
import ampersheet.formula.Evaluation;
import ampersheet.formula.Expression;
import ampersheet.formula.Values;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** Parts whose values are formulas; with the numbers in they become a schematic. */
public final class CircuitPlan implements ModelPlan {
    private final List<PlannedPart> parts;
    private final List<Added> added;
    /** The parts, and then what is added. */
    private final List<PlannedPart> all;

    private final List<Set<String>> namesByPart;
    /** Which ends are connected does not depend on the numbers, so it is found once. */
    private final Once<Netlist> connections = new Once<>(this::connections);

    public CircuitPlan(List<PlannedPart> parts) {
        this(parts, List.of());
    }

    private CircuitPlan(List<PlannedPart> parts, List<Added> added) {
        this.parts = List.copyOf(parts);
        this.added = added;
        this.all =
                Stream.concat(parts.stream(), added.stream().map(Added::part)).toList();
        this.namesByPart = all.stream().map(PlannedPart::names).toList();
    }

    /**
     * A part that is not drawn: what an idealisation leaves out.
     *
     * @param part with the terminals of a resistor, and no place on the drawing
     * @param at the drawn part in whose way or beside which it lies
     * @param inSeries before the first terminal of that part; else from its first terminal to its second
     */
    private record Added(PlannedPart part, String at, boolean inSeries) {}

    /** @param words each a word of the kind, or the name of a word given */
    public record PlannedPart(
            PartKind kind,
            String name,
            Map<String, GridPoint> ends,
            Map<PartValue, Expression> values,
            Map<String, String> words,
            Optional<String> caption) {
        public PlannedPart {
            ends = inOrder(ends);
            values = inOrder(values);
            words = inOrder(words);
        }

        public PlannedPart(
                PartKind kind,
                String name,
                Map<String, GridPoint> ends,
                Map<PartValue, Expression> values,
                Optional<String> caption) {
            this(kind, name, ends, values, Map.of(), caption);
        }

        /** With what the word givens say in the place of their names. */
        public Map<String, String> words(Map<String, String> given) {
            Map<String, String> said = new LinkedHashMap<>();
            words.forEach((key, word) -> said.put(key, given.getOrDefault(word, word)));
            return said;
        }

        private Set<String> names() {
            Set<String> names = new LinkedHashSet<>(words.values());
            values.values().forEach(value -> names.addAll(Evaluation.names(value)));
            return names;
        }

        private PlacedPart placed(Values given) {
            Map<PartValue, Double> numbers = new LinkedHashMap<>();
            values.forEach((value, formula) -> numbers.put(value, ModelNumbers.number(formula, given)));
            return new PlacedPart(kind, name, ends, numbers, words(given.words()));
        }
    }

    public List<PlannedPart> parts() {
        return parts;
    }

    @Override
    public ModelKind kind() {
        return ModelKind.CIRCUIT;
    }

    @Override
    public List<Expression> formulas() {
        return all.stream().flatMap(part -> part.values().values().stream()).toList();
    }

    @Override
    public CircuitPlan departing(Reality reality) {
        List<Added> really = new ArrayList<>();
        reality.series()
                .forEach((at, ohms) ->
                        really.add(added("in series with", PartKind.RESISTOR, PartValue.OHMS, ohms, at, true)));
        reality.beside()
                .forEach((at, ohms) -> really.add(added("across", PartKind.RESISTOR, PartValue.OHMS, ohms, at, false)));
        reality.draws()
                .forEach((at, amps) ->
                        really.add(added("drawn beside", PartKind.SINK, PartValue.AMPS, amps, at, false)));
        return new CircuitPlan(parts, really);
    }

    private static Added added(
            String how, PartKind kind, PartValue value, Expression formula, String at, boolean inSeries) {
        return new Added(
                new PlannedPart(kind, how + " " + at, Map.of(), Map.of(value, formula), Optional.empty()),
                at,
                inSeries);
    }

    @Override
    public List<String> words() {
        return parts.stream().flatMap(part -> part.words().values().stream()).toList();
    }

    @Override
    public CircuitModel with(Values values, Values.Measured others) {
        return new CircuitModel(
                this, () -> all.stream().map(part -> part.placed(values)).toList());
    }

    /** Only the parts that use one of the changed names are made again. */
    List<PlacedPart> again(List<PlacedPart> before, Values values, Set<String> changed) {
        List<PlacedPart> next = new ArrayList<>(all.size());
        for (int i = 0; i < all.size(); i++) {
            next.add(
                    Collections.disjoint(namesByPart.get(i), changed)
                            ? before.get(i)
                            : all.get(i).placed(values));
        }
        return next;
    }

    /** The connections between parts with numbers. */
    Netlist netlist(List<PlacedPart> placed) {
        Netlist known = connections.get();
        Map<String, PlacedPart> byName = new LinkedHashMap<>();
        placed.forEach(part -> byName.put(part.name(), part));
        List<Netlist.Connected> connected = new ArrayList<>(known.parts().size());
        for (Netlist.Connected without : known.parts()) {
            connected.add(new Netlist.Connected(byName.get(without.part().name()), without.node()));
        }
        return new Netlist(connected, known.nodes(), known.nodeAt(), known.doubts());
    }

    private Netlist connections() {
        List<PlacedPart> unknown = new ArrayList<>();
        for (PlannedPart part : parts) {
            Map<PartValue, Double> ones = new LinkedHashMap<>();
            part.values().keySet().forEach(value -> ones.put(value, 1.0));
            unknown.add(new PlacedPart(part.kind(), part.name(), part.ends(), ones));
        }
        Netlist drawn = new Schematic(unknown).netlist();
        return added.isEmpty() ? drawn : withAdded(drawn);
    }

    private Netlist withAdded(Netlist drawn) {
        List<String> nodes = new ArrayList<>(drawn.nodes());
        Map<String, Netlist.Connected> byName = new LinkedHashMap<>();
        drawn.parts().forEach(connected -> byName.put(connected.part().name(), connected));
        Map<String, Netlist.Connected> asDrawn = new LinkedHashMap<>(byName);
        for (Added each : added) {
            // What lies beside a part lies beside what is in series with it, too: a load draws through the source's
            // resistance.
            Netlist.Connected at = asDrawn.get(each.at());
            String first = at.part().kind().terminals().get(0);
            String from = at.node().get(first);
            String to = at.node().get(at.part().kind().terminals().get(1));
            if (each.inSeries()) {
                to = each.part().name();
                nodes.add(to);
                Map<String, String> moved = new LinkedHashMap<>(at.node());
                moved.put(first, to);
                byName.put(each.at(), new Netlist.Connected(at.part(), moved));
            }
            Map<PartValue, Double> one = new LinkedHashMap<>();
            each.part().values().keySet().forEach(value -> one.put(value, 1.0));
            byName.put(
                    each.part().name(),
                    new Netlist.Connected(
                            new PlacedPart(each.part().kind(), each.part().name(), Map.of(), one),
                            Map.of("from", from, "to", to)));
        }
        return new Netlist(List.copyOf(byName.values()), nodes, drawn.nodeAt(), drawn.doubts());
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof CircuitPlan plan && parts.equals(plan.parts) && added.equals(plan.added);
    }

    @Override
    public int hashCode() {
        return parts.hashCode();
    }

    @Override
    public String toString() {
        return "CircuitPlan" + parts;
    }

    private static <K, V> Map<K, V> inOrder(Map<K, V> map) {
        return Collections.unmodifiableMap(new LinkedHashMap<>(map));
    }
}
