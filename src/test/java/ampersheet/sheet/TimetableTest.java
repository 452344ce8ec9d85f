package ampersheet.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.formula.Values;
import ampersheet.problem.Draws;
import ampersheet.problem.Workshop;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

class TimetableTest {
    private static final TemplateLibrary LIBRARY = new TemplateLibrary(List.of(TemplateFiles.builtIn()));
    private static final String HEAD = "title: Lanterns\nseed: s\nseats: 12\nproblems-a-week: 4\n";
    private static final String FOUR = HEAD + """
        weeks:
          - date: 2026-03-02
            new:
              - {skill: "Ohm's law at the bench", example: yes}
              - {template: chain-addressing/serpentine-tile}
          - date: 2026-03-09
            new: [{skill: series and parallel}]
          - date: 2026-03-16
            title: The third
            due: Friday
          - date: 2026-03-23
            new: [{template: thermal-rise/first-power, support: faded, blank: 1, given: {V: 5 V}}]
        """;

    private static Timetable timetable(String text) {
        return new Timetable(CoursePlanReader.read("course.yaml", text), LIBRARY);
    }

    private static String refusal(String text) {
        return assertThrows(DiagnosticException.class, () -> timetable(text)).getMessage();
    }

    private static List<Integer> weeks(Timetable timetable, String skill) {
        return timetable.skills().stream()
                .filter(one -> one.skill().equals(skill))
                .findFirst()
                .orElseThrow()
                .weeks();
    }

    @Test
    void aSkillReturnsAtEvenGaps() {
        Timetable timetable = timetable(FOUR.replace("problems-a-week: 4", "problems-a-week: 4\ngap: 2"));
        assertEquals(List.of(1, 3), weeks(timetable, "Ohm's law at the bench"));
        assertEquals(List.of(2, 4), weeks(timetable, "series and parallel"));
        assertEquals(List.of(4), weeks(timetable, "power of a resistor"));
    }

    @Test
    void aFullWeekLetsSkillsReturnLessOftenAndStillEvenly() {
        Timetable timetable = timetable(FOUR.replace("problems-a-week: 4", "problems-a-week: 2"));
        timetable
                .skills()
                .forEach(skill -> assertEquals(
                        1, Math.max(1, skill.gaps().stream().distinct().count()), skill + " has gaps " + skill.gaps()));
        for (int week = 1; week <= 4; week++) {
            assertEquals(
                    2, ProblemSet.of(timetable.week(week), LIBRARY).wanted().size(), "week " + week);
        }
    }

    @Test
    void poolsThatAreMetTogetherGiveAllSeatsOneTemplateAndTheNextOneTheNextTime() {
        Timetable timetable = timetable(HEAD.replace("seats: 12", "seats: 12\npools: together") + """
            weeks:
              - date: 2026-03-02
                new:
                  - {pool: [voltage-dividers/design-pair, voltage-dividers/feedback-pair], example: yes}
                  - {template: chain-addressing/serpentine-tile, support: faded, blank: 1, gap: never}
              - date: 2026-03-09
                problems: 1
              - date: 2026-03-16
                problems: 1
            """);
        List<List<String>> met = new ArrayList<>();
        for (int week = 1; week <= 3; week++) {
            SheetMaker maker = new SheetMaker(ProblemSet.of(timetable.week(week), LIBRARY));
            List<String> first = templates(maker, 1);
            assertEquals(first, templates(maker, 2));
            assertEquals(first, templates(maker, 7));
            met.add(first.stream().sorted().toList());
        }
        assertEquals(
                List.of(
                        "chain-addressing/serpentine-tile",
                        "chain-addressing/serpentine-tile",
                        "voltage-dividers/design-pair",
                        "voltage-dividers/feedback-pair",
                        "voltage-dividers/feedback-pair"),
                met.get(0),
                "the easier one first, with its example; the other fills the week up");
        assertEquals(List.of("voltage-dividers/feedback-pair"), met.get(1));
        assertEquals(List.of("voltage-dividers/design-pair"), met.get(2));
    }

    private static List<String> templates(SheetMaker maker, int seat) {
        return maker.sheet(seat).problems().stream()
                .map(problem -> problem.template().name())
                .toList();
    }

    @Test
    void aTopicMayHaveAGapOfItsOwnOrNotReturn() {
        Timetable timetable = timetable(FOUR.replace("example: yes}", "example: yes, gap: 3}")
                .replace("serpentine-tile}", "serpentine-tile, gap: never}"));
        assertEquals(List.of(1, 4), weeks(timetable, "Ohm's law at the bench"));
        assertEquals(List.of(1), weeks(timetable, "address in a tile"));
    }

