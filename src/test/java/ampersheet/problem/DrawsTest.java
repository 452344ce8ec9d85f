package ampersheet.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.answer.Acceptance;
import ampersheet.circuit.PartKind;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.Way;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class DrawsTest {

    /** Cheap to prove: one resistor on a source. */
    private static TemplateBuilder ohmsLaw() {
        return new TemplateBuilder("voltage-dividers/one-resistor")
                .given("V", "V", IntStream.rangeClosed(1, 40).asDoubleStream().toArray())
                .given("R", "ohm", 10, 22, 47, 100, 220, 470)
                .step("I", "A", "V / R")
                .ask("I", new Acceptance.Within(0.02, 0))
                .part(PartKind.SOURCE, "V1", "volts", "V", 0, 0, 0, 4)
                .part(PartKind.RESISTOR, "R1", "ohms", "R", 0, 4, 4, 4)
                .wire(4, 4, 4, 0)
                .wire(4, 0, 0, 0)
                .ground(0, 0)
                .proof("I", "I", "current(R1)", new Way.Direct(), 1e-4);
    }

    private static Draws draws(ProblemTemplate template, String seed) {
        return new Draws(new Workshop(template), seed);
    }

    private static List<String> firstGivens(Draws draws, int count) {
        return IntStream.range(0, count).mapToObj(k -> givens(draws, k)).toList();
    }

    private static String givens(Draws draws, int k) {
        return Notations.givensInOneLine(draws.template(), draws.draw(k).givens());
    }

    @Test
    void noTwoDrawsAreAlike() {
        Draws draws = draws(ohmsLaw().build(), "class 7");
        Set<String> seen = new LinkedHashSet<>(firstGivens(draws, 150));
        assertEquals(150, seen.size());
    }

    @Test
    void aDrawDoesNotDependOnWhatWasDrawnBefore() {
        ProblemTemplate template = ohmsLaw().build();
        List<String> inOrder = firstGivens(draws(template, "s"), 120);
        Draws backwards = draws(template, "s");
        for (int k = 119; k >= 0; k--) {
            assertEquals(inOrder.get(k), givens(backwards, k), "draw " + k);
        }
        assertEquals(inOrder.get(77), givens(draws(template, "s"), 77));
    }

    @Test
    void aDrawDoesNotDependOnThreads() throws Exception {
        ProblemTemplate template = TemplateBuilder.indicator().build();
        List<String> alone = firstGivens(draws(template, "threads"), 400);
        Draws shared = draws(template, "threads");
        ExecutorService threads = Executors.newFixedThreadPool(4);
        try {
            List<Callable<String>> tasks = new ArrayList<>();
            for (int i = 0; i < 400; i++) {
                int k = (i * 149) % 400;
                tasks.add(() -> k + " " + givens(shared, k));
            }
            for (Future<String> done : threads.invokeAll(tasks)) {
                String[] told = done.get().split(" ", 2);
                assertEquals(alone.get(Integer.parseInt(told[0])), told[1], "draw " + told[0]);
            }
        } finally {
            threads.shutdown();
        }
    }

    @Test
    void anotherSeedDrawsOthers() {
        ProblemTemplate template = ohmsLaw().build();
        assertNotEquals(firstGivens(draws(template, "a"), 10), firstGivens(draws(template, "b"), 10));
    }

    @Test
    void theEndIsToldWithTheNumberOfVariants() {
        Draws draws = draws(
                new TemplateBuilder("voltage-dividers/few")
                        .given("V", "V", 5, 9, 12)
                        .given("R", "ohm", 100, 220)
                        .require("V > 5 V")
                        .step("I", "A", "V / R")
                        .ask("I", new Acceptance.Within(0.02, 0))
                        .part(PartKind.SOURCE, "V1", "volts", "V", 0, 0, 0, 4)
                        .part(PartKind.RESISTOR, "R1", "ohms", "R", 0, 4, 0, 0)
                        .ground(0, 0)
                        .proof("I", "I", "current(R1)", new Way.Direct(), 1e-4)
                        .build(),
                "s");
        for (int k = 0; k < 4; k++) {
            draws.draw(k);
        }
        DiagnosticException end = assertThrows(DiagnosticException.class, () -> draws.draw(4));
        assertTrue(end.getMessage().contains("only 4 distinct variants"), end.getMessage());
        assertTrue(end.getMessage().contains("2 × a requirement"), end.getMessage());
        assertEquals(2, draws.tally().refused(Refusal.REQUIREMENT));
        assertEquals(4, draws.tally().accepted());
    }

    @Test
    void sceneryMakesNoVariant() {
        ProblemTemplate template =
                ohmsLaw().word("place", "workshop", "garden", "attic").build();
        Draws draws = draws(template, "s");
        assertEquals(240, draws.size());
        Set<String> places = new LinkedHashSet<>();
        for (int k = 0; k < 60; k++) {
            places.add(draws.draw(k).givens().words().get("place"));
        }
        assertEquals(3, places.size(), "all the places come about: " + places);
    }

    @Test
    void repeatedValuesMakeNoVariant() {
        assertEquals(
                2,
                draws(
                                new TemplateBuilder("a/b")
                                        .given("V", "V", 5, 5, 9, 5)
                                        .step("W", "V", "2 * V")
                                        .build(),
                                "s")
                        .size());
    }

    @Test
    void aHopelessTemplateIsToldSo() {
        Draws draws = draws(
                ohmsLaw()
                        .given(
                                "x",
                                "V",
                                IntStream.rangeClosed(1, 100).asDoubleStream().toArray())
                        .require("x < 0 V")
                        .build(),
                "s");
        DiagnosticException hopeless = assertThrows(DiagnosticException.class, () -> draws.draw(0));
        assertTrue(hopeless.getMessage().contains("in a row were refused"), hopeless.getMessage());
    }

    @Test
    void tooManyCombinationsAreRefusedNotOverflown() {
        TemplateBuilder huge = new TemplateBuilder("a/huge");
        double[] thousand = IntStream.rangeClosed(1, 1000).asDoubleStream().toArray();
        StringBuilder sum = new StringBuilder("0 V");
        for (int i = 0; i < 7; i++) {
            huge.given("V" + i, "V", thousand);
            sum.append(" + V").append(i);
        }
        DiagnosticException told = assertThrows(
                DiagnosticException.class,
                () -> new SpaceOfGivens(huge.step("S", "V", sum.toString()).build()));
        assertTrue(told.getMessage().contains("combinations"), told.getMessage());
    }
}
