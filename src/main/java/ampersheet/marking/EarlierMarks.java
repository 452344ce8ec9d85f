package ampersheet.marking;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.source.CellRows.Row;
import ampersheet.source.WithinMemory;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** The marks of an earlier run, to tell whose changed. */
public final class EarlierMarks {
    private static final String FORM = "the file marks.csv of an earlier run of this command";

    private final Map<String, String> marks;

    private EarlierMarks(Map<String, String> marks) {
        this.marks = marks;
    }

    /** @throws DiagnosticException with all faults at once */
    public static EarlierMarks read(String file, String text) {
        return WithinMemory.of(file, () -> readTable(file, text));
    }

    private static EarlierMarks readTable(String file, String text) {
        TextLines lines = new TextLines(file, text, Privacy.NONE);
        CsvRows table = CsvRows.read(lines, FORM);
        Map<String, String> marks = new TreeMap<>();
        if (table.has(List.of("seat", "marks", "of"))) {
            for (Row row : table.body()) {
                String seat = table.cell(row, "seat");
                String before = marks.putIfAbsent(seat, written(table.cell(row, "marks"), table.cell(row, "of")));
                if (before != null) {
                    lines.fault(row.line(), "seat " + seat + " has two lines", FORM, "Keep the line that is right.");
                }
            }
        }
        if (lines.hasFaults()) {
            throw new DiagnosticException(lines.faults().list());
        }
        return new EarlierMarks(marks);
    }

    /** As {@link #written}; empty for a seat that had none. */
    String of(int seat) {
        return marks.getOrDefault(Integer.toString(seat), "");
    }

    static String written(String marks, String of) {
        return marks.isEmpty() ? "" : marks + " of " + of;
    }
}
