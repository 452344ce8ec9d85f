package ampersheet.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.issue.CourseFolder;
import ampersheet.sheet.ArchivedSheet;
import ampersheet.sheet.IssuedArchive;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.SheetMaker;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What came back to sheets of several archives, one of which was given out after the other. */
class DeskTakeInTest {
    private static final TemplateLibrary LIBRARY = new TemplateLibrary(List.of(TemplateFiles.builtIn()));
    private static final Limits PATIENT =
            new Limits(200_000, 600_000, 20, Duration.ofSeconds(20), Duration.ofSeconds(10));
    private static final int TURNS = 400;

    @TempDir
    private Path folder;

    private OpenDesk desk;

    @BeforeEach
    void open() throws IOException {
        Files.writeString(folder.resolve("class.csv"), "seat,name\n1,Ayo\n2,Bea\n");
        desk = OpenDesk.over(folder, PATIENT);
    }

    @AfterEach
    void nothingFailed() throws IOException {
        desk.close();
        assertEquals(List.of(), desk.failures);
    }

    private static String plan(String title, String due) {
        return "title: " + title + "\nseed: lanterns\n" + (due.isEmpty() ? "" : "due: " + due + "\n")
                + "problems:\n  - {template: current-limiting/first-current}\n";
    }

    /** Sheets of a plan, given out to seats 1 and 2 and kept in an archive. */
    private final class Given {
        final SheetMaker maker;
        final String archive;

        Given(String in, String title, String due) throws IOException {
            maker = new SheetMaker(ProblemSet.of(PlanReader.read("plan.yaml", plan(title, due)), LIBRARY));
            archive = in + "/class/keys/" + IssuedArchive.fileName(maker.set());
            Path file = folder.resolve(archive);
            Files.createDirectories(file.getParent());
            List<ArchivedSheet> sheets = List.of(kept(1), kept(2));
            try (OutputStream out = Files.newOutputStream(file)) {
                IssuedArchive.of(maker.set(), sheets, Optional.empty()).write(out);
            }
        }

        private ArchivedSheet kept(int seat) {
            return ArchivedSheet.of(maker.sheet(seat), maker.set().places(seat));
        }

        String code() {
            return IssuedArchive.set(archive.substring(archive.lastIndexOf('/') + 1));
        }

        String id(int seat) {
            return maker.sheet(seat).id().toString();
        }

        /** What a learner typed to the first question. */
        void answered(String file, int seat, String answer, FileTime at) throws IOException {
            Path written = Files.createDirectories(folder.resolve("answers")).resolve(file);
            Files.writeString(written, "sheet,question,answer\n" + id(seat) + ",q1a,\"" + answer + "\"\n");
            Files.setLastModifiedTime(written, at);
        }

        GivenOut.Sheets sheets(OptionalInt week) {
            return new GivenOut.Sheets(folder.resolve(archive), archive, code(), week, "", "", "");
        }
    }

    private static FileTime hour(int hour) {
        return FileTime.fromMillis(Duration.ofHours(hour).toMillis());
    }

    private Course course() {
        return new Course(new CourseFolder(folder));
    }

    private String read(String file) throws IOException {
        return Files.readString(folder.resolve(file));
    }

    private String marked(String... form) throws Exception {
        assertEquals(303, OpenDesk.status(desk.post("/take-in/mark", form)));
        for (int turn = 0; turn < TURNS; turn++) {
            String page = desk.get("/take-in");
            if (!page.contains("class=\"work running\"")) {
                assertTrue(page.contains("class=\"work done\""), page);
                return page;
            }
            Thread.sleep(25);
        }
        throw new AssertionError("it does not end");
    }

    private static String first(String page, String pattern) {
        Matcher found = Pattern.compile(pattern).matcher(page);
        return found.find() ? found.group(1) : "";
    }

    @Test
    void sheetsThatAreGivenOutAnewInTheSamePlaceHaveTheirMarksBesideTheFirst() throws Exception {
        Given one = new Given("made", "One", "");
        one.answered("ayo.csv", 1, "1,234 V", hour(1));
        marked();
        String ofOne = read("made/marks/marks.csv");
        String report = read("made/marks/report.html");
        Given two = new Given("made", "Two", "");
        two.answered("second.csv", 2, "about 3", hour(2));
        String before = desk.get("/take-in");
        assertEquals(two.archive, first(before, "<option value=\"([^\"]*)\" selected"), "what came in last");
        assertFalse(before.contains("/made/marks/"), "nothing of the first is shown as of the second: " + before);
        String beside = "made/marks-" + two.code();
        String page = marked("archive", two.archive);
        assertEquals(ofOne, read("made/marks/marks.csv"));
        assertEquals(report, read("made/marks/report.html"));
        assertFalse(Files.exists(folder.resolve("made/marks-before.csv")));
        assertTrue(read(beside + "/marks.csv").contains(two.id(2)));
        assertFalse(Files.exists(folder.resolve(beside + "/changes.csv")), "there was nothing before");
        assertTrue(page.contains("href=\"/" + beside + "/report.html\""), page);
        assertTrue(page.contains("--out " + beside + " "), page);
        marked("archive", two.archive);
        assertTrue(Files.exists(folder.resolve(beside + "/changes.csv")));
        assertTrue(read("made/marks-before-" + two.code() + ".csv").contains(two.id(2)));
        marked("archive", one.archive);
        assertEquals(ofOne, read("made/marks/marks.csv"));
        assertTrue(read(beside + "/marks.csv").contains(two.id(2)));
    }

