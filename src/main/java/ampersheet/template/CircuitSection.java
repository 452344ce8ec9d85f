package ampersheet.template;

import ampersheet.circuit.GridPoint;
import ampersheet.circuit.PartKind;
import ampersheet.circuit.PartValue;
import ampersheet.diagnostic.Place;
import ampersheet.formula.Expression;
import ampersheet.formula.FormulaReader;
import ampersheet.formula.Spelling;
import ampersheet.formula.TradeWords;
import ampersheet.model.CircuitPlan;
import ampersheet.model.CircuitPlan.PlannedPart;
import ampersheet.model.SizeLimits;
import ampersheet.quantity.Dimension;
import ampersheet.source.Faults;
import ampersheet.source.Fields;
import ampersheet.source.Yaml;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** Reads the parts of a circuit. Whether they make one that can be solved is for {@link CircuitCheck}. */
final class CircuitSection {
    /** Grid points from the origin; a drawing that fits on paper needs about a tenth. */
    private static final int FARTHEST = 200;

    /** The drawing has as many as there are. */
    private static final Set<String> DRAWN_COUNTS =
            Set.of(PartValue.TAPS.key(), PartValue.COLUMNS.key(), PartValue.ROWS.key());

    private static final Formulas.Rule GIVENS = (named, mention) -> !named.isStep()
            ? Optional.empty()
            : Optional.of(new Formulas.Refusal(
                    "the drawing shows how many there are, and with the step " + named.id()
                            + " that would give the answer away",
                    "givens and constants",
                    "Take a given; a proof may vary it."));

    private final ModelValues values;
    private final Numbers numbers;
    private final Wording wording;
    private final Sizes sizes;
    private final Faults faults;
    private final List<Place> places = new ArrayList<>();
    private final Map<String, Optional<PartKind>> parts = new TreeMap<>();
    private final Set<String> nodes = new TreeSet<>();
    private final Map<String, Place> named = new TreeMap<>();

    CircuitSection(ModelValues values, Wording wording, Sizes sizes, Faults faults) {
        this.values = values;
        this.numbers = new Numbers(faults);
        this.wording = wording;
        this.sizes = sizes;
        this.faults = faults;
    }

    CircuitPlan read(List<Yaml.Mapping> items) {
        List<PlannedPart> planned = new ArrayList<>();
        for (Yaml.Mapping item : items) {
            part(item, planned.size() + 1).ifPresent(part -> {
                planned.add(part);
                places.add(item.place());
            });
        }
        return new CircuitPlan(planned);
    }

    /** The place of each part of the plan. */
    List<Place> places() {
        return places;
    }

    /** Parts that measures can ask for; the kind is empty where it could not be read. */
    Map<String, Optional<PartKind>> parts() {
        return parts;
    }

    Set<String> nodes() {
        return nodes;
    }

    private Optional<PlannedPart> part(Yaml.Mapping item, int number) {
        Optional<PartKind> kind = kind(item);
        if (kind.isEmpty()) {
            return Optional.empty();
        }
        String shown = item.entries().get(0).value() instanceof Yaml.Scalar text
                        && !text.text().isBlank()
                ? text.text()
                : "the " + kind.get().word();
        Fields fields = new Fields(item, shown, faults);
        Optional<String> name = name(item, kind.get(), fields, number);
        Map<String, GridPoint> ends = ends(kind.get(), fields);
        Map<PartValue, Expression> formulas = new LinkedHashMap<>();
        for (PartValue value : kind.get().needed()) {
            fields.need(value.key(), "a formula in " + TradeWords.plural(value.dimension()));
            value(fields, value.key(), value.dimension(), shown).ifPresent(is -> formulas.put(value, is));
        }
        for (PartValue value : kind.get().optional()) {
            value(fields, value.key(), value.dimension(), shown).ifPresent(is -> formulas.put(value, is));
        }
        note(shown, fields, formulas);
        Map<String, String> words = new LinkedHashMap<>();
        kind.get()
                .words()
                .forEach((key, known) -> fields.text(key)
                        .flatMap(text -> values.word(text, known, key + " of " + shown, faults))
                        .ifPresent(word -> words.put(key, word)));
        Optional<String> caption = wording.text(fields, "caption");
        fields.finish();
        boolean complete = name.isPresent()
                && ends.size() == kind.get().terminals().size()
                && formulas.keySet().containsAll(kind.get().needed());
        return complete
                ? Optional.of(new PlannedPart(kind.get(), name.get(), ends, formulas, words, caption))
                : Optional.empty();
    }

