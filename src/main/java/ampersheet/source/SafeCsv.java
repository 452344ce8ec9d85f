package ampersheet.source;

import ampersheet.diagnostic.Printable;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;

/**
 * A table that a spreadsheet opens without running anything in it. A cell that begins like a formula gets an apostrophe
 * in front, which spreadsheets take for "this is text"; so does what stands behind a separator within a cell, for a
 * spreadsheet of another country takes that apart there, whatever quotation marks are around it. What acts without
 * being seen is spelled out.
 */
public final class SafeCsv {
    /** The last four are the wide forms of the first four, which some spreadsheets read alike. */
    private static final String BEGIN_FORMULAS = "=+-@＝＋－＠";

    private static final String SEPARATORS = ",;\t|，；｜";

    private final StringBuilder out = new StringBuilder();

    /** @param head names of the columns */
    public SafeCsv(List<String> head) {
        row(head);
    }

    public void row(List<String> cells) {
        out.append(line(cells));
    }

    /** A row as it is written, with its line feed. */
    public static String line(List<String> cells) {
        return CSVFormat.DEFAULT.format(cells.stream().map(SafeCsv::asText).toArray()) + '\n';
    }

    /** A cell as it is written. */
    public static String asText(String written) {
        String cell = Printable.line(written);
        StringBuilder text = null;
        int plain = 0;
        for (int at : formulas(cell)) {
            text = text == null ? new StringBuilder() : text;
            text.append(cell, plain, at).append('\'');
            plain = at;
        }
        return text == null ? cell : text.append(cell, plain, cell.length()).toString();
    }

    /** Where an apostrophe is needed: at the beginning, and behind separators, if something follows that runs. */
    private static List<Integer> formulas(String cell) {
        List<Integer> at = new ArrayList<>();
        int begins = 0;
        for (int i = 0; i < cell.length(); i++) {
            char c = cell.charAt(i);
            if (SEPARATORS.indexOf(c) >= 0) {
                if (i == 0 && c == '\t') {
                    at.add(0);
                }
                begins = i + 1;
            } else if (BEGIN_FORMULAS.indexOf(c) >= 0 && begins >= 0) {
                at.add(begins);
                begins = -1;
            } else if (!isPassedOver(c)) {
                begins = -1;
            }
        }
        return at;
    }

    /**
     * Blanks, the quotation marks that a spreadsheet may take off, and an apostrophe that is itself to be read back.
     */
    private static boolean isPassedOver(char c) {
        boolean unseen = c == '\uFEFF' || c >= '\u200B' && c <= '\u200F' || c == '\u2060';
        return c <= ' ' || Character.isSpaceChar(c) || unseen || c == '"' || c == '\'';
    }

    /**
     * The text of a cell that {@link #asText} may have written: so what was set aside can be mended and handed in
     * again.
     */
    public static String read(String cell) {
        StringBuilder text = new StringBuilder();
        boolean begins = true;
        for (int i = 0; i < cell.length(); i++) {
            char c = cell.charAt(i);
            if (!(begins && c == '\'')) {
                text.append(c);
            }
            begins = SEPARATORS.indexOf(c) >= 0;
        }
        return text.length() < cell.length() && asText(text.toString()).equals(cell) ? text.toString() : cell;
    }

    @Override
    public String toString() {
        return out.toString();
    }
}
