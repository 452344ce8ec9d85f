package ampersheet.benchmarks;

import ampersheet.render.pdf.HandoutOnPaper;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/**
 * Everything that is measured, as one table of ratios: {@code mvn -Pbench package}. Nothing else should run meanwhile.
 * A start is a process of its own, from the plain jar, and counts its processor time.
 */
public final class Table {
    private static final int LEARNERS = 200;
    private static final String JAVA =
            Path.of(System.getProperty("java.home"), "bin", "java").toString();
    private static final List<String> FROM_JAR =
            List.of(JAVA, "-jar", Path.of("target", "ampersheet.jar").toString());

    /** As the archive with its own Java starts it for a class of up to a thousand: with the first compiler only. */
    private static final List<String> FROM_ARCHIVE = List.of(
            JAVA,
            "-XX:+UseSerialGC",
            "-XX:TieredStopAtLevel=1",
            "-jar",
            Path.of("target", "ampersheet.jar").toString());

    private static final String SHORT = """
            title: One short problem
            seed: benchmark
            repeats: allowed
            problems:
              - {template: voltage-dividers/two-in-parallel}
            """;

    private final List<String> lines = new ArrayList<>();

    private Table() {}

    public static void main(String[] args) throws IOException, InterruptedException, RunnerException {
        Table table = new Table();
        table.starts();
        table.classes();
        table.heaps();
        table.ratios();
        System.out.println();
        System.out.printf(Locale.ROOT, "%-70s %-14s %s%n", "what", "asked", "measured");
        table.lines.forEach(System.out::println);
    }

    private void line(String what, String asked, String measured, Object... values) {
        lines.add(
                String.format(Locale.ROOT, "%-70s %-14s ", what, asked) + String.format(Locale.ROOT, measured, values));
    }

    private void starts() throws IOException, InterruptedException {
        Spent work = started(
                FROM_JAR,
                ProcessBuilder.Redirect.INHERIT,
                "work",
                "current-limiting/one-indicator");
        line(
                "work, from the plain jar",
                "700 ms",
                "%d ms by the clock, %d ms of processor",
                work.clock,
                work.processor);
        thirty("a class of 30 from cold, sheets and keys, as the archive starts it", FROM_ARCHIVE);
        thirty("the same from the plain jar, both compilers", FROM_JAR);
    }

    private void thirty(String what, List<String> java) throws IOException, InterruptedException {
        Spent thirty = issued(30, 2, java);
        line(
                what,
                "5 s",
                "%.1f s by the clock, %.1f s of processor",
                thirty.clock / 1e3,
                thirty.processor / 1e3);
    }

    private void classes() throws IOException, InterruptedException {
        Spent one = issued(LEARNERS, 1, FROM_ARCHIVE);
        Spent two = issued(LEARNERS, 2, FROM_ARCHIVE);
        line("two threads over one, a class of " + LEARNERS, "1.8", "%.2f", (double) one.clock / two.clock);
        Spent ten = issued(10 * LEARNERS, 2, FROM_ARCHIVE);
        line("ten times the learners, processor time", "10.5", "%.2f", (double) ten.processor / two.processor);
    }

    /** Of a class of short sheets; of how many, the environment may say, since 100,000 take a quarter of an hour. */
    private void heaps() throws IOException, InterruptedException {
        int seats = Integer.parseInt(System.getenv().getOrDefault("AMPERSHEET_BENCHMARK_SEATS", "10000"));
        double few = heap(1_000);
        double many = heap(seats);
        line(
                "heap of " + seats + " seats over that of 1,000, in 128 MB",
                "1.1",
                "%.2f (%.1f MB, %.1f MB)",
                many / few,
                many,
                few);
    }

