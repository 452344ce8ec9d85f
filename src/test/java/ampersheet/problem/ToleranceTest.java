package ampersheet.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.circuit.GridPoint;
import ampersheet.circuit.OperatingPointSolver;
import ampersheet.circuit.Outcome;
import ampersheet.circuit.PartKind;
import ampersheet.circuit.PartValue;
import ampersheet.circuit.PlacedPart;
import ampersheet.circuit.Schematic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.quantity.DecimalMarker;
import ampersheet.sheet.Composer;
import ampersheet.sheet.Document;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Worst cases by corners, against solves that know nothing of corners, and against a published example. */
class ToleranceTest {
    private static final String ONE_RESISTOR = """
      title: A resistor with a tolerance
      skill: testing
      level: 1
      teaches: [Ohm's law, worst case]
      givens:
        V: {meaning: voltage, unit: V, choose: [3, 6]}
        R: {meaning: resistor, unit: kohm, choose: [250, 500], tolerance: 5 %}
      steps:
        - {id: I, meaning: current, is: V / R, unit: uA, principle: Ohm's law, because: it lies across the resistor}
        - {id: Ilo, meaning: smallest current, smallest: I, unit: uA, principle: worst case, because: it may stray}
        - {id: Ihi, meaning: largest current, largest: I, unit: uA, principle: worst case, because: it may stray}
      asks:
        - {step: Ilo, within: 1 %}
        - {step: Ihi, within: 1 %}
      circuit:
        - {source: V1, from: [0, 0], to: [0, 4], volts: V}
        - {resistor: R1, from: [0, 4], to: [4, 4], ohms: R}
        - {wire: , from: [4, 4], to: [4, 0]}
        - {wire: , from: [4, 0], to: [0, 0]}
        - {ground: , at: [0, 0]}
      proof:
        - {of: Ilo, smallest: tolerances, measure: current(R1)}
        - {of: Ihi, largest: tolerances, measure: current(R1)}
      """;

    @TempDir
    private Path folder;

    private ProblemTemplate template(String problem) throws IOException {
        Path own = folder.resolve("voltage-dividers/own");
        Files.createDirectories(own);
        Files.writeString(own.resolve("problem.yaml"), problem);
        Files.writeString(own.resolve("statement.md.ftl"), "A resistor of **${R}** lies on **${V}**.");
        return TemplateReader.read(TemplateFiles.in(folder), "voltage-dividers/own");
    }

    private String faults(String problem) {
        return assertThrows(DiagnosticException.class, () -> template(problem)).getMessage();
    }

    private static Problem worked(ProblemTemplate template, Map<String, String> givens) {
        return assertInstanceOf(
                        Attempt.Worked.class,
                        new Draws(new Workshop(template), "tolerances").work(ChosenGivens.read(template, givens)))
                .problem();
    }

    /** OpenStax, University Physics Volume 2, section 9.4, problem on a 250 kΩ ± 5 % resistor on 3 V (read). */
    @Test
    void thePublishedExtremesOfAFivePercentResistorAreFound() throws IOException {
        Problem problem = worked(template(ONE_RESISTOR), Map.of("V", "3V", "R", "250kohm"));
        assertEquals(237_500, problem.values().quantity("Rmin").value(), 1e-6);
        assertEquals(262_500, problem.values().quantity("Rmax").value(), 1e-6);
        assertEquals(1.143e-5, problem.answers().get(0).value(), 0.0005e-5);
        assertEquals(1.263e-5, problem.answers().get(1).value(), 0.0005e-5);
        assertEquals(1.143e-5, problem.answers().get(0).second(), 0.0005e-5);
        assertEquals(1.263e-5, problem.answers().get(1).second(), 0.0005e-5);
    }

    @Test
    void theWorkingTellsWhichCornerAndWhyAndTheSheetTellsTheTolerance() throws IOException {
        Problem problem = worked(template(ONE_RESISTOR), Map.of("V", "3V", "R", "250kohm"));
        Document.ProblemBlock block = Composer.alone(problem, DecimalMarker.POINT);
        Document.Givens givens = (Document.Givens) block.blocks().get(1);
        assertEquals("250 kΩ ± 5 %", givens.lines().get(1).value().replace('\u00a0', ' '));
        List<Document.StepBlock> steps = block.blocks().stream()
                .filter(Document.Steps.class::isInstance)
                .map(Document.Steps.class::cast)
                .findFirst()
                .orElseThrow()
                .steps();
        assertEquals(
                List.of(
                        "current",
                        "resistor, at its highest",
                        "smallest current",
                        "resistor, at its lowest",
                        "largest current"),
                steps.stream().map(Document.StepBlock::meaning).toList());
        assertEquals(
                "the current falls with it, so that the smallest comes with its highest value",
                steps.get(1).reason());
        assertEquals("R_max", steps.get(1).symbol().plain());
    }

