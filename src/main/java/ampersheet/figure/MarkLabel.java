package ampersheet.figure;

import ampersheet.figure.LabelPlacer.Side;
import ampersheet.figure.LabelPlacer.Spot;
import java.util.ArrayList;
import java.util.List;

/** The ring round a marked pixel, and its label: between the pixels where it has room, else at the end of a line. */
final class MarkLabel {
    private static final double CROSSES_TEXT = 1e6;
    private static final double ENTERS_ANOTHER_TILE = 1e5;
    private static final double CROSSES_A_PIXEL = 1000;
    private static final double CROSSES_A_LINE = 3;
    private static final double CLEARANCE = 1;
    /** Of the end of a line from its label. */
    private static final double CLEAR_OF_TEXT = 2;
    /** Of a label from the pixels round it. */
    private static final double AMONG_PIXELS = 0.04;
    /** A label at the end of a line, from what it does not belong to. */
    private static final double APART = 2.5;
    /** What it gets where that is nowhere. */
    private static final double JUST_APART = 0.5;

    private final ChainLayout lay;
    private final Drawing drawing;
    private final LabelPlacer placer;
    private final String name;
    private final Point centre;
    private final double ring;

    private MarkLabel(ChainLayout lay, Drawing drawing, LabelPlacer placer, ChainFigure.Mark mark) {
        this.lay = lay;
        this.drawing = drawing;
        this.placer = placer;
        name = "mark " + mark.x() + " " + mark.y();
        centre = lay.pixel(mark.x(), mark.y());
        ring = lay.radius() + (lay.dotted() ? 3.2 : 4);
    }

    static void draw(ChainLayout lay, Drawing drawing, LabelPlacer placer, ChainFigure.Mark mark) {
        MarkLabel label = new MarkLabel(lay, drawing, placer, mark);
        drawing.circle(label.name, Stroke.STRONG, label.centre, label.ring);
        if (mark.label().isEmpty()) {
            return;
        }
        List<Lettering> large =
                List.of(Lettering.plain(mark.label(), Lettering.BODY).inBold());
        List<Lettering> small =
                List.of(Lettering.plain(mark.label(), Lettering.SMALL).inBold());
        if (!label.amongPixels(large) && !label.amongPixels(small)) {
            label.atTheEndOfALine(large);
        }
    }

    /**
     * Diagonally beside the ring, as near as it is free. Between pixels it is never much nearer to one than to another,
     * so a line leads to it.
     */
    private boolean amongPixels(List<Lettering> lines) {
        for (double out = 0; out <= 1.1 * lay.pitch; out += 0.5) {
            for (int down : new int[] {-1, 1}) {
                for (int right : new int[] {1, -1}) {
                    double off = lay.pitch / 2 + out;
                    Point middle = centre.plus(right * off, down * lay.pitch / 2);
                    Spot spot = new Spot(middle.plus(-lines.get(0).width() / 2, 0), Side.RIGHT);
                    Box box = LabelPlacer.box(lines, spot);
                    Point to = before(middle, box.grown(CLEAR_OF_TEXT));
                    boolean apartFromRing = centre.distanceTo(to) > ring + 2;
                    if (drawing.isFree(box.grown(AMONG_PIXELS))
                            && !(apartFromRing && cost(centre.towards(middle, ring + 2), to) >= CROSSES_A_PIXEL)) {
                        if (apartFromRing) {
                            drawing.line(name, Stroke.FINE, centre.towards(middle, ring), to);
                        }
                        placer.place(name, lines, List.of(spot));
                        return true;
                    }
                }
            }
        }
        return false;
    }

    private void atTheEndOfALine(List<Lettering> lines) {
        Spot best = best(lines, APART);
        if (best == null) {
            best = best(lines, JUST_APART);
        }
        if (best == null) {
            throw new IllegalStateException("no room for the label of " + name);
        }
        drawing.line(
                name,
                Stroke.FINE,
                centre.towards(best.at(), ring),
                before(best.at(), LabelPlacer.box(lines, best).grown(CLEAR_OF_TEXT)));
        placer.place(name, lines, List.of(best));
    }

