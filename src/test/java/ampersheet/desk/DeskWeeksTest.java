package ampersheet.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.issue.Issue;
import ampersheet.sheet.CoursePlanReader;
import ampersheet.sheet.Plan;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Roster;
import ampersheet.sheet.SheetId;
import ampersheet.sheet.Timetable;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A course of weeks at the desk: begun, changed, looked at, and a week of it made. */
class DeskWeeksTest {
    private static final Limits PATIENT =
            new Limits(200_000, 600_000, 20, Duration.ofSeconds(20), Duration.ofSeconds(10));
    private static final int PATIENCE = 240;
    private static final String COURSE = """
            title: Lanterns
            seed: lanterns
            problems-a-week: 2
            seats: 5
            weeks:
              - date: 2026-03-02
                title: One lamp
                new: [{template: current-limiting/first-current}]
              - date: 2026-03-09
                new: [{template: voltage-dividers/two-in-series}]
            """;

    @TempDir
    private Path folder;

    private OpenDesk desk;

    @BeforeEach
    void open() throws IOException {
        desk = OpenDesk.withCourse(folder, PATIENT);
    }

    @AfterEach
    void nothingFailed() throws IOException {
        desk.close();
        assertEquals(List.of(), desk.failures);
    }

    private void course() throws IOException {
        Files.writeString(folder.resolve("course.yaml"), COURSE);
    }

    private String written() throws IOException {
        return Files.readString(folder.resolve("course.yaml"));
    }

    private String follow(String reply) throws IOException {
        assertEquals(303, OpenDesk.status(reply), reply);
        Matcher location = Pattern.compile("Location: (\\S+)").matcher(reply);
        assertTrue(location.find(), reply);
        return desk.get(location.group(1));
    }

    @Test
    void whereThereAreNoWeeksThePlaceSaysWhatTheyAreForAndMakesSomeOfTheSet() throws IOException {
        String none = desk.get("/weeks");
        assertTrue(none.contains("A course of weeks says what enters in which week"), none);
        assertFalse(none.contains("<textarea"), "there is nothing to change yet");
        String undated = follow(desk.post("/weeks/start", "first", "soon"));
        assertTrue(undated.contains("Say on which day the first week begins"), undated);
        String begun = follow(desk.post("/weeks/start", "first", "2026-04-13", "weeks", "3"));
        assertTrue(begun.contains("made of the problems of your set"), begun);
        assertTrue(begun.contains("3 weeks, looked at for 3 learners, numbers kept for 40."), begun);
        assertTrue(written().contains("  - date: 2026-04-27\n"), written());
        assertTrue(written().contains("{template: current-limiting/one-indicator, example: yes}"), written());
        String again = follow(desk.post("/weeks/start", "first", "2027-01-01"));
        assertTrue(again.contains("nothing is written over them"), again);
        assertFalse(written().contains("2027"), written());
        assertTrue(follow(desk.post("/weeks/undo")).contains("Begin with a small course of weeks"));
    }

    @Test
    void ofASetThatCannotReturnUsualLessonsMakeTheWeeksWhichFitAndItIsToldWhy() throws IOException {
        Files.writeString(folder.resolve("plan.yaml"), """
                title: Again
                repeats: allowed
                problems: [{template: current-limiting/first-current}]
                """);
        String begun = follow(desk.post("/weeks/start", "first", "2026-04-13"));
        assertTrue(begun.contains("In the way: in a course nobody meets the same numbers twice (expected: "), begun);
        assertTrue(begun.contains("4 weeks, looked at for 3 learners"), begun);
        assertTrue(begun.contains("series resistor for an indicator"), begun);
    }

