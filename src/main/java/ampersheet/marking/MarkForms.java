package ampersheet.marking;

import ampersheet.source.CellRows;
import ampersheet.source.CellRows.Row;
import ampersheet.source.PackedAgain;
import ampersheet.source.SafeCsv;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;

/** The table of marks in the forms that spreadsheets of different countries open without a question. */
public enum MarkForms {
    /** A spreadsheet file: text is text there, and numbers are numbers. */
    XLSX("marks.xlsx"),
    /** Semicolons, decimal commas and a byte order mark. */
    SEMICOLONS("marks-semicolons.csv"),
    /** As the table itself, with a byte order mark, by which spreadsheets know UTF-8. */
    BOM("marks-bom.csv");

    private static final char BYTE_ORDER_MARK = '\uFEFF';
    /** Those of {@link OwnFile#MARKS} that hold numbers. */
    private static final List<String> NUMBERS = List.of(
            "seat",
            "marks",
            "of",
            "right",
            "carried",
            "half",
            "wrong",
            "unreadable",
            "blank",
            "late",
            "undecided",
            "if_in_time",
            "percent");

    private final String file;

    MarkForms(String file) {
        this.file = file;
    }

    /** Its name in the folder of results. */
    public String file() {
        return file;
    }

    /** @param marks the table as it was written */
    public byte[] of(String marks) {
        return switch (this) {
            case XLSX -> xlsx(rows(marks));
            case SEMICOLONS -> (BYTE_ORDER_MARK + semicolons(rows(marks))).getBytes(StandardCharsets.UTF_8);
            case BOM -> (BYTE_ORDER_MARK + marks).getBytes(StandardCharsets.UTF_8);
        };
    }

    private static List<Row> rows(String marks) {
        try {
            return CellRows.read(marks, ',', 1);
        } catch (CellRows.Uneven impossible) {
            throw new IllegalStateException("a table of our own", impossible);
        }
    }

    /** Whether a cell of a column holds a number; a learner's name may look like one and is text. */
    private static boolean isNumber(Row head, int column, String cell) {
        return column < OwnFile.MARKS.head().size()
                && NUMBERS.contains(head.get(column))
                && cell.matches("[0-9]+(\\.[0-9]+)?");
    }

    private static String semicolons(List<Row> rows) {
        StringBuilder out = new StringBuilder();
        for (Row row : rows) {
            for (int i = 0; i < row.size(); i++) {
                String cell = row.get(i);
                String written = isNumber(rows.get(0), i, cell) ? cell.replace('.', ',') : cell;
                boolean quoted = written.chars().anyMatch(c -> c == ';' || c == '"' || c == '\n' || c == '\r');
                out.append(i == 0 ? "" : ";").append(quoted ? "\"" + written.replace("\"", "\"\"") + "\"" : written);
            }
            out.append("\r\n");
        }
        return out.toString();
    }

    private static byte[] xlsx(List<Row> rows) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (Workbook workbook = new Workbook(out, "Ampersheet", "1.0")) {
            Worksheet sheet = workbook.newWorksheet("marks");
            for (int r = 0; r < rows.size(); r++) {
                for (int c = 0; c < rows.get(r).size(); c++) {
                    String cell = rows.get(r).get(c);
                    if (r > 0 && isNumber(rows.get(0), c, cell)) {
                        sheet.value(r, c, Double.valueOf(cell));
                    } else if (!cell.isEmpty()) {
                        sheet.value(r, c, SafeCsv.read(cell));
                    }
                }
            }
            sheet.freezePane(0, 1);
        } catch (IOException impossible) {
            throw new IllegalStateException("memory cannot fail to be written", impossible);
        }
        return PackedAgain.withoutTimes(out.toByteArray());
    }

    /** By its word on the command line, such as {@code xlsx}. */
    public static Optional<MarkForms> named(String word) {
        for (MarkForms form : values()) {
            if (form.name().equalsIgnoreCase(word.strip())) {
                return Optional.of(form);
            }
        }
        return Optional.empty();
    }
}
