package ampersheet.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.sheet.MarkingPolicy;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.SheetMaker;
import java.io.IOException;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** Shares, grades, the page to print, and which feedback page goes to whom. */
class GradebookTest extends HandInFixture {
    private static ProblemSet with(String marking) {
        return ProblemSet.of(PlanReader.read("plan.yaml", SET.plan().written() + marking), LIBRARY);
    }

    private Map<String, String> mark(ProblemSet set, boolean pseudonyms) {
        Map<String, String> files = new TreeMap<>();
        marked = Marking.mark(
                new Marking.Task(
                        folder,
                        new SheetMaker(set),
                        Optional.empty(),
                        roster,
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        OtherSheets.NONE,
                        pseudonyms),
                files::put);
        return files;
    }

    /** Seat 1 has five of seven right, seat 2 all, from seat 3 nothing came in. */
    private void handIn() throws IOException {
        put("a.csv", HEAD + lines(ONE, ",1,1,ABCDEF", (i, key) -> i < 2 ? "77 F" : right(key)));
        put("b.csv", saved(TWO, "ABCDEF", 1, true));
    }

    @Test
    void gradesGoByThePercentThatIsPrinted() throws IOException {
        handIn();
        assertEquals(7, PLACES);
        Map<String, String> files = mark(with("marking:\n  grades: {A: 90, B: 71.4, C: 50, F: 0}\n"), false);
        String marks = files.get("marks.csv");
        assertTrue(marks.lines().findFirst().orElse("").endsWith(",status,percent,grade,email"), marks);
        assertTrue(row(marks, "1,").endsWith(",in,71.4,B,a@x"), marks);
        assertTrue(row(marks, "2,").endsWith(",in,100,A,b@x"), marks);
        assertTrue(row(marks, "3,").endsWith(",nothing,,,c@x"), marks);
        assertTrue(files.get("feedback/seat-001.html").contains("71.4\u00A0%), grade B."));
        assertTrue(files.get("report.html").contains("Grades: A: 1, B: 1, C: 0, F: 0."));
        assertTrue(files.get("feedback/seat-001.html").contains("A from 90\u00A0%, B from 71.4\u00A0%"));
        assertTrue(row(
                        mark(with("marking:\n  grades: {A: 90, B: 71.5, C: 50, F: 0}\n"), false)
                                .get("marks.csv"),
                        "1,")
                .endsWith(",71.4,C,a@x"));
    }

    @Test
    void withoutGradesThereIsNoColumnForThem() throws IOException {
        handIn();
        Map<String, String> files = mark(SET, false);
        assertTrue(row(files.get("marks.csv"), "1,").endsWith(",in,71.4,a@x"), files.get("marks.csv"));
        assertFalse(files.get("feedback/seat-001.html").contains("grade"));
        assertFalse(files.get("gradebook.html").contains("Grade<"));
    }

    @Test
    void theGradebookHasALineForEachSeatAndAColumnForEachProblem() throws IOException {
        handIn();
        String book =
                mark(with("marking:\n  grades: {pass: 50, fail: 0}\n"), false).get("gradebook.html");
        for (String said :
                new String[] {">1 (3)<", ">2 (4)<", "5 of 7", "Ada", "Cem", "71.4", "pass from 50", "nothing", "Grade"
                }) {
            assertTrue(book.contains(said), said);
        }
        String none = mark(SET, true).get("gradebook.html");
        assertFalse(none.contains("Ada"));
    }

    @Test
    void aListSaysWhichPageGoesToWhomAndNoPagesNameIsALearners() throws IOException {
        handIn();
        Map<String, String> files = mark(SET, false);
        assertEquals(
                "file,seat,name,email\nfeedback/seat-001.html,1,Ada,a@x\nfeedback/seat-002.html,2,'=Bo,b@x\n",
                files.get("send.csv").replace("\r\n", "\n"));
        assertFalse(mark(SET, true).get("send.csv").contains("Ada"));
    }

    @Test
    void percentAreRoundedHalfUpToATenth() {
        assertEquals(714, MarkingPolicy.percent(500, 700));
        assertEquals(5, MarkingPolicy.percent(1, 200));
        assertEquals(0, MarkingPolicy.percent(0, 0));
        assertEquals("71.4", MarkingPolicy.tenths(714));
        assertEquals("100", MarkingPolicy.tenths(1000));
    }

    @Test
    void bandsThatLeaveAGapOrDoNotFallAreTold() {
        for (String[] wrong : new String[][] {
            {"{A: 90, B: 50}", "below 50 % there is no grade"},
            {"{A: 50, B: 90, C: 0}", "the grade B begins no lower"},
            {"{A: 101, C: 0}", "does not fit a grade"},
            {"{A: high, C: 0}", "does not fit a grade"}
        }) {
            String told = assertThrows(DiagnosticException.class, () -> with("marking:\n  grades: " + wrong[0] + "\n"))
                    .getMessage();
            assertTrue(told.contains(wrong[1]), told);
        }
    }
}
