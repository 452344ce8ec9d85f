package ampersheet.source;

import ampersheet.language.Saying;
import ampersheet.source.Unread.Why;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.stream.Stream;
import org.dhatim.fastexcel.reader.Cell;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.ReadingOptions;
import org.dhatim.fastexcel.reader.Row;
import org.dhatim.fastexcel.reader.Sheet;
import org.dhatim.fastexcel.reader.SheetVisibility;

/** Reads the first table of an .xlsx file. */
final class Xlsx {

    private Xlsx() {}

    /** @throws Unread if it is none, or beyond its bounds */
    static TableOf read(SpreadsheetArchive archive, Bounds bounds) throws Unread {
        try (ReadableWorkbook workbook =
                new ReadableWorkbook(archive.packed(), new ReadingOptions(archive.hasStyles(), true))) {
            List<Sheet> sheets = workbook.getSheets()
                    .filter(sheet -> sheet.getVisibility() == SheetVisibility.VISIBLE)
                    .toList();
            String first = "";
            String name = "";
            List<String> others = new ArrayList<>();
            for (Sheet sheet : sheets) {
                String text = text(sheet, bounds);
                if (text.isBlank()) {
                    continue;
                }
                if (name.isEmpty()) {
                    name = sheet.getName();
                    first = text;
                } else {
                    others.add(sheet.getName());
                }
            }
            return new TableOf(first, name, others);
        } catch (IOException | RuntimeException broken) {
            // On a damaged file the library and its parser throw whatever they come to.
            throw new Unread(Why.UNREADABLE, Saying.of("report.unread.damaged-spreadsheet"));
        }
    }

    private static String text(Sheet sheet, Bounds bounds) throws IOException, Unread {
        SpreadsheetText text = new SpreadsheetText(bounds);
        try (Stream<Row> rows = sheet.openStream()) {
            for (Iterator<Row> each = rows.iterator(); each.hasNext(); ) {
                Row row = each.next();
                if (row.getCellCount() > bounds.cells()) {
                    throw new Unread(Why.TOO_LARGE, Saying.of("report.unread.many-columns"));
                }
                List<String> cells = new ArrayList<>();
                for (int i = 0; i < row.getCellCount(); i++) {
                    Cell cell = row.getCell(i);
                    cells.add(cell == null ? "" : shown(cell));
                }
                if (cells.stream().anyMatch(cell -> !cell.isEmpty())) {
                    text.row(row.getRowNum(), cells);
                }
            }
        }
        return text.toString();
    }

    private static String shown(Cell cell) {
        String raw = cell.getRawValue();
        if (raw == null) {
            return cell.getText() == null ? "" : cell.getText();
        }
        if (cell.getType() == CellType.NUMBER) {
            String format = bare(cell.getDataFormatString());
            return isDate(format)
                    ? SpreadsheetText.date(cell.asDate().toLocalDate().toString())
                    : SpreadsheetText.number(raw, format.indexOf('%') >= 0);
        }
        return cell.getType() == CellType.FORMULA ? SpreadsheetText.number(raw, false) : cell.getText();
    }

    /** A format without the texts in it and what stands in brackets. */
    private static String bare(String format) {
        return format == null ? "" : format.replaceAll("\"[^\"]*\"|\\\\.|\\[[^\\]]*\\]|(?i)general", "");
    }

    private static boolean isDate(String format) {
        return format.chars().anyMatch(c -> "yYdDhHsSmM".indexOf(c) >= 0);
    }
}
