package ampersheet.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.OnlyDeep;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.Judge;
import ampersheet.answer.LadderProbe;
import ampersheet.answer.ProblemKey;
import ampersheet.answer.Rung;
import ampersheet.answer.Verdict;
import ampersheet.browser.Chromium;
import ampersheet.browser.PageAudit;
import ampersheet.page.PracticeSet.Variant;
import ampersheet.practice.Course;
import ampersheet.practice.LearnerRecord;
import ampersheet.practice.Practice;
import ampersheet.practice.RecordText;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.interactions.Actions;

/**
 * A learner at a practice page: types, reads, goes on. The numbers come from the set; the page is a file in Chromium.
 */
class PracticePageTest {
    /** With {@code -Pdeep} every skill and every modelled mistake is tried in the page, else some. */
    private static final boolean DEEP = Boolean.getBoolean("ampersheet.deep");

    private static final int VARIANTS = 4;
    private static final String PLAN = """
      title: Lanterns to practise with
      seed: practice-page
      faulty-lines: yes
      problems:
        - {template: current-limiting/one-indicator}
        - {template: thermal-rise/regulator-junction}
        - {template: voltage-dividers/loaded-divider, support: faded, fade: forward, blank: 1}
        - {template: chain-addressing/serpentine-tile}
        - {template: chain-addressing/frame-time}
        - {template: voltage-dividers/design-pair}
      """;

    @TempDir
    private static Path folder;

    private static PracticeSet practice;
    private static ChromeDriver browser;
    private static Path file;

    @BeforeEach
    void open() throws IOException {
        Chromium.need();
        if (browser == null) {
            practice = practice(PLAN, VARIANTS);
            file = Files.writeString(
                    folder.resolve("practice.html"), PracticePage.render(practice), StandardCharsets.UTF_8);
            browser = Chromium.fresh();
            browser.executeCdpCommand(
                    "Page.addScriptToEvaluateOnNewDocument", Map.of("source", "Math.random = () => 0"));
        }
        Chromium.openAnew(browser, file);
    }

    private static void reload() {
        browser.navigate().refresh();
        Chromium.untilReady(browser);
    }

    private static void visit() {
        browser.get(file.toUri().toString());
        Chromium.untilReady(browser);
    }

    private static PracticeSet practice(String plan, int variants) {
        return PracticeSet.of(
                ProblemSet.of(
                        PlanReader.read("plan.yaml", plan), new TemplateLibrary(List.of(TemplateFiles.builtIn()))),
                variants);
    }

    private static LadderProbe knownMistakeAtA() {
        return LadderProbe.of(shownKey()).stream()
                .filter(probe ->
                        probe.rung() == Rung.KNOWN_MISTAKE && probe.question().equals("a"))
                .findFirst()
                .orElseThrow();
    }

    // What the learner does

    private static WebElement element(String id) {
        return browser.findElement(By.id(id));
    }

    private static void press(String id) {
        Chromium.press(browser, "#" + id);
    }

    private static String text(String id) {
        return (String) browser.executeScript("return document.getElementById(arguments[0]).textContent", id);
    }

    private static String shownVariant() {
        return element("yours").getDomAttribute("data-variant");
    }

    private static int shownSkill() {
        return Integer.parseInt(shownVariant().split("/")[0]);
    }

    private static ProblemKey shownKey() {
        Variant variant = practice.skills()
                .get(shownSkill())
                .variants()
                .get(Integer.parseInt(shownVariant().split("/")[1]));
        return new PracticeProblem(variant.problem(), practice.set().plan(), false).key();
    }

    /** In the order in which they stand. */
    @SuppressWarnings("unchecked")
    private static List<String> places() {
        return (List<String>) browser.executeScript(
                "return Array.from(document.querySelectorAll('#places [data-question]'), place => "
                        + "place.dataset.question)");
    }

    private static WebElement place(String question) {
        return browser.findElement(By.cssSelector("#places [data-question='" + question + "']"));
    }

    /** As a whole, as if pasted: what a key does, {@link #aKeyboardIsEnough} and the drafts tell. */
    private static void type(String question, String answer) {
        browser.executeScript("""
        const place = document.querySelector("#places [data-question='" + arguments[0] + "']");
        const field = place.querySelector('input[type=text]');
        if (!field) {
          Array.from(place.querySelectorAll('input[type=radio]')).find(one => one.value === arguments[1]).click();
        } else if (field.value !== arguments[1]) {
          field.value = arguments[1];
          field.dispatchEvent(new Event('input', {bubbles: true}));
          field.dispatchEvent(new Event('change', {bubbles: true}));
        }""", question, answer);
    }

    private static void typeByKeys(String question, String answer) {
        WebElement field = place(question).findElement(By.cssSelector("input[type=text]"));
        field.clear();
        field.sendKeys(answer);
    }

    private static boolean hasField(String question) {
        return (boolean) browser.executeScript(
                "return !!document.querySelector(\"#places [data-question='\" + arguments[0] + \"'] "
                        + "input[type=text]\")",
                question);
    }

    private static void check() {
        Chromium.press(browser, "#answers button.main");
    }

    private static String said(String question) {
        return (String) browser.executeScript(
                "return document.querySelector(\"#places [data-question='\" + arguments[0] + \"'] .said\").textContent",
                question);
    }

    private static String kind(String question) {
        return (String) browser.executeScript(
                "return document.querySelector(\"#places [data-question='\" + arguments[0] + \"']\").dataset.said",
                question);
    }

    private static String right(ProblemKey key, String question) {
        return LadderProbe.of(key).stream()
                .filter(probe -> probe.question().equals(question) && probe.rung() == Rung.CORRECT)
                .findFirst()
                .orElseThrow()
                .typed()
                .get(question);
    }

    private static void solveAll() {
        ProblemKey key = shownKey();
        for (String question : places()) {
            type(question, right(key, question));
        }
        check();
    }

    private static void assertRow(String row, String... because) {
        assertTrue((text("row") + " · ").contains(" · " + row + " · "), text("row") + String.join("", because));
    }

    /** Asked for, and wanted. */
    private static void showSolution() {
        press("solve");
        if (element("solve-asked").isDisplayed()) {
            press("solve-yes");
        }
    }

