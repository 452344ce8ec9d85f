package ampersheet.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.answer.Acceptance;
import ampersheet.circuit.PartKind;
import ampersheet.template.ProblemTemplate.Way;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class ProvingTest {

    @Test
    void theIndicatorIsProvenWithRoomBetweenItsMistakes() {
        ProofReport report =
                Proving.prove(new Workshop(TemplateBuilder.indicator().build()), "test", 200);
        assertTrue(report.passed(), report.print());
        assertEquals(200, report.tally().accepted());
        assertEquals(
                List.of("R", "Rn", "P"),
                report.values().stream().map(ProofReport.ProvenValue::step).toList());
        report.values().forEach(value -> assertTrue(value.worstGap() <= value.allowed(), value.toString()));
        report.mistakes()
                .forEach(mistake -> assertTrue(mistake.made() > 0 && mistake.closest() > 1, mistake.toString()));
        assertEquals(Variants.Basis.COUNTED, report.variants().basis());
        assertEquals(List.of(), report.warnings());
    }

    @Test
    void aWrongTemplateFailsWithTheGivensThatShowIt() {
        ProofReport report = Proving.prove(
                new Workshop(new TemplateBuilder("a/wrong")
                        .given("V", "V", 5, 9, 12)
                        .given("R", "ohm", 100, 220)
                        .step("P", "W", "V * R / (1 ohm) * 1 A")
                        .ask("P", new Acceptance.Within(0.02, 0))
                        .part(PartKind.SOURCE, "V1", "volts", "V", 0, 0, 0, 4)
                        .part(PartKind.RESISTOR, "R1", "ohms", "R", 0, 4, 0, 0)
                        .ground(0, 0)
                        .proof("P", "P", "power(R1)", new Way.Direct(), 1e-4)
                        .build()),
                "test",
                100);
        assertFalse(report.passed());
        assertEquals(6, report.tally().refused(Refusal.ROUTES_DISAGREE));
        assertTrue(report.exhausted());
        assertEquals(6, report.disagreements().size());
        assertTrue(report.disagreements().get(0).givens().startsWith("V="), report.print());
        assertTrue(report.print().contains("NOT PROVEN"), report.print());
    }

    /** The model is told the very current that it is to prove. */
    @Test
    void aSecondRouteThatFollowsTheFirstIsFoundOut() {
        ProofReport report = Proving.prove(
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
                "test",
                100);
        assertEquals(List.of("I"), report.leaning());
        assertFalse(report.passed(), report.print());
    }

    @Test
    void everyStatementAndEveryPromptIsFilled() {
        for (TemplateBuilder builder : List.of(
                TemplateBuilder.indicator().statement("de", "Eine Quelle von ${U}."),
                TemplateBuilder.indicator().choiceAsking("c", "Is ${U} enough?"),
                TemplateBuilder.indicator().statement("en", "<#list 1..2000000000 as i>${i}</#list>"))) {
            ProofReport report = Proving.prove(new Workshop(builder.build()), "test", 20);
            assertFalse(report.passed(), report.print());
            assertTrue(report.print().contains("NOT FILLED  Vs="), report.print());
        }
        assertTrue(Proving.prove(
                        new Workshop(TemplateBuilder.indicator()
                                .choiceAsking("c", "Is ${Vs} enough for ${symbol.Vf}?")
                                .build()),
                        "test",
                        20)
                .passed());
    }

    @Test
    void whatIsWrongWithEveryDrawIsToldAfterAHundred() {
        ProofReport report = Proving.prove(
                new Workshop(new TemplateBuilder("a/wrong")
                        .given("V", "V", 5, 9, 12)
                        .given(
                                "R",
                                "ohm",
                                IntStream.rangeClosed(100, 999).asDoubleStream().toArray())
                        .step("P", "W", "13 * V * R / (1 ohm) * 1 A")
                        .ask("P", new Acceptance.Within(0.02, 0))
                        .part(PartKind.SOURCE, "V1", "volts", "V", 0, 0, 0, 4)
                        .part(PartKind.RESISTOR, "R1", "ohms", "R", 0, 4, 0, 0)
                        .ground(0, 0)
                        .proof("P", "P", "power(R1)", new Way.Direct(), 1e-4)
                        .build()),
                "test",
                1000);
        assertFalse(report.passed());
        assertEquals(100, report.tally().refused(Refusal.ROUTES_DISAGREE));
    }

    @Test
    void aMistakeThatNeverHappensIsWarnedOf() {
        ProofReport report = Proving.prove(
                new Workshop(TemplateBuilder.indicator()
                        .mistakeInstead("never", "P", "Vr", "Vs", "Vs > 100 V")
                        .build()),
                "test",
                20);
        assertTrue(report.passed());
        assertTrue(
                report.warnings().get(0).contains("mistake never was never made"),
                report.warnings().toString());
    }

    @Test
    void theReportIsTheSameTwice() {
        Workshop workshop = new Workshop(TemplateBuilder.indicator().build());
        assertEquals(
                Proving.prove(workshop, "again", 150).print(),
                Proving.prove(workshop, "again", 150).print());
    }

    @Test
    void variantsAreCountedWhereThereAreFewAndEstimatedWhereThereAreMany() {
        Workshop workshop = new Workshop(TemplateBuilder.indicator().build());
        Variants counted = Variants.count(workshop, 10_000);
        assertEquals(2052, counted.combinations());
        ProofReport all = Proving.prove(workshop, "all", 10_000);
        assertEquals(Variants.Basis.PROVEN, all.variants().basis());
        assertEquals(all.variants().count(), counted.count());
        Variants estimated = Variants.count(workshop, 2_000);
        assertEquals(Variants.Basis.ESTIMATED, estimated.basis());
        assertEquals(counted.count(), estimated.count(), 50);
    }
}
