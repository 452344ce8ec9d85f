package ampersheet.figure;

import ampersheet.chain.BranchedTiles;
import ampersheet.chain.RegularPolygon;
import java.util.ArrayList;
import java.util.List;

/** The tiles where they lie; across each seam an arrow of the data outwards and a dashed one of the return line. */
final class BranchDrawing {
    private static final double MARGINS = 40;
    /** So that the questions fit on the same page. */
    private static final double PAGE_HEIGHT = 440;

    private static final double WIDEST_SIDE = 68;
    /** A triangle has less room inside. */
    private static final double WIDEST_TRIANGLE_SIDE = 110;

    private static final double CONTROLLER_WIDTH = 84;
    private static final double CONTROLLER_HEIGHT = 34;
    private static final double LEAD = 26;
    private static final double LONGEST_HALF_ARROW = 11;
    /** From a side's middle to either of its arrows, so that its number has room between them. */
    private static final double APART = 12;

    private static final double APART_ON_A_HEXAGON = 10.5;
    private static final double NUMBER_FROM_SIDE = 9.5;
    private static final double HEAD = 7;
    private static final double LEGEND_WIDTH = 380;

    private final BranchedTiles tiles;
    private final List<AssemblyFigure.Mark> marks;
    private final double widest;
    private final List<BranchedTiles.Placed> placed;
    private final double scale;
    private final double halfArrow;
    private final Drawing drawing = new Drawing();

    BranchDrawing(BranchedTiles tiles, List<AssemblyFigure.Mark> marks, double widest) {
        this.tiles = tiles;
        this.marks = marks;
        this.widest = widest;
        this.placed = tiles.tiles();
        this.scale = scale();
        this.halfArrow = Math.min(LONGEST_HALF_ARROW, (tiles.sides() == 3 ? 0.36 : 0.27) * fromCentreToSide());
        for (BranchedTiles.Placed tile : placed) {
            outline(tile);
        }
        for (BranchedTiles.Placed tile : placed) {
            seam(tile);
        }
        sideNumbers();
        controller();
        legend();
    }

    Drawing drawing() {
        return drawing;
    }

    private double scale() {
        Box all = null;
        for (BranchedTiles.Placed tile : placed) {
            for (RegularPolygon.Spot corner : tile.outline().corners()) {
                Point point = new Point(corner.x(), -corner.y());
                all = all == null ? Box.around(point) : all.with(point);
            }
        }
        double side = tiles.sides() == 3 ? WIDEST_TRIANGLE_SIDE : WIDEST_SIDE;
        double fitting =
                Math.min((widest - MARGINS - CONTROLLER_WIDTH - LEAD) / all.width(), PAGE_HEIGHT / all.height());
        return Math.max(narrowest() / tiles.sideLength(), Math.min(side / tiles.sideLength(), fitting));
    }

    /** With smaller tiles the numbers of the first one's sides would touch; rather the drawing grows. */
    private double narrowest() {
        return switch (tiles.sides()) {
            case 3 -> 70;
            case 4 -> 50;
            default -> 33;
        };
    }

    private Point at(RegularPolygon.Spot spot) {
        return new Point(spot.x() * scale, -spot.y() * scale);
    }

    private static String name(BranchedTiles.Placed tile) {
        return tile.arm() < 0 ? "first tile" : BranchWords.letter(tile.arm()) + tile.number();
    }

    private void outline(BranchedTiles.Placed tile) {
        String name = name(tile);
        List<Point> corners = new ArrayList<>();
        tile.outline().corners().forEach(corner -> corners.add(at(corner)));
        drawing.add(name, new Shape.Outline(corners, 3, Stroke.LINE));
        Point centre = at(tile.outline().centre());
        boolean marked = false;
        for (AssemblyFigure.Mark mark : marks) {
            if (mark.arm() - 1 == tile.arm() && mark.tile() == tile.number()) {
                drawing.circle(name, Stroke.STRONG, centre, 15);
                drawing.words(
                        name, Lettering.plain(mark.label(), Lettering.BODY).inBold(), centre);
                marked = true;
            }
        }
        if (!marked && tile.arm() >= 0) {
            drawing.words(name, Lettering.plain(name, Lettering.SMALL), centre);
        }
    }

    /** Data to the left of its way outwards, the return line on the other side. */
    private void seam(BranchedTiles.Placed tile) {
        Point middle = at(tile.outline().middle(tile.entry()));
        Point centre = at(tile.outline().centre());
        double length = middle.distanceTo(centre);
        double dx = (centre.x() - middle.x()) / length;
        double dy = (centre.y() - middle.y()) / length;
        double out = tile.arm() < 0 ? LEAD : halfArrow;
        double apart = tiles.sides() == 6 ? APART_ON_A_HEXAGON : APART;
        Point data = middle.plus(dy * apart, -dx * apart);
        Point back = middle.plus(-dy * apart, dx * apart);
        drawing.arrow(
                name(tile),
                Stroke.LINE,
                HEAD,
                data.plus(-dx * out, -dy * out),
                data.plus(dx * halfArrow, dy * halfArrow));
        drawing.arrow(
                name(tile),
                Stroke.DASHED,
                HEAD,
                back.plus(dx * halfArrow, dy * halfArrow),
                back.plus(-dx * out, -dy * out));
    }

    /** Inside the first tile, each at the middle of its side, between the arrows there. */
    private void sideNumbers() {
        RegularPolygon outline = placed.get(0).outline();
        Point centre = at(outline.centre());
        for (int side = 0; side < tiles.sides(); side++) {
            drawing.words(
                    "first tile",
                    Lettering.plain("" + side, Lettering.SMALL).inBold(),
                    at(outline.middle(side)).towards(centre, NUMBER_FROM_SIDE));
        }
    }

    private double fromCentreToSide() {
        RegularPolygon outline = placed.get(0).outline();
        return at(outline.centre()).distanceTo(at(outline.middle(0)));
    }

    private void controller() {
        Point port = at(placed.get(0).outline().middle(0));
        Box box = new Box(
                port.x() - LEAD - CONTROLLER_WIDTH,
                port.y() - CONTROLLER_HEIGHT / 2,
                port.x() - LEAD,
                port.y() + CONTROLLER_HEIGHT / 2);
        drawing.rectangle("controller", Stroke.LINE, box);
        drawing.words("controller", Lettering.plain("controller", Lettering.BODY), box.centre());
    }

    private void legend() {
        Box whole = drawing.bounds();
        double y = whole.bottom() + 20;
        double x = whole.left();
        drawing.arrow("legend", Stroke.LINE, HEAD, new Point(x, y), new Point(x + 32, y));
        legend("data", x + 38, y);
        drawing.arrow("legend", Stroke.DASHED, HEAD, new Point(x + 90, y), new Point(x + 122, y));
        legend("return line", x + 128, y);
        boolean below = widest < LEGEND_WIDTH;
        legend("0 … " + (tiles.sides() - 1) + " sides of the first tile", below ? x : x + 215, below ? y + 18 : y);
    }

    private void legend(String text, double x, double y) {
        drawing.add(
                "legend",
                new Shape.Words(
                        Lettering.plain(text, Lettering.SMALL), new Point(x, y + 4), Lettering.Anchor.START, false));
    }
}
