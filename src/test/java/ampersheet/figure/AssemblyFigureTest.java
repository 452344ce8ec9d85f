package ampersheet.figure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.chain.Assembly;
import ampersheet.chain.BranchedTiles;
import ampersheet.chain.MatingEdge;
import ampersheet.chain.PrismNet;
import ampersheet.chain.TileRow;
import ampersheet.source.Languages;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class AssemblyFigureTest {
    /** A4 less its margins, with the smallest lettering at 18 point, in pixels. */
    private static final double LARGE_PRINT = 320;

    static Map<String, Assembly> all() {
        Map<String, Assembly> all = new LinkedHashMap<>();
        for (int sides = 3; sides <= 6; sides++) {
            all.put("edge of " + sides, new MatingEdge(sides, 2, 9 + sides, List.of(1), List.of(3), 6, 7));
        }
        for (int sides : new int[] {3, 4, 6}) {
            all.put("short arms of " + sides, new BranchedTiles(sides, 0.06, List.of(arm(1, 1), arm(sides - 1, 2))));
            all.put(
                    "long arms of " + sides,
                    new BranchedTiles(
                            sides,
                            0.06,
                            sides == 3
                                    ? List.of(arm(1, 5), arm(2, 5))
                                    : List.of(arm(1, 5), arm(sides / 2, 5), arm(sides - 1, 4))));
        }
        for (int tiles : new int[] {2, 4, 8, 12, 16}) {
            all.put("row of " + tiles, new TileRow(tiles, 0.12, 2e-4));
        }
        for (int sides : new int[] {3, 4, 5, 6, 8}) {
            all.put("net of " + sides, new PrismNet(sides, 1, sides, List.of(), List.of()));
        }
        all.put("net of a cube with contacts", new PrismNet(4, 1, 3, List.of(0, 1, 2, 3, 0, 1), List.of(1, 3)));
        return all;
    }

    private static BranchedTiles.Arm arm(int at, int tiles) {
        return new BranchedTiles.Arm(at, tiles);
    }

    private static List<AssemblyFigure.Mark> marks(Assembly assembly) {
        return assembly instanceof BranchedTiles ? List.of(new AssemblyFigure.Mark(2, 1, "?")) : List.of();
    }

    static Figure figure(String name, String idPrefix) {
        Assembly assembly = all().get(name);
        return AssemblyFigure.draw(
                name, assembly, marks(assembly), new Figure.Setting(idPrefix, Figure.PAGE_WIDTH, Languages.ENGLISH));
    }

    @Test
    void everySvgIsWellFormedBoldEnoughAndFitsThePage() {
        all().forEach((name, assembly) -> {
            Figure figure = figure(name, "q1");
            Audit.svg(figure, "q1", name);
            double width = Double.parseDouble(SvgText.parse(figure.svg()).getAttribute("width"));
            double height = Double.parseDouble(SvgText.parse(figure.svg()).getAttribute("height"));
            assertTrue(width <= 648 && height <= 700, name + " is " + width + " px by " + height + " px");
        });
    }

    @Test
    void textStandsClearOfLinesAndOtherTextOnAWidePageAndInLargePrint() {
        for (double widest : new double[] {Figure.PAGE_WIDTH, LARGE_PRINT}) {
            all().forEach((name, assembly) -> Audit.clear(drawing(assembly, widest), name + " at " + widest));
        }
    }

    @Test
    void edgesAndRowsFitTheWidthThatLargePrintLeaves() {
        all().forEach((name, assembly) -> {
            if (!(assembly instanceof BranchedTiles)) {
                double width = drawing(assembly, LARGE_PRINT).bounds().width();
                assertTrue(width <= LARGE_PRINT, name + " is " + width + " px wide");
            }
        });
    }

    private static Drawing drawing(Assembly assembly, double widest) {
        return assembly instanceof MatingEdge edge
                ? new EdgeDrawing(edge, widest, Languages.ENGLISH).drawing()
                : assembly instanceof BranchedTiles tiles
                        ? new BranchDrawing(tiles, marks(tiles), widest, Languages.ENGLISH).drawing()
                        : assembly instanceof PrismNet net
                                ? new NetDrawing(net, widest, Languages.ENGLISH).drawing()
                                : new RowDrawing((TileRow) assembly, widest, Languages.ENGLISH).drawing();
    }

    /** Seen from outside, left is where one's left hand is: walking round the tile clockwise, behind one's back. */
    @Test
    void theArrowOfAPlainSideRunsAgainstTheClockAndOfAMirroredOneWithIt() {
        Drawing drawing = new EdgeDrawing(
                        new MatingEdge(4, 2, 10, List.of(1), List.of(3), 6, 7), Figure.PAGE_WIDTH, Languages.ENGLISH)
                .drawing();
        for (int side = 1; side <= 4; side++) {
            Point tail = drawing.shapes("side " + side).stream()
                    .filter(Shape.Circle.class::isInstance)
                    .map(shape -> ((Shape.Circle) shape).centre())
                    .findFirst()
                    .orElseThrow();
            Point tip = drawing.shapes("side " + side).stream()
                    .filter(Shape.Polygon.class::isInstance)
                    .map(shape -> ((Shape.Polygon) shape).points().get(0))
                    .findFirst()
                    .orElseThrow();
            double clockwise = tail.x() * tip.y() - tail.y() * tip.x(); // y downwards, the tile's centre at the origin
            assertEquals(side <= 2, clockwise < 0, "side " + side);
        }
    }

    /** Near a corner a number could belong to either side. */
    @Test
    void theNumberOfASideStandsAtItsMiddle() {
        for (String name : List.of("short arms of 3", "long arms of 3", "long arms of 4", "long arms of 6")) {
            BranchedTiles tiles = (BranchedTiles) all().get(name);
            Drawing drawing = new BranchDrawing(tiles, List.of(), Figure.PAGE_WIDTH, Languages.ENGLISH).drawing();
            List<Point> corners = drawing.shapes("first tile").stream()
                    .filter(Shape.Outline.class::isInstance)
                    .map(shape -> ((Shape.Outline) shape).corners())
                    .findFirst()
                    .orElseThrow();
            for (int side = 0; side < tiles.sides(); side++) {
                String number = Integer.toString(side);
                Point printed = drawing.shapes("first tile").stream()
                        .filter(Shape.Words.class::isInstance)
                        .map(Shape.Words.class::cast)
                        .filter(words -> Audit.text(words).equals(number))
                        .map(words -> words.bounds().centre())
                        .findFirst()
                        .orElseThrow();
                Point one = corners.get(side);
                Point other = corners.get((side + 1) % tiles.sides());
                double length = one.distanceTo(other);
                Point middle = new Point((one.x() + other.x()) / 2, (one.y() + other.y()) / 2);
                double along = ((printed.x() - middle.x()) * (other.x() - one.x())
                                + (printed.y() - middle.y()) * (other.y() - one.y()))
                        / length;
                assertEquals(0, along, 3, name + ", side " + side);
                assertTrue(middle.distanceTo(printed) < 14, name + ", side " + side);
            }
        }
    }

    @Test
    void anEdgeThatIsTheSameOnAllSidesDoesNotSpeakOfPlainOnes() {
        Figure edge = AssemblyFigure.draw(
                "edge",
                new MatingEdge(4, 4, 9, List.of(1, 9), List.of(2, 8), 3, 7),
                List.of(),
                new Figure.Setting("q1", Figure.PAGE_WIDTH, Languages.ENGLISH));
        assertFalse((edge.svg() + edge.walk()).contains("plain"), edge.walk().toString());
        assertEquals(List.of("9", "supply"), edge.table().rows().get(8));
    }

    @Test
    void everySeamHasOneSolidArrowOutAndOneDashedBack() {
        BranchedTiles tiles = (BranchedTiles) all().get("short arms of 6");
        Drawing drawing = new BranchDrawing(tiles, List.of(), Figure.PAGE_WIDTH, Languages.ENGLISH).drawing();
        for (String tile : List.of("first tile", "A1", "B1", "B2")) {
            List<Shape.Line> lines = drawing.shapes(tile).stream()
                    .filter(Shape.Line.class::isInstance)
                    .map(Shape.Line.class::cast)
                    .toList();
            assertEquals(2, lines.size(), tile);
            assertEquals(
                    1,
                    lines.stream()
                            .filter(line -> line.stroke().dashes().isEmpty())
                            .count(),
                    tile);
            double along = (lines.get(0).points().get(1).x()
                                    - lines.get(0).points().get(0).x())
                            * (lines.get(1).points().get(1).x()
                                    - lines.get(1).points().get(0).x())
                    + (lines.get(0).points().get(1).y()
                                    - lines.get(0).points().get(0).y())
                            * (lines.get(1).points().get(1).y()
                                    - lines.get(1).points().get(0).y());
            assertTrue(along < 0, tile + ": both arrows point the same way");
        }
    }

    @Test
    void theWordsTellWhatIsDrawnAndNoAnswer() {
        Figure edge = figure("edge of 4", "q1");
        assertEquals(13, edge.table().rows().size());
        assertEquals(List.of("3", "ground"), edge.table().rows().get(2));
        assertEquals(List.of("2", "no contact"), edge.table().rows().get(1));
        assertTrue(
                edge.walk().contains("Side 3 is mirrored: its row runs from right to left."),
                edge.walk().toString());
        Figure branches = figure("long arms of 6", "q1");
        assertEquals(List.of("C", "5", "4"), branches.table().rows().get(2));
        assertTrue(
                branches.walk().contains("Tile B1 is marked ?."),
                branches.walk().toString());
        Figure row = figure("row of 4", "q1");
        assertEquals(
                List.of("2", "tile 1", "e to either side"), row.table().rows().get(1));
        assertFalse(branches.svg().contains(">11<"), "no turn of a tile is printed");
    }
}
