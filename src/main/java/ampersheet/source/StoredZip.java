package ampersheet.source;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.zip.CRC32;
import java.util.zip.CheckedInputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/**
 * A zip archive with the same bytes wherever it is made: nothing is compressed, because compression differs between
 * versions of the platform, and no entry has a time of its own.
 */
public final class StoredZip {
    /**
     * Not the earliest that an archive can tell: Java takes that one for "before 1980" and adds the time by the local
     * zone.
     */
    private static final LocalDateTime NO_TIME = LocalDateTime.of(1980, 2, 1, 0, 0);

    private final ZipOutputStream zip;

    /** @param to is not closed */
    public StoredZip(OutputStream to) {
        zip = new ZipOutputStream(to, StandardCharsets.UTF_8);
    }

    public void add(String name, String text) throws IOException {
        add(name, text.getBytes(StandardCharsets.UTF_8));
    }

    public void add(String name, byte[] bytes) throws IOException {
        CRC32 check = new CRC32();
        check.update(bytes);
        begin(name, bytes.length, check);
        zip.write(bytes);
        zip.closeEntry();
    }

    /** The same of a file that is too large to be held in memory. */
    public void add(String name, Path file) throws IOException {
        CRC32 check = new CRC32();
        try (InputStream in = new CheckedInputStream(Files.newInputStream(file), check)) {
            in.transferTo(OutputStream.nullOutputStream());
        }
        begin(name, Files.size(file), check);
        Files.copy(file, zip);
        zip.closeEntry();
    }

    private void begin(String name, long size, CRC32 check) throws IOException {
        ZipEntry entry = new ZipEntry(name);
        entry.setMethod(ZipEntry.STORED);
        entry.setSize(size);
        entry.setCompressedSize(size);
        entry.setCrc(check.getValue());
        entry.setTimeLocal(NO_TIME);
        zip.putNextEntry(entry);
    }

    public void finish() throws IOException {
        zip.finish();
    }
}
