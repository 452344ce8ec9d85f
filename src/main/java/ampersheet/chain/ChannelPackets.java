package ampersheet.chain;

import java.util.ArrayList;
import java.util.List;

/**
 * Packs the pixels of a chain into packets, pixel after pixel in the order of the data. A pixel stays whole: where the
 * rest of a packet has no room for all its channels, it begins the next one.
 *
 * @param channels of a packet
 * @param ofAPixel channels that each pixel takes
 */
public record ChannelPackets(int channels, int ofAPixel) {
    public ChannelPackets {
        if (ofAPixel < 1 || ofAPixel > channels) {
            throw new IllegalArgumentException(
                    "a packet of " + channels + " channels has no room for a pixel of " + ofAPixel);
        }
    }

    /** @param packet that carries a pixel, @param channel its first one there; both from 1 */
    public record Slot(int packet, int channel) {}

    /** Where each pixel lies, by laying down one after the other. */
    public List<Slot> slots(int pixels) {
        List<Slot> slots = new ArrayList<>();
        int packet = 1;
        int used = 0;
        for (int pixel = 0; pixel < pixels; pixel++) {
            if (used + ofAPixel > channels) {
                packet++;
                used = 0;
            }
            slots.add(new Slot(packet, used + 1));
            used += ofAPixel;
        }
        return slots;
    }

    /** Channels that the fullest packet carries. */
    public int mostUsed(int pixels) {
        int most = 0;
        for (Slot slot : slots(pixels)) {
            most = Math.max(most, slot.channel() + ofAPixel - 1);
        }
        return most;
    }
}
