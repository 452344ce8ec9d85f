package ampersheet.render.pdf;

import ampersheet.figure.Figure;
import ampersheet.sheet.Document.Paper;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How large drawings are on paper, in millimetres. Their lettering has the size of the profile; where that saves a page
 * it may be a little smaller, but never in large print.
 */
record FigureSize(double width, double height) {
    private static final double MILLIMETRES_PER_PIXEL = 25.4 / 96;
    /** The lettering of drawings is 15 pixels, 11.25 points, in the regular profile. */
    private static final double REGULAR_POINTS = 12;
    /** In large print the lettering of drawings has the size of the running text. */
    private static final double POINTS_OF_LETTERING = 11.25;

    /** Of the page's width; the givens take the rest. */
    private static final double SHARE_BESIDE_GIVENS = 0.60;
    /** Of the page's height, one drawing among several less. */
    private static final double TALLEST = 0.40;

    private static final double TALLEST_OF_SEVERAL = 0.30;
    private static final double TALLEST_IN_COLUMN = 0.17;
    /** Its lettering is then 9 point still. */
    private static final double SMALLEST = 0.8;
    /** Worth shrinking to this, so that the givens or another drawing can stand beside it. */
    private static final double SMALL_ENOUGH = 0.85;

    /** Millimetres per pixel at which the smallest lettering of drawings, 12 pixels, is 7 point still. */
    static final double LEAST_SCALE = 7 * 25.4 / 72 / 12;

    private static final double GAP = 6;

    /** Sizes of drawings that belong together, in order; neighbours that fit side by side are made to. */
    static List<FigureSize> of(List<Figure> figures, Profile profile, Paper paper) {
        List<FigureSize> natural = new ArrayList<>();
        double least = smallEnough(profile);
        double tallest = tallest(figures, profile, paper);
        for (Figure figure : figures) {
            FigureSize size = natural(figure, profile);
            double shrink = Math.min(1, PrintStyle.textWidth(paper, profile) / size.width);
            if (profile != Profile.LARGE) {
                shrink = Math.min(shrink, Math.max(smallest(profile), tallest / size.height));
            }
            natural.add(size.times(shrink));
            least = Math.max(least, smallest(profile) / shrink); // what is small already is not made smaller twice
        }
        if (profile == Profile.LARGE) {
            return natural;
        }
        return figures.size() == 1
                ? List.of(natural.get(0).within(SHARE_BESIDE_GIVENS * PrintStyle.textWidth(paper, profile), least))
                : sideBySide(natural, PrintStyle.textWidth(paper, profile), least);
    }

    /** Below each other in a column; empty if one of them is too wide to be read there. */
    static Optional<List<FigureSize>> inColumn(List<Figure> figures, Profile profile, Paper paper) {
        List<FigureSize> sizes = new ArrayList<>();
        for (Figure figure : figures) {
            FigureSize size = natural(figure, profile);
            double shrink = Math.min(1, PrintStyle.columnWidth(paper, profile) / size.width);
            if (shrink < smallest(profile)) {
                return Optional.empty();
            }
            double tallest = TALLEST_IN_COLUMN * PrintStyle.textHeight(paper, profile);
            sizes.add(size.times(Math.min(shrink, Math.max(smallest(profile), tallest / size.height))));
        }
        return Optional.of(sizes);
    }

    private static double tallest(List<Figure> figures, Profile profile, Paper paper) {
        return (figures.size() > 1 ? TALLEST_OF_SEVERAL : TALLEST) * PrintStyle.textHeight(paper, profile);
    }

    /** At the card's setting, or a little smaller where it is as wide as the card or its column then. */
    static FigureSize onCard(Figure figure, CardMarkup card, Paper paper) {
        FigureSize size = natural(figure, Profile.REGULAR);
        double least = card.setting().points() >= Profile.LARGE.points()
                ? card.setting().scale()
                : 1;
        double most = card.setting().scale();
        double room = size.width * least <= card.size().column(paper) && card.size() == CardSize.HALF
                ? card.size().column(paper)
                : card.size().inside(paper);
        double scale = Math.min(most, room / size.width);
        return size.times(Math.max(least, scale));
    }

    private static List<FigureSize> sideBySide(List<FigureSize> sizes, double width, double least) {
        List<FigureSize> fitted = new ArrayList<>();
        for (int i = 0; i < sizes.size(); i++) {
            FigureSize size = sizes.get(i);
            if (i + 1 < sizes.size()) {
                double both = size.width + sizes.get(i + 1).width;
                double shrink = (width - 2 * GAP) / both;
                if (shrink >= least) {
                    fitted.add(size.times(Math.min(1, shrink)));
                    fitted.add(sizes.get(i + 1).times(Math.min(1, shrink)));
                    i++;
                    continue;
                }
            }
            fitted.add(size);
        }
        return fitted;
    }

    private static FigureSize natural(Figure figure, Profile profile) {
        double scale = millimetresPerPixel(profile);
        return new FigureSize(figure.picture().width() * scale, figure.picture().height() * scale);
    }

    private static double smallest(Profile profile) {
        return Math.max(SMALLEST, LEAST_SCALE / millimetresPerPixel(profile));
    }

    private static double smallEnough(Profile profile) {
        return Math.max(SMALL_ENOUGH, smallest(profile));
    }

    static double millimetresPerPixel(Profile profile) {
        double points = profile == Profile.LARGE ? POINTS_OF_LETTERING : REGULAR_POINTS;
        return profile.points() / points * MILLIMETRES_PER_PIXEL;
    }

    /** No wider than this, if a little less will do. */
    private FigureSize within(double wanted, double least) {
        double shrink = wanted / width;
        return shrink < 1 && shrink >= least ? times(shrink) : this;
    }

    private FigureSize times(double factor) {
        return new FigureSize(hundredths(width * factor), hundredths(height * factor));
    }

    /** Whether the givens can stand beside it. */
    boolean isNarrow(Profile profile, Paper paper) {
        return width <= SHARE_BESIDE_GIVENS * PrintStyle.textWidth(paper, profile) + 0.01;
    }

    private static double hundredths(double value) {
        return Math.floor(value * 100) / 100;
    }
}
