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
    /** Little paper: problems one after another in two columns, as many to a page as it holds. */
    COMPACT(9.5, 1.15, 1.15, false),
    REGULAR(12, 1.3, 1.2, false),
    LARGE(18, 1.25, 1.2, true),
    EASY(12, 1.5, 1.5, true);

    /** In millimetres: what the names of its lines may stick out. */
    private static final double BESIDE_A_CURVE = 2;

    private final double points;
    private final double leading;
    private final double closeLeading;
    private final boolean sansSerif;

    Profile(double points, double leading, double closeLeading, boolean sansSerif) {
        this.points = points;
        this.leading = leading;
        this.closeLeading = closeLeading;
        this.sansSerif = sansSerif;
    }

    /** Size of the running text. */
    public double points() {
        return points;
    }

    /** Of a sheet's running head; nothing is small in large print. */
    double headPoints() {
        return this == LARGE ? points : PrintStyle.HEAD_POINTS;
    }

    /** Keys are for the instructor's desk and a little smaller. */
    double keyPoints() {
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
        if (columns()) {
            return (PrintStyle.columnWidth(paper, this) - BESIDE_A_CURVE) / FigureSize.LEAST_SCALE;
        }
        double width = PrintStyle.textWidth(paper, this) - (this == LARGE ? BESIDE_A_CURVE : 0);
        return Math.min(Figure.PAGE_WIDTH, width / FigureSize.millimetresPerPixel(this));
    }

    /** Whether what is narrow enough stands in two columns. */
    boolean columns() {
        return this == COMPACT;
    }

    /** In millimetres; the running head stands in it. */
    double topMargin() {
        return columns() ? 15 : 20;
    }

    double bottomMargin() {
        return columns() ? 11 : 16;
    }

    /** Room to hold the leaf, and for holes; in large print the lines and drawings need the room more. */
    double sideMargin() {
        if (this == LARGE) {
            return 11;
        }
        return columns() ? 15 : 18;
    }

    boolean sansSerif() {
        return sansSerif;
    }
}
