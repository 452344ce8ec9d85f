package ampersheet.command;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import ampersheet.OnlyDeep;
import ampersheet.issue.Issue;
import ampersheet.issue.Output;
import ampersheet.issue.WrittenFiles;
import ampersheet.sheet.ArchivedClass;
import ampersheet.sheet.SmallLibrary;
import ampersheet.source.Told;
import java.io.BufferedReader;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.io.PrintStream;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The program started as a process of its own: its settings, its neighbours, and how it ends. */
class StartedProgramTest {
    private static final boolean DEEP = Boolean.getBoolean("ampersheet.deep");
    private static final int KILLS = DEEP ? 50 : 1;
    private static final String PLAN =
            "title: Lanterns\nseed: one\nproblems:\n  - {template: current-limiting/indicator, example: yes}\n"
                    + "  - {template: voltage-dividers/plain-divider}\n";
    private static final int SEATS = 6;
    private static final int SLOWEST = 60;

    @TempDir
    private Path folder;

    private Path plan;
    private Path roster;
    private Path temporary;

    @BeforeEach
    void write() throws IOException {
        plan = Files.writeString(folder.resolve("plan.yaml"), PLAN);
        StringBuilder list = new StringBuilder("seat,name\n");
        for (int seat = 1; seat <= SEATS; seat++) {
            list.append(seat).append(",Learner ").append(seat).append('\n');
        }
        roster = Files.writeString(folder.resolve("class.csv"), list);
        temporary = Files.createDirectories(folder.resolve("temporary"));
    }

