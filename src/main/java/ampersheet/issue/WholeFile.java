package ampersheet.issue;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.FileChannel;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.ReadOnlyFileSystemException;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermission;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ConcurrentSkipListSet;

/**
 * Writes a file whole or not at all: into a part of the same folder, readable to nobody else, which is on the disk
 * before it takes the name. A reader never sees half a sheet, and a run that was cut off can be repeated. May be used
 * by several threads.
 */
final class WholeFile {
    private final String prefix;
    private final Optional<Set<PosixFilePermission>> usual;
    private final Set<Path> parts = new ConcurrentSkipListSet<>();
    private volatile boolean stopped;

    /**
     * @param prefix with which the names of parts begin, so that a later run knows them
     * @param usual permissions of new files, where a system has such
     */
    WholeFile(String prefix, Optional<Set<PosixFilePermission>> usual) {
        this.prefix = prefix;
        this.usual = usual;
    }

    /** What is to be in a file, written piece by piece. */
    @FunctionalInterface
    interface Content {
        void writeTo(OutputStream out) throws IOException;
    }

    /** Throws if the file must not be written. */
    @FunctionalInterface
    interface Permission {
        void require() throws IOException;
    }

    /**
     * @param may asked last, before the part takes the name
     * @return whether the file was written; a file that already holds this is left alone
     * @throws DiagnosticException if the folder or the file cannot be written
     */
    boolean write(Path file, Content content, Permission may) {
        try {
            Files.createDirectories(file.toAbsolutePath().getParent());
            may.require();
            Path part = part(file.toAbsolutePath().getParent());
            try {
                try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(part))) {
                    content.writeTo(out);
                }
                if (Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS) && Files.mismatch(part, file) < 0) {
                    return false;
                }
                permit(part, file);
                keep(part);
                may.require();
                if (stopped) {
                    throw new CancellationException("stopped from outside");
                }
                move(part, file);
            } finally {
                drop(part);
            }
            return true;
        } catch (IOException | ReadOnlyFileSystemException failure) {
            throw new DiagnosticException(told(file, failure));
        }
    }

    /** A new one, which is gone at the latest when the next run begins. */
    Path part(Path folder) throws IOException {
        Path part = Files.createTempFile(folder, prefix, ".part");
        parts.add(part);
        return part;
    }

    void drop(Path part) throws IOException {
        Files.deleteIfExists(part);
        parts.remove(part);
    }

    /** No part becomes a file any more, and none is left if the system allows. */
    void stop() {
        stopped = true;
        parts.forEach(part -> part.toFile().delete());
    }

    private void permit(Path part, Path file) throws IOException {
        PosixFileAttributeView view = Files.getFileAttributeView(part, PosixFileAttributeView.class);
        if (view != null && usual.isPresent()) {
            boolean there = Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS);
            view.setPermissions(there ? Files.getPosixFilePermissions(file, LinkOption.NOFOLLOW_LINKS) : usual.get());
        }
    }

    /** On the disk, so that a name never stands for less than the file, even if the power fails. */
    static void keep(Path part) throws IOException {
        try (FileChannel channel = FileChannel.open(part, StandardOpenOption.WRITE)) {
            channel.force(true);
        }
    }

    /** The same for the names in a folder, where a system lets a folder be opened. */
    static void keepNames(Path folder) throws IOException {
        if (Files.getFileAttributeView(folder, PosixFileAttributeView.class) != null) {
            try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
                channel.force(true);
            }
        }
    }

    private static void move(Path from, Path to) throws IOException {
        try {
            Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (AtomicMoveNotSupportedException foreignFileSystem) {
            Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    static Diagnostic told(Path file, Exception failure) {
        Place place = Place.inFile(Output.shown(file));
        if (failure instanceof AccessDeniedException || failure instanceof ReadOnlyFileSystemException) {
            return Diagnostic.error(
                    place,
                    say("folder.write.forbidden"),
                    say("folder.write.forbidden.expected"),
                    say("folder.write.forbidden.next"));
        }
        if (failure instanceof FileAlreadyExistsException inTheWay) {
            return Diagnostic.error(
                    place,
                    say("folder.write.no-folder", "file", inTheWay.getFile()),
                    say("folder.write.no-folder.expected"),
                    say("folder.write.no-folder.next"));
        }
        String reason = failure.getMessage() == null ? failure.getClass().getSimpleName() : failure.getMessage();
        return Diagnostic.error(
                place,
                say("folder.write.failed", "reason", reason),
                say("folder.write.failed.expected"),
                say("folder.write.failed.next"));
    }
}
