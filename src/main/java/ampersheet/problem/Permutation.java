package ampersheet.problem;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;

/**
 * A permutation of 0 … size − 1, fixed by a key, computed at one position without the others.
 *
 * <p>A balanced Feistel network permutes the smallest square of a power of two that holds {@code size}; what falls
 * outside is put through again until it falls inside (cycle walking: J. Black and P. Rogaway, Ciphers with Arbitrary
 * Finite Domains, CT-RSA 2002). Seats drawn by it never meet, which draws by remainder would.
 */
final class Permutation {
    private static final int ROUNDS = 10;
    private static final long LARGEST = 1L << 62;

    private final long size;
    private final int halfBits;
    private final long halfMask;
    private final long[] roundKeys;

    /** @param key parts of the key; how they are cut matters, so that ("a", "bc") is another key than ("ab", "c") */
    Permutation(long size, String... key) {
        if (size < 1 || size > LARGEST) {
            throw new IllegalArgumentException("a permutation of " + size + " things");
        }
        this.size = size;
        int bits = 1;
        while (1L << (2 * bits) < size) {
            bits++;
        }
        this.halfBits = bits;
        this.halfMask = (1L << bits) - 1;
        this.roundKeys = roundKeys(key);
    }

    long size() {
        return size;
    }

    long at(long position) {
        if (position < 0 || position >= size) {
            throw new IllegalArgumentException("position " + position + " of " + size);
        }
        long walked = position;
        do {
            walked = network(walked);
        } while (walked >= size);
        return walked;
    }

    private long network(long block) {
        long left = block >>> halfBits;
        long right = block & halfMask;
        for (long key : roundKeys) {
            long next = left ^ (scramble(right + key) & halfMask);
            left = right;
            right = next;
        }
        return left << halfBits | right;
    }

    /** The finalizer of SplitMix64 (Steele, Lea and Flood, OOPSLA 2014; constants from memory). */
    private static long scramble(long bits) {
        long z = (bits ^ bits >>> 30) * 0xbf58476d1ce4e5b9L;
        z = (z ^ z >>> 27) * 0x94d049bb133111ebL;
        return z ^ z >>> 31;
    }

    private static long[] roundKeys(String... key) {
        MessageDigest digest = sha256();
        for (String part : key) {
            byte[] bytes = part.getBytes(StandardCharsets.UTF_8);
            digest.update(
                    ByteBuffer.allocate(Integer.BYTES).putInt(bytes.length).array());
            digest.update(bytes);
        }
        byte[] master = digest.digest();
        long[] keys = new long[ROUNDS];
        for (int round = 0; round < ROUNDS; round++) {
            digest.update(master);
            keys[round] =
                    ByteBuffer.wrap(digest.digest(new byte[] {(byte) round})).getLong();
        }
        return keys;
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java platform has SHA-256", impossible);
        }
    }
}
