package ampersheet.formula;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.quantity.Dimension;
import ampersheet.quantity.Quantity;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

class EvaluationTest {
    private static final Map<String, Quantity> QUANTITIES = quantities();
    private static final Map<String, Set<String>> WORDS =
            Map.of("order", Set.of("progressive", "serpentine"), "start", Set.of("top left", "bottom left"));
    private static final Scope SCOPE = scope();
    private static final Values VALUES = Values.of(QUANTITIES, Map.of("order", "serpentine", "start", "top left"));

    private static Map<String, Quantity> quantities() {
        Map<String, Quantity> quantities = new LinkedHashMap<>();
        quantities.put("Vs", new Quantity(9, Dimension.VOLTAGE));
        quantities.put("Vf", new Quantity(2, Dimension.VOLTAGE));
        quantities.put("If", new Quantity(0.016, Dimension.CURRENT));
        quantities.put("R1", new Quantity(1000, Dimension.RESISTANCE));
        quantities.put("R2", new Quantity(3000, Dimension.RESISTANCE));
        quantities.put("P", new Quantity(2, Dimension.POWER));
        quantities.put("Ta", new Quantity(298.15, Dimension.TEMPERATURE));
        quantities.put("theta", new Quantity(50, Dimension.TEMPERATURE.over(Dimension.POWER)));
        quantities.put("row", Quantity.number(3));
        quantities.put("x", Quantity.number(0.5));
        return quantities;
    }

    private static Scope scope() {
        Map<String, Dimension> dimensions = new LinkedHashMap<>();
        QUANTITIES.forEach((name, quantity) -> dimensions.put(name, quantity.dimension()));
        return new Scope(dimensions, WORDS, Scope.NO_MEASURES);
    }

    private static double value(String formula) {
        Expression expression = FormulaReader.expression(formula);
        Quantity quantity = Evaluation.evaluate(expression, VALUES);
        assertEquals(Evaluation.check(expression, SCOPE), quantity.dimension(), formula);
        return quantity.value();
    }

    private static Dimension dimension(String formula) {
        return Evaluation.check(FormulaReader.expression(formula), SCOPE);
    }

    private static boolean holds(String condition) {
        Condition read = FormulaReader.condition(condition);
        Evaluation.check(read, SCOPE);
        return Evaluation.holds(read, VALUES);
    }

    private static void assertFault(String formula, int position, String problem, String... rest) {
        FormulaFault fault = assertThrows(FormulaFault.class, () -> dimension(formula), formula);
        assertFault(fault, formula, position, problem, rest);
    }

    private static void assertConditionFault(String formula, int position, String problem, String... rest) {
        Condition read = FormulaReader.condition(formula);
        FormulaFault fault = assertThrows(FormulaFault.class, () -> Evaluation.check(read, SCOPE), formula);
        assertFault(fault, formula, position, problem, rest);
    }

    private static void assertFault(FormulaFault fault, String formula, int position, String problem, String... rest) {
        assertEquals(position, fault.position(), formula + ": " + fault.getMessage());
        assertTrue(fault.getMessage().contains(problem), formula + ": " + fault.getMessage());
        for (String part : rest) {
            assertTrue(
                    (fault.expected() + " | " + fault.nextAction()).contains(part),
                    formula + ": " + fault.expected() + " | " + fault.nextAction());
        }
    }

    @Test
    void theResistorForAnIndicator() {
        assertEquals(437.5, value("(Vs - Vf) / If"), 1e-12);
        assertEquals(Dimension.RESISTANCE, dimension("(Vs - Vf) / If"));
    }

