package ampersheet.figure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.chain.DataPath;
import ampersheet.chain.Panel;
import ampersheet.chain.Snaking;
import ampersheet.chain.Tile;
import ampersheet.source.Languages;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

class ChainFigureTest {
    private static final boolean DEEP = Boolean.getBoolean("ampersheet.deep");

    @Test
    void everySvgIsWellFormedBoldEnoughAndFitsThePage() {
        Panels.all().forEach((name, laid) -> {
            Figure figure = ChainFigure.draw(
                    name, laid.panel(), laid.marks(), new Figure.Setting("q1", Figure.PAGE_WIDTH, Languages.ENGLISH));
            Audit.svg(figure, "q1", name);
            double width = Double.parseDouble(SvgText.parse(figure.svg()).getAttribute("width"));
            assertTrue(width <= 648, name + " is " + width + " px wide");
        });
    }

    @Test
    void textStandsClearOfLinesAndPixels() {
        Panels.all()
                .forEach((name, laid) -> Audit.clear(
                        ChainFigure.layOut(
                                laid.panel(), laid.path(), laid.marks(), Figure.PAGE_WIDTH, Languages.ENGLISH),
                        name));
    }

    /** From the circles alone: the arrows between them lead from each pixel to the next in the order of the data. */
    @Test
    void arrowsLeadFromPixelToPixelInTheOrderOfTheData() {
        for (String name : List.of(
                "one small tile",
                "progressive",
                "two by two",
                "quarter turns",
                "by columns",
                "rows anew",
                "columns anew",
                "odd tile")) {
            Panels.Laid laid = Panels.all().get(name);
            Drawing drawing =
                    ChainFigure.layOut(laid.panel(), laid.path(), laid.marks(), Figure.PAGE_WIDTH, Languages.ENGLISH);
            List<Shape.Circle> circles = new ArrayList<>();
            List<Shape.Line> lines = new ArrayList<>();
            List<Shape.Polygon> heads = new ArrayList<>();
            for (Panel.Place place : laid.panel().places()) {
                for (Shape shape : drawing.shapes("tile " + place.column() + " " + place.row())) {
                    if (shape instanceof Shape.Circle circle) {
                        circles.add(circle);
                    } else if (shape instanceof Shape.Line line
                            && line.stroke().dashes().isEmpty()) {
                        lines.add(line);
                    } else if (shape instanceof Shape.Polygon polygon) {
                        heads.add(polygon);
                    }
                }
            }
            assertEquals(laid.path().stops().size(), circles.size(), name);
            Set<Double> xs = new TreeSet<>();
            Set<Double> ys = new TreeSet<>();
            circles.forEach(circle -> {
                xs.add(circle.centre().x());
                ys.add(circle.centre().y());
            });
            List<Double> columns = new ArrayList<>(xs);
            List<Double> rows = new ArrayList<>(ys);
            for (int i = 1; i < laid.path().stops().size(); i++) {
                DataPath.Stop from = laid.path().stops().get(i - 1);
                DataPath.Stop to = laid.path().stops().get(i);
                if (from.place() == to.place()) {
                    Point a = new Point(columns.get(from.x()), rows.get(from.y()));
                    Point b = new Point(columns.get(to.x()), rows.get(to.y()));
                    double radius = circles.get(0).radius();
                    Shape.Line line = lines.stream()
                            .filter(l -> Math.abs(l.points().get(0).distanceTo(a) - radius) < 0.01
                                    && l.points().get(l.points().size() - 1).distanceTo(b) < radius + 8)
                            .findFirst()
                            .orElseThrow(() -> new AssertionError(name + ": no line from " + from + " to " + to));
                    assertTrue(
                            heads.stream().anyMatch(head -> pointsAlong(head, line)),
                            name + ": no head on the line from " + from + " to " + to);
                }
            }
        }
    }

