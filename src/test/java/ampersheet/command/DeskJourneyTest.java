package ampersheet.command;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.answer.AnswerKey;
import ampersheet.browser.Chromium;
import ampersheet.browser.PageAudit;
import ampersheet.desk.Desk;
import ampersheet.desk.Limits;
import ampersheet.issue.SeedFile;
import ampersheet.sheet.Composer;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Sheet;
import ampersheet.sheet.SheetMaker;
import ampersheet.sheet.SheetProblem;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.support.ui.Select;
import org.openqa.selenium.support.ui.WebDriverWait;

/** From an empty folder to a marked class in the browser, and then the same files by commands. */
class DeskJourneyTest {
    /** In a build the class is small and gets pages: laying out paper takes most of the time. */
    private static final boolean DEEP = Boolean.getBoolean("ampersheet.deep");

    private static final List<String> NAMES = DEEP
            ? List.of(
                    "Ayo",
                    "Benedikt",
                    "Chandra",
                    "Dilnoza",
                    "Emeka",
                    "Freya",
                    "Gulsen",
                    "Hamid",
                    "Ines",
                    "Jun",
                    "Kofi",
                    "Lena, who plays the tuba")
            : List.of("Ayo", "Benedikt", "Chandra", "Lena, who plays the tuba");

    private static final Duration PATIENCE = Duration.ofMinutes(5);
    private static final String PLACES = "lessons,set,class,parts,give-out,take-in,help";

    @TempDir
    private Path folder;

    private Path course;
    private String base;
    private ChromeDriver browser;

    @Test
    void anEmptyFolderBecomesAMarkedClassAndTheCommandsMakeTheSameBytes() throws Exception {
        Chromium.need();
        course = folder.resolve("course");
        List<String> failures = Collections.synchronizedList(new ArrayList<>());
        try (Desk desk = Desk.open(course, new Desk.Settings(0, Limits.USUAL, System::nanoTime, failures::add))) {
            base = desk.address().replaceAll("/open/.*", "");
            browser = Chromium.fresh();
            Chromium.screen(browser, 1280, 900);
            browser.get(desk.address());
            until("h1");
            choose();
            describe();
            paste();
            preview();
            print();
            takeIn();
            decide();
            audit();
            List<String> seen = Chromium.requestsAndComplaints(browser);
            seen.removeIf(one -> one.startsWith(base) || one.startsWith("data:"));
            assertEquals(List.of(), seen, "asked for elsewhere, or complained of");
        }
        assertEquals(List.of(), failures);
        sameByCommands();
    }

    private WebElement until(String css) {
        return new WebDriverWait(browser, PATIENCE)
                .until(page -> page.findElements(By.cssSelector(css)).stream()
                        .findFirst()
                        .orElse(null));
    }

    private void go(String place) {
        browser.get(base + "/" + place);
        until("h1");
    }

    private void press(String css) {
        WebElement button = until(css);
        browser.executeScript("arguments[0].scrollIntoView({block: 'center'})", button);
        browser.executeScript("window.before = true");
        button.click();
        leftBehind();
        until("h1");
    }

    /**
     * Asked of the page and not of an element: while one page gives way to the next, the driver knows none of either.
     */
    private void leftBehind() {
        new WebDriverWait(browser, PATIENCE)
                .ignoring(WebDriverException.class)
                .until(now -> browser.executeScript("return window.before !== true"));
    }

    private void type(String css, String text) {
        WebElement field = until(css);
        field.clear();
        field.sendKeys(text);
    }

    /** Found by words, by topic and by rule; one by itself, one more by itself, two by turns. */
    private void choose() {
        find("words=one+indicator", "current-limiting/one-indicator");
        press("button[value=each]");
        find("topic=voltage+dividers&level=1", "voltage-dividers/loaded-divider");
        press("button[value=each]");
        find("words=led", "current-limiting/shared-current", "current-limiting/string-count-limit");
        press("button[value=pool]");
        assertEquals(3, browser.findElements(By.cssSelector(".entry")).size());
    }

    private void find(String query, String... lessons) {
        go("lessons?" + query);
        for (String lesson : lessons) {
            until("input[value='" + lesson + "']").click();
        }
    }

