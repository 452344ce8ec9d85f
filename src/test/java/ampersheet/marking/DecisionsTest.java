package ampersheet.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.answer.AnswerKey;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.quantity.DecimalMarker;
import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.Unit;
import ampersheet.render.markdown.MarkdownPage;
import ampersheet.sheet.Composer;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Sheet;
import ampersheet.sheet.SheetMaker;
import java.io.IOException;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** What the instructor and her plan decide of an answer. */
class DecisionsTest extends HandInFixture {
    // Commas

    /** Places of the sheet with an answer that may be written with three decimals. */
    private static String ambiguous() {
        return "2,353 V";
    }

    @Test
    void otherAnswersOfTheFileSettleTheDecimalMarkerAndElseItIsToDecide() throws IOException {
        put(
                "a.csv",
                "sheet,question,answer\n" + ONE.id() + "," + question(0) + ",\"" + ambiguous() + "\"\n" + ONE.id() + ","
                        + question(1) + ",\"4,7 kΩ\"\n");
        Map<String, String> files = mark();
        assertTrue(row(files.get("answers.csv"), "1," + ONE.id() + "," + question(0))
                .contains("2.353\u00A0V"));
        assertEquals(0, marked.toDecide());
        assertTrue(files.get("feedback/seat-001.html").contains("“,” as the decimal marker"));
        put("a.csv", "sheet,question,answer\n" + ONE.id() + "," + question(0) + ",\"" + ambiguous() + "\"\n");
        files = mark();
        assertEquals(1, marked.toDecide());
        String line = row(files.get("decide.csv"), "1,");
        assertTrue(line.contains("2.353\u00A0V (not right) or 2.353\u00A0kV (not right)"), line);
        assertTrue(row(files.get("marks.csv"), "1,").contains(",1,"), "it counts as unreadable meanwhile");
    }

    @Test
    void aHabitIsNotHeldAgainstAnAnswerThatTheOtherReadingMakesRight() {
        assertEquals(
                Optional.of(CommaReading.DECIMAL),
                CommaReading.shownBy(List.of("4,7 kΩ", "0,297 W"), DecimalMarker.POINT));
        assertEquals(
                Optional.of(CommaReading.THOUSANDS),
                CommaReading.shownBy(List.of("4.7 kΩ", "1,234.5 V"), DecimalMarker.POINT));
        assertEquals(Optional.empty(), CommaReading.shownBy(List.of("4.7 kΩ", "4,7 kΩ"), DecimalMarker.POINT));
        assertEquals(Optional.empty(), CommaReading.shownBy(List.of("4k7", "2,353 V", "12 V"), DecimalMarker.POINT));
        assertEquals("ca. -2.353 V", CommaReading.DECIMAL.of("ca. -2,353 V", DecimalMarker.POINT));
        assertEquals("2353 V", CommaReading.THOUSANDS.of("2,353 V", DecimalMarker.POINT));
        assertEquals("2353 V", CommaReading.THOUSANDS.of("2.353 V", DecimalMarker.COMMA));
        assertEquals("2,353 V", CommaReading.DECIMAL.of("2.353 V", DecimalMarker.COMMA));
        assertEquals(
                Optional.of(CommaReading.DECIMAL),
                CommaReading.shownBy(List.of("4.7 kΩ", "12.978 mA"), DecimalMarker.COMMA));
        assertEquals(Optional.of(CommaReading.THOUSANDS), CommaReading.shownBy(List.of("4,7 kΩ"), DecimalMarker.COMMA));
    }

    // Decisions

    @Test
    void decisionsCountAreShownAndKeepTheirReason() throws IOException {
        put(
                "a.csv",
                "sheet,question,answer\n"
                        + lines(ONE, "", (i, key) -> i == 0 ? "about two" : i == 1 ? "1 F" : i == 2 ? "1,234 V" : ""));
        decisions = "seat,question,answer,file,decision,value,reason\n"
                + "1," + question(0) + ",about two,,accept,,said aloud\n"
                + "1," + question(1) + ",1 F,,mark,\"0,5\",half shown\n"
                + "1," + question(2) + ",\"1,234 V\",,read as,"
                + right(ONE.places().get(2)) + ",wrote it so\n";
        Map<String, String> files = mark();
        String row = row(files.get("marks.csv"), "1,");
        assertTrue(row.contains(ONE.id() + ",2.5," + PLACES + ",2,0,1,0,0,"), row);
        assertEquals(0, marked.toDecide());
        String page = files.get("feedback/seat-001.html");
        for (String said : List.of("accepted as right, because: said aloud", "given half a mark", "wrote it so")) {
            assertTrue(page.contains(said), said);
            assertTrue(files.get("report.html").contains("What you decided"));
        }
        assertTrue(files.get("answers.csv").contains("accepted as right: said aloud"), files.get("answers.csv"));
    }