    private static boolean pointsAlong(Shape.Polygon head, Shape.Line line) {
        Point tip = head.points().get(0);
        Point back = Box.around(head.points().get(1), head.points().get(2)).centre();
        for (int i = 1; i < line.points().size(); i++) {
            Point a = line.points().get(i - 1);
            Point b = line.points().get(i);
            double length = a.distanceTo(b);
            boolean on = Math.abs(a.distanceTo(back) + back.distanceTo(b) - length) < 0.01;
            double along = (tip.x() - back.x()) * (b.x() - a.x()) + (tip.y() - back.y()) * (b.y() - a.y());
            if (on && along > 0) {
                return true;
            }
        }
        return false;
    }

    @Test
    void dataAndReturnLineNeverCrossAPixelOrEachOther() {
        Panels.all().forEach((name, laid) -> {
            List<Shape.Line> lines = wiring(
                    ChainFigure.layOut(laid.panel(), laid.path(), laid.marks(), Figure.PAGE_WIDTH, Languages.ENGLISH));
            for (int i = 0; i < lines.size(); i++) {
                for (int j = 0; j < i; j++) {
                    Shape.Line one = lines.get(i);
                    Shape.Line other = lines.get(j);
                    assertTrue(!cross(one, other), () -> name + ": " + one + " crosses " + other);
                }
            }
        });
    }

    @Test
    void theReturnLineOfOneTileNeverCrossesTheDataWhateverTheTile() {
        for (Tile.Order order : Tile.Order.values()) {
            for (Tile.Corner corner : Tile.Corner.values()) {
                for (Tile.Along along : Tile.Along.values()) {
                    for (Tile.Side input : Tile.Side.values()) {
                        for (Tile.Side output : Tile.Side.values()) {
                            if (input != output) {
                                Panel panel = new Panel(
                                        new Tile(4, 3, order, corner, along, input, output),
                                        List.of(new Panel.Place(0, 0, 0)),
                                        0,
                                        true,
                                        24,
                                        1e-6,
                                        1e-4,
                                        false);
                                List<Shape.Line> lines = wiring(ChainFigure.layOut(
                                        panel,
                                        ChainFigure.trace(panel),
                                        List.of(),
                                        Figure.PAGE_WIDTH,
                                        Languages.ENGLISH));
                                for (Shape.Line dashed : lines) {
                                    for (Shape.Line solid : lines) {
                                        assertTrue(
                                                dashed.stroke().dashes().isEmpty()
                                                        || !solid.stroke()
                                                                .dashes()
                                                                .isEmpty()
                                                        || !cross(dashed, solid),
                                                () -> panel.tile() + ": " + dashed + " crosses " + solid);
                                    }
                                }
                            }
                        }
                    }
                }
            }
        }
    }

    private static List<Shape.Line> wiring(Drawing drawing) {
        Set<Shape> apart = new HashSet<>(drawing.shapes("legend"));
        return drawing.shapes().stream()
                .filter(shape -> shape instanceof Shape.Line && !apart.contains(shape))
                .map(shape -> (Shape.Line) shape)
                .filter(ChainFigureTest::upright)
                .toList();
    }

    /** Data and return lines run level or upright; the slanting ones point at marks. */
    private static boolean upright(Shape.Line line) {
        for (int i = 1; i < line.points().size(); i++) {
            Point a = line.points().get(i - 1);
            Point b = line.points().get(i);
            if (Math.abs(a.x() - b.x()) > 0.01 && Math.abs(a.y() - b.y()) > 0.01) {
                return false;
            }
        }
        return true;
    }

    private static boolean cross(Shape.Line one, Shape.Line other) {
        if (!one.bounds().overlaps(other.bounds())) {
            return false;
        }
        for (int i = 1; i < one.points().size(); i++) {
            for (int j = 1; j < other.points().size(); j++) {
                if (cross(
                        one.points().get(i - 1),
                        one.points().get(i),
                        other.points().get(j - 1),
                        other.points().get(j))) {
                    return true;
                }
            }
        }
        return false;
    }