    private Path marks(String in, String table) throws IOException {
        Path marks = Files.createDirectories(folder.resolve(in));
        Files.writeString(marks.resolve("marks.csv"), table);
        return marks;
    }

    @Test
    void marksThatDoNotTellWhoseTheyAreBelongToSheetsThatAreAloneInTheirPlace() throws IOException {
        Given one = new Given("made/week-2", "One", "");
        Given two = new Given("made/week-2", "Two", "");
        GivenOut.Sheets of = one.sheets(OptionalInt.of(2));
        GivenOut.Sheets other = two.sheets(OptionalInt.of(2));
        Path usual = folder.resolve("made/week-2/marks");
        Path beside = folder.resolve("made/week-2/marks-" + one.code());
        Course course = course();
        assertEquals(usual, Marks.to(course, of, List.of(of, other)).folder(), "nothing lies there yet");
        marks("made/week-2/marks", "seat,name,sheet,marks\n1,Ayo,,\n");
        assertEquals(usual, Marks.to(course, of, List.of(of, other)).folder(), "nobody has marks");
        for (String untold : List.of("seat,name,sheet,marks\n1,Ayo,,3\n", "seat,marks\n1,\"3\n", "")) {
            marks("made/week-2/marks", untold);
            assertEquals(usual, Marks.to(course, of, List.of(of)).folder(), untold);
            assertEquals(beside, Marks.to(course, of, List.of(of, other)).folder(), untold);
        }
        for (String row : List.of("1,Ayo," + two.id(1) + ",3\n", "1,Ayo,,\n2,Bea," + two.id(2) + ",0\n")) {
            marks("made/week-2/marks", "seat,name,sheet,marks\n" + row);
            assertEquals(beside, Marks.to(course, of, List.of(of)).folder(), "though the other archive is gone");
            marks("made/week-2/marks", ("seat,name,sheet,marks\n" + row).replace(',', ';'));
            assertEquals(beside, Marks.to(course, of, List.of(of)).folder(), "as a spreadsheet keeps it");
        }
        marks("made/week-2/marks-" + one.code(), "seat,name,sheet,marks\n1,Ayo,,3\n");
        Files.delete(usual.resolve("marks.csv"));
        assertEquals(beside, Marks.to(course, of, List.of(of)).folder(), "where they were");
    }

    @Test
    void marksOfAWeekThatLieWhereThoseOfTheSetDoAreFoundAndStay() throws Exception {
        Given week = new Given("made/week-1", "One", "");
        week.answered("ayo.csv", 1, "1,234 V", hour(1));
        String before = "seat,name,sheet,marks,of\n1,Ayo," + week.id(1) + ",1,4\n2,Bea,,,\n";
        marks("made/marks", before);
        assertTrue(desk.get("/take-in").contains("href=\"/made/marks/report.html\""));
        Given set = new Given("made", "Two", "");
        GivenOut.Sheets ofSet = set.sheets(OptionalInt.empty());
        assertEquals(
                folder.resolve("made/marks-" + set.code()),
                Marks.of(course(), ofSet, List.of(ofSet)).folder(),
                "the set's own go beside them");
        String page = marked("archive", week.archive);
        assertTrue(page.contains("href=\"/made/week-1/marks/report.html\""), page);
        assertEquals(before, read("made/marks/marks.csv"));
        assertTrue(read("made/week-1/marks/changes.csv").contains("Ayo"), "compared with them");
    }

    @Test
    void sheetsThatAFormNamesAndThatAreGoneAreNotTakenForOthers() throws Exception {
        Given one = new Given("made", "One", "");
        one.answered("ayo.csv", 1, "1,234 V", hour(1));
        marked();
        String marks = read("made/marks/marks.csv");
        one.answered("ayo.csv", 1, "7 V", hour(2));
        for (String path : List.of("/take-in/mark", "/take-in/choose", "/take-in/decide")) {
            String gone = desk.post(path, "archive", "made/week-3/class/keys/issued-AAAAA.zip", "key", "1");
            assertEquals(422, OpenDesk.status(gone), path + gone);
            assertTrue(gone.contains("The archive of these sheets is not there any more"), gone);
        }
        assertEquals(marks, read("made/marks/marks.csv"));
    }

