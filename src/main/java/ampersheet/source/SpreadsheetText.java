package ampersheet.source;

import ampersheet.language.Saying;
import ampersheet.source.Unread.Why;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;

/**
 * The cells of a spreadsheet as the text of a table with commas: so that whatever reads tables reads spreadsheets, and
 * a row of the one is the line of the other.
 */
final class SpreadsheetText {
    /** As many as spreadsheets themselves show of a number. */
    private static final MathContext SHOWN = new MathContext(15);
    /** Numbers beyond are no answer, and writing them out would take memory. */
    private static final int LARGEST_EXPONENT = 300;

    private final Bounds bounds;
    private final StringBuilder out = new StringBuilder();
    private int line = 1;
    private int cells;

    SpreadsheetText(Bounds bounds) {
        this.bounds = bounds;
    }

    /**
     * A row with something in it.
     *
     * @param number from 1, more than that of the row before
     * @throws Unread if that is more than a class needs
     */
    void row(int number, List<String> row) throws Unread {
        cells += row.size();
        require(number <= bounds.lines() && cells <= bounds.cells());
        for (; line < number; line++) {
            out.append('\n');
        }
        List<String> quoted = new ArrayList<>();
        row.forEach(cell -> quoted.add(quoted(cell)));
        out.append(String.join(",", quoted));
        require(out.length() <= bounds.bytes());
    }

    private static void require(boolean within) throws Unread {
        if (!within) {
            throw new Unread(Why.TOO_LARGE, Saying.of("report.unread.many-rows"));
        }
    }

    private static String quoted(String cell) {
        String plain = cell.replace('\r', ' ').replace('\n', ' ');
        boolean bare = plain.chars().noneMatch(c -> c == ',' || c == '"' || c == ';' || c == '\t');
        return bare ? plain : "\"" + plain.replace("\"", "\"\"") + "\"";
    }

    @Override
    public String toString() {
        return out + "\n";
    }

    /** A number as people type it. @param percent whether it is shown in percent */
    static String number(String raw, boolean percent) {
        BigDecimal value;
        try {
            value = new BigDecimal(raw.strip());
        } catch (NumberFormatException other) {
            // Whatever stands there is told to whoever reads the table.
            return raw;
        }
        if (value.precision() - value.scale() > LARGEST_EXPONENT || value.scale() > LARGEST_EXPONENT) {
            return raw;
        }
        BigDecimal shown = (percent ? value.movePointRight(2) : value).round(SHOWN);
        String digits = shown.signum() == 0 ? "0" : shown.stripTrailingZeros().toPlainString();
        return percent ? digits + " %" : digits;
    }

    /** What a spreadsheet has made a date of was something else: 3.5 or 1/2. Nobody may take it for a number. */
    static String date(String iso) {
        return "date " + iso;
    }
}
