package ampersheet.chain;

/**
 * Lays the frames of a panel out in memory: pixel after pixel, frame after frame. A pixel begins on a byte of its own,
 * so that it can be fetched without shifting; what its last byte has left over stays empty.
 */
public final class FrameMemory {
    private static final int BYTE = 8;

    private FrameMemory() {}

    /**
     * Bits from the first of the first frame to the last of the last byte: every pixel of a frame is laid down. A frame
     * ends with a whole byte, so that the next one lies like it.
     */
    public static long bits(Panel panel, int frames) {
        long next = 0;
        int pixelsOfTile = new TileWalk(panel.tile()).pixels().size();
        for (int place = 0; place < panel.places().size(); place++) {
            for (int pixel = 0; pixel < pixelsOfTile; pixel++) {
                next += panel.bitsPerPixel();
                while (next % BYTE != 0) {
                    next++;
                }
            }
        }
        return Math.max(frames, 0) * next;
    }
}
