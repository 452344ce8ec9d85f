package ampersheet.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;

import ampersheet.OnlyDeep;
import ampersheet.issue.Issue;
import ampersheet.marking.Marking;
import ampersheet.marking.OtherSheets;
import ampersheet.page.HomeworkPage;
import ampersheet.page.PracticePage;
import ampersheet.page.PracticeSet;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Roster;
import ampersheet.sheet.RosterReader;
import ampersheet.sheet.Sheet;
import ampersheet.sheet.SheetMaker;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.chrome.ChromeDriver;

/**
 * Every kind of page the program makes, as a browser shows it and a screen reader is given it: sheet, key, index,
 * feedback, report, homework, practice. The desk's are looked at on a journey of their own.
 */
class PageKindsTest {
    /** All pages share one style sheet: a build looks at one of them in both schemes. */
    private static final boolean DEEP = Boolean.getBoolean("ampersheet.deep");

    private static final String PLAN = """
      title: Every kind of page
      seed: page-kinds
      problems:
        - {template: current-limiting/one-indicator, example: yes}
        - {template: thermal-rise/regulator-junction}
        - {template: voltage-dividers/battery-sense, support: faded, fade: forward, blank: 1}
        - {template: chain-addressing/serpentine-tile}
      """;
    private static final Roster CLASS = RosterReader.read("class.csv", "seat,name\n1,Ada\n2,Bo\n");

    @TempDir
    private Path folder;

    /** What a reader sees or hears, besides the file names and the browser's own words. */
    private static final String ALL_WORDS = """
        const all = [document.title, document.body.innerText];
        document.querySelectorAll('[aria-label], [title], [alt], [placeholder]').forEach(one => {
          all.push(one.ariaLabel, one.title, one.alt, one.placeholder);
        });
        document.querySelectorAll('svg title, svg desc').forEach(one => all.push(one.textContent));
        return all.filter(text => text).join('\\n');
        """;

    private static final Pattern ENGLISH = Pattern.compile(
            "(?<![\\p{L}/._-])(the|and|of|with|which|that|this|your|you|are|from|each|where|what|there|not|by|than"
                    + "|answer|answers|sheet|value|step|current|voltage|level|right|wrong)(?![\\p{L}/._-])",
            Pattern.CASE_INSENSITIVE);

    @OnlyDeep
    @Test
    void inGermanNoKindOfPageHasEnglishInItAndAllAreAccessible() throws IOException {
        Chromium.need();
        // Its key has the longest of mistaken choices.
        make(PLAN.replace("Every kind of page", "Alle Arten von Seiten")
                .replace("thermal-rise/regulator-junction", "current-limiting/unknown-resistor")
                .replace("seed: page-kinds", "seed: page-kinds\nlanguage: de\nfaulty-lines: yes"));
        ChromeDriver browser = Chromium.fresh();
        List<String> left = new ArrayList<>();
        try {
            for (String page : List.of(
                    "sheets/seat-001.html",
                    "keys/seat-001.html",
                    "index.html",
                    "marks/feedback/seat-001.html",
                    "marks/report.html",
                    "marks/projector.html",
                    "marks/gradebook.html",
                    "homework/seat-001.html",
                    "practice.html")) {
                open(browser, page);
                assertEquals("de", browser.executeScript("return document.documentElement.lang"));
                boolean scripted = page.startsWith("homework/") || page.startsWith("practice");
                if (scripted) {
                    Chromium.untilReady(browser);
                    use(browser, page);
                }
                if (DEEP || page.startsWith("homework/")) {
                    PageAudit.accessible(browser, page + ", German");
                }
                browser.executeScript(
                        "document.querySelectorAll('details').forEach(details => { details.open = true; })");
                String words = (String) browser.executeScript(ALL_WORDS);
                Matcher english = ENGLISH.matcher(withoutKeywords(words));
                while (english.find()) {
                    left.add(page + ": "
                            + words.substring(
                                            Math.max(0, english.start() - 40),
                                            Math.min(words.length(), english.end() + 40))
                                    .replace('\n', ' '));
                }
                Chromium.screen(browser, 320, 256);
                PageAudit.noSidewaysScrolling(browser, page + ", German, 320 px");
            }
        } finally {
            browser.quit();
        }
        assertEquals(List.of(), left.stream().distinct().limit(20).toList());
    }