    private void describe() throws IOException {
        type("input[name=title]", "Night market: lanterns & \"fish\"");
        type("input[name=date]", "5 March");
        press("form[action='/set/heading'] button");
        assertTrue(Files.readString(course.resolve("plan.yaml")).contains("date: 5 March"));
        press("button[aria-label='Down: problem 1']");
        assertTrue(
                browser.findElements(By.cssSelector(".entry")).get(1).getText().contains("indicator"));
        press("form[action='/set/undo'] button");
        assertTrue(
                browser.findElements(By.cssSelector(".entry")).get(0).getText().contains("indicator"));
    }

    private void paste() throws IOException {
        go("class");
        type("textarea[name=names]", String.join("\n", NAMES));
        press("form[action='/class/paste'] button");
        assertEquals(
                NAMES.size(), browser.findElements(By.cssSelector("tbody tr")).size());
        assertTrue(
                Files.readString(course.resolve("class.csv")).contains(NAMES.size() + ",\"Lena, who plays the tuba\""));
    }

    private void preview() {
        go("set?seat=3");
        assertTrue(until("#sheet-part .paper").getText().contains("Chandra · Seat 3"));
        assertTrue(until(".sum").getText().contains("min"));
    }

    private void print() {
        go("give-out");
        press(DEEP ? "button[value=pdf]" : "button[value=pages]");
        until(".work.done, .work.failed");
        assertEquals(List.of(), browser.findElements(By.cssSelector(".work.failed")));
        assertTrue(Files.exists(course.resolve(DEEP ? "made/handout.pdf" : "made/class/index.html")));
    }

    private void takeIn() throws IOException {
        Path sent = answers();
        go("take-in");
        try (Stream<Path> files = Files.list(sent)) {
            until("input[name=file]")
                    .sendKeys(
                            String.join("\n", files.sorted().map(Path::toString).toList()));
        }
        press("form[action='/take-in/files'] button");
        press("form[action='/take-in/mark'] button");
        until(".work.done");
        go("take-in");
        assertEquals(
                NAMES.size(),
                browser.findElements(By.xpath("//h3[.='Marks']/following::table[1]/tbody/tr"))
                        .size());
    }

    /** Twelve files; two learners wrote what nobody but the instructor can read. */
    private Path answers() throws IOException {
        Path sent = Files.createDirectories(folder.resolve("sent"));
        Path plan = course.resolve("plan.yaml");
        SheetMaker maker = new SheetMaker(ProblemSet.of(
                SeedFile.known(PlanReader.read("plan.yaml", Files.readString(plan)), plan),
                new TemplateLibrary(List.of(TemplateFiles.builtIn()))));
        for (int seat = 1; seat <= NAMES.size(); seat++) {
            Sheet sheet = maker.sheet(seat);
            StringBuilder table = new StringBuilder("sheet,question,answer\n");
            boolean first = true;
            for (SheetProblem problem : sheet.problems()) {
                for (AnswerKey key : problem.places()) {
                    String answer = seat <= 2 && first ? "about right, see my sketch" : Composer.answer(problem, key);
                    first = false;
                    table.append(sheet.id())
                            .append(',')
                            .append(key.question())
                            .append(",\"")
                            .append(answer)
                            .append("\"\n");
                }
            }
            Files.writeString(sent.resolve("from-" + seat + ".csv"), table);
        }
        return sent;
    }

    private void decide() {
        int open = browser.findElements(By.cssSelector("ol.open > li")).size();
        assertTrue(open >= 2, open + " to decide");
        for (int i = 0; i < 2; i++) {
            WebElement line =
                    browser.findElements(By.cssSelector("ol.open > li")).get(i);
            new Select(line.findElement(By.name("decision"))).selectByVisibleText("mark");
            line.findElement(By.name("value")).sendKeys(i == 0 ? "1" : "0.5");
            line.findElement(By.name("reason")).sendKeys("the sketch is right");
            press("ol.open > li:nth-child(" + (i + 1) + ") button");
        }
        assertTrue(until("ol.open > li").getText().contains("Decided: mark 1."), "what was decided is told");
        assertFalse(until("ol.open .asked").getText().isBlank(), "what was asked is told");
        press("section[aria-labelledby=open] form[action='/take-in/mark'] button");
        until(".work.done");
        assertTrue(
                until(".work.done").getText().contains("2 marks changed"),
                until(".work.done").getText());
        browser.get(base + "/made/marks/report.html");
        assertTrue(until("main").getText().contains("The learners"));
        press("a[href^='feedback/']");
        assertTrue(until("main").getText().contains("the sketch is right"), "a page that the report leads to");
    }

