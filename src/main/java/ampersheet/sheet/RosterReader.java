package ampersheet.sheet;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.diagnostic.Printable;
import ampersheet.source.CellRows.Row;
import ampersheet.source.ForeignText;
import ampersheet.source.SafeCsv;
import ampersheet.source.Told;
import ampersheet.source.WithinMemory;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Reads a class list: values separated by commas, semicolons or tabs, whose first line names the columns, {@code seat}
 * and {@code name} among them; others are kept with each seat. Quotes, blank lines and a byte order mark are as
 * spreadsheets write them. A list without seat numbers gets them in the order of its lines; one without a first line of
 * names is read where every line is a seat and a name.
 */
public final class RosterReader {
    private static final String FORM = say("plan.class.form");
    private static final String SEAT = "seat";
    private static final String NAME = "name";

    private final ColumnFile columns;
    private final InOrderOfSeats seats = new InOrderOfSeats();
    private final List<Diagnostic> remarks = new ArrayList<>();
    private final BitSet taken = new BitSet();
    /** Of no use before a seat is taken twice. */
    private int[] firstLines = {};

    private RosterReader(String file, String text) {
        this.columns = new ColumnFile(file, text);
    }

    /** Where in a line what stands; −1 for seats that are to be numbered. */
    private record Head(int seat, int name, List<String> names, List<Integer> further) {
        static Head of(Row row) {
            int seat = ColumnFile.column(row, SEAT);
            int name = ColumnFile.column(row, NAME);
            List<Integer> further = new ArrayList<>();
            for (int i = 0; i < row.size(); i++) {
                if (i != seat && i != name && !row.get(i).isBlank()) {
                    further.add(i);
                }
            }
            return new Head(seat, name, row.cells(), further);
        }

        List<String> furtherNames() {
            return further.stream()
                    .map(at -> printable(SafeCsv.read(names.get(at).strip())))
                    .toList();
        }

        List<String> further(Row row) {
            return further.stream()
                    .map(at ->
                            at < row.size() ? printable(SafeCsv.read(row.get(at).strip())) : "")
                    .toList();
        }
    }

    /**
     * Reads a class list.
     *
     * @param file as its reader knows it
     * @throws DiagnosticException with all faults at once
     */
    public static Roster read(String file, String text) {
        return WithinMemory.of(file, () -> new RosterReader(file, text).read());
    }

    /** The same of a list as somebody's spreadsheet wrote it; how it was read is remarked. */
    public static Roster read(String file, ForeignText text) {
        Roster roster = read(file, text.text());
        return text.note()
                .map(note ->
                        roster.remarking(Diagnostic.warning(Place.inFile(file), note.problem(), "", note.nextAction())))
                .orElse(roster);
    }

    private Roster read() {
        Survey survey = new Survey();
        List<String> further = rows(survey::look) ? readRecords(survey) : List.of();
        if (columns.hasFaults()) {
            throw new DiagnosticException(columns.faults());
        }
        return new Roster(seats.all(), further, remarks);
    }

    /** All that are not blank, anew each time, so that a large class is never there as rows. */
    private boolean rows(Consumer<Row> to) {
        return columns.each(row -> isHead(row) || isSeatAndName(row), to);
    }

    /** What must be known of the list before its lines are read. */
    private static final class Survey {
        private Optional<Row> first = Optional.empty();
        private int column = -1;
        private int rows;
        private boolean allSeatAndName = true;
        private boolean numbered;

        void look(Row row) {
            rows++;
            allSeatAndName &= isSeatAndName(row);
            if (first.isEmpty()) {
                first = Optional.of(row);
                column = ColumnFile.column(row, SEAT);
            } else {
                numbered |=
                        column >= 0 && row.size() > column && !row.get(column).isBlank();
            }
        }

        int learners() {
            return rows - 1;
        }
    }

    private static boolean isHead(Row row) {
        return row.names().contains(NAME);
    }

    private static boolean isSeatAndName(Row row) {
        return row.size() >= 2
                && seat(row.get(0)) > 0
                && row.get(1).codePoints().anyMatch(Character::isLetter);
    }

