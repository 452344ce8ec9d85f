package ampersheet.formula;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import ampersheet.language.Language;
import ampersheet.quantity.DecimalMarker;
import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.QuantityWriter.Printed;
import ampersheet.quantity.Unit;
import ampersheet.source.Languages;
import ampersheet.source.OtherLanguage;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Expected lines are written with an ordinary blank where a no-break space stands before a unit. */
class FoldTest {
    private static final Notation NOTATION = notation();

    private static Notation notation() {
        Map<String, Printed> values = new LinkedHashMap<>();
        values.put("Vs", printed(9, "V"));
        values.put("Vf", printed(2, "V"));
        values.put("Vn", printed(-5, "V"));
        values.put("If", printed(0.016, "A"));
        values.put("P", printed(2, "W"));
        values.put("theta_JA", printed(50, "K/W"));
        values.put("Ta", printed(298.15, "degC"));
        values.put("R", printed(437.5, "ohm"));
        values.put("R2", printed(3000, "ohm"));
        values.put("n", printed(8, "1"));
        values.put("row", printed(3, "1"));
        values.put("col", printed(12345, "1"));
        values.put("s", printed(1.7e-5, "1/K"));
        return new Notation(
                Map.of("T", new Symbol("T", "J")),
                values,
                Map.of("order", "serpentine"),
                DecimalMarker.POINT,
                Languages.ENGLISH);
    }

    private static Printed printed(double si, String unit) {
        return QuantityWriter.POINT.plain(si, Unit.parse(unit), 4);
    }

    private static String symbolic(String formula) {
        return PlainText.symbolic(FormulaReader.expression(formula), NOTATION).replace('\u00a0', ' ');
    }

    private static String substituted(String formula) {
        return PlainText.substituted(FormulaReader.expression(formula), NOTATION)
                .replace('\u00a0', ' ');
    }

    private static void assertFolds(String formula, String symbols, String values) {
        assertEquals(symbols, symbolic(formula), formula);
        assertEquals(values, substituted(formula), formula);
    }

    @Test
    void aStepReadsWithSymbolsAndWithNumbers() {
        assertFolds("(Vs - Vf) / If", "(V_s − V_f) / I_f", "(9 V − 2 V) / 16 mA");
        assertFolds("Ta + P * theta_JA", "T_a + P · θ_JA", "25 °C + 2 W × 50 K/W");
        assertFolds("T", "T_J", "T_J");
        assertFolds("2 * R", "2 · R", "2 × 437.5 Ω");
    }

    @Test
    void parenthesesStandOnlyWhereTheReadingNeedsThem() {
        assertFolds("Vs - (Vf - Vn)", "V_s − (V_f − V_n)", "9 V − (2 V − (−5 V))");
        assertFolds("(Vs - Vf) - Vn", "V_s − V_f − V_n", "9 V − 2 V − (−5 V)");
        assertFolds("Vs + (Vf + Vn)", "V_s + V_f + V_n", "9 V + 2 V + (−5 V)");
        assertFolds("Vn + Vs", "V_n + V_s", "−5 V + 9 V");
        assertFolds("P / (R * n)", "P / (R · n)", "2 W / (437.5 Ω × 8)");
        assertFolds("P / R / n", "(P / R) / n", "(2 W / 437.5 Ω) / 8");
        assertFolds("P / R * n", "(P / R) · n", "(2 W / 437.5 Ω) × 8");
        assertFolds("P * R / n", "P · R / n", "2 W × 437.5 Ω / 8");
        assertFolds("P * (R / n)", "P · R / n", "2 W × 437.5 Ω / 8");
        assertFolds("n * (P / R) * n", "(n · P / R) · n", "(8 × 2 W / 437.5 Ω) × 8");
        assertFolds("P / (R / n)", "P / (R / n)", "2 W / (437.5 Ω / 8)");
        assertFolds("(n + 1) * n", "(n + 1) · n", "(8 + 1) × 8");
        assertFolds("n * -n", "n · (−n)", "8 × (−8)");
        assertFolds("-n * n", "−n · n", "−8 × 8");
        assertFolds("-(n + 1)", "−(n + 1)", "−(8 + 1)");
        assertFolds("- -n", "−(−n)", "−(−8)");
        assertFolds("-Vn", "−V_n", "−(−5 V)");
        assertFolds("100 K / theta_JA", "100 K / θ_JA", "100 K / (50 K/W)");
    }

