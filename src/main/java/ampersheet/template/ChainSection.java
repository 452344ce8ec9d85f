package ampersheet.template;

import ampersheet.diagnostic.Place;
import ampersheet.formula.Expression;
import ampersheet.formula.FormulaReader;
import ampersheet.formula.Spelling;
import ampersheet.model.ChainPlan;
import ampersheet.model.ChainPlan.Layout;
import ampersheet.model.ChainPlan.PlannedPackets;
import ampersheet.model.ChainPlan.PlannedPlace;
import ampersheet.model.PlannedMark;
import ampersheet.model.SizeLimits;
import ampersheet.quantity.Dimension;
import ampersheet.source.Faults;
import ampersheet.source.Fields;
import ampersheet.source.Yaml;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** Reads a chain of tiles. */
final class ChainSection {
    private static final Set<String> LINES = words("back and forth", "all one way");
    private static final Set<String> CORNERS = words("top left", "top right", "bottom left", "bottom right");
    private static final Set<String> RUNS = words("across", "down");
    /** As templates were written before; sheets that were handed out keep theirs. */
    private static final Set<String> OLD_ORDERS = words("progressive", "serpentine");

    private static final Set<String> OLD_ALONG = words("rows", "columns");
    private static final Set<String> SIDES = words("north", "east", "south", "west");

    private final Formulas formulas;
    private final ModelValues values;
    private final Wording wording;
    private final Sizes sizes;
    private final Faults faults;

    ChainSection(Formulas formulas, ModelValues values, Wording wording, Sizes sizes, Faults faults) {
        this.formulas = formulas;
        this.values = values;
        this.wording = wording;
        this.sizes = sizes;
        this.faults = faults;
    }

    private static Set<String> words(String... words) {
        return new TreeSet<>(List.of(words));
    }

    Optional<ChainPlan> read(Yaml.Mapping section) {
        Fields fields = new Fields(section, "the chain", faults);
        fields.need(
                "tile",
                "the tile: {columns: c, rows: r, lines: back and forth, start: top left, "
                        + "lines_run: across, input: west, output: east}");
        ReadTile tile = tile(fields);
        Optional<Layout> layout = layout(fields);
        Optional<Boolean> returnLine = returnLine(fields);
        Optional<Expression> bits = value(fields, "bits", Dimension.ONE);
        Optional<Expression> bitTime = value(fields, "bit_time", Dimension.TIME);
        Optional<Expression> reset = value(fields, "reset", Dimension.TIME);
        Optional<Expression> chains = value(fields, "chains", Dimension.ONE);
        Optional<Expression> frames = value(fields, "frames", Dimension.ONE);
        Optional<Expression> passing = value(fields, "passing", Dimension.TIME);
        Optional<PlannedPackets> packets = packets(fields);
        List<PlannedMark> marks = marks(fields);
        fields.finish();
        if (tile.columns().isPresent() && tile.rows().isPresent()) {
            note(fields, tile.columns().get(), tile.rows().get(), layout);
        }
        noteData(fields, bits, chains, frames);
        return tile.isComplete() && layout.isPresent() && returnLine.isPresent()
                ? Optional.of(new ChainPlan(
                        tile.columns().get(),
                        tile.rows().get(),
                        tile.order().get(),
                        tile.start().get(),
                        tile.along().get(),
                        tile.input().get(),
                        tile.output().get(),
                        layout.get(),
                        returnLine.get(),
                        bits,
                        bitTime,
                        reset,
                        chains,
                        frames,
                        passing,
                        packets,
                        marks))
                : Optional.empty();
    }

    /** As far as it could be read. */
    private record ReadTile(
            Optional<Expression> columns,
            Optional<Expression> rows,
            Optional<String> order,
            Optional<String> start,
            Optional<String> along,
            Optional<String> input,
            Optional<String> output) {
        boolean isComplete() {
            return columns.isPresent()
                    && rows.isPresent()
                    && order.isPresent()
                    && start.isPresent()
                    && along.isPresent()
                    && input.isPresent()
                    && output.isPresent();
        }
    }

    private ReadTile tile(Fields chain) {
        Optional<Fields> tile = chain.group("tile").map(group -> new Fields(group, "the tile", faults));
        ReadTile read = new ReadTile(
                tile.flatMap(group -> count(group, "columns", "of the tile")),
                tile.flatMap(group -> count(group, "rows", "of the tile")),
                tile.flatMap(group -> word(group, "lines", LINES, "order", OLD_ORDERS)),
                tile.flatMap(group -> word(group, "start", CORNERS)),
                tile.flatMap(group -> word(group, "lines_run", RUNS, "along", OLD_ALONG)),
                tile.flatMap(group -> word(group, "input", SIDES)),
                tile.flatMap(group -> word(group, "output", SIDES)));
        tile.ifPresent(Fields::finish);
        return read;
    }

    private Optional<Expression> value(Fields fields, String key, Dimension dimension) {
        return fields.text(key).flatMap(text -> values.read(text, dimension, key + " of the chain"));
    }

