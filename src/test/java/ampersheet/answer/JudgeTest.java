package ampersheet.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.formula.FormulaReader;
import ampersheet.formula.Step;
import ampersheet.formula.Values;
import ampersheet.formula.Working;
import ampersheet.quantity.DecimalMarker;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.PreferredSeries;
import ampersheet.quantity.Quantity;
import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.Unit;
import ampersheet.source.Languages;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

class JudgeTest {
    private static final Acceptance TWO_PERCENT = new Acceptance.Within(0.02, 0);

    private static AnswerKey key(double expected, String unit, Acceptance acceptance, KnownMistake... mistakes) {
        return new AnswerKey("q1", "x", expected, Unit.parse(unit), 3, true, acceptance, List.of(mistakes));
    }

    private static Verdict verdict(AnswerKey key, String typed) {
        ProblemKey problem = new ProblemKey(
                List.of(key), Values.of(Map.of(), Map.of()), new Working(List.of()), List.of(), Languages.ENGLISH);
        return Judge.judge(problem, Map.of(key.question(), typed)).get(0);
    }

    private static Verdict assertRung(Rung rung, AnswerKey key, String typed) {
        Verdict verdict = verdict(key, typed);
        assertEquals(rung, verdict.rung(), () -> typed + ": " + verdict);
        assertTrue(verdict.message().length() > 5 && verdict.message().endsWith("."), verdict::message);
        return verdict;
    }

    private static void assertSays(String part, Verdict verdict) {
        assertTrue(verdict.message().contains(part), verdict::message);
    }

    private static final KnownMistake NO_FORWARD_VOLTAGE = new KnownMistake(
            "no-forward-voltage",
            562.5,
            "The whole supply was put across the resistor. Take off the LED's forward voltage first.");
    private static final AnswerKey RESISTANCE = key(437.5, "ohm", TWO_PERCENT, NO_FORWARD_VOLTAGE);

    @Test
    void theToleranceBandIncludesItsEnds() {
        for (double k : new double[] {437.5, 0.016, 4.7e6, 3.3e-9, -5}) {
            AnswerKey key = key(k, "1", TWO_PERCENT);
            for (String inside : List.of("0.98", "1.02", "1", "1.0199", "0.9801")) {
                assertRung(Rung.CORRECT, key, product(inside, k));
            }
            for (String outside : List.of("1.02000001", "0.97999999", "1.021")) {
                assertFalse(verdict(key, product(outside, k)).isRight(), outside);
            }
        }
    }

    private static String product(String factor, double k) {
        return new java.math.BigDecimal(factor)
                .multiply(java.math.BigDecimal.valueOf(k))
                .toString();
    }

    @Test
    void noNeighbourInE24IsAcceptedAsAComputedAnswer() {
        List<Double> members = PreferredSeries.E24.between(1, 1e6);
        for (int i = 0; i + 1 < members.size(); i++) {
            double lower = members.get(i);
            double upper = members.get(i + 1);
            assertFalse(verdict(
                            key(lower, "ohm", TWO_PERCENT),
                            QuantityWriter.POINT
                                    .plain(upper, Unit.parse("ohm"), 3)
                                    .text())
                    .isRight());
            assertFalse(verdict(
                            key(upper, "ohm", TWO_PERCENT),
                            QuantityWriter.POINT
                                    .plain(lower, Unit.parse("ohm"), 3)
                                    .text())
                    .isRight());
        }
    }

    @Test
    void anUnansweredQuestionIsBlank() {
        assertRung(Rung.BLANK, RESISTANCE, "");
        assertRung(Rung.BLANK, RESISTANCE, " \u00A0\t");
        ProblemKey problem = new ProblemKey(
                List.of(RESISTANCE),
                Values.of(Map.of(), Map.of()),
                new Working(List.of()),
                List.of(),
                Languages.ENGLISH);
        assertEquals(Rung.BLANK, Judge.judge(problem, Map.of()).get(0).rung());
    }

    @Test
    void whatCannotBeReadIsNotCalledWrong() {
        Verdict verdict = assertRung(Rung.UNREADABLE, RESISTANCE, "437 furlongs");
        assertEquals("", verdict.understood());
        assertEquals("437 furlongs", verdict.asTyped());
        assertSays("furlongs", verdict);
    }

    @Test
    void anAmbiguousNumberIsAskedAbout() {
        Verdict verdict = assertRung(Rung.AMBIGUOUS, key(4700, "ohm", TWO_PERCENT), "4,700 Ω");
        assertSays("4.700 Ω or as 4700 Ω", verdict);
        assertSays("point as the decimal marker", verdict);
    }

    @Test
    void aWrongDimensionNamesBothQuantities() {
        Verdict verdict = assertRung(Rung.WRONG_DIMENSION, RESISTANCE, "437.5 mA");
        assertSays("mA is a unit of current, but a resistance is asked for, in Ω", verdict);
        assertSays("a plain number", assertRung(Rung.WRONG_DIMENSION, key(12, "1", new Acceptance.Count()), "12 V"));
        assertRung(Rung.WRONG_DIMENSION, key(50, "K/W", TWO_PERCENT), "50 K");
        assertRung(Rung.WRONG_DIMENSION, RESISTANCE, "438 LEDs");
    }

