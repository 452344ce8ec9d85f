package ampersheet.figure;

import ampersheet.language.Language;
import java.util.ArrayList;
import java.util.List;

/**
 * Draws a panel at one distance between pixels. Inside a tile the data's leads run on an inner rim and the return line
 * on an outer one.
 */
final class ChainDrawing {
    static final double HEAD = 7;
    private static final double CORNER_MARK = 8;

    private final ChainLayout lay;
    private final Language language;
    private final Drawing drawing = new Drawing();

    /** @param outlineOnly without pixels, to see how large it would be */
    ChainDrawing(ChainLayout lay, boolean outlineOnly, Language language) {
        this.lay = lay;
        this.language = language;
        LabelPlacer placer = new LabelPlacer(drawing);
        PanelWiring wiring = new PanelWiring(lay, drawing, placer, language);
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
        legend(entries(columns, rows));
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

    /** What stands under the panel: a line as it is drawn there, or a mark, and what it is. */
    private enum Sample {
        DATA(32),
        RETURN_LINE(32),
        CORNER(14),
        /** Words that explain themselves. */
        NONE(-6);

        private final double width;

        Sample(double width) {
            this.width = width;
        }
    }

    private record Entry(Sample sample, String text) {}

    private List<Entry> entries(boolean columns, boolean rows) {
        List<Entry> entries = new ArrayList<>();
        entries.add(new Entry(Sample.DATA, language.say("figure.chain.legend.data")));
        if (lay.panel.returnLine()) {
            entries.add(new Entry(Sample.RETURN_LINE, language.say("figure.chain.legend.return-line")));
        }
        if (lay.anyTurned()) {
            entries.add(new Entry(Sample.CORNER, language.say("figure.chain.legend.corner")));
        }
        if (!lay.hasRows()) {
            entries.add(new Entry(Sample.NONE, language.say("figure.chain.legend.addresses")));
        } else if (columns && rows) {
            entries.add(new Entry(Sample.NONE, language.say("figure.chain.legend.columns-and-rows")));
        } else if (columns || rows) {
            entries.add(new Entry(
                    Sample.NONE, language.say(columns ? "figure.chain.legend.columns" : "figure.chain.legend.rows")));
        }
        if (lay.crowded()) {
            entries.add(new Entry(Sample.NONE, language.say("figure.chain.legend.first-line")));
        }
        return entries;
    }

    private void legend(List<Entry> entries) {
        Box whole = drawing.bounds();
        double x = whole.left();
        double y = whole.bottom() + 18;
        double limit = Math.max(whole.right(), whole.left() + 300);
        for (Entry entry : entries) {
            Lettering lettering = Lettering.plain(entry.text(), Lettering.SMALL);
            double sample = entry.sample().width;
            if (x > whole.left() && x + sample + 6 + lettering.width() > limit) {
                x = whole.left();
                y += 18;
            }
            switch (entry.sample()) {
                case DATA -> drawing.arrow("legend", Stroke.LINE, HEAD, new Point(x, y), new Point(x + sample, y));
                case RETURN_LINE ->
                    drawing.arrow("legend", Stroke.DASHED, HEAD, new Point(x, y), new Point(x + sample, y));
                case CORNER ->
                    drawing.filled("legend", new Point(x, y - 5), new Point(x + 10, y - 5), new Point(x, y + 5));
                case NONE -> {}
            }
            drawing.add(
                    "legend",
                    new Shape.Words(lettering, new Point(x + sample + 6, y + 4), Lettering.Anchor.START, false));
            x += sample + 6 + lettering.width() + 22;
        }
    }
}
