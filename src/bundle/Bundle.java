import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.net.CookieManager;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Makes an archive for the platform that it runs on: the program with a Java runtime of its own, launchers and notices,
 * to be unpacked and started. Run by {@code mvn -Pbundle package}; needs a JDK with jlink, and nothing else.
 *
 * <p>Arguments: the folder of the project, the folder to build in, the version.
 */
public final class Bundle {
    private static final long MOST_BYTES = 80L << 20;
    /** What is loaded by name, so that jdeps does not see it: archives are opened as file systems. */
    private static final List<String> ALWAYS = List.of("java.base", "jdk.zipfs");

    private static final Pattern ADDRESS = Pattern.compile("(http://[^/\\s]+)/\\S*");
    /** Of the desk, in the order in which they are gone through; the first is the address that it tells. */
    private static final List<String> PLACES = List.of("", "/lessons", "/set", "/class", "/give-out", "/take-in");

    private final Path project;
    private final Path build;
    private final String version;

    private Bundle(Path project, Path build, String version) {
        this.project = project;
        this.build = build;
        this.version = version;
    }

    public static void main(String[] arguments) throws IOException, InterruptedException {
        new Bundle(Path.of(arguments[0]), Path.of(arguments[1]), arguments[2]).make();
    }

    private void make() throws IOException, InterruptedException {
        String name = "ampersheet-" + version + "-" + platform();
        Path folder = build.resolve("bundle").resolve(name);
        delete(build.resolve("bundle"));
        Files.createDirectories(folder);
        Path jar = build.resolve("ampersheet.jar");
        String modules = modules(jar);
        run(List.of(
                tool("jlink"),
                "--add-modules",
                modules,
                "--strip-debug",
                "--no-header-files",
                "--no-man-pages",
                "--compress=2",
                "--output",
                folder.resolve("runtime").toString()));
        run(List.of(folder.resolve("runtime/bin/java").toString(), "-Xshare:dump", "-Xlog:cds=off"));
        Files.copy(jar, folder.resolve("ampersheet.jar"));
        Files.write(folder.resolve("classes.list"), loaded(folder));
        copy("launchers", folder);
        Files.copy(project.resolve("src/main/resources/META-INF/LICENSE"), folder.resolve("LICENCE.txt"));
        copyFolder(project.resolve("src/main/resources/META-INF/licences"), folder.resolve("licences"));
        Path made = build.resolve(name + ".zip");
        pack(folder, made);
        long bytes = Files.size(made);
        System.out.println(made + ": " + (bytes >> 20) + " MB, modules " + modules);
        if (bytes > MOST_BYTES) {
            throw new IllegalStateException("the archive is larger than " + (MOST_BYTES >> 20) + " MB");
        }
    }

    private static String platform() {
        String system = System.getProperty("os.name").toLowerCase(Locale.ROOT);
        String machine = System.getProperty("os.arch").equals("amd64") ? "x64" : System.getProperty("os.arch");
        String name = system.startsWith("windows") ? "windows" : system.startsWith("mac") ? "macos" : "linux";
        return name + "-" + machine;
    }

    private static String tool(String name) {
        return Path.of(System.getProperty("java.home"), "bin", name).toString();
    }