    private static double divider(double volts, double upper, double lower) {
        GridPoint bottom = new GridPoint(0, 0);
        GridPoint top = new GridPoint(0, 8);
        GridPoint middle = new GridPoint(0, 4);
        return ((Outcome.Solved) OperatingPointSolver.solve(new Schematic(List.of(
                                new PlacedPart(
                                        PartKind.SOURCE,
                                        "V1",
                                        Map.of("from", bottom, "to", top),
                                        Map.of(PartValue.VOLTS, volts)),
                                new PlacedPart(
                                        PartKind.RESISTOR,
                                        "RU",
                                        Map.of("from", top, "to", middle),
                                        Map.of(PartValue.OHMS, upper)),
                                new PlacedPart(
                                        PartKind.RESISTOR,
                                        "RL",
                                        Map.of("from", middle, "to", bottom),
                                        Map.of(PartValue.OHMS, lower)),
                                new PlacedPart(PartKind.GROUND, "ground", Map.of("at", bottom), Map.of())))
                        .netlist()))
                .point()
                .across("RL");
    }

    @Test
    void noDividerOnAFineGridOfTolerancesPassesTheCornersAndItsEndsReachThem() {
        Draws draws = new Draws(
                new Workshop(TemplateReader.read(TemplateFiles.builtIn(), "voltage-dividers/divider-tolerance")),
                "grid");
        int cells = 40;
        for (int k = 0; k < 20; k++) {
            Problem problem = draws.draw(k);
            double tolerance = problem.givens().quantity("tol").value();
            double smallest = Double.POSITIVE_INFINITY;
            double largest = 0;
            for (int i = 0; i <= cells; i++) {
                for (int j = 0; j <= cells; j++) {
                    double volts = divider(
                            problem.givens().quantity("Vs").value(),
                            problem.givens().quantity("R1").value() * (1 + tolerance * (2.0 * i / cells - 1)),
                            problem.givens().quantity("R2").value() * (1 + tolerance * (2.0 * j / cells - 1)));
                    smallest = Math.min(smallest, volts);
                    largest = Math.max(largest, volts);
                }
            }
            assertEquals(
                    largest,
                    problem.answers().get(1).value(),
                    1e-9 * largest,
                    problem.givens().toString());
            assertEquals(
                    smallest,
                    problem.answers().get(2).value(),
                    1e-9 * largest,
                    problem.givens().toString());
        }
    }

    /** Power into a load is largest where it matches the source, inside the tolerance: no corner is the worst case. */
    @Test
    void aWorstCaseInsideTheTolerancesIsRefused() throws IOException {
        String matched = ONE_RESISTOR
                .replace(
                        "- {id: I, meaning: current, is: V / R, unit: uA",
                        "- {id: I, meaning: power, is: V ^ 2 * R / (R + 260 kohm) ^ 2, unit: uW")
                .replace("Ilo, meaning: smallest current", "Ilo, meaning: smallest power")
                .replace("unit: uA", "unit: uW")
                .replace("choose: [250, 500]", "choose: [250]")
                .replace("5 %}", "30 %}")
                .replace("current(R1)", "power(R1)")
                .replace("from: [4, 4], to: [4, 0]}", "from: [4, 0], to: [4, -2]}")
                .replace(
                        "- {wire: , from: [4, 0], to: [0, 0]}",
                        "- {resistor: RS, from: [4, 4], to: [4, 0], ohms: 260 kohm}\n"
                                + "  - {wire: , from: [4, -2], to: [0, -2]}\n  - {wire: , from: [0, -2], to: [0, 0]}");
        ProblemTemplate template = template(matched);
        Workshop workshop = new Workshop(template);
        Attempt attempt = new Draws(workshop, "matched").at(0);
        Attempt.Refused refused = assertInstanceOf(Attempt.Refused.class, attempt, attempt.toString());
        assertEquals(Refusal.ROUTES_DISAGREE, refused.reason(), refused.detail());
        assertTrue(refused.detail().contains("no corner is the worst"), refused.detail());
    }

    @Test
    void faultsInTolerancesAreToldAtTheirPlace() {
        assertTrue(
                faults(ONE_RESISTOR.replace("tolerance: 5 %", "tolerance: 5 V")).contains("not in the unit of R"));
        assertTrue(faults(ONE_RESISTOR.replace("tolerance: 5 %", "tolerance: 70 %"))
                .contains("no tolerance to both sides"));
        assertTrue(
                faults(ONE_RESISTOR.replace("tolerance: 5 %", "tolerance: t")).contains("nothing is named t"));
        assertTrue(faults(ONE_RESISTOR.replace(", tolerance: 5 %", ""))
                .contains("does not move with anything that has a tolerance"));
        assertTrue(faults(ONE_RESISTOR.replace("smallest: I,", "smallest: V,")).contains("V"));
        assertTrue(faults(ONE_RESISTOR.replace(
                        "is: V / R, unit: uA", "is: V / R * (1 - (R - 375 kohm) ^ 2 / (1 kohm)^2) / 10000, unit: uA"))
                .contains("depends on the numbers drawn"));
    }
}
