package ampersheet.figure;

import ampersheet.chain.TileRow;
import ampersheet.language.Language;
import java.util.List;

/** The row from its stop to its last edge; the gaps are drawn far too wide, so that they can be seen. */
final class RowDrawing {
    /** For the stop and the last edge, and without the word at the stop, which may be long. */
    private static final double BESIDES = 82;

    private static final double BESIDES_WITHOUT_WORD = 53;

    private static final double WIDEST_TILE = 74;
    /** Room for a number of two digits. */
    private static final double NARROWEST_TILE = 22;

    private static final double ELLIPSIS = 34;
    private static final double GAP = 10;
    private static final double HEIGHT = 44;
    private static final double HATCH = 8;
    private static final double HEAD = 7;

    private final Drawing drawing = new Drawing();
    private final Language language;

    /** Where the width does not allow all tiles, some before the last are left out. */
    RowDrawing(TileRow row, double widest, Language language) {
        this.language = language;
        Lettering stop = Lettering.plain(language.say("figure.row.drawn.stop"), Lettering.SMALL);
        double room = widest - Math.max(BESIDES, BESIDES_WITHOUT_WORD + stop.width());
        boolean elided = room / row.tiles() - GAP < NARROWEST_TILE;
        int shown = elided ? Math.max(2, (int) Math.floor((room - ELLIPSIS) / (NARROWEST_TILE + GAP))) : row.tiles();
        double width = elided ? NARROWEST_TILE : Math.min(WIDEST_TILE, room / row.tiles() - GAP);
        stop(stop);
        double left = GAP;
        for (int at = 0; at < shown; at++) {
            int tile = elided && at == shown - 1 ? row.tiles() - 1 : at;
            if (tile > at) {
                for (int dot = -1; dot <= 1; dot++) {
                    drawing.dot("left out", new Point(left + ELLIPSIS / 2 - GAP / 2 + 7 * dot, HEIGHT / 2), 1.6);
                }
                left += ELLIPSIS;
            }
            Box box = new Box(left, 0, left + width, HEIGHT);
            drawing.rectangle("tile " + (tile + 1), Stroke.LINE, box);
            drawing.words("tile " + (tile + 1), Lettering.plain("" + (tile + 1), Lettering.BODY), box.centre());
            Point joint = new Point(left - GAP / 2, -4);
            drawing.arrow("tile " + (tile + 1), Stroke.FINE, 6, joint.plus(0, -14), joint);
            if (width > 30 || at % 2 == 0) {
                drawing.add(
                        "tile " + (tile + 1),
                        new Shape.Words(symbol("± ", "e"), joint.plus(0, -20), Lettering.Anchor.MIDDLE, false));
            }
            left += width + GAP;
        }
        length(GAP, GAP + width);
        lastEdge(left - GAP);
    }

    Drawing drawing() {
        return drawing;
    }

    private static Lettering symbol(String before, String letter) {
        List<Lettering.Run> runs = before.isEmpty()
                ? List.of(new Lettering.Run(letter, Lettering.Face.ITALIC))
                : List.of(
                        new Lettering.Run(before, Lettering.Face.UPRIGHT),
                        new Lettering.Run(letter, Lettering.Face.ITALIC));
        return new Lettering(runs, Lettering.BODY, false);
    }

    private void stop(Lettering word) {
        drawing.line("stop", Stroke.STRONG, new Point(0, -10), new Point(0, HEIGHT + 10));
        for (double y = -10; y <= HEIGHT + 2; y += 9) {
            drawing.line("stop", Stroke.FINE, new Point(0, y), new Point(-HATCH, y + HATCH));
        }
        drawing.add("stop", new Shape.Words(word, new Point(-HATCH - 5, HEIGHT / 2 + 4), Lettering.Anchor.END, false));
    }

    private void length(double from, double to) {
        double y = HEIGHT + 16;
        for (double x : new double[] {from, to}) {
            drawing.line("length", Stroke.FINE, new Point(x, HEIGHT + 6), new Point(x, y + 5));
        }
        Point middle = new Point((from + to) / 2, y);
        drawing.arrow("length", Stroke.FINE, 6, middle, new Point(from, y));
        drawing.arrow("length", Stroke.FINE, 6, middle, new Point(to, y));
        drawing.add("length", new Shape.Words(symbol("", "l"), middle.plus(0, 17), Lettering.Anchor.MIDDLE, false));
    }

    private void lastEdge(double x) {
        drawing.line("last edge", Stroke.DASHED, new Point(x + 16, -10), new Point(x + 16, HEIGHT + 14));
        drawing.arrow("last edge", Stroke.FINE, HEAD, new Point(x + 16, HEIGHT + 9), new Point(x, HEIGHT + 9));
        drawing.arrow("last edge", Stroke.FINE, HEAD, new Point(x, HEIGHT + 9), new Point(x + 16, HEIGHT + 9));
        drawing.add(
                "last edge",
                new Shape.Words(
                        Lettering.plain("?", Lettering.BODY).inBold(),
                        new Point(x + 8, HEIGHT + 30),
                        Lettering.Anchor.MIDDLE,
                        false));
        drawing.add(
                "last edge",
                new Shape.Words(
                        Lettering.plain(language.say("figure.row.drawn.belongs"), Lettering.SMALL),
                        new Point(x + 18, HEIGHT + 46),
                        Lettering.Anchor.END,
                        false));
    }
}