    /** Those that the jar asks for. */
    private static String modules(Path jar) throws IOException, InterruptedException {
        Process asked = new ProcessBuilder(
                        tool("jdeps"),
                        "--multi-release",
                        "17",
                        "--ignore-missing-deps",
                        "--print-module-deps",
                        jar.toString())
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        String told = new String(asked.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
        if (asked.waitFor() != 0 || told.isEmpty()) {
            throw new IllegalStateException("jdeps says nothing of " + jar);
        }
        List<String> modules = new ArrayList<>(List.of(told.split(",")));
        ALWAYS.stream().filter(one -> !modules.contains(one)).forEach(modules::add);
        return String.join(",", modules);
    }

    /**
     * The classes that the usual commands and the desk load, of which the launcher makes an archive for the JVM where
     * the program lies in the end.
     */
    private Set<String> loaded(Path folder) throws IOException, InterruptedException {
        Path tried = Files.createDirectories(build.resolve("bundle").resolve("tried"));
        String plan = project.resolve("problem-templates/demo/plan.yaml").toString();
        String roster = Files.writeString(tried.resolve("class.csv"), "seat,name\n1,Ada\n2,Bo\n")
                .toString();
        Set<String> loaded = new LinkedHashSet<>();
        loaded.addAll(loadedBy(folder, tried, "work", "current-limiting/one-indicator"));
        loaded.addAll(loadedBy(folder, tried, "issue", plan, "--roster", roster, "--out", tried + "/made"));
        loaded.addAll(loadedBy(folder, tried, "handout", plan, "--roster", roster, "--out", tried + "/made.pdf"));
        loaded.addAll(loadedByTheDesk(folder, tried));
        delete(tried);
        return loaded;
    }

    private static List<String> starting(Path folder, Path list, String... arguments) {
        List<String> command = new ArrayList<>(List.of(
                folder.resolve("runtime/bin/java").toString(),
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1",
                "-XX:DumpLoadedClassList=" + list,
                "-jar",
                folder.resolve("ampersheet.jar").toString()));
        command.addAll(List.of(arguments));
        return command;
    }

    private static List<String> loadedBy(Path folder, Path tried, String... arguments)
            throws IOException, InterruptedException {
        Path list = tried.resolve("list");
        Process started = new ProcessBuilder(starting(folder, list, arguments))
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        if (started.waitFor() != 0) {
            throw new IllegalStateException("failed: " + String.join(" ", arguments));
        }
        return Files.readAllLines(list);
    }

    /** Its first places, as a browser asks for them. */
    private static List<String> loadedByTheDesk(Path folder, Path tried) throws IOException, InterruptedException {
        Path list = tried.resolve("list");
        Process desk = new ProcessBuilder(
                        starting(folder, list, "desk", tried.resolve("course").toString(), "--no-browser"))
                .redirectErrorStream(true)
                .start();
        try (BufferedReader said =
                new BufferedReader(new InputStreamReader(desk.getInputStream(), StandardCharsets.UTF_8))) {
            Matcher address = said.lines()
                    .map(ADDRESS::matcher)
                    .filter(Matcher::find)
                    .findFirst()
                    .orElseThrow(() -> new IllegalStateException("the desk tells no address"));
            HttpClient browser = HttpClient.newBuilder()
                    .cookieHandler(new CookieManager())
                    .followRedirects(HttpClient.Redirect.NORMAL)
                    .build();
            for (String place : PLACES) {
                URI asked = URI.create(place.isEmpty() ? address.group() : address.group(1) + place);
                browser.send(HttpRequest.newBuilder(asked).build(), HttpResponse.BodyHandlers.discarding());
            }
        } finally {
            desk.destroy();
            desk.waitFor();
        }
        return Files.readAllLines(list);
    }

    private static void run(List<String> command) throws IOException, InterruptedException {
        if (new ProcessBuilder(command).inheritIO().start().waitFor() != 0) {
            throw new IllegalStateException("failed: " + String.join(" ", command));
        }
    }

    private void copy(String from, Path to) throws IOException {
        copyFolder(project.resolve("src/bundle").resolve(from), to);
    }

    private static void copyFolder(Path from, Path to) throws IOException {
        Files.createDirectories(to);
        try (Stream<Path> files = Files.list(from)) {
            for (Path file : files.toList()) {
                Files.copy(file, to.resolve(file.getFileName()), StandardCopyOption.REPLACE_EXISTING);
            }
        }
    }

    private static void delete(Path folder) throws IOException {
        if (!Files.exists(folder)) {
            return;
        }
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
    }

    /** With the right to be started where a system knows such. */
    private static void pack(Path folder, Path archive) throws IOException {
        Files.deleteIfExists(archive);
        Map<String, Object> settings = Map.of("create", "true", "enablePosixFileAttributes", true);
        try (FileSystem zip = FileSystems.newFileSystem(archive, settings);
                Stream<Path> files = Files.walk(folder)) {
            files.sorted().forEach(file -> {
                try {
                    Path in = zip.getPath(folder.getParent().relativize(file).toString().replace('\\', '/'));
                    if (Files.isDirectory(file)) {
                        Files.createDirectories(in);
                        return;
                    }
                    Files.copy(file, in);
                    Files.setLastModifiedTime(in, FileTime.fromMillis(1_767_225_600_000L));
                    Files.setAttribute(
                            in,
                            "zip:permissions",
                            PosixFilePermissions.fromString(starts(folder, file) ? "rwxr-xr-x" : "rw-r--r--"));
                } catch (IOException failure) {
                    throw new UncheckedIOException(failure);
                }
            });
        }
    }

    private static boolean starts(Path folder, Path file) {
        String name = file.getFileName().toString();
        return file.getParent().equals(folder.resolve("runtime/bin"))
                || name.equals("ampersheet")
                || name.equals("jspawnhelper")
                || name.equals("jexec");
    }
}
