package ampersheet.template;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.source.SourceFile;
import ampersheet.source.Unread;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Templates in a folder. A link that leads out of the folder is not followed. */
final class FolderFiles implements TemplateFiles {
    /** More is no folder of templates. */
    private static final int MOST_CHILDREN = 10_000;

    private final Path root;
    private final String shownRoot;

    private FolderFiles(Path root, String shownRoot) {
        this.root = root;
        this.shownRoot = shownRoot.replace('\\', '/');
    }

    /** @param shownRoot what stands before {@code family/name/file} in diagnostics */
    static FolderFiles of(Path folder, String shownRoot) {
        if (!Files.isDirectory(folder)) {
            throw new DiagnosticException(Diagnostic.error(
                    Place.inFile(shownRoot),
                    "there is no such folder of templates",
                    "a folder laid out as family/name/problem.yaml",
                    "Check the path given for the templates."));
        }
        try {
            return new FolderFiles(folder.toRealPath(), shownRoot);
        } catch (IOException failure) {
            throw unreadable(shownRoot, failure);
        }
    }

    @Override
    public List<String> names() {
        List<String> names = new ArrayList<>();
        for (Path family : children(root)) {
            for (Path folder : children(family)) {
                String name = family.getFileName() + "/" + folder.getFileName();
                if (FileNames.isTemplate(name) && Files.isRegularFile(folder.resolve(PROBLEM))) {
                    names.add(name);
                }
            }
        }
        Collections.sort(names);
        return names;
    }

    @Override
    public List<String> files(String template) {
        FileNames.require(template, PROBLEM);
        List<String> files = new ArrayList<>();
        for (Path file : children(root.resolve(template))) {
            String name = file.getFileName().toString();
            if (FileNames.isPlain(name) && Files.isRegularFile(file)) {
                files.add(name);
            }
        }
        Collections.sort(files);
        return files;
    }

    @Override
    public Optional<String> text(String template, String file) {
        FileNames.require(template, file);
        return text(root.resolve(template).resolve(file), shown(template, file));
    }

    @Override
    public Optional<String> limits() {
        return text(root.resolve(LIMITS), shownLimits());
    }

    private Optional<String> text(Path path, String shown) {
        if (!Files.isRegularFile(path)) {
            return Optional.empty();
        }
        try {
            if (!path.toRealPath().startsWith(root)) {
                throw new DiagnosticException(Diagnostic.error(
                        Place.inFile(shown),
                        "the file is a link that leads out of the folder of templates",
                        "a file inside the folder",
                        "Replace the link by the file itself."));
            }
            return Optional.of(
                    FileNames.decode(SourceFile.bytes(path, FileNames.MOST_BYTES, SourceFile.Links.FOLLOWED), shown));
        } catch (Unread other) {
            throw new DiagnosticException(
                    other.why() == Unread.Why.TOO_LARGE
                            ? FileNames.tooLarge(shown)
                            : other.told(shown, "a readable file or folder"));
        } catch (IOException failure) {
            throw unreadable(shown, failure);
        }
    }

    @Override
    public String shown(String template, String file) {
        return below(template + "/" + file);
    }

    @Override
    public String shownLimits() {
        return below(LIMITS);
    }

    private String below(String path) {
        return (shownRoot.isEmpty() || shownRoot.endsWith("/") ? shownRoot : shownRoot + "/") + path;
    }

    private List<Path> children(Path folder) {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> children = Files.list(folder)) {
            List<Path> found = children.limit(MOST_CHILDREN + 1L).sorted().toList();
            if (found.size() > MOST_CHILDREN) {
                throw new DiagnosticException(Diagnostic.error(
                        Place.inFile(folder.toString()),
                        "this folder holds more than " + MOST_CHILDREN + " files and folders",
                        "a folder laid out as " + "family/name/problem.yaml",
                        "Check the path given for the templates."));
            }
            return found;
        } catch (IOException failure) {
            throw unreadable(folder.toString(), failure);
        }
    }

    private static DiagnosticException unreadable(String shown, IOException failure) {
        return new DiagnosticException(Diagnostic.error(
                Place.inFile(shown),
                "it cannot be read: " + failure.getMessage(),
                "a readable file or folder",
                "Check that it exists and that you may read it."));
    }
}
