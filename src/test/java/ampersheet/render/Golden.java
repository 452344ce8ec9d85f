package ampersheet.render;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Pages that a person has looked at, kept as files; a change of a page has to be looked at and accepted again. */
public final class Golden {
    private Golden() {}

    /** @param file below {@code src/test/resources} */
    public static void assertSame(String file, String actual) throws IOException {
        Path accepted = Path.of("src/test/resources", file);
        Path produced = Path.of("target/golden", file);
        Files.createDirectories(produced.getParent());
        Files.writeString(produced, actual, StandardCharsets.UTF_8);
        List<String> expected =
                Files.exists(accepted) ? Files.readAllLines(accepted, StandardCharsets.UTF_8) : List.of();
        List<String> lines = actual.lines().toList();
        for (int i = 0; i < Math.max(expected.size(), lines.size()); i++) {
            String before = i < expected.size() ? expected.get(i) : "(end)";
            String now = i < lines.size() ? lines.get(i) : "(end)";
            assertEquals(
                    before,
                    now,
                    "line " + (i + 1) + " of " + accepted + " differs; look at " + produced
                            + " in a browser and on paper, and if it is right: cp " + produced + " " + accepted);
        }
    }
}
