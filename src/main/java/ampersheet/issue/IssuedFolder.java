package ampersheet.issue;

import ampersheet.diagnostic.DiagnosticException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** The folder of an issue while it is written: its manifest is true at every moment, so that a run may be cut off. */
final class IssuedFolder {
    private final Output output;
    private final Path folder;
    private final String issue;
    private final Set<String> files;
    private final Manifest before;

    private IssuedFolder(Output output, Path folder, String issue, Set<String> files, Manifest before) {
        this.output = output;
        this.folder = folder;
        this.issue = issue;
        this.files = files;
        this.before = before;
    }

    /**
     * @param files that will be written, by their names in the folder
     * @throws DiagnosticException if one of them must not be written over
     */
    static IssuedFolder open(Output output, Path folder, String issue, Set<String> files) {
        Manifest before = told(folder, () -> Manifest.of(folder));
        output.knows(before::tells);
        output.require(() -> files.stream().map(folder::resolve).iterator());
        output.require(List.of(folder.resolve(Manifest.NAME)));
        return new IssuedFolder(output, folder, issue, files, before);
    }

    void begin() {
        write(before.writing(files, issue));
    }

    /**
     * What lies here besides, removed if that was asked for.
     *
     * @param figures files that were written though nobody could name them before
     */
    Issue.LeftOver end(Collection<String> figures) {
        Set<String> files = with(figures);
        Manifest now =
                told(folder, () -> before.written(files, issue).asFound()).written(files, issue);
        Map<String, List<String>> left = now.leftBesides(files);
        if (output.cleans()) {
            left.values().stream().flatMap(Collection::stream).forEach(file -> output.remove(folder.resolve(file)));
            now = now.without(left.values().stream().flatMap(Collection::stream).toList());
        }
        write(now);
        return new Issue.LeftOver(issue, left, output.cleans());
    }

    /** A sheet made again by itself is noted where there is something to note it in. */
    void beginAgain() {
        if (!before.isEmpty()) {
            begin();
        }
    }

    void endAgain(Collection<String> figures) {
        if (!before.isEmpty()) {
            write(before.written(with(figures), issue));
        }
    }

    private Set<String> with(Collection<String> figures) {
        Set<String> all = new NamesBySeat();
        all.addAll(files);
        all.addAll(figures);
        return all;
    }

    private void write(Manifest manifest) {
        output.write(folder.resolve(Manifest.NAME), manifest::writeTo);
    }

    @FunctionalInterface
    private interface Reading {
        Manifest read() throws IOException;
    }

    private static Manifest told(Path folder, Reading reading) {
        try {
            return reading.read();
        } catch (IOException failure) {
            throw new DiagnosticException(WholeFile.told(folder.resolve(Manifest.NAME), failure));
        }
    }
}
