package ampersheet.chain;

/**
 * Tiles set in a row, each a little off: by {@code error} to one side or the other, both equally likely and each for
 * itself. Every combination is walked through, tile by tile.
 *
 * @param length of a tile in metres, @param error in metres
 */
public record TileRow(int tiles, double length, double error) implements Assembly {
    /** All combinations of more would take too long. */
    public static final int MOST_TILES = 16;

    public TileRow {
        if (tiles < 1 || tiles > MOST_TILES) {
            throw new IllegalArgumentException("a row has 1 to " + MOST_TILES + " tiles, not " + tiles);
        }
    }

    /** How far the far edge of the last tile can be from its place, each tile set against the one before. */
    public double worstEdge() {
        double worst = 0;
        for (double edge : edges()) {
            worst = Math.max(worst, Math.abs(edge - tiles * length));
        }
        return worst;
    }

    /** Root of the mean square, over all combinations, of how far that edge is from its place. */
    public double typicalEdge() {
        double squares = 0;
        for (double edge : edges()) {
            double off = edge - tiles * length;
            squares += off * off;
        }
        return Math.sqrt(squares / (1 << tiles));
    }

    /**
     * Where the far edge of the last tile lies, for each combination of signs: each tile is set against both ends that
     * every row so far can have.
     */
    private double[] edges() {
        double[] edges = new double[1 << tiles];
        for (int tile = 0; tile < tiles; tile++) {
            int rows = 1 << tile;
            for (int signs = 0; signs < rows; signs++) {
                double edge = edges[signs];
                edges[signs] = edge - error + length;
                edges[signs + rows] = edge + error + length;
            }
        }
        return edges;
    }

    /** Widest gap between neighbours, or deepest overlap, when each tile is set to its own mark from one datum. */
    public double worstGapFromDatum() {
        double worst = 0;
        for (int signs = 0; signs < 1 << tiles; signs++) {
            for (int tile = 1; tile < tiles; tile++) {
                double endBefore = (tile - 1) * length + off(signs, tile - 1) + length;
                double start = tile * length + off(signs, tile);
                worst = Math.max(worst, Math.abs(start - endBefore));
            }
        }
        return worst;
    }

    private double off(int signs, int tile) {
        return (signs >> tile & 1) == 1 ? error : -error;
    }
}
