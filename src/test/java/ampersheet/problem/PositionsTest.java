package ampersheet.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class PositionsTest {
    @Test
    void theKthAcceptedPositionIsFoundAmongNearAndFarOnes() {
        Random random = new Random(7);
        Positions positions = new Positions();
        List<Long> expected = new ArrayList<>();
        long at = random.nextInt(3) * 64L;
        for (int k = 0; k < 5_000; k++) {
            positions.add(at);
            expected.add(at);
            at += 1 + (random.nextInt(50) == 0 ? random.nextInt(1_000) : random.nextInt(3));
        }
        assertEquals(expected.size(), positions.size());
        for (int k = 0; k < expected.size(); k++) {
            assertEquals(expected.get(k), positions.get(k));
        }
        assertThrows(IndexOutOfBoundsException.class, () -> positions.get(5_000));
    }
}
