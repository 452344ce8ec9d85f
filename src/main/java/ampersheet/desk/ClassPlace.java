package ampersheet.desk;

import static ampersheet.source.Told.count;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.issue.CourseFolder;
import ampersheet.sheet.PastedClass;
import ampersheet.sheet.Roster;
import ampersheet.sheet.RosterReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Who is in the class. */
final class ClassPlace {
    private final CourseSet set;
    private final Frame frame;

    ClassPlace(CourseSet set, Frame frame) {
        this.set = set;
        this.frame = frame;
    }

    Reply show(Call call) {
        return show(call, Reply.FINE, Optional.empty(), List.of());
    }

    /** @param typed what was pasted and is not kept yet */
    private Reply show(Call call, int status, Optional<String> typed, List<Diagnostic> faults) {
        Course.Kept kept = new Course.Kept("", Course.Kept.NONE);
        List<Diagnostic> all = new ArrayList<>(faults);
        Optional<Roster> roster = Optional.empty();
        try {
            kept = set.course().read(CourseFolder.CLASS);
            roster = set.roster();
        } catch (DiagnosticException broken) {
            if (typed.isEmpty()) {
                all.addAll(broken.diagnostics()); // otherwise line numbers would be of two texts
            }
        }
        Map<String, Object> values = Pages.values(
                "isThere", kept.isThere(),
                "version", kept.version(),
                "text", kept.text(),
                "typed", typed.orElse(""),
                "faults", Frame.told(all),
                "canUndo", set.course().canUndo(CourseFolder.CLASS),
                "columns", roster.map(Roster::columns).orElse(List.of()),
                "remarks", Frame.told(roster.map(Roster::remarks).orElse(List.of())),
                "seats",
                        roster.map(Roster::seats).orElse(List.of()).stream()
                                .map(seat -> Pages.values(
                                        "number", seat.number(), "name", seat.name(), "further", seat.further()))
                                .toList());
        return frame.page(status, call, "class", "class", values);
    }

    /** A list that was pasted or sent as a file. */
    Reply paste(Call call) {
        String seen = call.form().text("seen");
        String pasted = call.form().lines("names");
        try {
            List<String> told = new ArrayList<>();
            if (pasted.isBlank()) {
                pasted = call.uploads().isEmpty()
                        ? ""
                        : Received.table(call.uploads().get(0).bytes());
            }
            Roster roster = PastedClass.read(pasted);
            int seats = roster.seats().size();
            told.add(count("desk.class.kept", seats));
            String text = PastedClass.written(roster);
            // Of the list that is kept: what is pasted without seats gets them here.
            RosterReader.read(CourseFolder.CLASS, text).remarks().forEach(remark -> told.add(Frame.said(remark)));
            try {
                set.course().write(CourseFolder.CLASS, text, seen);
            } catch (Course.Stale stale) {
                return frame.stale(call, "class", stale, text);
            }
            return frame.goOn("/class", told);
        } catch (DiagnosticException unfit) {
            return show(call, Reply.NOT_FITTING, Optional.of(pasted), unfit.diagnostics());
        }
    }

    Reply undo() {
        return frame.undone(set.course().undo(CourseFolder.CLASS), "/class", CourseFolder.CLASS);
    }
}
