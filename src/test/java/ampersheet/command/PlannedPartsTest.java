package ampersheet.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.issue.WrittenFiles;
import java.io.BufferedReader;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A list of parts that the plan names is the same as one named on the command line. */
class PlannedPartsTest {
    private static final String PLAN =
            "title: Lanterns\nseed: one\nproblems: [{template: current-limiting/one-indicator}]\n";
    private static final String PARTS = "kind,value,tolerance,rating,count\nresistor,470 ohm,5 %,0.25 W,30\n"
            + "resistor,680 ohm,5 %,0.25 W,30\nresistor,1 kohm,5 %,0.25 W,50\n";

    @TempDir
    private Path folder;

    @BeforeEach
    void write() throws IOException {
        Files.writeString(folder.resolve("class.csv"), "seat,name\n1,Ada\n2,Bo\n");
        Files.writeString(folder.resolve("parts.csv"), PARTS);
    }

    private String run(int expected, String... arguments) {
        ByteArrayOutputStream said = new ByteArrayOutputStream();
        PrintStream out = new PrintStream(said, true, StandardCharsets.UTF_8);
        int exitCode = Main.run(arguments, new Streams(new BufferedReader(new StringReader("")), out, out));
        String text = said.toString(StandardCharsets.UTF_8);
        assertEquals(expected, exitCode, text);
        return text;
    }

    private String path(String name) {
        return folder.resolve(name).toString();
    }

    private Map<String, byte[]> sheets(String out) throws IOException {
        Map<String, byte[]> files = WrittenFiles.under(folder.resolve(out));
        files.keySet().removeIf(name -> !name.contains("sheets"));
        return files;
    }

    @Test
    void aPlanThatNamesAListOfPartsIsIssuedAndMarkedAsWithTheListOnTheCommandLine() throws IOException {
        Files.writeString(folder.resolve("plan.yaml"), PLAN);
        run(
                0,
                "issue",
                path("plan.yaml"),
                "--roster",
                path("class.csv"),
                "--out",
                path("a"),
                "--parts",
                path("parts.csv"));
        Files.writeString(folder.resolve("plan.yaml"), "parts: parts.csv\n" + PLAN);
        run(0, "issue", path("plan.yaml"), "--roster", path("class.csv"), "--out", path("b"));
        Map<String, byte[]> named = sheets("a");
        Map<String, byte[]> planned = sheets("b");
        assertTrue(named.size() >= 2, named.keySet().toString());
        assertEquals(named.keySet(), planned.keySet());
        named.forEach((name, bytes) -> assertEquals(
                new String(bytes, StandardCharsets.UTF_8), new String(planned.get(name), StandardCharsets.UTF_8)));
        String key = Files.readString(folder.resolve("b/keys/seat-001.md"));
        Matcher id = Pattern.compile("[0-9A-Z]{5}-[0-9]{3,4}-[0-9A-Z]").matcher(key);
        assertTrue(id.find(), key);
        run(0, "key", id.group(), "--plan", path("plan.yaml"));
    }

    @Test
    void aListThatIsNotThereIsToldAtTheLineOfThePlanAndOneThatIsReadIsNotWrittenOver() throws IOException {
        Files.writeString(folder.resolve("plan.yaml"), "parts: bins.csv\n" + PLAN);
        String said = run(1, "issue", path("plan.yaml"), "--roster", path("class.csv"), "--out", path("a"));
        assertTrue(said.contains("plan.yaml:1:") && said.contains("bins.csv cannot be read"), said);
        Files.writeString(folder.resolve("bins.pdf"), PARTS);
        Files.writeString(folder.resolve("plan.yaml"), "parts: bins.pdf\n" + PLAN);
        said = run(1, "handout", path("plan.yaml"), "--copies", "1", "--replace", "--out", path("bins.pdf"));
        assertTrue(said.contains("it is what this command reads"), said);
        Files.createSymbolicLink(folder.resolve("link.csv"), folder.resolve("parts.csv"));
        Files.writeString(folder.resolve("plan.yaml"), "parts: link.csv\n" + PLAN);
        said = run(1, "issue", path("plan.yaml"), "--roster", path("class.csv"), "--out", path("a"));
        assertTrue(said.contains("links are not followed"), said);
    }
}
