package ampersheet.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.render.markdown.MarkdownPage;
import ampersheet.sheet.Composer;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Roster;
import ampersheet.sheet.RosterReader;
import ampersheet.sheet.Sheet;
import ampersheet.sheet.SheetMaker;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class MarkingTest {
    private static final String PLAN = """
      title: Lanterns
      seed: one
      problems:
        - {template: current-limiting/one-indicator, example: yes}
        - {template: voltage-dividers/battery-sense, support: faded, fade: forward, blank: 1}
        - {template: thermal-rise/regulator-junction}
      """;
    private static final Roster CLASS =
            RosterReader.read("class.csv", "seat,name\n1,Ada Lovett\n2,=cmd|'/c calc'!A1\n3,<b>Bo</b>\n4,Cem\n");

    @TempDir
    private Path folder;

    private static final TemplateLibrary LIBRARY = new TemplateLibrary(List.of(TemplateFiles.builtIn()));

    private static ProblemSet set(String plan) {
        return ProblemSet.of(PlanReader.read("plan.yaml", plan), LIBRARY);
    }

    private void put(String name, String text) throws IOException {
        Files.writeString(folder.resolve(name), text, StandardCharsets.UTF_8);
    }

    private Marking.Task task(ProblemSet set) {
        return new Marking.Task(
                folder,
                new SheetMaker(set),
                Optional.empty(),
                CLASS,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                OtherSheets.NONE,
                false);
    }

    private static Map<String, String> written(Marking.Task task) {
        Map<String, String> files = new TreeMap<>();
        Marking.mark(task, files::put);
        return files;
    }

    private static Sheet sheet(ProblemSet set, int seat) {
        return new SheetMaker(set).sheet(seat);
    }

    private static String rightAnswers(Sheet sheet) {
        StringBuilder out = new StringBuilder("sheet,question,answer\n");
        sheet.places()
                .forEach(key -> out.append(sheet.id())
                        .append(',')
                        .append(key.question())
                        .append(',')
                        .append(SimulatedClass.written(key, key.expected()))
                        .append('\n'));
        return out.toString();
    }

    private static List<String> line(String csv, String start) {
        return csv.lines().filter(line -> line.startsWith(start)).toList();
    }

    @Test
    void rightAnswersEarnEveryMark() throws IOException {
        ProblemSet set = set(PLAN);
        Sheet sheet = sheet(set, 1);
        put("ada.csv", rightAnswers(sheet));
        int places = sheet.places().size();
        assertEquals(
                List.of("1,Ada Lovett," + sheet.id() + "," + places + "," + places + "," + places + ",0,0,0,0,0,0,0,"
                        + places + ",in,100"),
                line(written(task(set)).get("marks.csv"), "1,"));
    }

    @Test
    void aSlipIsPaidForOnceAndABlankIsNoMistake() throws IOException {
        ProblemSet set = set(PLAN);
        Sheet sheet = sheet(set, 1);
        double ohms = sheet.places().get(0).expected();
        // A value that no mistake explains, then a preferred value that follows from it, then nothing.
        double slip = ohms * 1.62;
        String typed = ampersheet.quantity.QuantityWriter.POINT
                .plain(slip, sheet.places().get(0).unit(), 4)
                .text();
        double following = ampersheet.quantity.PreferredSeries.E24.nextUp(slip);
        put(
                "ada.csv",
                "sheet,question,answer\n" + sheet.id() + ",q2a," + typed + "\n" + sheet.id() + ",q2b,"
                        + ampersheet.quantity.QuantityWriter.POINT
                                .plain(following, sheet.places().get(1).unit(), 4)
                                .text()
                        + "\n");
        String answers = written(task(set)).get("answers.csv");
        assertTrue(line(answers, "1," + sheet.id() + ",q2a").get(0).contains(",unexplained,,0,"), answers);
        assertTrue(line(answers, "1," + sheet.id() + ",q2b").get(0).contains(",consistent-with-earlier,,1,"), answers);
        assertTrue(line(answers, "1," + sheet.id() + ",q2c").get(0).contains(",blank,,0,"), answers);
    }

    @Test
    void theFeedbackCallsAMatchProbableAndShowsTheWorkedLine() throws IOException {
        ProblemSet set = set(PLAN);
        Sheet sheet = sheet(set, 1);
        var key = sheet.places().get(0);
        var mistake = key.mistakes().get(0);
        put(
                "ada.csv",
                "sheet,question,answer\n" + sheet.id() + ",q2a," + SimulatedClass.written(key, mistake.value()) + "\n"
                        + sheet.id() + ",q4a,"
                        + SimulatedClass.written(
                                sheet.places().get(4), sheet.places().get(4).expected()) + "\n");
        String page = written(task(set)).get("feedback/seat-001.html").replace("&#x27;", "'");
        assertTrue(page.contains("<em>Probably:</em> " + mistake.explanation()), page);
        assertTrue(page.contains("The worked line") && page.contains("Resistance that sets the current"), page);
        assertTrue(page.contains("Left open."), page);
    }

    @Test
    void markingAgainGivesTheSameBytes() throws IOException {
        ProblemSet set = set(PLAN);
        SimulatedClass learners = new SimulatedClass(new SheetMaker(set), 4);
        for (int seat = 1; seat <= 4; seat++) {
            put("file-" + seat + ".csv", SimulatedClass.file(learners.learner(seat, 2, 0.2, 0.2)));
        }
        put("damaged.csv", "no,such\ntable,1\n");
        assertEquals(written(task(set)), written(task(set(PLAN))));
    }

    @Test
    void anUntouchedSheetIsBlankAndAFilledOneIsRead() throws IOException {
        for (String units : List.of("asked", "printed")) {
            ProblemSet set = set(PLAN + "units: " + units + "\n");
            Sheet sheet = sheet(set, 1);
            String untouched = MarkdownPage.render(Composer.sheet(sheet, "Ada"));
            put("sheet.md", untouched);
            Marking.Marked marked = Marking.mark(task(set), (path, text) -> {});
            assertEquals(List.of(), marked.notes(), units);
            assertEquals(
                    List.of("1,Ada Lovett," + sheet.id() + ",0,"
                            + sheet.places().size() + ",0,0,0,0,0,"
                            + sheet.places().size() + ",0,0,0,blank,0"),
                    line(written(task(set)).get("marks.csv"), "1,"),
                    units);
            String filled = untouched;
            for (var key : sheet.places()) {
                String answer = SimulatedClass.written(key, key.expected());
                if (key.acceptance() instanceof ampersheet.answer.Acceptance.Choice) {
                    int question = filled.indexOf("**" + key.question() + "**");
                    int option = filled.indexOf("- [ ] " + answer, question);
                    filled = filled.substring(0, option) + "- [x] " + filled.substring(option + 6);
                } else {
                    int place = filled.indexOf(" " + key.question() + "  ");
                    int rule = filled.indexOf("____________", place);
                    filled = filled.substring(0, rule) + "__ " + answer + " ____" + filled.substring(rule + 12);
                }
            }
            put("sheet.md", filled);
            int places = sheet.places().size();
            assertEquals(
                    List.of("1,Ada Lovett," + sheet.id() + "," + places + "," + places + "," + places
                            + ",0,0,0,0,0,0,0," + places + ",in,100"),
                    line(written(task(set)).get("marks.csv"), "1,"),
                    units);
        }
    }

    @Test
    void theLaterOfTwoAnswersCountsButNoBlankAndNoLateOneReplacesAnAnswer() throws IOException {
        ProblemSet set = set(PLAN);
        Sheet sheet = sheet(set, 1);
        put(
                "a.csv",
                "sheet,question,answer\n" + sheet.id() + ",q2a,1 kΩ\n" + sheet.id() + ",q2b,2 kΩ\n" + sheet.id()
                        + ",q2c,3 W\n");
        put("b.csv", "sheet,question,answer\n" + sheet.id() + ",q2a,5 kΩ\n" + sheet.id() + ",q2b,\n");
        put("c.csv", "sheet,question,answer\n" + sheet.id() + ",q2a,7 kΩ\n" + sheet.id() + ",q4a,80 °C\n");
        Marking.Task task = new Marking.Task(
                folder,
                new SheetMaker(set),
                Optional.empty(),
                CLASS,
                Optional.of(new Marking.NamedText(
                        "times.csv",
                        "file,received\na.csv,2026-03-05T10:00\nb.csv,2026-03-05 17:59\nc.csv,2026-03-05T18:01\n")),
                Optional.of(LocalDateTime.of(2026, 3, 5, 18, 0)),
                Optional.empty(),
                Optional.empty(),
                OtherSheets.NONE,
                false);
        Map<String, String> files = written(task);
        String answers = files.get("answers.csv");
        assertTrue(line(answers, "1," + sheet.id() + ",q2a").get(0).contains(",5 kΩ,"), answers);
        assertTrue(line(answers, "1," + sheet.id() + ",q2b").get(0).contains(",2 kΩ,"), answers);
        assertTrue(line(answers, "1," + sheet.id() + ",q2c").get(0).contains(",3 W,"), answers);
        assertTrue(line(answers, "1," + sheet.id() + ",q4a").get(0).contains(",late,c.csv,3"), answers);
        assertEquals(
                "file,line,sheet,question,answer,why\n"
                        + "a.csv,2," + sheet.id() + ",q2a,1 kΩ,\"replaced by b.csv, line 2\"\n"
                        + "c.csv,2," + sheet.id() + ",q2a,7 kΩ,late; the answer given in time counts\n",
                files.get("set-aside.csv"));
        assertTrue(files.get("files.csv").contains("c.csv,2026-03-05T18:01,late,1,marked,"), files.get("files.csv"));
    }

    @Test
    void nothingInATableRunsInASpreadsheet() throws IOException {
        ProblemSet set = set(PLAN);
        Sheet sheet = sheet(set, 2);
        put(
                "two.csv",
                "sheet,question,answer\n" + sheet.id() + ",q2a,\"=HYPERLINK(\"\"x\"\")\"\n" + sheet.id() + ",q2b,-5 V\n"
                        + sheet.id() + ",q2c,@SUM(A1)\n=1+1,q2a,+2\n");
        Map<String, String> files = written(task(set));
        for (String name : List.of("marks.csv", "answers.csv", "set-aside.csv", "files.csv")) {
            for (var row : parsed(files.get(name))) {
                for (String cell : row) {
                    assertFalse(!cell.isEmpty() && "=+-@".indexOf(cell.charAt(0)) >= 0, name + ": " + cell);
                }
            }
        }
        assertTrue(files.get("marks.csv").contains("2,'=cmd|'/c calc'!A1,"), files.get("marks.csv"));
    }

    private static List<List<String>> parsed(String csv) throws IOException {
        try (var parser = org.apache.commons.csv.CSVParser.parse(csv, org.apache.commons.csv.CSVFormat.DEFAULT)) {
            return parser.getRecords().stream().map(row -> row.toList()).toList();
        }
    }

    @Test
    void pseudonymsKeepEveryNameInOneFile() throws IOException {
        ProblemSet set = set(PLAN);
        Sheet sheet = sheet(set, 1);
        put(
                "Ada Lovett.csv",
                "sheet,question,answer\n" + sheet.id() + ",q2a,Ada Lovett\nLovett,q2b,Lovett\n" + sheet.id()
                        + ",lovett,1 kΩ\n");
        put("lovett.docx", "?");
        Marking.Task task = new Marking.Task(
                folder,
                new SheetMaker(set),
                Optional.empty(),
                CLASS,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                OtherSheets.NONE,
                true);
        Map<String, String> files = new TreeMap<>();
        Marking.Marked marked = Marking.mark(task, files::put);
        assertTrue(files.get("names.csv").contains("Ada Lovett.csv"));
        assertTrue(files.get("names.csv").contains("seat,1,Ada Lovett"));
        files.remove("names.csv");
        files.forEach((name, text) ->
                assertFalse((name + text).toLowerCase(java.util.Locale.ROOT).contains("lovett"), name + "\n" + text));
        marked.notes()
                .forEach(note -> assertFalse(
                        note.print().toLowerCase(java.util.Locale.ROOT).contains("lovett"), note.print()));
    }

    @Test
    void namesAreNeverInFileNamesAndAreEscapedOnPages() throws IOException {
        ProblemSet set = set(PLAN);
        put("three.csv", rightAnswers(sheet(set, 3)));
        Map<String, String> files = written(task(set));
        assertTrue(files.containsKey("feedback/seat-003.html"), files.keySet().toString());
        assertTrue(files.get("feedback/seat-003.html").contains("&lt;b&gt;Bo&lt;/b&gt;"));
        assertFalse(files.get("feedback/seat-003.html").contains("<b>Bo</b>"));
    }

    @Test
    void theSameFileTwiceIsNamedAndCountsOnce() throws IOException {
        ProblemSet set = set(PLAN);
        put("a.csv", rightAnswers(sheet(set, 1)));
        String once = written(task(set)).get("marks.csv");
        put("b.csv", rightAnswers(sheet(set, 1)));
        Map<String, String> files = new TreeMap<>();
        Marking.Marked marked = Marking.mark(task(set), files::put);
        assertEquals(once, files.get("marks.csv"));
        assertEquals(1, marked.notes().size());
        assertTrue(
                marked.notes()
                        .get(0)
                        .print()
                        .startsWith("b.csv:2: warning: this says of sheet " + set.id(1)
                                + " only what stands in a.csv already"),
                marked.notes().get(0).print());
    }

    @Test
    void whatWasSetAsideMayBeMendedAndHandedInAgain() throws IOException {
        ProblemSet set = set(PLAN);
        Sheet sheet = sheet(set, 1);
        put("a.csv", "sheet,question,answer\n" + sheet.id() + ",q22a,-5 kΩ\n");
        String aside = written(task(set)).get("set-aside.csv");
        assertTrue(aside.contains(",q22a,'-5 kΩ,"), aside);
        put("a.csv", aside.replace(",q22a,", ",q2a,"));
        String answers = written(task(set)).get("answers.csv");
        assertTrue(line(answers, "1," + sheet.id() + ",q2a").get(0).contains(",'-5 kΩ,−5"), answers);
    }
}
