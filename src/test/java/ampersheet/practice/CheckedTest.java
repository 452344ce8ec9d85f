package ampersheet.practice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.practice.Checked.Kind;
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
        Checked checked = full(Map.of("step 1", "6.2 V", "a", "529 ohm", "b", "96.1 mW"));
        assertEquals(List.of(Kind.RIGHT, Kind.WRONG, Kind.NOTHING), kinds(checked));
        assertEquals(Optional.of("a"), checked.stop());
        assertEquals(Optional.of("no-forward-voltage"), checked.cause());
        assertTrue(said(Map.of("step 1", "6.2 V", "a", "529 ohm"), "a").contains("whole supply"));
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
    }

    private static String ofLine(String line) {
        return said(Map.of("step 1", "6.2 V", "a", line), "a");
    }

    @Test
    void itIsTheCalculatorToo() {
        assertEquals("Your line gives 660\u00a0Ω.", Practice.calculated("(12 V - 2.1 V) / 15 mA"));
        assertEquals("Your line gives 12.", Practice.calculated("3*4"));
        assertTrue(Practice.calculated("hello").startsWith("Type a line"));
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
