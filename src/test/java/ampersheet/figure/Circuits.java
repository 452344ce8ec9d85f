package ampersheet.figure;

import ampersheet.circuit.GridPoint;
import ampersheet.circuit.PartKind;
import ampersheet.circuit.PartValue;
import ampersheet.circuit.PlacedPart;
import ampersheet.circuit.Schematic;
import ampersheet.formula.Symbol;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Schematics of many shapes, every kind of part among them, with labels as a template gives them. */
final class Circuits {
    private final List<PlacedPart> parts = new ArrayList<>();
    private final Map<String, Label> labels = new LinkedHashMap<>();

    record Drawn(Schematic schematic, Map<String, Label> labels) {}

    /** @param ends x and y of each terminal, in the kind's order */
    Circuits part(PartKind kind, String name, int... ends) {
        Map<String, GridPoint> at = new TreeMap<>();
        for (int i = 0; i < kind.terminals().size(); i++) {
            at.put(kind.terminals().get(i), new GridPoint(ends[2 * i], ends[2 * i + 1]));
        }
        Map<PartValue, Double> values = new TreeMap<>();
        kind.needed().forEach(value -> values.put(value, 1.0));
        parts.add(new PlacedPart(kind, name, at, values));
        return this;
    }

    /** One of which something is said in words. */
    Circuits part(PartKind kind, String name, Map<String, String> words, int... ends) {
        part(kind, name, ends);
        PlacedPart plain = parts.remove(parts.size() - 1);
        parts.add(new PlacedPart(kind, name, plain.ends(), plain.values(), words));
        return this;
    }

    /** A strip or panel {@code L1}. */
    Circuits copper(PartKind kind, String feed, Map<PartValue, Double> counts, int... ends) {
        part(kind, "L1", ends);
        PlacedPart plain = parts.remove(parts.size() - 1);
        Map<PartValue, Double> values = new TreeMap<>(plain.values());
        values.putAll(counts);
        parts.add(new PlacedPart(kind, "L1", plain.ends(), values, Map.of("feed", feed)));
        return this;
    }

    Circuits wire(int... ends) {
        return part(PartKind.WIRE, "wire" + parts.size(), ends);
    }

    Circuits label(String part, String... symbolsAndTexts) {
        List<Label.Line> lines = new ArrayList<>();
        for (int i = 0; i < symbolsAndTexts.length; i += 2) {
            String name = symbolsAndTexts[i];
            lines.add(new Label.Line(
                    name.isEmpty()
                            ? Optional.empty()
                            : Optional.of(new Symbol(name.substring(0, 1), name.substring(1))),
                    symbolsAndTexts[i + 1]));
        }
        labels.put(part, new Label(part, lines));
        return this;
    }

    Drawn drawn() {
        return new Drawn(new Schematic(parts), labels);
    }

