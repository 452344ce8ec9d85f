package ampersheet.issue;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.answer.AnswerKey;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.render.qti.ExchangeItem;
import ampersheet.render.qti.ExchangePackage;
import ampersheet.render.qti.QtiVersion;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** What a plan puts into an exchange package. */
class ExchangeContentsTest {
    private static final TemplateLibrary LIBRARY = new TemplateLibrary(List.of(TemplateFiles.builtIn()));
    private static final String INDICATOR = "problems: [{template: current-limiting/one-indicator}]\n";

    private static ProblemSet set(String plan) {
        return ProblemSet.of(PlanReader.read("plan.yaml", plan), LIBRARY);
    }

    private static ExchangePackage.Contents contents(String plan, int variants) {
        return Exchange.contents(set(plan), variants).orElseThrow();
    }

    private static TreeSet<String> identifiers(ExchangePackage.Contents contents) {
        TreeSet<String> all = new TreeSet<>(List.of(contents.identifier()));
        contents.pools()
                .forEach(pool ->
                        pool.items().stream().map(ExchangeItem::identifier).forEach(all::add));
        return all;
    }

    private static String test(String plan, QtiVersion version) {
        return ExchangePackage.of(contents(plan, 1), version).files().get("test.xml");
    }

    @Test
    void packagesOfTwoSeedsTwoTitlesOrTwoDecimalMarkersHaveNoIdentifierInCommon() {
        TreeSet<String> seen = new TreeSet<>();
        for (String head : List.of(
                "title: A\nseed: one\n",
                "title: A\nseed: two\n",
                "title: B\nseed: one\n",
                "title: A\nseed: one\ndecimal: comma\n")) {
            TreeSet<String> here = identifiers(contents(head + INDICATOR, 2));
            assertEquals(3, here.size());
            here.forEach(identifier -> assertTrue(seen.add(identifier), identifier + " again with " + head));
        }
        assertEquals(
                identifiers(contents("title: A\nseed: one\n" + INDICATOR, 2)),
                identifiers(contents("title: A\nseed: one\nexchange: {attempts: 5}\n" + INDICATOR, 2)),
                "how often may be tried makes no other items");
    }

    @Test
    void aPlanThatSaysNothingShowsFeedbackAndGivesThreeAttempts() {
        assertTrue(test("title: A\nseed: s\n" + INDICATOR, QtiVersion.V3_0)
                .contains("max-attempts=\"3\" show-feedback=\"true\""));
        String exam = "title: A\nseed: s\nexchange: {attempts: 1, feedback: hidden}\n" + INDICATOR;
        assertTrue(test(exam, QtiVersion.V3_0).contains("max-attempts=\"1\" show-feedback=\"false\""));
        assertTrue(test(exam, QtiVersion.V2_1).contains("maxAttempts=\"1\" showFeedback=\"false\""));
        assertTrue(test("title: A\nseed: s\nexchange: {attempts: unlimited}\n" + INDICATOR, QtiVersion.V2_1)
                .contains("maxAttempts=\"0\" showFeedback=\"true\""));
    }

    @Test
    void attemptsThatAreNoNumberAreToldWithTheirPlace() {
        DiagnosticException fault = assertThrows(
                DiagnosticException.class,
                () -> set("title: A\nexchange: {attempts: 0, feedbak: shown}\n" + INDICATOR));
        String told = fault.diagnostics().toString();
        assertTrue(told.contains("\"0\" does not fit attempts") && told.contains("feedbak"), told);
    }

    @Test
    void theExchangeGroupChangesNoSheetId() {
        assertEquals(
                set("title: A\nseed: s\n" + INDICATOR).id(1),
                set("title: A\nseed: s\nexchange: {attempts: 1, feedback: hidden}\n" + INDICATOR)
                        .id(1));
    }

    @Test
    void examplesAndBlankStepsAreKeptAndWhatIsWorkedInFullIsNamedAsLeftOut() {
        String plan = "title: A\nseed: s\nproblems:\n"
                + "  - {template: current-limiting/one-indicator, example: yes}\n"
                + "  - {template: current-limiting/one-indicator, support: faded}\n"
                + "  - {template: current-limiting/one-indicator}\n"
                + "  - {template: voltage-dividers/loaded-divider, support: full}\n";
        ExchangePackage.Contents contents = contents(plan, 1);
        assertEquals(
                List.of(
                        "series resistor for an indicator, after a worked example",
                        "series resistor for an indicator, steps to fill in",
                        "series resistor for an indicator"),
                contents.pools().stream().map(ExchangePackage.Pool::title).toList());
        ExchangeItem twin = contents.pools().get(0).items().get(0);
        assertTrue(twin.shown().example().isPresent());
        assertFalse(twin.shown()
                .example()
                .get()
                .blocks()
                .equals(twin.shown().block().blocks()));
        String said = twin.shown().example().get().blocks().toString();
        assertTrue(said.contains("- **a** What resistance") && !said.contains("q0"), said);
        assertEquals(1, contents.pools().get(1).items().get(0).asked().places().size());
        assertEquals(3, contents.pools().get(2).items().get(0).asked().places().size());
    }

    @Test
    void anItemOfOneNameIsTheSameHoweverManyVariantsArePacked() {
        String plan = "title: A\nseed: s\nproblems:\n"
                + "  - {template: current-limiting/one-indicator, example: yes}\n"
                + "  - {template: current-limiting/one-indicator}\n";
        Map<String, List<AnswerKey>> few = keys(contents(plan, 1));
        Map<String, List<AnswerKey>> more = keys(contents(plan, 3));
        assertEquals(2, few.size());
        assertEquals(6, more.size());
        few.forEach((identifier, keys) -> assertEquals(keys, more.get(identifier), identifier));
        assertEquals(6, new HashSet<>(more.values()).size(), "each has numbers of its own");
    }

    private static Map<String, List<AnswerKey>> keys(ExchangePackage.Contents contents) {
        Map<String, List<AnswerKey>> keys = new TreeMap<>();
        contents.pools()
                .forEach(pool -> pool.items()
                        .forEach(
                                item -> keys.put(item.identifier(), item.asked().places())));
        return keys;
    }

    @Test
    void theSameTemplateWithOtherGivensFixedIsPackedToo() {
        String plan = "title: A\nseed: s\nproblems:\n"
                + "  - {template: current-limiting/one-indicator, given: {Vs: 12 V}}\n"
                + "  - {template: current-limiting/one-indicator, given: {Vs: 5 V}}\n";
        ExchangePackage.Contents contents = contents(plan, 2);
        assertEquals(1, contents.pools().size());
        assertEquals(4, contents.pools().get(0).items().size());
        assertEquals(2, contents.pools().get(0).select());
        assertEquals(5, identifiers(contents).size());
    }

    @Test
    void withADecimalCommaThePromptSaysThatAPointMustBeTyped() {
        ExchangePackage.Contents comma = contents("title: A\nseed: s\ndecimal: comma\n" + INDICATOR, 1);
        for (QtiVersion version : QtiVersion.values()) {
            String item = ExchangePackage.of(comma, version).files().entrySet().stream()
                    .filter(file -> file.getKey().startsWith("items/"))
                    .findFirst()
                    .orElseThrow()
                    .getValue();
            assertTrue(item.contains("(4.7, not 4,7)"), item);
        }
    }
}
