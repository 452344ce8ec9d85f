package ampersheet.marking;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Place;
import ampersheet.language.Saying;
import ampersheet.source.CellRows;
import java.util.List;

/** The lines of a file, and what is wrong in them. */
final class TextLines {
    /** Longer than any answer, and than any line a sheet has. */
    static final int LONGEST_ANSWER = 200;

    private final String file;
    private final boolean quoting;
    private final List<String> lines;
    private final CellRows.Lines joined;
    private final FileFaults faults;

    private TextLines(String file, String text, boolean quoting) {
        this.file = file;
        this.quoting = quoting;
        this.joined = CellRows.Lines.of(text);
        this.lines = List.of(joined.text().split("\n", -1));
        this.faults = new FileFaults(file);
    }

    /** Of a file that came in. */
    static TextLines of(String file, String text, Privacy privacy) {
        // A line quoted from a file may hold anything.
        return new TextLines(file, text, !privacy.isOn());
    }

    /** Of a list that the instructor keeps, or a table of an earlier run. */
    static TextLines ofOwn(String file, String text) {
        return new TextLines(file, text, true);
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
        return new Place(file, line, 0, line == 0 || !quoting ? "" : line(line));
    }

    void fault(int line, Saying problem, String expected, String nextAction) {
        faults.addError(() -> FileFault.error(place(line), problem, expected, nextAction));
    }

    /** Of what only whoever runs the command is told. */
    void fault(int line, String problem, String expected, String nextAction) {
        fault(line, FileFault.asItIs(problem), expected, nextAction);
    }

    void warning(int line, Saying problem, String nextAction) {
        faults.add(FileFault.warning(place(line), problem, nextAction));
    }

    boolean hasFaults() {
        return !faults.isEmpty();
    }

    FileFaults faults() {
        return faults;
    }

    /** Whether an answer is fit to be judged; if not, its fault is noted. */
    boolean isPlain(String answer, int line) {
        if (answer.length() > LONGEST_ANSWER) {
            fault(
                    line,
                    Saying.of("report.file.long-answer", "count", Integer.toString(answer.length())),
                    say("folder.answers.answer"),
                    say("folder.answers.long-answer.next"));
            return false;
        }
        boolean plain = answer.codePoints().noneMatch(c -> c < ' ' && c != '\t' || c == 0x7F || c == 0xFFFD);
        if (!plain) {
            fault(
                    line,
                    Saying.of("report.file.odd-character"),
                    say("folder.answers.answer"),
                    say("folder.answers.odd-character.next"));
        }
        return plain;
    }
}
