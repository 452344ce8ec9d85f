package ampersheet.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;

import ampersheet.OnlyDeep;
import ampersheet.browser.Chromium;
import ampersheet.browser.PageAudit;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Roster;
import ampersheet.sheet.SheetMaker;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.chrome.ChromeDriver;

/** Feedback page and class report in the browser. */
class MarkingPagesTest {
    private static final boolean DEEP = Boolean.getBoolean("ampersheet.deep");

    private static final int LEARNERS = 24;

    @TempDir
    private Path folder;

    private Path pages() throws IOException {
        ProblemSet set =
                ProblemSet.of(PlanReader.read("plan.yaml", """
        title: "Lantern night: the wall, the carousel and their supply"
        problems:
          - {template: current-limiting/one-indicator, example: yes}
          - {template: voltage-dividers/battery-sense, support: faded, fade: forward, blank: 1}
          - {template: thermal-rise/regulator-junction}
          - {template: voltage-dividers/design-pair}
          - {pool: [current-limiting/driver-test-point, current-limiting/shunt-reference-feed]}
        """), new TemplateLibrary(List.of(TemplateFiles.builtIn())));
        SimulatedClass learners = new SimulatedClass(new SheetMaker(set), 11);
        Path answers = Files.createDirectories(folder.resolve("answers"));
        List<Roster.Seat> seats = new ArrayList<>();
        for (int seat = 1; seat <= LEARNERS; seat++) {
            seats.add(new Roster.Seat(seat, "Learner with quite a long name, number " + seat));
            Files.writeString(
                    answers.resolve("a-very-long-file-name-as-mailboxes-make-them-" + seat + ".csv"),
                    SimulatedClass.file(learners.learner(seat, 2, 0.3, 0.1)),
                    StandardCharsets.UTF_8);
        }
        Files.writeString(answers.resolve("notes.txt"), "?", StandardCharsets.UTF_8);
        Path out = folder.resolve("out");
        Marking.mark(
                new Marking.Task(
                        answers,
                        new SheetMaker(set),
                        Optional.empty(),
                        new Roster(seats),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.of(EarlierMarks.read("marks.csv", "seat,marks,of\n1,2,13\n")),
                        Optional.empty(),
                        OtherSheets.NONE,
                        false),
                (path, text) -> {
                    try {
                        Files.createDirectories(out.resolve(path).getParent());
                        Files.writeString(out.resolve(path), text, StandardCharsets.UTF_8);
                    } catch (IOException failure) {
                        throw new java.io.UncheckedIOException(failure);
                    }
                });
        return out;
    }

    @OnlyDeep
    @Test
    void bothAreAccessibleAskForNothingAndFitANarrowScreen() throws IOException {
        Chromium.need();
        Path out = pages();
        ChromeDriver browser = Chromium.fresh();
        for (String page : List.of(
                "report.html",
                "projector.html",
                "gradebook.html",
                "feedback/seat-001.html",
                "feedback/seat-002.html")) {
            Chromium.requestsAndComplaints(browser);
            browser.get(out.resolve(page).toUri().toString());
            assertEquals(List.of(out.resolve(page).toUri().toString()), Chromium.requestsAndComplaints(browser), page);
            for (String scheme : DEEP ? List.of("light", "dark") : List.of("dark")) {
                Chromium.prefer(browser, "prefers-color-scheme", scheme);
                if (DEEP || page.startsWith("report")) {
                    PageAudit.accessible(browser, page + ", " + scheme);
                }
            }
            for (int width : DEEP ? List.of(320, 768, 1280) : List.of(320)) {
                Chromium.screen(browser, width, 900);
                PageAudit.noSidewaysScrolling(browser, page + ", " + width + " px");
                PageAudit.controlsAreLargeEnough(browser, page + ", " + width + " px");
            }
        }
    }
}
