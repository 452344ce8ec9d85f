package ampersheet.sheet;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.problem.Inventory;
import ampersheet.quantity.Quantity;
import ampersheet.quantity.Unit;
import ampersheet.quantity.UnitFault;
import ampersheet.sheet.ArchivedProblem.Answer;
import ampersheet.sheet.ArchivedProblem.Number;
import ampersheet.source.CellRows;
import ampersheet.source.SourceFile;
import ampersheet.source.Unread;
import ampersheet.source.WithinMemory;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Enumeration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;

/**
 * Reads an archive of issued sheets. What does not fit is refused as a whole: half a class must not be marked by
 * mistake.
 */
final class ArchiveReader {
    private static final String WANTED = say("plan.archive.expected");
    private static final String AGAIN = say("plan.archive.next");
    private static final long LARGEST_FILE = 256L << 20;
    static final long LARGEST_TABLE = 64L << 20;
    static final long MOST_BYTES = 256L << 20;
    private static final int LARGEST_PICTURE = 1_000_000;
    private static final int LARGEST_TEXT = 200_000;
    private static final int MOST_ENTRIES = 5_000;
    private static final int MOST_FAULTS = 20;
    /** Numbers or answers of one problem: no template has a tenth of them. */
    private static final int MOST_OF_PROBLEM = 1_000;

    private final Path path;
    private final String file;
    private final Map<String, String> texts = new TreeMap<>();
    private final List<Diagnostic> faults = new ArrayList<>();
    private long bytesRead;
    private byte[] logo;

    ArchiveReader(Path path) {
        this.path = path;
        this.file = path.toString().replace('\\', '/');
    }

    ArchivedClass read() {
        return WithinMemory.of(file, this::readWhole);
    }

    /** No table is unpacked for it. */
    Plan readPlan() {
        return WithinMemory.of(file, () -> {
            unpack(List.of(IssuedArchive.FORM_FILE, IssuedArchive.PLAN, IssuedArchive.LOGO)::contains);
            requireForm();
            return plan();
        });
    }

    /** No table is unpacked for it, either. */
    ProblemSet readSet() {
        return WithinMemory.of(file, () -> {
            unpack(name -> !IssuedArchive.TABLES.contains(name));
            requireForm();
            return ProblemSet.of(planWithSeed(), templates(), bins());
        });
    }

    private Plan plan() {
        return PlanReader.read(shown(IssuedArchive.PLAN), text(IssuedArchive.PLAN), this::beside);
    }

    private ArchivedClass readWhole() {
        unpack(name -> true);
        requireForm();
        Plan plan = planWithSeed();
        Optional<Inventory> parts = bins();
        Map<String, SheetId> ids = new LinkedHashMap<>();
        Map<String, Map<Integer, Problem>> problems = sheets(ids);
        numbers(problems);
        answers(problems);
        refuseIfFaulty();
        List<ArchivedSheet> sheets = new ArrayList<>();
        ids.forEach((typed, id) -> sheets.add(new ArchivedSheet(
                id, problems.get(typed).values().stream().map(Problem::whole).toList())));
        if (sheets.isEmpty()) {
            throw refusal(IssuedArchive.SHEETS, say("plan.archive.no-sheet"));
        }
        return new ArchivedClass(file, plan, parts, templates(), sheets);
    }

    Optional<Inventory> readBins() {
        return WithinMemory.of(file, () -> {
            unpack(IssuedArchive.PARTS::equals);
            return bins();
        });
    }

    private Plan planWithSeed() {
        Plan written = plan();
        return Optional.ofNullable(texts.get(IssuedArchive.SEED))
                .map(text -> written.drawnWith(
                        Secret.read(text).orElseThrow(() -> refusal(IssuedArchive.SEED, say("plan.archive.no-seed")))))
                .orElse(written);
    }

    private Optional<Inventory> bins() {
        return Optional.ofNullable(texts.get(IssuedArchive.PARTS))
                .map(text -> PartsReader.read(shown(IssuedArchive.PARTS), text));
    }

    /** The picture lies in the archive under one name, whatever the plan calls it. */
    private byte[] beside(String name, int most) {
        return Optional.ofNullable(logo).orElseThrow(() -> refusal(IssuedArchive.LOGO, say("plan.archive.no-picture")));
    }

