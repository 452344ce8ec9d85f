package ampersheet.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.answer.Acceptance;
import ampersheet.circuit.PartKind;
import ampersheet.problem.MutationReport.End;
import ampersheet.problem.MutationReport.Fate;
import ampersheet.template.ChosenTemplates;
import ampersheet.template.ProblemTemplate.Way;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateReader;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

class MutationCheckTest {
    /** What {@code prove --mutations} does, or as much as tells a slip that every draw shows. */
    private static final MutationCheck.Thoroughness THOROUGHNESS =
            Boolean.getBoolean("ampersheet.deep") ? MutationCheck.USUAL : new MutationCheck.Thoroughness(6, 1);

    @TestFactory
    Stream<DynamicTest> noMutationOfABuiltInTemplateSurvives() {
        TemplateFiles files = TemplateFiles.builtIn();
        return ChosenTemplates.of(files).stream()
                .map(name -> DynamicTest.dynamicTest(name, () -> {
                    MutationReport report = MutationCheck.run(
                            new Workshop(TemplateReader.read(files, name)), "mutations", THOROUGHNESS);
                    assertEquals(List.of(), report.survivors(), report.print());
                    assertTrue(report.ending(End.CAUGHT).size() > 0, report.print());
                }));
    }

    @Test
    void everyOperatorAndNumberOfTheIndicatorIsChangedInTurn() {
        MutationReport report =
                MutationCheck.run(new Workshop(TemplateBuilder.indicator().build()), "indicator");
        assertEquals(
                List.of(
                        "Vr: the whole line times 1.1",
                        "Vr: - to +",
                        "R: the whole line times 1.1",
                        "R: / to *",
                        "Rn: the whole line times 1.1",
                        "Rn: next_up to next_down",
                        "P: the whole line times 1.1",
                        "P: / to *",
                        "P: 2 to 3.0"),
                report.fates().stream()
                        .map(fate -> fate.step() + ": " + fate.change())
                        .toList());
        assertEquals(
                List.of("R: / to *", "P: / to *", "P: 2 to 3.0"),
                report.ending(End.WRONG_UNITS).stream()
                        .map(fate -> fate.step() + ": " + fate.change())
                        .toList());
        assertEquals(6, report.ending(End.CAUGHT).size(), report.print());
    }

    /** The model is told the very current that it is to prove: whatever the steps say, it agrees. */
    @Test
    void aSecondRouteThatFollowsTheFirstLetsAMutationSurvive() {
        MutationReport report = MutationCheck.run(
                new Workshop(new TemplateBuilder("a/leaning")
                        .given("V", "V", 5, 9, 12)
                        .given("R", "ohm", 100, 220)
                        .step("I", "A", "V / R")
                        .ask("I", new Acceptance.Within(0.02, 0))
                        .part(PartKind.SOURCE, "V1", "volts", "V", 0, 0, 0, 4)
                        .part(PartKind.SINK, "B1", "amps", "I", 0, 4, 0, 0)
                        .ground(0, 0)
                        .proof("I", "I", "current(V1)", new Way.Direct(), 1e-4)
                        .build()),
                "leaning");
        List<String> survivors = report.survivors().stream().map(Fate::change).toList();
        assertEquals(List.of("the whole line times 1.1"), survivors);
        assertTrue(report.survivors().get(0).detail().contains("I becomes"), report.print());
        assertTrue(report.print().contains("SURVIVED  I: the whole line times 1.1; at V="), report.print());
    }

    @Test
    void aLineThatNoAnswerHangsOnHasNoEffect() {
        MutationReport report = MutationCheck.run(
                new Workshop(TemplateBuilder.indicator()
                        .step("unused", "V", "Vs + Vf")
                        .build()),
                "unused");
        assertEquals(
                List.of("unused", "unused"),
                report.ending(End.WITHOUT_EFFECT).stream().map(Fate::step).toList());
        assertFalse(report.print().contains("SURVIVED"), report.print());
    }
}
