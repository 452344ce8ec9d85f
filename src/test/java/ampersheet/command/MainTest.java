package ampersheet.command;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import ampersheet.OnlyDeep;
import ampersheet.sheet.Composer;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Sheet;
import ampersheet.sheet.SheetMaker;
import ampersheet.sheet.SmallLibrary;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
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
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class MainTest {
    private static final String PLAN = """
      title: Lanterns
      seed: Lanterns
      problems:
        - {template: current-limiting/indicator, example: yes}
        - {template: voltage-dividers/plain-divider, support: faded}
      """;

    @TempDir
    private Path folder;

    private Path plan;
    private Path roster;
    private Sheet sheet;

    private record Run(int exitCode, String out, String err) {
        JsonNode json() {
            try {
                return new ObjectMapper().readTree(out);
            } catch (IOException notJson) {
                throw new AssertionError(out, notJson);
            }
        }
    }

    @BeforeEach
    void write() throws IOException {
        plan = Files.writeString(folder.resolve("plan.yaml"), PLAN, StandardCharsets.UTF_8);
        roster = Files.writeString(folder.resolve("class.csv"), "seat,name\n1,Ada\n2,Bo\n", StandardCharsets.UTF_8);
        sheet = new SheetMaker(ProblemSet.of(PlanReader.read("plan.yaml", PLAN), SmallLibrary.open())).sheet(2);
    }

    private static Run type(String typed, String... arguments) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int exitCode = Main.run(
                arguments,
                new Streams(
                        new BufferedReader(new StringReader(typed)),
                        new PrintStream(out, true, StandardCharsets.UTF_8),
                        new PrintStream(err, true, StandardCharsets.UTF_8)));
        return new Run(exitCode, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    private static Run run(String... arguments) {
        return type("", arguments);
    }

    private static Run small(String... arguments) {
        List<String> all = new ArrayList<>(List.of(arguments));
        all.add("--templates");
        all.add(SmallLibrary.FOLDER.toString());
        return run(all.toArray(new String[0]));
    }

    private Run check(String... answers) {
        List<String> all = new ArrayList<>(List.of("check", sheet.id().toString(), "--plan", plan.toString()));
        all.addAll(List.of(answers));
        return small(all.toArray(new String[0]));
    }

    private String right(String question) {
        return sheet.problemWith(question)
                .map(problem -> Composer.answer(
                        problem,
                        problem.key().answers().stream()
                                .filter(key -> key.question().equals(question))
                                .findFirst()
                                .orElseThrow()))
                .orElseThrow();
    }

    // Help

    @Test
    void everyCommandHasHelp() {
        for (String command : List.of(
                "desk", "start", "templates", "work", "prove", "plan", "issue", "key", "check", "mark", "export")) {
            Run run = run(command, "--help");
            assertEquals(0, run.exitCode(), run.err());
            assertTrue(run.out().startsWith("Usage: ampersheet " + command), run.out());
        }
        assertEquals(0, run("--help").exitCode());
        assertEquals("ampersheet 0.1.0\n", run("--version").out());
    }

    @Test
    void helpHasOnlyLineFeeds() {
        assertFalse(run("--help").out().contains("\r"));
    }

    // Wrong usage

    @Test
    void wrongUsageIsTwo() {
        assertEquals(2, run("isue").exitCode());
        assertEquals(2, run("issue").exitCode());
        assertEquals(2, run("work").exitCode());
        assertEquals(2, run("templates", "--jason").exitCode());
        assertEquals(2, run("prove", "--draws", "none").exitCode());
        assertEquals(2, run("prove", "--draws", "0").exitCode());
        assertEquals(
                2,
                small("issue", plan.toString(), "--roster", roster.toString(), "--out", "x", "--threads", "-1")
                        .exitCode());
    }

    @Test
    void aMistypedCommandIsCorrected() {
        assertTrue(run("isue").err().contains("issue"), run("isue").err());
    }

    @Test
    void anUnknownTemplateIsCorrected() {
        Run run = small("work", "current-limiting/indicater");
        assertEquals(2, run.exitCode());
        assertTrue(run.err().contains("next: Write current-limiting/indicator."), run.err());
        assertTrue(small("work", "plain-divider").err().contains("Write voltage-dividers/plain-divider."));
    }

    @Test
    void aMissingFileIsWrongUsage() {
        Run run = small("issue", folder.resolve("none.yaml").toString(), "--roster", roster.toString(), "--out", "x");
        assertEquals(2, run.exitCode());
        assertTrue(run.err().contains("none.yaml: error: there is no such file"), run.err());
        assertEquals(
                2,
                small("issue", folder.toString(), "--roster", roster.toString(), "--out", "x")
                        .exitCode());
        assertEquals(
                2,
                run("templates", "--templates", folder.resolve("none").toString())
                        .exitCode());
    }

    @Test
    void aBrokenFileIsAProblemFound() throws IOException {
        Files.writeString(plan, "title: T\nproblems: [{template: a/b}]\n", StandardCharsets.UTF_8);
        Run run = small(
                "issue",
                plan.toString(),
                "--roster",
                roster.toString(),
                "--out",
                folder.resolve("out").toString());
        assertEquals(1, run.exitCode());
        assertTrue(run.err().contains("plan.yaml:2:23: error: there is no template \"a/b\""), run.err());
        assertFalse(Files.exists(folder.resolve("out")), "nothing is written");
    }

    @Test
    void aClassListThatIsNotUtf8IsReadAndTold() throws IOException {
        Files.write(roster, "seat,name\n1,Zo\u00EB\n".getBytes(StandardCharsets.ISO_8859_1));
        Run run = small(
                "issue",
                plan.toString(),
                "--roster",
                roster.toString(),
                "--out",
                folder.resolve("out").toString());
        assertEquals(0, run.exitCode());
        assertTrue(
                run.err().contains("class.csv: warning: this file is not in UTF-8 and is read as Latin-1"), run.err());
        assertTrue(Files.readString(folder.resolve("out/sheets/seat-001.md")).contains("Zoë"));
    }

    @Test
    void anUnexpectedFailureIsOneLineUnlessTraced() {
        Streams failing = new Streams(
                new BufferedReader(new StringReader("")) {
                    @Override
                    public int read() throws IOException {
                        throw new IOException("the terminal is gone");
                    }
                },
                new PrintStream(new ByteArrayOutputStream(), true, StandardCharsets.UTF_8),
                System.err);
        for (boolean traced : List.of(false, true)) {
            ByteArrayOutputStream err = new ByteArrayOutputStream();
            List<String> arguments = new ArrayList<>(List.of(
                    "check",
                    sheet.id().toString(),
                    "--plan",
                    plan.toString(),
                    "--templates",
                    SmallLibrary.FOLDER.toString()));
            if (traced) {
                arguments.add("--trace");
            }
            int exitCode = Main.run(
                    arguments.toArray(new String[0]),
                    new Streams(failing.in(), failing.out(), new PrintStream(err, true, StandardCharsets.UTF_8)));
            assertEquals(1, exitCode);
            String told = err.toString(StandardCharsets.UTF_8);
            assertTrue(told.contains("the terminal is gone"), told);
            assertEquals(traced, told.contains("\tat "), told);
        }
    }

    @Test
    void exhaustedMemoryIsASentenceAndNoTrace() {
        for (Error exhausted : List.of(new OutOfMemoryError("Java heap space"), new StackOverflowError())) {
            ByteArrayOutputStream err = new ByteArrayOutputStream();
            int exitCode = Main.run(
                    new String[] {
                        "check",
                        sheet.id().toString(),
                        "--plan",
                        plan.toString(),
                        "--templates",
                        SmallLibrary.FOLDER.toString()
                    },
                    new Streams(
                            new BufferedReader(new StringReader("")) {
                                @Override
                                public int read() {
                                    throw exhausted;
                                }
                            },
                            new PrintStream(new ByteArrayOutputStream(), true, StandardCharsets.UTF_8),
                            new PrintStream(err, true, StandardCharsets.UTF_8)));
            String told = err.toString(StandardCharsets.UTF_8);
            assertEquals(1, exitCode);
            assertTrue(told.startsWith("check " + sheet.id()) && told.contains("error: this is "), told);
            assertFalse(told.contains("\tat "), told);
        }
    }

    @Test
    void aLineThatNeverEndsIsNotRead() {
        Run run = type(
                "9".repeat(100_000),
                "check",
                sheet.id().toString(),
                "--plan",
                plan.toString(),
                "--templates",
                SmallLibrary.FOLDER.toString());
        assertEquals(1, run.exitCode());
        assertTrue(run.err().contains("this line has more than 10000 characters"), run.err());
    }

    @Test
    void whatOthersWroteDoesNotActOnTheTerminal() throws IOException {
        Run run = check("q2a=\u001B[31m5\nq2b  forged", "q2b=\u202E9");
        assertTrue(run.out().contains("q2a  [U+001B][31m5[U+000A]q2b  forged"), run.out());
        assertTrue(run.out().contains("[U+202E]9"), run.out());
        assertFalse((run.out() + run.err()).contains("\u001B"));
        run = check("q2a=\u202E1", "--json");
        assertTrue(run.out().contains("\\u202e1"), run.out());
        assertEquals("\u202E1", run.json().get("verdicts").get(0).get("typed").asText());
        Files.writeString(plan, "title: \"a\\e[31m\"\nproblems: []\n", StandardCharsets.UTF_8);
        run = check();
        assertTrue(run.err().contains("plan.yaml:1:10: error: the character [U+001B] is not seen"), run.err());
        run = small(
                "issue",
                folder.resolve("\u001B[2J\nx: error: forged.yaml").toString(),
                "--roster",
                roster.toString(),
                "--out",
                "x");
        assertTrue(
                run.err().contains("[U+001B][2J[U+000A]x: error: forged.yaml: error: there is no such file"),
                run.err());
        assertFalse(run.err().contains("\u001B"), run.err());
    }

    @Test
    void everyInputIsAnOrdinaryFileWithinBounds() throws IOException {
        Path huge = folder.resolve("huge.csv");
        try (java.io.RandomAccessFile file = new java.io.RandomAccessFile(huge.toFile(), "rw")) {
            file.setLength(1L << 36);
        }
        String out = folder.resolve("out").toString();
        Run run = small("issue", plan.toString(), "--roster", huge.toString(), "--out", out);
        assertEquals(1, run.exitCode());
        assertTrue(run.err().contains("huge.csv: error: this file is larger than 64 MB"), run.err());
        assumeTrue(Files.exists(Path.of("/dev/zero")), "this system has no such device");
        for (List<String> inputs :
                List.of(List.of("/dev/zero", roster.toString()), List.of(plan.toString(), "/dev/zero"))) {
            run = small("issue", inputs.get(0), "--roster", inputs.get(1), "--out", out);
            assertEquals(2, run.exitCode());
            assertTrue(run.err().startsWith("/dev/zero: error: this is no ordinary file"), run.err());
        }
        assertFalse(Files.exists(folder.resolve("out")));
    }

    // Templates and work

    @Test
    void templatesTellsWhatIsGivenAndAsked() {
        Run run = small("templates");
        assertEquals(0, run.exitCode());
        assertTrue(
                run.out()
                        .contains("voltage-dividers/plain-divider\n    A divider without a load (voltage dividers, "
                                + "level 2)\n"
                                + "    skill: plain divider\n"),
                run.out());
        JsonNode json = small("templates", "--json").json();
        JsonNode divider = null;
        for (JsonNode template : json.get("templates")) {
            divider = template.get("name").asText().equals(SmallLibrary.DIVIDER) ? template : divider;
        }
        assertEquals("voltage-dividers", divider.get("family").asText());
        assertEquals(2, divider.get("level").asInt());
        assertEquals(3, divider.get("givens").size());
        assertEquals("V", divider.get("givens").get(0).get("unit").asText());
        assertEquals("within", divider.get("asks").get(0).get("kind").asText());
        assertEquals("choice", divider.get("asks").get(1).get("kind").asText());
        assertFalse(divider.has("variants"));
    }

    /**
     * Made when the program is built, so that whoever looks for a template does not wait until all have been checked.
     */
    @Test
    void theListKeptOfTheBuiltInTemplatesIsTheOneThatIsMadeAnew() {
        for (boolean json : new boolean[] {false, true}) {
            String[] command = json ? new String[] {"templates", "--json"} : new String[] {"templates"};
            assertEquals(
                    TemplatesCommand.list(json), run(command).out(), "stale list? it is made by mvn process-classes");
            BuiltInList.kept(json).ifPresent(kept -> assertEquals(TemplatesCommand.list(json), kept));
        }
    }

    @Test
    @OnlyDeep
    void templatesCountsVariantsOnRequest() {
        Run run = small("templates", "--count", "--json");
        assertEquals(0, run.exitCode(), run.err());
        for (JsonNode template : run.json().get("templates")) {
            assertTrue(
                    template.get("variants").asLong() > 1_000,
                    template.get("name").asText());
        }
    }

    @Test
    void workTakesGivensOutsideTheRangeOfDraws() {
        Run run = small("work", SmallLibrary.INDICATOR, "Vs=48V", "Vf=1.6V", "If=20mA", "--json");
        assertEquals(0, run.exitCode(), run.err());
        JsonNode json = run.json();
        assertEquals(SmallLibrary.INDICATOR, json.get("template").asText());
        assertEquals(48, json.get("givens").get(0).get("value_si").asDouble());
        assertEquals("48\u00A0V", json.get("givens").get(0).get("text").asText());
        JsonNode resistance = json.get("steps").get(1);
        assertEquals("R", resistance.get("id").asText());
        assertEquals(2320, resistance.get("value_si").asDouble(), 1e-9, "(48 V − 1.6 V) / 20 mA");
        assertEquals(24, json.get("fingerprint").get("points").asInt(), "2 × 4 + 2 × 2 + 2 × 2 + 5 + 1 + 2");
        assertEquals("Ω", resistance.get("unit").asText());
        JsonNode answer = json.get("answers").get(0);
        assertTrue(answer.get("agrees").asBoolean());
        assertEquals(2320, answer.get("second_si").asDouble(), 1e-3);
        assertTrue(answer.get("gap").asDouble() <= answer.get("allowed").asDouble());
        assertEquals(
                "no-forward-voltage", answer.get("mistakes").get(0).get("id").asText());
    }

    @Test
    void workPrintsTheStepsAsText() {
        Run run = small("work", SmallLibrary.INDICATOR, "Vs=24V", "Vf=1.6V", "If=20mA", "--figure");
        assertEquals(0, run.exitCode());
        assertTrue(run.out().contains("R = V_r / I_f = 22.4\u00A0V / 20\u00A0mA = 1.12\u00A0kΩ"), run.out());
        assertTrue(run.out().contains("R_n = 1.2\u00A0kΩ"), run.out());
        assertTrue(run.out().contains("second route"), run.out());
        assertTrue(run.out().contains("circuit of"), run.out());
        assertTrue(run.out().contains("CAUTION"), run.out());
    }

    @Test
    void workRefusesWhatIsNoGiven() {
        assertEquals(2, small("work", SmallLibrary.INDICATOR, "Vx=3V").exitCode());
        assertEquals(2, small("work", SmallLibrary.INDICATOR, "Vs=3A").exitCode());
        assertEquals(2, small("work", SmallLibrary.INDICATOR, "Vs").exitCode());
        assertEquals(2, small("work", SmallLibrary.INDICATOR, "Vs=1V", "Vs=2V").exitCode());
    }

    // Prove

    @Test
    void proveReportsAgreement() {
        Run run = small("prove", SmallLibrary.DIVIDER, "--draws", "50");
        assertEquals(0, run.exitCode(), run.out());
        assertTrue(run.out().contains("50 problems of 1 template solved by both routes; no disagreement."), run.out());
        JsonNode json =
                small("prove", SmallLibrary.DIVIDER, "--draws", "50", "--json").json();
        assertTrue(json.get("passed").asBoolean());
        assertEquals(50, json.get("templates").get(0).get("accepted").asInt());
        assertEquals(0, json.get("templates").get(0).get("disagreements").size());
    }

    @Test
    void proveFindsASecondRouteThatDisagrees() throws IOException {
        Path wrong = folder.resolve("own/current-limiting/wrong");
        Files.createDirectories(wrong);
        String yaml = Files.readString(
                SmallLibrary.FOLDER.resolve("current-limiting/indicator/problem.yaml"), StandardCharsets.UTF_8);
        Files.writeString(
                wrong.resolve("problem.yaml"),
                yaml.replace("is: Vr / If", "is: Vs / If - 1 ohm"),
                StandardCharsets.UTF_8);
        Files.writeString(wrong.resolve("statement.md.ftl"), "A light at **${Vs}**.", StandardCharsets.UTF_8);
        Run run = run(
                "prove",
                "current-limiting/wrong",
                "--draws",
                "20",
                "--templates",
                folder.resolve("own").toString());
        assertEquals(1, run.exitCode(), run.out());
        assertTrue(run.out().contains("not proven") || run.out().contains("NOT PROVEN"), run.out());
    }

    // Issue and key

    @Test
    void issueSaysWhatToOpenFirst() {
        Path out = folder.resolve("out");
        Run run = small("issue", plan.toString(), "--roster", roster.toString(), "--out", out.toString());
        assertEquals(0, run.exitCode(), run.err());
        assertTrue(run.out().contains("2 sheets of 3 problems"), run.out());
        assertTrue(run.out().contains("Open first:  " + out.resolve("index.html")), run.out());
        assertTrue(Files.exists(out.resolve("sheets/seat-002.html")));
        JsonNode json = small(
                        "issue", plan.toString(), "--roster", roster.toString(), "--out", out.toString(), "--json")
                .json();
        assertEquals(2, json.get("sheets").asInt());
        assertEquals(0, json.get("files_written").asInt(), "a second time nothing is new");
        assertEquals(2, json.get("templates").size());
    }

    @Test
    void keyMakesTheSameFilesAgain() throws IOException {
        Path out = folder.resolve("out");
        Path again = folder.resolve("again");
        small("issue", plan.toString(), "--roster", roster.toString(), "--out", out.toString());
        Run run = small(
                "key",
                sheet.id().toString(),
                "--plan",
                plan.toString(),
                "--roster",
                roster.toString(),
                "--out",
                again.toString());
        assertEquals(0, run.exitCode(), run.err());
        for (String file :
                List.of("sheets/seat-002.html", "sheets/seat-002.md", "keys/seat-002.html", "keys/seat-002.md")) {
            assertEquals(Files.readString(out.resolve(file)), Files.readString(again.resolve(file)), file);
        }
    }

    @Test
    void keyPrintsMarkdownOrJson() {
        Run run = small("key", sheet.id().toString().toLowerCase(Locale.ROOT), "--plan", plan.toString());
        assertEquals(0, run.exitCode(), run.err());
        assertTrue(run.out().startsWith("# Key: Lanterns"), run.out());
        JsonNode json = small("key", sheet.id().toString(), "--plan", plan.toString(), "--json")
                .json();
        assertEquals(sheet.id().toString(), json.get("sheet_id").asText());
        assertEquals(3, json.get("problems").size());
        assertEquals(
                "q2b",
                json.get("problems")
                        .get(1)
                        .get("answers")
                        .get(1)
                        .get("question")
                        .asText());
        assertEquals(
                right("q2b"),
                json.get("problems").get(1).get("answers").get(1).get("answer").asText());
    }

    @Test
    void aMistypedIdIsRefusedWithAHint() {
        String id = sheet.id().toString();
        Run run = small("key", (id.charAt(0) == 'Z' ? "Y" : "Z") + id.substring(1), "--plan", plan.toString());
        assertEquals(2, run.exitCode());
        assertTrue(run.err().contains("one slip away") && run.err().contains(id), run.err());
    }

    // Check

    @Test
    void rightAnswersAreRightAndExitWithZero() {
        Run run = check("q2a=" + right("q2a"), "q2b=" + right("q2b"), "q3b=" + right("q3b"), "q3s1=" + right("q3s1"));
        assertEquals(0, run.exitCode(), run.out());
        JsonNode json = check("q2a=" + right("q2a"), "--json").json();
        assertEquals("correct", json.get("verdicts").get(0).get("rung").asText());
        assertTrue(json.get("verdicts").get(0).get("right").asBoolean());
        assertFalse(json.get("verdicts").get(0).has("expected"));
    }

    @Test
    void aWrongAnswerExitsWithOneAndNeverShowsTheExpectedValue() {
        Run run = check("q2a=1 Mohm");
        assertEquals(1, run.exitCode());
        assertFalse(run.out().contains(right("q2a")), run.out());
        assertTrue(check("q2a=1 Mohm", "--show").out().contains("expected: " + right("q2a")));
        assertEquals(
                right("q2a"),
                check("q2a=1 Mohm", "--show", "--json")
                        .json()
                        .get("verdicts")
                        .get(0)
                        .get("expected")
                        .asText());
    }

    @Test
    void anUnknownQuestionIsWrongUsage() {
        Run run = check("q9=4k7");
        assertEquals(2, run.exitCode());
        assertTrue(run.err().contains("one of q2a, q2b, q2c, q3s1, q3b"), run.err());
    }

    @Test
    void withoutAnswersItAsksForThem() {
        String typed = "1 Mohm\n" + right("q2a") + "\n\n" + right("q2c") + "\n";
        Run run = type(
                typed,
                "check",
                sheet.id().toString(),
                "--plan",
                plan.toString(),
                "--templates",
                SmallLibrary.FOLDER.toString());
        assertEquals(0, run.exitCode(), run.out());
        assertTrue(run.out().contains("q2a  What resistance gives exactly the wanted current?"), run.out());
        assertTrue(run.out().contains("2 of 5 right."), run.out());
        assertFalse(run.out().contains("**"), run.out());
    }

    @Test
    void handoutMakesOnePdf() throws IOException {
        Path out = folder.resolve("tonight.pdf");
        Run made = small(
                "handout", plan.toString(), "--copies", "2", "--paper", "letter", "--out", out.toString(), "--json");
        assertEquals(0, made.exitCode(), made.err());
        assertEquals(2, made.json().get("sheets").asInt());
        assertTrue(Files.size(out) > 10_000);
        assertEquals("", made.err());
    }

    @Test
    void aBookletIsRefusedInLargePrintAsCardsAndOnPaperThatIsNoLeaf() {
        for (String[] other :
                new String[][] {{"--profile", "large"}, {"--cards", "--no-host"}, {"--paper", "a4_folded"}}) {
            Run run = small(
                    "handout", plan.toString(), "--copies", "1", "--booklet", other[0], other[1], "--out", "x.pdf");
            assertEquals(2, run.exitCode(), other[0]);
            assertTrue(run.err().contains(other[0].equals("--paper") ? "--paper" : "--booklet"), run.err());
        }
    }

    @Test
    void handoutSaysWhoseSheetsItNeeds() {
        assertEquals(2, small("handout", plan.toString(), "--out", "x.pdf").exitCode());
        assertEquals(
                2,
                small("handout", plan.toString(), "--copies", "2", "--roster", roster.toString(), "--out", "x.pdf")
                        .exitCode());
        assertEquals(
                2,
                small("handout", plan.toString(), "--copies", "0", "--out", "x.pdf")
                        .exitCode());
        assertEquals(
                2,
                small("handout", plan.toString(), "--copies", "1", "--paper", "napkin", "--out", "x.pdf")
                        .exitCode());
    }

    @Test
    void practiceWritesOnePageAndSaysWhatItHolds() {
        assumeTrue(
                Main.class.getResource("/ampersheet/browser/checker.js") != null,
                "the checker is not compiled for the browser");
        Path page = folder.resolve("practice.html");
        Run run = small("practice", plan.toString(), "--variants", "3", "--out", page.toString());
        assertEquals(0, run.exitCode(), run.err());
        assertTrue(run.out().startsWith("2 skills of 3 problems, in one page of "), run.out());
        assertTrue(Files.exists(page));
        assertEquals(
                2,
                small("practice", plan.toString(), "--variants", "0", "--out", page.toString())
                        .exitCode());
    }

    // Marking and exchange

    private Run marked(String answers, String... more) throws IOException {
        Path came = Files.createDirectories(folder.resolve("came"));
        Files.writeString(came.resolve("bo.csv"), answers, StandardCharsets.UTF_8);
        List<String> arguments = new ArrayList<>(List.of(
                "mark",
                came.toString(),
                "--plan",
                plan.toString(),
                "--roster",
                roster.toString(),
                "--out",
                folder.resolve("marks").toString()));
        arguments.addAll(List.of(more));
        return small(arguments.toArray(new String[0]));
    }

    @Test
    void returnedAnswersBecomeMarksFeedbackAndAReport() throws IOException {
        Run run = marked("sheet,question,answer\n" + sheet.id() + ",q2a,1 kΩ\n");
        assertEquals(0, run.exitCode(), run.err());
        assertTrue(run.out().contains("1 answer in 1 file from 1 learner; nothing from 1 seat"), run.out());
        for (String file : List.of(
                "report.html", "marks.csv", "answers.csv", "files.csv", "set-aside.csv", "feedback/seat-002.html")) {
            assertTrue(Files.isRegularFile(folder.resolve("marks").resolve(file)), file);
        }
    }

    @Test
    void aDamagedAnswerIsToldWithFileAndLineAndMakesTheExitCodeOne() throws IOException {
        Run run = marked("sheet,question,answer\n" + sheet.id() + ",q77,1 kΩ\n", "--json");
        assertEquals(1, run.exitCode());
        assertTrue(run.err().startsWith("bo.csv:2: error: the sheet has no such question"), run.err());
        assertEquals("bo.csv:2", run.json().get("notes").get(0).get("place").asText());
        assertEquals(1, run.json().get("set_aside").asInt());
    }

    @Test
    void aFileFullOfFaultsDoesNotFloodTheTerminal() throws IOException {
        Run run = marked("sheet,question,answer\n" + (sheet.id() + ",q77,1 kΩ\n").repeat(100));
        assertEquals(1, run.exitCode());
        assertEquals(
                40, run.err().lines().filter(line -> line.contains(": error: ")).count(), run.err());
        assertTrue(run.err().contains("and 60 more notes; --json tells all."), run.err());
        assertEquals(
                101, Files.readAllLines(folder.resolve("marks/set-aside.csv")).size());
    }

    @Test
    void resultsMayNotLieWithinTheAnswers() throws IOException {
        Path came = Files.createDirectories(folder.resolve("came"));
        Files.createSymbolicLink(folder.resolve("link"), came);
        for (String out : List.of("came", "came/marks", "came/../came", "link", "link/deeper/marks")) {
            Run run = small(
                    "mark",
                    came.toString(),
                    "--plan",
                    plan.toString(),
                    "--roster",
                    roster.toString(),
                    "--out",
                    folder.resolve(out).toString());
            assertEquals(2, run.exitCode(), out + run.err());
            assertTrue(run.err().contains("be read as answers the next time"), run.err());
            assertEquals(0, came.toFile().list().length, out);
        }
    }

    @Test
    void aPageOfAnEarlierRunGoesAndSomebodysOwnStays() throws IOException {
        marked("sheet,question,answer\n" + sheet.id() + ",q2a,1 kΩ\n");
        Files.delete(folder.resolve("came/bo.csv"));
        Path own = Files.writeString(folder.resolve("marks/feedback/seat-009.html"), "my own", StandardCharsets.UTF_8);
        Run run = small(
                "mark",
                folder.resolve("came").toString(),
                "--plan",
                plan.toString(),
                "--roster",
                roster.toString(),
                "--out",
                folder.resolve("marks").toString());
        assertEquals(0, run.exitCode(), run.err());
        assertFalse(Files.exists(folder.resolve("marks/feedback/seat-002.html")));
        assertTrue(run.out().contains("1 feedback page of an earlier run removed"), run.out());
        assertTrue(Files.exists(own));
        assertTrue(run.err().contains("feedback/seat-009.html: warning: nothing came in from this seat"), run.err());
    }

    @Test
    void marksGoInOtherFormsAndByDecisionsEachTimeAnew() throws IOException {
        Path decisions = Files.writeString(
                folder.resolve("decisions.csv"),
                "seat,question,decision,value,reason\n2,q2a,mark,1,shown at the board\n",
                StandardCharsets.UTF_8);
        Map<String, byte[]> before = new TreeMap<>();
        for (int i = 0; i < 2; i++) {
            Run run = marked(
                    "sheet,question,answer\n" + sheet.id() + ",q2a,well\n",
                    "--also",
                    "xlsx,semicolons,bom",
                    "--decisions",
                    decisions.toString());
            assertEquals(0, run.exitCode(), run.err());
            for (String name : List.of("marks.xlsx", "marks-semicolons.csv", "marks-bom.csv", "decide.csv")) {
                byte[] bytes = Files.readAllBytes(folder.resolve("marks").resolve(name));
                assertArrayEquals(before.getOrDefault(name, bytes), bytes, name);
                before.put(name, bytes);
            }
        }
        assertTrue(Files.readString(folder.resolve("marks/feedback/seat-002.html"))
                .contains("given 1 mark, because: shown at the board"));
        assertEquals(2, marked("sheet,question,answer\n", "--also", "pdf").exitCode());
        Run misfit = marked("sheet,question,answer\n" + sheet.id() + ",q2b,1 V\n", "--decisions", decisions.toString());
        assertEquals(0, misfit.exitCode(), "a mark stands whatever was typed");
        Files.writeString(decisions, "seat,question,decision,value,reason\n1,q2a,mark,1,so\n", StandardCharsets.UTF_8);
        misfit = marked("sheet,question,answer\n" + sheet.id() + ",q2b,1 V\n", "--decisions", decisions.toString());
        assertEquals(1, misfit.exitCode());
        assertTrue(misfit.err().contains("decisions.csv:2: error: this decision no longer fits"), misfit.err());
    }

    @Test
    void aClassIsMarkedAnewByCorrectedTemplates() throws IOException {
        Path corrected = folder.resolve("corrected");
        for (String name : List.of(SmallLibrary.INDICATOR, SmallLibrary.DIVIDER)) {
            Files.createDirectories(corrected.resolve(name));
            for (String file : List.of("problem.yaml", "statement.md.ftl")) {
                String text = Files.readString(SmallLibrary.FOLDER.resolve(name).resolve(file), StandardCharsets.UTF_8);
                Files.writeString(
                        corrected.resolve(name).resolve(file),
                        text.replace("skill: ", "skill: mended "),
                        StandardCharsets.UTF_8);
            }
        }
        String answers = "sheet,question,answer\n" + sheet.id() + ",q2a,1 kΩ\n";
        marked(answers);
        Path before = Files.copy(folder.resolve("marks/marks.csv"), folder.resolve("before.csv"));
        List<String> arguments = List.of(
                "mark",
                folder.resolve("came").toString(),
                "--plan",
                plan.toString(),
                "--roster",
                roster.toString(),
                "--out",
                folder.resolve("anew").toString(),
                "--templates",
                corrected.toString());
        Run refused = run(arguments.toArray(new String[0]));
        assertEquals(1, refused.exitCode());
        assertTrue(
                refused.err().contains("another version of its templates")
                        && refused.err().contains("--issued-with"),
                refused.err());
        List<String> more = new ArrayList<>(arguments);
        more.addAll(List.of("--issued-with", SmallLibrary.FOLDER.toString(), "--before", before.toString()));
        Run run = run(more.toArray(new String[0]));
        assertEquals(0, run.exitCode(), run.err());
        assertTrue(run.out().contains("No mark changed."), run.out());
    }

    @Test
    void lateNeedsAListOfTimes() throws IOException {
        assertEquals(
                2,
                marked("sheet,question,answer\n", "--due", "2026-03-05T18:00").exitCode());
        Path times = Files.writeString(
                folder.resolve("times.csv"), "file,received\nbo.csv,2026-03-05T18:01\n", StandardCharsets.UTF_8);
        assertEquals(
                2,
                marked("sheet,question,answer\n", "--due", "soon", "--received", times.toString())
                        .exitCode());
        Run run = marked(
                "sheet,question,answer\n" + sheet.id() + ",q2a,1 kΩ\n",
                "--due",
                "2026-03-05T18:00",
                "--received",
                times.toString());
        assertTrue(run.out().contains("1 file late"), run.out());
        assertEquals(
                2,
                small("mark", "nowhere", "--plan", plan.toString(), "--roster", roster.toString(), "--out", "x")
                        .exitCode());
    }

    @Test
    void aPlanIsPackedForOtherPlatforms() throws IOException {
        Path out = folder.resolve("pool.zip");
        Run run = small("export", plan.toString(), "--qti", out.toString(), "--variants", "2");
        assertEquals(0, run.exitCode(), run.err());
        assertTrue(run.out().contains("2 items: "), run.out());
        List<String> names = new ArrayList<>();
        try (var zip = new java.util.zip.ZipFile(out.toFile())) {
            zip.stream().forEach(entry -> names.add(entry.getName()));
        }
        assertTrue(names.containsAll(List.of("imsmanifest.xml", "test.xml", "styles/items.css")), names.toString());
        assertTrue(
                names.stream()
                        .anyMatch(name -> name.startsWith("items/amp-")
                                && name.endsWith("-voltage-dividers-plain-divider-002.xml")),
                names.toString());
        assertEquals(
                0,
                small("export", plan.toString(), "--qti", out.toString(), "--variants", "2", "--qti-version", "2.1")
                        .exitCode());
        Run unknown = small("export", plan.toString(), "--qti", out.toString(), "--qti-version", "1.2");
        assertEquals(2, unknown.exitCode());
        assertTrue(unknown.err().contains("3.0 or 2.1"), unknown.err());
        assertEquals(
                2,
                small("export", plan.toString(), "--qti", out.toString(), "--variants", "0")
                        .exitCode());
    }

    // Designs and parts lists

    @Test
    void aDesignThatFailsIsAskedAgainAsAWhole() throws IOException {
        String text = "title: Design\nproblems: [{template: voltage-dividers/design-pair}]\n";
        Path design = Files.writeString(folder.resolve("design.yaml"), text, StandardCharsets.UTF_8);
        Sheet own = new SheetMaker(ProblemSet.of(
                        PlanReader.read("design.yaml", text), new TemplateLibrary(List.of(TemplateFiles.builtIn()))))
                .sheet(1);
        List<String> right = own.problems().get(0).answers().stream()
                .map(key -> Composer.answer(own.problems().get(0), key))
                .toList();
        String typed =
                right.get(0) + "\n1 Mohm\n1 kohm\n" + right.get(1) + "\n" + right.get(2) + "\n" + right.get(3) + "\n";
        Run run = type(typed, "check", own.id().toString(), "--plan", design.toString());
        assertEquals(0, run.exitCode(), run.out() + run.err());
        assertTrue(
                run.out().contains("judged together with q1c") && run.out().contains("The output is too low"),
                run.out());
        assertTrue(run.out().contains("4 of 4 right."), run.out());
        Run alone = run("check", own.id().toString(), "--plan", design.toString(), "q1b=" + right.get(1), "--json");
        assertEquals("incomplete", alone.json().at("/verdicts/0/rung").asText(), alone.out());
    }

    @Test
    void aSheetIsMadeAgainOnlyWithThePartsListItWasIssuedWith() throws IOException {
        Path bench = Files.writeString(
                folder.resolve("bench.yaml"),
                "title: Bench\nproblems: [{template: voltage-dividers/loaded-divider}]\n",
                StandardCharsets.UTF_8);
        Path parts = Files.copy(Path.of("problem-templates/demo/parts.csv"), folder.resolve("parts.csv"));
        Path out = folder.resolve("bench");
        Run issued = run(
                "issue",
                bench.toString(),
                "--roster",
                roster.toString(),
                "--out",
                out.toString(),
                "--parts",
                parts.toString());
        assertEquals(0, issued.exitCode(), issued.err());
        String key = Files.readString(out.resolve("keys/seat-001.md"));
        String id = key.substring(key.indexOf("**Sheet ") + 8, key.indexOf("**", key.indexOf("**Sheet ") + 8));
        assertTrue(key.contains("On the bench"), key);
        assertTrue(Files.readString(out.resolve("index.html")).contains("--parts"), "the index tells how to check");
        Run again = run("key", id, "--plan", bench.toString(), "--parts", parts.toString());
        assertEquals(0, again.exitCode(), again.err());
        assertTrue(again.out().contains("On the bench"), again.out());
        Run without = run("key", id, "--plan", bench.toString());
        assertEquals(2, without.exitCode(), without.out());
        assertTrue(without.err().contains("another parts list"), without.err());
        Run missing = run(
                "issue", bench.toString(), "--roster", roster.toString(), "--out", out.toString(), "--parts", "no.csv");
        assertEquals(2, missing.exitCode(), missing.out());
        Files.writeString(parts, "kind,value,tolerance,rating,count\nresistor,1k,5 %,,many\n");
        Run damaged = run(
                "issue",
                bench.toString(),
                "--roster",
                roster.toString(),
                "--out",
                folder.resolve("none").toString(),
                "--parts",
                parts.toString());
        assertTrue(damaged.exitCode() != 0 && damaged.err().contains("parts.csv:2: error"), damaged.err());
        assertFalse(Files.exists(folder.resolve("none")), "bad input writes nothing");
    }
}
