package ampersheet.desk;

import ampersheet.sheet.SheetId;
import ampersheet.source.CellRows;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.MatchResult;

/** To which sheets answers are, by the IDs among them: read as generously as marking reads them. */
final class AnsweredSheets {
    private static final String SHEET = "sheet";

    private AnsweredSheets() {}

    /** How many IDs there are of each set of sheets, by what they begin with. */
    static Map<String, Integer> in(String text) {
        Map<String, Integer> count = new TreeMap<>();
        List<String> typed = column(text);
        List<String> ids = typed.stream().anyMatch(one -> SheetId.set(one).isPresent())
                ? typed
                : SheetId.PRINTED
                        .matcher(text)
                        .results()
                        .map(MatchResult::group)
                        .toList();
        ids.forEach(id -> SheetId.set(id).ifPresent(set -> count.merge(set, 1, Integer::sum)));
        return count;
    }

    /** What stands in the column of sheet IDs, wherever it begins; nothing in what is no table. */
    private static List<String> column(String text) {
        CellRows.Lines lines = CellRows.Lines.of(text);
        List<CellRows.Row> rows;
        try {
            rows = CellRows.read(
                    lines.text(), CellRows.separator(lines, row -> row.names().contains(SHEET)), 1);
        } catch (CellRows.Uneven broken) {
            return List.of(); // marking tells the line
        }
        List<String> cells = new ArrayList<>();
        int column = -1;
        for (CellRows.Row row : rows) {
            int head = row.names().indexOf(SHEET);
            if (head >= 0) {
                column = head;
            } else if (column >= 0 && column < row.size()) {
                cells.add(row.get(column));
            }
        }
        return cells;
    }
}
