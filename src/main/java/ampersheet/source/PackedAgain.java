package ampersheet.source;

import java.nio.charset.StandardCharsets;

/** A packed file without the times at which it was made: the same contents, the same bytes. */
public final class PackedAgain {
    private static final String CREATED = "(<dcterms:(created|modified)[^>]*>)[^<]*(</dcterms)";
    private static final String PROPERTIES = "docProps/core.xml";

    private PackedAgain() {}

    /** @param xlsx as a library wrote it */
    public static byte[] withoutTimes(byte[] xlsx) {
        try {
            return SpreadsheetArchive.of(xlsx).packed(PackedAgain::undated);
        } catch (Unread impossible) {
            throw new IllegalStateException("a spreadsheet of our own", impossible);
        }
    }

    private static byte[] undated(String name, byte[] part) {
        return name.equals(PROPERTIES)
                ? new String(part, StandardCharsets.UTF_8)
                        .replaceAll(CREATED, "$1" + "1980-01-01T00:00:00Z$3")
                        .getBytes(StandardCharsets.UTF_8)
                : part;
    }
}
