package ampersheet.issue;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import ampersheet.answer.AnswerKey;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.sheet.ArchivedClass;
import ampersheet.sheet.Composer;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Roster;
import ampersheet.sheet.RosterReader;
import ampersheet.sheet.Sheet;
import ampersheet.sheet.SheetMaker;
import ampersheet.sheet.SmallLibrary;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class IssueTest {
    private static final String PLAN = """
      title: Lanterns
      order: mixed
      problems:
        - {template: current-limiting/indicator, example: yes}
        - {pool: [current-limiting/indicator, voltage-dividers/plain-divider], support: faded}
      """;
    private static final Roster CLASS = RosterReader.read(
            "class.csv", "seat,name\n1,Ada\n2,<b>Bo</b>\n7,../../Cem\n12,\"[click](javascript:alert(1))\"\n105,\n");

    @TempDir
    private Path folder;

    private static Issue.Issued issue(Path out, int threads) {
        return Issue.issue(PlanReader.read("plan.yaml", PLAN), CLASS, SmallLibrary.open(), out, threads);
    }

    private static void assertSame(Map<String, byte[]> expected, Map<String, byte[]> actual) {
        assertEquals(expected.keySet(), actual.keySet());
        expected.forEach((name, bytes) -> assertArrayEquals(bytes, actual.get(name), name));
    }

    @Test
    void everySeatGetsSheetAndKeyAndTheInstructorAnIndex() throws IOException {
        Issue.Issued issued = issue(folder, 1);
        assertEquals(5, issued.sheets());
        assertEquals(3, issued.problemsPerSheet());
        assertEquals(23, issued.written());
        assertEquals(
                List.of(
                        grid(issued),
                        "index.html",
                        "keys/" + issued.archive().getFileName(),
                        "keys/seat-001.html",
                        "keys/seat-001.md",
                        "keys/seat-002.html",
                        "keys/seat-002.md",
                        "keys/seat-007.html",
                        "keys/seat-007.md",
                        "keys/seat-012.html",
                        "keys/seat-012.md",
                        "keys/seat-105.html",
                        "keys/seat-105.md",
                        "manifest.csv",
                        "sheets/seat-001.html",
                        "sheets/seat-001.md",
                        "sheets/seat-002.html",
                        "sheets/seat-002.md",
                        "sheets/seat-007.html",
                        "sheets/seat-007.md",
                        "sheets/seat-012.html",
                        "sheets/seat-012.md",
                        "sheets/seat-105.html",
                        "sheets/seat-105.md"),
                List.copyOf(WrittenFiles.under(folder).keySet()));
    }

    @Test
    void drawingsLieBesideTheMarkdownThatShowsThemAndAreTakenAwayWithIt() throws IOException {
        ProblemSet set = ProblemSet.of(
                PlanReader.read(
                        "plan.yaml",
                        "title: Lanterns\nseed: drawings\nproblems:\n"
                                + "  - {template: thermal-rise/regulator-junction, example: yes}\n"),
                new TemplateLibrary(List.of(TemplateFiles.builtIn())));
        Roster two = RosterReader.read("class.csv", "seat,name\n1,Ada\n2,Bo\n");
        Issue.issue(set, two, folder, 1, new Issue.Besides(false, false, true, Optional.empty()));
        for (String in : List.of("sheets", "keys")) {
            String page = Files.readString(folder.resolve(in + "/seat-002.md"));
            List<String> named = Pattern.compile("!\\[[^]]+]\\(([^)]+)\\)")
                    .matcher(page)
                    .results()
                    .map(found -> found.group(1))
                    .toList();
            assertEquals("seat-002-1.svg", named.get(0));
            for (String file : named) {
                String svg = Files.readString(folder.resolve(in).resolve(file));
                assertTrue(svg.startsWith("<svg style=\"background:#fff\" xmlns"), svg.substring(0, 80));
                assertTrue(svg.contains("<title"), file + " has a title of its own");
            }
            assertEquals(
                    named.size(), page.split("\\*\\*Figure: ", -1).length - 1, "each figure is shown where it is told");
        }
        Map<String, byte[]> before = WrittenFiles.under(folder);
        Sheet sheet = new SheetMaker(set).sheet(2);
        Issue.again(Composer.sheet(sheet, "Bo"), Composer.key(sheet, "Bo"), sheet.id(), folder, Output.Terms.NONE);
        assertSame(before, WrittenFiles.under(folder));

        Roster one = RosterReader.read("class.csv", "seat,name\n1,Ada\n");
        Output.Terms clean = new Output.Terms(List.of(), false, true, place -> {});
        Issue.issue(set, one, folder, 1, new Issue.Besides(false, false), clean);
        assertEquals(
                List.of(),
                WrittenFiles.under(folder).keySet().stream()
                        .filter(file -> file.endsWith(".svg"))
                        .toList());
    }

    private static String grid(Issue.Issued issued) {
        return issued.archive()
                .getFileName()
                .toString()
                .replace("issued-", "answer-grid-")
                .replace(".zip", ".csv");
    }

    @Test
    void theEmptyGridNamesEveryLearnerAndQuestionAndOneThatIsBegunStays() throws IOException {
        Issue.Issued issued = issue(folder, 1);
        Path grid = folder.resolve(grid(issued));
        String empty = Files.readString(grid);
        List<String> lines = empty.lines().toList();
        assertTrue(lines.get(0).startsWith("sheet,seat,name,q"), lines.get(0));
        assertEquals(6, lines.size());
        Files.writeString(grid, lines.get(0) + "\n" + lines.get(1) + "4.7 kΩ\n");
        assertEquals(0, issue(folder, 1).written());
        assertTrue(Files.readString(grid).endsWith("4.7 kΩ\n"), Files.readString(grid));
        Files.writeString(grid, lines.get(0) + "\n" + lines.get(1) + "\n");
        assertEquals(1, issue(folder, 1).written());
        assertEquals(empty, Files.readString(grid));
    }

    @Test
    void anotherRunGivesTheSameBytesAndLeavesWholeFilesAlone() throws IOException {
        issue(folder, 1);
        Map<String, byte[]> before = WrittenFiles.under(folder);
        Files.delete(folder.resolve("sheets/seat-001.html"));
        Files.writeString(folder.resolve("keys/seat-002.md"), "half a k", StandardCharsets.UTF_8);
        assertEquals(2, issue(folder, 1).written(), "only what is missing or not whole is written again");
        assertSame(before, WrittenFiles.under(folder));
    }

    @Test
    void theNumberOfThreadsChangesNothing() throws IOException {
        issue(folder.resolve("one"), 1);
        issue(folder.resolve("four"), 4);
        assertSame(WrittenFiles.under(folder.resolve("one")), WrittenFiles.under(folder.resolve("four")));
    }

    @Test
    void refusedDrawsAreCounted() {
        Issue.Issued issued = issue(folder, 2);
        long tried = issued.tallies().values().stream()
                .mapToLong(tally -> tally.tried())
                .sum();
        long accepted = issued.tallies().values().stream()
                .mapToLong(tally -> tally.accepted())
                .sum();
        assertTrue(accepted >= 15 && tried > accepted, tried + " tried, " + accepted + " accepted");
    }

    @Test
    void hostileNamesStayText() throws IOException {
        issue(folder, 1);
        for (Map.Entry<String, byte[]> file : WrittenFiles.under(folder).entrySet()) {
            String text = new String(file.getValue(), StandardCharsets.UTF_8);
            if (file.getKey().endsWith(".html")) {
                assertFalse(text.contains("<b>Bo</b>"), file.getKey());
                assertFalse(text.contains("href=\"javascript:"), file.getKey());
            } else if (!file.getKey().endsWith(".csv")) {
                assertFalse(text.contains("[click](javascript:"), file.getKey());
            }
        }
    }

    @Test
    void sheetsDoNotLeadToKeys() throws IOException {
        issue(folder, 1);
        for (Map.Entry<String, byte[]> file :
                WrittenFiles.under(folder.resolve("sheets")).entrySet()) {
            assertFalse(new String(file.getValue(), StandardCharsets.UTF_8).contains("keys/"), file.getKey());
        }
    }

    @Test
    void theIndexLeadsToEverySheetAndKey() throws IOException {
        issue(folder, 1);
        String index = Files.readString(folder.resolve("index.html"), StandardCharsets.UTF_8);
        for (String file : WrittenFiles.under(folder).keySet()) {
            if (file.contains("/") && file.endsWith(".html")) {
                assertTrue(index.contains("href=\"" + file + "\""), file);
            }
        }
    }

    @Test
    void theIndexLeadsToHomeworkAndPdfsAndHasARowOfAnswersForEachLearner() throws IOException {
        ProblemSet set = ProblemSet.of(PlanReader.read("plan.yaml", PLAN), SmallLibrary.open());
        Roster one = RosterReader.read("class.csv", "seat,name\n3,Ada\n");
        boolean homework = Issue.class.getResource("/ampersheet/browser/checker.js") != null;
        Issue.issue(set, one, folder, 1, new Issue.Besides(homework, true));
        String index = Files.readString(folder.resolve("index.html"), StandardCharsets.UTF_8);
        for (String file : WrittenFiles.under(folder).keySet()) {
            if (file.contains("/") && !file.endsWith(".md") && !file.endsWith(".zip")) {
                assertTrue(index.contains("href=\"" + file + "\""), file);
            }
        }
        String answers = index.substring(index.indexOf("Answers at a glance</caption>"));
        int begin = answers.indexOf("<tr><th scope=\"row\">3 Ada</th>");
        assertTrue(begin > 0, answers);
        String row = answers.substring(begin, answers.indexOf("</tr>", begin));
        List<String> questions = new SheetMaker(set)
                .sheet(3).places().stream().map(AnswerKey::question).toList();
        assertTrue(questions.size() > 1, questions.toString());
        assertEquals(questions.size(), row.split("<td>", -1).length - 1, row);
        questions.forEach(
                question -> assertTrue(answers.contains("<th scope=\"col\">" + question + "</th>"), question));
    }

    @Test
    void aSheetMadeAgainFromItsIdIsTheSame() throws IOException {
        issue(folder, 1);
        Map<String, byte[]> issued = WrittenFiles.under(folder);
        SheetMaker maker = new SheetMaker(ProblemSet.of(PlanReader.read("plan.yaml", PLAN), SmallLibrary.open()));
        Path again = folder.resolve("again");
        Sheet sheet =
                maker.sheet(maker.set().readId(maker.set().id(7).toString()).seat());
        Issue.again(
                Composer.sheet(sheet, "../../Cem"),
                Composer.key(sheet, "../../Cem"),
                sheet.id(),
                again,
                Output.Terms.NONE);
        Map<String, byte[]> made = WrittenFiles.under(again);
        assertEquals(4, made.size());
        made.forEach((name, bytes) -> assertArrayEquals(issued.get(name), bytes, name));
    }

    @Test
    void aFaultInThePlanWritesNothing() throws IOException {
        assertThrows(
                DiagnosticException.class,
                () -> Issue.issue(
                        PlanReader.read("plan.yaml", "title: T\nproblems: [{template: a/b}]\n"),
                        CLASS,
                        SmallLibrary.open(),
                        folder,
                        1));
        assertEquals(Map.of(), WrittenFiles.under(folder));
    }

    @Test
    void aFileInTheWayOfAFolderIsTold() throws IOException {
        Files.writeString(folder.resolve("sheets"), "in the way", StandardCharsets.UTF_8);
        String told =
                assertThrows(DiagnosticException.class, () -> issue(folder, 1)).getMessage();
        assertTrue(told.contains("a file stands where a folder is needed"), told);
        assertTrue(told.contains("run the same command again"), told);
    }

    @Test
    void aFolderInTheWayOfAFileIsToldAndLeavesNoTemporaryFile() throws IOException {
        Files.createDirectories(folder.resolve("sheets/seat-001.html/x"));
        String told =
                assertThrows(DiagnosticException.class, () -> issue(folder, 1)).getMessage();
        assertTrue(told.contains("seat-001.html"), told);
        assertTrue(
                WrittenFiles.under(folder).keySet().stream().noneMatch(name -> name.contains("part")),
                WrittenFiles.under(folder).keySet().toString());
    }

    @Test
    void whatTheSystemRefusesIsToldWithWhatToDo() {
        String told = assertThrows(DiagnosticException.class, () -> {
                    try (Output output = Output.folder(folder, Output.Terms.NONE)) {
                        output.write(folder.resolve("x".repeat(300)), "text");
                    }
                })
                .getMessage();
        assertTrue(told.contains("this file could not be written: "), told);
        assertTrue(told.contains("every file written so far is whole"), told);
    }

    @Test
    void noTemporaryFileStays() throws IOException {
        issue(folder, 2);
        assertTrue(WrittenFiles.under(folder).keySet().stream().noneMatch(name -> name.contains("part")));
    }

    @Test
    void homeworkIsAPageMoreForEachSeat() throws IOException {
        assumeTrue(
                Issue.class.getResource("/ampersheet/browser/checker.js") != null,
                "the checker is not compiled for the browser");
        Issue.Issued issued =
                Issue.issue(PlanReader.read("plan.yaml", PLAN), CLASS, SmallLibrary.open(), folder, 2, true);
        assertEquals(28, issued.written());
        assertTrue(WrittenFiles.under(folder).containsKey("homework/seat-105.html"));
    }

    // Archive

    private static final Roster FEW = RosterReader.read("class.csv", "seat,name\n1,Ada\n2,<b>Bo</b>\n7,Cem\n");

    private static Issue.Issued few(Path out) {
        return Issue.issue(PlanReader.read("plan.yaml", PLAN), FEW, SmallLibrary.open(), out, 1);
    }

    @Test
    void theArchiveHoldsNoNames() throws IOException {
        Issue.Issued issued = few(folder);
        String bytes = new String(Files.readAllBytes(issued.archive()), StandardCharsets.UTF_8);
        for (String name : List.of("Ada", "Bo<", "Cem")) {
            assertFalse(bytes.contains(name), name);
        }
        assertTrue(
                bytes.contains(PLAN) && bytes.contains("templates/current-limiting/indicator/statement.md.ftl"),
                "stored, not compressed");
    }

    @Test
    void correctedTemplatesDoNotTakeThePlaceOfTheArchiveOfPrintedSheets() throws IOException {
        Path first = few(folder).archive();
        byte[] before = Files.readAllBytes(first);
        Path second = Issue.issue(
                        PlanReader.read("plan.yaml", PLAN.replace("order: mixed", "order: as listed")),
                        FEW,
                        SmallLibrary.open(),
                        folder,
                        1)
                .archive();
        assertFalse(first.equals(second), "another name: " + second);
        assertArrayEquals(before, Files.readAllBytes(first));
    }

    @Test
    void aSmallerClassLeavesTheSheetsOfTheOthersInTheArchive() throws IOException {
        Path archive = few(folder).archive();
        byte[] before = Files.readAllBytes(archive);
        Issue.issue(
                PlanReader.read("plan.yaml", PLAN),
                RosterReader.read("class.csv", "seat,name\n2,Bo\n"),
                SmallLibrary.open(),
                folder,
                1);
        assertArrayEquals(before, Files.readAllBytes(archive));
        Issue.issue(
                PlanReader.read("plan.yaml", PLAN),
                RosterReader.read("class.csv", "seat,name\n3,New\n"),
                SmallLibrary.open(),
                folder,
                1);
        assertEquals(4, ArchivedClass.read(archive).sheets().size(), "a latecomer's sheet comes in");
    }

    @Test
    void aDamagedArchiveInTheWayIsToldAndStays() throws IOException {
        Path archive = few(folder).archive();
        Files.writeString(archive, "damaged", StandardCharsets.UTF_8);
        Files.delete(folder.resolve("sheets/seat-001.html"));
        String told = assertThrows(DiagnosticException.class, () -> few(folder)).getMessage();
        assertTrue(told.contains("this file is no archive, or it is damaged"), told);
        assertEquals("damaged", Files.readString(archive));
        assertFalse(Files.exists(folder.resolve("sheets/seat-001.html")), "nothing is written");
    }
}
