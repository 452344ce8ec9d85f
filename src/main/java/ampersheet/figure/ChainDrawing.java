package ampersheet.figure;

import java.util.ArrayList;
import java.util.List;

/**
 * Draws a panel at one distance between pixels. Inside a tile the data's leads run on an inner rim and the return line
 * on an outer one.
 */
final class ChainDrawing {
    static final double HEAD = 7;
    private static final double CORNER_MARK = 8;
    private static final String CORNER = "top left corner of the tile when upright";

    private static final String FIRST_LINE = "inside a tile: way in, first line, way out";

    private final ChainLayout lay;
    private final Drawing drawing = new Drawing();

    /** @param outlineOnly without pixels, to see how large it would be */
    ChainDrawing(ChainLayout lay, boolean outlineOnly) {
        this.lay = lay;
        LabelPlacer placer = new LabelPlacer(drawing);
        PanelWiring wiring = new PanelWiring(lay, drawing, placer);
        ChainLabels labels = new ChainLabels(lay, drawing);
        lay.boxes.keySet().forEach(this::tile);
        if (!outlineOnly) {
            lay.boxes.keySet().forEach(new TileWiring(lay, drawing)::pixels);
        }
        wiring.links();
        wiring.controller();
        wiring.end();
        boolean columns = labels.columnNumbers();
        boolean rows = labels.rowNumbers();
        wiring.portNames();
        lay.marks.forEach(mark -> MarkLabel.draw(lay, drawing, placer, mark));
        legend(numbers(columns, rows));
    }

    Drawing drawing() {
        return drawing;
    }

    private void tile(int place) {
        Box box = lay.boxes.get(place);
        drawing.add(lay.name(place), new Shape.Outline(ChainLayout.corners(box), 5, Stroke.LINE));
        if (!lay.anyTurned()) {
            return;
        }
        int turned = lay.panel.places().get(place).quarterTurns();
        List<Point> corners = ChainLayout.corners(box);
        Point corner = corners.get(turned);
        drawing.filled(
                lay.name(place),
                corner.towards(corners.get((turned + 1) % 4), CORNER_MARK),
                corner,
                corner.towards(corners.get((turned + 3) % 4), CORNER_MARK));
    }

    /** What the numbers are that are there. */
    private String numbers(boolean columns, boolean rows) {
        return !lay.hasRows()
                ? "numbers: addresses of the pixels"
                : columns && rows
                        ? "numbers: columns above, rows at the left"
                        : columns ? "numbers: columns above" : rows ? "numbers: rows at the left" : "";
    }

    private void legend(String numbers) {
        Box whole = drawing.bounds();
        double x = whole.left();
        double y = whole.bottom() + 18;
        double limit = Math.max(whole.right(), whole.left() + 300);
        List<String> texts = new ArrayList<>(List.of("data"));
        if (lay.panel.returnLine()) {
            texts.add("return line");
        }
        if (lay.anyTurned()) {
            texts.add(CORNER);
        }
        if (!numbers.isEmpty()) {
            texts.add(numbers);
        }
        if (lay.crowded()) {
            texts.add(FIRST_LINE);
        }
        for (String text : texts) {
            Lettering lettering = Lettering.plain(text, Lettering.SMALL);
            double sample = text.equals(numbers) || text.equals(FIRST_LINE) ? -6 : text.equals(CORNER) ? 14 : 32;
            if (x > whole.left() && x + sample + 6 + lettering.width() > limit) {
                x = whole.left();
                y += 18;
            }
            switch (text) {
                case "data" -> drawing.arrow("legend", Stroke.LINE, HEAD, new Point(x, y), new Point(x + sample, y));
                case "return line" ->
                    drawing.arrow("legend", Stroke.DASHED, HEAD, new Point(x, y), new Point(x + sample, y));
                case CORNER ->
                    drawing.filled("legend", new Point(x, y - 5), new Point(x + 10, y - 5), new Point(x, y + 5));
                default -> {}
            }
            drawing.add(
                    "legend",
                    new Shape.Words(lettering, new Point(x + sample + 6, y + 4), Lettering.Anchor.START, false));
            x += sample + 6 + lettering.width() + 22;
        }
    }
}