    /** Only what is asked, none of the steps on the way. */
    private static void solveStraight() {
        ProblemKey key = shownKey();
        for (String question : places()) {
            if (!question.startsWith("step")) {
                type(question, right(key, question));
            }
        }
        check();
    }

    private static String shownForm() {
        return element("yours").getDomAttribute("data-support");
    }

    private static void support(String which) {
        element("support")
                .findElement(By.cssSelector("option[value=" + which + "]"))
                .click();
    }

    private static void goTo(int skill) {
        browser.executeScript("document.querySelector('#skills details').open = true");
        Chromium.press(browser, "#skill-list > :nth-child(" + (skill + 1) + ") button");
    }

    // Judging

    /** The whole ladder; what the page says is what the judge says on the Java machine. */
    @Test
    void answersOfEveryRungGetTheirVerdict() {
        Set<Rung> reached = EnumSet.noneOf(Rung.class);
        Set<Rung> possible = EnumSet.noneOf(Rung.class);
        support("full");
        for (int skill : DEEP ? List.of(0, 1, 5) : List.of(0, 5)) {
            goTo(skill);
            ProblemKey key = shownKey();
            String last = key.answers().get(key.answers().size() - 1).question();
            for (LadderProbe probe : LadderProbe.of(key)) {
                possible.add(probe.rung());
                if (probe.rung() == Rung.CORRECT && probe.question().equals(last)
                        || reached.contains(probe.rung())
                                && !(DEEP && skill == 1 && probe.rung() == Rung.KNOWN_MISTAKE)) {
                    continue;
                }
                if (probe(key, probe)) {
                    reached.add(probe.rung());
                }
            }
        }
        // Where a problem has a choice, its probes cannot be typed: a rung that comes only there is judged without the
        // page.
        possible.removeAll(LadderProbe.BY_CHANCE);
        assertTrue(reached.containsAll(possible), possible + " could be reached, " + reached + " were");
        Set<Rung> missing = EnumSet.complementOf(EnumSet.copyOf(reached));
        missing.removeAll(LadderProbe.BY_CHANCE);
        assertTrue(missing.size() <= 1, "these numbers leave no room for " + missing);
    }

    /**
     * Whether it could be tried: choices are clicked and not typed, the page stops at a fault further up, and what
     * stands further up may complete a design.
     */
    private static boolean probe(ProblemKey key, LadderProbe probe) {
        Map<String, String> typed = new LinkedHashMap<>();
        List<String> before = places().subList(0, places().indexOf(probe.question()));
        before.forEach(question -> typed.put(question, right(key, question)));
        typed.putAll(probe.typed());
        boolean stopsBefore = Judge.judge(key, typed).stream()
                .anyMatch(other -> before.contains(other.question())
                        && other.rung() != Rung.CORRECT
                        && other.rung() != Rung.INCOMPLETE);
        Verdict verdict = Judge.judge(key, typed).stream()
                .filter(one -> one.question().equals(probe.question()))
                .findFirst()
                .orElseThrow();
        boolean anotherWithThese = verdict.rung() != probe.rung();
        if (stopsBefore && probe.rung() != Rung.CONSISTENT_WITH_EARLIER || anotherWithThese) {
            return false;
        }
        for (String question : places()) {
            if (hasField(question)) {
                type(question, typed.getOrDefault(question, ""));
            } else if (!typed.getOrDefault(question, "").isEmpty() && probe.rung() != Rung.UNREADABLE) {
                type(question, typed.get(question));
            } else {
                return false;
            }
        }
        check();
        String expected = verdict.rung() == Rung.CORRECT
                ? "right"
                : verdict.rung() == Rung.CONSISTENT_WITH_EARLIER
                        ? "follows"
                        : verdict.rung() == Rung.INCOMPLETE
                                ? "open"
                                : Set.of(
                                                        Rung.BLANK,
                                                        Rung.UNREADABLE,
                                                        Rung.AMBIGUOUS,
                                                        Rung.UNIT_MISSING,
                                                        Rung.OTHER_SCALE,
                                                        Rung.TOO_COARSE)
                                                .contains(verdict.rung())
                                        ? "form"
                                        : "wrong";
        assertEquals(expected, kind(probe.question()), probe.toString());
        String said = said(probe.question());
        assertTrue(
                said.endsWith(verdict.message())
                        || verdict.rung() == Rung.UNIT_MISSING && said.startsWith("… The unit is missing: ")
                        || verdict.rung() == Rung.BLANK && said.endsWith("Now this one."),
                probe + ": " + said + " instead of " + verdict.message());
        return true;
    }

    @Test
    void eachWrongPlaceHasItsVerdictAndTheFirstOneTheLearner() {
        support("full");
        ProblemKey key = shownKey();
        List<String> places = places();
        assertEquals(List.of("step 1", "a", "b", "c"), places, "one indicator has one step that is not asked for");
        type("step 1", right(key, "step 1"));
        type("a", "5 kg");
        type("b", right(key, "b"));
        type("c", "1 W");
        check();
        assertEquals(
                List.of("right", "wrong", "right", "wrong"),
                places.stream().map(PracticePageTest::kind).toList());
        assertTrue(
                text("verdict").startsWith("2 places are not right yet, 2 are right. Begin with answer a."),
                text("verdict"));
        assertFalse(said("c").isEmpty());
        assertTrue(
                text("verdict").contains("kg is a unit of mass"), "who cannot see the place hears what is said there");
        assertTrue(said("a").contains("kg is a unit of mass"), said("a"));
        assertEquals("true", place("a").findElement(By.tagName("input")).getDomAttribute("aria-invalid"));
        assertEquals(
                place("a").findElement(By.tagName("input")), browser.switchTo().activeElement());
    }

    /** Names of what is drawn heavier in the figures under this element. */
    private static List<String> cued(String under) {
        return browser.findElements(By.cssSelector("#" + under + " [data-part].cued")).stream()
                .map(part -> part.getDomAttribute("data-part"))
                .toList();
    }

    private static String drawing(String under) {
        return ((String)
                browser.executeScript("return document.querySelector('#' + arguments[0] + ' svg').outerHTML", under));
    }

