package ampersheet.practice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** When support goes and comes back, when a skill is settled, and which comes next. */
class StandingTest {
    private static final int MONDAY = Lessons.MONDAY;

    private static Practice bare(Practice practice) {
        return practice.support("bare").another(MONDAY, 0);
    }

    @Test
    void stepsGoBlankOneByOneUpToTheLastAndThenTheQuestionStandsAlone() {
        Practice practice = Lessons.start(Lessons.course("A", "B", "C"));
        List<String> forms = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            forms.add(practice.form().written());
            practice = Lessons.solve(practice, MONDAY).another(MONDAY, 0);
        }
        assertEquals(List.of("full", "faded 1", "faded 2", "bare", "bare"), forms);
    }

    @Test
    void whoGoesStraightToTheAnswersNeedsNoSteps() {
        Practice practice = Lessons.straight(Lessons.start(Lessons.course("A", "B")), MONDAY);
        assertEquals(
                Attempt.Way.STRAIGHT, practice.attempt().ending().orElseThrow().way());
        assertEquals(0, practice.standing().proofs().size(), "the example stood beside");
        assertEquals("bare", practice.another(MONDAY, 0).form().written());
    }

    @Test
    void nothingSettlesButTwoBareSuccessesOnTwoTemplatesWithAnotherSkillOrADayBetween() {
        Practice start = Lessons.straight(Lessons.start(Lessons.course("A", "B")), MONDAY);
        Practice first = Lessons.solve(start.choose(0, MONDAY, 0), MONDAY);
        assertEquals(1, first.standing().proofs().size());
        Practice atOnce = Lessons.solve(first.choose(0, MONDAY, 0), MONDAY);
        assertEquals(2, atOnce.standing().proofs().size());
        assertFalse(atOnce.standing().isSettled(), "at once, one after the other");
        Practice later = Lessons.solve(first.choose(0, MONDAY + 1, 0), MONDAY + 1);
        assertTrue(later.standing().isSettled(), "on a later day");
        Practice between = Lessons.solve(first.choose(1, MONDAY, 0), MONDAY);
        Practice mixed = Lessons.solve(between.choose(0, MONDAY, 0), MONDAY);
        assertTrue(mixed.standing().isSettled(), "after another skill");
        assertEquals(
                2,
                mixed.standing().proofs().stream()
                        .map(Attempt::template)
                        .distinct()
                        .count());
    }

    @Test
    void helpOrTheExampleBesideIsNoProof() {
        Practice asked = bare(Lessons.start(Lessons.course("A", "B")));
        Practice hinted = asked.take(asked.nextHint(Lessons.key(), Lessons.BARE).orElseThrow());
        assertEquals(0, Lessons.solve(hinted, MONDAY).standing().proofs().size());
        assertEquals(
                0,
                Lessons.solve(asked.lookAtExample(), MONDAY).standing().proofs().size());
        assertEquals(1, Lessons.solve(asked, MONDAY).standing().proofs().size());
        Practice full = Lessons.start(Lessons.course("A", "B"));
        assertEquals(
                0,
                Lessons.solve(full.support("bare"), MONDAY).standing().proofs().size(),
                "the example was beside it");
    }

    @Test
    void aSlipBringsSupportBackAndTakesProofsAway() {
        Practice one = Lessons.solve(bare(Lessons.start(Lessons.course("A", "B"))), MONDAY)
                .support("auto");
        assertEquals(1, one.standing().proofs().size());
        Practice slipped = Lessons.solve(Lessons.wrong(one.another(MONDAY, 0), "", MONDAY), MONDAY);
        assertEquals(0, slipped.standing().proofs().size());
        assertEquals("faded 1", slipped.another(MONDAY, 0).form().written());
        Practice shown = one.another(MONDAY, 0).showSolution(MONDAY);
        assertEquals("faded 1", shown.another(MONDAY, 0).form().written());
        assertEquals(0, shown.standing().right() - one.standing().right(), "a solution shown is not done");
    }

    @Test
    void anotherOneBeforeItIsRightIsASlipAndNotAfter() {
        Practice one = Lessons.solve(bare(Lessons.start(Lessons.course("A", "B"))), MONDAY);
        assertEquals(1, one.another(MONDAY, 0).standing().proofs().size());
        assertEquals(
                0, one.another(MONDAY, 0).another(MONDAY, 0).standing().proofs().size());
    }

    @Test
    void whoWasSureAndWrongIsLedBackToTheExample() {
        Practice practice = Lessons.straight(Lessons.start(Lessons.course("A", "B")), MONDAY)
                .another(MONDAY, 0);
        assertEquals("bare", practice.form().written());
        Practice sure = Lessons.wrong(practice, "sure", MONDAY);
        assertTrue(sure.isSureAndWrong(practice.type("a", "529 ohm")));
        assertEquals(
                "full", Lessons.solve(sure, MONDAY).another(MONDAY, 0).form().written());
        Practice unsure = Lessons.wrong(practice, "unsure", MONDAY);
        assertEquals(
                "faded 1",
                Lessons.solve(unsure, MONDAY).another(MONDAY, 0).form().written());
        assertEquals(List.of(0, 1, 0, 0), counted(sure));
        assertEquals(List.of(0, 0, 0, 1), counted(unsure));
        Practice right = Lessons.answer(practice, Map.of("a", "400 ohm", "b", "96.1 mW"), "sure", MONDAY);
        assertEquals(List.of(1, 0, 0, 0), counted(right));
    }

    private static List<Integer> counted(Practice practice) {
        return Arrays.stream(practice.sureness()).boxed().toList();
    }

    @Test
    void skillsComeMixed() {
        Practice practice = Lessons.start(Lessons.course("A", "B", "C", "D"));
        StringBuilder order = new StringBuilder();
        for (int i = 0; i < 9; i++) {
            order.append(practice.attempt().skill());
            practice = Lessons.solve(practice, MONDAY).goOn(MONDAY, 0);
        }
        assertEquals("ABCABCABC", order.toString());
    }

    @Test
    void aSkillWaitsUntilWhatItBuildsOnWasOnceSolvedBare() {
        Practice practice = Lessons.start(Lessons.course("A", "B*"));
        StringBuilder order = new StringBuilder();
        for (int i = 0; i < 7; i++) {
            order.append(practice.attempt().skill().charAt(0))
                    .append(practice.form().kind() == Form.Kind.BARE ? "." : "");
            practice = Lessons.solve(practice, MONDAY).goOn(MONDAY, 0);
        }
        assertEquals("AAAA.BA.B", order.toString());
    }

    @Test
    void whatIsSettledComesBackAtEvenGapsAndIsOpenAgainWhenItFails() {
        Practice practice = Lessons.start(Lessons.course("A", "B"));
        int problems = 0;
        while (practice.settled() < 2) {
            practice = Lessons.straight(practice, MONDAY).goOn(MONDAY, 0);
            assertTrue(++problems < 10);
        }
        assertEquals(6, problems, "the example, then twice bare, of each");
        for (int time = 1; time <= 3; time++) {
            int day = MONDAY + time * Standing.GAP;
            assertFalse(practice.standings().get(0).isDue(day - 1));
            assertTrue(practice.standings().get(0).isDue(day));
            for (int skill = 0; skill < 2; skill++) {
                practice = practice.choose(skill, day, 0);
                assertEquals("bare", practice.form().written());
                practice = Lessons.solve(practice, day);
            }
            assertEquals(day + Standing.GAP, practice.standing().due().orElseThrow());
        }
        int day = MONDAY + 4 * Standing.GAP;
        practice = Lessons.solve(Lessons.wrong(practice.goOn(day, 0), "", day), day);
        assertFalse(practice.standing().isSettled());
        assertEquals(1, practice.settled());
    }

    @Test
    void whatThePageSaysComesNextIsWhatComesNext() {
        Practice practice = Lessons.start(Lessons.course("A", "B*", "C"));
        for (int i = 0; i < 25; i++) {
            int day = MONDAY + i / 8;
            Practice before = practice;
            practice =
                    i % 5 == 3 ? Lessons.solve(Lessons.wrong(practice, "", day), day) : Lessons.straight(practice, day);
            String said = practice.saidAfterCheck(before, Lessons.key(), Lessons.places(practice), day);
            Practice next = practice.goOn(day, 0);
            boolean same = next.attempt().skill().equals(practice.attempt().skill());
            assertTrue(
                    same
                            ? said.endsWith("Next comes another one of this skill.")
                            : said.endsWith(next.attempt().skill() + ".")
                                    || said.contains("Every skill is settled; the next is due on "),
                    said);
            if (said.contains("Next time with more support")) {
                assertTrue(practice.standing().blanks() < Standing.ALL, said);
            }
            practice = next;
        }
    }

    @Test
    void whatIsLeftOpenIsFoundAgain() {
        Practice practice = Lessons.start(Lessons.course("A", "B")).type("a", "39");
        String open = practice.attempt().id();
        Practice other = practice.goOn(MONDAY, 0);
        assertEquals("B", other.attempt().skill());
        Practice back = other.choose(0, MONDAY, 0);
        assertEquals(open, back.attempt().id());
        assertEquals("39", back.attempt().text("a"));
        assertEquals(
                open, Lessons.solve(other, MONDAY).goOn(MONDAY, 0).attempt().id(), "by turns, too");
        assertEquals(
                open,
                Practice.of(back.course(), RecordText.read(RecordText.write(back.record())), "new tab")
                        .start(open, MONDAY, 0)
                        .attempt()
                        .id());
    }
}
