package ampersheet.chain;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Follows a token through a panel, pixel by pixel, and notes each pixel's turn.
 *
 * <p>From tile to tile the data goes:
 *
 * <ol>
 *   <li>across the edge, when a tile lies against the output side: that tile must have its input there;
 *   <li>at the edge of the panel by a short link to the tile next to it (below or right of it first, then above or
 *       left) that has its input on the same outer side, as where a snaking row turns back;
 *   <li>otherwise by a long link to the far end of the next line of tiles (again below or right first), where a tile
 *       has its input on the opposite outer side, as where every row starts anew.
 * </ol>
 *
 * <p>In a cabled panel it goes along the cables instead.
 */
public final class DataPath {
    private DataPath() {}

    public sealed interface Outcome {
        /** The data reaches every pixel. */
        final class Traced implements Outcome {
            private final List<Stop> stops;
            private final List<Integer> tileOrder;
            private final List<Integer> returnOrder;
            private final List<Link> links;
            /**
             * Filled when a pixel is asked for first: whoever looks for a length of chain asks for none of thousands.
             */
            private final Map<TileWalk.Pixel, Stop> stopAt = new LinkedHashMap<>();

            private final Map<Integer, Integer> tileTurns = new LinkedHashMap<>();
            private final Map<Integer, Integer> returnTurns = new LinkedHashMap<>();

            Traced(List<Stop> stops, List<Integer> tileOrder, List<Integer> returnOrder, List<Link> links) {
                this.stops = List.copyOf(stops);
                this.tileOrder = List.copyOf(tileOrder);
                this.returnOrder = List.copyOf(returnOrder);
                this.links = List.copyOf(links);
                for (int place : tileOrder) {
                    tileTurns.put(place, tileTurns.size());
                }
                int toGo = returnOrder.size();
                for (int place : returnOrder) {
                    returnTurns.put(place, --toGo);
                }
            }

            /** In the order the data reaches them. */
            public List<Stop> stops() {
                return stops;
            }

            /** Indices of places in the order the data enters them. */
            public List<Integer> tileOrder() {
                return tileOrder;
            }

            /**
             * Indices of places in the order the return line passes them, the last tile of the chain first; empty
             * without a return line.
             */
            public List<Integer> returnOrder() {
                return returnOrder;
            }

            /** Cables between tiles that do not touch at input and output, in the order the data takes them. */
            public List<Link> links() {
                return links;
            }

            /** Null where there is no pixel. */
            private synchronized Stop stopAt(int x, int y) {
                if (stopAt.isEmpty()) {
                    stops.forEach(stop -> stopAt.put(new TileWalk.Pixel(stop.x(), stop.y()), stop));
                }
                return stopAt.get(new TileWalk.Pixel(x, y));
            }

            /** Turn of the pixel at panel column x and row y, from 0; -1 where there is no pixel. */
            public int turn(int x, int y) {
                Stop stop = stopAt(x, y);
                return stop == null ? -1 : stop.turn();
            }

            /** Lines of pixels of its tile that the data has left behind at the pixel; -1 where there is no pixel. */
            public int linesBefore(int x, int y) {
                Stop stop = stopAt(x, y);
                return stop == null ? -1 : stop.linesBefore();
            }

            /** Turn of the tile that holds the pixel, from 0; -1 where there is no pixel. */
            public int tileTurn(int x, int y) {
                Stop stop = stopAt(x, y);
                return stop == null ? -1 : tileTurns.get(stop.place());
            }

            /**
             * How many tiles the return line still passes from that pixel's tile to the controller, that tile not
             * counted; -1 where there is no pixel or no return line.
             */
            public int returnTurn(int x, int y) {
                Stop stop = stopAt(x, y);
                return stop == null || returnOrder.isEmpty() ? -1 : returnTurns.get(stop.place());
            }
        }

        /** Data leaves one tile towards a neighbour that has no free input on that side. */
        record Mismatched(int fromPlace, int toPlace) implements Outcome {}

        /**
         * Two tiles lie on one place, or a tile that is not square is turned by one or three quarters.
         *
         * @param why a clause: "it is turned on its side, but …"
         */
        record Misplaced(int place, String why) implements Outcome {}

        /** Tiles the data never reaches. */
        record Unreached(List<Integer> places) implements Outcome {}
    }

    /**
     * @param x panel column, @param y panel row, both from 0
     * @param linesBefore lines of pixels of its tile that the data has left behind
     */
    public record Stop(int turn, int place, int x, int y, int linesBefore) {}

