package ampersheet.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The commands that the README shows, as they stand there; what they write goes to a folder of the test's. In a build
 * with fewer copies and draws.
 */
class ReadmeCommandsTest {
    private static final boolean DEEP = Boolean.getBoolean("ampersheet.deep");
    private static final String PROGRAM = "java -jar target/ampersheet.jar ";
    /** Not there in a build that leaves the browser out. */
    private static final String CHECKER = "/ampersheet/browser/checker.js";

    private static final String DEMO = "problem-templates/demo/plan.yaml";
    private static final Pattern IN_A_SENTENCE = Pattern.compile("`((?:issue|export) PLAN [^`]*)`");
    private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|(\\S+)");

    @TempDir
    private Path folder;

    @Test
    void everyCommandOfTheReadmeRunsAsItStands() throws IOException {
        String readme = Files.readString(Path.of("README.md"));
        List<String> commands = new ArrayList<>();
        readme.lines()
                .map(line -> line.startsWith("$ ") ? line.substring(2) : line)
                .filter(line -> line.startsWith(PROGRAM))
                .forEach(line -> commands.add(line.substring(PROGRAM.length())));
        for (Matcher shown = IN_A_SENTENCE.matcher(readme); shown.find(); ) {
            commands.add(shown.group(1));
        }
        assertTrue(commands.size() >= 10, commands.toString());
        String sheet = readme.replaceAll("(?s).*check (\\S+) --plan problem-templates/demo/plan.yaml \".*", "$1");
        answers(sheet);
        for (String command : commands) {
            boolean lacking = command.startsWith("practice") && Main.class.getResource(CHECKER) == null;
            if (!lacking && (DEEP || !command.startsWith("prove"))) {
                run(command, sheet);
            }
        }
        assertTrue(Files.exists(folder.resolve("tonight.pdf")), "the handout");
        assertTrue(Files.exists(folder.resolve("marks")), "the marks");
    }

    private void answers(String sheet) throws IOException {
        Path answers = Files.createDirectories(folder.resolve("answers"));
        Files.writeString(answers.resolve("one.csv"), "sheet,question,answer\n" + sheet + ",q2a,1.714 kΩ\n");
    }

    private void run(String command, String sheet) {
        boolean wrongAnswers = command.startsWith("check");
        String here = command.replace("SHEET-ID", sheet)
                .replace("ANSWERS", folder.resolve("answers").toString())
                .replace("PLAN", DEMO)
                .replace("CLASS.csv", "problem-templates/demo/roster.csv")
                .replace("--out DIR", "--out " + folder.resolve("class"))
                .replace("FILE.zip", folder.resolve("package.zip").toString())
                .replace("output/", folder + "/")
                .replace(" tonight.pdf", " " + folder.resolve("tonight.pdf"));
        if (!DEEP) {
            here = here.replace("--copies 12", "--copies 1");
        }
        List<String> words = WORD.matcher(here)
                .results()
                .map(word -> word.group(1) == null ? word.group(2) : word.group(1))
                .toList();
        ByteArrayOutputStream said = new ByteArrayOutputStream();
        PrintStream both = new PrintStream(said, true, StandardCharsets.UTF_8);
        int exitCode = Main.run(
                words.toArray(String[]::new),
                new Streams(new BufferedReader(new StringReader("q2a 1.5 kΩ\n")), both, both));
        assertEquals(
                wrongAnswers ? 1 : 0,
                exitCode,
                command + Arrays.toString(words.toArray()) + said.toString(StandardCharsets.UTF_8));
    }
}
