package ampersheet.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.diagnostic.DiagnosticException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * Broken plans, class lists and sheet IDs, each in a folder with the message it must give in {@code expected.txt}. With
 * {@code -Dampersheet.writeExpected=true} the messages are written anew, to be read before they are committed.
 */
class BrokenInputTest {
    private static final Path BROKEN = Path.of("src/test/resources/broken");
    private static final SheetIdReader IDS = new SheetIdReader("A7", "K3M", "plan.yaml");

    @TestFactory
    Stream<DynamicTest> brokenPlans() throws IOException {
        return each(
                "plans", "plan.yaml", text -> ProblemSet.of(PlanReader.read("plan.yaml", text), SmallLibrary.open()));
    }

    @TestFactory
    Stream<DynamicTest> brokenRosters() throws IOException {
        return each("rosters", "class.csv", text -> RosterReader.read("class.csv", text));
    }

    @TestFactory
    Stream<DynamicTest> brokenIds() throws IOException {
        return each("ids", "id.txt", text -> IDS.read(text.strip()));
    }

    @Test
    void thereAreEnough() throws IOException {
        int all = cases("plans").size() + cases("rosters").size() + cases("ids").size();
        assertTrue(all >= 30, all + " cases");
    }

    private static Stream<DynamicTest> each(String kind, String file, Consumer<String> reading) throws IOException {
        return cases(kind).stream()
                .map(folder -> DynamicTest.dynamicTest(kind + "/" + folder.getFileName(), () -> {
                    String told = told(reading, Files.readString(folder.resolve(file), StandardCharsets.UTF_8));
                    Path expected = folder.resolve("expected.txt");
                    if (Boolean.getBoolean("ampersheet.writeExpected")) {
                        Files.writeString(expected, told, StandardCharsets.UTF_8);
                    }
                    assertEquals(Files.readString(expected, StandardCharsets.UTF_8), told);
                }));
    }

    private static String told(Consumer<String> reading, String text) {
        try {
            reading.accept(text);
            return "no fault was found\n";
        } catch (DiagnosticException refused) {
            return refused.getMessage();
        }
    }

    private static List<Path> cases(String kind) throws IOException {
        try (Stream<Path> folders = Files.list(BROKEN.resolve(kind))) {
            return folders.filter(Files::isDirectory).sorted().toList();
        }
    }
}
