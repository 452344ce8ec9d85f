package ampersheet.practice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.answer.ProblemKey;
import ampersheet.formula.FormulaReader;
import ampersheet.formula.Step;
import ampersheet.formula.Working;
import ampersheet.practice.Checked.Kind;
import ampersheet.source.Languages;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What is said of the places of a problem, of a line of working, and as a hint. The numbers are those of
 * {@link Lessons}.
 */
class CheckedTest {
    private static Checked full(Map<String, String> typed) {
        return Checked.of(Lessons.key(), Lessons.FULL, typed);
    }

    private static List<Kind> kinds(Checked checked) {
        return checked.places().stream().map(Checked.Told::kind).toList();
    }

    private static String said(Map<String, String> typed, String question) {
        return full(typed).places().stream()
                .filter(told -> told.question().equals(question))
                .findFirst()
                .orElseThrow()
                .message();
    }

    @Test
    void itStopsAtTheFirstThatIsNotRight() {
        Checked checked = full(Map.of("step 1", "6.2 V", "a", "529 ohm", "b", ""));
        assertEquals(List.of(Kind.RIGHT, Kind.WRONG, Kind.NOTHING), kinds(checked));
        assertEquals(Optional.of("a"), checked.stop());
        assertEquals(
                Optional.of("no-forward-voltage"), checked.slip().orElseThrow().cause());
        assertTrue(said(Map.of("step 1", "6.2 V", "a", "529 ohm"), "a").contains("whole supply"));
    }

    @Test
    void ofSeveralWrongPlacesEachHasItsOwnVerdictAndTheMessageBeginsWithHowMany() {
        Map<String, String> typed = Map.of("step 1", "6.2 V", "a", "529 ohm", "b", "5 kg");
        assertEquals(List.of(Kind.RIGHT, Kind.WRONG, Kind.WRONG), kinds(full(typed)));
        assertTrue(said(typed, "b").contains("kg is a unit of mass"), said(typed, "b"));
        assertEquals(
                "2 places are not right yet, 1 is right. Begin with answer a.", stopped("6.2 V", "529 ohm", "5 kg"));
        assertEquals(
                "1 place is not right yet, 1 is in need of another form, 1 is right. Begin with answer a.",
                stopped("6.2 V", "529 ohm", "96.1"));
        assertEquals(
                "1 place is right. Answer a is not right yet: look again, or take the next hint.",
                stopped("6.2 V", "529 ohm", ""));
        assertEquals("1 place is not right yet. Begin with answer a.", stopped("", "", "5 kg"));
        assertEquals("2 places are right. Answer b is still open.", stopped("6.2 V", "400 ohm", ""));
        assertEquals(
                "This is the slip of step 1 again. Correct that one first, then work this one anew.",
                new Sentences(Languages.ENGLISH).sameSlip("step 1"));
        Map<String, String> later = Map.of("step 1", "7 V", "a", "400 ohm", "b", "96.1 mW");
        assertEquals(List.of(Kind.WRONG, Kind.RIGHT, Kind.RIGHT), kinds(full(later)), "a right one is told so, too");
    }

    private static Practice started() {
        return Lessons.start(Lessons.course("one"));
    }

    private static String stopped(String step1, String a, String b) {
        Checked checked = full(Map.of("step 1", step1, "a", a, "b", b));
        return new Sentences(Languages.ENGLISH)
                .stopped(checked, checked.stopped().orElseThrow());
    }

    @Test
    void whatIsToldWrongIsASlipAlsoBehindAPlaceThatIsOnlyUnread() {
        Practice checked = Lessons.answer(
                bare().goOn(Lessons.MONDAY, 0),
                Map.of("step 1", "6.2", "a", "529 ohm", "b", "529 W"),
                "",
                Lessons.MONDAY);
        assertEquals(1, checked.attempt().slips().size());
        assertEquals("a", checked.attempt().slips().iterator().next().question());
    }

    @Test
    void aNumberWithoutItsUnitIsNotYetAnAnswerAndNothingTellsWhetherItIsRight() {
        Checked right = full(Map.of("step 1", "6.2", "a", "400 ohm"));
        Checked wrong = full(Map.of("step 1", "7.5", "a", "400 ohm"));
        assertEquals(right, wrong);
        assertEquals(Kind.FORM, right.places().get(0).kind());
        assertEquals(Optional.empty(), wrong.slip());
        assertTrue(
                right.places().get(0).message().startsWith("The unit is missing: a quantity is a number with a unit."),
                right.toString());
        assertEquals(hints(bare().type("a", "400")), hints(bare().type("a", "529")), "nor do the hints");
        assertEquals(Kind.FORM, full(Map.of("a", "529")).places().get(1).kind(), "a modelled mistake, too");
    }

