package ampersheet.marking;

import java.util.List;
import org.apache.commons.csv.CSVFormat;

/**
 * A table that a spreadsheet opens without running anything in it: a cell that begins like a formula gets an apostrophe in
 * front, which spreadsheets take for "this is text".
 */
final class SafeCsv {
  /** The last four are the wide forms of the first four, which some spreadsheets read alike. */
  private static final String BEGIN_FORMULAS = "=+-@＝＋－＠";

  private final StringBuilder out = new StringBuilder();

  SafeCsv(String... head) {
    row(List.of(head));
  }

  void row(List<String> cells) {
    out.append(CSVFormat.DEFAULT.format(cells.stream().map(SafeCsv::asText).toArray())).append('\n');
  }

  static String asText(String cell) {
    int first = 0;
    while (first < cell.length() && (cell.charAt(first) <= ' ' || Character.isSpaceChar(cell.charAt(first)))) {
      first++;
    }
    boolean formula = first < cell.length() && BEGIN_FORMULAS.indexOf(cell.charAt(first)) >= 0;
    boolean control = !cell.isEmpty() && (cell.charAt(0) == '\t' || cell.charAt(0) == '\r' || cell.charAt(0) == '\n');
    return formula || control ? "'" + cell : cell;
  }

  /** The text of a cell that {@link #asText} may have written: so what was set aside can be mended and handed in again. */
  static String read(String cell) {
    return cell.startsWith("'") && cell.equals(asText(cell.substring(1))) ? cell.substring(1) : cell;
  }

  @Override
  public String toString() {
    return out.toString();
  }
}
