package ampersheet.browser;

import ampersheet.issue.Issue;
import ampersheet.marking.Marking;
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
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.chrome.ChromeDriver;

/**
 * Every kind of page the program makes without a script, as a browser shows it: sheet, key, index, feedback, report.
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
    private static Path folder;

    @Test
    void everyKindIsAccessibleAndFitsANarrowScreen() throws IOException {
        Chromium.need();
        make();
        ChromeDriver browser = Chromium.open(folder.resolve("profile"));
        try {
            for (String page : List.of(
                    "sheets/seat-001.html",
                    "keys/seat-001.html",
                    "index.html",
                    "marks/feedback/seat-001.html",
                    "marks/report.html")) {
                Chromium.screen(browser, 1280, 900);
                browser.get(folder.resolve(page).toUri().toString());
                if (DEEP || page.startsWith("sheets/")) {
                    Chromium.prefer(browser, "prefers-color-scheme", "dark");
                    PageAudit.accessible(browser, page + ", dark");
                    Chromium.prefer(browser, "prefers-color-scheme", "light");
                    PageAudit.accessible(browser, page + ", light");
                }
                Chromium.screen(browser, 320, 900);
                if (DEEP || !page.contains("report")) {
                    PageAudit.accessible(browser, page + ", 320 px");
                }
                PageAudit.noSidewaysScrolling(browser, page + ", 320 px");
            }
        } finally {
            browser.quit();
        }
    }

    private static void make() throws IOException {
        TemplateLibrary library = new TemplateLibrary(List.of(TemplateFiles.builtIn()));
        Issue.issue(PlanReader.read("plan.yaml", PLAN), CLASS, library, folder, 1);
        ProblemSet set = ProblemSet.of(PlanReader.read("plan.yaml", PLAN), library);
        Sheet sheet = new SheetMaker(set).sheet(1);
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
                        false),
                PageKindsTest::write);
    }

    private static void write(String path, String text) {
        try {
            Path file = folder.resolve("marks").resolve(path);
            Files.createDirectories(file.getParent());
            Files.writeString(file, text, StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
