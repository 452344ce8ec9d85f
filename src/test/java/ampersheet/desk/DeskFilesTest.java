package ampersheet.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Attacks by paths, names, links and several hands at once. Nothing outside is read or written. */
class DeskFilesTest {
    private static final String SECRET = "what nobody may read";

    @TempDir
    private Path root;

    private Path folder;
    private Path outside;
    private OpenDesk desk;

    @BeforeEach
    void open() throws IOException {
        folder = Files.createDirectory(root.resolve("course"));
        outside = Files.createDirectory(root.resolve("outside"));
        Files.writeString(outside.resolve("secret.csv"), SECRET);
        desk = OpenDesk.withCourse(folder, OpenDesk.SMALL);
    }

    @AfterEach
    void nothingOutsideHasChanged() throws IOException {
        desk.close();
        assertEquals(List.of(), desk.failures);
        try (Stream<Path> files = Files.list(outside)) {
            assertEquals(
                    List.of("secret.csv"),
                    files.map(file -> file.getFileName().toString()).toList());
        }
        assertEquals(SECRET, Files.readString(outside.resolve("secret.csv")));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/made/../plan.yaml",
                "/made/../../outside/secret.csv",
                "/made/..%2f..%2foutside%2fsecret.csv",
                "/made/%2e%2e/plan.yaml",
                "/made/..;/plan.yaml",
                "/made//etc/passwd",
                "/made/.%00/plan.yaml",
                "/made/..\\plan.yaml",
                "/files/../pages/set.ftlh",
                "/files/..%2fpages%2fset.ftlh",
                "/plan.yaml",
                "/plan.yaml.seed",
                "/%2e/set",
                "/set/../../etc/passwd",
                "/no-such-place"
            })
    void noAddressLeadsOutOfWhatIsMade(String path) throws IOException {
        Files.writeString(folder.resolve("plan.yaml.seed"), SECRET);
        String reply = desk.get(path);
        assertTrue(OpenDesk.status(reply) == 404 || OpenDesk.status(reply) == 400, reply);
        assertFalse(reply.contains(SECRET) || reply.contains("root:") || reply.contains("First evening"), reply);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "../../outside/taken.csv",
                "..\\..\\outside\\taken.csv",
                "/tmp/taken.csv",
                "C:\\taken.csv",
                "..csv",
                ".csv",
                ".ampersheet.lock.csv",
                "con.csv",
                "a\u0001b.csv",
                "‮vsc.csv"
            })
    void aNameThatIsSentIsNeverAPath(String name) throws IOException {
        desk.send("/take-in/files", name.replace("\\", "\\\\"), "sheet,question,answer\n");
        try (Stream<Path> kept = Files.list(folder.resolve("answers"))) {
            for (Path file : kept.toList()) {
                String is = file.getFileName().toString();
                assertTrue(is.matches("[\\p{L}0-9 ()_-][\\p{L}0-9 ._()-]*\\.csv"), is);
                assertFalse(is.matches("(?i)con\\.csv"), is);
            }
        }
        assertFalse(Files.exists(Path.of("/tmp/taken.csv")));
    }

    @Test
    void aNameThatHoldsAScriptIsShownAsText() throws IOException {
        desk.send("/take-in/files", "<img src=x onerror=alert(1)>.csv", "x");
        Files.writeString(folder.resolve("answers/<b>bold.csv"), "x");
        assertFalse(desk.get("/take-in").contains("<b>bold"));
        assertFalse(desk.get("/take-in").contains("<img"));
    }

    @Test
    void aScriptInPlanOrClassIsShownAsText() throws IOException {
        String script = "<script>alert(1)</script>";
        Files.writeString(
                folder.resolve("plan.yaml"),
                "title: \"" + script + "\"\nproblems: [{template: current-limiting/one-indicator}]\n");
        Files.writeString(folder.resolve("class.csv"), "seat,name," + script + "\n1," + script + "," + script + "\n");
        for (String path : List.of(
                "/set",
                "/class",
                "/set/sheet?seat=1",
                "/give-out",
                "/take-in",
                "/lessons?words=" + "%3Cscript%3Ealert(1)%3C/script%3E")) {
            String page = desk.get(path);
            assertEquals(200, OpenDesk.status(page), page);
            assertFalse(page.contains("<script>alert"), path);
        }
    }

    @Test
    void wordsThatComputeInATemplateStayWords() throws IOException {
        String computing = "${7*7} <#assign x=1> ${\"freemarker.template.utility.Execute\"?new()(\"id\")}";
        Files.writeString(folder.resolve("class.csv"), "seat,name\n1,\"" + computing.replace("\"", "\"\"") + "\"\n");
        String page = desk.get("/class");
        assertTrue(page.contains("${7*7}") && !page.contains("uid="), page);
    }

    @Test
    void aLinkInPlaceOfThePlanIsNeitherReadNorWrittenThrough() throws IOException {
        Files.delete(folder.resolve("plan.yaml"));
        Files.createSymbolicLink(folder.resolve("plan.yaml"), outside.resolve("secret.csv"));
        String page = desk.get("/set");
        assertFalse(page.contains(SECRET), page);
        desk.post(
                "/set/text",
                "seen",
                "none",
                "text",
                "title: a\nproblems: [{template: current-limiting/one-indicator}]\n");
        assertTrue(Files.isSymbolicLink(folder.resolve("plan.yaml")));
    }

    @Test
    void aLinkInPlaceOfAFolderIsNotWrittenThrough() throws IOException {
        Files.delete(folder.resolve("answers"));
        Files.createSymbolicLink(folder.resolve("answers"), outside);
        assertEquals(422, OpenDesk.status(desk.send("/take-in/files", "one.csv", "x")));
        Files.delete(folder.resolve("made"));
        Files.createSymbolicLink(folder.resolve("made"), outside);
        assertEquals(404, OpenDesk.status(desk.get("/made/secret.csv")));
        assertEquals(422, OpenDesk.status(desk.post("/give-out/make", "what", "pages")));
    }

    @Test
    void aListThatASpreadsheetWroteInItsOwnEncodingIsReadAsByTheCommands() throws IOException {
        Files.write(folder.resolve("class.csv"), "seat;name\n1;J\u00f6rg\n".getBytes(Charset.forName("windows-1252")));
        assertTrue(desk.get("/class").contains("J\u00f6rg"));
    }

    @Test
    void whatIsTakenBackIsAsItWasAlsoWhereNothingWas() throws IOException {
        Files.delete(folder.resolve("plan.yaml"));
        desk.post("/set/add", "lesson", "current-limiting/one-indicator");
        assertTrue(Files.exists(folder.resolve("plan.yaml")));
        desk.post("/set/undo");
        assertFalse(Files.exists(folder.resolve("plan.yaml")));
        assertEquals(200, OpenDesk.status(desk.get("/set")));
    }

    @Test
    void aClassListThatCannotBeReadStopsNoOtherPlace() throws IOException {
        Files.write(folder.resolve("class.csv"), new byte[] {0, 1, 2, (byte) 0xff});
        for (String place : List.of("/class", "/set", "/give-out", "/take-in", "/lessons")) {
            assertEquals(200, OpenDesk.status(desk.get(place)), place);
        }
        assertEquals(422, OpenDesk.status(desk.post("/give-out/make", "what", "pages")));
    }

    @Test
    void aPageThatSomebodyPutAmongWhatIsMadeRunsNothing() throws IOException {
        Files.writeString(
                folder.resolve("made/evil.html"), "<script src=\"/files/htmx.js\"></script><script>1</script>");
        String page = desk.get("/made/evil.html");
        assertEquals(200, OpenDesk.status(page));
        String policy = page.replaceAll("(?s).*Content-Security-Policy: ([^\r\n]*).*", "$1");
        assertTrue(policy.startsWith("default-src 'none';") && !policy.contains("script-src"), policy);
        Files.writeString(folder.resolve("made/evil.svg"), "<svg onload=\"1\"/>");
        assertTrue(desk.get("/made/evil.svg").contains("Content-Disposition: attachment"));
    }

    @Test
    void aLinkAmongWhatIsMadeIsNotShown() throws IOException {
        Files.createSymbolicLink(folder.resolve("made/secret.csv"), outside.resolve("secret.csv"));
        Files.createSymbolicLink(folder.resolve("made/deep"), outside);
        assertEquals(404, OpenDesk.status(desk.get("/made/secret.csv")));
        assertEquals(404, OpenDesk.status(desk.get("/made/deep/secret.csv")));
        assertFalse(desk.get("/give-out").contains("secret"));
    }

    @Test
    void aLinkInPlaceOfTheClassListIsNotRead() throws IOException {
        Files.delete(folder.resolve("class.csv"));
        Files.createSymbolicLink(folder.resolve("class.csv"), outside.resolve("secret.csv"));
        assertFalse(desk.get("/class").contains(SECRET));
        desk.post("/class/paste", "seen", "none", "names", "Ayo\n");
    }

    @Test
    void ofSavesAtTheSameTimeOneIsKeptAndTheOthersAreTold() throws Exception {
        String seen = desk.seen("/class");
        ExecutorService hands = Executors.newFixedThreadPool(8);
        try {
            List<Future<String>> replies = new ArrayList<>();
            for (int i = 0; i < 8; i++) {
                String name = "Learner " + i;
                replies.add(hands.submit(() -> desk.post("/class/paste", "seen", seen, "names", name + "\n")));
            }
            int kept = 0;
            for (Future<String> reply : replies) {
                int status = OpenDesk.status(reply.get());
                assertTrue(status == 303 || status == 409, reply.get());
                kept += status == 303 ? 1 : 0;
                assertTrue(status == 303 || reply.get().contains("Learner "), "what was not kept is shown");
            }
            assertEquals(1, kept);
        } finally {
            hands.shutdownNow();
        }
        assertEquals(2, Files.readAllLines(folder.resolve("class.csv")).size());
    }

    @Test
    void aFormThatIsOlderThanTheFileWritesOverNothing() throws IOException {
        String seen = desk.seen("/set");
        String theirs = "title: Theirs\nproblems: [{template: current-limiting/one-indicator}]\n";
        Files.writeString(folder.resolve("plan.yaml"), theirs);
        String mine = "title: Mine\nproblems: [{template: current-limiting/shared-current}]\n";
        String reply = desk.post("/set/text", "seen", seen, "text", mine);
        assertEquals(409, OpenDesk.status(reply));
        assertTrue(reply.contains("Theirs") && reply.contains("Mine"), reply);
        assertEquals(theirs, Files.readString(folder.resolve("plan.yaml")));
        assertEquals(409, OpenDesk.status(desk.post("/set/remove", "seen", seen, "at", "0")));
        assertEquals(theirs, Files.readString(folder.resolve("plan.yaml")));
    }

    @Test
    void aPlaceThatIsNotThereIsNotRemoved() throws IOException {
        for (String at : List.of("-1", "99", "", "0x1", "2147483648")) {
            String reply = desk.post("/set/remove", "seen", desk.seen("/set"), "at", at);
            assertEquals(422, OpenDesk.status(reply), at);
        }
        assertEquals(3, Files.readString(folder.resolve("plan.yaml")).split("- \\{").length - 1);
    }

    @Test
    void aFileThatLiesThereIsNotWrittenOver() throws IOException {
        Files.writeString(folder.resolve("answers/ayo.csv"), "hers");
        desk.send("/take-in/files", "ayo.csv", "another");
        desk.send("/take-in/files", "ayo.csv", "another");
        assertEquals("hers", Files.readString(folder.resolve("answers/ayo.csv")));
        assertEquals("another", Files.readString(folder.resolve("answers/ayo-2.csv")));
        assertFalse(Files.exists(folder.resolve("answers/ayo-3.csv")));
    }

    @Test
    void anotherTemplatesFolderOfAStrangerHarmsNoPage() throws IOException {
        Path template = Files.createDirectories(folder.resolve("templates/evil/one"));
        Files.writeString(template.resolve("problem.yaml"), "title: <b>\ngivens: &a [*a]\n");
        Files.writeString(template.resolve("statement.md.ftl"), "<#include \"/etc/passwd\">");
        String page = desk.get("/lessons");
        assertEquals(200, OpenDesk.status(page));
        assertTrue(page.contains("evil/one") && !page.contains("root:"), page);
    }

    @Test
    void eachFaultOfAPlanIsToldOnceAtItsLine() throws IOException {
        String broken = "title: Own\norder: mxed\nproblems:\n  - {template: current-limiting/one-indicator}\n";
        Files.writeString(folder.resolve("plan.yaml"), broken);
        String seen = desk.seen("/set");
        String asIs = desk.get("/set");
        String added = desk.post("/set/add", "lesson", "current-limiting/shared-current");
        String typed = desk.post("/set/text", "seen", seen, "text", broken);
        for (String page : List.of(asIs, added, typed)) {
            assertEquals(1, count(page, "does not fit order"), page);
            assertTrue(page.contains("1 thing to mend: it stands below its line."), page);
        }
    }

    @Test
    void aTemplateThatThePlanNamesWronglyIsToldAtTheLineOfThePlanAndNotBesideIt() throws IOException {
        Files.writeString(folder.resolve("plan.yaml"), "title: Own\nproblems:\n  - {template: no/such}\n");
        String page = desk.get("/set");
        assertEquals(1, count(page, "There is no template"), page);
        assertTrue(page.contains("<li value=\"3\" class=\"wrong\">"), page);
        assertFalse(page.contains("id=\"sheet-part\""), "the sheet beside would tell it again");
        assertTrue(page.contains("/set/remove"), "the problem can be taken out");
    }

    @Test
    void aFaultOfATemplateIsNotToldAtALineOfThePlan() throws IOException {
        Path template = Files.createDirectories(folder.resolve("templates/my/one"));
        Files.writeString(template.resolve("problem.yaml"), "title: Mine\nlevel: 9\n");
        Files.writeString(template.resolve("statement.md.ftl"), "words\n");
        Files.writeString(folder.resolve("plan.yaml"), "title: Own\nproblems:\n  - {template: my/one}\n");
        String page = desk.get("/set");
        assertEquals(1, count(page, "not a whole number from 0 to 4"), page);
        assertTrue(page.contains("Line 2 of templates/my/one/problem.yaml: "), page);
        assertFalse(page.contains("<p class=\"here\""), page);
    }

    @Test
    void ofAListThatIsPastedOnlyItsOwnFaultsAreTold() throws IOException {
        Files.writeString(folder.resolve("class.csv"), "seat,name\n1,A\n1,B\nx,C\n");
        String page = desk.post("/class/paste", "seen", desk.seen("/class"), "names", "seat,name\n1,A\n1,B\n");
        assertEquals(422, OpenDesk.status(page));
        assertEquals(1, count(page, "is taken twice"), page);
        assertTrue(page.contains("Line 3 of what you pasted: ") && !page.contains("class.csv: Seat"), page);
    }

    private static int count(String page, String words) {
        return page.split(words, -1).length - 1;
    }
}
