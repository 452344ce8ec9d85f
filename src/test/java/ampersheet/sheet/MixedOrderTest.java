package ampersheet.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

class MixedOrderTest {
    private static final long SEED = 7_041;

    /** Each letter is a family. */
    private static String mixed(String listed) {
        List<String> letters = List.of(listed.split(""));
        return String.join("", MixedOrder.of(letters, letter -> letter));
    }

    private static int neighbours(String order) {
        int found = 0;
        for (int i = 1; i < order.length(); i++) {
            found += order.charAt(i) == order.charAt(i - 1) ? 1 : 0;
        }
        return found;
    }

    @Test
    void familiesTakeTurns() {
        assertEquals("ABCABC", mixed("AABBCC"));
        assertEquals("ABCDABCD", mixed("AABBCCDD"));
    }

    @Test
    void alreadyMixedStaysAsListed() {
        assertEquals("ABCABC", mixed("ABCABC"));
    }

    @Test
    void aLargeFamilyBeginsEarlyEnough() {
        assertEquals("CACBC", mixed("ABCCC"));
    }

    @Test
    void withinAFamilyTheListedOrderStays() {
        List<String> mixed = MixedOrder.of(List.of("A1", "A2", "B1", "A3", "B2"), name -> name.substring(0, 1));
        assertEquals(List.of("A1", "B1", "A2", "B2", "A3"), mixed);
    }

    @Test
    void neighboursAreAsFewAsPossible() {
        Random random = new Random(SEED);
        for (int n = 0; n < 3_000; n++) {
            StringBuilder listed = new StringBuilder();
            Map<Character, Integer> counts = new TreeMap<>();
            for (int i = 1 + random.nextInt(14); i > 0; i--) {
                char family = (char) ('A' + random.nextInt(1 + random.nextInt(4)));
                listed.append(family);
                counts.merge(family, 1, Integer::sum);
            }
            String order = mixed(listed.toString());
            int largest = counts.values().stream().max(Integer::compare).orElseThrow();
            int unavoidable = Math.max(0, largest - (listed.length() - largest) - 1);
            assertEquals(unavoidable, neighbours(order), "seed " + SEED + ", listed " + listed + ", mixed " + order);
            List<String> before = new ArrayList<>(List.of(listed.toString().split("")));
            List<String> after = new ArrayList<>(List.of(order.split("")));
            before.sort(null);
            after.sort(null);
            assertEquals(before, after, "nothing is lost: " + listed);
        }
    }
}