    /** A problem whose numbers are still being read. */
    private record Problem(int number, int place, String template, List<Number> numbers, List<Answer> answers) {
        ArchivedProblem whole() {
            return new ArchivedProblem(number, place, template, numbers, answers);
        }
    }

    // Unpacking

    private void unpack(Predicate<String> wanted) {
        try {
            SourceFile.requireOrdinary(path, LARGEST_FILE, SourceFile.Links.FOLLOWED);
            try (ZipFile zip = new ZipFile(path.toFile(), StandardCharsets.UTF_8)) {
                if (zip.size() > MOST_ENTRIES) {
                    throw refusal("", say("plan.archive.many-files", "most", Integer.toString(MOST_ENTRIES)));
                }
                Enumeration<? extends ZipEntry> entries = zip.entries();
                while (entries.hasMoreElements()) {
                    ZipEntry entry = entries.nextElement();
                    if (!entry.isDirectory() && wanted.test(entry.getName())) {
                        take(zip, entry);
                    }
                }
            }
        } catch (ZipException | IllegalArgumentException damaged) {
            throw refusal("", say("plan.archive.damaged"));
        } catch (Unread other) {
            throw new DiagnosticException(Diagnostic.error(
                    Place.inFile(file),
                    other.getMessage(),
                    WANTED,
                    other.why() == Unread.Why.MISSING ? other.why().nextAction() : AGAIN));
        } catch (IOException failure) {
            throw refusal("", say("plan.archive.unread", "reason", failure.getMessage()));
        }
    }

    /** What the archive never holds is not looked at, so that a file which a desktop adds does no harm. */
    private void take(ZipFile zip, ZipEntry entry) throws IOException {
        String name = entry.getName();
        if (name.startsWith("/")
                || name.indexOf('\\') >= 0
                || name.indexOf('\0') >= 0
                || ("/" + name + "/").contains("/../")) {
            throw refusal("", say("plan.archive.leads-out", "name", shortened(name)));
        }
        boolean table = List.of(IssuedArchive.SHEETS, IssuedArchive.NUMBERS, IssuedArchive.ANSWERS)
                .contains(name);
        boolean small = List.of(IssuedArchive.FORM_FILE, IssuedArchive.PLAN, IssuedArchive.SEED, IssuedArchive.PARTS)
                        .contains(name)
                || isOfTemplates(name);
        boolean picture = name.equals(IssuedArchive.LOGO);
        if (!table && !small && !picture) {
            return;
        }
        long most = Math.min(table ? LARGEST_TABLE : picture ? LARGEST_PICTURE : LARGEST_TEXT, MOST_BYTES - bytesRead);
        try (InputStream in = zip.getInputStream(entry)) {
            byte[] bytes = in.readNBytes((int) most + 1);
            if (bytes.length > most) {
                throw refusal(name, say("plan.archive.large"));
            }
            bytesRead += bytes.length;
            if (picture) {
                logo = bytes;
                return;
            }
            String text = SourceFile.decoded(bytes);
            if (texts.putIfAbsent(name, text.replace("\r\n", "\n").replace('\r', '\n')) != null) {
                throw refusal(name, say("plan.archive.twice"));
            }
        } catch (Unread foreign) {
            throw refusal(name, foreign.getMessage());
        }
    }

    private static boolean isOfTemplates(String name) {
        int slash = name.indexOf('/');
        String root = slash < 0 ? "" : name.substring(0, slash);
        String number = root.startsWith(IssuedArchive.TEMPLATES + "-")
                ? root.substring(IssuedArchive.TEMPLATES.length() + 1)
                : "2";
        if (slash < 0
                || !root.startsWith(IssuedArchive.TEMPLATES)
                || WholeNumber.read(number).isEmpty()
                || !root.equals(IssuedArchive.TEMPLATES) && !root.equals(IssuedArchive.TEMPLATES + "-" + number)) {
            return false;
        }
        String rest = name.substring(slash + 1);
        int last = rest.lastIndexOf('/');
        String plain = rest.substring(last + 1);
        return rest.equals(TemplateFiles.LIMITS)
                || last > 0
                        && TemplateFiles.isTemplate(rest.substring(0, last))
                        && !plain.isEmpty()
                        && plain.charAt(0) != '.';
    }

