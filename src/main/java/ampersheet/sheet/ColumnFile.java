package ampersheet.sheet;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.Place;
import ampersheet.source.CellRows;
import ampersheet.source.CellRows.Row;
import ampersheet.source.FaultList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Predicate;

/**
 * Values separated by commas, semicolons or tabs, as spreadsheets write them, with quotes, blank lines and a byte order
 * mark; every record knows the line it begins on.
 */
final class ColumnFile {
    private final String file;
    private final CellRows.Lines text;
    private final FaultList faults;
    private Optional<String[]> lines = Optional.empty();

    /** @param file as its reader knows it */
    ColumnFile(String file, String text) {
        this.file = file;
        this.faults = new FaultList(file);
        this.text = CellRows.Lines.of(text);
    }

    /** Those that are not blank; a fault in the quotation marks is noted. */
    List<Row> records() {
        return records(head -> true);
    }

    /** @param fits whether the first row may look like this, where it can be divided in more than one way */
    List<Row> records(Predicate<Row> fits) {
        try {
            return CellRows.read(text.text(), CellRows.separator(text, fits), 1).stream()
                    .filter(row -> !row.isBlank())
                    .toList();
        } catch (CellRows.Uneven broken) {
            uneven();
            return List.of();
        }
    }

    /**
     * The same one after another, as often as is asked for: nothing of a large table is kept.
     *
     * @return whether quotation marks fit; if not, that is noted
     */
    boolean each(Predicate<Row> fits, Consumer<Row> to) {
        try {
            CellRows.each(text.text(), CellRows.separator(text, fits), 1, row -> {
                if (!row.isBlank()) {
                    to.accept(row);
                }
            });
            return true;
        } catch (CellRows.Uneven broken) {
            uneven();
            return false;
        }
    }

    private void uneven() {
        fault(
                lineOfUnevenQuotes(),
                CellRows.Uneven.PROBLEM,
                CellRows.Uneven.expected("seven, Ada", "Ada"),
                CellRows.Uneven.NEXT_ACTION);
    }

    boolean hasFaults() {
        return !faults.isEmpty();
    }

    List<Diagnostic> faults() {
        return faults.list();
    }

    void fault(int line, String problem, String expected, String nextAction) {
        faults.addError(() -> Diagnostic.error(place(line), problem, expected, nextAction));
    }

    /** @param line from 1; 0 for the file as a whole */
    Place place(int line) {
        return new Place(file, line, 0, line == 0 ? "" : lines()[line - 1]);
    }

    /** Divided only if a line is told. */
    private String[] lines() {
        if (lines.isEmpty()) {
            lines = Optional.of(text.text().split("\n", -1));
        }
        return lines.get();
    }

    static int column(Row head, String name) {
        return head.names().indexOf(name);
    }

    /** The line with the first odd number of quotation marks, where the trouble most likely begins. */
    private int lineOfUnevenQuotes() {
        String[] all = lines();
        for (int i = 0; i < all.length; i++) {
            if (all[i].chars().filter(c -> c == '"').count() % 2 != 0) {
                return i + 1;
            }
        }
        for (int i = 0; i < all.length; i++) {
            if (all[i].indexOf('"') >= 0) {
                return i + 1;
            }
        }
        return 0;
    }
}
