package ampersheet.figure;

import ampersheet.circuit.Netlist;
import ampersheet.circuit.PartKind;
import ampersheet.circuit.PlacedPart;
import ampersheet.circuit.Schematic;
import ampersheet.language.Language;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** Says a schematic in words, from its netlist alone: what a reader needs who does not see it. */
final class CircuitWords {
    private final Schematic schematic;
    private final Netlist netlist;
    private final Map<String, Label> labels;
    private final Language language;
    private final PartWords parts;
    private final PolarityWords polarity;

    CircuitWords(Schematic schematic, Map<String, Label> labels, Language language) {
        this.schematic = schematic;
        this.netlist = schematic.netlist();
        this.labels = labels;
        this.language = language;
        this.parts = new PartWords(language);
        this.polarity = new PolarityWords(language);
    }

    String summary() {
        Map<PartKind, Map<String, List<PlacedPart>>> alike = new EnumMap<>(PartKind.class);
        netlist.parts()
                .forEach(connected -> alike.computeIfAbsent(connected.part().kind(), k -> new LinkedHashMap<>())
                        .computeIfAbsent(parts.name(connected.part()), name -> new ArrayList<>())
                        .add(connected.part()));
        List<String> phrases = new ArrayList<>();
        alike.values()
                .forEach(byName ->
                        byName.values().forEach(several -> phrases.add(parts.counted(several.get(0), several.size()))));
        return language.count("figure.circuit.summary", netlist.nodes().size(), "parts", language.all(phrases));
    }

    Figure.Table table() {
        List<List<String>> rows = new ArrayList<>();
        for (Netlist.Connected connected : netlist.parts()) {
            PlacedPart part = connected.part();
            rows.add(List.of(
                    language.say("figure.circuit.component", "name", caption(part), "part", parts.name(part)),
                    value(part),
                    node(connected, first(part)),
                    node(connected, last(part)),
                    polarity.of(part, nodes(connected))));
        }
        return new Figure.Table(
                List.of(
                        language.say("figure.circuit.head.component"),
                        language.say("figure.circuit.head.value"),
                        language.say("figure.circuit.head.from"),
                        language.say("figure.circuit.head.to"),
                        language.say("figure.circuit.head.polarity")),
                rows);
    }

    List<String> walk() {
        List<String> sentences = new ArrayList<>();
        Set<String> reached = new LinkedHashSet<>();
        Set<Netlist.Connected> told = new LinkedHashSet<>();
        for (Netlist.Connected connected : inOrder()) {
            if (told.contains(connected)) {
                continue;
            }
            PlacedPart part = connected.part();
            boolean source = part.kind() == PartKind.SOURCE;
            String start = connected.node().get(source ? last(part) : first(part));
            sentences.add(start(sentences.isEmpty(), source, caption(part), called(start)));
            if (source) {
                told.add(connected);
            }
            follow(start, reached, told, sentences);
            if (source) {
                sentences.add(language.say(
                        "figure.circuit.closed", "node", node(connected, first(part)), "part", caption(part)));
            }
        }
        sentences.addAll(joints());
        return sentences;
    }

    private String start(boolean first, boolean source, String part, String node) {
        if (source) {
            return language.say(
                    first ? "figure.circuit.start-at-plus" : "figure.circuit.start-again-at-plus",
                    "part",
                    part,
                    "node",
                    node);
        }
        return language.say(
                first ? "figure.circuit.start-at-node" : "figure.circuit.start-again-at-node", "node", node);
    }

    /** Sources first, so that the walk starts at a plus. */
    private List<Netlist.Connected> inOrder() {
        List<Netlist.Connected> order = new ArrayList<>();
        netlist.parts().stream().filter(c -> c.part().kind() == PartKind.SOURCE).forEach(order::add);
        netlist.parts().stream().filter(c -> c.part().kind() != PartKind.SOURCE).forEach(order::add);
        return order;
    }

    private void follow(String start, Set<String> reached, Set<Netlist.Connected> told, List<String> sentences) {
        Deque<String> ahead = new ArrayDeque<>(List.of(start));
        while (!ahead.isEmpty()) {
            String node = ahead.remove();
            if (!reached.add(node)) {
                continue;
            }
            List<String> ways = new ArrayList<>();
            for (Netlist.Connected connected : netlist.parts()) {
                if (connected.node().containsValue(node) && told.add(connected)) {
                    ways.add(way(connected, node));
                    connected
                            .part()
                            .kind()
                            .terminals()
                            .forEach(terminal -> ahead.add(connected.node().get(terminal)));
                }
            }
            if (ways.size() == 1) {
                sentences.add(language.say("figure.circuit.goes-on", "node", called(node), "way", ways.get(0)));
            } else if (ways.size() > 1) {
                sentences.add(
                        language.say("figure.circuit.divides", "node", called(node), "ways", String.join("; ", ways)));
            }
        }
    }

