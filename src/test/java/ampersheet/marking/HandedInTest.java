package ampersheet.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.answer.AnswerKey;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.Unit;
import ampersheet.render.markdown.MarkdownPage;
import ampersheet.sheet.Composer;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Roster;
import ampersheet.sheet.RosterReader;
import ampersheet.sheet.Sheet;
import ampersheet.sheet.SheetMaker;
import ampersheet.source.Bounds;
import ampersheet.source.SourceFile;
import ampersheet.source.Unread;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.BiFunction;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What happens around an answer: which of two counts, whose it is, what the instructor decides. */
class HandedInTest {
    private static final TemplateLibrary LIBRARY = new TemplateLibrary(List.of(TemplateFiles.builtIn()));
    private static final ProblemSet SET = ProblemSet.of(PlanReader.read("plan.yaml", """
      title: Lanterns
      seed: handed in
      problems:
        - {template: current-limiting/one-indicator}
        - {template: voltage-dividers/battery-sense}
      """), LIBRARY);
    private static final Sheet ONE = new SheetMaker(SET).sheet(1);
    private static final Sheet TWO = new SheetMaker(SET).sheet(2);
    private static final int PLACES = ONE.places().size();
    private static final String HEAD = "sheet,question,answer,seat,save,browser\n";

    @TempDir
    private Path folder;

    private Roster roster = RosterReader.read("class.csv", "seat,name,email\n1,Ada,a@x\n2,=Bo,b@x\n3,Cem,c@x\n");
    private Optional<Marking.NamedText> received = Optional.empty();
    private String decisions = "";
    private Marking.Marked marked;

    private void put(String name, String text) throws IOException {
        put(name, text, StandardCharsets.UTF_8);
    }

    private void put(String name, String text, Charset charset) throws IOException {
        Files.write(folder.resolve(name), text.getBytes(charset));
    }

    private Map<String, String> mark() {
        Map<String, String> files = new TreeMap<>();
        Marking.Task task = new Marking.Task(
                folder, SET, Optional.empty(), roster, received, Optional.empty(), Optional.empty(), false);
        marked = Marking.mark(
                decisions.isEmpty() ? task : task.deciding(new Marking.NamedText("decisions.csv", decisions)),
                files::put);
        return files;
    }

    private String notes() {
        return String.join(
                "\n", marked.notes().stream().map(note -> note.print()).toList());
    }

    private static String right(AnswerKey key) {
        return SimulatedClass.written(key, key.expected());
    }

    /** Lines of a sheet; {@code text} says what stands at a place. */
    private static String lines(Sheet sheet, String behind, BiFunction<Integer, AnswerKey, String> text) {
        StringBuilder out = new StringBuilder();
        for (int i = 0; i < sheet.places().size(); i++) {
            AnswerKey key = sheet.places().get(i);
            out.append(sheet.id() + "," + key.question() + ",\"" + text.apply(i, key) + "\"" + behind + "\n");
        }
        return out.toString();
    }

    private static String saved(Sheet sheet, String browser, int save, boolean right) {
        return HEAD
                + lines(
                        sheet,
                        "," + sheet.id().seat() + "," + save + "," + browser,
                        (i, key) -> right ? right(key) : 77 + i + " F");
    }

    private static String row(String table, String start) {
        return table.lines().filter(line -> line.startsWith(start)).findFirst().orElse("");
    }

    private static String question(int place) {
        return ONE.places().get(place).question();
    }

    // Which counts

    @Test
    void theNewerSaveCountsWhateverTheBrowserNamedItsFile() throws IOException {
        put("answers.csv", saved(ONE, "ABCDEF", 1, false));
        put("answers (1).csv", saved(ONE, "ABCDEF", 2, true));
        assertTrue(row(mark().get("marks.csv"), "1,").contains("," + PLACES + "," + PLACES + ","));
        put("answers.csv", saved(ONE, "ABCDEF", 10, true));
        put("answers (1).csv", saved(ONE, "ABCDEF", 9, false));
        assertTrue(row(mark().get("marks.csv"), "1,").contains("," + PLACES + "," + PLACES + ","));
        assertEquals(0, marked.toDecide());
    }