    /** In MB: the most in use after a full collection. */
    private static double heap(int learners) throws IOException, InterruptedException {
        List<String> java = new ArrayList<>(List.of(JAVA));
        java.addAll(SmallHeap.SETTINGS);
        java.addAll(List.of("-cp", System.getProperty("java.class.path"), SmallHeap.class.getName()));
        Path said = Files.createTempFile("ampersheet-heap", ".txt");
        try {
            issued(learners, 2, SHORT, java, ProcessBuilder.Redirect.to(said.toFile()));
            return Files.readAllLines(said).stream()
                    .filter(line -> line.startsWith(SmallHeap.SAID))
                    .mapToDouble(line -> Double.parseDouble(
                            line.substring(SmallHeap.SAID.length(), line.indexOf(" MB"))))
                    .max()
                    .orElseThrow();
        } finally {
            Files.delete(said);
        }
    }

    private void ratios() throws RunnerException {
        Map<String, Double> score = new TreeMap<>();
        Collection<RunResult> results = new Runner(new OptionsBuilder()
                        .include(ClassSheets.class.getName())
                        .include(CopperMesh.class.getName())
                        .include(HandoutOnPaper.class.getName())
                        .build())
                .run();
        for (RunResult result : results) {
            String side = result.getParams().getParam("side");
            score.put(
                    result.getPrimaryResult().getLabel() + (side == null ? "" : " " + side),
                    result.getPrimaryResult().getScore());
        }
        line(
                "sheet and key of ten problems over the two libraries alone",
                "at most 4",
                "%.2f (%.1f ms, %.1f ms)",
                score.get("sheetAndKey") / score.get("librariesAlone"),
                score.get("sheetAndKey"),
                score.get("librariesAlone"));
        line(
                "copper mesh of 1,000, 3,000, 10,000 nodes",
                "near-linear",
                "%.0f, %.0f, %.0f ms",
                score.get("solve 32"),
                score.get("solve 55"),
                score.get("solve 100"));
        line(
                "a handout: the layout library alone over the whole",
                "at least 0.8",
                "%.2f (%.0f ms, %.0f ms)",
                score.get("setAlone") / score.get("measuredPackedAndSet"),
                score.get("setAlone"),
                score.get("measuredPackedAndSet"));
    }

    /** In milliseconds. */
    private record Spent(long clock, long processor) {}

    private static Spent issued(int learners, int threads, List<String> java)
            throws IOException, InterruptedException {
        return issued(learners, threads, ClassSheets.PLAN, java, ProcessBuilder.Redirect.INHERIT);
    }

    /** @param java with all that stands before the words of the command */
    private static Spent issued(
            int learners, int threads, String text, List<String> java, ProcessBuilder.Redirect errors)
            throws IOException, InterruptedException {
        Path folder = Files.createTempDirectory("ampersheet-benchmark");
        try {
            StringBuilder seats = new StringBuilder("seat,name\n");
            for (int seat = 1; seat <= learners; seat++) {
                seats.append(seat).append(",Learner ").append(seat).append('\n');
            }
            Path list = Files.writeString(folder.resolve("class.csv"), seats);
            Path plan = Files.writeString(folder.resolve("plan.yaml"), text);
            return started(
                    java,
                    errors,
                    "issue",
                    plan.toString(),
                    "--roster",
                    list.toString(),
                    "--out",
                    folder.resolve("out").toString(),
                    "--threads",
                    Integer.toString(threads));
        } finally {
            try (Stream<Path> files = Files.walk(folder)) {
                files.sorted(Comparator.reverseOrder()).map(Path::toFile).forEach(File::delete);
            }
        }
    }

    private static Spent started(List<String> java, ProcessBuilder.Redirect errors, String... arguments)
            throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(java);
        command.addAll(List.of(arguments));
        long start = System.nanoTime();
        Process process = new ProcessBuilder(command)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .redirectError(errors)
                .start();
        Duration processor = Duration.ZERO;
        while (process.isAlive()) {
            processor = process.info().totalCpuDuration().orElse(processor);
            Thread.sleep(5);
        }
        if (process.waitFor() != 0) {
            throw new IllegalStateException(String.join(" ", command) + " failed");
        }
        return new Spent((System.nanoTime() - start) / 1_000_000, processor.toMillis());
    }
}
