package ampersheet.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.SmallLibrary;
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
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is done with marks later, from the command line: a learner forgotten, weeks put together. */
class AfterMarkingTest {
    private static final String PLAN =
            "title: Lanterns\nseed: after\nproblems:\n  - {template: " + SmallLibrary.INDICATOR + "}\n";

    @TempDir
    private Path folder;

    private ByteArrayOutputStream out;

    @BeforeEach
    void handIn() throws IOException {
        ProblemSet set = ProblemSet.of(PlanReader.read("plan.yaml", PLAN), SmallLibrary.open());
        Files.writeString(folder.resolve("plan.yaml"), PLAN);
        Files.writeString(folder.resolve("class.csv"), "seat,name\n1,Ada\n2,Bo\n");
        Files.createDirectories(folder.resolve("came"));
        for (int seat = 1; seat <= 2; seat++) {
            Files.writeString(
                    folder.resolve("came/" + (seat == 1 ? "ada" : "bo") + ".csv"),
                    "sheet,question,answer\n" + set.id(seat) + ",q1a,1 kohm\n");
        }
    }

    private int run(String... arguments) {
        List<String> all = new ArrayList<>(List.of(arguments));
        all.addAll(List.of("--templates", SmallLibrary.FOLDER.toString()));
        out = new ByteArrayOutputStream();
        PrintStream stream = new PrintStream(out, true, StandardCharsets.UTF_8);
        return Main.run(
                all.toArray(new String[0]), new Streams(new BufferedReader(new StringReader("")), stream, stream));
    }

    private int mark(String to, String... more) {
        List<String> all = new ArrayList<>(List.of(
                "mark",
                folder.resolve("came").toString(),
                "--plan",
                folder.resolve("plan.yaml").toString(),
                "--roster",
                folder.resolve("class.csv").toString(),
                "--out",
                folder.resolve(to).toString()));
        all.addAll(List.of(more));
        return run(all.toArray(new String[0]));
    }

    private String said() {
        return out.toString(StandardCharsets.UTF_8);
    }

    private String everythingIn(Path within) throws IOException {
        StringBuilder all = new StringBuilder();
        try (var files = Files.walk(within)) {
            for (Path file : files.filter(Files::isRegularFile).sorted().toList()) {
                all.append(file).append('\n').append(Files.readString(file, StandardCharsets.ISO_8859_1));
            }
        }
        return all.toString();
    }

    @Test
    void erasingSaysWhatItWouldDoAndWithYesLeavesNothingOfTheLearner() throws IOException {
        assertEquals(0, mark("marks", "--pseudonyms", "--also", "bom"), this::said);
        assertTrue(everythingIn(folder.resolve("marks")).contains("Ada"));
        String before = everythingIn(folder);
        assertEquals(0, mark("marks", "--erase", "1"), this::said);
        assertTrue(said().contains("ada.csv: it holds nothing but") && said().contains("Nothing was changed"), said());
        assertEquals(before, everythingIn(folder));
        assertEquals(0, mark("marks", "--erase", "1", "--yes"), this::said);
        String left = everythingIn(folder.resolve("marks")) + everythingIn(folder.resolve("came"));
        assertFalse(left.contains("Ada") || left.contains("ada.csv") || left.contains("seat-001"), left);
        assertTrue(left.contains("Bo") && left.contains("seat-002.html"), left);
        assertEquals(2, mark("marks", "--erase", "7"));
        assertTrue(said().contains("seat 7 is not in"), said());
    }

    @Test
    void weeksArePutTogetherInTheOrderOfTheirNumbers() throws IOException {
        assertEquals(0, mark("course/week-10"), this::said);
        assertEquals(0, mark("course/week-2"), this::said);
        Path to = folder.resolve("together");
        assertEquals(0, run("course", folder.resolve("course").toString(), "--out", to.toString()), this::said);
        String table = Files.readString(to.resolve("course.csv"));
        assertTrue(table.startsWith("learner,week-2 %,week-10 %,"), table);
        assertTrue(Files.readString(to.resolve("course.html")).contains("Share of the marks of Ada"));
        assertEquals(2, run("course", folder.resolve("came").toString(), "--out", to.toString()));
        assertTrue(said().contains("no folder in it holds a marks.csv"), said());
    }

    private void copy(String marked, String to) throws IOException {
        Path folder = Files.createDirectories(this.folder.resolve(to));
        for (String table : List.of("marks.csv", "answers.csv")) {
            Files.copy(this.folder.resolve(marked).resolve(table), folder.resolve(table));
        }
    }

    @Test
    void everyWeekIsTakenWhereverItsMarksLieAndWhatIsLeftOutIsNamed() throws IOException {
        assertEquals(0, mark("made/week-1"), this::said);
        for (String to : List.of("week-2/marks", "week-3/marks", "week-3/marks-A7K3M", "week-4/marks-A7K3M", "marks")) {
            copy("made/week-1", "made/" + to);
        }
        copy("made/week-1", "made/week-2");
        Path to = folder.resolve("together");
        assertEquals(0, run("course", folder.resolve("made").toString(), "--out", to.toString()), this::said);
        String table = Files.readString(to.resolve("course.csv"));
        assertTrue(table.startsWith("learner,week-1 %,week-2 %,week-3 %,week-4 %,"), table);
        List<String> leftOut = said().lines()
                .filter(line -> line.startsWith("Left out: "))
                .map(line -> line.replaceAll("Left out: .*/made/([^ ]*)\\. .*", "$1"))
                .toList();
        assertEquals(List.of("marks", "week-2", "week-3/marks-A7K3M"), leftOut, this::said);
        Files.delete(folder.resolve("made/week-2/marks/marks.csv"));
        assertEquals(0, run("course", folder.resolve("made").toString(), "--out", to.toString()), this::said);
        assertTrue(Files.readString(to.resolve("course.csv")).contains("week-2 %"));
    }

    @Test
    void answersOfTheLargestClassOfACourseAreReadAgain() throws IOException {
        String line =
                "999,A7K3M-999-R,q10e,voltage-dividers/battery-sense,Rx,\"4,700 Ω\",4.7 kΩ,correct,,1,,ada.csv,50,\n";
        Path answers = Files.writeString(folder.resolve("answers.csv"), line.repeat(999 * 50));
        assertEquals(
                999 * 50, InputFile.marked(answers, "answers").text().lines().count());
    }
}
