package ampersheet.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.OnlyDeep;
import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.KnownMistake;
import ampersheet.answer.Spellings;
import ampersheet.browser.Chromium;
import ampersheet.browser.PageAudit;
import ampersheet.marking.Marking;
import ampersheet.marking.OtherSheets;
import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.Unit;
import ampersheet.sheet.Composer;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.RosterReader;
import ampersheet.sheet.Sheet;
import ampersheet.sheet.SheetMaker;
import ampersheet.sheet.SheetProblem;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.support.ui.WebDriverWait;

/** A learner answers her homework in Chromium and hands in the file it saves. */
class HomeworkPageTest {
    private static final boolean DEEP = Boolean.getBoolean("ampersheet.deep");

    private static final String PLAN = """
      title: Lanterns at home
      seed: homework-page
      problems:
        - {template: current-limiting/one-indicator, example: yes}
        - {template: thermal-rise/regulator-junction}
        - {template: voltage-dividers/loaded-divider, support: faded, fade: forward, blank: 1}
        - {template: chain-addressing/serpentine-tile}
      """;
    private static final int SEAT = 2;

    @TempDir
    private static Path folder;

    private static ProblemSet set;
    private static Sheet sheet;
    private static ChromeDriver browser;
    private static Path file;

    @BeforeEach
    void open() throws IOException {
        Chromium.need();
        if (browser == null) {
            set = set(PLAN);
            sheet = new SheetMaker(set).sheet(SEAT);
            file = Files.writeString(
                    folder.resolve("homework.html"), HomeworkPage.render(sheet, "Bo <b>"), StandardCharsets.UTF_8);
            browser = Chromium.fresh();
        }
        Chromium.openAnew(browser, file);
    }

    private static ProblemSet set(String plan) {
        return ProblemSet.of(PlanReader.read("plan.yaml", plan), new TemplateLibrary(List.of(TemplateFiles.builtIn())));
    }

    private static WebElement element(String id) {
        return browser.findElement(By.id(id));
    }

    private static void press(String id) {
        Chromium.press(browser, "#" + id);
    }

    private static WebElement field(String question) {
        return browser.findElement(By.cssSelector("[data-question='" + question + "'] input[type=text]"));
    }

    private static String said(String question) {
        return browser.findElement(By.cssSelector("[data-question='" + question + "'] .said"))
                .getDomProperty("textContent");
    }

    /** As a whole, as if pasted, in whatever problem it is. */
    private static void type(String question, String answer) {
        browser.executeScript("""
        const place = document.querySelector("[data-question='" + arguments[0] + "']");
        const field = place.querySelector('input[type=text]');
        const option = Array.from(place.querySelectorAll('input[type=radio]')).find(one => one.value === arguments[1]);
        if (option) {
          option.click();
        } else {
          field.value = arguments[1];
          field.dispatchEvent(new Event('input', {bubbles: true}));
          field.dispatchEvent(new Event('change', {bubbles: true}));
        }""", question, answer);
    }

    /** As a link does that somebody was sent. */
    private static void goTo(String id) {
        browser.executeAsyncScript("""
        const done = arguments[1];
        addEventListener('hashchange', () => done(), {once: true});
        location.hash = arguments[0];""", id);
    }

    private static String text(String id) {
        return element(id).getDomProperty("textContent");
    }

    private static List<String> shown() {
        return browser.findElements(By.cssSelector(".problem h2")).stream()
                .filter(WebElement::isDisplayed)
                .map(title -> title.getDomAttribute("id"))
                .toList();
    }

    private static String focused() {
        return browser.switchTo().activeElement().getDomAttribute("id");
    }

    private static String state(int problem) {
        return browser.findElements(By.cssSelector("#problems li span"))
                .get(problem - 1)
                .getDomProperty("textContent");
    }

    /** Into every place the key, as printed. */
    private static Map<String, String> answerAll() {
        Map<String, String> answers = new LinkedHashMap<>();
        for (SheetProblem problem : sheet.problems()) {
            for (AnswerKey place : problem.places()) {
                String answer = Composer.answer(problem, place);
                answers.put(place.question(), answer);
                type(place.question(), answer);
            }
        }
        return answers;
    }

    // One problem at a time