    /** The folders of templates, those named first ahead. */
    private TemplateLibrary templates() {
        Map<String, Map<String, String>> roots = new TreeMap<>();
        texts.forEach((name, text) -> {
            int slash = name.indexOf('/');
            if (slash > 0) {
                roots.computeIfAbsent(name.substring(0, slash), root -> new TreeMap<>())
                        .put(name.substring(slash + 1), text);
            }
        });
        List<TemplateFiles> files = new ArrayList<>();
        roots.forEach((root, held) -> files.add(TemplateFiles.held(held, shown(root))));
        return new TemplateLibrary(files);
    }

    private void requireForm() {
        String form = text(IssuedArchive.FORM_FILE).strip();
        if (!form.equals(IssuedArchive.FORM)) {
            throw refusal(IssuedArchive.FORM_FILE, say("plan.archive.unknown-form", "form", shortened(form)));
        }
    }

    // Tables

    private Map<String, Map<Integer, Problem>> sheets(Map<String, SheetId> ids) {
        Map<String, Map<Integer, Problem>> problems = new LinkedHashMap<>();
        Rows rows = new Rows(IssuedArchive.SHEETS, IssuedArchive.SHEETS_HEAD);
        for (Row row : rows.body()) {
            Optional<SheetId> id = id(row.cell(0), row.cell(1));
            OptionalInt number = WholeNumber.read(row.cell(2));
            OptionalInt place = WholeNumber.read(row.cell(3));
            if (id.isEmpty()
                    || number.orElse(0) < 1
                    || number.getAsInt() > PlanReader.MOST_PROBLEMS
                    || place.isEmpty()
                    || !TemplateFiles.isTemplate(row.cell(4))) {
                row.fault(say("plan.archive.line.no-problem"));
                continue;
            }
            if (!ids.isEmpty() && !alike(id.get(), ids.values().iterator().next())) {
                row.fault(say("plan.archive.line.other-set"));
                continue;
            }
            ids.putIfAbsent(row.cell(0), id.get());
            Problem before = problems.computeIfAbsent(row.cell(0), sheet -> new TreeMap<>())
                    .putIfAbsent(
                            number.getAsInt(),
                            new Problem(
                                    number.getAsInt(),
                                    place.getAsInt(),
                                    row.cell(4),
                                    new ArrayList<>(),
                                    new ArrayList<>()));
            if (before != null) {
                row.fault(say("plan.archive.line.problem-twice"));
            }
        }
        return problems;
    }

    private static boolean alike(SheetId one, SheetId other) {
        return one.plan().equals(other.plan()) && one.templates().equals(other.templates());
    }

    /** Only as it was printed: nobody types it here. */
    private static Optional<SheetId> id(String written, String seat) {
        OptionalInt number = WholeNumber.read(seat);
        int set = SheetId.PLAN_CHARACTERS + SheetId.TEMPLATE_CHARACTERS;
        if (number.isEmpty()
                || number.getAsInt() < 1
                || number.getAsInt() > SheetId.LAST_SEAT
                || written.length() < set
                || !written.substring(0, set).chars().allMatch(c -> SheetId.ALPHABET.indexOf(c) >= 0)) {
            return Optional.empty();
        }
        SheetId id = new SheetId(
                written.substring(0, SheetId.PLAN_CHARACTERS),
                written.substring(SheetId.PLAN_CHARACTERS, set),
                number.getAsInt());
        return id.toString().equals(written) ? Optional.of(id) : Optional.empty();
    }

    private void numbers(Map<String, Map<Integer, Problem>> problems) {
        for (Row row : new Rows(IssuedArchive.NUMBERS, IssuedArchive.NUMBERS_HEAD).body()) {
            Optional<Problem> problem = problem(problems, row);
            if (problem.isEmpty()) {
                continue;
            }
            String name = row.cell(2);
            Optional<Number> number = row.cell(4).equals(IssuedArchive.WORD)
                    ? Optional.of(new Number(name, null, Unit.ONE, row.cell(3)))
                    : unit(row.cell(4))
                            .flatMap(unit -> value(row.cell(3))
                                    .map(si ->
                                            new Number(name, new Quantity(si, unit.dimension()), unit, row.cell(5))));
            if (number.isEmpty() || name.isEmpty()) {
                row.fault(say("plan.archive.line.no-number"));
            } else if (problem.get().numbers().size() >= MOST_OF_PROBLEM) {
                row.fault(say("plan.archive.line.many-numbers", "most", Integer.toString(MOST_OF_PROBLEM)));
            } else if (problem.get().numbers().stream()
                    .anyMatch(known -> known.name().equals(name))) {
                row.fault(say("plan.archive.line.number-twice", "name", shortened(name)));
            } else {
                problem.get().numbers().add(number.get());
            }
        }
    }