    @Test
    void everyKindIsAccessibleAndFitsANarrowScreen() throws IOException {
        Chromium.need();
        make(PLAN);
        ChromeDriver browser = Chromium.fresh();
        for (String page : List.of(
                "sheets/seat-001.html",
                "keys/seat-001.html",
                "index.html",
                "marks/feedback/seat-001.html",
                "marks/report.html")) {
            open(browser, page);
            if (DEEP || page.startsWith("sheets/")) {
                Chromium.prefer(browser, "prefers-color-scheme", "dark");
                PageAudit.accessible(browser, page + ", dark");
                Chromium.prefer(browser, "prefers-color-scheme", "light");
                if (DEEP) {
                    PageAudit.accessible(browser, page + ", light");
                }
            }
            look(browser, page);
            if (DEEP || page.startsWith("keys/") || page.startsWith("marks/")) {
                PageAudit.accessible(browser, page + ", 320 px");
            }
        }
        for (String page : List.of("homework/seat-001.html", "practice.html")) {
            open(browser, page);
            Chromium.untilReady(browser);
            if (DEEP) {
                look(browser, page);
            }
            Chromium.screen(browser, 1280, 900);
            use(browser, page);
            look(browser, page + " in use");
            browser.findElement(By.className("look-up-opens")).click();
            PageAudit.spoken(browser, page + ", looking up");
            PageAudit.noSidewaysScrolling(browser, page + ", looking up");
        }
    }

    /** Commands, and what is typed into a table that a machine reads, are the same in every language. */
    private static String withoutKeywords(String words) {
        return words.replaceAll("(?m)^.*(check|key) [A-Z0-9]{5}-.*$", "")
                .replaceAll("(?m)decision, value und reason|does not count|^.*accept \\(.*$", "");
    }

    private void open(ChromeDriver browser, String page) {
        Chromium.screen(browser, 1280, 900);
        browser.get(folder.resolve(page).toUri().toString());
    }

    /** Something wrong in every field, and whatever can be asked for on the page. */
    private static void use(ChromeDriver browser, String page) {
        browser.executeScript("""
        document.querySelectorAll('main input[type=text]').forEach(field => {
          field.value = '5 kg';
          field.dispatchEvent(new Event('input', {bubbles: true}));
        });
        document.querySelectorAll('details').forEach(details => { details.open = true; });
        document.querySelectorAll('#answers .main, #hint, #hint, #solve, #next').forEach(button => button.click());
        """);
    }

    /** As it is heard; at 400 % on a screen of 1280 by 1024; with the colours that a reader has chosen. */
    private static void look(ChromeDriver browser, String page) {
        PageAudit.spoken(browser, page);
        if (DEEP || page.endsWith("in use")) {
            Chromium.prefer(browser, "forced-colors", "active");
            PageAudit.focusAndBoxesAreSeen(browser, page + ", forced colours");
            Chromium.prefer(browser);
        }
        PageAudit.focusAndBoxesAreSeen(browser, page);
        Chromium.screen(browser, 320, 256);
        PageAudit.noSidewaysScrolling(browser, page + ", 320 px");
        PageAudit.nothingCoversAField(browser, page + ", 320 by 256 px");
    }

    private void make(String plan) throws IOException {
        TemplateLibrary library = new TemplateLibrary(List.of(TemplateFiles.builtIn()));
        Issue.issue(PlanReader.read("plan.yaml", plan), CLASS, library, folder, 1);
        ProblemSet set = ProblemSet.of(PlanReader.read("plan.yaml", plan), library);
        Sheet sheet = new SheetMaker(set).sheet(1);
        Files.createDirectories(folder.resolve("homework"));
        Files.writeString(folder.resolve("homework/seat-001.html"), HomeworkPage.render(sheet, "Ada"));
        Files.writeString(folder.resolve("practice.html"), PracticePage.render(PracticeSet.of(set, 1)));
        StringBuilder answers = new StringBuilder("sheet,question,answer\n");
        sheet.places()
                .forEach(place -> answers.append(sheet.id())
                        .append(',')
                        .append(place.question())
                        .append(",5 kg\n"));
        Path returned = Files.createDirectories(folder.resolve("returned"));
        Files.writeString(returned.resolve("ada.csv"), answers, StandardCharsets.UTF_8);
        Marking.mark(
                new Marking.Task(
                        returned,
                        new SheetMaker(set),
                        Optional.empty(),
                        CLASS,
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        OtherSheets.NONE,
                        false),
                this::write);
    }

    private void write(String path, String text) {
        try {
            Path file = folder.resolve("marks").resolve(path);
            Files.createDirectories(file.getParent());
            Files.writeString(file, text, StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
