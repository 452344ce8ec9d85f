package ampersheet.figure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class ScaleTest {
    private static List<String> printed(double from, double to, int most) {
        Scale scale = new Scale(from, to, most);
        return scale.ticks().stream().map(scale::print).toList();
    }

    @Test
    void stepsAreOneTwoOrFiveTimesAPowerOfTen() {
        assertEquals(List.of("0", "100", "200", "300", "400", "500", "600"), printed(0, 600, 8));
        assertEquals(List.of("0", "0.2", "0.4", "0.6", "0.8", "1"), printed(0, 1, 6));
        assertEquals(List.of("−10", "−5", "0", "5", "10"), printed(-10, 10, 6));
        assertEquals(List.of("20", "40", "60", "80"), printed(15, 85, 6));
        assertEquals(List.of("0", "0.0005", "0.001", "0.0015", "0.002"), printed(0, 0.002, 6));
        assertEquals(List.of("0", "500000", "1000000"), printed(0, 1_000_000, 4));
    }

    @Test
    void noAxisHasMoreStepsThanAllowedNorFewerThanAThird() {
        for (long seed = 1; seed <= 2000; seed++) {
            Random random = new Random(seed);
            double from = (random.nextDouble() - 0.5) * 2000;
            double to = from + 0.001 + random.nextDouble() * 5000 * random.nextDouble();
            int steps = new Scale(from, to, 8).ticks().size() - 1;
            assertTrue(steps <= 8 && steps >= 2, "seed " + seed + ": " + from + " to " + to + " has " + steps);
        }
    }

    @Test
    void anEmptyAxisIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> new Scale(3, 3, 8));
        assertThrows(IllegalArgumentException.class, () -> new Scale(Double.NaN, 3, 8));
        assertThrows(IllegalArgumentException.class, () -> new Scale(0, Double.POSITIVE_INFINITY, 8));
    }
}
