package ampersheet.command;

import static ampersheet.source.Told.count;
import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.Place;
import ampersheet.issue.CourseSeed;
import ampersheet.issue.KnownArchives;
import ampersheet.issue.SeedFile;
import ampersheet.sheet.CoursePlan;
import ampersheet.sheet.CoursePlanReader;
import ampersheet.sheet.IssuedPart;
import ampersheet.sheet.IssuedParts;
import ampersheet.sheet.Plan;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Retake;
import ampersheet.sheet.Timetable;
import ampersheet.template.TemplateLibrary;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;

/** The plan named on a command line, or the week of a course, with the seed that its sheets have. */
final class PlanFile {
    private final Path file;
    private final WeekOption week;
    private final TemplateLibrary library;
    /** Of what lies out, as far as it is known. */
    private final List<Path> archives;

    private final Optional<CoursePlan> course;
    /** As it is written, without a seed that lies beside it; of a course what its weeks have in common. */
    private final Plan written;

    PlanFile(Path file, WeekOption week, TemplateLibrary library) {
        this(file, week, library, KnownArchives.of(file));
    }

    /** @param out where something is made of it */
    PlanFile(Path file, WeekOption week, TemplateLibrary library, Path out) {
        this(file, week, library, KnownArchives.of(file, out));
    }

    private PlanFile(Path file, WeekOption week, TemplateLibrary library, List<Path> archives) {
        this.file = file;
        this.week = week;
        this.library = library;
        this.archives = archives;
        String text = text(file);
        course = isCourse(file, text) ? Optional.of(course(file, text)) : Optional.empty();
        written = course.map(CoursePlan::common).orElseGet(() -> plan(file, text));
    }

    /** Where it names a parts list, too. */
    Plan written() {
        return written;
    }

    /** For judging: the plan as it was issued. */
    Plan issued() {
        return course.map(weeks -> week(CourseSeed.known(weeks, file, library, archives)))
                .orElseGet(() -> SeedFile.known(written, file));
    }

    /**
     * For handing out: a plan without a seed gets one that nobody can guess, and keeps it.
     *
     * @param issuedByTitle whether an earlier version issued it to the same place, when the title was the seed
     */
    Plan toHandOut(Streams streams, Predicate<Plan> issuedByTitle) {
        return course.map(weeks -> told(toHandOut(weeks, streams), streams))
                .orElseGet(() -> told(
                        SeedFile.issued(written, file, issuedByTitle),
                        beside -> say("command.seed.plan", "file", beside),
                        streams));
    }

    /** The same for what is no sheet; a plan that does not fit its templates gets no seed. */
    Plan toHandOut(Streams streams) {
        return toHandOut(streams, plan -> {
            ProblemSet.of(plan, library);
            return false;
        });
    }

    /**
     * The same to be taken again, by those who need it; each time by the marks of the time before, or as the archive of
     * that time says, which does not change with the marks.
     *
     * @param lastSeat of the class
     * @param fromBins whether what is in the bins says what can be drawn
     */
    Plan toTakeAgain(RetakeOption retake, int lastSeat, boolean fromBins, Streams streams) {
        requireOnce(retake, fromBins);
        Optional<Timetable> timetable = course.map(weeks -> toHandOut(weeks, streams));
        Plan first = timetable.map(this::week).orElseGet(this::issued);
        if (timetable.isEmpty()) {
            requireNoPart(first);
        }
        IssuedParts known =
                timetable.isPresent() ? IssuedParts.NONE : IssuedParts.read(archives, first.seed(), library);
        tellUnread(known.unread(), streams);
        List<IssuedPart> rounds = new ArrayList<>();
        for (int round = 1; round <= retake.rounds(); round++) {
            Plan before = rounds.isEmpty() ? first : rounds.get(round - 2).plan();
            Optional<IssuedPart> archived = retake.archived(round, first, library);
            if (archived.isPresent()) {
                rounds.add(archived.get());
                continue;
            }
            Map<Integer, Set<String>> missed = retake.missed(round, before, library);
            Plan again = timetable.isPresent()
                    ? timetable.get().retake(week.week().orElseThrow(), rounds, missed)
                    : Retake.of(first, lastSeat, new Retake.Before(rounds, known), missed, library);
            rounds.add(IssuedPart.of(again, library));
        }
        return rounds.get(retake.rounds() - 1).plan();
    }