    @Test
    void forAClassWithASeatBehindAllThatACourseKeepsNoWeeksAreBegunAndTheSeatsAreTheReason() throws IOException {
        Files.writeString(folder.resolve("class.csv"), "seat,name\n1001,Ayo\n");
        String refused = desk.post("/weeks/start", "first", "2026-04-13");
        assertEquals(422, OpenDesk.status(refused));
        assertTrue(refused.contains("seats") && refused.contains("999"), refused);
        assertFalse(Files.exists(folder.resolve("course.yaml")));
        Files.writeString(folder.resolve("class.csv"), "seat,name\n101,Ayo\n125,Bo\n");
        String begun = follow(desk.post("/weeks/start", "first", "2026-04-13"));
        assertTrue(begun.contains("looked at for 2 learners, numbers kept for 130."), begun);
    }

    @Test
    void theTimetableIsAFigureWithItsWordsAndEachWeekTellsWhatItTakes() throws IOException {
        course();
        String page = desk.get("/weeks");
        assertTrue(page.contains("<svg") && page.contains("<table"), page);
        assertTrue(page.contains("Week 1, <span class=\"whole\">2026-03-02</span>: One lamp"), page);
        assertTrue(page.contains("has one template here"), page);
        assertTrue(page.contains("ampersheet plan course.yaml --learners 3 "), page);
        String week = desk.get("/weeks/forecast?week=2", "HX-Request: true\r\n");
        assertTrue(week.contains("<dt>Marks</dt>") && week.contains("sides a learner"), week);
        assertTrue(week.contains("A sheet has 2 problems to work on; with fewer than 8 luck"), week);
        String alone = desk.get("/weeks/forecast?week=2");
        assertTrue(alone.contains("Week 2: what it takes") && alone.contains("<dt>Levels</dt>"), alone);
        String beyond = desk.get("/weeks/week?week=3");
        assertEquals(422, OpenDesk.status(beyond), beyond);
    }

    @Test
    void aWeekThatCannotBeMadeSaysWhyWhereItsForecastWouldStand() throws IOException {
        Files.writeString(
                folder.resolve("course.yaml"),
                COURSE.replace("first-current}", "first-current, given: {V: 6 V, R: 1.2 kΩ}}")
                        .replace("seats: 5", "seats: 30"));
        String part = desk.get("/weeks/forecast?week=2", "HX-Request: true\r\n");
        assertEquals(200, OpenDesk.status(part), part);
        assertTrue(part.contains("class=\"error\"") && part.contains("are needed"), part);
        assertFalse(part.contains("hx-get"), "it is not asked again");
        assertTrue(desk.get("/weeks/forecast?week=2").contains("class=\"error\""));
        String sheet = desk.get("/weeks/sheet?week=2&seat=1");
        assertTrue(sheet.contains("Let it return less often") && !sheet.contains("repeats:"), sheet);
        Files.writeString(folder.resolve("course.yaml"), "title: Broken\n");
        String broken = desk.get("/weeks/forecast?week=2", "HX-Request: true\r\n");
        assertTrue(OpenDesk.status(broken) == 200 && broken.contains("class=\"error\""), broken);
    }

    @Test
    void aWeekThatWasMadeKeepsItsNumbersAndOneThatWouldMeetThemIsToldToBeginBehind() throws IOException {
        course();
        TemplateLibrary library = new TemplateLibrary(List.of(TemplateFiles.builtIn()));
        Plan second = new Timetable(CoursePlanReader.read("course.yaml", COURSE), library).week(2);
        Path made = folder.resolve("made/week-2/class");
        Issue.issue(second, new Roster(List.of(new Roster.Seat(1, "Ada"))), library, made, 1);
        assertFalse(desk.get("/weeks").contains("begins behind"), "it lies where the course has it");
        Files.writeString(
                folder.resolve("course.yaml"), COURSE.replace("title: One lamp", "title: One lamp\n    problems: 3"));
        String page = desk.get("/weeks");
        assertTrue(page.contains("Week 1 begins behind the numbers that lie out already"), page);
        assertFalse(page.contains("Week 2 begins behind"), page);
        String sheet = desk.get("/weeks/sheet?week=2&seat=1&side=sheet", "HX-Request: true\r\n");
        String id = ProblemSet.of(second, library).id(1).toString();
        assertTrue(sheet.contains(id), sheet);
    }

