package ampersheet.figure;

import ampersheet.chain.DataPath.Stop;
import java.util.ArrayList;
import java.util.List;

/** The pixels of a tile and the lines between them, from its input to its output, and the return line round them. */
final class TileWiring {
    /** Heads of neighbouring lines would run into each other. */
    private static final double CLOSE = 8;

    private static final Stroke NO_OUTLINE = new Stroke(0.0);

    private final ChainLayout lay;
    private final Drawing drawing;

    TileWiring(ChainLayout lay, Drawing drawing) {
        this.lay = lay;
        this.drawing = drawing;
    }

    void pixels(int place) {
        List<Stop> stops = lay.stopsOf.get(place);
        String name = lay.name(place);
        for (Stop stop : stops) {
            Point centre = lay.pixel(stop.x(), stop.y());
            if (lay.dotted()) {
                drawing.add(name, new Shape.Circle(centre, lay.radius(), NO_OUTLINE, true));
            } else {
                drawing.circle(name, Stroke.LINE, centre, lay.radius());
            }
        }
        for (int i = 1; i < stops.size() && (!lay.crowded() || stops.get(i).linesBefore() == 0); i++) {
            between(place, stops.get(i - 1), stops.get(i), showsHead(stops, i));
        }
        leads(
                place,
                lay.pixel(stops.get(0).x(), stops.get(0).y()),
                lay.pixel(
                        stops.get(stops.size() - 1).x(),
                        stops.get(stops.size() - 1).y()));
        if (lay.panel.returnLine()) {
            returnLine(place);
        }
    }

    /** On every piece where there is room, else once in each line of pixels, or in the first alone. */
    private boolean showsHead(List<Stop> stops, int i) {
        if (!lay.dotted()) {
            return true;
        }
        int lineLength = lay.linesAreRows(stops.get(0).place())
                ? lay.columnsAsTurned(stops.get(0).place())
                : lay.rowsAsTurned(stops.get(0).place());
        return i % lineLength == (lineLength + 1) / 2 % lineLength && (lay.pitch >= CLOSE || i < lineLength);
    }

    private void between(int place, Stop from, Stop to, boolean head) {
        Point a = lay.pixel(from.x(), from.y());
        Point b = lay.pixel(to.x(), to.y());
        List<Point> points = new ArrayList<>(List.of(a));
        boolean neighbours = Math.abs(from.x() - to.x()) + Math.abs(from.y() - to.y()) == 1;
        if (!neighbours) {
            Point middle = new Point((a.x() + b.x()) / 2, (a.y() + b.y()) / 2);
            boolean rows = lay.linesAreRows(place);
            points.add(rows ? new Point(a.x(), middle.y()) : new Point(middle.x(), a.y()));
            points.add(rows ? new Point(b.x(), middle.y()) : new Point(middle.x(), b.y()));
        }
        points.add(b);
        if (!lay.dotted()) {
            points.set(0, a.towards(points.get(1), lay.radius()));
            points.set(points.size() - 1, b.towards(points.get(points.size() - 2), lay.radius()));
        }
        String name = lay.name(place);
        Point[] line = points.toArray(new Point[0]);
        if (!head && neighbours) {
            drawing.line(name, Stroke.FINE, line);
        } else if (!neighbours) {
            drawing.line(name, Stroke.FINE, line);
            Point middle = new Point((line[1].x() + line[2].x()) / 2, (line[1].y() + line[2].y()) / 2);
            double size = Math.min(headLength(), line[1].distanceTo(line[2]));
            drawing.arrowHead(name, line[1], middle.towards(line[2], size / 2), size);
        } else if (lay.dotted()) {
            drawing.line(name, Stroke.FINE, line);
            double half = headLength() / 2;
            Point middle = new Point((a.x() + b.x()) / 2, (a.y() + b.y()) / 2);
            drawing.arrowHead(name, a, middle.towards(b, half), headLength());
        } else {
            drawing.arrow(name, Stroke.FINE, headLength(), line);
        }
    }

    private double headLength() {
        return lay.dotted()
                ? Math.max(4, Math.min(7, lay.pitch - 2 * lay.radius() - 1))
                : Math.min(7, lay.pitch - 2 * lay.radius() - 2);
    }

    /**
     * The data's way from the input to the first pixel and from the last to the output, along the inner rim; where the
     * two must pass each other, the second runs a little further inside.
     */
    private void leads(int place, Point first, Point last) {
        Rim rim = new Rim(lay.boxes.get(place).grown(-lay.innerRim));
        Rim within = new Rim(lay.boxes.get(place).grown(-lay.innerRim - 3.5));
        double in = rim.place(lay.input(place), lay.dataIn(place));
        Rim.Way bestIn = null;
        Rim.Way bestOut = null;
        double least = Double.MAX_VALUE;
        for (double enter : approaches(rim, first)) {
            for (double leave : approaches(rim, last)) {
                for (int turn = 0; turn < 4; turn++) {
                    Rim.Way inward = rim.way(in, enter, turn % 2 == 0);
                    Rim.Way outward = rim.way(leave, rim.place(lay.output(place), lay.dataOut(place)), turn / 2 == 0);
                    double cost = inward.length() + outward.length() + (inward.touches(outward) ? 1e6 : 0);
                    if (cost < least) {
                        least = cost;
                        bestIn = inward;
                        bestOut = outward;
                    }
                }
            }
        }
        if (least >= 1e6) {
            least = Double.MAX_VALUE;
            for (double leave : approaches(within, last)) {
                for (boolean clockwise : new boolean[] {true, false}) {
                    Rim.Way outward = within.way(leave, within.place(lay.output(place), lay.dataOut(place)), clockwise);
                    if (outward.length() < least) {
                        least = outward.length();
                        bestOut = outward;
                    }
                }
            }
        }
        List<Point> entering = new ArrayList<>(List.of(lay.dataIn(place)));
        entering.addAll(bestIn.points());
        Point ahead = entering.get(entering.size() - 1);
        entering.add(lay.dotted() ? first : first.towards(ahead, lay.radius()));
        drawing.line(lay.name(place), Stroke.FINE, ChainLayout.distinct(entering));
        List<Point> leaving = new ArrayList<>(bestOut.points());
        leaving.add(0, lay.dotted() ? last : last.towards(leaving.get(0), lay.radius()));
        leaving.add(lay.dataOut(place));
        drawing.line(lay.name(place), Stroke.FINE, ChainLayout.distinct(leaving));
    }

    /** Places on the rim straight across from a pixel at the edge. */
    private List<Double> approaches(Rim rim, Point pixel) {
        List<Double> places = new ArrayList<>();
        double reach = lay.margin
                - (rim.box().left()
                        - lay.boxes.values().stream()
                                .filter(box -> box.contains(pixel))
                                .findFirst()
                                .orElseThrow()
                                .left())
                + 0.1;
        for (Compass side : Compass.values()) {
            if (side.along(side.middle(rim.box())) - side.along(pixel) <= reach) {
                places.add(rim.place(side, pixel));
            }
        }
        return places;
    }

    private void returnLine(int place) {
        Rim rim = new Rim(lay.boxes.get(place).grown(-ChainLayout.OUTER_RIM));
        List<Point> points = new ArrayList<>(List.of(lay.returnIn(place)));
        points.addAll(rim.way(
                        rim.place(lay.output(place), lay.returnIn(place)),
                        rim.place(lay.input(place), lay.returnOut(place)),
                        true)
                .points());
        points.add(lay.returnOut(place));
        drawing.line(lay.name(place), Stroke.DASHED, ChainLayout.distinct(points));
    }
}
