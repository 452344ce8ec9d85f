package ampersheet.chain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import ampersheet.chain.PrismNet.Place;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class PrismNetTest {
    private static PrismNet bare(int sides, int top, int bottom) {
        return new PrismNet(sides, top, bottom, List.of(), List.of());
    }

    /** Folded from paper: a cross with its upper lid on the second square and its lower lid on the third. */
    @Test
    void theEdgesOfACubeMeetAsThoseOfTheFoldedPaper() {
        PrismNet cube = bare(4, 2, 3);
        assertEquals(new Place(4, 2), cube.met(new Place(1, 4)), "the ends of the band");
        assertEquals(new Place(2, 1), cube.met(new Place(5, 1)), "the seam of the upper lid");
        assertEquals(
                List.of(1, 4, 3),
                List.of(2, 3, 4).stream()
                        .map(side -> cube.met(new Place(5, side)).tile())
                        .toList());
        assertEquals(
                List.of(4, 1, 2),
                List.of(2, 3, 4).stream()
                        .map(side -> cube.met(new Place(6, side)).tile())
                        .toList());
        assertEquals(new Place(1, 1), cube.met(new Place(5, 2)));
        assertEquals(new Place(4, 3), cube.met(new Place(6, 2)));
    }

    /** A prism has 3n edges (a hexagonal one 18); n - 1 seams of the band and 2 of the lids are there in the net. */
    @Test
    void everyNetClosesWithEachSideOnExactlyOneOther() {
        for (int sides = PrismNet.FEWEST_SIDES; sides <= 8; sides++) {
            for (int top = 1; top <= sides; top++) {
                for (int bottom = 1; bottom <= sides; bottom++) {
                    PrismNet net = bare(sides, top, bottom);
                    assertEquals(3 * sides - (sides + 1), net.closedEdges());
                    for (int tile = 1; tile <= net.tiles(); tile++) {
                        for (int side = 1; side <= net.sidesOf(tile); side++) {
                            Place place = new Place(tile, side);
                            assertNotEquals(tile, net.met(place).tile());
                            assertEquals(place, net.met(net.met(place)));
                        }
                    }
                }
            }
        }
    }

    /** With two plain sides across from each other, a quarter turn decides: 2 of the 64 ways are without a clash. */
    @Test
    void ofTheWaysToTurnSixTilesWithPlainSidesAcrossTwoLetACubeWork() {
        int working = 0;
        for (int bits = 0; bits < 64; bits++) {
            List<Integer> turned = new ArrayList<>();
            for (int tile = 0; tile < 6; tile++) {
                turned.add(bits >> tile & 1);
            }
            working += new PrismNet(4, 1, 3, turned, List.of(1, 3)).likeEdges() == 0 ? 1 : 0;
        }
        assertEquals(2, working);
    }

    /** Counted on paper: unturned, all joints of the band clash, and two edges of each lid. */
    @Test
    void turningMovesTheSidesOfATileClockwise() {
        PrismNet flat = new PrismNet(4, 1, 1, List.of(0, 0, 0, 0, 0, 0), List.of(1, 3));
        assertEquals(8, flat.likeEdges());
        PrismNet turned = new PrismNet(4, 1, 1, List.of(1, 0, 0, 0, 0, 0), List.of(1));
        assertEquals(1, turned.ownSide(new Place(1, 2)));
        assertEquals(4, turned.ownSide(new Place(1, 1)));
    }

    @Test
    void whatIsNoNetIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> bare(2, 1, 1));
        assertThrows(IllegalArgumentException.class, () -> bare(4, 5, 1));
        assertThrows(IllegalArgumentException.class, () -> new PrismNet(4, 1, 1, List.of(1), List.of(1)));
        assertThrows(IllegalArgumentException.class, () -> bare(4, 1, 1).met(new Place(7, 1)));
        assertThrows(IllegalArgumentException.class, () -> bare(4, 1, 1).met(new Place(5, 5)));
    }
}
