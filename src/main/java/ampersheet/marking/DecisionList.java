package ampersheet.marking;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.source.CellRows;
import ampersheet.source.SafeCsv;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The list that an instructor keeps of what she decided, line by line, as a place that is no spreadsheet writes it.
 * What {@link Marking} reads of it is all there is to it.
 */
public final class DecisionList {
    private static final List<String> DECIDED = List.of("decision", "value", "reason");
    /** By which a decision is known to be of an open matter; a list of her own form may lack some. */
    private static final List<String> SAME = List.of("seat", "question", "answer", "file");

    private static final String SHEET = "sheet";

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
        private final Map<List<String>, Map<String, String>> byMatter = new LinkedHashMap<>();

        private Decided(String list) {
            for (Open one : open(list)) {
                if (!one.cell("decision").isEmpty()) {
                    String value = one.cell("value");
                    byMatter.computeIfAbsent(matter(one), first -> new LinkedHashMap<>())
                            .putIfAbsent(one.cell(SHEET), one.cell("decision") + (value.isEmpty() ? "" : " " + value));
                }
            }
        }

        private static List<String> matter(Open open) {
            return SAME.stream().map(open::cell).toList();
        }

        /** Empty if nothing was. */
        public Optional<String> of(Open open) {
            Map<String, String> bySheet = byMatter.getOrDefault(matter(open), Map.of());
            return Optional.ofNullable(bySheet.getOrDefault(open.cell(SHEET), bySheet.get("")));
        }
    }

    /** @param list of decisions, as it is now */
    public static Decided decided(String list) {
        return new Decided(list);
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
        String begun = list.isBlank() ? new SafeCsv(head).toString() : withCommas(list);
        List<CellRows.Row> rows = rows(begun);
        List<String> columns = rows.isEmpty() ? head : rows.get(0).names();
        SafeCsv line = new SafeCsv(columns.stream()
                .map(column -> head.contains(column) ? cells.get(head.indexOf(column)) : "")
                .toList());
        String longer = begun + (begun.endsWith("\n") ? "" : "\n") + line;
        DecisionsReader.read(file, longer);
        return longer;
    }

    /** As it is, or as a spreadsheet of another country would have written it here. */
    private static String withCommas(String list) {
        if (separator(list) == ',') {
            return list;
        }
        StringBuilder table = new StringBuilder();
        rows(list)
                .forEach(row -> table.append(
                        new SafeCsv(row.cells().stream().map(SafeCsv::read).toList())));
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
