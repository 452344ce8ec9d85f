package ampersheet.chain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.chain.DataPath.Link;
import ampersheet.chain.DataPath.Outcome;
import ampersheet.chain.Panel.Place;
import ampersheet.chain.Tile.Along;
import ampersheet.chain.Tile.Corner;
import ampersheet.chain.Tile.Order;
import ampersheet.chain.Tile.Side;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

class DataPathTest {
    private static final long SEED = 20_260_102L;

    private static Panel panel(Tile tile, List<Place> places, int first) {
        return new Panel(tile, places, first, true, 24, 1.25e-6, 50e-6, false);
    }

    private static Tile tile(int columns, int rows, Order order) {
        return new Tile(columns, rows, order, Corner.TOP_LEFT, Along.ROWS, Side.WEST, Side.EAST);
    }

    private static Outcome.Traced traced(Panel panel) {
        return assertInstanceOf(Outcome.Traced.class, DataPath.trace(panel));
    }

    /** Turns row by row, as a map of the panel. */
    private static List<List<Integer>> map(Outcome.Traced traced, int columns, int rows) {
        List<List<Integer>> map = new ArrayList<>();
        for (int y = 0; y < rows; y++) {
            List<Integer> row = new ArrayList<>();
            for (int x = 0; x < columns; x++) {
                row.add(traced.turn(x, y));
            }
            map.add(row);
        }
        return map;
    }

    /** WLED documentation, page Mapping: a serpentine matrix of 4 by 3. */
    @Test
    void linesAreCalledByTheWordsOfTemplatesNewAndOld() {
        assertEquals(Order.ALL_ONE_WAY, Order.called("all one way"));
        assertEquals(Order.ALL_ONE_WAY, Order.called("progressive"));
        assertEquals(Order.SERPENTINE, Order.called("back and forth"));
        assertEquals(Order.SERPENTINE, Order.called("serpentine"));
        assertEquals(Along.ROWS, Along.called("across"));
        assertEquals(Along.ROWS, Along.called("rows"));
        assertEquals(Along.COLUMNS, Along.called("down"));
        assertEquals(Along.COLUMNS, Along.called("columns"));
        assertThrows(IllegalArgumentException.class, () -> Order.called("across"));
        assertThrows(IllegalArgumentException.class, () -> Along.called("snake"));
    }

    @Test
    void aSerpentineTileOfFourByThreeIsNumberedAsPublished() {
        Outcome.Traced traced = traced(panel(tile(4, 3, Order.SERPENTINE), List.of(new Place(0, 0, 0)), 0));
        assertEquals(List.of(List.of(0, 1, 2, 3), List.of(7, 6, 5, 4), List.of(8, 9, 10, 11)), map(traced, 4, 3));
    }

    @Test
    void aProgressiveTileStartsEveryLineOnTheSameSide() {
        Tile tile = new Tile(3, 2, Order.ALL_ONE_WAY, Corner.BOTTOM_RIGHT, Along.COLUMNS, Side.EAST, Side.WEST);
        assertEquals(
                List.of(List.of(5, 3, 1), List.of(4, 2, 0)),
                map(traced(panel(tile, List.of(new Place(0, 0, 0)), 0)), 3, 2));
    }

    @Test
    void aTileTurnedByAQuarterClockwiseRunsDownFromItsTopRightCorner() {
        Outcome.Traced traced = traced(panel(tile(2, 2, Order.ALL_ONE_WAY), List.of(new Place(0, 0, 1)), 0));
        assertEquals(List.of(List.of(2, 0), List.of(3, 1)), map(traced, 2, 2));
    }

    @Test
    void dataSnakesThroughRowsOfTilesOfWhichEverySecondIsTurnedHalfAround() {
        Tile tile = tile(2, 2, Order.ALL_ONE_WAY);
        Outcome.Traced traced = traced(panel(tile, Snaking.places(2, 3), 0));
        assertEquals(
                List.of(
                        List.of(0, 1, 4, 5),
                        List.of(2, 3, 6, 7),
                        List.of(15, 14, 11, 10),
                        List.of(13, 12, 9, 8),
                        List.of(16, 17, 20, 21),
                        List.of(18, 19, 22, 23)),
                map(traced, 4, 6));
        assertEquals(List.of(0, 1, 3, 2, 4, 5), traced.tileOrder());
        assertEquals(
                List.of(new Link(1, Side.EAST, 3, Side.EAST), new Link(2, Side.WEST, 4, Side.WEST)), traced.links());
        assertTrue(traced.links().stream().allMatch(Link::isShort));
    }

