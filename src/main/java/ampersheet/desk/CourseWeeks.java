package ampersheet.desk;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.issue.CourseFolder;
import ampersheet.issue.CourseSeed;
import ampersheet.issue.Forecast;
import ampersheet.sheet.CoursePlan;
import ampersheet.sheet.CoursePlanReader;
import ampersheet.sheet.IssuedArchive;
import ampersheet.sheet.Plan;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.SheetMaker;
import ampersheet.sheet.Timetable;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.locks.ReentrantLock;

/** What the weeks of a course mean, read as the commands read them. Made once and kept until a file changes. */
final class CourseWeeks {
    /** Stands in a state before the archives. */
    private static final String LIES_OUT = "\n\nlies out\n";

    private final CourseSet set;
    /** Weeks are worked out one after the other, so that whatever else is asked for meanwhile gets its turn. */
    private final ReentrantLock turn = new ReentrantLock();

    private Read read = new Read("", null);
    private Read issued = new Read("", null);

    /** @param of all that it depends on */
    private record Read(
            String of, Timetable timetable, Map<Integer, SheetMaker> makers, Map<Integer, Forecast> forecasts) {
        Read(String of, Timetable timetable) {
            this(of, timetable, new TreeMap<>(), new TreeMap<>());
        }

        /**
         * What is so now.
         *
         * @param sameCourse whether it follows from the same files, so that what was worked out of a week is kept if
         *     the week is the same
         */
        Read with(String state, Timetable weeks, boolean sameCourse) {
            Read now = new Read(state, weeks);
            for (int week = 1; sameCourse && week <= weeks.size(); week++) {
                if (weeks.week(week).written().equals(timetable.week(week).written())) {
                    now.keep(this, week);
                }
            }
            return now;
        }

        private void keep(Read before, int week) {
            Optional.ofNullable(before.makers.get(week)).ifPresent(maker -> makers.put(week, maker));
            synchronized (before.forecasts) {
                Optional.ofNullable(before.forecasts.get(week)).ifPresent(forecast -> forecasts.put(week, forecast));
            }
        }
    }

    CourseWeeks(CourseSet set) {
        this.set = set;
    }

    boolean isThere() {
        return set.course().isThere(CourseFolder.WEEKS);
    }

    private Path file() {
        return set.course().files().weeks();
    }

    /** What a text says that is not kept yet; the files that it names lie in the course. */
    private CoursePlan written(String text) {
        return CoursePlanReader.read(
                CourseFolder.WEEKS,
                text,
                PlanReader.Beside.in(set.course().files().folder()));
    }

    private CoursePlan written() {
        return written(set.course().read(CourseFolder.WEEKS).text());
    }

    /** @throws DiagnosticException with all faults of such a text */
    void check(String text) {
        CoursePlan course = written(text);
        new Timetable(course, set.library());
        set.parts(course.common());
    }

    /**
     * The weeks before anything of them is handed out; they get no seed.
     *
     * @throws DiagnosticException with all faults of the file
     */
    synchronized Timetable timetable() {
        return known().timetable();
    }

    private synchronized Read known() {
        CoursePlan course = written();
        set.parts(course.common());
        String state = state(course);
        String written = read.of();
        if (!state.equals(written)) {
            Timetable timetable =
                    CourseSeed.known(course, file(), set.library(), set.course().archives());
            read = read.with(state, timetable, isSameCourse(written, state));
        }
        return read;
    }

    private synchronized Read toHandOut() {
        CoursePlan course = written();
        if (!state(course).equals(issued.of())) {
            Timetable timetable = CourseSeed.issued(
                            course, file(), set.library(), set.course().archives())
                    .timetable();
            String state = state(course); // a seed may have been drawn
            issued = issued.with(state, timetable, isSameCourse(issued.of(), state));
        }
        return issued;
    }

