package ampersheet.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
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
    void ofASetThatCannotReturnUsualLessonsMakeTheWeeksAndTheyFit() throws IOException {
        Files.writeString(folder.resolve("plan.yaml"), """
                title: Fixed
                problems:
                  - {template: current-limiting/first-current, given: {Vs: 12 V}}
                  - {template: current-limiting/first-current, given: {Vs: 12 V}}
                """);
        String begun = follow(desk.post("/weeks/start", "first", "2026-04-13"));
        assertTrue(begun.contains("the problems of your set cannot return"), begun);
        assertTrue(begun.contains("4 weeks, looked at for 3 learners"), begun);
        assertTrue(begun.contains("series resistor for an indicator"), begun);
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
        String in = desk.get("/take-in");
        assertTrue(in.contains("made/week-2/class/keys/issued-"), "it can be marked");
        assertTrue(in.contains("at <a href=\"/weeks\">Weeks</a>"), in);
    }

    private void make(String... pathNamesAndValues) throws IOException {
        String[] form = new String[pathNamesAndValues.length - 1];
        System.arraycopy(pathNamesAndValues, 1, form, 0, form.length);
        follow(desk.post(pathNamesAndValues[0], form));
    }

    private String done() throws Exception {
        for (int i = 0; i < PATIENCE * 4; i++) {
            String page = desk.get("/weeks/week?week=2");
            if (!page.contains("class=\"work running\"")) {
                assertTrue(page.contains("class=\"work done\""), page);
                return page;
            }
            Thread.sleep(250);
        }
        throw new AssertionError("it does not end");
    }
}
