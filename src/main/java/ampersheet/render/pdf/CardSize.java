package ampersheet.render.pdf;

import ampersheet.sheet.Document.Paper;
import java.util.List;

/** What share of a page a bench card has, and how large it is set; the letters of its figure are at least 9 point. */
enum CardSize {
    /** A6 on A4. */
    QUARTER(4, List.of(new Setting(10, 1.12), new Setting(9.5, 1), new Setting(9, 1))),
    /** A5 on A4, lying. */
    HALF(
            2,
            List.of(
                    new Setting(12, 1.3),
                    new Setting(11, 1.2),
                    new Setting(10, 1.1),
                    new Setting(9.5, 1),
                    new Setting(9, 1))),
    WHOLE(1, List.of(new Setting(12, 1.3), new Setting(11, 1.1), new Setting(10, 1)));

    private static final double MILLIMETRES_PER_PIXEL = 25.4 / 96;
    /** Between the edge of a card and what stands on it, in millimetres. */
    static final double SIDE = 5;

    static final double ABOVE_AND_BELOW = 3.5;
    /** Text and what figures are labelled with at 18 point, signs at 14. */
    private static final List<Setting> LARGE_PRINT = List.of(new Setting(18, 1.6));

    /** Between the two columns of a lying card. */
    private static final double GAP = 5;

    private final int perPage;
    private final List<Setting> settings;

    /**
     * @param points of the text
     * @param scale of the figure, whose smallest letters are 9 point at 1; larger is not needed if it is not as wide
     */
    record Setting(double points, double scale) {}

    CardSize(int perPage, List<Setting> settings) {
        this.perPage = perPage;
        this.settings = settings;
    }

    /** In the order in which they are tried; large print takes a page. */
    static List<CardSize> of(Profile profile) {
        return profile == Profile.LARGE ? List.of(WHOLE) : List.of(values());
    }

    /** Largest first. */
    List<Setting> settings(Profile profile) {
        return profile == Profile.LARGE ? LARGE_PRINT : settings;
    }

    double width(Paper paper) {
        return PrintStyle.width(paper) / (this == QUARTER ? 2 : 1);
    }

    double height(Paper paper) {
        return PrintStyle.height(paper) / (this == WHOLE ? 1 : 2);
    }

    /** From padding to padding. */
    double inside(Paper paper) {
        return width(paper) - 2 * SIDE;
    }

    /** Of each of two columns on a lying card. */
    double column(Paper paper) {
        return (inside(paper) - GAP) / 2;
    }

    int perPage() {
        return perPage;
    }

    /** Width in pixels of the widest drawing that it holds at the smallest setting. */
    double widestDrawing(Paper paper, Profile profile) {
        List<Setting> all = settings(profile);
        return inside(paper) / (MILLIMETRES_PER_PIXEL * all.get(all.size() - 1).scale());
    }
}