    @Test
    void eachWeekIsAnOrdinaryPlanThatIsReadFromItsTextAsTheSame() {
        Timetable timetable =
                timetable(FOUR + "marking: {carried: 0.5, weights: {chain-addressing/serpentine-tile: 2}}\n"
                        + "decimal: comma\nschool: \"The \\\"Quay\\\" school\\u00e9\"\n");
        for (int week = 1; week <= 4; week++) {
            Plan plan = timetable.week(week);
            Plan read = PlanReader.read("week.yaml", plan.written());
            ProblemSet set = ProblemSet.of(read, LIBRARY);
            assertEquals(ProblemSet.of(plan, LIBRARY).id(3), set.id(3), "week " + week);
            assertEquals(plan.heading(), read.heading());
            assertEquals(plan.portion(), read.portion());
            assertEquals(plan.marking().credits(), read.marking().credits());
            assertEquals("s", read.seed());
        }
        assertEquals("Lanterns: The third", timetable.week(3).title());
        assertEquals("2026-03-16", timetable.week(3).heading().date());
        assertEquals("Friday", timetable.week(3).heading().due());
        assertEquals("Lanterns: week 2", timetable.week(2).title());
    }

    @Test
    void whatReturnsIsBareAndWhatEntersIsAsItsLineSays() {
        Timetable timetable = timetable(FOUR);
        Plan.Entry enters = timetable.week(1).entries().get(0);
        assertTrue(enters.example());
        Plan.Entry returns = timetable.week(2).entries().get(0);
        assertFalse(returns.example());
        assertEquals(enters.source(), returns.source());
        assertEquals(new Support.Bare(), returns.support());
    }

    @Test
    void aSheetNeverHasSomethingBeforeWhatItBuildsOn() {
        Timetable timetable = timetable(HEAD.replace("problems-a-week: 4", "problems-a-week: 6") + """
            weeks:
              - date: 2026-03-02
                new:
                  - {skill: series and parallel}
                  - {skill: power of a resistor}
                  - {skill: "Ohm's law at the bench"}
            """);
        SheetMaker maker = new SheetMaker(ProblemSet.of(timetable.week(1), LIBRARY));
        for (int seat = 1; seat <= 12; seat++) {
            List<String> skills = maker.sheet(seat).problems().stream()
                    .map(problem -> problem.template().skill())
                    .toList();
            int base = skills.lastIndexOf("Ohm's law at the bench");
            assertEquals(List.of(0, 1), List.of(skills.indexOf("Ohm's law at the bench"), base), skills.toString());
        }
    }

    @Test
    void whatIsWrongIsToldAtItsPlace() {
        String late = refusal(HEAD + """
            weeks:
              - {date: 2026-03-02, new: [{skill: series and parallel}]}
              - {date: 2026-03-09, new: [{skill: "Ohm's law at the bench"}]}
            """);
        assertTrue(late.contains("course.yaml:6:30"), late);
        assertTrue(late.contains("builds on \"Ohm's law at the bench\", which enters only in week 2"), late);
        String unknown = refusal(HEAD + "weeks:\n  - {date: 2026-03-02, new: [{skill: juggling}]}\n");
        assertTrue(unknown.contains("course.yaml:6:38"), unknown);
        assertTrue(unknown.contains("no template practises \"juggling\""), unknown);
        String order = refusal(FOUR.replace("2026-03-16", "2026-03-08"));
        assertTrue(order.contains("week 3 begins on 2026-03-08, and the week before it on 2026-03-09"), order);
        assertTrue(refusal(HEAD + "weeks: []\n").contains("the course has no weeks"));
        assertTrue(refusal(HEAD).contains("the key \"weeks\" is missing from a course"));
        assertTrue(refusal(FOUR.replace("2026-03-16", "16 March")).contains("\"16 March\" is no date"));
        assertTrue(refusal(FOUR + "due: Friday\n").contains("a course has no one \"due\""));
        assertTrue(refusal(HEAD + "weeks: [{date: 2026-03-02}]\n").contains("nothing enters in the first week"));
        String fixed = refusal(HEAD + """
            weeks:
              - {date: 2026-03-02, new: [{template: thermal-rise/first-power, given: {V: 5 V}}]}
              - {date: 2026-03-09, new: [{template: thermal-rise/first-power}]}
            """);
        assertTrue(fixed.contains("both draw from thermal-rise/first-power"), fixed);
    }