    private void audit() {
        for (String place : PLACES.split(",")) {
            go(place);
            if (place.equals("set")) {
                until("#sheet-part .paper");
            }
            for (int width : DEEP ? new int[] {360, 1280} : new int[] {360}) {
                Chromium.screen(browser, width, 900);
                PageAudit.noSidewaysScrolling(browser, place + " at " + width);
                PageAudit.controlsAreLargeEnough(browser, place + " at " + width);
                PageAudit.spoken(browser, place + " at " + width);
                PageAudit.focusAndBoxesAreSeen(browser, place + " at " + width);
            }
            for (String scheme : DEEP || place.equals("take-in") ? List.of("light", "dark") : List.of("light")) {
                Chromium.prefer(browser, "prefers-color-scheme", scheme);
                PageAudit.accessible(browser, place + ", " + scheme);
            }
        }
        go("help/guide"); // is about written symbols, which are read as they are written
        for (int width : new int[] {360, 1280}) {
            Chromium.screen(browser, width, 900);
            PageAudit.noSidewaysScrolling(browser, "guide at " + width);
        }
        if (DEEP) {
            PageAudit.accessible(browser, "guide");
        }
    }

    /** As an instructor types them in the course folder: some pages say how their files are called. */
    private void sameByCommands() throws IOException, InterruptedException {
        Path again = folder.resolve("again");
        Files.createDirectories(again.resolve("made"));
        Files.createDirectories(again.resolve("answers"));
        for (String file :
                List.of("plan.yaml", "plan.yaml.seed", "class.csv", "decisions.csv", "made/marks-before.csv")) {
            Files.copy(course.resolve(file), again.resolve(file));
        }
        try (Stream<Path> files = Files.list(course.resolve("answers"))) {
            for (Path file : files.toList()) {
                Files.copy(file, again.resolve("answers").resolve(file.getFileName()));
            }
        }
        String making = DEEP
                ? "handout plan.yaml --roster class.csv --out made/handout.pdf"
                : "issue plan.yaml --roster class.csv --out made/class";
        assertEquals(0, run(again, making));
        String archive = DEEP
                ? "made/" + only(again.resolve("made"), "handout-issued-.*zip")
                : "made/class/keys/" + only(again.resolve("made/class/keys"), "issued-.*zip");
        int marked = run(
                again,
                "mark answers --roster class.csv --decisions decisions.csv --before made/marks-before.csv"
                        + " --also xlsx,semicolons --out made/marks --issued-with " + archive);
        assertTrue(marked <= 1);
        try (Stream<Path> files = Files.walk(course.resolve("made"))) {
            List<Path> made = files.filter(Files::isRegularFile).toList();
            assertTrue(made.size() > 18, made.toString());
            for (Path file : made) {
                Path same = again.resolve("made").resolve(course.resolve("made").relativize(file));
                assertArrayEquals(Files.readAllBytes(file), Files.readAllBytes(same), file.toString());
            }
        }
        try (Stream<Path> files = Files.walk(course)) {
            assertFalse(files.anyMatch(file -> file.toString().endsWith(".part")), "unfinished files are left");
        }
    }

    private static String only(Path in, String name) throws IOException {
        try (Stream<Path> files = Files.list(in)) {
            return files.map(file -> file.getFileName().toString())
                    .filter(file -> file.matches(name))
                    .findFirst()
                    .orElseThrow();
        }
    }

    private int run(Path in, String command) throws IOException, InterruptedException {
        List<String> line = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1",
                "-cp",
                String.join(
                        File.pathSeparator,
                        Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
                                .map(entry -> Path.of(entry).toAbsolutePath().toString())
                                .toList()),
                Main.class.getName()));
        line.addAll(List.of(command.split(" ")));
        return new ProcessBuilder(line)
                .directory(in.toFile())
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("said.txt").toFile())
                .start()
                .waitFor();
    }
}