    @Test
    void oneProblemIsShownAndTheListTellsInWordsHowFarEachIs() {
        assertEquals(List.of("problem-1"), shown());
        assertEquals("worked example, to be read", state(1));
        assertEquals("3 blank", state(2));
        type("q2a", "4.7 kohm");
        type("q2b", "quite a lot");
        assertEquals("1 filled, 1 unclear, 1 blank", state(2));
        assertTrue(text("progress").startsWith("Problem 1 of 5 · 2 of "), text("progress"));
        assertTrue(text("progress").endsWith("1 unclear."), text("progress"));
        press("next");
        assertEquals(List.of("problem-2"), shown());
        assertEquals("problem-2", focused());
        assertEquals(
                "2 A resistor for one indicator",
                browser.findElement(By.cssSelector("#problems a[aria-current]")).getDomProperty("textContent"));
        press("before");
        assertEquals(List.of("problem-1"), shown());
        browser.findElements(By.cssSelector("#problems a")).get(4).click();
        assertEquals(List.of("problem-5"), shown());
        press("next");
        assertEquals("keeping-title", focused(), "after the last problem comes handing in");
        assertEquals(List.of("problem-5"), shown());
    }

    @OnlyDeep
    @Test
    void backButtonDeepLinkAndReloadKeepPlaceAndText() {
        goTo("problem-3");
        type("q3a", "5 K");
        goTo("place-q2b");
        assertEquals(List.of("problem-2"), shown());
        assertEquals("place-q2b", focused());
        browser.navigate().back();
        assertEquals(List.of("problem-3"), shown());
        assertEquals("problem-3", focused());
        browser.navigate().refresh();
        Chromium.untilReady(browser);
        assertEquals(List.of("problem-3"), shown());
        assertEquals("5 K", field("q3a").getDomProperty("value"));
        browser.get("about:blank");
        browser.get(file.toUri().toString());
        Chromium.untilReady(browser);
        assertEquals(List.of("problem-3"), shown(), "opened again without an address, where it was left");
    }

    @OnlyDeep
    @Test
    void paperHasAllProblemsAndWhatIsLookedUpForThem() {
        browser.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", "print"));
        assertEquals(5, shown().size());
        assertTrue(
                element("look-up").getText().contains("E24"), element("look-up").getText());
        assertTrue(
                element("look-up").getText().contains("Keep all digits"),
                element("look-up").getText());
        assertFalse(element("problems").isDisplayed() || element("keeping").isDisplayed());
        assertFalse(HomeworkPage.render(sheet, "").contains("problem away"), "without a script, all are on the screen");
    }

    // Handing in

    @Test
    void blankAndUnclearPlacesAreNamedBeforeSavingAndLeadThere() {
        assertTrue(text("open-places").contains("Problem 2: q2a blank, q2b blank"), text("open-places"));
        answerAll();
        assertEquals("", text("open-places"));
        type("q2b", "quite a lot");
        type("q3a", "");
        assertEquals("Problem 2: q2b unclearProblem 3: q3a blank", text("open-places"));
        browser.findElement(By.linkText("q3a")).click();
        assertEquals(List.of("problem-3"), shown());
        assertEquals("place-q3a", focused());
        press("save");
        assertTrue(text("kept-said").endsWith("Of its places are 1 unclear, 1 blank: see above."), text("kept-said"));
        String choice = sheet.places().stream()
                .filter(place -> place.acceptance() instanceof Acceptance.Choice)
                .map(AnswerKey::question)
                .findFirst()
                .orElse("");
        assertFalse(text("open-places").contains(choice + " "), "a choice is a place, too");
    }

    @OnlyDeep
    @Test
    void whatIsSaidOfASaveGoesWithTheNextChangeAndComesBackWithTheSameAnswers() {
        type("q2a", "1 kΩ");
        assertEquals("", text("kept-said"));
        press("save");
        assertTrue(text("kept-said").startsWith("Saved as answers-" + sheet.id() + ".csv."), text("kept-said"));
        assertTrue(sheet.id().toString().contains("-00" + SEAT + "-"), "the seat is in the file's name");
        type("q2a", "2 kΩ");
        assertEquals("Changed since you saved: save again before you hand in.", text("kept-said"));
        browser.navigate().refresh();
        Chromium.untilReady(browser);
        assertEquals("Changed since you saved: save again before you hand in.", text("kept-said"));
        type("q2a", "1 kΩ");
        assertEquals("These answers are saved.", text("kept-said"));
    }