    private String way(Netlist.Connected connected, String node) {
        PlacedPart part = connected.part();
        String name = caption(part);
        List<String> terminals = part.kind().terminals();
        if (terminals.size() > 2) {
            List<String> ends = terminals.stream()
                    .map(terminal -> parts.joins(part, terminal, node(connected, terminal)))
                    .toList();
            return language.say("figure.way.joins-in", "part", name, "ends", language.all(ends));
        }
        boolean forwards = connected.node().get(terminals.get(0)).equals(node);
        String other = node(connected, terminals.get(forwards ? 1 : 0));
        return switch (part.kind()) {
            case SOURCE ->
                language.say(
                        forwards ? "figure.way.source-from-minus" : "figure.way.source-from-plus",
                        "part",
                        name,
                        "other",
                        other);
            case LED, DIODE, ZENER, REFERENCE ->
                language.say(
                        forwards ? "figure.way.anode-first" : "figure.way.cathode-first", "part", name, "other", other);
            case SINK ->
                language.say(forwards ? "figure.way.draws" : "figure.way.brings", "part", name, "other", other);
            case VOLTMETER -> language.say("figure.way.reads", "part", name, "other", other);
            case SWITCH ->
                language.say("figure.way.switch", "part", name, "state", polarity.state(part), "other", other);
            case STRIP, PANEL ->
                language.say("figure.way.copper", "part", name, "fed", polarity.fed(part), "other", other);
            case RESISTOR, LOAD, CABLE, CAPACITOR, AMMETER, NMOS, PMOS, NPN, TRIMPOT, REGULATOR, WIRE, GROUND, NODE ->
                language.say("figure.way.leads", "part", name, "other", other);
        };
    }

    /** Which ends meet at each node. */
    private List<String> joints() {
        List<String> sentences = new ArrayList<>();
        Set<String> grounded = schematic.parts().stream()
                .filter(part -> part.kind() == PartKind.GROUND)
                .map(part -> netlist.nodeAt().get(part.end("at")))
                .collect(Collectors.toCollection(TreeSet::new));
        for (String node : netlist.nodes()) {
            List<String> ends = new ArrayList<>();
            for (Netlist.Connected connected : netlist.parts()) {
                for (String terminal : connected.part().kind().terminals()) {
                    if (connected.node().get(terminal).equals(node)) {
                        ends.add(parts.end(connected.part(), terminal, caption(connected.part())));
                    }
                }
            }
            String named = labels.containsKey(node) && isNode(node)
                    ? language.say(
                            "figure.circuit.named-node",
                            "node",
                            node,
                            "name",
                            labels.get(node).name())
                    : called(node);
            sentences.add(language.say(
                    joint(grounded.contains(node), ends.size()), "node", named, "ends", language.all(ends)));
        }
        return sentences;
    }

    private static String joint(boolean reference, int ends) {
        return switch (ends) {
            case 0 -> reference ? "figure.circuit.reference-joins-nothing" : "figure.circuit.joins-nothing";
            case 1 -> reference ? "figure.circuit.reference-joins-one" : "figure.circuit.joins-one";
            default -> reference ? "figure.circuit.reference-joins" : "figure.circuit.joins";
        };
    }

    private String node(Netlist.Connected connected, String terminal) {
        return called(connected.node().get(terminal));
    }

    private Map<String, String> nodes(Netlist.Connected connected) {
        Map<String, String> nodes = new LinkedHashMap<>();
        connected.node().forEach((terminal, node) -> nodes.put(terminal, called(node)));
        return nodes;
    }

    /** Nodes are called as the template calls them; the one with the ground symbols may have no name there. */
    private String called(String node) {
        return node.equals(Netlist.GROUND) && !isNode(node) ? language.say("figure.circuit.ground-node") : node;
    }

    private boolean isNode(String name) {
        return schematic.parts().stream()
                .anyMatch(part -> part.kind() == PartKind.NODE && part.name().equals(name));
    }

    private String caption(PlacedPart part) {
        Label label = labels.get(part.name());
        return label == null || label.name().isEmpty() ? part.name() : label.name();
    }

    /** Only what the drawing shows too: a line without text is a value sought. */
    private String value(PlacedPart part) {
        Label label = labels.get(part.name());
        if (label == null || label.lines().isEmpty()) {
            return language.say("figure.not-stated");
        }
        return label.lines().stream().map(line -> line.told(language)).collect(Collectors.joining("; "));
    }

    static String first(PlacedPart part) {
        return part.kind().terminals().get(0);
    }

    /** The terminal opposite the first; a third one stands beside. */
    static String last(PlacedPart part) {
        return switch (part.kind()) {
            case NMOS, PMOS -> "source";
            case NPN -> "emitter";
            case SOURCE,
                    RESISTOR,
                    LOAD,
                    CABLE,
                    SINK,
                    LED,
                    DIODE,
                    ZENER,
                    REFERENCE,
                    SWITCH,
                    TRIMPOT,
                    REGULATOR,
                    CAPACITOR,
                    STRIP,
                    PANEL,
                    VOLTMETER,
                    AMMETER,
                    WIRE,
                    GROUND,
                    NODE -> part.kind().terminals().get(part.kind().terminals().size() > 1 ? 1 : 0);
        };
    }
}
