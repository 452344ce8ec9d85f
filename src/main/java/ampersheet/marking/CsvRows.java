package ampersheet.marking;

import static ampersheet.source.Told.say;

import ampersheet.language.Saying;
import ampersheet.source.CellRows;
import ampersheet.source.CellRows.Row;
import java.util.ArrayList;
import java.util.List;

/**
 * A table as spreadsheets and this program write it: values separated by commas, semicolons or tabs, column names on
 * the first line. Where quotation marks do not fit, each line is read by itself, so that one broken line costs no
 * other.
 */
final class CsvRows {
    private final TextLines lines;
    private final String form;
    private List<String> head = List.of();
    private List<Row> body = List.of();
    private int headLine;

    private CsvRows(TextLines lines, String form) {
        this.lines = lines;
        this.form = form;
    }

    /** Tells a first line, and what it would be where there is none. */
    interface Heads {
        /** Whether this may be the first line of such a table. */
        boolean isHead(Row row);

        /** Whether this may be a line below it. */
        boolean isBody(Row row);

        /** Names of the columns of a table that has no first line. */
        List<String> usual();
    }

    /** @param form how such a table looks, for messages */
    static CsvRows read(TextLines lines, String form) {
        return read(lines, form, new Heads() {
            @Override
            public boolean isHead(Row row) {
                return true;
            }

            @Override
            public boolean isBody(Row row) {
                return false;
            }

            @Override
            public List<String> usual() {
                return List.of();
            }
        });
    }

    /**
     * The same for a table whose first line may be missing, where each of its lines fits.
     *
     * @param form how such a table looks, for messages
     */
    static CsvRows read(TextLines lines, String form, Heads heads) {
        CsvRows table = new CsvRows(lines, form);
        if (lines.isBlank()) {
            lines.fault(0, Saying.of("report.file.empty"), form, say("folder.answers.empty.next"));
            return table;
        }
        List<Row> rows =
                table.rows(heads).stream().filter(row -> !row.isBlank()).toList();
        if (!rows.isEmpty() && !heads.isHead(rows.get(0)) && rows.stream().allMatch(heads::isBody)) {
            table.head = heads.usual();
            table.body = rows;
            lines.warning(
                    rows.get(0).line(),
                    Saying.of("report.file.no-head", "columns", String.join(", ", heads.usual())),
                    say("folder.answers.no-head.next"));
        } else if (!rows.isEmpty()) {
            table.head = rows.get(0).names();
            table.body = rows.subList(1, rows.size());
            table.headLine = rows.get(0).line();
        } else if (!lines.hasFaults()) {
            lines.fault(0, Saying.of("report.file.separators-only"), form, say("folder.answers.empty.next"));
        }
        return table;
    }

    List<Row> body() {
        return body;
    }

    int headLine() {
        return headLine;
    }

    List<String> head() {
        return head;
    }

    int columns() {
        return head.size();
    }

    /** −1 if there is none. */
    int column(String name) {
        return head.indexOf(name);
    }

    /** What stands in a column, without blanks around it; empty beyond the end of the row. */
    String cell(Row row, String column) {
        int at = column(column);
        return at >= 0 && at < row.size() ? row.get(at).strip() : "";
    }

    /** Whether each of these columns is named once; if not, that is noted as a fault. */
    boolean has(List<String> names) {
        if (head.isEmpty()) {
            return false;
        }
        List<String> missing =
                names.stream().filter(name -> !head.contains(name)).toList();
        if (!missing.isEmpty()) {
            lines.fault(
                    headLine,
                    Saying.of("report.file.no-column").with("columns", columns(missing)),
                    form,
                    say("folder.answers.no-columns.next"));
            return false;
        }
        for (String name : names) {
            if (head.indexOf(name) != head.lastIndexOf(name)) {
                lines.fault(
                        headLine,
                        Saying.of("report.file.column-twice", "column", name),
                        form,
                        say("folder.answers.column-twice.next"));
                return false;
            }
        }
        return true;
    }

    private static Saying columns(List<String> names) {
        Saying all = FileFault.asItIs(names.get(0));
        for (String name : names.subList(1, names.size())) {
            all = Saying.of("report.file.no-column-and", "column", name).with("columns", all);
        }
        return all;
    }

    private List<Row> rows(Heads heads) {
        char separator = CellRows.separator(lines.text(), row -> heads.isHead(row) || heads.isBody(row));
        try {
            return CellRows.read(lines.text().text(), separator, 1);
        } catch (CellRows.Uneven broken) {
            return lineByLine(separator);
        }
    }

    private List<Row> lineByLine(char separator) {
        List<Row> rows = new ArrayList<>();
        for (int i = 1; i <= lines.count(); i++) {
            try {
                rows.addAll(CellRows.read(lines.line(i), separator, i));
            } catch (CellRows.Uneven here) {
                lines.fault(
                        i,
                        Saying.of("report.file.quotes"),
                        CellRows.Uneven.expected("4,7 kΩ", "4k7"),
                        CellRows.Uneven.NEXT_ACTION);
            }
        }
        return rows;
    }
}
