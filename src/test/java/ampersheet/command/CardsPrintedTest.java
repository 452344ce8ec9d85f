package ampersheet.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
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
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CardsPrintedTest {
    @TempDir
    private Path folder;

    private String told(String... more) throws IOException {
        Path plan = Files.writeString(
                folder.resolve("plan.yaml"),
                "title: T\nseed: cards\nproblems:\n  - {template: current-limiting/one-indicator}\n"
                        + "  - {template: current-limiting/string-fuse}\n");
        List<String> arguments = new ArrayList<>(List.of(
                "handout",
                plan.toString(),
                "--copies",
                "1",
                "--cards",
                "--out",
                folder.resolve("cards.pdf").toString()));
        arguments.addAll(List.of(more));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        int code = Main.run(
                arguments.toArray(String[]::new),
                new Streams(
                        new BufferedReader(new StringReader("")),
                        new PrintStream(out, true, StandardCharsets.UTF_8),
                        new PrintStream(out, true, StandardCharsets.UTF_8)));
        assertEquals(0, code, out.toString(StandardCharsets.UTF_8));
        return out.toString(StandardCharsets.UTF_8);
    }

    @Test
    void theCommandSaysHowManyCardsThereAreWhichThereAreNotAndThatTheyGiveNothingAway() throws IOException {
        String told = told();
        assertTrue(told.contains("1 card on 2 sides of paper (1 file written)"), told);
        assertTrue(told.contains("No card of current-limiting/string-fuse: everything but the supply"), told);
        assertTrue(told.contains("other numbers than the sheets"), told);
        assertTrue(told.contains("cut along the marks"), told);
        assertFalse(told.contains("issued"), "there is no archive of cards: " + told);
    }

    @Test
    void asJsonItSaysTheSame() throws IOException {
        String told = told("--json");
        assertTrue(told.contains("\"cards\": 1") || told.contains("\"cards\":1"), told);
        assertTrue(told.contains("\"left_out\"") && told.contains("string-fuse"), told);
    }
}
