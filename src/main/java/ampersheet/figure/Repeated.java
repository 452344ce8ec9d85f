package ampersheet.figure;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
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
        Alikeness alikeness = new Alikeness(all);
        Repeated best = NEVER;
        int saved = WORTHWHILE;
        for (int length = 1; length <= all.size() / 2; length++) {
            int from = 0;
            while (from + 2 * length <= all.size()) {
                int alike = alikeness.alike(from, length);
                Repeated found = new Repeated(from, length, 1 + alike / length);
                int saves = (found.times - 1) * (alikeness.letters(from, length) - REFERENCE) - REFERENCE;
                if (saves > saved) {
                    best = found;
                    saved = saves;
                }
                from += Math.max(1, alike);
            }
        }
        return best;
    }

    /** The subpaths as numbers, since every length is tried from every place. */
    private static final class Alikeness {
        /** The same number for the same body. */
        private final int[] body;

        private final long[] x;
        private final long[] y;
        /** Of all before. */
        private final int[] letters;

        Alikeness(List<SvgPath.Subpath> all) {
            body = new int[all.size()];
            x = new long[all.size()];
            y = new long[all.size()];
            letters = new int[all.size() + 1];
            Map<String, Integer> known = new TreeMap<>();
            for (int i = 0; i < all.size(); i++) {
                SvgPath.Subpath one = all.get(i);
                Integer number = known.putIfAbsent(one.body(), known.size());
                body[i] = number == null ? known.size() - 1 : number;
                x[i] = one.startX();
                y[i] = one.startY();
                letters[i + 1] = letters[i] + one.body().length() + 4;
            }
        }

        /** How many subpaths from the second block on equal those one block before, up to the first that does not. */
        int alike(int from, int length) {
            int at = from + length;
            while (at < body.length
                    && body[at] == body[at - length]
                    && (at == from + length
                            || x[at] - x[at - 1] == x[at - length] - x[at - length - 1]
                                    && y[at] - y[at - 1] == y[at - length] - y[at - length - 1])) {
                at++;
            }
            return at - from - length;
        }

        int letters(int from, int length) {
            return letters[from + length] - letters[from];
        }
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
        SvgPath.Subpath one = all.get(first);
        SvgPath.Subpath next = all.get(first + length);
        return new Point((next.startX() - one.startX()) / 100.0, (next.startY() - one.startY()) / 100.0);
    }
}
