package ampersheet.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Roster;
import ampersheet.sheet.RosterReader;
import ampersheet.sheet.SheetMaker;
import ampersheet.sheet.SmallLibrary;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/** Every kind of damage is named with file and line, and costs nothing but itself. */
class DamagedAnswersTest {
    private static final ProblemSet SET = ProblemSet.of(PlanReader.read("plan.yaml", """
      title: Lanterns
      problems:
        - {template: current-limiting/indicator, example: yes}
        - {template: voltage-dividers/plain-divider, support: faded, fade: forward, blank: 1}
      """), SmallLibrary.open());
    private static final Roster CLASS = RosterReader.read("class.csv", "seat,name\n1,Ada\n2,Bo\n");
    private static final String ONE = SET.id(1).toString();
    private static final String TWO = SET.id(2).toString();
    private static final String HEAD = "sheet,question,answer\n";
    private static final String RIGHT_LINE = ONE + ",q2b,12 V\n";

    @TempDir
    private Path folder;

    /** @param told the first line of the message, after the file's name */
    private record Damage(String what, String file, byte[] bytes, String told) {
        Damage(String what, String file, String text, String told) {
            this(what, file, text.getBytes(StandardCharsets.UTF_8), told);
        }
    }

    private static List<Damage> tables() {
        return List.of(
                new Damage("empty", "a.csv", "", ": error: this file is empty"),
                new Damage("only a byte order mark", "a.csv", "\uFEFF", ": error: this file is empty"),
                new Damage("only blank lines", "a.csv", "\n  \n\n", ": error: this file is empty"),
                new Damage(
                        "Latin-1",
                        "a.csv",
                        (HEAD + ONE + ",q2a,4 µA\n").getBytes(StandardCharsets.ISO_8859_1),
                        ": warning: this file is not in UTF-8 and is read as Latin-1 (Windows-1252)"),
                new Damage(
                        "UTF-16",
                        "a.csv",
                        ("\uFEFF" + HEAD).getBytes(StandardCharsets.UTF_16LE),
                        ": warning: this file is in UTF-16"),
                new Damage(
                        "bytes that are no text",
                        "a.csv",
                        new byte[] {(byte) 0xE9, 7, 1},
                        ": error: this file is not UTF-8 text"),
                new Damage(
                        "no head",
                        "a.csv",
                        ONE + ",q2a,1 kΩ\n",
                        ":1: warning: this table has no first line of names; each line is read as sheet, "
                                + "question, answer"),
                new Damage(
                        "no head, and a line that does not fit",
                        "a.csv",
                        ONE + ",q2a,1 kΩ\nhello\n",
                        ":1: error: the first line names no column sheet and no column question and no column answer"),
                new Damage(
                        "no sheet column",
                        "a.csv",
                        "id,question,answer\n",
                        ":1: error: the first line names no column sheet"),
                new Damage(
                        "no question column",
                        "a.csv",
                        "sheet,q,answer\n",
                        ":1: error: the first line names no column question"),
                new Damage(
                        "no answer column",
                        "a.csv",
                        "\nsheet,question\n",
                        ":2: error: the first line names no column answer"),
                new Damage(
                        "a column twice",
                        "a.csv",
                        "sheet,question,answer,answer\n" + ONE + ",q2a,1,2\n",
                        ":1: error: the first line names the column answer twice"),
                new Damage("head only", "a.csv", HEAD, ":1: error: this file holds no answer"),
                new Damage(
                        "too few columns",
                        "a.csv",
                        HEAD + ONE + ",q2a\n",
                        ":2: error: this line has 2 columns, too few for a sheet, a question and an answer"),
                new Damage(
                        "one column",
                        "a.csv",
                        HEAD + RIGHT_LINE + "hello\n",
                        ":3: error: this line has one column, too few for a sheet, a question and an answer"),
                new Damage(
                        "a bare comma in the answer",
                        "a.csv",
                        HEAD + ONE + ",q2a,4,7 kΩ\n",
                        ":2: error: this line has more columns than the first one"),
                new Damage("no sheet", "a.csv", HEAD + ",q2a,1 kΩ\n", ":2: error: this line names no sheet"),
                new Damage("no question", "a.csv", HEAD + ONE + ",,1 kΩ\n", ":2: error: this line names no question"),
                new Damage(
                        "an open quotation mark",
                        "a.csv",
                        HEAD + ONE + ",q2a,\"1 kΩ\n" + RIGHT_LINE,
                        ":2: error: a quotation mark is opened and not closed, or text follows a closing one"),
                new Damage(
                        "text after a quotation mark",
                        "a.csv",
                        HEAD + ONE + ",q2a,\"1\" kΩ\n" + RIGHT_LINE,
                        ":2: error: a quotation mark is opened and not closed, or text follows a closing one"),
                new Damage(
                        "a zero byte",
                        "a.csv",
                        HEAD + ONE + ",q2a,1\u0000kΩ\n",
                        ":2: error: this answer holds a character that no keyboard types"),
                new Damage(
                        "a replacement character",
                        "a.csv",
                        HEAD + ONE + ",q2a,1 k\uFFFD\n",
                        ":2: error: this answer holds a character that no keyboard types"),
                new Damage(
                        "a very long answer",
                        "a.csv",
                        HEAD + ONE + ",q2a," + "1".repeat(201) + "\n",
                        ":2: error: this answer has 201 characters"),
                new Damage(
                        "an ID with a slip",
                        "a.csv",
                        HEAD + slip(ONE) + ",q2a,1 kΩ\n" + slip(ONE) + ",q2b,1 V\n",
                        ":2: error: this sheet ID has a typing slip: its check character does not fit"),
                new Damage(
                        "a short ID",
                        "a.csv",
                        HEAD + RIGHT_LINE + "AB,q2a,1 kΩ\n",
                        ":3: error: this sheet ID is too short"),
                new Damage(
                        "a foreign character in an ID",
                        "a.csv",
                        HEAD + "A7K3M-0Ü7-R,q2a,1 kΩ\n",
                        ":2: error: a sheet ID has no character “Ü”"),
                new Damage(
                        "another plan's ID",
                        "a.csv",
                        HEAD + other(1) + ",q2a,1 kΩ\n",
                        ":2: error: this sheet was issued from another plan than plan.yaml"),
                new Damage(
                        "another template version's ID",
                        "a.csv",
                        HEAD + otherVersion() + ",q2a,1 kΩ\n",
                        ":2: error: this sheet was issued from this plan, but with another version of its "
                                + "templates or another "
                                + "parts list, so its numbers cannot be made again from those at hand"),
                new Damage(
                        "a seat that is not in the class",
                        "a.csv",
                        HEAD + SET.id(3) + ",q2a,1 kΩ\n",
                        ":2: error: seat 3 of this sheet is not in the class list"),
                new Damage(
                        "no such question",
                        "a.csv",
                        HEAD + ONE + ",q9,1 kΩ\n",
                        ":2: error: the sheet has no such question"),
                new Damage(
                        "a question of the example",
                        "a.csv",
                        HEAD + ONE + ",q1a,1 kΩ\n",
                        ":2: error: the sheet shows q1a worked out and has no place for an answer to it"),
                new Damage(
                        "the same question twice",
                        "a.csv",
                        HEAD + ONE + ",q2b,1 V\n" + ONE + ",q2b,2 V\n",
                        ":3: error: q2b of sheet " + ONE + " is answered twice in this file, and differently"));
    }

