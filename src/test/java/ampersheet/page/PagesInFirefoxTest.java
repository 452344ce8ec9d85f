package ampersheet.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.answer.LadderProbe;
import ampersheet.answer.ProblemKey;
import ampersheet.answer.Rung;
import ampersheet.browser.Firefox;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Sheet;
import ampersheet.sheet.SheetMaker;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The core of what {@link PracticePageTest} and {@link HomeworkPageTest} see in Chromium, in the other browser. */
class PagesInFirefoxTest {
    private static final String TAB = "\uE004";
    private static final String ENTER = "\uE007";

    @TempDir
    private static Path folder;

    private static ProblemSet set;
    private static Firefox browser;

    @BeforeAll
    static void open() throws Exception {
        Firefox.need();
        set = ProblemSet.of(
                PlanReader.read(
                        "plan.yaml",
                        "title: Lanterns\nseed: firefox\nproblems:\n"
                                + "  - {template: current-limiting/one-indicator, example: yes}\n"
                                + "  - {template: thermal-rise/regulator-junction}\n"),
                new TemplateLibrary(List.of(TemplateFiles.builtIn())));
        browser = Firefox.open(folder.resolve("profile"));
    }

    @AfterAll
    static void close() {
        if (browser != null) {
            browser.close();
        }
    }

    private static String text(String selector) throws InterruptedException {
        return browser.run("return document.querySelector(\"" + selector + "\").textContent");
    }

    private static String focused() throws InterruptedException {
        return browser.run("return document.activeElement.id || document.activeElement.tagName");
    }

    private static void type(String question, String answer) throws InterruptedException {
        browser.run("document.querySelector(\"[data-question='" + question + "'] input\").select()");
        browser.press(answer.codePoints().mapToObj(Character::toString).toArray(String[]::new));
    }

    private static void click(String id) throws InterruptedException {
        browser.run("document.getElementById('" + id + "').click()");
    }

    private static void fits(String which) throws InterruptedException {
        browser.screen(320, 640);
        assertEquals(
                "true",
                browser.run(
                        "const root = document.documentElement; return String(root.scrollWidth <= root.clientWidth)"),
                which + " at 320 px");
        browser.screen(1280, 900);
    }

    @Test
    void practiceIsJudgedKeptAndLookedUp() throws Exception {
        PracticeSet practice = PracticeSet.of(set, 2);
        browser.get(Files.writeString(folder.resolve("practice.html"), PracticePage.render(practice)));
        String shown = "return document.getElementById('yours').dataset.variant";
        int variant = Integer.parseInt(browser.run(shown).split("/")[1]);
        ProblemKey key = new PracticeProblem(
                        practice.skills().get(0).variants().get(variant).problem(), set.plan(), false)
                .key();
        type("step 1", "5 kg");
        browser.press(ENTER);
        assertTrue(text("#verdict").contains("kg is a unit of mass"), text("#verdict"));
        for (LadderProbe probe : LadderProbe.of(key)) {
            if (probe.rung() == Rung.CORRECT) {
                type(probe.question(), probe.typed().get(probe.question()));
            }
        }
        browser.reload();
        String kept = browser.run("return document.querySelector(\"[data-question='step 1'] input\").value");
        assertTrue(!kept.isEmpty() && !kept.equals("5 kg"), "typed text is kept: " + kept);
        browser.run("document.querySelector('#answers .main').click()");
        assertTrue(text("#verdict").startsWith("All right"), text("#verdict"));
        assertEquals("onward", focused());
        click("hint");
        browser.run("document.getElementById('look-up-below').focus()");
        click("look-up-below");
        assertEquals("look-up-close", focused());
        click("look-up-close");
        assertEquals("look-up-below", focused());
        click("onward");
        assertTrue(browser.run(shown).startsWith("1/"), "the other skill comes next");
        fits("practice");
    }

    @Test
    void homeworkIsReadBackKeptAndTurnedOver() throws Exception {
        Sheet sheet = new SheetMaker(set).sheet(1);
        browser.get(Files.writeString(folder.resolve("homework.html"), HomeworkPage.render(sheet, "Ada")));
        String shown = "return [...document.querySelectorAll('.problem h2')].filter(one => one.checkVisibility())"
                + ".map(one => one.id).join()";
        assertEquals("problem-1", browser.run(shown));
        browser.run("document.getElementById('next').click()");
        assertEquals("problem-2", browser.run(shown));
        type("q2a", "4k7");
        browser.press(TAB);
        assertEquals("You entered 4.7\u00a0kΩ.", text("[data-question='q2a'] .said"));
        assertTrue(text("#progress").startsWith("Problem 2 of 3 · 1 of 6 places"), text("#progress"));
        browser.run("location.hash = 'place-q3b'; return new Promise(done => setTimeout(done, 200))");
        assertEquals("problem-3", browser.run(shown));
        assertEquals("place-q3b", focused());
        browser.run("history.back(); return new Promise(done => setTimeout(done, 300))");
        assertEquals("problem-2", browser.run(shown));
        browser.reload();
        assertEquals("problem-2", browser.run(shown));
        assertTrue(
                browser.run("return document.getElementById('file-text').value").contains(",q2a,4k7,1,1,"),
                "the file to hand in");
        fits("homework");
    }
}
