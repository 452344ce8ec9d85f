package ampersheet.figure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.source.Languages;
import ampersheet.thermal.HeatNetwork;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

class HeatFigureTest {
    private static Figure draw(HeatPaths.Laid laid, SymbolStyle style) {
        return HeatFigure.draw(
                "Heat path",
                laid.network(),
                laid.labels(),
                style,
                new Figure.Setting("q1", Figure.PAGE_WIDTH, Languages.ENGLISH));
    }

    @Test
    void everySvgIsWellFormedBoldEnoughAndFitsThePage() {
        HeatPaths.all().forEach((name, laid) -> {
            for (SymbolStyle style : SymbolStyle.values()) {
                Figure figure = draw(laid, style);
                Audit.svg(figure, "q1", name + " " + style);
                assertTrue(Double.parseDouble(SvgText.parse(figure.svg()).getAttribute("width")) <= 640, name);
            }
        });
    }

    @Test
    void labelsStandClearOfEachOtherAndOfTheDrawing() {
        HeatPaths.all().forEach((name, laid) -> {
            for (SymbolStyle style : SymbolStyle.values()) {
                Audit.clear(
                        HeatFigure.layOut(laid.network(), laid.labels(), style, Figure.PAGE_WIDTH)
                                .drawing(),
                        name + " " + style);
            }
        });
    }

    @Test
    void lossesStandLeftAndAmbientsRightOfAllOthers() {
        HeatPaths.all().forEach((name, laid) -> {
            HeatLanes lanes = new HeatLanes(laid.network());
            for (HeatLanes.Path path : lanes.paths()) {
                assertTrue(path.from() < path.to(), name + ": " + path);
            }
            for (HeatNetwork.Ambient ambient : laid.network().ambients()) {
                for (HeatNetwork.Node node : laid.network().nodes()) {
                    assertTrue(lanes.column(node.name()) < lanes.column(ambient.name()), name);
                }
            }
        });
    }

    @Test
    void theWordsCountOnlyWhatIsThere() {
        assertEquals(
                "A heat path of one thermal resistance, one heat capacity and one ambient, joined at one node.",
                draw(HeatPaths.all().get("cooling"), SymbolStyle.IEC).summary());
        assertEquals(
                "A heat path of one source of heat, one thermal resistance and one ambient, joined at one node.",
                draw(HeatPaths.all().get("single"), SymbolStyle.IEC).summary());
    }

    @Test
    void theLossesArrowPointsIntoTheNetwork() {
        Drawing drawing = HeatFigure.layOut(
                        HeatPaths.all().get("single").network(), Map.of(), SymbolStyle.IEC, Figure.PAGE_WIDTH)
                .drawing();
        Shape.Polygon head = (Shape.Polygon) drawing.shapes("heat").stream()
                .filter(shape -> shape instanceof Shape.Polygon)
                .findFirst()
                .orElseThrow();
        assertTrue(head.points().get(0).x() > head.points().get(1).x());
        assertTrue(drawing.bounds("heat").right() < drawing.bounds("theta").left());
    }

    /** Random networks: every path has its own lane, and no bar of one node lies on that of another. */
    @Test
    void pathsAndBarsOfRandomNetworksDoNotLieOnEachOther() {
        for (long seed = 1; seed <= 400; seed++) {
            HeatNetwork network = random(new Random(seed));
            HeatLanes lanes = new HeatLanes(network);
            List<HeatLanes.Path> paths = lanes.paths();
            assertEquals(network.losses().size() + network.resistances().size(), paths.size(), "seed " + seed);
            for (int i = 0; i < paths.size(); i++) {
                for (int j = 0; j < i; j++) {
                    HeatLanes.Path a = paths.get(i);
                    HeatLanes.Path b = paths.get(j);
                    assertTrue(
                            a.lane() != b.lane() || a.to() <= b.from() || b.to() <= a.from(),
                            "seed " + seed + ": " + a + " lies on " + b);
                }
            }
            List<String> nodes = lanes.nodes();
            for (int i = 0; i < nodes.size(); i++) {
                for (int j = 0; j < i; j++) {
                    int[] a = lanes.bar(nodes.get(i));
                    int[] b = lanes.bar(nodes.get(j));
                    assertTrue(
                            lanes.column(nodes.get(i)) != lanes.column(nodes.get(j)) || a[1] < b[0] || b[1] < a[0],
                            "seed " + seed + ": bars of " + nodes.get(i) + " and " + nodes.get(j));
                }
            }
        }
    }

