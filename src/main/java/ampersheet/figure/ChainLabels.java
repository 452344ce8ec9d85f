package ampersheet.figure;

import ampersheet.figure.LabelPlacer.Side;
import ampersheet.figure.LabelPlacer.Spot;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.IntFunction;
import java.util.function.ToIntFunction;

/** The numbers of columns and rows, and the rings and labels of marked pixels. */
final class ChainLabels {
    /** From the edge of the panel to the middle of the columns' numbers. */
    private static final double ABOVE = 11;
    /** To the end of the rows' numbers: clear of the heads of arrows into a tile. */
    private static final double BESIDE = ChainDrawing.HEAD + 1.5;

    private final ChainLayout lay;
    private final Drawing drawing;
    private final LabelPlacer placer;

    ChainLabels(ChainLayout lay, Drawing drawing, LabelPlacer placer) {
        this.lay = lay;
        this.drawing = drawing;
        this.placer = placer;
    }

    /** @return whether any was written */
    boolean columnNumbers() {
        Map<Integer, Point> at = new LinkedHashMap<>();
        boolean lines = lay.tilesInLine < lay.boxes.size();
        lay.boxes.forEach((place, box) -> at.putIfAbsent(
                lay.panel.places().get(place).column(),
                new Point(box.left() + lay.margin, (lines ? box : lay.extent).top() - ABOVE)));
        boolean any = false;
        for (Map.Entry<Integer, Point> tile : at.entrySet()) {
            any |= numbers(
                    lay.columnNumbers,
                    tile.getKey(),
                    marked(ChainFigure.Mark::x, tile.getKey(), lay.tile.columns()),
                    i -> tile.getValue().plus(i * lay.pitch, 0),
                    Lettering.Anchor.MIDDLE);
        }
        return any;
    }

    /** @return whether any was written */
    boolean rowNumbers() {
        if (!lay.hasRows()) {
            return false;
        }
        Map<Integer, Point> at = new LinkedHashMap<>();
        lay.boxes.forEach((place, box) -> at.putIfAbsent(
                lay.panel.places().get(place).row(), new Point(lay.extent.left() - BESIDE, box.top() + lay.margin)));
        boolean any = false;
        for (Map.Entry<Integer, Point> tile : at.entrySet()) {
            any |= numbers(
                    lay.rowNumbers,
                    tile.getKey(),
                    marked(ChainFigure.Mark::y, tile.getKey(), lay.tile.rows()),
                    i -> tile.getValue().plus(0, i * lay.pitch),
                    Lettering.Anchor.END);
        }
        return any;
    }

    private Set<Integer> marked(ToIntFunction<ChainFigure.Mark> at, int tile, int pixels) {
        Set<Integer> marked = new TreeSet<>();
        for (ChainFigure.Mark mark : lay.marks) {
            if (at.applyAsInt(mark) / pixels == tile) {
                marked.add(at.applyAsInt(mark) % pixels);
            }
        }
        return marked;
    }

    private boolean numbers(
            Numbering numbering, int tile, Set<Integer> marked, IntFunction<Point> at, Lettering.Anchor anchor) {
        IntFunction<Shape.Words> number = i -> {
            Lettering text = Lettering.plain(Integer.toString(tile * numbering.pixels() + i), Lettering.SMALL);
            Point baseline = at.apply(i).plus(0, Lettering.DIGIT_HEIGHT / 2 * Lettering.SMALL);
            return new Shape.Words(marked.contains(i) ? text.inBold() : text, baseline, anchor, false);
        };
        List<Integer> numbered = numbering.numbered(
                marked, i -> drawing.isFree(number.apply(i).bounds().grown(0.5)));
        numbered.forEach(i -> drawing.add("", number.apply(i)));
        return !numbered.isEmpty();
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
