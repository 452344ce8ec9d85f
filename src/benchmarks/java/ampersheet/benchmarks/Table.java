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
    private static final Path JAR = Path.of("target", "ampersheet.jar");

    private final List<String> lines = new ArrayList<>();

    private Table() {}

    public static void main(String[] args) throws IOException, InterruptedException, RunnerException {
        Table table = new Table();
        table.starts();
        table.classes();
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
        Spent work = started("work", "current-limiting/one-indicator");
        line(
                "work, from the plain jar",
                "700 ms",
                "%d ms by the clock, %d ms of processor",
                work.clock,
                work.processor);
        Spent thirty = issued(30, 2, "--roster");
        line(
                "a class of 30 from cold, sheets and keys",
                "5 s",
                "%.1f s by the clock, %.1f s of processor",
                thirty.clock / 1e3,
                thirty.processor / 1e3);
    }

    private void classes() throws IOException, InterruptedException {
        Spent one = issued(LEARNERS, 1, "--roster");
        Spent two = issued(LEARNERS, 2, "--roster");
        line("two threads over one, a class of " + LEARNERS, "1.8", "%.2f", (double) one.clock / two.clock);
        Spent ten = issued(10 * LEARNERS, 2, "--roster");
        line("ten times the learners, processor time", "10.5", "%.2f", (double) ten.processor / two.processor);
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

    private Spent issued(int learners, int threads, String roster) throws IOException, InterruptedException {
        Path folder = Files.createTempDirectory("ampersheet-benchmark");
        try {
            StringBuilder seats = new StringBuilder("seat,name\n");
            for (int seat = 1; seat <= learners; seat++) {
                seats.append(seat).append(",Learner ").append(seat).append('\n');
            }
            Path list = Files.writeString(folder.resolve("class.csv"), seats);
            Path plan = Files.writeString(folder.resolve("plan.yaml"), ClassSheets.PLAN);
            return started(
                    "issue",
                    plan.toString(),
                    roster,
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

    private static Spent started(String... arguments) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(
                List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-jar", JAR.toString()));
        command.addAll(List.of(arguments));
        long start = System.nanoTime();
        Process process = new ProcessBuilder(command)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .redirectError(ProcessBuilder.Redirect.INHERIT)
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
