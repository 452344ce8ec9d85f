package ampersheet.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.circuit.PartKind;
import ampersheet.formula.FormulaReader;
import ampersheet.formula.Values;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Quantity;
import ampersheet.source.Languages;
import ampersheet.template.Cautions;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.Way;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class WorkshopTest {

    /**
     * T. R. Kuphaldt, Lessons in Electric Circuits, vol. III (Semiconductors), ch. 3: 24 V, 1.6 V, 20 mA gives 1120
     * ohms.
     */
    @Test
    void aPublishedIndicatorGivesItsPublishedResistance() {
        Attempt.Worked worked = chosen(TemplateBuilder.indicator().build(), indicator(24, 1.6, 20e-3));
        Problem.Answer resistance = worked.problem().answers().get(0);
        assertEquals(1120, resistance.value(), 1e-9);
        assertEquals(1120, resistance.second(), 1e-6);
        assertTrue(resistance.agrees());
        Problem.Answer fitted = worked.problem().answers().get(1);
        assertEquals(1200, fitted.value());
        assertEquals(1200, fitted.second());
        assertEquals(List.of(), worked.notes());
    }

    @Test
    void aWrongFormulaIsCaughtByTheSecondRoute() {
        ProblemTemplate wrong = divider("Vin * R1 / (R1 + R2)").build();
        Attempt.Refused refused = refused(wrong, volts("Vin", 9, "R1", 1000, "R2", 2200));
        assertEquals(Refusal.ROUTES_DISAGREE, refused.reason());
        assertTrue(refused.detail().contains("by the model"), refused.detail());
        assertEquals(
                refused,
                new Workshop(wrong).workChosen(volts("Vin", 9, "R1", 1000, "R2", 2200)),
                "chosen numbers need a proof as well");
    }

    @Test
    void theRightFormulaPasses() {
        Attempt.Worked worked =
                accepted(divider("Vin * R2 / (R1 + R2)").build(), volts("Vin", 9, "R1", 1000, "R2", 2200));
        assertTrue(worked.problem().answers().get(0).gap() < 1e-12);
    }

    /** One count too many is a disagreement however many there are. */
    @Test
    void countsMustAgreeExactly() {
        ProblemTemplate offByOne = counting("floor(Imax / I) + 1", "Imax / I").build();
        assertEquals(
                Refusal.ROUTES_DISAGREE,
                refused(offByOne, amps("Imax", 30.0005, "I", 0.001)).reason());
        ProblemTemplate right = counting("floor(Imax / I)", "Imax / I").build();
        assertEquals(
                30000,
                accepted(right, amps("Imax", 30.0005, "I", 0.001))
                        .problem()
                        .answers()
                        .get(0)
                        .second());
    }

    /** n loads in parallel on an ammeter, as many as the supply carries: the model is a sink of n times the current. */
    private static TemplateBuilder counting(String formula, String step) {
        return new TemplateBuilder("current-limiting/how-many")
                .given("Imax", "A", 1)
                .given("I", "A", 0.1)
                .step("x", "1", step)
                .step("n", "1", formula)
                .ask("n", new Acceptance.Count())
                .part(PartKind.SOURCE, "V1", "volts", "5 V", 0, 0, 0, 4)
                .part(PartKind.SINK, "B1", "amps", "n * I", 0, 4, 0, 0)
                .ground(0, 0)
                .proof(
                        "n",
                        "n",
                        "current(V1)",
                        new Way.Largest(
                                new ProblemTemplate.Members.WholeNumbers(1, 40_000),
                                ampersheet.formula.Condition.Relation.AT_MOST,
                                FormulaReader.expression("Imax")),
                        1e-4);
    }

    @Test
    void aMistakeWithinBothTolerancesRefusesTheDraw() {
        ProblemTemplate template = divider("Vin * R2 / (R1 + R2)")
                .mistake("upside-down", "Vout", "Vin * R1 / (R1 + R2)")
                .build();
        assertEquals(
                Refusal.MISTAKE_TOO_CLOSE,
                refused(template, volts("Vin", 9, "R1", 1000, "R2", 1030)).reason());
        accepted(template, volts("Vin", 9, "R1", 1000, "R2", 1060));
    }

    @Test
    void twoMistakesWithinBothTolerancesRefuseTheDraw() {
        ProblemTemplate template = divider("Vin * R2 / (R1 + R2)")
                .mistake("one", "Vout", "2 * Vin")
                .mistake("other", "Vout", "2.05 * Vin")
                .build();
        assertEquals(
                Refusal.MISTAKES_TOO_CLOSE,
                refused(template, volts("Vin", 9, "R1", 1000, "R2", 2200)).reason());
    }

    /** A step worked wrongly, from which the rest follows; and only where it can be. */
    @Test
    void aMistakeInAnEarlierStepIsFollowedThrough() {
        ProblemTemplate template = TemplateBuilder.indicator()
                .mistakeInstead("whole-supply", "P", "Vr", "Vs", "Vs > 10 V")
                .build();
        List<ampersheet.answer.KnownMistake> made = chosen(template, indicator(24, 1.6, 20e-3))
                .problem()
                .answers()
                .get(2)
                .mistakes();
        assertEquals(
                List.of("supply-power", "whole-supply"),
                made.stream().map(m -> m.id()).toList());
        // R = 24 V / 20 mA = 1200 Ω, so Rn stays 1200 Ω, and P = 24² / 1200.
        assertEquals(24 * 24 / 1200.0, made.get(1).value(), 1e-12);
        assertEquals(
                1,
                chosen(template, indicator(9, 1.6, 20e-3))
                        .problem()
                        .answers()
                        .get(2)
                        .mistakes()
                        .size());
    }

    @Test
    void chosenGivensOutsideTheRulesAreNotedNotRefused() {
        Attempt.Worked worked = chosen(TemplateBuilder.indicator().build(), indicator(3, 2, 7e-3));
        assertEquals(
                List.of(Refusal.REQUIREMENT),
                worked.notes().stream().map(Attempt.Refused::reason).toList());
        assertTrue(
                worked.notes().get(0).detail().contains("does not hold"),
                worked.notes().get(0).detail());
        assertTrue(worked.problem().answers().get(0).agrees());
    }

    @Test
    void moreThanSixtyVoltsAreRefusedEvenIfChosen() {
        ProblemTemplate template = TemplateBuilder.indicator().build();
        Attempt.Refused refused =
                assertInstanceOf(Attempt.Refused.class, new Workshop(template).workChosen(indicator(61, 2, 7e-3)));
        assertEquals(Refusal.ABOVE_EXTRA_LOW_VOLTAGE, refused.reason());
    }

    /** Two sources in series: neither is above the limit, their ends are. */
    @Test
    void moreThanSixtyVoltsBetweenTwoNodesAreRefused() {
        ProblemTemplate stacked = new TemplateBuilder("voltage-dividers/stacked")
                .given("V", "V", 20)
                .step("I", "A", "2 * V / (1 kohm)")
                .ask("I", new Acceptance.Within(0.02, 0))
                .part(PartKind.SOURCE, "V1", "volts", "V", 0, 4, 0, 8)
                .part(PartKind.SOURCE, "V2", "volts", "V", 0, 0, 0, 4)
                .part(PartKind.RESISTOR, "R1", "ohms", "1 kohm", 0, 8, 0, 0)
                .ground(0, 4)
                .proof("I", "I", "current(R1)", new Way.Direct(), 1e-4)
                .build();
        accepted(stacked, volts("V", 29.9));
        assertEquals(
                Refusal.ABOVE_EXTRA_LOW_VOLTAGE,
                refused(stacked, volts("V", 30.1)).reason());
    }

    @Test
    void aStepWithoutANumberIsRefused() {
        ProblemTemplate template = divider("Vin * R2 / (R1 - R2)").build();
        assertEquals(
                Refusal.NOT_A_NUMBER,
                refused(template, volts("Vin", 9, "R1", 1000, "R2", 1000)).reason());
    }

    @Test
    void aKeyHalfwayBetweenTwoPrintedValuesIsRefused() {
        ProblemTemplate template = TemplateBuilder.indicator().build();
        // (5 V − 2.5 V) / 8 mA = 312.5 Ω, which three figures print as 312 Ω or 313 Ω.
        assertEquals(
                Refusal.ROUNDING_AMBIGUOUS,
                refused(template, indicator(5, 2.5, 8e-3)).reason());
    }

    @Test
    void aResistanceThatIsAPreferredValueIsTooNearToRoundUp() {
        // (5 V − 1.7 V) / 10 mA = 330 Ω
        assertEquals(
                Refusal.NEAR_A_BOUNDARY,
                refused(TemplateBuilder.indicator().build(), indicator(5, 1.7, 10e-3))
                        .reason());
    }

    @Test
    void noCaseIsRefused() {
        ProblemTemplate template = new TemplateBuilder("a/b")
                .given("V", "V", 1)
                .stepByCases("W", "V", "V > 3 V", "V", "V < 2 V", "2 * V")
                .build();
        assertEquals(Refusal.NO_CASE, refused(template, volts("V", 2.5)).reason());
    }

    @Test
    void anUnsolvableCircuitIsRefused() {
        ProblemTemplate template = new TemplateBuilder("a/b")
                .given("V", "V", 1)
                .given("W", "V", 1)
                .step("I", "A", "V / (1 ohm)")
                .ask("I", new Acceptance.Within(0.02, 0))
                .part(PartKind.SOURCE, "V1", "volts", "V", 0, 0, 0, 4)
                .part(PartKind.SOURCE, "V2", "volts", "W", 0, 0, 0, 4)
                .ground(0, 0)
                .proof("I", "I", "current(V1)", new Way.Direct(), 1e-4)
                .build();
        Attempt.Refused refused = refused(template, volts("V", 5, "W", 9));
        assertEquals(Refusal.MODEL_UNSOLVED, refused.reason());
        assertTrue(refused.detail().contains("V1"), refused.detail());
        assertEquals(
                refused,
                new Workshop(template).workChosen(volts("V", 5, "W", 9)),
                "chosen numbers need a proof as well");
    }

    @Test
    void anAskedStepWithoutAProofIsNeverPublished() {
        ProblemTemplate template = new TemplateBuilder("a/b")
                .given("V", "V", 1)
                .step("W", "V", "2 * V")
                .ask("W", new Acceptance.Within(0.02, 0))
                .build();
        assertEquals(Refusal.MODEL_UNSOLVED, refused(template, volts("V", 2)).reason());
    }

    @Test
    void aChoiceIsWeighedAgainByTheSecondRoute() {
        String[] options = {"yes", "Vout > 3 V", "no", "Vout <= 3 V"};
        ProblemTemplate right =
                divider("Vin * R2 / (R1 + R2)").choice("enough", options).build();
        Problem problem =
                accepted(right, volts("Vin", 9, "R1", 1000, "R2", 2200)).problem();
        assertEquals(0, problem.answers().get(1).value());
        assertEquals(0, problem.answers().get(1).second());
        assertEquals(
                1,
                accepted(right, volts("Vin", 9, "R1", 1000, "R2", 220))
                        .problem()
                        .answers()
                        .get(1)
                        .value());
        // Exactly 3 V: the last bit would decide.
        assertEquals(
                Refusal.NEAR_A_BOUNDARY,
                refused(right, volts("Vin", 9, "R1", 2000, "R2", 1000)).reason());
    }

    @Test
    void aChoiceOnAStepWithoutAProofIsNeverPublished() {
        ProblemTemplate template = divider("Vin * R2 / (R1 + R2)")
                .step("P", "W", "Vout ^ 2 / R2")
                .choice("hot", "yes", "P > 1 W", "no", "P <= 1 W")
                .build();
        Attempt.Refused refused = refused(template, volts("Vin", 9, "R1", 1000, "R2", 2200));
        assertEquals(Refusal.MODEL_UNSOLVED, refused.reason());
        assertTrue(refused.detail().contains("P, on which the choice hot hangs"), refused.detail());
    }

    @Test
    void questionsAreLetteredOnlyIfThereAreSeveral() {
        Problem one = accepted(divider("Vin * R2 / (R1 + R2)").build(), volts("Vin", 9, "R1", 1000, "R2", 2200))
                .problem();
        assertEquals(List.of("q3"), questions(one));
        Problem three = chosen(TemplateBuilder.indicator().build(), indicator(24, 1.6, 20e-3))
                .problem();
        assertEquals(List.of("q3a", "q3b", "q3c"), questions(three));
        AnswerKey key = AnswerKeys.keyOf(three, "q3", true).answers().get(0);
        assertEquals("R", key.step());
        assertEquals("Ω", key.unit().symbol());
        assertEquals(
                List.of("no-forward-voltage", "only-forward-voltage"),
                key.mistakes().stream().map(m -> m.id()).toList());
    }

    private static List<String> questions(Problem problem) {
        return AnswerKeys.keyOf(problem, "q3", true).answers().stream()
                .map(AnswerKey::question)
                .toList();
    }

    @Test
    void theNumbersCallForCautions() {
        Problem gentle = chosen(TemplateBuilder.indicator().build(), indicator(9, 2, 9e-3))
                .problem();
        assertEquals(List.of(), gentle.cautions());
        Problem hot = chosen(TemplateBuilder.indicator().build(), indicator(24, 1.7, 19e-3))
                .problem();
        assertEquals(List.of("hot-resistors"), hot.cautions());
        Problem bright = chosen(
                        TemplateBuilder.indicator().caution("bench-supply").build(), indicator(24, 3, 0.35))
                .problem();
        assertEquals(List.of("hot-resistors", "led-eyes", "bench-supply"), bright.cautions());
    }

    @Test
    void everyCautionTellsTheHazardAndTheAction() {
        for (Caution caution : Caution.values()) {
            assertEquals(caution, Caution.named(caution.id()).orElseThrow());
            assertTrue(
                    caution.text(Languages.ENGLISH).split("[.:] ").length >= 2, caution.id() + " is one sentence only");
            assertFalse(caution.heading(Languages.ENGLISH).endsWith("."), caution.id());
        }
        assertTrue(Caution.named("no-such-box").isEmpty());
        assertEquals(
                new TreeSet<>(Cautions.IDS),
                Arrays.stream(Caution.values()).map(Caution::id).collect(Collectors.toCollection(TreeSet::new)));
    }

    @Test
    void theDifficultyOfAnIndicatorIsMeasured() {
        Difficulty easy = Difficulty.of(chosen(TemplateBuilder.indicator().build(), indicator(12, 2, 8e-3))
                .problem());
        assertEquals(4, easy.steps());
        assertEquals(2, easy.inversions());
        assertEquals(4, easy.digits(), "12, 2, 8");
        Difficulty harder = Difficulty.of(chosen(TemplateBuilder.indicator().build(), indicator(12, 2, 11e-3))
                .problem());
        assertTrue(harder.nonTerminating() > easy.nonTerminating());
        assertTrue(harder.digits() > easy.digits());
    }

    // ---- what the tests are made of

    private static TemplateBuilder divider(String formula) {
        return new TemplateBuilder("voltage-dividers/unloaded")
                .given("Vin", "V", 5, 9, 12)
                .given("R1", "ohm", 1000)
                .given("R2", "ohm", 2200)
                .step("Vout", "V", formula)
                .ask("Vout", new Acceptance.Within(0.02, 0))
                .part(PartKind.SOURCE, "V1", "volts", "Vin", 0, 0, 0, 8)
                .part(PartKind.RESISTOR, "R1", "ohms", "R1", 0, 8, 4, 8)
                .part(PartKind.RESISTOR, "R2", "ohms", "R2", 4, 8, 4, 0)
                .wire(4, 0, 0, 0)
                .node("out", 4, 8)
                .ground(0, 0)
                .proof("Vout", "Vout", "voltage(out)", new Way.Direct(), 1e-4);
    }

    private static Attempt.Worked chosen(ProblemTemplate template, Values givens) {
        return assertInstanceOf(Attempt.Worked.class, new Workshop(template).workChosen(givens));
    }

    private static Attempt.Worked accepted(ProblemTemplate template, Values givens) {
        return assertInstanceOf(Attempt.Worked.class, new Workshop(template).work(givens));
    }

    private static Attempt.Refused refused(ProblemTemplate template, Values givens) {
        return assertInstanceOf(Attempt.Refused.class, new Workshop(template).work(givens));
    }

    static Values indicator(double vs, double vf, double amps) {
        Map<String, Quantity> givens = new LinkedHashMap<>();
        givens.put("Vs", new Quantity(vs, Dimension.VOLTAGE));
        givens.put("Vf", new Quantity(vf, Dimension.VOLTAGE));
        givens.put("If", new Quantity(amps, Dimension.CURRENT));
        return Values.of(givens, Map.of());
    }

    /** Names that start with R are ohms, the others volts. */
    private static Values volts(Object... namesAndValues) {
        Map<String, Quantity> givens = new LinkedHashMap<>();
        for (int i = 0; i < namesAndValues.length; i += 2) {
            String name = (String) namesAndValues[i];
            givens.put(
                    name,
                    new Quantity(
                            ((Number) namesAndValues[i + 1]).doubleValue(),
                            name.startsWith("R") ? Dimension.RESISTANCE : Dimension.VOLTAGE));
        }
        return Values.of(givens, Map.of());
    }

    private static Values amps(Object... namesAndValues) {
        Map<String, Quantity> givens = new LinkedHashMap<>();
        for (int i = 0; i < namesAndValues.length; i += 2) {
            givens.put(
                    (String) namesAndValues[i],
                    new Quantity(((Number) namesAndValues[i + 1]).doubleValue(), Dimension.CURRENT));
        }
        return Values.of(givens, Map.of());
    }
}
