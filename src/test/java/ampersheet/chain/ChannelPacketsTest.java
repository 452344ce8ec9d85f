package ampersheet.chain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import ampersheet.chain.ChannelPackets.Slot;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class ChannelPacketsTest {
    private static final long SEED = 20_261_129L;

    /** WLED documentation, E1.31: 170 LEDs use 510 channels of a universe; 510 LEDs take three, 680 four. */
    @Test
    void aPixelOfThreeChannelsStaysWholeInAPacketOf512() {
        ChannelPackets packets = new ChannelPackets(512, 3);
        List<Slot> slots = packets.slots(680);
        assertEquals(new Slot(1, 1), slots.get(0));
        assertEquals(new Slot(1, 508), slots.get(169));
        assertEquals(new Slot(2, 1), slots.get(170));
        assertEquals(3, slots.get(509).packet());
        assertEquals(4, slots.get(679).packet());
        assertEquals(510, packets.mostUsed(680));
        assertEquals(30, packets.mostUsed(10));
    }

    @Test
    void noChannelCarriesTwoPixelsAndNoPixelLiesInTwoPackets() {
        Random random = new Random(SEED);
        for (int i = 0; i < 200; i++) {
            int each = 1 + random.nextInt(6);
            int channels = each + random.nextInt(40);
            int next = 1;
            int packet = 1;
            for (Slot slot : new ChannelPackets(channels, each).slots(60)) {
                if (slot.packet() > packet) {
                    packet++;
                    next = 1;
                }
                assertEquals(new Slot(packet, next), slot, "seed " + SEED + ", draw " + i);
                next += each;
                assertEquals(true, next - 1 <= channels, "seed " + SEED + ", draw " + i);
            }
        }
    }

    @Test
    void aPixelThatIsLargerThanAPacketIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> new ChannelPackets(2, 3));
        assertThrows(IllegalArgumentException.class, () -> new ChannelPackets(2, 0));
    }
}
