package ampersheet.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.figure.HeatFigure;
import ampersheet.model.ChainPlan;
import ampersheet.model.CircuitPlan;
import ampersheet.model.HeatPlan;
import ampersheet.problem.Draws;
import ampersheet.problem.Workshop;
import ampersheet.quantity.DecimalMarker;
import ampersheet.template.ChosenTemplates;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateReader;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

class StepPartsTest {
    private static ProblemTemplate template(String name) {
        return TemplateReader.read(TemplateFiles.builtIn(), name);
    }

    @Test
    void aStepIsAboutThePartsWhoseValuesItUsesAndThoseWhereItsResultIsReadOff() {
        Map<String, List<String>> parts = StepParts.of(template("current-limiting/one-indicator"));
        assertEquals(
                Map.of(
                        "Vr",
                        List.of("V1", "D1"),
                        "R",
                        List.of("R1", "D1"),
                        "Rn",
                        List.of("R1", "D1"),
                        "P",
                        List.of("R1")),
                parts);
    }

    @Test
    void inAHeatPathNodesResistancesAndCapacitiesAreMeant() {
        Map<String, List<String>> parts = StepParts.of(template("thermal-rise/warm-up-time"));
        assertEquals(List.of("heat", "plate", "theta", "air"), parts.get("Tend"));
        assertEquals(List.of("plate", HeatFigure.capacityOf("plate"), "theta"), parts.get("tau"));
    }

    @TestFactory
    Stream<DynamicTest> everyPartMeantIsDrawnAndEveryStepThatAModelShowsMeansOne() {
        TemplateFiles files = TemplateFiles.builtIn();
        return ChosenTemplates.of(files).stream()
                .map(name -> DynamicTest.dynamicTest(name, () -> {
                    ProblemTemplate template = TemplateReader.read(files, name);
                    SheetProblem problem = SheetProblem.alone(
                            new Draws(new Workshop(template), "step-parts").draw(0), DecimalMarker.POINT);
                    String drawn = ModelFigures.of(problem).stream()
                            .map(figure -> figure.svg())
                            .collect(Collectors.joining());
                    StepParts.of(template).forEach((step, parts) -> {
                        for (String part : parts) {
                            assertTrue(
                                    drawn.contains("<g data-part=\"" + part + "\">"),
                                    step + " is about " + part + ", which is not drawn");
                        }
                        if (template.model(CircuitPlan.class).isPresent()
                                || template.model(HeatPlan.class).isPresent()) {
                            boolean shown = template.proofs().stream()
                                    .anyMatch(proof -> proof.of().equals(step));
                            assertTrue(
                                    !parts.isEmpty()
                                            || !shown
                                            || template.model(ChainPlan.class).isPresent(),
                                    step + " is about no part");
                        }
                    });
                }));
    }
}
