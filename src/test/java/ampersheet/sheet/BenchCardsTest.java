package ampersheet.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.circuit.Schematic;
import ampersheet.formula.Values;
import ampersheet.problem.Draws;
import ampersheet.problem.Workshop;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class BenchCardsTest {
    private static final TemplateLibrary LIBRARY = new TemplateLibrary(List.of(TemplateFiles.builtIn()));
    private static final boolean DEEP = Boolean.getBoolean("ampersheet.deep");
    private static final int CARDS = DEEP ? 50 : 1;
    /** In the usual build every third template is looked at. */
    private static final int STRIDE = DEEP ? 1 : 3;

    private static final Map<String, Schematic> SCHEMATICS = new LinkedHashMap<>();
    private static final Map<String, CardJudge.Card> CARDS_SEEN = new LinkedHashMap<>();
    private static final List<Double> WIDTHS = List.of(359.0);

    private static Roster seats(int count) {
        return new Roster(IntStream.rangeClosed(1, count)
                .mapToObj(seat -> new Roster.Seat(seat, ""))
                .toList());
    }

    private static ProblemSet set(String plan) {
        return ProblemSet.of(PlanReader.read("plan.yaml", "title: T\nseed: cards\nproblems:\n" + plan), LIBRARY);
    }

    private static ProblemSet of(String template) {
        return set("  - {template: " + template + "}\n");
    }

    private static List<Document.ProblemBlock> cards(BenchCards cards, Roster roster) {
        List<Document.ProblemBlock> all = new ArrayList<>();
        for (Roster.Seat seat : roster.seats()) {
            cards.of(seat, WIDTHS).get(0).blocks().forEach(block -> all.add((Document.ProblemBlock) block));
        }
        return all;
    }

    private static Schematic schematic(ProblemTemplate template) {
        return SCHEMATICS.computeIfAbsent(
                template.name(),
                name -> new Draws(new Workshop(template), "any")
                        .draw(0)
                        .schematic()
                        .orElseThrow());
    }

    @Test
    void everyReadingOfEveryCardIsASolveOfTheCircuitAsPrinted() {
        List<String> objections = new ArrayList<>();
        Set<String> made = new LinkedHashSet<>();
        Roster roster = seats(CARDS);
        List<String> names = LIBRARY.names();
        for (int i = 0; i < names.size(); i += STRIDE) {
            String name = names.get(i);
            ProblemTemplate template = LIBRARY.template(name);
            if (template.model(ampersheet.model.CircuitPlan.class).isEmpty()) {
                continue;
            }
            BenchCards cards = new BenchCards(of(name), roster);
            List<Document.ProblemBlock> all = cards(cards, roster);
            for (Document.ProblemBlock card : all) {
                made.add(name);
                CardJudge.objections(template, schematic(template), CardJudge.Card.of(card))
                        .forEach(objection -> objections.add(name + ": " + objection));
            }
            if (all.size() < CARDS) {
                assertEquals(1, cards.leftOut().size(), name + " has " + all.size() + " cards, and nobody says why");
            }
        }
        assertEquals(List.of(), objections);
        assertTrue(made.size() >= 28 / STRIDE, made.size() + " templates have cards: " + made);
    }

    private static CardJudge.Card card(String template) {
        return CARDS_SEEN.computeIfAbsent(template, name -> {
            Roster one = seats(1);
            return CardJudge.Card.of(cards(new BenchCards(of(name), one), one).get(0));
        });
    }

    private static List<String> judged(String template, CardJudge.Card card) {
        return CardJudge.objections(LIBRARY.template(template), schematic(LIBRARY.template(template)), card);
    }

    /** Puts the fault into the one place of the card that the pattern finds, and asks for the objection. */
    private static void found(String template, String pattern, String fault, String objection) {
        CardJudge.Card right = card(template);
        assertEquals(List.of(), judged(template, right));
        List<List<String>> rows = right.readings().stream()
                .map(row -> row.stream()
                        .map(cell -> cell.replaceFirst(pattern, fault))
                        .toList())
                .toList();
        CardJudge.Card wrong = new CardJudge.Card(
                right.parts().replaceFirst(pattern, fault), right.steps().replaceFirst(pattern, fault), rows);
        assertFalse(wrong.equals(right), "the fault was not put in: " + pattern + " in " + right);
        List<String> told = judged(template, wrong);
        assertTrue(told.stream().anyMatch(one -> one.contains(objection)), objection + " is not told of: " + told);
    }

    @Test
    void eachFaultOfEarlierCardsIsFoundWhenItIsPutBack() {
        String indicator = "current-limiting/one-indicator";
        String driver = "thermal-rise/regulator-junction";
        found(indicator, "\\d+\\.\\d+\u00a0V \\(.*\\)", "105\u00a0°C (95\u00a0to\u00a0115\u00a0°C)", "no meter shows");
        found(indicator, "\\d+\\.\\d+(\u00a0V \\()", "1.31516$1", "meter");
        found(indicator, "resistor \\d+\u00a0Ω", "resistor 506\u00a0Ω", "no such resistor");
        found(indicator, "1\\.9\u00a0V ±|2\\.2\u00a0V ±|3\u00a0V ±", "17.6\u00a0V ±", "no LED has");
        found("voltage-dividers/loaded-divider", "(RL\\*\\*: resistor )\\S+", "$10\u00a0Ω", "no such resistor");
        found(driver, "constant current \\S+", "constant current 1.9003\u00a0A", "is not set to");
        found(indicator, "current limit \\d+\u00a0mA", "current limit 0\u00a0A", "current limit of");
        found(driver, "current limit (\\S+); then", "current limit 1\u00a0mA; then", "current limit of");
        found(indicator, "(\\d+\\.\\d+)\u00a0V \\(.*?\\)", "$1\u00a0V ($1\u00a0to\u00a0$1\u00a0V)", "narrower");
        found(indicator, "red at its A", "red at its K", "shows");
        found(indicator, "red at its A, black at its K", "its forward voltage", "where the probes go");
        found("current-limiting/gate-clamp", "load X1", "X1", "no part is drawn by the name");
        found("current-limiting/motor-start", "2\u00a0W|5\u00a0W", "0.25\u00a0W", "too hot");
    }

    @Test
    void whatAHostHasToKnowBesideTheBenchStandsOnTheCard() {
        Roster one = seats(1);
        BenchCards driver = new BenchCards(of("current-limiting/driver-test-point"), one);
        assertEquals(List.of(), cards(driver, one));
        assertTrue(
                driver.leftOut().get(0).because().contains("contacts in a breadboard"),
                driver.leftOut().toString());
        String regulator = card("thermal-rise/regulator-junction").steps();
        assertTrue(regulator.contains("Pin order of U1: see its data sheet."), regulator);
        assertTrue(regulator.contains("Compare every + and −."), regulator);
        assertTrue(card("thermal-rise/regulator-junction").parts().contains("capacitors its data sheet asks for"));
        String indicator = card("current-limiting/one-indicator").steps();
        assertTrue(indicator.contains("Compare every A, K, + and −."), indicator);
        assertTrue(indicator.contains("switch off, open the wire at the end named"), indicator);
        assertTrue(indicator.contains("the other at the wire's open end"), indicator);
        assertFalse(indicator.contains("Pin order"), indicator);
    }

    /** Only two are left to draw: the sheet has one of them, and the card the other. */
    @Test
    void noCardShowsNumbersOfALearnersSheet() {
        ProblemSet set = set("  - {template: current-limiting/one-indicator, given: {Vf: 2 V, If: 10 mA}}\n");
        Values onSheet =
                new SheetMaker(set).sheet(1).problems().get(0).problem().givens();
        List<BenchCards.Card> made = new BenchCards(set, seats(1)).cards(1);
        assertEquals(1, made.size());
        assertNotEquals(onSheet, made.get(0).circuit().problem().givens());
    }

    @Test
    void whereTheSheetsTakeAllNumbersThereIsNoCardAndTheReasonIsTold() {
        ProblemSet set = set("  - {template: current-limiting/one-indicator, given: {Vf: 2 V, If: 10 mA}}\n");
        Roster both = seats(2);
        BenchCards cards = new BenchCards(set, both);
        assertEquals(List.of(), cards(cards, both));
        assertTrue(
                cards.leftOut().get(0).because().contains("sheet"),
                cards.leftOut().toString());
    }

    @Test
    void whatShouldNotBeBuiltHasNoCardAndTheReasonNamesThePart() {
        Map<String, String> reasons = new LinkedHashMap<>(Map.of(
                "thermal-rise/heat-sink", "without a heat sink",
                "current-limiting/string-fuse", "something else in its place",
                "current-limiting/pulsed-led", "a common one bears",
                "current-limiting/motor-top-speed", "something else in its place",
                "thermal-rise/hottest-air", "the electronic load assumed takes",
                "thermal-rise/resistor-derating", "temperature of the air",
                "chain-addressing/strip-currents", "measured where it is fitted",
                "chain-addressing/tile-grid", "no circuit"));
        Roster one = seats(1);
        reasons.forEach((template, reason) -> {
            BenchCards cards = new BenchCards(of(template), one);
            assertEquals(List.of(), cards(cards, one), template);
            String told = cards.leftOut().get(0).because();
            assertTrue(told.contains(reason), template + ": " + told);
        });
    }
}
