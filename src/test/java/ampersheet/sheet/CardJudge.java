package ampersheet.sheet;

import ampersheet.circuit.Netlist;
import ampersheet.circuit.Netlist.Connected;
import ampersheet.circuit.OperatingPoint;
import ampersheet.circuit.OperatingPointSolver;
import ampersheet.circuit.Outcome;
import ampersheet.circuit.PartKind;
import ampersheet.circuit.PartValue;
import ampersheet.circuit.PlacedPart;
import ampersheet.circuit.Schematic;
import ampersheet.model.CircuitPlan;
import ampersheet.source.Languages;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.TradeLimit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Judges a bench card by what is printed on it, as somebody at the bench would: reads the parts, puts them where the
 * figure has them, puts the meter where the card says, solves that, and compares. Knows of the card only its words, and
 * of the template only what is connected.
 */
final class CardJudge {
    private static final double METER_OHMS = 10e6;

    private final ProblemTemplate template;
    private final List<PlacedPart> drawn;
    private final Netlist wiring;
    private final Map<String, String> partOf = new LinkedHashMap<>();
    private final List<String> objections = new ArrayList<>();
    private final PrintedParts printed;
    private final Map<String, PlacedPart> parts;

    private CardJudge(ProblemTemplate template, Schematic schematic) {
        this.template = template;
        this.drawn = schematic.parts();
        this.wiring = schematic.netlist();
        for (CircuitPlan.PlannedPart part :
                template.model(CircuitPlan.class).orElseThrow().parts()) {
            String caption = part.caption().orElse(part.name());
            partOf.put(caption.startsWith(part.name() + " ") ? part.name() : caption.split(",")[0], part.name());
        }
        this.printed = new PrintedParts(drawn, partOf, objections);
        this.parts = printed.parts();
    }

    /**
     * @param schematic of any draw of the template
     * @param card as {@link BenchCards} makes it
     */
    static List<String> objections(ProblemTemplate template, Schematic schematic, Card card) {
        CardJudge judge = new CardJudge(template, schematic);
        judge.judge(card);
        return judge.objections;
    }

    /** What is printed on a card. */
    record Card(String parts, String steps, List<List<String>> readings) {
        static Card of(Document.ProblemBlock block) {
            List<String> prose = new ArrayList<>();
            List<List<String>> rows = new ArrayList<>();
            for (Document.Block part : block.blocks()) {
                if (part instanceof Document.Prose words) {
                    prose.add(words.markdown().replace("\\", ""));
                } else if (part instanceof Document.Table table) {
                    table.rows()
                            .forEach(row -> rows.add(
                                    row.stream().map(Document.Cell::text).toList()));
                }
            }
            return new Card(prose.get(0), prose.get(1), rows);
        }
    }

    private void object(String what) {
        objections.add(what);
    }

    private void judge(Card card) {
        card.parts().lines().forEach(printed::read);
        for (PlacedPart part : drawn) {
            boolean seen =
                    part.kind() != PartKind.WIRE && part.kind() != PartKind.GROUND && part.kind() != PartKind.NODE;
            if (seen && !parts.containsKey(part.name())) {
                object("nothing is laid out for " + part.name());
            }
        }
        if (!objections.isEmpty()) {
            return;
        }
        if (!set(card.steps())) {
            return;
        }
        OperatingPoint point = solve(netlist(), "the circuit");
        if (point == null) {
            return;
        }
        card.readings().forEach(this::reading);
        if (card.readings().size() < 2) {
            object("there is hardly anything to measure");
        }
        currentLimits(card.steps(), point);
        borne(point);
    }

    // The circuit

    private Netlist netlist() {
        List<Connected> connected = new ArrayList<>();
        for (Connected each : wiring.parts()) {
            connected.add(new Connected(parts.get(each.part().name()), each.node()));
        }
        return new Netlist(connected, wiring.nodes(), wiring.nodeAt(), List.of());
    }

    private OperatingPoint solve(Netlist netlist, String what) {
        if (OperatingPointSolver.solve(netlist) instanceof Outcome.Solved solved) {
            return solved.point();
        }
        object(what + " as laid out has no solution");
        return null;
    }

    /** Turns every trimpot as the card says. */
    private boolean set(String steps) {
        for (PlacedPart part : List.copyOf(parts.values())) {
            if (part.kind() != PartKind.TRIMPOT) {
                continue;
            }
            Matcher matcher = Pattern.compile(
                            "(?s).*Turn " + Pattern.quote(nameOf(part.name())) + " until the meter shows "
                                    + PrintedParts.NUMBER + " with red at (.*?), black at (.*?)\\. .*")
                    .matcher(steps);
            if (!matcher.matches()) {
                object("nobody says where " + part.name() + " stands");
                return false;
            }
            double low = 0;
            double high = 1;
            for (int i = 0; i < 40; i++) {
                double middle = (low + high) / 2;
                Map<PartValue, Double> values = new TreeMap<>(part.values());
                values.put(PartValue.POSITION, middle);
                printed.put(part, part.kind(), values);
                double at = voltage(node(matcher.group(2), ""), node(matcher.group(3), ""));
                if (at < PrintedParts.si(matcher.group(1))) {
                    low = middle;
                } else {
                    high = middle;
                }
            }
        }
        return true;
    }

