package ampersheet.desk;

import static ampersheet.source.Told.count;
import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.figure.Figure;
import ampersheet.issue.CourseFigure;
import ampersheet.issue.CourseFolder;
import ampersheet.issue.CourseStart;
import ampersheet.issue.Forecast;
import ampersheet.issue.ForecastWords;
import ampersheet.render.html.Fragment;
import ampersheet.sheet.CoursePlan;
import ampersheet.sheet.Document;
import ampersheet.sheet.Plan;
import ampersheet.sheet.Timetable;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The weeks of a course: what is met when, and what each week will give the class. */
final class WeeksPlace {
    static final String PLACE = "weeks";
    static final String HERE = "/" + PLACE;
    private static final int USUAL_WEEKS = 4;

    private final CourseSet set;
    private final CourseWeeks weeks;
    private final GivenOut given;
    private final Frame frame;

    WeeksPlace(CourseSet set, CourseWeeks weeks, GivenOut given, Frame frame) {
        this.set = set;
        this.weeks = weeks;
        this.given = given;
        this.frame = frame;
    }

    Reply show(Call call) {
        return show(call, Reply.FINE, Optional.empty(), List.of());
    }

    /**
     * The place with a text that is not kept yet.
     *
     * @param typed the text; empty for that of the file
     * @param faults of that text
     */
    private Reply show(Call call, int status, Optional<String> typed, List<Diagnostic> faults) {
        Course.Kept kept = set.course().read(CourseFolder.WEEKS);
        Optional<Timetable> timetable = Optional.empty();
        List<Diagnostic> unfit = faults;
        if (kept.isThere() && typed.isEmpty()) {
            try {
                timetable = Optional.of(weeks.timetable());
            } catch (DiagnosticException broken) {
                unfit = broken.diagnostics();
            }
        }
        Map<String, Object> values = Pages.values(
                "isThere", kept.isThere(),
                "version", kept.version(),
                "text", typed.orElse(kept.text()),
                "isTyped", typed.isPresent(),
                "marked", FaultyText.of(CourseFolder.WEEKS, typed.orElse(kept.text()), unfit),
                "canUndo", set.course().canUndo(CourseFolder.WEEKS),
                "hasPlan", set.course().isThere(CourseFolder.PLAN),
                "usual", USUAL_WEEKS,
                "most", CoursePlan.MOST_WEEKS,
                "isFitting", timetable.isPresent());
        timetable.ifPresent(read -> values.putAll(read(read)));
        return frame.page(status, call, PLACE, PLACE, values);
    }

    private Map<String, Object> read(Timetable timetable) {
        CoursePlan course = timetable.course();
        int learners = weeks.learners(course.seats());
        List<Map<String, Object>> all = new ArrayList<>();
        for (int week = 1; week <= timetable.size(); week++) {
            all.add(week(timetable, week));
        }
        return Pages.values(
                "title", course.common().title(),
                "code", course.common().language().code(),
                "figure", html(timetable, CourseFigure.of(timetable), "weeks-"),
                "narrow", html(timetable, CourseFigure.narrow(timetable), "narrow-"),
                "remarks", ForecastWords.remarks(timetable),
                "all", all,
                "learners", learners,
                "looked", count("desk.weeks.looked", learners),
                "seats", course.seats(),
                "estimate", say("folder.forecast.estimate"));
    }

    private static Object html(Timetable timetable, Figure figure, String prefix) {
        return Pages.html(Fragment.printed(
                new Document(
                        Document.Kind.SHEET,
                        timetable.course().common().language(),
                        "",
                        "",
                        "",
                        Document.Paper.A4,
                        List.of(new Document.FigureBlock(figure))),
                prefix,
                2));
    }

    /** What is known of a week before its sheets are drawn. */
    static Map<String, Object> week(Timetable timetable, int number) {
        Plan plan = timetable.week(number);
        return Pages.values(
                "number", number,
                "date", plan.heading().date(),
                "due", plan.heading().due(),
                "title", plan.title(),
                "name", timetable.course().weeks().get(number - 1).title(),
                "met", told(ForecastWords.met(timetable, number)));
    }

