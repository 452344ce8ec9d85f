package ampersheet.desk;

import static ampersheet.source.Told.count;
import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.issue.CourseFolder;
import ampersheet.problem.Inventory;
import ampersheet.sheet.PartsReader;
import ampersheet.sheet.PlanText;
import ampersheet.source.CellRows;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What the bins of the workshop hold, from which sheets that are to be built are made. */
final class PartsPlace {
    private static final String PAGE = "parts";
    /** Empty rows of the table, to be filled. */
    private static final int WAITING = 2;

    private static final int WAITING_FIRST = 6;

    private final CourseSet set;
    private final Frame frame;

    PartsPlace(CourseSet set, Frame frame) {
        this.set = set;
        this.frame = frame;
    }

    /**
     * Something that was sent and is not kept.
     *
     * @param rows those of the table; without columns where a text was sent
     */
    private record Typed(String text, PartsRows rows) {}

    Reply show(Call call) {
        return show(call, Reply.FINE, Optional.empty(), List.of());
    }

    private Reply show(Call call, int status, Optional<Typed> typed, List<Diagnostic> unfit) {
        Course.Kept kept = new Course.Kept("", Course.Kept.NONE);
        List<Diagnostic> faults = unfit;
        boolean canUndo = false;
        try {
            kept = set.course().read(CourseFolder.PARTS);
            canUndo = set.course().canUndo(CourseFolder.PARTS);
            if (kept.isThere() && typed.isEmpty()) {
                set.parts();
            }
        } catch (DiagnosticException broken) {
            faults = typed.isEmpty() ? broken.diagnostics() : unfit;
        }
        String text = typed.map(Typed::text).orElse(kept.text());
        PartsRows rows = typed.map(Typed::rows).orElse(PartsRows.of(kept.text()));
        List<Map<String, Object>> shown = List.of();
        if (rows.isTable()) {
            shown = rows.shown(faults, rows.rows().isEmpty() ? WAITING_FIRST : WAITING);
        }
        return frame.page(
                status,
                call,
                PAGE,
                PAGE,
                Pages.values(
                        "isThere", kept.isThere(),
                        "isTyped", typed.isPresent(),
                        "version", kept.version(),
                        "text", text,
                        "marked", FaultyText.of(CourseFolder.PARTS, text, faults),
                        "rows", shown,
                        "lines", rows.rows().size(),
                        "keeping", keeping(set),
                        "canUndo", canUndo));
    }

    /** A list that was typed into the table or as text, or sent as a file; kept only if it can be read. */
    Reply keep(Call call) {
        Typed typed = new Typed(call.form().lines("text"), PartsRows.NO_TABLE);
        try {
            if (call.form().has("table")) {
                Course.Kept now = set.course().read(CourseFolder.PARTS);
                if (!now.version().equals(call.form().text("seen"))) {
                    throw new Course.Stale(CourseFolder.PARTS, now);
                }
                PartsRows rows = PartsRows.of(now.text()).typed(call.form());
                typed = new Typed(rows.text(), rows);
                if (call.form().has("more")) {
                    return show(call, Reply.FINE, Optional.of(typed), List.of());
                }
            } else if (!call.uploads().isEmpty()) {
                typed = new Typed(
                        CellRows.Lines.of(Received.table(call.uploads().get(0).bytes()))
                                .text(),
                        typed.rows());
            }
            Inventory parts = PartsReader.read(CourseFolder.PARTS, typed.text());
            int bins = parts.bins().size();
            int meters = parts.meters().size();
            set.course().write(CourseFolder.PARTS, typed.text(), call.form().text("seen"));
            return frame.goOn(
                    "/" + PAGE,
                    List.of(
                            meters == 0
                                    ? count("desk.parts.kept", bins)
                                    : say(
                                            "desk.parts.kept.both",
                                            "bins",
                                            count("desk.parts.bins", bins),
                                            "meters",
                                            count("desk.parts.meters", meters))));
        } catch (DiagnosticException unfit) {
            return show(call, Reply.NOT_FITTING, Optional.of(typed), unfit.diagnostics());
        } catch (Course.Stale stale) {
            return frame.stale(call, PAGE, stale, typed.text());
        }
    }

    Reply undo() {
        return frame.undone(set.course().undo(CourseFolder.PARTS), "/" + PAGE, CourseFolder.PARTS);
    }

    /** Whether sheets keep to the parts, for every page that shows it; the plan alone says so. */
    static Map<String, Object> keeping(CourseSet set) {
        boolean on = false;
        String version = Course.Kept.NONE;
        try {
            Course.Kept plan = set.course().read(CourseFolder.PLAN);
            version = plan.version();
            on = plan.isThere() && set.plan(plan.text()).parts().isPresent();
        } catch (DiagnosticException broken) {
            version = Course.Kept.NONE; // the place of the set tells what is wrong
        }
        return Pages.values(
                "on",
                on,
                "isListed",
                set.course().isThere(CourseFolder.PARTS),
                "isPlanned",
                !version.equals(Course.Kept.NONE),
                "version",
                version);
    }

    /** Has all sheets keep to the parts from now on, or to none. */
    Reply use(Call call) {
        String back = call.form().text("back");
        String place = List.of("give-out", PAGE).contains(back) ? back : "set";
        boolean on = call.form().text("use").equals("yes");
        Course.Kept now = set.course().read(CourseFolder.PLAN);
        try {
            if (!now.version().equals(call.form().text("plan"))) {
                throw new Course.Stale(CourseFolder.PLAN, now);
            }
            PlanText.Edited edited =
                    PlanText.of(CourseFolder.PLAN, now.text()).with("parts", on ? CourseFolder.PARTS : "");
            set.requireBuildable(set.plan(edited.text()));
            set.course().write(CourseFolder.PLAN, edited.text(), now.version());
            return frame.goOn(
                    "/" + place,
                    List.of(on ? say("desk.parts.on") : say("desk.parts.off"), say("desk.parts.switched")));
        } catch (DiagnosticException unfit) {
            return frame.unfit(call, place, on ? say("desk.parts.unfit") : say("desk.unkept"), unfit);
        } catch (Course.Stale stale) {
            return frame.stale(call, "set", stale, "");
        }
    }
}
