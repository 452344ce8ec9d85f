package ampersheet.marking;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/**
 * A table as spreadsheets and this program write it: values separated by commas, semicolons or tabs, column names on the
 * first line. Where quotation marks do not fit, each line is read by itself, so that one broken line costs no other.
 */
final class CsvRows {
  private final TextLines lines;
  private final String form;
  private List<String> head = List.of();
  private List<Row> body = List.of();

  /** Cells and the line they begin on. */
  record Row(int line, List<String> cells) {
    Row {
      cells = List.copyOf(cells);
    }

    boolean isBlank() {
      return cells.stream().allMatch(String::isBlank);
    }

    /** Empty beyond the end of the row. */
    String cell(int column) {
      return column >= 0 && column < cells.size() ? cells.get(column).strip() : "";
    }
  }

  private CsvRows(TextLines lines, String form) {
    this.lines = lines;
    this.form = form;
  }

  /** @param form how such a table looks, for messages */
  static CsvRows read(TextLines lines, String form) {
    CsvRows table = new CsvRows(lines, form);
    if (lines.isBlank()) {
      lines.fault(0, "this file is empty", form, "Ask for the file again, or take it out.");
      return table;
    }
    List<Row> rows = table.rows().stream().filter(row -> !row.isBlank()).toList();
    if (!rows.isEmpty()) {
      table.head = rows.get(0).cells().stream().map(name -> name.strip().toLowerCase(Locale.ROOT)).toList();
      table.body = rows.subList(1, rows.size());
      table.headLine = rows.get(0).line();
    }
    return table;
  }

  private int headLine;

  List<Row> body() {
    return body;
  }

  int headLine() {
    return headLine;
  }

  int columns() {
    return head.size();
  }

  /** −1 if there is none. */
  int column(String name) {
    return head.indexOf(name);
  }

  /** Whether each of these columns is named once; if not, that is noted as a fault. */
  boolean has(List<String> names) {
    if (head.isEmpty()) {
      return false;
    }
    List<String> missing = names.stream().filter(name -> !head.contains(name)).toList();
    if (!missing.isEmpty()) {
      lines.fault(headLine, "the first line names no column " + String.join(" and no column ", missing), form,
          "Put the column names on the first line; if this is another kind of file, take it out of the folder.");
      return false;
    }
    for (String name : names) {
      if (head.indexOf(name) != head.lastIndexOf(name)) {
        lines.fault(headLine, "the first line names the column " + name + " twice", form,
            "Delete or rename the column that is not meant.");
        return false;
      }
    }
    return true;
  }

  private List<Row> rows() {
    try {
      return parsed(lines.text(), 1);
    } catch (IOException | UncheckedIOException broken) {
      return lineByLine();
    }
  }

  private List<Row> lineByLine() {
    List<Row> rows = new ArrayList<>();
    for (int i = 1; i <= lines.count(); i++) {
      try {
        rows.addAll(parsed(lines.line(i), i));
      } catch (IOException | UncheckedIOException here) {
        lines.fault(i, "a quotation mark is opened and not closed, or text follows a closing one",
            "\"4,7 kΩ\" or \"say \"\"4k7\"\"\": a quotation mark inside quoted text is doubled",
            "Correct the quotation marks on this line.");
      }
    }
    return rows;
  }

  private List<Row> parsed(String text, int firstLine) throws IOException {
    int[] starts = starts(text);
    CSVFormat format = CSVFormat.DEFAULT.builder().setDelimiter(delimiter()).setIgnoreEmptyLines(false).get();
    List<Row> rows = new ArrayList<>();
    try (CSVParser parser = CSVParser.builder().setReader(new StringReader(text)).setFormat(format).get()) {
      for (CSVRecord record : parser) {
        int found = Arrays.binarySearch(starts, (int) record.getCharacterPosition());
        int line = found >= 0 ? found : -found - 2;
        rows.add(new Row(Math.min(lines.count(), firstLine + line), record.toList()));
      }
    }
    return rows;
  }

  private static int[] starts(String text) {
    List<Integer> starts = new ArrayList<>(List.of(0));
    for (int i = 0; i < text.length(); i++) {
      if (text.charAt(i) == '\n') {
        starts.add(i + 1);
      }
    }
    return starts.stream().mapToInt(Integer::intValue).toArray();
  }

  /** Spreadsheets of countries with a decimal comma separate by semicolons, some by tabs. */
  private char delimiter() {
    for (int i = 1; i <= lines.count(); i++) {
      String line = lines.line(i);
      if (!line.isBlank()) {
        return line.indexOf(',') >= 0 ? ',' : line.indexOf(';') >= 0 ? ';' : line.indexOf('\t') >= 0 ? '\t' : ',';
      }
    }
    return ',';
  }
}
