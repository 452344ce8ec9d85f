package ampersheet.model;

import ampersheet.chain.ChannelPackets;
import ampersheet.chain.Panel;
import ampersheet.chain.Tile;
import ampersheet.formula.Expression;
import ampersheet.formula.Values;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A panel whose sizes are formulas and whose words (order, corner …) may be word givens.
 *
 * @param tileColumns pixels per tile row
 * @param layout how tiles follow each other
 * @param chains parallel chains to which the tiles are dealt out for the frame time; one unless said
 * @param frames frames kept in memory; one unless said
 * @param passing time by which each pixel delays what it passes on; none unless said
 * @param packets that carry the frame to the controller, where these are asked about
 */
public record ChainPlan(
        Expression tileColumns,
        Expression tileRows,
        String order,
        String start,
        String along,
        String input,
        String output,
        Layout layout,
        boolean returnLine,
        Optional<Expression> bitsPerPixel,
        Optional<Expression> bitTime,
        Optional<Expression> resetTime,
        Optional<Expression> chains,
        Optional<Expression> frames,
        Optional<Expression> passing,
        Optional<PlannedPackets> packets,
        List<PlannedMark> marks)
        implements ModelPlan {
    /** Of pixels in a panel that a proof solves, or of tiles: as many as 256 rows of 256. What is drawn has fewer. */
    private static final long MOST = 65_536;

    public ChainPlan {
        marks = List.copyOf(marks);
    }

    /** Either explicit places, or a grid of tiles of which every second row is turned half around. */
    public sealed interface Layout {
        List<Expression> formulas();

        /** @throws Unsolved if a size is none, or is too large */
        List<Panel.Place> places(Values values);

        record Places(List<PlannedPlace> places) implements Layout {
            public Places {
                places = List.copyOf(places);
            }

            @Override
            public List<Expression> formulas() {
                return places.stream()
                        .flatMap(place -> List.of(place.column(), place.row(), place.quarterTurns()).stream())
                        .toList();
            }

            @Override
            public List<Panel.Place> places(Values values) {
                return places.stream()
                        .map(place -> new Panel.Place(
                                ModelNumbers.whole("column of a tile", place.column(), values),
                                ModelNumbers.whole("row of a tile", place.row(), values),
                                quarters(place.quarterTurns(), values)))
                        .toList();
            }
        }

        /**
         * Rows of tiles from the top; the data runs along a row of tiles, drops to the next and, {@code serpentine},
         * comes back through tiles turned by two quarters.
         */
        record Rows(Expression columns, Expression rows) implements Layout {
            @Override
            public List<Expression> formulas() {
                return List.of(columns, rows);
            }

            @Override
            public List<Panel.Place> places(Values values) {
                int across = ModelNumbers.size("columns of tiles", columns, values);
                int down = ModelNumbers.size("rows of tiles", rows, values);
                ModelNumbers.few("tiles", (long) across * down, MOST);
                List<Panel.Place> places = new ArrayList<>();
                for (int row = 0; row < down; row++) {
                    boolean back = row % 2 == 1;
                    for (int i = 0; i < across; i++) {
                        places.add(new Panel.Place(back ? across - 1 - i : i, row, back ? 2 : 0));
                    }
                }
                return places;
            }
        }

        /**
         * Rows of tiles that all run from left to right, joined by cables, of which one tile is turned.
         *
         * @param quarterTurns of that tile, clockwise
         */
        record Cabled(
                Expression columns,
                Expression rows,
                Expression turnedColumn,
                Expression turnedRow,
                Expression quarterTurns)
                implements Layout {
            @Override
            public List<Expression> formulas() {
                return List.of(columns, rows, turnedColumn, turnedRow, quarterTurns);
            }

            @Override
            public List<Panel.Place> places(Values values) {
                int across = ModelNumbers.size("columns of tiles", columns, values);
                int down = ModelNumbers.size("rows of tiles", rows, values);
                ModelNumbers.few("tiles", (long) across * down, MOST);
                int atColumn = ModelNumbers.whole("column of the turned tile", turnedColumn, values);
                int atRow = ModelNumbers.whole("row of the turned tile", turnedRow, values);
                int quarters = quarters(quarterTurns, values);
                List<Panel.Place> places = new ArrayList<>();
                for (int row = 0; row < down; row++) {
                    for (int column = 0; column < across; column++) {
                        places.add(new Panel.Place(column, row, column == atColumn && row == atRow ? quarters : 0));
                    }
                }
                return places;
            }
        }

        private static int quarters(Expression turns, Values values) {
            return Math.floorMod(ModelNumbers.whole("quarter turns", turns, values), 4);
        }
    }

    public record PlannedPlace(Expression column, Expression row, Expression quarterTurns) {}

    /**
     * @param channels of a packet
     * @param ofAPixel channels that each pixel takes
     * @param channelTime in which one channel is sent
     * @param before time from the beginning of a packet until its first channel is sent
     */
    public record PlannedPackets(
            Expression channels, Expression ofAPixel, Optional<Expression> channelTime, Optional<Expression> before) {
        List<Expression> formulas() {
            List<Expression> formulas = new ArrayList<>(List.of(channels, ofAPixel));
            channelTime.ifPresent(formulas::add);
            before.ifPresent(formulas::add);
            return formulas;
        }

        ChannelPackets packets(Values values) {
            return new ChannelPackets(
                    ModelNumbers.size("channels of a packet", channels, values),
                    ModelNumbers.size("channels of a pixel", ofAPixel, values));
        }
    }

    @Override
    public ModelKind kind() {
        return ModelKind.CHAIN;
    }

    @Override
    public List<Expression> formulas() {
        List<Expression> formulas = new ArrayList<>(List.of(tileColumns, tileRows));
        formulas.addAll(layout.formulas());
        List.of(bitsPerPixel, bitTime, resetTime, chains, frames, passing)
                .forEach(each -> each.ifPresent(formulas::add));
        packets.ifPresent(planned -> formulas.addAll(planned.formulas()));
        return formulas;
    }

    @Override
    public List<String> words() {
        return List.of(order, start, along, input, output);
    }

    @Override
    public ChainModel with(Values values, Values.Measured others) {
        return new ChainModel(this, values);
    }

    /** @throws Unsolved if a size is not a whole number above zero, or the tiles cannot be made so */
    Panel panel(Values values) {
        try {
            return laid(values);
        } catch (IllegalArgumentException impossible) {
            throw new Unsolved(impossible.getMessage());
        }
    }

    private Panel laid(Values values) {
        Tile tile = new Tile(
                ModelNumbers.size("columns of a tile", tileColumns, values),
                ModelNumbers.size("rows of a tile", tileRows, values),
                Tile.Order.called(said(order, values)),
                word(Tile.Corner.class, start, values),
                Tile.Along.called(said(along, values)),
                word(Tile.Side.class, input, values),
                word(Tile.Side.class, output, values));
        long pixels = (long) tile.columns() * tile.rows();
        ModelNumbers.few("pixels in a tile", pixels, MOST);
        List<Panel.Place> places = layout.places(values);
        ModelNumbers.few("pixels", pixels * places.size(), MOST);
        return new Panel(
                tile,
                places,
                0,
                returnLine,
                bitsPerPixel
                        .map(bits -> ModelNumbers.size("bits per pixel", bits, values, SizeLimits.BITS))
                        .orElse(24),
                bitTime.map(time -> ModelNumbers.number(time, values)).orElse(1.25e-6),
                resetTime.map(time -> ModelNumbers.number(time, values)).orElse(0.0),
                layout instanceof Layout.Cabled);
    }

    /** Parallel chains to which the tiles are dealt out. */
    int parallelChains(Values values) {
        return chains.map(count -> ModelNumbers.size("parallel chains", count, values))
                .orElse(1);
    }

    int framesKept(Values values) {
        return frames.map(count -> ModelNumbers.size("frames in memory", count, values, SizeLimits.FRAMES))
                .orElse(1);
    }

    double passingDelay(Values values) {
        return passing.map(time -> ModelNumbers.number(time, values)).orElse(0.0);
    }

    /** A word of the tile, or of the given that the word names. */
    private static <E extends Enum<E>> E word(Class<E> kind, String wordOrGiven, Values values) {
        String word = said(wordOrGiven, values);
        String constant = word.toUpperCase(Locale.ROOT).replace(' ', '_').replace('-', '_');
        for (E known : kind.getEnumConstants()) {
            if (known.name().equals(constant)) {
                return known;
            }
        }
        throw new Unsolved("\"" + word + "\" is no " + kind.getSimpleName().toLowerCase(Locale.ROOT) + " of a tile");
    }

    private static String said(String wordOrGiven, Values values) {
        return values.words().getOrDefault(wordOrGiven, wordOrGiven).strip();
    }
}
