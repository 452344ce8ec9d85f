package ampersheet.reference;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Every published value of {@code reference-checks/}, against what the program makes of the same numbers. */
class ReferenceChecksTest {
    private static final List<ReferenceCheck> CHECKS = ReferenceFiles.all();

    @TestFactory
    Stream<DynamicTest> theProgramFindsThePublishedValue() {
        return CHECKS.stream()
                .map(check -> DynamicTest.dynamicTest(check.id(), () -> {
                    Measured measured = check.subject().measured();
                    List<String> disagreements = check.disagreements(measured);
                    if (!disagreements.isEmpty()) {
                        fail(check.told(disagreements));
                    }
                    assertSpoiledIsTold(check, measured);
                }));
    }

    /** A row that cannot fail says nothing. */
    private static void assertSpoiledIsTold(ReferenceCheck check, Measured measured) {
        check.expected().forEach((formula, published) -> {
            List<Double> wrong = published.stream()
                    .map(value -> value * (1 + 3 * check.within()) + 1e-9 * check.within())
                    .toList();
            ReferenceCheck spoiled = new ReferenceCheck(
                    check.file(),
                    check.id(),
                    check.what(),
                    check.source(),
                    check.status(),
                    check.grade(),
                    check.note(),
                    check.subject(),
                    Map.of(formula, wrong),
                    check.within());
            List<String> disagreements = spoiled.disagreements(measured);
            assertFalse(disagreements.isEmpty(), () -> check.id() + ", " + formula + ": a wrong value passes");
            String told = spoiled.told(disagreements);
            assertTrue(told.contains(check.source()) && told.contains(check.status()) && told.contains(formula), told);
        });
    }

    @Test
    void everyRowHasANameOfItsOwn() {
        assertEquals(
                CHECKS.size(),
                CHECKS.stream().map(ReferenceCheck::id).distinct().count());
    }

    @Test
    void everyFamilyAndEveryTemplateHasPublishedValues() {
        assertTrue(CHECKS.size() >= 150, "only " + CHECKS.size() + " rows");
        Coverage.rowsByTemplate(CHECKS).forEach((template, rows) -> assertTrue(rows > 0, template + " has no row"));
    }

    @Test
    void theReadmeTellsWhatIsCovered() throws IOException {
        String readme = Files.readString(Path.of("reference-checks", "README.md"));
        int start = readme.indexOf(Coverage.START);
        assertTrue(start >= 0, "reference-checks/README.md has no line " + Coverage.START);
        assertEquals(
                Coverage.table(CHECKS),
                readme.substring(start),
                "replace everything in reference-checks/README.md from that line on with this test's expected text");
    }
}
