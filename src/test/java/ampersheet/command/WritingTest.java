package ampersheet.command;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.issue.WrittenFiles;
import ampersheet.sheet.SmallLibrary;
import java.io.BufferedReader;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What writing commands do with what they find where they write. */
class WritingTest {
    private static final String PLAN =
            "title: Lanterns\nseed: one\nproblems: [{template: current-limiting/indicator}]\n";
    private static final String CLASS = "seat,name\n1,Ada\n2,Bo\n";

    @TempDir
    private Path folder;

    private Path plan;
    private Path roster;
    private Path out;

    private record Run(int exitCode, String out, String err) {}

    @BeforeEach
    void write() throws IOException {
        plan = Files.writeString(folder.resolve("plan.yaml"), PLAN);
        roster = Files.writeString(folder.resolve("class.csv"), CLASS);
        out = folder.resolve("out");
    }

    private static Run run(String... arguments) {
        List<String> all = new ArrayList<>(List.of(arguments));
        all.addAll(List.of("--templates", SmallLibrary.FOLDER.toString()));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int exitCode = Main.run(
                all.toArray(new String[0]),
                new Streams(
                        new BufferedReader(new StringReader("")),
                        new PrintStream(out, true, StandardCharsets.UTF_8),
                        new PrintStream(err, true, StandardCharsets.UTF_8)));
        return new Run(exitCode, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    private Run issue(String... more) {
        List<String> all = new ArrayList<>(
                List.of("issue", plan.toString(), "--roster", roster.toString(), "--out", out.toString()));
        all.addAll(List.of(more));
        return run(all.toArray(new String[0]));
    }

    private Run handout(Path to, String... more) {
        List<String> all = new ArrayList<>(
                List.of("handout", plan.toString(), "--roster", roster.toString(), "--out", to.toString()));
        all.addAll(List.of(more));
        return run(all.toArray(new String[0]));
    }

    private static void refused(Run run, String why) {
        assertEquals(1, run.exitCode(), run.out() + run.err());
        assertTrue(run.err().contains(why), run.err());
        assertFalse(run.err().contains("failed where it should not"), run.err());
    }

    // What must stay

    @Test
    void whatACommandReadsIsNeverWrittenOver() throws IOException {
        refused(handout(roster), "it is what this command reads");
        refused(handout(roster, "--replace"), "it is what this command reads");
        refused(run("practice", plan.toString(), "--out", plan.toString()), "it is what this command reads");
        refused(run("export", plan.toString(), "--qti", plan.toString()), "it is what this command reads");
        Path link = Files.createSymbolicLink(folder.resolve("another-name.pdf"), roster);
        refused(handout(link, "--replace"), "it is what this command reads");
        assertEquals(CLASS, Files.readString(roster));
        assertEquals(PLAN, Files.readString(plan));
        assertEquals(
                List.of("another-name.pdf", "class.csv", "plan.yaml"),
                List.copyOf(WrittenFiles.under(folder).keySet()));
    }

    @Test
    void theFontForNamesIsReadAndNeverWrittenOver() throws IOException {
        Path font = folder.resolve("names.pdf");
        Files.copy(Path.of("src/main/resources/ampersheet/render/pdf/fonts/DejaVuSans.ttf"), font);
        refused(handout(font, "--replace", "--font", font.toString()), "it is what this command reads");
        assertEquals(
                -1, Files.mismatch(font, Path.of("src/main/resources/ampersheet/render/pdf/fonts/DejaVuSans.ttf")));
    }

    @Test
    void aClassListThatStandsWhereASheetWouldStays() throws IOException {
        Path inside = Files.createDirectories(out).resolve("index.html");
        Files.writeString(inside, CLASS);
        roster = inside;
        refused(issue(), "it is what this command reads");
        assertEquals(List.of("index.html"), List.copyOf(WrittenFiles.under(out).keySet()), "nothing is written");
    }

    @Test
    void aFileOfAnotherKindStaysUnlessItMayBeReplaced() throws IOException {
        Path letter = Files.writeString(folder.resolve("letter.pdf"), "Dear all");
        refused(handout(letter), "does not look as if this program had written it");
        assertEquals("Dear all", Files.readString(letter));
        assertEquals(0, handout(letter, "--replace").exitCode());
        assertTrue(new String(Files.readAllBytes(letter), StandardCharsets.ISO_8859_1).startsWith("%PDF-"));
        assertEquals(0, handout(letter).exitCode(), "now it is one of ours");
        Files.createDirectories(out.resolve("sheets"));
        Files.writeString(out.resolve("sheets/seat-002.html"), "my own notes");
        refused(issue(), "sheets/seat-002.html");
        assertEquals(
                List.of("sheets/seat-002.html"),
                List.copyOf(WrittenFiles.under(out).keySet()),
                "nothing is written before that is known");
        assertEquals(0, issue("--replace").exitCode());
    }

    @Test
    void aLinkStaysALink() throws IOException {
        Path elsewhere = Files.writeString(folder.resolve("elsewhere.pdf"), "%PDF-1.7 of somebody else");
        Path link = Files.createSymbolicLink(folder.resolve("tonight.pdf"), elsewhere);
        refused(handout(link), "this is a link to another file");
        assertTrue(Files.isSymbolicLink(link));
        assertEquals(0, handout(link, "--replace").exitCode());
        assertTrue(Files.isRegularFile(link, LinkOption.NOFOLLOW_LINKS));
        assertEquals(
                "%PDF-1.7 of somebody else", Files.readString(elsewhere), "the file behind the link is not touched");
    }

    @Test
    void aFolderOrTheRootIsNoFileToWrite() throws IOException {
        Files.createDirectories(out);
        refused(handout(Path.of("/")), "this names a folder and no file in it");
        refused(run("practice", plan.toString(), "--out", "/"), "this names a folder and no file in it");
        refused(handout(out), "a folder stands where this file is to be written");
        assertEquals(Map.of(), WrittenFiles.under(out));
    }

    @Test
    void marksOfAnEarlierRunThatAreReadStay() throws IOException {
        assertEquals(0, issue().exitCode());
        Path answers = Files.createDirectories(folder.resolve("answers"));
        Files.writeString(answers.resolve("ada.csv"), "sheet,question,answer\n");
        Path marks = folder.resolve("marks");
        List<String> mark = List.of(
                "mark",
                answers.toString(),
                "--plan",
                plan.toString(),
                "--roster",
                roster.toString(),
                "--out",
                marks.toString());
        run(mark.toArray(new String[0]));
        byte[] before = Files.readAllBytes(marks.resolve("marks.csv"));
        List<String> again = new ArrayList<>(mark);
        again.addAll(List.of("--before", marks.resolve("marks.csv").toString()));
        refused(run(again.toArray(new String[0])), "it is what this command reads");
        assertArrayEquals(before, Files.readAllBytes(marks.resolve("marks.csv")));
    }

    // Reissuing

    @Test
    void sheetsOfAnEarlierIssueAreNamedAndRemovedOnRequest() throws IOException {
        assertEquals(0, issue().exitCode());
        Files.writeString(plan, PLAN.replace("seed: one", "seed: two"));
        Files.writeString(roster, "seat,name\n1,Ada\n");
        Run again = issue();
        assertEquals(0, again.exitCode(), again.err());
        assertTrue(again.err().contains("here are 4 files of another issue"), again.err());
        assertTrue(again.err().contains("keys/seat-002.html") && again.err().contains("--clean"), again.err());
        assertTrue(Files.exists(out.resolve("sheets/seat-002.html")), "named, and left");
        assertEquals(again.err(), issue().err(), "as long as they are there");
        Run clean = issue("--clean");
        assertEquals(0, clean.exitCode(), clean.err());
        assertTrue(
                clean.out().contains("4 files of earlier runs removed")
                        && clean.err().isEmpty(),
                clean.out() + clean.err());
        assertFalse(Files.exists(out.resolve("sheets/seat-002.html")) || Files.exists(out.resolve("keys/seat-002.md")));
        assertEquals(
                2,
                WrittenFiles.under(out.resolve("keys")).keySet().stream()
                        .filter(name -> name.endsWith(".zip"))
                        .count(),
                "printed sheets are marked by their archive");
        assertEquals("", issue().err());
    }

    @Test
    void keysThatAnEarlierHandoutLeftAreNamed() {
        Path pdf = folder.resolve("tonight.pdf");
        assertEquals("", handout(pdf, "--keys", "apart").err());
        Run again = handout(pdf);
        assertEquals(0, again.exitCode());
        assertTrue(again.err().contains("tonight-keys.pdf: warning: these keys are from an earlier run"), again.err());
    }

    @Test
    void theManifestTellsWhatBelongsToWhichIssueAndNothingElse() throws IOException {
        assertEquals(0, issue().exitCode());
        String manifest = Files.readString(out.resolve("manifest.csv"));
        String code = WrittenFiles.under(out.resolve("keys")).keySet().stream()
                .filter(name -> name.endsWith(".zip"))
                .findFirst()
                .orElseThrow()
                .substring("issued-".length(), "issued-".length() + 5);
        StringBuilder wanted = new StringBuilder("file,issue\n");
        for (String file : WrittenFiles.under(out).keySet()) {
            boolean nobodys = file.equals("manifest.csv") || file.equals("answer-grid-" + code + ".csv");
            wanted.append(nobodys ? "" : file + "," + code + "\n");
        }
        assertEquals(wanted.toString(), manifest);
        Path other = folder.resolve("other");
        out = other;
        assertEquals(0, issue().exitCode());
        assertEquals(manifest, Files.readString(other.resolve("manifest.csv")), "the same bytes for the same inputs");
        Files.writeString(plan, PLAN.replace("seed: one", "seed: two"));
        Files.writeString(roster, "seat,name\n2,Bo\n");
        assertEquals(0, issue().exitCode());
        String mixed = Files.readString(other.resolve("manifest.csv"));
        assertTrue(
                mixed.contains("sheets/seat-001.html," + code + "\n")
                        && !mixed.contains("sheets/seat-002.html," + code),
                mixed);
    }

    @Test
    void whatTheManifestCallsOursMayBeWrittenOverEvenWhenItIsDamaged() throws IOException {
        assertEquals(0, issue().exitCode());
        byte[] whole = Files.readAllBytes(out.resolve("sheets/seat-001.html"));
        Files.writeString(out.resolve("sheets/seat-001.html"), "half of it");
        assertEquals(0, issue().exitCode());
        assertArrayEquals(whole, Files.readAllBytes(out.resolve("sheets/seat-001.html")));
    }
}
