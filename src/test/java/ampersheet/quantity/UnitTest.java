package ampersheet.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class UnitTest {
    private static void assertUnit(String text, String symbol, Dimension dimension, double factor) {
        Unit unit = Unit.parse(text);
        assertEquals(symbol, unit.symbol(), text);
        assertEquals(dimension, unit.dimension(), text);
        assertEquals(factor, unit.factor(), Math.abs(factor) * 1e-15, text);
    }

    @Test
    void unitsWithPrefixHaveSymbolDimensionAndFactor() {
        assertUnit("V", "V", Dimension.VOLTAGE, 1);
        assertUnit("mA", "mA", Dimension.CURRENT, 1e-3);
        assertUnit("uA", "µA", Dimension.CURRENT, 1e-6);
        assertUnit("µA", "µA", Dimension.CURRENT, 1e-6);
        assertUnit("μA", "µA", Dimension.CURRENT, 1e-6);
        assertUnit("ohm", "Ω", Dimension.RESISTANCE, 1);
        assertUnit("kohm", "kΩ", Dimension.RESISTANCE, 1e3);
        assertUnit("M\u2126", "MΩ", Dimension.RESISTANCE, 1e6);
        assertUnit("Gohm", "GΩ", Dimension.RESISTANCE, 1e9);
        assertUnit("pF", "pF", Dimension.CAPACITANCE, 1e-12);
        assertUnit("uH", "µH", Dimension.INDUCTANCE, 1e-6);
        assertUnit("kHz", "kHz", Dimension.FREQUENCY, 1e3);
        assertUnit("kg", "kg", Dimension.MASS, 1);
        assertUnit("g", "g", Dimension.MASS, 1e-3);
        assertUnit("cm", "cm", Dimension.LENGTH, 1e-2);
        assertUnit("mm2", "mm²", Dimension.LENGTH.power(2), 1e-6);
        assertUnit("mm^2", "mm²", Dimension.LENGTH.power(2), 1e-6);
        assertUnit("mm²", "mm²", Dimension.LENGTH.power(2), 1e-6);
        assertUnit("m2", "m²", Dimension.LENGTH.power(2), 1);
        assertUnit("min", "min", Dimension.TIME, 60);
        assertUnit("h", "h", Dimension.TIME, 3600);
        assertUnit("ms", "ms", Dimension.TIME, 1e-3);
        assertUnit("mAh", "mA·h", Dimension.CURRENT.times(Dimension.TIME), 3.6);
        assertUnit("Wh", "W·h", Dimension.ENERGY, 3600);
    }

    @Test
    void unitsOfDimensionOneKeepTheirFactors() {
        assertUnit("1", "", Dimension.ONE, 1);
        assertUnit("%", "%", Dimension.ONE, 0.01);
        assertUnit("bit", "bit", Dimension.ONE, 1);
        assertUnit("B", "B", Dimension.ONE, 8);
        assertUnit("turn", "turn", Dimension.ONE, 1);
        assertUnit("px", "px", Dimension.ONE, 1);
        assertUnit("rad", "rad", Dimension.ONE, 1);
        assertUnit("deg", "°", Dimension.ONE, Math.PI / 180);
    }

    @Test
    void turnsArePrintedAsTextBooksDoAndStayTurns() {
        Unit plain = Unit.parse("turn/min");
        for (String printed : List.of("r/min", "U/min")) {
            assertUnit(printed, printed, plain.dimension(), plain.factor());
            assertTrue(Unit.parse(printed).countsTurns(), printed);
        }
        assertUnit("r/s", "r/s", plain.dimension(), 1);
        for (String printed : List.of("turns", "Umdrehungen")) {
            assertUnit(printed, printed, Dimension.ONE, 1);
            assertTrue(Unit.parse(printed).countsTurns(), printed);
        }
        assertFalse(Unit.parse("rad/s").countsTurns());
    }

    @Test
    void compoundsFollowTheWritingRules() {
        assertUnit("K/W", "K/W", Dimension.TEMPERATURE.over(Dimension.POWER), 1);
        assertUnit("V/A", "V/A", Dimension.RESISTANCE, 1);
        assertUnit("W/(m*K)", "W/(m·K)", Dimension.POWER.over(Dimension.LENGTH.times(Dimension.TEMPERATURE)), 1);
        assertUnit("ohm*m", "Ω·m", Dimension.RESISTANCE.times(Dimension.LENGTH), 1);
        assertUnit("bit/s", "bit/s", Dimension.FREQUENCY, 1);
        assertUnit("kbit/s", "kbit/s", Dimension.FREQUENCY, 1e3);
        assertUnit("1/K", "1/K", Dimension.TEMPERATURE.power(-1), 1);
        assertUnit("K^-1", "1/K", Dimension.TEMPERATURE.power(-1), 1);
        assertUnit("K⁻¹", "1/K", Dimension.TEMPERATURE.power(-1), 1);
        assertUnit("J/(kg*K)", "J/(kg·K)", Dimension.ENERGY.over(Dimension.MASS.times(Dimension.TEMPERATURE)), 1);
        assertUnit("mohm / m", "mΩ/m", Dimension.RESISTANCE.over(Dimension.LENGTH), 1e-3);
        assertUnit("A/mm2", "A/mm²", Dimension.CURRENT.over(Dimension.LENGTH.power(2)), 1e6);
        assertUnit("m/s^2", "m/s²", Dimension.LENGTH.over(Dimension.TIME.power(2)), 1);
        assertUnit("mV/K", "mV/K", Dimension.VOLTAGE.over(Dimension.TEMPERATURE), 1e-3);
    }

    @Test
    void everySymbolPrintedIsReadBackAsTheSameUnit() {
        for (String text : List.of(
                "V",
                "mA",
                "kohm",
                "mm2",
                "K/W",
                "W/(m*K)",
                "ohm*m",
                "bit/s",
                "1/K",
                "J/(kg*K)",
                "uF",
                "degC",
                "%",
                "deg",
                "mAh",
                "kWh",
                "W/(m^2*K)",
                "ppm/K",
                "cm",
                "min")) {
            Unit unit = Unit.parse(text);
            assertEquals(unit, Unit.parse(unit.symbol()), text);
        }
    }

    @Test
    void theBaseIsTheUnitWithoutTheFirstPrefix() {
        assertEquals("Ω", Unit.parse("kohm").base());
        assertEquals("A/V", Unit.parse("mA/V").base());
        assertEquals("g", Unit.parse("kg").base());
        assertEquals("1", Unit.parse("1").base());
        assertEquals(Unit.parse("ohm"), Unit.parse("kohm").withoutPrefix());
    }

    @Test
    void printingMayChooseAPrefixOnlyWhereTheTradeDoes() {
        for (String yes : List.of("V", "mA", "ohm", "m", "s", "bit/s", "ohm/m", "A/V", "V/K", "ohm*m", "bit")) {
            assertTrue(Unit.parse(yes).prefixable(), yes);
        }
        for (String no : List.of(
                "K",
                "degC",
                "%",
                "1",
                "turn",
                "px",
                "K/W",
                "W/(m*K)",
                "J/(kg*K)",
                "1/K",
                "min",
                "h",
                "mm2",
                "deg",
                "ppm/K",
                "frame/s")) {
            assertFalse(Unit.parse(no).prefixable(), no);
        }
    }

    @Test
    void aValueInAUnitBecomesTheNearestDoubleInSi() {
        assertEquals(0.02, Unit.parse("mA").toSi(20));
        assertEquals(4700.0, Unit.parse("kohm").toSi(4.7));
        assertEquals(1.5e-6, Unit.parse("mm2").toSi(1.5));
        assertEquals(2.2e-6, Unit.parse("uF").toSi(2.2));
        assertEquals(298.15, Unit.parse("degC").toSi(25));
        assertEquals(25.0, Unit.parse("degC").fromSi(298.15));
        assertEquals(0.07, Unit.parse("%").toSi(7));
    }

    private static void assertFault(String text, int position, String saying) {
        UnitFault fault = assertThrows(UnitFault.class, () -> Unit.parse(text), text);
        assertEquals(position, fault.position(), text + ": " + fault.getMessage());
        assertTrue(fault.getMessage().contains(saying), text + ": " + fault.getMessage());
    }

    @Test
    void aFaultPointsAtTheCharacterThatDoesNotFit() {
        assertFault("", 0, "there is no unit");
        assertFault("volts", 0, "there is no unit volts");
        assertFault("K/Q", 2, "there is no unit Q");
        assertFault("V A", 2, "does not belong");
        assertFault("K/W/m", 3, "parentheses");
        assertFault("W/m*K", 3, "parentheses");
        assertFault("W/(m*K", 2, "not closed");
        assertFault("V*", 2, "missing at the end");
        assertFault("mm9", 2, "exponent");
        assertFault("m^", 1, "exponent");
        assertFault("1 V", 2, "after 1");
        assertFault("kkohm", 0, "there is no unit kkohm");
        assertFault("k", 0, "there is no unit k");
    }

    @Test
    void aFaultNamesTheUnitThatDiffersOnlyInCase() {
        assertFault("ma", 0, "is it mA or MA?");
        assertFault("KHZ", 0, "is it kHz?");
        assertFault("C", 0, "degC");
    }

    @Test
    void theDegreeCelsiusStandsAlone() {
        assertFault("degC/W", 0, "write K");
    }
}