    @Test
    void powersAreRaised() {
        assertFolds("Vf ^ 2 / R", "V_f² / R", "(2 V)² / 437.5 Ω");
        assertFolds("n ^ 12", "n¹²", "8¹²");
        assertFolds("n ^ -1", "n⁻¹", "8⁻¹");
        assertFolds("-n ^ 2", "−n²", "−8²");
        assertFolds("(-n) ^ 2", "(−n)²", "(−8)²");
        assertFolds("Vn ^ 2", "V_n²", "(−5 V)²");
        assertFolds("2 ^ n", "2^n", "2^8");
        assertFolds("2 ^ (n - 1)", "2^(n − 1)", "2^(8 − 1)");
        assertFolds("2 ^ 0.5", "2^0.5", "2^0.5");
        assertFolds("(2 ^ n) ^ 2", "(2^n)²", "(2^8)²");
        assertFolds("(n + 1) ^ 2", "(n + 1)²", "(8 + 1)²");
        assertFolds("s ^ 2", "s²", "(1.7×10⁻⁵ 1/K)²");
    }

    @Test
    void functionsPrintInTheSignsOfTheTrade() {
        assertFolds("next_up(R, E24)", "next E24 value at or above R", "next E24 value at or above 437.5 Ω");
        assertFolds(
                "next_down(R / n, E12)", "next E12 value at or below R / n", "next E12 value at or below 437.5 Ω / 8");
        assertFolds("2 * nearest(R, E96)", "2 · (nearest E96 value to R)", "2 × (nearest E96 value to 437.5 Ω)");
        assertFolds("parallel(R, R2)", "R ∥ R_2", "437.5 Ω ∥ 3 kΩ");
        assertFolds(
                "Vs / parallel(R + R2, R, R2)",
                "V_s / ((R + R_2) ∥ R ∥ R_2)",
                "9 V / ((437.5 Ω + 3 kΩ) ∥ 437.5 Ω ∥ 3 kΩ)");
        assertFolds("mod(row, 2)", "row mod 2", "3 mod 2");
        assertFolds("n - 1 - mod(row + 1, 2)", "n − 1 − ((row + 1) mod 2)", "8 − 1 − ((3 + 1) mod 2)");
        assertFolds("floor(n / 2) + ceiling(n / 3)", "⌊n / 2⌋ + ⌈n / 3⌉", "⌊8 / 2⌋ + ⌈8 / 3⌉");
        assertFolds("round(n / 3)", "round(n / 3)", "round(8 / 3)");
        assertFolds("sqrt(P * R)", "√(P · R)", "√(2 W × 437.5 Ω)");
        assertFolds("abs(Vf - Vs) ^ 2", "|V_f − V_s|²", "|2 V − 9 V|²");
        assertFolds("ln(n) ^ 2 * exp(-n)", "(ln(n))² · exp(−n)", "(ln(8))² × exp(−8)");
        assertFolds("log10(n) + min(n, row)", "log₁₀(n) + min(n, row)", "log₁₀(8) + min(8, 3)");
        assertFolds("2 * pi * n", "2 · π · n", "2 × π × 8");
        assertFolds("current(D1) * R", "current(D_1) · R", "current(D_1) × 437.5 Ω");
    }

    @Test
    void constantsPrintAsWrittenByTheRulesOfTheSi() {
        assertFolds("Vs - 1.20 V", "V_s − 1.20 V", "9 V − 1.20 V");
        assertFolds("25 degC + P * 50 K/W", "25 °C + P · 50 K/W", "25 °C + 2 W × 50 K/W");
        assertFolds("-40 degC", "−40 °C", "−40 °C");
        assertFolds("Ta - -40 degC", "T_a − (−40 °C)", "25 °C − (−40 °C)");
        assertFolds("1 kohm + 4700 ohm", "1 kΩ + 4700 Ω", "1 kΩ + 4700 Ω");
        assertFolds("1.25 us * n", "1.25 µs · n", "1.25 µs × 8");
        assertFolds("n * 12345.67891", "n · 12\u202f345.678\u202f91", "8 × 12\u202f345.678\u202f91");
        assertFolds("col", "col", "12\u202f345");
        assertFolds("n / 1.5e-6", "n / (1.5×10⁻⁶)", "8 / (1.5×10⁻⁶)");
        assertFolds("2 * 10 * 3", "2 × 10 × 3", "2 × 10 × 3");
        assertEquals(
                "T_a − 1,5\u00a0K",
                PlainText.symbolic(
                        FormulaReader.expression("Ta - 1.5 K"),
                        new Notation(Map.of(), Map.of(), Map.of(), DecimalMarker.COMMA, Languages.ENGLISH)));
    }