    private static List<Map<String, Object>> told(List<ForecastWords.Line> lines) {
        return lines.stream()
                .map(line -> Pages.values("label", Frame.capital(line.label()), "text", line.text()))
                .toList();
    }

    /** What a week will give the class; for the script of a page, one week after the other. */
    Reply forecast(Call call) {
        int number = call.query().number("week").orElse(1);
        if (call.part()) {
            return frame.part("week-forecast", forecast(number));
        }
        Map<String, Object> week = week(weeks.timetable(), weeks.requireWeek(number));
        Map<String, Object> values = forecast(number);
        values.put("week", week);
        return frame.page(Reply.FINE, call, PLACE, "week-alone", values);
    }

    private Map<String, Object> forecast(int number) {
        Optional<Forecast> forecast = Optional.empty();
        List<Diagnostic> faults = List.of();
        try {
            forecast = weeks.forecast(number);
        } catch (DiagnosticException unfit) {
            faults = unfit.diagnostics();
        }
        return Pages.values(
                "number", number,
                "waits", forecast.isEmpty() && faults.isEmpty(),
                "faults", Frame.told(faults),
                "lines", forecast.map(known -> told(ForecastWords.of(known))).orElse(List.of()),
                "warnings", forecast.map(Forecast::warnings).orElse(List.of()));
    }

    /** Weeks to begin with; what is there stays. */
    Reply start(Call call) {
        Optional<LocalDate> first = date(call.form().text("first"));
        if (first.isEmpty()) {
            return frame.goOn(HERE, List.of(say("desk.weeks.first")));
        }
        Optional<Plan> plan = plan();
        CourseStart.Weeks made = CourseStart.weeks(
                plan,
                first.get(),
                call.form().number("weeks", 1, CoursePlan.MOST_WEEKS, USUAL_WEEKS),
                set.lastSeat(),
                set.library());
        try {
            set.course().write(CourseFolder.WEEKS, made.text(), Course.Kept.NONE);
        } catch (Course.Stale stale) {
            return frame.goOn(HERE, List.of(say("desk.weeks.there")));
        }
        return frame.goOn(HERE, begun(plan.isPresent(), made.unfit()));
    }

    private static List<String> begun(boolean hasPlan, List<Diagnostic> unfit) {
        if (unfit.isEmpty()) {
            return List.of(say(hasPlan ? "desk.weeks.begun.plan" : "desk.weeks.begun.usual"));
        }
        List<String> told = new ArrayList<>(List.of(say("desk.weeks.begun.instead")));
        unfit.forEach(fault ->
                told.add(say("desk.weeks.begun.why", "problem", fault.problem(), "expected", fault.expected())));
        return told;
    }

    private static Optional<LocalDate> date(String written) {
        try {
            return Optional.of(LocalDate.parse(written));
        } catch (DateTimeParseException unreadable) {
            return Optional.empty();
        }
    }

    /** What the set says now; empty while it says nothing that can be read. */
    private Optional<Plan> plan() {
        try {
            return set.course().isThere(CourseFolder.PLAN) ? Optional.of(set.plan()) : Optional.empty();
        } catch (DiagnosticException broken) {
            return Optional.empty(); // the place of the set tells
        }
    }

    Reply text(Call call) {
        String typed = call.form().lines("text");
        try {
            weeks.check(typed);
            set.course().write(CourseFolder.WEEKS, typed, call.form().text("seen"));
            return frame.goOn(HERE, kept(weeks, given));
        } catch (DiagnosticException unfit) {
            return show(call, Reply.NOT_FITTING, Optional.of(typed), unfit.diagnostics());
        } catch (Course.Stale stale) {
            return frame.stale(call, PLACE, stale, typed);
        }
    }

    /** What there is to tell when the weeks were changed. */
    static List<String> kept(CourseWeeks weeks, GivenOut given) {
        List<String> told = new ArrayList<>(List.of(say("desk.weeks.kept")));
        told.addAll(ChangedWeeks.of(given.all(), weeks).told());
        return told;
    }

    Reply undo() {
        return frame.undone(set.course().undo(CourseFolder.WEEKS), HERE, CourseFolder.WEEKS);
    }
}
