package ampersheet.figure;

import ampersheet.figure.LabelPlacer.Side;
import ampersheet.figure.LabelPlacer.Spot;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/** The numbers of columns and rows, and the rings and labels of marked pixels. */
final class ChainLabels {
    private final ChainLayout lay;
    private final Drawing drawing;
    private final LabelPlacer placer;

    ChainLabels(ChainLayout lay, Drawing drawing, LabelPlacer placer) {
        this.lay = lay;
        this.drawing = drawing;
        this.placer = placer;
    }

    void columnNumbers() {
        Map<Integer, Point> at = new LinkedHashMap<>();
        boolean lines = lay.tilesInLine < lay.boxes.size();
        lay.boxes.forEach((place, box) -> {
            int first = lay.panel.places().get(place).column() * lay.tile.columns();
            for (int i = 0; i < lay.tile.columns(); i++) {
                at.putIfAbsent(
                        first + i,
                        new Point(box.left() + lay.margin + i * lay.pitch, (lines ? box : lay.extent).top() - 10));
            }
        });
        Set<Integer> marked = new TreeSet<>();
        lay.marks.forEach(mark -> marked.add(mark.x()));
        int step = lay.columnStep();
        marked.forEach(column -> number(column, at.get(column), true, true));
        at.forEach((column, point) -> {
            if (column % step == 0 && !marked.contains(column)) {
                number(column, point, true, false);
            }
        });
    }

    void rowNumbers() {
        if (!lay.hasRows()) {
            return;
        }
        Map<Integer, Double> at = new LinkedHashMap<>();
        lay.boxes.forEach((place, box) -> {
            int first = lay.panel.places().get(place).row() * lay.tile.rows();
            for (int i = 0; i < lay.tile.rows(); i++) {
                at.putIfAbsent(first + i, box.top() + lay.margin + i * lay.pitch);
            }
        });
        Set<Integer> marked = new TreeSet<>();
        lay.marks.forEach(mark -> marked.add(mark.y()));
        int step = lay.step(ChainLayout.ROW_NUMBER_ROOM);
        marked.forEach(row -> number(row, new Point(lay.extent.left() - 6, at.get(row)), false, true));
        at.forEach((row, y) -> {
            if (row % step == 0 && !marked.contains(row)) {
                number(row, new Point(lay.extent.left() - 6, y), false, false);
            }
        });
    }

    /** Where a line runs, left out or set so little higher or lower that it is still at its own row. */
    private void number(int value, Point at, boolean above, boolean bold) {
        Lettering text = Lettering.plain(Integer.toString(value), Lettering.SMALL);
        Lettering lettering = bold ? text.inBold() : text;
        for (double shift : new double[] {0, -3, 3, -5, 5, -9, 9, -13, 13}) {
            if (Math.abs(shift) > (bold ? 13 : 0.3 * lay.pitch)) {
                continue;
            }
            Point baseline = at.plus(0, 0.34 * Lettering.SMALL + (above ? 0 : shift));
            Shape.Words words =
                    new Shape.Words(lettering, baseline, above ? Lettering.Anchor.MIDDLE : Lettering.Anchor.END, false);
            if (drawing.isFree(words.bounds().grown(1))) {
                drawing.add("", words);
                return;
            }
        }
    }

    void mark(ChainFigure.Mark mark) {
        Point centre = lay.pixel(mark.x(), mark.y());
        String name = "mark " + mark.x() + " " + mark.y();
        double ring = lay.radius() + (lay.dotted() ? 3.2 : 4);
        drawing.circle(name, Stroke.STRONG, centre, ring);
        if (mark.label().isEmpty()) {
            return;
        }
        List<Lettering> lines =
                List.of(Lettering.plain(mark.label(), Lettering.BODY).inBold());
        for (double diagonal : new double[] {1, -1}) {
            Point at = centre.plus(lay.pitch / 2, diagonal * -lay.pitch / 2);
            Box box = LabelPlacer.box(lines, new Spot(at.plus(-lines.get(0).width() / 2, 0), Side.RIGHT));
            if (drawing.isFree(box.grown(1))) {
                placer.place(name, lines, List.of(new Spot(at.plus(-lines.get(0).width() / 2, 0), Side.RIGHT)));
                return;
            }
        }
        if (lay.boxes.size() == 1 || !besideItsTile(name, centre, ring, lines)) {
            callOut(name, centre, ring, lines);
        }
    }

