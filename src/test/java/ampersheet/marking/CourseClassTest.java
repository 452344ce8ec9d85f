package ampersheet.marking;

import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.OnlyDeep;
import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.marking.FallingBehind.Finding;
import ampersheet.marking.LearningClass.Member;
import ampersheet.marking.LearningClass.Planted;
import ampersheet.sheet.CoursePlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Roster;
import ampersheet.sheet.Sheet;
import ampersheet.sheet.SheetMaker;
import ampersheet.sheet.SheetProblem;
import ampersheet.sheet.Timetable;
import ampersheet.source.Languages;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A class of 30 takes the demo's course, learns and forgets; its answers are marked week by week. */
class CourseClassTest {
    private static final long SEED = 20_260_401;
    private static final int LEARNERS = 30;
    private static final Path COURSE = Path.of("problem-templates", "demo", "course.yaml");
    private static final TemplateLibrary LIBRARY = new TemplateLibrary(List.of(TemplateFiles.builtIn()));
    private static final String LAW = "Ohm's law at the bench";

    @TempDir
    private Path folder;

    @Test
    @OnlyDeep
    void theReportOfFourMarkedWeeksFindsWhoFallsBehind() throws IOException {
        Timetable timetable =
                new Timetable(CoursePlanReader.read(COURSE.toString(), Files.readString(COURSE)), LIBRARY);
        Random random = new Random(SEED);
        List<Member> members = new ArrayList<>();
        List<Roster.Seat> seats = new ArrayList<>();
        for (int seat = 1; seat <= LEARNERS; seat++) {
            members.add(new Member(random, planted(seat), LAW));
            seats.add(new Roster.Seat(seat, name(seat)));
        }
        List<MarkedWeeks.Week> weeks = new ArrayList<>();
        for (int week = 0; week < timetable.size(); week++) {
            SheetMaker maker = new SheetMaker(ProblemSet.of(timetable.week(week + 1), LIBRARY));
            maker.prepare(LEARNERS);
            Path answers = Files.createDirectories(folder.resolve("answers-" + week));
            for (int seat = 1; seat <= LEARNERS; seat++) {
                Files.writeString(
                        answers.resolve("seat-" + seat + ".csv"),
                        answers(maker.sheet(seat), members.get(seat - 1), week, timetable.size()));
            }
            members.forEach(Member::forgets);
            weeks.add(marked("week-" + (week + 1), answers, maker, new Roster(seats)));
        }
        MarkedWeeks course =
                MarkedWeeks.read(weeks, template -> LIBRARY.template(template).skill(), Languages.ENGLISH);
        List<Finding> findings = FallingBehind.of(course.learners(), timetable.size());
        findings.forEach(System.out::println);
        assertTrue(findings.stream().anyMatch(one -> one.who().equals(name(4)) && one.all()), "in all, seed " + SEED);
        assertTrue(
                findings.stream().anyMatch(one -> one.who().equals(name(20)) && one.lately()), "lately, seed " + SEED);
        assertTrue(findings.size() <= 8, findings.size() + " of " + LEARNERS + " named, seed " + SEED);
        String page = course.page("demo");
        findings.forEach(one -> assertTrue(page.contains(one.who()), one.who()));
    }

    private static Planted planted(int seat) {
        return seat == 4 ? Planted.ALL : seat == 12 ? Planted.SKILL : seat == 20 ? Planted.LATELY : Planted.NOTHING;
    }

    private static String name(int seat) {
        return "Learner " + seat;
    }

    private static String answers(Sheet sheet, Member member, int week, int weeks) {
        StringBuilder out = new StringBuilder("sheet,question,answer\n");
        for (SheetProblem problem : sheet.problems()) {
            if (problem.places().isEmpty()) {
                continue;
            }
            boolean right = member.works(
                    week, weeks, problem.template().skill(), problem.template().level());
            for (AnswerKey key : problem.places()) {
                String typed = SimulatedClass.written(key, right ? key.expected() : wrong(key));
                out.append(sheet.id())
                        .append(',')
                        .append(key.question())
                        .append(",\"")
                        .append(typed.replace("\"", "\"\""))
                        .append("\"\n");
            }
        }
        return out.toString();
    }

    private static double wrong(AnswerKey key) {
        if (key.acceptance() instanceof Acceptance.Choice choice) {
            return (key.expected() + 1) % choice.options().size();
        }
        return key.acceptance() instanceof Acceptance.Count
                ? key.expected() + 7
                : key.unit().toSi(1.83 * key.unit().fromSi(key.expected()) + 0.1);
    }

    private static MarkedWeeks.Week marked(String name, Path answers, SheetMaker maker, Roster roster) {
        Map<String, String> files = new LinkedHashMap<>();
        Marking.mark(
                new Marking.Task(
                        answers,
                        maker,
                        Optional.empty(),
                        roster,
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        OtherSheets.NONE,
                        false),
                files::put);
        return new MarkedWeeks.Week(
                name,
                new Marking.NamedText(name + "/marks.csv", files.get("marks.csv")),
                new Marking.NamedText(name + "/answers.csv", files.get("answers.csv")));
    }
}
