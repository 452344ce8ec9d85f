package ampersheet.circuit;

import ampersheet.language.Language;
import ampersheet.quantity.Elementary;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.DoubleFunction;

/**
 * A circuit as general circuit simulators read it: the netlist form of SPICE (L. W. Nagel, SPICE2, UCB/ERL M520, 1975),
 * one element a line. Written from the parts alone, without the laws that the solver of this room makes of them, so
 * that a simulator is a judge of those.
 *
 * <p>Parts without a counterpart are put as what a bench engineer would: a reference is a resistor that carries its
 * least current, with an ideal diode and a voltage behind it; a regulator holds its output by a voltage in series
 * between in and out; a transistor's collector current is base current times gain, with an ideal diode that holds it at
 * saturation; a channel of a MOSFET is a resistor switched by its gate. An ideal diode has an emission coefficient of
 * 0.001.
 */
public final class SpiceNetlist {
    private static final String IDEAL = "ideal";
    /** Ohms; an open switch. */
    private static final String OPEN = "1e12";

    private static final double LEAST_SATURATION = 1e-25;
    private static final double LARGER_SATURATION = 1e-15;

    private final Netlist netlist;
    private final Set<String> blank;
    private final boolean metered;
    private final DoubleFunction<String> numbers;
    private final Language language;
    private final Map<String, String> node;
    private final List<String> lines = new ArrayList<>();
    private final Map<String, String> models = new LinkedHashMap<>();
    private int inside;
    /** Whether the part at hand is one whose values are left open: then no number that comes from one is written. */
    private boolean open;

    private SpiceNetlist(
            Netlist drawn, Set<String> blank, boolean metered, DoubleFunction<String> numbers, Language language) {
        this.netlist = Copper.withInsides(drawn);
        this.blank = blank;
        this.metered = metered;
        this.numbers = numbers;
        this.language = language;
        this.node = numbered(netlist);
    }

    private static Map<String, String> numbered(Netlist netlist) {
        Map<String, String> node = new LinkedHashMap<>();
        for (String name : netlist.nodes()) {
            node.put(name, Integer.toString(node.size()));
        }
        return node;
    }

    /**
     * @param blank names of parts whose values are left open
     * @param numbers how numbers are written: plainly or with an e, never with a prefix
     * @param language of the comments, and of what stands for a value that is left open
     */
    public static String of(
            Netlist netlist, String title, Set<String> blank, DoubleFunction<String> numbers, Language language) {
        return new SpiceNetlist(netlist, blank, false, numbers, language).text(title);
    }

    /** What is left out, to be filled in by whoever tries the circuit. */
    public static String blank(Language language) {
        return "{" + language.say("figure.netlist.fill-in") + "}";
    }

    /** With a source of 0 V, {@code VM_name}, before each part: its current is that of the part's main path. */
    static String metered(Netlist netlist, String title, DoubleFunction<String> numbers, Language language) {
        return new SpiceNetlist(netlist, Set.of(), true, numbers, language).text(title);
    }

    /** Number of each named node in the text; the reference is 0. */
    static Map<String, String> numbers(Netlist netlist) {
        return numbered(Copper.withInsides(netlist));
    }

    private String text(String title) {
        netlist.parts().forEach(this::put);
        StringBuilder text = new StringBuilder("* " + title.replace('\n', ' ') + "\n");
        node.forEach((name, number) -> {
            if (!name.equals(number)) {
                text.append("* ").append(comment(number, name)).append('\n');
            }
        });
        lines.forEach(line -> text.append(line).append('\n'));
        models.forEach((name, model) ->
                text.append(".model ").append(name).append(' ').append(model).append('\n'));
        return text.append(".options temp=27 tnom=27\n.end\n").toString();
    }

    private String comment(String number, String name) {
        boolean ground = name.equals(Netlist.GROUND) && name.equals(netlist.reference());
        String called = ground ? language.say("figure.circuit.ground-node") : name;
        return language.say("figure.netlist.node", "number", number, "name", called);
    }