    static Map<String, Drawn> all() {
        Map<String, Drawn> all = new LinkedHashMap<>();
        all.put(
                "indicator",
                new Circuits()
                        .part(PartKind.SOURCE, "V1", 0, 0, 0, 4)
                        .part(PartKind.RESISTOR, "R1", 0, 4, 4, 4)
                        .part(PartKind.LED, "D1", 4, 4, 4, 0)
                        .wire(4, 0, 0, 0)
                        .part(PartKind.GROUND, "gnd", 0, 0)
                        .label("V1", "Vs", "=\u00A09\u00A0V")
                        .label("R1", "R", "")
                        .label("D1", "Vf", "=\u00A02.1\u00A0V", "If", "=\u00A010\u00A0mA")
                        .drawn());
        all.put(
                "divider",
                new Circuits()
                        .part(PartKind.SOURCE, "V1", 0, 0, 0, 8)
                        .wire(0, 8, 4, 8)
                        .part(PartKind.RESISTOR, "R1", 4, 8, 4, 4)
                        .part(PartKind.RESISTOR, "R2", 4, 4, 4, 0)
                        .wire(0, 0, 4, 0)
                        .wire(4, 4, 8, 4)
                        .part(PartKind.RESISTOR, "RL", 8, 4, 8, 0)
                        .wire(4, 0, 8, 0)
                        .part(PartKind.NODE, "out", 8, 4)
                        .part(PartKind.GROUND, "gnd", 4, 0)
                        .label("V1", "Vin", "=\u00A012.5\u00A0V")
                        .label("R1", "R1", "=\u00A04.7\u00A0kΩ")
                        .label("R2", "R2", "=\u00A010\u00A0kΩ")
                        .label("RL", "RL", "=\u00A0100\u00A0kΩ")
                        .drawn());
        all.put(
                "unloaded",
                new Circuits()
                        .part(PartKind.NODE, "in", 0, 8)
                        .wire(0, 8, 4, 8)
                        .part(PartKind.RESISTOR, "R1", 4, 8, 4, 4)
                        .part(PartKind.RESISTOR, "R2", 4, 4, 4, 0)
                        .wire(4, 4, 8, 4)
                        .part(PartKind.NODE, "out", 8, 4)
                        .part(PartKind.GROUND, "gnd", 4, 0)
                        .part(PartKind.SOURCE, "V1", 0, 4, 0, 8)
                        .part(PartKind.GROUND, "gnd2", 0, 4)
                        .label("V1", "Vin", "=\u00A05\u00A0V")
                        .label("R1", "R1", "=\u00A04.7\u00A0kΩ")
                        .label("R2", "R2", "")
                        .drawn());
        all.put("three-strings", strings(3));
        all.put(
                "shunt",
                new Circuits()
                        .part(PartKind.SOURCE, "V1", 0, 0, 0, 4)
                        .part(PartKind.RESISTOR, "Rs", 0, 4, 5, 4)
                        .part(PartKind.ZENER, "D1", 5, 0, 5, 4)
                        .wire(5, 4, 9, 4)
                        .part(PartKind.LOAD, "motor", 9, 4, 9, 0)
                        .wire(0, 0, 5, 0)
                        .wire(5, 0, 9, 0)
                        .label("V1", "Vs", "=\u00A012\u00A0V")
                        .label("Rs", "Rs", "")
                        .label("D1", "Vz", "=\u00A05.1\u00A0V")
                        .label("motor", "RL", "=\u00A0470\u00A0Ω")
                        .drawn());
        all.put(
                "reference",
                new Circuits()
                        .part(PartKind.SOURCE, "V1", 0, 0, 0, 4)
                        .part(PartKind.RESISTOR, "Rs", 0, 4, 5, 4)
                        .part(PartKind.REFERENCE, "U1", 5, 0, 5, 4)
                        .wire(5, 4, 9, 4)
                        .part(PartKind.SINK, "I1", 9, 4, 9, 0)
                        .wire(0, 0, 5, 0)
                        .wire(5, 0, 9, 0)
                        .part(PartKind.NODE, "ref", 5, 4)
                        .part(PartKind.GROUND, "gnd", 5, 0)
                        .label("V1", "Vs", "=\u00A012\u00A0V")
                        .label("Rs", "Rs", "=\u00A01.2\u00A0kΩ")
                        .label("U1", "Vref", "=\u00A02.5\u00A0V")
                        .label("I1", "IL", "=\u00A02\u00A0mA")
                        .drawn());
        all.put(
                "low-side-switch",
                new Circuits()
                        .part(PartKind.SOURCE, "V1", 0, 0, 0, 10)
                        .wire(0, 10, 8, 10)
                        .part(PartKind.LOAD, "valve", 8, 10, 8, 6)
                        .part(PartKind.NMOS, "Q1", 8, 6, 6, 3, 8, 0)
                        .part(PartKind.RESISTOR, "RG", 2, 3, 6, 3)
                        .part(PartKind.NODE, "ctrl", 2, 3)
                        .wire(0, 0, 2, 0)
                        .wire(2, 0, 8, 0)
                        .part(PartKind.DIODE, "D1", 12, 6, 12, 10)
                        .wire(8, 10, 12, 10)
                        .wire(8, 6, 12, 6)
                        .part(PartKind.SOURCE, "V2", 2, 0, 2, 3)
                        .label("V1", "VM", "=\u00A024\u00A0V")
                        .label("valve", "I", "=\u00A01.5\u00A0A")
                        .label("Q1", "Ron", "=\u00A022\u00A0mΩ", "Vth", "=\u00A02\u00A0V")
                        .label("RG", "RG", "=\u00A0100\u00A0Ω")
                        .label("D1")
                        .label("V2", "VG", "=\u00A05\u00A0V")
                        .drawn());
        all.put(
                "high-side-switch",
                new Circuits()
                        .part(PartKind.SOURCE, "V1", 0, 0, 0, 8)
                        .wire(0, 8, 8, 8)
                        .part(PartKind.PMOS, "Q1", 8, 4, 6, 6, 8, 8)
                        .part(PartKind.RESISTOR, "RL", 8, 4, 8, 0)
                        .wire(0, 0, 5, 0)
                        .wire(5, 0, 8, 0)
                        .part(PartKind.RESISTOR, "RG", 5, 4, 5, 0)
                        .wire(5, 4, 5, 6)
                        .wire(5, 6, 6, 6)
                        .label("V1", "Vs", "=\u00A012\u00A0V")
                        .label("Q1", "Ron", "=\u00A045\u00A0mΩ")
                        .label("RL", "RL", "=\u00A08.2\u00A0Ω")
                        .label("RG", "RG", "=\u00A010\u00A0kΩ")
                        .drawn());
        all.put(
                "trimpot",
                new Circuits()
                        .part(PartKind.SOURCE, "V1", 0, 0, 0, 8)
                        .wire(0, 8, 5, 8)
                        .part(PartKind.RESISTOR, "R1", 5, 8, 5, 5)
                        .part(PartKind.TRIMPOT, "RV1", 5, 1, 5, 5, 8, 3)
                        .wire(5, 1, 5, 0)
                        .wire(0, 0, 5, 0)
                        .part(PartKind.NODE, "wiper", 8, 3)
                        .label("V1", "Vs", "=\u00A05\u00A0V")
                        .label("R1", "R1", "=\u00A02.2\u00A0kΩ")
                        .label("RV1", "RV1", "=\u00A010\u00A0kΩ", "x", "=\u00A00.3")
                        .drawn());
        all.put(
                "rheostat",
                new Circuits()
                        .part(PartKind.SOURCE, "V1", 0, 0, 0, 4)
                        .part(PartKind.TRIMPOT, "RV1", 0, 4, 4, 4, 4, 4)
                        .part(PartKind.RESISTOR, "R1", 4, 4, 8, 4)
                        .part(PartKind.LED, "D1", 8, 4, 8, 0)
                        .wire(8, 0, 0, 0)
                        .label("V1", "Vs", "=\u00A09\u00A0V")
                        .label("RV1", "Rmax", "=\u00A01\u00A0kΩ")
                        .label("R1", "R1", "=\u00A0220\u00A0Ω")
                        .label("D1", "Vf", "=\u00A02\u00A0V")
                        .drawn());
        all.put(
                "npn-switch",
                new Circuits()
                        .part(PartKind.SOURCE, "V1", 0, 0, 0, 10)
                        .part(PartKind.SWITCH, "S1", 0, 10, 4, 10)
                        .part(PartKind.SWITCH, "S2", 9, 8, 12, 8)
                        .part(PartKind.NODE, "probe", 12, 8)
                        .wire(4, 10, 9, 10)
                        .part(PartKind.RESISTOR, "RB", 4, 10, 4, 3)
                        .wire(4, 3, 6, 3)
                        .part(PartKind.NPN, "Q1", 9, 5, 6, 3, 9, 0)
                        .part(PartKind.LED, "D1", 9, 8, 9, 5)
                        .part(PartKind.AMMETER, "M1", 9, 10, 9, 8)
                        .wire(9, 0, 0, 0)
                        .label("V1", "Vs", "=\u00A05\u00A0V")
                        .label("S1")
                        .label("S2")
                        .label("RB", "RB", "=\u00A010\u00A0kΩ")
                        .label("Q1", "Vsat", "=\u00A00.2\u00A0V")
                        .label("D1", "Vf", "=\u00A02\u00A0V")
                        .label("M1")
                        .drawn());
        all.put(
                "regulator",
                new Circuits()
                        .part(PartKind.SOURCE, "V1", 0, 0, 0, 5)
                        .wire(0, 5, 3, 5)
                        .part(PartKind.REGULATOR, "U1", 3, 5, 9, 5, 6, 2)
                        .wire(6, 2, 6, 0)
                        .wire(9, 5, 12, 5)
                        .part(PartKind.RESISTOR, "RL", 12, 5, 12, 0)
                        .wire(0, 0, 3, 0)
                        .wire(3, 0, 6, 0)
                        .wire(6, 0, 12, 0)
                        .part(PartKind.CAPACITOR, "C1", 3, 5, 3, 0)
                        .part(PartKind.GROUND, "gnd", 6, 0)
                        .label("V1", "Vin", "=\u00A09\u00A0V")
                        .label("U1", "Vout", "=\u00A05\u00A0V")
                        .label("C1", "C1", "=\u00A0100\u00A0nF")
                        .label("RL", "RL", "=\u00A047\u00A0Ω")
                        .drawn());
        all.put(
                "meters",
                new Circuits()
                        .part(PartKind.SOURCE, "V1", 0, 0, 0, 4)
                        .part(PartKind.AMMETER, "M1", 0, 4, 4, 4)
                        .part(PartKind.RESISTOR, "R1", 4, 4, 4, 0)
                        .wire(4, 4, 8, 4)
                        .part(PartKind.VOLTMETER, "M2", 8, 4, 8, 0)
                        .wire(0, 0, 4, 0)
                        .wire(4, 0, 8, 0)
                        .label("V1", "Vs", "=\u00A09\u00A0V")
                        .label("M1")
                        .label("M2")
                        .label("R1", "R1", "=\u00A0330\u00A0Ω")
                        .drawn());
        all.put(
                "supply-wires",
                new Circuits()
                        .part(PartKind.SOURCE, "V1", 0, 0, 0, 6)
                        .part(PartKind.CABLE, "W1", 0, 6, 8, 6)
                        .part(PartKind.SINK, "L1", 8, 6, 8, 0)
                        .part(PartKind.CABLE, "W2", 8, 0, 0, 0)
                        .part(PartKind.GROUND, "gnd", 0, 0)
                        .label("V1", "Vs", "=\u00A05\u00A0V")
                        .label("W1", "g", "=\u00A022", "l", "=\u00A01.5\u00A0m")
                        .label("W2", "g", "=\u00A022", "l", "=\u00A01.5\u00A0m")
                        .label("L1", "I", "=\u00A01.8\u00A0A")
                        .drawn());
        for (String feed : List.of("start", "end", "both ends", "middle")) {
            all.put(
                    "strip-" + feed.replace(' ', '-'),
                    new Circuits()
                            .part(PartKind.SOURCE, "V1", 0, 0, 0, 6)
                            .wire(0, 6, 9, 6)
                            .copper(PartKind.STRIP, feed, Map.of(PartValue.TAPS, 30.0), 9, 6, 9, 0)
                            .wire(9, 0, 0, 0)
                            .part(PartKind.GROUND, "gnd", 0, 0)
                            .label("V1", "Vs", "=\u00A012\u00A0V")
                            .label("L1", "n", "=\u00A030", "I1", "=\u00A012\u00A0mA")
                            .drawn());
            all.put(
                    "panel-" + feed.replace(' ', '-'),
                    new Circuits()
                            .part(PartKind.SOURCE, "V1", 0, 0, 0, 10)
                            .wire(0, 10, 5, 10)
                            .copper(
                                    PartKind.PANEL,
                                    feed,
                                    Map.of(PartValue.COLUMNS, 24.0, PartValue.ROWS, 24.0),
                                    5,
                                    10,
                                    5,
                                    0)
                            .wire(5, 0, 0, 0)
                            .part(PartKind.GROUND, "gnd", 0, 0)
                            .label("V1", "Vs", "=\u00A05\u00A0V")
                            .label("L1", "c", "=\u00A024", "r", "=\u00A024")
                            .drawn());
        }
        all.put(
                "short-strip-lying",
                new Circuits()
                        .part(PartKind.SOURCE, "V1", 0, 0, 8, 0)
                        .copper(PartKind.STRIP, "middle", Map.of(PartValue.TAPS, 5.0), 8, 12, 0, 12)
                        .wire(0, 0, 0, 12)
                        .wire(8, 0, 8, 12)
                        .label("V1", "Vs", "=\u00A012\u00A0V")
                        .label("L1", "n", "=\u00A05")
                        .drawn());
        all.put("ladder", ladder(4));
        all.put(
                "tight",
                new Circuits()
                        .part(PartKind.SOURCE, "V1", 0, 0, 0, 2)
                        .part(PartKind.RESISTOR, "R1", 0, 2, 2, 2)
                        .part(PartKind.RESISTOR, "R2", 2, 2, 2, 0)
                        .wire(2, 0, 0, 0)
                        .wire(2, 2, 4, 2)
                        .part(PartKind.RESISTOR, "R3", 4, 2, 4, 0)
                        .wire(4, 0, 2, 0)
                        .label("V1", "Vs", "=\u00A09\u00A0V")
                        .label("R1", "R1", "=\u00A0330\u00A0Ω")
                        .label("R2", "R2", "=\u00A0330\u00A0Ω")
                        .label("R3", "R3", "=\u00A0330\u00A0Ω")
                        .drawn());
        all.put(
                "lying",
                new Circuits()
                        .part(PartKind.SOURCE, "V1", 0, 0, 4, 0)
                        .part(PartKind.LED, "D1", 4, 4, 8, 4)
                        .part(PartKind.DIODE, "D2", 4, 0, 8, 0)
                        .part(PartKind.ZENER, "D3", 8, 0, 12, 0)
                        .part(PartKind.CAPACITOR, "C1", 0, 4, 4, 4)
                        .part(PartKind.SINK, "I1", 8, 4, 12, 4)
                        .wire(0, 0, 0, 4)
                        .wire(12, 0, 12, 4)
                        .part(PartKind.LED, "D4", 12, 8, 8, 8)
                        .part(PartKind.LOAD, "fan", 8, 8, 3, 8)
                        .wire(12, 8, 12, 4)
                        .wire(3, 8, 0, 8)
                        .wire(0, 8, 0, 4)
                        .label("V1", "Vs", "=\u00A09\u00A0V")
                        .label("D1", "Vf", "=\u00A01.9\u00A0V")
                        .label("D2")
                        .label("D3", "Vz", "=\u00A03.3\u00A0V")
                        .label("C1", "C", "=\u00A010\u00A0µF")
                        .label("I1", "I", "=\u00A010\u00A0mA")
                        .label("D4")
                        .label("fan")
                        .drawn());
        return all;
    }