    /** Worked by hand. */
    @Test
    void functionsGiveHandValues() {
        assertEquals(750, value("parallel(R1, R2)"), 1e-9);
        assertEquals(428.571428571, value("parallel(R1, R2, R1)"), 1e-6);
        assertEquals(398.15, value("Ta + P * theta"), 1e-9);
        assertEquals(Math.sqrt(2000), value("sqrt(P * R1)"), 1e-12);
        assertEquals(Dimension.VOLTAGE, dimension("sqrt(P * R1)"));
        assertEquals(0.6065306597126334, value("exp(-x)"), 1e-15);
        assertEquals(0.6931471805599453, value("ln(2)"), 1e-15);
        assertEquals(3, value("log10(1000)"), 1e-15);
        assertEquals(1000, value("min(R1, R2)"), 0);
        assertEquals(3000, value("max(R1, R2)"), 0);
        assertEquals(7, value("abs(Vf - Vs)"), 0);
        assertEquals(1, value("mod(row, 2)"), 0);
        assertEquals(2, value("mod(-1, 3)"), 0);
        assertEquals(3.141592653589793, value("pi"), 0);
        assertEquals(1, value("sin(pi / 2)"), 1e-15);
        assertEquals(-1, value("cos(pi)"), 1e-15);
        assertEquals(1, value("tan(pi / 4)"), 1e-15);
        assertEquals(0.7853981633974483, value("atan(1)"), 1e-15);
        assertEquals(0.7071067811865476, value("x ^ 0.5"), 1e-15);
        assertEquals(81, value("Vs ^ 2"), 0);
        assertEquals(Dimension.VOLTAGE.power(2), dimension("Vs ^ 2"));
        assertEquals(Dimension.VOLTAGE.power(-1), dimension("Vs ^ -1"));
    }

    /** IEC 60063: E24 holds 4.3 and 4.7, E12 holds 3.9 and 4.7. */
    @Test
    void preferredValuesComeFromTheNamedSeries() {
        assertEquals(470, value("next_up((Vs - Vf) / If, E24)"), 1e-9);
        assertEquals(430, value("next_down((Vs - Vf) / If, E24)"), 1e-9);
        assertEquals(430, value("nearest((Vs - Vf) / If, E24)"), 1e-9);
        assertEquals(390, value("next_down((Vs - Vf) / If, E12)"), 1e-9);
        assertEquals(Dimension.RESISTANCE, dimension("next_up(R1, E96)"));
        assertTrue(Double.isNaN(value("next_up(R1 - R2, E24)")));
    }

    @Test
    void wholeNumbersSurviveTheNoiseOfDecimals() {
        assertEquals(3, value("floor(2.9999999999996)"), 0);
        assertEquals(3, value("floor((0.1 + 0.2) * 10)"), 0);
        assertEquals(3, value("ceiling((0.1 + 0.2) * 10)"), 0);
        assertEquals(2, value("floor(2.9999)"), 0);
        assertEquals(3, value("ceiling(2.0001)"), 0);
        assertEquals(-3, value("floor(-2.5)"), 0);
        assertEquals(-2, value("ceiling(-2.5)"), 0);
        assertEquals(3, value("round(2.5)"), 0);
        assertEquals(-3, value("round(-2.5)"), 0);
        assertEquals(3, value("round(2.4999999999996)"), 0);
        assertEquals(2, value("round(2.4999)"), 0);
        assertEquals(0, value("mod(0.3, 0.1)"), 0);
        assertEquals(0, value("mod(5.9999999999996, 3)"), 0);
        assertEquals(1, value("mod(1, 1e10)"), 0);
        assertEquals(1e9, value("floor(1000000000.5)"), 0);
        assertEquals(0.0, value("ceiling(-0.3)"), 0.0);
        assertEquals(Double.POSITIVE_INFINITY, 1 / value("ceiling(-0.3)"), "no negative zero");
    }

    @Test
    void comparisonsTakeNoiseAsEqual() {
        assertTrue(holds("0.1 + 0.2 == 0.3"));
        assertFalse(holds("0.1 + 0.2 > 0.3"));
        assertTrue(holds("0.1 + 0.2 <= 0.3"));
        assertTrue(holds("0.3 >= 0.1 + 0.2"));
        assertFalse(holds("0.3 < 0.1 + 0.2"));
        assertFalse(holds("0.3 != 0.1 + 0.2"));
        assertTrue(holds("0.3 < 0.3000001"));
        assertTrue(holds("R2 > R1 and row == 3 or row == 7"));
        assertTrue(holds("not (R2 < R1)"));
    }