    private String state(CoursePlan course) {
        set.library();
        StringBuilder state = new StringBuilder(set.state(CourseFolder.WEEKS, course.common()))
                .append("\n\n")
                .append(learners(course.seats()))
                .append(LIES_OUT);
        set.course()
                .archives()
                .forEach(archive -> state.append(archive)
                        .append(' ')
                        .append(set.course().state(archive))
                        .append('\n'));
        return state.toString();
    }

    /** Whether nothing else has changed between two states than what lies out. */
    private static boolean isSameCourse(String before, String now) {
        return before.contains(LIES_OUT)
                && before.substring(0, before.lastIndexOf(LIES_OUT))
                        .equals(now.substring(0, now.lastIndexOf(LIES_OUT)));
    }

    /** So many sheets are looked at: those of the class, as far as the weeks keep numbers. */
    int learners(int seats) {
        int learners = set.learners();
        return Math.min(seats, learners == 0 ? Forecast.USUAL_LEARNERS : learners);
    }

    /** @throws DiagnosticException if there is no such week */
    int requireWeek(int number) {
        timetable().noSuchWeek(number).ifPresent(told -> {
            throw new DiagnosticException(told);
        });
        return number;
    }

    /** By when a week is handed in, in whatever words; empty if nothing is said. */
    String due(int week) {
        Timetable timetable = timetable();
        return week > timetable.size() ? "" : timetable.week(week).heading().due();
    }

    /** The sheets of a week, as they are handed out. */
    synchronized SheetMaker maker(int week) {
        return toHandOut().makers().computeIfAbsent(week, number -> new SheetMaker(sheets(number)));
    }

    /** With what the sheet IDs of a week begin, as its sheets would be made now; another one means other numbers. */
    String code(int week) {
        Plan plan = timetable().week(week);
        return IssuedArchive.set(IssuedArchive.fileName(ProblemSet.of(plan, set.library(), set.parts(plan))));
    }

    private ProblemSet sheets(int week) {
        Plan plan = toHandOut().timetable().week(week);
        return ProblemSet.of(plan, set.library(), set.parts(plan));
    }

    /**
     * What a week will give the class; empty while another week is being worked out.
     *
     * @param waits until its turn comes
     */
    Optional<Forecast> forecast(int week, boolean waits) {
        Read now = known();
        Optional<Forecast> known = worked(now, week);
        if (known.isPresent()) {
            return known;
        }
        if (waits) {
            turn.lock();
        } else if (!turn.tryLock()) {
            return Optional.empty();
        }
        try {
            Optional<Forecast> meanwhile = worked(now, week);
            if (meanwhile.isPresent()) {
                return meanwhile;
            }
            Forecast made = forecast(now.timetable(), week);
            synchronized (now.forecasts()) {
                now.forecasts().put(week, made);
            }
            return Optional.of(made);
        } finally {
            turn.unlock();
        }
    }

    private static Optional<Forecast> worked(Read now, int week) {
        synchronized (now.forecasts()) {
            return Optional.ofNullable(now.forecasts().get(week));
        }
    }

    private Forecast forecast(Timetable timetable, int week) {
        Plan plan = timetable.week(week);
        return Forecast.of(
                ProblemSet.of(plan, set.library(), set.parts(plan)),
                learners(timetable.course().seats()),
                Optional.of(Forecast.usualPaper(plan)));
    }

    /** A week, as something to give out from. */
    Source source(int week) {
        return new Source() {
            @Override
            public Path file() {
                return CourseWeeks.this.file();
            }

            @Override
            public CourseFolder.Made made() {
                return set.course().files().ofWeek(week);
            }

            @Override
            public ProblemSet sheets() {
                return CourseWeeks.this.sheets(week);
            }

            @Override
            public ProblemSet whateverTheParts() {
                return ProblemSet.of(toHandOut().timetable().week(week), set.library());
            }

            @Override
            public Ingredients ingredients() {
                Plan plan = timetable().week(week);
                return set.ingredients(CourseFolder.WEEKS, Course.version(plan.written()), Optional.of(plan));
            }
        };
    }
}
