package ampersheet.circuit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.Supplier;

/** Takes the parts of a netlist apart into branches, each with one law, and refuses values that a part cannot have. */
final class Branches {
    private static final double LED_EMISSION = 2;
    private static final double DIODE_EMISSION = 1.8;
    private static final double SILICON_VOLTS = 0.7;
    private static final double BREAKDOWN_AMPS = 5e-3;
    private static final double BODY_DIODE_AMPS = 10e-3;
    private static final double KNEE_AMPS = 1e-3;

    private final Function<PlacedPart, Optional<Law>> capacitorLaw;
    private final Map<String, Integer> nodeNumber = new LinkedHashMap<>();
    private final List<Branch> branches = new ArrayList<>();
    private Optional<Outcome.Unfit> unfit = Optional.empty();
    private int index;
    private Netlist.Connected connected;

    /** @param capacitorLaw what each capacitor is at the moment in question; empty when it carries no current */
    Branches(Netlist netlist, Function<PlacedPart, Optional<Law>> capacitorLaw) {
        this.capacitorLaw = capacitorLaw;
        for (String node : netlist.nodes()) {
            nodeNumber.put(node, nodeNumber.size());
        }
        Map<String, Integer> names = new LinkedHashMap<>();
        for (index = 0; index < netlist.parts().size(); index++) {
            connected = netlist.parts().get(index);
            if (names.putIfAbsent(connected.part().name(), index) != null) {
                throw new IllegalArgumentException(
                        "two parts are named " + connected.part().name());
            }
            take();
        }
    }

    List<Branch> list() {
        return branches;
    }

    /** The first part with a value it cannot have. */
    Optional<Outcome.Unfit> unfit() {
        return unfit;
    }

    private void take() {
        switch (connected.part().kind()) {
            case SOURCE -> add("from", "to", new Law.Voltage(-value(PartValue.VOLTS)));
            case RESISTOR, LOAD -> add("from", "to", new Law.Resistance(atLeastZero(PartValue.OHMS), 0));
            case CABLE -> add("from", "to", new Law.Resistance(cableOhms(), 0));
            case SINK -> add("from", "to", new Law.Current(value(PartValue.AMPS)));
            case LED -> add("from", "to", diode(LED_EMISSION));
            case DIODE -> add("from", "to", diode(DIODE_EMISSION));
            case ZENER -> zener();
            case REFERENCE -> reference();
            case NMOS -> {
                add("drain", "source", channel(1));
                add("source", "drain", bodyDiode());
            }
            case PMOS -> {
                add("drain", "source", channel(-1));
                add("drain", "source", bodyDiode());
            }
            case NPN -> transistor();
            case SWITCH -> contact();
            case TRIMPOT -> trimpot();
            case REGULATOR -> regulator();
            case CAPACITOR -> capacitor();
            case STRIP, PANEL -> copper();
            case VOLTMETER -> {}
            case AMMETER -> add("from", "to", new Law.Voltage(0));
            case WIRE, GROUND, NODE ->
                throw new IllegalArgumentException(
                        "a netlist holds no " + connected.part().kind().word() + ": "
                                + connected.part().name());
        }
    }

    private void zener() {
        double amps = positive(PartValue.AMPS, BREAKDOWN_AMPS);
        add("from", "to", new Law.Conducting(Junction.through(SILICON_VOLTS, amps, 1, 0)));
        add("to", "from", breakdown(amps));
    }

    private void reference() {
        double minimum = atLeastZero(PartValue.MINIMUM, 0);
        add("from", "to", new Law.Conducting(Junction.through(SILICON_VOLTS, BREAKDOWN_AMPS, 1, 0)));
        if (minimum > 0) {
            add("to", "from", new Law.Resistance(positive(PartValue.VOLTS) / minimum, 0));
        }
        double slope = atLeastZero(PartValue.SLOPE, 0);
        // The knee has the stated voltage at KNEE_AMPS with no part of it in the slope, which starts at the minimum.
        add(
                "to",
                "from",
                new Law.Conducting(Junction.knee(positive(PartValue.VOLTS) + slope * KNEE_AMPS, KNEE_AMPS, slope)));
    }

    private void transistor() {
        add(
                "base",
                "emitter",
                new Law.Conducting(Junction.through(positive(PartValue.VOLTS), positive(PartValue.AMPS), 1, 0)));
        add("collector", "emitter", new Law.Gain(branches.size() - 1, positive(PartValue.GAIN)));
        // Collector-emitter voltage below saturation makes this junction conduct: −v passes its knee at −saturation.
        add("emitter", "collector", saturation());
    }

    private void contact() {
        double closed = value(PartValue.CLOSED);
        check(closed == 0 || closed == 1, () -> "has closed = " + closed + "; needs 1 (closed) or 0 (open)");
        if (closed == 1) {
            add("from", "to", new Law.Voltage(0));
        }
    }

    private void trimpot() {
        double position = value(PartValue.POSITION);
        check(position >= 0 && position <= 1, () -> "has position " + position + "; needs 0 to 1");
        double ohms = atLeastZero(PartValue.OHMS);
        add("from", "wiper", new Law.Resistance(position * ohms, 0));
        add("wiper", "to", new Law.Resistance((1 - position) * ohms, 0));
    }

