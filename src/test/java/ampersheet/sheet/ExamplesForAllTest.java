package ampersheet.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.diagnostic.DiagnosticException;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** Worked examples that are the same for everybody. */
class ExamplesForAllTest {
    /** There are 35 of them, as the refusal of the 36th tells. */
    private static final String PLAN = """
      title: Lanterns
      seed: examples
      problems:
        - {template: current-limiting/indicator, given: {Vs: 12 V, Vf: 2 V}, example: yes}
      """;

    private static final String SHARED = PLAN + "examples: shared\n";
    private static final int VARIANTS = 35;

    private static String numbers(Sheet sheet, int problem) {
        return sheet.problems().get(problem).problem().givens().quantities().toString();
    }

    @Test
    void allVariantsButTheOneOfTheExampleServeASeatEach() {
        SheetMaker maker = SmallLibrary.maker(SHARED);
        maker.prepare(VARIANTS - 1);
        String example = numbers(maker.sheet(1), 0);
        Set<String> problems = new TreeSet<>();
        for (int seat = 1; seat < VARIANTS; seat++) {
            Sheet sheet = maker.sheet(seat);
            assertEquals(example, numbers(sheet, 0), "the example of seat " + seat);
            assertTrue(sheet.problems().get(0).example());
            assertTrue(problems.add(numbers(sheet, 1)), "seat " + seat + " has a problem of another's");
        }
        assertTrue(!problems.contains(example), "nobody is asked what the example tells");
        assertThrows(DiagnosticException.class, () -> maker.prepare(VARIANTS));
        assertThrows(DiagnosticException.class, () -> SmallLibrary.maker(PLAN).prepare(VARIANTS / 2 + 1));
    }

    @Test
    void theSheetsHaveIdsOfTheirOwnAndAPlanThatSaysOwnIsOneThatSaysNothing() {
        SheetId plain = SmallLibrary.maker(PLAN).set().id(1);
        assertEquals(plain, SmallLibrary.maker(PLAN + "examples: own\n").set().id(1));
        assertNotEquals(plain, SmallLibrary.maker(SHARED).set().id(1));
    }

    @Test
    void withRepeatsOnlyProblemsComeAgainAndTheExampleStaysOfNoProblem() {
        SheetMaker maker = SmallLibrary.maker(SHARED + "repeats: allowed\n");
        maker.prepare(4 * VARIANTS);
        String example = numbers(maker.sheet(1), 0);
        for (int seat = 1; seat <= 4 * VARIANTS; seat++) {
            assertEquals(example, numbers(maker.sheet(seat), 0));
            assertNotEquals(example, numbers(maker.sheet(seat), 1));
            assertTrue(maker.alsoAt(seat, 4 * VARIANTS).get(0).isEmpty(), "an example is no problem in common");
        }
        assertEquals(VARIANTS - 1, maker.nearest(4 * VARIANTS));
    }
}
