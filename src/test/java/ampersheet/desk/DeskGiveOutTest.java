package ampersheet.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.OnlyDeep;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is given out: how much paper it takes, what was chosen, and what of it is older than the course. */
class DeskGiveOutTest {
    private static final Limits PATIENT =
            new Limits(200_000, 600_000, 20, Duration.ofSeconds(10), Duration.ofSeconds(10));
    private static final int PATIENCE = 240;

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

    private String make(String what, String... namesAndValues) throws IOException {
        String[] all = new String[namesAndValues.length + 2];
        all[0] = "what";
        all[1] = what;
        System.arraycopy(namesAndValues, 0, all, 2, namesAndValues.length);
        String reply = desk.post("/give-out/make", all);
        assertEquals(303, OpenDesk.status(reply), reply);
        Matcher location = Pattern.compile("Location: (\\S+)").matcher(reply);
        assertTrue(location.find());
        return desk.get(location.group(1));
    }

    private String done() throws Exception {
        for (int i = 0; i < PATIENCE * 4; i++) {
            String page = desk.get("/give-out");
            if (!page.contains("class=\"work running\"")) {
                assertTrue(page.contains("class=\"work done\""), page);
                return page;
            }
            Thread.sleep(250);
        }
        throw new AssertionError("it does not end");
    }

    @OnlyDeep
    @Test
    void nobodyWaitsForPaperToBeCounted() throws Exception {
        String counting = make("count", "who", "copies", "copies", "9000");
        assertTrue(counting.contains("How much paper it takes: being counted"), counting);
        String making = make("pages");
        assertTrue(making.contains("Pages for the class: being made"), making);
        String counted = make("count", "who", "copies", "copies", "1");
        assertTrue(
                counted.contains("Something is being made already") || counted.contains("Pages for the class: done"),
                "what is made does not give way to counting");
        assertTrue(done().contains("3 sheets, each with its key, in made/class."));
    }

    @Test
    void theDeskIsEndedAtHelpButNotWhileSomethingIsMade() throws Exception {
        make("count", "who", "copies", "copies", "30");
        String refused = desk.post("/end");
        assertTrue(refused.contains("Location: /help?told="), refused);
        assertTrue(
                desk.get(refused.replaceAll("(?s).*Location: (\\S+).*", "$1")).contains("Something is being made"));
        desk.post("/give-out/stop");
        String ended = desk.post("/end");
        for (int i = 0; i < PATIENCE * 4 && ended.contains("Location: "); i++) {
            Thread.sleep(250);
            ended = desk.post("/end");
        }
        assertTrue(
                ended.contains("The desk has ended, and this page can be closed. What you kept lies in "
                        + folder.toRealPath() + "."),
                ended);
        assertTimeoutPreemptively(Duration.ofSeconds(PATIENCE), desk::awaitEnd);
    }

    @Test
    void paperThatWasCountedIsToldAtOnceUntilSomethingChangesOnWhichItDepends() throws Exception {
        make("count", "who", "copies", "copies", "1", "profile", "compact");
        String sentence = first(done(), "(?:1 sheet of [^<]*)");
        assertTrue(make("count", "who", "copies", "copies", "1", "profile", "compact")
                .contains("<div class=\"told\" id=\"notices\" role=\"status\">\n<p>" + sentence));
        Files.writeString(folder.resolve("class.csv"), "seat,name\n1,Ada\n");
        assertTrue(make("count", "who", "copies", "copies", "1", "profile", "compact")
                .contains("<p>" + sentence));
        String other = make("count", "who", "copies", "copies", "1", "profile", "large");
        assertFalse(other.contains("role=\"status\">\n<p>1 sheet"), other);
        done();
    }

    @Test
    void whatWasMadeStaysToBeOpenedWhilePaperIsCountedAndSaysWhereItLies() throws Exception {
        make("practice");
        String made = done();
        String lies = "On this computer it lies at " + folder.toRealPath().resolve("made/practice.html") + "<";
        assertTrue(made.contains(lies), made);
        assertEquals(1, made.split("Save made/practice.html", -1).length - 1, made);
        make("count", "who", "copies", "copies", "1", "keys", "none", "no-host", "yes");
        String both = done();
        assertTrue(both.contains("How much paper it takes: done"), both);
        assertTrue(both.contains("The practice page: done") && both.contains("Save made/practice.html"), both);
        assertTrue(both.contains(lies), both);
    }

    @Test
    void whatIsOlderThanTheSetIsMadeAgainAsItWasAskedForByOneButton() throws Exception {
        make("pages", "drawings", "yes");
        done();
        assertEquals(303, OpenDesk.status(desk.post("/give-out/again", "what", "cards")), "nothing to repeat");
        Files.writeString(folder.resolve("plan.yaml"), desk.plan().replace("title: ", "title: Another "));
        String older = desk.get("/give-out");
        assertTrue(older.contains("Changed after this was made: the set."), older);
        assertTrue(older.contains("action=\"/give-out/again\""), older);
        Files.delete(folder.resolve("made/class/index.html"));
        desk.post("/give-out/again", "what", "pages");
        String again = done();
        assertFalse(again.contains("/give-out/again"), again);
        assertTrue(Files.readString(folder.resolve("made/class/index.html")).contains("Another First evening"));
        assertTrue(again.contains("name=\"drawings\" value=\"yes\" checked"), again);
    }