    /** Whether two level or upright pieces share a point that is inside both. */
    private static boolean cross(Point a, Point b, Point c, Point d) {
        Box one = Box.around(a, b).grown(0.2);
        Box other = Box.around(c, d).grown(0.2);
        boolean oneLevel = Math.abs(a.y() - b.y()) < 0.01;
        boolean otherLevel = Math.abs(c.y() - d.y()) < 0.01;
        if (!one.overlaps(other)) {
            return false;
        }
        if (oneLevel == otherLevel) {
            double overlap = oneLevel
                    ? Math.min(one.right(), other.right()) - Math.max(one.left(), other.left())
                    : Math.min(one.bottom(), other.bottom()) - Math.max(one.top(), other.top());
            return overlap > 1;
        }
        Point meet = oneLevel ? new Point(c.x(), a.y()) : new Point(a.x(), c.y());
        return inside(meet, a, b) && inside(meet, c, d);
    }

    private static boolean inside(Point point, Point a, Point b) {
        return point.distanceTo(a) > 0.5 && point.distanceTo(b) > 0.5;
    }

    @Test
    void theBlackCornerTurnsWithTheTile() {
        Tile tile = new Tile(
                4, 4, Tile.Order.SERPENTINE, Tile.Corner.TOP_LEFT, Tile.Along.ROWS, Tile.Side.WEST, Tile.Side.EAST);
        for (int turns = 0; turns < 4; turns++) {
            Panel panel = new Panel(tile, List.of(new Panel.Place(0, 0, turns)), 0, false, 24, 1e-6, 1e-4, false);
            Drawing drawing = ChainFigure.layOut(
                    panel, ChainFigure.trace(panel), List.of(), Figure.PAGE_WIDTH, Languages.ENGLISH);
            List<Shape> shapes = drawing.shapes("tile 0 0");
            Box outline = shapes.get(0).bounds();
            Box corner = shapes.get(1).bounds();
            assertEquals(
                    turns == 0 || turns == 3,
                    corner.centre().x() < outline.centre().x(),
                    "turned " + turns);
            assertEquals(
                    turns == 0 || turns == 1,
                    corner.centre().y() < outline.centre().y(),
                    "turned " + turns);
        }
    }

    @Test
    void theTableReadBackIsTheDataPath() {
        Panels.all().forEach((name, laid) -> {
            Figure.Table table = ChainFigure.draw(
                            name,
                            laid.panel(),
                            laid.marks(),
                            new Figure.Setting("q1", Figure.PAGE_WIDTH, Languages.ENGLISH))
                    .table();
            List<Integer> order = new ArrayList<>();
            String here = "controller";
            while (order.size() < laid.panel().places().size()) {
                String from = here;
                int next = -1;
                for (int i = 0; i < table.rows().size(); i++) {
                    if (table.rows().get(i).get(3).equals(from)) {
                        next = i;
                    }
                }
                assertTrue(next >= 0, name + ": nothing comes from " + from);
                List<String> row = table.rows().get(next);
                order.add(next);
                here = "tile column " + row.get(0) + ", row " + row.get(1);
            }
            assertEquals(laid.path().tileOrder(), order, name);
        });
    }

    @Test
    void theWordsTellTheOrderInsideATile() {
        Figure figure = ChainFigure.draw(
                "",
                Panels.all().get("by columns").panel(),
                List.of(),
                new Figure.Setting("q1", Figure.PAGE_WIDTH, Languages.ENGLISH));
        assertTrue(
                figure.walk()
                        .contains("It passes column after column, from right to left; the first column runs from "
                                + "bottom to top, the next one back, and so on, back and forth."),
                figure.walk().toString());
        assertEquals(
                "A panel of one tile of five columns and four rows of pixels, fed by a controller with a return line.",
                figure.summary());
    }