    @Test
    void twoThatContradictEachOtherWithoutAnOrderAreBothKeptAndListed() throws IOException {
        put("a.csv", "sheet,question,answer\n" + lines(ONE, "", (i, key) -> right(key)));
        put("b.csv", "sheet,question,answer\n" + lines(ONE, "", (i, key) -> i == 0 ? "1 F" : right(key)));
        Map<String, String> files = mark();
        String row = row(files.get("marks.csv"), "1,");
        assertTrue(row.contains("," + (PLACES - 1) + "," + PLACES + ","), row);
        assertTrue(row.endsWith(",0,1," + (PLACES - 1) + ",undecided,a@x"), row);
        assertEquals(2, marked.toDecide());
        assertTrue(files.get("decide.csv").contains("1,Ada," + ONE.id() + ",,,a.csv,2,"), files.get("decide.csv"));
        assertTrue(files.get("decide.csv").contains("1,Ada," + ONE.id() + ",,,b.csv,2,"), files.get("decide.csv"));
        assertTrue(files.get("set-aside.csv").contains(",1 F,undecided: contradicts a.csv"));
        assertTrue(files.get("feedback/seat-001.html").contains("Not final."));
        assertTrue(files.get("report.html").contains("Decide these"));
    }

    @Test
    void aStrangersFileUnderAnothersSheetNeitherOverwritesNorFillsGaps() throws IOException {
        String whole = saved(ONE, "ABCDEF", 3, true);
        String gap = whole.substring(0, whole.lastIndexOf(ONE.id().toString()));
        put("ada.csv", gap);
        put("eve.csv", saved(ONE, "HGFEDC", 9, false));
        received = Optional.of(new Marking.NamedText(
                "times.csv", "file,received\nada.csv,2026-03-05T10:00\neve.csv,2026-03-05T11:00\n"));
        Map<String, String> files = mark();
        assertTrue(row(files.get("marks.csv"), "1,").endsWith(",0," + PLACES + ",0,undecided,a@x"));
        decisions = "seat,file,decision,reason\n1,ada.csv,counts,Eve used Ada's page\n";
        files = mark();
        assertTrue(row(files.get("marks.csv"), "1,").contains("," + (PLACES - 1) + "," + PLACES + ","));
        assertTrue(row(files.get("marks.csv"), "1,").endsWith(",1,0,0," + (PLACES - 1) + ",in part,a@x"));
        assertEquals(0, marked.toDecide());
        assertTrue(files.get("feedback/seat-001.html").contains("which hand-in counts, because: Eve used"));
        assertEquals(
                PLACES,
                files.get("set-aside.csv")
                        .lines()
                        .filter(line -> line.startsWith("eve.csv,"))
                        .count(),
                "nothing that came in is lost");
    }

    @Test
    void aLaterFileWithOtherNumbersThroughoutIsNotTakenForANewerOne() throws IOException {
        put("a.csv", "sheet,question,answer\n" + lines(ONE, "", (i, key) -> right(key)));
        put("b.csv", "sheet,question,answer\n" + lines(ONE, "", (i, key) -> 77 + i + " F"));
        received = Optional.of(
                new Marking.NamedText("times.csv", "file,received\na.csv,2026-03-05T10:00\nb.csv,2026-03-05T11:00\n"));
        assertTrue(row(mark().get("marks.csv"), "1,").endsWith(",undecided,a@x"));
    }

    @Test
    void aSheetIdThatIsNotThatOfThePageIsUndecided() throws IOException {
        put("ada.csv", saved(ONE, "ABCDEF", 1, true));
        put("bo.csv", saved(ONE, "HGFEDC", 9, false).replace(",1,9,", ",2,9,"));
        Map<String, String> files = mark();
        assertTrue(row(files.get("marks.csv"), "1,").contains("," + PLACES + "," + PLACES + ","));
        assertTrue(notes().contains("the page was that of seat 2, and the sheet ID is that of seat 1"), notes());
        assertEquals(1, marked.toDecide());
        assertEquals(PLACES, marked.setAside());
    }

    @Test
    void filesThatWerePutTogetherAreReadAsTheHandInsTheyAre() throws IOException {
        put("all.csv", saved(ONE, "ABCDEF", 2, true) + saved(TWO, "HGFEDC", 1, true) + saved(ONE, "ABCDEF", 1, false));
        Map<String, String> files = mark();
        assertTrue(row(files.get("marks.csv"), "1,").contains("," + PLACES + "," + PLACES + ","));
        assertTrue(row(files.get("marks.csv"), "2,'=Bo,").contains("," + PLACES + "," + PLACES + ","));
        assertEquals(0, marked.toDecide());
    }