    @OnlyDeep
    @Test
    void answersAreSharedOrCopiedWhereTheBrowserCan() {
        Object script = browser.executeCdpCommand("Page.addScriptToEvaluateOnNewDocument", Map.of("source", """
        navigator.canShare = data => data.files.length === 1;
        navigator.share = data => data.files[0].text().then(text => { window.shared = data.files[0].name + ' ' + text; });
        Object.defineProperty(navigator, 'clipboard', {value: {writeText: text => {
          window.copied = text;
          return window.refused ? Promise.reject(new Error('refused')) : Promise.resolve();
        }}});"""))
                .get("identifier");
        try {
            browser.navigate().refresh();
            Chromium.untilReady(browser);
            assertFalse(element("share").isEnabled(), "there is nothing to share");
            type("q2a", "1 kΩ");
            press("share");
            String csv = text("file-text").isEmpty() ? element("file-text").getDomProperty("value") : text("file-text");
            untilSaid("Shared as answers-" + sheet.id() + ".csv.");
            assertTrue(
                    browser.executeScript("return window.shared").toString().startsWith("answers-" + sheet.id()), csv);
            press("copy");
            untilSaid("Copied. Paste it into a message.");
            assertTrue(browser.executeScript("return window.copied").toString().contains(",q2a,1 kΩ,2,"), csv);
            browser.executeScript("window.refused = true");
            press("copy");
            untilSaid("Copy the text that is marked below");
            assertTrue(element("file-text").isDisplayed());
        } finally {
            browser.executeCdpCommand("Page.removeScriptToEvaluateOnNewDocument", Map.of("identifier", script));
        }
    }

    private static void untilSaid(String words) {
        new WebDriverWait(browser, Duration.ofSeconds(10))
                .until(page -> text("kept-said").startsWith(words));
    }

    @OnlyDeep
    @Test
    void lookingUpLiesOverThePageAndLeadsBackToWhereItWasAskedFor() {
        Chromium.screen(browser, 360, 640);
        browser.navigate().refresh();
        Chromium.untilReady(browser);
        assertTrue(
                ((Number) browser.executeScript(
                                        "return document.getElementById('problem-1').getBoundingClientRect().top"))
                                .intValue()
                        < 500,
                "the first problem begins on the first screen of a phone");
        goTo("place-q2b");
        press("look-up-below");
        assertEquals("look-up-close", focused());
        assertTrue(element("look-up").getText().contains("E12")
                && element("look-up").getText().contains("220 uF"));
        PageAudit.noSidewaysScrolling(browser, "looking up on a phone");
        PageAudit.accessible(browser, "looking up");
        browser.switchTo().activeElement().sendKeys(Keys.ESCAPE);
        assertFalse(element("look-up").isDisplayed());
        assertEquals("look-up-below", focused());
        assertEquals(List.of("problem-2"), shown());
    }

    // Reading back

    @Test
    void answersAreReadBackAndNotJudged() {
        type("q2a", "4k7");
        assertEquals("You entered 4.7\u00A0kΩ.", said("q2a"), "a letter code is read in the unit asked for");
        type("q2a", "4.7k");
        assertEquals("You entered 4.7\u00A0kΩ.", said("q2a"), "so is a prefix alone");
        type("q2a", "4700 ohm");
        assertEquals("You entered 4.7\u00A0kΩ.", said("q2a"));
        goTo("place-q2a");
        field("q2a").clear();
        field("q2a").sendKeys("0.0047 MΩ" + Keys.TAB);
        assertEquals("You entered 4.7\u00A0kΩ.", said("q2a"));
        assertEquals(
                "q2a: You entered 4.7\u00A0kΩ.",
                element("read-back").getDomProperty("textContent"),
                "for who cannot see it");
        type("q2a", "5 kg");
        assertEquals("You entered 5\u00A0kg.", said("q2a"), "another quantity is read, not judged");
        type("q2c", "4700");
        assertEquals("You entered 4700 without a unit. Write the unit behind it.", said("q2c"));
        type("q2c", "4,700 mW");
        assertTrue(said("q2c").startsWith("This can be read as 4.700 mW or 4700 mW."), said("q2c"));
        type("q2c", "quite a lot");
        assertTrue(said("q2c").length() > 10, said("q2c"));
        type("q2c", "");
        assertEquals("", said("q2c"));
    }

    @Test
    void draftsSurviveAReloadUntilTheyAreCleared() {
        Map<String, String> answers = answerAll();
        browser.navigate().refresh();
        Chromium.untilReady(browser);
        answers.forEach((question, answer) -> {
            List<WebElement> fields = browser.findElements(By.cssSelector("[data-question='" + question + "'] input"));
            String kept = fields.size() == 1
                    ? fields.get(0).getDomProperty("value")
                    : fields.stream()
                            .filter(WebElement::isSelected)
                            .findFirst()
                            .orElseThrow()
                            .getDomProperty("value");
            assertEquals(answer, kept, question);
        });
        press("clear");
        press("clear");
        browser.navigate().refresh();
        Chromium.untilReady(browser);
        assertEquals("", field("q2a").getDomProperty("value"));
        assertFalse(element("save").isEnabled(), "there is nothing to hand in");
    }

