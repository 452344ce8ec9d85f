package ampersheet.issue;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.ReadOnlyFileSystemException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.CancellationException;
import java.util.function.Consumer;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.zip.CRC32;

/**
 * Where a run writes: a folder, or a file and what lies beside it. No other run writes there meanwhile. Each file comes
 * whole or not at all; nothing that was read is written over, nor what somebody else put there. What a run that was
 * killed left unfinished is removed by the next.
 */
public final class Output implements AutoCloseable {
    private static final String LOCK = ".ampersheet.lock";
    private static final int MOST_NAMED = 4;
    /** As versions before named what they were writing. */
    private static final String PARTS_BEFORE =
            "\\.(seat-[0-9]+|index|issued-[0-9A-Z]{5})\\.(html|md|pdf|zip)\\.[0-9]+\\.part";

    private static final List<String> FOLDERS = List.of("", "sheets", "keys", "homework", "feedback");

    private final Path place;
    private final String kind;
    private final Path folder;
    private final Terms terms;
    private final Pattern parts;
    private final WholeFile files;
    private final RunLock lock;
    private final boolean made;
    private final Thread onStop;
    private volatile Predicate<Path> ours = file -> false;
    /** Written or found as they should be, by their names in the folder. */
    private final NamesBySeat there = new NamesBySeat();

    /**
     * What a run may do with what it finds.
     *
     * @param inputs files that it reads
     * @param replace whether to write over a file that this program does not seem to have written, and over a link
     * @param clean whether to remove what earlier runs left
     * @param stopped told the place, once, if the program is stopped from outside before it has finished
     * @param progress told of each seat, and may end the run
     */
    public record Terms(List<Path> inputs, boolean replace, boolean clean, Consumer<Path> stopped, Progress progress) {
        public Terms {
            inputs = List.copyOf(inputs);
        }

        public Terms(List<Path> inputs, boolean replace, boolean clean, Consumer<Path> stopped) {
            this(inputs, replace, clean, stopped, Progress.UNWATCHED);
        }

        /** The same for a run that somebody watches. */
        public Terms watchedBy(Progress other) {
            return new Terms(inputs, replace, clean, stopped, other);
        }

        public static final Terms NONE = new Terms(List.of(), false, false, place -> {});
    }

    private Output(Path place, String kind, Path folder, String lockName, Terms terms) {
        this.place = place;
        this.kind = kind;
        this.folder = folder;
        this.terms = terms;
        CRC32 name = new CRC32();
        name.update(lockName.getBytes(StandardCharsets.UTF_8));
        String prefix = ".ampersheet-" + Long.toHexString(name.getValue()) + "-";
        this.parts = Pattern.compile(
                lockName.equals(LOCK)
                        ? Pattern.quote(prefix) + "[0-9]+\\.part|" + PARTS_BEFORE
                        : Pattern.quote(prefix) + "[0-9]+\\.part");
        this.made = !Files.exists(folder);
        try {
            Files.createDirectories(folder);
            this.lock = RunLock.of(folder.resolve(lockName), place);
        } catch (IOException | ReadOnlyFileSystemException failure) {
            throw new DiagnosticException(WholeFile.told(folder, failure));
        }
        this.files = new WholeFile(prefix, lock.usualPermissions());
        this.onStop = new Thread(this::stopped, "stopped");
        try {
            Runtime.getRuntime().addShutdownHook(onStop);
        } catch (IllegalStateException stopping) {
            throw new CancellationException("stopped from outside"); // and the system takes the lock back
        }
    }

    /** @throws DiagnosticException if the folder cannot be made or written to, or another run is writing to it */
    public static Output folder(Path folder, Terms terms) {
        return new Output(folder, "", folder, LOCK, terms).withoutParts(FOLDERS);
    }

    /** The same for one slice, while others are written into the same folder. */
    static Output slice(Path folder, Slice slice, Terms terms) {
        return new Output(folder, "", folder, ".ampersheet-" + slice.fileName() + ".lock", terms).withoutParts(FOLDERS);
    }

    /**
     * For a file, and others beside it whose names begin as its does.
     *
     * @param kind as names of such files end, whatever this one is called: {@code .pdf}
     * @throws DiagnosticException if its folder cannot be made or written to, or another run is writing the same file
     */
    public static Output file(Path file, String kind, Terms terms) {
        Path name = file.getFileName();
        if (name == null
                || name.toString().isEmpty()
                || name.toString().equals("..")
                || name.toString().equals(".")) {
            throw new DiagnosticException(Diagnostic.error(
                    Place.inFile(shown(file)),
                    say("folder.unnamed"),
                    say("folder.unnamed.expected"),
                    say("folder.unnamed.next")));
        }
        return new Output(file, kind, file.toAbsolutePath().getParent(), "." + name + ".lock", terms)
                .withoutParts(List.of(""));
    }

    /** Where working files may lie. */
    Path folder() {
        return folder;
    }

    boolean cleans() {
        return terms.clean();
    }

    /** Says of files that this program wrote them, whatever they look like now. */
    void knows(Predicate<Path> written) {
        ours = written;
    }

    /** Whether an earlier run is known to have written a file. */
    boolean hasWritten(Path file) {
        return ours.test(file);
    }

    /**
     * Before any work is done for nothing.
     *
     * @throws DiagnosticException if one of the files must not be written over, for all such files at once
     */
    public void require(Iterable<Path> targets) {
        List<Diagnostic> refused = new ArrayList<>();
        for (Path target : targets) {
            try {
                inTheWay(target).ifPresent(refused::add);
            } catch (IOException failure) {
                refused.add(WholeFile.told(target, failure));
            }
            if (refused.size() == MOST_NAMED) {
                break;
            }
        }
        if (!refused.isEmpty()) {
            throw new DiagnosticException(refused);
        }
    }