    // From whom what came in

    @Test
    void everyLearnerHasAStatus() throws IOException {
        roster = RosterReader.read("class.csv", "seat,name\n1,Ada\n2,Bo\n3,Cem\n4,Dee\n5,Eda Lovett\n6,Fay\n");
        put("a.csv", "sheet,question,answer\n" + lines(ONE, "", (i, key) -> right(key)));
        put("b.csv", "sheet,question,answer\n" + lines(TWO, "", (i, key) -> i == 0 ? right(key) : ""));
        put("c.csv", "sheet,question,answer\n" + lines(new SheetMaker(SET).sheet(3), "", (i, key) -> ""));
        put("answers-" + SET.id(4) + ".csv", "\u0000\u0001");
        put("lovett, eda.docx", "PK");
        Map<String, String> files = mark();
        String marks = files.get("marks.csv");
        assertTrue(row(marks, "1,").endsWith(",in"), marks);
        assertTrue(row(marks, "2,").endsWith(",in part"), marks);
        assertTrue(row(marks, "3,").endsWith(",blank"), marks);
        assertTrue(row(marks, "4,").endsWith(",unreadable file"), marks);
        assertTrue(row(marks, "5,").endsWith(",unreadable file"), marks);
        assertTrue(row(marks, "6,").endsWith(",nothing"), marks);
        String report = files.get("report.html");
        for (String said : List.of("Nothing came in", "Seat 6, Fay", "Handed in blank", "Seat 3, Cem", "Seat 4, Dee")) {
            assertTrue(report.contains(said), said);
        }
        assertTrue(files.get("feedback/seat-003.html").contains("handed in blank"));
    }

    // Commas

    /** Places of the sheet with an answer that may be written with three decimals. */
    private static String ambiguous() {
        return "2,353 V";
    }

    @Test
    void otherAnswersOfTheFileSettleTheDecimalMarkerAndElseItIsToDecide() throws IOException {
        put(
                "a.csv",
                "sheet,question,answer\n" + ONE.id() + "," + question(0) + ",\"" + ambiguous() + "\"\n" + ONE.id() + ","
                        + question(1) + ",\"4,7 kΩ\"\n");
        Map<String, String> files = mark();
        assertTrue(row(files.get("answers.csv"), "1," + ONE.id() + "," + question(0))
                .contains("2.353\u00A0V"));
        assertEquals(0, marked.toDecide());
        assertTrue(files.get("feedback/seat-001.html").contains("the comma as the decimal marker"));
        put("a.csv", "sheet,question,answer\n" + ONE.id() + "," + question(0) + ",\"" + ambiguous() + "\"\n");
        files = mark();
        assertEquals(1, marked.toDecide());
        String line = row(files.get("decide.csv"), "1,");
        assertTrue(line.contains("2.353\u00A0V (not right) or 2.353\u00A0kV (not right)"), line);
        assertTrue(row(files.get("marks.csv"), "1,").contains(",1,"), "it counts as unreadable meanwhile");
    }

    @Test
    void aHabitIsNotHeldAgainstAnAnswerThatTheOtherReadingMakesRight() {
        assertEquals(Optional.of(CommaReading.DECIMAL), CommaReading.shownBy(List.of("4,7 kΩ", "0,297 W")));
        assertEquals(Optional.of(CommaReading.THOUSANDS), CommaReading.shownBy(List.of("4.7 kΩ", "1,234.5 V")));
        assertEquals(Optional.empty(), CommaReading.shownBy(List.of("4.7 kΩ", "4,7 kΩ")));
        assertEquals(Optional.empty(), CommaReading.shownBy(List.of("4k7", "2,353 V", "12 V")));
        assertEquals("ca. -2.353 V", CommaReading.DECIMAL.of("ca. -2,353 V"));
        assertEquals("2353 V", CommaReading.THOUSANDS.of("2,353 V"));
    }

    // Decisions