    @Test
    void theTextOfTheWeeksIsChangedWithItsFaultsAtTheirLinesAndTakenBack() throws IOException {
        course();
        String seen = desk.seen("/weeks");
        String wrong = desk.post("/weeks/text", "seen", seen, "text", COURSE.replace("2026-03-09", "2026-02-09"));
        assertEquals(422, OpenDesk.status(wrong));
        assertTrue(wrong.contains("<li value=\"9\" class=\"wrong\">"), wrong);
        assertEquals(COURSE, written());
        String kept = follow(desk.post("/weeks/text", "seen", seen, "text", COURSE.replace("One lamp", "Two lamps")));
        assertTrue(kept.contains("The weeks are kept.") && kept.contains(": Two lamps"), kept);
        String stale = desk.post("/weeks/text", "seen", seen, "text", COURSE);
        assertEquals(409, OpenDesk.status(stale));
        assertTrue(stale.contains("action=\"/weeks/text\""), stale);
        follow(desk.post("/weeks/undo"));
        assertEquals(COURSE, written());
        Files.writeString(folder.resolve("course.yaml"), COURSE.replace("seats: 5", "seats: many"));
        assertTrue(desk.get("/weeks").contains("<li value=\"4\" class=\"wrong\">"));
    }

    @Test
    void anySeatOfAWeekIsLookedAtSheetAndKeyAndNoneBehindThoseWhoHaveNumbers() throws IOException {
        course();
        String sheet = desk.get("/weeks/sheet?week=1&seat=2&side=sheet", "HX-Request: true\r\n");
        assertTrue(sheet.contains("Lanterns: One lamp"), sheet);
        assertTrue(sheet.contains("/weeks/print?week=1&amp;seat=2"), sheet);
        String key = desk.get("/weeks/sheet?week=1&seat=2&side=key");
        assertTrue(key.contains("Key of seat 2") && key.contains("href=\"/weeks/week?week=1\""), key);
        assertTrue(desk.get("/weeks/sheet?week=1&seat=6").contains("class=\"error\""));
    }

    @Test
    void nothingIsPrintedOrMadeOfASeatOrAWeekThatTheCourseDoesNotHave() throws IOException {
        course();
        assertEquals(200, OpenDesk.status(desk.get("/weeks/print?week=1&seat=5")));
        String beyond = desk.get("/weeks/print?week=1&seat=6");
        assertEquals(422, OpenDesk.status(beyond));
        assertTrue(beyond.contains("keeps numbers for"), beyond);
        for (String week : List.of("", "?week=", "?week=first", "?week=99")) {
            assertEquals(422, OpenDesk.status(desk.post("/weeks/make" + week, "what", "practice")), week);
            String about = desk.post("/weeks/about" + week, "seen", desk.seen("/weeks"), "title", "Mine");
            assertEquals(422, OpenDesk.status(about), week);
        }
        assertEquals(COURSE, written());
        assertFalse(Files.exists(folder.resolve("made/week-1")));
    }

    @Test
    void aTitleThatBeginsAWeekIsEmptiedLikeAnyOther() throws IOException {
        Files.writeString(
                folder.resolve("course.yaml"),
                COURSE.replace(
                        "  - date: 2026-03-02\n    title: One lamp\n",
                        "  - title: One lamp   # so far\n    date: 2026-03-02\n"));
        String seen = desk.seen("/weeks");
        String kept = follow(desk.post("/weeks/about?week=1", "seen", seen, "title", "", "problems", "2"));
        assertTrue(kept.contains("The weeks are kept."), kept);
        assertEquals(
                COURSE.replace("  - date: 2026-03-02\n    title: One lamp\n", "  # so far\n  - date: 2026-03-02\n"),
                written());
    }