    @OnlyDeep
    @Test
    void theStepAtHandIsCuedByWeightAndNumberInBothFiguresAndNothingElseOfThemChanges() {
        support("full");
        String before = drawing("setting");
        assertEquals(List.of(), cued("setting"));
        place("a").findElement(By.tagName("input")).click();
        assertEquals(List.of("R1", "D1"), cued("setting"));
        assertEquals(List.of("R1", "D1"), cued("example-body"));
        assertEquals(
                "Figure: Circuit · step 2",
                element("setting").findElement(By.tagName("figcaption")).getText());
        assertEquals(
                "2",
                browser.findElement(By.cssSelector("#example-body .steps > li.cued"))
                        .getDomProperty("value"));
        String line = (String) browser.executeScript(
                "return getComputedStyle(document.querySelector('#setting [data-part=R1] path')).strokeWidth");
        assertEquals("3.4px", line);
        assertEquals(before, drawing("setting").replace(" class=\"cued\"", "").replace(" class=\"\"", ""));
        place("c").findElement(By.tagName("input")).click();
        assertEquals(List.of("R1"), cued("setting"));
        assertEquals(
                "Figure: Circuit · step 4",
                element("setting").findElement(By.tagName("figcaption")).getText());
    }

    @Test
    void hintsComeOneByOneAndThenTheWorkedSolution() {
        press("hint");
        assertTrue(
                text("hints").contains("Hint 1: step 1, the example")
                        && text("hints").contains("Read line 1"),
                text("hints"));
        assertEquals(
                "1",
                browser.findElement(By.cssSelector("#example-body .steps > li.cued"))
                        .getDomProperty("value"));
        press("hint");
        assertTrue(text("hints").contains("Hint 2: step 1, with numbers"), text("hints"));
        press("hint");
        assertTrue(text("hints").contains("Hint 3: step 1, the line"), text("hints"));
        reload();
        assertTrue(text("hints").contains("Hint 3: step 1, the line"), "hints that were taken stay: " + text("hints"));
        String answer = right(shownKey(), "a");
        assertFalse(element("solution").isDisplayed());
        press("solve");
        assertFalse(element("solution").isDisplayed(), "it is asked first");
        assertEquals("solve-no", browser.switchTo().activeElement().getDomAttribute("id"));
        new Actions(browser).sendKeys(Keys.ESCAPE).perform();
        assertFalse(element("solve-asked").isDisplayed());
        assertEquals("solve", browser.switchTo().activeElement().getDomAttribute("id"));
        assertRow("0 of 2 solved bare and without help");
        new Actions(browser)
                .sendKeys(Keys.ENTER)
                .keyDown(Keys.SHIFT)
                .sendKeys(Keys.TAB)
                .keyUp(Keys.SHIFT)
                .sendKeys(Keys.ENTER)
                .perform();
        assertFalse(element("solve-asked").isDisplayed());
        assertTrue(element("solution").isDisplayed());
        assertTrue(
                text("solution-body").contains("Worked steps")
                        && text("solution-body").contains("Answers: "),
                answer);
        assertEquals(element("solution-title"), browser.switchTo().activeElement());
        assertTrue(text("verdict").contains("it counts only when you find it yourself"), text("verdict"));
        assertRow("0 of 2 solved bare and without help");
    }

    @Test
    void hintsStartFromWhatWasTypedAndPassOverWhatIsRight() {
        type("step 1", "5 kg");
        press("hint");
        assertTrue(
                text("hints").contains("from what you typed") && text("hints").contains("V comes from"), text("hints"));
        type("step 1", "1 kV");
        assertFalse(text("hints").contains("from what you typed"), "it held for what is typed no more");
        press("hint");
        assertTrue(text("hints").contains("Your value is too large"), text("hints"));
        type("step 1", right(shownKey(), "step 1"));
        assertEquals("", text("hints"));
        press("hint");
        assertTrue(text("hints").contains("step 2"), text("hints"));
    }

    @Test
    void aVerdictOnWhatIsTypedNoMoreSaysSo() {
        type("step 1", "5 kg");
        check();
        type("step 1", "6 kg");
        assertTrue(said("step 1").startsWith("Before your change: ✗ kg is a unit of mass"), said("step 1"));
        assertEquals(null, place("step 1").findElement(By.tagName("input")).getDomAttribute("aria-invalid"));
        type("step 1", "7 kg");
        assertEquals(said("step 1").indexOf("Before"), said("step 1").lastIndexOf("Before"));
        check();
        assertTrue(said("step 1").startsWith("✗ kg is a unit of mass"), said("step 1"));
    }

    @Test
    void whatAVerdictSaysNoHintSaysAgain() {
        LadderProbe mistake = knownMistakeAtA();
        type("step 1", right(shownKey(), "step 1"));
        type("a", mistake.typed().get("a"));
        press("hint");
        String told = mistake.verdict(shownKey()).message();
        assertTrue(text("hints").contains(told), "before a check, the hint is what it would say: " + text("hints"));
        check();
        assertEquals("", text("hints"), "now it stands beside");
        press("hint");
        assertTrue(text("hints").contains("step 2, the example"), text("hints"));
    }

    @Test
    void aLineOfWorkingIsWorkedAndChecked() {
        ProblemKey key = shownKey();
        double volts = key.answers().get(0).expected();
        type("step 1", volts / 2 + " V + " + volts / 2 + " V");
        type("a", "1 V * 3 s");
        check();
        assertEquals("right", kind("step 1"));
        assertTrue(said("step 1").startsWith("✓ Your line gives "), said("step 1"));
        assertTrue(said("a").contains("but a resistance is asked for"), said("a"));
        element("calculator").findElement(By.tagName("summary")).click();
        element("calculated").sendKeys("(12 V - 2.1 V) / 15 mA");
        assertEquals("Your line gives 660\u00a0Ω.", text("calculation"));
    }

    @Test
    void lookingUpLeadsBackToWhereItWasAskedForAndShowsNoFormulaOfTheProblem() {
        press("look-up-below");
        String shown = element("look-up").getText();
        assertTrue(shown.contains("E12") && shown.contains("Ohm's law") && shown.contains("forward voltage"), shown);
        assertFalse(shown.contains("multiplexing"), "only words that occur here");
        press("look-up-close");
        assertEquals("look-up-below", browser.switchTo().activeElement().getDomAttribute("id"));
        Chromium.screen(browser, 360, 740);
        press("show-yours");
        int top = ((Number) browser.executeScript(
                        "return document.getElementById('yours-title').getBoundingClientRect().top + scrollY"))
                .intValue();
        assertTrue(top < 500, "the problem begins on the first screen of a phone, at " + top);
    }

