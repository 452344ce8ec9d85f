package ampersheet.render.pdf;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import java.io.BufferedOutputStream;
import java.io.ByteArrayOutputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.DeflaterOutputStream;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSBoolean;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSFloat;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSNull;
import org.apache.pdfbox.cos.COSObject;
import org.apache.pdfbox.cos.COSObjectKey;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.cos.COSString;
import org.apache.pdfbox.pdfwriter.COSWriter;

/**
 * A PDF written object by object (ISO 32000-1, 7.5), so that what is written can be forgotten: objects without a stream
 * are gathered in compressed object streams, a cross-reference stream ends the file. The whole lies in a working file
 * until it is finished; since it may hold everybody's keys, nobody else can read it, and it has no name: however the
 * program ends, nothing of it stays.
 */
final class ObjectFile implements Closeable {
    private static final int PER_STREAM = 200;
    private static final int ID_BYTES = 16;

    private final Path folder;
    private final FileChannel working;
    private final MessageDigest digest;
    private final OutputStream out;
    private long position;

    /** By object number: where it begins, or the number of its object stream and its place there. */
    private long[] first = new long[1024];

    private int[] second = new int[1024];
    private byte[] kind = new byte[1024];
    private int count = 1;

    /** The first of those with the same data. */
    private final Map<ByteBuffer, COSStream> pictures = new LinkedHashMap<>();

    private final BitSet pointedAt = new BitSet();
    private final Map<COSName, byte[]> names = new LinkedHashMap<>();
    private final Deque<COSBase> waiting = new ArrayDeque<>();
    private final ByteArrayOutputStream gathered = new ByteArrayOutputStream();
    private final StringBuilder gatheredHead = new StringBuilder();
    private int gatheredCount;
    private int gatherer;

    /**
     * @param folder where the working file lies; beside what it is for, because there is room for that
     * @throws DiagnosticException if there can be no working file
     */
    ObjectFile(Path folder) {
        this.folder = folder;
        try {
            digest = MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java platform has SHA-256", impossible);
        }
        working = open(folder);
        out = new BufferedOutputStream(Channels.newOutputStream(working), 1 << 16);
        put("%PDF-1.7\n%\u00e2\u00e3\u00cf\u00d3\n".getBytes(StandardCharsets.ISO_8859_1));
    }

    /**
     * Where a system allows it, the name is gone as soon as the file is open; elsewhere it goes when the program ends.
     */
    private static FileChannel open(Path folder) {
        try {
            Path name = Files.createTempFile(folder, ".ampersheet-print-", ".part");
            try {
                return FileChannel.open(
                        name, StandardOpenOption.READ, StandardOpenOption.WRITE, StandardOpenOption.DELETE_ON_CLOSE);
            } catch (IOException failure) {
                Files.deleteIfExists(name);
                throw failure;
            }
        } catch (IOException failure) {
            throw told(folder, failure);
        }
    }

    private static DiagnosticException told(Path folder, IOException failure) {
        String reason = failure.getMessage() == null ? failure.getClass().getSimpleName() : failure.getMessage();
        return new DiagnosticException(Diagnostic.error(
                Place.inFile(folder.toString().replace('\\', '/')),
                say("folder.print.unwritten", "reason", reason),
                say("folder.print.unwritten.expected"),
                say("folder.print.unwritten.next")));
    }

    /** A number for an object that is written later; until then others may refer to it. */
    void reserve(COSBase object) {
        object.setKey(new COSObjectKey(next(), 0));
    }

    /** Whether something written refers to it. */
    boolean isPointedAt(COSBase reserved) {
        return pointedAt.get((int) reserved.getKey().getNumber());
    }

    /** Writes the object and all that hangs on it, except what is reserved. */
    void write(COSBase object) throws IOException {
        if (object.getKey() == null) {
            reserve(object);
        }
        waiting.add(object);
        while (!waiting.isEmpty()) {
            COSBase next = waiting.remove();
            int number = (int) next.getKey().getNumber();
            if (next instanceof COSStream stream) {
                writeStream(number, stream);
            } else {
                gather(number, next);
            }
        }
    }

