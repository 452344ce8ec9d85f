package ampersheet.sheet;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/**
 * Reads a class list: comma- or semicolon-separated values whose first line names the columns, {@code seat} and
 * {@code name} among them. Quotes, blank lines and a byte order mark are as spreadsheets write them.
 */
public final class RosterReader {
  private static final String FORM = "a first line \"seat,name\", then a line such as \"1,Ada\" for each learner";

  private final String file;
  private final String text;
  private final String[] lines;
  private final int[] lineStarts;
  private final List<Diagnostic> faults = new ArrayList<>();

  private RosterReader(String file, String text) {
    this.file = file;
    this.text = text;
    this.lines = text.split("\n", -1);
    this.lineStarts = new int[lines.length];
    for (int i = 1; i < lines.length; i++) {
      lineStarts[i] = lineStarts[i - 1] + lines[i - 1].length() + 1;
    }
  }

  /**
   * @param file as its reader knows it
   * @throws DiagnosticException with all faults at once
   */
  public static Roster read(String file, String text) {
    String plain = text.startsWith("\uFEFF") ? text.substring(1) : text;
    return new RosterReader(file, plain.replace("\r\n", "\n").replace('\r', '\n')).read();
  }

  private Roster read() {
    List<Roster.Seat> seats = new ArrayList<>();
    CSVFormat format = CSVFormat.DEFAULT.builder().setDelimiter(delimiter()).setIgnoreEmptyLines(false).get();
    try (CSVParser parser = CSVParser.builder().setReader(new StringReader(text)).setFormat(format).get()) {
      List<CSVRecord> records = new ArrayList<>();
      for (CSVRecord record : parser) {
        if (!isBlank(record)) {
          records.add(record);
        }
      }
      readRecords(records, seats);
    } catch (IOException | UncheckedIOException broken) {
      fault(lineOfUnevenQuotes(), "a quotation mark is opened and not closed, or text follows a closing one",
          "\"seven, Ada\" or \"say \"\"Ada\"\"\": a quotation mark inside quoted text is doubled",
          "Correct the quotation marks on this line.");
    }
    if (!faults.isEmpty()) {
      throw new DiagnosticException(faults);
    }
    seats.sort(Comparator.comparingInt(Roster.Seat::number));
    return new Roster(seats);
  }

  private void readRecords(List<CSVRecord> records, List<Roster.Seat> seats) {
    if (records.isEmpty()) {
      fault(0, "the class list is empty", FORM, "Write one line for each learner.");
      return;
    }
    CSVRecord head = records.get(0);
    int seatColumn = column(head, "seat");
    int nameColumn = column(head, "name");
    if (seatColumn < 0 || nameColumn < 0) {
      String missing = seatColumn < 0 && nameColumn < 0
          ? "the first line does not name the columns seat and name"
          : "the first line names no column " + (seatColumn < 0 ? "seat" : "name");
      fault(line(head), missing, FORM, "Put the column names on the first line.");
      return;
    }
    if (records.size() == 1) {
      fault(line(head), "the class list names nobody", FORM, "Write one line for each learner.");
    }
    Map<Integer, Integer> lineOfSeat = new TreeMap<>();
    for (CSVRecord record : records.subList(1, records.size())) {
      readSeat(record, seatColumn, nameColumn, lineOfSeat, seats);
    }
  }

  private void readSeat(CSVRecord record, int seatColumn, int nameColumn, Map<Integer, Integer> lineOfSeat,
      List<Roster.Seat> seats) {
    int line = line(record);
    if (record.size() <= Math.max(seatColumn, nameColumn)) {
      fault(line, "this line has " + (record.size() == 1 ? "one column" : record.size() + " columns")
          + ", too few for a seat and a name", FORM, "Add what is missing; the name may be empty, its comma may not.");
      return;
    }
    String written = record.get(seatColumn).strip();
    int seat = wholeNumber(written);
    if (seat < 1 || seat > SheetId.LAST_SEAT) {
      fault(line, written.isEmpty() ? "this line has no seat number"
          : "“" + written + "” is not a seat number", "a whole number from 1 to " + SheetId.LAST_SEAT,
          "Give each learner a number of their own.");
      return;
    }
    Integer earlier = lineOfSeat.putIfAbsent(seat, line);
    if (earlier != null) {
      fault(line, "seat " + seat + " is taken twice: line " + earlier + " has it too", "",
          "Give each learner a number of their own; two with one number would get the same sheet.");
      return;
    }
    seats.add(new Roster.Seat(seat, printable(record.get(nameColumn))));
  }

  private static int wholeNumber(String written) {
    if (written.isEmpty() || written.length() > 9) {
      return -1;
    }
    int value = 0;
    for (int i = 0; i < written.length(); i++) {
      char c = written.charAt(i);
      if (c < '0' || c > '9') {
        return -1;
      }
      value = value * 10 + (c - '0');
    }
    return value;
  }

  /**
   * A name is text and stays as it is, except that line ends, control characters and marks that turn the direction of
   * the text around them become blanks: they would reach beyond the name on the page.
   */
  private static String printable(String name) {
    StringBuilder out = new StringBuilder();
    name.codePoints().forEach(c -> {
      int type = Character.getType(c);
      boolean turnsText = c >= 0x202A && c <= 0x202E || c >= 0x2066 && c <= 0x2069;
      boolean breaks = type == Character.CONTROL || type == Character.LINE_SEPARATOR
          || type == Character.PARAGRAPH_SEPARATOR || type == Character.SURROGATE;
      out.appendCodePoint(turnsText || breaks ? ' ' : c);
    });
    return out.toString().strip();
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

  private static int column(CSVRecord head, String name) {
    for (int i = 0; i < head.size(); i++) {
      if (head.get(i).strip().toLowerCase(Locale.ROOT).equals(name)) {
        return i;
      }
    }
    return -1;
  }

  /** Where the record begins, from 1. */
  private int line(CSVRecord record) {
    int found = Arrays.binarySearch(lineStarts, (int) record.getCharacterPosition());
    return found >= 0 ? found + 1 : -found - 1;
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

  private void fault(int line, String problem, String expected, String nextAction) {
    String source = line == 0 ? "" : lines[line - 1];
    faults.add(Diagnostic.error(new Place(file, line, 0, source), problem, expected, nextAction));
  }
}
