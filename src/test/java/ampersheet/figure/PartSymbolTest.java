package ampersheet.figure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.circuit.GridPoint;
import ampersheet.circuit.PartKind;
import ampersheet.circuit.PlacedPart;
import ampersheet.circuit.Schematic;
import ampersheet.source.Languages;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.BiConsumer;
import org.junit.jupiter.api.Test;

/**
 * Which way symbols point, from the drawn points. Shapes after IEC 60617 and IEEE 315, from memory: a diode's triangle
 * stands on the anode's side and its bar on the cathode's; an LED's arrows leave; the arrow of an N-channel MOSFET
 * points to the channel, that of a P-channel one away from it; an NPN transistor's emitter arrow points out.
 */
class PartSymbolTest {
    /** Two-terminal ends in the four directions: from and to. */
    private static final int[][] DIRECTIONS = {{0, 0, 4, 0}, {4, 0, 0, 0}, {0, 0, 0, 4}, {0, 4, 0, 0}};

    /** A part drawn alone, seen along the line from its first end to its opposite one. */
    private record Seen(List<Shape> shapes, Frame frame) {
        double u(Point point) {
            return frame.u(point);
        }

        double v(Point point) {
            return frame.v(point);
        }

        List<Shape.Polygon> polygons(boolean filled) {
            return shapes.stream()
                    .filter(s -> s instanceof Shape.Polygon p && p.filled() == filled)
                    .map(s -> (Shape.Polygon) s)
                    .toList();
        }

        List<Shape.Line> lines() {
            return shapes.stream()
                    .filter(s -> s instanceof Shape.Line)
                    .map(s -> (Shape.Line) s)
                    .toList();
        }

        double tipU(Shape.Polygon head) {
            return u(head.points().get(0));
        }

        double backU(Shape.Polygon head) {
            return (u(head.points().get(1)) + u(head.points().get(2))) / 2;
        }

        double tipV(Shape.Polygon head) {
            return v(head.points().get(0));
        }

        double backV(Shape.Polygon head) {
            return (v(head.points().get(1)) + v(head.points().get(2))) / 2;
        }
    }

    private static Seen seen(PartKind kind, SymbolStyle style, int... ends) {
        return seen(kind, Map.of(), style, ends);
    }

    private static Seen seen(PartKind kind, Map<String, String> words, SymbolStyle style, int... ends) {
        Circuits.Drawn drawn = new Circuits().part(kind, "X1", words, ends).drawn();
        Schematic schematic = drawn.schematic();
        Drawing drawing = new CircuitDrawing(
                        schematic,
                        Map.of(),
                        new CircuitFigure.Manner(style, Languages.ENGLISH),
                        new Spacing(List.copyOf(schematic.parts().get(0).ends().values()), Spacing.USUAL))
                .drawing();
        Spacing spacing =
                new Spacing(List.copyOf(schematic.parts().get(0).ends().values()), Spacing.USUAL);
        PlacedPart part = schematic.parts().get(0);
        GridPoint last = part.end(CircuitWords.last(part));
        return new Seen(
                drawing.shapes("X1"),
                Frame.between(spacing.pixel(part.end(CircuitWords.first(part))), spacing.pixel(last)));
    }

    private static void inEveryDirection(PartKind kind, BiConsumer<SymbolStyle, Seen> check) {
        for (SymbolStyle style : SymbolStyle.values()) {
            for (int[] ends : DIRECTIONS) {
                check.accept(style, seen(kind, style, ends));
            }
        }
    }