    @Test
    void theReturnLinePassesTheTilesLastOneFirst() {
        Outcome.Traced traced = traced(panel(tile(2, 2, Order.ALL_ONE_WAY), Snaking.places(2, 2), 0));
        assertEquals(List.of(2, 3, 1, 0), traced.returnOrder());
        assertEquals(0, traced.returnTurn(0, 0));
        assertEquals(3, traced.returnTurn(0, 2));
        assertEquals(3, traced.tileTurn(1, 3));
        assertEquals(-1, traced.turn(4, 0));
    }

    @Test
    void withoutAReturnLineNothingPasses() {
        Outcome.Traced traced = traced(
                new Panel(tile(2, 2, Order.ALL_ONE_WAY), Snaking.places(2, 2), 0, false, 24, 1.25e-6, 50e-6, false));
        assertEquals(List.of(), traced.returnOrder());
        assertEquals(-1, traced.returnTurn(0, 0));
    }

    @Test
    void rowsThatAllRunTheSameWayNeedALongLinkEach() {
        List<Place> places = new ArrayList<>();
        for (int row = 0; row < 3; row++) {
            for (int column = 0; column < 4; column++) {
                places.add(new Place(column, row, 0));
            }
        }
        Outcome.Traced traced = traced(panel(tile(1, 1, Order.ALL_ONE_WAY), places, 0));
        assertEquals(List.of(List.of(0, 1, 2, 3), List.of(4, 5, 6, 7), List.of(8, 9, 10, 11)), map(traced, 4, 3));
        assertEquals(
                List.of(new Link(3, Side.EAST, 4, Side.WEST), new Link(7, Side.EAST, 8, Side.WEST)), traced.links());
    }

    @Test
    void aTileFedFromTheRightStartsItsPanelThere() {
        Tile tile = new Tile(1, 1, Order.ALL_ONE_WAY, Corner.TOP_RIGHT, Along.ROWS, Side.EAST, Side.WEST);
        Outcome.Traced traced = traced(panel(tile, Snaking.places(3, 2), Snaking.first(tile, 3)));
        assertEquals(List.of(List.of(2, 1, 0), List.of(3, 4, 5)), map(traced, 3, 2));
    }

    @Test
    void aChainMayClimbFromTheBottomRow() {
        List<Place> places = List.of(new Place(0, 1, 0), new Place(1, 1, 0), new Place(1, 0, 2), new Place(0, 0, 2));
        assertEquals(
                List.of(0, 1, 2, 3),
                traced(panel(tile(2, 2, Order.SERPENTINE), places, 0)).tileOrder());
    }

    @Test
    void quarterTurnsLeadTheDataRoundACorner() {
        // East, then down, then west, then west again: the tile that turns the corner is itself turned.
        Tile corner = new Tile(2, 2, Order.SERPENTINE, Corner.TOP_LEFT, Along.ROWS, Side.WEST, Side.SOUTH);
        Outcome.Traced traced = traced(panel(corner, List.of(new Place(0, 0, 0), new Place(0, 1, 1)), 0));
        // The second tile, turned by a quarter, has its input north and its output west.
        assertEquals(List.of(0, 1), traced.tileOrder());
        assertEquals(List.of(), traced.links());
        assertEquals(List.of(List.of(0, 1), List.of(3, 2), List.of(7, 4), List.of(6, 5)), map(traced, 2, 4));
    }

    @Test
    void anOutputAgainstASideWithoutInputIsMismatched() {
        assertEquals(
                new Outcome.Mismatched(0, 1),
                DataPath.trace(
                        panel(tile(2, 2, Order.ALL_ONE_WAY), List.of(new Place(0, 0, 0), new Place(1, 0, 2)), 0)));
    }

    @Test
    void aRingThatFeedsItsFirstTileAgainIsMismatched() {
        Tile corner = new Tile(2, 2, Order.SERPENTINE, Corner.TOP_LEFT, Along.ROWS, Side.WEST, Side.SOUTH);
        List<Place> ring = List.of(new Place(1, 0, 0), new Place(1, 1, 1), new Place(0, 1, 2), new Place(0, 0, 3));
        assertEquals(new Outcome.Mismatched(3, 0), DataPath.trace(panel(corner, ring, 0)));
    }

    @Test
    void twoTilesOnOnePlaceAreMisplaced() {
        Outcome.Misplaced misplaced = assertInstanceOf(
                Outcome.Misplaced.class,
                DataPath.trace(panel(
                        tile(2, 2, Order.ALL_ONE_WAY),
                        List.of(new Place(0, 0, 0), new Place(1, 0, 0), new Place(0, 0, 0)),
                        0)));
        assertEquals(2, misplaced.place());
        assertTrue(misplaced.why().contains("tile 1 of the list"), misplaced.why());
    }

