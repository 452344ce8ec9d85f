package ampersheet.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.sheet.SheetMaker;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A learner is forgotten: nothing of hers is left in any file, and nothing of anybody else's is lost. */
class ErasureTest extends HandInFixture {
    @TempDir
    private Path lists;

    private Marking.Task task(boolean withoutAda) throws IOException {
        Path list = lists.resolve("decisions.csv");
        Marking.Task task = new Marking.Task(
                folder,
                new SheetMaker(SET),
                Optional.empty(),
                withoutAda ? roster.without(1) : roster,
                Optional.of(new Marking.NamedText("times.csv", Files.readString(lists.resolve("times.csv")))),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                OtherSheets.NONE,
                false);
        return task.deciding(new Marking.NamedText("decisions.csv", Files.readString(list)));
    }

    private Erasure erasure() throws IOException {
        return Marking.erasure(
                task(false), 1, Optional.of(lists.resolve("decisions.csv")), Optional.of(lists.resolve("times.csv")));
    }

    private void handIn() throws IOException {
        put("ada.csv", saved(ONE, "ABCDEF", 1, true));
        put("bo.csv", saved(TWO, "HGFEDC", 1, true));
        put(
                "paper.csv",
                "sheet,seat,name,"
                        + String.join(
                                ",",
                                ONE.places().stream().map(key -> key.question()).toList()) + "\n"
                        + ONE.id() + ",1,Ada" + ",\"Ada's 5 V\"".repeat(PLACES) + "\n"
                        + TWO.id() + ",2,'=Bo" + ",\"Bo's 5 V\"".repeat(PLACES) + "\n");
        put("seat-001 scan.csv", new String(new byte[] {1, 2, 0, 7}, StandardCharsets.ISO_8859_1));
        Files.writeString(
                lists.resolve("decisions.csv"),
                "seat,question,answer,file,decision,value,reason\n1," + question(0)
                        + ",,,mark,1,\"Ada said so,\nand showed it\"\n2," + question(0) + ",,,mark,0.5,Bo said so\n"
                        + "1,,,ada.csv,counts,,Ada's own\n");
        Files.writeString(
                lists.resolve("times.csv"), "file,received\nada.csv,2026-03-05T10:00\nbo.csv,2026-03-05T10:01\n");
    }

    private String everything(Path of) throws IOException {
        StringBuilder all = new StringBuilder();
        try (Stream<Path> files = Files.list(of)) {
            for (Path file : files.sorted().toList()) {
                all.append(file.getFileName()).append('\n');
                all.append(new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1));
            }
        }
        return all.toString();
    }

    @Test
    void whatWouldBeErasedIsToldAndNothingIsChanged() throws IOException {
        handIn();
        String before = everything(folder) + everything(lists);
        List<String> told = erasure().told();
        assertEquals(before, everything(folder) + everything(lists));
        String all = String.join("\n", told);
        assertTrue(all.contains("ada.csv: it holds nothing but this learner's answers"), all);
        assertTrue(all.contains("take 1 line out of ") && all.contains("paper.csv"), all);
        assertTrue(all.contains("seat-001 scan.csv: it could not be read"), all);
        assertTrue(all.contains("take 2 lines out of " + lists.resolve("decisions.csv")), all);
        assertTrue(all.contains("take 1 line out of " + lists.resolve("times.csv")), all);
        assertFalse(all.contains("bo.csv"), all);
    }

    @Test
    void onceErasedNothingOfTheLearnerIsLeftAndNothingOfOthersIsLost() throws IOException {
        handIn();
        Map<String, String> before = new TreeMap<>();
        Marking.mark(task(false), before::put);
        erasure().apply();
        String left = everything(folder) + everything(lists);
        for (String hers : List.of("Ada", "ada", ONE.id().toString(), "showed it", "seat-001")) {
            assertFalse(left.contains(hers), hers + " in\n" + left);
        }
        assertTrue(left.contains("Bo's 5 V") && left.contains("Bo said so") && left.contains("bo.csv,2026"), left);
        Map<String, String> after = new TreeMap<>();
        Marking.Marked marked = Marking.mark(task(true), after::put);
        assertEquals(
                List.of(),
                marked.notes().stream()
                        .filter(note -> note.problem().contains("no longer"))
                        .toList());
        after.forEach((path, text) -> {
            assertFalse(path.contains("seat-001"), path);
            assertFalse(text.contains("Ada"), path);
            assertFalse(text.contains(ONE.id().toString()), path);
        });
        assertEquals(row(before.get("marks.csv"), "2,"), row(after.get("marks.csv"), "2,"));
        assertEquals(before.get("feedback/seat-002.html"), after.get("feedback/seat-002.html"));
    }

    @Test
    void whatLiesInASpreadsheetWithOthersIsLeftToTheInstructor() throws IOException {
        handIn();
        put("paper.csv", Files.readString(folder.resolve("paper.csv")), StandardCharsets.UTF_16);
        String all = String.join("\n", erasure().told());
        assertTrue(all.contains("by hand: take 1 line out of ") && all.contains("paper.csv, which is no plain"), all);
    }

    @Test
    void aRecordThatGoesOnInTheNextLineIsTakenOutWhole() {
        assertEquals(
                "a,b\n3,\"x\ny\"\n",
                Erasure.without("a,b\n1,\"he\nll\"\"o\n\"\n3,\"x\ny\"\n2,5\" pipe\n", new TreeSet<>(List.of(2, 7))));
    }
}
