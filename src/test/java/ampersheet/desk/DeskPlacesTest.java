package ampersheet.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What whoever meets the desk for the first time asks of its places. */
class DeskPlacesTest {
    private static final String ANOTHER = "Another desk is open over this folder.";

    @TempDir
    private Path folder;

    private OpenDesk desk;

    @BeforeEach
    void open() throws IOException {
        desk = OpenDesk.withCourse(folder, OpenDesk.SMALL);
    }

    @AfterEach
    void nothingFailed() throws IOException {
        desk.close();
        assertEquals(List.of(), desk.failures);
    }

    private String follow(String reply) throws IOException {
        assertEquals(303, OpenDesk.status(reply), reply);
        Matcher location = Pattern.compile("Location: (\\S+)").matcher(reply);
        assertTrue(location.find(), reply);
        return desk.get(location.group(1));
    }

    @Test
    void everyPlaceSaysWhereTheCourseLiesOnTheDisk() throws IOException {
        String path = folder.toRealPath().toString();
        for (String place :
                List.of("/lessons", "/set", "/weeks", "/class", "/parts", "/give-out", "/take-in", "/help")) {
            assertTrue(desk.get(place).contains("lies on this computer in " + path + "."), place);
        }
    }

    /** A browser that kept the script of an earlier program would run it with the pages of this one. */
    @Test
    void theAddressesOfStylesAndScriptsSayOfWhichProgramTheyAre() throws IOException {
        String page = desk.get("/help");
        for (String file : List.of("sheet.css", "desk.css", "htmx.js", "desk.js")) {
            String address = "/files/" + file + "?v=" + new OwnFiles().version();
            assertTrue(page.contains("\"" + address + "\""), page);
            assertEquals(200, OpenDesk.status(desk.get(address)), address);
        }
    }

    @Test
    void whoeverLooksWhatCameInDrawsNoSeed() throws IOException {
        Files.createDirectories(folder.resolve("made/class/keys"));
        Files.writeString(folder.resolve("made/handout-issued-ABCDE.zip"), "PK");
        Files.writeString(folder.resolve("made/class/keys/issued-FGHJK.zip"), "PK");
        assertTrue(desk.get("/take-in").contains("issued-FGHJK.zip"));
        assertFalse(Files.exists(folder.resolve("plan.yaml.seed")));
    }

    @Test
    void whoeverAddsTheLessonThatSheLooksAtGoesOnLookingAtIt() throws IOException {
        String before = desk.get("/lesson?name=current-limiting%2Fstring-count-limit&numbers=3");
        assertFalse(before.contains("in <a href=\"/set\">the set</a>"), before);
        String after = follow(desk.post("/set/add", "lesson", "current-limiting/string-count-limit", "numbers", "3"));
        assertTrue(after.contains("<p>Added to the set: 1 problem.</p>"), after);
        assertTrue(after.contains("This lesson is in <a href=\"/set\">the set</a>."), after);
        assertTrue(after.contains("numbers=4"), "the numbers are those that were looked at");
        assertTrue(desk.plan().contains("current-limiting/string-count-limit"));
    }

    @Test
    void aTimeToHandInThatIsOnlyPrintedIsToldOnceItIsKept() throws IOException {
        String words = follow(desk.post("/set/heading", "due", "Thursday 6pm", "seen", desk.seen("/set")));
        assertTrue(words.contains("“Hand in by” is printed as “Thursday 6pm”, and only printed"), words);
        String time = follow(desk.post("/set/heading", "due", "2026-03-12 18:00", "seen", desk.seen("/set")));
        assertTrue(time.contains("<p>Kept.</p>"), time);
    }

    @Test
    void aSeatIsExplainedAndOfACourseWithoutAClassAllTheMore() throws IOException {
        assertFalse(desk.get("/set").contains("There is no class list yet"));
        Files.delete(folder.resolve("class.csv"));
        assertTrue(desk.get("/set").contains("A seat is a learner’s number"));
        assertTrue(desk.get("/set").contains("There is no class list yet"));
    }

    @Test
    void aSecondDeskOverAFolderSaysSoUntilTheFirstEnds() throws IOException {
        assertFalse(desk.get("/set").contains(ANOTHER));
        try (OpenDesk second = OpenDesk.over(folder, OpenDesk.SMALL)) {
            assertTrue(second.get("/set").contains(ANOTHER));
            assertFalse(desk.get("/set").contains(ANOTHER), "the first is where it was");
            desk.close();
            assertFalse(second.get("/set").contains(ANOTHER));
        }
        try (var files = Files.list(folder)) {
            assertFalse(files.anyMatch(file -> file.toString().endsWith(".lock")), "a lock is left");
        }
    }
}