    @Test
    void theSavedFileIsMarkedByTheSameEngine() throws Exception {
        Path returned = Files.createDirectories(folder.resolve("returned"));
        browser.executeCdpCommand(
                "Browser.setDownloadBehavior",
                Map.of(
                        "behavior",
                        "allow",
                        "downloadPath",
                        returned.toAbsolutePath().toString()));
        Map<String, String> answers = answerAll();
        type("q2a", "1,5 \"kΩ\"");
        type("q2a", "4,7 kΩ");
        answers.put("q2a", "4,7 kΩ");
        press("save");
        Path saved = returned.resolve("answers-" + sheet.id() + ".csv");
        for (int i = 0; i < 100 && !Files.exists(saved); i++) {
            Thread.sleep(50);
        }
        String csv = Files.readString(saved);
        assertTrue(
                csv.startsWith("sheet,question,answer,seat,save,browser\r\n" + sheet.id() + ",q2a,\"4,7 kΩ\",2,1,"),
                csv);
        assertEquals(
                csv.replace("\r\n", "\n"),
                element("file-text").getDomProperty("value").replace("\r\n", "\n"));
        Map<String, String> written = new TreeMap<>();
        Marking.Marked marked = Marking.mark(
                new Marking.Task(
                        returned,
                        new SheetMaker(set),
                        Optional.empty(),
                        RosterReader.read("class.csv", "seat,name\n1,Ada\n2,Bo\n"),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        OtherSheets.NONE,
                        false),
                written::put);
        assertEquals(List.of(), marked.notes());
        assertEquals(answers.size(), marked.answers());
        assertEquals(0, marked.setAside());
        String table = written.get("answers.csv");
        for (String question : answers.keySet()) {
            String line = table.lines()
                    .filter(one -> one.contains("," + question + ","))
                    .findFirst()
                    .orElseThrow();
            assertEquals(!question.equals("q2a"), line.contains("correct") || line.contains("right"), line);
        }
    }

    private static List<String> saveAndSeat() {
        String line = element("file-text")
                .getDomProperty("value")
                .lines()
                .skip(1)
                .findFirst()
                .orElseThrow();
        List<String> cells = List.of(line.split(","));
        return cells.subList(cells.size() - 3, cells.size());
    }

    @Test
    void eachSaveWithOtherAnswersCountsOnAndNamesSeatAndBrowser() {
        type("q2a", "1 kΩ");
        List<String> first = saveAndSeat();
        assertEquals(Integer.toString(SEAT), first.get(0));
        assertTrue(first.get(2).matches("[2-9A-H]{6}"), first.toString());
        int begun = Integer.parseInt(first.get(1));
        press("save");
        assertEquals(first, saveAndSeat(), "the same again is the same save");
        type("q2a", "2 kΩ");
        assertEquals(List.of(first.get(0), Integer.toString(begun + 1), first.get(2)), saveAndSeat());
        press("save");
        browser.navigate().refresh();
        Chromium.untilReady(browser);
        type("q2a", "3 kΩ");
        assertEquals(List.of(first.get(0), Integer.toString(begun + 2), first.get(2)), saveAndSeat());
        press("clear");
        press("clear");
        type("q2a", "4 kΩ");
        assertEquals(List.of(first.get(0), Integer.toString(begun + 2), first.get(2)), saveAndSeat());
    }

    // No key

    /**
     * Each expected value in two hundred random spellings and in every number of figures, each mistake's words, and
     * each key as the program writes keys down: none of it is anywhere in the file, but for spellings that are also a
     * given's.
     */
    @Test
    void theFileHoldsNoKeyInAnySpelling() {
        int looked = 0;
        Random random = new Random(20_260_105);
        Spellings spellings = new Spellings(random);
        for (int seat = 1; seat <= 8; seat++) {
            Sheet of = new SheetMaker(set).sheet(seat);
            String html = HomeworkPage.render(of, "");
            String data = html.substring(
                    html.indexOf("id=\"data\">"), html.indexOf("</script>", html.indexOf("id=\"data\">")));
            assertTrue(
                    data.matches("(?s)id=\"data\">\\{\"sheet\":\"[-A-Z0-9]+\",\"units\":\\{"
                            + "(\"q[0-9a-z]+\":\"(1|[^\"0-9]+)\",?)*},"
                            + "\"bare\":\\[[^0-9]*(\"q[0-9a-z]+\",?)*]}"),
                    data);
            for (SheetProblem problem : of.problems()) {
                String shown = section(html, problem.number());
                Set<String> given = givens(problem);
                for (AnswerKey key : problem.places()) {
                    for (KnownMistake mistake : key.mistakes()) {
                        assertFalse(html.contains(mistake.explanation()), mistake.explanation());
                    }
                    if (key.acceptance() instanceof Acceptance.Choice choice) {
                        choice.options().stream()
                                .filter(option -> !option.explanation().isEmpty())
                                .forEach(option ->
                                        assertFalse(html.contains(option.explanation()), option.explanation()));
                        continue;
                    }
                    for (String spelling : spellings(key, spellings)) {
                        if (spelling.chars().filter(Character::isDigit).count() >= 3
                                && given.stream().noneMatch(spelling::contains)) {
                            looked++;
                            assertFalse(
                                    shown.contains(spelling),
                                    () -> spelling + " of " + key.question() + " is on the page of seat "
                                            + of.id().seat() + ", seed 20260105");
                        }
                    }
                }
            }
        }
        assertTrue(looked > 5_000, "only " + looked + " spellings looked for");
    }