    @Test
    void aClassBeyondTheSeatsIsToldBeforeItMeetsNumbersOfAnotherWeek() {
        SheetMaker maker = new SheetMaker(ProblemSet.of(timetable(FOUR).week(2), LIBRARY));
        String told =
                assertThrows(DiagnosticException.class, () -> maker.prepare(13)).getMessage();
        assertTrue(told.contains("each week keeps numbers for 12 seats only"), told);
    }

    @Test
    void nobodyMeetsNumbersTwiceInSheetsRetakesPracticeOrCards() {
        nobodyMeetsNumbersTwice(FOUR.replace(", given: {V: 5 V}", ""));
    }

    @Test
    void noMoreDoTheyWhereSheetsAreEquallyHard() {
        nobodyMeetsNumbersTwice(FOUR.replace(", given: {V: 5 V}", "") + "even: yes\n");
    }

    private static void nobodyMeetsNumbersTwice(String course) {
        Timetable timetable = timetable(course);
        Met met = new Met();
        for (int week = 1; week <= 4; week++) {
            ProblemSet set = ProblemSet.of(timetable.week(week), LIBRARY);
            met.sheets(set, "week " + week);
            met.end(set, set.plan().portion().ofPractice(), "practice of week " + week);
            met.end(set, set.plan().portion().ofCards(), "cards of week " + week);
            Map<Integer, Set<String>> missed = new HashMap<>();
            Set<String> all = new HashSet<>();
            timetable.skills().forEach(skill -> all.add(skill.skill()));
            for (int seat = 1; seat <= 12; seat++) {
                missed.put(seat, all);
            }
            met.sheets(ProblemSet.of(timetable.retake(week, missed), LIBRARY), "retake of week " + week);
        }
        assertTrue(met.where.size() > 400, met.where.size() + " problems compared");
    }

    /** Where numbers were met, by template and numbers. */
    private static final class Met {
        private final Map<List<Object>, String> where = new HashMap<>();

        void sheets(ProblemSet set, String name) {
            SheetMaker maker = new SheetMaker(set);
            maker.prepare(12);
            for (int seat = 1; seat <= 12; seat++) {
                for (SheetProblem problem : maker.sheet(seat).problems()) {
                    add(problem.template().name(), problem.problem().givens(), name + ", seat " + seat);
                }
            }
        }

        void end(ProblemSet set, Draws.Stretch stretch, String name) {
            set.sources().values().forEach(template -> {
                Draws draws = new Draws(new Workshop(template), set.plan().seed(), stretch);
                for (int k = 0; k < 5; k++) {
                    add(template.name(), draws.draw(k).givens(), name);
                }
            });
        }

        private void add(String template, Values givens, String at) {
            String before = where.put(List.of(template, givens), at);
            assertEquals(null, before, template + " has the same numbers twice, the second time in " + at);
        }
    }

    @Test
    void aRetakeHasOnlyWhatWasMissedAfterAnExample() {
        Plan retake = timetable(FOUR)
                .retake(2, Map.of(3, Set.of("Ohm's law at the bench"), 7, Set.of("address in a tile", "nothing here")));
        ProblemSet set = ProblemSet.of(PlanReader.read("again.yaml", retake.written()), LIBRARY);
        SheetMaker maker = new SheetMaker(set);
        assertEquals(List.of("Ohm's law at the bench"), skills(maker.sheet(3)), "with its example before each problem");
        assertEquals(List.of("address in a tile"), skills(maker.sheet(7)));
        assertTrue(maker.sheet(3).problems().get(0).example());
        List<Roster.Seat> seats = new ArrayList<>();
        for (int seat = 1; seat <= 12; seat++) {
            seats.add(new Roster.Seat(seat, ""));
        }
        assertEquals(
                List.of(3, 7),
                set.plan().portion().sitting(new Roster(seats)).seats().stream()
                        .map(Roster.Seat::number)
                        .toList());
        assertFalse(
                set.id(3).equals(ProblemSet.of(timetable(FOUR).week(2), LIBRARY).id(3)));
        String nobody = assertThrows(
                        DiagnosticException.class, () -> timetable(FOUR).retake(2, Map.of(3, Set.of("juggling"))))
                .getMessage();
        assertTrue(nobody.contains("nobody missed a skill of this plan"), nobody);
    }

    private static List<String> skills(Sheet sheet) {
        return sheet.problems().stream()
                .map(problem -> problem.template().skill())
                .distinct()
                .toList();
    }
}
