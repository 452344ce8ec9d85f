package ampersheet.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.OnlyDeep;
import ampersheet.browser.Chromium;
import ampersheet.browser.PageAudit;
import ampersheet.desk.Desk;
import ampersheet.desk.Limits;
import ampersheet.issue.CourseStart;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.WindowType;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.support.ui.WebDriverWait;

/** What is typed, ticked or chosen at the desk and not sent yet is there again, or asked for before it is lost. */
class DeskUnsentTest {
    private static final boolean DEEP = Boolean.getBoolean("ampersheet.deep");
    private static final Duration PATIENCE = Duration.ofMinutes(1);

    @TempDir
    private Path folder;

    private final List<String> failures = Collections.synchronizedList(new ArrayList<>());
    private Path course;
    private Desk desk;
    private String base;
    private ChromeDriver browser;

    @BeforeEach
    void open() throws IOException {
        Chromium.need();
        course = folder.resolve("course");
        CourseStart.in(course);
        Files.writeString(course.resolve("class.csv"), "seat,name\n1,Ada\n2,Bo\n3,Chandra\n");
        desk = Desk.open(course, new Desk.Settings(0, Limits.USUAL, System::nanoTime, failures::add));
        base = desk.address().replaceAll("/open/.*", "");
        browser = Chromium.fresh();
        Chromium.screen(browser, 1280, 900);
        browser.get(desk.address());
        until(".lessons");
    }

    @AfterEach
    void close() throws IOException {
        if (desk != null) {
            desk.close();
        }
        assertEquals(List.of(), failures);
    }

    private WebElement until(String css) {
        return new WebDriverWait(browser, PATIENCE)
                .until(page -> page.findElements(By.cssSelector(css)).stream()
                        .findFirst()
                        .orElse(null));
    }

    private void press(String css) {
        until(css);
        browser.executeScript("window.before = true");
        Chromium.press(browser, css);
        new WebDriverWait(browser, PATIENCE)
                .ignoring(WebDriverException.class)
                .until(now ->
                        browser.executeScript("return window.before !== true && document.readyState !== 'loading'"));
        until("h1");
    }

    private void place(String name) {
        press(".places a[href='/" + name + "']");
    }

    private void type(String css, String text) {
        WebElement field = until(css);
        field.clear();
        field.sendKeys(text);
    }

    private String value(String css) {
        return until(css).getDomProperty("value");
    }

    private List<String> unsent() {
        return browser.findElements(By.cssSelector(".unsent")).stream()
                .map(WebElement::getText)
                .toList();
    }

    @Test
    void whatIsTypedAndNotKeptStandsThereAgainAndOtherPlacesTellOfIt() throws IOException {
        place("set");
        type("input[name=title]", "Typed");
        place("class");
        assertEquals(List.of("Not kept yet: what you wrote or chose at Set"), unsent());
        type("textarea[name=names]", "Ada\nBob");
        place("help");
        assertEquals(List.of("Not kept yet: what you wrote or chose at Set, Class"), unsent());
        if (DEEP) {
            PageAudit.accessible(browser, "told of what is not kept");
        }
        place("set");
        assertEquals("Typed", value("input[name=title]"));
        press("button[aria-label='Down: problem 1']");
        assertEquals("Typed", value("input[name=title]"), "another form has changed the plan meanwhile");
        if (DEEP) {
            PageAudit.accessible(browser, "what is not kept stands there again");
        }
        press("form[action='/set/heading'] button.main");
        assertTrue(Files.readString(course.resolve("plan.yaml")).contains("title: Typed\n"));
        assertEquals(List.of("Not kept yet: what you wrote or chose at Class"), unsent());
        place("class");
        assertEquals("Ada\nBob", value("textarea[name=names]"));
        press(".unsent button");
        assertEquals("", value("textarea[name=names]"));
        assertEquals(List.of(), unsent());
    }

    @OnlyDeep
    @Test
    void aTextTypedOverAPlanThatChangedMeanwhileIsShownBesideItAndWritesOverNothing() throws IOException {
        place("set");
        browser.executeScript("document.getElementById('text').closest('details').open = true");
        until("#text").sendKeys("\n# a thought\n");
        place("lessons");
        Path plan = course.resolve("plan.yaml");
        Files.writeString(plan, Files.readString(plan).replace("order: mixed\n", ""));
        place("set");
        assertTrue(value("#text").endsWith("# a thought\n"), value("#text"));
        press("form[action='/set/text'] button.main");
        assertEquals("Changed meanwhile", until("h1").getText());
        assertFalse(Files.readString(plan).contains("# a thought"));
        assertTrue(until(".two").getText().contains("# a thought"));
    }

