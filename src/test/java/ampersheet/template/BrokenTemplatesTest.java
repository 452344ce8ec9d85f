package ampersheet.template;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Every folder of the corpus is a template with faults, and beside it what its author is told. */
class BrokenTemplatesTest {
    private static final Path CORPUS = Path.of("src/test/resources/broken");
    private final TemplateFiles files = FolderFiles.of(CORPUS, "broken");

    private List<String> cases() {
        return files.names().stream()
                .filter(name -> name.startsWith("templates/"))
                .toList();
    }

    @TestFactory
    List<DynamicTest> everyBrokenTemplateIsToldAsItsAuthorNeedsIt() {
        assertTrue(cases().size() >= 80, () -> "only " + cases().size() + " broken templates were found");
        return cases().stream()
                .map(name -> DynamicTest.dynamicTest(name, () -> assertEquals(expected(name), told(name))))
                .toList();
    }

    @Test
    void everyFaultSaysWhatWasExpectedAndWhatToDo() {
        List<String> silent = new ArrayList<>();
        for (String name : cases()) {
            for (Diagnostic diagnostic : diagnostics(name)) {
                if (diagnostic.problem().isBlank()
                        || diagnostic.expected().isBlank()
                        || diagnostic.nextAction().isBlank()) {
                    silent.add(name + ": " + diagnostic.print());
                }
            }
        }
        assertEquals(List.of(), silent);
    }

    @Test
    void noBrokenTemplateIsOnlySilentlyRefused() {
        for (String name : cases()) {
            assertFalse(diagnostics(name).isEmpty(), name);
        }
    }

    private List<Diagnostic> diagnostics(String name) {
        try {
            return TemplateReader.check(files, name).diagnostics();
        } catch (DiagnosticException unreadable) {
            return unreadable.diagnostics();
        }
    }

    private String told(String name) {
        return diagnostics(name).stream().map(Diagnostic::print).collect(Collectors.joining());
    }

    private static String expected(String name) throws IOException {
        return Files.readString(CORPUS.resolve(name).resolve("expected.txt"), StandardCharsets.UTF_8);
    }
}
