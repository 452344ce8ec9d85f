package ampersheet.formula;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.quantity.Dimension;
import ampersheet.quantity.Quantity;
import java.util.Map;
import org.junit.jupiter.api.Test;

class NumberWithUnitTest {
    private static final Dimension KELVIN_PER_WATT = Dimension.TEMPERATURE.over(Dimension.POWER);

    private static void assertIsQuantity(String formula, double si, Dimension dimension) {
        Quantity quantity = Evaluation.evaluate(
                FormulaReader.expression(formula),
                Values.of(
                        Map.of("W", new Quantity(4, Dimension.POWER), "R1", new Quantity(100, Dimension.RESISTANCE)),
                        Map.of()));
        assertEquals(si, quantity.value(), Math.abs(si) * 1e-14, formula);
        assertEquals(dimension, quantity.dimension(), formula);
    }

    @Test
    void aUnitStandsAfterItsNumberWithOrWithoutABlank() {
        assertIsQuantity("1.2 V", 1.2, Dimension.VOLTAGE);
        assertIsQuantity("1.2V", 1.2, Dimension.VOLTAGE);
        assertIsQuantity("1 kohm", 1000, Dimension.RESISTANCE);
        assertIsQuantity("1.25 us", 1.25e-6, Dimension.TIME);
        assertIsQuantity("20 mA", 0.02, Dimension.CURRENT);
        assertIsQuantity("2e3 V", 2000, Dimension.VOLTAGE);
        assertIsQuantity("25 degC", 298.15, Dimension.TEMPERATURE);
        assertIsQuantity("50 %", 0.5, Dimension.ONE);
        assertIsQuantity("4.7 k\u03a9", 4700, Dimension.RESISTANCE);
    }

    @Test
    void aDivisionBelongsToTheUnitOnlyWithoutBlanks() {
        assertIsQuantity("50 K/W", 50, KELVIN_PER_WATT);
        assertIsQuantity("50 K / W", 12.5, KELVIN_PER_WATT);
        assertInstanceOf(Expression.Constant.class, FormulaReader.expression("50 K/W"));
        assertInstanceOf(Expression.Quotient.class, FormulaReader.expression("50 K / W"));
        assertInstanceOf(Expression.Quotient.class, FormulaReader.expression("50 K /W"));
        assertInstanceOf(Expression.Quotient.class, FormulaReader.expression("50 K/ W"));
        assertIsQuantity("0.3 W/(m*K)", 0.3, Dimension.POWER.over(Dimension.LENGTH.times(Dimension.TEMPERATURE)));
    }

    @Test
    void anOperatorMeantForTheFormulaIsLeftToIt() {
        assertIsQuantity("2 V*3", 6, Dimension.VOLTAGE);
        assertIsQuantity("6 V/3", 2, Dimension.VOLTAGE);
        assertIsQuantity("9 V/R1", 0.09, Dimension.CURRENT);
        assertIsQuantity("9 V/(2 * R1)", 0.045, Dimension.CURRENT);
        assertIsQuantity("2 W*R1", 200, Dimension.POWER.times(Dimension.RESISTANCE));
        assertIsQuantity("50 K/W*R1", 5000, KELVIN_PER_WATT.times(Dimension.RESISTANCE));
        assertIsQuantity("5 V-2 V", 3, Dimension.VOLTAGE);
    }

    @Test
    void aPowerDirectlyAfterTheUnitBelongsToTheUnit() {
        assertIsQuantity("3 m^2", 3, Dimension.LENGTH.power(2));
        assertIsQuantity("(3 m)^2", 9, Dimension.LENGTH.power(2));
        assertIsQuantity("35 mm2", 35e-6, Dimension.LENGTH.power(2));
        FormulaFault fault = assertThrows(FormulaFault.class, () -> FormulaReader.expression("3 m ^ 2"));
        assertEquals(4, fault.position());
        assertTrue(fault.nextAction().contains("(3 m)^2"), fault.nextAction());
    }

    @Test
    void aMinusBeforeDegreesCelsiusIsPartOfThePointOnTheScale() {
        assertIsQuantity("-40 degC", 233.15, Dimension.TEMPERATURE);
        assertIsQuantity("25 degC - 20 degC", 5, Dimension.TEMPERATURE);
        assertIsQuantity("25 degC - -40 degC", 65, Dimension.TEMPERATURE);
    }

    @Test
    void aWordThatIsNoUnitIsNamedWithTheProductItMayBe() {
        FormulaFault fault = assertThrows(FormulaFault.class, () -> FormulaReader.expression("Vs - 2 Vf"));
        assertEquals(7, fault.position());
        assertTrue(fault.getMessage().contains("Vf after the number 2 is not a unit"), fault.getMessage());
        assertTrue(fault.nextAction().contains("2 * Vf"), fault.nextAction());
        assertEquals(
                1,
                assertThrows(FormulaFault.class, () -> FormulaReader.expression("4k7"))
                        .position());
    }

    @Test
    void joiningWordsAreNoUnits() {
        assertTrue(Evaluation.holds(
                FormulaReader.condition("1 < 2 and 2 V > 1 V or 3 < 2"), Values.of(Map.of(), Map.of())));
    }
}
