package ampersheet.figure;

import ampersheet.chain.PrismNet;
import ampersheet.chain.RegularPolygon.Spot;
import ampersheet.language.Language;
import java.util.ArrayList;
import java.util.List;

/**
 * The tiles of a net as they lie flat: with the numbers of the lids' sides, or of all sides and a bar at plain ones.
 */
final class NetDrawing {
    private static final double WIDEST_SIDE = 92;
    private static final double PAGE_HEIGHT = 440;
    private static final double NUMBER_FROM_SIDE = 9;
    private static final double BAR_FROM_SIDE = 5;
    /** Of the side, to either hand of its middle. */
    private static final double HALF_BAR = 0.3;

    private static final Stroke BAR = new Stroke(4.0);

    private final PrismNet net;
    private final Language language;
    private final double scale;
    private final Drawing drawing = new Drawing();

    NetDrawing(PrismNet net, double widest, Language language) {
        this.net = net;
        this.language = language;
        Box all = null;
        for (int tile = 1; tile <= net.tiles(); tile++) {
            for (Spot corner : net.flat(tile)) {
                Point point = new Point(corner.x(), -corner.y());
                all = all == null ? Box.around(point) : all.with(point);
            }
        }
        this.scale = Math.min(WIDEST_SIDE, Math.min((widest - 12) / all.width(), PAGE_HEIGHT / all.height()));
        for (int tile = 1; tile <= net.tiles(); tile++) {
            tile(tile);
        }
        legend();
    }

    Drawing drawing() {
        return drawing;
    }

    /** What the shapes of a tile belong to. */
    private String part(int tile) {
        return NetWords.hasSign(net, tile)
                ? "tile " + NetWords.sign(net, tile)
                : NetWords.isTop(net, tile) ? "the top lid" : "the bottom lid";
    }

    private void tile(int tile) {
        String name = part(tile);
        List<Point> corners = new ArrayList<>();
        double x = 0;
        double y = 0;
        for (Spot corner : net.flat(tile)) {
            Point point = new Point(corner.x() * scale, -corner.y() * scale);
            corners.add(point);
            x += point.x();
            y += point.y();
        }
        Point centre = new Point(x / corners.size(), y / corners.size());
        drawing.add(name, new Shape.Outline(corners, 2, Stroke.LINE));
        String shown = new NetWords(net, language).onIt(tile);
        boolean lid = tile > net.sides() && !net.hasContacts();
        drawing.words(name, Lettering.plain(shown, Lettering.BODY).inBold(), nameAt(corners, centre, lid));
        for (int side = 1; side <= corners.size(); side++) {
            Point from = corners.get(side - 1);
            Point to = corners.get(side % corners.size());
            PrismNet.Place place = new PrismNet.Place(tile, side);
            Point middle = from.towards(to, from.distanceTo(to) / 2);
            if (net.hasContacts() && net.isPlain(place)) {
                double half = HALF_BAR * from.distanceTo(to);
                Point inward = middle.towards(centre, BAR_FROM_SIDE);
                Point along = middle.towards(to, half);
                double dx = along.x() - middle.x();
                double dy = along.y() - middle.y();
                drawing.line(name, BAR, inward.plus(-dx, -dy), inward.plus(dx, dy));
            }
            if (net.hasContacts() || tile > net.sides()) {
                drawing.words(
                        name,
                        Lettering.plain("" + net.ownSide(place), Lettering.SMALL),
                        middle.towards(centre, net.hasContacts() ? NUMBER_FROM_SIDE + 6 : NUMBER_FROM_SIDE));
            }
        }
    }

    /** In the middle; that of a numbered lid beyond it, since a small lid has room for its numbers only. */
    private static Point nameAt(List<Point> corners, Point centre, boolean beyond) {
        Point seam = corners.get(0);
        double far = centre.y();
        for (Point corner : corners) {
            far = seam.y() > centre.y() ? Math.min(far, corner.y()) : Math.max(far, corner.y());
        }
        return beyond ? new Point(centre.x(), far + Math.signum(far - centre.y()) * Lettering.BODY * 0.8) : centre;
    }

    private void legend() {
        Box whole = drawing.bounds();
        double y = whole.bottom() + 20;
        double x = whole.left();
        if (net.hasContacts()) {
            drawing.line("legend", BAR, new Point(x, y), new Point(x + 28, y));
            legend(language.say("figure.net.legend.plain-side"), x + 36, y);
            y += 18;
        }
        legend(
                language.say(net.hasContacts() ? "figure.net.legend.tile-numbers" : "figure.net.legend.lid-numbers"),
                x,
                y);
    }

    private void legend(String text, double x, double y) {
        drawing.add(
                "legend",
                new Shape.Words(
                        Lettering.plain(text, Lettering.SMALL), new Point(x, y + 4), Lettering.Anchor.START, false));
    }
}
