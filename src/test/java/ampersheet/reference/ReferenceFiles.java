package ampersheet.reference;

import ampersheet.chain.Tile;
import ampersheet.circuit.PartKind;
import ampersheet.circuit.PartValue;
import ampersheet.formula.FormulaReader;
import ampersheet.quantity.PreferredSeries;
import ampersheet.quantity.Unit;
import ampersheet.thermal.HeatNetwork;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;

/** Reads the files of published values. Keys that the format does not have are faults, so that none is overlooked. */
final class ReferenceFiles {
    static final Path FOLDER = Path.of("reference-checks");
    private static final Set<String> STATUSES = Set.of("read", "formula-of-standard", "from-memory");
    private static final Set<String> GRADES = Set.of("A", "B", "C");
    private static final Map<String, Function<Node, Subject>> KINDS = kinds();

    private ReferenceFiles() {}

    /** All checks, by file and then as written. */
    static List<ReferenceCheck> all() {
        List<ReferenceCheck> checks = new ArrayList<>();
        try (Stream<Path> files = Files.list(FOLDER)) {
            files.filter(file -> file.toString().endsWith(".yaml")).sorted().forEach(file -> checks.addAll(in(file)));
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
        return checks;
    }

    private static List<ReferenceCheck> in(Path path) {
        String file = path.getFileName().toString();
        Node root = new Node(file, load(path), new LinkedHashSet<>());
        if (!root.text("format").equals("reference-checks/1")) {
            throw new AssertionError(file + ": the format is not reference-checks/1");
        }
        List<ReferenceCheck> checks = new ArrayList<>();
        for (Node row : root.list("checks")) {
            checks.add(check(file, row));
        }
        root.done();
        return checks;
    }

    private static Object load(Path path) {
        try {
            return new Load(LoadSettings.builder()
                            .setLabel(path.toString())
                            .setAllowDuplicateKeys(false)
                            .build())
                    .loadFromString(Files.readString(path));
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
    }

    private static ReferenceCheck check(String file, Node row) {
        List<String> kinds = KINDS.keySet().stream().filter(row::has).toList();
        if (kinds.size() != 1) {
            throw new AssertionError(row.where() + ": needs exactly one of " + KINDS.keySet() + ", has " + kinds);
        }
        ReferenceCheck check = new ReferenceCheck(
                file,
                row.text("id"),
                row.text("what"),
                row.text("source"),
                row.oneOf("status", STATUSES),
                row.oneOf("grade", GRADES),
                row.has("note") ? row.text("note") : "",
                KINDS.get(kinds.get(0)).apply(row),
                row.expected(),
                row.number("within"));
        row.done();
        return check;
    }

    private static Map<String, Function<Node, Subject>> kinds() {
        Map<String, Function<Node, Subject>> kinds = new LinkedHashMap<>();
        kinds.put("template", row -> new Subject.Template(row.text("template"), row.texts("given")));
        kinds.put(
                "circuit",
                row -> new Subject.Circuit(
                        row.list("circuit").stream().map(ReferenceFiles::part).toList()));
        kinds.put("heat", row -> new Subject.Heat(network(row.list("heat"))));
        kinds.put(
                "chain",
                row -> row.inside(
                        "chain",
                        chain -> new Subject.Chain(
                                (int) chain.number("columns"),
                                (int) chain.number("rows"),
                                Tile.Order.called(chain.text("order")))));
        kinds.put(
                "diode",
                row -> row.inside(
                        "diode",
                        diode -> new Subject.Diode(
                                diode.number("saturation"),
                                diode.number("emission"),
                                diode.number("series"),
                                diode.number("volts"))));
        kinds.put(
                "transient",
                row -> row.inside(
                        "transient",
                        charging -> new Subject.Transient(
                                charging.number("volts"), charging.number("ohms"), charging.number("farads"))));
        kinds.put("series", row -> new Subject.Series(PreferredSeries.valueOf(row.text("series"))));
        kinds.put(
                "reading",
                row -> row.inside(
                        "reading",
                        reading -> new Subject.Typed(reading.text("typed"), Unit.parse(reading.text("unit")))));
        return kinds;
    }

    private static Subject.Circuit.NamedPart part(Node row) {
        for (PartKind kind : PartKind.values()) {
            if (row.has(kind.word())) {
                Map<String, String> nodes = new LinkedHashMap<>();
                kind.terminals().forEach(terminal -> nodes.put(terminal, row.text(terminal)));
                Map<PartValue, Double> values = new LinkedHashMap<>();
                kind.needed().forEach(value -> values.put(value, row.number(value.key())));
                kind.optional().stream()
                        .filter(value -> row.has(value.key()))
                        .forEach(value -> values.put(value, row.number(value.key())));
                Subject.Circuit.NamedPart part =
                        new Subject.Circuit.NamedPart(kind, row.text(kind.word()), nodes, values);
                row.done();
                return part;
            }
        }
        throw new AssertionError(row.where() + ": no kind of part");
    }

    private static HeatNetwork network(List<Node> rows) {
        List<HeatNetwork.Ambient> ambients = new ArrayList<>();
        List<HeatNetwork.Node> nodes = new ArrayList<>();
        List<HeatNetwork.Resistance> resistances = new ArrayList<>();
        List<HeatNetwork.Loss> losses = new ArrayList<>();
        for (Node row : rows) {
            if (row.has("ambient")) {
                ambients.add(new HeatNetwork.Ambient(row.text("ambient"), row.number("at")));
            } else if (row.has("node")) {
                nodes.add(new HeatNetwork.Node(row.text("node"), 0, 293.15));
            } else if (row.has("resistance")) {
                resistances.add(new HeatNetwork.Resistance(
                        row.text("resistance"), row.text("from"), row.text("to"), row.number("value")));
            } else {
                double watts = row.number("watts");
                losses.add(new HeatNetwork.Loss(row.text("loss"), row.text("into"), temperatures -> watts));
            }
            row.done();
        }
        return new HeatNetwork(ambients, nodes, resistances, losses);
    }

    /** A mapping of the file that notes which of its keys were asked for. */
    private record Node(String where, Map<?, ?> map, Set<String> asked) {
        Node(String where, Object map, Set<String> asked) {
            this(where, (Map<?, ?>) map, asked);
        }

        boolean has(String key) {
            return map.containsKey(key);
        }

        private Object get(String key) {
            asked.add(key);
            if (!has(key)) {
                throw new AssertionError(where + ": " + key + " is missing");
            }
            return map.get(key);
        }

        String text(String key) {
            return String.valueOf(get(key));
        }

        String oneOf(String key, Set<String> words) {
            if (!words.contains(text(key))) {
                throw new AssertionError(where + ": " + key + " is " + text(key) + ", not one of " + words);
            }
            return text(key);
        }

        /** A number, or text such as {@code 50 degC}; in SI units. */
        double number(String key) {
            return get(key) instanceof Number number
                    ? number.doubleValue()
                    : Measured.number(FormulaReader.expression(text(key)));
        }

        Map<String, String> texts(String key) {
            Map<String, String> texts = new LinkedHashMap<>();
            ((Map<?, ?>) get(key)).forEach((name, value) -> texts.put(String.valueOf(name), String.valueOf(value)));
            return texts;
        }

        List<Node> list(String key) {
            List<Node> nodes = new ArrayList<>();
            for (Object item : (List<?>) get(key)) {
                Object id = ((Map<?, ?>) item).get("id");
                nodes.add(new Node(
                        id == null ? where + ", " + key + " " + (nodes.size() + 1) : where + ": " + id,
                        item,
                        new LinkedHashSet<>()));
            }
            return nodes;
        }

        <T> T inside(String key, Function<Node, T> reading) {
            Node node = new Node(where + ", " + key, get(key), new LinkedHashSet<>());
            T read = reading.apply(node);
            node.done();
            return read;
        }

        Map<String, List<Double>> expected() {
            Map<String, List<Double>> expected = new LinkedHashMap<>();
            ((Map<?, ?>) get("expect"))
                    .forEach((formula, value) -> expected.put(
                            String.valueOf(formula),
                            (value instanceof List<?> list ? list : List.of(value))
                                    .stream()
                                            .map(number -> ((Number) number).doubleValue())
                                            .toList()));
            if (expected.isEmpty()) {
                throw new AssertionError(where + ": nothing is expected");
            }
            return expected;
        }

        void done() {
            for (Object key : map.keySet()) {
                if (!asked.contains(String.valueOf(key))) {
                    throw new AssertionError(where + ": the format has no key " + key + " here");
                }
            }
        }
    }
}