    @Test
    void aRightNumberWithoutItsUnitIsToldSo() {
        AnswerKey key = new AnswerKey("q1", "x", 0.016, Unit.parse("mA"), 3, false, TWO_PERCENT, List.of());
        Verdict inUnit = assertRung(Rung.UNIT_MISSING, key, "16");
        assertSays("Write the unit", inUnit);
        assertEquals("16", inUnit.understood());
        assertRung(Rung.UNIT_MISSING, key, "0.016");
        assertRung(Rung.CORRECT, key, "16m");
        assertRung(Rung.CORRECT, key, "16 mA");
        assertRung(Rung.UNEXPLAINED, key, "23");
        assertRung(Rung.POWER_OF_TEN, key, "16000");
    }

    @Test
    void aBareNumberIsCompleteWhereTheUnitIsPrinted() {
        AnswerKey key = key(0.016, "mA", TWO_PERCENT);
        assertRung(Rung.CORRECT, key, "16");
        Verdict slip = assertRung(Rung.POWER_OF_TEN, key, "0.016");
        assertSays("a thousand times too small", slip);
        assertSays("taken in mA", slip);
    }

    @Test
    void aLetterCodeHasItsUnit() {
        AnswerKey key = new AnswerKey("q1", "x", 4700, Unit.parse("ohm"), 3, false, TWO_PERCENT, List.of());
        assertRung(Rung.CORRECT, key, "4k7");
        assertRung(Rung.CORRECT, key, "4700R");
        assertRung(Rung.CORRECT, key, "4.7k");
    }

    @Test
    void aRightAnswerMayCarryAdvice() {
        assertEquals("Right.", assertRung(Rung.CORRECT, RESISTANCE, "438 Ω").message());
        assertEquals(
                "438\u00A0Ω", assertRung(Rung.CORRECT, RESISTANCE, "0.438k").understood());
        assertSays("So many figures", assertRung(Rung.CORRECT, RESISTANCE, "437.512345678 Ω"));
    }

    @Test
    void aRightAnswerRoundedTooFarIsTooCoarse() {
        // 437.5 to two figures is 440, well inside 2 %; 1.04 to one figure is 1, off by 3.8 %.
        assertRung(Rung.CORRECT, RESISTANCE, "440 Ω");
        Verdict verdict = assertRung(Rung.TOO_COARSE, key(1.04, "V", TWO_PERCENT), "1 V");
        assertSays("3 figures", verdict);
        assertRung(Rung.TOO_COARSE, key(0.0145, "V", new Acceptance.Within(0.005, 0)), "15 mV");
        // 1.4 to one figure is 1: off by 29 %, no rounding any more.
        assertRung(Rung.UNEXPLAINED, key(1.4, "V", TWO_PERCENT), "1 V");
    }

    @Test
    void aPowerOfTenSlipIsToldWithItsSize() {
        assertSays("ten times too large", assertRung(Rung.POWER_OF_TEN, RESISTANCE, "4375 Ω"));
        assertSays("a hundred times too small", assertRung(Rung.POWER_OF_TEN, RESISTANCE, "4.375 Ω"));
        assertSays("a thousand times too large", assertRung(Rung.POWER_OF_TEN, RESISTANCE, "437.5 kΩ"));
        assertSays("a million times too small", assertRung(Rung.POWER_OF_TEN, RESISTANCE, "437.5 µΩ"));
        assertSays("M is mega, m is milli", assertRung(Rung.POWER_OF_TEN, key(0.005, "mA", TWO_PERCENT), "5 MA"));
        assertRung(Rung.UNEXPLAINED, RESISTANCE, "4.375 MΩ");
    }

    /** Found by legal givens: a mistake of next to nothing was shortened for ever. */
    @Test
    void aMistakesValueMayBeAsSmallOrLargeAsNumbersAre() {
        for (double value : new double[] {0, Double.MIN_VALUE, 1e-320, -1e-300, 1e-200, 1e300, -Double.MAX_VALUE}) {
            assertEquals(
                    value,
                    new KnownMistake("m", value, "Words.").value(),
                    Math.max(Double.MIN_VALUE, Math.abs(value) * 1e-11));
        }
    }

    @Test
    void aWrongSignAndAnUpsideDownDivisionAreTold() {
        assertSays("sign", assertRung(Rung.SIGN, RESISTANCE, "\u2212437.5 Ω"));
        // An absolute tolerance of 20 mV around 0.5 V takes 1/1.93 for the key, and nobody divided upside down for it.
        assertRung(Rung.UNEXPLAINED, key(0.5, "V", new Acceptance.Within(0, 0.02)), "1.93 V");
        assertSays("upside down", assertRung(Rung.RECIPROCAL, RESISTANCE, "0.002286 Ω"));
        AnswerKey inKilohm = key(3200, "kohm", TWO_PERCENT);
        assertRung(Rung.RECIPROCAL, inKilohm, "0.3125");
        assertRung(Rung.RECIPROCAL, inKilohm, "0.3125 mΩ");
    }

    @Test
    void aKnownMistakeComesWithItsExplanation() {
        Verdict verdict = assertRung(Rung.KNOWN_MISTAKE, RESISTANCE, "560 Ω");
        assertEquals("no-forward-voltage", verdict.mistake().orElseThrow());
        assertEquals(NO_FORWARD_VOLTAGE.explanation(), verdict.message());
        assertRung(Rung.KNOWN_MISTAKE, RESISTANCE, "572 Ω");
    }

