package ampersheet.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.problem.RealityCheck.Shift;
import ampersheet.quantity.Quantity;
import ampersheet.template.AlteredTemplate;
import ampersheet.template.ChosenTemplates;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateReader;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** An idealisation dropped, against the same circuit worked by hand. */
class RealityCheckTest {
    private static final String DIVIDER = "voltage-dividers/loaded-divider";

    /** 12 V over R1 = 1 kΩ and R2 = 2 kΩ, loaded by 6 kΩ: by hand 8 V without, and 7.2 V with the load. */
    private static Problem divider(String real) {
        ProblemTemplate template = with(real).template().orElseThrow();
        Map<String, Quantity> chosen = new LinkedHashMap<>();
        Map<String, Double> numbers = Map.of("Vs", 12.0, "R1", 1_000.0, "R2", 2_000.0, "RL", 6_000.0);
        template.givens()
                .forEach(given -> chosen.put(
                        given.name(),
                        new Quantity(
                                numbers.get(given.name()),
                                template.scope().quantities().get(given.name()))));
        return ((Attempt.Worked) new Draws(new Workshop(template), "reality").work(new ChosenGivens(chosen, Map.of())))
                .problem();
    }

    private static TemplateReader.Checked with(String real) {
        String text = AlteredTemplate.sound(DIVIDER, "problem.yaml");
        int at = text.indexOf("  - {that:");
        return AlteredTemplate.of(
                        DIVIDER,
                        "problem.yaml",
                        text.substring(0, at) + "  - {that: all is as drawn, really: It is not., real: " + real + "}\n"
                                + text.substring(at))
                .check();
    }

    private static Shift shift(String real, String of) {
        Problem problem = divider(real);
        return RealityCheck.shifts(
                        problem,
                        problem.template()
                                .premises()
                                .assumptions()
                                .get(0)
                                .real()
                                .orElseThrow())
                .stream()
                .filter(one -> one.of().equals(of))
                .findFirst()
                .orElseThrow();
    }

    private static String loaded() {
        Problem problem = divider("{named: x, values: {Vs: Vs}}");
        return problem.answers().stream()
                .filter(answer -> Math.abs(answer.value() - 7.2) < 1e-9)
                .findFirst()
                .orElseThrow()
                .of();
    }

    @Test
    void aResistanceInTheWayOfTheSourceTakesItsShare() {
        // 12 V × 1.5 kΩ / (1.5 kΩ + 1 kΩ + 100 Ω)
        Shift shift = shift("{named: a source of 100 Ω, series: {V1: 100 ohm}}", loaded());
        assertEquals(7.2, shift.key(), 1e-9);
        assertEquals(12 * 1_500.0 / 2_600, shift.low(), 1e-9);
        assertEquals(shift.low(), shift.high());
    }

    @Test
    void aResistanceBesideAPartLiesAcrossIt() {
        // beside R2: 2 kΩ and 6 kΩ and 3 kΩ in parallel are 1 kΩ
        assertEquals(
                6,
                shift("{named: a meter of 3 kΩ, beside: {R2: 3 kohm}}", loaded())
                        .low(),
                1e-9);
    }

    @Test
    void aCurrentDrawnBesideAPartLowersTheVoltage() {
        // 7.2 V less 1 mA through R1 and 1.5 kΩ in parallel, 600 Ω; from R2's first end to its second, however it is
        // drawn
        double shifted =
                shift("{named: a leak of 1 mA, draws: {R2: 1 mA}}", loaded()).low();
        assertEquals(0.6, Math.abs(shifted - 7.2), 1e-9);
    }

    @Test
    void otherValuesAndTolerancesAreSolvedAtTheirCorners() {
        assertEquals(
                6.84,
                shift("{named: a supply 5 % low, values: {Vs: Vs * 0.95}}", loaded())
                        .low(),
                1e-9);
        Shift corners = shift("{named: parts of 10 %, within: {R1: 10 %, R2: 10 %}}", loaded());
        // parallel(1.8 kΩ, 6 kΩ) over 1.1 kΩ, and parallel(2.2 kΩ, 6 kΩ) over 0.9 kΩ
        assertEquals(12 * 1_384.6153846153846 / 2_484.6153846153846, corners.low(), 1e-9);
        assertEquals(12 * 1_609.7560975609756 / 2_509.7560975609756, corners.high(), 1e-9);
    }

    /** What a learner's meter may show instead is worked out, or the file says why it cannot be. */
    @Test
    void everyTemplateHasAnIdealisationInNumbersOrSaysWhyNone() {
        TemplateFiles files = TemplateFiles.builtIn();
        List<String> silent = ChosenTemplates.of(files).stream()
                .filter(name -> TemplateReader.read(files, name).premises().assumptions().stream()
                        .allMatch(one -> one.real().isEmpty()))
                .filter(name ->
                        !files.text(name, TemplateFiles.PROBLEM).orElseThrow().contains("# No number: "))
                .toList();
        assertEquals(List.of(), silent);
    }

    @Test
    void anAuthorsSlipInWhatIsRealIsTold() {
        for (String[] slip : List.of(
                new String[] {"{named: x, series: {V9: 1 ohm}}", "V9 is not a part of the circuit"},
                new String[] {"{named: x, draws: {R2: 1 V}}", "draws of R2 takes amperes"},
                new String[] {
                    "{named: x, values: {Q: 1 V}}", "Q is not a given, a constant or a step that a model takes"
                },
                new String[] {"{named: x}", "nothing is other than in the models"},
                new String[] {"{named: x, warms: {R2: 1 W}}", "R2 is not a node of the heat network"},
                new String[] {"{series: {V1: 1 ohm}}", "the key \"named\" is missing"})) {
            String told =
                    with(slip[0]).diagnostics().stream().map(Diagnostic::print).collect(Collectors.joining());
            assertTrue(told.contains(slip[1]), () -> slip[0] + ": " + told);
        }
    }
}
