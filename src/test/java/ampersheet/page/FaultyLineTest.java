package ampersheet.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.answer.AnswerKey;
import ampersheet.answer.KnownMistake;
import ampersheet.answer.ProblemKey;
import ampersheet.page.PracticeSet.Variant;
import ampersheet.practice.Course;
import ampersheet.practice.FaultyLine;
import ampersheet.practice.LearnerRecord;
import ampersheet.practice.Practice;
import ampersheet.practice.RecordText;
import ampersheet.quantity.DecimalMarker;
import ampersheet.quantity.QuantityWriter;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.source.Languages;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A worked solution with one wrong line, by the rules that the page uses. */
class FaultyLineTest {
    private static final int DAY = 20_786;
    private static final PracticeSet SET = set("faulty-lines: yes\n");
    private static final Course COURSE = SET.course("faulty");

    private static PracticeSet set(String line) {
        String plan = "title: Faulty\nseed: faulty\n" + line
                + "problems:\n  - {template: current-limiting/one-indicator}\n  - {template: voltage-dividers/loaded-divider}\n";
        return PracticeSet.of(
                ProblemSet.of(
                        PlanReader.read("plan.yaml", plan), new TemplateLibrary(List.of(TemplateFiles.builtIn()))),
                5);
    }

    private static ProblemKey key(Practice practice) {
        Variant shown = SET.skills()
                .get(practice.skillIndex())
                .variants()
                .get(practice.attempt().variant());
        return new PracticeProblem(shown.problem(), SET.set().plan(), false).key();
    }

    private static String text(AnswerKey answer, double value) {
        return QuantityWriter.POINT.plain(value, answer.unit(), 6).text();
    }

    private static Practice solved(Practice practice) {
        ProblemKey key = key(practice);
        List<String> asked = new ArrayList<>();
        Practice typed = practice;
        for (AnswerKey answer : key.answers()) {
            if (!answer.question().startsWith("step ")) {
                asked.add(answer.question());
                typed = typed.type(answer.question(), text(answer, answer.expected()));
            }
        }
        return typed.check(key, asked, "", DAY);
    }

    /** Both skills solved bare twice by turns; the one settled first is shown. */
    private static Practice settled() {
        Practice practice =
                Practice.of(COURSE, LearnerRecord.none("faulty"), "tab").start("", DAY, 0);
        practice = practice.support("bare").another(DAY, 0);
        for (int i = 0; i < 30 && practice.settled() < 2; i++) {
            assertFalse(practice.hasFaulty() && !practice.standing().isSettled(), "not offered before");
            practice = solved(practice);
            practice = practice.settled() == 2 ? practice : practice.goOn(DAY, 0);
        }
        assertTrue(practice.hasFaulty(), "offered once it is settled");
        return practice;
    }

