package ampersheet.command;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.OnlyDeep;
import ampersheet.browser.Chromium;
import ampersheet.browser.PageAudit;
import ampersheet.desk.Desk;
import ampersheet.desk.Limits;
import ampersheet.sheet.SheetId;
import java.io.BufferedReader;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.StringReader;
import java.net.CookieManager;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.support.ui.WebDriverWait;

/** A course of weeks at the desk and by commands. */
class CourseAtTheDeskTest {
    private static final Duration PATIENCE = Duration.ofMinutes(2);

    @TempDir
    private Path folder;

    private final List<String> failures = Collections.synchronizedList(new ArrayList<>());
    private Path course;
    private Desk desk;
    private String base;
    private HttpClient client;

    @BeforeEach
    void open() throws Exception {
        course = Files.createDirectories(folder.resolve("course"));
        Files.writeString(course.resolve("course.yaml"), """
                title: Lanterns
                problems-a-week: 2
                seats: 5
                weeks:
                  - date: 2026-03-02
                    new: [{template: current-limiting/first-current}]
                  - date: 2026-03-09
                    new: [{template: voltage-dividers/two-in-series}]
                """);
        Files.writeString(course.resolve("class.csv"), "seat,name\n1,Ada\n2,Bo\n");
        desk = Desk.open(course, new Desk.Settings(0, Limits.USUAL, System::nanoTime, failures::add));
        base = desk.address().replaceAll("/open/.*", "");
        client = HttpClient.newBuilder()
                .cookieHandler(new CookieManager())
                .followRedirects(HttpClient.Redirect.NORMAL)
                .build();
        get(URI.create(desk.address()));
    }

    @AfterEach
    void nothingFailed() throws IOException {
        desk.close();
        assertEquals(List.of(), failures);
    }

    private String get(URI address) throws Exception {
        return client.send(HttpRequest.newBuilder(address).build(), BodyHandlers.ofString())
                .body();
    }

    private String make(String what) throws Exception {
        return make("/weeks/make?week=2", "what=" + what, "/weeks/week?week=2");
    }

    private String make(String path, String form, String shownAt) throws Exception {
        client.send(
                HttpRequest.newBuilder(URI.create(base + path))
                        .header("Origin", base)
                        .header("Content-Type", "application/x-www-form-urlencoded")
                        .POST(HttpRequest.BodyPublishers.ofString(form))
                        .build(),
                BodyHandlers.discarding());
        String page = "class=\"work running\"";
        for (int i = 0; page.contains("class=\"work running\"") && i < PATIENCE.toSeconds() * 4; i++) {
            Thread.sleep(250);
            page = get(URI.create(base + shownAt));
        }
        assertTrue(page.contains("class=\"work done\""), page);
        return page;
    }

    @Test
    void whatIsMadeOfAWeekAtTheDeskIsWhatTheCommandsMake() throws Exception {
        for (String what : List.of("pages", "practice", "pdf")) {
            make(what);
        }
        Path made = course.resolve("made/week-2");
        Path again = folder.resolve("again");
        Path file = course.resolve("course.yaml");
        Path roster = course.resolve("class.csv");
        run("issue", file, "--week", 2, "--roster", roster, "--out", again.resolve("class"), "--threads", 1);
        run("practice", file, "--week", 2, "--out", again.resolve("practice.html"));
        run("handout", file, "--week", 2, "--roster", roster, "--out", again.resolve("handout.pdf"));
        assertSame(made, again, 10);
        whatIsMarkedIsTheSame(made, again);
    }

