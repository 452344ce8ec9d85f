package ampersheet.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.OnlyDeep;
import java.io.BufferedReader;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.ZipFile;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A course on the command line: its weeks are issued, marked and taken again. */
class CourseWeekTest {
    private static final String COURSE = """
        title: Lanterns
        problems-a-week: 3
        seats: 5
        weeks:
          - date: 2026-03-02
            new:
              - {template: current-limiting/first-current, example: yes}
              - {template: chain-addressing/serpentine-tile}
          - date: 2026-03-09
            new: [{template: voltage-dividers/two-in-series}]
        """;

    @TempDir
    private Path folder;

    private Path course;
    private Path roster;

    private record Run(int exitCode, String out, String err) {}

    @BeforeEach
    void write() throws IOException {
        course = Files.writeString(folder.resolve("course.yaml"), COURSE);
        roster = Files.writeString(folder.resolve("class.csv"), "seat,name\n1,Ada\n2,Bo\n3,Cleo\n4,Dai\n");
    }

    private static Run run(Object... arguments) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int exitCode = Main.run(
                Stream.of(arguments).map(Object::toString).toArray(String[]::new),
                new Streams(
                        new BufferedReader(new StringReader("")),
                        new PrintStream(out, true, StandardCharsets.UTF_8),
                        new PrintStream(err, true, StandardCharsets.UTF_8)));
        return new Run(exitCode, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    private static Run fine(Object... arguments) {
        Run run = run(arguments);
        assertEquals(0, run.exitCode(), run.err());
        return run;
    }

    private Path issue(String out, Object... more) {
        List<Object> all = new ArrayList<>(
                List.of("issue", course, "--roster", roster, "--out", folder.resolve(out), "--threads", 1));
        all.addAll(List.of(more));
        fine(all.toArray());
        return folder.resolve(out);
    }

    private static Path archive(Path issued) throws IOException {
        try (Stream<Path> keys = Files.list(issued.resolve("keys"))) {
            return keys.filter(file -> file.toString().endsWith(".zip"))
                    .findFirst()
                    .orElseThrow();
        }
    }

    private static List<CSVRecord> table(Path issued, String name) throws IOException {
        try (ZipFile zip = new ZipFile(archive(issued).toFile())) {
            String text = new String(zip.getInputStream(zip.getEntry(name)).readAllBytes(), StandardCharsets.UTF_8);
            try (CSVParser parser = CSVFormat.DEFAULT
                    .builder()
                    .setHeader()
                    .setSkipHeaderRecord(true)
                    .get()
                    .parse(new StringReader(text))) {
                return parser.getRecords();
            }
        }
    }

    /** The first has all right, the second nothing of the resistor, the third hands nothing in, the fourth has none. */
    private Path answers(Path issued, String name) throws IOException {
        Path answers = Files.createDirectories(folder.resolve(name));
        StringBuilder ada = new StringBuilder("sheet,question,answer\n");
        StringBuilder bo = new StringBuilder("sheet,question,answer\n");
        StringBuilder dai = new StringBuilder("sheet,question,answer\n");
        for (CSVRecord answer : table(issued, "answers.csv")) {
            String seat = answer.get("sheet").replaceAll(".*-0*([0-9]+)-.*", "$1");
            String question = answer.get("question");
            String sheet = Files.readString(issued.resolve("sheets/seat-00" + seat + ".md"));
            if (sheet.lines().anyMatch(line -> line.startsWith("Answers: ") && line.contains("**" + question + "**"))) {
                continue; // worked
            }
            String line = answer.get("sheet") + "," + answer.get("question") + ",";
            if (seat.equals("1")) {
                ada.append(line).append(answer.get("written")).append('\n');
            } else if (seat.equals("2")) {
                boolean current = answer.get("unit").contains("A");
                bo.append(line).append(current ? "77 A" : answer.get("written")).append('\n');
            } else if (seat.equals("4")) {
                dai.append(line).append("99999\n");
            }
        }
        List<StringBuilder> files = List.of(ada, bo, dai);
        for (int i = 0; i < files.size(); i++) {
            if (files.get(i).toString().lines().count() > 1) {
                Files.writeString(answers.resolve("answers-" + i + ".csv"), files.get(i));
            }
        }
        return answers;
    }

    private static TreeSet<String> skills(Path issued) throws IOException {
        TreeSet<String> templates = new TreeSet<>();
        table(issued, "sheets.csv").forEach(row -> templates.add(row.get("seat") + " " + row.get("template")));
        return templates;
    }

    @Test
    void eachWeekIsIssuedFromOneSeedAndMarkedByArchiveOrCourse() throws IOException {
        Run first = fine("issue", course, "--week", 1, "--roster", roster, "--out", folder.resolve("one"));
        assertTrue(first.err().contains("The course names no seed. One was drawn for it"), first.err());
        String seed = Files.readString(folder.resolve("course.yaml.seed"));
        Path one = folder.resolve("one");
        Path two = issue("two", "--week", 2);
        assertEquals(seed, Files.readString(folder.resolve("course.yaml.seed")));
        assertTrue(Files.readString(two.resolve("sheets/seat-001.html")).contains("Lanterns: week 2"));
        assertTrue(Files.readString(two.resolve("sheets/seat-001.html")).contains("2026-03-09"));
        assertNotEquals(archive(one).getFileName(), archive(two).getFileName());
        Path answers = answers(two, "answers");
        Path byArchive = folder.resolve("by-archive");
        Path byCourse = folder.resolve("by-course");
        fine("mark", answers, "--issued-with", archive(two), "--roster", roster, "--out", byArchive);
        fine("mark", answers, "--plan", course, "--week", 2, "--roster", roster, "--out", byCourse);
        String marks = Files.readString(byArchive.resolve("marks.csv"));
        assertEquals(marks, Files.readString(byCourse.resolve("marks.csv")));
        assertTrue(marks.contains(",in,100"), marks);
        Run both = run(
                "mark",
                answers,
                "--issued-with",
                archive(two),
                "--plan",
                course,
                "--week",
                1,
                "--roster",
                roster,
                "--out",
                byArchive);
        assertEquals(2, both.exitCode());
        assertTrue(both.err().contains("were issued from another plan"), both.err());
    }

    @Test
    void aRetakeIsForThoseWhoNeedItWithOtherNumbersAndOnlyWhatTheyMissed() throws IOException {
        Path one = issue("one", "--week", 1);
        Path marks = folder.resolve("marks");
        fine("mark", answers(one, "answers"), "--issued-with", archive(one), "--roster", roster, "--out", marks);
        Path again = issue("again", "--week", 1, "--retake", marks);
        assertEquals(
                new TreeSet<>(List.of(
                        "2 current-limiting/first-current",
                        "4 chain-addressing/serpentine-tile",
                        "4 current-limiting/first-current")),
                skills(again));
        TreeSet<String> seen = numbers(one);
        seen.addAll(numbers(issue("two", "--week", 2)));
        numbers(again).forEach(numbers -> assertFalse(seen.contains(numbers), numbers));
        Path answered = answers(again, "answers-again");
        fine("mark", answered, "--issued-with", archive(again), "--roster", roster, "--out", folder.resolve("m2"));
        Path once = folder.resolve("m2");
        Path more = issue("more", "--week", 1, "--retake", marks, "--retake", once);
        assertTrue(
                skills(again).containsAll(skills(more)) && !skills(more).isEmpty(),
                skills(more).toString());
        assertTrue(Files.readString(more.resolve("index.html")).contains("Again (2): Lanterns"));
        seen.addAll(numbers(again));
        numbers(more).forEach(numbers -> assertFalse(seen.contains(numbers), numbers));
        Run turned = run(
                "issue", course, "--week", 1, "--retake", once, "--retake", marks, "--roster", roster, "--out", one);
        assertEquals(1, turned.exitCode(), "the marks come in their order");
        Path parts = Files.writeString(
                folder.resolve("parts.csv"), "kind,value,tolerance,rating,count\nresistor,1 kohm,5 %,0.25 W,9\n");
        assertTold(
                "can be taken again once",
                "issue",
                course,
                "--week",
                1,
                "--retake",
                marks,
                "--retake",
                once,
                "--roster",
                roster,
                "--parts",
                parts,
                "--out",
                one);
        fine(
                "handout",
                course,
                "--week",
                1,
                "--retake",
                marks,
                "--roster",
                roster,
                "--only-count",
                "--out",
                folder.resolve("again.pdf"));
        Run other = run("issue", course, "--week", 2, "--retake", marks, "--roster", roster, "--out", one);
        assertEquals(1, other.exitCode());
        assertTrue(other.err().contains("Name the folder with the marks of this plan, and of this week"), other.err());
    }

    @Test
    void marksThatChangedSinceARetakeWasMadeAreReplacedByItsArchive() throws IOException {
        Path one = issue("one", "--week", 1);
        Path marks = folder.resolve("marks");
        Path answers = answers(one, "answers");
        fine("mark", answers, "--issued-with", archive(one), "--roster", roster, "--out", marks);
        Path again = issue("again", "--week", 1, "--retake", marks);
        Path once = folder.resolve("m2");
        Path answered = answers(again, "answers-again");
        fine("mark", answered, "--issued-with", archive(again), "--roster", roster, "--out", once);
        Path more = issue("more", "--week", 1, "--retake", marks, "--retake", once);
        Files.delete(answers.resolve("answers-2.csv"));
        fine("mark", answers, "--issued-with", archive(one), "--roster", roster, "--out", marks);
        Path out = folder.resolve("other");
        Run other = run(
                "issue", course, "--week", 1, "--retake", marks, "--retake", once, "--roster", roster, "--out", out);
        assertEquals(1, other.exitCode());
        assertTrue(other.err().contains("name its archive (keys/issued-….zip) in their place"), other.err());
        Path byArchive = issue("by-archive", "--week", 1, "--retake", archive(again), "--retake", once);
        assertEquals(archive(more).getFileName(), archive(byArchive).getFileName());
        assertEquals(numbers(more), numbers(byArchive));
        assertTold(
                "does not tell what was missed",
                "issue",
                course,
                "--week",
                1,
                "--retake",
                archive(again),
                "--roster",
                roster,
                "--out",
                out);
        assertTold(
                "not the one that stands at place 1",
                "issue",
                course,
                "--week",
                2,
                "--retake",
                archive(again),
                "--retake",
                once,
                "--roster",
                roster,
                "--out",
                out);
    }

    @Test
    void aWeekThatIsAddedKeepsClearOfARetakeThatLiesOutBesideIt() throws IOException {
        Path one = issue("one", "--week", 1);
        Path marks = folder.resolve("marks");
        fine("mark", answers(one, "answers"), "--issued-with", archive(one), "--roster", roster, "--out", marks);
        Path again = issue("again", "--week", 1, "--retake", marks);
        Files.writeString(course, COURSE + "  - date: 2026-03-16\n");
        Path three = folder.resolve("three");
        Files.writeString(Files.createDirectory(folder.resolve("broken")).resolve("issued-AAAAA.zip"), "no archive");
        Run made = fine("issue", course, "--week", 3, "--roster", roster, "--out", three, "--threads", 1);
        assertTrue(made.err().contains("Week 3 begins behind the numbers that lie out already"), made.err());
        assertTrue(made.err().contains("broken/issued-AAAAA.zip could not be read"), made.err());
        TreeSet<String> seen = numbers(again);
        seen.addAll(numbers(one));
        numbers(three).forEach(numbers -> assertFalse(seen.contains(numbers), numbers));
        Run same = fine("issue", course, "--week", 3, "--roster", roster, "--out", three, "--threads", 1);
        assertFalse(same.err().contains("begins behind"), "it lies out now, and stays");
        issue("again", "--week", 1, "--retake", marks);
        try (Stream<Path> keys = Files.list(again.resolve("keys"))) {
            assertEquals(
                    1, keys.filter(file -> file.toString().endsWith(".zip")).count(), "the retake is the one it was");
        }
        Files.createDirectories(folder.resolve("made"));
        Files.move(again, folder.resolve("made/again-1"));
        String told = fine("plan", course, "--no-paper", "--learners", 1).out();
        assertTrue(told.contains("Week 3 begins behind the numbers that lie out already"), told);
        assertFalse(told.contains("Week 2 begins behind"), told);
        Files.move(three, folder.resolve("made/week-3"));
        String written = fine("plan", course, "--week", 3, "--written").out();
        assertEquals(
                written.lines().filter(line -> line.contains("taken:")).toList(),
                new String(plan(folder.resolve("made/week-3")), StandardCharsets.UTF_8)
                        .lines()
                        .filter(line -> line.contains("taken:"))
                        .toList());
    }

    private static byte[] plan(Path issued) throws IOException {
        try (ZipFile zip = new ZipFile(archive(issued).toFile())) {
            return zip.getInputStream(zip.getEntry("plan.yaml")).readAllBytes();
        }
    }

    /** Of each problem, with its template. */
    private static TreeSet<String> numbers(Path issued) throws IOException {
        List<CSVRecord> problems = table(issued, "sheets.csv");
        TreeSet<String> all = new TreeSet<>();
        for (CSVRecord problem : problems) {
            StringBuilder text = new StringBuilder(problem.get("template"));
            for (CSVRecord number : table(issued, "numbers.csv")) {
                if (number.get("sheet").equals(problem.get("sheet"))
                        && number.get("problem").equals(problem.get("problem"))) {
                    text.append(' ').append(number.get("name")).append('=').append(number.get("value"));
                }
            }
            all.add(text.toString());
        }
        return all;
    }

    @OnlyDeep
    @Test
    void aPlanOfItsOwnCanBeTakenAgainToo() throws IOException {
        Files.writeString(course, "title: T\nproblems: [{template: current-limiting/first-current}]\n");
        Path one = issue("one");
        Path marks = folder.resolve("marks");
        fine("mark", answers(one, "answers"), "--issued-with", archive(one), "--roster", roster, "--out", marks);
        Path again = issue("again", "--retake", marks);
        assertEquals(
                new TreeSet<>(List.of("2 current-limiting/first-current", "4 current-limiting/first-current")),
                skills(again));
        TreeSet<String> seen = numbers(one);
        numbers(again).forEach(numbers -> assertFalse(seen.contains(numbers), numbers));
        Path once = folder.resolve("m2");
        fine(
                "mark",
                answers(again, "answers-again"),
                "--issued-with",
                archive(again),
                "--roster",
                roster,
                "--out",
                once);
        Path more = issue("more", "--retake", marks, "--retake", once);
        seen.addAll(numbers(again));
        numbers(more).forEach(numbers -> assertFalse(seen.contains(numbers), numbers));
    }

    @Test
    void whatACourseWillGiveIsToldBeforeAnythingIsMade() throws IOException {
        Path figure = folder.resolve("weeks.svg");
        String told = fine("plan", course, "--no-paper", "--learners", 2, "--figure", figure)
                .out();
        assertTrue(told.contains("Lanterns: 2 weeks, looked at for 2 learners, numbers kept for 5"), told);
        assertTrue(told.contains("Week 2, 2026-03-09"), told);
        assertTrue(
                told.contains("  enters:   series and parallel\n  returns:  Ohm's law at the bench; address in a tile"),
                told);
        assertTrue(told.contains("Ohm's law at the bench  1, 2            1           1"), told);
        assertTrue(told.contains("week 1: A sheet has 3 problems to work on; with fewer than 8"), told);
        assertTrue(told.contains("\"series and parallel\" has one template here"), told);
        assertTrue(told.contains("\"series and parallel\" never returns: it enters in the last week."), told);
        assertTrue(Files.readString(figure).startsWith("<svg"));
        fine("plan", course, "--no-paper", "--learners", 1, "--figure", figure);
        assertTrue(Files.notExists(folder.resolve("course.yaml.seed")), "nothing is handed out yet");
        String week = fine("plan", course, "--week", 2, "--written").out();
        assertTrue(week.contains("title: \"Lanterns: week 2\""), week);
        assertTrue(week.contains("  week: 2 of 2"), week);
        String one =
                fine("plan", course, "--week", 2, "--no-paper", "--learners", 2).out();
        assertTrue(
                one.startsWith(
                        "Lanterns: week 2\nLooked at the sheets of 2 learners; --learners N looks at as many as you have.\n"
                                + "  a sheet:  3 problems to work on, 0 worked examples"),
                one);
        Path plan = Files.writeString(
                folder.resolve("plan.yaml"), "title: T\nproblems: [{template: current-limiting/first-current}]\n");
        assertTold("only a course has a timetable", "plan", plan, "--figure", figure);
    }

    @Test
    void whatDoesNotFitIsToldAndWritesNothing() throws IOException {
        Path out = folder.resolve("out");
        assertTold("the course has no week 3, but 2", "issue", course, "--week", 3, "--roster", roster, "--out", out);
        assertTold("a course of 2 weeks, and nothing says which", "issue", course, "--roster", roster, "--out", out);
        assertTold("no week 0", "practice", course, "--week", 0, "--out", folder.resolve("p.html"));
        assertTold("no course is named", "key", "A7K3M-001-X", "--issued-with", roster, "--week", 1);
        Path plan = Files.writeString(
                folder.resolve("plan.yaml"), "title: T\nproblems: [{template: current-limiting/first-current}]\n");
        assertTold("it has no weeks", "handout", plan, "--week", 1, "--copies", 3, "--out", folder.resolve("h.pdf"));
        assertTrue(Files.notExists(out));
        assertTrue(Files.notExists(folder.resolve("h.pdf")));
        Files.writeString(course, COURSE.replace("two-in-series", "two-in-serie"));
        assertEquals(
                1,
                run("issue", course, "--week", 1, "--roster", roster, "--out", out)
                        .exitCode());
    }

    @OnlyDeep
    @Test
    void whoAsksForMoreToPractiseThanAWeekHasIsToldHowManyThereAreAndGetsThose() throws IOException {
        Path page = folder.resolve("p.html");
        Run many = run("practice", course, "--week", 1, "--variants", 200, "--out", page);
        assertEquals(1, many.exitCode());
        Matcher told = Pattern.compile("there are ([0-9]+) problems to practise \"([^\"]*)\" with in week 1")
                .matcher(many.err());
        assertTrue(told.find(), many.err());
        int most = Integer.parseInt(told.group(1));
        assertTrue(many.err().contains("Ask for " + most + " or fewer"), many.err());
        assertTrue(Files.notExists(page));
        fine("practice", course, "--week", 1, "--variants", most, "--out", page);
        Run oneMore = run("practice", course, "--week", 1, "--variants", most + 1, "--out", page);
        assertEquals(1, oneMore.exitCode(), "what is told is all there is");
    }

    private static void assertTold(String told, Object... arguments) {
        Run run = run(arguments);
        assertEquals(2, run.exitCode(), run.err());
        assertTrue(run.err().contains(told), run.err());
        assertTrue(run.err().contains("next: "), run.err());
    }

    @Test
    void aCourseWithAFaultGetsNoSeed() throws IOException {
        Files.writeString(course, COURSE.replace("two-in-series", "two-in-serie"));
        run("issue", course, "--week", 1, "--roster", roster, "--out", folder.resolve("out"));
        assertTrue(Files.notExists(folder.resolve("course.yaml.seed")));
    }
}