    @Test
    void aWeekIsMadeIntoAFolderOfItsOwnAndSaysWhatHasChangedOfItSince() throws Exception {
        course();
        make("/weeks/make?week=2", "what", "pages");
        String made = done();
        assertTrue(made.contains("3 sheets, each with its key, in made/week-2/class."), made);
        assertTrue(made.contains("href=\"/made/week-2/class/index.html\""), made);
        assertFalse(made.contains("class=\"older\""), made);
        Files.writeString(
                folder.resolve("course.yaml"), COURSE.replace("new: [{template: v", "new: [{count: 2, template: v"));
        assertTrue(desk.get("/weeks/week?week=2").contains("older than what this week asks"));
        assertTrue(desk.get("/give-out").contains("href=\"/weeks/week?week=2#there\">made/week-2</a>"));
        String longer = "  - {date: 2026-03-16, problems: 3}\n";
        for (String renamed : List.of(
                COURSE.replace("title: Lanterns", "title: Lamps"),
                COURSE.replace("  - date: 2026-03-09\n", "  - date: 2026-03-09\n    title: Two\n"),
                COURSE.replace("date: 2026-03-09\n", "date: 2026-03-09\n    title: Second\n") + longer)) {
            String kept = keep(renamed);
            assertTrue(kept.contains("Week 2 was made before with the same numbers under other sheet IDs"), kept);
            assertFalse(kept.contains("problems or numbers"), kept);
        }
        assertFalse(keep(COURSE + longer).contains("made before with"), "what lies out keeps its IDs, too");
        for (String otherwise : List.of(
                COURSE.replace("seed: lanterns", "seed: lamps"),
                COURSE.replace("seats: 5", "seats: 6"),
                COURSE.replace("problems-a-week: 2", "problems-a-week: 1") + longer)) {
            String kept = keep(otherwise);
            assertTrue(kept.contains("Week 2 was made before with other problems or numbers"), kept);
            assertFalse(kept.contains("under other sheet IDs"), kept);
        }
        String back = keep(COURSE);
        assertFalse(back.contains("made before with"), back);
        assertTrue(back.contains("Another seed gives everybody other numbers"), back);
        String in = desk.get("/take-in");
        assertTrue(in.contains("made/week-2/class/keys/issued-"), "it can be marked");
        assertTrue(in.contains("at <a href=\"/weeks\">Weeks</a>"), in);

        desk.close();
        Files.setLastModifiedTime(
                folder.resolve("course.yaml"), FileTime.fromMillis(System.currentTimeMillis() + 60_000));
        desk = OpenDesk.over(folder, PATIENT);
        assertFalse(desk.get("/weeks/week?week=2").contains("class=\"older\""), "its archive tells what it asked");
        keep(COURSE.replace("new: [{template: v", "new: [{count: 2, template: v"));
        Files.setLastModifiedTime(
                folder.resolve("course.yaml"), FileTime.fromMillis(System.currentTimeMillis() + 60_000));
        assertTrue(desk.get("/weeks/week?week=2").contains("older than what this week asks"));
    }

    @Test
    void whatWasMadeOfAWeekThatTheCourseHasNoLongerIsStillReached() throws IOException {
        course();
        assertEquals(422, OpenDesk.status(desk.get("/weeks/week?week=3")));
        Files.createDirectories(folder.resolve("made/week-3"));
        Files.writeString(folder.resolve("made/week-3/handout.pdf"), "%PDF");
        Files.writeString(folder.resolve("made/week-3/handout-issued-ABCDE.zip"), "PK");
        assertTrue(desk.get("/give-out").contains("href=\"/weeks/week?week=3#there\""));
        String page = desk.get("/weeks/week?week=3");
        assertTrue(page.contains("has no week 3, but 2"), page.substring(page.indexOf("<h1")));
        for (String file : List.of("handout.pdf", "handout-issued-ABCDE.zip")) {
            assertTrue(page.contains("href=\"/made/week-3/" + file + "\""), page);
        }
        Files.writeString(folder.resolve("course.yaml"), "title: Broken\n");
        assertTrue(desk.get("/weeks/week?week=3").contains("href=\"/made/week-3/handout.pdf\""));
    }