    private static List<Damage> filled() {
        return List.of(
                new Damage("empty", "a.md", "", ": error: this file is empty"),
                new Damage(
                        "another text",
                        "a.md",
                        "# Hello\n\nA text.\n",
                        ": error: there is no place for an answer in this file"),
                new Damage(
                        "no ID",
                        "a.md",
                        "# Lanterns\n\n    q2a  R = 1 kΩ\n",
                        ":3: error: this answer stands under no sheet ID"),
                new Damage(
                        "an ID with a slip",
                        "a.md",
                        "**Sheet " + slip(ONE) + "**\n\n    q2a  R = 1 kΩ\n",
                        ":3: error: this sheet ID has a typing slip: its check character does not fit"),
                new Damage(
                        "a lost place",
                        "a.md",
                        "**Sheet " + ONE + "**\n\n    q2b  V = 1 V\n",
                        ":3: error: this sheet has lost the place"),
                new Damage(
                        "an answer below its place",
                        "a.md",
                        "**Sheet " + ONE + "**\n\n    q2b  V = ____________\n    12 V\n",
                        ":4: error: this line stands below the place for q2b and is not read"),
                new Damage(
                        "two ticks",
                        "a.md",
                        "**Sheet " + ONE + "**\n\n**q2c** Which?\n\n- [x] yes\n- [X] no\n",
                        ":6: error: 2 options of q2c are ticked"),
                new Damage(
                        "a broken bracket",
                        "a.md",
                        "**Sheet " + ONE + "**\n\n**q2c** Which?\n\n- [x yes\n- [ ] no\n",
                        ":5: error: the bracket of this option is not closed"),
                new Damage(
                        "a key",
                        "a.md",
                        "**Key — not for handing out**\n\n**Sheet " + ONE + "**\n",
                        ":1: error: this is a key and not a learner's sheet"),
                new Damage(
                        "a very long answer",
                        "a.md",
                        "**Sheet " + ONE + "**\n\n    q2b  V = " + "9".repeat(300) + "\n",
                        ":3: error: this answer has 300 characters"));
    }

