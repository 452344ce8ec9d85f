package ampersheet.issue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * {@code manifest.csv} of a folder: which of its files belong to which issue, told by the five characters with which
 * the sheet IDs begin. It holds no name, no answer and nothing that answers follow from, no check sum either: with one,
 * a key that is guessed could be told from a wrong guess.
 */
final class Manifest {
    static final String NAME = "manifest.csv";
    /** Stands behind the issue while its files are being written, and after a run that was cut off. */
    private static final String UNFINISHED = " unfinished";

    private static final String UNKNOWN = "unknown";
    private static final String HEAD = "file,issue";
    private static final long LARGEST = 256L << 20;
    private static final Pattern LINE = Pattern.compile(
            "((?:index|(?:sheets|keys|homework)/(?:seat-[0-9]{3,6}(?:-[0-9]{1,3})?|issued-[0-9A-Z]{5}))\\.[a-z]{2,4}),"
                    + "([0-9A-Z]{5}(?:" + UNFINISHED + ")?|" + UNKNOWN + ")");
    private static final List<String> FOLDERS = List.of("homework", "keys", "sheets");
    private static final Pattern SEAT_FILE = Pattern.compile("seat-[0-9]{3,6}(?:\\.(?:html|md|pdf)|-[0-9]{1,3}\\.svg)");
    private static final Pattern ARCHIVE = Pattern.compile("issued-([0-9A-Z]{5})\\.zip");

    private final Path folder;
    private final TreeMap<String, String> issues;

    private Manifest(Path folder, TreeMap<String, String> issues) {
        this.folder = folder;
        this.issues = issues;
    }

    /**
     * What the folder's own manifest says, where it has one; lines that this program would not have written say
     * nothing.
     */
    static Manifest of(Path folder) throws IOException {
        TreeMap<String, String> issues = new TreeMap<>();
        Path file = folder.resolve(NAME);
        if (Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS) && Files.size(file) <= LARGEST) {
            String text = new String(Files.readAllBytes(file), StandardCharsets.UTF_8);
            for (String line : text.split("\n")) {
                Matcher read = LINE.matcher(line.strip());
                if (read.matches()) {
                    issues.put(read.group(1), read.group(2));
                }
            }
        }
        return new Manifest(folder, issues);
    }

    boolean isEmpty() {
        return issues.isEmpty();
    }

    /** What some run has written here, or has begun to. */
    List<Path> files() {
        return issues.keySet().stream().map(folder::resolve).toList();
    }

    /**
     * What is to be said while these files are being written; after a run that was cut off, nobody knows what they are.
     */
    Manifest writing(Collection<String> files, String issue) {
        TreeMap<String, String> begun = new TreeMap<>(issues);
        files.stream()
                .filter(file -> !issue.equals(issues.get(file)))
                .forEach(file -> begun.put(file, issue + UNFINISHED));
        return new Manifest(folder, begun);
    }

    Manifest written(Collection<String> files, String issue) {
        TreeMap<String, String> now = new TreeMap<>(issues);
        files.forEach(file -> now.put(file, issue));
        return new Manifest(folder, now);
    }

    Manifest without(Collection<String> files) {
        TreeMap<String, String> now = new TreeMap<>(issues);
        now.keySet().removeAll(files);
        return new Manifest(folder, now);
    }

    /** With what lies in the folder and no manifest has told of, and without what is not there. */
    Manifest asFound() throws IOException {
        TreeMap<String, String> found = new TreeMap<>();
        for (String name : FOLDERS) {
            Path of = folder.resolve(name);
            if (Files.isDirectory(of)) {
                try (DirectoryStream<Path> entries = Files.newDirectoryStream(of)) {
                    for (Path entry : entries) {
                        find(name, entry, found);
                    }
                }
            }
        }
        if (issues.containsKey("index.html")) {
            found.put("index.html", issues.get("index.html"));
        }
        return new Manifest(folder, found);
    }

    private void find(String in, Path entry, Map<String, String> found) {
        String name = entry.getFileName().toString();
        Matcher archive = ARCHIVE.matcher(name);
        boolean isArchive = in.equals("keys") && archive.matches();
        if ((isArchive || SEAT_FILE.matcher(name).matches()) && Files.isRegularFile(entry, LinkOption.NOFOLLOW_LINKS)) {
            String file = in + "/" + name;
            found.put(file, issues.getOrDefault(file, isArchive ? archive.group(1) : UNKNOWN));
        }
    }

    /**
     * Sheets, keys and homework pages that are not among these, by what is known of their issue. Archives are no
     * left-overs: sheets that were printed are marked by them.
     */
    Map<String, List<String>> leftBesides(Set<String> written) {
        Map<String, List<String>> left = new TreeMap<>();
        issues.forEach((file, issue) -> {
            if (!written.contains(file)
                    && SEAT_FILE.matcher(file.substring(file.indexOf('/') + 1)).matches()) {
                left.computeIfAbsent(issue.endsWith(UNFINISHED) ? UNKNOWN : issue, which -> new ArrayList<>())
                        .add(file);
            }
        });
        return left;
    }

    String text() {
        StringBuilder out = new StringBuilder(HEAD).append('\n');
        issues.forEach(
                (file, issue) -> out.append(file).append(',').append(issue).append('\n'));
        return out.toString();
    }

    static boolean isKnown(String issue) {
        return !issue.equals(UNKNOWN);
    }
}