    @Test
    void aMistakeThatIsAlsoASlipIsToldAsTheMistake() {
        KnownMistake tenfold = new KnownMistake("tenfold", 4375, "Ten LEDs were counted.");
        KnownMistake turned = new KnownMistake("turned", -437.5, "The current was taken the other way.");
        KnownMistake coarse = new KnownMistake("coarse", 416, "The load was left out.");
        AnswerKey key = key(437.5, "ohm", new Acceptance.Within(0.01, 0), tenfold, turned, coarse);
        assertEquals(
                "tenfold", assertRung(Rung.KNOWN_MISTAKE, key, "4375").mistake().orElseThrow());
        assertEquals(
                "turned",
                assertRung(Rung.KNOWN_MISTAKE, key, "-437.5").mistake().orElseThrow());
        assertEquals(
                "coarse", assertRung(Rung.KNOWN_MISTAKE, key, "416").mistake().orElseThrow());
    }

    @Test
    void theNearestOfTwoMistakesIsTold() {
        AnswerKey key = key(
                100, "ohm", TWO_PERCENT, new KnownMistake("a", 150, "First."), new KnownMistake("b", 155, "Second."));
        assertEquals("b", assertRung(Rung.KNOWN_MISTAKE, key, "153").mistake().orElseThrow());
        assertEquals("a", assertRung(Rung.KNOWN_MISTAKE, key, "152").mistake().orElseThrow());
    }

    @Test
    void whatNothingExplainsStillGetsANextStep() {
        Verdict verdict = assertRung(Rung.UNEXPLAINED, RESISTANCE, "700 Ω");
        assertSays("work the steps again", verdict);
        assertEquals("700\u00A0Ω", verdict.understood());
    }

    @Test
    void aKeyNearZeroIsMeasuredByItsFloor() {
        AnswerKey key = key(0, "V", new Acceptance.Within(0.02, 0.01));
        assertRung(Rung.CORRECT, key, "0");
        assertRung(Rung.CORRECT, key, "-10 mV");
        assertRung(Rung.UNEXPLAINED, key, "11 mV");
    }

    @Test
    void temperaturesAreComparedAbsolutely() {
        AnswerKey key = key(298.15, "degC", new Acceptance.Within(0, 1));
        assertRung(Rung.CORRECT, key, "25.4 °C");
        assertRung(Rung.CORRECT, key, "26");
        assertRung(Rung.UNEXPLAINED, key, "27.5");
        assertSays("asked for in °C", assertRung(Rung.CORRECT, key, "298 K"));
        assertRung(Rung.POWER_OF_TEN, key, "250 °C");
        assertRung(Rung.SIGN, key, "-25 °C");
        assertRung(Rung.TOO_COARSE, key(Unit.parse("degC").toSi(87.4), "degC", new Acceptance.Within(0, 1)), "90 °C");
        Verdict kelvin = assertRung(Rung.OTHER_SCALE, key, "25 K");
        assertSays("25\u00A0K is \u2212248.15\u00A0°C", kelvin);
        assertSays("Write °C", kelvin);
    }

    @Test
    void aDifferenceInCelsiusIsReadInKelvin() {
        AnswerKey rise = key(25, "K", new Acceptance.Within(0, 0.5));
        Verdict verdict = assertRung(Rung.CORRECT, rise, "25 °C");
        assertSays("read as a difference", verdict);
        assertEquals("25\u00A0K", verdict.understood());
        assertRung(Rung.CORRECT, rise, "25 K");
        assertRung(Rung.CORRECT, rise, "25");
        assertSays("273.15", assertRung(Rung.RISE_OR_TEMPERATURE, rise, "298.15 K"));
    }

    private static final AnswerKey PREFERRED = key(
            470,
            "ohm",
            new Acceptance.Preferred(PreferredSeries.E24),
            new KnownMistake("wrong-limit", 620, "The limit of the other diode was used."));

    @Test
    void aPreferredValueIsExactlyThatMember() {
        assertRung(Rung.CORRECT, PREFERRED, "470R");
        assertRung(Rung.CORRECT, PREFERRED, "0.47 kΩ");
        assertSays("not a value of the E24 series", assertRung(Rung.UNEXPLAINED, PREFERRED, "471"));
        assertSays("not a value of the E24 series", assertRung(Rung.UNEXPLAINED, PREFERRED, "437.5"));
        assertSays("small side", assertRung(Rung.UNEXPLAINED, PREFERRED, "430"));
        assertSays("large side", assertRung(Rung.UNEXPLAINED, PREFERRED, "510"));
        assertSays("not the one that the calculation leads to", assertRung(Rung.UNEXPLAINED, PREFERRED, "1k"));
        assertRung(Rung.KNOWN_MISTAKE, PREFERRED, "620");
        assertRung(Rung.POWER_OF_TEN, PREFERRED, "47k");
        assertRung(Rung.UNEXPLAINED, PREFERRED, "0");
    }

    @Test
    void aCountIsAWholeNumber() {
        AnswerKey key = key(24, "1", new Acceptance.Count());
        assertRung(Rung.CORRECT, key, "24");
        assertRung(Rung.CORRECT, key, "24.0");
        assertRung(Rung.CORRECT, key, "24 LEDs");
        assertSays("not a whole number", assertRung(Rung.UNEXPLAINED, key, "24.2"));
        assertSays("Off by one", assertRung(Rung.UNEXPLAINED, key, "23"));
        assertSays("Off by one", assertRung(Rung.UNEXPLAINED, key, "25"));
        assertSays("Sketch", assertRung(Rung.UNEXPLAINED, key, "31"));
        assertRung(Rung.POWER_OF_TEN, key, "240");
    }

