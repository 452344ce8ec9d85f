package ampersheet.spark;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.issue.Issue;
import ampersheet.issue.MarkedFolder;
import ampersheet.issue.Output;
import ampersheet.marking.Marking;
import ampersheet.marking.OtherSheets;
import ampersheet.sheet.ClassIndex;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Roster;
import ampersheet.sheet.SheetMaker;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.apache.spark.SparkConf;
import org.apache.spark.api.java.JavaSparkContext;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The job in local mode, two tasks at a time. */
class ClassJobTest {
    private static final String PLAN = """
            title: Lanterns
            seed: spark
            repeats: allowed
            problems:
              - {template: current-limiting/indicator}
              - {pool: [current-limiting/indicator, voltage-dividers/plain-divider], support: faded}
            """;
    private static final int SEATS = 45;
    private static final int SLICES = 4;

    private static JavaSparkContext spark;

    @TempDir
    private Path folder;

    @BeforeAll
    static void start() {
        spark = new JavaSparkContext(new SparkConf()
                .setMaster("local[2]")
                .setAppName("test")
                .set("spark.ui.enabled", "false")
                .set("spark.driver.host", "127.0.0.1")
                .set("spark.driver.bindAddress", "127.0.0.1"));
    }

    @AfterAll
    static void stop() {
        spark.stop();
    }

    private ClassFiles files(String out) throws IOException {
        Path plan = Files.writeString(folder.resolve("plan.yaml"), PLAN);
        StringBuilder list = new StringBuilder("seat,name\n");
        for (int seat = 1; seat <= SEATS; seat++) {
            list.append(seat).append(",Learner ").append(seat).append('\n');
        }
        Path roster = Files.writeString(folder.resolve("class.csv"), list);
        return new ClassFiles(
                plan.toString(),
                roster.toString(),
                "src/test/resources/small-library",
                folder.resolve(out).toString());
    }

    private static Map<String, byte[]> under(Path folder) throws IOException {
        Map<String, byte[]> files = new TreeMap<>();
        try (Stream<Path> walk = Files.walk(folder)) {
            for (Path file : walk.filter(Files::isRegularFile).toList()) {
                files.put(folder.relativize(file).toString(), Files.readAllBytes(file));
            }
        }
        return files;
    }

    private static void assertSame(Map<String, byte[]> expected, Map<String, byte[]> actual) {
        assertEquals(expected.keySet(), actual.keySet());
        expected.forEach((name, bytes) -> assertArrayEquals(bytes, actual.get(name), name));
    }

    @Test
    void whatTheJobIssuesIsTheWholeByteForByte() throws IOException {
        ClassFiles whole = files("whole");
        Issue.issue(
                whole.set(), whole.learners(), whole.folder(), 2, new Issue.Besides(false, false), Output.Terms.NONE);
        ClassFiles job = files("job");
        assertEquals(SEATS, ClassJob.issue(spark, job, SLICES).sheets());
        assertSame(under(whole.folder()), under(job.folder()));
    }

    /** A file of each learner but two: all right, the first wrong, or none of it readable. */
    private Path handIns(ProblemSet set, Roster roster) throws IOException {
        Path sent = Files.createDirectories(folder.resolve("sent"));
        SheetMaker maker = new SheetMaker(set);
        maker.prepare(SEATS);
        for (Roster.Seat seat : roster.seats()) {
            if (seat.number() % 20 == 0) {
                continue;
            }
            ClassIndex.Line line = ClassIndex.line(seat, maker.sheet(seat.number()), List.of());
            StringBuilder table = new StringBuilder("sheet,question,answer\n");
            int told = 0;
            for (ClassIndex.ProblemAnswers problem : line.problems()) {
                for (Map.Entry<String, String> answer : problem.answers().entrySet()) {
                    boolean wrong = seat.number() % 3 == 0 && told++ == 0;
                    String typed = seat.number() == 7 ? "???" : wrong ? "1 kV" : answer.getValue();
                    table.append(line.id()).append(',').append(answer.getKey());
                    table.append(",\"").append(typed).append("\"\n");
                }
            }
            Files.writeString(sent.resolve("hand-in " + seat.number() + ".csv"), table);
        }
        return sent;
    }

    @Test
    void marksAnswersAndFeedbackAreThoseOfTheCommand() throws IOException {
        ClassFiles whole = files("whole-marks");
        ProblemSet set = whole.set();
        Path sent = handIns(set, whole.learners());
        Marking.Marked marked = MarkedFolder.write(
                        new Marking.Task(
                                sent,
                                new SheetMaker(set),
                                Optional.empty(),
                                whole.learners(),
                                Optional.empty(),
                                Optional.empty(),
                                Optional.empty(),
                                Optional.empty(),
                                OtherSheets.NONE,
                                false),
                        whole.folder(),
                        List.of(),
                        Output.Terms.NONE)
                .marked();
        ClassFiles job = files("job-marks");
        assertEquals(marked.learners(), ClassJob.mark(spark, job, SLICES, sent.toString()));
        for (String table : List.of("marks.csv", "answers.csv")) {
            assertEquals(
                    Files.readString(whole.folder().resolve(table)),
                    Files.readString(job.folder().resolve(table)),
                    table);
        }
        Map<String, byte[]> pages = under(whole.folder().resolve("feedback"));
        assertTrue(pages.size() >= SEATS - 3, pages.keySet().toString());
        assertSame(pages, under(job.folder().resolve("feedback")));
    }
}
