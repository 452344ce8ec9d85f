package ampersheet.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.sheet.ArchivedClass;
import ampersheet.sheet.ArchivedSheet;
import ampersheet.sheet.ArchivedSheets;
import ampersheet.sheet.ClassSheets;
import ampersheet.sheet.CoursePlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Sheet;
import ampersheet.sheet.SheetMaker;
import ampersheet.sheet.Timetable;
import java.io.IOException;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** One list of decisions and one folder of answers for all weeks of a course. */
class DecisionsOfWeeksTest extends HandInFixture {
    private static final Timetable COURSE = new Timetable(CoursePlanReader.read("course.yaml", """
      title: Lanterns
      seed: weeks
      problems-a-week: 1
      seats: 5
      weeks:
        - date: 2026-03-02
          new: [{template: current-limiting/first-current}]
        - date: 2026-03-09
          new: [{template: voltage-dividers/two-in-series}]
      """), LIBRARY);
    private static final SheetMaker FIRST = week(1);
    private static final SheetMaker SECOND = week(2);
    private static final String COLUMNS = "seat,sheet,question,answer,file,issue,decision,value,reason\n";
    private static final String UNTOLD = "does not tell on which it is";

    private Optional<LocalDateTime> due = Optional.empty();
    private OtherSheets others = OtherSheets.NONE;

    private static SheetMaker week(int number) {
        return new SheetMaker(ProblemSet.of(COURSE.week(number), LIBRARY));
    }

    private Map<String, String> mark(ClassSheets sheets) {
        Map<String, String> files = new TreeMap<>();
        Marking.Task task = new Marking.Task(
                folder,
                sheets,
                Optional.empty(),
                roster,
                received,
                due,
                Optional.empty(),
                Optional.empty(),
                others,
                false);
        marked = Marking.mark(task.deciding(new Marking.NamedText("decisions.csv", decisions)), files::put);
        return files;
    }

    private static String wrong(Sheet sheet) {
        return "sheet,question,answer\n" + lines(sheet, "", (i, key) -> "77 F");
    }

    @Test
    void aDecisionThatDoesNotTellOnWhichWeekItIsChangesNoneAndIsTold() throws IOException {
        put("one.csv", wrong(FIRST.sheet(1)));
        put("two.csv", wrong(SECOND.sheet(1)));
        decisions = COLUMNS;
        String before = mark(SECOND).get("marks.csv");
        String id = FIRST.sheet(1).id().toString();
        for (String sheet : List.of("", id.substring(0, id.length() - 1) + (id.endsWith("7") ? "8" : "7"))) {
            decisions =
                    COLUMNS + "1," + sheet + ",q1a,,,,mark,1,by hand\n2," + sheet + ",q1a,,,,leave out,,not taught\n";
            Map<String, String> files = mark(SECOND);
            assertEquals(before, files.get("marks.csv"), sheet);
            assertTrue(notes().contains("decisions.csv:2: error: this decision no longer fits: the class"), notes());
            assertTrue(notes().contains("decisions.csv:3:") && notes().contains(UNTOLD), notes());
        }
        decisions = COLUMNS + "1," + SECOND.sheet(1).id() + ",q1a,,,,mark,1,by hand\n";
        assertFalse(before.equals(mark(SECOND).get("marks.csv")));
        assertFalse(notes().contains("decisions.csv"), notes());
        decisions = COLUMNS + "1,," + "q1a,,,issued-" + FIRST.code() + ",mark,1,by hand\n";
        assertEquals(before, mark(SECOND).get("marks.csv"));
        assertFalse(notes().contains("decisions.csv"), "it says that it is of the other week: " + notes());
    }

    @Test
    void ofAListThatNamesOtherSheetsOfThePlanEachLineHasToTellItsOwn() throws IOException {
        put("a.csv", wrong(ONE));
        decisions = COLUMNS + "1,," + question(0) + ",,,,mark,1,by hand\n";
        assertTrue(row(mark().get("marks.csv"), "1,").contains(ONE.id() + ",1,"), "there is no other sheet");
        decisions += "1," + FIRST.sheet(1).id() + ",q9z,,,,mark,1,by hand\n";
        assertTrue(row(mark().get("marks.csv"), "1,").contains(ONE.id() + ",0,"));
        assertTrue(notes().contains("decisions.csv:2:") && notes().contains(UNTOLD), notes());
        assertFalse(notes().contains("decisions.csv:3:"), notes());
    }