    /** Where a line to there ends: before the label. */
    private Point before(Point there, Box label) {
        double before = 0;
        while (label.contains(there.towards(centre, before))) {
            before += 0.5;
        }
        return there.towards(centre, before);
    }

    /** The free spot whose line crosses least; null if none is free. */
    private Spot best(List<Lettering> lines, double apart) {
        Spot best = null;
        double least = Double.MAX_VALUE;
        for (Spot spot : spots()) {
            Box box = LabelPlacer.box(lines, spot);
            double length = centre.distanceTo(spot.at()) / 20;
            if (length < least && isSlanting(centre, spot.at()) && drawing.isFree(box.grown(apart))) {
                double cost = cost(centre.towards(spot.at(), ring + 2), spot.at()) + length;
                if (cost < least) {
                    least = cost;
                    best = spot;
                }
            }
        }
        return best;
    }

    /** In the gaps next to its tile, at the edge of the panel where no numbers are, and far out. */
    private List<Spot> spots() {
        Box box = lay.boxes.values().stream()
                .filter(tile -> tile.contains(centre))
                .findFirst()
                .orElseThrow();
        List<Spot> spots = new ArrayList<>();
        for (double away : new double[] {3, 5, 8, 12, 40, 80}) {
            for (double slide = -1.25; slide <= 1.25; slide += 0.03125) {
                double y = box.centre().y() + slide * box.height() / 2;
                double x = box.centre().x() + slide * box.width() / 2;
                spots.add(new Spot(new Point(box.right() + away, y), Side.RIGHT));
                spots.add(new Spot(new Point(x, box.bottom() + away), Side.BELOW));
                if (box.left() > lay.extent.left()) {
                    spots.add(new Spot(new Point(box.left() - away, y), Side.LEFT));
                }
                if (box.top() > lay.extent.top()) {
                    spots.add(new Spot(new Point(x, box.top() - away), Side.ABOVE));
                }
            }
        }
        return spots;
    }

    /** Level or upright it would look like a data line. */
    private static boolean isSlanting(Point from, Point to) {
        double across = Math.abs(to.x() - from.x());
        double down = Math.abs(to.y() - from.y());
        return Math.min(across, down) >= 0.2 * Math.max(across, down);
    }

    private double cost(Point from, Point to) {
        double cost = 0;
        Box way = Box.around(from, to).grown(CLEARANCE);
        for (Shape shape : drawing.shapes()) {
            if (shape instanceof Shape.Words words) {
                cost += words.bounds().grown(APART).crossedBy(from, to) ? CROSSES_TEXT : 0;
            } else if (shape instanceof Shape.Circle circle) {
                cost += distance(circle.centre(), from, to) < circle.radius() + CLEARANCE ? CROSSES_A_PIXEL : 0;
            } else if (shape instanceof Shape.Line line) {
                for (int i = 1; i < line.points().size(); i++) {
                    Point a = line.points().get(i - 1);
                    Point b = line.points().get(i);
                    boolean crosses = way.mayBeMetBy(a, b)
                            && Box.around(a, b).grown(CLEARANCE).crossedBy(from, to);
                    cost += crosses ? CROSSES_A_LINE : 0;
                }
            } else if (shape.bounds().crossedBy(from, to)) {
                boolean otherTile =
                        shape instanceof Shape.Outline && !shape.bounds().contains(centre);
                cost += otherTile ? ENTERS_ANOTHER_TILE : CROSSES_A_LINE;
            }
        }
        return cost;
    }

    private static double distance(Point point, Point from, Point to) {
        double length = from.distanceTo(to);
        double along =
                ((point.x() - from.x()) * (to.x() - from.x()) + (point.y() - from.y()) * (to.y() - from.y())) / length;
        return point.distanceTo(from.towards(to, Math.max(0, Math.min(length, along))));
    }
}