    private static AnswerKey answer(Practice practice) {
        String step = key(practice)
                .working()
                .steps()
                .get(practice.faultyLine().orElseThrow().step() - 1)
                .id();
        return key(practice).answers().stream()
                .filter(answer -> answer.step().equals(step))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void thereAreNoneUnlessThePlanWantsThem() {
        set("").skills().forEach(skill -> assertTrue(skill.faulty().isEmpty()));
        SET.skills().forEach(skill -> assertEquals(3, skill.faulty().size()));
    }

    @Test
    void theLineIsNamedAndThenMended() {
        Practice given = settled().findFaulty(DAY);
        FaultyLine line = given.faultyLine().orElseThrow();
        AnswerKey answer = answer(given);
        List<String> place = List.of(answer.question());
        assertFalse(line.isFound());
        assertTrue(
                given.type(answer.question(), text(answer, answer.expected()))
                        .check(key(given), List.of(), "", DAY)
                        .attempt()
                        .isOpen(),
                "first the line");
        for (int step = 1; step <= key(given).working().steps().size(); step++) {
            Practice named = given.nameLine(step);
            assertEquals(step == line.step(), named.faultyLine().orElseThrow().isFound());
            assertTrue(named.faultyLine()
                    .orElseThrow()
                    .said(Languages.ENGLISH)
                    .toLowerCase()
                    .contains("step " + step));
        }
        Practice found = given.nameLine(line.step()).nameLine(1 + line.step() % 2);
        assertTrue(found.faultyLine().orElseThrow().isFound(), "what is found stays found");
        double wrong = wrong(given);
        Practice again = found.type(answer.question(), text(answer, wrong)).check(key(given), place, "", DAY);
        assertTrue(again.attempt().isOpen());
        assertEquals(line.mistake(), again.attempt().slips().iterator().next().cause(), "judged as any answer");
        Practice mended =
                again.type(answer.question(), text(answer, answer.expected())).check(key(given), place, "", DAY);
        assertTrue(mended.attempt().isRight());
        String said = mended.saidAfterCheck(again, key(given), place, DAY);
        assertTrue(said.startsWith("Found and mended."), said);
    }

    /** What stands in the line. */
    private static double wrong(Practice given) {
        AnswerKey answer = answer(given);
        return SET.skills()
                .get(given.skillIndex())
                .faulty()
                .get(given.attempt().variant())
                .shown()
                .values()
                .quantity(answer.step())
                .value();
    }

    @Test
    void theValueThatStandsThereIsTheOneOfItsMistake() {
        Practice given = settled().findFaulty(DAY);
        String mistake = given.faultyLine().orElseThrow().mistake();
        KnownMistake known = answer(given).mistakes().stream()
                .filter(one -> one.id().equals(mistake))
                .findFirst()
                .orElseThrow();
        assertEquals(known.value(), wrong(given), 1e-9 * Math.abs(wrong(given)));
    }

    @Test
    void itCountsNeitherForNorAgainstASkill() {
        Practice before = settled();
        Practice given = before.findFaulty(DAY);
        AnswerKey answer = answer(given);
        Practice slipped = given.nameLine(given.faultyLine().orElseThrow().step())
                .type(answer.question(), "7 kg")
                .check(key(given), List.of(answer.question()), "sure", DAY);
        assertEquals(counted(before), counted(slipped));
        assertEquals(counted(before), counted(slipped.showSolution(DAY)));
        assertTrue(slipped.support("full").attempt().isFaulty(), "support is for problems");
    }

    private static List<List<Integer>> counted(Practice practice) {
        return practice.standings().stream()
                .map(one -> List.of(
                        one.blanks(),
                        one.given(),
                        one.right(),
                        one.atOnce(),
                        one.slips(),
                        one.helped(),
                        one.proofs().size(),
                        one.due().orElse(0)))
                .toList();
    }

    @Test
    void oneLeftOpenComesBackAndAnotherComesWhenItIsDone() {
        Practice given = settled().findFaulty(DAY);
        String id = given.attempt().id();
        Practice away = given.goOn(DAY, 0);
        assertFalse(away.attempt().isFaulty());
        Practice back = away.choose(given.skillIndex(), DAY, 0);
        assertFalse(back.attempt().isFaulty(), "a skill gives its own problems");
        assertEquals(id, back.findFaulty(DAY).attempt().id());
        int variant = given.attempt().variant();
        assertTrue(given.showSolution(DAY).findFaulty(DAY).attempt().variant() != variant);
    }

    @Test
    void aPageWithoutThemLeavesThemOutAndNonsenseInARecordNamesNoLine() {
        Practice given = settled().findFaulty(DAY);
        Course without = set("").course("faulty");
        Practice there = Practice.of(without, given.record(), "other")
                .start(given.attempt().id(), DAY, 0);
        assertFalse(there.attempt().isFaulty());
        assertFalse(there.hasFaulty());
        for (String nonsense : List.of("99", "0", "-1", "first")) {
            assertEquals(
                    0, given.type("line", nonsense).faultyLine().orElseThrow().named(), nonsense);
        }
    }

    @Test
    void aRecordKeepsIt() {
        Practice found = settled().findFaulty(DAY);
        found = found.nameLine(found.faultyLine().orElseThrow().step());
        assertEquals(found.record(), RecordText.read(RecordText.write(found.record())));
        assertEquals(COURSE, Course.read(COURSE.write(), Languages.ENGLISH, DecimalMarker.POINT));
    }
}