    /** From bins each week has one lane for its sheets and one for its retake; a second would show the same numbers. */
    private void requireOnce(RetakeOption retake, boolean fromBins) {
        if (course.isPresent() && fromBins && retake.rounds() > 1) {
            throw new WrongUsage(
                    "--retake",
                    say("command.retake.bins"),
                    say("command.retake.bins.expected"),
                    say("command.retake.bins.next"));
        }
    }

    private Timetable toHandOut(CoursePlan weeks, Streams streams) {
        CourseSeed.Seeded seeded = CourseSeed.issued(weeks, file, library, archives);
        told(seeded.common(), beside -> say("command.seed.course", "file", beside), streams);
        tellUnread(seeded.timetable().unread(), streams);
        return seeded.timetable();
    }

    private static void tellUnread(List<Path> archives, Streams streams) {
        archives.forEach(
                archive -> streams.err().print(say("command.week.unread", "archive", InputFile.shown(archive)) + "\n"));
    }

    private Plan told(Timetable timetable, Streams streams) {
        Plan plan = week(timetable);
        int number = week.week().orElseThrow();
        if (timetable.isMoved(number)) {
            streams.err().print(say("command.week.moved", "week", Integer.toString(number)) + "\n");
        }
        return plan;
    }

    /** A course before anything of it is handed out; it gets no seed. */
    static Optional<Timetable> timetable(Path file, TemplateLibrary library) {
        String text = text(file);
        if (!isCourse(file.toString(), text)) {
            return Optional.empty();
        }
        return Optional.of(CourseSeed.known(course(file, text), file, library, KnownArchives.of(file)));
    }

    private Plan week(Timetable timetable) {
        if (week.week().isEmpty()) {
            throw new WrongUsage(
                    InputFile.shown(file),
                    count("command.week.unsaid", timetable.size()),
                    say("command.week.unsaid.expected", "most", Integer.toString(timetable.size())),
                    say("command.first-week.next"));
        }
        timetable.noSuchWeek(week.week().get()).ifPresent(told -> {
            throw new WrongUsage(List.of(told));
        });
        return timetable.week(week.week().get());
    }

    /** Whether it is one; with --week it has to be. */
    private boolean isCourse(Path at, String text) {
        boolean course = isCourse(at.toString(), text);
        if (!course && week.week().isPresent()) {
            throw new WrongUsage(
                    InputFile.shown(at),
                    say("command.week.no-course"),
                    say("command.course.expected"),
                    say("command.week.next"));
        }
        return course;
    }

    private void requireNoPart(Plan plan) {
        if (!plan.portion().isWhole()) {
            throw new WrongUsage(
                    InputFile.shown(file),
                    say("command.retake.part"),
                    say("command.retake.part.expected"),
                    say("command.retake.part.next"));
        }
    }

    /** @param drawn what is told of a seed that was drawn now, by the file in which it is */
    private static Plan told(SeedFile.Seeded seeded, UnaryOperator<String> drawn, Streams streams) {
        seeded.drawn().ifPresent(beside -> streams.err().print(drawn.apply(InputFile.shown(beside)) + "\n"));
        if (seeded.guessable()) {
            streams.err()
                    .print(Diagnostic.warning(
                                    Place.inFile(seeded.plan().file()),
                                    say("command.seed.guessable"),
                                    "",
                                    say("command.seed.guessable.next"))
                            .print());
        }
        return seeded.plan();
    }

    private static boolean isCourse(String name, String text) {
        return CoursePlanReader.isCourse(name, text);
    }

    private static String text(Path file) {
        return InputFile.read(file, say("command.file.plan"));
    }

    private static CoursePlan course(Path file, String text) {
        return CoursePlanReader.read(InputFile.shown(file), text, beside(file));
    }

    private static Plan plan(Path file, String text) {
        return PlanReader.read(InputFile.shown(file), text, beside(file));
    }

    private static PlanReader.Beside beside(Path file) {
        return PlanReader.Beside.in(file.toAbsolutePath().getParent());
    }
}
