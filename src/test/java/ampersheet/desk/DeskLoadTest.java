package ampersheet.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Many pages at once while a class is being made, and a class that is stopped half-way. */
class DeskLoadTest {
    private static final boolean DEEP = Boolean.getBoolean("ampersheet.deep");
    private static final int LEARNERS = DEEP ? 300 : 6;
    private static final int REQUESTS = 200;
    private static final int PATIENCE = DEEP ? 600 : 120;

    @TempDir
    private Path folder;

    private static String names(int learners) {
        StringBuilder names = new StringBuilder();
        for (int i = 1; i <= learners; i++) {
            names.append("Learner ").append(i).append('\n');
        }
        return names.toString();
    }

    private static void awaitEnd(OpenDesk desk) throws Exception {
        for (int i = 0; i < PATIENCE * 4; i++) {
            if (!desk.get("/give-out").contains("class=\"work running\"")) {
                return;
            }
            Thread.sleep(250);
        }
        throw new AssertionError("it does not end");
    }

    @Test
    void twoHundredPagesAtOnceAllComeWhileAClassIsMade() throws Exception {
        try (OpenDesk desk = OpenDesk.withCourse(folder, Limits.USUAL)) {
            desk.post("/class/paste", "seen", desk.seen("/class"), "names", names(LEARNERS));
            assertEquals(303, OpenDesk.status(desk.post("/give-out/make", "what", "pages")));
            List<String> paths = List.of("/lessons", "/set", "/class", "/give-out", "/lessons?words=led", "/help");
            ExecutorService browsers = Executors.newFixedThreadPool(REQUESTS);
            try {
                List<Future<String>> replies = new ArrayList<>();
                for (int i = 0; i < REQUESTS; i++) {
                    String path = paths.get(i % paths.size());
                    replies.add(browsers.submit(() -> desk.get(path)));
                }
                for (Future<String> reply : replies) {
                    assertEquals(200, OpenDesk.status(reply.get()));
                    assertTrue(reply.get().endsWith("</html>\n"), "a page came in part");
                }
            } finally {
                browsers.shutdownNow();
            }
            awaitEnd(desk);
            assertTrue(desk.get("/give-out").contains("class=\"work done\""));
            assertEquals(List.of(), desk.failures);
        }
        try (Stream<Path> sheets = Files.list(folder.resolve("made/class/sheets"))) {
            assertEquals(LEARNERS * 2L, sheets.count());
        }
    }

    @Test
    void whatIsStoppedLeavesWholeFilesAndTheSameAgainMakesTheRest() throws Exception {
        try (OpenDesk desk = OpenDesk.withCourse(folder, Limits.USUAL)) {
            desk.post("/class/paste", "seen", desk.seen("/class"), "names", names(60));
            desk.post("/give-out/make", "what", "pages");
            String again = desk.post("/give-out/make", "what", "pages");
            assertEquals(303, OpenDesk.status(again));
            assertTrue(again.contains("told="), "a second one at the same time is told");
            desk.post("/give-out/stop");
            awaitEnd(desk);
            assertTrue(desk.get("/give-out").contains("class=\"work stopped\""), desk.get("/give-out"));
            try (Stream<Path> files = Files.walk(folder)) {
                assertFalse(files.anyMatch(file -> file.toString().endsWith(".part")));
            }
            assertEquals(List.of(), desk.failures);
        }
    }
}
