package ampersheet.render.pdf;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * Pieces one after another on as few pages as hold them. Pieces as wide as the page stand below each other; a run of
 * narrow ones between them is divided into a left and a right column. Of all ways that take the fewest pages, the one
 * is taken that parts least: a problem from its figure, an example from its twin.
 */
final class PackedPages {
    /** What a page costs: whoever packs would rather part a problem from its figure than print one more. */
    private static final double PAGE = 2.5;
    /** What a row of columns takes besides its pieces, in points: the line it is set in. */
    private static final double ROW = 4;

    /** What tells whose problem goes on at the head of a page, in points. */
    private static final double CONTINUED = 15;

    /**
     * Pieces from {@code from} to before {@code to}; the right column begins with {@code right}, or there is none.
     *
     * @param shorter how much shorter the left column is than the row, in points; negative: the right one is
     */
    record Row(int from, int right, int to, double shorter) {
        boolean hasColumns() {
            return right > from;
        }
    }

    /** @param rest height that stays free at its foot, in points */
    record Page(List<Row> rows, double rest) {
        Page {
            rows = List.copyOf(rows);
        }
    }

    /** A page that holds the pieces up to before {@code end}, and the cost of it and of all that follow. */
    private record Choice(double cost, int end, Filled filled) {}

    /** @param cost of what the columns part */
    private record Filled(List<Row> rows, double height, double cost) {
        Filled and(Filled below) {
            List<Row> all = new ArrayList<>(rows);
            all.addAll(below.rows);
            return new Filled(all, height + below.height, cost + below.cost);
        }
    }

    private final List<Piece> pieces;
    private final double page;
    private final boolean oneColumn;
    private final Choice[] onRightPage;
    private final Choice[] onLeftPage;

    private PackedPages(List<Piece> pieces, double page, boolean oneColumn) {
        this.pieces = pieces;
        this.page = page;
        this.oneColumn = oneColumn;
        this.onRightPage = new Choice[pieces.size()];
        this.onLeftPage = new Choice[pieces.size()];
    }

    /**
     * @param pieces of one handout in order, measured on an endless page
     * @param page height of a page between its margins, in points
     */
    static List<Page> of(List<Piece> pieces, double page) {
        return of(pieces, page, false);
    }

    /** @param oneColumn whether narrow pieces are as wide as the page, and stand below each other */
    static List<Page> of(List<Piece> pieces, double page, boolean oneColumn) {
        PackedPages packed = new PackedPages(pieces, page, oneColumn);
        for (int first = pieces.size() - 1; first >= 0; first--) {
            packed.onRightPage[first] = packed.best(first, false);
            packed.onLeftPage[first] = packed.best(first, true);
        }
        List<Page> pages = new ArrayList<>();
        boolean left = false;
        for (int at = 0; at < pieces.size(); left = !left) {
            Choice choice = (left ? packed.onLeftPage : packed.onRightPage)[at];
            pages.add(new Page(
                    choice.filled().rows(), Math.max(0, page - choice.filled().height())));
            at = choice.end();
        }
        return pages;
    }

    private Choice best(int first, boolean left) {
        Choice best = null;
        for (int end = first + 1; end <= pieces.size(); end++) {
            Filled filled = filled(first, end);
            if (filled == null) {
                if (end > first + 1) {
                    break;
                }
                // Longer than a page: the page setter has to divide it.
                filled = new Filled(List.of(new Row(first, first, end, 0)), page, 0);
            }
            double cost = PAGE + filled.cost();
            if (end < pieces.size()) {
                cost += pieces.get(end).before().packed(!left) + (left ? onRightPage : onLeftPage)[end].cost();
            }
            if (best == null || cost <= best.cost()) {
                best = new Choice(cost, end, filled);
            }
        }
        return best;
    }

    /** The cheapest way to put these on one page, or null if there is none. */
    private Filled filled(int first, int end) {
        double[] saved = saved(first, end);
        List<Filled> ways = List.of(new Filled(List.of(), 0, 0));
        for (int from = first; from < end; ) {
            int to = from + 1;
            while (to < end && pieces.get(to).narrow() == pieces.get(from).narrow()) {
                to++;
            }
            List<Filled> next = new ArrayList<>();
            for (Filled row : rows(from, to, saved, from == first)) {
                for (Filled above : ways) {
                    Filled both = above.and(row);
                    if (both.height() <= page) {
                        next.add(both);
                    }
                }
            }
            ways = next;
            from = to;
        }
        Filled best = null;
        for (Filled way : ways) {
            if (best == null || way.cost() < best.cost() || way.cost() == best.cost() && way.height() < best.height()) {
                best = way;
            }
        }
        return best;
    }

    /**
     * The ways to set a run of pieces of one width; of two, one that is higher costs less.
     *
     * @param heads whether the page begins with them
     */
    private List<Filled> rows(int from, int to, double[] saved, boolean heads) {
        if (!pieces.get(from).narrow()) {
            return List.of(new Filled(List.of(new Row(from, from, to, 0)), height(from, to, saved), 0));
        }
        double continued = heads && !pieces.get(from).before().beginsProblem() ? CONTINUED : 0;
        List<Filled> ways = new ArrayList<>();
        for (int right = oneColumn ? to : from + 1; right <= to; right++) {
            double left = continued + height(from, right, saved);
            double beside = right == to ? 0 : height(right, to, saved);
            double height = ROW + Math.max(left, beside);
            double cost = right == to ? 0 : pieces.get(right).before().nextColumn();
            Filled way = new Filled(List.of(new Row(from, right, to, beside - left)), height, cost);
            boolean useless = false;
            for (Filled other : ways) {
                useless |= other.height() <= way.height() && other.cost() <= way.cost();
            }
            if (!useless && height <= page) {
                ways.add(way);
            }
        }
        return ways;
    }

    /** By pointing to cautions above on a page that begins with {@code first}: up to before each piece. */
    private double[] saved(int first, int end) {
        double[] saved = new double[pieces.size() + 1];
        Set<String> seen = new TreeSet<>();
        for (int i = first; i < end; i++) {
            saved[i + 1] = saved[i];
            for (Map.Entry<String, Double> caution : pieces.get(i).cautions().entrySet()) {
                if (!seen.add(caution.getKey())) {
                    saved[i + 1] += caution.getValue();
                }
            }
        }
        return saved;
    }

    private double height(int first, int end, double[] saved) {
        return pieces.get(end - 1).bottom() - pieces.get(first).top() - (saved[end] - saved[first]);
    }
}
