package ampersheet.template;

import ampersheet.diagnostic.Place;
import ampersheet.formula.Symbol;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.PreferredSeries;
import ampersheet.quantity.Unit;
import ampersheet.source.Faults;
import ampersheet.source.Fields;
import ampersheet.source.Yaml;
import ampersheet.template.ProblemTemplate.Constant;
import ampersheet.template.ProblemTemplate.Given;
import ampersheet.template.ProblemTemplate.QuantityGiven;
import ampersheet.template.ProblemTemplate.WordGiven;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Reads what is given: quantities and words that are drawn, and constants. */
final class GivensSection {
    static final int MOST_VALUES = 10_000;
    /**
     * Direct voltage that may be touched; above it the program makes no sheets (IEC 61140: ripple-free direct voltage).
     */
    static final double EXTRA_LOW_VOLTS = 60;

    private final Names names;
    private final Numbers numbers;
    private final Wording wording;
    private final Tolerances tolerances;
    private final Faults faults;

    GivensSection(Names names, Wording wording, Tolerances tolerances, Faults faults) {
        this.names = names;
        this.tolerances = tolerances;
        this.numbers = new Numbers(faults);
        this.wording = wording;
        this.faults = faults;
    }

    List<Given> givens(Yaml.Mapping section) {
        List<Given> givens = new ArrayList<>();
        for (Yaml.Entry entry : section.entries()) {
            fields(entry, "a given")
                    .ifPresent(fields -> given(entry.key(), fields).ifPresent(givens::add));
        }
        if (section.entries().isEmpty()) {
            faults.error(
                    section.place(), "nothing is given", "at least one given", "Add the quantities that are drawn.");
        }
        return givens;
    }

    List<Constant> constants(Yaml.Mapping section) {
        List<Constant> constants = new ArrayList<>();
        for (Yaml.Entry entry : section.entries()) {
            fields(entry, "a constant")
                    .ifPresent(fields -> constant(entry.key(), fields).ifPresent(constants::add));
        }
        return constants;
    }

    private Optional<Fields> fields(Yaml.Entry entry, String what) {
        if (entry.value() instanceof Yaml.Mapping mapping) {
            return Optional.of(new Fields(mapping, what, faults));
        }
        names.declare(entry.key(), Names.Kind.CONSTANT, Optional.empty(), List.of());
        faults.error(
                entry.key().place(),
                "the value of \"" + entry.key().text() + "\" is "
                        + entry.value().kind(),
                "keys with values, such as {meaning: supply voltage, unit: V, choose: [5, 9, 12]}",
                "Write " + what + " with its keys.");
        return Optional.empty();
    }

    private Optional<Given> given(Yaml.Scalar name, Fields fields) {
        Optional<String> meaning = wording.needText(fields, "meaning", "what it is, such as supply voltage");
        boolean words = !fields.has("unit") && isListOfWords(fields);
        Optional<Given> given = words ? word(name, fields, meaning) : quantity(name, fields, meaning);
        fields.finish();
        return given;
    }

    private static boolean isListOfWords(Fields fields) {
        return fields.value("choose")
                .filter(Yaml.Sequence.class::isInstance)
                .map(Yaml.Sequence.class::cast)
                .map(list -> !list.items().isEmpty()
                        && list.items().stream()
                                .noneMatch(
                                        item -> item instanceof Yaml.Scalar scalar && Numbers.isNumber(scalar.text())))
                .orElse(false);
    }

    private Optional<Given> word(Yaml.Scalar name, Fields fields, Optional<String> meaning) {
        Set<String> words = new LinkedHashSet<>();
        for (Yaml item : fields.list("choose").orElseThrow().items()) {
            if (!(item instanceof Yaml.Scalar word) || !isWord(word.text())) {
                faults.error(
                        item.place(),
                        "this is not a word",
                        "letters, digits, blanks and hyphens, such as serpentine",
                        "Correct the word.");
            } else if (!words.add(word.text())) {
                faults.error(
                        word.place(),
                        "the word " + word.text() + " stands here a second time",
                        "every word once",
                        "Remove it.");
            }
        }
        names.declare(name, Names.Kind.WORD, Optional.empty(), List.copyOf(words));
        return meaning.filter(told -> !words.isEmpty())
                .map(told -> new WordGiven(name.text(), told, List.copyOf(words), said(fields, words)));
    }

    /** What words are called where they are printed; the others are called what they are. */
    private Map<String, String> said(Fields fields, Set<String> words) {
        Map<String, String> said = new LinkedHashMap<>();
        for (Yaml.Entry entry : fields.value("words")
                .filter(Yaml.Mapping.class::isInstance)
                .map(group -> ((Yaml.Mapping) group).entries())
                .orElse(List.of())) {
            boolean known = words.contains(entry.key().text());
            if (!known || !(entry.value() instanceof Yaml.Scalar called) || !isWord(called.text())) {
                faults.error(
                        (known ? entry.value() : entry.key()).place(),
                        known
                                ? "this is not a word"
                                : "there is no word " + entry.key().text() + " to choose",
                        "a word of choose, and what it is called",
                        "Correct it.");
            } else {
                said.put(entry.key().text(), called.text());
            }
        }
        return said;
    }

