package ampersheet.desk;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.issue.CourseFolder;
import ampersheet.issue.Output;
import ampersheet.sheet.CoursePlan;
import ampersheet.source.Bounds;
import ampersheet.source.ForeignText;
import ampersheet.source.SourceFile;
import ampersheet.source.Unread;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * The files of a course. Each is read anew whenever it is asked for, so that a change from outside is seen at once, and
 * written only over what its writer has seen. No link is followed, and nothing outside the folder is touched.
 */
class Course {
    private static final int MOST_UNDONE = 100;
    private static final int DIGITS = 16;
    /** Of one file that is shown or downloaded. */
    private static final int LARGEST = 256 << 20;

    private static final int MOST_LISTED = 20_000;
    /** Which commands read in whatever encoding a spreadsheet wrote them. */
    private static final List<String> TABLES =
            List.of(CourseFolder.CLASS, CourseFolder.DECISIONS, CourseFolder.RECEIVED);

    private final CourseFolder folder;
    /** Texts as they were before the desk changed them, the last first. */
    private final Map<String, Deque<Undo>> before = new TreeMap<>();

    private record Undo(Kept before, String versionAfter) {}

    Course(CourseFolder folder) {
        this.folder = folder;
    }

    CourseFolder files() {
        return folder;
    }

    /**
     * A file as it is now.
     *
     * @param version by which it is known whether it has changed since
     */
    record Kept(String text, String version) {
        static final String NONE = "none";

        boolean isThere() {
            return !version.equals(NONE);
        }
    }

    /** Thrown where somebody else wrote meanwhile. */
    static final class Stale extends RuntimeException {
        private static final long serialVersionUID = 1L;

        private final transient Kept now;
        private final String file;

        Stale(String file, Kept now) {
            super(file);
            this.file = file;
            this.now = now;
        }

        Kept now() {
            return now;
        }

        String file() {
            return file;
        }
    }

    /** @throws DiagnosticException if it is there and cannot be read as text */
    Kept read(String name) {
        Path file = folder.folder().resolve(name);
        if (!Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
            return new Kept("", Kept.NONE);
        }
        try {
            String text = TABLES.contains(name)
                    ? SourceFile.foreign(file, Bounds.WRITTEN, SourceFile.Links.REFUSED)
                            .text()
                    : SourceFile.text(file, Bounds.WRITTEN, SourceFile.Links.REFUSED);
            return new Kept(text, version(text));
        } catch (Unread unread) {
            throw new DiagnosticException(unread.told(name, say("desk.file.text")));
        }
    }

    /** The class list, with how it was read; empty if there is none. */
    Optional<ForeignText> roster() {
        if (!Files.exists(folder.roster(), LinkOption.NOFOLLOW_LINKS)) {
            return Optional.empty();
        }
        try {
            return Optional.of(SourceFile.foreign(folder.roster(), Bounds.WRITTEN, SourceFile.Links.REFUSED));
        } catch (Unread unread) {
            throw new DiagnosticException(unread.told(CourseFolder.CLASS, say("desk.file.class")));
        }
    }

    /**
     * Writes a file of the course, whole or not at all.
     *
     * @param seen the version that its writer saw
     * @throws Stale if it is another one now
     * @throws DiagnosticException if it cannot be written
     */
    synchronized void write(String name, String text, String seen) {
        Kept now = read(name);
        if (!now.version().equals(seen)) {
            throw new Stale(name, now);
        }
        if (text.equals(now.text()) && now.isThere()) {
            return;
        }
        put(name, text);
        Deque<Undo> undone = before.computeIfAbsent(name, first -> new ArrayDeque<>());
        undone.push(new Undo(now, version(text)));
        while (undone.size() > MOST_UNDONE) {
            undone.removeLast();
        }
    }

    private void put(String name, String text) {
        writeBytes(name, text.getBytes(StandardCharsets.UTF_8));
    }