    @Test
    void rightAnswersSettleTheStepsOnTheWay() {
        Checked checked = full(Map.of("a", "400 ohm", "b", "96.1 mW"));
        assertTrue(checked.isSolved() && checked.straight());
        assertFalse(
                full(Map.of("step 1", "6.2 V", "a", "400 ohm", "b", "96.1 mW")).straight());
        assertFalse(
                full(Map.of("step 1", "7 V", "a", "400 ohm", "b", "96.1 mW")).isSolved(), "a wrong step is told");
    }

    @Test
    void whoTypesOnlyAWrongAnswerHearsOfItAndNotOfTheEmptyStepBefore() {
        Checked checked = full(Map.of("a", "529 ohm"));
        assertEquals(Optional.of("a"), checked.stop());
        assertEquals(Optional.of("step 1"), full(Map.of()).stop());
        assertEquals(
                Optional.of("b"), full(Map.of("a", "400 ohm")).stop(), "an answer that is asked for is not left out");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "6.2 V / 15.5 mA",
                "6,2 V : 15,5 mA",
                "6.2V/15.5mA",
                "(8.2 V − 2 V) ÷ 15.5 mA",
                "(Vs - Vf) / If",
                "(V_s - V_f) / I_f",
                "(Us - Uf) / If",
                "R = 6.2 V / 15.5 mA",
                "6.2 V / 15.5 mA = 400 Ω",
                "R = (8.2 V - 2 V) / 0.0155 A = 400 ohm",
                "0.2 kΩ + 200 Ω",
                "4k7 - 4k3",
                "12 V / 0.03 A",
                "(200 + 200) Ω",
                "0.4*10^3 Ω x 1",
                "1 / (1/800 ohm + 1/800 ohm)",
                "parallel(800 ohm, 800 ohm)",
                "0.8k || 0.8k",
                "R = 800 Ω ∥ 800 Ω",
                "1.2k || 1.2k || 1.2k",
                "200 ohm + 400 ohm||400 ohm",
                "2 * 400 ohm || 400 ohm",
                "20 Ω × 20",
                "sqrt((6.2 V)^2 / (15.5 mA)^2)",
                "(20)² × 1 Ω"
            })
    void aLineOfWorkingIsReadWorkedAndChecked(String line) {
        Checked checked = full(Map.of("step 1", "6.2 V", "a", line, "b", "96.1 mW"));
        assertTrue(checked.isSolved(), checked.toString());
        assertTrue(
                said(Map.of("step 1", "6.2 V", "a", line), "a").startsWith("Your line gives 400\u00a0Ω. Right."),
                said(Map.of("step 1", "6.2 V", "a", line), "a"));
    }

    @Test
    void ofALineWhatDoesNotFitIsSaid() {
        assertTrue(ofLine("6.2 V * 15.5 mA").contains("Your line gives 96.1\u00a0mW."));
        assertTrue(ofLine("6.2 V * 15.5 mA").contains("unit of power"));
        assertTrue(ofLine("8.2 V / 15.5 mA").contains("whole supply"), "a mistake is known by its line, too");
        assertTrue(ofLine("6.2 V + 15.5 mA").contains("amperes are added to volts"), ofLine("6.2 V + 15.5 mA"));
        assertTrue(ofLine("6.2 V / 15.5 mA = 450 Ω").contains("one gives 400\u00a0Ω, the other says 450\u00a0Ω"));
        assertTrue(ofLine("6.2 / 0.0155").contains("a quantity is a number with a unit"), ofLine("6.2 / 0.0155"));
        assertTrue(ofLine("6.2 V / 0 A").contains("divided by zero"));
        assertTrue(ofLine("U / 15.5 mA").contains("there is no U among the given values"), ofLine("U / 15.5 mA"));
        assertTrue(ofLine("(6.2 V) * (6.2 V)").contains("V² is a unit of another kind"), ofLine("(6.2 V) * (6.2 V)"));
        assertTrue(ofLine("6.2 V / (15.5 mA").contains("not closed"), ofLine("6.2 V / (15.5 mA"));
        assertTrue(ofLine("6.2 V || 15.5 mA").contains("volts and amperes cannot lie side by side"));
        for (String unread : List.of("6.2 V / 2 (3)", "6.2 V +", "6.2 V || ")) {
            assertTrue(ofLine(unread).contains("These are read: + - * / ^, || for resistors"), ofLine(unread));
        }
    }

    /** A fresh user followed the advice to write the unit behind the number, and was told wrong. */
    @Test
    void aLineOfNumbersWithoutUnitsIsNotReadYetAndNoSlip() {
        for (String line : List.of("6,2/15,5 Ohm", "6.2 * 6.2 / 2400 W", "6.2 / 15.5k")) {
            Checked checked = full(Map.of("step 1", "6.2 V", "a", line));
            assertEquals(Kind.FORM, kinds(checked).get(1), line);
            assertEquals(Optional.empty(), checked.slip(), line);
            assertTrue(ofLine(line).contains("put all of it in parentheses with Ω behind"), ofLine(line));
        }
        assertEquals(
                Kind.RIGHT,
                kinds(full(Map.of("step 1", "6.2 V", "a", "(6,2/0,0155) Ω"))).get(1));
        assertEquals(
                Kind.RIGHT,
                kinds(full(Map.of("step 1", "6.2 V", "a", "2 * 3.1 V / 15.5 mA")))
                        .get(1));
    }

    private static String ofLine(String line) {
        return said(Map.of("step 1", "6.2 V", "a", line), "a");
    }

    @Test
    void itIsTheCalculatorToo() {
        assertEquals("Your line gives 660\u00a0Ω.", started().calculated("(12 V - 2.1 V) / 15 mA"));
        assertEquals("Your line gives 12.", started().calculated("3*4"));
        assertEquals("Your line gives 891.9\u00a0Ω.", started().calculated("2.2k || 1.5k"));
        assertTrue(started().calculated("hello").startsWith("Type a line"));
    }

    // Hints

    private static List<String> hints(Practice from) {
        List<String> told = new ArrayList<>();
        Practice practice = from;
        for (int i = 0; i < 20; i++) {
            Optional<Hint> hint = practice.nextHint(Lessons.key(), Lessons.places(practice));
            if (hint.isEmpty()) {
                break;
            }
            told.add(
                    hint.get().kind() == Hint.Kind.TYPED
                            ? hint.get().text()
                            : hint.get().kind().word() + " " + hint.get().step());
            practice = practice.take(hint.get());
        }
        return told;
    }

    private static Practice bare() {
        return Lessons.straight(Lessons.start(Lessons.course("A", "B")), Lessons.MONDAY)
                .another(Lessons.MONDAY, 0);
    }

    @Test
    void hintsGoFromTheRuleToTheLineForEveryStepOnTheWay() {
        assertEquals(
                List.of("rule 1", "formula 1", "numbers 1", "line 1", "rule 2", "formula 2", "numbers 2", "line 2"),
                hints(bare()));
    }

    @Test
    void besideTheExampleItsLineIsPointedAtInsteadOfRuleAndFormula() {
        assertEquals(List.of("example 1", "numbers 1", "line 1"), hints(Lessons.start(Lessons.course("A"))));
    }

    /** In an even row of a tile the pixels count forwards, in an odd one backwards: the example may be the other. */
    @Test
    void aLineOfTheExampleIsNotPointedAtWhereTheStepHasSeveralCases() {
        List<Step> steps = new ArrayList<>(Lessons.key().working().steps());
        steps.set(
                1,
                new Step(
                        "R",
                        List.of(
                                new Step.Case(
                                        Optional.of(FormulaReader.condition("Vs >= 5 V")),
                                        steps.get(1).cases().get(0).is()),
                                new Step.Case(
                                        Optional.of(FormulaReader.condition("Vs < 5 V")),
                                        FormulaReader.expression("Vs / If")))));
        ProblemKey key = new ProblemKey(
                Lessons.key().answers(), Lessons.key().givens(), new Working(steps), List.of(), Languages.ENGLISH);
        Practice practice = Lessons.start(Lessons.course("A")).type("step 1", "6.2 V");
        List<Hint.Kind> kinds = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            Hint hint = practice.nextHint(key, Lessons.places(practice)).orElseThrow();
            kinds.add(hint.kind());
            practice = practice.take(hint);
        }
        assertEquals(List.of(Hint.Kind.RULE, Hint.Kind.FORMULA, Hint.Kind.NUMBERS, Hint.Kind.LINE), kinds);
    }

    @Test
    void whatIsRightOrShownIsNotHintedAt() {
        assertEquals(
                List.of("example 2", "numbers 2", "line 2"),
                hints(Lessons.start(Lessons.course("A")).type("step 1", "6.2 V")));
        Practice faded = Lessons.solve(Lessons.start(Lessons.course("A", "B")), Lessons.MONDAY)
                .another(Lessons.MONDAY, 0);
        assertEquals("faded 1", faded.form().written());
        assertEquals(List.of("rule 3", "formula 3", "numbers 3", "line 3"), hints(faded));
    }

    @Test
    void theFirstHintStartsFromWhatWasTyped() {
        assertTrue(first("400 W").startsWith("The unit first: Ω comes from volts divided by amperes."), first("400 W"));
        assertTrue(
                first("1 kohm").startsWith("Your value is too large by a factor between two and eight"),
                first("1 kohm"));
        assertTrue(first("1.3 ohm").contains("too small by a factor of eight or more"), first("1.3 ohm"));
        assertTrue(
                first("560 ohm")
                        .startsWith("Your value lies near one that comes from this slip. You put the whole supply"),
                first("560 ohm"));
        assertEquals("rule 1", first(""));
        for (String typed : List.of("400 W", "1 kohm", "1.3 ohm", "560 ohm", "420 ohm")) {
            assertFalse(first(typed).contains("400"), "never the value asked for: " + first(typed));
        }
    }

    private static String first(String typed) {
        return hints(typed.isEmpty() ? bare() : bare().type("a", typed)).get(0);
    }

    private static Practice checked(Practice practice, String question, String typed) {
        return practice.type(question, typed).check(Lessons.key(), Lessons.places(practice), "", Lessons.MONDAY);
    }

    private static List<String> standing(Practice practice) {
        return practice.hintsTaken(Lessons.key(), Lessons.places(practice)).stream()
                .map(hint -> hint.kind() == Hint.Kind.TYPED
                        ? hint.text()
                        : hint.kind().word() + " " + hint.step())
                .toList();
    }

    @Test
    void whatTheVerdictBesideSaysNoHintSaysAgainAndTheNextOneSaysMore() {
        Practice mistaken = checked(bare(), "a", "529 ohm");
        assertEquals(
                List.of("formula 2", "numbers 2", "line 2"),
                hints(mistaken).subList(0, 3),
                "the mistake is told with what to do instead: the line itself comes next");
        assertEquals("numbers 2", hints(checked(bare(), "a", "4 kohm")).get(0), "the digits are right");
        Practice unexplained = checked(bare(), "a", "1 kohm");
        assertTrue(
                hints(unexplained).get(0).startsWith("Your value is too large"),
                hints(unexplained).get(0));
        assertEquals("rule 1", hints(unexplained).get(1));
        assertTrue(hints(checked(bare(), "a", "6 W")).get(0).startsWith("The unit first"));
        assertEquals("rule 1", hints(checked(bare(), "a", "many")).get(0), "what cannot be read is told");
        Practice full = checked(Lessons.start(Lessons.course("A")).type("step 1", "6.2 V"), "a", "529 ohm");
        assertEquals(List.of("example 2", "numbers 2", "line 2"), hints(full));
    }

    @Test
    void beforeACheckTheFirstHintIsWhatACheckWouldSay() {
        Practice typed = bare().type("a", "529 ohm");
        assertTrue(
                hints(typed).get(0).contains("You put the whole supply across the resistor."),
                hints(typed).get(0));
        Practice hinted = typed.take(typed.nextHint(Lessons.key(), Lessons.BARE).orElseThrow());
        assertEquals(1, standing(hinted).size());
        assertEquals(List.of(), standing(hinted.check(Lessons.key(), Lessons.BARE, "", Lessons.MONDAY)));
    }

    @Test
    void aHintOnWhatIsTypedNoMoreIsWithdrawnAndThoseOnStepsStay() {
        Practice typed = bare().type("a", "1 kohm");
        Practice hinted = typed.take(typed.nextHint(Lessons.key(), Lessons.BARE).orElseThrow());
        hinted = hinted.take(hinted.nextHint(Lessons.key(), Lessons.BARE).orElseThrow());
        assertTrue(
                standing(hinted).get(0).startsWith("Your value is too large"),
                standing(hinted).toString());
        Practice read = new Practice(
                hinted.course(), RecordText.read(RecordText.write(hinted.record())), "tab", hinted.current());
        assertEquals(standing(hinted), standing(read), "it stands after a reload, too");
        Practice other = hinted.type("a", "100 ohm");
        assertEquals(List.of("rule 1"), standing(other));
        Hint renewed = other.nextHint(Lessons.key(), Lessons.BARE).orElseThrow();
        assertTrue(renewed.text().startsWith("Your value is too small"), renewed.text());
        assertEquals(List.of("rule 1"), standing(other.take(renewed).type("a", "400 ohm")), "nor of what became right");
    }

    @Test
    void aRightAnswerSettlesTheStepsThatLeadToItAlsoForHints() {
        assertEquals(List.of("rule 3", "formula 3", "numbers 3", "line 3"), hints(bare().type("a", "400 ohm")));
        Practice later = Lessons.start(Lessons.course("A")).type("a", "1 kohm");
        assertTrue(hints(later).get(0).startsWith("Your value is too large"), "where it stops, not at the empty step");
    }

    @Test
    void afterAnotherTryTheHintStartsAnew() {
        Practice practice = bare().type("a", "1 kohm");
        practice = practice.take(practice.nextHint(Lessons.key(), Lessons.BARE).orElseThrow());
        assertEquals(
                Hint.Kind.RULE,
                practice.nextHint(Lessons.key(), Lessons.BARE).orElseThrow().kind());
        practice = practice.type("a", "100 ohm");
        assertEquals(
                Hint.Kind.TYPED,
                practice.nextHint(Lessons.key(), Lessons.BARE).orElseThrow().kind());
    }
}
