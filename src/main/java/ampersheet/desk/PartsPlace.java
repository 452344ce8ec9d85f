package ampersheet.desk;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.issue.CourseFolder;
import ampersheet.problem.Inventory;
import ampersheet.sheet.PartsReader;
import ampersheet.source.CellRows;
import java.util.List;
import java.util.Optional;

/** What the bins of the workshop hold, from which sheets that are to be built are made. */
final class PartsPlace {
    private static final String PAGE = "parts";

    private final CourseSet set;
    private final Frame frame;

    PartsPlace(CourseSet set, Frame frame) {
        this.set = set;
        this.frame = frame;
    }

    Reply show(Call call) {
        return show(call, Reply.FINE, Optional.empty(), List.of());
    }

    /** @param typed what was sent and is not kept yet */
    private Reply show(Call call, int status, Optional<String> typed, List<Diagnostic> unfit) {
        Course.Kept kept = new Course.Kept("", Course.Kept.NONE);
        List<Diagnostic> faults = unfit;
        List<List<String>> rows = List.of();
        boolean canUndo = false;
        try {
            kept = set.course().read(CourseFolder.PARTS);
            canUndo = set.course().canUndo(CourseFolder.PARTS);
            if (kept.isThere() && typed.isEmpty()) {
                set.parts();
                rows = rows(kept.text());
            }
        } catch (DiagnosticException broken) {
            faults = typed.isEmpty() ? broken.diagnostics() : unfit;
        }
        String text = typed.orElse(kept.text());
        return frame.page(
                status,
                call,
                "set",
                PAGE,
                Pages.values(
                        "isThere", kept.isThere(),
                        "isTyped", typed.isPresent(),
                        "version", kept.version(),
                        "text", text,
                        "marked", FaultyText.of(CourseFolder.PARTS, text, faults),
                        "rows", rows,
                        "canUndo", canUndo));
    }

    /** As they are written, without blank lines. */
    private static List<List<String>> rows(String text) {
        CellRows.Lines lines = CellRows.Lines.of(text);
        char separator = CellRows.separator(lines, row -> row.names().contains("kind"));
        try {
            return CellRows.read(lines.text(), separator, 1).stream()
                    .filter(row -> !row.isBlank())
                    .map(CellRows.Row::cells)
                    .toList();
        } catch (CellRows.Uneven broken) {
            return List.of(); // its reader has told of it
        }
    }

    /** A list that was typed or sent as a file; kept only if it can be read. */
    Reply keep(Call call) {
        String text = call.form().lines("text");
        try {
            if (!call.uploads().isEmpty()) {
                text = CellRows.Lines.of(Received.table(call.uploads().get(0).bytes()))
                        .text();
            }
            Inventory parts = PartsReader.read(CourseFolder.PARTS, text);
            int bins = parts.bins().size();
            int meters = parts.meters().size();
            set.course().write(CourseFolder.PARTS, text, call.form().text("seen"));
            return frame.goOn(
                    "/" + PAGE,
                    List.of("Kept: " + bins + (bins == 1 ? " bin" : " bins")
                            + (meters == 0 ? "." : " and " + meters + (meters == 1 ? " meter." : " meters."))));
        } catch (DiagnosticException unfit) {
            return show(call, Reply.NOT_FITTING, Optional.of(text), unfit.diagnostics());
        } catch (Course.Stale stale) {
            return frame.stale(call, PAGE, stale, text);
        }
    }

    Reply undo() {
        return frame.undone(set.course().undo(CourseFolder.PARTS), "/" + PAGE, "change", CourseFolder.PARTS);
    }
}
