package ampersheet.marking;

import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Roster;
import ampersheet.sheet.RosterReader;
import ampersheet.sheet.SheetMaker;
import ampersheet.source.Languages;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;

/** Measures how fast a folder is marked, against reading its files alone; a run to be reported and not a test. */
final class MarkingRate {
    private MarkingRate() {}

    /** @param arguments plan, roster, folder of answers */
    public static void main(String[] arguments) throws IOException {
        Path folder = Path.of(arguments[2]);
        ProblemSet set = ProblemSet.of(
                PlanReader.read(arguments[0], Files.readString(Path.of(arguments[0]), StandardCharsets.UTF_8)),
                new TemplateLibrary(List.of(TemplateFiles.builtIn())));
        Roster roster =
                RosterReader.read(arguments[1], Files.readString(Path.of(arguments[1]), StandardCharsets.UTF_8));
        AnswerFolder files = AnswerFolder.of(folder);
        long read = 0;
        for (int run = 0; run < 2; run++) {
            long start = cpu();
            for (String name : files.names()) {
                files.read(name, name, Privacy.none(Languages.ENGLISH));
            }
            read = cpu() - start;
        }
        long wall = System.nanoTime();
        long start = cpu();
        AtomicLong characters = new AtomicLong();
        Marking.Marked marked = Marking.mark(
                new Marking.Task(
                        folder,
                        new SheetMaker(set),
                        Optional.empty(),
                        roster,
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        OtherSheets.NONE,
                        false),
                (path, text) -> characters.addAndGet(text.length()));
        long all = cpu() - start;
        long seconds = System.nanoTime() - wall;
        Runtime memory = Runtime.getRuntime();
        System.gc();
        System.out.println(marked.answers() + " answers in " + marked.files() + " files: read alone " + read / 1_000_000
                + " ms of processor time, marked " + all / 1_000_000 + " ms (wall " + seconds / 1_000_000
                + " ms), ratio "
                + all / Math.max(1, read) + "; " + marked.files() * 1_000_000_000L / all + " files and "
                + marked.answers() * 1_000_000_000L / all + " answers per second and core; "
                + characters.get() / 1_000_000
                + " million characters written; heap in use after it "
                + (memory.totalMemory() - memory.freeMemory()) / 1_000_000
                + " MB of at most " + memory.maxMemory() / 1_000_000);
    }

    /** Of all threads: getting near a distant draw uses every processor. */
    private static long cpu() {
        return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
                .getProcessCpuTime();
    }
}