    private static boolean isWord(String text) {
        return !text.isBlank()
                && text.length() <= 40
                && text.chars().allMatch(c -> Character.isLetterOrDigit(c) || c == ' ' || c == '-');
    }

    private Optional<Given> quantity(Yaml.Scalar name, Fields fields, Optional<String> meaning) {
        Optional<Unit> unit = unit(fields);
        names.declare(name, Names.Kind.GIVEN, unit.map(Unit::dimension), List.of());
        Symbol symbol = symbol(name, fields, names, faults);
        fields.text("tolerance").ifPresent(text -> tolerances.note(name.text(), text));
        if (unit.isEmpty()) {
            List.of("choose", "series", "from", "to", "step").forEach(fields::value);
            return Optional.empty();
        }
        List<Double> values = values(name, fields, unit.get());
        refuseHighVoltage(
                fields.placeOf(fields.has("choose") ? "choose" : "to"),
                unit.get().dimension(),
                values);
        return meaning.filter(told -> !values.isEmpty())
                .map(told -> new QuantityGiven(name.text(), told, symbol, unit.get(), values));
    }

    private Optional<Constant> constant(Yaml.Scalar name, Fields fields) {
        Optional<String> meaning = wording.needText(fields, "meaning", "what it is, such as resistivity of copper");
        Optional<Unit> unit = unit(fields);
        names.declare(name, Names.Kind.CONSTANT, unit.map(Unit::dimension), List.of());
        Symbol symbol = symbol(name, fields, names, faults);
        Optional<Yaml.Scalar> is = fields.needText("is", "its value, a number");
        Optional<Double> value = unit.flatMap(
                known -> is.flatMap(text -> numbers.in(known, text)).map(number -> known.toSi(number.doubleValue())));
        value.ifPresent(si -> refuseHighVoltage(fields.placeOf("is"), unit.get().dimension(), List.of(si)));
        fields.finish();
        return value.flatMap(si -> meaning.map(told -> new Constant(name.text(), told, symbol, unit.get(), si)));
    }

    private Optional<Unit> unit(Fields fields) {
        return fields.needText("unit", "a unit such as V, or \"1\" for a plain number")
                .flatMap(numbers::unit);
    }

    /** As written under {@code symbol:}, or from the name. */
    static Symbol symbol(Yaml.Scalar name, Fields fields, Names names, Faults faults) {
        Optional<Yaml.Scalar> given = fields.text("symbol");
        String written = given.map(Yaml.Scalar::text).orElse(name.text());
        if (!written.matches("\\p{L}[\\p{L}\\p{Nd}_,]{0,30}")) {
            if (given.isPresent()) {
                faults.error(
                        given.get().place(),
                        "\"" + written + "\" is not a symbol",
                        "a letter or Greek name with a subscript, such as T_J, theta_JA or dT",
                        "Correct the symbol.");
            }
            return new Symbol(written, "");
        }
        Symbol symbol = Symbol.of(written);
        names.declareSymbol(name.text(), symbol, given.map(Yaml.Scalar::place).orElse(name.place()));
        return symbol;
    }

    private void refuseHighVoltage(Place place, Dimension dimension, List<Double> values) {
        if (dimension.equals(Dimension.VOLTAGE) && values.stream().anyMatch(v -> Math.abs(v) > EXTRA_LOW_VOLTS)) {
            faults.error(
                    place,
                    "a voltage above 60 V is given",
                    "extra-low voltage: at most 60 V direct voltage",
                    "Lower the voltage; work at higher voltages is outside these sheets.");
        }
    }

    private List<Double> values(Yaml.Scalar name, Fields fields, Unit unit) {
        boolean choose = fields.has("choose");
        boolean series = fields.has("series");
        // Asked one by one, because each key asked for is one that may stand here.
        boolean begins = fields.has("from");
        boolean ends = fields.has("to");
        boolean steps = fields.has("step");
        boolean range = begins || ends || steps;
        if (!choose && !series && !range) {
            faults.error(
                    fields.place(),
                    "the given " + name.text() + " has no values to draw",
                    "choose: [a, b], or from:, to: and step:, or series:, from: and to:",
                    "Say which values may be drawn.");
            return List.of();
        }
        if (choose) {
            if (series || range) {
                faults.error(
                        fields.placeOf(
                                series ? "series" : fields.has("from") ? "from" : fields.has("to") ? "to" : "step"),
                        "the values are given twice",
                        "either choose: or a range",
                        "Keep one of the two.");
            }
            return chosen(fields, unit);
        }
        fields.need("from", "the smallest value");
        fields.need("to", "the largest value");
        Optional<BigDecimal> from = fields.text("from").flatMap(text -> numbers.in(unit, text));
        Optional<BigDecimal> to = fields.text("to").flatMap(text -> numbers.in(unit, text));
        if (from.isPresent() && to.isPresent() && from.get().compareTo(to.get()) >= 0) {
            faults.error(
                    fields.placeOf("to"),
                    "the range ends at " + to.get().toPlainString() + ", not above its start "
                            + from.get().toPlainString(),
                    "from below to",
                    "Exchange or correct the two.");
            return List.of();
        }
        return series ? inSeries(fields, unit, from, to) : stepped(fields, unit, from, to);
    }

