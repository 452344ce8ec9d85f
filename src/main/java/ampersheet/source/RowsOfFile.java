package ampersheet.source;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.function.Consumer;

/** The rows of a table that this program wrote, read one after another however large it is. */
public final class RowsOfFile {
    /** A row that is longer is none of ours. */
    private static final int LONGEST = 1 << 20;

    private RowsOfFile() {}

    /**
     * Rows that are not blank.
     *
     * @throws IOException also if it is no ordinary file in UTF-8, or no table
     */
    public static void each(Path file, char separator, Consumer<CellRows.Row> to) throws IOException, CellRows.Uneven {
        if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
            throw new IOException("no ordinary file: " + file);
        }
        try (BufferedReader in = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
            StringBuilder row = new StringBuilder();
            int line = 1;
            int begun = 1;
            boolean quoted = false;
            int before = -1;
            for (int c = in.read(); c >= 0; c = in.read()) {
                boolean secondOfEnd = c == '\n' && before == '\r';
                boolean mark = c == '\uFEFF' && before < 0;
                before = c;
                if (secondOfEnd || mark) {
                    continue;
                }
                quoted ^= c == '"';
                row.append(c == '\r' ? '\n' : (char) c);
                if (c == '\n' || c == '\r') {
                    line++;
                    if (!quoted) {
                        take(row, separator, begun, to);
                        begun = line;
                    }
                }
                if (row.length() > LONGEST) {
                    throw new IOException("a row without end: " + file);
                }
            }
            take(row, separator, begun, to);
        }
    }

    private static void take(StringBuilder row, char separator, int line, Consumer<CellRows.Row> to)
            throws CellRows.Uneven {
        CellRows.each(row.toString(), separator, line, one -> {
            if (!one.isBlank()) {
                to.accept(one);
            }
        });
        row.setLength(0);
    }
}