    private void note(String shown, Fields fields, Map<PartValue, Expression> formulas) {
        if (formulas.containsKey(PartValue.TAPS)) {
            sizes.note(
                    "taps of " + shown,
                    List.of(formulas.get(PartValue.TAPS)),
                    fields.placeOf("taps"),
                    SizeLimits.TAPS,
                    "all are solved for every draw");
        }
        if (formulas.containsKey(PartValue.COLUMNS) && formulas.containsKey(PartValue.ROWS)) {
            boolean mesh = formulas.containsKey(PartValue.CROSS);
            sizes.note(
                    "loads of " + shown,
                    List.of(formulas.get(PartValue.COLUMNS), formulas.get(PartValue.ROWS)),
                    fields.placeOf("columns"),
                    mesh ? SizeLimits.LOADS_OF_A_MESH : SizeLimits.LOADS,
                    mesh
                            ? "with copper across as well, solving takes time with the cube of the panel's side"
                            : "all are solved for every draw");
        }
    }

    /**
     * The first key names the kind: {@code source} is a part when it stands first, and a terminal of a MOSFET later.
     */
    private Optional<PartKind> kind(Yaml.Mapping item) {
        Set<String> kinds = new TreeSet<>();
        for (PartKind kind : PartKind.values()) {
            kinds.add(kind.word());
        }
        if (item.entries().isEmpty()) {
            faults.error(
                    item.place(),
                    "this part is empty",
                    "{resistor: R1, from: [0, 4], to: [4, 4], ohms: R}",
                    "Remove it.");
            return Optional.empty();
        }
        Yaml.Scalar first = item.entries().get(0).key();
        Optional<PartKind> kind = PartKind.named(first.text());
        if (kind.isEmpty()) {
            // Known by its name at least, so that what measures it is not told as wrong too.
            if (item.entries().get(0).value() instanceof Yaml.Scalar name && FormulaReader.isName(name.text())) {
                parts.put(name.text(), Optional.empty());
                nodes.add(name.text());
            }
            faults.error(
                    first.place(),
                    "there is no kind of part " + first.text(),
                    Spelling.list(kinds),
                    Guess.of(first.text(), kinds, "Name the kind first, as in {resistor: R1, ...}."));
        }
        return kind;
    }

    private Optional<String> name(Yaml.Mapping item, PartKind kind, Fields fields, int number) {
        fields.has(kind.word());
        boolean nameless = kind == PartKind.WIRE || kind == PartKind.GROUND;
        Yaml value = item.entries().get(0).value();
        if (value instanceof Yaml.Scalar text && text.text().isBlank()) {
            if (nameless) {
                return Optional.of(kind.word() + " " + number);
            }
            faults.error(
                    item.entries().get(0).key().place(),
                    "the " + kind.word() + " has no name",
                    "a name such as R1",
                    "Write the name after " + kind.word() + ":.");
            return Optional.empty();
        }
        if (!(value instanceof Yaml.Scalar name) || !FormulaReader.isName(name.text())) {
            faults.error(
                    value.place(),
                    "this is not a name",
                    "a letter, then letters, digits and _, such as R1",
                    "Choose another name; caption: changes how it is printed.");
            return Optional.empty();
        }
        Place first = named.putIfAbsent(name.text(), name.place());
        if (first != null) {
            faults.error(
                    name.place(),
                    "the name " + name.text() + " stands in the circuit a second time",
                    "every name once; the first stands in line " + first.line(),
                    "Rename one of the two.");
        }
        if (kind == PartKind.NODE) {
            nodes.add(name.text());
        } else if (!nameless) {
            parts.put(name.text(), Optional.of(kind));
        }
        return Optional.of(name.text());
    }

    private Map<String, GridPoint> ends(PartKind kind, Fields fields) {
        Map<String, GridPoint> ends = new LinkedHashMap<>();
        for (String terminal : kind.terminals()) {
            fields.need(terminal, "its grid point, such as [0, 4]");
            fields.value(terminal)
                    .flatMap(value -> point(value, terminal))
                    .ifPresent(point -> ends.put(terminal, point));
        }
        return ends;
    }

    private Optional<GridPoint> point(Yaml value, String terminal) {
        List<Integer> numbersRead = new ArrayList<>();
        if (value instanceof Yaml.Sequence list && list.items().size() == 2) {
            for (Yaml item : list.items()) {
                if (item instanceof Yaml.Scalar text) {
                    numbers.whole(text, -FARTHEST, FARTHEST).ifPresentOrElse(numbersRead::add, () -> {});
                }
            }
            if (numbersRead.size() < 2) {
                return Optional.empty();
            }
            return Optional.of(new GridPoint(numbersRead.get(0), numbersRead.get(1)));
        }
        faults.error(
                value.place(),
                "the value of \"" + terminal + "\" is not a grid point",
                "two whole numbers: [x to the right, y upwards]",
                "Write for example [0, 4].");
        return Optional.empty();
    }

    private Optional<Expression> value(Fields fields, String key, Dimension dimension, String part) {
        return fields.text(key)
                .flatMap(text -> DRAWN_COUNTS.contains(key)
                        ? values.read(text, GIVENS, dimension, key + " of " + part)
                                .map(Formulas.Checked::expression)
                        : values.read(text, dimension, key + " of " + part));
    }
}