    @Test
    void aQuestionIsLeftOutForEveryone() throws IOException {
        put("a.csv", "sheet,question,answer\n" + lines(ONE, "", (i, key) -> right(key)));
        put("b.csv", "sheet,question,answer\n" + lines(TWO, "", (i, key) -> right(key)));
        String step = ONE.problems().get(0).template().name() + " "
                + ONE.places().get(1).step();
        for (String named : List.of("1," + question(1), "," + question(1), "," + step)) {
            decisions = "seat,question,decision,reason\n" + named + ",leave out,not taught yet\n";
            Map<String, String> files = mark();
            String of = "," + (PLACES - 1) + "," + (PLACES - 1) + ",";
            assertTrue(row(files.get("marks.csv"), "1,").contains(of), named);
            assertTrue(row(files.get("marks.csv"), "2,").contains(of), named);
            assertTrue(files.get("feedback/seat-002.html").contains("left out for everyone, because: not taught yet"));
            assertEquals(List.of(), marked.notes());
        }
    }

    @Test
    void aDecisionThatNoLongerFitsIsToldAndChangesNothing() throws IOException {
        put("a.csv", "sheet,question,answer\n" + lines(ONE, "", (i, key) -> right(key)));
        String before;
        String list = "seat,question,answer,file,decision,value,reason\n"
                + "1," + question(0) + ",2 F,,accept,,so\n"
                + "3," + question(0) + ",,,mark,1,so\n"
                + "1,,,gone.csv,counts,,so\n"
                + ",q77,,,leave out,,so\n"
                + "1," + question(0) + ",,,,,\n"
                + "1," + question(1) + ",1 µJ again,,read as,nothing at all,so\n";
        put("a.csv", "sheet,question,answer\n" + lines(ONE, "", (i, key) -> i == 1 ? "1 µJ again" : right(key)));
        decisions = "";
        before = mark().get("marks.csv");
        decisions = list;
        Map<String, String> files = mark();
        assertEquals(before, files.get("marks.csv"));
        for (String told : List.of(
                "decisions.csv:2: error: this decision no longer fits: seat 1 has another answer to " + question(0),
                "decisions.csv:3: error: this decision no longer fits: nothing came in from seat 3",
                "decisions.csv:4: error: this decision no longer fits: there is no such hand-in in a file “gone.csv”",
                "decisions.csv:5: error: this decision no longer fits: no sheet that came in has the question q77",
                "decisions.csv:7: error: this decision no longer fits: “nothing at all” cannot be read")) {
            assertTrue(notes().contains(told), told + "\n" + notes());
        }
        assertTrue(files.get("report.html").contains("no longer fits"));
    }

    @Test
    void aBrokenListOfDecisionsIsRefusedBeforeAnythingIsMarked() throws IOException {
        put("a.csv", "sheet,question,answer\n" + lines(ONE, "", (i, key) -> right(key)));
        decisions = "seat,question,answer,file,decision,value,reason\n"
                + "1,q1a,1 F,,accept,,\n1,q1b,,,accept,,so\n1,q1c,,,mark,2,so\nx,q2a,,,mark,1,so\n"
                + "1,q2b,,,forget,,so\n1,q2c,,,mark,1,so\n1,q2c,,,mark,0,so\n1,,,,counts,,so\n";
        String told = assertThrows(DiagnosticException.class, this::mark).getMessage();
        for (String fault : List.of(
                ":2: error: this decision has no reason",
                ":3: error: “accept” stands here without the answer accepted",
                ":4: error: “2” is not a mark that a question can have",
                ":5: error: “x” is not a seat number",
                ":6: error: “forget” is no decision",
                ":8: error: line 7 decides the same",
                ":9: error: “counts” stands here without a file")) {
            assertTrue(told.contains("decisions.csv" + fault), fault + "\n" + told);
        }
    }

    @Test
    void aFilledInLineOfTheListOfOpenMattersIsADecision() throws IOException {
        put("a.csv", "sheet,question,answer\n" + ONE.id() + "," + question(0) + ",\"=1+1 of \"\"it\"\", maybe\"\n");
        String decide = mark().get("decide.csv");
        assertEquals(1, marked.toDecide());
        decisions = decide.replaceAll(",,,\n$", ",accept,,\"a reason, with a comma\"\n");
        Map<String, String> files = mark();
        assertEquals(List.of(), marked.notes());
        assertTrue(row(files.get("marks.csv"), "1,").contains(ONE.id() + ",1," + PLACES + ",1,"));
        put("decisions.csv", decisions);
        assertTrue(mark().get("files.csv").contains("decisions.csv,,,0,not marked"));
    }

