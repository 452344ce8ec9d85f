package ampersheet.sheet;

import ampersheet.bench.BenchCircuit;
import ampersheet.bench.BenchMeter;
import ampersheet.bench.CommonParts;
import ampersheet.bench.FittedPart;
import ampersheet.bench.MeterReading;
import ampersheet.bench.Probes;
import ampersheet.bench.Tolerance;
import ampersheet.circuit.Netlist;
import ampersheet.circuit.PartKind;
import ampersheet.circuit.PartValue;
import ampersheet.circuit.PlacedPart;
import ampersheet.figure.Label;
import ampersheet.model.CircuitPlan;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Elementary;
import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.SignificantFigures;
import ampersheet.quantity.Unit;
import ampersheet.template.ProblemTemplate;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;

/** What a bench card says of its parts, of where the probes go and of what the meter shows. */
final class BenchWords {
    private static final Unit VOLT = Unit.parse("V");
    private static final Unit AMPERE = Unit.parse("A");
    private static final Unit OHM = Unit.parse("ohm");
    private static final Unit FARAD = Unit.parse("F");
    private static final Unit WATT = Unit.parse("W");
    private static final Unit PERCENT = Unit.parse("%");
    private static final int FIGURES = 3;
    /** Up to here a meter has a range for microamperes. */
    private static final double MICROAMPERES = 0.005;

    private static final String SPACE = String.valueOf(QuantityWriter.NO_BREAK_SPACE);

    /** What terminals are called where they are not alike. */
    private static final Map<PartKind, Map<String, String>> TERMINALS = terminals();

    private final BenchCircuit circuit;
    private final QuantityWriter writer;
    private final Netlist netlist;
    private final Map<String, String> captions;

    BenchWords(BenchCircuit circuit, QuantityWriter writer) {
        this.circuit = circuit;
        this.writer = writer;
        this.netlist = circuit.schematic().netlist();
        this.captions = captions(circuit.problem().template());
    }

    private static Map<PartKind, Map<String, String>> terminals() {
        Map<PartKind, Map<String, String>> names = new LinkedHashMap<>();
        names.put(PartKind.SOURCE, Map.of("from", "−", "to", "+"));
        for (PartKind diode : List.of(PartKind.LED, PartKind.DIODE, PartKind.ZENER, PartKind.REFERENCE)) {
            names.put(diode, Map.of("from", "A", "to", "K"));
        }
        for (PartKind other : List.of(PartKind.NMOS, PartKind.PMOS, PartKind.NPN, PartKind.REGULATOR)) {
            Map<String, String> same = new LinkedHashMap<>();
            other.terminals().forEach(terminal -> same.put(terminal, terminal));
            names.put(other, same);
        }
        names.put(PartKind.TRIMPOT, Map.of("from", "lower end", "to", "upper end", "wiper", "wiper"));
        return names;
    }

