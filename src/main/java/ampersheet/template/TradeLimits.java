package ampersheet.template;

import ampersheet.circuit.PartKind;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.formula.Spelling;
import ampersheet.quantity.PreferredSeries;
import ampersheet.quantity.Unit;
import ampersheet.source.Faults;
import ampersheet.source.Fields;
import ampersheet.source.SourceText;
import ampersheet.source.Yaml;
import ampersheet.source.YamlReader;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.atomic.AtomicReference;

/** The file of trade limits, by id in its order. */
final class TradeLimits {
    private static final Set<String> MEASURES = Set.of("current", "power", "across");

    /** A run reads one file of limits for all of its templates. */
    private static final AtomicReference<Kept> LAST = new AtomicReference<>();

    private record Kept(String shown, String text, Map<String, TradeLimit> limits) {}

    private final Faults faults;
    private final Numbers numbers;
    private final Map<String, TradeLimit> limits = new LinkedHashMap<>();

    private TradeLimits(Faults faults) {
        this.faults = faults;
        this.numbers = new Numbers(faults);
    }

    /** @throws DiagnosticException with all faults of the file at once */
    static Map<String, TradeLimit> read(String shown, String text) {
        Kept last = LAST.get();
        if (last != null && last.shown().equals(shown) && last.text().equals(text)) {
            return last.limits();
        }
        Faults faults = new Faults();
        TradeLimits read = new TradeLimits(faults);
        YamlReader.read(new SourceText(shown, text), faults).ifPresent(root -> {
            if (root instanceof Yaml.Mapping mapping) {
                Fields fields = new Fields(mapping, "a file of limits", faults);
                fields.need("limits", "the limits");
                fields.groups("limits", "{id: led-current, meaning: ..., unit: mA, most: 30, source: ...}")
                        .forEach(read::limit);
                fields.finish();
            } else {
                faults.error(
                        root.place(),
                        "the file of limits is " + root.kind(),
                        "the key limits with a list",
                        "Begin it with limits:.");
            }
        });
        if (faults.hasErrors()) {
            throw new DiagnosticException(faults.inOrder());
        }
        Map<String, TradeLimit> limits = Collections.unmodifiableMap(read.limits);
        LAST.set(new Kept(shown, text, limits));
        return limits;
    }

    private void limit(Yaml.Mapping item) {
        Fields fields = new Fields(item, "a limit", faults);
        Optional<Yaml.Scalar> id = fields.needText("id", "its name, such as led-current");
        Optional<String> meaning =
                fields.needText("meaning", "the quantity, in words").map(Yaml.Scalar::text);
        Optional<Unit> unit = fields.needText("unit", "its unit, or \"1\"").flatMap(numbers::unit);
        OptionalDouble least = end(fields, "least", unit);
        OptionalDouble most = end(fields, "most", unit);
        List<Double> among = new ArrayList<>();
        fields.list("among")
                .ifPresent(list -> list.items().forEach(value -> {
                    if (value instanceof Yaml.Scalar text && unit.isPresent()) {
                        numbers.in(unit.get(), text)
                                .ifPresent(number -> among.add(unit.get().toSi(number.doubleValue())));
                    }
                }));
        Optional<PreferredSeries> series = fields.text("series").flatMap(text -> GivensSection.series(text, faults));
        Map<PartKind, String> parts = new TreeMap<>();
        fields.group("parts").ifPresent(group -> group.entries().forEach(entry -> part(entry, parts)));
        Optional<String> source = fields.needText("source", "where it is from, or: common practice, no source")
                .map(Yaml.Scalar::text);
        fields.finish();
        if (least.isEmpty() && most.isEmpty() && among.isEmpty() && series.isEmpty()) {
            faults.error(fields.place(), "the limit limits nothing", "least:, most:, among: or series:", "Add one.");
        }
        if (id.isEmpty() || meaning.isEmpty() || unit.isEmpty() || source.isEmpty()) {
            return;
        }
        if (limits.putIfAbsent(
                        id.get().text(),
                        new TradeLimit(
                                id.get().text(),
                                meaning.get(),
                                unit.get(),
                                least,
                                most,
                                among,
                                series,
                                parts,
                                source.get()))
                != null) {
            faults.error(
                    id.get().place(),
                    "the limit " + id.get().text() + " stands here a second time",
                    "every id once",
                    "Rename one of the two.");
        }
    }

    private OptionalDouble end(Fields fields, String key, Optional<Unit> unit) {
        Optional<Yaml.Scalar> text = fields.text(key);
        if (text.isEmpty() || unit.isEmpty()) {
            return OptionalDouble.empty();
        }
        return numbers.in(unit.get(), text.get())
                .map(number -> OptionalDouble.of(unit.get().toSi(number.doubleValue())))
                .orElse(OptionalDouble.empty());
    }

    private void part(Yaml.Entry entry, Map<PartKind, String> parts) {
        Set<String> kinds = new TreeSet<>();
        for (PartKind kind : PartKind.values()) {
            kinds.add(kind.name().toLowerCase(Locale.ROOT));
            if (kind.name().toLowerCase(Locale.ROOT).equals(entry.key().text())
                    && entry.value() instanceof Yaml.Scalar measure
                    && MEASURES.contains(measure.text())) {
                parts.put(kind, measure.text());
                return;
            }
        }
        faults.error(
                entry.key().place(),
                "no part with such a measure",
                "one of " + Spelling.list(kinds) + ", with " + Spelling.list(new TreeSet<>(MEASURES)),
                "Write for example {led: current}.");
    }
}