    private void whatIsMarkedIsTheSame(Path made, Path again) throws Exception {
        Path answers = Files.createDirectories(course.resolve("answers"));
        String sheet = Files.readString(made.resolve("class/sheets/seat-001.md"));
        String id = sheet.replaceAll("(?s).*?([0-9A-Z]{5}-[0-9]{3,}-[0-9A-Z]).*", "$1");
        Files.writeString(answers.resolve("ada.csv"), "sheet,question,answer\n" + id + ",q1a,2 V\n");
        Path keys = Files.createDirectories(course.resolve("made/week-1/class/keys"));
        Files.writeString(keys.resolve("issued-AAAAA.zip"), "broken, but there");
        Path other = Files.writeString(
                answers.resolve("other.csv"),
                "sheet,question,answer,seat\n" + new SheetId("AA", "AAA", 2) + ",q1a,2 V,2\n");
        Files.setLastModifiedTime(other, FileTime.fromMillis(0));
        make("/take-in/mark", "", "/take-in");
        Path marked = made.resolve("marks");
        String page = get(URI.create(base + "/weeks/week?week=2"));
        String archive = page.replaceAll("(?s).*mark answers --issued-with (\\S+).*", "$1");
        assertTrue(
                page.contains(
                        archive + " --roster class.csv --others made --out made/week-2/marks --also xlsx,semicolons"),
                page);
        run(
                "mark",
                answers,
                "--issued-with",
                course.resolve(archive),
                "--plan",
                course.resolve("course.yaml"),
                "--week",
                2,
                "--roster",
                course.resolve("class.csv"),
                "--others",
                course.resolve("made"),
                "--out",
                again.resolve("marks"),
                "--also",
                "xlsx,semicolons");
        assertSame(marked, again.resolve("marks"), 8);
        assertTrue(Files.readString(marked.resolve("files.csv")).contains("other.csv,,,0,to other sheets"));
        run("course", course.resolve("made"), "--out", folder.resolve("all"));
        assertTrue(Files.readString(folder.resolve("all/course.html")).contains("week-2"));
    }

    private static void assertSame(Path made, Path again, int least) throws IOException {
        try (Stream<Path> files = Files.walk(made)) {
            List<Path> all = files.filter(Files::isRegularFile).toList();
            assertTrue(all.size() > least, all.toString());
            for (Path one : all) {
                Path same = again.resolve(made.relativize(one));
                assertArrayEquals(Files.readAllBytes(one), Files.readAllBytes(same), one.toString());
            }
        }
    }

    private static void run(Object... arguments) {
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int exitCode = Main.run(
                Stream.of(arguments).map(Object::toString).toArray(String[]::new),
                new Streams(
                        new BufferedReader(new StringReader("")),
                        new PrintStream(new ByteArrayOutputStream(), true, StandardCharsets.UTF_8),
                        new PrintStream(err, true, StandardCharsets.UTF_8)));
        assertEquals(CommandTree.FINE, exitCode, err.toString(StandardCharsets.UTF_8));
    }

    @OnlyDeep
    @Test
    void theWeeksAreReadOnAPhoneByKeysAloneAndTheWayBackLeadsBack() throws IOException {
        Chromium.need();
        ChromeDriver browser = Chromium.fresh();
        Chromium.screen(browser, 360, 900);
        browser.get(desk.address());
        browser.get(base + "/weeks");
        browser.findElement(By.cssSelector("a[href='/weeks/week?week=2']")).sendKeys(Keys.ENTER);
        until(browser, "#sheet-part .paper", ".forecast");
        audit(browser, "week");
        browser.navigate().back();
        until(browser, "#week-1 .forecast", "#week-2 .forecast");
        audit(browser, "weeks");
    }

    private static void until(ChromeDriver browser, String... css) {
        for (String one : css) {
            new WebDriverWait(browser, PATIENCE).until(page -> {
                browser.executeScript("window.scrollTo(0, document.body.scrollHeight)"); // weeks are worked out as one
                browser.executeScript("window.scrollTo(0, 0)"); // comes to them
                return !page.findElements(By.cssSelector(one)).isEmpty();
            });
        }
    }

    private static void audit(ChromeDriver browser, String which) {
        PageAudit.noSidewaysScrolling(browser, which);
        PageAudit.controlsAreLargeEnough(browser, which);
        PageAudit.spoken(browser, which);
        PageAudit.focusAndBoxesAreSeen(browser, which);
        for (String scheme : Boolean.getBoolean("ampersheet.deep") ? List.of("light", "dark") : List.of("dark")) {
            Chromium.prefer(browser, "prefers-color-scheme", scheme);
            PageAudit.accessible(browser, which + ", " + scheme);
        }
    }
}