    /**
     * Puts a file of the course in its place, whatever lay there.
     *
     * @throws DiagnosticException if a link lies there, or if it cannot be written
     */
    synchronized void writeBytes(String name, byte[] bytes) {
        Path file = folder.folder().resolve(name);
        if (Files.isSymbolicLink(file)) {
            throw new DiagnosticException(Diagnostic.error(
                    Place.inFile(name),
                    say("desk.file.link"),
                    say("desk.file.link.expected"),
                    say("desk.file.link.next")));
        }
        Output.Terms terms = new Output.Terms(List.of(), true, false, place -> {});
        try (Output output = Output.file(file, ending(name), terms)) {
            output.write(file, bytes);
            output.finish();
        }
    }

    /** Whether the last change of the desk is still the last. */
    synchronized boolean canUndo(String name) {
        Deque<Undo> undone = before.getOrDefault(name, new ArrayDeque<>());
        return !undone.isEmpty()
                && undone.peek().versionAfter().equals(read(name).version());
    }

    /** Takes back the last change of the desk; false if there is none, or somebody else wrote since. */
    synchronized boolean undo(String name) {
        if (!canUndo(name)) {
            return false;
        }
        Kept then = before.get(name).pop().before();
        if (then.isThere()) {
            put(name, then.text());
        } else {
            remove(folder.folder().resolve(name));
        }
        return true;
    }

    private void remove(Path file) {
        try {
            Files.deleteIfExists(file);
        } catch (IOException failure) {
            throw unreadable(file, failure);
        }
    }

    /**
     * All of a file of the course that is no text; empty if there is none.
     *
     * @throws DiagnosticException if it is there and cannot be read, or has more bytes
     */
    Optional<byte[]> bytesOf(String name, int most) {
        Path file = folder.folder().resolve(name);
        if (!Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
            return Optional.empty();
        }
        try {
            return Optional.of(SourceFile.bytes(file, most, SourceFile.Links.REFUSED));
        } catch (Unread unread) {
            throw new DiagnosticException(unread.told(name, say("desk.file.bytes", "most", Integer.toString(most))));
        }
    }

    /**
     * Keeps a file in the course under the first name of these that nothing else has: logo.png, logo-2.png …
     *
     * @return the name
     */
    synchronized String keptBeside(String stem, String ending, byte[] bytes) {
        String name = stem + ending;
        for (int i = 2; isThere(name) && !isSame(name, bytes); i++) {
            name = stem + "-" + i + ending;
        }
        if (!isThere(name)) {
            writeBytes(name, bytes);
        }
        return name;
    }

    private boolean isSame(String name, byte[] bytes) {
        try {
            return Arrays.equals(
                    SourceFile.bytes(folder.folder().resolve(name), LARGEST, SourceFile.Links.REFUSED), bytes);
        } catch (Unread other) {
            return false; // a folder, a link: the next name will do
        }
    }

    synchronized void removeFile(String name) {
        remove(folder.folder().resolve(name));
    }

    /** Whether a file of this name is there, whatever is in it. */
    boolean isThere(String name) {
        return Files.exists(folder.folder().resolve(name), LinkOption.NOFOLLOW_LINKS);
    }

    private static String ending(String name) {
        return name.substring(name.lastIndexOf('.'));
    }

    static String version(String text) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(digest).substring(0, DIGITS);
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    /** Whether a path within the course is a folder, without a link on the way to it. */
    boolean isFolder(Path path) {
        for (Path at = path; !at.equals(folder.folder()); at = at.getParent()) {
            if (!Files.isDirectory(at, LinkOption.NOFOLLOW_LINKS)) {
                return false;
            }
        }
        return true;
    }

    /** @throws DiagnosticException if something else than a folder stands there, a link among others */
    void requireFolder(Path path) {
        if (Files.exists(path, LinkOption.NOFOLLOW_LINKS) && !isFolder(path)) {
            throw new DiagnosticException(Diagnostic.error(
                    Place.inFile(shown(path)),
                    Files.isSymbolicLink(path) ? say("desk.folder.link") : say("desk.folder.file"),
                    say("desk.folder.expected"),
                    say("desk.folder.next")));
        }
    }

