package ampersheet.render.markdown;

import java.util.ArrayList;
import java.util.List;

/** A table with its bars under each other. */
final class TextTable {
    /** A wider column is left ragged: padding every row to it would not read well either. */
    private static final int WIDEST = 48;

    private TextTable() {}

    /** @param cells already escaped; short rows are filled up */
    static String of(List<String> head, List<List<String>> cells) {
        int columns = head.size();
        for (List<String> row : cells) {
            columns = Math.max(columns, row.size());
        }
        int[] widths = new int[columns];
        for (int c = 0; c < columns; c++) {
            widths[c] = Math.max(3, width(cell(head, c)));
            for (List<String> row : cells) {
                widths[c] = Math.max(widths[c], Math.min(WIDEST, width(cell(row, c))));
            }
        }
        List<String> rule = new ArrayList<>();
        for (int width : widths) {
            rule.add("-".repeat(width));
        }
        StringBuilder table = new StringBuilder();
        row(head, widths, table);
        row(rule, widths, table);
        cells.forEach(row -> row(row, widths, table));
        return table.substring(0, table.length() - 1);
    }

    private static void row(List<String> cells, int[] widths, StringBuilder table) {
        table.append('|');
        for (int c = 0; c < widths.length; c++) {
            String cell = cell(cells, c);
            table.append(' ')
                    .append(cell)
                    .append(" ".repeat(Math.max(0, widths[c] - width(cell))))
                    .append(" |");
        }
        table.append('\n');
    }

    private static String cell(List<String> cells, int column) {
        return column < cells.size() ? cells.get(column) : "";
    }

    private static int width(String cell) {
        return cell.codePointCount(0, cell.length());
    }
}
