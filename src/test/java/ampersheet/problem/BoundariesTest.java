package ampersheet.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.formula.Condition;
import ampersheet.formula.Expression;
import ampersheet.formula.FormulaReader;
import ampersheet.formula.Values;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Quantity;
import ampersheet.quantity.Unit;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

class BoundariesTest {

    private static boolean nearJump(String formula, double x) {
        Expression.Call jump =
                Boundaries.jumps(FormulaReader.expression(formula)).get(0);
        return Boundaries.near(
                jump,
                Values.of(
                        Map.of("x", new Quantity(x, Dimension.ONE), "R", new Quantity(x, Dimension.RESISTANCE)),
                        Map.of()));
    }

    private static boolean nearComparison(String condition, double volts) {
        Condition.Comparison comparison =
                Boundaries.comparisons(FormulaReader.condition(condition)).get(0);
        return Boundaries.near(
                comparison,
                Values.of(
                        Map.of(
                                "V",
                                new Quantity(volts, Dimension.VOLTAGE),
                                "W",
                                new Quantity(volts, Dimension.VOLTAGE),
                                "n",
                                new Quantity(volts, Dimension.ONE)),
                        Map.of("order", "serpentine")),
                Set.of("V"));
    }

    @Test
    void aValueOnAPreferredValueIsOnTheEdgeOfRoundingUpAndDown() {
        assertTrue(nearJump("next_up(R, E24)", 470));
        assertTrue(nearJump("next_down(R, E24)", 470 * (1 + 1e-12)));
        assertFalse(nearJump("next_up(R, E24)", 470.001));
        assertFalse(nearJump("nearest(R, E24)", 470));
    }

    @Test
    void theNearestTurnsAtTheGeometricMean() {
        assertTrue(nearJump("nearest(R, E24)", Math.sqrt(470.0 * 510)));
        assertFalse(nearJump("nearest(R, E24)", 490));
    }

    @Test
    void aWholeNumberMayBeFlooredButNotItsNeighbour() {
        assertFalse(nearJump("floor(x)", 3));
        assertTrue(nearJump("floor(x)", 2.9999999999999996));
        assertTrue(nearJump("ceiling(x)", 3.0000000001));
        assertFalse(nearJump("ceiling(x)", 3.01));
        assertTrue(nearJump("round(x)", 2.5));
        assertFalse(nearJump("round(x)", 2.4));
        assertTrue(nearJump("mod(x, 0.1)", 0.3));
        assertFalse(nearJump("mod(x, 4)", 8));
    }

    @Test
    void sidesThatAreAllButEqualCouldTurn() {
        assertTrue(nearComparison("2 * V <= 5 V", 2.5));
        assertTrue(nearComparison("V - 4.9 V < 0.1 V", 5));
        assertFalse(nearComparison("2 * V <= 5 V", 2.4));
    }

    @Test
    void givensComparedAsTheyStandCannotTurn() {
        assertFalse(nearComparison("V == 12 V", 12));
        assertTrue(nearComparison("W == 12 V", 12), "W is no given");
        assertFalse(nearComparison("n * 2 == 6", 3));
        assertFalse(nearComparison("order == serpentine", 3));
    }

    @Test
    void nestedJumpsAndComparisonsAreAllFound() {
        assertEquals(
                3,
                Boundaries.jumps(FormulaReader.expression("floor(x) + next_up(R * (1 + mod(x, 2)), E12) / R"))
                        .size());
        assertEquals(
                3,
                Boundaries.comparisons(FormulaReader.condition("V > 1 V and not (V < 2 V or n == 3)"))
                        .size());
    }

    @Test
    void aPrintedHalfIsATie() {
        assertTrue(Boundaries.roundingTie(312.5, Unit.parse("ohm"), 3));
        assertTrue(Boundaries.roundingTie(0.0020125, Unit.parse("A"), 4));
        assertFalse(Boundaries.roundingTie(312.6, Unit.parse("ohm"), 3));
        assertFalse(Boundaries.roundingTie(0, Unit.parse("ohm"), 3));
        assertTrue(Boundaries.roundingTie(273.15 + 85.25, Unit.parse("degC"), 3));
        assertFalse(Boundaries.roundingTie(273.15 + 85.2, Unit.parse("degC"), 3));
    }
}
