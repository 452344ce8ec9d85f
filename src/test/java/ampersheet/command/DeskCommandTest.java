package ampersheet.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.OnlyDeep;
import java.io.BufferedReader;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.io.StringReader;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The desk as a program of its own, and a course to begin with. */
class DeskCommandTest {
    private static final int SLOWEST = 60;
    private static final Consumer<Process> BY_ITS_PAGE = desk -> {};

    @TempDir
    private Path folder;

    @Test
    void withoutArgumentsTheDeskOpensAndEndsCleanly() throws Exception {
        assertEquals(143, opened(Process::destroy));
    }

    @OnlyDeep
    @Test
    void itEndsByTheButtonOfAPageToo() throws Exception {
        assertEquals(0, opened(BY_ITS_PAGE));
    }

    /** The exit code of a desk that is opened and then ended, by its page or otherwise. */
    private int opened(Consumer<Process> ends) throws Exception {
        List<String> line = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-Xmx256m",
                "-cp",
                String.join(
                        File.pathSeparator,
                        Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
                                .map(entry -> Path.of(entry).toAbsolutePath().toString())
                                .toList()),
                Main.class.getName()));
        ProcessBuilder program = new ProcessBuilder(line).directory(folder.toFile());
        program.environment().put("PATH", ""); // no browser is found and opened
        Process desk = program.redirectErrorStream(true).start();
        try (BufferedReader said =
                new BufferedReader(new InputStreamReader(desk.getInputStream(), StandardCharsets.UTF_8))) {
            String address = "";
            List<String> lines = new ArrayList<>();
            for (String told = said.readLine(); told != null && address.isEmpty(); told = said.readLine()) {
                lines.add(told);
                address = told.contains("/open/") ? told.strip() : "";
            }
            String path = folder.toRealPath().resolve("course").toString().replace('\\', '/');
            assertTrue(lines.get(0).contains(path), lines.toString());
            HttpResponse<String> opened = HttpClient.newHttpClient()
                    .send(HttpRequest.newBuilder(URI.create(address)).build(), HttpResponse.BodyHandlers.ofString());
            assertEquals(200, opened.statusCode());
            ends.accept(desk);
            String base = address.replaceAll("/open/.*", "");
            if (ends == BY_ITS_PAGE) {
                String told = HttpClient.newHttpClient()
                        .send(
                                HttpRequest.newBuilder(URI.create(base + "/end"))
                                        .header("Origin", base)
                                        .header("Content-Type", "application/x-www-form-urlencoded")
                                        .header(
                                                "Cookie",
                                                opened.headers()
                                                        .firstValue("Set-Cookie")
                                                        .orElseThrow()
                                                        .replaceAll(";.*", ""))
                                        .POST(HttpRequest.BodyPublishers.noBody())
                                        .build(),
                                HttpResponse.BodyHandlers.ofString())
                        .body();
                assertTrue(told.contains("The desk has ended"), told);
            }
            assertTrue(desk.waitFor(SLOWEST, TimeUnit.SECONDS), "it has not ended");
        } finally {
            desk.destroyForcibly();
        }
        assertTrue(Files.isDirectory(folder.resolve("course")));
        return desk.exitValue();
    }

    @Test
    void startWritesACourseThatCanBeGivenOutAndKeepsWhatIsThere() throws IOException {
        Path course = folder.resolve("evening");
        Files.createDirectories(course);
        Files.writeString(course.resolve("class.csv"), "seat,name\n1,Mine\n");
        assertEquals(0, run("start", course.toString()));
        assertEquals("seat,name\n1,Mine\n", Files.readString(course.resolve("class.csv")));
        assertTrue(Files.isDirectory(course.resolve("answers")) && Files.isDirectory(course.resolve("made")));
        assertEquals(
                0,
                run(
                        "issue",
                        course.resolve("plan.yaml").toString(),
                        "--roster",
                        course.resolve("class.csv").toString(),
                        "--out",
                        course.resolve("made/class").toString(),
                        "--threads",
                        "1"));
    }

    @Test
    void aPortThatIsNoneIsWrongUsage() {
        assertEquals(2, run("desk", folder.toString(), "--port", "70000", "--no-browser"));
    }

    private static int run(String... arguments) {
        PrintStream nowhere = new PrintStream(new ByteArrayOutputStream(), true, StandardCharsets.UTF_8);
        return Main.run(arguments, new Streams(new BufferedReader(new StringReader("")), nowhere, nowhere));
    }
}
