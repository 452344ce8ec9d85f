package ampersheet.figure;

import ampersheet.chain.BranchedTiles;
import ampersheet.chain.RegularPolygon;
import ampersheet.language.Language;
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

    private static final double NARROWEST_CONTROLLER = 84;
    private static final double BESIDE_WORD = 3;
    private static final double CONTROLLER_HEIGHT = 34;
    private static final double LEAD = 26;
    private static final double LONGEST_HALF_ARROW = 11;
    /** From a side's middle to either of its arrows, so that its number has room between them. */
    private static final double APART = 12;

    private static final double APART_ON_A_HEXAGON = 10.5;
    private static final double NUMBER_FROM_SIDE = 9.5;
    private static final double HEAD = 7;
    private static final double LEGEND_WIDTH = 380;
    private static final double SAMPLE = 32;
    private static final double BETWEEN_ENTRIES = 20;

    private final BranchedTiles tiles;
    private final List<AssemblyFigure.Mark> marks;
    private final double widest;
    private final Language language;
    private final Lettering controller;
    private final double controllerWidth;
    private final List<BranchedTiles.Placed> placed;
    private final double scale;
    private final double halfArrow;
    private final Drawing drawing = new Drawing();

    BranchDrawing(BranchedTiles tiles, List<AssemblyFigure.Mark> marks, double widest, Language language) {
        this.tiles = tiles;
        this.marks = marks;
        this.widest = widest;
        this.language = language;
        this.controller = Lettering.plain(language.say("figure.branches.drawn.controller"), Lettering.BODY);
        this.controllerWidth = Math.max(NARROWEST_CONTROLLER, controller.width() + 2 * BESIDE_WORD);
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
                Math.min((widest - MARGINS - controllerWidth - LEAD) / all.width(), PAGE_HEIGHT / all.height());
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
                port.x() - LEAD - controllerWidth,
                port.y() - CONTROLLER_HEIGHT / 2,
                port.x() - LEAD,
                port.y() + CONTROLLER_HEIGHT / 2);
        drawing.rectangle("controller", Stroke.LINE, box);
        drawing.words("controller", controller, box.centre());
    }

    private void legend() {
        Box whole = drawing.bounds();
        double y = whole.bottom() + 20;
        double x = whole.left();
        drawing.arrow("legend", Stroke.LINE, HEAD, new Point(x, y), new Point(x + SAMPLE, y));
        double data = x + SAMPLE + 6 + legend(language.say("figure.branches.legend.data"), x + SAMPLE + 6, y);
        double second = Math.max(x + 90, data + BETWEEN_ENTRIES);
        drawing.arrow("legend", Stroke.DASHED, HEAD, new Point(second, y), new Point(second + SAMPLE, y));
        double back = second
                + SAMPLE
                + 6
                + legend(language.say("figure.branches.legend.return-line"), second + SAMPLE + 6, y);
        boolean below = widest < LEGEND_WIDTH;
        legend(
                language.say("figure.branches.legend.sides", "last", Integer.toString(tiles.sides() - 1)),
                below ? x : Math.max(x + 215, back + BETWEEN_ENTRIES),
                below ? y + 18 : y);
    }

    /** Writes it and tells its width. */
    private double legend(String text, double x, double y) {
        Lettering lettering = Lettering.plain(text, Lettering.SMALL);
        drawing.add("legend", new Shape.Words(lettering, new Point(x, y + 4), Lettering.Anchor.START, false));
        return lettering.width();
    }
}