    @Test
    void aLongTileOnItsSideIsMisplacedButUpsideDownIsNot() {
        assertInstanceOf(
                Outcome.Misplaced.class,
                DataPath.trace(panel(tile(4, 2, Order.ALL_ONE_WAY), List.of(new Place(0, 0, 1)), 0)));
        assertInstanceOf(
                Outcome.Traced.class,
                DataPath.trace(panel(tile(4, 2, Order.ALL_ONE_WAY), List.of(new Place(0, 0, 2)), 0)));
    }

    @Test
    void tilesOutOfReachAreListed() {
        assertEquals(
                new Outcome.Unreached(List.of(1)),
                DataPath.trace(
                        panel(tile(2, 2, Order.ALL_ONE_WAY), List.of(new Place(0, 0, 0), new Place(5, 5, 0)), 0)));
    }

    /** NeoPixelBus wiki, FAQ, update time: 100 pixels of 30 µs or 40 µs, 50 µs latch and 10 µs overhead. */
    @Test
    void aFrameOfAHundredPixelsTakesAsLongAsPublished() {
        for (int bits : new int[] {24, 32}) {
            Panel panel = new Panel(
                    tile(10, 10, Order.SERPENTINE), List.of(new Place(0, 0, 0)), 0, false, bits, 1.25e-6, 60e-6, false);
            assertEquals(bits == 24 ? 3.06e-3 : 4.06e-3, DataPath.frameTime(panel, 1, 0), 1e-12);
        }
    }

    @Test
    void everyPixelThatPassesBitsOnMayDelayThem() {
        Panel panel = panel(tile(10, 10, Order.SERPENTINE), List.of(new Place(0, 0, 0)), 0);
        assertEquals(DataPath.frameTime(panel, 1, 0) + 99 * 300e-9, DataPath.frameTime(panel, 1, 300e-9), 1e-12);
    }

    @Test
    void aBrokenPanelHasNoFrameTime() {
        Panel broken = panel(tile(2, 2, Order.ALL_ONE_WAY), List.of(new Place(0, 0, 0), new Place(5, 5, 0)), 0);
        assertThrows(IllegalArgumentException.class, () -> DataPath.frameTime(broken, 1, 0));
    }

    @Test
    void everyPixelOfEveryRandomPanelIsVisitedExactlyOnce() {
        for (long seed = SEED; seed < SEED + 1000; seed++) {
            Random random = new Random(seed);
            boolean fromTheRight = random.nextBoolean();
            Tile tile = new Tile(
                    1 + random.nextInt(8),
                    1 + random.nextInt(8),
                    pick(Order.values(), random),
                    pick(Corner.values(), random),
                    pick(Along.values(), random),
                    fromTheRight ? Side.EAST : Side.WEST,
                    fromTheRight ? Side.WEST : Side.EAST);
            int columns = 1 + random.nextInt(5);
            int rows = 1 + random.nextInt(5);
            Outcome.Traced traced = traced(panel(tile, Snaking.places(columns, rows), Snaking.first(tile, columns)));
            Set<Integer> turns = new LinkedHashSet<>();
            for (int y = 0; y < rows * tile.rows(); y++) {
                for (int x = 0; x < columns * tile.columns(); x++) {
                    turns.add(traced.turn(x, y));
                }
            }
            int pixels = rows * columns * tile.rows() * tile.columns();
            assertEquals(pixels, turns.size(), "seed " + seed);
            assertTrue(!turns.contains(-1) && turns.contains(pixels - 1), "seed " + seed);
            assertEquals(rows - 1, traced.links().size(), "seed " + seed);
        }
    }

    @Test
    void fourQuarterTurnsAreNone() {
        for (long seed = SEED; seed < SEED + 200; seed++) {
            Random random = new Random(seed);
            int size = 1 + random.nextInt(8);
            Tile tile = new Tile(
                    size,
                    size,
                    pick(Order.values(), random),
                    pick(Corner.values(), random),
                    pick(Along.values(), random),
                    Side.WEST,
                    Side.EAST);
            List<List<Integer>> straight = map(traced(panel(tile, List.of(new Place(0, 0, 0)), 0)), size, size);
            List<List<Integer>> turned = straight;
            for (int quarters = 1; quarters <= 4; quarters++) {
                turned = quarterClockwise(turned);
                if (quarters < 4) {
                    assertEquals(
                            turned,
                            map(traced(panel(tile, List.of(new Place(0, 0, quarters)), 0)), size, size),
                            "seed " + seed + ", " + quarters + " quarters");
                }
            }
            assertEquals(straight, turned, "seed " + seed);
        }
    }

