package ampersheet.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.quantity.DecimalMarker;
import ampersheet.quantity.QuantityReader;
import ampersheet.quantity.Reading;
import ampersheet.quantity.Unit;
import ampersheet.render.Markup;
import ampersheet.sheet.LookUpTables;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.SheetMaker;
import ampersheet.source.Languages;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

class LookUpDialogTest {
    private static final TemplateLibrary LIBRARY = new TemplateLibrary(List.of(TemplateFiles.builtIn()));

    @Test
    void whatTheTableOfTypingPromisesIsReadSo() {
        for (String[] form : LookUpDialog.FORMS) {
            Reading.Value typed = value(form[0], form[1]);
            Reading.Value printed = value(form[1], form[1]);
            assertEquals(printed.si(Unit.ONE), typed.si(Unit.ONE), form[0]);
        }
    }

    private static Reading.Value value(String text, String printed) {
        String unit = printed.endsWith("Ω") ? "ohm" : printed.substring(printed.lastIndexOf(' ') + 1);
        Unit asked = Unit.parse(unit);
        return assertInstance(QuantityReader.read(text, asked), text);
    }

    private static Reading.Value assertInstance(Reading reading, String text) {
        assertTrue(reading instanceof Reading.Value, text + ": " + reading);
        return (Reading.Value) reading;
    }

    @Test
    void wordsAreFoundInAnyNumberAndNotInsideOthers() {
        WordList words = new WordList(new TreeMap<>(Map.of("tap", "t", "LED", "l", "forward voltage", "f")), "(s|es)?");
        assertEquals(
                Set.of("tap", "forward voltage"),
                words.in("Forward voltages at the tap, tapped and led")
                        .meanings()
                        .keySet());
        assertEquals(Set.of(), words.in("a multi-tap untapped").meanings().keySet());
    }

    @Test
    void everyRuleThatSeveralTemplatesUseAndThatIsNoCountingIsOnTheFormulaSheet() {
        Map<String, Integer> templates = new TreeMap<>();
        for (String name : LIBRARY.names()) {
            ProblemTemplate template = LIBRARY.template(name);
            if (!template.family().startsWith("chain")) {
                template.lines().stream()
                        .map(line -> line.principle())
                        .distinct()
                        .forEach(rule -> templates.merge(rule, 1, Integer::sum));
            }
        }
        templates.values().removeIf(count -> count < 2);
        templates.remove("counting");
        assertEquals(
                List.of(),
                templates.keySet().stream()
                        .filter(rule ->
                                !WordList.rules(Languages.ENGLISH).meanings().containsKey(rule))
                        .toList());
    }

    @Test
    void homeworkTellsRulesOnlyWhereTheSheetShowsSome() {
        assertTrue(homework("support: faded, fade: backward, blank: 1").contains(">Rules in general</h3>"));
        assertFalse(homework("support: bare").contains(">Rules in general</h3>"));
        assertTrue(homework("support: bare").contains(">E12<"));
    }

    private static String homework(String support) {
        return HomeworkPage.render(
                new SheetMaker(ProblemSet.of(
                                PlanReader.read(
                                        "plan.yaml",
                                        "title: T\nseed: look-up\nproblems:\n"
                                                + "  - {template: voltage-dividers/loaded-divider, " + support + "}\n"),
                                LIBRARY))
                        .sheet(1),
                "");
    }

    @Test
    void aCommaStandsWhereThePlanHasCommas() {
        Markup page = new Markup();
        new LookUpDialog(
                        List.of(),
                        LookUpTables.atHand(List.of(), DecimalMarker.COMMA, Languages.ENGLISH),
                        WordList.rules(Languages.ENGLISH),
                        WordList.words(Languages.ENGLISH),
                        Languages.ENGLISH,
                        DecimalMarker.COMMA)
                .write(page);
        assertTrue(
                page.toString().contains("<td>4,7 kΩ</td>") && page.toString().contains("<td>4,7</td>"));
    }
}
