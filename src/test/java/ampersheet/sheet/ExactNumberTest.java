package ampersheet.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class ExactNumberTest {
    @Test
    void everyDoubleIsReadBackAsItself() {
        Random random = new Random(20);
        for (int i = 0; i < 20_000; i++) {
            double value = i % 2 == 0 ? Double.longBitsToDouble(random.nextLong()) : random.nextInt(100_000) / 1000.0;
            if (Double.isFinite(value)) {
                String written = ExactNumber.write(value);
                assertEquals(value == 0 ? 0.0 : value, ExactNumber.read(written).orElseThrow(), written);
            }
        }
        for (double edge : new double[] {Double.MIN_VALUE, Double.MAX_VALUE, Double.MIN_NORMAL, -0.1, 1e15, 1e-7}) {
            assertEquals(edge, ExactNumber.read(ExactNumber.write(edge)).orElseThrow());
        }
    }

    @Test
    void shortNumbersStayShort() {
        assertEquals("0.013", ExactNumber.write(0.013));
        assertEquals("1023.0769230769232", ExactNumber.write(13.3 / 0.013));
        assertEquals("12", ExactNumber.write(12));
        assertEquals("0", ExactNumber.write(-0.0));
        assertEquals("0.000001", ExactNumber.write(1e-6));
    }

    @Test
    void onlyPlainNumbersAreRead() {
        for (String hostile : List.of(
                "", "NaN", "Infinity", "1e999", "0x1p3", "1d", "1,5", " 1", "1 ", "--1", "e", ".", "1".repeat(31))) {
            assertTrue(ExactNumber.read(hostile).isEmpty(), hostile);
        }
    }
}