    private ProcessBuilder program(List<String> arguments) {
        List<String> line = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-Djava.io.tmpdir=" + temporary,
                "-cp",
                absoluteClassPath(),
                Main.class.getName()));
        line.addAll(arguments);
        ProcessBuilder program = new ProcessBuilder(line);
        program.redirectErrorStream(true)
                .redirectOutput(folder.resolve("said.txt").toFile());
        return program;
    }

    private static String absoluteClassPath() {
        return String.join(
                File.pathSeparator,
                Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
                        .map(entry -> Path.of(entry).toAbsolutePath().toString())
                        .toList());
    }

    /**
     * Without what a logging library says of itself: the class path of the tests has one, the program's jar has none.
     */
    private String said() throws IOException {
        return Files.readString(folder.resolve("said.txt"))
                .lines()
                .filter(line -> !line.startsWith("SLF4J"))
                .map(line -> line + "\n")
                .collect(Collectors.joining());
    }

    private int end(Process process) throws InterruptedException {
        assertTrue(process.waitFor(SLOWEST, TimeUnit.SECONDS), "it has not ended");
        return process.exitValue();
    }

    private static List<String> small(String... arguments) {
        List<String> all = new ArrayList<>(List.of(arguments));
        all.addAll(List.of("--templates", SmallLibrary.FOLDER.toAbsolutePath().toString()));
        return all;
    }

    private List<String> issue(Path out) {
        return small("issue", plan.toString(), "--roster", roster.toString(), "--out", out.toString());
    }

    private static void runHere(List<String> arguments) {
        ByteArrayOutputStream said = new ByteArrayOutputStream();
        PrintStream both = new PrintStream(said, true, StandardCharsets.UTF_8);
        int exitCode = Main.run(
                arguments.toArray(new String[0]), new Streams(new BufferedReader(new StringReader("")), both, both));
        assertEquals(0, exitCode, arguments + "\n" + said.toString(StandardCharsets.UTF_8));
    }

    // What it is spared

    @Test
    void aCommandThatHasNothingToTellBesidesItsResultReadsNoSentencesOfCommandsDeskAndFolders()
            throws IOException, InterruptedException {
        Path loaded = folder.resolve("loaded.txt");
        ProcessBuilder program = program(small("work", "current-limiting/indicator"));
        program.environment().put("JDK_JAVA_OPTIONS", "-Xlog:class+load:file=" + loaded);
        assertEquals(0, end(program.start()), said());
        String classes = Files.readString(loaded);
        assertTrue(classes.contains(WorkCommand.class.getName() + " "));
        assertFalse(classes.contains(Told.class.getName() + " "));
    }

    // Its settings

    @Test
    void underASettingOfEnglishLettersAnswersAreReadRightAndNamesThatCannotBeOpenedAreTold()
            throws IOException, InterruptedException {
        assumeTrue(Files.exists(Path.of("/proc/self/cmdline")), "this system does not keep what was typed");
        runHere(issue(folder.resolve("out")));
        Path archive = archive(folder.resolve("out"));
        String id = ArchivedClass.read(archive).sheets().get(0).id().toString();
        String key = "q2a=100 k\u03a9";
        for (String plan :
                List.of(this.plan.toString(), folder.resolve("zo\u00eb.yaml").toString())) {
            // the words go through a shell's own standard input, as bytes, whatever setting these tests run under
            ProcessBuilder shell = program(small("check", id, "--plan", "PLAN", "ANSWER"));
            String line = String.join(
                    " ", shell.command().stream().map(word -> "'" + word + "'").toList());
            Path script = Files.writeString(
                    folder.resolve("run.sh"),
                    "export LC_ALL=C\nexec "
                            + line.replace("'PLAN'", "'" + plan + "'").replace("'ANSWER'", "'" + key + "'") + "\n");
            shell.command("sh", script.toString());
            int exitCode = end(shell.start());
            if (plan.equals(this.plan.toString())) {
                assertEquals(1, exitCode, said());
                assertTrue(said().contains("(read as 100") && !said().contains("\ufffd"), said());
            } else {
                assertEquals(2, exitCode, said());
                assertTrue(said().contains("LC_ALL=C.UTF-8") && said().contains("zo\u00eb.yaml"), said());
            }
        }
    }

    @Test
    void anotherProgramThatWritesIntoTheSameFolderIsTold() throws IOException, InterruptedException {
        Path out = folder.resolve("out");
        try (Output held = Output.folder(out, Output.Terms.NONE)) {
            assertEquals(1, end(program(issue(out)).start()), said());
            assertTrue(said().contains("another run is writing here now"), said());
            assertTrue(Files.exists(out), "and " + held + " still holds it");
        }
    }

    // How it ends

    /** A writing command: what to type for a place to write to, which is a folder of its own. */
    private record Writing(String name, java.util.function.Function<Path, List<String>> line) {}

    private Path archive(Path out) throws IOException {
        try (Stream<Path> keys = Files.list(out.resolve("keys"))) {
            return keys.filter(file -> file.toString().endsWith(".zip"))
                    .findFirst()
                    .orElseThrow();
        }
    }

    private List<Writing> commands(Path archive, String id, Path answers) {
        boolean pages = Issue.class.getResource("/ampersheet/browser/checker.js") != null;
        List<Writing> all = new ArrayList<>(List.of(
                new Writing(
                        "issue",
                        out -> small(
                                "issue",
                                plan.toString(),
                                "--roster",
                                roster.toString(),
                                "--out",
                                out.toString(),
                                "--pdf")),
                new Writing(
                        "handout",
                        out -> small(
                                "handout",
                                plan.toString(),
                                "--copies",
                                "6",
                                "--keys",
                                "apart",
                                "--out",
                                out.resolve("tonight.pdf").toString())),
                new Writing(
                        "mark",
                        out -> small(
                                "mark",
                                answers.toString(),
                                "--issued-with",
                                archive.toString(),
                                "--roster",
                                roster.toString(),
                                "--out",
                                out.toString())),
                new Writing(
                        "key", out -> small("key", id, "--issued-with", archive.toString(), "--out", out.toString())),
                new Writing(
                        "export",
                        out -> small(
                                "export",
                                plan.toString(),
                                "--variants",
                                "40",
                                "--qti",
                                out.resolve("pool.zip").toString()))));
        if (pages) {
            all.add(new Writing(
                    "practice",
                    out -> small(
                            "practice",
                            plan.toString(),
                            "--out",
                            out.resolve("page.html").toString())));
            all.add(new Writing(
                    "homework",
                    out -> small(
                            "issue",
                            plan.toString(),
                            "--roster",
                            roster.toString(),
                            "--out",
                            out.toString(),
                            "--homework")));
        }
        return all;
    }

    @Test
    void killedAtAnyMomentItLeavesNoHalfFileAndRunAgainItGivesTheSameBytes() throws IOException, InterruptedException {
        long seed = Long.getLong("ampersheet.seed", System.nanoTime());
        Random random = new Random(seed);
        Path first = folder.resolve("first");
        runHere(issue(first));
        Path archive = archive(first);
        Path answers = Files.createDirectories(folder.resolve("answers"));
        StringBuilder typed = new StringBuilder("sheet,question,answer\n");
        ArchivedClass.read(archive)
                .sheets()
                .forEach(sheet -> typed.append(sheet.id()).append(",q2a,100 ohm\n"));
        Files.writeString(answers.resolve("all.csv"), typed);
        List<Writing> commands = commands(
                archive, ArchivedClass.read(archive).sheets().get(2).id().toString(), answers);
        Map<String, Map<String, byte[]>> whole = new TreeMap<>();
        int offset = random.nextInt(commands.size());
        for (int kill = 0; kill < KILLS; kill++) {
            Writing command = commands.get((offset + kill) % commands.size());
            String which = command.name() + ", kill " + kill + ", -Dampersheet.seed=" + seed;
            if (!whole.containsKey(command.name())) {
                Path reference = Files.createDirectories(folder.resolve("reference-" + command.name()));
                runHere(command.line().apply(reference));
                whole.put(command.name(), WrittenFiles.under(reference));
            }
            Path out = Files.createDirectories(folder.resolve("out-" + command.name()));
            Process process = program(command.line().apply(out)).start();
            int exitCode = killed(process, out, random);
            requireWhole(whole.get(command.name()), out, which);
            assertEquals(
                    Map.of(),
                    WrittenFiles.under(temporary),
                    "something stayed in the folder for temporary files, " + which);
            if (exitCode == 143) {
                assertTrue(
                        said().isEmpty()
                                || said().contains("Stopped before the end. Every file in ")
                                || said().contains("written"),
                        said());
            }
        }
        for (Writing command : commands) {
            Path out = folder.resolve("out-" + command.name());
            if (Files.exists(out)) {
                runHere(command.line().apply(out));
                Map<String, byte[]> again = WrittenFiles.under(out);
                assertEquals(
                        whole.get(command.name()).keySet(),
                        again.keySet(),
                        command.name() + " run again, seed " + seed);
                requireWhole(whole.get(command.name()), out, command.name() + " run again, seed " + seed);
            }
        }
    }

    /** As a shell in the foreground does; a program that was started to ignore it, ignores it. */
    private static boolean hearsInterrupts(Process process) throws IOException {
        Path status = Path.of("/proc/" + process.pid() + "/status");
        return Files.exists(status)
                && Files.readAllLines(status).stream()
                        .filter(line -> line.startsWith("SigIgn:"))
                        .noneMatch(line -> (Long.parseLong(line.substring(7).strip(), 16) & 2) != 0);
    }

    @OnlyDeep
    @Test
    void interruptedFromTheKeyboardItSaysHowToGoOnAndTheSameCommandMakesTheRest()
            throws IOException, InterruptedException {
        StringBuilder list = new StringBuilder("seat,name\n");
        for (int seat = 1; seat <= 120; seat++) {
            list.append(seat).append(",\n");
        }
        Files.writeString(roster, list);
        Path out = folder.resolve("out");
        Process process = program(issue(out)).start();
        assumeTrue(hearsInterrupts(process), "these tests run where nobody can interrupt");
        long patience = System.nanoTime() + TimeUnit.SECONDS.toNanos(SLOWEST);
        while (process.isAlive() && System.nanoTime() < patience && !Files.exists(out.resolve("keys/seat-050.md"))) {
            Thread.sleep(5);
        }
        new ProcessBuilder("kill", "-INT", Long.toString(process.pid())).start().waitFor();
        assertEquals(130, end(process), said());
        assertTrue(
                said().contains("Stopped before the end. Every file in ")
                        && said().contains("the same command again makes the rest."),
                said());
        Path whole = folder.resolve("whole");
        runHere(issue(whole));
        requireWhole(WrittenFiles.under(whole), out, "interrupted");
        runHere(issue(out));
        assertEquals(WrittenFiles.under(whole).keySet(), WrittenFiles.under(out).keySet());
        requireWhole(WrittenFiles.under(whole), out, "gone on");
    }

    /**
     * Some as soon as it has begun to write, some at any moment; some by a signal that it hears, some by one that it
     * does not.
     */
    private int killed(Process process, Path out, Random random) throws IOException, InterruptedException {
        if (random.nextInt(4) > 0) {
            long patience = System.nanoTime() + TimeUnit.SECONDS.toNanos(SLOWEST);
            while (process.isAlive() && System.nanoTime() < patience && isEmpty(out)) {
                Thread.sleep(1);
            }
            Thread.sleep(random.nextInt(250));
        } else {
            Thread.sleep(random.nextInt(3_000));
        }
        if (random.nextBoolean()) {
            process.destroyForcibly();
        } else {
            process.destroy();
        }
        return end(process);
    }

    private static boolean isEmpty(Path out) throws IOException {
        try (Stream<Path> entries = Files.list(out)) {
            return entries.findAny().isEmpty();
        }
    }

    private static void requireWhole(Map<String, byte[]> whole, Path out, String which) throws IOException {
        for (Map.Entry<String, byte[]> file : WrittenFiles.under(out).entrySet()) {
            String name = file.getKey().substring(file.getKey().lastIndexOf('/') + 1);
            boolean unfinished = name.equals("manifest.csv")
                    && new String(file.getValue(), StandardCharsets.UTF_8).contains(" unfinished\n");
            boolean working = name.startsWith(".") && (name.endsWith(".part") || name.endsWith(".lock"))
                    || name.startsWith("slice-");
            if (!unfinished && !working) {
                assertTrue(whole.containsKey(file.getKey()), file.getKey() + " of " + which);
                assertArrayEquals(whole.get(file.getKey()), file.getValue(), file.getKey() + " of " + which);
            }
            assertFalse(
                    name.startsWith(".ampersheet-print"),
                    "a working file with keys stayed: " + file.getKey() + " of " + which);
        }
    }
}
