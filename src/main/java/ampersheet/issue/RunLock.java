package ampersheet.issue;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermission;
import java.security.SecureRandom;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentSkipListSet;

/**
 * A file that one run at a time holds; the system takes the lock back when a run ends, however it ends. It is removed
 * by whoever holds it. Since another may have opened it just before, a new holder makes sure that the file it holds is
 * the one that has the name: it gives it a length of its own and looks for that under the name. (Opening the file again
 * to look into it would lose the lock, on systems that give up all locks of a program when it closes one of several
 * openings.)
 */
public final class RunLock implements AutoCloseable {
    private static final int TRIES = 50;
    private static final int LENGTHS = 1 << 20;
    private static final Set<Path> HELD_HERE = new ConcurrentSkipListSet<>();

    private final Path file;
    private final Path key;
    private final FileChannel channel;
    private final Optional<Set<PosixFilePermission>> usual;

    private RunLock(Path file, Path key, FileChannel channel, Optional<Set<PosixFilePermission>> usual) {
        this.file = file;
        this.key = key;
        this.channel = channel;
        this.usual = usual;
    }

    /**
     * @param of what is written under this lock, for messages
     * @throws DiagnosticException if another run holds it
     */
    static RunLock of(Path file, Path of) throws IOException {
        Path key = file.toAbsolutePath().getParent().toRealPath().resolve(file.getFileName());
        if (!HELD_HERE.add(key)) {
            throw busy(of);
        }
        boolean held = false;
        try {
            for (int i = 0; i < TRIES; i++) {
                FileChannel channel = FileChannel.open(
                        file, StandardOpenOption.CREATE, StandardOpenOption.WRITE, LinkOption.NOFOLLOW_LINKS);
                try {
                    if (channel.tryLock() == null) {
                        throw busy(of);
                    }
                    held = hasName(channel, file);
                    if (held) {
                        return new RunLock(file, key, channel, permissions(file));
                    }
                } finally {
                    if (!held) {
                        channel.close();
                    }
                }
            }
            throw busy(of);
        } finally {
            if (!held) {
                HELD_HERE.remove(key);
            }
        }
    }

    /**
     * The same; empty if another run holds it.
     *
     * @throws IOException if no lock can be had here at all
     */
    public static Optional<RunLock> ifFree(Path file) throws IOException {
        try {
            return Optional.of(of(file, file));
        } catch (DiagnosticException held) {
            return Optional.empty();
        }
    }

    private static boolean hasName(FileChannel channel, Path file) throws IOException {
        long length = 1L + new SecureRandom().nextInt(LENGTHS);
        channel.truncate(0);
        channel.write(ByteBuffer.wrap(new byte[1]), length - 1);
        try {
            return Files.size(file) == length;
        } catch (NoSuchFileException removed) {
            return false;
        }
    }

    private static DiagnosticException busy(Path of) {
        return new DiagnosticException(Diagnostic.error(
                Place.inFile(Output.shown(of)),
                say("folder.busy"),
                say("folder.busy.expected"),
                say("folder.busy.next")));
    }

    /** Those that a new file gets in this folder; empty where a system has others. */
    Optional<Set<PosixFilePermission>> usualPermissions() {
        return usual;
    }

    private static Optional<Set<PosixFilePermission>> permissions(Path file) throws IOException {
        PosixFileAttributeView view = Files.getFileAttributeView(file, PosixFileAttributeView.class);
        return view == null
                ? Optional.empty()
                : Optional.of(view.readAttributes().permissions());
    }

    @Override
    public void close() throws IOException {
        try {
            Files.deleteIfExists(file);
        } finally {
            channel.close();
            HELD_HERE.remove(key);
        }
    }
}
