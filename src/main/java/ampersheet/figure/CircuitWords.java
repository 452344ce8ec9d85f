package ampersheet.figure;

import ampersheet.circuit.GridPoint;
import ampersheet.circuit.Netlist;
import ampersheet.circuit.PartKind;
import ampersheet.circuit.PartValue;
import ampersheet.circuit.PlacedPart;
import ampersheet.circuit.Schematic;
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

    CircuitWords(Schematic schematic, Map<String, Label> labels) {
        this.schematic = schematic;
        this.netlist = schematic.netlist();
        this.labels = labels;
    }

    String summary() {
        Map<PartKind, Map<String, Integer>> counts = new EnumMap<>(PartKind.class);
        netlist.parts()
                .forEach(connected -> counts.computeIfAbsent(connected.part().kind(), k -> new LinkedHashMap<>())
                        .merge(word(connected.part()), 1, Integer::sum));
        List<String> phrases = new ArrayList<>();
        counts.forEach((kind, words) -> words.forEach((word, count) ->
                phrases.add(English.count(count, word, word.equals(word(kind)) ? plural(kind) : word + "s"))));
        return "A circuit of " + English.list(phrases) + ", joined at "
                + English.count(netlist.nodes().size(), "node", "nodes") + ".";
    }

    Figure.Table table() {
        List<List<String>> rows = new ArrayList<>();
        for (Netlist.Connected connected : netlist.parts()) {
            PlacedPart part = connected.part();
            rows.add(List.of(
                    caption(part) + " (" + word(part) + ")",
                    value(part),
                    connected.node().get(first(part)),
                    connected.node().get(last(part)),
                    polarity(connected)));
        }
        return new Figure.Table(List.of("Component", "Value", "From node", "To node", "Polarity"), rows);
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
            if (source) {
                told.add(connected);
                sentences.add((sentences.isEmpty() ? "Start" : "Start again") + " at the plus of " + caption(part)
                        + ", node " + start + ".");
            } else {
                sentences.add((sentences.isEmpty() ? "Start" : "Start again") + " at node " + start + ".");
            }
            follow(start, reached, told, sentences);
            if (source) {
                sentences.add("Node " + connected.node().get(first(part)) + " is the minus of " + caption(part)
                        + ": the path is closed.");
            }
        }
        sentences.addAll(joints());
        return sentences;
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
                sentences.add("From node " + node + ", " + ways.get(0) + ".");
            } else if (ways.size() > 1) {
                sentences.add("At node " + node + " the path divides: " + String.join("; ", ways) + ".");
            }
        }
    }

    private String way(Netlist.Connected connected, String node) {
        PlacedPart part = connected.part();
        String name = caption(part);
        List<String> terminals = part.kind().terminals();
        if (terminals.size() > 2) {
            return name + " joins in: "
                    + English.list(terminals.stream()
                            .map(terminal -> "its " + role(part, terminal) + " at node "
                                    + connected.node().get(terminal))
                            .toList());
        }
        boolean forwards = connected.node().get(terminals.get(0)).equals(node);
        String other = connected.node().get(terminals.get(forwards ? 1 : 0));
        String entered = role(part, terminals.get(forwards ? 0 : 1));
        return switch (part.kind()) {
            case SOURCE -> name + " leads from its " + entered + " to node " + other;
            case LED, DIODE, ZENER, REFERENCE -> name + " leads, " + entered + " first, to node " + other;
            case SINK -> name + (forwards ? " draws its current to node " : " brings its current from node ") + other;
            case VOLTMETER -> "the voltmeter " + name + " reads between here and node " + other;
            case SWITCH -> name + ", " + state(part) + ", leads to node " + other;
            case STRIP, PANEL -> name + ", " + fed(part) + ", lies between here and node " + other;
            case RESISTOR, LOAD, CABLE, CAPACITOR, AMMETER, NMOS, PMOS, NPN, TRIMPOT, REGULATOR, WIRE, GROUND, NODE ->
                name + " leads to node " + other;
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
                        ends.add("the " + role(connected.part(), terminal) + " of " + caption(connected.part()));
                    }
                }
            }
            String called = labels.containsKey(node) && isNode(node)
                    ? ", " + labels.get(node).name() + ","
                    : "";
            String zero = grounded.contains(node) ? " is the 0 V reference and" : "";
            sentences.add("Node " + node + called + zero + (ends.size() == 1 ? " has " : " joins ") + English.list(ends)
                    + (ends.size() == 1 ? " only." : "."));
        }
        return sentences;
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
            return "not stated";
        }
        return label.lines().stream()
                .map(line -> line.text().isEmpty() ? line.plain() + " to be found" : line.plain())
                .collect(Collectors.joining("; "));
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

    private static String polarity(Netlist.Connected connected) {
        Map<String, String> at = connected.node();
        return switch (connected.part().kind()) {
            case SOURCE -> "plus at " + at.get("to");
            case LED, DIODE, ZENER, REFERENCE -> "anode at " + at.get("from") + ", cathode at " + at.get("to");
            case SINK -> "current flows from " + at.get("from") + " to " + at.get("to");
            case VOLTMETER, AMMETER -> "plus at " + at.get("from");
            case NMOS, PMOS ->
                "drain at " + at.get("drain") + ", gate at " + at.get("gate") + ", source at " + at.get("source")
                        + bodyDiode(connected.part());
            case NPN ->
                "collector at " + at.get("collector") + ", base at " + at.get("base") + ", emitter at "
                        + at.get("emitter");
            case SWITCH -> state(connected.part());
            case TRIMPOT -> "wiper at " + at.get("wiper");
            case REGULATOR ->
                "input at " + at.get("in") + ", output at " + at.get("out") + ", ground at " + at.get("ground");
            case STRIP, PANEL ->
                "plus at " + at.get("plus") + ", minus at " + at.get("minus") + "; " + spread(connected.part());
            case RESISTOR, LOAD, CABLE, CAPACITOR, WIRE, GROUND, NODE -> "none";
        };
    }

    private static String spread(PlacedPart part) {
        return part.kind() == PartKind.STRIP
                ? "two conductors with " + English.count(count(part, PartValue.TAPS), "tap", "taps")
                        + " between them, numbered from 1, " + fed(part)
                : English.count(count(part, PartValue.ROWS), "row", "rows") + " of "
                        + English.count(count(part, PartValue.COLUMNS), "pixel", "pixels")
                        + " on a bus along their left ends, "
                        + (part.values().containsKey(PartValue.CROSS)
                                ? "each pixel joined to the one below"
                                : "joined nowhere but there")
                        + ", the bus " + fed(part);
    }

    private static String bodyDiode(PlacedPart part) {
        if (!part.word("body").equals("shown")) {
            return "";
        }
        return part.kind() == PartKind.NMOS
                ? "; the body diode leads from source to drain"
                : "; the body diode leads from drain to source";
    }

    private static String fed(PlacedPart part) {
        return switch (part.word("feed")) {
            case "start" -> "fed at the start";
            case "end" -> "fed at the end";
            case "middle" -> "fed in the middle";
            default -> "fed at " + part.word("feed");
        };
    }

    private static int count(PlacedPart part, PartValue value) {
        return part.values().get(value).intValue();
    }

    private static String state(PlacedPart part) {
        return PartSymbol.isClosed(part) ? "closed" : "open";
    }

    /** What a terminal is called: by its function, else by where the drawing has it. */
    private static String role(PlacedPart part, String terminal) {
        boolean from = terminal.equals("from");
        return switch (part.kind()) {
            case SOURCE -> from ? "minus" : "plus";
            case VOLTMETER, AMMETER -> from ? "plus" : "minus";
            case LED, DIODE, ZENER, REFERENCE -> from ? "anode" : "cathode";
            case SINK -> from ? "inflow" : "outflow";
            case NMOS, PMOS, NPN, STRIP, PANEL -> terminal;
            case REGULATOR ->
                switch (terminal) {
                    case "in" -> "input";
                    case "out" -> "output";
                    default -> terminal;
                };
            case TRIMPOT -> terminal.equals("wiper") ? terminal : end(part, terminal);
            case RESISTOR, LOAD, CABLE, CAPACITOR, SWITCH -> end(part, terminal);
            case WIRE, GROUND, NODE -> terminal;
        };
    }

    private static String end(PlacedPart part, String terminal) {
        GridPoint here = part.end(terminal);
        GridPoint there = part.end(terminal.equals("from") ? "to" : "from");
        int dx = here.x() - there.x();
        int dy = here.y() - there.y();
        if (Math.abs(dx) > Math.abs(dy)) {
            return dx < 0 ? "left end" : "right end";
        }
        return dy > 0 ? "top end" : "bottom end";
    }

    /** As it is drawn. */
    static String word(PlacedPart part) {
        boolean box = part.kind() != PartKind.LOAD || PartSymbol.isBox(part);
        return box ? word(part.kind()) : part.word("symbol");
    }

    static String word(PartKind kind) {
        return switch (kind) {
            case SOURCE -> "voltage source";
            case RESISTOR -> "resistor";
            case LOAD -> "load";
            case CABLE -> "length of wire";
            case SINK -> "constant-current load";
            case LED -> "LED";
            case DIODE -> "diode";
            case ZENER -> "Zener diode";
            case REFERENCE -> "voltage reference";
            case NMOS -> "N-channel MOSFET";
            case PMOS -> "P-channel MOSFET";
            case NPN -> "NPN transistor";
            case SWITCH -> "switch";
            case TRIMPOT -> "trimming potentiometer";
            case REGULATOR -> "linear regulator";
            case CAPACITOR -> "capacitor";
            case STRIP -> "strip of loads";
            case PANEL -> "panel of pixels";
            case VOLTMETER -> "voltmeter";
            case AMMETER -> "ammeter";
            case WIRE -> "wire";
            case GROUND -> "ground";
            case NODE -> "node";
        };
    }

    private static String plural(PartKind kind) {
        return switch (kind) {
            case SWITCH -> "switches";
            case CABLE -> "lengths of wire";
            case STRIP -> "strips of loads";
            case PANEL -> "panels of pixels";
            default -> word(kind) + "s";
        };
    }
}
