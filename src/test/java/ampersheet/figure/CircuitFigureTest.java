package ampersheet.figure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.circuit.Netlist;
import ampersheet.circuit.PartKind;
import ampersheet.formula.Symbol;
import ampersheet.source.Languages;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

class CircuitFigureTest {
    private static Figure draw(Circuits.Drawn drawn, SymbolStyle style) {
        return CircuitFigure.draw(
                "Figure",
                drawn.schematic(),
                drawn.labels(),
                style,
                new Figure.Setting("q1", Figure.PAGE_WIDTH, Languages.ENGLISH));
    }

    @Test
    void theSchematicsDrawnHereHoldEveryKindOfPartAndNoDoubt() {
        EnumSet<PartKind> kinds = EnumSet.noneOf(PartKind.class);
        Circuits.all().forEach((name, drawn) -> {
            drawn.schematic().parts().forEach(part -> kinds.add(part.kind()));
            assertEquals(List.of(), drawn.schematic().netlist().doubts(), name);
        });
        assertEquals(EnumSet.allOf(PartKind.class), kinds);
    }

    @Test
    void everySvgIsWellFormedBoldEnoughAndWithoutColourScriptOrReference() {
        Circuits.all().forEach((name, drawn) -> {
            for (SymbolStyle style : SymbolStyle.values()) {
                Audit.svg(draw(drawn, style), "q1", name + " " + style);
            }
        });
    }

    @Test
    void labelsStandClearOfEachOtherAndOfTheDrawing() {
        Circuits.all().forEach((name, drawn) -> {
            for (SymbolStyle style : SymbolStyle.values()) {
                Audit.clear(
                        CircuitFigure.layOut(
                                drawn.schematic(),
                                drawn.labels(),
                                new CircuitFigure.Manner(style, Languages.ENGLISH),
                                Figure.PAGE_WIDTH),
                        name + " " + style);
            }
        });
    }

    /** Large print has 438 pixels for a drawing on A4. A ladder of four rungs needs more, and may be cut nowhere. */
    @Test
    void aNarrowPageGetsANarrowerDrawingWithItsLabelsClear() {
        Circuits.all().forEach((name, drawn) -> {
            Drawing narrow = CircuitFigure.layOut(
                    drawn.schematic(),
                    drawn.labels(),
                    new CircuitFigure.Manner(SymbolStyle.IEC, Languages.ENGLISH),
                    438);
            Audit.clear(narrow, name);
            assertTrue(
                    narrow.width() <= (name.equals("ladder") ? 480 : 438), name + " is " + narrow.width() + " px wide");
        });
    }

    @Test
    void labelsOfAnyLengthStandClear() {
        for (long seed = 1; seed <= 40; seed++) {
            Random random = new Random(seed);
            for (var entry : Circuits.all().entrySet()) {
                Map<String, Label> labels = new TreeMap<>();
                entry.getValue().labels().forEach((part, label) -> {
                    List<Label.Line> lines = new ArrayList<>();
                    for (int i = random.nextInt(4); i > 0; i--) {
                        lines.add(new Label.Line(
                                Optional.of(new Symbol("R", "x".repeat(random.nextInt(4)))),
                                "=\u00A0" + "1234567.89".substring(0, random.nextInt(7)) + "\u00A0kΩ"));
                    }
                    labels.put(part, new Label(part, lines));
                });
                SymbolStyle style = SymbolStyle.values()[random.nextInt(2)];
                Audit.clear(
                        CircuitFigure.layOut(
                                entry.getValue().schematic(),
                                labels,
                                new CircuitFigure.Manner(style, Languages.ENGLISH),
                                Figure.PAGE_WIDTH),
                        entry.getKey() + " " + style + " seed " + seed);
            }
        }
    }

    @Test
    void figuresFitAnA4PageAndTheUsualOnesStaySmall() {
        Circuits.all().forEach((name, drawn) -> {
            double width = Double.parseDouble(
                    SvgText.parse(draw(drawn, SymbolStyle.IEC).svg()).getAttribute("width"));
            assertTrue(width <= 640, name + " is " + width + " px wide");
        });
    }

    @Test
    void theWordsAreTheSameForBothStylesOfSymbols() {
        Circuits.all().forEach((name, drawn) -> {
            Figure iec = draw(drawn, SymbolStyle.IEC);
            Figure ieee = draw(drawn, SymbolStyle.IEEE);
            assertEquals(iec.table(), ieee.table(), name);
            assertEquals(iec.walk(), ieee.walk(), name);
            assertEquals(iec.summary(), ieee.summary(), name);
            assertFalse(iec.svg().equals(ieee.svg()), name);
        });
    }

    @Test
    void theTableReadBackIsTheNetlist() {
        Circuits.all().forEach((name, drawn) -> {
            Netlist netlist = drawn.schematic().netlist();
            Figure.Table table = draw(drawn, SymbolStyle.IEC).table();
            assertEquals(List.of("Component", "Value", "From node", "To node", "Polarity"), table.head());
            Map<String, Map<String, String>> read = new LinkedHashMap<>();
            Map<String, Map<String, String>> expected = new LinkedHashMap<>();
            for (List<String> row : table.rows()) {
                read.put(row.get(0), TableReader.terminals(row));
            }
            for (Netlist.Connected connected : netlist.parts()) {
                expected.put(
                        connected.part().name() + " (" + new PartWords(Languages.ENGLISH).name(connected.part()) + ")",
                        new TreeMap<>(connected.node()));
            }
            assertEquals(expected, read, name);
        });
    }

