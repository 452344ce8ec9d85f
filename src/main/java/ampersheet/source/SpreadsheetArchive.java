package ampersheet.source;

import ampersheet.language.Saying;
import ampersheet.source.Unread.Why;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.time.LocalDateTime;
import java.util.Collections;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.BiFunction;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipFile;
import org.apache.commons.compress.utils.SeekableInMemoryByteChannel;

/**
 * The parts of a spreadsheet file, unpacked within bounds: what claims to be small may unpack to anything. Whoever
 * reads it further gets what was unpacked here and never the file itself.
 */
final class SpreadsheetArchive {
    /** Of all parts together; a table within {@link Bounds#WRITTEN} needs a tenth of it. */
    private static final int MOST_BYTES = 48 << 20;

    private static final int MOST_PARTS = 500;
    /** The first day that such files know, as local time, so that no zone counts. */
    private static final LocalDateTime NO_TIME = LocalDateTime.of(1980, 1, 1, 0, 0);

    private static final String XLSX = "xl/workbook.xml";
    private static final String ODS = "content.xml";

    private final Map<String, byte[]> parts;

    private SpreadsheetArchive(Map<String, byte[]> parts) {
        this.parts = parts;
    }

    static boolean begins(byte[] bytes) {
        return bytes.length > 4 && bytes[0] == 'P' && bytes[1] == 'K' && bytes[2] == 3 && bytes[3] == 4;
    }

    /** @throws Unread if it cannot be unpacked, or not within bounds */
    static SpreadsheetArchive of(byte[] bytes) throws Unread {
        Map<String, byte[]> parts = new TreeMap<>();
        int left = MOST_BYTES;
        try (ZipFile zip = open(bytes)) {
            for (ZipArchiveEntry entry : Collections.list(zip.getEntries())) {
                if (parts.size() >= MOST_PARTS) {
                    throw tooLarge();
                }
                if (entry.isDirectory()) {
                    continue;
                }
                try (InputStream in = zip.getInputStream(entry)) {
                    byte[] part = in.readNBytes(left + 1);
                    left -= part.length;
                    parts.putIfAbsent(entry.getName(), part);
                }
                if (left < 0) {
                    throw tooLarge();
                }
            }
        } catch (IOException | IllegalArgumentException broken) {
            throw new Unread(Why.UNREADABLE, Saying.of("report.unread.damaged-archive"));
        }
        return new SpreadsheetArchive(parts);
    }

    /** By its list of parts: spreadsheets write sizes behind them that cannot be read on the way. */
    private static ZipFile open(byte[] bytes) throws IOException {
        return ZipFile.builder()
                .setSeekableByteChannel(new SeekableInMemoryByteChannel(bytes))
                .get();
    }

    private static Unread tooLarge() {
        return new Unread(Why.TOO_LARGE, Saying.of("report.unread.large-archive"));
    }

    boolean isXlsx() {
        return parts.containsKey(XLSX);
    }

    /** Without them no cell is shown as a date or in percent, and the library looks for them in vain. */
    boolean hasStyles() {
        return parts.keySet().stream().anyMatch(name -> name.endsWith("styles.xml"));
    }

    boolean isOds() {
        return parts.containsKey(ODS) && !isXlsx();
    }

    /** The tables of an .ods file. */
    InputStream content() {
        return new ByteArrayInputStream(parts.get(ODS));
    }

    /** The same parts packed again, for a library that wants a file. */
    InputStream packed() {
        return new ByteArrayInputStream(packed((name, part) -> part));
    }

    /** The same with parts made otherwise; without the times at which they were packed. */
    byte[] packed(BiFunction<String, byte[], byte[]> changed) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(out)) {
            for (Map.Entry<String, byte[]> part : parts.entrySet()) {
                ZipEntry entry = new ZipEntry(part.getKey());
                entry.setTimeLocal(NO_TIME);
                zip.putNextEntry(entry);
                zip.write(changed.apply(part.getKey(), part.getValue()));
                zip.closeEntry();
            }
        } catch (IOException impossible) {
            throw new IllegalStateException("memory cannot fail to be written", impossible);
        }
        return out.toByteArray();
    }
}
