package ampersheet.template;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.net.JarURLConnection;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Enumeration;
import java.util.List;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.TreeSet;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;

/** Templates packed into a jar: which there are is read at once, each file when it is asked for. */
final class PackedFiles implements TemplateFiles {
    private static final String ROOT = "problem-templates";
    /** Stands in every build; where it is, the templates are. */
    private static final String LANDMARK = ROOT + "/README.md";

    private final ClassLoader loader;
    private final NavigableSet<String> paths;

    private PackedFiles(ClassLoader loader, NavigableSet<String> paths) {
        this.loader = loader;
        this.paths = paths;
    }

    /** The templates a class loader sees, in a jar or in a folder of classes. */
    static TemplateFiles on(ClassLoader loader) {
        URL landmark = loader.getResource(LANDMARK);
        if (landmark == null) {
            throw new DiagnosticException(Diagnostic.error(
                    Place.inFile(ROOT),
                    "the program was packed without its templates",
                    "a folder " + ROOT + " in its jar",
                    "Build the program again with mvn package, or name a folder of templates."));
        }
        try {
            if (landmark.getProtocol().equals("file")) {
                return FolderFiles.of(Path.of(landmark.toURI()).getParent(), ROOT);
            }
            JarURLConnection connection = (JarURLConnection) landmark.openConnection();
            // A cached connection would share, and closing it close, the jar that the class loader reads from.
            connection.setUseCaches(false);
            try (JarFile jar = connection.getJarFile()) {
                return new PackedFiles(loader, paths(jar));
            }
        } catch (IOException | URISyntaxException failure) {
            throw unreadable(failure);
        }
    }

    private static DiagnosticException unreadable(Exception failure) {
        return new DiagnosticException(Diagnostic.error(
                Place.inFile(ROOT),
                "the templates in the program's jar cannot be read: " + failure.getMessage(),
                "a complete jar",
                "Build or fetch the program again."));
    }

    private static NavigableSet<String> paths(JarFile jar) {
        NavigableSet<String> paths = new TreeSet<>();
        Enumeration<JarEntry> entries = jar.entries();
        while (entries.hasMoreElements()) {
            JarEntry entry = entries.nextElement();
            String path = entry.getName();
            if (entry.isDirectory() || !path.startsWith(ROOT + "/")) {
                continue;
            }
            String within = path.substring(ROOT.length() + 1);
            int slash = within.lastIndexOf('/');
            if (within.equals(LIMITS) || slash > 0 && FileNames.isTemplate(within.substring(0, slash))) {
                paths.add(within);
            }
        }
        return paths;
    }

    /** Empty for a path that is not among those of the jar. */
    private Optional<byte[]> bytes(String path) {
        if (!paths.contains(path)) {
            return Optional.empty();
        }
        try (InputStream in = loader.getResourceAsStream(ROOT + "/" + path)) {
            if (in == null) {
                throw new FileNotFoundException(path + " is not there any more");
            }
            return Optional.of(in.readNBytes(FileNames.MOST_BYTES + 1));
        } catch (IOException failure) {
            throw unreadable(failure);
        }
    }

    @Override
    public boolean areChecked() {
        return true;
    }

    @Override
    public List<String> names() {
        TreeSet<String> names = new TreeSet<>();
        for (String path : paths) {
            if (path.endsWith("/" + PROBLEM)) {
                names.add(path.substring(0, path.lastIndexOf('/')));
            }
        }
        return List.copyOf(names);
    }

    @Override
    public List<String> files(String template) {
        FileNames.require(template, PROBLEM);
        List<String> files = new ArrayList<>();
        for (String path : paths.tailSet(template + "/")) {
            if (!path.startsWith(template + "/")) {
                break;
            }
            if (FileNames.isPlain(path.substring(template.length() + 1))) {
                files.add(path.substring(template.length() + 1));
            }
        }
        Collections.sort(files);
        return files;
    }

    @Override
    public Optional<String> text(String template, String file) {
        FileNames.require(template, file);
        return bytes(template + "/" + file).map(bytes -> FileNames.decode(bytes, shown(template, file)));
    }

    @Override
    public String shown(String template, String file) {
        return ROOT + "/" + template + "/" + file;
    }

    @Override
    public Optional<String> limits() {
        return bytes(LIMITS).map(bytes -> FileNames.decode(bytes, shownLimits()));
    }

    @Override
    public String shownLimits() {
        return ROOT + "/" + LIMITS;
    }
}
