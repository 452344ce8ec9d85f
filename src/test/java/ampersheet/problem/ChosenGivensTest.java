package ampersheet.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.template.ProblemTemplate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class ChosenGivensTest {
    private final ProblemTemplate template =
            TemplateBuilder.indicator().word("scene", "garden", "attic").build();

    private static Map<String, String> typed(String... namesAndValues) {
        Map<String, String> typed = new LinkedHashMap<>();
        for (int i = 0; i < namesAndValues.length; i += 2) {
            typed.put(namesAndValues[i], namesAndValues[i + 1]);
        }
        return typed;
    }

    @Test
    void valuesAreReadAsPeopleTypeThem() {
        ChosenGivens chosen =
                ChosenGivens.read(template, typed("Vs", "24V", "Vf", "1.6", "If", "20", "scene", "attic"));
        assertEquals(24, chosen.quantities().get("Vs").value());
        assertEquals(1.6, chosen.quantities().get("Vf").value());
        assertEquals(0.02, chosen.quantities().get("If").value(), "a bare number is in the given's own unit");
        assertEquals("attic", chosen.words().get("scene"));
    }

    @Test
    void everyFaultIsToldAtOnce() {
        DiagnosticException told = assertThrows(
                DiagnosticException.class,
                () -> ChosenGivens.read(
                        template, typed("Vs", "24 mA", "Vx", "3 V", "If", "1,000", "scene", "cellar", "Vf", "x")));
        assertEquals(5, told.diagnostics().size(), told.getMessage());
        assertTrue(told.getMessage().contains("mA is not a unit of Vs"), told.getMessage());
        assertTrue(told.getMessage().contains("no given Vx"), told.getMessage());
        assertTrue(told.getMessage().contains("garden or attic"), told.getMessage());
    }

    @Test
    void theGivensThatWereNotChosenAreDrawnSoThatTheyFit() {
        Draws draws = new Draws(new Workshop(template), "s");
        for (String volts : List.of("5 V", "7.3 V", "48 V")) {
            Attempt.Worked worked =
                    assertInstanceOf(Attempt.Worked.class, draws.work(ChosenGivens.read(template, typed("Vs", volts))));
            assertEquals(List.of(), worked.notes(), volts);
            assertEquals(
                    worked.problem().answers().get(0).value(),
                    (worked.problem().givens().quantity("Vs").value()
                                    - worked.problem().givens().quantity("Vf").value())
                            / worked.problem().givens().quantity("If").value(),
                    1e-9);
        }
    }

    @Test
    void nothingChosenIsTheFirstDraw() {
        Draws draws = new Draws(new Workshop(template), "s");
        Attempt.Worked worked =
                assertInstanceOf(Attempt.Worked.class, draws.work(new ChosenGivens(Map.of(), Map.of())));
        assertEquals(draws.draw(0).givens(), worked.problem().givens());
    }

    @Test
    void drawnGivensCanBeTypedAgain() {
        Draws draws = new Draws(new Workshop(template), "s");
        for (int k = 0; k < 40; k++) {
            Map<String, String> typed = new LinkedHashMap<>();
            for (String given :
                    Notations.givensInOneLine(template, draws.draw(k).givens()).split(" ")) {
                typed.put(given.substring(0, given.indexOf('=')), given.substring(given.indexOf('=') + 1));
            }
            ChosenGivens chosen = ChosenGivens.read(template, typed);
            assertEquals(draws.draw(k).givens(), chosen.putInto(draws.draw(k).givens()), typed.toString());
            assertTrue(chosen.coverAll(template));
        }
    }
}