    /**
     * The label in a gap next to the tile, so that its line crosses no other tile and no numbers; false without room.
     */
    private boolean besideItsTile(String name, Point centre, double ring, List<Lettering> lines) {
        Box box = lay.boxes.values().stream()
                .filter(tile -> tile.contains(centre))
                .findFirst()
                .orElseThrow();
        List<Spot> spots = new ArrayList<>();
        for (double slide = -1; slide <= 1; slide += 0.125) {
            double y = box.centre().y() + slide * box.height() / 2;
            double x = box.centre().x() + slide * box.width() / 2;
            spots.add(new Spot(new Point(box.right() + 4, y), Side.RIGHT));
            spots.add(new Spot(new Point(x, box.bottom() + 3), Side.BELOW));
            if (box.left() > lay.extent.left()) {
                spots.add(new Spot(new Point(box.left() - 4, y), Side.LEFT));
            }
            if (box.top() > lay.extent.top()) {
                spots.add(new Spot(new Point(x, box.top() - 3), Side.ABOVE));
            }
        }
        Spot best = null;
        double least = Double.MAX_VALUE;
        for (Spot spot : spots) {
            double cost = drawing.obstacles(centre.towards(spot.at(), ring + 3), spot.at())
                    + centre.distanceTo(spot.at()) / 20;
            if (cost < least
                    && isSlanting(centre, spot.at())
                    && drawing.isFree(LabelPlacer.box(lines, spot).grown(1))) {
                least = cost;
                best = spot;
            }
        }
        if (best != null) {
            drawing.line(
                    name,
                    Stroke.FINE,
                    centre.towards(best.at(), ring),
                    best.at().towards(centre, 1));
            placer.place(name, lines, List.of(best));
        }
        return best != null;
    }

    /** Level or upright it would look like a data line. */
    private static boolean isSlanting(Point from, Point to) {
        double across = Math.abs(to.x() - from.x());
        double down = Math.abs(to.y() - from.y());
        return Math.min(across, down) >= 0.2 * Math.max(across, down);
    }

    /** The label outside, at the end of a slanting line that no data line is taken for and that crosses little. */
    private void callOut(String name, Point centre, double ring, List<Lettering> lines) {
        Spot best = null;
        double least = Double.MAX_VALUE;
        for (double slant : new double[] {0.3, -0.3, 0.5, -0.5, 0.8, -0.8}) {
            double up = centre.y() - lay.extent.top() + ChainLayout.NUMBER_ROOM + 2;
            double down = lay.extent.bottom() + 12 - centre.y();
            double right = lay.extent.right() + 34 - centre.x();
            for (Spot spot : List.of(
                    new Spot(centre.plus(slant * up, -up), Side.ABOVE),
                    new Spot(centre.plus(slant * down, down), Side.BELOW),
                    new Spot(centre.plus(right, slant * right), Side.RIGHT))) {
                double cost = drawing.obstacles(centre.towards(spot.at(), ring + 3), spot.at())
                        + centre.distanceTo(spot.at()) / 100
                        + drawing.crowd(LabelPlacer.box(lines, spot).grown(2)) * 1000;
                if (cost < least) {
                    least = cost;
                    best = spot;
                }
            }
        }
        drawing.line(
                name, Stroke.FINE, centre.towards(best.at(), ring), best.at().towards(centre, 2));
        placer.place(name, lines, List.of(best));
    }
}
