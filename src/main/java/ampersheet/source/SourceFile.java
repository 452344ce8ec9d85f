package ampersheet.source;

import ampersheet.language.Saying;
import ampersheet.source.Unread.Why;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Optional;

/**
 * The one place that reads files from outside. Only an ordinary file is opened, for a pipe may never end and a device
 * has no size; and no more is taken of it than its bounds, whatever size it claims to have.
 */
public final class SourceFile {
    /** Whether a link is followed: one that the user names is, one that lies among what others sent is not. */
    public enum Links {
        FOLLOWED,
        REFUSED
    }

    private SourceFile() {}

    /**
     * Text in UTF-8 within its bounds.
     *
     * @throws Unread if the file is anything else
     */
    public static String text(Path file, Bounds bounds, Links links) throws Unread {
        String text = decoded(bytes(file, bounds.bytes(), bounds.told(), links));
        requireWithin(bounds, text);
        return text;
    }

    /**
     * All bytes of a file.
     *
     * @throws Unread if there are more than {@code most}, or if it is no ordinary file
     */
    public static byte[] bytes(Path file, int most, Links links) throws Unread {
        return bytes(file, most, most + " bytes", links);
    }

    /**
     * A table or text of others, in whatever encoding their spreadsheet or editor wrote it; of a spreadsheet file its
     * first table.
     *
     * @throws Unread if the file is no text, or beyond its bounds
     */
    public static ForeignText foreign(Path file, Bounds bounds, Links links) throws Unread {
        ForeignText text = ForeignText.of(bytes(file, bounds.bytes(), bounds.told(), links), bounds);
        requireWithin(bounds, text.text());
        return text;
    }

    private static void requireWithin(Bounds bounds, String text) throws Unread {
        Optional<Saying> excess = bounds.excess(text);
        if (excess.isPresent()) {
            throw new Unread(Why.TOO_LARGE, excess.get());
        }
    }

    private static byte[] bytes(Path file, int most, String mostTold, Links links) throws Unread {
        requireOrdinary(file, most, mostTold, links);
        OpenOption[] open = links == Links.FOLLOWED
                ? new OpenOption[] {StandardOpenOption.READ}
                : new OpenOption[] {StandardOpenOption.READ, LinkOption.NOFOLLOW_LINKS};
        try (InputStream in = Files.newInputStream(file, open)) {
            byte[] bytes = in.readNBytes(most + 1);
            if (bytes.length > most) {
                throw tooLarge(mostTold);
            }
            return bytes;
        } catch (IOException failure) {
            throw unreadable(failure);
        }
    }

    /**
     * For files that a library opens by itself.
     *
     * @throws Unread if the file is larger, or if it is no ordinary file
     */
    public static void requireOrdinary(Path file, long most, Links links) throws Unread {
        requireOrdinary(file, most, (most >> 20) + " MB", links);
    }

    private static void requireOrdinary(Path file, long most, String mostTold, Links links) throws Unread {
        BasicFileAttributes found;
        try {
            found = links == Links.FOLLOWED
                    ? Files.readAttributes(file, BasicFileAttributes.class)
                    : Files.readAttributes(file, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
        } catch (IOException failure) {
            throw unreadable(failure);
        }
        if (found.isDirectory()) {
            throw new Unread(Why.FOLDER, Saying.of("report.unread.folder"));
        }
        if (found.isSymbolicLink()) {
            throw new Unread(Why.LINK, Saying.of("report.unread.link"));
        }
        if (!found.isRegularFile()) {
            throw new Unread(Why.NO_ORDINARY_FILE, Saying.of("report.unread.no-ordinary-file"));
        }
        if (found.size() > most) {
            throw tooLarge(mostTold);
        }
    }

    /**
     * UTF-8 and nothing else: no byte is guessed at.
     *
     * @throws Unread if the bytes are not UTF-8
     */
    public static String decoded(byte[] bytes) throws Unread {
        if (bytes.length > 1 && (bytes[0] & bytes[1] & 0xFE) == 0xFE) {
            throw new Unread(Why.UTF_16, Saying.of("report.unread.utf-16"));
        }
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
        } catch (CharacterCodingException foreign) {
            throw new Unread(Why.NOT_UTF_8, Saying.of("report.unread.not-utf-8"));
        }
    }

    private static Unread tooLarge(String most) {
        return new Unread(Why.TOO_LARGE, Saying.of("report.unread.too-large", "most", most));
    }

    private static Unread unreadable(IOException failure) {
        if (failure instanceof NoSuchFileException) {
            return new Unread(Why.MISSING, Saying.of("report.unread.missing"));
        }
        return new Unread(
                Why.UNREADABLE,
                failure instanceof AccessDeniedException
                        ? Saying.of("report.unread.no-permission")
                        : failure.getMessage() == null
                                ? Saying.of("report.unread.unreadable")
                                : Saying.of("report.unread.unreadable-because", "why", failure.getMessage()));
    }
}
