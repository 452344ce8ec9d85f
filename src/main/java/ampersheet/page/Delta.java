package ampersheet.page;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.Arrays;

/**
 * One text told by what it shares with another, the base, and with its own beginning: pieces to copy, and texts that
 * stand between them. Two variants of a template differ in some numbers only, so that thirty of them take little more
 * room than one; in a drawing of a tile, the pixels are alike. Greedy, and the same on every machine.
 */
final class Delta {
    /** A shorter piece costs more to name than to repeat. */
    private static final int SHORTEST = 16;

    private static final int CANDIDATES = 48;
    private static final int TABLE_BITS = 16;

    private final String base;

    Delta(String base) {
        this.base = base;
    }

    /**
     * Writes an array in which a string stands for itself and two numbers stand for a piece: where it begins and how
     * long it is. Places lie in the base and, past its end, in what was told so far; each is counted from the end of
     * the piece before (the first from the start of the base), since pieces mostly follow each other, and a small
     * number takes less room.
     */
    void write(String text, JsonGenerator json) throws IOException {
        json.writeStartArray();
        Matches matches = new Matches(base + text);
        matches.know(base.length());
        int told = base.length();
        int after = 0;
        for (int i = base.length(); i + SHORTEST <= matches.whole.length(); ) {
            int from = matches.longest(i);
            int length = from < 0 ? 0 : matches.shared(from, i);
            if (length < SHORTEST) {
                i++;
            } else {
                literal(matches.whole, told, i, json);
                json.writeNumber(from - after);
                json.writeNumber(length);
                after = from + length;
                i += length;
                told = i;
            }
            matches.know(i);
        }
        literal(matches.whole, told, matches.whole.length(), json);
        json.writeEndArray();
    }

    private static void literal(String whole, int from, int to, JsonGenerator json) throws IOException {
        if (from < to) {
            json.writeString(whole.substring(from, to));
        }
    }

    /** Where in base and text the same characters stood before. */
    private final class Matches {
        private final String whole;
        private final int[] latest = new int[1 << TABLE_BITS];
        private final int[] before;
        private int known;

        Matches(String whole) {
            this.whole = whole;
            this.before = new int[whole.length()];
            Arrays.fill(latest, -1);
        }

        /** Makes what stands before {@code end} a source of pieces. */
        void know(int end) {
            for (; known < end && known + SHORTEST <= whole.length(); known++) {
                int slot = slot(known);
                before[known] = latest[slot];
                latest[slot] = known;
            }
        }

        /** Where the longest piece begins with which the text goes on at {@code at}; the latest of equals, or -1. */
        int longest(int at) {
            int best = -1;
            int most = 0;
            int candidate = latest[slot(at)];
            for (int tried = 0; candidate >= 0 && tried < CANDIDATES; tried++) {
                int length = shared(candidate, at);
                if (length > most) {
                    most = length;
                    best = candidate;
                }
                candidate = before[candidate];
            }
            return best;
        }

        /** A piece lies in the base or in what was told, never across. */
        int shared(int from, int at) {
            int end = from < base.length() ? base.length() : at;
            int length = 0;
            while (at + length < whole.length()
                    && from + length < end
                    && whole.charAt(at + length) == whole.charAt(from + length)) {
                length++;
            }
            return length;
        }

        private int slot(int at) {
            int hash = 0;
            for (int i = 0; i < SHORTEST; i++) {
                hash = hash * 31 + whole.charAt(at + i);
            }
            return (hash ^ hash >>> 15) * 0x9E3779B1 >>> 32 - TABLE_BITS;
        }
    }
}