    private static List<Damage> others() {
        return List.of(
                new Damage("a page", "a.html", "<p>", ": error: this is a page and not the answers typed in it"),
                new Damage("an archive", "a.zip", "PK", ": error: this is an archive, and what is in it is not read"),
                new Damage("a document", "a.docx", "PK", ": error: this kind of file is not read"),
                new Damage("no ending", "README", "?", ": error: this kind of file is not read"));
    }

    private static String slip(String id) {
        return id.substring(0, 6) + (id.charAt(6) == '0' ? '1' : '0') + id.substring(7, 8) + '7' + id.substring(9);
    }

    private static String other(int seat) {
        return new ampersheet.sheet.SheetId(
                        SET.id(1).plan().equals("00") ? "11" : "00", SET.id(1).templates(), seat)
                .toString();
    }

    private static String otherVersion() {
        return new ampersheet.sheet.SheetId(
                        SET.id(1).plan(), SET.id(1).templates().equals("000") ? "111" : "000", 1)
                .toString();
    }

    @TestFactory
    Stream<DynamicTest> eachIsNamedWithFileAndLineAndCostsNothingElse() {
        return Stream.of(tables(), filled(), others())
                .flatMap(List::stream)
                .map(damage -> DynamicTest.dynamicTest(damage.file() + ": " + damage.what(), () -> check(damage)));
    }

    @Test
    void thereAreFortyAndMore() {
        int cases = tables().size()
                + filled().size()
                + others().size()
                + listFaults().size();
        assertTrue(cases >= 40, cases + " cases");
    }

