package ampersheet.sheet;

import ampersheet.bench.BenchCircuit;
import ampersheet.bench.BenchMeter;
import ampersheet.bench.FittedPart;
import ampersheet.bench.MeterReading;
import ampersheet.bench.Probes;
import ampersheet.circuit.Netlist;
import ampersheet.circuit.PartKind;
import ampersheet.circuit.PlacedPart;
import ampersheet.figure.Label;
import ampersheet.language.Language;
import ampersheet.model.CircuitPlan;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Elementary;
import ampersheet.quantity.QuantityWriter;
import ampersheet.template.ProblemTemplate;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;

/** What a bench card says of where the probes go and of what the meter shows, and what it calls the parts. */
final class BenchWords {
    /** Up to here a meter has a range for microamperes. */
    private static final double MICROAMPERES = 0.005;

    private final BenchCircuit circuit;
    private final QuantityWriter writer;
    private final Language language;
    private final Netlist netlist;
    private final Map<String, String> captions;

    BenchWords(BenchCircuit circuit, QuantityWriter writer, Language language) {
        this.circuit = circuit;
        this.writer = writer;
        this.language = language;
        this.netlist = circuit.schematic().netlist();
        this.captions = captions(circuit.problem().template());
    }

    /** As drawn, without what an author adds behind a name or a comma, which need not hold for what is laid out. */
    static Map<String, String> captions(ProblemTemplate template) {
        Map<String, String> captions = new LinkedHashMap<>();
        for (CircuitPlan.PlannedPart part :
                template.model(CircuitPlan.class).map(CircuitPlan::parts).orElse(List.of())) {
            String caption = part.caption().orElseGet(() -> template.language().name(part.name()));
            boolean namedFirst = caption.startsWith(part.name() + " ");
            captions.put(part.name(), namedFirst ? part.name() : caption.replaceFirst(",.*", ""));
        }
        return captions;
    }

    String name(String part) {
        return captions.get(part);
    }

    /** Of the figure: names, and the values laid out. */
    Map<String, Label> labels() {
        PartWords parts = new PartWords(circuit, writer, language);
        Map<String, Label> labels = new LinkedHashMap<>();
        for (PlacedPart part : circuit.schematic().parts()) {
            if (part.kind() == PartKind.NODE && !captions.get(part.name()).equals(part.name())) {
                labels.put(part.name(), new Label(captions.get(part.name()), List.of()));
            }
        }
        for (FittedPart part : circuit.parts()) {
            String value = parts.label(part);
            labels.put(
                    part.name(),
                    new Label(
                            name(part.name()),
                            value.isEmpty() ? List.of() : List.of(new Label.Line(Optional.empty(), value))));
        }
        return labels;
    }

    /** Signs of terminals that a learner has to compare, as far as there are any: "A, K, + and −". */
    String signs() {
        boolean diodes = circuit.parts().stream()
                .anyMatch(part -> PartEnd.of(part.part().kind()).containsValue(PartEnd.ANODE));
        List<PartEnd> ends = diodes
                ? List.of(PartEnd.ANODE, PartEnd.CATHODE, PartEnd.PLUS, PartEnd.MINUS)
                : List.of(PartEnd.PLUS, PartEnd.MINUS);
        return language.all(ends.stream().map(end -> end.said(language)).toList());
    }

    /** What has three pins, whose order differs from maker to maker. */
    List<String> threePins() {
        return circuit.parts().stream()
                .filter(part -> switch (part.part().kind()) {
                    case NMOS, PMOS, NPN, REGULATOR -> true;
                    default -> false;
                })
                .map(part -> name(part.name()))
                .toList();
    }

    // Where the probes go

    /** What is measured, and where the probes go. */
    String where(Probes probes) {
        if (probes instanceof Probes.Current current) {
            return language.say("sheet.card.through", "part", name(current.part()), "probes", opened(current));
        }
        Probes.Voltage voltage = (Probes.Voltage) probes;
        return voltage.across()
                .map(part -> language.say("sheet.card.across", "part", name(part), "probes", probes(probes)))
                .orElseGet(() -> probes(probes));
    }

    /** Such as {@code red at its A, black at 0 V}. */
    String probes(Probes probes) {
        if (probes instanceof Probes.Current current) {
            return opened(current);
        }
        Probes.Voltage voltage = (Probes.Voltage) probes;
        String part = voltage.across().orElse("");
        return language.say(
                "sheet.card.red-and-black", "red", end(part, voltage.red()), "black", end(part, voltage.black()));
    }