    private void answers(Map<String, Map<Integer, Problem>> problems) {
        for (Row row : new Rows(IssuedArchive.ANSWERS, IssuedArchive.ANSWERS_HEAD).body()) {
            Optional<Problem> problem = problem(problems, row);
            Optional<Unit> unit = unit(row.cell(5));
            Optional<Double> value = value(row.cell(4));
            if (problem.isPresent() && (unit.isEmpty() || value.isEmpty())) {
                row.fault(say("plan.archive.line.no-answer"));
            } else if (problem.isPresent() && problem.get().answers().size() >= MOST_OF_PROBLEM) {
                row.fault(say("plan.archive.line.many-answers", "most", Integer.toString(MOST_OF_PROBLEM)));
            } else if (problem.isPresent()) {
                problem.get().answers().add(new Answer(row.cell(2), row.cell(3), value.get(), unit.get(), row.cell(6)));
            }
        }
    }

    private static Optional<Problem> problem(Map<String, Map<Integer, Problem>> problems, Row row) {
        OptionalInt number = WholeNumber.read(row.cell(1));
        Optional<Problem> problem = number.isEmpty()
                ? Optional.empty()
                : Optional.ofNullable(
                        problems.getOrDefault(row.cell(0), Map.of()).get(number.getAsInt()));
        if (problem.isEmpty()) {
            row.fault(say("plan.archive.line.stray", "name", IssuedArchive.SHEETS));
        }
        return problem;
    }

    private static Optional<Double> value(String text) {
        OptionalDouble read = ExactNumber.read(text);
        return read.isPresent() ? Optional.of(read.getAsDouble()) : Optional.empty();
    }

    private static Optional<Unit> unit(String symbol) {
        try {
            return Optional.of(Unit.parse(symbol));
        } catch (UnitFault unknown) {
            return Optional.empty();
        }
    }

    /** A table of the archive, its columns in their order. */
    private final class Rows {
        private final ColumnFile columns;
        private final String name;
        private final List<String> head;

        Rows(String name, List<String> head) {
            this.name = name;
            this.head = head;
            this.columns = new ColumnFile(shown(name), text(name));
        }

        List<Row> body() {
            List<CellRows.Row> records = columns.records();
            faults.addAll(columns.faults());
            refuseIfFaulty();
            if (records.isEmpty() || !records.get(0).cells().equals(head)) {
                throw refusal(name, say("plan.archive.columns", "columns", String.join(", ", head)));
            }
            List<Row> rows = new ArrayList<>();
            for (CellRows.Row record : records.subList(1, records.size())) {
                if (record.size() == head.size()) {
                    rows.add(new Row(columns, record));
                } else {
                    new Row(columns, record)
                            .fault(say("plan.archive.line.columns", "count", Integer.toString(head.size())));
                }
            }
            return rows;
        }
    }

    private final class Row {
        private final ColumnFile columns;
        private final CellRows.Row record;

        Row(ColumnFile columns, CellRows.Row record) {
            this.columns = columns;
            this.record = record;
        }

        String cell(int column) {
            return record.get(column);
        }

        void fault(String problem) {
            faults.add(Diagnostic.error(columns.place(record.line()), problem, WANTED, AGAIN));
            if (faults.size() >= MOST_FAULTS) {
                refuseIfFaulty();
            }
        }
    }

    // Faults

    private void refuseIfFaulty() {
        if (!faults.isEmpty()) {
            throw new DiagnosticException(faults);
        }
    }

    private String text(String name) {
        String text = texts.get(name);
        if (text == null) {
            throw refusal("", say("plan.archive.missing", "name", name));
        }
        return text;
    }

    private String shown(String name) {
        return file + "/" + name;
    }

    private DiagnosticException refusal(String name, String problem) {
        return new DiagnosticException(
                Diagnostic.error(Place.inFile(name.isEmpty() ? file : shown(name)), problem, WANTED, AGAIN));
    }

    /** Short; what a terminal would obey in it is spelled out where the fault is told. */
    private static String shortened(String text) {
        return text.substring(0, text.offsetByCodePoints(0, Math.min(60, text.codePointCount(0, text.length()))));
    }
}