    @Test
    void aLongRowOfLikeTilesIsToldTogether() {
        Tile tile = new Tile(
                8, 1, Tile.Order.ALL_ONE_WAY, Tile.Corner.TOP_LEFT, Tile.Along.ROWS, Tile.Side.WEST, Tile.Side.EAST);
        Figure figure = ChainFigure.draw(
                "",
                new Panel(tile, Snaking.places(40, 1), 0, false, 24, 1e-6, 1e-4, false),
                List.of(),
                new Figure.Setting("q1", Figure.PAGE_WIDTH, Languages.ENGLISH));
        assertEquals(
                List.of(
                        List.of("0", "0", "upright", "controller", "tile column 1, row 0"),
                        List.of("1 to 38", "0", "upright", "the tile before it", "the tile after it"),
                        List.of("39", "0", "upright", "tile column 38, row 0", "open")),
                figure.table().rows());
        assertTrue(
                figure.walk()
                        .contains("From there the data goes through tile columns 1 to 39, one after another, all "
                                + "upright."),
                figure.walk().toString());
    }

    @Test
    void aMarkOffThePanelAndABrokenChainAreRefused() {
        Panel panel = Panels.all().get("one small tile").panel();
        assertTrue(assertThrows(
                        IllegalArgumentException.class,
                        () -> ChainFigure.draw(
                                "",
                                panel,
                                List.of(new ChainFigure.Mark(4, 0, "?")),
                                new Figure.Setting("q1", Figure.PAGE_WIDTH, Languages.ENGLISH)))
                .getMessage()
                .contains("column 4, row 0"));
        Panel broken = new Panel(
                panel.tile(),
                List.of(new Panel.Place(0, 0, 0), new Panel.Place(2, 2, 0)),
                0,
                false,
                24,
                1e-6,
                1e-4,
                false);
        assertThrows(
                IllegalArgumentException.class,
                () -> ChainFigure.draw(
                        "", broken, List.of(), new Figure.Setting("q1", Figure.PAGE_WIDTH, Languages.ENGLISH)));
    }

    /** From any pixel of a wall: the line to its label leaves the pixel's own tile and enters no other. */
    @Test
    void theLineFromAMarkToItsLabelCrossesNoOtherTile() {
        for (int pixels : new int[] {4, 6, 8}) {
            Tile tile = new Tile(
                    pixels,
                    pixels,
                    Tile.Order.SERPENTINE,
                    Tile.Corner.TOP_LEFT,
                    Tile.Along.ROWS,
                    Tile.Side.WEST,
                    Tile.Side.EAST);
            Panel panel = new Panel(tile, Snaking.places(4, 3), 0, true, 24, 1e-6, 1e-4, false);
            for (int x = 0; x < 4 * pixels; x += DEEP ? 3 : 5) {
                for (int y = 0; y < 3 * pixels; y += DEEP ? 2 : 3) {
                    Drawing drawing = ChainFigure.layOut(
                            panel,
                            ChainFigure.trace(panel),
                            List.of(new ChainFigure.Mark(x, y, "?")),
                            Figure.PAGE_WIDTH,
                            Languages.ENGLISH);
                    String where = pixels + " pixels, mark at " + x + ", " + y;
                    for (Shape shape : drawing.shapes("mark " + x + " " + y)) {
                        if (shape instanceof Shape.Line line) {
                            for (int place = 0; place < panel.places().size(); place++) {
                                int column = panel.places().get(place).column();
                                int row = panel.places().get(place).row();
                                Box outline = drawing.shapes("tile " + column + " " + row)
                                        .get(0)
                                        .bounds()
                                        .grown(-1);
                                boolean own = column == x / pixels && row == y / pixels;
                                assertTrue(
                                        own
                                                || !outline.crossedBy(
                                                        line.points().get(0),
                                                        line.points().get(1)),
                                        where + " crosses tile " + column + " " + row);
                            }
                        }
                    }
                }
            }
        }
    }

    @Test
    void onlyColumnAndRowNumbersArePrintedSoThatNoAnswerShows() {
        Panels.Laid laid = Panels.all().get("wall");
        Drawing drawing =
                ChainFigure.layOut(laid.panel(), laid.path(), laid.marks(), Figure.PAGE_WIDTH, Languages.ENGLISH);
        for (Shape shape : drawing.shapes()) {
            if (shape instanceof Shape.Words words && Audit.text(words).matches("[0-9]+")) {
                assertTrue(Integer.parseInt(Audit.text(words)) < 32, Audit.text(words));
            }
        }
    }
}