    private String opened(Probes.Current current) {
        PlacedPart part = part(current.part());
        String name = name(part.name());
        String where = part.kind() == PartKind.SOURCE
                ? endOf(name, PartEnd.PLUS)
                : language.say("sheet.card.its-end-towards", "end", end(part.name(), node(part, current.terminal())));
        return current.redAtPart()
                ? language.say("sheet.card.in-series-red", "where", where, "part", name)
                : language.say("sheet.card.in-series-black", "where", where, "part", name);
    }

    private String endOf(String part, PartEnd end) {
        return language.say("sheet.card.end-of", "part", part, "end", end.said(language));
    }

    /** The end of a part at a node: its own terminal where they differ, else what it meets there. */
    private String end(String part, String node) {
        if (!part.isEmpty() && PartEnd.areNamed(part(part).kind())) {
            PlacedPart of = part(part);
            for (String terminal : of.kind().terminals()) {
                if (node(of, terminal).equals(node)) {
                    return PartEnd.of(of.kind(), terminal).orElseThrow().itsOwn(language);
                }
            }
        }
        return at(node, part);
    }

    private String at(String node, String besides) {
        if (node.equals(netlist.reference())) {
            return new MarkedNumbers(writer).volts(0);
        }
        if (captions.containsKey(node) && isNode(node)) {
            return captions.get(node);
        }
        List<Netlist.Connected> there = netlist.parts().stream()
                .filter(one -> !one.part().name().equals(besides) && one.node().containsValue(node))
                .toList();
        for (Predicate<PartKind> sought :
                List.<Predicate<PartKind>>of(kind -> kind == PartKind.SOURCE, PartEnd::areNamed, kind -> true)) {
            for (Netlist.Connected one : there) {
                PartKind kind = one.part().kind();
                if (sought.test(kind)) {
                    String name = name(one.part().name());
                    return PartEnd.areNamed(kind) ? endOf(name, end(one, node)) : name;
                }
            }
        }
        throw new IllegalStateException("a node that no part meets: " + node);
    }

    private static PartEnd end(Netlist.Connected connected, String node) {
        for (Map.Entry<String, String> end : connected.node().entrySet()) {
            if (end.getValue().equals(node)) {
                return PartEnd.of(connected.part().kind(), end.getKey()).orElseThrow();
            }
        }
        throw new IllegalStateException("not at " + node);
    }

    private boolean isNode(String name) {
        return circuit.schematic().parts().stream()
                .anyMatch(part -> part.kind() == PartKind.NODE && part.name().equals(name));
    }

    private PlacedPart part(String name) {
        return circuit.schematic().parts().stream()
                .filter(part -> part.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private String node(PlacedPart part, String terminal) {
        return netlist.nodeAt().get(part.end(terminal));
    }

    // What the meter shows

    String expected(MeterReading reading) {
        return withUnit(reading, reading.expected());
    }

    String band(MeterReading reading) {
        return language.say(
                "sheet.card.band",
                "low",
                shown(reading, Math.max(0, reading.low())),
                "high",
                withUnit(reading, reading.high()));
    }

    private String withUnit(MeterReading reading, double si) {
        return shown(reading, si)
                + QuantityWriter.NO_BREAK_SPACE
                + scale(reading).unit();
    }

    /** Where the meter stands, which for a current makes a difference to it; else empty. */
    Optional<String> range(MeterReading reading) {
        if (!(reading.probes() instanceof Probes.Current)) {
            return Optional.empty();
        }
        String unit = scale(reading).unit();
        return Optional.of(
                unit.equals("A")
                        ? language.say("sheet.card.socket", "unit", unit)
                        : language.say("sheet.card.range", "unit", unit));
    }

    /**
     * In what a meter shows a reading.
     *
     * @param of the unit
     */
    private record Scale(String unit, double of) {}

    private static Scale scale(MeterReading reading) {
        BenchMeter.Range range = reading.range();
        if (reading.quantity().equals(Dimension.CURRENT)) {
            return range.full() > 1
                    ? new Scale("A", 1)
                    : range.full() > MICROAMPERES ? new Scale("mA", 1e-3) : new Scale("µA", 1e-6);
        }
        return range.full() < 1 && range.step() < 1e-3 ? new Scale("mV", 1e-3) : new Scale("V", 1);
    }

    /** With as many decimals as the meter has there. */
    private String shown(MeterReading reading, double si) {
        double scale = scale(reading).of();
        int decimals =
                (int) Math.max(0, -Math.floor(Elementary.log10(reading.range().step() / scale) + 1e-9));
        return BigDecimal.valueOf(si / scale)
                .setScale(decimals, RoundingMode.HALF_UP)
                .toPlainString()
                .replace('.', writer.marker().character());
    }

    /** All names of what gets hot. */
    String hot() {
        List<String> names = new ArrayList<>();
        circuit.hot().forEach(part -> names.add(name(part)));
        return String.join(", ", names);
    }
}