    @Test
    void whoCountsPaperIsToldWhatTheCheckLettersTake() throws Exception {
        make("count", "who", "copies", "copies", "1", "keys", "none", "no-host", "yes");
        String with = done();
        assertTrue(with.contains("1 sheet of 4 sides"), with);
        assertTrue(with.contains("Without check letters, the first sheet takes 2 sides instead of 4."), with);
        make("count", "who", "copies", "copies", "1", "keys", "none", "no-host", "yes", "no-letters", "yes");
        String without = done();
        assertTrue(without.contains("1 sheet of 2 sides"), without);
        assertFalse(without.contains("Without check letters, the first"), without);
    }

    private static String first(String page, String pattern) {
        Matcher found = Pattern.compile(pattern).matcher(page);
        assertTrue(found.find(), page);
        return found.group();
    }

    @Test
    void whoeverCountsPaperFirstDoesNotChooseAgain() throws Exception {
        String page =
                make("count", "who", "copies", "copies", "2", "profile", "large", "keys", "none", "no-letters", "yes");
        for (String chosen : List.of(
                "name=\"who\" value=\"copies\" checked",
                "max=\"9999\" value=\"2\"",
                "<option value=\"large\" selected>",
                "<option value=\"none\" selected>",
                "name=\"no-letters\" value=\"yes\" checked")) {
            assertTrue(page.contains(chosen), chosen);
        }
        assertFalse(page.contains("name=\"no-host\" value=\"yes\" checked"), page);
        make("pages", "drawings", "yes");
        String after = done();
        assertTrue(after.contains("name=\"drawings\" value=\"yes\" checked"), after);
        assertTrue(after.contains("<option value=\"large\" selected>"), after);
    }

    @Test
    void whatWasMadeTellsWhatOfTheCourseHasChangedSince() throws Exception {
        make("pages");
        String fresh = done();
        assertFalse(fresh.contains("class=\"older\""), fresh);
        desk.post("/class/paste", "names", "Ada\nBob", "seen", desk.seen("/class"));
        String older = desk.get("/give-out");
        assertTrue(older.contains("<strong>Changed after this was made: the class list. Made again"), older);
        assertTrue(
                older.contains("<a href=\"/made/class/index.html\">class/index.html</a>"
                        + " <span class=\"older\">older than the class list</span>"),
                older);
        desk.post("/class/undo");
        assertFalse(desk.get("/give-out").contains("class=\"older\""), "what is as it was is not older");
        Files.writeString(folder.resolve("plan.yaml"), desk.plan() + "# another thought\n");
        assertTrue(desk.get("/give-out").contains("older than the set"));
        make("pages");
        assertFalse(done().contains("class=\"older\""), "made again it is of now");
    }

    @Test
    void ofWhatLayThereBeforeTheDeskWasOpenedItsArchiveAndTheTimesOfFilesTell() throws Exception {
        make("pages");
        done();
        desk.close();
        desk = OpenDesk.over(folder, PATIENT);
        assertFalse(desk.get("/give-out").contains("class=\"older\""));
        Files.setLastModifiedTime(
                folder.resolve("plan.yaml"), FileTime.from(Instant.now().plusSeconds(60)));
        assertFalse(desk.get("/give-out").contains("class=\"older\""), "the archive has the same plan");
        Files.writeString(folder.resolve("plan.yaml"), desk.plan() + "# another thought\n");
        Files.setLastModifiedTime(
                folder.resolve("plan.yaml"), FileTime.from(Instant.now().plusSeconds(60)));
        assertTrue(desk.get("/give-out").contains("older than the set"));
    }

    @Test
    void thePaperALearnerTakesIsThatOfTheWholeClassAndSaysOnWhatItRests() throws IOException {
        Files.writeString(folder.resolve("plan.yaml"), """
                title: Short and long
                seed: short and long
                problems:
                  - pool: [current-limiting/first-current, chain-addressing/cube-turns]
                  - pool: [current-limiting/first-current, chain-addressing/cube-turns]
                  - pool: [current-limiting/first-current, chain-addressing/cube-turns]
                """);
        String whole = desk.get("/set/paper");
        Matcher range = Pattern.compile("([0-9]+) to ([0-9]+) sides, counted for the whole class")
                .matcher(whole);
        assertTrue(range.find(), whole);
        assertTrue(Integer.parseInt(range.group(1)) < Integer.parseInt(range.group(2)), whole);
        desk.post("/class/paste", "names", "A\nB\nC\nD\nE", "seen", desk.seen("/class"));
        String part = desk.get("/set/paper", "HX-Request: true\r\n");
        assertTrue(part.contains(", counted for 2 of 5 learners") && part.contains("hx-get=\"/set/paper\""), part);
        desk.get("/set/paper", "HX-Request: true\r\n");
        String last = desk.get("/set/paper", "HX-Request: true\r\n");
        assertTrue(last.contains("counted for the whole class") && !last.contains("hx-get"), last);
        Files.delete(folder.resolve("class.csv"));
        assertTrue(desk.get("/set/paper").contains("counted for seats 1 to 6"));
    }
}
