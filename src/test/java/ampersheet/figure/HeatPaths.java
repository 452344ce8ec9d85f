package ampersheet.figure;

import ampersheet.formula.Symbol;
import ampersheet.thermal.HeatNetwork;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Heat networks of many shapes with labels as a template gives them. */
final class HeatPaths {
    private final List<HeatNetwork.Ambient> ambients = new ArrayList<>();
    private final List<HeatNetwork.Node> nodes = new ArrayList<>();
    private final List<HeatNetwork.Resistance> resistances = new ArrayList<>();
    private final List<HeatNetwork.Loss> losses = new ArrayList<>();
    private final Map<String, Label> labels = new LinkedHashMap<>();

    record Laid(HeatNetwork network, Map<String, Label> labels) {}

    private HeatPaths ambient(String name, String symbol, String text) {
        ambients.add(new HeatNetwork.Ambient(name, 298.15));
        return label(name, symbol, text);
    }

    private HeatPaths node(String name, String symbol, String text) {
        nodes.add(new HeatNetwork.Node(name, 0, 0));
        return label(name, symbol, text);
    }

    private HeatPaths store(String name, String symbol, String text, String capacity) {
        nodes.add(new HeatNetwork.Node(name, 12, 298.15));
        labels.put(HeatFigure.capacityOf(name), new Label("C", List.of(line("C", capacity))));
        return label(name, symbol, text);
    }

    private HeatPaths resistance(String name, String from, String to, String symbol, String text) {
        resistances.add(new HeatNetwork.Resistance(name, from, to, 1));
        return label(name, symbol, text);
    }

    private HeatPaths loss(String name, String into, String symbol, String text) {
        losses.add(new HeatNetwork.Loss(name, into, t -> 1));
        return label(name, symbol, text);
    }

    private HeatPaths label(String name, String symbol, String text) {
        labels.put(name, new Label(name, symbol.isEmpty() ? List.of() : List.of(line(symbol, text))));
        return this;
    }

    private static Label.Line line(String symbol, String text) {
        return new Label.Line(Optional.of(new Symbol(symbol.substring(0, 1), symbol.substring(1))), text);
    }

    private Laid laid() {
        return new Laid(new HeatNetwork(ambients, nodes, resistances, losses), labels);
    }