    /** A picture turned clockwise: its first column, read upwards, becomes its first row. */
    private static List<List<Integer>> quarterClockwise(List<List<Integer>> map) {
        List<List<Integer>> turned = new ArrayList<>();
        for (int column = 0; column < map.get(0).size(); column++) {
            List<Integer> row = new ArrayList<>();
            for (int i = map.size() - 1; i >= 0; i--) {
                row.add(map.get(i).get(column));
            }
            turned.add(row);
        }
        return turned;
    }

    private static <T> T pick(T[] values, Random random) {
        return values[random.nextInt(values.length)];
    }

    /** NeoPixelBus wiki, FAQ: 100 pixels of 30 us each and 50 us of latch; here four such chains run at once. */
    @Test
    void parallelChainsTakeAsLongAsTheLongest() {
        Panel four =
                new Panel(tile(50, 1, Order.ALL_ONE_WAY), Snaking.places(7, 1), 0, false, 24, 1.25e-6, 50e-6, false);
        assertEquals(100 * 30e-6 + 50e-6, DataPath.frameTime(four, 4, 0), 1e-12);
        assertEquals(DataPath.frameTime(four, 1, 0), DataPath.frameTime(four, 1, 0));
        assertEquals(50 * 30e-6 + 50e-6, DataPath.frameTime(four, 9, 0), 1e-12);
        assertThrows(IllegalArgumentException.class, () -> DataPath.frameTime(four, 0, 0));
    }

    /** 170 pixels of three bytes fill 510 of the 512 slots of a universe (ANSI E1.31). */
    @Test
    void everyPixelTakesWholeBytesOfMemory() {
        List<Place> one = List.of(new Place(0, 0, 0));
        assertEquals(
                510 * 8,
                FrameMemory.bits(new Panel(tile(170, 1, Order.ALL_ONE_WAY), one, 0, false, 24, 1e-6, 0, false), 1));
        assertEquals(
                2 * 12 * 16,
                FrameMemory.bits(new Panel(tile(4, 3, Order.SERPENTINE), one, 0, false, 9, 1e-6, 0, false), 2));
        assertEquals(
                12 * 8, FrameMemory.bits(new Panel(tile(4, 3, Order.SERPENTINE), one, 0, false, 1, 1e-6, 0, false), 1));
    }

    @Test
    void linesLeftBehindAreCountedAlongTheTilesOwnLines() {
        Outcome.Traced columns = traced(panel(
                new Tile(3, 2, Order.SERPENTINE, Corner.BOTTOM_RIGHT, Along.COLUMNS, Side.EAST, Side.WEST),
                List.of(new Place(0, 0, 0)),
                0));
        assertEquals(0, columns.linesBefore(2, 0));
        assertEquals(2, columns.linesBefore(0, 1));
        assertEquals(-1, columns.linesBefore(3, 0));
        Outcome.Traced turned = traced(panel(tile(2, 2, Order.ALL_ONE_WAY), List.of(new Place(0, 0, 1)), 0));
        assertEquals(1, turned.linesBefore(0, 0));
        assertEquals(0, turned.linesBefore(1, 1));
    }

    /** Cables lead to a tile however it is turned; by hand: progressive 2 by 2, the second turned clockwise. */
    @Test
    void aTurnedTileInACabledRowKeepsItsTurnsButNotItsPlaces() {
        Panel cabled = new Panel(
                tile(2, 2, Order.ALL_ONE_WAY),
                List.of(new Place(0, 0, 0), new Place(1, 0, 1), new Place(0, 1, 0), new Place(1, 1, 0)),
                0,
                false,
                24,
                1e-6,
                0,
                true);
        Outcome.Traced traced = traced(cabled);
        assertEquals(
                List.of(List.of(0, 1, 6, 4), List.of(2, 3, 7, 5), List.of(8, 9, 12, 13), List.of(10, 11, 14, 15)),
                map(traced, 4, 4));
        assertEquals(
                List.of(new Link(0, Side.EAST, 1, Side.NORTH), new Link(1, Side.SOUTH, 2, Side.WEST)), traced.links());
        assertThrows(
                IllegalArgumentException.class,
                () -> new Panel(
                        tile(2, 2, Order.ALL_ONE_WAY),
                        List.of(new Place(0, 0, 0), new Place(1, 0, 0)),
                        1,
                        false,
                        24,
                        1e-6,
                        0,
                        true));
    }
}