    @Test
    void whatIsLateIsToldByTheDayOfTheSheetsThatAreMarked() throws Exception {
        Files.writeString(folder.resolve("plan.yaml"), plan("Two", "2026-04-30 18:00"));
        Files.writeString(folder.resolve("received.csv"), "file,received\nayo.csv,2026-03-12T18:01\n");
        Given two = new Given("made", "Two", "2026-01-01 18:00");
        two.answered("ayo.csv", 1, "3 V", hour(1));
        String now = marked("archive", two.archive);
        assertTrue(now.contains("0 files late, by received.csv."), "the day of the set may be put off: " + now);
        Given one = new Given("made", "One", "2026-03-12 18:00");
        one.answered("ayo.csv", 1, "3 V", hour(1));
        String page = marked("archive", one.archive);
        assertTrue(page.contains("1 file late, by received.csv."), page);
        assertTrue(page.contains("--due 2026-03-12T18:00"), page);
        Given three = new Given("made", "Three", "soon");
        three.answered("ayo.csv", 1, "3 V", hour(3));
        String undated = marked("archive", three.archive);
        assertTrue(undated.contains("these sheets were given out without a “hand in by”"), undated);
    }

    @Test
    void whatIsLateOfAWeekThatIsOtherwiseNowIsToldByTheDayOfItsSheets() throws Exception {
        Files.writeString(folder.resolve("course.yaml"), """
                title: Lanterns
                seed: lanterns
                problems-a-week: 1
                seats: 5
                weeks:
                  - date: 2026-03-02
                    due: 2026-05-01 18:00
                    new: [{template: current-limiting/first-current}]
                """);
        Files.writeString(folder.resolve("received.csv"), "file,received\n");
        assertTrue(desk.get("/weeks/week?week=1").contains("--due 2026-05-01T18:00"), "nothing was given out");
        new Given("made/week-1", "One", "2026-03-12 18:00");
        assertTrue(desk.get("/weeks/week?week=1").contains("--due 2026-03-12T18:00"));
        assertTrue(desk.get("/take-in").contains("Late is what came in after 2026-03-12 18:00"));
    }

    @Test
    void filesThatCameInSinceAreThoseOfWhichNothingIsToldAndThatMayBeOfTheseSheets() throws Exception {
        Given one = new Given("made/week-1", "One", "");
        Given two = new Given("made/week-2", "Two", "");
        marks("made/week-1/marks", "seat,name,sheet,marks,of\n1,Ayo," + one.id(1) + ",1,4\n");
        StringBuilder told = new StringBuilder("file,received,late\n");
        for (int file = 0; file < 600; file++) {
            String name = "file-" + (100 + file) + ".csv";
            one.answered(name, 1, "1 V", hour(1));
            told.append(name).append(",,\n");
        }
        Files.writeString(folder.resolve("made/week-1/marks/files.csv"), told);
        two.answered("later.csv", 1, "1 V", hour(2));
        String choose = "/take-in?archive=" + one.archive;
        String since = "mark again: files came in since";
        assertFalse(desk.get(choose).contains(since), "what is told, and what is of another week, is no news");
        one.answered("late.csv", 2, "1 V", hour(3));
        assertTrue(desk.get(choose).contains(since));
        Files.writeString(folder.resolve("answers/late.csv"), "sheet,question,answer\nmine,q1a,1 V\n");
        assertTrue(desk.get(choose).contains(since), "nobody knows of which sheets it is");
    }

    @Test
    void toWhichSheetsAnswersAreIsReadOfIdsAsPeopleTypeThem() throws IOException {
        Given one = new Given("made", "One", "");
        Given two = new Given("made", "Two", "");
        String typed = one.id(1).replace("-", " ").toLowerCase(Locale.ROOT).replace('0', 'o');
        Map<String, Integer> both = Map.of(one.code(), 2, two.code(), 1);
        for (String table : List.of(
                "sheet,question,answer\n" + typed + ",q1a,1 V\n" + one.id(2).replace("-", "") + ",q1a,1 V\n"
                        + "sheet,question,answer\n" + two.id(1) + ",q1a,1 V\n",
                "\uFEFFname;sheet;q1a\nAyo;" + typed + ";1\nBea;" + one.id(2) + ";2\nCleo;" + two.id(1)
                        + ";\nDee;mine;3\n",
                "# Sheet " + one.id(1) + "\n\n" + one.id(2) + " and \"" + two.id(1) + "\n")) {
            assertEquals(both, AnsweredSheets.in(table), table);
        }
        assertEquals(Map.of(), AnsweredSheets.in("sheet,question,answer\nmine,q1a,2\n"));
    }
}