    /**
     * A cable from the output of one tile to the input of another.
     *
     * @param fromSide outer side of the panel on which it starts
     * @param toSide outer side on which it ends; the same for a short link
     */
    public record Link(int fromPlace, Tile.Side fromSide, int toPlace, Tile.Side toSide) {
        public boolean isShort() {
            return fromSide == toSide;
        }
    }

    public static Outcome trace(Panel panel) {
        return new Trace(panel).follow();
    }

    /**
     * Seconds from the first bit until the frame is shown, by sending it bit by bit through the pixels: each takes its
     * own bits and passes on the rest. The tiles are dealt out to parallel chains, one tile to each in turn until none
     * is left, and the controller sends on all of them at once: until the last chain is full.
     *
     * @param passingDelay seconds by which each pixel delays the bits it passes on
     * @throws IllegalArgumentException when the data does not reach every tile: see {@link #trace}
     */
    public static double frameTime(Panel panel, int chains, double passingDelay) {
        if (!(trace(panel) instanceof Outcome.Traced traced)) {
            throw new IllegalArgumentException("the panel has no complete data path: " + trace(panel));
        }
        if (chains < 1) {
            throw new IllegalArgumentException("at least one chain carries the data: " + chains);
        }
        int[] pixelsOf = new int[chains];
        for (int tile = 0; tile < traced.tileOrder().size(); tile++) {
            pixelsOf[tile % chains] += panel.tile().columns() * panel.tile().rows();
        }
        double last = 0;
        for (int pixels : pixelsOf) {
            last = Math.max(last, sendingTime(panel, pixels, passingDelay));
        }
        return last + panel.resetTime();
    }

    private static double sendingTime(Panel panel, int pixels, double passingDelay) {
        int[] taken = new int[pixels];
        long bitsSent = 0;
        int pixelsPassed = 0;
        while (pixelsPassed < taken.length) {
            bitsSent++;
            taken[pixelsPassed]++;
            if (taken[pixelsPassed] == panel.bitsPerPixel()) {
                pixelsPassed++; // full: from now on it passes bits on
            }
        }
        int passedByLastBit = Math.max(0, taken.length - 1);
        return bitsSent * panel.bitTime() + passedByLastBit * passingDelay;
    }

    /** One token on its way. */
    private static final class Trace {
        private final Panel panel;
        private final Map<TileWalk.Pixel, Integer> placeAt = new LinkedHashMap<>();
        private final List<Stop> stops = new ArrayList<>();
        private final List<Integer> tileOrder = new ArrayList<>();
        private final List<Link> links = new ArrayList<>();
        private final boolean[] entered;

        Trace(Panel panel) {
            this.panel = panel;
            entered = new boolean[panel.places().size()];
        }

        Outcome follow() {
            for (int i = 0; i < panel.places().size(); i++) {
                Optional<String> misplaced = put(i);
                if (misplaced.isPresent()) {
                    return new Outcome.Misplaced(i, misplaced.get());
                }
            }
            List<TileWalk.Pixel> walk = new TileWalk(panel.tile()).pixels();
            return panel.cabled() ? alongTheCables(walk) : fromSideToSide(walk);
        }

        /** What is wrong with a place, or nothing, and a tile lies there. */
        private Optional<String> put(int index) {
            Panel.Place place = panel.places().get(index);
            if (place.quarterTurns() < 0 || place.quarterTurns() > 3) {
                return Optional.of("it is turned by " + place.quarterTurns() + " quarters; needs 0 to 3");
            }
            if (place.quarterTurns() % 2 == 1
                    && panel.tile().columns() != panel.tile().rows()) {
                return Optional.of("it is turned on its side, but is not square: "
                        + panel.tile().columns() + " by " + panel.tile().rows() + " pixels");
            }
            Integer earlier = placeAt.putIfAbsent(new TileWalk.Pixel(place.column(), place.row()), index);
            return earlier == null
                    ? Optional.empty()
                    : Optional.of("tile " + (earlier + 1) + " of the list lies at column " + place.column() + ", row "
                            + place.row() + " already");
        }

        private Outcome fromSideToSide(List<TileWalk.Pixel> walk) {
            int here = panel.first();
            while (true) {
                entered[here] = true;
                tileOrder.add(here);
                passThrough(here, walk);
                Tile.Side leaving = side(here, panel.tile().output());
                Optional<Integer> neighbour = neighbour(here, leaving);
                if (neighbour.isPresent()) {
                    boolean facing = side(neighbour.get(), panel.tile().input()) == leaving.opposite();
                    if (facing && !entered[neighbour.get()]) {
                        here = neighbour.get();
                        continue;
                    }
                    boolean outputAgainstOutput =
                            side(neighbour.get(), panel.tile().output()) == leaving.opposite();
                    return tileOrder.size() < entered.length || facing || outputAgainstOutput
                            ? new Outcome.Mismatched(here, neighbour.get())
                            : whole();
                }
                Optional<Link> link = link(here, leaving);
                if (link.isEmpty()) {
                    return whole();
                }
                links.add(link.get());
                here = link.get().toPlace();
            }
        }