    private static final AnswerKey CHOICE = key(
            1,
            "1",
            new Acceptance.Choice(List.of(
                    new Acceptance.Option("Yes", "The junction stays below its limit without one."),
                    new Acceptance.Option("no", ""),
                    new Acceptance.Option("Only in the sun", ""))));

    @Test
    void aGermanOptionIsFoundByItsFirstLetterAndWithoutItsUmlauts() {
        AnswerKey german = key(
                0,
                "1",
                new Acceptance.Choice(List.of(
                        new Acceptance.Option("ja", ""),
                        new Acceptance.Option("nein", ""),
                        new Acceptance.Option("grün oder weiß", ""))));
        for (String right : List.of("ja", "J", "j", "a")) {
            assertRung(Rung.CORRECT, german, right);
        }
        for (String wrong : List.of("n", "Nein", "gruen oder weiss", "GRÜN ODER WEIß")) {
            assertRung(Rung.KNOWN_MISTAKE, german, wrong);
        }
    }

    @Test
    void anOptionIsFoundByItsWordsItsLetterOrItsNumber() {
        for (String right : List.of("no", "NO", " No. ", "n", "b", "B", "b)", "(b)", "2")) {
            Verdict verdict = assertRung(Rung.CORRECT, CHOICE, right);
            assertEquals("no", verdict.understood());
        }
        for (String wrong : List.of("yes", "y", "a", "A)", "1")) {
            Verdict verdict = assertRung(Rung.KNOWN_MISTAKE, CHOICE, wrong);
            assertEquals("option-0", verdict.mistake().orElseThrow());
            assertEquals("The junction stays below its limit without one.", verdict.message());
        }
        assertSays("does not fit", assertRung(Rung.KNOWN_MISTAKE, CHOICE, "only  in the\u00A0SUN"));
        for (String unknown : List.of("maybe", "d", "4", "0", "ab", ")")) {
            assertSays("a) Yes; b) no; c) Only in the sun", assertRung(Rung.UNREADABLE, CHOICE, unknown));
        }
    }

    @Test
    void optionsThatAreLettersOrNumbersAreTakenByTheirWords() {
        AnswerKey key = key(
                0,
                "1",
                new Acceptance.Choice(List.of(
                        new Acceptance.Option("2", ""),
                        new Acceptance.Option("1", ""),
                        new Acceptance.Option("b", ""),
                        new Acceptance.Option("a", ""))));
        assertRung(Rung.CORRECT, key, "2");
        assertEquals(
                "option-1", assertRung(Rung.KNOWN_MISTAKE, key, "1").mistake().orElseThrow());
        assertEquals(
                "option-3", assertRung(Rung.KNOWN_MISTAKE, key, "a").mistake().orElseThrow());
        assertRung(Rung.UNREADABLE, key, "3");
        assertRung(Rung.UNREADABLE, key, "c");
    }

    private static final KnownMistake FROM_THE_OTHER_END =
            new KnownMistake("other-end", 0.553, "Counted from the wrong end.");
    private static final AnswerKey SHARE = key(0.447, "%", TWO_PERCENT, FROM_THE_OTHER_END);

    @Test
    void aShareIsRightInPercentAndAsAFraction() {
        for (String right : List.of("44.7", "0.447", "44.7 %", "44,7%", ".447", "0.45", "45 percent", "4.47e-1")) {
            assertRung(Rung.CORRECT, SHARE, right);
        }
        assertEquals("44.7\u00A0%", assertRung(Rung.CORRECT, SHARE, "0.447").understood());
        assertRung(Rung.CORRECT, key(0.447, "1", TWO_PERCENT), "44.7 %");
        // Of 0.5 %, 0.5 is as many percent and 0.005 a fraction.
        assertRung(Rung.CORRECT, key(0.005, "%", TWO_PERCENT), "0.5");
        assertRung(Rung.CORRECT, key(0.005, "%", TWO_PERCENT), "0.005");
    }

    @Test
    void aWrongShareStaysWrongHoweverItIsWritten() {
        for (String mistake : List.of("55.3", "0.553", "55.3 %")) {
            assertEquals(
                    "other-end",
                    assertRung(Rung.KNOWN_MISTAKE, SHARE, mistake).mistake().orElseThrow());
        }
        assertSays("a hundred times too small", assertRung(Rung.POWER_OF_TEN, SHARE, "0.447 %"));
        assertSays("ten times too small", assertRung(Rung.POWER_OF_TEN, SHARE, "4.47"));
        assertSays("ten times too small", assertRung(Rung.POWER_OF_TEN, SHARE, "0.0447"));
        assertSays("a hundred times too large", assertRung(Rung.POWER_OF_TEN, SHARE, "4470"));
        assertRung(Rung.SIGN, SHARE, "-0.447");
        assertRung(Rung.SIGN, SHARE, "-44.7");
        assertRung(Rung.UNEXPLAINED, SHARE, "0.61");
        assertRung(Rung.UNEXPLAINED, SHARE, "31");
        assertFalse(verdict(key(0.447, "1", TWO_PERCENT), "44.7").isRight(), "no percent was asked for");
    }

