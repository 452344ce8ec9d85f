package ampersheet.template;

import ampersheet.formula.Expression;
import ampersheet.model.AssemblyPlan;
import ampersheet.model.AssemblyPlan.PlannedArm;
import ampersheet.model.ModelKind;
import ampersheet.model.PlannedMark;
import ampersheet.model.SizeLimits;
import ampersheet.quantity.Dimension;
import ampersheet.source.Faults;
import ampersheet.source.Fields;
import ampersheet.source.Yaml;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads tiles that are joined: by their edges, in branches, in a row, or in a net. */
final class AssemblySection {
    /** What is drawn as it must become leaves nothing to find. */
    private static final Formulas.Rule DRAWN = (named, mention) -> !named.isStep()
            ? Optional.empty()
            : Optional.of(new Formulas.Refusal(
                    "a tile drawn as the step " + named.id() + " turns it gives the answer away",
                    "givens and constants, or lies: with how the tiles are drawn",
                    "Draw each tile as it lies before."));

    /** The keys of the sections, with what they model. */
    static final Map<String, ModelKind> KEYS = keys();

    private final Formulas formulas;
    private final ModelValues values;
    private final Wording wording;
    private final Sizes sizes;
    private final Faults faults;

    AssemblySection(Formulas formulas, ModelValues values, Wording wording, Sizes sizes, Faults faults) {
        this.formulas = formulas;
        this.values = values;
        this.wording = wording;
        this.sizes = sizes;
        this.faults = faults;
    }

    private static Map<String, ModelKind> keys() {
        Map<String, ModelKind> keys = new LinkedHashMap<>();
        keys.put("edge", ModelKind.EDGE);
        keys.put("branches", ModelKind.BRANCHES);
        keys.put("row", ModelKind.ROW);
        keys.put("net", ModelKind.NET);
        return Collections.unmodifiableMap(keys);
    }

    Optional<AssemblyPlan> read(ModelKind model, Yaml.Mapping section) {
        Optional<AssemblyPlan> plan = switch (model) {
            case EDGE -> edge(new Fields(section, "the edge", faults));
            case BRANCHES -> branches(new Fields(section, "the branches", faults));
            case ROW -> row(new Fields(section, "the row", faults));
            case NET -> net(new Fields(section, "the net", faults));
            default -> throw new IllegalArgumentException("no assembly: " + model);
        };
        return plan;
    }

    private Optional<AssemblyPlan> edge(Fields fields) {
        Optional<Expression> sides = value(fields, "sides", "of the edge", Dimension.ONE);
        Optional<Expression> plain = value(fields, "plain", "of the edge", Dimension.ONE);
        Optional<Expression> contacts = value(fields, "contacts", "of the edge", Dimension.ONE);
        Optional<List<Expression>> supplies = places(fields, "supply", "edge");
        Optional<List<Expression>> grounds = places(fields, "ground", "edge");
        Optional<Expression> output = value(fields, "output", "of the edge", Dimension.ONE);
        Optional<Expression> input = value(fields, "input", "of the edge", Dimension.ONE);
        note(sides, "sides of the tile", fields, "sides", SizeLimits.SIDES, "each is laid against every other");
        note(contacts, "contacts", fields, "contacts", SizeLimits.JOINED, "each is held against every other");
        fields.finish();
        boolean complete = sides.isPresent()
                && plain.isPresent()
                && contacts.isPresent()
                && supplies.isPresent()
                && grounds.isPresent()
                && output.isPresent()
                && input.isPresent();
        return complete
                ? Optional.of(new AssemblyPlan.Edge(
                        sides.get(),
                        plain.get(),
                        contacts.get(),
                        supplies.get(),
                        grounds.get(),
                        output.get(),
                        input.get()))
                : Optional.empty();
    }

    /** One place, or a list of them where several contacts of the row carry the same. */
    private Optional<List<Expression>> places(Fields fields, String key, String of) {
        if (!(fields.value(key).orElse(null) instanceof Yaml.Sequence list)) {
            return value(fields, key, "of the " + of, Dimension.ONE).map(List::of);
        }
        List<Expression> places = new ArrayList<>();
        for (Yaml item : list.items()) {
            if (item instanceof Yaml.Scalar text && !text.text().isBlank()) {
                values.read(text, Dimension.ONE, key + " of the " + of).ifPresent(places::add);
            } else {
                faults.error(
                        item.place(),
                        "this is " + item.kind(),
                        "a number or a formula",
                        "Write a number or a formula.");
            }
        }
        if (list.items().isEmpty()) {
            String contact = of.equals("edge") ? key + " contact" : key + " entry";
            faults.error(list.place(), "the " + of + " has no " + contact, "at least one place", "Add a place.");
        }
        return places.isEmpty() || places.size() < list.items().size() ? Optional.empty() : Optional.of(places);
    }

