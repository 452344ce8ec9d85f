package ampersheet.marking;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.Place;
import ampersheet.source.CellRows;
import ampersheet.source.FaultList;
import java.util.List;

/** The lines of a file, and what is wrong in them. */
final class TextLines {
    /** Longer than any answer, and than any line a sheet has. */
    static final int LONGEST_ANSWER = 200;

    private final String file;
    private final Privacy privacy;
    private final List<String> lines;
    private final CellRows.Lines joined;
    private final FaultList faults;

    TextLines(String file, String text, Privacy privacy) {
        this.file = file;
        this.privacy = privacy;
        this.joined = CellRows.Lines.of(text);
        this.lines = List.of(joined.text().split("\n", -1));
        this.faults = new FaultList(file);
    }

    /** From 1. */
    String line(int number) {
        return lines.get(number - 1);
    }

    int count() {
        return lines.size();
    }

    boolean isBlank() {
        return joined.text().isBlank();
    }

    CellRows.Lines text() {
        return joined;
    }

    Place place(int line) {
        return new Place(file, line, 0, line == 0 ? "" : privacy.line(line(line)));
    }

    void fault(int line, String problem, String expected, String nextAction) {
        faults.addError(() -> Diagnostic.error(place(line), problem, expected, nextAction));
    }

    void warning(int line, String problem, String nextAction) {
        faults.add(Diagnostic.warning(place(line), problem, "", nextAction));
    }

    boolean hasFaults() {
        return !faults.isEmpty();
    }

    FaultList faults() {
        return faults;
    }

    /** Whether an answer is fit to be judged; if not, its fault is noted. */
    boolean isPlain(String answer, int line) {
        if (answer.length() > LONGEST_ANSWER) {
            fault(
                    line,
                    "this answer has " + answer.length() + " characters",
                    "a number with its unit, or an option",
                    "Look at the file; if an answer is in it, shorten the line to it and mark again.");
            return false;
        }
        boolean plain = answer.codePoints().noneMatch(c -> c < ' ' && c != '\t' || c == 0x7F || c == 0xFFFD);
        if (!plain) {
            fault(
                    line,
                    "this answer holds a character that no keyboard types",
                    "a number with its unit, or an option",
                    "The file was damaged on its way: ask for it again, or type the answer anew.");
        }
        return plain;
    }
}