    @Test
    void speedsAndTorquesAreRightInTheUnitsOfTheTrade() {
        AnswerKey speed = new AnswerKey("q1", "x", 50, Unit.parse("turn/min"), 3, false, TWO_PERCENT, List.of());
        // 3000 r/min is 314 rad/s.
        for (String right :
                List.of("3000 r/min", "3000 rpm", "3000 1/min", "3000 min^-1", "3000 min-1", "314 rad/s", "50 Hz")) {
            assertRung(Rung.CORRECT, speed, right);
        }
        assertTrue(assertRung(Rung.CORRECT, speed, "314 rad/s").understood().endsWith("turn/min"));
        assertFalse(verdict(speed, "50 rad/s").isRight());
        assertFalse(verdict(key(50, "Hz", TWO_PERCENT), "314 rad/s").isRight(), "a frequency is no speed");
        AnswerKey torque = new AnswerKey("q1", "x", 0.005, Unit.parse("mN*m"), 3, false, TWO_PERCENT, List.of());
        for (String right :
                List.of("5 mNm", "5 mN m", "5 mN·m", "5 mN*m", "0.005 Nm", "0.5 Ncm", "5 millinewton metres")) {
            assertRung(Rung.CORRECT, torque, right);
        }
        assertRung(Rung.WRONG_DIMENSION, torque, "5 nm");
    }

    /** Supply, forward voltage and a steady room: what a learner may mix up is all among these. */
    private static final ProblemKey MEANT = meant();

    private static ProblemKey meant() {
        ProblemKey indicator = indicator(true);
        return new ProblemKey(
                indicator.answers(),
                indicator.givens(),
                indicator.working(),
                List.of(),
                Map.of(
                        "Vs",
                        "supply voltage",
                        "If",
                        "current wanted",
                        "R",
                        "resistance that sets the current",
                        "Rn",
                        "preferred value"),
                Languages.ENGLISH,
                DecimalMarker.POINT);
    }

