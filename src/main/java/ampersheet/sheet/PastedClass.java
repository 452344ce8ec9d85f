package ampersheet.sheet;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.source.Bounds;
import ampersheet.source.CellRows;
import ampersheet.source.CellRows.Row;
import ampersheet.source.SafeCsv;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * A class as somebody has it in a spreadsheet or in a list of names, with or without seats and a first line of names:
 * made into the class list that all commands read.
 */
public final class PastedClass {
    private static final String PASTED = say("plan.pasted");
    private static final String FORM = say("plan.pasted.form");

    private PastedClass() {}

    /**
     * Reads what was pasted.
     *
     * @throws DiagnosticException with all faults at once
     */
    public static Roster read(String text) {
        String beyond = Bounds.WRITTEN.beyond(text);
        if (!beyond.isEmpty()) {
            throw new DiagnosticException(
                    Diagnostic.error(Place.inFile(PASTED), beyond, FORM, say("plan.pasted.large.next")));
        }
        List<Row> rows = rows(text);
        if (rows.isEmpty()) {
            throw new DiagnosticException(Diagnostic.error(
                    Place.inFile(PASTED), say("plan.pasted.nobody"), FORM, say("plan.pasted.nobody.next")));
        }
        if (rows.get(0).names().contains("name") || rows.get(0).names().contains("seat")) {
            return RosterReader.read(PASTED, table(rows));
        }
        List<List<String>> headed = new ArrayList<>();
        headed.add(head(rows));
        rows.forEach(row -> headed.add(row.cells()));
        return RosterReader.read(PASTED, csv(headed));
    }

    /** As {@code class.csv} holds it; reading it gives the same class. */
    public static String written(Roster roster) {
        SafeCsv table = new SafeCsv(Stream.concat(Stream.of("seat", "name"), roster.columns().stream())
                .toList());
        roster.seats()
                .forEach(seat -> table.row(
                        Stream.concat(Stream.of(Integer.toString(seat.number()), seat.name()), seat.further().stream())
                                .toList()));
        return table.toString();
    }

    private static List<Row> rows(String text) {
        CellRows.Lines lines = CellRows.Lines.of(text);
        char separator = lines.text().indexOf('\t') >= 0
                ? '\t'
                : CellRows.separator(
                        lines, row -> row.names().contains("name") || row.size() > 1 && isSeat(row.get(0)));
        try {
            List<Row> rows = CellRows.read(lines.text(), separator, 1).stream()
                    .filter(row -> !row.isBlank())
                    .toList();
            boolean table = separator == '\t'
                    || !rows.isEmpty()
                            && (rows.get(0).names().contains("name")
                                    || rows.stream().allMatch(row -> row.size() > 1)
                                            && rows.stream()
                                                            .mapToInt(Row::size)
                                                            .distinct()
                                                            .count()
                                                    == 1);
            return table ? rows : wholeLines(lines.text());
        } catch (CellRows.Uneven aName) {
            return wholeLines(lines.text()); // a quotation mark within somebody's name
        }
    }

    /** A list of names, which may have commas in them. */
    private static List<Row> wholeLines(String text) {
        List<Row> rows = new ArrayList<>();
        String[] lines = text.split("\n", -1);
        for (int i = 0; i < lines.length; i++) {
            if (!lines[i].isBlank()) {
                rows.add(new Row(i + 1, List.of(lines[i].strip())));
            }
        }
        return rows;
    }

    /** What each column most likely is. */
    private static List<String> head(List<Row> rows) {
        int columns = rows.stream().mapToInt(Row::size).max().orElse(1);
        List<String> head = new ArrayList<>();
        for (int i = 0; i < columns; i++) {
            int column = i;
            boolean seats = rows.stream().allMatch(row -> row.size() > column && isSeat(row.get(column)));
            boolean names = rows.stream().anyMatch(row -> row.size() > column && !isSeat(row.get(column)));
            head.add(
                    seats && !head.contains("seat")
                            ? "seat"
                            : names && !head.contains("name") ? "name" : "column " + (i + 1));
        }
        return head;
    }

    private static boolean isSeat(String cell) {
        return WholeNumber.read(cell.strip()).isPresent();
    }

    private static String table(List<Row> rows) {
        return csv(rows.stream().map(Row::cells).toList());
    }

    private static String csv(List<List<String>> rows) {
        int columns = rows.stream().mapToInt(List::size).max().orElse(0);
        SafeCsv table = null;
        for (List<String> row : rows) {
            List<String> whole = new ArrayList<>(row);
            while (whole.size() < columns) {
                whole.add("");
            }
            if (table == null) {
                table = new SafeCsv(whole);
            } else {
                table.row(whole);
            }
        }
        return String.valueOf(table);
    }
}
