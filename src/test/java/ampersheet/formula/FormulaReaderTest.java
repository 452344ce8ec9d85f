package ampersheet.formula;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.quantity.Dimension;
import java.util.Map;
import org.junit.jupiter.api.Test;

class FormulaReaderTest {
    private static double number(String formula) {
        return Evaluation.evaluate(FormulaReader.expression(formula), Values.of(Map.of(), Map.of()))
                .value();
    }

    private static FormulaFault fault(String formula) {
        return assertThrows(FormulaFault.class, () -> FormulaReader.expression(formula), formula);
    }

    private static FormulaFault conditionFault(String formula) {
        return assertThrows(FormulaFault.class, () -> FormulaReader.condition(formula), formula);
    }

    private static void assertFault(FormulaFault fault, int position, String problem, String nextAction) {
        assertEquals(position, fault.position(), fault.getMessage());
        assertTrue(fault.getMessage().contains(problem), fault.getMessage());
        assertTrue(fault.nextAction().contains(nextAction), fault.nextAction());
        assertFalse(fault.expected().isEmpty(), fault.getMessage());
    }

    @Test
    void operatorsBindAsInWrittenMathematics() {
        String[][] table = {
            {"2 + 3 * 4", "14"},
            {"2 * 3 + 4", "10"},
            {"(2 + 3) * 4", "20"},
            {"10 - 4 - 3", "3"},
            {"10 - (4 - 3)", "9"},
            {"24 / 4 / 3", "2"},
            {"24 / (4 / 3)", "18"},
            {"24 / 4 * 3", "18"},
            {"24 * 4 / 3", "32"},
            {"2 ^ 3 ^ 2", "512"},
            {"(2 ^ 3) ^ 2", "64"},
            {"-2 ^ 2", "-4"},
            {"(-2) ^ 2", "4"},
            {"2 ^ -3", "0.125"},
            {"2 ^ -3 * 16", "2"},
            {"-2 ^ -2", "-0.25"},
            {"-3 * -4", "12"},
            {"-3 - -4", "1"},
            {"- - 3", "3"},
            {"-2 * 3 + 10", "4"},
            {"2 * 3 ^ 2", "18"},
            {"36 / 3 ^ 2", "4"},
        };
        for (String[] row : table) {
            assertEquals(Double.parseDouble(row[1]), number(row[0]), 0.0, row[0]);
        }
    }

    @Test
    void andBindsTighterThanOrAndNotTighterThanBoth() {
        Condition read = FormulaReader.condition("not a > 1 or b > 1 and not (c > 1)");
        Condition.Either either = (Condition.Either) read;
        assertTrue(either.left() instanceof Condition.Not);
        Condition.Both both = (Condition.Both) either.right();
        assertTrue(both.left() instanceof Condition.Comparison);
        assertTrue(both.right() instanceof Condition.Not);
    }

    @Test
    void parenthesesHoldQuantitiesOrConditions() {
        Values values = Values.of(Map.of(), Map.of());
        assertTrue(Evaluation.holds(FormulaReader.condition("(1 + 2) * 2 > 5 and (1 < 2 or 2 < 1)"), values));
        assertFalse(Evaluation.holds(FormulaReader.condition("not ((1 + 2) * 2 > 5)"), values));
    }

    @Test
    void positionsPointAtOperatorsNamesAndFunctions() {
        Expression.Sum sum = (Expression.Sum) FormulaReader.expression("Vs + sqrt(P * R)");
        assertEquals(3, sum.position());
        assertEquals(0, sum.left().position());
        Expression.Call call = (Expression.Call) sum.right();
        assertEquals(5, call.position());
        assertEquals(12, call.arguments().get(0).position());
    }