    private static void assertCondition(String formula, String symbols, String values, String aloud) {
        Condition condition = FormulaReader.condition(formula);
        assertEquals(symbols, PlainText.symbolic(condition, NOTATION).replace('\u00a0', ' '));
        assertEquals(values, PlainText.substituted(condition, NOTATION).replace('\u00a0', ' '));
        assertEquals(aloud, Spoken.symbolic(condition, NOTATION));
    }

    @Test
    void conditionsReadAsSentences() {
        assertCondition(
                "Vs - Vf >= 1.2 V", "V_s − V_f ≥ 1.2 V", "9 V − 2 V ≥ 1.2 V", "V s minus V f is at least 1.2 V");
        assertCondition(
                "mod(row, 2) == 0 and (n < 3 or not n != 8)",
                "row mod 2 = 0 and (n < 3 or not (n ≠ 8))",
                "3 mod 2 = 0 and (8 < 3 or not (8 ≠ 8))",
                "the remainder of row divided by 2 equals 0 and open bracket n is less than 3 or not open bracket"
                        + " n does not equal 8 close bracket close bracket");
        assertCondition("order == serpentine", "order = serpentine", "serpentine = serpentine", "order is serpentine");
        assertCondition("order != \"top left\"", "order ≠ top left", "serpentine ≠ top left", "order is not top left");
    }

    @Test
    void equationsAreReadAloudInOneWayOnly() {
        String[][] table = {
            {
                "(Vs - Vf) / If",
                "open bracket V s minus V f close bracket over I f",
                "open bracket 9 V minus 2 V close bracket over 16 mA"
            },
            {"Vs - Vn", "V s minus V n", "9 V minus open bracket minus 5 V close bracket"},
            {"Vf ^ 2 / R", "V f squared over R", "open bracket 2 V close bracket squared over 437.5 Ω"},
            {
                "2 ^ n + n ^ 3 + n ^ -1",
                "2 to the power n plus n cubed plus n to the power minus 1",
                "2 to the power 8 plus 8 cubed plus 8 to the power minus 1"
            },
            {
                "sqrt(P * R)",
                "the square root of open bracket P times R close bracket",
                "the square root of open bracket 2 W times 437.5 Ω close bracket"
            },
            {"next_up(R, E24)", "the next E24 value at or above R", "the next E24 value at or above 437.5 Ω"},
            {"parallel(R, R2)", "R in parallel with R 2", "437.5 Ω in parallel with 3 kΩ"},
            {"floor(n)", "the whole number at or below n", "the whole number at or below 8"},
            {"s", "s", "1.7 times 10 to the power minus 5 1/K"},
            {"current(D1)", "current of D 1", "current of D 1"},
            {"col", "col", "12345"},
        };
        for (String[] row : table) {
            assertEquals(row[1], Spoken.symbolic(FormulaReader.expression(row[0]), NOTATION));
            assertEquals(row[2], Spoken.substituted(FormulaReader.expression(row[0]), NOTATION));
        }
    }

    @Test
    void mathMlSetsSymbolsItalicUnitsUprightAndMarksWhatIsNotSeen() {
        assertMathMl(
                "(Vs - Vf) / If",
                "<mfrac><mrow><msub><mi>V</mi><mtext>s</mtext></msub><mo>−</mo>"
                        + "<msub><mi>V</mi><mtext>f</mtext></msub></mrow>"
                        + "<msub><mi>I</mi><mtext>f</mtext></msub></mfrac>",
                "<mfrac><mrow><mn>9</mn><mtext>\u00a0V</mtext>"
                        + "<mo>−</mo><mn>2</mn><mtext>\u00a0V</mtext>"
                        + "</mrow><mrow><mn>16</mn><mtext>\u00a0mA</mtext></mrow></mfrac>");
        assertMathMl(
                "P * R2",
                "<mrow><mi>P</mi><mo>\u2062</mo><msub><mi>R</mi><mn>2</mn></msub></mrow>",
                "<mrow><mn>2</mn><mtext>\u00a0W</mtext>" + "<mo>×</mo><mn>3</mn><mtext>\u00a0kΩ</mtext></mrow>");
        assertMathMl(
                "row * col",
                "<mrow><mtext>row</mtext><mo>\u22c5</mo><mtext>col</mtext></mrow>",
                "<mrow><mn>3</mn><mo>×</mo><mn>12\u202f345</mn></mrow>");
        assertMathMl(
                "ln(n)",
                "<mrow><mi>ln</mi><mo>\u2061</mo><mrow><mo>(</mo><mi>n</mi>" + "<mo>)</mo></mrow></mrow>",
                "<mrow><mi>ln</mi><mo>\u2061</mo><mrow><mo>(</mo><mn>8</mn><mo>)</mo></mrow></mrow>");
        assertMathMl(
                "n ^ -2",
                "<msup><mi>n</mi><mrow><mo>−</mo><mn>2</mn></mrow></msup>",
                "<msup><mn>8</mn><mrow><mo>−</mo><mn>2</mn></mrow></msup>");
        assertMathMl(
                "s",
                "<mi>s</mi>",
                "<mrow><mn>1.7</mn><mo>×</mo><msup><mn>10</mn><mrow><mo>−</mo><mn>5</mn></mrow></msup>"
                        + "<mtext>\u00a01/K</mtext></mrow>");
        assertMathMl(
                "dT",
                "<mrow><mi mathvariant=\"normal\">Δ</mi><mi>T</mi></mrow>",
                "<mrow><mi mathvariant=\"normal\">Δ</mi><mi>T</mi></mrow>");
    }

