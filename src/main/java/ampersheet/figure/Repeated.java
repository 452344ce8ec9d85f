package ampersheet.figure;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/**
 * Where in a path the same subpaths come again, each time moved alike: a panel's rows of pixels. Such a block is
 * written once and shown again by reference.
 *
 * @param first index of the block's first subpath
 * @param length how many subpaths the block has
 * @param times how often it stands there, the first time counted
 */
record Repeated(int first, int length, int times) {
    /** Letters of a reference, about. */
    private static final int REFERENCE = 32;

    /** What it must save at least: a path taken apart is harder to read. */
    private static final int WORTHWHILE = 100;

    static final Repeated NEVER = new Repeated(0, 0, 1);

    /** The repetition that saves most, or {@link #NEVER}. */
    static Repeated in(List<SvgPath.Subpath> all) {
        Repeated best = NEVER;
        int saved = WORTHWHILE;
        for (int length = 1; length <= all.size() / 2; length++) {
            int from = 0;
            while (from + 2 * length <= all.size()) {
                int alike = alike(all, from, length);
                Repeated found = new Repeated(from, length, 1 + alike / length);
                int saves = found.saves(all);
                if (saves > saved) {
                    best = found;
                    saved = saves;
                }
                from += Math.max(1, alike);
            }
        }
        return best;
    }

    /**
     * The same ink in another order where that repeats more: what is alike together, row by row from the left. A path
     * that winds through a panel goes to the left in every other row; only lines that stand alone may be told from
     * their other end.
     */
    static List<SvgPath.Subpath> inRows(List<SvgPath.Subpath> all) {
        List<SvgPath.Subpath> rows = all.stream()
                .map(SvgPath.Subpath::fromTheLeft)
                .sorted(Comparator.comparing(SvgPath.Subpath::body)
                        .thenComparingLong(SvgPath.Subpath::startY)
                        .thenComparingLong(SvgPath.Subpath::startX))
                .toList();
        return letters(rows) < letters(all) ? rows : all;
    }

    /** How many it takes to write them. */
    private static int letters(List<SvgPath.Subpath> all) {
        Repeated repeated = in(all);
        return repeated.isWorthwhile()
                ? SvgPath.data(repeated.block(all)).length()
                        + repeated.times() * REFERENCE
                        + letters(repeated.rest(all))
                : SvgPath.data(all).length();
    }

    /** How many subpaths from the second block on equal those one block before, up to the first that does not. */
    private static int alike(List<SvgPath.Subpath> all, int from, int length) {
        int at = from + length;
        while (at < all.size()
                && all.get(at).body().equals(all.get(at - length).body())
                && (at == from + length || step(all, at, 1).equals(step(all, at - length, 1)))) {
            at++;
        }
        return at - from - length;
    }

    private static List<Long> step(List<SvgPath.Subpath> all, int at, int back) {
        SvgPath.Subpath one = all.get(at);
        SvgPath.Subpath before = all.get(at - back);
        return List.of(one.startX() - before.startX(), one.startY() - before.startY());
    }

    private int saves(List<SvgPath.Subpath> all) {
        int letters = 0;
        for (SvgPath.Subpath one : all.subList(first, first + length)) {
            letters += one.body().length() + 4;
        }
        return (times - 1) * (letters - REFERENCE) - REFERENCE;
    }

    boolean isWorthwhile() {
        return times > 1;
    }

    List<SvgPath.Subpath> block(List<SvgPath.Subpath> all) {
        return all.subList(first, first + length);
    }

    /** What is not repeated. */
    List<SvgPath.Subpath> rest(List<SvgPath.Subpath> all) {
        return Stream.concat(all.subList(0, first).stream(), all.subList(first + length * times, all.size()).stream())
                .toList();
    }

    /** By how much each block is moved against the one before, in pixels. */
    Point step(List<SvgPath.Subpath> all) {
        List<Long> step = step(all, first + length, length);
        return new Point(step.get(0) / 100.0, step.get(1) / 100.0);
    }
}
