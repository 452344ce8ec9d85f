package ampersheet.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.sheet.SmallLibrary;
import java.io.BufferedReader;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A class that several runs of the command issue. */
class SlicesCommandTest {
    private static final String PLAN =
            "title: Lanterns\nseed: one\nproblems: [{template: current-limiting/indicator}]\n";

    @TempDir
    private Path folder;

    private final ByteArrayOutputStream said = new ByteArrayOutputStream();
    private List<String> issue;

    @BeforeEach
    void write() throws IOException {
        Path plan = Files.writeString(folder.resolve("plan.yaml"), PLAN);
        Path roster = Files.writeString(folder.resolve("class.csv"), "seat,name\n1,Ada\n2,Bo\n3,Cem\n");
        issue = List.of(
                "issue",
                plan.toString(),
                "--roster",
                roster.toString(),
                "--out",
                folder.resolve("out").toString(),
                "--templates",
                SmallLibrary.FOLDER.toString());
    }

    private int run(String... further) {
        said.reset();
        List<String> all = new ArrayList<>(issue);
        all.addAll(List.of(further));
        PrintStream both = new PrintStream(said, true, StandardCharsets.UTF_8);
        return Main.run(all.toArray(new String[0]), new Streams(new BufferedReader(new StringReader("")), both, both));
    }

    private String said() {
        return said.toString(StandardCharsets.UTF_8);
    }

    @Test
    void slicesSayWhatIsNextAndTheLastStepSaysWhatAnyIssueSays() {
        assertEquals(0, run("--slice", "1/2"));
        assertTrue(said().contains("1 sheet with keys (4 files written)"), said());
        assertTrue(said().contains("the same command with --join 2 instead of --slice"), said());
        assertEquals(0, run("--slice", "1/2"));
        assertTrue(said().contains("1 sheet there and right"), said());
        assertEquals(1, run("--join", "2"));
        assertTrue(said().contains("slice 2/2 is not there"), said());
        assertEquals(0, run("--slice", "2/2", "--json"));
        assertTrue(said().contains("\"was_there\""), said());
        assertEquals(0, run("--join", "2"));
        assertTrue(said().contains("3 sheets of 1 problem") && said().contains("Open first:"), said());
    }

    @Test
    void whatNamesNoSliceIsWrongUsage() {
        for (String wrong : List.of("3", "0/2", "3/2", "a/b")) {
            assertEquals(2, run("--slice", wrong), wrong);
            assertTrue(said().contains("K/N, such as 3/10"), said());
        }
        assertEquals(2, run("--join", "0"));
        assertEquals(2, run("--join", "2", "--slice", "1/2"));
        assertTrue(said().contains("Run each slice first"), said());
    }
}