    @Test
    void aHandInWithoutAnIdCountsForTheWeekInWhichThatWasDecidedAndForNoOther() throws IOException {
        String id = FIRST.sheet(1).id().toString();
        put("one.csv", wrong(FIRST.sheet(1)).replace(id, "mine"));
        decisions = COLUMNS;
        String decide = mark(FIRST).get("decide.csv");
        assertTrue(decide.contains(",issued-" + FIRST.code() + ",,,\n"), decide);
        decisions = decide.replace("\n\"\",,mine,", "\n1,,mine,").replace(",,,\n", ",counts,,asked her\n");
        assertTrue(row(mark(FIRST).get("marks.csv"), "1,").contains(id + ",0,"), decisions);
        put("two.csv", "sheet,question,answer\n" + lines(SECOND.sheet(1), "", (i, key) -> right(key)));
        String second = mark(SECOND).get("marks.csv");
        String all =
                SECOND.sheet(1).places().size() + "," + SECOND.sheet(1).places().size() + ",";
        assertTrue(row(second, "1,").contains("," + all), second);
        assertFalse(notes().contains("no longer fits"), notes());
        decisions = decisions.replace("issued-" + FIRST.code(), "");
        assertEquals(second, mark(SECOND).get("marks.csv"), "where it does not tell its week it counts for none");
        assertTrue(notes().contains(UNTOLD), notes());
    }

    @Test
    void whichOfTwoHandInsOfAWeekCountsDoesNotMakeThemCountInAnother() throws IOException {
        put("one.csv", wrong(FIRST.sheet(1)));
        put("one-again.csv", wrong(FIRST.sheet(1)).replace("77", "78"));
        put("two.csv", "sheet,question,answer\n" + lines(SECOND.sheet(1), "", (i, key) -> right(key)));
        decisions = COLUMNS;
        String before = mark(SECOND).get("marks.csv");
        decisions = "seat,sheet,file,decision,reason\n1," + FIRST.sheet(1).id() + ",one.csv,counts,asked her\n";
        String first = row(mark(FIRST).get("marks.csv"), "1,");
        assertTrue(first.endsWith(",in,0,a@x"), first);
        assertEquals(before, mark(SECOND).get("marks.csv"));
        assertFalse(notes().contains("no longer fits"), notes());
    }

    @Test
    void aQuestionOfASeatThatHasNoSheetIsLeftOutForNobodyAndTheOthersAreMarked() throws IOException {
        put("a.csv", wrong(ONE));
        ArchivedSheet kept = ArchivedSheet.of(ONE, SET.places(1));
        ClassSheets one = new ArchivedSheets(
                new ArchivedClass("issued.zip", SET.plan(), Optional.empty(), LIBRARY, List.of(kept)), LIBRARY);
        decisions = COLUMNS + "3,," + question(0) + ",,,,leave out,,not taught\n";
        assertTrue(row(mark(one).get("marks.csv"), "1,").contains(ONE.id() + ",0," + PLACES + ","));
        assertTrue(notes().contains("no longer fits: this archive holds no sheet for seat 3"), notes());
    }

    @Test
    void aSeatThatHasNoSheetStopsNobodyElsesMarksWhateverIsSaidOfIt() throws IOException {
        put("a.csv", wrong(ONE));
        put("grid.csv", "seat,q1a\n3,2 V\n");
        put("mine.csv", wrong(ONE).replace(ONE.id().toString(), "mine"));
        ArchivedSheet kept = ArchivedSheet.of(ONE, SET.places(1));
        ClassSheets one = new ArchivedSheets(
                new ArchivedClass("issued.zip", SET.plan(), Optional.empty(), LIBRARY, List.of(kept)), LIBRARY);
        decisions = COLUMNS + "3,mine,,,mine.csv,,counts,,asked\n";
        Map<String, String> files = mark(one);
        assertTrue(row(files.get("marks.csv"), "1,").contains(ONE.id() + ",0," + PLACES + ","));
        assertTrue(notes().contains("decisions.csv:2: error: this decision no longer fits: seat 3 was given"), notes());
        assertTrue(notes().contains("grid.csv:2: error: seat 3 was given no sheet of these"), notes());
        assertEquals(2, marked.toDecide());
    }

