package ampersheet.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.BitSet;
import java.util.LinkedHashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;

class PermutationTest {

    @Test
    void everyPositionOfASmallSpaceIsHitOnce() {
        for (int size : new int[] {1, 2, 3, 4, 5, 7, 16, 17, 100, 255, 256, 257, 1000, 2052, 65_537}) {
            for (String seed : new String[] {"a", "b", ""}) {
                Permutation permutation = new Permutation(size, seed);
                BitSet hit = new BitSet(size);
                for (int position = 0; position < size; position++) {
                    hit.set((int) permutation.at(position));
                }
                assertEquals(size, hit.cardinality(), "size " + size + ", seed \"" + seed + "\"");
                assertEquals(size, hit.length(), "nothing outside; size " + size + ", seed \"" + seed + "\"");
            }
        }
    }

    @Test
    void aVastSpaceIsWalkedWithoutMeeting() {
        long size = 3_000_000_000_000_017L;
        Permutation permutation = new Permutation(size, "vast");
        Set<Long> seen = new LinkedHashSet<>();
        for (long position = 0; position < 100_000; position++) {
            long at = permutation.at(position);
            assertTrue(at >= 0 && at < size, "position " + position + " leads to " + at);
            assertTrue(seen.add(at), "position " + position + " meets an earlier one at " + at);
        }
    }

    @Test
    void theLargestSpaceStillWorks() {
        long size = 1L << 62;
        Permutation permutation = new Permutation(size, "largest");
        assertTrue(permutation.at(size - 1) >= 0);
        assertThrows(IllegalArgumentException.class, () -> new Permutation(size + 1, "too large"));
        assertThrows(IllegalArgumentException.class, () -> new Permutation(0, "empty"));
    }

    @Test
    void anotherSeedGivesAnotherOrder() {
        assertFalse(sameOrder(new Permutation(1000, "monday", "t"), new Permutation(1000, "tuesday", "t")));
        assertTrue(sameOrder(new Permutation(1000, "monday", "t"), new Permutation(1000, "monday", "t")));
    }

    @Test
    void whereTheKeyIsCutMatters() {
        assertFalse(sameOrder(new Permutation(1000, "a", "bc"), new Permutation(1000, "ab", "c")));
    }

    /** A sheet printed today must be made again next year: these numbers may never change. */
    @Test
    void theOrderIsForEver() {
        Permutation permutation = new Permutation(2052, "demo", "current-limiting/one-indicator");
        assertEquals(
                "[1284, 869, 677, 1677, 1504, 1919, 1376, 1027]",
                java.util.stream.LongStream.range(0, 8)
                        .map(permutation::at)
                        .boxed()
                        .toList()
                        .toString());
    }

    /**
     * In each position, each of ten values should come about equally often over seeds (chi-square, 9 degrees, 0.1 %).
     */
    @Test
    void theFirstPositionFavoursNoValue() {
        int[] count = new int[10];
        for (int seed = 0; seed < 10_000; seed++) {
            count[(int) new Permutation(10, "seed " + seed).at(0)]++;
        }
        double chiSquare = 0;
        for (int observed : count) {
            chiSquare += (observed - 1000.0) * (observed - 1000.0) / 1000.0;
        }
        assertTrue(chiSquare < 27.88, "chi-square " + chiSquare);
    }

    private static boolean sameOrder(Permutation one, Permutation other) {
        for (long position = 0; position < one.size(); position++) {
            if (one.at(position) != other.at(position)) {
                return false;
            }
        }
        return true;
    }
}
