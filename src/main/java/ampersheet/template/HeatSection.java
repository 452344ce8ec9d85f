package ampersheet.template;

import ampersheet.diagnostic.Place;
import ampersheet.formula.Expression;
import ampersheet.formula.FormulaReader;
import ampersheet.formula.Spelling;
import ampersheet.model.HeatPlan;
import ampersheet.model.HeatPlan.PlannedAmbient;
import ampersheet.model.HeatPlan.PlannedLoss;
import ampersheet.model.HeatPlan.PlannedNode;
import ampersheet.model.HeatPlan.PlannedResistance;
import ampersheet.model.ModelKind;
import ampersheet.quantity.Dimension;
import ampersheet.source.Faults;
import ampersheet.source.Fields;
import ampersheet.source.Yaml;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** Reads a heat network. */
final class HeatSection {
    private static final Dimension KELVIN_PER_WATT = Dimension.TEMPERATURE.over(Dimension.POWER);
    private static final Dimension JOULE_PER_KELVIN = Dimension.ENERGY.over(Dimension.TEMPERATURE);
    private static final Set<String> KINDS = new TreeSet<>(List.of("ambient", "node", "resistance", "loss"));

    private final ModelValues values;
    private final Faults faults;
    private final List<PlannedAmbient> ambients = new ArrayList<>();
    private final List<PlannedNode> nodes = new ArrayList<>();
    private final List<PlannedResistance> resistances = new ArrayList<>();
    private final List<PlannedLoss> losses = new ArrayList<>();
    /** Where each is named; ambients and nodes share one kind of name, resistances and losses another. */
    private final Map<String, Place> nodePlaces = new LinkedHashMap<>();

    private final Map<String, Place> flowPlaces = new LinkedHashMap<>();
    private final Set<String> held = new TreeSet<>();

    private static final Set<String> OVER_TIME_OR_OF_LOSSES =
            Set.of("temperature_after", "voltage_after", "current_after", "time_until", "heat");

    HeatSection(ModelValues values, Faults faults) {
        this.values = values;
        this.faults = faults;
    }

    /** @param circuit what losses may measure of the circuit */
    HeatPlan read(Place section, List<Yaml.Mapping> items, MeasureCheck.Things circuit) {
        int before = faults.count();
        items.forEach(this::declare);
        MeasureCheck.Things things = new MeasureCheck.Things(
                withHeat(circuit.models()),
                circuit.circuitNodes(),
                circuit.parts(),
                nodePlaces.keySet(),
                flowPlaces.keySet());
        items.forEach(item -> item(item, things));
        if (faults.count() == before) {
            isTied(section);
        }
        return new HeatPlan(List.copyOf(ambients), List.copyOf(nodes), List.copyOf(resistances), List.copyOf(losses));
    }

    static Set<ModelKind> withHeat(Set<ModelKind> models) {
        Set<ModelKind> all = new TreeSet<>(models);
        all.add(ModelKind.HEAT);
        return all;
    }

    Set<String> nodeNames() {
        return nodePlaces.keySet();
    }

    Set<String> flowNames() {
        return flowPlaces.keySet();
    }

    private void declare(Yaml.Mapping item) {
        if (item.entries().isEmpty()
                || !KINDS.contains(item.entries().get(0).key().text())
                || !(item.entries().get(0).value() instanceof Yaml.Scalar name)) {
            return;
        }
        String kind = item.entries().get(0).key().text();
        Map<String, Place> places = kind.equals("ambient") || kind.equals("node") ? nodePlaces : flowPlaces;
        if (!FormulaReader.isName(name.text())) {
            faults.error(
                    name.isAbsent() ? item.entries().get(0).key().place() : name.place(),
                    name.isAbsent() ? "the " + kind + " has no name" : "\"" + name.text() + "\" is not a name",
                    "a letter, then letters, digits and _, such as junction",
                    "Name it.");
            return;
        }
        Place first = places.putIfAbsent(name.text(), name.place());
        if (first != null) {
            faults.error(
                    name.place(),
                    "the name " + name.text() + " stands in the heat network a second time",
                    "every name once; the first stands in line " + first.line(),
                    "Rename one of the two.");
        }
    }

    private void item(Yaml.Mapping item, MeasureCheck.Things things) {
        String kind =
                item.entries().isEmpty() ? "" : item.entries().get(0).key().text();
        if (!KINDS.contains(kind)) {
            faults.error(
                    item.entries().isEmpty()
                            ? item.place()
                            : item.entries().get(0).key().place(),
                    "there is no " + (kind.isEmpty() ? "such part" : kind) + " in a heat network",
                    Spelling.list(KINDS),
                    Guess.of(kind, KINDS, "Name the kind first, as in {node: junction}."));
            return;
        }
        Fields fields = new Fields(item, kind.equals("ambient") ? "an ambient" : "a " + kind, faults);
        String name = item.entries().get(0).value() instanceof Yaml.Scalar text ? text.text() : "";
        fields.text(kind);
        switch (kind) {
            case "ambient" -> ambient(name, fields);
            case "node" -> node(name, fields);
            case "resistance" -> resistance(name, fields);
            default -> loss(name, fields, things);
        }
        fields.finish();
    }