    @Test
    void onlyFilesWithSomethingOfTheseSheetsAreLateForThem() throws IOException {
        put("one.csv", wrong(FIRST.sheet(1)));
        put("two.csv", wrong(SECOND.sheet(1)));
        put("both.csv", wrong(FIRST.sheet(2)) + wrong(SECOND.sheet(2)));
        put("nobody.csv", wrong(FIRST.sheet(3)).replace(FIRST.sheet(3).id().toString(), "mine"));
        received = Optional.of(
                new Marking.NamedText(
                        "received.csv",
                        "file,received\n"
                                + "one.csv,2026-03-20T09:00\ntwo.csv,2026-03-20T09:00\nboth.csv,2026-03-20T09:00\nnobody.csv,2026-03-20T09:00\n"));
        due = Optional.of(LocalDateTime.of(2026, 3, 10, 18, 0));
        decisions = COLUMNS;
        String files = mark(FIRST).get("files.csv");
        assertEquals(3, marked.late(), files);
        assertTrue(row(files, "two.csv").startsWith("two.csv,2026-03-20T09:00,,0,"), files);
        decisions = COLUMNS + "1," + SECOND.sheet(1).id() + ",,,two.csv,issued-" + FIRST.code() + ",counts,,asked\n";
        assertTrue(row(mark(FIRST).get("files.csv"), "two.csv").contains(",late,"), "it counts for them");
    }

    @Test
    void answersToAnotherWeekAreNobodysToDecideHereAndThoseToEarlierSheetsOfTheSameWeekAre() throws IOException {
        String second =
                wrong(SECOND.sheet(1)).replace("answer\n", "answer,seat\n").replace("77 F\"", "77 F\",1");
        put("two.csv", second);
        String earlier = wrong(ONE).replace("answer\n", "answer,seat\n").replace("77 F\"", "77 F\",2");
        put("early.csv", earlier.replace(ONE.id().toString(), TWO.id().toString()));
        decisions = COLUMNS;
        others = OtherSheets.among(
                List.of(
                        new OtherSheets.Given("week-1", FIRST.code()),
                        new OtherSheets.Given("week-1", SET.id(1).toString().substring(0, 5)),
                        new OtherSheets.Given("week-2", SECOND.code())),
                FIRST.code());
        Map<String, String> files = mark(FIRST);
        assertTrue(row(files.get("marks.csv"), "1,").contains(",nothing,"), files.get("marks.csv"));
        assertTrue(row(files.get("marks.csv"), "2,").contains(",undecided,"), files.get("marks.csv"));
        assertEquals(1, marked.toDecide());
        assertTrue(row(files.get("files.csv"), "two.csv").contains(",to other sheets,"), files.get("files.csv"));
        assertTrue(
                row(files.get("set-aside.csv"), "two.csv,2").contains("to a sheet of another week"), "nothing is lost");
        others = OtherSheets.NONE;
        assertTrue(row(mark(FIRST).get("marks.csv"), "1,").contains(",undecided,"), "where that is not known");
    }

    @Test
    void whereNothingTellsThePlaceOfTheSheetsNoOthersAreOfAnother() {
        List<OtherSheets.Given> given =
                List.of(new OtherSheets.Given("week-1", "AAAAA"), new OtherSheets.Given("week-2", "BBBBB"));
        assertEquals(new OtherSheets(Set.of("BBBBB"), Set.of("BBBBB")), OtherSheets.among(given, "AAAAA"));
        assertEquals(new OtherSheets(Set.of("AAAAA", "BBBBB"), Set.of()), OtherSheets.among(given, "CCCCC"));
        List<OtherSheets.Given> both = List.of(given.get(0), given.get(1), new OtherSheets.Given("week-2", "AAAAA"));
        assertEquals(new OtherSheets(Set.of("BBBBB"), Set.of()), OtherSheets.among(both, "AAAAA"));
    }
}