    @Test
    void theCircuitIsThereToTryWithWhatIsSoughtLeftOpen() {
        String netlist = (String) browser.executeScript("return document.querySelector('#setting pre').textContent");
        assertTrue(netlist.contains("\nRR1 1 2 {fill in}\n") && netlist.contains("\nVV1 1 0 "), netlist);
    }

    @Test
    void whatTheProblemCautionsOfItsExampleDoesNotSayAgain() {
        assertEquals(
                1, browser.findElements(By.cssSelector("#setting .caution")).size());
        assertEquals(
                0,
                browser.findElements(By.cssSelector("#example-body .caution")).size());
    }

    @OnlyDeep
    @Test
    void whatALearnerHasBeforeHerIsPrintedWithAnswersVerdictsAndHints() {
        type("step 1", "5 kg");
        check();
        press("hint");
        Chromium.screen(browser, 794, 1123);
        press("show-example");
        browser.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", "print"));
        for (String printed : List.of("yours-title", "setting", "places", "hints")) {
            assertTrue(element(printed).isDisplayed(), printed);
        }
        assertTrue(place("step 1").findElement(By.className("said")).isDisplayed());
        assertEquals("5 kg", place("step 1").findElement(By.tagName("input")).getDomProperty("value"));
        for (String left : List.of("example", "hint", "keeping", "skills", "look-up")) {
            assertFalse(element(left).isDisplayed(), left);
        }
    }

    @OnlyDeep
    @Test
    void eachHintIsHeardOnceAndFocusNeverFallsToThePage() {
        assertEquals("log", element("hints").getDomAttribute("role"), "only what is added to a log is read");
        assertEquals(true, browser.executeScript("""
        const hint = document.getElementById('hint');
        for (let i = 0; i < 6; i++) {
          hint.focus();
          hint.click();
          if (document.activeElement === document.body) return i;
        }
        return true;"""), "focus falls to the page after this hint");
        for (String button : List.of("solve", "solve-yes", "onward", "another", "later")) {
            if (element(button).isDisplayed() && element(button).isEnabled()) {
                press(button);
                assertNotEquals("body", browser.switchTo().activeElement().getTagName(), "after " + button);
            }
        }
        goTo(2);
        assertNotEquals("body", browser.switchTo().activeElement().getTagName(), "after another skill");
        Chromium.screen(browser, 1000, 800);
        browser.executeScript(
                "document.querySelector('#skill-list button').focus(); dispatchEvent(new Event('resize'))");
        assertNotEquals("body", browser.switchTo().activeElement().getTagName(), "after the screen changed");
    }

    @Test
    void theSkipLinkShowsTheProblemAndLeadsToIt() {
        Chromium.screen(browser, 360, 740);
        for (String facing : List.of("show-example", "show-yours")) {
            press(facing);
            browser.executeScript("document.getElementById('skip').focus()");
            new Actions(browser).sendKeys(Keys.ENTER).perform();
            WebElement reached = browser.switchTo().activeElement();
            assertEquals("yours-title", reached.getDomAttribute("id"), "as the link is called");
            assertTrue(reached.isDisplayed());
        }
    }

    @Test
    void theVerdictIsInViewWhereverOneIsOnThePage() {
        Chromium.screen(browser, 360, 640);
        press("show-yours");
        for (String answer : List.of("5 kg", right(shownKey(), "step 1"))) {
            type("step 1", answer);
            check();
            assertEquals(true, browser.executeScript("""
            const said = [...document.querySelectorAll('#verdict, #places .said')].filter(one => one.textContent);
            return said.some(one => {
              const box = one.getBoundingClientRect();
              return box.top >= 0 && box.bottom <= innerHeight;
            });"""), answer);
        }
    }

    // Going onward

    @OnlyDeep
    @Test
    void anotherOneLikeThisIsUnseenUntilAllWereGiven() {
        Set<String> seen = new HashSet<>();
        for (int i = 0; i < VARIANTS; i++) {
            assertTrue(seen.add(shownVariant() + element("setting").getText()), "given twice: " + shownVariant());
            assertTrue(text("row").startsWith("problem " + (i + 1) + " of this skill"), text("row"));
            press("another");
        }
        assertEquals(VARIANTS, seen.size());
        assertEquals(0, shownSkill());
    }