    @Test
    void answersUnderABrokenSheetIdAreListedAndMayBeGivenToTheirLearner() throws IOException {
        String id = ONE.id().toString();
        String slip = id.substring(0, 6) + (id.charAt(6) == '1' ? '2' : '1') + id.substring(7);
        put(
                "a.csv",
                "sheet,question,answer\n"
                        + lines(ONE, "", (i, key) -> right(key)).replace(id, slip));
        Map<String, String> files = mark();
        assertEquals(1, marked.toDecide());
        assertTrue(files.get("decide.csv").contains("one slip away"), files.get("decide.csv"));
        decisions = "seat,sheet,file,decision,reason\n1," + slip + ",a.csv,counts,asked her\n";
        files = mark();
        assertTrue(row(files.get("marks.csv"), "1,").contains("," + PLACES + "," + PLACES + ","));
        assertEquals(0, marked.toDecide());
    }

    // What the plan says of marking

    private static ProblemSet with(String marking) {
        return ProblemSet.of(PlanReader.read("plan.yaml", SET.plan().written() + marking), LIBRARY);
    }

    @Test
    void whatAnswersEarnIsAsThePlanSaysAndSaidOnSheetAndPage() throws IOException {
        ProblemSet set = with("""
          marking:
            unit-missing: 0.25
            late-a-day: 0.1
            grace-minutes: 30
            weights: {current-limiting/one-indicator: 2, voltage-dividers/battery-sense Rx: 0.5}
          """.replace("          marking", "marking").replace("            ", "  "));
        assertEquals(SET.id(1), set.id(1), "marking changes no number");
        Sheet sheet = new SheetMaker(set).sheet(1);
        String says = set.plan().marking().says(sheet);
        assertTrue(says.startsWith("A right answer counts one mark; ") && says.contains(" count 2 each."), says);
        assertTrue(says.contains("without its unit counts 25\u00A0%, one rounded too far half"), says);
        assertTrue(says.contains("takes 10\u00A0% off") && says.contains("the first 30 minutes"), says);
        assertTrue(MarkdownPage.render(Composer.sheet(sheet, "")).contains("one rounded too far half"));
        assertFalse(MarkdownPage.render(Composer.sheet(ONE, "")).contains("counts one mark"));
        AnswerKey first = ONE.places().get(0);
        String unitless = QuantityWriter.POINT
                .plain(first.unit().fromSi(first.expected()), Unit.ONE, 4)
                .number();
        put(
                "a.csv",
                "sheet,question,answer\n" + ONE.id() + "," + question(0) + "," + unitless + "\n" + ONE.id() + ","
                        + question(1) + ",\"" + right(ONE.places().get(1)) + "\"\n");
        for (String[] time : new String[][] {
            {"2026-03-05T10:00", "2.5", "2.5"},
            {"2026-03-05T10:30", "2.5", "2.5"},
            {"2026-03-05T10:31", "2.25", "2.5"},
            {"2026-03-06T10:01", "2", "2.5"},
            {"2026-03-25T10:00", "0", "2.5"}
        }) {
            Map<String, String> files = new TreeMap<>();
            Marking.mark(
                    new Marking.Task(
                            folder,
                            new SheetMaker(set),
                            Optional.empty(),
                            roster,
                            Optional.of(new Marking.NamedText("t.csv", "file,received\na.csv," + time[0] + "\n")),
                            Optional.of(LocalDateTime.of(2026, 3, 5, 10, 0)),
                            Optional.empty(),
                            Optional.empty(),
                            OtherSheets.NONE,
                            false),
                    files::put);
            String row = row(files.get("marks.csv"), "1,");
            assertTrue(row.contains(ONE.id() + "," + time[1] + ","), time[0] + ": " + row);
            assertTrue(row.contains("," + time[2] + ",in part,"), time[0] + ": " + row);
            assertTrue(files.get("feedback/seat-001.html").contains("one rounded too far half"));
        }
    }

    @Test
    void aMistakenPolicyIsToldWithItsPlace() {
        String told = assertThrows(
                        DiagnosticException.class,
                        () -> with("marking:\n  unit-missing: 2\n  grace-minutes: soon\n  lateness: 1\n"
                                + "  weights: {no/such: 2, voltage-dividers/battery-sense: 0}\n"))
                .getMessage();
        for (String fault : List.of(
                "\"2\" does not fit unit-missing",
                "\"soon\" does not fit grace-minutes",
                "the key \"lateness\" does not belong to marking",
                "\"0\" does not fit the weight of voltage-dividers/battery-sense")) {
            assertTrue(told.contains(fault), fault + "\n" + told);
        }
        told = assertThrows(DiagnosticException.class, () -> with("marking:\n  weights: {no/such: 2}\n"))
                .getMessage();
        assertTrue(told.contains("no problem of this plan is called \"no/such\""), told);
    }
}
