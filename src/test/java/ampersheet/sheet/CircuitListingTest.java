package ampersheet.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.circuit.CircuitSimulator;
import ampersheet.sheet.Document.Listing;
import ampersheet.sheet.Document.ProblemBlock;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The netlist in a key is a circuit that a simulator runs as it stands, and stands in the key alone. */
class CircuitListingTest {
    private static final Sheet SHEET = SmallLibrary.maker(
                    "title: T\nseed: listing\nproblems:\n  - {template: " + SmallLibrary.DIVIDER + "}\n")
            .sheet(1);

    private static List<Listing> listings(Document document) {
        return document.blocks().stream()
                .filter(ProblemBlock.class::isInstance)
                .flatMap(problem -> ((ProblemBlock) problem).blocks().stream())
                .filter(Listing.class::isInstance)
                .map(Listing.class::cast)
                .toList();
    }

    @Test
    void theKeyHoldsTheCircuitAndTheSheetDoesNot() {
        assertEquals(1, listings(Composer.key(SHEET, "")).size());
        assertTrue(listings(Composer.sheet(SHEET, "")).isEmpty());
    }

    @Test
    void aSimulatorRunsItAsItStandsAndFindsTheKey() throws Exception {
        CircuitSimulator.need();
        String netlist = listings(Composer.key(SHEET, "")).get(0).text();
        assertFalse(netlist.contains("{"), netlist);
        Map<String, Double> found = CircuitSimulator.run(netlist, "op", List.of("v(1)", "v(2)"));
        double key = SHEET.problems().get(0).answers().get(0).expected();
        assertTrue(
                found.values().stream().anyMatch(volts -> Math.abs(volts - key) <= 1e-4 * Math.abs(key)),
                found + " and " + key);
    }
}
