package ampersheet.diagnostic;

import java.util.Objects;

/**
 * A character in a file, with the line it stands in.
 *
 * @param file name as the reader knows it, with forward slashes
 * @param line 1-based; 0 when only the file is known
 * @param column 1-based, in characters; 0 when only the line is known
 * @param sourceLine the text of that line without its end, or empty
 */
public record Place(String file, int line, int column, String sourceLine) {
    private static final int LONGEST_NAME = 1_000;

    public Place {
        file = Printable.line(file, LONGEST_NAME);
        Objects.requireNonNull(sourceLine);
        if (line < 0 || column < 0) {
            throw new IllegalArgumentException("line and column start at 1: " + line + ":" + column);
        }
    }

    public static Place inFile(String file) {
        return new Place(file, 0, 0, "");
    }

    /** {@code file:line:column}, leaving out what is not known. */
    @Override
    public String toString() {
        if (line == 0) {
            return file;
        }
        return column == 0 ? file + ":" + line : file + ":" + line + ":" + column;
    }
}
