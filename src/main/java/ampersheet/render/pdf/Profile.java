package ampersheet.render.pdf;

import ampersheet.figure.Figure;
import ampersheet.sheet.Document.Paper;

/**
 * For whom a handout is set. Sizes after the guidance on clear and large print (12 point and more, 18 point and more)
 * and on easy reading (a sans serif face, wide lines, bold instead of italics).
 *
 * @see PrintStyle
 */
public enum Profile {
    REGULAR(12, 1.3, 1.2, false),
    LARGE(18, 1.25, 1.2, true),
    EASY(12, 1.5, 1.5, true);

    private final int points;
    private final double leading;
    private final double closeLeading;
    private final boolean sansSerif;

    Profile(int points, double leading, double closeLeading, boolean sansSerif) {
        this.points = points;
        this.leading = leading;
        this.closeLeading = closeLeading;
        this.sansSerif = sansSerif;
    }

    /** Size of the running text. */
    public int points() {
        return points;
    }

    /** Keys are for the instructor's desk and a little smaller. */
    int keyPoints() {
        return points - 1;
    }

    /** Distance of lines in ems. */
    double leading() {
        return leading;
    }

    /** Distance of lines where a few of them are too much for the page; easy reading keeps its own. */
    double closeLeading() {
        return closeLeading;
    }

    /** Width in pixels of the widest drawing that a page can show with its lettering at the profile's size. */
    public double widestDrawing(Paper paper) {
        return Math.min(Figure.PAGE_WIDTH, PrintStyle.textWidth(paper) / FigureSize.millimetresPerPixel(this));
    }

    boolean sansSerif() {
        return sansSerif;
    }
}