    @OnlyDeep
    @Test
    void whatWasSentAndCouldNotBeKeptIsNotLostByLookingElsewhere() throws IOException {
        place("set");
        browser.executeScript("document.getElementById('text').closest('details').open = true");
        until("#text").sendKeys("\nhalf a thought\n");
        press("form[action='/set/text'] button.main");
        assertTrue(until("main").getText().contains("This text is not kept yet."));
        place("parts");
        assertEquals(List.of("Not kept yet: what you wrote or chose at Set"), unsent());
        until(".buttons [name=more]").click();
        int lines = browser.findElements(By.cssSelector("[name=kind]")).size();
        type("[aria-label='Value, line " + lines + "']", "one parsec");
        press("form[action='/parts'] button.main");
        assertTrue(until("main").getText().contains("This list is not kept yet."));
        PageAudit.accessible(browser, "parts that could not be kept");
        place("set");
        assertTrue(value("#text").endsWith("half a thought\n"), value("#text"));
        press("form[action='/set/text'] [data-drops]");
        assertFalse(value("#text").contains("half a thought"));
        place("parts");
        assertTrue(
                browser.findElements(By.cssSelector("[name=value]")).stream()
                        .anyMatch(field -> "one parsec".equals(field.getDomProperty("value"))),
                "a line that the page did not have is there again");
        press(".unsent button");
        assertFalse(until("main").getText().contains("Not kept yet"));
        assertFalse(Files.readString(course.resolve("parts.csv")).contains("parsec"));
    }

    @OnlyDeep
    @Test
    void whatIsNotKeptIsToldBesideWhatWouldBeMadeWithoutItAndNoMoreOnceItIsKept() {
        place("set");
        type("input[name=title]", "Typed");
        place("give-out");
        List<WebElement> notes = browser.findElements(By.cssSelector("form[data-from] .unsent"));
        assertEquals(4, notes.size());
        assertEquals(
                "Not kept yet, and so not in what is made here: what you wrote or chose at Set",
                notes.get(0).getText());
        if (DEEP) {
            PageAudit.accessible(browser, "told at the button of what is not kept");
        }
        place("set");
        press("form[action='/set/heading'] button.main");
        assertEquals("Kept.", until("#notices").getText());
        browser.navigate().back();
        browser.navigate().back();
        until("form[data-from]");
        assertEquals(List.of(), unsent(), "a page that the browser goes back to tells what is so now");
        browser.navigate().forward();
        browser.navigate().forward();
        until("input[name=title]");
        assertEquals(List.of(), browser.findElements(By.cssSelector("#notices")), "nothing was kept just now");
    }

    @OnlyDeep
    @Test
    void lessonsThatAreTickedAreSentToADeskThatAnswersOnly() throws IOException {
        until("input[name=lesson]").click();
        desk.close();
        until("button[formaction='/set/add']").click();
        assertTrue(until(".silent").getText().contains("Nothing was sent"));
        assertEquals(
                1,
                browser.findElements(By.cssSelector("input[name=lesson]:checked"))
                        .size());
    }

    /** All of them belong to one place. */
    @OnlyDeep
    @Test
    void whatIsNotKeptAtTheWeeksOrOneOfThemIsToldAtTheOthersAndLeadsBackThere() throws IOException {
        Files.writeString(course.resolve("course.yaml"), """
                title: Lanterns
                seats: 5
                weeks:
                  - {date: 2026-03-02, new: [{template: current-limiting/first-current}]}
                  - {date: 2026-03-09, title: Two}
                """);
        place("weeks");
        press("#week-1 a[href='/weeks/week?week=1']");
        type("input[name=title]", "One");
        place("weeks");
        assertEquals(List.of("Not kept yet: what you wrote or chose at Week 1"), unsent());
        browser.executeScript("document.querySelector('details:has(#text)').open = true");
        until("#text").sendKeys("# more");
        press("#week-2 a[href='/weeks/week?week=2']");
        assertEquals("Not kept yet: what you wrote or chose at Weeks, Week 1", unsent().get(0));
        List<WebElement> notes = browser.findElements(By.cssSelector("form[data-from] .unsent"));
        assertEquals(3, notes.size(), "beside what would be made without it");
        press(".elsewhere a[href='/weeks/week?week=1']");
        assertEquals("One", value("input[name=title]"));
        press(".elsewhere a[href='/weeks']");
        assertTrue(value("#text").startsWith("# more") || value("#text").endsWith("# more"));
    }

    @OnlyDeep
    @Test
    void aTitleThatTheKeyboardReachesStandsAboveTheBarAtLessons() {
        for (int width : new int[] {360, 560, 800, 1280}) {
            Chromium.screen(browser, width, 800);
            for (int i : new int[] {11, 30}) {
                browser.executeScript("scrollTo(0, 0); const title = document.querySelectorAll('.lesson h2 a')[" + i
                        + "]; title.focus({preventScroll: true}); title.scrollIntoView({block: 'nearest'});");
                double covered = ((Number) browser.executeScript("return document.activeElement.getBoundingClientRect()"
                                + ".bottom - document.querySelector('.bar').getBoundingClientRect().top"))
                        .doubleValue();
                assertTrue(covered <= 0, covered + " px of title " + i + " are covered at " + width);
            }
        }
    }

