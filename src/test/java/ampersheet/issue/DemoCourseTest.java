package ampersheet.issue;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.OnlyDeep;
import ampersheet.formula.Values;
import ampersheet.problem.Draws;
import ampersheet.problem.Workshop;
import ampersheet.render.pdf.Profile;
import ampersheet.sheet.CoursePlanReader;
import ampersheet.sheet.Document;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.SheetMaker;
import ampersheet.sheet.SheetProblem;
import ampersheet.sheet.Timetable;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** The tracked course of four weeks, for a class of 30. In the deep build with retakes, practice pages and paper. */
class DemoCourseTest {
    private static final Path COURSE = Path.of("problem-templates", "demo", "course.yaml");
    private static final boolean DEEP = Boolean.getBoolean("ampersheet.deep");
    private static final int LEARNERS = 30;
    private static final TemplateLibrary LIBRARY = new TemplateLibrary(List.of(TemplateFiles.builtIn()));

    private final Map<List<Object>, String> met = new HashMap<>();

    private static Timetable timetable() {
        try {
            return new Timetable(CoursePlanReader.read(COURSE.toString(), Files.readString(COURSE)), LIBRARY);
        } catch (IOException unreadable) {
            throw new IllegalStateException(unreadable);
        }
    }

    @Test
    @OnlyDeep
    void fourWeeksOfAllFamiliesForThirtyNeverShowTheSameNumbersTwice() {
        Timetable timetable = timetable();
        Set<String> families = new TreeSet<>();
        Set<String> skills = new HashSet<>();
        timetable.skills().forEach(skill -> skills.add(skill.skill()));
        for (int week = 1; week <= timetable.size(); week++) {
            ProblemSet set = ProblemSet.of(timetable.week(week), LIBRARY);
            set.templates().forEach(template -> families.add(template.family()));
            sheets(set, "week " + week);
            Map<Integer, Set<String>> missed = new TreeMap<>();
            for (int seat = 1; seat <= LEARNERS; seat++) {
                missed.put(seat, skills);
            }
            sheets(ProblemSet.of(timetable.retake(week, missed), LIBRARY), "retake of week " + week);
            ends(set, "week " + week);
        }
        assertEquals(Set.of("chain-addressing", "current-limiting", "thermal-rise", "voltage-dividers"), families);
        assertTrue(met.size() >= 4 * LEARNERS * Forecast.FEWEST, met.size() + " problems");
        System.out.println(met.size() + " problems of the demo course, all with other numbers");
    }

    private void sheets(ProblemSet set, String where) {
        SheetMaker maker = new SheetMaker(set);
        maker.prepare(LEARNERS);
        maker.spread(LEARNERS).ifPresent(spread -> assertTrue(spread.isWorthIt(), where + ": " + spread));
        for (int seat = 1; seat <= LEARNERS; seat++) {
            for (SheetProblem problem : maker.sheet(seat).problems()) {
                add(problem.template().name(), problem.problem().givens(), where + ", seat " + seat);
            }
        }
    }

    /** Of a practice page as it is usually made, and as many cards. */
    private void ends(ProblemSet set, String where) {
        set.sources().values().forEach(template -> {
            Draws draws = new Draws(
                    new Workshop(template),
                    set.plan().seed(),
                    set.plan().portion().ofPractice());
            for (int k = 0; k <= 12; k++) {
                add(template.name(), draws.draw(k).givens(), "practice of " + where);
            }
        });
    }

    private void add(String template, Values givens, String where) {
        String before = met.put(List.of(template, givens), where);
        assertNull(before, template + " has numbers twice: " + before + "; " + where);
    }

    @Test
    void everySkillThatEntersBeforeTheLastWeekReturnsAtEvenGaps() {
        Timetable timetable = timetable();
        for (Timetable.SkillWeeks skill : timetable.skills()) {
            assertTrue(
                    skill.weeks().size() > 1 || skill.weeks().get(0) == timetable.size(), skill.skill() + " returns");
            assertTrue(new HashSet<>(skill.gaps()).size() <= 1, skill.skill() + ": " + skill.gaps());
            assertTrue(skill.templates() > 1, skill.skill() + " is a pool");
            System.out.println(skill.skill() + ": weeks " + skill.weeks() + ", gaps " + skill.gaps());
        }
        assertEquals(Map.of(), timetable.missingBases());
        for (int week = 1; week <= timetable.size(); week++) {
            assertEquals(8, timetable.problems(week), "week " + week);
        }
    }

    @Test
    void eachWeekIsMixedAndItsMinutesAndSidesAreKnownBefore() {
        Timetable timetable = timetable();
        Optional<Handouts.Wish> wish = DEEP
                ? Optional.of(new Handouts.Wish(Document.Paper.A4, Profile.COMPACT, Handouts.Keys.NONE, true))
                : Optional.empty();
        int learners = DEEP ? LEARNERS : 4;
        for (int week = 1; week <= timetable.size(); week++) {
            Forecast forecast = Forecast.of(ProblemSet.of(timetable.week(week), LIBRARY), learners, wish);
            assertTrue(forecast.mixed() > 0.9, "week " + week + ": " + forecast.mixed());
            System.out.println("week " + week + ": " + forecast.minutes().getMin() + " to "
                    + forecast.minutes().getMax() + " minutes, "
                    + forecast.paper()
                            .map(paper -> paper.least() + " to " + paper.most() + " sides, ")
                            .orElse("")
                    + "marks " + forecast.marks());
            forecast.paper().ifPresent(paper -> assertTrue(paper.most() <= 10, paper.most() + " sides"));
        }
    }
}