    private int next() {
        if (count == first.length) {
            first = Arrays.copyOf(first, 2 * count);
            second = Arrays.copyOf(second, 2 * count);
            kind = Arrays.copyOf(kind, 2 * count);
        }
        return count++;
    }

    // Objects

    private void writeStream(int number, COSStream stream) throws IOException {
        byte[] data;
        try (InputStream in = stream.createRawInputStream()) {
            data = in.readAllBytes();
        }
        stream.setInt(COSName.LENGTH, data.length);
        ByteArrayOutputStream head = new ByteArrayOutputStream();
        dictionary(stream, head);
        begin(number);
        put(head.toByteArray());
        put("\nstream\n");
        put(data);
        put("\nendstream\nendobj\n");
    }

    private void begin(int number) {
        kind[number] = 1;
        first[number] = position;
        put(number + " 0 obj\n");
    }

    private void gather(int number, COSBase object) throws IOException {
        if (gatheredCount == 0) {
            gatherer = next();
        }
        kind[number] = 2;
        first[number] = gatherer;
        second[number] = gatheredCount;
        gatheredHead.append(number).append(' ').append(gathered.size()).append(' ');
        value(object, gathered);
        gathered.write('\n');
        gatheredCount++;
        if (gatheredCount == PER_STREAM) {
            flushGathered();
        }
    }

    private void flushGathered() throws IOException {
        if (gatheredCount == 0) {
            return;
        }
        byte[] head = gatheredHead.toString().getBytes(StandardCharsets.US_ASCII);
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (DeflaterOutputStream deflater = new DeflaterOutputStream(packed)) {
            deflater.write(head);
            gathered.writeTo(deflater);
        }
        begin(gatherer);
        put("<</Type/ObjStm/N " + gatheredCount + "/First " + head.length + "/Filter/FlateDecode/Length "
                + packed.size() + ">>\nstream\n");
        put(packed.toByteArray());
        put("\nendstream\nendobj\n");
        gathered.reset();
        gatheredHead.setLength(0);
        gatheredCount = 0;
    }

    // Values

    /** As a reference where the object has a number of its own or must have one, else written out. */
    private void inside(COSBase object, ByteArrayOutputStream to) throws IOException {
        COSBase held = object instanceof COSObject reference ? reference.getObject() : object;
        boolean ofItsOwn =
                held instanceof COSDictionary dictionary && (held instanceof COSStream || isShared(dictionary));
        if (held != null && held.getKey() == null && ofItsOwn && !isKnownPicture(held)) {
            reserve(held);
            waiting.add(held);
        }
        if (held != null && held.getKey() != null) {
            pointedAt.set((int) held.getKey().getNumber());
            to.writeBytes((held.getKey().getNumber() + " 0 R").getBytes(StandardCharsets.US_ASCII));
        } else {
            value(held, to);
        }
    }

    /** A logo comes with every handout and lies in the file once: it gets the number of the first. */
    private boolean isKnownPicture(COSBase object) throws IOException {
        if (!(object instanceof COSStream stream)
                || !COSName.IMAGE.equals(stream.getCOSName(COSName.SUBTYPE))
                || stream.containsKey(COSName.SMASK)) {
            return false;
        }
        ByteBuffer data;
        try (InputStream in = stream.createRawInputStream()) {
            data = ByteBuffer.wrap(in.readAllBytes());
        }
        COSStream same = pictures.putIfAbsent(data, stream);
        if (same == null || same.getInt(COSName.WIDTH) != stream.getInt(COSName.WIDTH)) {
            return false;
        }
        stream.setKey(same.getKey());
        return true;
    }

    /** Pages, tags, fonts and notes are pointed at from several places; each says what it is. */
    private static boolean isShared(COSDictionary dictionary) {
        return dictionary.containsKey(COSName.TYPE);
    }