    private void ambient(String name, Fields fields) {
        held.add(name);
        fields.needText("at", "its temperature, such as Ta or 25 degC")
                .flatMap(text -> values.read(text, Dimension.TEMPERATURE, "at of " + name))
                .ifPresent(at -> ambients.add(new PlannedAmbient(name, at)));
    }

    private void node(String name, Fields fields) {
        Optional<Expression> capacity =
                fields.text("capacity").flatMap(text -> values.read(text, JOULE_PER_KELVIN, "capacity of " + name));
        Optional<Expression> initial =
                fields.text("initial").flatMap(text -> values.read(text, Dimension.TEMPERATURE, "initial of " + name));
        if (fields.has("initial") && !fields.has("capacity")) {
            faults.error(
                    fields.placeOf("initial"),
                    name + " has an initial temperature, but stores no heat",
                    "capacity: as well",
                    "Add capacity:, or remove initial:.");
        }
        nodes.add(new PlannedNode(name, capacity, initial));
    }

    private void resistance(String name, Fields fields) {
        Optional<String> from = node(fields, "from");
        Optional<String> to = node(fields, "to");
        if (from.isPresent() && from.equals(to)) {
            faults.error(
                    fields.placeOf("to"),
                    name + " leads from " + from.get() + " back to it",
                    "two different nodes",
                    "Correct one of the two.");
        }
        Optional<Expression> value = fields.needText("value", "a thermal resistance in K/W")
                .flatMap(text -> values.read(text, KELVIN_PER_WATT, "value of " + name));
        if (from.isPresent() && to.isPresent() && value.isPresent()) {
            resistances.add(new PlannedResistance(name, from.get(), to.get(), value.get()));
        }
    }

    private void loss(String name, Fields fields, MeasureCheck.Things things) {
        Optional<String> into = node(fields, "into");
        if (into.isPresent() && held.contains(into.get())) {
            faults.error(
                    fields.placeOf("into"),
                    into.get() + " is an ambient: what is lost into it warms nothing",
                    "a node",
                    "Lead the loss into a node.");
        }
        Optional<Yaml.Scalar> text = fields.needText("watts", "a power, such as P or power(U1)");
        Optional<Formulas.Checked> watts = text.flatMap(formula ->
                values.read(formula, Formulas.ALL_NAMES.measuring(things), Dimension.POWER, "watts of " + name));
        watts.ifPresent(formula -> formula.mentions().measures().stream()
                .filter(call -> OVER_TIME_OR_OF_LOSSES.contains(call.function()))
                .forEach(call -> faults.error(
                        text.get().at(call.position()),
                        "a loss cannot depend on " + call.function() + "()",
                        "temperature(node) and measures of the circuit",
                        "Use temperature(node).")));
        if (into.isPresent() && watts.isPresent()) {
            losses.add(new PlannedLoss(name, into.get(), watts.get().expression()));
        }
    }

    private Optional<String> node(Fields fields, String key) {
        Optional<Yaml.Scalar> text = fields.needText(key, "the name of a node or an ambient");
        if (text.isPresent() && !nodePlaces.containsKey(text.get().text())) {
            Set<String> known = new TreeSet<>(nodePlaces.keySet());
            faults.error(
                    text.get().place(),
                    "there is no node " + text.get().text() + " in the heat network",
                    Guess.among(known, "a node"),
                    Guess.of(
                            text.get().text(), known, "Add {node: " + text.get().text() + "}, or name one of these."));
            return Optional.empty();
        }
        return text.map(Yaml.Scalar::text);
    }

    /** Every node needs a way to an ambient, or its heat never leaves. */
    private void isTied(Place section) {
        if (ambients.isEmpty()) {
            faults.error(section, "the heat network has no ambient", "{ambient: air, at: Ta}", "Add the surroundings.");
            return;
        }
        Set<String> reached = new TreeSet<>();
        ambients.forEach(ambient -> reached.add(ambient.name()));
        boolean grows = true;
        while (grows) {
            grows = false;
            for (PlannedResistance resistance : resistances) {
                if (reached.contains(resistance.from()) != reached.contains(resistance.to())) {
                    reached.add(resistance.from());
                    reached.add(resistance.to());
                    grows = true;
                }
            }
        }
        Map<String, Place> isolated = new TreeMap<>();
        nodes.stream()
                .filter(node -> !reached.contains(node.name()))
                .forEach(node -> isolated.put(node.name(), nodePlaces.get(node.name())));
        isolated.forEach((name, place) -> faults.error(
                place,
                "no resistance leads from " + name + " to an ambient",
                "a chain of resistances to an ambient",
                "Add {resistance: R1, from: " + name + ", to: "
                        + ambients.get(0).name() + ", value: ...}."));
    }
}
