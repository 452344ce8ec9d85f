package ampersheet.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.figure.SymbolStyle;
import ampersheet.quantity.DecimalMarker;
import ampersheet.sheet.Plan.Entry;
import ampersheet.sheet.Plan.Source;
import ampersheet.source.Languages;
import java.util.List;
import org.junit.jupiter.api.Test;

class PlanReaderTest {
    private static Plan plan(String text) {
        return PlanReader.read("plan.yaml", text);
    }

    private static Entry entry(String keys) {
        return plan("title: T\nproblems:\n  - {" + keys + "}\n").entries().get(0);
    }

    private static String refusal(String text) {
        return assertThrows(DiagnosticException.class, () -> plan(text)).getMessage();
    }

    @Test
    void twoLinesAreAPlan() {
        Plan plan = plan("title: Night market\nproblems: [{template: current-limiting/one-indicator}]\n");
        assertEquals("Night market", plan.title());
        assertEquals("Night market", plan.seed(), "the title serves as seed");
        assertEquals(Document.Paper.A4, plan.paper());
        assertEquals(Languages.ENGLISH, plan.language());
        assertEquals(SymbolStyle.IEC, plan.symbols());
        assertEquals(DecimalMarker.POINT, plan.decimal());
        assertFalse(plan.unitsPrinted());
        assertEquals(Plan.Order.AS_LISTED, plan.order());
        assertEquals(List.of(), plan.levels());
        Entry only = plan.entries().get(0);
        assertEquals("current-limiting/one-indicator", ((Source.One) only.source()).template());
        assertEquals(1, only.count());
        assertEquals(new Support.Bare(), only.support());
        assertFalse(only.example());
    }

    @Test
    void aPlanMayAskForTheFirstEvening() {
        assertEquals(
                List.of(0, 1),
                plan("title: T\nlevel: [0, 1]\nproblems: [{skill: colour code}]\n")
                        .levels());
    }

    @Test
    void everyKeyIsRead() {
        Plan plan = plan("""
        title: T
        seed: 012
        paper: letter
        language: en
        symbols: ieee
        decimal: comma
        units: printed
        check-letters: every second
        order: mixed
        level: [1, 3]
        problems:
          - {pool: [a/b, a/c], count: 2, example: yes}
          - {skill: series resistor, support: full}
        """);
        assertEquals("012", plan.seed(), "a seed is text");
        assertEquals(Document.Paper.LETTER, plan.paper());
        assertEquals(SymbolStyle.IEEE, plan.symbols());
        assertEquals(DecimalMarker.COMMA, plan.decimal());
        assertTrue(plan.unitsPrinted());
        assertEquals(Plan.Lettered.EVERY_SECOND, plan.lettered());
        assertEquals(Plan.Order.MIXED, plan.order());
        assertEquals(List.of(1, 3), plan.levels());
        assertEquals(
                List.of("a/b", "a/c"),
                ((Source.Pool) plan.entries().get(0).source())
                        .templates().stream().map(Source.One::template).toList());
        assertEquals(2, plan.entries().get(0).count());
        assertTrue(plan.entries().get(0).example());
        assertEquals("series resistor", ((Source.Skill) plan.entries().get(1).source()).skill());
        assertEquals(new Support.Full(), plan.entries().get(1).support());
    }

    @Test
    void fadingBlanksTheFirstStepUnlessSaidOtherwise() {
        assertEquals(
                new Support.Faded(new Support.Fade.Forward(1)),
                entry("template: a/b, support: faded").support());
        assertEquals(
                new Support.Faded(new Support.Fade.Forward(2)),
                entry("template: a/b, blank: 2").support());
        assertEquals(
                new Support.Faded(new Support.Fade.Backward(3)),
                entry("template: a/b, support: faded, fade: backward, blank: 3").support());
        assertEquals(
                new Support.Faded(new Support.Fade.Principle("Ohm's law")),
                entry("template: a/b, fade: principle Ohm's law").support());
    }

    @Test
    void allFaultsAreToldAtOnce() {
        String told = refusal("paper: a5\nproblems:\n  - {count: 0}\n  - {template: a/b, support: half}\n");
        assertTrue(told.contains("plan.yaml:1:8: error: \"a5\" does not fit paper"), told);
        assertTrue(told.contains("the key \"title\" is missing from a plan"), told);
        assertTrue(told.contains("plan.yaml:3:5: error: this entry does not say where its problem comes from"), told);
        assertTrue(told.contains("plan.yaml:3:13: error: \"0\" does not fit count"), told);
        assertTrue(told.contains("plan.yaml:4:30: error: \"half\" is no level of support"), told);
    }
}
