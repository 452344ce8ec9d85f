package ampersheet.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.KnownMistake;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.render.html.HtmlPage;
import ampersheet.sheet.Composer;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Sheet;
import ampersheet.sheet.SheetMaker;
import java.io.IOException;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** What a plan may say of rounds and tolerances; without it, everything is as it was. */
class PolicyTest extends HandInFixture {
    private static ProblemSet with(String marking) {
        return ProblemSet.of(PlanReader.read("plan.yaml", SET.plan().written() + marking), LIBRARY);
    }

    private Map<String, String> mark(ProblemSet set) {
        Map<String, String> files = new TreeMap<>();
        marked = Marking.mark(
                new Marking.Task(
                        folder,
                        new SheetMaker(set),
                        Optional.empty(),
                        roster,
                        received,
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        OtherSheets.NONE,
                        false),
                files::put);
        return files;
    }

    /** Of the seven places, the first so many right and the others wrong; none is left open. */
    private static String round(int save, int right) {
        return HEAD + lines(ONE, ",1," + save + ",ABCDEF", (i, key) -> i < right ? right(key) : 50 + save + i + " F");
    }

    @Test
    void ofSeveralRoundsTheLastCountsOrTheBestAsThePlanSays() throws IOException {
        put("a.csv", round(1, 3));
        put("b.csv", round(2, 6));
        put("c.csv", round(3, 2));
        assertTrue(row(mark(SET).get("marks.csv"), "1,").contains("," + ONE.id() + ",2,7,"));
        ProblemSet best = with("marking:\n  rounds: best\n");
        Map<String, String> files = mark(best);
        assertTrue(row(files.get("marks.csv"), "1,").contains("," + ONE.id() + ",6,7,"), files.get("marks.csv"));
        assertTrue(files.get("set-aside.csv").contains("c.csv"), "nothing is lost");
        assertTrue(files.get("set-aside.csv").contains("an earlier round"));
        assertTrue(files.get("feedback/seat-001.html").contains("the round counts after which you had most marks"));
        assertTrue(HtmlPage.render(Composer.sheet(new SheetMaker(best).sheet(1), ""))
                .contains("the round counts after which you had most marks"));
        assertEquals(files, mark(best), "the same files give the same bytes");
    }

    @Test
    void whereNothingTellsTheOrderOfRoundsTheInstructorDecides() throws IOException {
        put("a.csv", round(1, 3).replace(",1,1,ABCDEF", ",1,1,ABCDEF"));
        put("b.csv", round(2, 6).replace(",1,2,ABCDEF", ",1,2,HGFEDC"));
        assertTrue(row(mark(with("marking:\n  rounds: best\n")).get("marks.csv"), "1,")
                .contains(",undecided,"));
    }

    @Test
    void aQuestionIsJudgedByTheToleranceThatThePlanSays() throws IOException {
        ProblemSet wide = with("marking:\n  tolerance: {current-limiting/one-indicator R: 10 %}\n");
        assertEquals(SET.id(1), wide.id(1), "it changes no number");
        AnswerKey key = new SheetMaker(wide).sheet(1).places().get(0);
        assertEquals("R", key.step());
        double share = ((Acceptance.Within) key.acceptance()).relative();
        assertTrue(share > 0.02, "wider than usual: " + share);
        String off = SimulatedClass.written(key, key.expected() * (1 - 0.9 * share));
        put("a.csv", HEAD + ONE.id() + "," + key.question() + ",\"" + off + "\",1,1,ABCDEF\n");
        assertTrue(row(mark(SET).get("marks.csv"), "1,").contains("," + ONE.id() + ",0,7,"));
        Map<String, String> files = mark(wide);
        assertTrue(row(files.get("marks.csv"), "1,").contains("," + ONE.id() + ",1,7,"), files.get("answers.csv"));
        String says = "An answer to " + key.question() + " may be off by 10\u00A0%.";
        assertTrue(files.get("feedback/seat-001.html").contains(says));
        assertTrue(wide.plan().marking().says(ONE).contains(says));
    }

    @Test
    void howeverWideAToleranceAKnownMistakeStaysWrong() {
        ProblemSet wide = with("marking:\n  tolerance: {current-limiting/one-indicator: 20 %}\n");
        int limited = 0;
        SheetMaker maker = new SheetMaker(wide);
        for (int seat = 1; seat <= 30; seat++) {
            Sheet sheet = maker.sheet(seat);
            for (AnswerKey key : sheet.places()) {
                for (KnownMistake mistake : key.mistakes()) {
                    assertTrue(
                            key.acceptance() instanceof Acceptance.Choice
                                    || key.acceptance().apart(key.expected(), mistake.value()),
                            key + " of " + sheet.id());
                }
                limited += key.acceptance() instanceof Acceptance.Within within
                                && within.relative() > 0.02
                                && within.relative() < 0.2
                        ? 1
                        : 0;
            }
        }
        assertTrue(limited > 0, "some mistake lies within 20 % of a key");
    }

    @Test
    void whatCannotBeMeantIsToldWithItsPlace() {
        for (String[] wrong : new String[][] {
            {"  rounds: mean\n", "\"mean\" does not fit rounds"},
            {"  tolerance: {current-limiting/one-indicator R: 50 %}\n", "does not fit the tolerance"},
            {"  tolerance: {current-limiting/one-indicator Rn: 5 %}\n", "is judged exactly"},
            {"  tolerance: {no/such: 5 %}\n", "no problem of this plan"}
        }) {
            String told = assertThrows(DiagnosticException.class, () -> with("marking:\n" + wrong[0]))
                    .getMessage();
            assertTrue(told.contains(wrong[1]), told);
        }
    }

    @Test
    void withoutAWordOfMarkingSheetAndFeedbackSayWhatTheySaid() throws IOException {
        put("a.csv", round(1, 7));
        assertFalse(mark(SET).get("feedback/seat-001.html").contains("round counts"));
        assertEquals(
                HtmlPage.render(Composer.sheet(ONE, "")),
                HtmlPage.render(
                        Composer.sheet(new SheetMaker(with("marking:\n  rounds: last\n  carried: 1\n")).sheet(1), "")));
    }
}
