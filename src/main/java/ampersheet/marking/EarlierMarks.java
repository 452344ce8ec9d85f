package ampersheet.marking;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.language.Language;
import ampersheet.source.CellRows.Row;
import ampersheet.source.WithinMemory;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** The marks of an earlier run, to tell whose changed. */
public final class EarlierMarks {
    private static final String FORM = say("folder.marks.form");

    private final Map<String, Written> marks;

    private EarlierMarks(Map<String, Written> marks) {
        this.marks = marks;
    }

    /** Marks as a table has them: so many, of so many. */
    record Written(String marks, String of) {
        static final Written NONE = new Written("", "");

        Written {
            of = marks.isEmpty() ? "" : of;
        }

        /** Empty if there are none. */
        String told(Language language) {
            return marks.isEmpty() ? "" : Amounts.of(marks, of, language);
        }
    }

    /** @throws DiagnosticException with all faults at once */
    public static EarlierMarks read(String file, String text) {
        return WithinMemory.of(file, () -> readTable(file, text));
    }

    private static EarlierMarks readTable(String file, String text) {
        TextLines lines = TextLines.ofOwn(file, text);
        CsvRows table = CsvRows.read(lines, FORM);
        Map<String, Written> marks = new TreeMap<>();
        if (table.has(List.of("seat", "marks", "of"))) {
            for (Row row : table.body()) {
                String seat = table.cell(row, "seat");
                Written before = marks.putIfAbsent(seat, new Written(table.cell(row, "marks"), table.cell(row, "of")));
                if (before != null) {
                    lines.fault(row.line(), say("folder.marks.twice", "seat", seat), FORM, say("folder.keep-line"));
                }
            }
        }
        if (lines.hasFaults()) {
            throw new DiagnosticException(lines.faults().list());
        }
        return new EarlierMarks(marks);
    }

    Written of(int seat) {
        return marks.getOrDefault(Integer.toString(seat), Written.NONE);
    }
}
