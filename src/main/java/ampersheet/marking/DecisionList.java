package ampersheet.marking;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.sheet.IssuedArchive;
import ampersheet.sheet.SheetId;
import ampersheet.source.CellRows;
import ampersheet.source.SafeCsv;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * The list that an instructor keeps of what she decided, line by line, as a place that is no spreadsheet writes it.
 * What {@link Marking} reads of it is all there is to it.
 */
public final class DecisionList {
    private static final List<String> DECIDED = List.of("decision", "value", "reason");
    /** By which a decision is known to be of an open matter; a list of her own form may lack some. */
    private static final List<String> SAME = List.of("seat", "question", "answer", "file");

    private static final String SHEET = "sheet";
    private static final String ISSUE = "issue";
    /** Which answer or hand-in is meant, and of which sheets. */
    private static final List<String> TELLING = List.of(SHEET, ISSUE, "question", "answer", "file");

    private DecisionList() {}

    /**
     * A line of what only the instructor can decide.
     *
     * @param cells by the names of their columns, in the order of the table
     */
    public record Open(Map<String, String> cells) {
        public Open {
            cells = Collections.unmodifiableMap(new LinkedHashMap<>(cells));
        }

        /** The same line, as one that tells of which sheets it is, where it lacks that. */
        public Open of(String code) {
            Map<String, String> all = new LinkedHashMap<>(cells);
            if (cell("question").isEmpty() && cell(ISSUE).isEmpty()) {
                all.put(ISSUE, IssuedArchive.issue(code));
            }
            return new Open(all);
        }

        /** Empty where the table has no such column. */
        public String cell(String column) {
            return SafeCsv.read(cells.getOrDefault(column, ""));
        }

        /** Words that stand for what can be decided of it, in the order in which they are offered. */
        public List<String> words() {
            List<String> words = new ArrayList<>();
            for (Decision.Kind kind : Decision.Kind.values()) {
                if (kind.isOfFile() == cell("question").isEmpty()) {
                    words.add(kind.word());
                }
            }
            return words;
        }

        /** Lines of one matter: the same was typed to the same question, and is open for the same reason. */
        public boolean isLike(Open other) {
            return !cell("template").isEmpty()
                    && List.of("template", "step", "answer", "why").stream()
                            .allMatch(column -> cell(column).equals(other.cell(column)));
        }

        /** By which the same line is known in a table that was made later. */
        public String key() {
            return String.join(
                    "\u001f", cell("seat"), cell(SHEET), cell("question"), cell("answer"), cell("file"), cell("line"));
        }
    }

    /** The lines of {@code decide.csv}. */
    public static List<Open> open(String table) {
        List<CellRows.Row> rows = rows(table);
        List<Open> open = new ArrayList<>();
        for (CellRows.Row row : rows.subList(Math.min(1, rows.size()), rows.size())) {
            Map<String, String> cells = new LinkedHashMap<>();
            for (int i = 0; i < row.size() && i < rows.get(0).size(); i++) {
                cells.put(rows.get(0).names().get(i), row.get(i));
            }
            open.add(new Open(cells));
        }
        return open;
    }

    /** What was decided, by the matters it was decided of; a list is read once for all of them. */
    public static final class Decided {
        private final String code;
        private final Map<List<String>, List<Open>> byMatter = new LinkedHashMap<>();

        private Decided(String list, String code) {
            this.code = code;
            for (Open one : open(list)) {
                if (!one.cell("decision").isEmpty()) {
                    byMatter.computeIfAbsent(matter(one), first -> new ArrayList<>())
                            .add(one);
                }
            }
        }

        private static List<String> matter(Open open) {
            return SAME.stream().map(open::cell).toList();
        }

        /** Empty if nothing was. */
        public Optional<String> of(Open open) {
            List<Open> said = byMatter.getOrDefault(matter(open), List.of());
            return said.stream()
                    .filter(one -> one.cell(SHEET).equals(open.cell(SHEET)) && isOf(open, one))
                    .findFirst()
                    .or(() -> said.stream()
                            .filter(one -> one.cell(SHEET).isEmpty() && isOf(open, one))
                            .findFirst())
                    .map(one -> (one.cell("decision") + " " + one.cell("value")).strip());
        }