    private void put(Netlist.Connected connected) {
        PlacedPart part = connected.part();
        Map<String, String> at = new LinkedHashMap<>();
        connected.node().forEach((terminal, its) -> at.put(terminal, node.get(its)));
        String name = part.name().replaceAll("[^A-Za-z0-9_]", "_");
        open = blank.contains(part.name());
        meter(part.kind(), name, at);
        switch (part.kind()) {
            case SOURCE -> line("V" + name, at.get("to"), at.get("from"), value(part, PartValue.VOLTS));
            case RESISTOR, LOAD ->
                resistor(
                        name,
                        at.get("from"),
                        at.get("to"),
                        part.values().get(PartValue.OHMS),
                        value(part, PartValue.OHMS));
            case CABLE -> resistor(name, at.get("from"), at.get("to"), cableOhms(part), number(cableOhms(part)));
            case SINK -> line("I" + name, at.get("from"), at.get("to"), value(part, PartValue.AMPS));
            case LED -> diode(name, at.get("from"), at.get("to"), part, 2);
            case DIODE -> diode(name, at.get("from"), at.get("to"), part, 1.8);
            case ZENER -> zener(name, part, at);
            case REFERENCE -> reference(name, part, at);
            case NMOS -> channel(name, part, at.get("drain"), at.get("source"), at.get("gate"), at.get("source"));
            case PMOS -> channel(name, part, at.get("source"), at.get("drain"), at.get("source"), at.get("gate"));
            case NPN -> transistor(name, part, at);
            case SWITCH -> contact(name, part, at);
            case TRIMPOT -> trimpot(name, part, at);
            case REGULATOR -> regulator(name, part, at);
            case CAPACITOR ->
                line(
                        "C" + name,
                        at.get("from"),
                        at.get("to"),
                        value(part, PartValue.FARADS),
                        "IC=" + number(part.values().getOrDefault(PartValue.INITIAL, 0.0)));
            case STRIP, PANEL -> copper(name, part, at);
            case VOLTMETER -> line("R" + name, at.get("from"), at.get("to"), OPEN);
            case AMMETER -> line("V" + name, at.get("from"), at.get("to"), "0");
            case WIRE, GROUND, NODE ->
                throw new IllegalArgumentException(
                        "a netlist holds no " + part.kind().word());
        }
    }

    private void meter(PartKind kind, String name, Map<String, String> at) {
        String terminal = kind.terminals().get(0);
        if (metered) {
            String behind = insideNode();
            line("VM_" + name, at.get(terminal), behind, "0");
            at.put(terminal, behind);
        }
    }

    private void resistor(String name, String from, String to, double ohms, String shown) {
        if (ohms == 0 && !open) {
            line("V" + name, from, to, "0"); // simulators refuse a resistor of nothing
        } else {
            line("R" + name, from, to, shown);
        }
    }

    private void diode(String name, String from, String to, PlacedPart part, double usual) {
        double emission = part.values().getOrDefault(PartValue.EMISSION, usual);
        double series = part.values().getOrDefault(PartValue.SERIES, 0.0);
        double amps = part.values().get(PartValue.AMPS);
        double volts = part.values().get(PartValue.VOLTS) - amps * series;
        double saturation = saturation(volts, amps, emission);
        if (saturation >= LEAST_SATURATION) {
            line("D" + name, from, to, "M" + name);
            model("M" + name, saturation, emission, series);
            return;
        }
        // Simulators take no smaller saturation current: the curve is that of a larger one behind a voltage.
        String behind = insideNode();
        line("D" + name, from, behind, "M" + name);
        line(
                "V" + name + "_s",
                behind,
                to,
                number(volts - emission * Junction.THERMAL_VOLTAGE * Elementary.ln(amps / LARGER_SATURATION)));
        model("M" + name, LARGER_SATURATION, emission, series);
    }

    private void forward(String name, String from, String to, double volts, double amps) {
        line("D" + name + "_f", from, to, "M" + name + "_f");
        model("M" + name + "_f", saturation(volts, amps, 1), 1, 0);
    }

    /** Amperes of {@code I = Is (exp(V / n Vt) − 1)} through a point. */
    private static double saturation(double volts, double amps, double emission) {
        return amps / Elementary.expm1(volts / (emission * Junction.THERMAL_VOLTAGE));
    }

    private void model(String name, double saturation, double emission, double series) {
        models.put(name, "D(IS=" + number(saturation) + " N=" + number(emission) + " RS=" + number(series) + ")");
    }

    /** Conducts from {@code volts} on, along {@code slope}. */
    private void knee(String name, String from, String to, double volts, double slope) {
        String behind = insideNode();
        String last = slope > 0 ? insideNode() : to;
        line("D" + name + "_k", from, behind, IDEAL);
        line("V" + name + "_k", behind, last, number(volts));
        if (slope > 0) {
            line("R" + name + "_k", last, to, number(slope));
        }
        models.put(IDEAL, "D(IS=1e-6 N=0.001)");
    }

    private void channel(String name, PlacedPart part, String from, String to, String plus, String minus) {
        double threshold = part.values().get(PartValue.THRESHOLD);
        line("S" + name, from, to, plus, minus, "M" + name);
        models.put(
                "M" + name,
                "SW(RON=" + value(part, PartValue.ON) + " ROFF=" + OPEN + " VT=" + number(0.75 * threshold) + " VH=0)");
        forward(name, to, from, 0.7, 10e-3);
    }