    /** As drawn, without what an author adds behind a name or a comma, which need not hold for what is laid out. */
    static Map<String, String> captions(ProblemTemplate template) {
        Map<String, String> captions = new LinkedHashMap<>();
        for (CircuitPlan.PlannedPart part :
                template.model(CircuitPlan.class).map(CircuitPlan::parts).orElse(List.of())) {
            String caption = part.caption().orElse(part.name());
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
        Map<String, Label> labels = new LinkedHashMap<>();
        for (PlacedPart part : circuit.schematic().parts()) {
            if (part.kind() == PartKind.NODE && !captions.get(part.name()).equals(part.name())) {
                labels.put(part.name(), new Label(captions.get(part.name()), List.of()));
            }
        }
        for (FittedPart part : circuit.parts()) {
            String value = value(part);
            labels.put(
                    part.name(),
                    new Label(
                            name(part.name()),
                            value.isEmpty() ? List.of() : List.of(new Label.Line(Optional.empty(), value))));
        }
        return labels;
    }

    private String value(FittedPart part) {
        Map<PartValue, Double> values = part.part().values();
        return switch (part.part().kind()) {
            case SOURCE, ZENER, REFERENCE, REGULATOR -> volts(values.get(PartValue.VOLTS));
            case RESISTOR, LOAD, TRIMPOT -> print(values.get(PartValue.OHMS), OHM);
            case SINK -> print(values.get(PartValue.AMPS), AMPERE);
            case LED -> part.count() == 1 ? colour(part) : part.count() + " LEDs";
            case CAPACITOR -> print(values.get(PartValue.FARADS), FARAD);
            default -> "";
        };
    }

    /** What to take for a part, with its tolerance. */
    String take(FittedPart part) {
        Map<PartValue, Double> values = part.part().values();
        String instead = part.drawn() == PartKind.SINK || !isPlain(part) ? ", in its place" : "";
        return switch (part.part().kind()) {
            case SOURCE -> "bench supply, " + volts(values.get(PartValue.VOLTS)) + off(part);
            case RESISTOR, LOAD ->
                "resistor " + print(values.get(PartValue.OHMS), OHM) + off(part) + rating(part) + instead;
            case SINK ->
                "electronic load, constant current " + print(values.get(PartValue.AMPS), AMPERE) + off(part)
                        + (floats(part) ? ", floating: neither end at 0" + SPACE + "V" : "") + instead;
            case LED -> leds(part);
            case DIODE ->
                (values.get(PartValue.VOLTS) < 0.5 ? "Schottky" : "silicon") + " diode, "
                        + volts(values.get(PartValue.VOLTS)) + off(part) + " at "
                        + print(values.get(PartValue.AMPS), AMPERE);
            case ZENER -> "zener diode " + volts(values.get(PartValue.VOLTS)) + off(part) + rating(part);
            case REFERENCE ->
                "shunt reference " + volts(values.get(PartValue.VOLTS)) + off(part)
                        + (values.containsKey(PartValue.MINIMUM)
                                ? ", at least " + print(values.get(PartValue.MINIMUM), AMPERE)
                                : "");
            case NMOS -> "n-channel MOSFET" + gate(values);
            case PMOS -> "p-channel MOSFET" + gate(values);
            case NPN ->
                "NPN transistor, gain " + plain(values.get(PartValue.GAIN)) + " (" + ends(part, PartValue.GAIN) + "), "
                        + volts(values.get(PartValue.VOLTS)) + " from base to emitter at "
                        + print(values.get(PartValue.AMPS), AMPERE)
                        + ", "
                        + volts(values.get(PartValue.SATURATION)) + " when saturated";
            case SWITCH -> "switch, " + (values.get(PartValue.CLOSED) == 1 ? "closed" : "open");
            case TRIMPOT -> "trimpot " + print(values.get(PartValue.OHMS), OHM) + off(part);
            case REGULATOR ->
                "linear regulator " + volts(values.get(PartValue.VOLTS)) + off(part)
                        + ", with the capacitors its data sheet asks for";
            case CAPACITOR ->
                "capacitor " + print(values.get(PartValue.FARADS), FARAD) + ", for " + volts(highest()) + " or more";
            case VOLTMETER -> "the meter, on volts";
            case AMMETER -> "the meter, on amperes";
            default -> throw new IllegalStateException("nothing to take for " + part);
        };
    }

    private boolean floats(FittedPart part) {
        return part.part().kind().terminals().stream()
                .noneMatch(terminal -> node(part.part(), terminal).equals(netlist.reference()));
    }

    /** Signs of terminals that a learner has to compare, as far as there are any: "A, K, + and −". */
    String signs() {
        boolean diodes = circuit.parts().stream()
                .anyMatch(part ->
                        TERMINALS.getOrDefault(part.part().kind(), Map.of()).containsValue("A"));
        return diodes ? "A, K, + and −" : "+ and −";
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

    /** Whether its author calls it a resistor, and not a motor, a sensor or a load. */
    private boolean isPlain(FittedPart part) {
        return name(part.name()).matches("R\\w?");
    }

    /** What one fetches from the drawer for a part, one of several in series; empty for what stands on every bench. */
    Optional<String> fetched(FittedPart part) {
        Map<PartValue, Double> values = part.part().values();
        return switch (part.part().kind()) {
            case SOURCE, SINK, VOLTMETER, AMMETER -> Optional.empty();
            case RESISTOR, LOAD -> Optional.of("resistor " + print(values.get(PartValue.OHMS), OHM) + rating(part));
            case LED ->
                Optional.of(
                        part.bin().isPresent()
                                ? "LED " + volts(values.get(PartValue.VOLTS) / part.count())
                                : colour(part) + " LED");
            case REGULATOR -> Optional.of("linear regulator " + volts(values.get(PartValue.VOLTS)));
            default -> Optional.of(take(part));
        };
    }

    private String leds(FittedPart part) {
        double each = part.part().values().get(PartValue.VOLTS) / part.count();
        Tolerance tolerance = part.tolerances().get(0);
        double off = SignificantFigures.round((tolerance.high() - tolerance.low()) / 2 / part.count(), FIGURES);
        String colour = part.bin().isEmpty() ? colour(part) + " " : "";
        return (part.count() == 1 ? colour + "LED, " : part.count() + " " + colour + "LEDs in series, each ")
                + volts(each) + " ± " + volts(off) + " at "
                + print(part.part().values().get(PartValue.AMPS), AMPERE);
    }

    private static String colour(FittedPart part) {
        return switch (CommonParts.Colour.of(part.part().values().get(PartValue.VOLTS) / part.count())) {
            case RED -> "red";
            case GREEN -> "green";
            case BLUE_OR_WHITE -> "white";
        };
    }

    private String gate(Map<PartValue, Double> values) {
        return ", on from " + volts(values.get(PartValue.THRESHOLD)) + " at its gate, about "
                + print(values.get(PartValue.ON), OHM) + " then";
    }

    private String ends(FittedPart part, PartValue value) {
        Tolerance tolerance = part.tolerances().stream()
                .filter(one -> one.value().equals(value))
                .findFirst()
                .orElseThrow();
        return plain(tolerance.low()) + " to " + plain(tolerance.high());
    }

    /** Such as " ± 5 %". */
    private String off(FittedPart part) {
        if (part.tolerances().isEmpty()) {
            return "";
        }
        Tolerance tolerance = part.tolerances().get(0);
        double middle = (tolerance.low() + tolerance.high()) / 2;
        boolean amount = part.part().kind() == PartKind.DIODE;
        double off = SignificantFigures.round((tolerance.high() - tolerance.low()) / 2, FIGURES);
        return " ± " + (amount ? volts(off) : print(off / middle, PERCENT));
    }

    private String rating(FittedPart part) {
        return part.rating().isPresent() ? ", " + print(part.rating().getAsDouble(), WATT) : "";
    }

    private double highest() {
        return circuit.parts().stream()
                .filter(part -> part.part().kind() == PartKind.SOURCE)
                .mapToDouble(part -> part.part().values().get(PartValue.VOLTS))
                .sum();
    }

    // Where the probes go

    /** What is measured, and where the probes go. */
    String where(Probes probes) {
        if (probes instanceof Probes.Current current) {
            return "through " + name(current.part()) + ": " + opened(current);
        }
        Probes.Voltage voltage = (Probes.Voltage) probes;
        return voltage.across().map(part -> "across " + name(part) + ": ").orElse("") + probes(probes);
    }

    /** Such as {@code red at its A, black at 0 V}. */
    String probes(Probes probes) {
        if (probes instanceof Probes.Current current) {
            return opened(current);
        }
        Probes.Voltage voltage = (Probes.Voltage) probes;
        String part = voltage.across().orElse("");
        return "red at " + end(part, voltage.red()) + ", black at " + end(part, voltage.black());
    }

    private String opened(Probes.Current current) {
        PlacedPart part = part(current.part());
        String name = name(part.name());
        String where = part.kind() == PartKind.SOURCE
                ? name + SPACE + "+"
                : "its end towards " + end(part.name(), node(part, current.terminal()));
        return "in series at " + where + ", " + (current.redAtPart() ? "red" : "black") + " at " + name;
    }

    /** The end of a part at a node: its own terminal where they differ, else what it meets there. */
    private String end(String part, String node) {
        if (!part.isEmpty() && TERMINALS.containsKey(part(part).kind())) {
            PlacedPart of = part(part);
            for (String terminal : of.kind().terminals()) {
                if (node(of, terminal).equals(node)) {
                    return "its " + TERMINALS.get(of.kind()).get(terminal);
                }
            }
        }
        return at(node, part);
    }

    private String at(String node, String besides) {
        if (node.equals(netlist.reference())) {
            return "0" + SPACE + "V";
        }
        if (captions.containsKey(node) && isNode(node)) {
            return captions.get(node);
        }
        List<Netlist.Connected> there = netlist.parts().stream()
                .filter(one -> !one.part().name().equals(besides) && one.node().containsValue(node))
                .toList();
        for (Predicate<PartKind> sought :
                List.<Predicate<PartKind>>of(kind -> kind == PartKind.SOURCE, TERMINALS::containsKey, kind -> true)) {
            for (Netlist.Connected one : there) {
                PartKind kind = one.part().kind();
                if (sought.test(kind)) {
                    String name = name(one.part().name());
                    return TERMINALS.containsKey(kind) ? name + SPACE + terminal(one, node) : name;
                }
            }
        }
        throw new IllegalStateException("a node that no part meets: " + node);
    }

    private static String terminal(Netlist.Connected connected, String node) {
        for (Map.Entry<String, String> end : connected.node().entrySet()) {
            if (end.getValue().equals(node)) {
                return TERMINALS.get(connected.part().kind()).get(end.getKey());
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
        return shown(reading, reading.expected()) + SPACE + scale(reading).unit();
    }

    String band(MeterReading reading) {
        return shown(reading, Math.max(0, reading.low())) + SPACE + "to" + SPACE + shown(reading, reading.high())
                + SPACE + scale(reading).unit();
    }

    /** Where the meter stands, which for a current makes a difference to it. */
    String range(MeterReading reading) {
        return reading.probes() instanceof Probes.Current
                ? " (" + scale(reading).unit() + SPACE + (scale(reading).unit().equals("A") ? "socket)" : "range)")
                : "";
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

    String amps(double amps) {
        return print(amps, AMPERE);
    }

    String volts(double volts) {
        return print(volts, VOLT);
    }

    private String plain(double number) {
        return writer.plain(number, Unit.parse("1"), FIGURES).text();
    }

    /** As it stands on parts and knobs: tenths of the unit without a prefix. */
    private String print(double si, Unit unit) {
        return si >= 0.1 && si < 1 && !unit.equals(PERCENT) && !unit.equals(FARAD)
                ? plain(si) + SPACE + unit.symbol()
                : writer.plain(si, unit, FIGURES).text();
    }

    /** All names of what gets hot. */
    String hot() {
        List<String> names = new ArrayList<>();
        circuit.hot().forEach(part -> names.add(name(part)));
        return String.join(", ", names);
    }
}