    @Test
    void aWordIsComparedWithItsWords() {
        assertTrue(holds("order == serpentine"));
        assertFalse(holds("order != serpentine"));
        assertFalse(holds("order == progressive"));
        assertTrue(holds("start == \"top left\" and order == \"serpentine\""));
        assertConditionFault("order == snake", 9, "order is never snake", "progressive or serpentine");
        assertConditionFault("order == serpentin", 9, "never serpentin", "Did you mean serpentine?");
        assertConditionFault("order < serpentine", 6, "words have no order", "== or !=");
        assertConditionFault("order == 3", 9, "compared with a quantity", "progressive or serpentine");
        assertConditionFault("serpentine == order", 14, "wrong side", "Write order ==");
        assertFault("order + 1", 0, "order is a word", "order == followed by progressive or serpentine");
    }

    @Test
    void divisionByZeroAndRootsOfNegativesGiveNoNumber() {
        assertEquals(Double.POSITIVE_INFINITY, value("1 / 0"));
        assertTrue(Double.isNaN(value("sqrt(0 - 1)")));
        assertTrue(Double.isNaN(value("ln(-1)")));
        assertFalse(holds("sqrt(-1) < 1 or sqrt(-1) >= 1 or sqrt(-1) == sqrt(-1)"));
    }

    @Test
    void dimensionFaultsSpeakInUnitsOfTheTrade() {
        assertFault("Vs + If", 3, "amperes are added to volts", "left is in V", "right in A", "a factor in \u03a9");
        assertFault("Vs - R1 * If - P", 13, "watts are taken from volts", "right in W");
        assertFault("Ta + theta", 3, "quantities in K/W are added to kelvins", "a factor in W");
        assertFault("Vs - 2", 3, "plain numbers are taken from volts", "2 V");
        assertFault("1 + Vs / R1", 2, "amperes are added to plain numbers", "1 A");
        assertFault("row + Vs", 4, "volts are added to plain numbers", "factor in V");
        assertConditionFault("Vs - Vf >= If", 8, "volts are compared with amperes", "left is in V");
        assertConditionFault("Vs > 1.2", 3, "volts are compared with plain numbers", "1.2 V");
        assertFault("parallel(R1, Vs)", 13, "parallel is given ohms and volts");
        assertFault("min(Vs, Vf, P)", 12, "min is given volts and watts");
    }

    @Test
    void argumentFaultsPointAtTheArgument() {
        assertFault("exp(Vs)", 4, "exp is given volts", "x / (1 V)");
        assertFault("2 + ln(theta)", 7, "ln is given quantities in K/W", "K/W");
        assertFault("floor(R1 / If)", 9, "floor is given");
        assertFault("mod(row, Vs)", 9, "mod is given volts");
        assertFault("sqrt(Vs)", 5, "the square root of volts has no unit", "V\u00b2");
        assertFault("2 ^ Vs", 4, "the power is in V", "plain number");
        assertFault("Vs ^ 0.5", 5, "whole number", "sqrt");
        assertFault("Vs ^ row", 5, "whole number");
        assertFault("Vs ^ 10", 5, "whole number from -9 to 9");
        assertFault("((Vs ^ 9) ^ 9) ^ 9", 10, "powers this high");
    }

    @Test
    void argumentsAreCounted() {
        assertFault("1 + sqrt(x, x)", 4, "sqrt takes one argument, not 2", "sqrt(x)");
        assertFault("parallel(R1)", 0, "parallel takes two arguments or more, not 1", "parallel(a, b)");
        assertFault("mod(x)", 0, "mod takes two arguments, not 1", "mod(a, b)");
        assertFault("exp()", 0, "exp takes one argument, not 0", "exp(x)");
        assertFault("next_up(R1)", 0, "next_up takes two arguments, not 1", "next_up(R, E24)");
        assertFault("next_up(R1, 24)", 12, "needs a series", "E3, E6, E12");
        assertFault("next_up(R1, E25)", 12, "needs a series", "E24");
    }

