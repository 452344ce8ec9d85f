package ampersheet.template;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.problem.MutationCheck;
import ampersheet.problem.ProofReport;
import ampersheet.problem.Proving;
import ampersheet.problem.Workshop;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The template that the guide writes from nothing is proven as it stands there, and the program says what the guide
 * says.
 */
class WalkThroughTest {
    private static final String HEADING = "# From an empty folder to a proven template";
    private static final String NAME = "current-limiting/pull-up";

    @TempDir
    private Path folder;

    private static String section() throws IOException {
        String guide = Files.readString(Path.of("problem-templates/README.md"));
        int from = guide.indexOf(HEADING);
        assertTrue(from >= 0, "the guide has no section " + HEADING);
        int to = guide.indexOf("\n# ", from);
        return guide.substring(from, to < 0 ? guide.length() : to);
    }

    private static List<String> blocks(String kind) throws IOException {
        List<String> blocks = new ArrayList<>();
        String[] parts = section().split("```", -1);
        for (int i = 1; i < parts.length; i += 2) {
            if (parts[i].startsWith(kind + "\n")) {
                blocks.add(parts[i].substring(kind.length() + 1));
            }
        }
        return blocks;
    }

    private TemplateFiles written(List<String> yaml) throws IOException {
        Path own = folder.resolve(NAME);
        Files.createDirectories(own);
        Files.writeString(own.resolve("problem.yaml"), String.join("", yaml));
        Files.writeString(own.resolve("statement.md.ftl"), blocks("ftl").get(0));
        return TemplateFiles.in(folder);
    }

    @Test
    void beforeItsSecondRouteIsWrittenTheAuthorIsToldWhatTheGuideShows() throws IOException {
        List<String> yaml = blocks("yaml");
        List<Diagnostic> told = TemplateReader.check(written(yaml.subList(0, yaml.size() - 1)), NAME)
                .diagnostics();
        String shown = told.stream()
                .map(Diagnostic::print)
                .collect(Collectors.joining())
                .replace(folder.toString().replace('\\', '/') + "/", "my-templates/");
        assertEquals(blocks("text").get(0), shown);
    }

    @Test
    void theTemplateOfTheGuideIsProvenAndReportedAsTheGuideShows() throws IOException {
        Workshop workshop = new Workshop(TemplateReader.read(written(blocks("yaml")), NAME));
        ProofReport report = Proving.prove(workshop, "prove", 1000);
        assertTrue(
                report.passed()
                        && report.tally().refusalRate() < 0.3
                        && report.warnings().isEmpty(),
                report.print());
        assertTrue(report.variants().count() >= 2000, report.print());
        String mutations = MutationCheck.run(workshop, "prove").print();
        assertEquals(blocks("text").get(1), report.print() + mutations);
    }

    @Test
    void theTableTellsHowManyLinesEachStepTakes() throws IOException {
        List<String> yaml = blocks("yaml");
        List<String> written =
                List.of(yaml.get(0), yaml.get(1), yaml.get(2), blocks("ftl").get(0), yaml.get(3));
        int all = 0;
        for (int i = 0; i < written.size(); i++) {
            int lines = (int) written.get(i).lines().count();
            all += lines;
            String number = "| " + (i + 1) + " |";
            String row = section()
                    .lines()
                    .filter(line -> line.startsWith(number))
                    .findFirst()
                    .orElseThrow();
            assertTrue(row.contains("| " + lines + " |"), row + " has " + lines + " lines");
        }
        assertTrue(section().contains(all + " lines in all"), all + " lines in all");
    }
}
