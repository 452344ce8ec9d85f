package ampersheet.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.circuit.PartKind;
import ampersheet.model.CircuitPlan;
import ampersheet.template.ChosenTemplates;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateReader;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Some draws of every template in the jar; the command {@code prove} does thousands. */
class BuiltInTemplatesTest {
    private static final boolean DEEP = Boolean.getBoolean("ampersheet.deep");
    private static final int FEW = 10;
    private static final int DRAWS = DEEP ? 200 : 60;
    /** How many variants there are is what {@code EveryTemplateTest} asks. */
    private static final long COUNTED = DEEP ? 100_000 : 300;

    /** Below, the ranges of the givens are wrong and not a few draws. */
    private static final double LEAST_INSIDE_LIMITS = 0.8;

    private static final Pattern NO_RESISTOR = Pattern.compile("\\b(wire|cable|contact|track|trace|fuse|plug)\\b");

    @TestFactory
    List<DynamicTest> everyTemplateIsProven() {
        TemplateFiles files = TemplateFiles.builtIn();
        return ChosenTemplates.of(files).stream()
                .map(name -> DynamicTest.dynamicTest(name, () -> {
                    Workshop workshop = new Workshop(TemplateReader.read(files, name));
                    ProofReport few = Proving.prove(workshop, "some", FEW, COUNTED);
                    // Of few draws a share says little: where it looks bad, more are asked.
                    ProofReport report = !DEEP && few.passed() && sharesAreGood(few)
                            ? few
                            : Proving.prove(workshop, "some", DRAWS, COUNTED);
                    assertTrue(report.passed(), report.print());
                    assertTrue(sharesAreGood(report), report.print());
                    assertTrue(report.tally().accepted() >= FEW || report.exhausted(), report.print());
                    report.mistakes().forEach(mistake -> assertTrue(mistake.closest() > 1, report.print()));
                    assertTrue(
                            report.withoutMistakes().stream().allMatch(step -> step.contains(": ")),
                            () -> "steps without a mistake need a reason: " + report.print());
                }))
                .toList();
    }

    private static boolean sharesAreGood(ProofReport report) {
        return report.tally().refusalRate() < 0.3 && report.shareInsideLimits() >= LEAST_INSIDE_LIMITS;
    }

    /** A wire, a contact or a fuse is no resistor: the advice on ratings would be wrong for it. */
    @Test
    void onlyResistorsAreDrawnAsResistors() {
        TemplateFiles files = TemplateFiles.builtIn();
        List<String> misnamed = new ArrayList<>();
        for (String name : ChosenTemplates.of(files)) {
            TemplateReader.read(files, name)
                    .model(CircuitPlan.class)
                    .ifPresent(plan -> plan.parts().stream()
                            .filter(part -> part.kind() == PartKind.RESISTOR
                                    && part.caption()
                                            .filter(caption ->
                                                    NO_RESISTOR.matcher(caption).find())
                                            .isPresent())
                            .forEach(part -> misnamed.add(name + ": " + part.name() + ", "
                                    + part.caption().get())));
        }
        assertEquals(List.of(), misnamed);
    }
}
