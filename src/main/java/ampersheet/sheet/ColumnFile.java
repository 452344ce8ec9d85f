package ampersheet.sheet;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.Place;
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
 * Comma- or semicolon-separated values as spreadsheets write them, with quotes, blank lines and a byte order mark; every
 * record knows the line it begins on.
 */
final class ColumnFile {
  private final String file;
  private final String text;
  private final String[] lines;
  private final int[] lineStarts;
  private final List<Diagnostic> faults = new ArrayList<>();

  /** @param file as its reader knows it */
  ColumnFile(String file, String text) {
    String plain = text.startsWith("\uFEFF") ? text.substring(1) : text;
    this.file = file;
    this.text = plain.replace("\r\n", "\n").replace('\r', '\n');
    this.lines = this.text.split("\n", -1);
    this.lineStarts = new int[lines.length];
    for (int i = 1; i < lines.length; i++) {
      lineStarts[i] = lineStarts[i - 1] + lines[i - 1].length() + 1;
    }
  }

  /** Those that are not blank; a fault in the quotation marks is noted. */
  List<CSVRecord> records() {
    List<CSVRecord> records = new ArrayList<>();
    CSVFormat format = CSVFormat.DEFAULT.builder().setDelimiter(delimiter()).setIgnoreEmptyLines(false).get();
    try (CSVParser parser = CSVParser.builder().setReader(new StringReader(text)).setFormat(format).get()) {
      for (CSVRecord record : parser) {
        if (!isBlank(record)) {
          records.add(record);
        }
      }
    } catch (IOException | UncheckedIOException broken) {
      fault(lineOfUnevenQuotes(), "a quotation mark is opened and not closed, or text follows a closing one",
          "\"seven, Ada\" or \"say \"\"Ada\"\"\": a quotation mark inside quoted text is doubled",
          "Correct the quotation marks on this line.");
    }
    return records;
  }

  List<Diagnostic> faults() {
    return faults;
  }

  void fault(int line, String problem, String expected, String nextAction) {
    faults.add(Diagnostic.error(place(line), problem, expected, nextAction));
  }

  /** @param line from 1; 0 for the file as a whole */
  Place place(int line) {
    return new Place(file, line, 0, line == 0 ? "" : lines[line - 1]);
  }

  static int column(CSVRecord head, String name) {
    for (int i = 0; i < head.size(); i++) {
      if (head.get(i).strip().toLowerCase(Locale.ROOT).equals(name)) {
        return i;
      }
    }
    return -1;
  }

  /** Where the record begins, from 1. */
  int line(CSVRecord record) {
    int found = Arrays.binarySearch(lineStarts, (int) record.getCharacterPosition());
    return found >= 0 ? found + 1 : -found - 1;
  }

  /** Spreadsheets of countries with a decimal comma separate by semicolons. */
  private char delimiter() {
    for (String line : lines) {
      if (!line.isBlank()) {
        return line.indexOf(';') >= 0 && line.indexOf(',') < 0 ? ';' : ',';
      }
    }
    return ',';
  }

  private static boolean isBlank(CSVRecord record) {
    for (String value : record) {
      if (!value.isBlank()) {
        return false;
      }
    }
    return true;
  }

  /** The line with the first odd number of quotation marks, where the trouble most likely begins. */
  private int lineOfUnevenQuotes() {
    for (int i = 0; i < lines.length; i++) {
      if (lines[i].chars().filter(c -> c == '"').count() % 2 != 0) {
        return i + 1;
      }
    }
    for (int i = 0; i < lines.length; i++) {
      if (lines[i].indexOf('"') >= 0) {
        return i + 1;
      }
    }
    return 0;
  }
}