    private static HeatNetwork random(Random random) {
        List<HeatNetwork.Node> nodes = new ArrayList<>();
        List<HeatNetwork.Resistance> resistances = new ArrayList<>();
        List<HeatNetwork.Loss> losses = new ArrayList<>();
        int count = 1 + random.nextInt(5);
        for (int i = 0; i < count; i++) {
            nodes.add(new HeatNetwork.Node("n" + i, random.nextInt(3) == 0 ? 1 : 0, 0));
            String to = i == 0 || random.nextInt(3) == 0 ? "air" : "n" + random.nextInt(i);
            resistances.add(new HeatNetwork.Resistance("R" + i, "n" + i, to, 1));
            if (random.nextInt(2) == 0) {
                losses.add(new HeatNetwork.Loss("P" + i, "n" + i, t -> 1));
            }
        }
        for (int i = random.nextInt(3); i > 0 && count > 1; i--) {
            int a = random.nextInt(count);
            int b = (a + 1 + random.nextInt(count - 1)) % count;
            resistances.add(new HeatNetwork.Resistance("X" + i, "n" + a, "n" + b, 1));
        }
        return new HeatNetwork(List.of(new HeatNetwork.Ambient("air", 300)), nodes, resistances, losses);
    }

    @Test
    void theTableReadBackIsTheNetwork() {
        HeatPaths.all().forEach((name, laid) -> {
            Map<String, String> read = new TreeMap<>();
            for (List<String> row : draw(laid, SymbolStyle.IEC).table().rows()) {
                read.put(row.get(0), row.get(2) + " to " + row.get(3));
            }
            Map<String, String> expected = new TreeMap<>();
            HeatNetwork network = laid.network();
            network.losses().forEach(loss -> expected.put(loss.name() + " (source of heat)", "none to " + loss.into()));
            network.resistances()
                    .forEach(resistance -> expected.put(
                            resistance.name() + " (thermal resistance)", resistance.from() + " to " + resistance.to()));
            network.nodes().forEach(node -> {
                expected.put(node.name() + " (node)", "none to none");
                if (node.capacity() > 0) {
                    expected.put(node.name() + " (heat capacity)", node.name() + " to none");
                }
            });
            network.ambients().forEach(ambient -> expected.put(ambient.name() + " (ambient)", "none to none"));
            assertEquals(expected, read, name);
        });
    }

    @Test
    void theWalkFollowsTheHeat() {
        Figure figure = draw(HeatPaths.all().get("parallel"), SymbolStyle.IEC);
        assertEquals(
                List.of(
                        "Heat from PD enters at junction.",
                        "From junction the path divides: RJC leads to case; RJB leads to air.",
                        "From case, RCA leads to air.",
                        "The ambient air takes the heat up without warming."),
                figure.walk());
    }

    @Test
    void theWordsAreTheSameForBothStylesOfSymbols() {
        HeatPaths.all().forEach((name, laid) -> {
            assertEquals(
                    draw(laid, SymbolStyle.IEC).table(),
                    draw(laid, SymbolStyle.IEEE).table(),
                    name);
            assertEquals(
                    draw(laid, SymbolStyle.IEC).walk(),
                    draw(laid, SymbolStyle.IEEE).walk(),
                    name);
        });
    }
}
