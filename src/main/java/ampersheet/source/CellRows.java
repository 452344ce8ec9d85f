package ampersheet.source;

import static ampersheet.source.Told.say;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Predicate;

/**
 * Values in rows as spreadsheets write them: a cell may stand in quotation marks, in which a quotation mark is doubled
 * and separators and line ends are text. Each character is looked at once.
 */
public final class CellRows {
    private static final char[] SEPARATORS = {',', ';', '\t'};
    private final String text;
    private final char separator;
    private int at;
    private int line;

    private CellRows(String text, char separator, int firstLine) {
        this.text = text;
        this.separator = separator;
        this.line = firstLine;
    }

    /** Cells and the line they begin on, from 1. */
    public record Row(int line, List<String> cells) {
        public Row {
            cells = List.copyOf(cells);
        }

        public int size() {
            return cells.size();
        }

        public String get(int cell) {
            return cells.get(cell);
        }

        public boolean isBlank() {
            return cells.stream().allMatch(String::isBlank);
        }

        /** As names of columns: without blanks around them, and whatever their case. */
        public List<String> names() {
            return cells.stream().map(cell -> AsciiCase.small(cell.strip())).toList();
        }
    }

    /** Quotation marks that do not fit: one that nothing closes, or one with text behind it. */
    public static final class Uneven extends Exception {
        /** What is wrong, for whoever has to mend the file. */
        public static final String PROBLEM = Languages.ENGLISH.say("report.file.quotes");

        public static final String NEXT_ACTION = say("folder.file.quotes.next");

        private static final long serialVersionUID = 1L;
        private final int line;

        /**
         * @param quoted a cell in quotation marks; @param doubled one with quotation marks in it, bare of what is
         *     around it
         */
        public static String expected(String quoted, String doubled) {
            return say("folder.file.quotes.expected", "quoted", quoted, "doubled", doubled);
        }

        private Uneven(int line) {
            super("quotation marks do not fit in line " + line);
            this.line = line;
        }

        public int line() {
            return line;
        }
    }

    /**
     * @param text with line feeds only
     * @param firstLine the number of its first line
     * @return all rows, blank ones too
     * @throws Uneven at the first quotation mark that does not fit
     */
    public static List<Row> read(String text, char separator, int firstLine) throws Uneven {
        List<Row> rows = new ArrayList<>();
        each(text, separator, firstLine, rows::add);
        return rows;
    }

    /** The same one after another, so that a large table is never there as rows. */
    public static void each(String text, char separator, int firstLine, Consumer<Row> to) throws Uneven {
        CellRows reading = new CellRows(text, separator, firstLine);
        while (reading.at < text.length()) {
            to.accept(reading.row());
        }
    }

    /**
     * A text in lines, without what spreadsheets put before it: a byte order mark, a line {@code sep=;}. That line is
     * left empty, so that the others keep their numbers.
     *
     * @param separator that of {@code sep=}, if there is one
     */
    public record Lines(String text, Optional<Character> separator) {
        private static final String SEPARATOR = "sep=";

        public static Lines of(String written) {
            String plain = written.startsWith("\uFEFF") ? written.substring(1) : written;
            String text = plain.replace("\r\n", "\n").replace('\r', '\n');
            int end = text.indexOf('\n');
            String first = (end < 0 ? text : text.substring(0, end)).strip().replace("\"", "");
            boolean told = AsciiCase.small(first).startsWith(SEPARATOR) && first.length() == SEPARATOR.length() + 1;
            boolean tab = end == SEPARATOR.length() + 1 && text.charAt(end - 1) == '\t';
            if (end < 0 || !told && !(tab && AsciiCase.small(text).startsWith(SEPARATOR))) {
                return new Lines(text, Optional.empty());
            }
            return new Lines(text.substring(end), Optional.of(tab ? '\t' : first.charAt(SEPARATOR.length())));
        }
    }

    /**
     * What separates the cells. Spreadsheets of countries with a decimal comma separate by semicolons, some by tabs:
     * the first line tells, and where that has several of them, the one whose cells are such a first line.
     *
     * @param fits whether the first row may look like this
     */
    public static char separator(Lines lines, Predicate<Row> fits) {
        if (lines.separator().isPresent()) {
            return lines.separator().get();
        }
        int from = 0;
        String text = lines.text();
        while (from < text.length()) {
            int end = text.indexOf('\n', from);
            String line = text.substring(from, end < 0 ? text.length() : end);
            if (!line.isBlank()) {
                return ofLine(line, fits);
            }
            from += line.length() + 1;
        }
        return ',';
    }

    private static char ofLine(String line, Predicate<Row> fits) {
        char found = 0;
        for (char separator : SEPARATORS) {
            if (line.indexOf(separator) < 0) {
                continue;
            }
            found = found == 0 ? separator : found;
            try {
                List<Row> rows = read(line, separator, 1);
                if (fits.test(rows.get(0))) {
                    return separator;
                }
            } catch (Uneven notThisOne) {
                // The next may divide it; if none does, reading the text tells the fault with its line.
                continue;
            }
        }
        return found == 0 ? ',' : found;
    }

    private Row row() throws Uneven {
        int begun = line;
        List<String> cells = new ArrayList<>();
        cells.add(cell());
        while (at < text.length() && text.charAt(at) == separator) {
            at++;
            cells.add(cell());
        }
        at++;
        line++;
        return new Row(begun, cells);
    }

    /** Ends before a separator, a line feed or the end of the text. */
    private String cell() throws Uneven {
        if (at < text.length() && text.charAt(at) == '"') {
            return quoted();
        }
        int from = at;
        while (isWithinCell()) {
            at++;
        }
        return text.substring(from, at);
    }

    private String quoted() throws Uneven {
        int opened = line;
        StringBuilder out = new StringBuilder();
        at++;
        while (true) {
            if (at >= text.length()) {
                throw new Uneven(opened);
            }
            char c = text.charAt(at++);
            if (c != '"') {
                line += c == '\n' ? 1 : 0;
                out.append(c);
            } else if (at < text.length() && text.charAt(at) == '"') {
                out.append('"');
                at++;
            } else {
                break;
            }
        }
        for (; isWithinCell(); at++) {
            if (!Character.isWhitespace(text.charAt(at))) {
                throw new Uneven(line);
            }
        }
        return out.toString();
    }

    private boolean isWithinCell() {
        return at < text.length() && text.charAt(at) != separator && text.charAt(at) != '\n';
    }
}
