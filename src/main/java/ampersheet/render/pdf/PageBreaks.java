package ampersheet.render.pdf;

import ampersheet.render.pdf.Piece.Before;
import java.util.ArrayList;
import java.util.List;
import org.w3c.dom.Element;

/**
 * Where pages begin. Of all ways to put the pieces of a handout on pages the one that costs its reader least is taken:
 * a leaf turned in the middle of a problem, or between an example and its twin, is worse than a page of paper; a
 * problem too long for a page lies on a spread if it can. The first page is the front of a leaf; a left page is the
 * back of one, and together with the page that follows it makes a spread.
 */
final class PageBreaks {
    enum Kind {
        NEXT_PAGE,
        /** After an empty page. */
        LEFT_PAGE,
        /** After an empty page. */
        RIGHT_PAGE
    }

    /** A page that begins with this element. */
    record Start(Element element, Kind kind) {}

    /** @param cost to the reader, in pages of paper */
    record Plan(List<Start> starts, double cost) {}

    private final List<Piece> pieces;
    private final double page;
    private final Choice[] onRightPage;
    private final Choice[] onLeftPage;

    /** @param end the piece that begins the next page; @param skip whether the page between them stays empty */
    private record Choice(double cost, int end, boolean skip) {}

    private PageBreaks(List<Piece> pieces, double page) {
        this.pieces = pieces;
        this.page = page;
        this.onRightPage = new Choice[pieces.size()];
        this.onLeftPage = new Choice[pieces.size()];
    }

    /**
     * @param pieces of one handout in order, measured on an endless page
     * @param page height of a page between its margins, in points
     */
    static Plan of(List<Piece> pieces, double page) {
        PageBreaks breaks = new PageBreaks(pieces, page);
        for (int first = pieces.size() - 1; first >= 0; first--) {
            breaks.onRightPage[first] = breaks.best(first, false);
            breaks.onLeftPage[first] = breaks.best(first, true);
        }
        return new Plan(breaks.starts(), pieces.isEmpty() ? 0 : breaks.onRightPage[0].cost());
    }

    private List<Start> starts() {
        List<Start> starts = new ArrayList<>();
        boolean left = false;
        for (int at = 0; at < pieces.size(); ) {
            Choice choice = (left ? onLeftPage : onRightPage)[at];
            left = left ^ (pages(at, choice.end()) % 2 == 1) ^ choice.skip();
            at = choice.end();
            if (at < pieces.size()) {
                starts.add(new Start(
                        pieces.get(at).start(),
                        !choice.skip() ? Kind.NEXT_PAGE : left ? Kind.LEFT_PAGE : Kind.RIGHT_PAGE));
            }
        }
        return starts;
    }

    /** Of all pieces that the page can end with; the fuller page where two cost the same. */
    private Choice best(int first, boolean left) {
        Choice best = null;
        for (int end = first + 1; end <= pieces.size() && (end == first + 1 || height(first, end) <= page); end++) {
            int used = pages(first, end);
            if (end == pieces.size()) {
                return better(best, new Choice(used, end, false));
            }
            boolean nextIsLeft = left ^ (pages(first, end) % 2 == 1);
            double after = (nextIsLeft ? onLeftPage : onRightPage)[end].cost();
            double afterSkip = (nextIsLeft ? onRightPage : onLeftPage)[end].cost();
            Before before = pieces.get(end).before();
            if (before.beginsProblem()) {
                best = better(best, new Choice(used + 1 + before.cost(true) + afterSkip, end, true));
            }
            best = better(best, new Choice(used + before.cost(nextIsLeft) + after, end, false));
        }
        return best;
    }

    private static Choice better(Choice earlier, Choice later) {
        return earlier == null || later.cost() <= earlier.cost() ? later : earlier;
    }

    private double height(int first, int end) {
        return pieces.get(end - 1).bottom() - pieces.get(first).top();
    }

    /** More than one only for a single piece that is longer than a page. */
    private int pages(int first, int end) {
        return Math.max(1, (int) Math.ceil(height(first, end) / page));
    }
}
