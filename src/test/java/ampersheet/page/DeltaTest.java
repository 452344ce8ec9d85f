package ampersheet.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.Random;
import org.junit.jupiter.api.Test;

class DeltaTest {
    /** As the page does it. */
    private static String told(JsonNode pieces, String base) {
        StringBuilder text = new StringBuilder();
        int after = 0;
        for (int i = 0; i < pieces.size(); i++) {
            if (pieces.get(i).isTextual()) {
                text.append(pieces.get(i).asText());
            } else {
                int from = after + pieces.get(i).asInt();
                int length = pieces.get(++i).asInt();
                after = from + length;
                text.append(
                        from < base.length()
                                ? base.substring(from, from + length)
                                : text.substring(from - base.length(), from - base.length() + length));
            }
        }
        return text.toString();
    }

    private static String written(String base, String text) {
        return Json.write(json -> new Delta(base).write(text, json));
    }

    @Test
    void aTextComesBackWhateverItSharesWithItsBase() throws IOException {
        long seed = 20_260_106;
        Random random = new Random(seed);
        for (int i = 0; i < 2_000; i++) {
            String base = letters(random, random.nextInt(200), 1 + random.nextInt(3));
            StringBuilder text = new StringBuilder();
            while (random.nextInt(6) > 0) {
                int from = base.isEmpty() ? 0 : random.nextInt(base.length());
                text.append(
                        random.nextBoolean()
                                ? base.substring(from, Math.min(base.length(), from + 60))
                                : letters(random, random.nextInt(40), 4));
            }
            JsonNode pieces = new ObjectMapper().readTree(written(base, text.toString()));
            assertEquals(text.toString(), told(pieces, base), "seed " + seed + ", text " + i);
        }
    }

    private static String letters(Random random, int length, int kinds) {
        StringBuilder out = new StringBuilder();
        for (int i = 0; i < length; i++) {
            out.append((char) ('a' + random.nextInt(kinds)));
        }
        return out.toString();
    }

    @Test
    void whatDiffersInSomeNumbersTakesLittleMoreThanThose() {
        String base =
                "<p>The supply gives <b>9 V</b>, the LED drops <b>2 V</b> when 16 mA flow through it.</p>".repeat(50);
        String other = base.replace("9 V", "12 V");
        assertTrue(written(base, other).length() < base.length() / 4, written(base, other));
        assertTrue(written("", base).length() < base.length() / 10, "it repeats itself: " + written("", base));
    }
}
