package ampersheet.sheet;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.problem.Inventory;
import ampersheet.problem.Inventory.Bin;
import ampersheet.problem.Inventory.Kind;
import ampersheet.problem.Inventory.Meter;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.QuantityReader;
import ampersheet.quantity.Reading;
import ampersheet.quantity.Unit;
import ampersheet.source.AsciiCase;
import ampersheet.source.Bounds;
import ampersheet.source.CellRows.Row;
import ampersheet.source.SourceFile;
import ampersheet.source.Unread;
import ampersheet.source.WithinMemory;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Reads what a workshop has in its bins: values separated by commas, semicolons or tabs, whose first line names the
 * columns {@code kind}, {@code value}, {@code tolerance}, {@code rating} and {@code count}. A line of the kind
 * {@code meter} has as its value the smallest step that the meter shows, and as its tolerance what it may be off, such
 * as {@code 0.5 % + 2 digits}.
 */
public final class PartsReader {
    private static final String FORM = say("plan.parts.form");
    private static final List<String> COLUMNS = List.of("kind", "value", "tolerance", "rating", "count");
    private static final int MOST_LINES = 5_000;
    private static final int MOST_PARTS = 1_000_000;
    private static final double SAME = 1e-9;
    private static final Unit PERCENT = Unit.parse("%");
    private static final Unit WATT = Unit.parse("W");
    /** A meter or part that is further off is no measure of anything. */
    private static final double WIDEST = 0.5;

    private final String file;
    private final String text;
    private final ColumnFile columns;
    private final List<Bin> bins = new ArrayList<>();
    private final List<Meter> meters = new ArrayList<>();
    private final Map<String, Integer> at = new LinkedHashMap<>();

    private PartsReader(String file, String text) {
        this.file = file;
        this.text = text;
        this.columns = new ColumnFile(file, text);
    }

    /**
     * @param file as its reader knows it
     * @throws DiagnosticException with all faults at once
     */
    public static Inventory read(String file, String text) {
        return WithinMemory.of(file, () -> new PartsReader(file, text).read());
    }

    /**
     * The parts to which a plan keeps; empty where it names no list of them. No link is followed: a plan may come from
     * somebody else.
     *
     * @param folder of the plan
     * @throws DiagnosticException with all faults of the list at once, or at the plan's line if it cannot be read
     */
    public static Optional<Inventory> beside(Plan plan, Path folder) {
        if (plan.parts().isEmpty()) {
            return Optional.empty();
        }
        Plan.PartsList named = plan.parts().get();
        try {
            String text = SourceFile.text(folder.resolve(named.file()), Bounds.WRITTEN, SourceFile.Links.REFUSED);
            int folders = plan.file().lastIndexOf('/') + 1;
            return Optional.of(read(plan.file().substring(0, folders) + named.file(), text));
        } catch (Unread unread) {
            throw new DiagnosticException(Diagnostic.error(
                    named.place(),
                    say("plan.parts.unread", "name", named.file(), "reason", unread.getMessage()),
                    say("plan.parts.unread.expected"),
                    say("plan.parts.unread.next")));
        }
    }

    private Inventory read() {
        List<Row> records = columns.records();
        if (!columns.hasFaults()) {
            readRecords(records);
        }
        if (columns.hasFaults()) {
            throw new DiagnosticException(columns.faults());
        }
        return new Inventory(file, text, bins, meters, fingerprint());
    }