    private String nameOf(String part) {
        return partOf.entrySet().stream()
                .filter(entry -> entry.getValue().equals(part))
                .map(Map.Entry::getKey)
                .findFirst()
                .orElseThrow();
    }

    private double voltage(String red, String black) {
        Netlist netlist = netlist();
        List<Connected> all = new ArrayList<>(netlist.parts());
        all.add(new Connected(
                new PlacedPart(PartKind.RESISTOR, "the meter", Map.of(), Map.of(PartValue.OHMS, METER_OHMS)),
                Map.of("from", red, "to", black)));
        OperatingPoint point =
                solve(new Netlist(all, netlist.nodes(), netlist.nodeAt(), List.of()), "the circuit with its meter");
        return point == null ? Double.NaN : point.voltage(red) - point.voltage(black);
    }

    private double current(String part, String terminal, boolean redAtPart, double ohms) {
        Netlist netlist = netlist();
        List<Connected> all = new ArrayList<>();
        String at = "";
        for (Connected each : netlist.parts()) {
            Map<String, String> nodes = new LinkedHashMap<>(each.node());
            if (each.part().name().equals(part)) {
                at = nodes.put(terminal, "opened");
            }
            all.add(new Connected(each.part(), nodes));
        }
        all.add(new Connected(
                new PlacedPart(PartKind.RESISTOR, "the meter", Map.of(), Map.of(PartValue.OHMS, ohms)),
                Map.of("from", redAtPart ? "opened" : at, "to", redAtPart ? at : "opened")));
        List<String> nodes = new ArrayList<>(netlist.nodes());
        nodes.add("opened");
        OperatingPoint point =
                solve(new Netlist(all, nodes, netlist.nodeAt(), List.of()), "the circuit with its meter");
        return point == null ? Double.NaN : point.current("the meter");
    }

    // Readings

    private void reading(List<String> row) {
        Matcher shown = Pattern.compile(
                        "([\\d.]+)\u00a0([mµ]?[VA]) \\(([\\d.]+)\u00a0to\u00a0([\\d.]+)\u00a0([mµ]?[VA])\\)")
                .matcher(row.get(1));
        if (!shown.matches() || !shown.group(2).equals(shown.group(5))) {
            object("no meter shows " + row.get(1) + " of " + row.get(0));
            return;
        }
        String number = shown.group(1);
        int decimals = number.contains(".") ? number.length() - number.indexOf('.') - 1 : 0;
        double scale = shown.group(2).startsWith("m") ? 1e-3 : shown.group(2).startsWith("µ") ? 1e-6 : 1;
        double step = scale * Math.pow(10, -decimals);
        double expected = scale * Double.parseDouble(number);
        if (Math.round(expected / step) > 3999) {
            object("a meter of 4000 counts does not show " + row.get(1));
        }
        double low = scale * Double.parseDouble(shown.group(3));
        double high = scale * Double.parseDouble(shown.group(4));
        if (!(low < expected && expected < high) || expected - low < 2 * step || high - expected < 2 * step) {
            object("the band is narrower than the meter's own: " + row.get(1));
        }
        double fresh = measured(row.get(0), expected);
        if (!(Math.abs(fresh - expected) <= 0.51 * step)) {
            object(row.get(0) + " shows " + fresh + " and not " + row.get(1));
        }
    }

    /** Of the circuit as printed, with the meter where the card puts it. */
    private double measured(String probes, double expected) {
        Matcher volts =
                Pattern.compile("(?:across (.*?): )?red at (.*), black at (.*)").matcher(probes);
        if (volts.matches()) {
            String across = volts.group(1) == null ? "" : volts.group(1);
            String red = node(volts.group(2), across);
            String black = node(volts.group(3), across);
            return red.isEmpty() || black.isEmpty() ? Double.NaN : voltage(red, black);
        }
        Matcher amps = Pattern.compile("through (.*?): in series at (.*), (red|black) at (.*) "
                        + "\\((µA\u00a0range|mA\u00a0range|A\u00a0socket)\\)")
                .matcher(probes);
        if (!amps.matches() || !amps.group(1).equals(amps.group(4))) {
            object("nobody knows where the probes go: " + probes);
            return Double.NaN;
        }
        String part = partOf.get(amps.group(1));
        String range = amps.group(5);
        double ohms = range.startsWith("µ") ? 100 : range.startsWith("m") ? 2 : 0.05;
        double full = range.startsWith("µ") ? 0.004 : range.startsWith("m") ? 0.4 : 10;
        if (expected >= full || expected < full / 120) {
            object("the wrong range for " + expected + " A");
        }
        String where = amps.group(2);
        String terminal;
        if (where.equals(amps.group(1) + "\u00a0+")) {
            terminal = "to";
        } else {
            String node = node(where.replace("its end towards ", ""), amps.group(1));
            terminal = wiring.parts().stream()
                    .filter(each -> each.part().name().equals(part))
                    .flatMap(each -> each.node().entrySet().stream())
                    .filter(end -> end.getValue().equals(node))
                    .map(Map.Entry::getKey)
                    .findFirst()
                    .orElse("");
        }
        if (part == null || terminal.isEmpty()) {
            object("there is no such place in the circuit: " + probes);
            return Double.NaN;
        }
        return current(part, terminal, amps.group(3).equals("red"), ohms);
    }