    /** Those of the files that are there and were written after another one, by their own times. */
    List<String> writtenAfter(String one, Set<String> files) {
        List<String> after = new ArrayList<>();
        try {
            FileTime time = Files.getLastModifiedTime(folder.folder().resolve(one), LinkOption.NOFOLLOW_LINKS);
            for (String file : files) {
                Path path = folder.folder().resolve(file);
                if (Files.isRegularFile(path, LinkOption.NOFOLLOW_LINKS)
                        && Files.getLastModifiedTime(path).compareTo(time) > 0) {
                    after.add(file);
                }
            }
            return after;
        } catch (IOException failure) {
            throw unreadable(folder.folder().resolve(one), failure);
        }
    }

    /** When a file was written, by its own time. */
    FileTime written(Path file) {
        try {
            return Files.getLastModifiedTime(file, LinkOption.NOFOLLOW_LINKS);
        } catch (IOException failure) {
            throw unreadable(file, failure);
        }
    }

    /** By which it is noticed that a file is another one now. */
    String state(Path file) {
        try {
            return written(file) + " " + Files.size(file);
        } catch (IOException failure) {
            throw unreadable(file, failure);
        }
    }

    /** Names of the ordinary files in a folder of the course, in their order; none if there is no such folder. */
    List<String> names(Path of) {
        if (!isFolder(of)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(of)) {
            return files.filter(file -> Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS))
                    .map(file -> file.getFileName().toString())
                    .filter(name -> !name.startsWith("."))
                    .limit(MOST_LISTED)
                    .sorted()
                    .toList();
        } catch (IOException failure) {
            throw unreadable(of, failure);
        }
    }

    /**
     * A file below {@code made}, found step by step among the names that are there, so that an address never becomes a
     * path; empty if there is none.
     */
    Optional<Path> made(List<String> steps) {
        Path at = folder.made();
        for (int i = 0; i < steps.size(); i++) {
            Optional<Path> next = child(at, steps.get(i));
            boolean last = i == steps.size() - 1;
            if (next.isEmpty() || !last && !isFolder(next.get())) {
                return Optional.empty();
            }
            at = next.get();
        }
        return Files.isRegularFile(at, LinkOption.NOFOLLOW_LINKS) ? Optional.of(at) : Optional.empty();
    }

    private Optional<Path> child(Path of, String name) {
        if (!isFolder(of)) {
            return Optional.empty();
        }
        try (Stream<Path> files = Files.list(of)) {
            return files.filter(file -> file.getFileName().toString().equals(name))
                    .findFirst();
        } catch (IOException failure) {
            throw unreadable(of, failure);
        }
    }

    byte[] bytes(Path file) {
        try {
            return SourceFile.bytes(file, LARGEST, SourceFile.Links.REFUSED);
        } catch (Unread unread) {
            throw new DiagnosticException(unread.told(shown(file), say("desk.file.readable")));
        }
    }

    /** As the instructor knows it. */
    String shown(Path path) {
        return folder.folder().relativize(path).toString().replace('\\', '/');
    }

    /**
     * Archives of what was issued, those of the plan before those of the weeks, of each those of the class before those
     * of handouts, each in the order of their names.
     */
    List<Path> archives() {
        List<Path> found = new ArrayList<>(archives(folder.ofPlan()));
        for (int week = 1; week <= CoursePlan.MOST_WEEKS; week++) {
            found.addAll(archives(folder.ofWeek(week)));
        }
        return found;
    }

    /** The week of whose sheets an archive tells; empty for those of the plan. */
    OptionalInt weekOf(Path archive) {
        for (int week = 1; week <= CoursePlan.MOST_WEEKS; week++) {
            if (archive.startsWith(folder.ofWeek(week).folder())) {
                return OptionalInt.of(week);
            }
        }
        return OptionalInt.empty();
    }

    List<Path> archives(CourseFolder.Made of) {
        List<Path> found = new ArrayList<>();
        for (Path in : of.ofArchives()) {
            names(in).stream().filter(CourseFolder::isArchive).forEach(name -> found.add(in.resolve(name)));
        }
        return found;
    }

    private DiagnosticException unreadable(Path of, IOException failure) {
        return new DiagnosticException(Diagnostic.error(
                Place.inFile(shown(of)),
                say("desk.file.refused", "failure", String.valueOf(failure.getMessage())),
                say("desk.file.refused.expected"),
                say("desk.file.refused.next")));
    }
}
