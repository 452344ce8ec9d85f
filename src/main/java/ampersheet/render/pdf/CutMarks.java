package ampersheet.render.pdf;

import ampersheet.figure.Point;
import ampersheet.figure.Stroke;
import ampersheet.sheet.Document.Paper;
import java.util.List;

/**
 * Where a knife divides a page into cards: lines at the middle of each edge that it meets, and a cross in the centre of
 * four quarters; in millimetres.
 *
 * @param upper whether a cut divides the upper half of the page
 * @param lower likewise
 * @param across whether one divides it into halves
 */
record CutMarks(Paper paper, boolean upper, boolean lower, boolean across) implements OnPaper {
    /** Length of a mark; its middle is where the knife goes. */
    private static final double MARK = 8;

    private static final Stroke LINE = new Stroke(0.35);

    CutMarks(Paper paper, List<CardMarkup> page) {
        this(
                paper,
                isQuarter(page, "north"),
                isQuarter(page, "south"),
                page.stream().noneMatch(card -> card.size() == CardSize.WHOLE));
    }

    private static boolean isQuarter(List<CardMarkup> page, String half) {
        List<String> places = CardMarkup.places(page);
        for (int i = 0; i < page.size(); i++) {
            if (places.get(i).endsWith(half) && page.get(i).size() == CardSize.QUARTER) {
                return true;
            }
        }
        return false;
    }

    @Override
    public double width() {
        return PrintStyle.width(paper);
    }

    /** A little less than the page, or another one would begin. */
    @Override
    public double height() {
        return PrintStyle.height(paper) - 0.4;
    }

    @Override
    public void draw(PaperPen pen) {
        double w = width();
        double h = height();
        double x = w / 2;
        double y = PrintStyle.height(paper) / 2;
        if (upper) {
            line(pen, x, 0, x, MARK);
        }
        if (lower) {
            line(pen, x, h - MARK, x, h);
        }
        if (across) {
            line(pen, 0, y, MARK, y);
            line(pen, w - MARK, y, w, y);
        }
        if (upper && lower) {
            line(pen, x - MARK / 2, y, x + MARK / 2, y);
            line(pen, x, y - MARK / 2, x, y + MARK / 2);
        }
    }

    private static void line(PaperPen pen, double x1, double y1, double x2, double y2) {
        pen.line(List.of(new Point(x1, y1), new Point(x2, y2)), LINE);
    }
}
