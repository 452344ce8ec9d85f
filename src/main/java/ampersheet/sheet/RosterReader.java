package ampersheet.sheet;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Printable;
import ampersheet.source.CellRows.Row;
import ampersheet.source.WithinMemory;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Reads a class list: values separated by commas, semicolons or tabs, whose first line names the columns, {@code seat}
 * and {@code name} among them. Quotes, blank lines and a byte order mark are as spreadsheets write them.
 */
public final class RosterReader {
    private static final String FORM = "a first line \"seat,name\", then a line such as \"1,Ada\" for each learner";

    private final ColumnFile columns;

    private RosterReader(String file, String text) {
        this.columns = new ColumnFile(file, text);
    }

    /**
     * @param file as its reader knows it
     * @throws DiagnosticException with all faults at once
     */
    public static Roster read(String file, String text) {
        return WithinMemory.of(file, () -> new RosterReader(file, text).read());
    }

    private Roster read() {
        List<Roster.Seat> seats = new ArrayList<>();
        List<Row> records = columns.records();
        if (!columns.hasFaults()) {
            readRecords(records, seats);
        }
        if (columns.hasFaults()) {
            throw new DiagnosticException(columns.faults());
        }
        seats.sort(Comparator.comparingInt(Roster.Seat::number));
        return new Roster(seats);
    }

    private void readRecords(List<Row> records, List<Roster.Seat> seats) {
        if (records.isEmpty()) {
            columns.fault(0, "the class list is empty", FORM, "Write one line for each learner.");
            return;
        }
        Row head = records.get(0);
        int seatColumn = ColumnFile.column(head, "seat");
        int nameColumn = ColumnFile.column(head, "name");
        if (seatColumn < 0 || nameColumn < 0) {
            String missing = seatColumn < 0 && nameColumn < 0
                    ? "the first line does not name the columns seat and name"
                    : "the first line names no column " + (seatColumn < 0 ? "seat" : "name");
            columns.fault(head.line(), missing, FORM, "Put the column names on the first line.");
            return;
        }
        if (records.size() == 1) {
            columns.fault(head.line(), "the class list names nobody", FORM, "Write one line for each learner.");
        }
        Map<Integer, Integer> lineOfSeat = new TreeMap<>();
        for (Row record : records.subList(1, records.size())) {
            readSeat(record, seatColumn, nameColumn, lineOfSeat, seats);
        }
    }

    private void readSeat(
            Row record, int seatColumn, int nameColumn, Map<Integer, Integer> lineOfSeat, List<Roster.Seat> seats) {
        int line = record.line();
        if (record.size() <= Math.max(seatColumn, nameColumn)) {
            columns.fault(
                    line,
                    "this line has " + (record.size() == 1 ? "one column" : record.size() + " columns")
                            + ", too few for a seat and a name",
                    FORM,
                    "Add what is missing; the name may be empty, its comma may not.");
            return;
        }
        String written = record.get(seatColumn).strip();
        int seat = WholeNumber.read(written).orElse(-1);
        if (seat < 1 || seat > SheetId.LAST_SEAT) {
            columns.fault(
                    line,
                    written.isEmpty() ? "this line has no seat number" : "“" + written + "” is not a seat number",
                    "a whole number from 1 to " + SheetId.LAST_SEAT,
                    "Give each learner a number of their own.");
            return;
        }
        Integer earlier = lineOfSeat.putIfAbsent(seat, line);
        if (earlier != null) {
            columns.fault(
                    line,
                    "seat " + seat + " is taken twice: line " + earlier + " has it too",
                    "",
                    "Give each learner a number of their own; two with one number would get the same sheet.");
            return;
        }
        seats.add(new Roster.Seat(seat, printable(record.get(nameColumn))));
    }

    /**
     * A name is text and stays as it is, except that line ends, control characters and marks that turn the direction of
     * the text around them become blanks: they would reach beyond the name on the page.
     */
    static String printable(String name) {
        StringBuilder out = new StringBuilder();
        name.codePoints().forEach(c -> out.appendCodePoint(c == '\t' || Printable.acts(c) ? ' ' : c));
        return out.toString().strip();
    }
}
