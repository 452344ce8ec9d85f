package ampersheet.source;

import ampersheet.language.Saying;
import java.util.Optional;

/**
 * How large a text may be that people hand in.
 *
 * @param bytes of the file
 * @param lines of the text
 * @param cells that a table of it could have at most: its separators and its lines
 */
public record Bounds(int bytes, int lines, int cells) {
    /** A class of two thousand with fifty answers each, as they come in, in one table. */
    public static final Bounds WRITTEN = new Bounds(4 << 20, 100_000, 1_000_000);

    /** A table that marking wrote: a class of twelve thousand with fifty answers each, which take 14 cells a line. */
    public static final Bounds MARKED = new Bounds(64 << 20, 1_000_000, 20_000_000);

    /** A class list, of as many seats as there may be. */
    public static final Bounds CLASS_LIST = new Bounds(64 << 20, 1_000_100, 20_000_000);

    /** Empty if the text is within them; otherwise what there is too much of. */
    public String beyond(String text) {
        return excess(text).map(Languages.ENGLISH::say).orElse("");
    }

    /** The same for whoever reads it in another language. */
    Optional<Saying> excess(String text) {
        int lineEnds = 0;
        int separators = 0;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            boolean returned = c == '\r' && !(i + 1 < text.length() && text.charAt(i + 1) == '\n');
            if (c == '\n' || returned) {
                lineEnds++;
            } else if (c == ',' || c == ';' || c == '\t') {
                separators++;
            }
        }
        if (lineEnds > lines) {
            return Optional.of(Saying.of("report.unread.too-many-lines", "most", Integer.toString(lines)));
        }
        return separators + lineEnds > cells
                ? Optional.of(Saying.of("report.unread.too-many-separators", "most", Integer.toString(cells)))
                : Optional.empty();
    }

    /** The bytes, for messages. */
    public String told() {
        return bytes >= 1 << 20 ? (bytes >> 20) + " MB" : bytes / 1000 + " kB";
    }
}
