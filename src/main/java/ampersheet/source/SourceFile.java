package ampersheet.source;

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
        String beyond = bounds.beyond(text);
        if (!beyond.isEmpty()) {
            throw new Unread(Why.TOO_LARGE, beyond);
        }
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
        String beyond = bounds.beyond(text.text());
        if (!beyond.isEmpty()) {
            throw new Unread(Why.TOO_LARGE, beyond);
        }
        return text;
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
            throw new Unread(Why.FOLDER, "this is a folder");
        }
        if (found.isSymbolicLink()) {
            throw new Unread(Why.LINK, "this is a link, and links are not followed here");
        }
        if (!found.isRegularFile()) {
            throw new Unread(Why.NO_ORDINARY_FILE, "this is no ordinary file but a pipe, a device or the like");
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
            throw new Unread(Why.UTF_16, "this file is in UTF-16 and not in UTF-8");
        }
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
        } catch (CharacterCodingException foreign) {
            throw new Unread(Why.NOT_UTF_8, "this file is not UTF-8 text");
        }
    }

    private static Unread tooLarge(String most) {
        return new Unread(Why.TOO_LARGE, "this file is larger than " + most);
    }

    private static Unread unreadable(IOException failure) {
        if (failure instanceof NoSuchFileException) {
            return new Unread(Why.MISSING, "there is no such file");
        }
        return new Unread(
                Why.UNREADABLE,
                "this file cannot be read"
                        + (failure instanceof AccessDeniedException
                                ? ": you have no permission"
                                : failure.getMessage() == null ? "" : ": " + failure.getMessage()));
    }
}
