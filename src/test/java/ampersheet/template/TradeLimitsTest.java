package ampersheet.template;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.model.CircuitPlan;
import ampersheet.model.HeatPlan;
import ampersheet.source.Languages;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** The file of trade limits, and what templates name of it. */
class TradeLimitsTest {
    private static final TemplateFiles FILES = TemplateFiles.builtIn();
    private final Map<String, TradeLimit> limits =
            TradeLimits.read(FILES.shownLimits(), FILES.limits().orElseThrow());

    @Test
    void everyLimitSaysWhereItIsFrom() {
        List<String> without = limits.values().stream()
                .filter(limit -> !limit.source().contains("common practice, no source")
                        && !limit.source().contains("from memory"))
                .map(limit -> limit.id() + ": " + limit.source())
                .toList();
        assertEquals(List.of(), without, "neither read, nor marked as what it is");
        assertTrue(limits.size() >= 30);
    }

    @Test
    void theEndsOfALimitBelongToIt() {
        TradeLimit junction = limits.get("junction-temperature");
        assertTrue(junction.allows(273.15 + 150));
        assertFalse(junction.allows(273.15 + 150.1));
        assertEquals("from −40\u00A0°C to 150\u00A0°C", junction.told(Languages.ENGLISH));
        TradeLimit supply = limits.get("supply-voltage");
        assertTrue(supply.allows(12));
        assertFalse(supply.allows(12.3));
    }

    @Test
    void everyNamedLimitIsUsedByATemplateOrByAPart() {
        Set<String> used = new TreeSet<>();
        for (String name : FILES.names()) {
            ProblemTemplate template = TemplateReader.read(FILES, name);
            template.premises()
                    .limits()
                    .forEach(limited -> used.add(limited.limit().id()));
            template.premises().partLimits().forEach(limit -> used.add(limit.id()));
        }
        Set<String> unused = new TreeSet<>(limits.keySet());
        unused.removeAll(used);
        assertTrue(unused.size() <= 6, () -> "limits that nothing keeps: " + unused);
    }

    @Test
    void everyTemplateSaysWhatItTakesForGranted() {
        List<String> silent = new ArrayList<>();
        for (String name : FILES.names()) {
            if (TemplateReader.read(FILES, name).premises().assumptions().isEmpty()) {
                silent.add(name);
            }
        }
        assertEquals(List.of(), silent);
    }

    @Test
    void aTemplateWithACircuitOrAHeatPathNamesItsLimits() {
        List<String> without = new ArrayList<>();
        for (String name : FILES.names()) {
            ProblemTemplate template = TemplateReader.read(FILES, name);
            boolean physical = template.model(CircuitPlan.class).isPresent()
                    || template.model(HeatPlan.class).isPresent();
            if (physical
                    && template.premises().limits().isEmpty()
                    && template.premises().partLimits().isEmpty()) {
                without.add(name);
            }
        }
        assertEquals(List.of(), without);
    }

    @Test
    void faultsOfTheFileAreToldAtOnceWithTheirPlaces() {
        String told = assertThrows(DiagnosticException.class, () -> TradeLimits.read("limits.yaml", """
        limits:
          - {id: a, meaning: a current, unit: mA, source: none}
          - {id: b, meaning: a voltage, unit: furlong, most: 3, source: none}
          - {id: c, meaning: a power, unit: W, most: 3 V, parts: {sofa: power}, source: none}
          - {id: c, meaning: a power, unit: W, most: 3, source: none}
        """))
                .getMessage();
        for (String wanted :
                List.of("limits nothing", "furlong", "3 V", "no part with such a measure", "limits.yaml:2:")) {
            assertTrue(told.contains(wanted) || told.contains("volts") && wanted.equals("3 V"), wanted + " in " + told);
        }
    }
}
