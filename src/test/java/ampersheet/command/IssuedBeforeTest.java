package ampersheet.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.sheet.ArchivedClass;
import ampersheet.sheet.ArchivedSheets;
import ampersheet.sheet.ClassSheets;
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
import java.util.Enumeration;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Sheets that a class had from an earlier version of the program are checked and marked by this one. The archive is
 * data: if a test here fails, the program has to learn to read it again, and the archive stays.
 */
class IssuedBeforeTest {
    private static final Path BEFORE = Path.of("src/test/resources/issued-before");
    private static final Path ARCHIVE = BEFORE.resolve("issued-Z095E.zip");
    private static final Path CLASS = BEFORE.resolve("class.csv");
    private static final int SEATS = 4;
    private static final String FIRST = "Z095E-001-4";
    private static final String SECOND = "Z095E-002-2";
    private static final String INDICATOR = "current-limiting/one-indicator";

    @TempDir
    private Path folder;

    private record Run(int exitCode, String out, String err) {
        JsonNode json() throws IOException {
            return new ObjectMapper().readTree(out);
        }
    }

    private static Run run(String... arguments) {
        return type("", arguments);
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

    /** The archive's templates as a folder, one of them corrected. */
    private Path templates(String template, String from, String to) throws IOException {
        Path copy = folder.resolve("templates");
        try (ZipFile zip = new ZipFile(ARCHIVE.toFile(), StandardCharsets.UTF_8)) {
            Enumeration<? extends ZipEntry> entries = zip.entries();
            while (entries.hasMoreElements()) {
                ZipEntry entry = entries.nextElement();
                if (entry.getName().startsWith("templates/")) {
                    String text = new String(zip.getInputStream(entry).readAllBytes(), StandardCharsets.UTF_8);
                    if (entry.getName().equals("templates/" + template + "/problem.yaml")) {
                        assertTrue(text.contains(from), from);
                        text = text.replace(from, to);
                    }
                    Path file = copy.resolve(entry.getName().substring("templates/".length()));
                    Files.createDirectories(file.getParent());
                    Files.writeString(file, text, StandardCharsets.UTF_8);
                }
            }
        }
        return copy;
    }

    private Path asTheyWere() throws IOException {
        return templates(INDICATOR, "title:", "title:");
    }

    private Run marked(Path templates, String... more) {
        List<String> arguments = new ArrayList<>(List.of(
                "mark",
                BEFORE.resolve("answers").toString(),
                "--issued-with",
                ARCHIVE.toString(),
                "--roster",
                CLASS.toString(),
                "--out",
                folder.resolve("marks").toString(),
                "--templates",
                templates.toString()));
        arguments.addAll(List.of(more));
        return run(arguments.toArray(new String[0]));
    }

    private static List<CSVRecord> rows(Path table) throws IOException {
        try (CSVParser parser = CSVParser.builder()
                .setReader(Files.newBufferedReader(table))
                .setFormat(CSVFormat.DEFAULT
                        .builder()
                        .setHeader()
                        .setSkipHeaderRecord(true)
                        .get())
                .get()) {
            return parser.getRecords();
        }
    }

    private static Map<String, String> column(Path table, String column) throws IOException {
        Map<String, String> cells = new TreeMap<>();
        for (CSVRecord row : rows(table)) {
            cells.put(row.get("sheet") + " " + row.get("question"), row.get(column));
        }
        return cells;
    }

    /** Columns that later versions put behind those of then say other things. */
    private void assertMarksOfThen() throws IOException {
        List<CSVRecord> then = rows(BEFORE.resolve("marks-of-then.csv"));
        List<CSVRecord> now = rows(folder.resolve("marks/marks.csv"));
        assertEquals(then.size(), now.size());
        for (int i = 0; i < then.size(); i++) {
            List<String> cells = then.get(i).toList();
            assertEquals(cells, now.get(i).toList().subList(0, cells.size()));
        }
    }

    @Test
    void everyTemplateOfThenIsStillReadAndWorkedToTheKeyThatWasPrinted() {
        ArchivedSheets sheets = new ArchivedSheets(ArchivedClass.read(ARCHIVE), new TemplateLibrary(List.of()));
        for (int seat = 1; seat <= SEATS; seat++) {
            ClassSheets.IssuedSheet sheet = sheets.issued(seat);
            assertEquals(List.of(), sheet.lost());
            assertEquals(List.of(), sheet.remarks());
            assertEquals(10, sheet.sheet().problems().size());
        }
    }

    @Test
    void theAnswersGetTheMarksOfThen() throws IOException {
        Run run = marked(asTheyWere());
        assertEquals(0, run.exitCode(), run.err());
        assertEquals(
                column(BEFORE.resolve("verdicts-of-then.csv"), "mark"),
                column(folder.resolve("marks/answers.csv"), "mark"));
        assertMarksOfThen();
        assertEquals(
                1, Files.readAllLines(folder.resolve("marks/corrections.csv")).size(), "nothing was corrected");
    }

    /** Whatever this version has made of its templates, the sheets are marked: by its own keys or by those of then. */
    @Test
    void withTheTemplatesOfThisVersionEveryAnswerHasAMarkAndWhatDiffersIsNamed() throws IOException {
        Run run = run(
                "mark",
                BEFORE.resolve("answers").toString(),
                "--issued-with",
                ARCHIVE.toString(),
                "--roster",
                CLASS.toString(),
                "--out",
                folder.resolve("marks").toString());
        assertEquals(0, run.exitCode(), run.err());
        Map<String, String> then = column(BEFORE.resolve("verdicts-of-then.csv"), "mark");
        Map<String, String> now = column(folder.resolve("marks/answers.csv"), "mark");
        assertEquals(then.keySet(), now.keySet());
        Map<String, String> named = column(folder.resolve("marks/corrections.csv"), "now");
        for (Map.Entry<String, String> answer : now.entrySet()) {
            assertTrue(
                    answer.getValue().equals(then.get(answer.getKey())) || named.containsKey(answer.getKey()),
                    answer + " was " + then.get(answer.getKey()) + " and is not named");
        }
        assertEquals(
                1,
                Files.readAllLines(folder.resolve("marks/set-aside.csv")).size(),
                "nothing is left to be marked by hand");
    }

    @Test
    void aCorrectedKeyNamesEachVerdictThatItChanges() throws IOException {
        Path corrected = templates(INDICATOR, "is: Vs - Vf", "is: Vs - Vf - 0.9 V");
        Files.writeString(
                corrected.resolve(INDICATOR + "/problem.yaml"),
                Files.readString(corrected.resolve(INDICATOR + "/problem.yaml"))
                        .replace("volts: Vs}", "volts: Vs - 0.9 V}"));
        Run run = marked(corrected, "--json");
        assertEquals(0, run.exitCode(), run.err());
        List<CSVRecord> named = rows(folder.resolve("marks/corrections.csv"));
        assertTrue(
                named.stream()
                        .anyMatch(row -> row.get("sheet").equals(FIRST)
                                && row.get("question").equals("q2s1")
                                && row.get("before").equals("right")
                                && row.get("now").equals("wrong")),
                named.toString());
        assertEquals(named.size(), run.json().get("corrected").size());
        assertTrue(
                Files.readString(folder.resolve("marks/report.html")).contains("Verdicts that a correction changes"));
        assertTrue(Files.readString(folder.resolve("marks/feedback/seat-001.html"))
                .contains("was corrected after your sheet had been printed"));
        String typed = rows(BEFORE.resolve("verdicts-of-then.csv")).stream()
                .filter(row ->
                        row.get("sheet").equals(FIRST) && row.get("question").equals("q2s1"))
                .map(row -> row.get("typed"))
                .findFirst()
                .orElseThrow();
        Run check = run(
                "check",
                FIRST,
                "--issued-with",
                ARCHIVE.toString(),
                "--templates",
                corrected.toString(),
                "q2s1=" + typed);
        assertEquals(1, check.exitCode(), check.err());
        assertTrue(
                check.out()
                        .contains("The key to q2s1 was corrected after this sheet had been issued: before right, "
                                + "now wrong."),
                check.out());
        Run asked = type(
                typed + "\n\n",
                "check",
                FIRST,
                "--issued-with",
                ARCHIVE.toString(),
                "--templates",
                corrected.toString());
        assertTrue(asked.out().contains("before right, now wrong."), asked.out());
        Run key = run("key", FIRST, "--issued-with", ARCHIVE.toString(), "--templates", corrected.toString());
        assertTrue(
                key.out().contains("**Corrected since this sheet was issued.**")
                        && key.out().contains("- **q2s1** (" + INDICATOR + "): before "),
                key.out().substring(0, 2000));
        JsonNode json = run(
                        "key",
                        FIRST,
                        "--issued-with",
                        ARCHIVE.toString(),
                        "--templates",
                        corrected.toString(),
                        "--json")
                .json();
        assertTrue(json.get("corrected").size() >= 4, json.get("corrected").toString());
    }

    @Test
    void otherWordsChangeNoVerdict() throws IOException {
        Path reworded = templates(INDICATOR, "meaning: ", "meaning: plainly said, ");
        Run run = marked(reworded);
        assertEquals(0, run.exitCode(), run.err());
        assertMarksOfThen();
        assertEquals(
                1, Files.readAllLines(folder.resolve("marks/corrections.csv")).size());
        Run key = run("key", FIRST, "--issued-with", ARCHIVE.toString(), "--templates", reworded.toString());
        assertFalse(key.out().contains("Corrected since"), key.out().substring(0, 1000));
    }

    @Test
    void aTemplateThatIsGoneOrBrokenIsNamedAndTheIssuedKeyCounts() throws IOException {
        Path broken = templates(INDICATOR, "steps:", "stepps:");
        Run run = marked(broken);
        assertEquals(0, run.exitCode(), run.err());
        assertTrue(
                run.err()
                        .contains(INDICATOR + ": warning: marked by the key that was issued on 4 sheets, " + FIRST
                                + " (problem 2)"),
                run.err());
        assertMarksOfThen();
    }

    @Test
    void anOptionThatTheSheetDoesNotOfferIsNotHeldAgainstAnybody() throws IOException {
        Path corrected = templates(
                "current-limiting/string-fuse",
                "none of them: the strip needs a thicker wire",
                "none of these, and the wire must be thicker");
        Path fuse = corrected.resolve("current-limiting/string-fuse/problem.yaml");
        String text = Files.readString(fuse);
        assertTrue(text.contains("when: \"If > 2 A and If <= 3.15 A"), "another condition, and not only other words");
        Files.writeString(
                fuse,
                text.replace("when: \"If > 2 A and If <= 3.15 A", "when: \"If > 2 A and If > 2 A and If <= 3.15 A"));
        Run run = marked(corrected);
        assertEquals(0, run.exitCode(), run.err());
        assertTrue(
                run.err()
                        .contains("“none of these, and the wire must be thicker”, is none that the sheet offers. By "
                                + "the key that was "
                                + "issued it is “none of them: the strip needs a thicker wire”"),
                run.err());
        assertMarksOfThen();
    }

    @Test
    void theSheetIsTheOneThatWasPrinted() throws IOException {
        Path reworded = templates(INDICATOR, "title: ", "title: Now otherwise, ");
        Run sheet =
                run("key", SECOND, "--sheet", "--issued-with", ARCHIVE.toString(), "--templates", reworded.toString());
        assertEquals(0, sheet.exitCode(), sheet.err());
        assertTrue(
                sheet.out().contains("Sheet " + SECOND) && !sheet.out().contains("Now otherwise"),
                sheet.out().substring(0, 800));
        Run made = run(
                "key",
                SECOND,
                "--out",
                folder.resolve("again").toString(),
                "--issued-with",
                ARCHIVE.toString(),
                "--roster",
                CLASS.toString(),
                "--templates",
                reworded.toString());
        assertEquals(0, made.exitCode(), made.err());
        assertTrue(Files.readString(folder.resolve("again/sheets/seat-002.md")).contains("Tomasz Brod"));
    }

    @Test
    void wrongUsageIsToldPlainly() throws IOException {
        Run nothing = run("check", FIRST, "q2s1=1 V");
        assertEquals(2, nothing.exitCode());
        assertTrue(nothing.err().contains("nothing says what the sheets were issued from"), nothing.err());
        assertEquals(
                2,
                run("check", FIRST, "--issued-with", folder.resolve("no.zip").toString())
                        .exitCode());
        assertEquals(
                2,
                run("check", "Z095E-009-9", "--issued-with", ARCHIVE.toString(), "q2s1=1 V")
                        .exitCode());
        Path plan = Files.writeString(
                folder.resolve("plan.yaml"), "title: Another\nproblems: [{template: " + INDICATOR + "}]\n");
        Run other = run("check", FIRST, "--issued-with", ARCHIVE.toString(), "--plan", plan.toString(), "q2s1=1 V");
        assertEquals(2, other.exitCode());
        assertTrue(other.err().contains("were issued from another plan than this"), other.err());
        Run damaged = run(
                "check",
                FIRST,
                "--issued-with",
                Files.writeString(folder.resolve("text.zip"), "text").toString(),
                "q2s1=1 V");
        assertEquals(1, damaged.exitCode());
        assertTrue(damaged.err().contains("this file is no archive, or it is damaged"), damaged.err());
        assertEquals(
                2,
                run("check", FIRST, "--issued-with", ARCHIVE.toString(), "--issued-with", folder.toString(), "q2s1=1 V")
                        .exitCode());
    }

    @Test
    void whatIsIssuedNowIsCheckedFromItsArchiveAlone() throws IOException {
        Path plan = Files.writeString(
                folder.resolve("plan.yaml"),
                "title: Now\nproblems: [{template: " + INDICATOR + ", given: {If: 10 mA}}]\n");
        Run issued = run(
                "issue",
                plan.toString(),
                "--roster",
                CLASS.toString(),
                "--out",
                folder.resolve("out").toString(),
                "--json");
        assertEquals(0, issued.exitCode(), issued.err());
        String archive = issued.json().get("archive").asText();
        Files.delete(plan);
        String id = ArchivedClass.read(Path.of(archive)).sheets().get(2).id().toString();
        JsonNode key = run("key", id, "--issued-with", archive, "--json").json();
        String answer = key.at("/problems/0/answers/0/answer").asText();
        Run check = run("check", id, "--issued-with", archive, "q1a=" + answer);
        assertEquals(0, check.exitCode(), check.out() + check.err());
        assertEquals("", check.err());
    }
}
