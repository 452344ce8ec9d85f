package ampersheet.figure;

import ampersheet.chain.MatingEdge;
import ampersheet.chain.RegularPolygon;
import ampersheet.language.Language;
import java.util.ArrayList;
import java.util.List;

/** The tile with an arrow at each side from place 1 of its row on, and one row enlarged. */
final class EdgeDrawing {
    private static final double TILE = 160;
    private static final double WIDEST_PITCH = 37;
    private static final double HEIGHT = 26;
    private static final double BELOW = 50;

    private final MatingEdge edge;
    private final Language language;
    private final Drawing drawing = new Drawing();
    private final double pitch;
    private final double contact;
    private final double widest;

    EdgeDrawing(MatingEdge edge, double widest, Language language) {
        this.edge = edge;
        this.language = language;
        this.pitch = Math.min(WIDEST_PITCH, (widest - 10) / (edge.contacts() + 0.4));
        this.contact = Math.min(HEIGHT, pitch - 3);
        this.widest = widest;
        tile();
        row();
    }

    Drawing drawing() {
        return drawing;
    }

    private void tile() {
        RegularPolygon outline = edge.outline();
        double reach = 0;
        for (RegularPolygon.Spot corner : outline.corners()) {
            reach = Math.max(reach, corner.distanceTo(outline.centre()));
        }
        double scale = TILE / 2 / reach;
        List<Point> corners = new ArrayList<>();
        outline.corners().forEach(corner -> corners.add(new Point(corner.x() * scale, -corner.y() * scale)));
        drawing.add("tile", new Shape.Outline(corners, 4, Stroke.LINE));
        Point centre = new Point(0, 0);
        int n = edge.sides();
        for (int side = 0; side < n; side++) {
            Point left = corners.get((side + 1) % n);
            Point right = corners.get(side);
            Point middle = new Point((left.x() + right.x()) / 2, (left.y() + right.y()) / 2);
            drawing.words(
                    "side " + (side + 1),
                    Lettering.plain("" + (side + 1), Lettering.BODY).inBold(),
                    middle.towards(centre, 18));
            Point tail = edge.isPlain(side) ? left : right;
            Point tip = edge.isPlain(side) ? right : left;
            Point from = outward(tail.towards(tip, 14), centre, middle, 11);
            Point to = outward(tip.towards(tail, 14), centre, middle, 11);
            drawing.dot("side " + (side + 1), from, 3);
            drawing.arrow("side " + (side + 1), Stroke.LINE, 8, from, to);
        }
    }

    /** The point moved away from the side, along the line from the centre to the side's middle. */
    private static Point outward(Point point, Point centre, Point middle, double distance) {
        double length = centre.distanceTo(middle);
        return point.plus((middle.x() - centre.x()) * distance / length, (middle.y() - centre.y()) * distance / length);
    }

    private void row() {
        EdgeWords words = new EdgeWords(edge, language);
        Box tile = drawing.bounds();
        double width = (edge.contacts() - 1) * pitch;
        double left = tile.centre().x() - width / 2;
        double y = tile.bottom() + BELOW;
        drawing.line(
                "row",
                Stroke.LINE,
                new Point(left - pitch * 0.7, y + HEIGHT),
                new Point(left + width + pitch * 0.7, y + HEIGHT));
        for (int place = 1; place <= edge.contacts(); place++) {
            Point at = new Point(left + (place - 1) * pitch, y);
            MatingEdge.Contact kind = edge.at(place);
            if (kind == null) {
                drawing.line("place " + place, Stroke.LINE, at.plus(0, HEIGHT - 5), at.plus(0, HEIGHT));
            } else {
                drawing.rectangle(
                        "place " + place,
                        Stroke.LINE,
                        new Box(at.x() - contact / 2, y, at.x() + contact / 2, y + HEIGHT));
                drawing.words(
                        "place " + place,
                        Lettering.plain(words.letter(kind), Lettering.BODY).inBold(),
                        at.plus(0, HEIGHT / 2));
            }
            drawing.add(
                    "place " + place,
                    new Shape.Words(
                            Lettering.plain("" + place, Lettering.SMALL),
                            at.plus(0, HEIGHT + 17),
                            Lettering.Anchor.MIDDLE,
                            false));
        }
        double arrow = y + HEIGHT + 30;
        drawing.dot("row", new Point(left, arrow), 3);
        drawing.arrow("row", Stroke.LINE, 8, new Point(left, arrow), new Point(left + width, arrow));
        text(
                language.say(
                        edge.plainSides() < edge.sides()
                                ? "figure.edge.drawn.plain-side"
                                : "figure.edge.drawn.every-side"),
                left - pitch * 0.7,
                y - 14);
        List<String> legend = legend(words);
        for (int line = 0; line < legend.size(); line++) {
            text(legend.get(line), left - pitch * 0.7, arrow + 26 + 18 * line);
        }
    }

    /** In one line where it fits. */
    private List<String> legend(EdgeWords words) {
        String whole = words.legend();
        boolean fits = Lettering.plain(whole, Lettering.SMALL).width() <= widest;
        return pitch < WIDEST_PITCH || !fits ? words.shortLegend() : List.of(whole);
    }

    private void text(String text, double x, double y) {
        drawing.add(
                "row",
                new Shape.Words(
                        Lettering.plain(text, Lettering.SMALL), new Point(x, y), Lettering.Anchor.START, false));
    }
}
