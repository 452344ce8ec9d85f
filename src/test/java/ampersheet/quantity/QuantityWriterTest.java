package ampersheet.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class QuantityWriterTest {
    private static final QuantityWriter POINT = QuantityWriter.POINT;
    private static final QuantityWriter COMMA = new QuantityWriter(DecimalMarker.COMMA);

    /** {@code _} stands for the no-break space, {@code '} for the narrow one. */
    private static String spaced(String text) {
        return text.replace('_', '\u00A0').replace('\'', '\u202F').replace('-', '\u2212');
    }

    private static void assertRounded(String expected, double si, String unit, int figures) {
        assertEquals(
                spaced(expected), POINT.rounded(si, Unit.parse(unit), figures).text());
    }

    private static void assertPlain(String expected, double si, String unit, int figures) {
        assertEquals(
                spaced(expected), POINT.plain(si, Unit.parse(unit), figures).text());
    }

    @Test
    void aLineOfWorkingShowsADigitMoreWhereRoundingItAgainWouldChangeTheAnswer() {
        QuantityWriter writer = QuantityWriter.POINT;
        Unit ohm = Unit.parse("ohm");
        assertEquals("434.48\u00a0Ω", writer.working(6.3 / 0.0145, ohm, 4).text());
        assertEquals("434\u00a0Ω", writer.rounded(6.3 / 0.0145, ohm, 3).text());
        assertEquals("923.1\u00a0Ω", writer.working(923.0769, ohm, 4).text());
        assertEquals("434.5\u00a0Ω", writer.working(434.5172839, ohm, 4).text());
    }

    @Test
    void theEngineeringPrefixPutsTheNumberBetweenOneAndAThousand() {
        assertRounded("4.70_kΩ", 4700, "ohm", 3);
        assertRounded("4.70_kΩ", 4700, "kohm", 3);
        assertRounded("470_Ω", 470, "kohm", 3);
        assertRounded("20.0_mA", 0.02, "A", 3);
        assertRounded("2.20_µF", 2.2e-6, "F", 3);
        assertRounded("47.0_pF", 47e-12, "F", 3);
        assertRounded("0.500_pF", 0.5e-12, "F", 3);
        assertRounded("1.00_MΩ", 1e6, "ohm", 3);
        assertRounded("800_kbit/s", 800e3, "bit/s", 3);
        assertRounded("5.26_mΩ/m", 0.00526, "ohm/m", 3);
        assertRounded("16.8_nΩ·m", 1.68e-8, "ohm*m", 3);
        assertRounded("-2.00_mV/K", -0.002, "V/K", 3);
        assertRounded("1.50_mm", 0.0015, "m", 3);
        assertRounded("1.25_µs", 1.25e-6, "s", 3);
        assertRounded("1500_s", 1500, "s", 4);
        assertRounded("2.50_g", 0.0025, "kg", 3);
        assertRounded("1500_kg", 1500, "kg", 4);
    }

    @Test
    void someUnitsNeverTakeAPrefix() {
        assertRounded("0.0250_K", 0.025, "K", 3);
        assertRounded("1230_K", 1234, "K", 3);
        assertRounded("25.0_°C", 298.15, "degC", 3);
        assertRounded("62.5_K/W", 62.5, "K/W", 3);
        assertRounded("0.500_%", 0.005, "%", 3);
        assertRounded("2.00_min", 120, "min", 3);
        assertRounded("0.250_W/(m·K)", 0.25, "W/(m*K)", 3);
        assertRounded("0.003'93_1/K", 0.00393, "1/K", 3);
        assertRounded("1.70×10⁻⁵_1/K", 1.7e-5, "1/K", 3);
        assertRounded("90.0°", Math.PI / 2, "deg", 3);
        assertRounded("17", 17, "1", 2);
        assertPlain("0.205_mm²", 0.205e-6, "mm2", 3);
    }

    @Test
    void roundingThatCarriesTakesTheNextPrefix() {
        assertRounded("1.00_kΩ", 999.6, "ohm", 3);
        assertRounded("999_Ω", 999.4, "ohm", 3);
        assertRounded("1.00_A", 0.9996, "A", 3);
        assertRounded("-1.0_mA", -0.00099951, "A", 2);
        assertRounded("100_µA", 0.00009996, "A", 3);
    }

    @Test
    void roundingIsHalfUpOnTheDecimalAsItIsRead() {
        assertRounded("2.68_V", 2.675, "V", 3);
        assertRounded("1.01_V", 1.005, "V", 3);
        assertRounded("0.2", 0.15, "1", 1);
        assertRounded("0.3", 0.25, "1", 1);
        assertRounded("0.4", 0.35, "1", 1);
        assertRounded("-0.3", -0.25, "1", 1);
        assertRounded("1.12_kΩ", 1115, "ohm", 3);
        assertRounded("8.35_V", 8.345, "V", 3);
        assertRounded("1.45_V", 1.4499999999999995, "V", 3);
        assertRounded("1.4_V", 1.44999999999, "V", 2);
        assertRounded("300_mV", 0.1 + 0.2, "V", 3);
    }

    /** Values for which Double.toString differs before and after Java 19. */
    @Test
    void digitsDoNotDependOnTheJavaVersion() {
        assertRounded("2.000'000'000'000'00×10²³", 2.0E23, "1", 15);
        assertPlain("0.002", 2.0E-3, "1", 3);
        assertPlain("8.41×10²¹", 8.41E21, "1", 3);
        assertPlain("2×10²³", 2.0E23, "1", 3);
        assertPlain("9×10⁻⁵", 9.0E-5, "1", 3);
    }

    @Test
    void aGivenIsPrintedAsItWasWritten() {
        assertPlain("12.75_V", 12.75, "V", 3);
        assertPlain("5_V", 5, "V", 3);
        assertPlain("16_mA", 0.016, "mA", 3);
        assertPlain("1.25_µs", 1.25e-6, "s", 2);
        assertPlain("25.4_°C", Unit.parse("degC").toSi(25.4), "degC", 3);
        assertPlain("0.1_°C", Unit.parse("degC").toSi(0.1), "degC", 3);
        assertPlain("-40_°C", Unit.parse("degC").toSi(-40), "degC", 3);
        assertPlain("0_°C", 273.15, "degC", 3);
        assertPlain("0.048", 0.048, "1", 3);
        assertPlain("1_228_800".replace('_', '\''), 1228800, "1", 3);
        assertPlain("1.2288_Mbit", 1228800, "bit", 3);
        assertPlain("0_mA", 0, "mA", 3);
        assertPlain("300_mV", 0.1 + 0.2, "V", 3);
    }

    @Test
    void aLongDecimalIsRoundedAndSaysSo() {
        QuantityWriter.Printed third = POINT.plain(1.0 / 3, Unit.parse("A"), 3);
        assertEquals(spaced("333_mA"), third.text());
        assertFalse(third.exact());
        assertPlain("499.99_mA", 0.49999, "A", 3);
        assertTrue(POINT.plain(0.49999, Unit.parse("A"), 3).exact());
        assertPlain("500_mA", 0.49999999, "A", 3);
        assertTrue(POINT.rounded(0.25, Unit.parse("V"), 3).exact());
        assertFalse(POINT.rounded(0.25125, Unit.parse("V"), 3).exact());
    }

    @Test
    void theRoundedTextLosesItsTrailingZerosWherePlain() {
        assertPlain("7_V", 7.0000000312, "V", 3);
        assertFalse(POINT.plain(7.0000000312, Unit.parse("V"), 3).exact());
    }

    @Test
    void fromFiveDigitsOnTheyStandInGroupsOfThree() {
        assertPlain("1234", 1234, "1", 4);
        assertPlain("12'345", 12345, "1", 5);
        assertPlain("123'456'789", 123456789, "1", 9);
        assertRounded("1.234'50_V", 1.2345, "V", 6);
        assertRounded("1.2345_V", 1.2345, "V", 5);
    }

    @Test
    void theDecimalMarkerMayBeAComma() {
        assertEquals(
                spaced("4,70_kΩ"), COMMA.rounded(4700, Unit.parse("ohm"), 3).text());
        assertEquals("4,7", COMMA.plain(4700, Unit.parse("ohm"), 3).number());
    }

    @Test
    void numberAndUnitAreGivenApart() {
        QuantityWriter.Printed printed = POINT.rounded(-0.0047, Unit.parse("A"), 2);
        assertEquals("\u22124.7", printed.number());
        assertEquals("mA", printed.unit());
        assertEquals("\u22124.7\u00A0mA", printed.text());
    }

    @Test
    void whatIsNotANumberIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> POINT.plain(Double.NaN, Unit.ONE, 3));
        assertThrows(IllegalArgumentException.class, () -> POINT.rounded(1 / 0.0, Unit.ONE, 3));
    }
}