    @Test
    void decisionsCountAreShownAndKeepTheirReason() throws IOException {
        put(
                "a.csv",
                "sheet,question,answer\n"
                        + lines(ONE, "", (i, key) -> i == 0 ? "about two" : i == 1 ? "1 F" : i == 2 ? "1,234 V" : ""));
        decisions = "seat,question,answer,file,decision,value,reason\n"
                + "1," + question(0) + ",about two,,accept,,said aloud\n"
                + "1," + question(1) + ",1 F,,mark,\"0,5\",half shown\n"
                + "1," + question(2) + ",\"1,234 V\",,read as,"
                + right(ONE.places().get(2)) + ",wrote it so\n";
        Map<String, String> files = mark();
        String row = row(files.get("marks.csv"), "1,");
        assertTrue(row.contains(ONE.id() + ",2.5," + PLACES + ",2,0,1,0,0,"), row);
        assertEquals(0, marked.toDecide());
        String page = files.get("feedback/seat-001.html");
        for (String said : List.of("accepted as right, because: said aloud", "given half a mark", "wrote it so")) {
            assertTrue(page.contains(said), said);
            assertTrue(files.get("report.html").contains("What you decided"));
        }
        assertTrue(files.get("answers.csv").contains("accepted as right: said aloud"), files.get("answers.csv"));
    }

    @Test
    void aQuestionIsLeftOutForEveryone() throws IOException {
        put("a.csv", "sheet,question,answer\n" + lines(ONE, "", (i, key) -> right(key)));
        put("b.csv", "sheet,question,answer\n" + lines(TWO, "", (i, key) -> right(key)));
        String step = ONE.problems().get(0).template().name() + " "
                + ONE.places().get(1).step();
        for (String named : List.of("1," + question(1), "," + question(1), "," + step)) {
            decisions = "seat,question,decision,reason\n" + named + ",leave out,not taught yet\n";
            Map<String, String> files = mark();
            String of = "," + (PLACES - 1) + "," + (PLACES - 1) + ",";
            assertTrue(row(files.get("marks.csv"), "1,").contains(of), named);
            assertTrue(row(files.get("marks.csv"), "2,").contains(of), named);
            assertTrue(files.get("feedback/seat-002.html").contains("left out for everyone, because: not taught yet"));
            assertEquals(List.of(), marked.notes());
        }
    }

    @Test
    void aDecisionThatNoLongerFitsIsToldAndChangesNothing() throws IOException {
        put("a.csv", "sheet,question,answer\n" + lines(ONE, "", (i, key) -> right(key)));
        String before;
        String list = "seat,question,answer,file,decision,value,reason\n"
                + "1," + question(0) + ",2 F,,accept,,so\n"
                + "3," + question(0) + ",,,mark,1,so\n"
                + "1,,,gone.csv,counts,,so\n"
                + ",q77,,,leave out,,so\n"
                + "1," + question(0) + ",,,,,\n"
                + "1," + question(1) + ",1 µJ again,,read as,nothing at all,so\n";
        put("a.csv", "sheet,question,answer\n" + lines(ONE, "", (i, key) -> i == 1 ? "1 µJ again" : right(key)));
        decisions = "";
        before = mark().get("marks.csv");
        decisions = list;
        Map<String, String> files = mark();
        assertEquals(before, files.get("marks.csv"));
        for (String told : List.of(
                "decisions.csv:2: error: this decision no longer fits: seat 1 has another answer to " + question(0),
                "decisions.csv:3: error: this decision no longer fits: nothing came in from seat 3",
                "decisions.csv:4: error: this decision no longer fits: there is no such hand-in in a file “gone.csv”",
                "decisions.csv:5: error: this decision no longer fits: no sheet that came in has the question q77",
                "decisions.csv:7: error: this decision no longer fits: “nothing at all” cannot be read")) {
            assertTrue(notes().contains(told), told + "\n" + notes());
        }
        assertTrue(files.get("report.html").contains("no longer fits"));
    }

    @Test
    void aBrokenListOfDecisionsIsRefusedBeforeAnythingIsMarked() throws IOException {
        put("a.csv", "sheet,question,answer\n" + lines(ONE, "", (i, key) -> right(key)));
        decisions = "seat,question,answer,file,decision,value,reason\n"
                + "1,q1a,1 F,,accept,,\n1,q1b,,,accept,,so\n1,q1c,,,mark,2,so\nx,q2a,,,mark,1,so\n"
                + "1,q2b,,,forget,,so\n1,q2c,,,mark,1,so\n1,q2c,,,mark,0,so\n1,,,,counts,,so\n";
        String told = assertThrows(DiagnosticException.class, this::mark).getMessage();
        for (String fault : List.of(
                ":2: error: this decision has no reason",
                ":3: error: “accept” stands here without the answer accepted",
                ":4: error: “2” is not a mark that a question can have",
                ":5: error: “x” is not a seat number",
                ":6: error: “forget” is no decision",
                ":8: error: line 7 decides the same",
                ":9: error: “counts” stands here without a file")) {
            assertTrue(told.contains("decisions.csv" + fault), fault + "\n" + told);
        }
    }