    /** The node that a card speaks of; empty, with an objection, if there is none. */
    private String node(String words, String across) {
        if (words.equals("0\u00a0V")) {
            return wiring.reference();
        }
        if (words.startsWith("its ")) {
            return terminal(partOf.get(across), words.substring(4));
        }
        String part = partOf.get(words);
        if (part != null && printed.drawn(part).kind() == PartKind.NODE) {
            return wiring.nodeAt().get(printed.drawn(part).end("at"));
        }
        int space = words.lastIndexOf('\u00a0');
        if (space > 0 && partOf.containsKey(words.substring(0, space))) {
            return terminal(partOf.get(words.substring(0, space)), words.substring(space + 1));
        }
        if (part != null && partOf.containsKey(across)) {
            // Where two parts without marked ends meet.
            Map<String, String> other = connected(part).node();
            return connected(partOf.get(across)).node().values().stream()
                    .filter(other::containsValue)
                    .findFirst()
                    .orElse("");
        }
        object("the circuit has no " + words);
        return "";
    }

    private Connected connected(String part) {
        return wiring.parts().stream()
                .filter(each -> each.part().name().equals(part))
                .findFirst()
                .orElseThrow();
    }

    private String terminal(String part, String word) {
        Connected at = connected(part);
        String terminal = switch (word) {
            case "+", "K", "upper end" -> "to";
            case "−", "A", "lower end" -> "from";
            default -> word;
        };
        String node = at.node().get(terminal);
        if (node == null) {
            object(part + " has no " + word);
            return "";
        }
        return node;
    }

    // What is set, and what parts bear

    private void currentLimits(String steps, OperatingPoint point) {
        for (PlacedPart part : parts.values()) {
            if (part.kind() != PartKind.SOURCE) {
                continue;
            }
            Matcher matcher = Pattern.compile("(?s).*" + Pattern.quote(nameOf(part.name())) + " to "
                            + PrintedParts.NUMBER + " by the meter, current limit " + PrintedParts.NUMBER + "[;.].*")
                    .matcher(steps);
            if (!matcher.matches()) {
                object("nobody says what " + part.name() + " is set to");
                continue;
            }
            double volts = PrintedParts.si(matcher.group(1));
            double limit = PrintedParts.si(matcher.group(2));
            double drawnAmps = point.current(part.name());
            if (Math.abs(volts - part.values().get(PartValue.VOLTS)) > 1e-9 || volts < 0.5 || volts > 30) {
                object("a bench supply is not set to " + volts + " V");
            }
            if (limit < 1.15 * drawnAmps || limit < 0.01 || limit > 0.02 + 2.5 * drawnAmps && drawnAmps > 0.001) {
                object("a current limit of " + limit + " A for " + drawnAmps + " A");
            }
            if (drawnAmps < -1e-6 || drawnAmps > 3) {
                object("a bench supply does not give " + drawnAmps + " A");
            }
        }
    }

    private void borne(OperatingPoint point) {
        for (PlacedPart part : parts.values()) {
            double watts = Math.abs(point.power(part.name()));
            double amps = Math.abs(point.current(part.name()));
            for (TradeLimit limit : template.premises().partLimits()) {
                limit.measured(part, point).ifPresent(value -> {
                    if (!limit.allows(value)) {
                        object(limit.meaning() + " of " + part.name() + " is " + limit.text(value, Languages.ENGLISH));
                    }
                });
            }
            double most = switch (part.kind()) {
                case RESISTOR, LOAD -> printed.rating(part.name()) / 2;
                case LED -> 0.1;
                case DIODE, NMOS, PMOS, NPN, REGULATOR -> 1;
                case ZENER -> 0.25;
                case SINK -> 50;
                case TRIMPOT -> 0.1;
                default -> Double.POSITIVE_INFINITY;
            };
            if (part.kind() == PartKind.LED) {
                most = Double.POSITIVE_INFINITY;
                if (amps > 0.02 || amps < 0.001) {
                    object("no common LED is run at " + amps + " A: " + part.name());
                }
            }
            if (watts > most * (1 + 1e-6)) {
                object(part.name() + " is too hot for a bench: " + watts + " W");
            }
        }
    }
}
