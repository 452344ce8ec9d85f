package ampersheet.command;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import ampersheet.OnlyDeep;
import ampersheet.issue.WrittenFiles;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The demo, issued by programs started in other surroundings: a deep run asks for each language in each zone on this
 * Java, and for each language on another one, whole and sliced, by 1, 2 and 8 threads.
 */
class SameBytesTest {
    private static final boolean DEEP = Boolean.getBoolean("ampersheet.deep");
    private static final Path DEMO = Path.of("problem-templates", "demo");
    private static final int SEATS = DEEP ? 12 : 1;
    private static final int SLOWEST = 300;
    private static final Path JAVAS = Path.of("/usr/lib/jvm");

    private static final List<List<String>> LANGUAGES = List.of(
            List.of("-Duser.language=tr", "-Duser.country=TR"),
            List.of("-Duser.language=ar", "-Duser.country=EG", "-Duser.extensions=u-nu-arab"),
            List.of("-Duser.language=de", "-Duser.country=DE"),
            List.of("-Duser.language=en", "-Duser.country=US"));
    private static final List<String> ZONES = List.of("Pacific/Kiritimati", "America/St_Johns", "UTC");
    private static final List<String> ENCODINGS = List.of("ISO-8859-9", "windows-1252", "UTF-8", "US-ASCII");
    /** All that a Java after 17 lets be set. */
    private static final List<String> LATER_ENCODINGS = List.of("COMPAT", "UTF-8");

    private static final List<Integer> THREADS = List.of(8, 1, 2);

    @TempDir
    private Path folder;

    /** @param slices 1 for the whole in one run */
    private record Surroundings(Path java, List<String> settings, int threads, int slices) {
        static Surroundings number(int number, Path java, List<String> encodings) {
            List<String> settings = new ArrayList<>(LANGUAGES.get(number % LANGUAGES.size()));
            settings.add("-Duser.timezone=" + ZONES.get(number % ZONES.size()));
            settings.add("-Dfile.encoding=" + encodings.get((number + number / LANGUAGES.size()) % encodings.size()));
            return new Surroundings(
                    java, settings, THREADS.get((number + number / ZONES.size()) % THREADS.size()), 1 + number % 2);
        }
    }

    private Path roster() throws IOException {
        List<String> lines = Files.readAllLines(DEMO.resolve("roster.csv"));
        return Files.write(folder.resolve("class.csv"), lines.subList(0, SEATS + 1));
    }

    private void start(Surroundings in, Path out, String... further) throws IOException, InterruptedException {
        List<String> line =
                new ArrayList<>(List.of(in.java().resolve("bin").resolve("java").toString(), "-XX:+UseSerialGC"));
        if (!DEEP) {
            line.add("-XX:TieredStopAtLevel=1");
        }
        line.addAll(in.settings());
        String classes = Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
                .map(entry -> Path.of(entry).toAbsolutePath().toString())
                .collect(Collectors.joining(File.pathSeparator));
        line.addAll(List.of("-cp", classes, Main.class.getName(), "issue"));
        line.addAll(List.of(DEMO.resolve("plan.yaml").toString(), "--roster", roster().toString()));
        line.addAll(List.of("--out", out.toString(), "--homework", "--threads", Integer.toString(in.threads())));
        line.addAll(List.of(further));
        Path said = folder.resolve("said.txt");
        Process process = new ProcessBuilder(line)
                .redirectErrorStream(true)
                .redirectOutput(said.toFile())
                .start();
        if (!process.waitFor(SLOWEST, TimeUnit.SECONDS)) {
            process.destroyForcibly();
        }
        assertEquals(0, process.waitFor(), () -> line + "\n" + read(said));
    }

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException unread) {
            return unread.toString();
        }
    }

    /** @return by names within the folder */
    private Map<String, byte[]> issued(Surroundings in, String name) throws IOException, InterruptedException {
        Path out = folder.resolve(name);
        if (in.slices() == 1) {
            start(in, out);
        } else {
            for (int number = in.slices(); number >= 1; number--) {
                start(in, out, "--slice", number + "/" + in.slices());
            }
            start(in, out, "--join", Integer.toString(in.slices()));
        }
        return WrittenFiles.under(out);
    }

    private void requireSame(Path java, List<String> encodings, int runs) throws IOException, InterruptedException {
        Path own = Path.of(System.getProperty("java.home"));
        Map<String, byte[]> plain = issued(new Surroundings(own, List.of(), 2, 1), "plain");
        assertTrue(plain.size() > 5 * SEATS, plain.keySet().toString());
        for (int number = 0; number < runs; number++) {
            Surroundings in = Surroundings.number(number, java, encodings);
            Map<String, byte[]> other = issued(in, "in-" + number);
            assertEquals(plain.keySet(), other.keySet(), in.toString());
            plain.forEach((name, bytes) -> assertArrayEquals(bytes, other.get(name), in + ": " + name));
        }
    }

    @Test
    void whateverLanguageZoneEncodingAndThreadsTheMachineHasTheBytesAreTheSame()
            throws IOException, InterruptedException {
        requireSame(Path.of(System.getProperty("java.home")), ENCODINGS, DEEP ? LANGUAGES.size() * ZONES.size() : 1);
    }

    @Test
    @OnlyDeep
    void anotherJavaMakesTheSameBytes() throws IOException, InterruptedException {
        Optional<Path> other = otherJava();
        assumeTrue(other.isPresent(), "there is no other Java in " + JAVAS);
        requireSame(other.get(), LATER_ENCODINGS, LANGUAGES.size());
    }

    /** A later one than this. */
    private static Optional<Path> otherJava() throws IOException {
        if (!Files.isDirectory(JAVAS)) {
            return Optional.empty();
        }
        try (Stream<Path> entries = Files.list(JAVAS)) {
            return entries.filter(java -> version(java) > Runtime.version().feature())
                    .sorted()
                    .findFirst();
        }
    }

    /** 0 for what is no Java. */
    private static int version(Path java) {
        Path release = java.resolve("release");
        if (!Files.isExecutable(java.resolve("bin").resolve("java")) || !Files.isRegularFile(release)) {
            return 0;
        }
        return read(release)
                .lines()
                .filter(line -> line.startsWith("JAVA_VERSION="))
                .map(line -> line.replaceAll("[^0-9]*([0-9]+).*", "$1"))
                .mapToInt(Integer::parseInt)
                .findFirst()
                .orElse(0);
    }
}