    static Map<String, Laid> all() {
        Map<String, Laid> all = new LinkedHashMap<>();
        all.put(
                "single",
                new HeatPaths()
                        .ambient("air", "Ta", "=\u00A025\u00A0°C")
                        .node("junction", "TJ", "")
                        .resistance("theta", "junction", "air", "θJA", "=\u00A062\u00A0K/W")
                        .loss("heat", "junction", "P", "")
                        .laid());
        all.put(
                "chain",
                new HeatPaths()
                        .ambient("air", "Ta", "=\u00A040\u00A0°C")
                        .node("junction", "TJ", "")
                        .node("case", "TC", "")
                        .node("sink", "TS", "=\u00A078\u00A0°C")
                        .resistance("RJC", "junction", "case", "θJC", "=\u00A01.5\u00A0K/W")
                        .resistance("RCS", "case", "sink", "θCS", "=\u00A00.5\u00A0K/W")
                        .resistance("RSA", "sink", "air", "θSA", "")
                        .loss("PD", "junction", "P", "=\u00A012.5\u00A0W")
                        .laid());
        all.put(
                "parallel",
                new HeatPaths()
                        .ambient("air", "Ta", "=\u00A025\u00A0°C")
                        .node("junction", "TJ", "")
                        .node("case", "TC", "")
                        .resistance("RJC", "junction", "case", "θJC", "=\u00A05\u00A0K/W")
                        .resistance("RCA", "case", "air", "θCA", "=\u00A050\u00A0K/W")
                        .resistance("RJB", "junction", "air", "θJB", "=\u00A080\u00A0K/W")
                        .loss("PD", "junction", "P", "=\u00A01\u00A0W")
                        .laid());
        all.put(
                "two on one sink",
                new HeatPaths()
                        .ambient("air", "Ta", "=\u00A025\u00A0°C")
                        .node("junction 1", "T1", "")
                        .node("junction 2", "T2", "")
                        .node("sink", "TS", "")
                        .resistance("R1", "junction 1", "sink", "θ1", "=\u00A03.1\u00A0K/W")
                        .resistance("R2", "junction 2", "sink", "θ2", "=\u00A04.2\u00A0K/W")
                        .resistance("RSA", "sink", "air", "θSA", "=\u00A06\u00A0K/W")
                        .loss("P1", "junction 1", "P1", "=\u00A04\u00A0W")
                        .loss("P2", "junction 2", "P2", "=\u00A06\u00A0W")
                        .laid());
        all.put(
                "separate",
                new HeatPaths()
                        .ambient("air", "Ta", "=\u00A025\u00A0°C")
                        .node("diode", "TD", "")
                        .resistance("RD", "diode", "air", "θ", "=\u00A045\u00A0K/W")
                        .loss("PD", "diode", "PD", "")
                        .node("MOSFET", "TM", "")
                        .resistance("RM", "MOSFET", "air", "θ", "=\u00A045\u00A0K/W")
                        .loss("PM", "MOSFET", "PM", "")
                        .laid());
        all.put(
                "warm-up",
                new HeatPaths()
                        .ambient("air", "Ta", "=\u00A021\u00A0°C")
                        .store("plate", "T0", "=\u00A021\u00A0°C", "=\u00A0120\u00A0J/K")
                        .resistance("theta", "plate", "air", "θ", "=\u00A05.6\u00A0K/W")
                        .loss("heat", "plate", "P", "=\u00A09\u00A0W")
                        .laid());
        all.put(
                "cooling",
                new HeatPaths()
                        .ambient("air", "Ta", "=\u00A021\u00A0°C")
                        .store("sink", "T0", "=\u00A085\u00A0°C", "=\u00A0120\u00A0J/K")
                        .resistance("theta", "sink", "air", "θ", "=\u00A05.6\u00A0K/W")
                        .laid());
        all.put(
                "stores in a row",
                new HeatPaths()
                        .ambient("air", "Ta", "=\u00A021\u00A0°C")
                        .store("junction", "TJ", "", "=\u00A00.02\u00A0J/K")
                        .store("case", "TC", "", "=\u00A01.6\u00A0J/K")
                        .resistance("RJC", "junction", "case", "θJC", "=\u00A05.6\u00A0K/W")
                        .resistance("RCA", "case", "air", "θCA", "=\u00A040\u00A0K/W")
                        .resistance("RJA", "junction", "air", "θJA", "=\u00A0400\u00A0K/W")
                        .loss("heat", "junction", "P", "=\u00A09\u00A0W")
                        .laid());
        all.put(
                "two ambients",
                new HeatPaths()
                        .ambient("air", "Ta", "=\u00A021\u00A0°C")
                        .ambient("water", "Tw", "=\u00A012\u00A0°C")
                        .node("plate", "TP", "")
                        .resistance("RA", "plate", "air", "θA", "=\u00A05.6\u00A0K/W")
                        .resistance("RW", "plate", "water", "θW", "=\u00A00.4\u00A0K/W")
                        .loss("heat", "plate", "P", "=\u00A090\u00A0W")
                        .laid());
        all.put(
                "coupled",
                new HeatPaths()
                        .ambient("air", "Ta", "=\u00A021\u00A0°C")
                        .node("left", "T1", "")
                        .node("right", "T2", "")
                        .resistance("R1", "left", "air", "θ1", "=\u00A020\u00A0K/W")
                        .resistance("R2", "right", "air", "θ2", "=\u00A030\u00A0K/W")
                        .resistance("R12", "left", "right", "θ12", "=\u00A010\u00A0K/W")
                        .loss("P1", "left", "P1", "=\u00A02\u00A0W")
                        .loss("P2", "right", "P2", "=\u00A01\u00A0W")
                        .laid());
        return all;
    }
}
