package ampersheet.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** What is written at once is what the parser of Markdown would have had written. */
class PlainProseTest {
    private static final long SEED = 7;
    private static final int TEXTS = Boolean.getBoolean("ampersheet.deep") ? 2_000_000 : 60_000;
    private static final List<String> PIECES = List.of(
            "a", "Bc", "4.7", " ", " ", "*", "**", "***", "\\.", "\\*", "\\", "(", ")", ".", ",", ":", "\n", "\n\n",
            "\u00A0", "Ω", "–", "“", "”", "1.", "-", "+", "=", "q2a", "%", "?", "'", "\"", "_", "`", "<", "&amp;",
            "[x]", "|", "#", "  ", "é", "\t", "!", "\u2028", "/", ";");

    private static String parsed(String prose) {
        Markup markup = new Markup();
        ProseMarkup.writeParsed(prose, markup);
        return markup.toString();
    }

    @Test
    void whatIsWrittenAtOnceIsWhatTheParserWouldHaveWritten() {
        Random random = new Random(SEED);
        int atOnce = 0;
        for (int i = 0; i < TEXTS; i++) {
            StringBuilder prose = new StringBuilder();
            // Most texts of so many marks are not plain; half are made of fewer kinds of pieces.
            int kinds = random.nextBoolean() ? 18 : PIECES.size();
            for (int piece = random.nextInt(12); piece >= 0; piece--) {
                prose.append(PIECES.get(random.nextInt(kinds)));
            }
            Markup markup = new Markup();
            if (PlainProse.write(prose.toString(), markup)) {
                atOnce++;
                assertEquals(parsed(prose.toString()), markup.toString(), prose + " of seed " + SEED);
            } else {
                assertEquals("", markup.toString());
            }
        }
        assertTrue(atOnce > TEXTS / 50, atOnce + " at once");
    }

    @Test
    void theLinesOfAFeedbackPageArePlain() {
        for (String prose : List.of(
                "**q2a** Which resistor sets the current?\n\nYou wrote **1\\.714 kΩ**. *No mark.* *Probably:* You put "
                        + "the whole supply across the resistor.",
                "**7.5 of 10 marks.** Of 10 places: 7 right, 1 half right, 2 wrong.",
                "You wrote **4,7 k**, read as 4\\.7 kΩ. *Half a mark.* The number is right.")) {
            Markup markup = new Markup();
            assertTrue(PlainProse.write(prose, markup), prose);
            assertEquals(parsed(prose), markup.toString());
        }
        assertFalse(PlainProse.write("- a list", new Markup()));
    }
}
