package ampersheet.sheet;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Base64;
import java.util.Optional;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.MemoryCacheImageInputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/**
 * A school's picture over its sheets. Only its pixels travel: they are read, put on white, made no finer than paper
 * shows, and written as a picture of our own, so that whatever else its file told stays behind.
 */
public final class Logo {
    /** Bytes of the file. */
    public static final int LARGEST = 200_000;

    private static final int MOST_PIXELS = 2_000;
    private static final String WANTED = say("plan.logo.expected");
    private static final String NEXT = say("plan.logo.next");
    /** What is printed 16 mm high at 12 pixels a millimetre. */
    private static final int FINEST_HIGH = 192;

    private static final int FINEST_WIDE = 600;
    private static final double HIGHEST = 16;
    private static final double WIDEST = 50;

    private static final byte[] PNG = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n'};
    private static final byte[] JPEG = {(byte) 0xff, (byte) 0xd8, (byte) 0xff};
    private static final int CHUNK_FRAME = 12;
    private static final int OPAQUE = 0xff000000;
    private static final int FULL = 255;

    private final String file;
    private final byte[] png;
    private final int wide;
    private final int high;

    private Logo(String file, byte[] png, int wide, int high) {
        this.file = file;
        this.png = png;
        this.wide = wide;
        this.high = high;
    }

    /**
     * @param file its name beside the plan
     * @param place where faults are told
     * @throws DiagnosticException if this is no picture, or one beyond the limits
     */
    public static Logo read(String file, Place place, byte[] bytes) {
        if (bytes.length > LARGEST && !isOurs(bytes)) {
            throw refused(place, say("plan.logo.large", "name", file));
        }
        String format = format(bytes).orElseThrow(() -> refused(place, say("plan.logo.neither", "name", file)));
        BufferedImage pixels = decoded(file, place, format, bytes);
        if (isOurs(bytes)) {
            return new Logo(file, bytes.clone(), pixels.getWidth(), pixels.getHeight());
        }
        BufferedImage plain = onWhite(pixels);
        return new Logo(file, written(plain), plain.getWidth(), plain.getHeight());
    }

    /** By its first bytes; a name may say anything. */
    private static Optional<String> format(byte[] bytes) {
        return beginsWith(bytes, PNG)
                ? Optional.of("png")
                : beginsWith(bytes, JPEG) ? Optional.of("jpeg") : Optional.empty();
    }

    private static boolean beginsWith(byte[] bytes, byte[] start) {
        return bytes.length > start.length && Arrays.equals(bytes, 0, start.length, start, 0, start.length);
    }

    /** The ending by which such a file is known; empty if it is no such picture. */
    public static Optional<String> ending(byte[] bytes) {
        return format(bytes).map(format -> format.equals("png") ? ".png" : ".jpg");
    }

    private static BufferedImage decoded(String file, Place place, String format, byte[] bytes) {
        ImageReader reader = ImageIO.getImageReadersByFormatName(format).next();
        try (MemoryCacheImageInputStream in = new MemoryCacheImageInputStream(new ByteArrayInputStream(bytes))) {
            reader.setInput(in, true, true);
            if (reader.getWidth(0) > MOST_PIXELS || reader.getHeight(0) > MOST_PIXELS) {
                throw refused(
                        place,
                        say(
                                "plan.logo.pixels",
                                "name",
                                file,
                                "wide",
                                Integer.toString(reader.getWidth(0)),
                                "high",
                                Integer.toString(reader.getHeight(0))));
            }
            return reader.read(0);
        } catch (DiagnosticException beyond) {
            throw beyond;
        } catch (IOException | RuntimeException damaged) { // the readers meet broken files with any exception
            throw refused(place, say("plan.logo.damaged", "name", file));
        } finally {
            reader.dispose();
        }
    }

    private static DiagnosticException refused(Place place, String problem) {
        return new DiagnosticException(Diagnostic.error(place, problem, WANTED, NEXT));
    }