    private List<String> readRecords(Survey survey) {
        if (survey.first.isEmpty()) {
            columns.fault(0, say("plan.class.empty"), FORM, say("plan.class.write-lines"));
            return List.of();
        }
        Row first = survey.first.get();
        if (!isHead(first) && survey.allSeatAndName) {
            remark(first.line(), say("plan.class.no-head"), say("plan.class.no-head.next"));
            rows(record -> readSeat(record, new Head(0, 1, List.of(), List.of())));
            return List.of();
        }
        Head head = Head.of(first);
        if (head.name() < 0) {
            columns.fault(
                    first.line(),
                    head.seat() < 0 ? say("plan.class.no-columns") : say("plan.class.no-name"),
                    FORM,
                    say("plan.columns.next"));
            return List.of();
        }
        if (survey.learners() == 0) {
            columns.fault(first.line(), say("plan.class.nobody"), FORM, say("plan.class.write-lines"));
        }
        readLearners(head, first, survey);
        return head.furtherNames();
    }

    private void readLearners(Head head, Row first, Survey survey) {
        if (survey.numbered || survey.learners() == 0) {
            learners(first, record -> readSeat(record, head));
            return;
        }
        remark(first.line(), Told.count("plan.class.no-seats", survey.learners()), say("plan.class.no-seats.next"));
        learners(first, record -> {
            if (record.size() <= head.name()) {
                tooShort(record);
            } else {
                add(seats.size() + 1, record, head);
            }
        });
    }

    private void learners(Row first, Consumer<Row> to) {
        rows(row -> {
            if (row.line() != first.line()) {
                to.accept(row);
            }
        });
    }

    private void remark(int line, String problem, String nextAction) {
        remarks.add(Diagnostic.warning(columns.place(line), problem, "", nextAction));
    }

    private void tooShort(Row record) {
        columns.fault(
                record.line(),
                Told.count("plan.class.line.short", record.size()),
                FORM,
                say("plan.class.line.short.next"));
    }

    /** −1 if it is none. */
    private static int seat(String written) {
        int seat = WholeNumber.read(written.strip()).orElse(-1);
        return seat < 1 || seat > SheetId.LAST_SEAT ? -1 : seat;
    }

    private void readSeat(Row record, Head head) {
        int line = record.line();
        if (record.size() <= Math.max(head.seat(), head.name())) {
            tooShort(record);
            return;
        }
        String written = record.get(head.seat()).strip();
        int seat = seat(written);
        if (seat < 0) {
            columns.fault(
                    line,
                    written.isEmpty() ? say("plan.class.seat.none") : say("plan.class.seat.unread", "written", written),
                    say("plan.whole-number-to", "most", Integer.toString(SheetId.LAST_SEAT)),
                    say("plan.class.seat.next"));
            return;
        }
        if (taken.get(seat)) {
            columns.fault(
                    line,
                    say(
                            "plan.class.seat.twice",
                            "seat",
                            Integer.toString(seat),
                            "line",
                            Integer.toString(firstLines(head)[seat])),
                    "",
                    say("plan.class.seat.twice.next"));
            return;
        }
        taken.set(seat);
        add(seat, record, head);
    }

    /** By seat, for all of them at once: a list that was pasted below itself has as many that are taken twice. */
    private int[] firstLines(Head head) {
        if (firstLines.length == 0) {
            firstLines = new int[SheetId.LAST_SEAT + 1];
            rows(row -> {
                int seat = row.size() > Math.max(head.seat(), head.name())
                        ? seat(row.get(head.seat()).strip())
                        : -1;
                if (seat > 0 && firstLines[seat] == 0) {
                    firstLines[seat] = row.line();
                }
            });
        }
        return firstLines;
    }

    /** A list that this program wrote for spreadsheets, and its names, are what was read before. */
    private void add(int seat, Row record, Head head) {
        String name = printable(SafeCsv.read(record.get(head.name()).strip()));
        seats.add(new Roster.Seat(seat, name, head.further(record)));
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
