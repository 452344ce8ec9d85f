package ampersheet.figure;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.IntFunction;
import java.util.function.ToIntFunction;

/** The numbers of columns and rows. */
final class ChainLabels {
    /** From the edge of the panel to the middle of the columns' numbers. */
    private static final double ABOVE = 12.5;
    /** To the end of the rows' numbers: clear of the heads of arrows into a tile. */
    private static final double BESIDE = ChainDrawing.HEAD + 1.5;

    private final ChainLayout lay;
    private final Drawing drawing;

    ChainLabels(ChainLayout lay, Drawing drawing) {
        this.lay = lay;
        this.drawing = drawing;
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
        Map<Double, Integer> at = new LinkedHashMap<>(); // by height: a row that goes on below is numbered there too
        lay.boxes.forEach((place, box) ->
                at.putIfAbsent(box.top(), lay.panel.places().get(place).row()));
        boolean any = false;
        for (Map.Entry<Double, Integer> tile : at.entrySet()) {
            any |= numbers(
                    lay.rowNumbers,
                    tile.getValue(),
                    marked(ChainFigure.Mark::y, tile.getValue(), lay.tile.rows()),
                    i -> new Point(lay.extent.left() - BESIDE, tile.getKey() + lay.margin + i * lay.pitch),
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
}
