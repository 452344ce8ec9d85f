package ampersheet.render.pdf;

import java.util.Map;
import java.util.TreeMap;
import org.w3c.dom.Element;

/**
 * Part of a handout that no page break divides, unless it is longer than a page itself.
 *
 * @param start what a break before the piece is put on
 * @param top in points, border included
 * @param bottom in points, margin included
 * @param narrow whether it was set as wide as a column
 * @param cautions what each of them takes in points beyond a line that points to the same one above, by heading
 */
record Piece(Element start, double top, double bottom, Before before, boolean narrow, Map<String, Double> cautions) {
    Piece {
        cautions = Map.copyOf(cautions);
    }

    /**
     * What a page break before a piece parts, and how bad that is, in pages of paper that one would rather spend: where
     * each problem is given room, and where problems are packed to save paper.
     */
    enum Before {
        PROBLEM(0, 0, 0, 0, 0),
        /** A problem and its worked example that fit on a spread together. */
        TWIN(0, 3, 0, 0.02, 0.15),
        /** The words that open a problem. */
        WORDS(0.6, 9, 0.4, 0.8, 3),
        /** Those words, and the givens with the figure. */
        GIVENS(0.2, 8, 0.1, 0.4, 1.5),
        /** Words and givens, and the figure. */
        FIGURE(0.3, 8, 0.1, 0.4, 1.5),
        /** What opens a problem, words and figure, and its questions or steps. */
        REST(0.02, 4.5, 0.03, 0.1, 0.9),
        /** Questions or steps; where a leaf is turned, it is better when some can be read beside the figure. */
        QUESTION(0.05, 4, 0.02, 0.05, 0.5);

        private final double apart;
        private final double turned;
        private final double nextColumn;
        private final double nextPage;
        private final double nextLeaf;

        Before(double apart, double turned, double nextColumn, double nextPage, double nextLeaf) {
            this.apart = apart;
            this.turned = turned;
            this.nextColumn = nextColumn;
            this.nextPage = nextPage;
            this.nextLeaf = nextLeaf;
        }

        /** What it costs that the right column of the same page begins with the piece. */
        double nextColumn() {
            return nextColumn;
        }

        /** Only then a page may stay empty before it. */
        boolean beginsProblem() {
            return this == PROBLEM || this == TWIN;
        }

        /** @param leafTurned whether the two pages cannot be seen at once */
        double cost(boolean leafTurned) {
            return apart + (leafTurned ? turned : 0);
        }

        /** The same where problems are packed. */
        double packed(boolean leafTurned) {
            return nextPage + (leafTurned ? nextLeaf : 0);
        }
    }

    /** Together with a piece that follows or holds this one. */
    Piece and(Piece next) {
        Map<String, Double> both = new TreeMap<>(cautions);
        both.putAll(next.cautions);
        return new Piece(start, top, next.bottom, before, narrow, both);
    }
}