    private void readRecords(List<Row> records) {
        if (records.isEmpty()) {
            columns.fault(0, say("plan.parts.empty"), FORM, say("plan.parts.write-lines"));
            return;
        }
        Row head = records.get(0);
        List<String> missing = new ArrayList<>();
        for (String column : COLUMNS) {
            at.put(column, ColumnFile.column(head, column));
            if (at.get(column) < 0 && !column.equals("rating")) {
                missing.add(column);
            }
        }
        if (!missing.isEmpty()) {
            columns.fault(
                    head.line(),
                    say("plan.parts.no-columns", "columns", String.join(", ", missing)),
                    FORM,
                    say("plan.columns.next"));
            return;
        }
        if (records.size() == 1 || records.size() > MOST_LINES) {
            columns.fault(
                    head.line(),
                    records.size() == 1
                            ? say("plan.parts.none")
                            : say("plan.parts.many", "count", Integer.toString(records.size())),
                    records.size() == 1 ? FORM : say("plan.parts.many.expected", "most", Integer.toString(MOST_LINES)),
                    say("plan.parts.write-lines"));
            return;
        }
        records.subList(1, records.size()).forEach(this::readLine);
    }

    private void readLine(Row record) {
        int line = record.line();
        String kind = AsciiCase.small(cell(record, "kind"));
        if (kind.equals("meter")) {
            meter(record, line);
            return;
        }
        for (Kind known : Kind.values()) {
            if (known.word().equals(kind)) {
                bin(record, line, known);
                return;
            }
        }
        columns.fault(
                line,
                kind.isEmpty() ? say("plan.parts.kind.none") : say("plan.parts.kind.unknown", "written", kind),
                say("plan.parts.kind.expected"),
                say("plan.parts.kind.next"));
    }

    private void bin(Row record, int line, Kind kind) {
        OptionalDouble value = quantity(line, "value", cell(record, "value"), unit(kind.dimension()), Double.MAX_VALUE);
        String shownTolerance = cell(record, "tolerance");
        OptionalDouble tolerance = shownTolerance.isEmpty()
                ? OptionalDouble.of(0)
                : quantity(line, "tolerance", shownTolerance, PERCENT, WIDEST);
        String shownRating = cell(record, "rating");
        OptionalDouble rating = shownRating.isEmpty()
                ? OptionalDouble.empty()
                : quantity(line, say("plan.parts.power-rating"), shownRating, WATT, Double.MAX_VALUE);
        int count = WholeNumber.read(cell(record, "count")).orElse(MOST_PARTS + 1);
        if (count > MOST_PARTS) {
            columns.fault(
                    line,
                    say("plan.parts.count", "written", cell(record, "count")),
                    say("plan.parts.count.expected", "most", Integer.toString(MOST_PARTS)),
                    say("plan.parts.count.next"));
        }
        if (value.isEmpty()
                || tolerance.isEmpty()
                || rating.isEmpty() && !shownRating.isEmpty()
                || count > MOST_PARTS) {
            return;
        }
        Optional<Bin> earlier = bins.stream()
                .filter(bin -> bin.kind() == kind && Math.abs(bin.value() - value.getAsDouble()) <= SAME * bin.value())
                .findFirst();
        if (earlier.isPresent()) {
            columns.fault(
                    line,
                    say(
                            "plan.parts.twice",
                            "kind",
                            kind.word(),
                            "line",
                            Integer.toString(earlier.get().place().line())),
                    say("plan.parts.twice.expected"),
                    say("plan.parts.twice.next"));
            return;
        }
        bins.add(new Bin(kind, value.getAsDouble(), tolerance.getAsDouble(), rating, count, columns.place(line)));
    }

    private static Unit unit(Dimension dimension) {
        return Unit.parse(
                dimension.equals(Dimension.RESISTANCE) ? "ohm" : dimension.equals(Dimension.CAPACITANCE) ? "F" : "V");
    }