    @Test
    void unknownNamesComeWithTheNearestKnownOne() {
        assertFault("Vs - vf", 5, "nothing is named vf", "Did you mean Vf?");
        assertFault("thetta * P", 0, "nothing is named thetta", "Did you mean theta?");
        assertFault("current_limit", 0, "nothing is named current_limit", "among the givens", "If, P, R1");
        assertFault("sqr(x)", 0, "there is no function sqr", "Did you mean sqrt?");
        assertFault("paralel(R1, R2)", 0, "there is no function paralel", "Did you mean parallel?");
        assertFault("current(D1)", 0, "there is no function current", "only stand in proofs");
        assertFault("Vs (R1)", 0, "Vs is a quantity", "Vs * (");
        assertFault("2 * sqrt", 4, "sqrt is a function", "sqrt( )");
        assertFault("R1 + E24", 5, "E24 is a series", "next_up(R, E24)");
    }

    @Test
    void measuresAreAskedOfTheScopeAndOfTheModel() {
        Scope proof = new Scope(
                SCOPE.quantities(),
                Map.of(),
                (measure, arguments) -> measure.equals("current") && arguments.size() == 1
                        ? Optional.of(Dimension.CURRENT)
                        : Optional.empty());
        Expression measure = FormulaReader.expression("current(D1) * R1");
        assertEquals(Dimension.VOLTAGE, Evaluation.check(measure, proof));
        Values measured = VALUES.measuring((name, arguments) -> {
            assertEquals("current", name);
            assertEquals(List.of(new Expression.Name("D1", 8)), arguments);
            return new Quantity(0.01, Dimension.CURRENT);
        });
        assertEquals(10, Evaluation.evaluate(measure, measured).value(), 1e-12);
        assertThrows(FormulaFault.class, () -> Evaluation.check(FormulaReader.expression("curent(D1)"), proof));
    }

    @Test
    void namesAreListedInOrderWithoutFunctionsSeriesAndPi() {
        assertEquals(
                List.of("Vs", "Vf", "If"),
                List.copyOf(Evaluation.names(FormulaReader.expression("next_up((Vs - Vf) / If + 0 * Vs / If, E24)"))));
        assertEquals(List.of("x"), List.copyOf(Evaluation.names(FormulaReader.expression("sin(2 * pi * x)"))));
        assertEquals(
                List.of("order", "serpentine", "start", "row"),
                List.copyOf(Evaluation.names(FormulaReader.condition(
                        "order == serpentine and not (start == \"top left\" or mod(row, 2) == 0)"))));
        assertEquals(List.of("D1"), List.copyOf(Evaluation.names(FormulaReader.expression("current(D1)"))));
    }

    @Test
    void anEarlierAnswerIsCarriedForward() {
        Working working = new Working(List.of(
                Step.of("Vr", FormulaReader.expression("Vs - Vf")), Step.of("R", FormulaReader.expression("Vr / If"))));
        assertEquals(437.5, working.work(VALUES).quantity("R").value(), 1e-9);
        Values carried = working.work(VALUES, Map.of("Vr", new Quantity(9, Dimension.VOLTAGE)));
        assertEquals(562.5, carried.quantity("R").value(), 1e-9);
    }

    @Test
    void theFirstCaseThatHoldsApplies() {
        Step place = new Step(
                "k",
                List.of(
                        new Step.Case(
                                Optional.of(FormulaReader.condition("mod(row, 2) == 0")),
                                FormulaReader.expression("x")),
                        new Step.Case(Optional.empty(), FormulaReader.expression("7 - x"))));
        assertEquals(1, place.applying(VALUES));
        assertEquals(0, place.applying(VALUES.with("row", Quantity.number(4))));
    }
}