    @Test
    void numbersAreReadToTheLastBit() {
        String[] numbers = {
            "0.1",
            "1.2",
            "4.7",
            "33e-9",
            "1.602176634e-19",
            "6.02e23",
            "0.048",
            "123456789012345",
            "1e22",
            "299792458",
            "0.000001",
            "1e-22",
            "3.14159265358979"
        };
        for (String number : numbers) {
            double nearest = Double.parseDouble(number);
            assertEquals(nearest, number(number), number.equals("1.602176634e-19") ? Math.ulp(nearest) : 0, number);
        }
    }

    @Test
    void aNumberKeepsTheWayItWasWritten() {
        Expression.Constant constant = (Expression.Constant) FormulaReader.expression("1.50");
        assertEquals("1.50", constant.asWritten());
        assertEquals(Dimension.ONE, constant.unit().dimension());
        assertEquals("", constant.unit().symbol());
    }

    @Test
    void faultsPointAtTheCharacterAndSayWhatToDo() {
        assertFault(fault(""), 0, "empty", "Write the formula");
        assertFault(fault("   "), 0, "empty", "Write the formula");
        assertFault(fault("Vs - "), 5, "the end of the formula stands after -", "Finish the formula");
        assertFault(fault("Vs * / If"), 5, "/ stands after *", "take one of the signs out");
        assertFault(fault("(Vs - Vf / If"), 13, "opened at character 1", "Close it");
        assertFault(fault("Vs - Vf) / If"), 7, "never opened", "opening parenthesis");
        assertFault(fault("Vs If"), 3, "If stands here without an operator", "write *");
        assertFault(fault("2(a + b)"), 1, "( stands here without an operator", "write *");
        assertFault(fault("a, b"), 1, "comma", "decimal point");
        assertFault(fault("1,5 + a"), 1, "comma", "1.5");
        assertFault(fault("max(a b)"), 6, "opened at character 4", "Close it");
        assertFault(fault("max(a,)"), 6, ") stands after ,", "missing quantity");
        assertFault(fault("+ a"), 0, "plus", "Leave the plus out");
        assertFault(fault("a + and"), 4, "and stands after +", "missing quantity");
        assertFault(fault("1.2.3"), 3, "two decimal points", "one of them");
        assertFault(fault("5. + a"), 1, "no digit after it", "5.0");
        assertFault(fault(".5 + a"), 0, "decimal point", "0.5");
        assertFault(fault("1e999"), 0, "out of range", "exponent");
        assertFault(fault("1e-999"), 0, "out of range", "exponent");
        assertFault(fault("1234567890123456"), 0, "more than 15 digits", "Round it");
        assertFault(fault("\"top left"), 0, "no end", "Close the word");
        assertFault(fault("1 + \"top left\""), 4, "quoted word is not a quantity", "without quotes");
        assertFault(fault("a > b"), 2, "condition", "Take the comparison out");
        assertFault(fault("1 + (a > b)"), 7, "condition", "Take the comparison out");
    }

    @Test
    void signsFromElsewhereAreNamedWithTheSignUsedHere() {
        assertFault(fault("a \u2212 b"), 2, "\u2212 does not belong", "Write - instead");
        assertFault(fault("a \u00d7 b"), 2, "\u00d7 does not belong", "Write * instead");
        assertFault(fault("a ** 2"), 2, "** is not an operator", "Write ^");
        assertFault(fault("a\u00b2"), 1, "\u00b2 does not belong", "Write ^2");
        assertFault(fault("row % 2"), 4, "% does not belong", "mod(a, b)");
        assertFault(fault("[a]"), 0, "[ does not belong", "Write (");
        assertFault(fault("\u03b8"), 0, "\u03b8 does not belong", "theta");
        assertFault(fault("a \ud83d\ude00 b"), 2, "\ud83d\ude00 does not belong", "operators");
        assertFault(fault("a\u0000b"), 1, "U+0", "operators");
        assertFault(conditionFault("a = b"), 2, "= does not belong", "Write ==");
        assertFault(conditionFault("a => b"), 2, "=> does not belong", "Write >=");
        assertFault(conditionFault("a =< b"), 2, "=< does not belong", "Write <=");
        assertFault(conditionFault("a <> b"), 2, "<> does not belong", "Write !=");
        assertFault(conditionFault("a > 1 && b > 1"), 6, "&& does not belong", "Write and");
        assertFault(conditionFault("!(a > 1)"), 0, "! does not belong", "Write not");
    }

