package ampersheet.desk;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.issue.CourseFolder;
import ampersheet.issue.CourseSeed;
import ampersheet.issue.Forecast;
import ampersheet.issue.SeedFile;
import ampersheet.problem.Inventory;
import ampersheet.sheet.CoursePlan;
import ampersheet.sheet.CoursePlanReader;
import ampersheet.sheet.Plan;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.SheetMaker;
import ampersheet.sheet.Timetable;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.locks.ReentrantLock;

/** What the weeks of a course mean, read as the commands read them. Made once and kept until a file changes. */
final class CourseWeeks {
    private final CourseSet set;
    /** Weeks are worked out one after the other, so that whatever else is asked for meanwhile gets its turn. */
    private final ReentrantLock turn = new ReentrantLock();

    private Optional<Read> read = Optional.empty();
    private Optional<Read> issued = Optional.empty();

    /**
     * All that the weeks depend on, each looked at once: what is made of it is never taken for what a file says that
     * was written meanwhile.
     */
    private record Found(
            CoursePlan course,
            Optional<Inventory> parts,
            CourseSet.Templates templates,
            int learners,
            Map<Path, String> liesOut) {
        /** @param other the same course with its seed */
        Found with(CoursePlan other) {
            return new Found(other, parts, templates, learners, liesOut);
        }

        List<Path> archives() {
            return List.copyOf(liesOut.keySet());
        }

        /** Of whatever else than what lies out. */
        String files() {
            return CourseSet.state(course.common(), parts, templates) + "\n\n" + learners;
        }
    }

    private record Read(
            Found found, Timetable timetable, Map<Integer, SheetMaker> makers, Map<Integer, Forecast> forecasts) {
        Read(Found found, Timetable timetable) {
            this(found.with(timetable.course()), timetable, new TreeMap<>(), new TreeMap<>());
        }

        boolean isOf(Found now) {
            return found.files().equals(now.files()) && found.liesOut().equals(now.liesOut());
        }

        /** @throws DiagnosticException if there is no such week */
        Plan week(int number) {
            return timetable.week(requireWeek(timetable, number));
        }

        ProblemSet sheets(int week) {
            return ProblemSet.of(week(week), found.templates().library(), found.parts());
        }

        /** What is so now; what was worked out of a week is kept if nothing has changed but what lies out. */
        Read keeping(Optional<Read> before) {
            before.filter(one -> one.found.files().equals(found.files())).ifPresent(one -> {
                for (int week = 1; week <= timetable.size(); week++) {
                    if (timetable
                            .week(week)
                            .written()
                            .equals(one.timetable.week(week).written())) {
                        keep(one, week);
                    }
                }
            });
            return this;
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

    /** With the seed that the weeks have, if they have one. */
    private Found found() {
        CoursePlan course = written(set.course().read(CourseFolder.WEEKS).text());
        Optional<Inventory> parts = set.parts(course.common());
        return new Found(
                course.with(SeedFile.known(course.common(), file())),
                parts,
                set.templates(),
                learners(course.seats()),
                liesOut());
    }

    private Map<Path, String> liesOut() {
        Map<Path, String> states = new LinkedHashMap<>();
        set.course()
                .archives()
                .forEach(archive -> states.put(archive, set.course().state(archive)));
        return states;
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
        Found now = found();
        if (read.filter(before -> before.isOf(now)).isEmpty()) {
            Timetable timetable =
                    CourseSeed.known(now.course(), file(), now.templates().library(), now.archives());
            read = Optional.of(new Read(now, timetable).keeping(read));
        }
        return read.get();
    }

    private synchronized Read toHandOut() {
        Found now = found();
        if (issued.filter(before -> before.isOf(now)).isEmpty()) {
            CourseSeed.Seeded seeded =
                    CourseSeed.issued(now.course(), file(), now.templates().library(), now.archives());
            issued = Optional.of(new Read(now, seeded.timetable()).keeping(issued));
        }
        return issued.get();
    }

    /** So many sheets are looked at: those of the class, as far as the weeks keep numbers. */
    int learners(int seats) {
        int learners = set.learners();
        return Math.min(seats, learners == 0 ? Forecast.USUAL_LEARNERS : learners);
    }

    /** @throws DiagnosticException if there is no such week */
    int requireWeek(int number) {
        return requireWeek(timetable(), number);
    }

    static int requireWeek(Timetable timetable, int number) {
        timetable.noSuchWeek(number).ifPresent(told -> {
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
        Read now = toHandOut();
        return now.makers().computeIfAbsent(week, number -> new SheetMaker(now.sheets(number)));
    }

    /** The sheets of a week as they would be made now; they get no seed. */
    ProblemSet sheets(int week) {
        return known().sheets(week);
    }

    /** With what the sheet IDs of a week begin, as its sheets would be made now. */
    String code(int week) {
        return sheets(week).id(1).set();
    }

    /** What a week will give the class; empty while another week is being worked out. */
    Optional<Forecast> forecast(int week) {
        Read now = known();
        Optional<Forecast> known = worked(now, week);
        if (known.isPresent()) {
            return known;
        }
        if (!turn.tryLock()) {
            return Optional.empty();
        }
        try {
            Optional<Forecast> meanwhile = worked(now, week);
            if (meanwhile.isPresent()) {
                return meanwhile;
            }
            Forecast made = forecast(now, week);
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

    private static Forecast forecast(Read now, int week) {
        ProblemSet sheets = now.sheets(week);
        return Forecast.of(sheets, now.found().learners(), Optional.of(Forecast.usualPaper(sheets.plan())));
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
                return toHandOut().sheets(week);
            }

            @Override
            public ProblemSet whateverTheParts() {
                Read now = toHandOut();
                return ProblemSet.of(now.week(week), now.found().templates().library());
            }

            @Override
            public Ingredients ingredients() {
                Plan plan = known().week(week);
                return set.ingredients(CourseFolder.WEEKS, Course.version(plan.written()), Optional.of(plan));
            }
        };
    }
}
