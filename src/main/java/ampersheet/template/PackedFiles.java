package ampersheet.template;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
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
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;

/** Templates packed into a jar, read whole when first asked for. */
final class PackedFiles implements TemplateFiles {
    private static final String ROOT = "problem-templates";
    /** Stands in every build; where it is, the templates are. */
    private static final String LANDMARK = ROOT + "/README.md";

    private final Map<String, byte[]> byPath;

    private PackedFiles(Map<String, byte[]> byPath) {
        this.byPath = byPath;
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
                return new PackedFiles(read(jar));
            }
        } catch (IOException | URISyntaxException failure) {
            throw new DiagnosticException(Diagnostic.error(
                    Place.inFile(ROOT),
                    "the templates in the program's jar cannot be read: " + failure.getMessage(),
                    "a complete jar",
                    "Build or fetch the program again."));
        }
    }

    private static Map<String, byte[]> read(JarFile jar) throws IOException {
        Map<String, byte[]> byPath = new TreeMap<>();
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
                try (InputStream in = jar.getInputStream(entry)) {
                    byPath.put(within, in.readNBytes(FileNames.MOST_BYTES + 1));
                }
            }
        }
        return byPath;
    }

    @Override
    public List<String> names() {
        TreeSet<String> names = new TreeSet<>();
        for (String path : byPath.keySet()) {
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
        for (String path : byPath.keySet()) {
            if (path.startsWith(template + "/") && FileNames.isPlain(path.substring(template.length() + 1))) {
                files.add(path.substring(template.length() + 1));
            }
        }
        Collections.sort(files);
        return files;
    }

    @Override
    public Optional<String> text(String template, String file) {
        FileNames.require(template, file);
        byte[] bytes = byPath.get(template + "/" + file);
        return bytes == null ? Optional.empty() : Optional.of(FileNames.decode(bytes, shown(template, file)));
    }

    @Override
    public String shown(String template, String file) {
        return ROOT + "/" + template + "/" + file;
    }

    @Override
    public Optional<String> limits() {
        return Optional.ofNullable(byPath.get(LIMITS)).map(bytes -> FileNames.decode(bytes, shownLimits()));
    }

    @Override
    public String shownLimits() {
        return ROOT + "/" + LIMITS;
    }
}