    @Test
    void aFilledInLineOfTheListOfOpenMattersIsADecision() throws IOException {
        put("a.csv", "sheet,question,answer\n" + ONE.id() + "," + question(0) + ",\"=1+1 of \"\"it\"\", maybe\"\n");
        String decide = mark().get("decide.csv");
        assertEquals(1, marked.toDecide());
        decisions = decide.replaceAll(",,,\n$", ",accept,,\"a reason, with a comma\"\n");
        Map<String, String> files = mark();
        assertEquals(List.of(), marked.notes());
        assertTrue(row(files.get("marks.csv"), "1,").contains(ONE.id() + ",1," + PLACES + ",1,"));
        put("decisions.csv", decisions);
        assertTrue(mark().get("files.csv").contains("decisions.csv,,,0,not marked"));
    }

    @Test
    void answersUnderABrokenSheetIdAreListedAndMayBeGivenToTheirLearner() throws IOException {
        String id = ONE.id().toString();
        String slip = id.substring(0, 6) + (id.charAt(6) == '1' ? '2' : '1') + id.substring(7);
        put(
                "a.csv",
                "sheet,question,answer\n"
                        + lines(ONE, "", (i, key) -> right(key)).replace(id, slip));
        Map<String, String> files = mark();
        assertEquals(1, marked.toDecide());
        assertTrue(files.get("decide.csv").contains("one slip away"), files.get("decide.csv"));
        decisions = "seat,sheet,file,decision,reason\n1," + slip + ",a.csv,counts,asked her\n";
        files = mark();
        assertTrue(row(files.get("marks.csv"), "1,").contains("," + PLACES + "," + PLACES + ","));
        assertEquals(0, marked.toDecide());
    }

    // Forms

    @Test
    void tablesOfAnyEncodingAndSeparatorAreRead() throws IOException {
        String plain = "sheet,question,answer\n" + lines(ONE, "", (i, key) -> right(key));
        String marks = marks(plain, StandardCharsets.UTF_8);
        String semicolons = plain.replace(",", ";");
        assertEquals(marks, marks(semicolons, StandardCharsets.UTF_8), this::notes);
        assertEquals(marks, marks("sep=;\r\n" + semicolons, StandardCharsets.UTF_8));
        assertEquals(marks, marks("\uFEFFsep=\t\n" + plain.replace(",", "\t"), StandardCharsets.UTF_8), this::notes);
        assertEquals(marks, marks("\uFEFF" + plain.replace(",", "\t"), StandardCharsets.UTF_16LE), this::notes);
        assertEquals(marks, marks("\uFEFF" + plain, StandardCharsets.UTF_16BE), this::notes);
        assertEquals(marks, marks(plain, StandardCharsets.UTF_16LE), this::notes);
        assertTrue(
                row(marks(plain.replace("Ω", "ohm").replace("≥", ">="), StandardCharsets.ISO_8859_1), "1,")
                        .matches(".*," + PLACES + "," + PLACES + ",.*|.*," + (PLACES - 1) + "," + PLACES + ",.*"),
                "but for letters that Latin-1 has not");
        assertTrue(notes().contains("Latin-1"), notes());
        assertEquals(marks, marks(lines(ONE, "", (i, key) -> right(key)), StandardCharsets.UTF_8), "no first line");
        assertTrue(notes().contains("a.csv:1: warning: this table has no first line of names"), notes());
        assertEquals(
                marks,
                marks(
                        lines(ONE, "", (i, key) -> right(key)).replace(",", ";").replace("\"", ""),
                        StandardCharsets.UTF_8));
    }

    private String marks(String text, Charset charset) throws IOException {
        put("a.csv", text, charset);
        return mark().get("marks.csv");
    }