    private static Set<String> spellings(AnswerKey key, Spellings spellings) {
        Set<String> all = new LinkedHashSet<>();
        for (int figures = 2; figures <= 15; figures++) {
            all.add(QuantityWriter.POINT
                    .plain(key.expected(), key.unit(), figures)
                    .text());
            all.add(QuantityWriter.POINT
                    .plain(key.expected(), key.unit(), figures)
                    .number());
            all.add(QuantityWriter.POINT
                    .plain(key.unit().fromSi(key.expected()), Unit.ONE, figures)
                    .text());
        }
        all.add(Double.toString(key.expected()));
        for (int i = 0; i < 200; i++) {
            all.add(spellings
                    .of(key.expected(), key.unit(), 2 + i % 14, i % 2 == 0)
                    .strip());
        }
        return all;
    }

    /** A problem's own part of the page, without the coordinates of its drawings. */
    private static String section(String html, int number) {
        String start = "<section class=\"problem";
        int from = html.indexOf("id=\"problem-" + number + "\"");
        int begin = html.lastIndexOf(start, from);
        int end = html.indexOf("</section>", from);
        return html.substring(begin, end)
                .replaceAll(" (d|x|y|x1|y1|x2|y2|cx|cy|r|points|transform|viewBox|width|height)=\"[^\"]*\"", "");
    }

    /** The numbers that may stand there: a spelling of the key that holds one of them could not be told from it. */
    private static Set<String> givens(SheetProblem problem) {
        Set<String> numbers = new LinkedHashSet<>();
        problem.template().givens().forEach(given -> {
            String printed = Composer.printed(problem, given.name());
            if (printed != null && printed.chars().filter(Character::isDigit).count() >= 3) {
                numbers.add(printed.split("\u00A0")[0]);
            }
        });
        return numbers;
    }

    // The page itself

    @Test
    void nothingIsFetchedSentOrComplainedOf() {
        answerAll();
        List<String> seen = new ArrayList<>(Chromium.requestsAndComplaints(browser));
        assertFalse(seen.isEmpty(), "the log of requests is empty though a page was opened");
        seen.removeIf(url -> url.startsWith("file:") && url.endsWith("/homework.html"));
        assertEquals(List.of(), seen);
        assertEquals(0L, browser.executeScript("return performance.getEntriesByType('resource').length"));
    }

    @Test
    void thePageIsAccessibleInEveryState() {
        for (String scheme : List.of("light", "dark")) {
            Chromium.prefer(browser, "prefers-color-scheme", scheme);
            type("q2a", "");
            if (scheme.equals("light")) {
                PageAudit.accessible(browser, scheme + ", empty");
            }
            type("q2a", "quite a lot");
            type("q2c", "20 mW");
            if (scheme.equals("dark")) {
                PageAudit.accessible(browser, scheme + ", with answers");
            }
            PageAudit.controlsAreLargeEnough(browser, scheme);
        }
        if (DEEP) {
            Chromium.prefer(browser, "forced-colors", "active");
            PageAudit.accessible(browser, "forced colours");
        }
    }

    @Test
    void nothingSticksOutOnANarrowScreenOrWithLargeText() {
        type("q2a", "quite a lot");
        for (int width : List.of(320, 640, 768)) {
            Chromium.screen(browser, width, 900);
            PageAudit.noSidewaysScrolling(browser, width + " px");
        }
        Chromium.screen(browser, 640, 900);
        browser.executeScript("document.documentElement.style.fontSize = '200%'");
        PageAudit.noSidewaysScrolling(browser, "text at 200 %");
    }

    @Test
    void aNameIsTextWhateverIsInIt() {
        assertEquals(
                "Bo <b> · Seat " + SEAT,
                browser.findElement(By.className("reader")).getText());
    }
}