    private void check(Damage damage) throws IOException {
        Path here = Files.createTempDirectory(folder, "case");
        Files.write(here.resolve(damage.file()), damage.bytes());
        Files.writeString(here.resolve("sound.csv"), HEAD + TWO + ",q2a,1 kΩ\n", StandardCharsets.UTF_8);
        TreeMap<String, String> files = new TreeMap<>();
        Marking.Marked marked = Marking.mark(
                new Marking.Task(
                        here,
                        new SheetMaker(SET),
                        Optional.empty(),
                        CLASS,
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        OtherSheets.NONE,
                        false),
                files::put);
        List<String> told = new ArrayList<>();
        marked.notes().forEach(note -> told.add(note.print().lines().findFirst().orElse("")));
        assertTrue(
                told.stream().anyMatch(line -> line.startsWith(damage.file() + damage.told())),
                damage.file() + damage.told() + "\nbut was told\n" + String.join("\n", told));
        assertTrue(marked.notes().stream().noneMatch(note -> note.nextAction().isEmpty()), "each says what to do next");
        assertTrue(
                files.get("files.csv").lines().anyMatch(line -> line.startsWith(damage.file() + ",")),
                "the file is listed");
        assertTrue(files.get("answers.csv").contains("2," + TWO + ",q2a,"), "the sound file is marked all the same");
        if (new String(damage.bytes(), StandardCharsets.UTF_8).contains(RIGHT_LINE)) {
            assertTrue(
                    files.get("answers.csv").contains("1," + ONE + ",q2b,")
                            && files.get("answers.csv").contains(",12 V,"),
                    "sound lines of a damaged file are marked");
        }
    }

    private static List<String[]> listFaults() {
        return List.of(
                new String[] {"", "times.csv: error: this file is empty"},
                new String[] {
                    "name,when\n", "times.csv:1: error: the first line names no column file and no column received"
                },
                new String[] {
                    "file,received\nb.csv,2026-03-05T10:00\n",
                    "times.csv:2: error: there is no file “b.csv” among the answers"
                },
                new String[] {
                    "file,received\nsound.csv,yesterday\n", "times.csv:2: error: “yesterday” is not a date and time"
                },
                new String[] {
                    "file,received\nsound.csv,2026-02-30T10:00\n",
                    "times.csv:2: error: “2026-02-30T10:00” is not a date and time"
                },
                new String[] {
                    "file,received\nsound.csv,2026-03-05T10:00\nsound.csv,2026-03-05T11:00\n",
                    "times.csv:3: error: the file sound.csv is listed twice"
                });
    }

    @TestFactory
    Stream<DynamicTest> aBrokenListOfTimesIsRefusedBeforeAnythingIsMarked() {
        return listFaults().stream()
                .map(fault -> DynamicTest.dynamicTest(fault[1], () -> {
                    Path here = Files.createTempDirectory(folder, "case");
                    Files.writeString(here.resolve("sound.csv"), HEAD + TWO + ",q2a,1 kΩ\n", StandardCharsets.UTF_8);
                    Marking.Task task = new Marking.Task(
                            here,
                            new SheetMaker(SET),
                            Optional.empty(),
                            CLASS,
                            Optional.of(new Marking.NamedText("times.csv", fault[0])),
                            Optional.empty(),
                            Optional.empty(),
                            Optional.empty(),
                            OtherSheets.NONE,
                            false);
                    DiagnosticException refused = assertThrows(
                            DiagnosticException.class,
                            () -> Marking.mark(task, (path, text) -> {
                                throw new AssertionError("written: " + path);
                            }));
                    Diagnostic first = refused.diagnostics().get(0);
                    assertEquals(fault[1], first.print().lines().findFirst().orElse(""));
                }));
    }

    @Test
    void aFolderAmongTheAnswersIsNamed() throws IOException {
        Files.createDirectory(folder.resolve("late"));
        Files.writeString(folder.resolve(".hidden"), "x", StandardCharsets.UTF_8);
        TreeMap<String, String> files = new TreeMap<>();
        Marking.Marked marked = Marking.mark(
                new Marking.Task(
                        folder,
                        new SheetMaker(SET),
                        Optional.empty(),
                        CLASS,
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        OtherSheets.NONE,
                        false),
                files::put);
        assertEquals(1, marked.notes().size());
        assertTrue(marked.notes().get(0).print().startsWith("late: error: this is a folder"));
        assertTrue(files.get("files.csv").contains(".hidden,,,0,\"hidden, not read\","), files.get("files.csv"));
        assertTrue(files.get("report.html").contains("Nothing that came in could be marked."));
    }
}
