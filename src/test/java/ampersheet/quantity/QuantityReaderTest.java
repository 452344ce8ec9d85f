package ampersheet.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.source.Languages;
import java.text.Normalizer;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class QuantityReaderTest {
    private static Reading.Value value(String typed, String unit) {
        return assertInstanceOf(
                Reading.Value.class,
                QuantityReader.read(typed, Unit.parse(unit)),
                () -> typed + ": " + QuantityReader.read(typed, Unit.parse(unit)));
    }

    /** Reads {@code typed} as the answer to a question asked in {@code unit}. */
    private static void assertReads(double si, String typed, String unit) {
        assertEquals(si, value(typed, unit).si(Unit.parse(unit)), Math.abs(si) * 1e-15, typed);
    }

    private static void assertUnreadable(String typed, String saying) {
        Reading reading = QuantityReader.read(typed);
        Reading.Unreadable unreadable = assertInstanceOf(Reading.Unreadable.class, reading, typed + ": " + reading);
        assertTrue(unreadable.problem(Languages.ENGLISH).contains(saying), typed + ": " + unreadable.problem());
        assertEquals(typed, unreadable.asTyped());
    }

    private static void assertAmbiguous(String typed, String... meanings) {
        Reading reading = QuantityReader.read(typed);
        Reading.Ambiguous ambiguous = assertInstanceOf(Reading.Ambiguous.class, reading, typed + ": " + reading);
        assertEquals(List.of(meanings), ambiguous.meanings(Languages.ENGLISH));
    }

    @Test
    void fourPointSevenKilohmIsReadHoweverItIsTyped() {
        for (String typed : List.of(
                "4.7k",
                "4,7k",
                "4k7",
                "4K7",
                "4.7K",
                "4.7 k",
                "4700",
                "4 700",
                "4700 ohm",
                "4700Ω",
                "4,7 kΩ",
                "4.7kΩ",
                "4.7 k\u2126",
                "4.7\u00A0kΩ",
                "4.7\u202FkΩ",
                "4.7\u2009k\u2009Ω",
                "4\u202F700 Ω",
                "4\u2009700",
                "4'700",
                "4\u2019700",
                "0.0047 MΩ",
                ".0047M",
                "4.7e3",
                "4.7E3",
                "4.7E+3",
                "4.7x10^3",
                "4.7 x 10^3",
                "4.7*10^3",
                "4.7×10^3 ohm",
                "4.7·10^3",
                "4.7 x 10³",
                "4.7×10³ Ω",
                "4.7*10**3",
                "0.47e4",
                "47e2 ohms",
                "4.7 kohm",
                "4.7 kOhm",
                "4.7 KOHM",
                "4.7 k ohm",
                "4.7 kilohm",
                "4.7 kilo ohms",
                "4.7 kiloohms",
                "4700R",
                "4.7kR",
                "4k7Ω",
                "4k7 ohm",
                "R = 4.7 kΩ",
                "R=4k7",
                "R1 = 4700",
                "Rn ≈ 4.7 k",
                "≈ 4.7 kΩ",
                "~4.7k",
                "= 4.7k",
                "about 4.7 kΩ",
                "+4.7k",
                "４．７ｋΩ",
                "4.7㏀",
                "٤.٧ k",
                "4.70k",
                "4.700 k",
                "4700.",
                "4.7 kΩ.",
                "  4.7 k  ",
                "4,7000 k",
                "0,0047 M",
                "4,700.0",
                "4.700,0",
                "470e1",
                "4.7 V/mA",
                "4.7 kV/A")) {
            assertReads(4700, typed, "ohm");
        }
    }

    @Test
    void aBareNumberIsInTheUnitAskedAndABarePrefixInItsBaseUnit() {
        assertReads(4700, "4.7", "kohm");
        assertReads(4.7e6, "4700", "kohm");
        assertReads(4700, "4.7k", "kohm");
        assertReads(4700, "4.7k", "Mohm");
        assertReads(5, "5k", "kg");
        assertFalse(value("4.7", "kohm").hasPrefix());
        assertTrue(value("4.7k", "kohm").hasPrefix());
    }

    /**
     * IEC 60062, examples as the reference list has them: R47, 4R7, 470R, 4K7, 47K3, 4M7; the capacitors from memory.
     */
    @Test
    void theLetterCodesOfTheStandardAreRead() {
        assertReads(0.47, "R47", "ohm");
        assertReads(4.7, "4R7", "ohm");
        assertReads(470, "470R", "ohm");
        assertReads(4700, "4K7", "ohm");
        assertReads(47300, "47K3", "ohm");
        assertReads(4.7e6, "4M7", "ohm");
        assertReads(0.005, "R005", "ohm");
        assertReads(0.005, "5L0", "ohm");
        assertReads(2.2e-6, "2u2", "F");
        assertReads(2.2e-6, "2µ2", "F");
        assertReads(2.2e-6, "2μ2 F", "F");
        assertReads(4.7e-9, "4n7", "F");
        assertReads(4.7e-9, "4n7F", "nF");
        assertReads(2.2e-12, "2p2", "F");
        assertReads(0.33e-12, "p33", "F");
        assertReads(1.0e-6, "1u0", "uF");
        assertReads(3.3, "3V3", "V");
        assertReads(4700, "4k7", "kohm");
        assertEquals(Unit.parse("ohm"), value("4R7", "ohm").unit().orElseThrow());
    }

    private static void assertUnreadable(String typed, String unit, String saying) {
        Reading reading = QuantityReader.read(typed, Unit.parse(unit));
        Reading.Unreadable unreadable = assertInstanceOf(Reading.Unreadable.class, reading, typed + ": " + reading);
        assertTrue(unreadable.problem(Languages.ENGLISH).contains(saying), typed + ": " + unreadable.problem());
        assertFalse(
                unreadable.problem(Languages.ENGLISH).contains("write a unit such as"),
                typed + ": " + unreadable.problem());
    }

    @Test
    void whatStandsAroundANumberIsLeftOut() {
        for (String typed : List.of(
                "ca. 470 Ω",
                "approx. 470 Ω",
                "about 470 Ω",
                "≈ 470 Ω",
                "~470 Ω",
                "470 Ω?",
                "470 Ω (?)",
                "470 Ω ± 5 %",
                "470 Ω +/- 5%",
                "R: 470 Ω",
                "R1 = 470 Ω",
                "the answer is 470 Ω",
                "470 Ω approx.",
                "roughly 470 ohms",
                "470 Ω (approx.)",
                "ca 470R",
                "resistor 470 Ω",
                "470R ± 5 %",
                "R = approx. 470 Ω ?")) {
            assertReads(470, typed, "ohm");
        }
        for (String typed : List.of(
                "7th",
                "7.",
                "nr 7",
                "nr. 7",
                "no. 7",
                "#7",
                "seven",
                "seventh",
                "tile 7",
                "LED no. 7",
                "the 7th tile",
                "7 LEDs",
                "7 pairs",
                "7 pairs of LEDs",
                "seven tiles",
                "7 in total",
                "n = 7",
                "about seven?")) {
            assertReads(7, typed, "1");
        }
        assertReads(24, "twenty-four", "1");
        assertReads(24, "twenty four LEDs", "1");
        assertReads(-3, "minus 3", "1");
        assertReads(12, "12 pairs", "1");
        assertEquals(Dimension.ONE, value("12 pairs", "V").unit().orElseThrow().dimension());
    }

    @Test
    void whatChangesANumberIsRefusedForWhatItIs() {
        assertUnreadable("half", "1", "in digits");
        assertUnreadable("a dozen", "1", "in digits");
        assertUnreadable("2 dozen", "1", "in digits");
        assertUnreadable("five hundred", "1", "in digits");
        assertUnreadable("six and a half", "V", "in digits");
        assertUnreadable("two thirds", "1", "in digits");
        assertUnreadable("26 and 27", "1", "more than one number");
        assertUnreadable("5 to 6 V", "V", "more than one number");
        assertUnreadable("< 5 V", "V", "limit");
        assertUnreadable("≥5", "1", "limit");
        assertUnreadable("26 gnomes", "1", "Type the number alone");
        assertUnreadable("44.7 of all", "%", "fraction of 1");
        assertUnreadable("437 ± 5 Ω", "ohm", "Only one value");
        // Five percent of what? The sign could belong to both numbers.
        assertUnreadable("44.7 ± 5 %", "%", "Only one value");
        assertUnreadable("5 V max", "V", "behind the unit");
        assertUnreadable("470 Ω (E24)", "ohm", "behind the unit");
        assertUnreadable("470 (E24)", "ohm", "parentheses");
        assertUnreadable("7.5th", "1", "Type the number alone");
    }

    @Test
    void unitsWrittenApartAreTheirProduct() {
        for (String typed : List.of(
                "5 mNm",
                "5 mN m",
                "5 mN·m",
                "5 mN*m",
                "5 mN-m",
                "0.005 Nm",
                "0.005 N m",
                "0.5 Ncm",
                "5 millinewton metres",
                "0.005 newton-metres",
                "0.005 newtonmetres")) {
            assertReads(0.005, typed, "mN*m");
        }
        assertReads(12, "12 V A", "W");
        assertReads(3600, "1 A h", "A*h");
        assertReads(0.02, "20 m A", "A");
        assertUnreadable("5 W/m K", "not understood");
    }

    /** 3000 turns in a minute are 50 in a second, and 314.159 rad. */
    @Test
    void aSpeedIsReadInEveryUnitOfSpeed() {
        for (String typed : List.of(
                "3000 r/min",
                "3000 rpm",
                "3000 r.p.m.",
                "3000 1/min",
                "3000 min^-1",
                "3000 min-1",
                "3000 rev/min",
                "50 Hz",
                "50 rev/s",
                "50 s^-1",
                "18000 °/s")) {
            assertReads(50, typed, "turn/min");
        }
        assertEquals(50, value("314.15926536 rad/s", "turn/min").si(Unit.parse("turn/min")), 1e-8);
        assertEquals(314.15926536, value("3000 rpm", "rad/s").si(Unit.parse("rad/s")), 1e-8);
        assertEquals(0.25, value("90°", "turn").si(Unit.parse("turn")), 1e-12);
        assertReads(314, "314 rad/s", "Hz");
    }

    @Test
    void otherQuantitiesAreRead() {
        assertReads(0.02, "20 mA", "A");
        assertReads(0.02, "20", "mA");
        assertReads(0.02, "0,02 A", "mA");
        assertReads(1.5e-3, "1.5e-3 A", "mA");
        assertReads(1.5e-3, "1.5 × 10^\u22123 A", "mA");
        assertReads(1.5e-3, "1.5×10⁻³ A", "mA");
        assertReads(1.5e-3, "1.5*10^(-3) A", "mA");
        assertReads(-5, "\u22125 V", "V");
        assertReads(-5, "- 5 V", "V");
        assertReads(-5, "–5 volts", "V");
        assertReads(0.33, ".33 A", "A");
        assertReads(0.33, ",33 A", "A");
        assertReads(470e3, "0.47 MΩ", "ohm");
        assertReads(0.02, "20 milliamps", "A");
        assertReads(0.02, "20 milli amps", "A");
        assertReads(0.02, "20 mAmps", "A");
        assertReads(0.02, "20 ma", "A");
        assertReads(2e-5, "20 microamperes", "A");
        assertReads(12, "12 v", "V");
        assertReads(12, "12V", "V");
        assertReads(0.5, "500 mw", "W");
        assertReads(1e-7, "100 nf", "F");
        assertReads(1e6, "1 MHZ", "Hz");
        assertReads(800e3, "800 khz", "Hz");
        assertReads(0.5, "50 %", "%");
        assertReads(0.5, "50", "%");
        assertReads(0.5, "50 percent", "%");
        assertReads(0.5, "50 per cent", "%");
        assertReads(2e-6, "2 mm²", "mm2");
        assertReads(2e-6, "2mm2", "mm2");
        assertReads(2e-6, "2 mm^2", "mm2");
        assertReads(5, "5m2", "m2");
        assertReads(0.0039, "0.0039 1/K", "1/K");
        assertReads(0.393, "0.393 1/K", "1/K");
        assertReads(0.0039, "0.0039 /K", "1/K");
        assertReads(62.5, "62.5 K/W", "K/W");
        assertReads(62.5, "62.5 kelvin per watt", "K/W");
        assertReads(62.5, "62.5 °C/W", "K/W");
        assertReads(62.5, "62.5 C/W", "K/W");
        assertReads(62.5, "62.5 deg C/W", "K/W");
        assertReads(62.5, "62.5 degC per watt", "K/W");
        assertReads(90, "1.5 min", "s");
        assertReads(12, "12 V DC", "V");
        assertReads(12, "12 Vdc", "V");
        assertReads(1e6, "1 Meg", "ohm");
        assertReads(1e6, "1 megohm", "ohm");
        assertReads(4700, "4.7 kilo", "ohm");
        assertReads(0.02, "20 milli", "A");
        assertReads(0.02, "20 milli", "m");
        assertReads(800e3, "800 kbps", "bit/s");
        assertReads(800e3, "800 kBd", "bit/s");
        assertReads(9600, "9600 baud", "bit/s");
        assertReads(30, "30 fps", "frame/s");
        assertReads(50, "3000 rpm", "turn/min");
        assertReads(50, "3000 revolutions per minute", "turn/min");
        assertReads(12, "12 LEDs", "1");
        assertReads(12, "12 tiles", "1");
        assertReads(1000, "10^3", "1");
        assertReads(1000, "10³ Ω", "ohm");
        assertReads(1234567, "1,234,567", "1");
        assertReads(1234567, "1.234.567", "1");
        assertReads(1234567.8, "1 234 567,8", "1");
        assertReads(0.12345, "0.123 45", "1");
    }

    @Test
    void aCommaGroupAloneIsAmbiguous() {
        assertAmbiguous("4,700", "4.700", "4700");
        assertAmbiguous("4,700 Ω", "4.700 Ω", "4700 Ω");
        assertAmbiguous("\u2212123,456V", "\u2212123.456 V", "\u2212123456 V");
        assertAmbiguous("4,700e-3 A", "4.700×10^-3 A", "4700×10^-3 A");
        assertInstanceOf(Reading.Ambiguous.class, QuantityReader.read("4,700", Unit.parse("ohm")));
    }

    @Test
    void aCommaThatCanOnlyBeOneThingIsNotAmbiguous() {
        assertReads(0.47, "0,470", "1");
        assertReads(4.7, "4,70", "1");
        assertReads(4.7, "4,7000", "1");
        assertReads(4700.123, "4700,123", "1");
        assertReads(1234.567, "1 234,567", "1");
        assertReads(1234.567, "1,234.567", "1");
        assertReads(1234.567, "1.234,567", "1");
    }

    @Test
    void aSinglePointIsTheDecimalMarker() {
        assertReads(4.7, "4.700", "1");
    }

    @Test
    void megaAndMilliAreNeverFolded() {
        assertReads(5e6, "5 MA", "mA");
        assertReads(5e-3, "5 mA", "mA");
        assertReads(5e6, "5 MOHM", "ohm");
        assertReads(5e-3, "5 mOhm", "ohm");
        assertReads(5e-3, "5 mhz", "Hz");
        assertReads(5e6, "5M", "ohm");
        assertReads(5e-3, "5m", "ohm");
        assertReads(5e6, "5 megohms", "ohm");
        assertReads(5e-3, "5 milliohms", "ohm");
    }

    @Test
    void germanWordsAroundANumberAreReadAsTheirEnglishLikeAre() {
        Object[][] typed = {
            {"rund 4,7 Kiloohm", "ohm", 4700.0},
            {"etwa 12 Volt", "V", 12.0},
            {"ca. 3 Sekunden", "s", 3.0},
            {"2 Stunden", "h", 7200.0},
            {"44,7 Prozent", "%", 0.447},
            {"3000 U/min", "turn/min", 50.0},
            {"30 Bilder pro Sekunde", "Hz", 30.0},
            {"sieben Kacheln", "1", 7.0},
            {"Zwölf", "1", 12.0},
            {"fünf", "1", 5.0},
            {"vierte", "1", 4.0},
            {"26 Widerstände", "1", 26.0},
            {"7. Kachel", "1", 7.0},
            {"genau 5 Stück", "1", 5.0},
            {"das sind 9 V", "V", 9.0},
        };
        for (Object[] row : typed) {
            Unit asked = Unit.parse((String) row[1]);
            Reading.Value value = assertInstanceOf(
                    Reading.Value.class,
                    QuantityReader.read((String) row[0], asked, DecimalMarker.COMMA),
                    () -> row[0].toString());
            assertEquals((double) row[2], value.si(asked), 1e-9 * (double) row[2], row[0].toString());
        }
        assertUnreadable("ein Dutzend", "1", "in digits");
        assertUnreadable("zwei Drittel", "1", "in digits");
        assertUnreadable("hundert", "1", "in digits");
    }

    @Test
    void onASheetWithDecimalCommasAPointBeforeThreeDigitsHasTwoReadingsAndACommaHasOne() {
        for (String typed : List.of("4,700 V", "4,7 V", "4.7 V", "4,70 V")) {
            Reading.Value value = assertInstanceOf(
                    Reading.Value.class, QuantityReader.read(typed, Unit.parse("V"), DecimalMarker.COMMA), typed);
            assertEquals(4.7, value.si(Unit.parse("V")), 1e-12, typed);
        }
        Reading read = QuantityReader.read("4.700 V", Unit.parse("V"), DecimalMarker.COMMA);
        Reading.Ambiguous ambiguous = assertInstanceOf(Reading.Ambiguous.class, read);
        assertEquals(List.of("4,700 V", "4700 V"), ambiguous.meanings(Languages.ENGLISH));
        Reading.Value grouped = assertInstanceOf(
                Reading.Value.class, QuantityReader.read("1.234.567,5 V", Unit.parse("V"), DecimalMarker.COMMA));
        assertEquals(1_234_567.5, grouped.si(Unit.parse("V")), 1e-6);
    }

    @Test
    void kAloneIsKiloOrKelvinByWhatIsAsked() {
        assertAmbiguous("4.7 K", "4.7 thousand", "4.7 kelvin");
        assertReads(4700, "4.7 K", "ohm");
        assertEquals(1000, value("4.7 K", "ohm").prefixFactor());
        assertReads(298, "298 K", "degC");
        assertReads(25, "25K", "K");
        assertEquals(Unit.parse("K"), value("50 K", "K/W").unit().orElseThrow());
        assertReads(4700, "4.7 k", "ohm");
        assertEquals(
                4700,
                assertInstanceOf(Reading.Value.class, QuantityReader.read("4.7k"))
                        .si(Unit.parse("V")));
    }

    @Test
    void mAloneIsMilliOrMetreByWhatIsAsked() {
        assertAmbiguous("20 m", "20 thousandths", "20 metres");
        assertReads(0.02, "20 m", "A");
        assertReads(20, "20 m", "m");
        assertReads(20, "20 m", "mm");
        assertAmbiguous("5m2", "5.2 thousandths", "5 m²");
    }

    @Test
    void temperaturesAreReadInEveryCommonWay() {
        for (String typed : List.of(
                "25 °C",
                "25°C",
                "25 C",
                "25C",
                "25 c",
                "25 ℃",
                "25 degC",
                "25 deg C",
                "25 degrees C",
                "25 degrees celsius",
                "25 Celsius",
                "25 º C",
                "25",
                "25°",
                "25 degrees",
                "298.15 K")) {
            assertReads(298.15, typed, "degC");
        }
        assertReads(268.15, "\u22125 °C", "degC");
        assertReads(Math.PI / 2, "90°", "deg");
        assertReads(Math.PI / 2, "90 degrees", "rad");
        assertUnreadable("77 °F", "Fahrenheit");
    }

    @Test
    void whatCannotBeReadIsToldWhy() {
        assertUnreadable("", "Nothing is typed");
        assertUnreadable("  \u00A0 ", "Nothing is typed");
        assertUnreadable("volts", "does not start with a number");
        assertUnreadable("about right", "does not start with a number");
        assertUnreadable("1/3", "fraction");
        assertUnreadable("1/3 A", "fraction");
        assertUnreadable("3*5", "calculation");
        assertUnreadable("3+5", "calculation");
        assertUnreadable("(9-2)/0.02", "does not start with a number");
        assertUnreadable("5 kk", "no unit kk");
        assertUnreadable("5 kkΩ", "no unit kkΩ");
        assertUnreadable("5 kQ", "no unit kQ");
        assertUnreadable("5 S", "is it s?");
        assertUnreadable("2.5 mS", "is it ms?");
        assertUnreadable("5 mil", "no unit mil");
        assertUnreadable("5 kilos", "no unit kilos");
        assertUnreadable("4 7", "more than one number");
        assertUnreadable("1 h 30 min", "more than one number");
        assertUnreadable("4.7 ± 0.1 kΩ", "Only one value");
        assertUnreadable("1.2.3", "groups of digits");
        assertUnreadable("12,34,567", "groups of digits");
        assertUnreadable("1,2.3,4", "mixed");
        assertUnreadable("0.234.567", "groups of digits");
        assertUnreadable("0.12 345", "groups of digits");
        assertUnreadable("R = 3 V / 20 mA = 150 Ω", "Type only the number");
        assertUnreadable("4.7 x 10", "calculation");
        assertUnreadable("4.7e99 V", "power of ten");
        assertUnreadable("4.7×10^ V", "exponent");
        assertUnreadable("4k7 kΩ", "Give only one");
        assertUnreadable("4R7 V", "Give only one");
        assertUnreadable("4k7.5", "letter code");
        assertUnreadable("4.7 furlongs per fortnight", "not understood");
        assertUnreadable("5 K/W/m", "not understood");
        assertUnreadable("NaN", "does not start");
        assertUnreadable("5".repeat(40), "more digits");
        assertUnreadable("5".repeat(200), "too long");
        assertUnreadable("<script>alert(1)</script>", "does not start");
        assertUnreadable("5 <b>V</b>", "not understood");
    }

    @Test
    void significantFiguresAreThoseThatCarryMeaning() {
        assertEquals(2, value("4700", "ohm").significantFigures());
        assertEquals(4, value("4700.", "ohm").significantFigures());
        assertEquals(3, value("4.70k", "ohm").significantFigures());
        assertEquals(2, value("0.0047 M", "ohm").significantFigures());
        assertEquals(2, value("4k7", "ohm").significantFigures());
        assertEquals(3, value("4k70", "ohm").significantFigures());
        assertEquals(1, value("0", "ohm").significantFigures());
        assertEquals(12, value("4.70123456789", "ohm").significantFigures());
    }

    @Test
    void wholeNumbersAreKnown() {
        assertTrue(value("3", "1").wholeNumber());
        assertTrue(value("3.0", "1").wholeNumber());
        assertTrue(value("1.5k", "1").wholeNumber());
        assertFalse(value("3.2", "1").wholeNumber());
    }

    /** Unicode, compatibility decomposition (Normalizer of the Java library) is the outside view of the fold table. */
    @Test
    void unitsInOneCharacterAreFoldedAsUnicodeDoes() {
        int seen = 0;
        for (char c = '\u3380'; c <= '\u33C1'; c++) {
            String folded = TypedText.fold(String.valueOf(c));
            if (!folded.equals(String.valueOf(c))) {
                seen++;
                String expected = Normalizer.normalize(String.valueOf(c), Normalizer.Form.NFKC)
                        .replace('\u03BC', '\u00B5');
                assertEquals(expected, folded);
            }
        }
        assertEquals(31, seen);
        for (char c = '\uFF01'; c <= '\uFF5E'; c++) {
            String expected = Normalizer.normalize(String.valueOf(c), Normalizer.Form.NFKC);
            assertEquals(expected, TypedText.fold(String.valueOf(c)));
        }
        for (String c : List.of("\u2126", "\u212A", "\u2103", "\u2109")) {
            assertEquals(Normalizer.normalize(c, Normalizer.Form.NFKC), TypedText.fold(c));
        }
    }

    @Test
    void everySpaceOfUnicodeIsASpace() {
        for (int c = 0; c < 0x10000; c++) {
            if (Character.getType(c) == Character.SPACE_SEPARATOR) {
                assertEquals("5 V", TypedText.fold("5" + (char) c + "V"), Integer.toHexString(c));
            }
        }
    }

    /** Decimal text into a double: the parser of the Java library is the outside view. */
    @Test
    void numbersOfUpToFifteenDigitsGiveTheNearestDouble() {
        long seed = 20260102L;
        Random random = new Random(seed);
        for (int i = 0; i < 5_000; i++) {
            long digits = (long) (random.nextDouble() * Math.pow(10, 1 + random.nextInt(15)));
            int exponent = random.nextInt(40) - 20;
            String typed = digits + "e" + exponent;
            assertEquals(Double.parseDouble(typed), value(typed, "1").si(Unit.ONE), "seed " + seed + ", draw " + i);
        }
    }

    @Test
    void whatTheWriterPrintsIsReadBack() {
        long seed = 20260103L;
        Random random = new Random(seed);
        List<String> units = List.of(
                "V",
                "A",
                "ohm",
                "F",
                "K/W",
                "degC",
                "%",
                "1",
                "bit/s",
                "mm2",
                "1/K",
                "m",
                "s",
                "ohm*m",
                "W/(m*K)",
                "kg",
                "min",
                "mAh",
                "ppm/K",
                "turn",
                "px",
                "J/(kg*K)",
                "A/mm2");
        for (DecimalMarker marker : DecimalMarker.values()) {
            QuantityWriter writer = new QuantityWriter(marker);
            for (int i = 0; i < 2_000; i++) {
                Unit unit = Unit.parse(units.get(random.nextInt(units.size())));
                double si = (random.nextDouble() - 0.3) * Math.pow(10, random.nextInt(14) - 7);
                String printed = writer.rounded(si, unit, 5).text();
                Reading reading = QuantityReader.read(printed, unit);
                String told = "seed " + seed + ", draw " + i + ": " + printed + " -> " + reading;
                if (reading instanceof Reading.Ambiguous) {
                    assertEquals(DecimalMarker.COMMA, marker, told);
                    continue;
                }
                double tolerance = 1e-4 * (unit.offset() == 0 ? Math.abs(si) : Math.abs(si - 273.15) + 1e-9);
                assertEquals(
                        si, assertInstanceOf(Reading.Value.class, reading, told).si(unit), tolerance, told);
            }
        }
    }

    @Test
    void noTextMakesTheReaderFail() {
        long seed = 20260104L;
        Random random = new Random(seed);
        String alphabet = "0123456789.,'  +-−eExX×*^·/()kKMmRVAΩµunp°C%²³⁻=≈~± WsHzohmper\u00A0\u202F\u0000\uD83D";
        for (int i = 0; i < 10_000; i++) {
            StringBuilder typed = new StringBuilder();
            for (int n = random.nextInt(12); n >= 0; n--) {
                typed.append(alphabet.charAt(random.nextInt(alphabet.length())));
            }
            String text = typed.toString();
            Unit asked = Unit.parse(i % 2 == 0 ? "kohm" : "degC");
            for (Reading reading : List.of(QuantityReader.read(text), QuantityReader.read(text, asked))) {
                assertEquals(text, reading.asTyped());
                if (reading instanceof Reading.Value value) {
                    double si = value.si(asked);
                    assertTrue(si - si == 0, "seed " + seed + ", draw " + i + ": " + text + " -> " + si);
                }
            }
        }
    }
}
