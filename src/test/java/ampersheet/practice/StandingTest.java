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
        assertEquals("faded 2", slipped.another(MONDAY, 0).form().written());
        Practice shown = one.another(MONDAY, 0).showSolution(MONDAY);
        assertEquals("faded 2", shown.another(MONDAY, 0).form().written());
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
                "faded 2",
                Lessons.solve(sure, MONDAY).another(MONDAY, 0).form().written(),
                "the example stood beside at once");
        Practice unsure = Lessons.wrong(practice, "unsure", MONDAY);
        assertEquals(
                "faded 2",
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
        assertEquals("ABCDABCDABCD", order(Lessons.start(Lessons.course("A", "B", "C", "D")), 12));
    }

    @Test
    void everySkillOfATwelfthIsMetInTheFirstRoundAndWhatBuildsOnOthersAfterThem() {
        assertEquals(
                "AB*CDE*FGHIJKL",
                order(Lessons.start(Lessons.course("A", "B*", "C", "D", "E*", "F", "G", "H", "I", "J", "K", "L")), 12));
        Practice given = Lessons.start(Lessons.course("A", "B*", "C")).another(MONDAY, 0);
        assertEquals("CAB*", order(given.goOn(MONDAY, 0), 3), "what it builds on was given up");
    }

    private static String order(Practice from, int problems) {
        Practice practice = from;
        StringBuilder order = new StringBuilder();
        for (int i = 0; i < problems; i++) {
            order.append(practice.attempt().skill());
            practice = Lessons.solve(practice, MONDAY).goOn(MONDAY, 0);
        }
        return order.toString();
    }

    @Test
    void eachProblemThatWentWrongTakesTheFadingOneFormBack() {
        Practice practice = Lessons.straight(Lessons.start(Lessons.course("A", "B")), MONDAY)
                .another(MONDAY, 0);
        List<String> forms = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            forms.add(practice.form().written());
            String sure = i == 0 ? "sure" : "";
            practice = Lessons.solve(Lessons.wrong(practice.type("a", ""), sure, MONDAY), MONDAY)
                    .another(MONDAY, 0);
        }
        assertEquals(List.of("bare", "faded 2", "faded 1", "full", "full"), forms);
        assertEquals(
                "faded 1",
                Lessons.solve(practice, MONDAY).another(MONDAY, 0).form().written());
    }

    @Test
    void aStepBackOnAShortTemplateIsAStepBackOnALongOneAndNeverTheQuestionAlone() {
        Course.Template brief = new Course.Template("family/brief", 2, List.of(List.of(2)));
        Course.Template lengthy = new Course.Template(
                "family/lengthy", 5, List.of(List.of(5), List.of(4, 5), List.of(3, 4, 5), List.of(2, 3, 4, 5)));
        for (int back = 1; back <= 5; back++) {
            assertEquals(Form.faded(1), brief.formFor(Standing.ALL - back));
            assertEquals(Form.faded(Math.max(1, 5 - back)), lengthy.formFor(Standing.ALL - back));
            assertEquals(Form.faded(1), brief.formFor(back));
        }
        assertEquals(Form.FULL, new Course.Template("family/one", 1, List.of()).formFor(Standing.ALL - 1));
    }

    @Test
    void aSkillWaitsUntilWhatItBuildsOnWasOnceSolved() {
        Practice practice = Lessons.start(Lessons.course("A", "B*"));
        StringBuilder order = new StringBuilder();
        for (int i = 0; i < 7; i++) {
            order.append(practice.attempt().skill().charAt(0))
                    .append(practice.form().kind() == Form.Kind.BARE ? "." : "");
            practice = Lessons.solve(practice, MONDAY).goOn(MONDAY, 0);
        }
        assertEquals("ABABABA.", order.toString());
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

    /** Two fresh users lost what they had proven by going on of their own will, and nobody told them. */
    @Test
    void extraPracticeTakesNothingAwayButBringsTheSkillBackTheNextDayAndSaysSo() {
        Practice practice = Lessons.start(Lessons.course("A", "B"));
        while (practice.settled() < 2) {
            practice = Lessons.straight(practice, MONDAY).goOn(MONDAY, 0);
        }
        int skill = practice.skillIndex();
        Practice wrong = Lessons.wrong(practice, "", MONDAY);
        Practice extra = Lessons.solve(wrong, MONDAY);
        assertEquals(2, extra.settled());
        assertEquals(MONDAY + 1, extra.standing().due().orElseThrow());
        assertTrue(
                said(wrong, extra).startsWith("All right in the end. This skill stays settled; it comes back from "),
                said(wrong, extra));
        Practice due = extra.choose(skill, MONDAY + 1, 0);
        assertEquals("bare", due.form().written());
        Practice slipped = Lessons.wrong(due, "", MONDAY + 1);
        Practice failed = Lessons.solve(slipped, MONDAY + 1);
        assertFalse(failed.standing().isSettled());
        assertTrue(said(due, failed).contains("This skill was due again, and is open again"), said(due, failed));
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
            if (said.contains("Next time")) {
                String form = practice.another(day, 0).form().written();
                String shown = form.equals("bare")
                        ? "the question alone"
                        : form.equals("full") ? "the example beside it" : form.substring(6) + " of 3 steps left to you";
                assertTrue(said.contains(shown), form + " after " + said);
            }
            practice = next;
        }
    }

    private static String said(Practice before, Practice after) {
        return after.saidAfterCheck(before, Lessons.key(), Lessons.places(after), MONDAY);
    }

    @Test
    void whatIsSaidOfSupportIsWhatComesAlsoWhereItWasSetByHand() {
        Practice bare = Lessons.start(Lessons.course("A", "B")).support("bare").another(MONDAY, 0);
        Practice slipped = Lessons.solve(Lessons.wrong(bare, "", MONDAY), MONDAY);
        assertTrue(
                said(bare, slipped).startsWith("All right in the end. Next time the question alone, as you chose it."),
                said(bare, slipped));
        assertEquals("bare", slipped.another(MONDAY, 0).form().written());
        Practice full = Lessons.start(Lessons.course("A", "B")).support("full");
        Practice solved = Lessons.solve(full, MONDAY);
        assertTrue(
                said(full, solved).startsWith("All right. Next time the example beside it, as you chose it."),
                said(full, solved));
        Practice seen = Lessons.start(Lessons.course("A", "B")).support("bare");
        Practice done = Lessons.solve(seen, MONDAY);
        assertTrue(said(seen, done).startsWith("All right, after a look at worked lines. "), said(seen, done));
        Practice auto = slipped.support("auto");
        assertTrue(
                said(bare, auto)
                        .startsWith("All right in the end. Next time with more support: 2 of 3 steps left to you"),
                said(bare, auto));
    }

    @Test
    void howManyProblemsAreLeftUntilASkillIsSettledIsToldAndHolds() {
        Practice practice = Lessons.start(Lessons.course("A", "B"));
        List<String> told = new ArrayList<>();
        for (int problem = 0; problem < 5; problem++) {
            told.add(left(practice));
            practice = Lessons.solve(practice.choose(0, MONDAY + problem, 0), MONDAY + problem);
            told.add(left(practice));
            practice = practice.choose(0, MONDAY + problem + 1, 0);
        }
        assertEquals(
                List.of(
                        "this one and four more settle it",
                        "four more settle it",
                        "this one and three more settle it",
                        "three more settle it",
                        "this one and two more settle it",
                        "two more settle it",
                        "this one and one more settle it",
                        "one more settles it",
                        "this one settles it",
                        "settled"),
                told);
        assertTrue(Lessons.start(Lessons.course("A"))
                .support("full")
                .progress()
                .endsWith("none counts: the question alone does"));
    }

    private static String left(Practice practice) {
        String told = practice.progress();
        return told.substring(Math.max(told.lastIndexOf(", ") + 2, told.lastIndexOf("· ") + 2));
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
