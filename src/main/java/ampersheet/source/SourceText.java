package ampersheet.source;

import ampersheet.diagnostic.Place;
import java.util.Arrays;
import java.util.stream.IntStream;

/** A file's text, in which every character has a place. */
public final class SourceText {
    private final String file;
    private final String text;
    private final int[] lineStarts;
    /** Made when first asked for, and then once: places in one line share it, however many there are. */
    private final String[] lines;
    /** Offset of each code point; empty where each is one character. */
    private final int[] offsets;

    public SourceText(String file, String text) {
        this.file = file;
        this.text = text;
        this.lineStarts = IntStream.concat(
                        IntStream.of(0),
                        IntStream.range(0, text.length())
                                .filter(i -> text.charAt(i) == '\n')
                                .map(i -> i + 1))
                .toArray();
        this.lines = new String[lineStarts.length];
        this.offsets = text.codePointCount(0, text.length()) == text.length()
                ? new int[0]
                : IntStream.range(0, text.length())
                        .filter(i -> i == 0
                                || !Character.isLowSurrogate(text.charAt(i))
                                || !Character.isHighSurrogate(text.charAt(i - 1)))
                        .toArray();
    }

    public String file() {
        return file;
    }

    public String text() {
        return text;
    }

    /** The place of the character at an offset; beyond the end, of the end. */
    public Place at(int offset) {
        int bounded = Math.max(0, Math.min(offset, text.length()));
        int found = Arrays.binarySearch(lineStarts, bounded);
        int line = found >= 0 ? found : -found - 2;
        return new Place(file, line + 1, bounded - lineStarts[line] + 1, line(line));
    }

    /** Offset of a count of code points: the marks of the YAML reader count these. */
    public int offsetOfCodePoint(int index) {
        int from = Math.max(0, index);
        return offsets.length == 0
                ? Math.min(from, text.length())
                : from < offsets.length ? offsets[from] : text.length();
    }

    private String line(int index) {
        if (lines[index] == null) {
            int end = index + 1 < lineStarts.length ? lineStarts[index + 1] - 1 : text.length();
            lines[index] = text.substring(lineStarts[index], end);
        }
        return lines[index];
    }
}