    private Optional<AssemblyPlan> net(Fields fields) {
        Optional<Expression> sides = value(fields, "sides", "of the net", Dimension.ONE);
        Optional<Expression> top = value(fields, "top", "of the net", Dimension.ONE);
        Optional<Expression> bottom = value(fields, "bottom", "of the net", Dimension.ONE);
        Optional<List<Expression>> turned =
                fields.has("turned") ? places(fields, "turned", "net") : Optional.of(List.of());
        Optional<List<Expression>> lies = fields.has("lies") ? drawn(fields, "lies") : Optional.of(List.of());
        if (fields.has("turned") && !fields.has("lies")) {
            drawn(fields, "turned");
        }
        Optional<List<Expression>> plain =
                fields.has("plain") ? places(fields, "plain", "net") : Optional.of(List.of());
        note(sides, "sides of a lid", fields, "sides", SizeLimits.SIDES_OF_A_LID, "each is laid against every other");
        fields.finish();
        boolean complete = sides.isPresent()
                && top.isPresent()
                && bottom.isPresent()
                && turned.isPresent()
                && lies.isPresent()
                && plain.isPresent();
        return complete
                ? Optional.of(new AssemblyPlan.Net(
                        sides.get(), top.get(), bottom.get(), turned.get(), lies.get(), plain.get()))
                : Optional.empty();
    }

    /** How the tiles are drawn; a step there would give its value away. */
    private Optional<List<Expression>> drawn(Fields fields, String key) {
        List<Expression> turns = new ArrayList<>();
        List<Yaml> items = fields.value(key).orElse(null) instanceof Yaml.Sequence list ? list.items() : List.of();
        for (Yaml item : items) {
            if (item instanceof Yaml.Scalar text && !text.text().isBlank()) {
                formulas.expression(text, DRAWN, Optional.of(Dimension.ONE), key + " of the net takes plain numbers")
                        .ifPresent(formula -> turns.add(formula.expression()));
            }
        }
        if (items.isEmpty()) {
            faults.error(
                    fields.placeOf(key),
                    "the value of \"" + key + "\" is no list of turns",
                    "[qa, qb, qc], over givens",
                    "Write how each tile is drawn.");
        }
        return turns.isEmpty() || turns.size() < items.size() ? Optional.empty() : Optional.of(turns);
    }

    private Optional<AssemblyPlan> row(Fields fields) {
        Optional<Expression> tiles = value(fields, "tiles", "of the row", Dimension.ONE);
        Optional<Expression> length = value(fields, "length", "of the row", Dimension.LENGTH);
        Optional<Expression> error = value(fields, "error", "of the row", Dimension.LENGTH);
        note(
                tiles,
                "tiles in the row",
                fields,
                "tiles",
                SizeLimits.TILES_IN_A_ROW,
                "all combinations of their errors are walked through");
        fields.finish();
        return tiles.isPresent() && length.isPresent() && error.isPresent()
                ? Optional.of(new AssemblyPlan.Row(tiles.get(), length.get(), error.get()))
                : Optional.empty();
    }

    private Optional<AssemblyPlan> branches(Fields fields) {
        Optional<Expression> sides = value(fields, "sides", "of the branches", Dimension.ONE);
        Optional<Expression> side = value(fields, "side", "of the branches", Dimension.LENGTH);
        fields.need("arms", "[{at: 1, tiles: a}, {at: 3, tiles: b}]");
        List<PlannedArm> arms = new ArrayList<>();
        for (Yaml.Mapping item : fields.groups("arms", "{at: 1, tiles: a}")) {
            Fields arm = new Fields(item, "an arm", faults);
            Optional<Expression> at = value(arm, "at", "of an arm", Dimension.ONE);
            Optional<Expression> tiles = value(arm, "tiles", "of an arm", Dimension.ONE);
            note(tiles, "tiles in the arm", arm, "tiles", SizeLimits.JOINED, "each is held against every other");
            arm.finish();
            if (at.isPresent() && tiles.isPresent()) {
                arms.add(new PlannedArm(at.get(), tiles.get()));
            }
        }
        List<PlannedMark> marks = new ArrayList<>();
        for (Yaml.Mapping item : fields.groups("marks", "{arm: 1, tile: k, label: \"?\"}")) {
            Fields mark = new Fields(item, "a mark", faults);
            Optional<Expression> arm = given(mark, "arm");
            Optional<Expression> tile = given(mark, "tile");
            Optional<String> label = wording.needText(mark, "label", "what is printed there, such as ?");
            mark.finish();
            if (arm.isPresent() && tile.isPresent() && label.isPresent()) {
                marks.add(new PlannedMark(arm.get(), tile.get(), label.get()));
            }
        }
        fields.finish();
        return sides.isPresent() && side.isPresent() && !arms.isEmpty()
                ? Optional.of(new AssemblyPlan.Branches(sides.get(), side.get(), arms, marks))
                : Optional.empty();
    }

    private void note(Optional<Expression> size, String what, Fields fields, String key, int most, String reason) {
        size.ifPresent(formula -> sizes.note(what, List.of(formula), fields.placeOf(key), most, reason));
    }

    private Optional<Expression> value(Fields fields, String key, String of, Dimension dimension) {
        return fields.needText(key, "a number or a formula")
                .flatMap(text -> values.read(text, dimension, key + " " + of));
    }

    private Optional<Expression> given(Fields fields, String key) {
        return fields.needText(key, "a number or a given")
                .flatMap(text -> formulas.expression(
                        text, ChainSection.GIVENS, Optional.of(Dimension.ONE), key + " of a mark takes plain numbers"))
                .map(Formulas.Checked::expression);
    }
}