    /**
     * @return whether the file was written; a file that already holds this text is left alone
     * @throws DiagnosticException if the folder or the file cannot be written, or must not be written over
     */
    public boolean write(Path file, String text) {
        return write(file, text.getBytes(StandardCharsets.UTF_8));
    }

    /** The same for what is no text. */
    public boolean write(Path file, byte[] bytes) {
        try {
            if (Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)
                    && Files.size(file) == bytes.length
                    && Arrays.equals(Files.readAllBytes(file), bytes)) {
                isThere(file);
                return false;
            }
        } catch (IOException failure) {
            throw new DiagnosticException(WholeFile.told(file, failure));
        }
        return write(file, out -> out.write(bytes));
    }

    /** The same for what is too large to be held in memory. */
    boolean write(Path file, WholeFile.Content content) {
        boolean written = files.write(file, content, () -> {
            Diagnostic told = inTheWay(file).orElse(null);
            if (told != null) {
                throw new DiagnosticException(told);
            }
        });
        isThere(file);
        return written;
    }

    /** A file to work in until {@link #drop} removes it, readable to nobody else. */
    Path working() {
        try {
            return files.part(folder);
        } catch (IOException failure) {
            throw new DiagnosticException(WholeFile.told(folder, failure));
        }
    }

    void drop(Path working) {
        try {
            files.drop(working);
        } catch (IOException failure) {
            throw new DiagnosticException(WholeFile.told(working, failure));
        }
    }

    private void isThere(Path file) {
        String name = folder.toAbsolutePath().relativize(file.toAbsolutePath()).toString();
        synchronized (there) {
            there.add(name.replace(File.separatorChar, '/'));
        }
    }

    /** Removes a file that an earlier run left. */
    void remove(Path file) {
        try {
            Files.deleteIfExists(file);
        } catch (IOException failure) {
            throw new DiagnosticException(WholeFile.told(file, failure));
        }
    }

    /**
     * Removes a file that an earlier run left, if it is one that this program wrote.
     *
     * @return whether it is gone; a link, a device or what looks otherwise than ours stays
     * @throws DiagnosticException if the system does not let it go
     */
    public boolean removeOld(Path file) {
        try {
            if (inTheWay(file).isPresent() || !Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
                return false;
            }
        } catch (IOException failure) {
            throw new DiagnosticException(WholeFile.told(file, failure));
        }
        remove(file);
        return true;
    }

    private Optional<Diagnostic> inTheWay(Path target) throws IOException {
        return InTheWay.of(target, target.equals(place) ? kind : ending(target), terms, ours.test(target));
    }

    private static String ending(Path file) {
        String name = file.getFileName().toString();
        return name.substring(Math.max(0, name.lastIndexOf('.')));
    }

    /**
     * The end of a run that has written all it had to.
     *
     * @throws DiagnosticException if somebody has removed what was written
     */
    public void finish() {
        List<String> gone = new ArrayList<>();
        int goneInAll = 0;
        Set<Path> folders = new TreeSet<>();
        for (String name : there) {
            Path file = kind.isEmpty() ? folder.resolve(name) : place.resolveSibling(name);
            if (Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
                folders.add(file.toAbsolutePath().getParent());
            } else {
                goneInAll++;
                if (gone.size() < MOST_NAMED) {
                    gone.add(shown(file));
                }
            }
        }
        if (!gone.isEmpty()) {
            String first = String.join(", ", gone);
            String named = goneInAll > MOST_NAMED
                    ? say("folder.and-more", "files", first, "more", Integer.toString(goneInAll - MOST_NAMED))
                    : first;
            throw new DiagnosticException(Diagnostic.error(
                    Place.inFile(shown(place)),
                    say("folder.removed", "files", named),
                    say("folder.removed.expected"),
                    say("folder.removed.next")));
        }
        try {
            for (Path each : folders) {
                WholeFile.keepNames(each);
            }
        } catch (IOException failure) {
            throw new DiagnosticException(WholeFile.told(folder, failure));
        }
    }

    private Output withoutParts(List<String> folders) {
        try {
            for (String name : folders) {
                Path of = folder.resolve(name);
                if (Files.isDirectory(of)) {
                    removeParts(of);
                }
            }
            return this;
        } catch (IOException failure) {
            close();
            throw new DiagnosticException(WholeFile.told(folder, failure));
        }
    }

    private void removeParts(Path of) throws IOException {
        try (DirectoryStream<Path> entries = Files.newDirectoryStream(of)) {
            for (Path entry : entries) {
                if (parts.matcher(entry.getFileName().toString()).matches()
                        && Files.isRegularFile(entry, LinkOption.NOFOLLOW_LINKS)) {
                    Files.deleteIfExists(entry);
                }
            }
        }
    }

    /** The lock stays: other threads of this run may still be writing until the program has ended. */
    private void stopped() {
        files.stop();
        terms.stopped().accept(place);
    }

    @Override
    public void close() {
        try {
            Runtime.getRuntime().removeShutdownHook(onStop);
        } catch (IllegalStateException stopping) {
            return; // the hook is at work, and the system takes the lock back
        }
        try {
            lock.close();
            if (made && isEmpty(folder)) {
                Files.delete(folder);
            }
        } catch (IOException failure) {
            throw new DiagnosticException(WholeFile.told(folder, failure));
        }
    }

    private static boolean isEmpty(Path folder) throws IOException {
        if (!Files.isDirectory(folder)) {
            return false;
        }
        try (DirectoryStream<Path> entries = Files.newDirectoryStream(folder)) {
            return !entries.iterator().hasNext();
        }
    }

    static String shown(Path path) {
        return path.toString().replace('\\', '/');
    }
}