    @Test
    void theSameByCommandsTakesTheFontAndTheTemplatesOfTheCourse() throws IOException {
        course();
        assertFalse(desk.get("/weeks/week?week=1").contains("--templates"));
        Files.createDirectories(folder.resolve("templates"));
        Files.writeString(folder.resolve("font.ttf"), "a font");
        String week = desk.get("/weeks/week?week=1");
        assertTrue(week.contains("/handout.pdf --font font.ttf --templates templates\n"), week);
        assertTrue(week.contains("/class --font font.ttf --templates templates\n"), week);
        assertTrue(week.contains("--out marks-of-all --templates templates<"), week);
        assertTrue(desk.get("/weeks").contains("--figure weeks.svg --templates templates<"));
    }

    private String keep(String text) throws IOException {
        return follow(desk.post("/weeks/text", "seen", desk.seen("/weeks"), "text", text));
    }

    private String id(int week, int seat) throws IOException {
        String sheet = desk.get("/weeks/sheet?week=" + week + "&seat=" + seat);
        Matcher id = SheetId.PRINTED.matcher(sheet);
        while (id.find()) {
            if (SheetId.set(id.group()).isPresent()) {
                return id.group();
            }
        }
        throw new AssertionError("no ID on " + sheet);
    }

    private Path marks(int week, String table) {
        return folder.resolve("made/week-" + week + "/marks/" + table);
    }

    private String taken(String page) {
        assertTrue(page.contains("class=\"work done\""), page);
        return page;
    }

    private String hidden(String page, String name) {
        Matcher value =
                Pattern.compile("name=\"" + name + "\" value=\"([^\"]*)\"").matcher(page);
        assertTrue(value.find(), page);
        return value.group(1);
    }

    @Test
    void marksOfEachWeekLieApartAndWhatIsDecidedOfOneOutlivesTheOther() throws Exception {
        course();
        for (int week = 1; week <= 2; week++) {
            make("/weeks/make?week=" + week, "what", "pages");
            until("/weeks/week?week=" + week);
            desk.send(
                    "/take-in/files",
                    "evening-" + week + ".csv",
                    "sheet,question,answer\n" + id(week, 1) + ",q1a,\"1,234 V\"\n" + id(week, 2) + ",q1a,2 V\n");
            String in = desk.get("/take-in");
            assertTrue(
                    in.contains(" selected>Week " + week + ": Lanterns")
                            && in.contains("/week-" + week + "/class/keys/"),
                    "the sheets of what came in last: " + in);
            make("/take-in/mark");
            taken(until("/take-in"));
        }
        String first = Files.readString(marks(1, "marks.csv"));
        String second = desk.get("/take-in");
        assertTrue(second.contains("href=\"/made/week-2/marks/report.html\""), second);
        assertTrue(
                second.contains("2 answers are of Week 1: Lanterns: One lamp, 2026-03-02, and marked there."), second);
        assertTrue(second.contains("1 to decide") && !second.contains("evening-1.csv:"), second);

        String archive = second.replaceAll("(?s).*name=\"archive\" value=\"(made/week-1/[^\"]*)\".*", "$1");
        follow(desk.post("/take-in/choose", "archive", archive));
        String chosen = desk.get("/take-in");
        assertTrue(chosen.contains("href=\"/made/week-1/marks/report.html\""), "kept until something else comes in");
        String form = chosen.substring(chosen.indexOf("action=\"/take-in/decide\""));
        String[] one = {
            "archive",
            archive,
            "key",
            hidden(form, "key"),
            "seen",
            hidden(form, "seen"),
            "decision",
            "mark",
            "value",
            "1",
            "reason",
            "by hand"
        };
        assertTrue(follow(desk.post("/take-in/decide", one)).contains("Decided: mark 1."));
        make("/take-in/mark", "archive", archive);
        taken(until("/take-in"));
        String decided = Files.readString(marks(1, "marks.csv"));
        assertFalse(decided.equals(first), decided);
        assertTrue(Files.readString(marks(1, "changes.csv")).contains("Ayo"), "compared with its own earlier marks");

        String other = Files.readString(marks(2, "marks.csv"));
        make("/take-in/mark", "archive", hidden(second, "archive"));
        String told = taken(until("/take-in"));
        assertEquals(other, Files.readString(marks(2, "marks.csv")), "the same words in another week stay undecided");
        assertFalse(told.contains("no longer fits"), told);
        assertEquals(decided, Files.readString(marks(1, "marks.csv")));
    }

