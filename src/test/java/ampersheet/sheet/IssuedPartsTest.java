package ampersheet.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** A course that changes after some of it was handed out. */
class IssuedPartsTest {
    private static final TemplateLibrary LIBRARY = new TemplateLibrary(List.of(TemplateFiles.builtIn()));
    private static final String FIRST = "current-limiting/first-current";
    private static final Set<String> SKILL = Set.of(LIBRARY.template(FIRST).skill());
    private static final String THREE_ENTER = """
        title: Lanterns
        seed: s
        seats: 40
        problems-a-week: 3
        weeks:
          - date: 2026-03-02
            new:
              - {template: current-limiting/first-current}
              - {template: chain-addressing/serpentine-tile}
              - {template: thermal-rise/first-power}
          - {date: 2026-03-09}
          - {date: 2026-03-16}
          - {date: 2026-03-23}
          - {date: 2026-03-30}
        """;
    private static final String LESS_IN_THE_FOURTH =
            THREE_ENTER.replace("{date: 2026-03-23}", "{date: 2026-03-23, problems: 2}");

    private static Timetable timetable(String course, IssuedPart... issued) {
        return new Timetable(
                CoursePlanReader.read("course.yaml", course), LIBRARY, IssuedParts.NONE.and(List.of(issued)));
    }

    /** As its archive would tell. */
    private static IssuedPart issued(Plan plan) {
        return IssuedPart.of(PlanReader.read("issued.yaml", plan.written()), LIBRARY);
    }

    private static String code(Plan plan) {
        return IssuedPart.code(ProblemSet.of(plan, LIBRARY));
    }

    /** What a seat of one part has that it, or another one, has in the other part. */
    private static Set<String> common(Plan one, Plan other) {
        Set<String> common = draws(one);
        common.retainAll(draws(other));
        return common;
    }

    private static Set<String> draws(Plan plan) {
        Set<String> draws = new TreeSet<>();
        ProblemSet set = ProblemSet.of(plan, LIBRARY);
        for (int seat = 1; seat <= plan.portion().seats(); seat++) {
            set.draws(seat).forEach(draw -> draws.add(draw.source() + " " + draw.index()));
        }
        return draws;
    }

    private static String weeks(int count, String seed) {
        StringBuilder text =
                new StringBuilder("title: Lanterns\nseed: " + seed + "\nseats: 2\nproblems-a-week: 1\nweeks:\n");
        for (int week = 0; week < count; week++) {
            text.append("  - {date: 2026-0%d-%02d%s}%n"
                    .formatted(
                            3 + week / 4, 1 + 7 * (week % 4), week == 0 ? ", new: [{template: " + FIRST + "}]" : ""));
        }
        return text.toString();
    }

    @Test
    void aLaterWeekThatChangesGivesNobodyAProblemAgainThatLiesOut() {
        Timetable before = timetable(THREE_ENTER);
        IssuedPart[] out = {issued(before.week(1)), issued(before.week(2)), issued(before.week(3))};
        Timetable unaware = timetable(LESS_IN_THE_FOURTH);
        assertFalse(
                common(before.week(3), unaware.week(5)).isEmpty(),
                "or the course does not show what happens where nothing is known");
        Timetable now = timetable(LESS_IN_THE_FOURTH, out);
        for (int week = 4; week <= 5; week++) {
            for (int earlier = 1; earlier <= 3; earlier++) {
                assertEquals(Set.of(), common(before.week(earlier), now.week(week)), earlier + " and " + week);
            }
        }
        assertEquals(Set.of(), common(now.week(4), now.week(5)));
        assertFalse(now.isMoved(1), "it lies out");
        assertTrue(now.isMoved(5));
        assertEquals(
                now.week(5).portion(),
                PlanReader.read("week.yaml", now.week(5).written()).portion(),
                "its own archive says where it begins");
    }

    @Test
    void whatWasMovedStaysOnceItLiesOutWhateverIsMadeLater() {
        Timetable before = timetable(THREE_ENTER);
        IssuedPart third = issued(before.week(3));
        Plan fifth = timetable(LESS_IN_THE_FOURTH, third).week(5);
        Timetable later = timetable(LESS_IN_THE_FOURTH, third, issued(fifth));
        assertEquals(code(fifth), code(later.week(5)), "who comes late gets a sheet of the same issue");
        assertFalse(later.isMoved(5));
        for (int week : List.of(1, 2, 4)) {
            assertEquals(Set.of(), common(fifth, later.week(week)), "week " + week);
        }
    }

    @Test
    void whereNothingHasChangedNothingMoves() {
        Timetable before = timetable(THREE_ENTER);
        List<IssuedPart> out = new ArrayList<>();
        for (int week = 5; week >= 2; week--) {
            out.add(issued(before.week(week)));
        }
        out.add(issued(before.retake(2, Map.of(3, SKILL))));
        Timetable now = timetable(THREE_ENTER, out.toArray(new IssuedPart[0]));
        for (int week = 1; week <= 5; week++) {
            assertEquals(before.week(week).written(), now.week(week).written());
            assertEquals(
                    before.retake(week, Map.of(4, SKILL)).written(),
                    now.retake(week, Map.of(4, SKILL)).written());
        }
    }

    @Test
    void aWeekThatIsAddedLeavesRetakesThatLieOut() {
        Plan again = timetable(weeks(8, "s")).retake(1, Map.of(1, SKILL));
        Timetable longer = timetable(weeks(9, "s"), issued(again));
        assertFalse(common(again, timetable(weeks(9, "s")).week(9)).isEmpty(), "or nothing would have to move");
        assertEquals(Set.of(), common(again, longer.week(9)));
        assertEquals(
                code(again),
                code(longer.retake(1, Map.of(1, SKILL))),
                "the marks of this retake still belong to it, for who takes it once more");
        Plan more = longer.retake(1, List.of(issued(again)), Map.of(1, SKILL));
        for (Plan other : List.of(again, longer.week(9), longer.week(1))) {
            assertEquals(Set.of(), common(more, other), other.title());
        }
    }

    @Test
    void anotherWeekOfTheSameNumberMayHaveWhatTheOneThatLiesOutHas() {
        Plan first = timetable(THREE_ENTER).week(1);
        Timetable now =
                timetable(THREE_ENTER.replaceFirst("first-current", "first-current, support: full"), issued(first));
        assertFalse(now.isMoved(1), "it takes the place of the other");
        assertNotEquals(code(first), code(now.week(1)));
    }

    @Test
    void noTwoWeeksHaveTheSameIdsByChance() {
        Timetable timetable = timetable(weeks(14, "s1"));
        Map<String, Integer> known = new TreeMap<>();
        for (int week = 1; week <= 14; week++) {
            assertEquals(null, known.put(code(timetable.week(week)), week), "week " + week);
        }
        Plan varied = timetable.week(8);
        assertEquals(1, varied.portion().variation(), "or the seed does not show it");
        assertEquals(code(varied), code(PlanReader.read("week.yaml", varied.written())));
    }

    @Test
    void noRetakeHasTheIdsOfAWeekByChance() {
        Timetable timetable = timetable(weeks(14, "s14"));
        Plan again = timetable.retake(10, Map.of(1, SKILL));
        for (int week = 1; week <= 14; week++) {
            assertNotEquals(code(timetable.week(week)), code(again), "week " + week);
        }
        assertEquals(1, again.portion().variation(), "or the seed does not show it");
    }
}