    private List<Double> chosen(Fields fields, Unit unit) {
        Set<Double> values = new LinkedHashSet<>();
        Optional<Yaml.Sequence> list = fields.list("choose");
        if (list.isPresent() && list.get().items().isEmpty()) {
            faults.error(list.get().place(), "the list of values is empty", "at least one value", "Add values.");
        }
        for (Yaml item : list.map(Yaml.Sequence::items).orElse(List.of())) {
            if (!(item instanceof Yaml.Scalar text)) {
                faults.error(item.place(), "this value is " + item.kind(), "a number", "Write a number.");
                continue;
            }
            Optional<Double> value = numbers.in(unit, text).map(number -> unit.toSi(number.doubleValue()));
            if (value.isPresent() && !values.add(value.get())) {
                faults.error(
                        text.place(),
                        "the value " + text.text() + " stands here a second time",
                        "every value once",
                        "Remove it.");
            }
        }
        return List.copyOf(values);
    }

    private List<Double> stepped(Fields fields, Unit unit, Optional<BigDecimal> from, Optional<BigDecimal> to) {
        fields.need("step", "the distance from one value to the next");
        Optional<Yaml.Scalar> written = fields.text("step");
        Optional<BigDecimal> step = written.flatMap(text -> numbers.in(differences(unit), text));
        if (from.isEmpty() || to.isEmpty() || step.isEmpty()) {
            return List.of();
        }
        Place place = written.get().place();
        BigDecimal range = to.get().subtract(from.get());
        if (step.get().signum() <= 0) {
            faults.error(place, "the step is not above zero", "a step above zero", "Correct the step.");
            return List.of();
        }
        if (step.get().compareTo(range) > 0) {
            faults.error(
                    place,
                    "the step is larger than the whole range of " + range.toPlainString(),
                    "a step of at most " + range.toPlainString(),
                    "Make the step smaller or the range wider.");
            return List.of();
        }
        BigDecimal count = range.divideToIntegralValue(step.get()).add(BigDecimal.ONE);
        if (count.compareTo(BigDecimal.valueOf(MOST_VALUES)) > 0) {
            faults.error(
                    place,
                    "the given has " + count.toBigInteger() + " values",
                    "at most " + MOST_VALUES + " values",
                    "Make the step larger or the range narrower.");
            return List.of();
        }
        List<Double> values = new ArrayList<>();
        for (BigDecimal value = from.get(); value.compareTo(to.get()) <= 0; value = value.add(step.get())) {
            values.add(unit.toSi(value.doubleValue()));
        }
        return values;
    }

    /** A step between temperatures is a difference: 5 K and 5 degC are the same step. */
    private static Unit differences(Unit unit) {
        return unit.offset() == 0 ? unit : Unit.parse("K");
    }

    private List<Double> inSeries(Fields fields, Unit unit, Optional<BigDecimal> from, Optional<BigDecimal> to) {
        if (fields.has("step")) {
            faults.error(
                    fields.placeOf("step"),
                    "a series has its own steps",
                    "series:, from: and to: alone",
                    "Remove step: or series:.");
        }
        Optional<PreferredSeries> series = fields.text("series").flatMap(text -> series(text, faults));
        if (series.isEmpty() || from.isEmpty() || to.isEmpty()) {
            return List.of();
        }
        double low = unit.toSi(from.get().doubleValue());
        double high = unit.toSi(to.get().doubleValue());
        if (unit.offset() != 0 || low <= 0) {
            faults.error(
                    fields.placeOf("from"),
                    "a preferred series has only values above zero, of a ratio scale",
                    "a range above zero, not in degC",
                    "Correct the range, or use from:, to: and step:.");
            return List.of();
        }
        if (high / low > 1e9) {
            faults.error(
                    fields.placeOf("to"),
                    "the range spans more than nine decades",
                    "a narrower range",
                    "Check the units of from: and to:.");
            return List.of();
        }
        List<Double> values = series.get().between(low, high);
        if (values.isEmpty()) {
            faults.error(
                    fields.placeOf("series"),
                    "no member of " + series.get() + " lies in the range",
                    "a range with a member of the series",
                    "Widen the range or take a finer series.");
        }
        return values;
    }

    static Optional<PreferredSeries> series(Yaml.Scalar text, Faults faults) {
        for (PreferredSeries series : PreferredSeries.values()) {
            if (series.name().equals(text.text())) {
                return Optional.of(series);
            }
        }
        faults.error(
                text.place(),
                "there is no preferred series " + text.text(),
                "E3, E6, E12, E24, E48, E96 or E192",
                "Use one of these.");
        return Optional.empty();
    }
}