    @Test
    void whatNeedsItsScriptIsSavedAndThePageThatSawItMadeIsBroughtUpToDateOnce() throws Exception {
        course();
        make("/weeks/make?week=2", "what", "practice");
        done();
        String part = desk.get("/give-out/progress", "HX-Request: true\r\n");
        assertTrue(part.contains("HX-Trigger-After-Swap: work-ended"), part);
        assertFalse(part.contains("hx-get"), "it is not asked again");
        String page = desk.get("/weeks/week?week=2");
        assertTrue(page.contains(">Save made/week-2/practice.html</a>"), page);
        assertTrue(page.contains(">Save practice.html</a>"), page);
        assertTrue(desk.get("/made/week-2/practice.html").contains("attachment; filename=\"practice.html\""));

        make("/weeks/make?week=1", "what", "practice", "variants", "1");
        taken(until("/weeks/week?week=1"));
        String before = desk.get("/weeks/week?week=2");
        assertTrue(
                before.contains("class=\"work done\" id=\"before\""),
                "what was made of a week is told there until more is");
        assertFalse(before.contains("/weeks/again"), before);
        keep(COURSE.replace("new: [{template: v", "new: [{count: 2, template: v"));
        assertTrue(desk.get("/weeks/week?week=2").contains("action=\"/weeks/again?week=2\""));
        make("/weeks/again?week=2", "what", "practice");
        assertFalse(done().contains("/weeks/again"));
    }

    @Test
    void titleAndProblemsOfAWeekAreKeptInTheTextWithItsCommentsWhereTheTextIsOfLines() throws Exception {
        Files.writeString(folder.resolve("course.yaml"), COURSE.replace("One lamp\n", "One lamp   # as in the book\n"));
        String page = desk.get("/weeks/week?week=1");
        String seen = hidden(page.substring(page.indexOf("/weeks/about")), "seen");
        String kept = follow(desk.post("/weeks/about?week=1", "seen", seen, "title", "Two: lamps", "problems", "3"));
        assertTrue(kept.contains("The weeks are kept.") && kept.contains("value=\"Two: lamps\""), kept);
        String third = "  - date: 2026-03-02\n    problems: 3\n    title: \"Two: lamps\"   # as in the book\n";
        assertTrue(written().contains(third), written());
        assertEquals(
                409, OpenDesk.status(desk.post("/weeks/about?week=1", "seen", seen, "title", "One", "problems", "2")));
        String now = hidden(kept.substring(kept.indexOf("/weeks/about")), "seen");
        follow(desk.post("/weeks/about?week=1", "seen", now, "title", "", "problems", "2"));
        assertTrue(written().contains("  - date: 2026-03-02\n    # as in the book\n    new:"), written());
        Files.writeString(
                folder.resolve("course.yaml"),
                COURSE.replaceAll("(?s)  - date: 2026-03-09.*", "  - {date: 2026-03-09, problems: 1}\n"));
        String braces = desk.post("/weeks/about?week=2", "seen", desk.seen("/weeks"), "title", "Two", "problems", "1");
        assertEquals(422, OpenDesk.status(braces), braces);
        assertTrue(braces.contains("its keys do not begin lines"), braces);
    }

    private void make(String... pathNamesAndValues) throws IOException {
        String[] form = new String[pathNamesAndValues.length - 1];
        System.arraycopy(pathNamesAndValues, 1, form, 0, form.length);
        follow(desk.post(pathNamesAndValues[0], form));
    }

    private String done() throws Exception {
        return taken(until("/weeks/week?week=2"));
    }

    private String until(String path) throws Exception {
        for (int i = 0; i < PATIENCE * 4; i++) {
            String page = desk.get(path);
            if (!page.contains("class=\"work running\"")) {
                return page;
            }
            Thread.sleep(250);
        }
        throw new AssertionError("it does not end");
    }
}