    private Optional<PlannedPackets> packets(Fields chain) {
        Optional<Fields> group = chain.group("packets").map(read -> new Fields(read, "the packets", faults));
        Optional<Expression> channels = group.flatMap(fields -> count(fields, "channels", "of the packets"));
        Optional<Expression> ofAPixel = group.flatMap(fields -> count(fields, "of_a_pixel", "of the packets"));
        Optional<Expression> channelTime = group.flatMap(fields -> value(fields, "channel_time", Dimension.TIME));
        Optional<Expression> before = group.flatMap(fields -> value(fields, "before", Dimension.TIME));
        group.ifPresent(Fields::finish);
        return channels.isPresent() && ofAPixel.isPresent()
                ? Optional.of(new PlannedPackets(channels.get(), ofAPixel.get(), channelTime, before))
                : Optional.empty();
    }

    private void noteData(
            Fields fields, Optional<Expression> bits, Optional<Expression> chains, Optional<Expression> frames) {
        bits.ifPresent(count -> sizes.note(
                "bits of a pixel",
                List.of(count),
                fields.placeOf("bits"),
                SizeLimits.BITS,
                "each is sent through every pixel"));
        chains.ifPresent(count -> sizes.note(
                "chains", List.of(count), fields.placeOf("chains"), SizeLimits.TILES, "a panel has no more tiles"));
        frames.ifPresent(count -> sizes.note(
                "frames",
                List.of(count),
                fields.placeOf("frames"),
                SizeLimits.FRAMES,
                "all of them are laid down pixel by pixel"));
    }

    private void note(Fields fields, Expression columns, Expression rows, Optional<Layout> layout) {
        String drawn = "a page shows, and a browser draws, no more";
        Place tile = fields.placeOf("tile");
        sizes.note("columns of pixels in the tile", List.of(columns), tile, SizeLimits.PIXELS_IN_A_LINE, drawn);
        sizes.note("rows of pixels in the tile", List.of(rows), tile, SizeLimits.PIXELS_IN_A_LINE, drawn);
        sizes.note("pixels in the tile", List.of(columns, rows), tile, SizeLimits.PIXELS, drawn);
        Place place = fields.placeOf("layout");
        List<Expression> tiles = layout.map(ChainSection::tiles).orElse(List.of());
        List<Expression> pixels = new ArrayList<>(List.of(columns, rows));
        pixels.addAll(tiles);
        sizes.note("tiles", tiles, place, SizeLimits.TILES, drawn);
        sizes.note("pixels in the panel", pixels, place, SizeLimits.PIXELS, drawn);
        if (tiles.size() == 2) {
            sizes.note(
                    "pixels side by side", List.of(columns, tiles.get(0)), place, SizeLimits.PIXELS_IN_A_LINE, drawn);
            sizes.note(
                    "pixels one below the other",
                    List.of(rows, tiles.get(1)),
                    place,
                    SizeLimits.PIXELS_IN_A_LINE,
                    drawn);
        }
    }

    /** Of which the product is their number. */
    private static List<Expression> tiles(Layout layout) {
        if (layout instanceof Layout.Rows rows) {
            return List.of(rows.columns(), rows.rows());
        } else if (layout instanceof Layout.Cabled cabled) {
            return List.of(cabled.columns(), cabled.rows());
        }
        return List.of(FormulaReader.expression(
                Integer.toString(((Layout.Places) layout).places().size())));
    }

    private Optional<Expression> count(Fields fields, String key, String of) {
        return fields.needText(key, "a count, such as 8 or a given")
                .flatMap(text -> values.read(text, Dimension.ONE, key + " " + of));
    }

    /** One of the tile's own words, or the name of a word given all of whose words are such. */
    private Optional<String> word(Fields fields, String key, Set<String> words) {
        return fields.needText(key, Spelling.list(words)).flatMap(text -> values.word(text, words, told(key), faults));
    }

    private static String told(String key) {
        return switch (key) {
            case "lines" -> "way in which the lines of a tile run";
            case "lines_run" -> "direction of the lines of a tile";
            default -> key + " of a tile";
        };
    }

    /** The same under the key that templates had before, where the new one does not stand. */
    private Optional<String> word(Fields fields, String key, Set<String> words, String oldKey, Set<String> oldWords) {
        return fields.hasUntold(oldKey) && !fields.has(key) ? word(fields, oldKey, oldWords) : word(fields, key, words);
    }

    private Optional<Layout> layout(Fields fields) {
        fields.need("layout", "{columns: m, rows: n}, or a list of places [{at: [0, 0], turned: 0}]");
        Optional<Yaml> value = fields.value("layout");
        if (value.isPresent() && value.get() instanceof Yaml.Mapping group) {
            Fields rows = new Fields(group, "the layout", faults);
            Optional<Expression> columns = count(rows, "columns", "of the layout");
            Optional<Expression> count = count(rows, "rows", "of the layout");
            if (rows.has("turned")) {
                return cabled(rows, columns, count);
            }
            rows.finish();
            return columns.isPresent() && count.isPresent()
                    ? Optional.of(new Layout.Rows(columns.get(), count.get()))
                    : Optional.empty();
        }
        if (value.isPresent() && value.get() instanceof Yaml.Sequence) {
            return places(fields.groups("layout", "{at: [0, 0], turned: 0}"), fields.placeOf("layout"));
        }
        value.ifPresent(other -> faults.error(
                fields.placeOf("layout"),
                "the layout is " + other.kind(),
                "{columns: m, rows: n}, or a list of places [{at: [0, 0], turned: 0}]",
                "Write it so."));
        return Optional.empty();
    }