    private static Drawn strings(int count) {
        Circuits circuit =
                new Circuits().part(PartKind.SOURCE, "V1", 0, 0, 0, 8).label("V1", "Vs", "=\u00A012\u00A0V");
        for (int i = 1; i <= count; i++) {
            int x = 4 * i;
            circuit.wire(x - 4, 8, x, 8)
                    .wire(x - 4, 0, x, 0)
                    .part(PartKind.RESISTOR, "R" + i, x, 8, x, 4)
                    .part(PartKind.LED, "D" + i, x, 4, x, 0)
                    .label("R" + i, "R" + i, "=\u00A0" + 100 * i + "\u00A0Ω")
                    .label("D" + i, "V" + i, "=\u00A01.8\u00A0V");
        }
        return circuit.drawn();
    }

    private static Drawn ladder(int rungs) {
        Circuits circuit =
                new Circuits().part(PartKind.SOURCE, "V1", 0, 0, 0, 4).label("V1", "Vs", "=\u00A010\u00A0V");
        for (int i = 1; i <= rungs; i++) {
            int x = 4 * i;
            circuit.part(PartKind.RESISTOR, "R" + (2 * i - 1), x - 4, 4, x, 4)
                    .part(PartKind.RESISTOR, "R" + 2 * i, x, 4, x, 0)
                    .wire(x - 4, 0, x, 0)
                    .label("R" + (2 * i - 1), "", "1\u00A0kΩ")
                    .label("R" + 2 * i, "", "2.2\u00A0kΩ");
        }
        return circuit.drawn();
    }
}