    private void regulator() {
        add("in", "out", new Law.Regulation(node("out"), node("ground"), value(PartValue.VOLTS)));
        double quiescent = atLeastZero(PartValue.QUIESCENT, 0);
        if (quiescent > 0) {
            add("in", "ground", new Law.Current(quiescent));
        }
        atLeastZero(PartValue.DROPOUT, 0);
    }

    private void capacitor() {
        positive(PartValue.FARADS);
        capacitorLaw.apply(connected.part()).ifPresent(law -> add("from", "to", law));
    }

    private void copper() {
        PlacedPart part = connected.part();
        double ohms = positive(PartValue.OHMS);
        if (part.kind() == PartKind.PANEL) {
            atLeastZero(PartValue.BUS);
            positive(PartValue.CROSS, ohms);
        }
        Optional<String> fault = Copper.fault(part);
        check(fault.isEmpty(), fault::orElseThrow);
        if (unfit.isPresent()) {
            return;
        }
        Law load = part.values().containsKey(PartValue.AMPS)
                ? new Law.Current(value(PartValue.AMPS))
                : new Law.Resistance(positive(PartValue.LOAD_OHMS), 0);
        Copper copper = Copper.of(part);
        for (Copper.Section section : copper.sections()) {
            Law law = new Law.Resistance(section.ohms(), 0);
            add(Copper.node(part, "plus", section.from()), Copper.node(part, "plus", section.to()), law);
            add(Copper.node(part, "minus", section.to()), Copper.node(part, "minus", section.from()), law);
        }
        for (int tap = 1; tap <= copper.taps(); tap++) {
            add(Copper.node(part, "plus", tap), Copper.node(part, "minus", tap), load);
        }
    }

    private double cableOhms() {
        double metres = atLeastZero(PartValue.METRES);
        OptionalDouble ohmsPerMetre = CopperWire.ohmsPerMetre(value(PartValue.GAUGE));
        check(
                ohmsPerMetre.isPresent(),
                () -> "has gauge " + value(PartValue.GAUGE) + "; the wire table holds " + CopperWire.gauges());
        return ohmsPerMetre.orElse(1) * metres;
    }

    private Law diode(double emission) {
        double volts = positive(PartValue.VOLTS);
        double amps = positive(PartValue.AMPS);
        double series = atLeastZero(PartValue.SERIES, 0);
        check(
                amps * series < volts,
                () -> "has " + series + " ohms in series, which alone drop more than its " + volts + " V at " + amps
                        + " A");
        return new Law.Conducting(Junction.through(volts, amps, positive(PartValue.EMISSION, emission), series));
    }

    private Law breakdown(double amps) {
        double volts = positive(PartValue.VOLTS);
        double slope = atLeastZero(PartValue.SLOPE, 0);
        check(
                amps * slope < volts,
                () -> "has a slope of " + slope + " ohms, which alone drops more than its " + volts + " V at " + amps
                        + " A");
        return new Law.Conducting(Junction.knee(volts, amps, slope));
    }

    private Law channel(int sign) {
        return new Law.Channel(
                node("gate"), node("source"), sign, positive(PartValue.ON), positive(PartValue.THRESHOLD));
    }

    private static Law bodyDiode() {
        return new Law.Conducting(Junction.through(SILICON_VOLTS, BODY_DIODE_AMPS, 1, 0));
    }

    private Law saturation() {
        return new Law.Conducting(Junction.knee(-atLeastZero(PartValue.SATURATION), KNEE_AMPS, 0));
    }

    private void add(String from, String to, Law law) {
        branches.add(new Branch(index, from, node(from), to, node(to), law));
    }

    /** Of a terminal, or of a node inside the part. */
    private int node(String terminal) {
        return nodeNumber.get(connected.node().getOrDefault(terminal, terminal));
    }

    private double value(PartValue name) {
        Double value = connected.part().values().get(name);
        if (value == null) {
            throw new IllegalArgumentException("part " + connected.part().name() + " has no value " + name);
        }
        return finite(name, value);
    }

    private double finite(PartValue name, double value) {
        check(!Double.isNaN(value) && !Double.isInfinite(value), () -> "has no finite " + name);
        return value;
    }

    private double optional(PartValue name, double otherwise) {
        return finite(name, connected.part().values().getOrDefault(name, otherwise));
    }

    private double positive(PartValue name) {
        return above(value(name), name);
    }

    private double positive(PartValue name, double otherwise) {
        return above(optional(name, otherwise), name);
    }

    private double above(double value, PartValue name) {
        check(value > 0, () -> "has " + name + " = " + value + "; needs more than 0");
        return value;
    }

    private double atLeastZero(PartValue name) {
        return notBelow(value(name), name);
    }

    private double atLeastZero(PartValue name, double otherwise) {
        return notBelow(optional(name, otherwise), name);
    }

    private double notBelow(double value, PartValue name) {
        check(value >= 0, () -> "has " + name + " = " + value + "; needs 0 or more");
        return value;
    }

    /** @param fault worked out only where it is told: values are looked at for each solve of a search */
    private void check(boolean fits, Supplier<String> fault) {
        if (!fits && unfit.isEmpty()) {
            unfit = Optional.of(new Outcome.Unfit(connected.part().name(), fault.get()));
        }
    }
}
