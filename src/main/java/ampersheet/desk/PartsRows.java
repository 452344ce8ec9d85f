package ampersheet.desk;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.issue.CourseFolder;
import ampersheet.problem.Inventory;
import ampersheet.source.CellRows;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * A list of parts as a table to be changed cell by cell. Columns that the desk does not know, and how kinds are
 * spelled, stay as they were written.
 *
 * @param before a line that only tells the separator; empty if there is none
 * @param rows below the head; blank ones are those that wait to be filled
 */
record PartsRows(String before, char separator, List<String> head, List<Row> rows) {
    private static final List<String> COLUMNS = List.of("kind", "value", "tolerance", "rating", "count");
    private static final int MOST_SHOWN = 400;
    /** Of what is no table. */
    static final PartsRows NO_TABLE = new PartsRows("", ',', List.of(), List.of());

    PartsRows {
        rows = List.copyOf(rows);
    }

    /**
     * One line of the list.
     *
     * @param from which row of the kept list it was, from 0; -1 for a new one
     * @param cells in the order of the head
     */
    record Row(int from, List<String> cells) {
        Row {
            cells = List.copyOf(cells);
        }

        private boolean isBlank() {
            return cells.stream().allMatch(String::isBlank);
        }
    }

    /** An empty list: the head, and nothing below it. */
    static PartsRows none() {
        return new PartsRows("", ',', COLUMNS, List.of());
    }

    /** Of a text; without columns where it is no table of parts, or too long to be shown as one. */
    static PartsRows of(String text) {
        if (text.isBlank()) {
            return none();
        }
        CellRows.Lines lines = CellRows.Lines.of(text);
        char separator = CellRows.separator(lines, row -> row.names().contains("kind"));
        List<CellRows.Row> read;
        try {
            read = CellRows.read(lines.text(), separator, 1).stream()
                    .filter(row -> !row.isBlank())
                    .toList();
        } catch (CellRows.Uneven broken) {
            return NO_TABLE; // its reader has told of it
        }
        if (read.isEmpty() || read.size() > MOST_SHOWN || !read.get(0).names().contains("kind")) {
            return NO_TABLE;
        }
        List<String> head = new ArrayList<>(read.get(0).cells());
        List<String> names = read.get(0).names();
        COLUMNS.stream().filter(column -> !names.contains(column)).forEach(head::add);
        List<Row> rows = new ArrayList<>();
        for (CellRows.Row row : read.subList(1, read.size())) {
            List<String> cells = new ArrayList<>(row.cells());
            while (cells.size() < head.size()) {
                cells.add("");
            }
            rows.add(new Row(rows.size(), cells));
        }
        return new PartsRows(lines.separator().isPresent() ? "sep=" + separator + "\n" : "", separator, head, rows);
    }

    boolean isTable() {
        return !head.isEmpty();
    }

    /**
     * What was typed over this list.
     *
     * @throws DiagnosticException if it is not what the form sends
     */
    PartsRows typed(Form form) {
        List<String> from = form.all("from");
        List<String> out = form.all("out");
        List<Row> typed = new ArrayList<>();
        for (String column : COLUMNS) {
            if (form.all(column).size() != from.size() || !isTable()) {
                throw new DiagnosticException(Diagnostic.error(
                        Place.inFile(CourseFolder.PARTS),
                        say("desk.parts.table"),
                        say("desk.parts.table.expected"),
                        say("desk.parts.table.next")));
            }
        }
        for (int i = 0; i < from.size(); i++) {
            int was = at(from.get(i));
            List<String> cells = new ArrayList<>(
                    was < 0
                            ? Collections.nCopies(head.size(), "")
                            : rows.get(was).cells());
            for (String column : COLUMNS) {
                cells.set(
                        index(column),
                        form.all(column).get(i).replaceAll("\\s+", " ").strip());
            }
            Row row = new Row(was, cells);
            if (!row.isBlank() && !out.contains(Integer.toString(i))) {
                typed.add(row);
            }
        }
        return new PartsRows(before, separator, head, typed);
    }

    private int at(String written) {
        int at = written.matches("[0-9]{1,6}") ? Integer.parseInt(written) : -1;
        return at < rows.size() ? at : -1;
    }

    private int index(String column) {
        return new CellRows.Row(1, head).names().indexOf(column);
    }

    /** As it is kept. */
    String text() {
        StringBuilder text = new StringBuilder(before);
        line(text, head);
        rows.forEach(row -> line(text, row.cells()));
        return text.toString();
    }

    private void line(StringBuilder text, List<String> cells) {
        for (int i = 0; i < cells.size(); i++) {
            String cell = cells.get(i);
            boolean quoted = Stream.of("" + separator, "\"", "\n").anyMatch(cell::contains);
            text.append(i == 0 ? "" : separator).append(quoted ? "\"" + cell.replace("\"", "\"\"") + "\"" : cell);
        }
        text.append('\n');
    }

    /**
     * For the page: each row with its faults, and blank rows to be filled.
     *
     * @param faults of {@link #text}
     */
    List<Map<String, Object>> shown(List<Diagnostic> faults, int blank) {
        List<Map<String, Object>> shown = new ArrayList<>();
        StringBuilder above = new StringBuilder(before);
        line(above, head);
        for (Row row : rows) {
            int first = lines(above);
            line(above, row.cells());
            int next = lines(above);
            List<Diagnostic> here = faults.stream()
                    .filter(fault -> fault.place().file().equals(CourseFolder.PARTS))
                    .filter(fault ->
                            fault.place().line() >= first && fault.place().line() < next)
                    .toList();
            shown.add(shown(row, shown.size(), here));
        }
        for (int i = 0; i < blank; i++) {
            shown.add(shown(new Row(-1, Collections.nCopies(head.size(), "")), shown.size(), List.of()));
        }
        return shown;
    }

    /** The number of the line that comes next. */
    private static int lines(StringBuilder above) {
        return 1 + (int) above.chars().filter(c -> c == '\n').count();
    }

    private Map<String, Object> shown(Row row, int at, List<Diagnostic> faults) {
        Map<String, Object> shown = Pages.values(
                "at", at, "from", row.from() < 0 ? "" : Integer.toString(row.from()), "faults", Frame.told(faults));
        COLUMNS.forEach(column -> shown.put(column, row.cells().get(index(column))));
        shown.put("kinds", kinds((String) shown.get("kind")));
        return shown;
    }

    /** Words for kinds of parts, and the one that is written here if it is another. */
    private static List<String> kinds(String written) {
        List<String> kinds = new ArrayList<>(List.of(""));
        Stream.of(Inventory.Kind.values()).map(Inventory.Kind::word).forEach(kinds::add);
        kinds.add("meter");
        if (!kinds.contains(written)) {
            kinds.add(written);
        }
        return kinds;
    }
}
