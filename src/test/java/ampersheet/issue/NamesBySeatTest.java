package ampersheet.issue;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

class NamesBySeatTest {
    private static final List<String> FOLDERS = List.of("homework/seat-", "keys/seat-", "sheets/seat-", "seat-", "a/b");
    private static final List<String> ENDINGS = List.of(".html", ".md", ".pdf", "-1.svg", "-10.svg", "-2.svg", "");

    private static String name(Random random) {
        int seat = random.nextInt(random.nextBoolean() ? 1_200 : 130_000);
        String number = random.nextInt(20) == 0 ? "0" + seat : String.format("%03d", seat);
        return FOLDERS.get(random.nextInt(FOLDERS.size())) + number + ENDINGS.get(random.nextInt(ENDINGS.size()));
    }

    @Test
    void itHoldsAnyNamesInTheOrderOfTheirLettersAsASortedSetDoes() {
        Random random = new Random(19);
        NamesBySeat names = new NamesBySeat();
        TreeSet<String> sorted = new TreeSet<>(List.of("index.html", "keys/issued-A7K3M.zip", "zebra"));
        names.addAll(sorted);
        for (int i = 0; i < 20_000; i++) {
            String name = name(random);
            assertEquals(sorted.add(name), names.add(name), name);
            String gone = name(random);
            assertEquals(sorted.contains(gone), names.contains(gone), gone);
            assertEquals(sorted.remove(gone), names.remove(gone), gone);
        }
        assertEquals(new ArrayList<>(sorted), new ArrayList<>(names));
        assertEquals(sorted.size(), names.size());
        assertEquals(sorted, names);
    }

    @Test
    void aCopyGoesItsOwnWay() {
        NamesBySeat names = new NamesBySeat();
        names.addAll(List.of("keys/seat-007.md", "index.html"));
        NamesBySeat copy = new NamesBySeat(names);
        copy.add("keys/seat-008.md");
        copy.remove("index.html");
        assertFalse(names.contains("keys/seat-008.md"));
        assertTrue(names.contains("index.html"));
        assertEquals(List.of("keys/seat-007.md", "keys/seat-008.md"), new ArrayList<>(copy));
    }
}