    private static void assertMathMl(String formula, String symbols, String values) {
        Expression expression = FormulaReader.expression(formula);
        assertEquals(symbols, MathMl.symbolic(expression, NOTATION));
        assertEquals(values, MathMl.substituted(expression, NOTATION));
    }

    @Test
    void textFromAuthorsIsEscaped() {
        Notation hostile = new Notation(
                Map.of("a", new Symbol("<b>", "\"&x")), Map.of(), Map.of(), DecimalMarker.POINT, Languages.ENGLISH);
        assertEquals(
                "<msub><mtext>&lt;b&gt;</mtext><mtext>&quot;&amp;x</mtext></msub>",
                MathMl.symbolic(FormulaReader.expression("a"), hostile));
    }

    /** Whatever stands before and behind a slot stays there, in words as in symbols. */
    @Test
    void anotherLanguageMayPutItsWordsElsewhere() {
        Map<String, String> changed = Map.of(
                "spoken.over", "{below} under {above}",
                "spoken.negative", "{of} below zero",
                "spoken.printed.next-up", "for {of} the next {series} value",
                "spoken.printed.and", "both {right} and {left} too");
        Notation turned = new Notation(
                Map.of(),
                Map.of(),
                Map.of(),
                DecimalMarker.POINT,
                OtherLanguage.of((key, sentence) -> changed.getOrDefault(key, sentence)));
        Expression formula = FormulaReader.expression("next_up(a / b, E24)");
        assertEquals(
                "the next E24 value at or above b under a",
                Spoken.symbolic(formula, turned),
                "only the division has another order");
        assertEquals("for a / b the next E24 value", PlainText.symbolic(formula, turned));
        assertEquals(
                "<mrow><mtext>for\u00a0</mtext><mfrac><mi>a</mi><mi>b</mi></mfrac>"
                        + "<mtext>\u00a0the next E24 value</mtext></mrow>",
                MathMl.symbolic(formula, turned));
        Condition both = FormulaReader.condition("a < 1 and b > -a");
        assertEquals("a is less than 1 and b is more than a below zero", Spoken.symbolic(both, turned));
        assertEquals(
                "<mrow><mtext>both\u00a0</mtext><mrow><mi>b</mi><mo>&gt;</mo><mrow><mo>−</mo><mi>a</mi></mrow></mrow>"
                        + "<mtext>\u00a0and\u00a0</mtext><mrow><mi>a</mi><mo>&lt;</mo><mn>1</mn></mrow>"
                        + "<mtext>\u00a0too</mtext></mrow>",
                MathMl.symbolic(both, turned));
    }

    /** They go into attributes of a page as they are. */
    @Test
    void whatIsReadAloudHasNoCharacterOfMarkup() {
        for (String code : Languages.codes()) {
            Language language = Languages.of(code).orElseThrow();
            language.keys().stream().filter(key -> key.startsWith("spoken.")).forEach(key -> {
                String[] filled = language.slots(key).stream()
                        .flatMap(slot -> Stream.of(slot, ""))
                        .toArray(String[]::new);
                assertFalse(language.say(key, filled).matches(".*[<>&\"].*"), code + ": " + key);
            });
        }
    }
}
