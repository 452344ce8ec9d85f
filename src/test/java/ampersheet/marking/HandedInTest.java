package ampersheet.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.sheet.Roster;
import ampersheet.sheet.RosterReader;
import ampersheet.sheet.SheetMaker;
import ampersheet.source.Bounds;
import ampersheet.source.SourceFile;
import ampersheet.source.Unread;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.junit.jupiter.api.Test;

/** What happens around an answer: which of two counts, whose it is, in what form it came. */
class HandedInTest extends HandInFixture {
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
        assertTrue(row.contains(",0,1," + (PLACES - 1) + ",undecided,"), row);
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
        assertTrue(row(files.get("marks.csv"), "1,").endsWith(",0," + PLACES + ",0,undecided,0,a@x"));
        decisions = "seat,file,decision,reason\n1,ada.csv,counts,Eve used Ada's page\n";
        files = mark();
        assertTrue(row(files.get("marks.csv"), "1,").contains("," + (PLACES - 1) + "," + PLACES + ","));
        assertTrue(row(files.get("marks.csv"), "1,").contains(",1,0,0," + (PLACES - 1) + ",in part,"));
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
        assertTrue(row(mark().get("marks.csv"), "1,").contains(",undecided,"));
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

    @Test
    void thousandsOfHandInsUnderOneSheetTakeNoTimeAndNoOtherSheetsMarks() throws IOException {
        put("bo.csv", saved(TWO, "ABCDEF", 1, true));
        StringBuilder one = new StringBuilder(HEAD);
        for (int i = 0; i < 30_000; i++) {
            one.append(ONE.id() + "," + question(0) + "," + i + " V,," + i + ",B" + i + "\n");
        }
        put("many.csv", one.toString());
        for (int i = 0; i < 2_000; i++) {
            put("few " + i + ".csv", "sheet,question,answer\n" + ONE.id() + "," + question(0) + "," + i + " V\n");
        }
        long before = System.nanoTime();
        Map<String, String> files = mark();
        assertTrue(System.nanoTime() - before < 20_000_000_000L, "comparing grows faster than what came in");
        assertTrue(notes().contains("32000 hand-ins bear this sheet's ID, and nobody hands in so often"));
        assertEquals(32_000, marked.setAside());
        assertEquals(1, marked.toDecide());
        assertTrue(row(files.get("marks.csv"), "2,").contains("," + PLACES + "," + PLACES + ","));
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
        assertTrue(row(marks, "1,").contains(",in,"), marks);
        assertTrue(row(marks, "2,").contains(",in part,"), marks);
        assertTrue(row(marks, "3,").contains(",blank,"), marks);
        assertTrue(row(marks, "4,").contains(",unreadable file,"), marks);
        assertTrue(row(marks, "5,").contains(",unreadable file,"), marks);
        assertTrue(row(marks, "6,").contains(",nothing,"), marks);
        String report = files.get("report.html");
        for (String said : List.of("Nothing came in", "Seat 6, Fay", "Handed in blank", "Seat 3, Cem", "Seat 4, Dee")) {
            assertTrue(report.contains(said), said);
        }
        assertTrue(files.get("feedback/seat-003.html").contains("handed in blank"));
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
        assertTrue(row(files.get("marks.csv"), "2,").endsWith(",blank,0,b@x"));
        assertTrue(row(files.get("marks.csv"), "3,").endsWith(",nothing,,c@x"));
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
        assertTrue(marks.lines().findFirst().orElse("").endsWith(",status,percent,marks (class list),group"), marks);
        assertTrue(row(marks, "1,Ada,").endsWith(",in,100,x,b"), marks);
        assertTrue(row(marks, "2,Bo,").endsWith(",nothing,,y,a"), marks);
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
}