    @Test
    void comparisonsAreNotChained() {
        assertFault(conditionFault("1 < a < 3"), 6, "chained", "joined by and");
        assertFault(conditionFault("(1 < a) == (a < 3)"), 8, "chained", "joined by and");
    }

    @Test
    void aConditionNeedsAComparison() {
        assertFault(conditionFault("a + b"), 2, "not something that holds", "Compare it");
        assertFault(conditionFault("a and b > 1"), 0, "not something that holds", "Compare it");
        assertFault(conditionFault("not a"), 4, "not something that holds", "Compare it");
        assertFault(conditionFault("\"top left\""), 0, "not something that holds", "Compare it");
        assertFault(conditionFault("\"top left\" == start"), 0, "left of ==", "Exchange the two sides");
        assertFault(conditionFault("start < \"top left\""), 6, "no order", "== or !=");
    }

    @Test
    void namesAreLettersThenLettersDigitsAndUnderlines() {
        assertTrue(FormulaReader.isName("theta_JA"));
        assertTrue(FormulaReader.isName("R1"));
        assertFalse(FormulaReader.isName(""));
        assertFalse(FormulaReader.isName("1R"));
        assertFalse(FormulaReader.isName("_R"));
        assertFalse(FormulaReader.isName("R 1"));
        assertFalse(FormulaReader.isName("\u03b8"));
        assertFalse(FormulaReader.isName("and"));
        assertFalse(FormulaReader.isName("pi"));
    }

    @Test
    void hostileFormulasEndInAFault() {
        assertFault(fault("a+".repeat(501)), 1000, "longer than 1000 characters", "several steps");
        assertFault(fault("(".repeat(900)), 100, "nested more than 100 deep", "several steps");
        assertFault(fault("-".repeat(900) + "1"), 100, "nested more than 100 deep", "several steps");
        assertFault(fault("2^".repeat(400) + "2"), 200, "nested more than 100 deep", "several steps");
        assertFault(fault("sqrt(".repeat(150)), 500, "nested more than 100 deep", "several steps");
        assertFault(conditionFault("not ".repeat(200) + "1>0"), 400, "nested more than 100 deep", "several steps");
    }

    @Test
    void theLongestAllowedFormulasAreEvaluated() {
        assertEquals(500, number("1+".repeat(499) + "1"), 0.0);
        assertEquals(1, number("(".repeat(98) + "1" + ")".repeat(98)), 0.0);
    }

    /** Whatever characters come, the answer is a tree or a fault at a character of the text. */
    @Test
    void arbitraryTextIsReadOrRefusedAtAPlace() {
        long seed = 20261125;
        java.util.Random random = new java.util.Random(seed);
        String alphabet = "ab1.e2 +-*/^()<>=!,\"%andor\u2212\u03b8\ud83d\n_#&";
        int read = 0;
        for (int i = 0; i < 20_000; i++) {
            StringBuilder text = new StringBuilder();
            int length = random.nextInt(12);
            for (int j = 0; j < length; j++) {
                text.append(alphabet.charAt(random.nextInt(alphabet.length())));
            }
            try {
                FormulaReader.expression(text.toString());
                read++;
            } catch (FormulaFault fault) {
                assertTrue(fault.position() >= 0 && fault.position() <= text.length(), "seed " + seed + ": " + text);
                assertFalse(fault.expected().isEmpty() || fault.nextAction().isEmpty(), "seed " + seed + ": " + text);
            }
        }
        assertTrue(read > 100, "too few readable texts: " + read);
    }
}
