package ampersheet.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import ampersheet.problem.Difficulty.Nearness;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Fingerprints counted by hand. */
class DifficultyTest {
    private static final TemplateLibrary LIBRARY = new TemplateLibrary(List.of(TemplateFiles.builtIn()));

    private static Difficulty of(ProblemTemplate template, Map<String, String> givens) {
        Attempt attempt = new Draws(new Workshop(template), "by hand").work(ChosenGivens.read(template, givens));
        return Difficulty.of(assertInstanceOf(Attempt.Worked.class, attempt).problem());
    }

    /**
     * 10 V; 10 V / 8 mA = 1.25 kΩ; next 1.3 kΩ; (10 V)² / 1.3 kΩ = 76.9… mW. Two lines divide, and in both the prefix
     * changes. Nearest: 1.2 kΩ for 1.3 kΩ, 7.7 %. Points 2 × 4 + 2 × 2 + 2 × 2 + 1 + 4 + 1.
     */
    @Test
    void anIndicator() {
        Difficulty counted = of(TemplateBuilder.indicator().build(), Map.of("Vs", "12 V", "Vf", "2 V", "If", "8 mA"));
        assertEquals(new Difficulty(4, 2, 2, 4, 1, List.of(), Nearness.MIDDLING), counted);
        assertEquals(22, counted.points());
    }

    /** The forward voltage forgotten makes 1.7 V of 46.3 V, 3.7 %; nothing else has changed but digits and results. */
    @Test
    void aMistakeThatHardlyShows() {
        Difficulty counted = of(TemplateBuilder.indicator().build(), Map.of("Vs", "48 V", "Vf", "1.7 V", "If", "8 mA"));
        assertEquals(Nearness.NEAR, counted.nearest());
        assertEquals(2 + 2 + 1, counted.digits());
    }

    /** Row 5 of 15 columns runs back, row 4 does not; whole numbers, no division, no prefix. */
    @Test
    void anAddressInARowThatRunsBack() {
        ProblemTemplate tile = LIBRARY.template("chain-addressing/serpentine-tile");
        Difficulty back = of(tile, Map.of("columns", "15", "rows", "11", "col", "8", "row", "5"));
        assertEquals(List.of(1), back.branches());
        assertEquals(new Difficulty(3, 0, 0, 6, 0, List.of(1), Nearness.NEAR), back);
        assertEquals(2 * 3 + 1 + 6 + 2, back.points());
        Difficulty forth = of(tile, Map.of("columns", "15", "rows", "11", "col", "8", "row", "4"));
        assertEquals(List.of(0), forth.branches());
    }
}
