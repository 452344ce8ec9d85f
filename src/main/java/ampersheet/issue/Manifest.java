package ampersheet.issue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
            "((?:index(?:-[0-9]{1,4})?|(?:sheets|keys|homework)/(?:seat-[0-9]{3,6}(?:-[0-9]{1,3})?|issued-[0-9A-Z]{5}))\\.[a-z]{2,4}),"
                    + "([0-9A-Z]{5}(?:" + UNFINISHED + ")?|" + UNKNOWN + ")");
    private static final List<String> FOLDERS = List.of("homework", "keys", "sheets");
    private static final Pattern SEAT_FILE = Pattern.compile("seat-[0-9]{3,6}(?:\\.(?:html|md|pdf)|-[0-9]{1,3}\\.svg)");
    private static final Pattern ARCHIVE = Pattern.compile("issued-([0-9A-Z]{5})\\.zip");

    private final Path folder;
    /** Files by their issue. */
    private final TreeMap<String, NamesBySeat> issues;

    private Manifest(Path folder, TreeMap<String, NamesBySeat> issues) {
        this.folder = folder;
        this.issues = issues;
    }

    /**
     * What the folder's own manifest says, where it has one; lines that this program would not have written say
     * nothing.
     */
    static Manifest of(Path folder) throws IOException {
        Manifest told = new Manifest(folder, new TreeMap<>());
        Path file = folder.resolve(NAME);
        if (Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS) && Files.size(file) <= LARGEST) {
            try (BufferedReader lines =
                    new BufferedReader(new InputStreamReader(Files.newInputStream(file), StandardCharsets.UTF_8))) {
                for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                    Matcher read = LINE.matcher(line.strip());
                    if (read.matches()) {
                        told.put(read.group(1), read.group(2));
                    }
                }
            }
        }
        return told;
    }

    private void put(String file, String issue) {
        issues.values().forEach(files -> files.remove(file));
        issues.computeIfAbsent(issue, first -> new NamesBySeat()).add(file);
    }

    private Manifest copy() {
        TreeMap<String, NamesBySeat> copy = new TreeMap<>();
        issues.forEach((issue, files) -> copy.put(issue, new NamesBySeat(files)));
        return new Manifest(folder, copy);
    }

    private Optional<String> issue(String file) {
        return issues.entrySet().stream()
                .filter(entry -> entry.getValue().contains(file))
                .map(Map.Entry::getKey)
                .findFirst();
    }

    boolean isEmpty() {
        return issues.values().stream().allMatch(NamesBySeat::isEmpty);
    }

    /** Whether some run has written this file, or has begun to. */
    boolean tells(Path file) {
        return file.startsWith(folder)
                && issue(folder.relativize(file).toString().replace('\\', '/')).isPresent();
    }

    /**
     * What is to be said while these files are being written; after a run that was cut off, nobody knows what they are.
     */
    Manifest writing(Collection<String> files, String issue) {
        Manifest begun = copy();
        files.stream()
                .filter(file -> !issue(file).equals(Optional.of(issue)))
                .forEach(file -> begun.put(file, issue + UNFINISHED));
        return begun;
    }

    Manifest written(Collection<String> files, String issue) {
        Manifest now = copy();
        files.forEach(file -> now.put(file, issue));
        return now;
    }

    Manifest without(Collection<String> files) {
        Manifest now = copy();
        now.issues.values().forEach(some -> files.forEach(some::remove));
        return now;
    }

    /** With what lies in the folder and no manifest has told of, and without what is not there. */
    Manifest asFound() throws IOException {
        Manifest found = new Manifest(folder, new TreeMap<>());
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
        issue(Issue.INDEX).ifPresent(issue -> found.put(Issue.INDEX, issue));
        return found;
    }

    private void find(String in, Path entry, Manifest found) {
        String name = entry.getFileName().toString();
        Matcher archive = ARCHIVE.matcher(name);
        boolean isArchive = in.equals("keys") && archive.matches();
        if ((isArchive || SEAT_FILE.matcher(name).matches()) && Files.isRegularFile(entry, LinkOption.NOFOLLOW_LINKS)) {
            String file = in + "/" + name;
            found.put(file, issue(file).orElse(isArchive ? archive.group(1) : UNKNOWN));
        }
    }

    /**
     * Sheets, keys and homework pages that are not among these, by what is known of their issue. Archives are no
     * left-overs: sheets that were printed are marked by them.
     */
    Map<String, List<String>> leftBesides(Set<String> written) {
        Map<String, List<String>> left = new TreeMap<>();
        for (String file : allFiles()) {
            if (!written.contains(file)
                    && SEAT_FILE.matcher(file.substring(file.indexOf('/') + 1)).matches()) {
                String issue = issue(file).orElseThrow();
                left.computeIfAbsent(issue.endsWith(UNFINISHED) ? UNKNOWN : issue, which -> new ArrayList<>())
                        .add(file);
            }
        }
        return left;
    }

    private NamesBySeat allFiles() {
        NamesBySeat all = new NamesBySeat();
        issues.values().forEach(all::addAll);
        return all;
    }

    void writeTo(OutputStream out) throws IOException {
        Writer text = new OutputStreamWriter(out, StandardCharsets.UTF_8);
        text.append(HEAD).append('\n');
        for (String file : allFiles()) {
            text.append(file).append(',').append(issue(file).orElseThrow()).append('\n');
        }
        text.flush();
    }

    static boolean isKnown(String issue) {
        return !issue.equals(UNKNOWN);
    }
}