        /** At the end of the path: whether it met every tile. */
        private Outcome whole() {
            List<Integer> unreached = new ArrayList<>();
            for (int i = 0; i < entered.length; i++) {
                if (!entered[i]) {
                    unreached.add(i);
                }
            }
            return unreached.isEmpty() ? traced() : new Outcome.Unreached(unreached);
        }

        private Outcome traced() {
            return new Outcome.Traced(stops, tileOrder, panel.returnLine() ? wayBack() : List.of(), links);
        }

        private Outcome alongTheCables(List<TileWalk.Pixel> walk) {
            for (int here = 0; here < entered.length; here++) {
                int next = here;
                tileOrder.add(here);
                passThrough(here, walk);
                if (here > 0) {
                    Tile.Side leaving = side(here - 1, panel.tile().output());
                    Tile.Side entering = side(here, panel.tile().input());
                    boolean beside = neighbour(here - 1, leaving)
                            .filter(tile -> tile == next)
                            .isPresent();
                    if (!beside || entering != leaving.opposite()) {
                        links.add(new Link(here - 1, leaving, here, entering));
                    }
                }
            }
            return traced();
        }

        private void passThrough(int index, List<TileWalk.Pixel> walk) {
            Panel.Place place = panel.places().get(index);
            Tile tile = panel.tile();
            boolean rows = tile.along() == Tile.Along.ROWS;
            TileWalk.Pixel last = walk.get(0);
            int linesBefore = 0;
            for (TileWalk.Pixel pixel : walk) {
                boolean sameLine = rows ? pixel.row() == last.row() : pixel.column() == last.column();
                linesBefore += sameLine ? 0 : 1;
                last = pixel;
                TileWalk.Pixel lying = pixel;
                for (int turn = 0; turn < place.quarterTurns(); turn++) {
                    lying = lying.turnedQuarter(turn % 2 == 0 ? tile.rows() : tile.columns());
                }
                stops.add(new Stop(
                        stops.size(),
                        index,
                        place.column() * tile.columns() + lying.column(),
                        place.row() * tile.rows() + lying.row(),
                        linesBefore));
            }
        }

        /** The return line runs beside the data and meets the same tiles, last one first. */
        private List<Integer> wayBack() {
            List<Integer> back = new ArrayList<>(tileOrder);
            Collections.reverse(back);
            return back;
        }

        private Tile.Side side(int index, Tile.Side unrotated) {
            return unrotated.turned(panel.places().get(index).quarterTurns());
        }

        private Optional<Integer> neighbour(int index, Tile.Side side) {
            Panel.Place place = panel.places().get(index);
            return Optional.ofNullable(
                    placeAt.get(new TileWalk.Pixel(place.column() + side.columnStep(), place.row() + side.rowStep())));
        }

        /** The cable that goes on from an outer side. */
        private Optional<Link> link(int from, Tile.Side leaving) {
            Tile.Side onward = leaving.columnStep() != 0 ? Tile.Side.SOUTH : Tile.Side.EAST;
            for (Tile.Side across : List.of(onward, onward.opposite())) {
                Optional<Integer> beside = neighbour(from, across);
                if (beside.isPresent() && hasFreeInput(beside.get(), leaving)) {
                    return Optional.of(new Link(from, leaving, beside.get(), leaving));
                }
            }
            for (Tile.Side across : List.of(onward, onward.opposite())) {
                for (int place = 0; place < entered.length; place++) {
                    if (isOnNextLine(from, place, across) && hasFreeInput(place, leaving.opposite())) {
                        return Optional.of(new Link(from, leaving, place, leaving.opposite()));
                    }
                }
            }
            return Optional.empty();
        }

        private boolean hasFreeInput(int place, Tile.Side outer) {
            return !entered[place]
                    && side(place, panel.tile().input()) == outer
                    && neighbour(place, outer).isEmpty();
        }

        private boolean isOnNextLine(int from, int to, Tile.Side across) {
            Panel.Place here = panel.places().get(from);
            Panel.Place there = panel.places().get(to);
            return across.rowStep() != 0
                    ? there.row() - here.row() == across.rowStep()
                    : there.column() - here.column() == across.columnStep();
        }
    }
}
