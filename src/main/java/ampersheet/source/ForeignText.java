package ampersheet.source;

import static ampersheet.source.Told.say;

import ampersheet.language.Saying;
import ampersheet.source.Unread.Why;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/**
 * Text that others wrote with programs of their own, spreadsheets among them. UTF-8 and UTF-16 are told by their bytes;
 * what is neither is what spreadsheets of one machine and country write, of which one is by far the most usual. Whoever
 * reads it is told, for in another one of these some letters would be others.
 *
 * @param note how it was read, where that does not go without saying
 */
public record ForeignText(String text, Optional<Note> note) {
    /**
     * How a text was read.
     *
     * @param said a sentence without its end
     * @param nextAction what whoever knows the file should look at
     */
    public record Note(Saying said, String nextAction) {
        public String problem() {
            return Languages.ENGLISH.say(said);
        }

        private static Note encoding(Saying said) {
            return new Note(said, say("folder.file.encoding.next"));
        }
    }

    private static final Charset LATIN_1 = Charset.forName("windows-1252");
    /** Of these bytes of a text in UTF-16 without a mark, more than this share is zero on one side. */
    private static final double ZEROS = 0.4;

    private static final int LOOKED_AT = 400;

    static ForeignText of(byte[] bytes, Bounds bounds) throws Unread {
        if (SpreadsheetArchive.begins(bytes)) {
            return spreadsheet(SpreadsheetArchive.of(bytes), bounds);
        }
        boolean marked = bytes.length > 1 && (bytes[0] & bytes[1] & 0xFE) == 0xFE;
        boolean big = marked ? (bytes[0] & 0xFF) == 0xFE : zeros(bytes, 0) > ZEROS;
        if (marked || big || zeros(bytes, 1) > ZEROS) {
            Charset utf16 = big ? StandardCharsets.UTF_16BE : StandardCharsets.UTF_16LE;
            return new ForeignText(
                    decoded(bytes, utf16, Why.UTF_16),
                    Optional.of(Note.encoding(Saying.of("report.unread.read-as-utf-16"))));
        }
        try {
            return new ForeignText(SourceFile.decoded(bytes), Optional.empty());
        } catch (Unread foreign) {
            if (!isText(bytes)) {
                throw foreign;
            }
            return new ForeignText(
                    decoded(bytes, LATIN_1, foreign.why()),
                    Optional.of(Note.encoding(Saying.of("report.unread.read-as-latin-1"))));
        }
    }

    private static ForeignText spreadsheet(SpreadsheetArchive archive, Bounds bounds) throws Unread {
        if (!archive.isXlsx() && !archive.isOds()) {
            throw new Unread(Why.UNREADABLE, Saying.of("report.unread.no-spreadsheet"));
        }
        return (archive.isXlsx() ? Xlsx.read(archive, bounds) : Ods.read(archive, bounds)).told();
    }

    private static String decoded(byte[] bytes, Charset charset, Why why) throws Unread {
        try {
            return charset.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
        } catch (CharacterCodingException broken) {
            throw new Unread(why, Saying.of("report.unread.no-encoding"));
        }
    }

    /** The share of zeros among every second byte, from this one on. */
    private static double zeros(byte[] bytes, int from) {
        int all = 0;
        int zero = 0;
        for (int i = from; i < Math.min(bytes.length, LOOKED_AT); i += 2) {
            all++;
            zero += bytes[i] == 0 ? 1 : 0;
        }
        return all == 0 ? 0 : (double) zero / all;
    }

    private static boolean isText(byte[] bytes) {
        for (byte b : bytes) {
            if (b >= 0 && b < ' ' && b != '\t' && b != '\n' && b != '\r' && b != '\f') {
                return false;
            }
        }
        return true;
    }
}