    private void meter(Row record, int line) {
        String written = cell(record, "value");
        Reading reading = QuantityReader.read(written);
        boolean read = reading instanceof Reading.Value value
                && value.unit().isPresent()
                && value.number() > 0
                && List.of(Dimension.VOLTAGE, Dimension.CURRENT)
                        .contains(value.unit().get().dimension());
        if (!read) {
            columns.fault(
                    line,
                    say("plan.parts.meter.step", "written", written),
                    say("plan.parts.meter.step.expected"),
                    say("plan.parts.meter.step.next"));
            return;
        }
        Reading.Value step = (Reading.Value) reading;
        Dimension quantity = step.unit().orElseThrow().dimension();
        String[] parts = cell(record, "tolerance").split("\\+", -1);
        int digits = parts.length == 2 ? digits(parts[1].strip()) : parts.length == 1 ? 0 : -1;
        OptionalDouble share =
                digits < 0 ? OptionalDouble.empty() : quantity(line, "tolerance", parts[0].strip(), PERCENT, WIDEST);
        if (digits < 0) {
            columns.fault(
                    line,
                    say("plan.parts.meter.tolerance", "written", cell(record, "tolerance")),
                    say("plan.parts.meter.tolerance.expected"),
                    say("plan.parts.meter.tolerance.next"));
        } else if (meters.stream().anyMatch(meter -> meter.quantity().equals(quantity))) {
            columns.fault(
                    line,
                    say("plan.parts.meter.twice"),
                    say("plan.parts.meter.twice.expected"),
                    say("plan.parts.meter.twice.next"));
        } else if (share.isPresent()) {
            double last = step.si(step.unit().orElseThrow());
            meters.add(new Meter(quantity, share.getAsDouble(), digits * last, last));
        }
    }

    /** {@code 2 digits}, {@code 1 digit} or {@code 3}; -1 for anything else. */
    private static int digits(String written) {
        String number = written.endsWith("digits")
                ? written.substring(0, written.length() - 6)
                : written.endsWith("digit") ? written.substring(0, written.length() - 5) : written;
        int digits = WholeNumber.read(number.strip()).orElse(-1);
        return digits <= 1000 ? digits : -1;
    }

    private OptionalDouble quantity(int line, String what, String written, Unit unit, double most) {
        Reading reading = QuantityReader.read(written, unit);
        if (reading instanceof Reading.Value value
                && value.unit()
                        .map(typed -> typed.dimension().equals(unit.dimension()))
                        .orElse(true)) {
            boolean percent = unit.dimension().equals(Dimension.ONE);
            double si = percent && value.unit().isEmpty() ? PERCENT.toSi(value.number()) : value.si(unit);
            if (si > 0 && si <= most && si < Double.POSITIVE_INFINITY) {
                return OptionalDouble.of(si);
            }
        }
        columns.fault(
                line,
                say("plan.parts.number", "written", written, "what", what),
                most == WIDEST
                        ? say("plan.parts.number.share", "unit", unit.symbol())
                        : say("plan.parts.number.expected", "unit", unit.symbol()),
                say("plan.parts.number.next"));
        return OptionalDouble.empty();
    }

    private String cell(Row record, String column) {
        int index = at.get(column);
        return index < 0 || index >= record.size() ? "" : record.get(index).strip();
    }

    /** Of what is listed, not of how it is written. */
    private String fingerprint() {
        List<String> parts = new ArrayList<>();
        bins.stream()
                .sorted(Comparator.comparing(Bin::kind).thenComparingDouble(Bin::value))
                .forEach(bin -> parts.addAll(List.of(
                        bin.kind().word(),
                        bits(bin.value()),
                        bits(bin.tolerance()),
                        bin.rating().isPresent() ? bits(bin.rating().getAsDouble()) : "",
                        Integer.toString(bin.count()))));
        meters.stream()
                .sorted(Comparator.comparing(meter -> stored(meter.quantity())))
                .forEach(meter -> parts.addAll(
                        List.of("meter", stored(meter.quantity()), bits(meter.share()), bits(meter.amount()))));
        return Fingerprint.of(parts);
    }

    /** As it goes into the ID of a sheet: another form would make every ID that was printed another one. */
    static String stored(Dimension quantity) {
        return "Dimension[metre=" + quantity.metre() + ", kilogram=" + quantity.kilogram() + ", second="
                + quantity.second() + ", ampere=" + quantity.ampere() + ", kelvin=" + quantity.kelvin() + "]";
    }

    private static String bits(double value) {
        return Long.toHexString(Double.doubleToLongBits(value));
    }
}