    @Test
    void aGridOfAnswersFromPaperIsRead() throws IOException {
        StringBuilder head = new StringBuilder("sheet,seat,name");
        StringBuilder ada = new StringBuilder(ONE.id() + ",1,Ada");
        StringBuilder blank = new StringBuilder("," + "2,'=Bo");
        StringBuilder empty = new StringBuilder(SET.id(3) + ",3,Cem");
        ONE.places().forEach(key -> {
            head.append(',').append(key.question().toUpperCase(java.util.Locale.ROOT));
            ada.append(",\"").append(right(key)).append('"');
            blank.append(",-");
            empty.append(',');
        });
        put("grid.csv", head + "\n" + ada + "\n" + blank + "\n" + empty + "\n");
        Map<String, String> files = mark();
        assertEquals(List.of(), marked.notes());
        assertTrue(row(files.get("marks.csv"), "1,").contains("," + PLACES + "," + PLACES + ","));
        assertTrue(row(files.get("marks.csv"), "2,").endsWith(",blank,b@x"));
        assertTrue(row(files.get("marks.csv"), "3,").endsWith(",nothing,c@x"));
        put("grid.csv", head + "\n" + ada.toString().replace(",1,Ada", ",1,Cem") + "\n");
        files = mark();
        assertTrue(notes().contains("the class list calls the learner of seat 1 otherwise than this line"), notes());
        assertEquals(1, marked.toDecide());
        put(
                "grid.csv",
                (head + "\n" + ada + "\n").replace(ONE.id().toString(), "").replace(",1,", ",,"));
        assertTrue(row(mark().get("marks.csv"), "1,").contains("," + PLACES + "," + PLACES + ","), "by name alone");
    }

    @Test
    void aClassListWithoutSeatsOrHeadIsReadAndItsFurtherColumnsComeBack() throws IOException {
        Roster numbered = RosterReader.read("c.csv", "sep=;\nGroup;Name;Mail\nb;Ada;a@x\na;'=Bo;b@x\n");
        assertEquals(
                List.of(new Roster.Seat(1, "Ada", List.of("b", "a@x")), new Roster.Seat(2, "=Bo", List.of("a", "b@x"))),
                numbered.seats());
        assertTrue(numbered.remarks().get(0).problem().contains("no seat numbers"));
        Roster bare = RosterReader.read("c.csv", "2;Ada, the first\n1;Bo\n");
        assertEquals(List.of(new Roster.Seat(1, "Bo"), new Roster.Seat(2, "Ada, the first")), bare.seats());
        roster = RosterReader.read("c.csv", "name,marks,group\nAda,x,b\nBo,y,a\n");
        put("a.csv", "sheet,question,answer\n" + lines(ONE, "", (i, key) -> right(key)));
        String marks = mark().get("marks.csv");
        assertTrue(marks.lines().findFirst().orElse("").endsWith(",status,marks (class list),group"), marks);
        assertTrue(row(marks, "1,Ada,").endsWith(",in,x,b"), marks);
        assertTrue(row(marks, "2,Bo,").endsWith(",nothing,y,a"), marks);
        EarlierMarks.read("marks.csv", marks);
        assertFalse(marks.contains("null"));
    }

    @Test
    void answersComeAsSpreadsheetsAndMarksGoAsSuch() throws IOException, Unread {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (Workbook workbook = new Workbook(out, "x", "1.0")) {
            Worksheet sheet = workbook.newWorksheet("answers");
            for (int i = 0; i < 3; i++) {
                sheet.value(0, i, List.of("sheet", "question", "answer").get(i));
            }
            for (int i = 0; i < PLACES; i++) {
                sheet.value(i + 1, 0, ONE.id().toString());
                sheet.value(i + 1, 1, question(i));
                sheet.value(i + 1, 2, right(ONE.places().get(i)));
            }
        }
        Files.write(folder.resolve("a.xlsx"), out.toByteArray());
        String marks = mark().get("marks.csv");
        assertTrue(row(marks, "1,").contains("," + PLACES + "," + PLACES + ","), marks);
        Files.write(folder.resolve("marks.xlsx"), MarkForms.XLSX.of(marks.replace(",7,7,", ",6.5,7,")));
        String again = SourceFile.foreign(folder.resolve("marks.xlsx"), Bounds.WRITTEN, SourceFile.Links.REFUSED)
                .text();
        assertTrue(row(again, "1,Ada,").contains(",6.5,7,"), again);
        assertTrue(again.contains("2,=Bo,"), again);
        String semicolons =
                new String(MarkForms.SEMICOLONS.of(marks.replace(",7,7,", ",6.5,7,")), StandardCharsets.UTF_8);
        assertTrue(semicolons.startsWith("\uFEFFseat;name;sheet;"), semicolons);
        assertTrue(semicolons.contains(";6,5;7;"), semicolons);
        assertTrue(semicolons.contains("2;'=Bo;"), semicolons);
    }

