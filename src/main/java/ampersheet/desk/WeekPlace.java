package ampersheet.desk;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.issue.CourseFolder;
import ampersheet.marking.ReceivedList;
import ampersheet.sheet.CoursePlan;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.PlanText;
import ampersheet.sheet.Timetable;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentSkipListMap;

/** One week of a course: any seat's sheet, and what is given out of it. */
final class WeekPlace {
    private static final String PAGE = "weeks/week?week=";

    private final CourseSet set;
    private final CourseWeeks weeks;
    private final GivenOut given;
    private final Frame frame;
    private final Work work;
    private final SeatSheet seats;
    private final Map<Integer, MakingAt> makings = new ConcurrentSkipListMap<>();

    WeekPlace(CourseSet set, CourseWeeks weeks, GivenOut given, Frame frame, Work work) {
        this.set = set;
        this.weeks = weeks;
        this.given = given;
        this.frame = frame;
        this.work = work;
        this.seats = new SeatSheet(set, frame);
    }

    private int number(Call call) {
        return weeks.requireWeek(asked(call));
    }

    /** Nothing is changed of a week that was not named; 0 is none. */
    private static int asked(Call call) {
        return call.query().number("week").orElse(call.post() ? 0 : 1);
    }

    private MakingAt making(int week) {
        return makings.computeIfAbsent(
                week,
                number -> new MakingAt(
                        new MakingAt.Page(WeeksPlace.PLACE, PAGE + number, "/weeks/again?week=" + number),
                        set,
                        weeks.source(number),
                        frame,
                        work));
    }

    Reply show(Call call) {
        try {
            return show(call, weeks.timetable());
        } catch (DiagnosticException unfit) {
            return left(call, asked(call), unfit);
        }
    }

    /** What was made before of a week that the course does not have now, or cannot have. */
    private Reply left(Call call, int number, DiagnosticException unfit) {
        CourseFolder files = set.course().files();
        List<Map<String, Object>> left = new MadeThings(set.course(), weeks.source(number)).left();
        if (left.isEmpty()) {
            throw unfit;
        }
        Map<String, Object> values = Pages.values(
                "number", number,
                "faults", Frame.told(unfit.diagnostics()),
                "left", left,
                "lies", set.course().shown(files.ofWeek(number).folder()),
                "leftPath", files.ofWeek(number).folder().toString());
        return frame.page(Reply.NOT_FITTING, call, WeeksPlace.PLACE, "week-left", values);
    }

    private Reply show(Call call, Timetable timetable) {
        int number = CourseWeeks.requireWeek(timetable, asked(call));
        CourseFolder files = set.course().files();
        List<GivenOut.Sheets> all = given.all();
        Optional<GivenOut.Sheets> sheets = GivenOut.ofWeek(all, number).reduce((one, later) -> later);
        Marks marks = sheets.map(one -> Marks.of(set.course(), one, all))
                .orElseGet(() -> new Marks(set.course(), files.ofWeek(number).marked()));
        Map<String, Object> values = Pages.values(
                "week", WeeksPlace.week(timetable, number),
                "last", timetable.size(),
                "seats", timetable.course().seats(),
                "seat", call.query().number("seat", 1, SeatSheet.LAST_SEAT, seats.firstSeat()),
                "side", SeatSheet.isKey(call) ? "key" : "sheet",
                "hasClass", set.course().isThere(CourseFolder.CLASS),
                "learners", set.learners(),
                "lies", set.course().shown(files.ofWeek(number).folder()),
                "madePath", files.ofWeek(number).folder().toString(),
                "version", Course.version(timetable.course().common().written()),
                "problems", timetable.course().weeks().get(number - 1).problems(),
                "mostProblems", PlanReader.MOST_PROBLEMS,
                "isMarked", marks.areThere(),
                "marksLie", set.course().shown(marks.folder()),
                "marksGo",
                        set.course()
                                .shown(sheets.map(one -> Marks.to(set.course(), one, all))
                                        .orElse(marks)
                                        .folder()),
                "archive", sheets.map(GivenOut.Sheets::shown).orElse(""),
                "hasDecisions", set.course().isThere(CourseFolder.DECISIONS),
                "hasReceived", set.course().isThere(CourseFolder.RECEIVED),
                "due",
                        ReceivedList.time(sheets.filter(one -> !one.set().equals(weeks.code(number)))
                                        .map(GivenOut.Sheets::due)
                                        .orElseGet(() ->
                                                timetable.week(number).heading().due()))
                                .map(LocalDateTime::toString)
                                .orElse(""),
                "address", PAGE + number);
        values.putAll(making(number).values());
        return frame.page(Reply.FINE, call, WeeksPlace.PLACE, "week", values);
    }

    /** Keeps what a week is called and how many problems it has; everything else of the file stays as it is. */
    Reply about(Call call) {
        Timetable timetable = weeks.timetable();
        int number = CourseWeeks.requireWeek(timetable, asked(call));
        CoursePlan course = timetable.course();
        CoursePlan.Week week = course.weeks().get(number - 1);
        String title = call.form().text("title");
        int problems = call.form().number("problems", 1, PlanReader.MOST_PROBLEMS, week.problems());
        String text = course.common().written();
        try {
            if (!title.equals(week.title())) {
                text = with(text, number, "title", title);
            }
            if (problems != week.problems()) {
                text = with(text, number, "problems", problems == course.problems() ? "" : Integer.toString(problems));
            }
            weeks.check(text);
            set.course().write(CourseFolder.WEEKS, text, call.form().text("seen"));
            return frame.goOn("/" + PAGE + number, WeeksPlace.kept(weeks, given));
        } catch (DiagnosticException unfit) {
            return frame.unfit(call, WeeksPlace.PLACE, say("desk.weeks.unfit"), unfit);
        } catch (Course.Stale stale) {
            return frame.stale(call, WeeksPlace.PLACE, stale, text);
        }
    }

    private static String with(String text, int week, String key, String value) {
        return PlanText.of(CourseFolder.WEEKS, text)
                .withInItem("weeks", week - 1, key, value)
                .text();
    }

    /** The sheet of a seat, or its key. */
    Reply sheet(Call call) {
        int number = number(call);
        String which = "week=" + number;
        return seats.show(
                call,
                new SeatSheet.Around(
                        WeeksPlace.PLACE,
                        "/weeks/sheet?" + which + "&seat=",
                        "/weeks/print?" + which + "&seat=",
                        "",
                        "/" + PAGE + number),
                () -> weeks.maker(number));
    }

    /** The sheet of a seat as it comes out of the printer. */
    Reply print(Call call) {
        int number = number(call);
        return seats.print(call, WeeksPlace.PLACE, () -> weeks.maker(number));
    }

    /** Begins to make what was asked for. */
    Reply make(Call call) {
        return making(number(call)).make(call);
    }

    /** Begins the same once more, by what stands in the course now. */
    Reply again(Call call) {
        return making(number(call)).again(call);
    }
}
