package ampersheet.command;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.issue.Issue;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.RosterReader;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SampleTest {
    private static final Path SAMPLE = Path.of("output", "sample");
    private static final Path PLAN = Path.of("problem-templates", "demo", "plan.yaml");
    private static final String RENEW =
            "look at what changed, then renew the sample: java -jar target/ampersheet.jar issue "
                    + "problem-templates/demo/plan.yaml --roster output/sample/class.csv --out output/sample";

    @TempDir
    private Path folder;

    private static TreeSet<String> pages(Path under) throws IOException {
        TreeSet<String> names = new TreeSet<>();
        try (Stream<Path> walk = Files.walk(under)) {
            walk.filter(Files::isRegularFile)
                    .map(file -> under.relativize(file).toString().replace('\\', '/'))
                    .filter(name -> name.endsWith(".html") || name.endsWith(".md"))
                    .forEach(names::add);
        }
        return names;
    }

    /**
     * What a phone loads in a second over a poor line; a key, which no phone loads, says each equation aloud as well.
     */
    @Test
    void noSheetOfTheDemoIsLargerThan120KilobytesAndNoKeyThan128() throws IOException {
        issueFor(PLAN.resolveSibling("roster.csv"));
        int seen = 0;
        for (String page : pages(folder)) {
            long bytes = Files.size(folder.resolve(page));
            long most = 1024 * (page.startsWith("keys/") ? 128 : 120);
            assertTrue(bytes <= most, page + " has " + bytes + " bytes");
            seen++;
        }
        assertEquals(12 * 4 + 1, seen);
    }

    @Test
    void theTrackedSampleIsWhatTheDemoPlanGivesToday() throws IOException {
        issueFor(SAMPLE.resolve("class.csv"));
        assertEquals(9, pages(folder).size(), "two seats have four pages each, and there is the index");
        assertEquals(pages(folder), pages(SAMPLE), RENEW);
        for (String page : pages(folder)) {
            assertArrayEquals(
                    Files.readAllBytes(folder.resolve(page)),
                    Files.readAllBytes(SAMPLE.resolve(page)),
                    page + ": " + RENEW);
        }
    }

    private void issueFor(Path roster) throws IOException {
        Issue.issue(
                PlanReader.read(PLAN.toString(), Files.readString(PLAN)),
                RosterReader.read(roster.getFileName().toString(), Files.readString(roster)),
                new TemplateLibrary(List.of(TemplateFiles.builtIn())),
                folder,
                2);
    }
}