        /** Whether a decision holds where a matter is open: that of another week may read alike. */
        private boolean isOf(Open open, Open decision) {
            if (!decision.cell(ISSUE).isEmpty() && !open.cell(ISSUE).isEmpty()) {
                return decision.cell(ISSUE).equals(open.cell(ISSUE));
            }
            return code.isEmpty()
                    || SheetId.set(decision.cell(SHEET)).filter(code::equals).isPresent()
                    || decision.cell("decision").equals(Decision.Kind.DOES_NOT_COUNT.word());
        }
    }

    /**
     * Reads what was decided.
     *
     * @param list of decisions, as it is now
     * @param code with which the IDs of the sheets at hand begin, where the class has other sheets as well, so that a
     *     decision has to tell on which it is; empty where it has not
     */
    public static Decided decided(String list, String code) {
        return new Decided(list, code);
    }

    /**
     * The list with one more line.
     *
     * @param file as its reader knows it
     * @param list as it is now; empty if there is none yet
     * @throws DiagnosticException if the list, or the list with this line, cannot be read as decisions
     */
    public static String with(String file, String list, Open on, String decision, String value, String reason) {
        List<String> head = OwnFile.DECIDE.head();
        List<String> cells = new ArrayList<>();
        for (String column : head) {
            cells.add(
                    DECIDED.contains(column)
                            ? List.of(decision, value, reason).get(DECIDED.indexOf(column))
                            : on.cell(column));
        }
        String begun = list.isBlank()
                ? new SafeCsv(head).toString()
                : withColumns(
                        withCommas(list),
                        TELLING.stream()
                                .filter(column ->
                                        !cells.get(head.indexOf(column)).isEmpty())
                                .toList());
        List<CellRows.Row> rows = rows(begun);
        List<String> columns = rows.isEmpty() ? head : rows.get(0).names();
        SafeCsv line = new SafeCsv(columns.stream()
                .map(column -> head.contains(column) ? cells.get(head.indexOf(column)) : "")
                .toList());
        String longer = begun + (begun.endsWith("\n") ? "" : "\n") + line;
        DecisionsReader.read(file, longer);
        return longer;
    }

    /**
     * The same list with these columns before its own, as far as it lacks them: without them a decision would hold for
     * more than it was taken on.
     */
    private static String withColumns(String list, List<String> columns) {
        List<CellRows.Row> rows = rows(list);
        if (rows.isEmpty()) {
            return list;
        }
        List<String> lacking = columns.stream()
                .filter(column -> !rows.get(0).names().contains(column))
                .toList();
        if (lacking.isEmpty()) {
            return list;
        }
        StringBuilder table = new StringBuilder();
        for (CellRows.Row row : rows) {
            List<String> cells =
                    new ArrayList<>(row == rows.get(0) ? lacking : Collections.nCopies(lacking.size(), ""));
            cells.addAll(row.cells());
            table.append(written(cells));
        }
        return table.toString();
    }

    /** Cells of hers, as they are. */
    private static String written(List<String> cells) {
        return cells.stream()
                        .map(cell -> cell.matches("(?s).*[,\"\n].*") ? "\"" + cell.replace("\"", "\"\"") + "\"" : cell)
                        .collect(Collectors.joining(","))
                + "\n";
    }

    /** As it is, or as a spreadsheet of another country would have written it here. */
    private static String withCommas(String list) {
        if (separator(list) == ',') {
            return list;
        }
        StringBuilder table = new StringBuilder();
        rows(list).forEach(row -> table.append(written(row.cells())));
        return table.toString();
    }

    private static char separator(String table) {
        return CellRows.separator(CellRows.Lines.of(table), row -> row.names().contains("decision"));
    }

    private static List<CellRows.Row> rows(String table) {
        try {
            CellRows.Lines lines = CellRows.Lines.of(table);
            return CellRows.read(lines.text(), separator(table), 1).stream()
                    .filter(row -> !row.isBlank())
                    .toList();
        } catch (CellRows.Uneven broken) {
            return List.of(); // reading it as decisions tells the fault with its line
        }
    }
}