    private static Verdict meant(String question, String typed) {
        return Judge.judge(MEANT, Map.of(question, typed)).stream()
                .filter(one -> one.question().equals(question))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aSlipThatAnyProblemMayHaveIsNamed() {
        assertTrue(slip(Rung.EXACT_OR_FITTED, "q1c", "16 mA").contains("the preferred value counts"));
        assertTrue(slip(Rung.OTHER_QUANTITY, "q1a", "470").contains("the preferred value, another quantity"));
        assertTrue(slip(Rung.EXACT_OR_FITTED, "q1b", "437.5").contains("before it is rounded"));
        // 7 V over 437.5 Ω is the current wanted; its square times 437.5 Ω is 112 mW, with the preferred value 104 mW.
        assertTrue(slip(Rung.EXACT_OR_FITTED, "q1d", "112 mW").contains("the preferred value counts"));
        // 9 V times 16 mA.
        assertTrue(slip(Rung.WRONG_PAIR, "q1d", "144 mW").contains("the supply voltage times the current wanted"));
        assertTrue(slip(Rung.NEAR_MISS, "q1a", "421").contains("rounded on the way"));
        assertEquals(
                "I do not recognise this value. First check the preferred value, then that each given value went "
                        + "in once, with"
                        + " its prefix, and work the steps again one by one.",
                slip(Rung.UNEXPLAINED, "q1c", "3.3 mA"));
    }

    @Test
    void aMistakeCarriedOnAndAGivenLeftOutAreNamed() {
        // The whole supply in q1a would lead to 620 Ω, and so does a modelled mistake in q1b; 7 V then drive 11.29 mA.
        assertTrue(slip(Rung.CARRIED_MISTAKE, "q1c", "11.3 mA").startsWith("This follows from a mistake in q1a."));
        Verdict afterRight = Judge.judge(MEANT, Map.of("q1a", "437.5 ohm", "q1c", "11.3 mA")).stream()
                .filter(one -> one.question().equals("q1c"))
                .findFirst()
                .orElseThrow();
        assertEquals(
                "This follows from a mistake in q1b. Look there first: The limit of the other diode was used.",
                afterRight.message());
        // Without the LED's voltage 562.5 Ω would be wanted; 9 V over 620 Ω are 14.52 mA.
        assertEquals(
                "This comes out without Vf. Check where it belongs in the steps.",
                slip(Rung.MISPLACED_GIVEN, "q1c", "14.52 mA"));
    }

    private static String slip(Rung rung, String question, String typed) {
        Verdict verdict = meant(question, typed);
        assertEquals(rung, verdict.rung(), () -> typed + ": " + verdict);
        return verdict.message();
    }

    /** A tab at 40 °C room that gets 45.4 K warmer. */
    private static ProblemKey warm(String asked, double expected) {
        Values givens = Values.of(Map.of("Ta", new Quantity(313.15, Dimension.TEMPERATURE)), Map.of());
        AnswerKey key = key(expected, asked, new Acceptance.Within(0, 1));
        return new ProblemKey(
                List.of(key),
                givens,
                new Working(List.of()),
                List.of(),
                Map.of("Ta", "air temperature"),
                Languages.ENGLISH,
                DecimalMarker.POINT);
    }

    private static Verdict warm(String asked, double expected, String typed) {
        return Judge.judge(warm(asked, expected), Map.of("q1", typed)).get(0);
    }

    @Test
    void aRiseATemperatureAndTheirZerosAreToldApart() {
        for (String typed : List.of("45.4 °C", "45.4", "125.4 °C", "358.6 °C", "-187.8 °C")) {
            Verdict verdict = warm("degC", 358.55, typed);
            assertEquals(Rung.RISE_OR_TEMPERATURE, verdict.rung(), () -> typed + ": " + verdict);
        }
        assertSays("only how far the temperature lies above the air temperature", warm("degC", 358.55, "45.4"));
        assertEquals(Rung.OTHER_SCALE, warm("degC", 358.55, "85.4 K").rung());
        assertEquals(Rung.CORRECT, warm("degC", 358.55, "358.6 K").rung());
        assertEquals(
                "This is the air temperature, which is given. Work on from it: another quantity is asked for.",
                warm("degC", 358.55, "40 °C").message());
        for (String typed : List.of("85.4 K", "85.4 °C", "318.55 K", "358.55 K")) {
            Verdict verdict = warm("K", 45.4, typed);
            assertEquals(Rung.RISE_OR_TEMPERATURE, verdict.rung(), () -> typed + ": " + verdict);
        }
        assertEquals(Rung.CORRECT, warm("K", 45.4, "45.4 °C").rung());
    }

    @Test
    void noMessageOfASlipTellsTheAnswer() {
        for (AnswerKey key : MEANT.answers()) {
            for (UsualSlip slip : UsualSlips.of(MEANT, key)) {
                for (Unit unit : List.of(key.unit(), key.unit().withoutPrefix())) {
                    String number = QuantityWriter.POINT
                            .rounded(key.expected(), unit, 2)
                            .number();
                    assertFalse(slip.says().contains(number), slip.says());
                }
            }
        }
    }

    /**
     * One indicator: 9 V supply, 2 V forward, 16 mA; the resistor, its preferred value, the current then, its power.
     */
    private static ProblemKey indicator(boolean unitPrinted) {
        Map<String, Quantity> givens = new LinkedHashMap<>();
        givens.put("Vs", new Quantity(9, Dimension.VOLTAGE));
        givens.put("Vf", new Quantity(2, Dimension.VOLTAGE));
        givens.put("If", new Quantity(0.016, Dimension.CURRENT));
        Working working = new Working(List.of(
                Step.of("R", FormulaReader.expression("(Vs - Vf) / If")),
                Step.of("Rn", FormulaReader.expression("next_up(R, E24)")),
                Step.of("I", FormulaReader.expression("(Vs - Vf) / Rn")),
                Step.of("P", FormulaReader.expression("I^2 * Rn"))));
        Values values = working.work(Values.of(givens, Map.of()));
        return new ProblemKey(
                List.of(
                        answer("q1a", "R", values, "ohm", TWO_PERCENT, unitPrinted, NO_FORWARD_VOLTAGE),
                        answer(
                                "q1b",
                                "Rn",
                                values,
                                "ohm",
                                new Acceptance.Preferred(PreferredSeries.E24),
                                unitPrinted,
                                new KnownMistake("wrong-limit", 620, "The limit of the other diode was used.")),
                        answer(
                                "q1c",
                                "I",
                                values,
                                "mA",
                                TWO_PERCENT,
                                unitPrinted,
                                new KnownMistake("whole-supply", 9 / 470.0, "The LED's voltage was left in.")),
                        answer("q1d", "P", values, "mW", TWO_PERCENT, unitPrinted)),
                Values.of(givens, Map.of()),
                working,
                List.of(),
                Languages.ENGLISH);
    }

    /** Two resistors for 5 V from 12 V, within 4 %: 10 kΩ over 6.8 kΩ gives 4.857 V. */
    private static ProblemKey pair(boolean unitPrinted) {
        return pair(unitPrinted, Step.of("V", FormulaReader.expression("Vs * RB / (RA + RB)")));
    }

    private static ProblemKey pair(boolean unitPrinted, Step output) {
        Map<String, Quantity> givens = new LinkedHashMap<>();
        givens.put("Vs", new Quantity(12, Dimension.VOLTAGE));
        List<Step> chosen = List.of(
                Step.of("RA", FormulaReader.expression("10 kohm")),
                Step.of("RB", FormulaReader.expression("6.8 kohm")));
        Working working = new Working(List.of(chosen.get(0), chosen.get(1), output));
        Values values = new Working(chosen).work(Values.of(givens, Map.of()));
        Acceptance drawer = new Acceptance.Designed(Optional.of(PreferredSeries.E12), 1e3, 1e5);
        return new ProblemKey(
                List.of(
                        answer("q1a", "RA", values, "kohm", drawer, unitPrinted),
                        answer("q1b", "RB", values, "kohm", drawer, unitPrinted)),
                Values.of(givens, Map.of()),
                working,
                List.of(new DesignKey(
                        "pair",
                        List.of("RA", "RB"),
                        List.of(new DesignKey.Criterion(
                                "near",
                                FormulaReader.condition("abs(V - 5 V) <= 0.2 V"),
                                "V",
                                "V",
                                Unit.parse("V"),
                                "|V − 5 V| ≤ 0.2 V",
                                "The output misses 5 V.")))),
                Languages.ENGLISH);
    }

    @Test
    void aDesignIsRightWithAnyValuesThatMeetItsCriteria() {
        for (String[] right : new String[][] {{"10k", "6.8k"}, {"47 kΩ", "33 kΩ"}, {"2k2", "1500 ohm"}}) {
            List<Verdict> verdicts = judge(pair(true), right);
            assertEquals(
                    List.of(Rung.CORRECT, Rung.CORRECT),
                    verdicts.stream().map(Verdict::rung).toList(),
                    right[0]);
            assertSays("Your values give V = ", verdicts.get(0));
        }
        // 12 V · 10 kΩ / 22 kΩ = 5.4545 V
        Verdict missed = judge(pair(true), "12k", "10k").get(1);
        assertEquals(Rung.CRITERION_MISSED, missed.rung());
        assertEquals("near", missed.mistake().orElseThrow());
        assertSays("5.455", missed);
        assertSays("|V − 5 V| ≤ 0.2 V", missed);
        // 10 kΩ over 7.5 kΩ would do, but is not to be had in E12; 1 MΩ is not in the drawer.
        assertEquals(
                List.of(Rung.INCOMPLETE, Rung.UNEXPLAINED),
                judge(pair(true), "10k", "7.5k").stream().map(Verdict::rung).toList());
        assertSays("E12", judge(pair(true), "10k", "7.5k").get(1));
        assertSays("from 1", judge(pair(true), "1M", "680k").get(0));
        assertSays("q1a", judge(pair(true), "1M", "6k8").get(1));
    }

    @Test
    void valuesForWhichNoCaseAppliesAreTold() {
        ProblemKey key = pair(
                true,
                new Step(
                        "V",
                        List.of(new Step.Case(
                                Optional.of(FormulaReader.condition("RB < 10 kohm")),
                                FormulaReader.expression("Vs * RB / (RA + RB)")))));
        assertEquals(Rung.CORRECT, judge(key, "10k", "6.8k").get(0).rung());
        Verdict told = judge(key, "10k", "12k").get(0);
        assertEquals(Rung.UNEXPLAINED, told.rung());
        assertEquals(new Sentences(Languages.ENGLISH).cannotBeWorked(), told.message());
    }

    @Test
    void aFaultOfTheProgramIsNotToldAsAnAnswerThatLeadsNowhere() {
        ProblemKey broken = pair(true, Step.of("V", FormulaReader.expression("Vs * RB / (RA + Rx)")));
        assertThrows(IllegalArgumentException.class, () -> judge(broken, "10k", "6.8k"));
    }

    @Test
    void aBareNumberInADesignIsTakenInTheUnitThatCanBeMeant() {
        for (String bare : new String[] {"10", "10000"}) {
            List<Verdict> verdicts = judge(pair(false), bare, "6.8 kohm");
            assertEquals(
                    List.of(Rung.UNIT_MISSING, Rung.CORRECT),
                    verdicts.stream().map(Verdict::rung).toList(),
                    bare);
        }
        assertEquals(
                Rung.CRITERION_MISSED,
                judge(pair(false), "12", "10 kohm").get(0).rung());
    }

    private static AnswerKey answer(
            String question,
            String step,
            Values values,
            String unit,
            Acceptance acceptance,
            boolean unitPrinted,
            KnownMistake... mistakes) {
        return new AnswerKey(
                question,
                step,
                values.quantity(step).value(),
                Unit.parse(unit),
                3,
                unitPrinted,
                acceptance,
                List.of(mistakes));
    }

    private static List<Verdict> judge(ProblemKey problem, String... answers) {
        Map<String, String> typed = new LinkedHashMap<>();
        for (int i = 0; i < answers.length; i++) {
            typed.put(problem.answers().get(i).question(), answers[i]);
        }
        return Judge.judge(problem, typed);
    }

    @Test
    void oneSlipCostsOneAnswer() {
        List<Verdict> verdicts = judge(indicator(true), "562.5", "620", "11.29 mA", "79.0 mW");
        assertEquals(
                List.of(
                        Rung.KNOWN_MISTAKE,
                        Rung.KNOWN_MISTAKE,
                        Rung.CONSISTENT_WITH_EARLIER,
                        Rung.CONSISTENT_WITH_EARLIER),
                verdicts.stream().map(Verdict::rung).toList());
        assertSays("your answer to q1b", verdicts.get(2));
        List<Verdict> slip = judge(indicator(true), "700", "750", "9.33", "65.3");
        assertEquals(
                List.of(
                        Rung.UNEXPLAINED,
                        Rung.CONSISTENT_WITH_EARLIER,
                        Rung.CONSISTENT_WITH_EARLIER,
                        Rung.CONSISTENT_WITH_EARLIER),
                slip.stream().map(Verdict::rung).toList());
        assertSays("Correct that one first", slip.get(1));
        assertSays("q1a", slip.get(1));
        assertSays("q1b", slip.get(2));
        assertFalse(slip.get(2).message().contains("q1a"), slip.get(2)::message);
    }

    @Test
    void aLaterAnswerWrongInItselfIsNotExcusedByAnEarlierOne() {
        List<Verdict> verdicts = judge(indicator(true), "700", "1k", "30 mA");
        assertEquals(Rung.UNEXPLAINED, verdicts.get(1).rung());
        assertEquals(Rung.UNEXPLAINED, verdicts.get(2).rung());
    }

    @Test
    void aRoundedEarlierAnswerExplainsALaterOneThatIsOff() {
        // The current accepted at 1.9 % too much, its square is 3.8 % too much.
        List<Verdict> verdicts = judge(indicator(true), "437.5", "470", "15.17 mA", "108.2 mW");
        assertEquals(Rung.CORRECT, verdicts.get(2).rung());
        assertEquals(Rung.CONSISTENT_WITH_EARLIER, verdicts.get(3).rung());
        assertSays("as you rounded it", verdicts.get(3));
        assertSays("q1c", verdicts.get(3));
    }

    @Test
    void anImpossibleEarlierAnswerExplainsNothingAndDoesNoHarm() {
        List<Verdict> verdicts = judge(indicator(true), "-700", "0", "15", "1");
        assertEquals(Rung.UNEXPLAINED, verdicts.get(1).rung());
        assertEquals(4, verdicts.size());
    }

    @Test
    void everyRungIsReachedByWhatIsTypedForIt() {
        Set<Rung> reached = EnumSet.noneOf(Rung.class);
        for (boolean unitPrinted : new boolean[] {true, false}) {
            ProblemKey problem = indicator(unitPrinted);
            for (LadderProbe probe : LadderProbe.of(problem)) {
                Verdict verdict = probe.verdict(problem);
                assertEquals(probe.rung(), verdict.rung(), () -> probe + " gave " + verdict);
                assertEquals(probe.mistake(), verdict.mistake().orElse(""), () -> probe + " gave " + verdict);
                reached.add(verdict.rung());
            }
        }
        ProblemKey coarse = new ProblemKey(
                List.of(key(1.04, "V", TWO_PERCENT), CHOICE),
                Values.of(Map.of(), Map.of()),
                new Working(List.of()),
                List.of(),
                Languages.ENGLISH);
        for (LadderProbe probe : LadderProbe.of(coarse)) {
            reached.add(probe.verdict(coarse).rung());
        }
        for (ProblemKey other : List.of(pair(true), pair(false), warm("degC", 358.55), warm("K", 45.4))) {
            for (LadderProbe probe : LadderProbe.of(other)) {
                Verdict verdict = probe.verdict(other);
                assertEquals(probe.rung(), verdict.rung(), () -> probe + " gave " + verdict);
                reached.add(verdict.rung());
            }
        }
        assertEquals(EnumSet.allOf(Rung.class), reached);
    }

    @Test
    void tenThousandSpellingsOfRightAnswersAreRight() {
        long seed = 20260105L;
        Random random = new Random(seed);
        Spellings spellings = new Spellings(random);
        List<String> units = List.of(
                "V",
                "mA",
                "ohm",
                "kohm",
                "uF",
                "W",
                "K/W",
                "degC",
                "%",
                "1",
                "kbit/s",
                "mm2",
                "m",
                "us",
                "ohm*m",
                "K",
                "mohm/m",
                "kHz",
                "px",
                "turn",
                "J/(kg*K)",
                "min");
        for (int i = 0; i < 10_000; i++) {
            Unit unit = Unit.parse(units.get(random.nextInt(units.size())));
            double number = (1 + 999 * random.nextDouble()) * (random.nextInt(8) == 0 ? -1 : 1);
            Acceptance acceptance = unit.dimension().equals(Dimension.TEMPERATURE)
                    ? new Acceptance.Within(0, 0.006 * Math.abs(number))
                    : new Acceptance.Within(0.006, 0);
            int figures = 3;
            if (unit.symbol().equals("Ω") && random.nextBoolean()) {
                acceptance = new Acceptance.Preferred(PreferredSeries.E24);
                number = PreferredSeries.E24.nearest(Math.abs(number));
                figures = 15;
            } else if (unit.symbol().isEmpty()) {
                acceptance = new Acceptance.Count();
                number = Math.floor(number);
                figures = 15;
            }
            boolean unitPrinted = random.nextBoolean();
            AnswerKey key = new AnswerKey("q1", "x", unit.toSi(number), unit, 3, unitPrinted, acceptance, List.of());
            String typed = spellings.of(key.expected(), unit, figures + random.nextInt(3), unitPrinted);
            Verdict verdict = verdict(key, typed);
            String told = "seed " + seed + ", draw " + i + ": " + number + " " + unit.symbol() + " typed " + typed
                    + " -> " + verdict;
            assertEquals(Rung.CORRECT, verdict.rung(), told);
        }
    }

    @Test
    void noVerdictTellsTheExpectedValue() {
        ProblemKey problem = indicator(true);
        for (LadderProbe probe : LadderProbe.of(problem)) {
            Verdict verdict = probe.verdict(problem);
            // An ambiguous answer is read back in both ways, and one of them may be right.
            if (!verdict.isRight() && verdict.rung() != Rung.AMBIGUOUS) {
                for (String secret : List.of("437", "438", "470", "14.9", "104")) {
                    assertFalse(verdict.message().contains(secret), () -> probe + " gave " + verdict);
                }
                assertFalse(verdict.message().toLowerCase(java.util.Locale.ROOT).startsWith("wrong"), verdict::message);
            }
        }
    }

    @Test
    void hostileTextIsHandedBackAsItCame() {
        String hostile = "<script>alert('1')</script>";
        assertEquals(hostile, assertRung(Rung.UNREADABLE, RESISTANCE, hostile).asTyped());
        assertRung(Rung.UNREADABLE, RESISTANCE, "9".repeat(100_000));
    }
}