    // What the plan says of marking

    private static ProblemSet with(String marking) {
        return ProblemSet.of(PlanReader.read("plan.yaml", SET.plan().written() + marking), LIBRARY);
    }

    @Test
    void whatAnswersEarnIsAsThePlanSaysAndSaidOnSheetAndPage() throws IOException {
        ProblemSet set = with("""
          marking:
            unit-missing: 0.25
            late-a-day: 0.1
            grace-minutes: 30
            weights: {current-limiting/one-indicator: 2, voltage-dividers/battery-sense Rx: 0.5}
          """.replace("          marking", "marking").replace("            ", "  "));
        assertEquals(SET.id(1), set.id(1), "marking changes no number");
        Sheet sheet = new SheetMaker(set).sheet(1);
        String says = set.plan().marking().says(sheet);
        assertTrue(says.contains("in questions " + question(0)) && says.contains(" 2."), says);
        assertTrue(says.contains("without its unit counts 25\u00A0%, one rounded too far half"), says);
        assertTrue(says.contains("takes 10\u00A0% off") && says.contains("the first 30 minutes"), says);
        assertTrue(MarkdownPage.render(Composer.sheet(sheet, "")).contains("one rounded too far half"));
        assertFalse(MarkdownPage.render(Composer.sheet(ONE, "")).contains("counts one mark"));
        AnswerKey first = ONE.places().get(0);
        String unitless = QuantityWriter.POINT
                .plain(first.unit().fromSi(first.expected()), Unit.ONE, 4)
                .number();
        put(
                "a.csv",
                "sheet,question,answer\n" + ONE.id() + "," + question(0) + "," + unitless + "\n" + ONE.id() + ","
                        + question(1) + ",\"" + right(ONE.places().get(1)) + "\"\n");
        for (String[] time : new String[][] {
            {"2026-03-05T10:00", "2.5", "2.5"},
            {"2026-03-05T10:30", "2.5", "2.5"},
            {"2026-03-05T10:31", "2.25", "2.5"},
            {"2026-03-06T10:01", "2", "2.5"},
            {"2026-03-25T10:00", "0", "2.5"}
        }) {
            Map<String, String> files = new TreeMap<>();
            Marking.mark(
                    new Marking.Task(
                            folder,
                            set,
                            Optional.empty(),
                            roster,
                            Optional.of(new Marking.NamedText("t.csv", "file,received\na.csv," + time[0] + "\n")),
                            Optional.of(LocalDateTime.of(2026, 3, 5, 10, 0)),
                            Optional.empty(),
                            false),
                    files::put);
            String row = row(files.get("marks.csv"), "1,");
            assertTrue(row.contains(ONE.id() + "," + time[1] + ","), time[0] + ": " + row);
            assertTrue(row.contains("," + time[2] + ",in part,"), time[0] + ": " + row);
            assertTrue(files.get("feedback/seat-001.html").contains("one rounded too far half"));
        }
    }

    @Test
    void aMistakenPolicyIsToldWithItsPlace() {
        String told = assertThrows(
                        DiagnosticException.class,
                        () -> with("marking:\n  unit-missing: 2\n  grace-minutes: soon\n  lateness: 1\n"
                                + "  weights: {no/such: 2, voltage-dividers/battery-sense: 0}\n"))
                .getMessage();
        for (String fault : List.of(
                "\"2\" does not fit unit-missing",
                "\"soon\" does not fit grace-minutes",
                "the key \"lateness\" does not belong to marking",
                "\"0\" does not fit the weight of voltage-dividers/battery-sense")) {
            assertTrue(told.contains(fault), fault + "\n" + told);
        }
        told = assertThrows(DiagnosticException.class, () -> with("marking:\n  weights: {no/such: 2}\n"))
                .getMessage();
        assertTrue(told.contains("no problem of this plan is called \"no/such\""), told);
    }
}
