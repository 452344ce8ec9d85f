package ampersheet.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.formula.Values;
import ampersheet.formula.Working;
import ampersheet.problem.AnswerKeys;
import ampersheet.problem.Draws;
import ampersheet.problem.Problem;
import ampersheet.problem.Workshop;
import ampersheet.quantity.DecimalMarker;
import ampersheet.quantity.Unit;
import ampersheet.source.Languages;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateReader;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** A key written as text and read again is the same key to whoever judges by it. */
class KeyTextTest {
    private static final int DRAWS = Boolean.getBoolean("ampersheet.deep") ? 10 : 3;

    @TestFactory
    Stream<DynamicTest> aKeyReadBackGivesEveryVerdictOfTheKeyWritten() {
        TemplateFiles files = TemplateFiles.builtIn();
        return files.names().stream()
                .map(name -> DynamicTest.dynamicTest(name, () -> {
                    Draws draws = new Draws(new Workshop(TemplateReader.read(files, name)), "key-text");
                    for (int draw = 0; draw < DRAWS; draw++) {
                        Problem problem = draws.draw(draw);
                        ProblemKey key = AnswerKeys.keyOf(problem, "q1", draw % 2 == 0);
                        String text = KeyWriter.write(key);
                        ProblemKey back = KeyReader.read(text, Languages.ENGLISH, DecimalMarker.POINT);
                        assertEquals(key.answers(), back.answers(), name + ", draw " + draw);
                        assertEquals(key.givens().quantities(), back.givens().quantities(), name + ", draw " + draw);
                        assertEquals(key.givens().words(), back.givens().words(), name + ", draw " + draw);
                        assertEquals(
                                key.working().work(key.givens()).quantities(),
                                back.working().work(back.givens()).quantities(),
                                name + ", draw " + draw);
                        assertEquals(text, KeyWriter.write(back), name + ", draw " + draw);
                        for (LadderProbe probe : LadderProbe.of(key)) {
                            assertEquals(
                                    Judge.judge(key, probe.typed()),
                                    Judge.judge(back, probe.typed()),
                                    name + ": " + probe);
                        }
                    }
                }));
    }

    @Test
    void numbersComeBackToTheLastBit() {
        long seed = 20_260_103;
        Random random = new Random(seed);
        for (int i = 0; i < 20_000; i++) {
            double value = Double.longBitsToDouble(random.nextLong());
            if (Double.isFinite(value) && Math.abs(value) > Double.MIN_NORMAL) {
                check(value, "seed " + seed + ", number " + i);
            }
        }
        for (double value : new double[] {0, 1, -1, 0.1, 470, 1e22, 1e300, 273.15, 0.02, Double.MIN_NORMAL, 4.7e-12}) {
            check(value, "chosen");
        }
    }

    private static void check(double value, String which) {
        AnswerKey answer = answer(value, "said");
        ProblemKey key = new ProblemKey(
                List.of(answer), Values.of(Map.of(), Map.of()), new Working(List.of()), List.of(), Languages.ENGLISH);
        assertEquals(
                value,
                KeyReader.read(KeyWriter.write(key), Languages.ENGLISH, DecimalMarker.POINT)
                        .answers()
                        .get(0)
                        .expected(),
                which + ": " + value);
    }

    private static AnswerKey answer(double value, String says) {
        return new AnswerKey(
                "q1",
                "x",
                value,
                Unit.parse("V"),
                3,
                false,
                new Acceptance.Within(0.02, 0),
                List.of(new KnownMistake("m", 1, says)));
    }

    @Test
    void wordsKeepTheirLineBreaksAndBackslashes() {
        String says = "first\nsecond \\n third\\";
        ProblemKey key = new ProblemKey(
                List.of(answer(1, says)),
                Values.of(Map.of(), Map.of("corner", "top left")),
                new Working(List.of()),
                List.of(),
                Map.of("x", "voltage of\nthe x"),
                Languages.ENGLISH,
                DecimalMarker.POINT);
        ProblemKey back = KeyReader.read(KeyWriter.write(key), Languages.ENGLISH, DecimalMarker.POINT);
        assertEquals(says, back.answers().get(0).mistakes().get(0).explanation());
        assertEquals("top left", back.givens().words().get("corner"));
        assertEquals(key.meanings(), back.meanings());
    }

    @Test
    void whatIsNotAKeyIsToldWithItsLine() {
        ProblemKey key = new ProblemKey(
                List.of(answer(1, "said")),
                Values.of(Map.of(), Map.of()),
                new Working(List.of()),
                List.of(),
                Languages.ENGLISH);
        String text = KeyWriter.write(key);
        assertTrue(told("key 3\n").contains("line 1"), told("key 3\n"));
        assertTrue(told("").contains("ends too early"), told(""));
        assertTrue(told(text.replace("within", "about")).contains("about"), told(text.replace("within", "about")));
        for (int end = 0; end < text.length() - 1; end++) {
            String part = text.substring(0, end);
            assertFalse(told(part).isEmpty(), part);
        }
    }

    private static String told(String text) {
        return assertThrows(
                        IllegalArgumentException.class,
                        () -> KeyReader.read(text, Languages.ENGLISH, DecimalMarker.POINT),
                        text)
                .getMessage();
    }
}