    private Optional<Layout> cabled(Fields layout, Optional<Expression> columns, Optional<Expression> rows) {
        Optional<Fields> turned = layout.group("turned").map(group -> new Fields(group, "the turned tile", faults));
        layout.finish();
        Optional<List<Expression>> at = turned.flatMap(fields -> pair(fields, "the turned tile", Optional.empty()));
        Optional<Expression> by = turned.flatMap(fields -> count(fields, "by", "of the turned tile"));
        turned.ifPresent(Fields::finish);
        return columns.isPresent() && rows.isPresent() && at.isPresent() && by.isPresent()
                ? Optional.of(new Layout.Cabled(
                        columns.get(), rows.get(), at.get().get(0), at.get().get(1), by.get()))
                : Optional.empty();
    }

    private Optional<Layout> places(List<Yaml.Mapping> items, Place section) {
        List<PlannedPlace> places = new ArrayList<>();
        for (Yaml.Mapping item : items) {
            Fields fields = new Fields(item, "a place", faults);
            Optional<List<Expression>> at = pair(fields, "a place", Optional.empty());
            Optional<Expression> turned = fields.has("turned")
                    ? fields.text("turned").flatMap(text -> values.read(text, Dimension.ONE, "turned of a place"))
                    : Optional.of(FormulaReader.expression("0"));
            fields.finish();
            if (at.isPresent() && turned.isPresent()) {
                places.add(new PlannedPlace(at.get().get(0), at.get().get(1), turned.get()));
            }
        }
        if (items.isEmpty()) {
            faults.error(section, "the layout has no tile", "at least one place", "Add places.");
        }
        return places.isEmpty() ? Optional.empty() : Optional.of(new Layout.Places(places));
    }

    private List<PlannedMark> marks(Fields fields) {
        List<PlannedMark> marks = new ArrayList<>();
        for (Yaml.Mapping item : fields.groups("marks", "{at: [x, y], label: \"?\"}")) {
            Fields mark = new Fields(item, "a mark", faults);
            Optional<List<Expression>> at = pair(mark, "a mark", Optional.of(GIVENS));
            Optional<String> label = wording.needText(mark, "label", "what is printed there, such as ?");
            mark.finish();
            if (at.isPresent() && label.isPresent()) {
                marks.add(new PlannedMark(at.get().get(0), at.get().get(1), label.get()));
            }
        }
        return marks;
    }

    /** A mark at a place that has to be found would give it away. */
    static final Formulas.Rule GIVENS = (named, mention) -> !named.isStep()
            ? Optional.empty()
            : Optional.of(new Formulas.Refusal(
                    "a mark at the step " + named.id() + " gives the answer away",
                    "givens and constants",
                    "Mark a place that is given."));

    /** @param rule for what is only drawn; empty: a value of the model */
    private Optional<List<Expression>> pair(Fields fields, String what, Optional<Formulas.Rule> rule) {
        fields.need("at", "column and row, such as [0, 0]");
        Optional<Yaml> value = fields.value("at");
        if (value.isEmpty()) {
            return Optional.empty();
        }
        if (!(value.get() instanceof Yaml.Sequence list) || list.items().size() != 2) {
            faults.error(
                    value.get().place(),
                    "the value of \"at\" is not a place",
                    "column and row, such as [0, 0]",
                    "Write two numbers or names in brackets.");
            return Optional.empty();
        }
        List<Expression> pair = new ArrayList<>();
        for (Yaml item : list.items()) {
            if (item instanceof Yaml.Scalar text && !text.text().isBlank()) {
                Optional<Expression> formula = rule.isPresent()
                        ? formulas.expression(
                                        text,
                                        rule.get(),
                                        Optional.of(Dimension.ONE),
                                        "at of " + what + " takes plain numbers")
                                .map(Formulas.Checked::expression)
                        : values.read(text, Dimension.ONE, "at of " + what);
                formula.ifPresent(pair::add);
            } else {
                faults.error(item.place(), "this is " + item.kind(), "a number or a name", "Write a number or a name.");
            }
        }
        return pair.size() == 2 ? Optional.of(pair) : Optional.empty();
    }

    private Optional<Boolean> returnLine(Fields fields) {
        Optional<Yaml.Scalar> text = fields.text("return");
        if (text.isEmpty()) {
            return fields.has("return") ? Optional.empty() : Optional.of(false);
        }
        if (text.get().text().equals("true") || text.get().text().equals("false")) {
            return Optional.of(text.get().text().equals("true"));
        }
        faults.error(
                text.get().place(),
                "\"" + text.get().text() + "\" does not say whether there is a return line",
                "true or false",
                "Write one of the two.");
        return Optional.empty();
    }
}