    private void value(COSBase object, ByteArrayOutputStream to) throws IOException {
        if (object instanceof COSDictionary dictionary) {
            dictionary(dictionary, to);
        } else if (object instanceof COSArray array) {
            to.write('[');
            for (int i = 0; i < array.size(); i++) {
                if (i > 0) {
                    to.write(' ');
                }
                inside(array.get(i), to);
            }
            to.write(']');
        } else if (object instanceof COSName name) {
            name(name, to);
        } else if (object instanceof COSString text) {
            COSWriter.writeString(text, to);
        } else if (object instanceof COSInteger number) {
            number.writePDF(to);
        } else if (object instanceof COSFloat number) {
            number.writePDF(to);
        } else if (object instanceof COSBoolean flag) {
            flag.writePDF(to);
        } else if (object == null || object instanceof COSNull) {
            to.writeBytes("null".getBytes(StandardCharsets.US_ASCII));
        } else {
            throw new IllegalStateException("nothing of this kind belongs into a handout: " + object);
        }
    }

    private void dictionary(COSDictionary dictionary, ByteArrayOutputStream to) throws IOException {
        to.writeBytes(new byte[] {'<', '<'});
        for (Map.Entry<COSName, COSBase> entry : dictionary.entrySet()) {
            if (entry.getValue() != null) {
                name(entry.getKey(), to);
                to.write(' ');
                inside(entry.getValue(), to);
            }
        }
        to.writeBytes(new byte[] {'>', '>'});
    }

    /** Few names come again and again, and writing one letter by letter takes long. */
    private void name(COSName name, ByteArrayOutputStream to) throws IOException {
        byte[] known = names.get(name);
        if (known == null) {
            ByteArrayOutputStream written = new ByteArrayOutputStream();
            name.writePDF(written);
            known = written.toByteArray();
            names.put(name, known);
        }
        to.writeBytes(known);
    }

    // The end

    /** Ends the file and copies it. */
    void finish(COSDictionary catalog, COSDictionary information, OutputStream to) throws IOException {
        write(catalog);
        write(information);
        flushGathered();
        int number = next();
        begin(number);
        byte[] table = crossReferences();
        String id = "<" + hexadecimal(Arrays.copyOf(digest.digest(), ID_BYTES)) + ">";
        put("<</Type/XRef/Size " + count + "/W[1 5 3]/Root " + catalog.getKey().getNumber() + " 0 R/Info "
                + information.getKey().getNumber() + " 0 R/ID[" + id + id + "]/Filter/FlateDecode/Length "
                + table.length
                + ">>\nstream\n");
        put(table);
        put("\nendstream\nendobj\nstartxref\n" + first[number] + "\n%%EOF\n");
        rewind();
        // the stream is not closed here, for with it the working file would be
        Channels.newInputStream(working).transferTo(to);
    }

    private void rewind() {
        try {
            out.flush();
            working.position(0);
        } catch (IOException failure) {
            throw told(folder, failure);
        }
    }

    private byte[] crossReferences() throws IOException {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (DeflaterOutputStream deflater = new DeflaterOutputStream(packed)) {
            for (int i = 0; i < count; i++) {
                deflater.write(kind[i]);
                for (int shift = 32; shift >= 0; shift -= 8) {
                    deflater.write((int) (first[i] >>> shift));
                }
                int last = i == 0 ? 65_535 : second[i];
                deflater.write(last >>> 16);
                deflater.write(last >>> 8);
                deflater.write(last);
            }
        }
        return packed.toByteArray();
    }

    private static String hexadecimal(byte[] bytes) {
        StringBuilder digits = new StringBuilder();
        for (byte b : bytes) {
            digits.append(Character.forDigit(b >> 4 & 15, 16)).append(Character.forDigit(b & 15, 16));
        }
        return digits.toString();
    }

    private void put(String ascii) {
        put(ascii.getBytes(StandardCharsets.US_ASCII));
    }

    private void put(byte[] bytes) {
        try {
            out.write(bytes);
        } catch (IOException failure) {
            throw told(folder, failure);
        }
        digest.update(bytes);
        position += bytes.length;
    }

    @Override
    public void close() throws IOException {
        working.close(); // what is still held back is of no use any more
    }
}