    private static Shape.Polygon triangle(Seen seen) {
        return seen.polygons(false).stream()
                .filter(polygon -> polygon.points().size() == 3)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void theTriangleStandsOnTheAnodeAndPointsAtTheCathodesBar() {
        for (PartKind kind : List.of(PartKind.DIODE, PartKind.LED, PartKind.ZENER, PartKind.REFERENCE)) {
            inEveryDirection(kind, (style, seen) -> {
                List<Point> points = triangle(seen).points();
                assertTrue(seen.u(points.get(1)) > 0, kind + " apex");
                assertTrue(seen.u(points.get(0)) < 0 && seen.u(points.get(2)) < 0, kind + " base");
                assertEquals(0, seen.v(points.get(1)), 1e-9);
                boolean bar = seen.lines().stream().anyMatch(line -> {
                    List<Point> ends = line.points();
                    for (int i = 1; i < ends.size(); i++) {
                        if (Math.abs(seen.u(ends.get(i)) - seen.u(points.get(1))) < 1e-9
                                && Math.abs(seen.u(ends.get(i - 1)) - seen.u(points.get(1))) < 1e-9
                                && seen.v(ends.get(i)) * seen.v(ends.get(i - 1)) < 0) {
                            return true;
                        }
                    }
                    return false;
                });
                assertTrue(bar, kind + " " + style + " has no bar across at the apex");
            });
        }
    }

    @Test
    void anLedsTwoArrowsLeaveIt() {
        inEveryDirection(PartKind.LED, (style, seen) -> {
            List<Shape.Polygon> heads = seen.polygons(true);
            assertEquals(2, heads.size());
            for (Shape.Polygon head : heads) {
                assertTrue(Math.abs(seen.tipV(head)) > Math.abs(seen.backV(head)), style.name());
                assertTrue(Math.abs(seen.tipV(head)) > 15, style.name());
            }
        });
    }

    @Test
    void aZenersFootPointsToTheAnodeInIecAndItsEndsBendApartInIeee() {
        inEveryDirection(PartKind.ZENER, (style, seen) -> {
            Shape.Line bar = seen.lines().stream()
                    .filter(line -> line.points().size() == (style == SymbolStyle.IEC ? 3 : 4))
                    .findFirst()
                    .orElseThrow();
            List<Point> points = bar.points();
            Point last = points.get(points.size() - 1);
            assertTrue(seen.u(last) < seen.u(points.get(1)), "the foot points to the anode");
            if (style == SymbolStyle.IEEE) {
                assertTrue(seen.u(points.get(0)) > seen.u(points.get(1)), "the other end to the cathode");
            }
        });
    }

    @Test
    void anIecResistorIsThreeTimesAsLongAsWideAndAnIeeeOneHasThreePeaksEachSide() {
        inEveryDirection(PartKind.RESISTOR, (style, seen) -> {
            if (style == SymbolStyle.IEC) {
                List<Point> corners = seen.polygons(false).get(0).points();
                double length = Math.abs(seen.u(corners.get(0)) - seen.u(corners.get(1)));
                double width = Math.abs(seen.v(corners.get(1)) - seen.v(corners.get(2)));
                assertEquals(3, length / width, 1e-9);
            } else {
                List<Point> points = seen.lines().stream()
                        .filter(line -> line.points().size() > 4)
                        .findFirst()
                        .orElseThrow()
                        .points();
                assertEquals(
                        3, points.stream().filter(point -> seen.v(point) > 1).count());
                assertEquals(
                        3, points.stream().filter(point -> seen.v(point) < -1).count());
            }
        });
    }

    @Test
    void theSourcesPlusStandsAtItsSecondEndAndTheMinusAtItsFirst() {
        inEveryDirection(PartKind.SOURCE, (style, seen) -> {
            List<Shape.Line> strokes = seen.lines().stream()
                    .filter(line -> line.points().size() == 2
                            && Math.abs(line.points()
                                                    .get(0)
                                                    .distanceTo(line.points().get(1))
                                            - 8)
                                    < 1e-9)
                    .toList();
            assertEquals(3, strokes.size(), "two strokes for plus, one for minus");
            List<Double> places = new ArrayList<>();
            strokes.forEach(line -> places.add(seen.u(
                    Box.around(line.points().get(0), line.points().get(1)).centre())));
            places.sort(Double::compare);
            assertTrue(places.get(0) < -5 && places.get(1) > 5 && places.get(2) > 5, style + " " + places);
            assertEquals(places.get(1), places.get(2), 1e-9);
        });
    }

    @Test
    void theMinusIsLevelHoweverTheSourceLies() {
        inEveryDirection(
                PartKind.SOURCE,
                (style, seen) -> assertTrue(seen.lines().stream()
                        .filter(line -> Math.abs(line.points()
                                                        .get(0)
                                                        .distanceTo(
                                                                line.points().get(1))
                                                - 8)
                                        < 1e-9
                                && seen.u(line.points().get(0)) < 0)
                        .allMatch(line ->
                                line.points().get(0).y() == line.points().get(1).y())));
    }

    @Test
    void aSinksArrowPointsToItsSecondEnd() {
        inEveryDirection(PartKind.SINK, (style, seen) -> {
            Shape.Polygon head = seen.polygons(true).get(0);
            assertTrue(seen.tipU(head) > seen.backU(head), style.name());
        });
    }

    @Test
    void theArrowOfAnNChannelMosfetPointsToTheChannelAndThatOfAPChannelOneAway() {
        int[][] places = {{4, 4, 0, 2, 4, 0}, {4, 4, 8, 2, 4, 0}, {4, 0, 0, 2, 4, 4}, {0, 4, 2, 0, 4, 4}};
        for (SymbolStyle style : SymbolStyle.values()) {
            for (int[] ends : places) {
                for (PartKind kind : List.of(PartKind.NMOS, PartKind.PMOS)) {
                    Seen seen = seen(kind, style, ends);
                    Shape.Polygon head = seen.polygons(true).get(0);
                    double outwards = Math.abs(seen.tipV(head)) - Math.abs(seen.backV(head));
                    assertTrue(kind == PartKind.NMOS ? outwards > 5 : outwards < -5, kind + " " + outwards);
                }
            }
        }
    }

    @Test
    void theChannelIsBrokenInThreeAndTheGateDoesNotTouchIt() {
        Seen seen = seen(PartKind.NMOS, SymbolStyle.IEC, 4, 4, 0, 2, 4, 0);
        List<Shape.Line> along = seen.lines().stream()
                .filter(line -> line.points().size() == 2
                        && Math.abs(seen.v(line.points().get(0))
                                        - seen.v(line.points().get(1)))
                                < 1e-9
                        && Math.abs(seen.v(line.points().get(0))) > 5)
                .toList();
        List<Double> distances = along.stream()
                .map(line -> Math.abs(seen.v(line.points().get(0))))
                .sorted()
                .toList();
        assertEquals(4, distances.size(), "three pieces of channel and a gate");
        assertEquals(distances.get(0), distances.get(2), 1e-9);
        assertTrue(distances.get(3) - distances.get(2) > 4);
    }

    @Test
    void anNpnTransistorsEmitterArrowPointsOut() {
        Seen seen = seen(PartKind.NPN, SymbolStyle.IEC, 4, 4, 0, 2, 4, 0);
        Shape.Polygon head = seen.polygons(true).get(0);
        assertTrue(seen.tipU(head) > seen.backU(head), "towards the emitter");
        assertTrue(Math.abs(seen.tipV(head)) < Math.abs(seen.backV(head)), "away from the base");
    }

    @Test
    void aTrimpotsArrowTouchesTheBodyFromTheWipersSide() {
        for (int wiper : new int[] {4, -4}) {
            Seen seen = seen(PartKind.TRIMPOT, SymbolStyle.IEC, 0, 0, 4, 0, 2, wiper);
            Shape.Polygon head = seen.polygons(true).get(0);
            assertEquals(wiper > 0 ? 8 : -8, seen.tipV(head), 1e-9);
            assertTrue(Math.abs(seen.tipV(head)) < Math.abs(seen.backV(head)));
        }
    }

    @Test
    void leadsReachTheGridPoints() {
        Circuits.all().forEach((name, drawn) -> {
            CircuitDrawing layout = new CircuitDrawing(
                    drawn.schematic(),
                    Map.of(),
                    new CircuitFigure.Manner(SymbolStyle.IEC, Languages.ENGLISH),
                    new Spacing(
                            drawn.schematic().parts().stream()
                                    .flatMap(p -> p.ends().values().stream())
                                    .toList(),
                            Spacing.USUAL));
            Spacing spacing = new Spacing(
                    drawn.schematic().parts().stream()
                            .flatMap(p -> p.ends().values().stream())
                            .toList(),
                    Spacing.USUAL);
            for (PlacedPart part : drawn.schematic().parts()) {
                for (GridPoint end : part.ends().values()) {
                    Box near = Box.centred(spacing.pixel(end), 8, 8);
                    assertTrue(
                            layout.drawing().shapes().stream().anyMatch(shape -> shape.meets(near)),
                            name + ": nothing is drawn at " + end);
                }
            }
        });
    }

    private static List<Point> dots(Circuits circuit) {
        Circuits.Drawn drawn = circuit.drawn();
        return CircuitFigure.layOut(
                        drawn.schematic(),
                        drawn.labels(),
                        new CircuitFigure.Manner(SymbolStyle.IEC, Languages.ENGLISH),
                        Figure.PAGE_WIDTH)
                .shapes("")
                .stream()
                .filter(shape -> shape instanceof Shape.Circle circle && circle.filled())
                .map(shape -> ((Shape.Circle) shape).centre())
                .toList();
    }

    @Test
    void aDotStandsWhereThreeMeetAndNotAtACornerOrACrossing() {
        Circuits corner = new Circuits().wire(0, 0, 4, 0).wire(4, 0, 4, 4);
        assertEquals(List.of(), dots(corner));
        Circuits crossing = new Circuits().wire(0, 2, 4, 2).wire(2, 0, 2, 4);
        assertEquals(List.of(), dots(crossing));
        Circuits tee = new Circuits().wire(0, 0, 2, 0).wire(2, 0, 4, 0).part(PartKind.RESISTOR, "R1", 2, 0, 2, 4);
        assertEquals(1, dots(tee).size());
        assertEquals(48, dots(tee).get(0).x(), 1e-9);
    }

    @Test
    void aFuseIsARectangleThreeToOneWithTheConductorThroughIt() {
        for (SymbolStyle style : SymbolStyle.values()) {
            for (int[] ends : DIRECTIONS) {
                Seen seen = seen(PartKind.LOAD, Map.of("symbol", "fuse"), style, ends);
                List<Point> corners = seen.polygons(false).get(0).points();
                double length = Math.abs(seen.u(corners.get(1)) - seen.u(corners.get(0)));
                double height = Math.abs(seen.v(corners.get(2)) - seen.v(corners.get(1)));
                assertEquals(3, length / height, 1e-9, style.name());
                assertTrue(
                        seen.lines().stream()
                                .anyMatch(line -> line.points().stream().allMatch(at -> Math.abs(seen.v(at)) < 1e-9)
                                        && Math.abs(seen.u(line.points().get(0)) + length / 2) < 1e-9
                                        && Math.abs(seen.u(line.points().get(1)) - length / 2) < 1e-9),
                        "from end to end");
            }
        }
    }

    @Test
    void aMotorIsACircleWithALetterAndALampOneWithACross() {
        for (int[] ends : DIRECTIONS) {
            Seen motor = seen(PartKind.LOAD, Map.of("symbol", "motor"), SymbolStyle.IEC, ends);
            assertEquals(
                    1,
                    motor.shapes().stream()
                            .filter(Shape.Circle.class::isInstance)
                            .count());
            assertTrue(motor.shapes().stream()
                    .anyMatch(shape -> shape instanceof Shape.Words words
                            && words.lettering().text().equals("M")));
            Seen lamp = seen(PartKind.LOAD, Map.of("symbol", "lamp"), SymbolStyle.IEC, ends);
            assertEquals(
                    1,
                    lamp.shapes().stream()
                            .filter(Shape.Circle.class::isInstance)
                            .count());
            List<Shape.Line> cross = lamp.lines().stream()
                    .filter(line -> Math.abs(lamp.v(line.points().get(0))) > 5)
                    .toList();
            assertEquals(2, cross.size());
            for (Shape.Line arm : cross) {
                for (Point end : arm.points()) {
                    assertEquals(PartSymbol.METER_RADIUS, Math.hypot(lamp.u(end), lamp.v(end)), 1e-9, "on the circle");
                }
            }
        }
    }

    /** An N-channel MOSFET's body diode leads from source to drain, a P-channel one's from drain to source. */
    @Test
    void aBodyDiodeThatIsShownPointsTheWayItConducts() {
        for (PartKind kind : List.of(PartKind.NMOS, PartKind.PMOS)) {
            int[] ends = {0, 8, 4, 4, 0, 0};
            assertEquals(
                    0,
                    seen(kind, SymbolStyle.IEC, ends).polygons(false).size(),
                    "hidden unless the template says otherwise");
            Seen shown = seen(kind, Map.of("body", "shown"), SymbolStyle.IEC, ends);
            List<Point> points = triangle(shown).points();
            double way = shown.u(points.get(1)) - shown.u(points.get(0));
            assertTrue(kind == PartKind.NMOS ? way < 0 : way > 0, kind + " seen from drain to source: " + way);
        }
    }
}
