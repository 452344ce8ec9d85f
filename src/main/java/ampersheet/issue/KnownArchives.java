package ampersheet.issue;

import ampersheet.diagnostic.DiagnosticException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Archives of what was issued of a course or a plan, where they usually lie: among what is made in its folder, and
 * beside what is made now. No link there is followed.
 */
public final class KnownArchives {
    private static final Pattern NAME = Pattern.compile("(.*-)?issued-[0-9A-Z]{5}\\.zip");

    private KnownArchives() {}

    /**
     * Those in the folder of a course.
     *
     * @param file in which it stands
     */
    public static List<Path> of(Path file) {
        return around(List.of(made(file)));
    }

    /**
     * The same, and those in the folder to which something goes, and in the folders there.
     *
     * @param out a file, or a folder of its own
     */
    public static List<Path> of(Path file, Path out) {
        Path folder = out.toAbsolutePath().normalize().getParent();
        return around(folder == null ? List.of(made(file)) : List.of(made(file), real(folder)));
    }

    private static Path made(Path file) {
        return new CourseFolder(real(file.toAbsolutePath().normalize().getParent())).made();
    }

    /** Where somebody's own way leads, links on it included; what lies there is looked at without them. */
    private static Path real(Path folder) {
        try {
            return folder.toRealPath();
        } catch (IOException missing) {
            return folder; // nothing lies in it then
        }
    }

    private static List<Path> around(List<Path> places) {
        TreeSet<Path> found = new TreeSet<>();
        for (Path place : places) {
            found.addAll(in(place));
            for (Path folder : folders(place)) {
                found.addAll(in(folder));
                found.addAll(in(new CourseFolder.Made(folder).pages()));
            }
        }
        return List.copyOf(found);
    }

    /** Of a folder with handouts, or with sheets and keys. */
    private static List<Path> in(Path folder) {
        List<Path> found = new ArrayList<>();
        for (Path place : List.of(folder, folder.resolve(Issue.KEYS))) {
            entries(place).stream()
                    .filter(entry ->
                            NAME.matcher(entry.getFileName().toString()).matches())
                    .filter(entry -> Files.isRegularFile(entry, LinkOption.NOFOLLOW_LINKS))
                    .forEach(found::add);
        }
        return found;
    }

    private static List<Path> folders(Path place) {
        return entries(place).stream()
                .filter(entry -> Files.isDirectory(entry, LinkOption.NOFOLLOW_LINKS))
                .toList();
    }

    /** What lies in a folder that may be looked into; nothing if it is none. */
    private static List<Path> entries(Path folder) {
        if (!Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS) || !Files.isReadable(folder)) {
            return List.of();
        }
        try (Stream<Path> entries = Files.list(folder)) {
            return entries.toList();
        } catch (IOException failure) {
            throw new DiagnosticException(WholeFile.told(folder, failure));
        }
    }
}