    private void transistor(String name, PlacedPart part, Map<String, String> at) {
        String base = insideNode();
        line("V" + name + "_b", at.get("base"), base, "0");
        forward(
                name,
                base,
                at.get("emitter"),
                part.values().get(PartValue.VOLTS),
                part.values().get(PartValue.AMPS));
        line("F" + name, at.get("collector"), at.get("emitter"), "V" + name + "_b", value(part, PartValue.GAIN));
        knee(name, at.get("emitter"), at.get("collector"), -part.values().get(PartValue.SATURATION), 0);
    }

    private void zener(String name, PlacedPart part, Map<String, String> at) {
        double amps = part.values().getOrDefault(PartValue.AMPS, 5e-3);
        forward(name, at.get("from"), at.get("to"), 0.7, amps);
        double slope = part.values().getOrDefault(PartValue.SLOPE, 0.0);
        knee(name, at.get("to"), at.get("from"), part.values().get(PartValue.VOLTS) - amps * slope, slope);
    }

    private void reference(String name, PlacedPart part, Map<String, String> at) {
        forward(name, at.get("from"), at.get("to"), 0.7, 5e-3);
        double least = part.values().getOrDefault(PartValue.MINIMUM, 0.0);
        if (least > 0) {
            line(
                    "R" + name + "_least",
                    at.get("to"),
                    at.get("from"),
                    number(part.values().get(PartValue.VOLTS) / least));
        }
        knee(
                name,
                at.get("to"),
                at.get("from"),
                part.values().get(PartValue.VOLTS),
                part.values().getOrDefault(PartValue.SLOPE, 0.0));
    }

    private void contact(String name, PlacedPart part, Map<String, String> at) {
        if (part.values().get(PartValue.CLOSED) == 1) {
            line("V" + name, at.get("from"), at.get("to"), "0");
        } else {
            line("R" + name, at.get("from"), at.get("to"), OPEN);
        }
    }

    private void trimpot(String name, PlacedPart part, Map<String, String> at) {
        double ohms = part.values().get(PartValue.OHMS);
        double position = part.values().get(PartValue.POSITION);
        resistor(name + "_a", at.get("from"), at.get("wiper"), ohms * position, number(ohms * position));
        resistor(name + "_b", at.get("wiper"), at.get("to"), ohms * (1 - position), number(ohms * (1 - position)));
    }

    private void regulator(String name, PlacedPart part, Map<String, String> at) {
        String held = insideNode();
        line("E" + name, at.get("in"), held, at.get("in"), at.get("ground"), "1");
        line("V" + name, at.get("out"), held, value(part, PartValue.VOLTS));
        if (part.values().getOrDefault(PartValue.QUIESCENT, 0.0) > 0) {
            line("I" + name, at.get("in"), at.get("ground"), value(part, PartValue.QUIESCENT));
        }
    }

    private void copper(String name, PlacedPart part, Map<String, String> at) {
        Copper copper = Copper.of(part);
        int count = 0;
        for (Copper.Section section : copper.sections()) {
            count++;
            for (String conductor : part.kind().terminals()) {
                resistor(
                        name + "_" + conductor + count,
                        point(part, conductor, section.from(), at),
                        point(part, conductor, section.to(), at),
                        section.ohms(),
                        number(section.ohms()));
            }
        }
        for (int tap = 1; tap <= copper.taps(); tap++) {
            boolean draws = part.values().containsKey(PartValue.AMPS);
            line(
                    (draws ? "I" : "R") + name + "_" + tap,
                    point(part, "plus", tap, at),
                    point(part, "minus", tap, at),
                    value(part, draws ? PartValue.AMPS : PartValue.LOAD_OHMS));
        }
    }

    private String point(PlacedPart part, String conductor, int point, Map<String, String> at) {
        String name = Copper.node(part, conductor, point);
        return at.containsKey(name) ? at.get(name) : node.get(name);
    }

    private static double cableOhms(PlacedPart part) {
        return CopperWire.ohmsPerMetre(part.values().get(PartValue.GAUGE)).orElseThrow()
                * part.values().get(PartValue.METRES);
    }

    private String insideNode() {
        inside++;
        return "x" + inside;
    }

    private String value(PlacedPart part, PartValue name) {
        return number(part.values().get(name));
    }

    private String number(double value) {
        return open ? blank(language) : numbers.apply(value).toLowerCase(Locale.ROOT);
    }

    private void line(String... words) {
        lines.add(String.join(" ", words));
    }
}