    /** Understands a row as a listener would: by the component's kind and the words of the polarity. */
    private static final class TableReader {
        static Map<String, String> terminals(List<String> row) {
            String component = row.get(0);
            String kind = component.substring(component.indexOf('(') + 1, component.length() - 1);
            String from = row.get(2);
            String to = row.get(3);
            Map<String, String> said = new TreeMap<>();
            for (String phrase : row.get(4).split("[,;] ")) {
                String[] roleAndNode = phrase.split(" at ");
                if (roleAndNode.length == 2) {
                    said.put(roleAndNode[0], roleAndNode[1]);
                }
            }
            return switch (kind) {
                case "voltage source" -> {
                    assertEquals(to, said.get("plus"));
                    yield new TreeMap<>(Map.of("from", from, "to", to));
                }
                case "LED", "diode", "Zener diode", "voltage reference" ->
                    new TreeMap<>(Map.of("from", said.get("anode"), "to", said.get("cathode")));
                case "current sink" -> {
                    assertEquals("current flows from " + from + " to " + to, row.get(4));
                    yield new TreeMap<>(Map.of("from", from, "to", to));
                }
                case "strip of loads", "panel of pixels" ->
                    new TreeMap<>(Map.of("plus", said.get("plus"), "minus", said.get("minus")));
                case "voltmeter", "ammeter" -> new TreeMap<>(Map.of("from", said.get("plus"), "to", to));
                case "N-channel MOSFET", "P-channel MOSFET" ->
                    new TreeMap<>(
                            Map.of("drain", said.get("drain"), "gate", said.get("gate"), "source", said.get("source")));
                case "NPN transistor" ->
                    new TreeMap<>(Map.of(
                            "collector",
                            said.get("collector"),
                            "base",
                            said.get("base"),
                            "emitter",
                            said.get("emitter")));
                case "trimming potentiometer" ->
                    new TreeMap<>(Map.of("from", from, "to", to, "wiper", said.get("wiper")));
                case "linear regulator" ->
                    new TreeMap<>(
                            Map.of("in", said.get("input"), "out", said.get("output"), "ground", said.get("ground")));
                default -> new TreeMap<>(Map.of("from", from, "to", to));
            };
        }
    }

    @Test
    void valuesInWordsAreTheLabelsAndNothingElse() {
        Circuits.all().forEach((name, drawn) -> {
            for (List<String> row : draw(drawn, SymbolStyle.IEC).table().rows()) {
                String part = row.get(0).substring(0, row.get(0).indexOf(" ("));
                List<Label.Line> lines = drawn.labels().containsKey(part)
                        ? drawn.labels().get(part).lines()
                        : List.of();
                String expected = lines.isEmpty()
                        ? "not stated"
                        : String.join(
                                "; ",
                                lines.stream()
                                        .map(line ->
                                                line.text().isEmpty() ? line.plain() + " to be found" : line.plain())
                                        .toList());
                assertEquals(expected, row.get(1), name);
            }
        });
    }

    @Test
    void theWalkLeadsFromPlusThroughThePartsToMinus() {
        Figure figure = draw(Circuits.all().get("indicator"), SymbolStyle.IEC);
        assertEquals(
                "A circuit of one voltage source, one resistor and one LED, joined at three nodes.", figure.summary());
        assertEquals(
                List.of(
                        "Start at the plus of V1, node 1.",
                        "From node 1, R1 leads to node 2.",
                        "From node 2, D1 leads, anode first, to node ground.",
                        "Node ground is the minus of V1: the path is closed.",
                        "Node ground is the 0 V reference and joins the minus of V1 and the cathode of D1.",
                        "Node 1 joins the plus of V1 and the left end of R1.",
                        "Node 2 joins the right end of R1 and the anode of D1."),
                figure.walk());
    }

    @Test
    void theWalkNamesEveryPart() {
        Circuits.all().forEach((name, drawn) -> {
            Figure figure = draw(drawn, SymbolStyle.IEC);
            String words = " " + String.join(" ", figure.walk()).replaceAll("[.,;:]", " ") + " ";
            for (Netlist.Connected connected : drawn.schematic().netlist().parts()) {
                assertTrue(
                        words.contains(" " + connected.part().name() + " "),
                        name + ": " + connected.part().name());
            }
        });
    }

    @Test
    void aHostileNameStaysText() {
        String name = "R\"><script>alert(1)</script>&\u0001";
        Circuits.Drawn drawn = new Circuits()
                .part(PartKind.SOURCE, "V1", 0, 0, 0, 4)
                .part(PartKind.RESISTOR, name, 0, 4, 4, 4)
                .wire(4, 4, 4, 0)
                .wire(4, 0, 0, 0)
                .label(name, "", "<b>&amp;")
                .drawn();
        Figure figure = CircuitFigure.draw(
                "<title>",
                drawn.schematic(),
                drawn.labels(),
                SymbolStyle.IEC,
                new Figure.Setting("q1", Figure.PAGE_WIDTH, Languages.ENGLISH));
        Audit.svg(figure, "q1", "hostile");
        assertTrue(SvgText.parse(figure.svg()).getTextContent().contains("R\"><script>alert(1)</script>&\uFFFD"));
    }

    @Test
    void theSameDrawingIsTheSameTextInAnyLocale() {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.ROOT);
            List<String> first = Circuits.all().values().stream()
                    .map(drawn -> draw(drawn, SymbolStyle.IEC).svg())
                    .toList();
            Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
            assertEquals(
                    first,
                    Circuits.all().values().stream()
                            .map(drawn -> draw(drawn, SymbolStyle.IEC).svg())
                            .toList());
        } finally {
            Locale.setDefault(before);
        }
    }
}