    /** Whether it was written here, no finer than need be, and holds nothing else; it then stays the same bytes. */
    private static boolean isOurs(byte[] bytes) {
        if (!beginsWith(bytes, PNG) || bytes.length < PNG.length + CHUNK_FRAME + 13) {
            return false;
        }
        ByteBuffer chunks = ByteBuffer.wrap(bytes, PNG.length, bytes.length - PNG.length);
        StringBuilder names = new StringBuilder();
        int wide = chunks.getInt(PNG.length + 8);
        int high = chunks.getInt(PNG.length + 12);
        boolean opaqueColours = bytes[PNG.length + 16] == 8 && bytes[PNG.length + 17] == 2;
        while (chunks.remaining() >= CHUNK_FRAME) {
            int length = chunks.getInt();
            byte[] name = new byte[4];
            chunks.get(name);
            names.append(new String(name, StandardCharsets.ISO_8859_1)).append(' ');
            if (length < 0 || length > chunks.remaining() - 4) {
                return false;
            }
            chunks.position(chunks.position() + length + 4);
        }
        return !chunks.hasRemaining()
                && names.toString().matches("IHDR (IDAT )+IEND ")
                && opaqueColours
                && wide <= FINEST_WIDE
                && high <= FINEST_HIGH;
    }

    /** Each pixel is the mean of those that it stands for, which is the same on every machine. */
    private static BufferedImage onWhite(BufferedImage pixels) {
        int wide = pixels.getWidth();
        int high = pixels.getHeight();
        int newWide = wide;
        int newHigh = high;
        if (newHigh > FINEST_HIGH) {
            newWide = Math.max(1, newWide * FINEST_HIGH / newHigh);
            newHigh = FINEST_HIGH;
        }
        if (newWide > FINEST_WIDE) {
            newHigh = Math.max(1, newHigh * FINEST_WIDE / newWide);
            newWide = FINEST_WIDE;
        }
        BufferedImage plain = new BufferedImage(newWide, newHigh, BufferedImage.TYPE_INT_RGB);
        for (int y = 0; y < newHigh; y++) {
            int top = y * high / newHigh;
            int[] band = pixels.getRGB(0, top, wide, Math.max(1, (y + 1) * high / newHigh - top), null, 0, wide);
            for (int x = 0; x < newWide; x++) {
                int left = x * wide / newWide;
                plain.setRGB(x, y, mean(band, wide, left, Math.max(left + 1, (x + 1) * wide / newWide)));
            }
        }
        return plain;
    }

    private static int mean(int[] band, int wide, int left, int right) {
        int colour = OPAQUE;
        int count = band.length / wide * (right - left);
        for (int shift = 0; shift <= 16; shift += 8) {
            long sum = 0;
            for (int row = 0; row < band.length; row += wide) {
                for (int x = left; x < right; x++) {
                    int alpha = band[row + x] >>> 24;
                    int value = band[row + x] >> shift & FULL;
                    sum += (value * alpha + FULL * (FULL - alpha) + FULL / 2) / FULL;
                }
            }
            colour |= (int) ((sum + count / 2) / count) << shift;
        }
        return colour;
    }

    private static byte[] written(BufferedImage plain) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
            if (!ImageIO.write(plain, "png", out)) {
                throw new IllegalStateException("every Java platform writes PNG");
            }
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return bytes.toByteArray();
    }

    /** The name of its file beside the plan. */
    public String file() {
        return file;
    }

    /** Its pixels as a PNG that tells nothing else. */
    public byte[] png() {
        return png.clone();
    }

    /** For a page that needs no other file. */
    public String address() {
        return Document.LogoBlock.WITHIN + Base64.getEncoder().encodeToString(png);
    }

    /** In millimetres: as large as fits into 50 by 16. */
    public double width() {
        return Math.min(WIDEST, HIGHEST * wide / high);
    }

    public double height() {
        return Math.min(HIGHEST, WIDEST * high / wide);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Logo logo && logo.file.equals(file) && Arrays.equals(logo.png, png);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(png);
    }
}
