package ampersheet.model;

import ampersheet.chain.PrismNet;
import ampersheet.chain.TileRow;

/**
 * How large a template can make things. Each is far above what a page shows or a class can count, and low enough that a
 * draw is worked, solved and drawn in well under a second.
 */
public final class SizeLimits {
    /** Of a tile and of a panel, both ways: 128 by 128; as a drawing two megabytes. */
    public static final int PIXELS = 16_384;
    /** Side by side; a drawing takes time with the square of that. */
    public static final int PIXELS_IN_A_LINE = 4_096;
    /** Of a panel: 32 by 32. */
    public static final int TILES = 1_024;
    /** That a pixel takes; built ones take 24 to 64, and each is sent through every pixel. */
    public static final int BITS = 256;

    public static final int FRAMES = 1_000;
    /** Of tiles in arms, or of contacts on an edge: each is held against every other. */
    public static final int JOINED = 400;
    /** Of a tile that is pushed against others: each is laid against every other. */
    public static final int SIDES = 24;
    /** Of a prism that is folded from a net. */
    public static final int SIDES_OF_A_LID = PrismNet.MOST_SIDES;
    /** Of a row: every combination of errors is walked through. */
    public static final int TILES_IN_A_ROW = TileRow.MOST_TILES;
    /** Of a strip. */
    public static final int TAPS = 1_000;
    /** Of a panel whose rows are joined by their bus alone: 40 by 40. */
    public static final int LOADS = 1_600;
    /** Of a panel whose rows are joined at every pixel: solving takes time with the cube of its side. */
    public static final int LOADS_OF_A_MESH = 256;
    /** Whole numbers that a proof walks through: for each the model is solved. */
    public static final int MEMBERS = 1_000;

    private SizeLimits() {}
}