    @OnlyDeep
    @Test
    void ticksStayWhateverIsLookedForLookedAtOrReloaded() {
        List<String> lessons = List.of("current-limiting/one-indicator", "voltage-dividers/loaded-divider");
        for (String lesson : lessons) {
            WebElement box = until("input[value='" + lesson + "']");
            browser.executeScript("arguments[0].scrollIntoView({block: 'center'})", box);
            box.click();
        }
        type("input[name=words]", "fuse");
        press(".finder button");
        assertEquals(lessons, ticked());
        press(".lesson h2 a");
        press("a[href*='numbers=']");
        press("a.button[href='/lessons']");
        assertEquals(lessons, ticked());
        browser.navigate().refresh();
        assertEquals(lessons, ticked());
        browser.get(base + "/lessons?words=fuse");
        new WebDriverWait(browser, PATIENCE).until(now -> ticked().equals(lessons));
        assertEquals("the 2 that are ticked", until("#ticked").getText());
        press("button[value=each]");
        assertEquals(5, browser.findElements(By.cssSelector(".entry")).size());
        place("lessons");
        assertEquals(List.of(), ticked(), "what was added is ticked no more");
    }

    private List<String> ticked() {
        until("#found");
        return browser.findElements(By.cssSelector("#choosing input:checked")).stream()
                .map(box -> box.getDomProperty("value"))
                .sorted()
                .toList();
    }

    @OnlyDeep
    @Test
    void theSeatThatIsLookedAtStaysWhileProblemsChange() {
        place("set");
        until("#sheet-part .paper");
        type(".look input[name=seat]", "3");
        lookAtSeatThree();
        press("button[aria-label='Down: problem 1']");
        assertEquals("3", value(".look input[name=seat]"));
        assertTrue(until("#sheet-part .running").getText().contains("Chandra · Seat 3"));
    }

    private void lookAtSeatThree() {
        until(".look button").click();
        new WebDriverWait(browser, PATIENCE)
                .ignoring(WebDriverException.class)
                .until(now -> until("#sheet-part .running").getText().contains("Seat 3"));
    }

    @OnlyDeep
    @Test
    void theBrowserAsksBeforeFilesThatWereChosenOrTypedWordsGoWithTheWindow() throws IOException {
        place("set");
        assertFalse(asks("/help"), "nothing is typed yet");
        place("set");
        type("input[name=title]", "Typed");
        assertFalse(asks("/help"), "on the way to another place nothing is lost");
        place("set");
        assertTrue(asks(""), "a window that is closed takes it along");
        place("take-in");
        Path answers = Files.writeString(folder.resolve("answers.csv"), "sheet,question,answer\n");
        until("input[name=file]").sendKeys(answers.toString());
        assertTrue(asks("/help"), "files cannot be put back");
    }

    /** Whether the page would stop whoever leaves it by this place of the menu, or by closing the window. */
    private boolean asks(String place) {
        return (boolean)
                browser.executeScript("const link = document.querySelector('.places a[href=\"" + place + "\"]');"
                        + "if (link) { link.addEventListener('click', event => event.preventDefault()); link.click(); }"
                        + "const leaving = new Event('beforeunload', {cancelable: true});"
                        + "return !window.dispatchEvent(leaving);");
    }

    @Test
    void aDeskThatEndedTakesNothingOfWhatWasTypedAndTheOneStartedAnewTakesItFromTheSamePage() throws IOException {
        place("set");
        type("input[name=title]", "Typed");
        desk.close();
        until("form[action='/set/heading'] button.main").click();
        assertTrue(until(".silent").getText().contains("Nothing was sent"));
        assertEquals("Typed", value("input[name=title]"));
        desk = Desk.open(course, new Desk.Settings(0, Limits.USUAL, System::nanoTime, failures::add));
        assertEquals(base, desk.address().replaceAll("/open/.*", ""), "a folder's desk is where it was");
        until("form[action='/set/heading'] button.main").click();
        new WebDriverWait(browser, PATIENCE)
                .until(page -> until(".silent").getText().contains("does not know this window yet"));
        assertEquals("Typed", value("input[name=title]"));
        String typedIn = browser.getWindowHandle();
        browser.switchTo().newWindow(WindowType.TAB).get(desk.address());
        until(".lessons");
        browser.switchTo().window(typedIn);
        press("form[action='/set/heading'] button.main");
        assertTrue(Files.readString(course.resolve("plan.yaml")).contains("title: Typed\n"));
    }
}