    @Test
    void stepsGoBlankUpToTheLastAndTheLastAnswerIsNeverShown() {
        List<String> forms = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            List<String> places = places();
            forms.add(shownForm() + " " + places.size());
            assertTrue(places.contains("c"), forms + ", the last answer is open: " + places);
            if (shownForm().equals("faded")) {
                assertEquals(
                        places,
                        browser.findElements(By.cssSelector("#places ul > li > strong:first-child")).stream()
                                .map(WebElement::getText)
                                .toList(),
                        "what is asked is what is open");
                assertEquals(
                        4,
                        browser.findElements(By.cssSelector("#places .steps > li"))
                                .size());
            }
            solveAll();
            assertTrue(text("verdict").startsWith("All right."), text("verdict"));
            press("another");
        }
        assertEquals(List.of("full 4", "faded 1", "faded 2", "bare 3", "bare 3"), forms);
    }

    @OnlyDeep
    @Test
    void inEveryFormAnswersHaveTheirHeadingAndEachFieldSaysWhatIsToBeFound() {
        Map<String, String> names = new LinkedHashMap<>();
        for (String support : List.of("full", "faded", "bare")) {
            support(support);
            assertTrue(element("answers-title").isDisplayed(), support);
            String last = places().get(places().size() - 1);
            names.put(
                    support,
                    place(last)
                            .findElement(By.tagName("input"))
                            .getAccessibleName()
                            .replaceAll("\\s+", " "));
        }
        names.forEach((support, name) ->
                assertTrue(name.startsWith("c : power the fitted resistor turns into heat, "), support + ": " + name));
    }

    @OnlyDeep
    @Test
    void byKeysAChoiceOfSupportIsTakenWhenItIsMadeAndWhatWasTypedStays() {
        type("a", "123 ohm");
        WebElement select = element("support");
        browser.executeScript("arguments[0].focus()", select);
        new Actions(browser)
                .sendKeys(Keys.ARROW_DOWN, Keys.ARROW_DOWN, Keys.ARROW_DOWN)
                .perform();
        assertEquals("bare", select.getDomProperty("value"));
        assertEquals("full", shownForm(), "only passed over");
        new Actions(browser).sendKeys(Keys.ENTER).perform();
        assertEquals("bare", shownForm());
        assertEquals(select, browser.switchTo().activeElement());
        new Actions(browser).sendKeys(Keys.ARROW_UP).perform();
        assertEquals("bare", shownForm());
        new Actions(browser).sendKeys(Keys.TAB).perform();
        assertEquals("faded", shownForm(), "left");
        browser.executeScript("arguments[0].focus()", select);
        new Actions(browser).sendKeys(Keys.ARROW_UP, Keys.ESCAPE, Keys.TAB).perform();
        assertEquals("faded", shownForm());
        support("full");
        assertEquals("123 ohm", place("a").findElement(By.tagName("input")).getDomProperty("value"));
    }

    @OnlyDeep
    @Test
    void skillsComeMixedAndTwoBareSuccessesSettleWithAnotherSkillBetween() {
        StringBuilder order = new StringBuilder();
        for (int i = 0; i < 12; i++) {
            order.append(shownSkill()).append(shownForm().charAt(0)).append(' ');
            assertEquals("0", text("tally").substring(0, 1), "after " + order);
            solveStraight();
            assertEquals("onward", browser.switchTo().activeElement().getDomAttribute("id"), "after " + order);
            press("onward");
        }
        assertEquals("0f 1f 3f 4f 5f 2f 0b 1b 3b 4b 5b 2f ", order.toString(), "each is met in the first round");
        solveStraight();
        assertEquals("1 of " + practice.skills().size() + " settled", text("tally"));
        assertTrue(text("row").endsWith(" · settled"), text("row"));
        String map = text("skill-list");
        assertTrue(map.contains("settled, back on 20") && map.contains("builds on divider from preferred values"), map);
    }

    @Test
    void whatThePageSaysComesNextComesNext() {
        solveAll();
        assertTrue(text("verdict").contains("Next: " + practice.skills().get(1).name() + "."), text("verdict"));
        press("onward");
        assertEquals(1, shownSkill());
    }

    @OnlyDeep
    @Test
    void whoWasSureAndWrongIsLedBackToTheExampleAndHasMoreSupportNextTime() {
        solveStraight();
        press("another");
        assertEquals("bare", shownForm());
        assertFalse(element("example").isDisplayed());
        type("a", "5 kg");
        element("sure").findElement(By.cssSelector("input[value=sure]")).click();
        check();
        assertTrue(element("example").isDisplayed() && text("verdict").contains("You were sure"), text("verdict"));
        solveAll();
        assertTrue(
                text("verdict").contains("in the end. Next time with more support: 3 of 4 steps left to you"),
                text("verdict"));
        press("another");
        assertEquals("faded", shownForm());
        assertTrue(text("sureness").contains("Sure: right at once 0, wrong 1."), text("sureness"));
    }

    @Test
    void mistakesAreListedWithTheProblemToTryAgain() {
        LadderProbe mistake = knownMistakeAtA();
        String variant = shownVariant();
        assertFalse(element("mistakes-shown").isDisplayed());
        type("step 1", right(shownKey(), "step 1"));
        type("a", mistake.typed().get("a"));
        check();
        String told = mistake.verdict(shownKey()).message();
        press("later");
        element("mistakes-shown").findElement(By.tagName("summary")).click();
        assertTrue(
                text("mistakes").contains(told) && text("mistakes").contains("1 time, last on 20"), text("mistakes"));
        assertNotEquals(variant, shownVariant());
        element("mistakes").findElement(By.tagName("button")).click();
        assertEquals(variant, shownVariant());
        assertEquals("wrong", kind("a"), "its verdict is kept, too");
    }

    // Questions beside a problem, and the wrong line

    private static List<WebElement> asideChoices() {
        return browser.findElements(By.cssSelector("#aside-choices button"));
    }

    @OnlyDeep
    @Test
    void extraQuestionsAreAnsweredBesideTheProblemAndCanBeHadNoMore() {
        assertFalse(element("aside").isDisplayed(), "not beside the example");
        support("faded");
        assertTrue(text("aside-text").startsWith("Which rule gives step "), text("aside-text"));
        type(places().get(0), "5 V");
        asideChoices().get(0).click();
        assertEquals("aside-title", browser.switchTo().activeElement().getDomAttribute("id"));
        assertTrue(text("aside-said").matches("(?s)(Right|Not that one).*"), text("aside-said"));
        assertTrue(asideChoices().stream().noneMatch(WebElement::isEnabled), "the first answer stands");
        if (DEEP) {
            audit("an extra question is answered");
        }
        reload();
        assertFalse(text("aside-said").isEmpty(), "the answer is kept");
        assertFalse(place(places().get(0))
                .findElement(By.tagName("input"))
                .getDomProperty("value")
                .isEmpty());
        support("bare");
        press("another");
        solveAll();
        assertTrue(text("aside-text").startsWith("Suppose one value were "), text("aside-text"));
        assertTrue(element("onward").isEnabled(), "nothing is held up");
        asideChoices().get(2).click();
        assertTrue(text("aside-said").matches("(Right|Not so).*"), text("aside-said"));
        press("aside-off");
        assertFalse(element("aside").isDisplayed());
        assertTrue(text("verdict").startsWith("No more extra questions."), text("verdict"));
        reload();
        assertFalse(element("aside").isDisplayed());
        press("aside-on");
        assertTrue(element("aside").isDisplayed());
    }

    /** What a learner has who solved both of the first two skills by turns. */
    private static String settledRecord() {
        Course course = practice.course(PracticePage.name(practice));
        Practice learner = Practice.of(course, LearnerRecord.none(course.set()), "before")
                .start("", 20_786, 0)
                .support("bare");
        for (int skill : new int[] {0, 1, 0, 1, 0, 1}) {
            learner = learner.choose(skill, 20_786, 0);
            Variant shown = practice.skills()
                    .get(skill)
                    .variants()
                    .get(learner.attempt().variant());
            ProblemKey key = new PracticeProblem(shown.problem(), practice.set().plan(), false).key();
            List<String> asked = key.answers().stream()
                    .map(AnswerKey::question)
                    .filter(question -> !question.startsWith("step"))
                    .toList();
            for (String question : asked) {
                learner = learner.type(question, right(key, question));
            }
            learner = learner.check(key, asked, "", 20_786);
        }
        assertEquals(2, learner.settled());
        return RecordText.write(learner.record());
    }

    @Test
    void theWrongLineOfAWorkingIsNamedAndMended() {
        assertFalse(element("find-faulty").isDisplayed(), "only with a skill that is settled");
        browser.executeScript(
                "document.getElementById('pasted').value = arguments[0];"
                        + "document.getElementById('take-over').click();",
                settledRecord());
        goTo(0);
        press("find-faulty");
        assertFalse(element("answers").findElement(By.className("main")).isEnabled());
        if (DEEP) {
            audit("a working with a wrong line");
        }
        Chromium.screen(browser, 360, 740);
        PageAudit.noSidewaysScrolling(browser, "a working with a wrong line");
        Chromium.screen(browser, 1280, 900);
        int lines = browser.findElements(By.cssSelector("#places .steps > li")).size();
        for (int line = 0; line < lines && places().isEmpty(); line++) {
            browser.findElements(By.cssSelector("#places .steps button"))
                    .get(line)
                    .click();
            assertEquals("faulty-said", browser.switchTo().activeElement().getDomAttribute("id"));
        }
        assertTrue(text("faulty-said").startsWith("Yes, step "), text("faulty-said"));
        String question = places().get(0);
        reload();
        type(question, "5 kg");
        check();
        assertEquals("wrong", kind(question));
        type(question, right(shownKey(), question));
        check();
        assertTrue(text("verdict").startsWith("Found and mended."), text("verdict"));
        assertTrue(element("onward").isDisplayed());
    }

    @Test
    void draftsAndVerdictsSurviveAReloadAnotherSkillAndANarrowScreen() {
        solveAll();
        press("onward");
        String variant = shownVariant();
        String first = places().get(0);
        typeByKeys(first, "12.3 kg");
        check();
        reload();
        assertEquals(variant, shownVariant());
        assertEquals("12.3 kg", place(first).findElement(By.tagName("input")).getDomProperty("value"));
        assertEquals("wrong", kind(first));
        goTo(0);
        assertNotEquals(variant, shownVariant());
        goTo(1);
        assertEquals(variant, shownVariant());
        assertEquals("12.3 kg", place(first).findElement(By.tagName("input")).getDomProperty("value"));
        Chromium.screen(browser, 640, 450);
        assertTrue(element("yours").isDisplayed(), "a half-filled problem stays in sight at 200 %");
        assertEquals("12.3 kg", place(first).findElement(By.tagName("input")).getDomProperty("value"));
    }

    @OnlyDeep
    @Test
    void twoTabsBothKeepWhatWasTypedInThem() {
        String other = places().get(1);
        typeByKeys(places().get(0), "1.1 V");
        String here = browser.getWindowHandle();
        browser.switchTo().newWindow(org.openqa.selenium.WindowType.TAB);
        try {
            visit();
            assertEquals(
                    "1.1 V",
                    place(places().get(0)).findElement(By.tagName("input")).getDomProperty("value"));
            type(other, "2.2 ohm");
        } finally {
            browser.close();
            browser.switchTo().window(here);
        }
        assertEquals(
                "2.2 ohm", place(other).findElement(By.tagName("input")).getDomProperty("value"), "taken over at once");
        reload();
        assertEquals(
                "1.1 V", place(places().get(0)).findElement(By.tagName("input")).getDomProperty("value"));
        assertEquals("2.2 ohm", place(other).findElement(By.tagName("input")).getDomProperty("value"));
    }

    @OnlyDeep
    @Test
    void whatIsErasedInOneTabIsErasedInTheOther() throws InterruptedException {
        type(places().get(0), "1.1 V");
        String here = browser.getWindowHandle();
        browser.switchTo().newWindow(org.openqa.selenium.WindowType.TAB);
        try {
            visit();
            press("clear");
            press("clear");
        } finally {
            browser.close();
            browser.switchTo().window(here);
        }
        String first = "return document.querySelector('#places input[type=text]')?.value";
        for (int i = 0; i < 100 && !"".equals(browser.executeScript(first)); i++) {
            Thread.sleep(50);
        }
        assertEquals("", browser.executeScript(first));
        assertFalse(text("record").contains("1.1 V"), text("record"));
    }

    @OnlyDeep
    @Test
    void progressIsSavedAsAFileThatIsReadByAPersonAndLoadedAgainAfterErasing() throws Exception {
        Path downloads = Files.createDirectories(folder.resolve("downloads"));
        browser.executeCdpCommand(
                "Browser.setDownloadBehavior",
                Map.of(
                        "behavior",
                        "allow",
                        "downloadPath",
                        downloads.toAbsolutePath().toString()));
        solveStraight();
        goTo(0);
        solveAll();
        assertRow("1 of 2 solved bare and without help");
        press("export");
        Path saved = downloads.resolve("practice-" + PracticePage.name(practice) + ".txt");
        for (int i = 0; i < 100 && !Files.exists(saved); i++) {
            Thread.sleep(50);
        }
        String text = Files.readString(saved);
        assertTrue(text.contains("skill " + practice.skills().get(0).name() + "\n") && text.contains(" bare\n"), text);
        press("clear");
        assertRow("1 of 2 solved bare and without help", "one press only asks");
        press("clear");
        assertRow("0 of 2 solved bare and without help");
        reload();
        assertRow("0 of 2 solved bare and without help");
        element("import").sendKeys(saved.toAbsolutePath().toString());
        for (int i = 0; i < 100 && !text("row").contains("1 of 2"); i++) {
            Thread.sleep(50);
        }
        assertRow("1 of 2 solved bare and without help");
        element("carried").findElement(By.tagName("summary")).click();
        element("pasted").sendKeys("nonsense");
        press("take-over");
        assertTrue(text("kept-said").contains("This is not a practice record."), text("kept-said"));
        assertRow("1 of 2 solved bare and without help");
    }

    @Test
    void aBrowserThatKeepsNothingSaysSo() {
        Object script = browser.executeCdpCommand(
                        "Page.addScriptToEvaluateOnNewDocument",
                        Map.of(
                                "source",
                                "Object.defineProperty(window, 'localStorage', {get() { throw new "
                                        + "Error('refused'); }})"))
                .get("identifier");
        try {
            visit();
            assertTrue(
                    text("kept").startsWith("This browser keeps nothing for this page: save your progress as a file"),
                    text("kept"));
            solveAll();
            assertTrue(text("verdict").startsWith("All right."), text("verdict"));
        } finally {
            browser.executeCdpCommand("Page.removeScriptToEvaluateOnNewDocument", Map.of("identifier", script));
        }
    }

    // The page itself

    @Test
    void nothingIsFetchedSentOrComplainedOf() {
        solveAll();
        press("onward");
        press("hint");
        showSolution();
        List<String> seen = Chromium.requestsAndComplaints(browser);
        assertFalse(seen.isEmpty(), "the log of requests is empty though a page was opened");
        assertEquals(
                List.of(),
                seen.stream()
                        .filter(url -> !url.equals(file.toUri()
                                        .toString()
                                        .replace("file:/", "file:///")
                                        .replace("file://///", "file:///"))
                                && !url.equals(file.toUri().toString()))
                        .toList());
        assertEquals(0L, browser.executeScript("return performance.getEntriesByType('resource').length"));
    }

    @Test
    void nothingElseMayRunInThePage() {
        assertEquals("refused", browser.executeScript("""
        const script = document.createElement('script');
        script.textContent = 'document.body.dataset.injected = "yes"';
        document.body.append(script);
        return document.body.dataset.injected ? 'ran' : 'refused'"""));
        String policy = browser.findElement(By.cssSelector("meta[http-equiv]")).getDomAttribute("content");
        assertTrue(
                policy.startsWith("default-src 'none'; script-src 'sha256-") && !policy.contains("unsafe-eval"),
                policy);
    }

    @Test
    void everyStateOfThePageIsAccessible() throws IOException {
        for (int skill = 0; skill < practice.skills().size(); skill += DEEP ? 1 : 6) {
            Chromium.prefer(browser, "prefers-color-scheme", skill % 2 == 0 ? "light" : "dark");
            goTo(skill);
            support("full");
            type(places().get(0), "5 kg");
            check();
            press("hint");
            browser.executeScript("document.querySelectorAll('details').forEach(details => { details.open = true; })");
            audit("skill " + skill + ", wrong, with hints, map and mistakes open");
            press("solve");
            if (DEEP) {
                audit("skill " + skill + ", wrong, with hints, asked whether to show the solution");
            }
            press("solve-yes");
            audit("skill " + skill + ", wrong, with hints, solved");
        }
        for (String scheme : DEEP ? List.of("light", "dark") : List.of("dark")) {
            Chromium.prefer(browser, "prefers-color-scheme", scheme);
            press("another");
            for (String support : DEEP ? List.of("full", "faded", "bare") : List.of("faded")) {
                support(support);
                if (DEEP) {
                    audit(scheme + ", " + support);
                }
            }
            Chromium.screen(browser, 360, 740);
            audit(scheme + ", on a phone");
            Chromium.screen(browser, 1280, 900);
        }
        if (DEEP) {
            Chromium.prefer(browser, "forced-colors", "active");
            audit("forced colours");
        }
    }

    private static void audit(String which) {
        PageAudit.accessible(browser, which);
        PageAudit.controlsAreLargeEnough(browser, which);
    }

    @OnlyDeep
    @Test
    void nothingSticksOutOnANarrowScreenOrWithLargeText() {
        for (int skill = 0; skill < practice.skills().size(); skill += DEEP ? 1 : 5) {
            Chromium.screen(browser, 1280, 900);
            goTo(skill);
            for (String support : skill == 0 ? List.of("full", "bare") : List.of("full")) {
                Chromium.screen(browser, 1280, 900);
                support(support);
                for (int width : List.of(320, 768, 1024)) {
                    Chromium.screen(browser, width, 900);
                    for (String facing : List.of("show-example", "show-yours")) {
                        browser.executeScript("document.getElementById(arguments[0]).click()", facing);
                        PageAudit.noSidewaysScrolling(
                                browser, "skill " + skill + ", " + support + ", " + width + " px, " + facing);
                    }
                }
                Chromium.screen(browser, 640, 900);
                browser.executeScript("document.documentElement.style.fontSize = '200%'");
                PageAudit.noSidewaysScrolling(browser, "skill " + skill + ", " + support + ", text at 200 %");
                browser.executeScript("document.documentElement.style.fontSize = ''");
            }
        }
    }

    /** Of what scrolls sideways: whether it is no stop for the keyboard, has no name or does not say so. */
    private static final String ASTRAY = """
      const under = document.getElementById(arguments[0]);
      return [...under.querySelectorAll('*')].filter(one => one.clientWidth > 0 && !one.closest('svg'))
        .filter(one => ['auto', 'scroll'].includes(getComputedStyle(one).overflowX) && one.tagName !== 'DETAILS')
        .filter(one => one.scrollWidth > one.clientWidth + 1
          ? one.tabIndex < 0 || !one.ariaLabel && !one.getAttribute('aria-labelledby') || !('sideways' in one.dataset)
          : one.tabIndex >= 0)
        .map(one => one.outerHTML.slice(0, 80));""";

    @OnlyDeep
    @Test
    void whatScrollsSidewaysIsReachedNamedAndSaysSoAndNothingElseIsAStop() {
        for (int width : List.of(360, 1280)) {
            Chromium.screen(browser, width, 740);
            int stops = 0;
            for (int skill = 0; skill < practice.skills().size(); skill += DEEP ? 1 : 3) {
                goTo(skill);
                for (String facing : List.of("example", "yours")) {
                    browser.executeScript("document.getElementById('show-' + arguments[0]).click()", facing);
                    assertEquals(List.of(), browser.executeScript(ASTRAY, facing), width + " px, skill " + skill);
                    stops += browser.findElements(By.cssSelector("#" + facing + " .drawing[data-sideways]"))
                            .size();
                }
            }
            assertEquals(width == 360, stops > 0, width + " px: " + stops);
            press("look-up-above");
            assertEquals(List.of(), browser.executeScript(ASTRAY, "look-up"), width + " px");
            assertEquals(
                    true,
                    browser.executeScript("const table = document.querySelector('#look-up .series').parentElement;"
                            + "return table.scrollWidth <= table.clientWidth"),
                    "the preferred values fit");
            press("look-up-close");
        }
    }

    @Test
    void aHeadingThatGetsTheFocusByKeyShowsIt() {
        browser.executeScript("document.querySelector('#skills details').open = true;"
                + "document.querySelectorAll('#skill-list button')[1].focus()");
        new Actions(browser).sendKeys(Keys.ENTER).perform();
        WebElement heading = browser.switchTo().activeElement();
        assertEquals("h2", heading.getTagName());
        assertNotEquals("none", heading.getCssValue("outline-style"));
    }

    @Test
    void aPhoneShowsOneOfExampleAndProblemAndADeskShowsBoth() {
        assertTrue(element("example").isDisplayed() && element("yours").isDisplayed());
        Chromium.screen(browser, 360, 740);
        assertTrue(element("example").isDisplayed() && !element("yours").isDisplayed(), "the example comes first");
        press("show-yours");
        assertTrue(!element("example").isDisplayed() && element("yours").isDisplayed());
        press("show-example");
        press("to-yours");
        assertTrue(!element("example").isDisplayed() && element("yours").isDisplayed());
        Chromium.screen(browser, 1280, 900);
        support("bare");
        assertFalse(element("example").isDisplayed(), "with the question only, the example is shown on request");
        press("show-example");
        assertTrue(element("example").isDisplayed() && element("yours").isDisplayed());
    }

    @Test
    void aKeyboardIsEnough() {
        // Not to the element itself: a field for files takes no keys from a driver.
        new Actions(browser).sendKeys(Keys.TAB).perform();
        assertEquals("To the problem", browser.switchTo().activeElement().getText());
        browser.executeScript("window.reached = []; addEventListener('focusin', event => "
                + "reached.push(event.target.localName + ' ' + event.target.id))");
        Actions keys = new Actions(browser);
        for (int i = 0; i < 80; i++) {
            keys.sendKeys(Keys.TAB);
        }
        keys.perform();
        List<?> reached = (List<?>) browser.executeScript("return reached");
        for (String control : List.of(
                "button hint",
                "button solve",
                "button another",
                "select support",
                "button export",
                "input import",
                "button clear")) {
            assertTrue(reached.contains(control), control + " among " + reached);
        }
        WebElement field = place("step 1").findElement(By.tagName("input"));
        field.sendKeys("5 kg" + Keys.ENTER);
        assertEquals("wrong", kind("step 1"), "Enter checks");
        assertEquals(field, browser.switchTo().activeElement());
    }

    @Test
    void verdictsAreAnnouncedAndFieldsAreDescribedByThem() {
        assertEquals("status", element("verdict").getDomAttribute("role"));
        WebElement field = place("step 1").findElement(By.tagName("input"));
        String said = field.getDomAttribute("aria-describedby");
        assertEquals(place("step 1").findElement(By.className("said")), element(said));
        assertTrue(
                field.getAccessibleName().contains("step 1")
                        && field.getAccessibleName().contains("oltage left"),
                field.getAccessibleName());
        for (WebElement svg : browser.findElements(By.tagName("svg"))) {
            assertFalse(svg.getAccessibleName().isBlank());
        }
    }

    @Test
    void nothingMoves() throws IOException {
        try (var css = PracticePage.class.getResourceAsStream("page.css")) {
            String style = new String(css.readAllBytes(), StandardCharsets.UTF_8);
            assertFalse(
                    style.contains("transition") || style.contains("animation"),
                    "who prefers no motion gets none; nobody needs any");
        }
    }

    /** On a phone: with a processor six times slower. A figure to read, no bound: what else runs here is not known. */
    @Test
    @OnlyDeep
    void theFirstVerdictIsReported() {
        browser.executeCdpCommand("Emulation.setCPUThrottlingRate", Map.of("rate", 6));
        visit();
        Object times = browser.executeScript("""
        const ready = performance.getEntriesByName('ready')[0].startTime;
        const field = document.querySelector('#places input[type=text]');
        const before = performance.now();
        field.value = '5 kg';
        field.form.requestSubmit();
        return [ready, performance.now() - before]""");
        browser.executeCdpCommand("Emulation.setCPUThrottlingRate", Map.of("rate", 1));
        List<?> both = (List<?>) times;
        double ready = ((Number) both.get(0)).doubleValue();
        double verdict = ((Number) both.get(1)).doubleValue();
        System.out.printf(
                java.util.Locale.ROOT,
                "practice page, six times slower: ready %.0f ms after the load began, first verdict %.0f ms later%n",
                ready,
                verdict);
        assertEquals("wrong", kind(places().get(0)));
    }

    @Test
    @OnlyDeep
    void twelveSkillsOfThirtyProblemsFitInto2600Kilobytes() {
        TemplateLibrary library = new TemplateLibrary(List.of(TemplateFiles.builtIn()));
        StringBuilder plan = new StringBuilder("title: Twelve skills\nseed: size\nproblems:\n");
        library.names().stream()
                .map(name -> library.template(name).skill())
                .distinct()
                .limit(12)
                .forEach(skill -> plan.append("  - {skill: ").append(skill).append("}\n"));
        int problems = 30;
        PracticeSet large = practice(plan.toString(), problems);
        int bytes = PracticePage.render(large).getBytes(StandardCharsets.UTF_8).length;
        System.out.println(large.skills().size() + " skills of " + problems + " problems: " + bytes + " bytes");
        assertEquals(12, large.skills().size());
        assertTrue(bytes <= 2_600_000, bytes + " bytes");
    }

    @Test
    void theWholeScriptIsAtMost100KilobytesCompressed() throws IOException {
        String page = Files.readString(file);
        String script = page.substring(page.lastIndexOf("<script>") + 8, page.lastIndexOf("</script>"));
        ByteArrayOutputStream zipped = new ByteArrayOutputStream();
        try (GZIPOutputStream zip = new GZIPOutputStream(zipped)) {
            zip.write(script.getBytes(StandardCharsets.UTF_8));
        }
        System.out.println("the practice page's script: " + zipped.size() + " bytes compressed");
        assertTrue(zipped.size() <= 100_000, zipped.size() + " bytes");
    }

    @Test
    void theSameSetGivesTheSameBytes() throws IOException {
        assertEquals(Files.readString(file), PracticePage.render(practice(PLAN, VARIANTS)));
    }
}
