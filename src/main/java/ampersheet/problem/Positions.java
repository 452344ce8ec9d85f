package ampersheet.problem;

import java.util.Arrays;

/** Which positions of an order were accepted, a bit each, and where the k-th of them is. */
final class Positions {
    private long[] accepted = new long[4];
    /** How many are accepted before each of these. */
    private int[] before = new int[4];

    private int last;
    private int size;

    /** @param position later than all before */
    void add(long position) {
        int word = Math.toIntExact(position / Long.SIZE);
        if (word >= accepted.length) {
            int length = Math.max(word + 1, accepted.length + accepted.length / 2);
            accepted = Arrays.copyOf(accepted, length);
            before = Arrays.copyOf(before, length);
        }
        while (last < word) {
            last++;
            before[last] = size;
        }
        accepted[word] |= 1L << (position % Long.SIZE);
        size++;
    }

    int size() {
        return size;
    }

    /** @param k from 0 */
    long get(int k) {
        if (k < 0 || k >= size) {
            throw new IndexOutOfBoundsException(k + " of " + size);
        }
        int least = 0;
        int most = last;
        while (least < most) {
            int middle = (least + most + 1) >>> 1;
            if (before[middle] <= k) {
                least = middle;
            } else {
                most = middle - 1;
            }
        }
        long left = accepted[least];
        for (int passed = before[least]; passed < k; passed++) {
            left &= left - 1;
        }
        return (long) least * Long.SIZE + Long.numberOfTrailingZeros(left);
    }
}
