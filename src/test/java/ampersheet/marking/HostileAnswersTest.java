package ampersheet.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import ampersheet.OnlyDeep;
import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.Printable;
import ampersheet.sheet.ClassSheets;
import ampersheet.sheet.Plan;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Roster;
import ampersheet.sheet.RosterReader;
import ampersheet.sheet.SheetId;
import ampersheet.sheet.SheetMaker;
import ampersheet.sheet.SmallLibrary;
import ampersheet.source.SafeCsv;
import ampersheet.template.ProblemTemplate;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whatever one learner sends, the others get their marks, and what was sent acts on nobody. */
class HostileAnswersTest {
    private static final ProblemSet SET = ProblemSet.of(PlanReader.read("plan.yaml", """
      title: Lanterns
      problems:
        - {template: current-limiting/indicator, example: yes}
        - {template: voltage-dividers/plain-divider, support: faded, fade: forward, blank: 1}
      """), SmallLibrary.open());
    private static final ClassSheets SHEETS = new DrawnOnce(new SheetMaker(SET));
    private static final Roster CLASS = RosterReader.read("class.csv", "seat,name\n1,Ada\n2,Bo\n3,Eve\n");
    private static final String HEAD = "sheet,question,answer\n";
    private static final String ONE = SET.id(1) + ",q2b,12 V\n" + SET.id(1) + ",q2a,1 kΩ\n";
    private static final String TWO = SET.id(2) + ",q2a,2 kΩ\n";
    private static final String EVE = SET.id(3).toString();
    private static final String SECRET = "the root password is swordfish";
    private static final int FOLDERS = 100;
    /** What was quadratic took minutes; a busy machine may take some seconds for what is not. */
    private static final Duration LONGEST = Duration.ofSeconds(40);

    @TempDir
    private Path folder;

    /** Proving the same three sheets for two hundred folders would take most of the time. */
    private record DrawnOnce(SheetMaker maker, Map<Integer, IssuedSheet> drawn) implements ClassSheets {
        DrawnOnce(SheetMaker maker) {
            this(maker, new TreeMap<>());
        }

        @Override
        public Plan plan() {
            return maker.plan();
        }

        @Override
        public String code() {
            return maker.code();
        }

        @Override
        public SheetId readId(String typed) {
            return maker.readId(typed);
        }

        @Override
        public boolean has(int seat) {
            return maker.has(seat);
        }

        @Override
        public IssuedSheet issued(int seat) {
            return drawn.computeIfAbsent(seat, maker::issued);
        }

        @Override
        public List<ProblemTemplate> templates() {
            return maker.templates();
        }
    }

    private record Outcome(Marking.Marked marked, Map<String, String> files) {
        String row(String file, String start) {
            return files.get(file)
                    .lines()
                    .filter(line -> line.startsWith(start))
                    .findFirst()
                    .orElse("");
        }

        boolean isNamed(String told) {
            return marked.notes().stream().anyMatch(note -> note.print().contains(told));
        }
    }

    private Outcome mark(Path answers) {
        Map<String, String> files = new TreeMap<>();
        Marking.Marked marked = Marking.mark(
                new Marking.Task(
                        answers,
                        SHEETS,
                        Optional.empty(),
                        CLASS,
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        OtherSheets.NONE,
                        false),
                files::put);
        return new Outcome(marked, files);
    }

    private static void put(Path folder, String name, String text) throws IOException {
        Files.writeString(folder.resolve(name), text, StandardCharsets.UTF_8);
    }

    private static void putSound(Path folder) throws IOException {
        put(folder, "ada.csv", HEAD + ONE);
        put(folder, "bo.csv", HEAD + TWO);
    }

    private Outcome withSound(String name, String text) throws IOException {
        putSound(folder);
        put(folder, name, text);
        return Assertions.assertTimeoutPreemptively(LONGEST, () -> mark(folder));
    }

    @Test
    void anUnclosedQuotationMarkBehindAHundredThousandBlankLinesTakesNoTime() throws IOException {
        Outcome outcome = withSound("eve.csv", "\n".repeat(90_000) + HEAD + EVE + ",q2a,\"1 kΩ\n");
        assertTrue(outcome.isNamed("eve.csv:90002: error: a quotation mark is opened and not closed"));
    }

    @Test
    void aSheetIdOfEightyThousandCharactersTakesNoTime() throws IOException {
        Outcome outcome = withSound("eve.csv", HEAD + "A7K3M-" + "0".repeat(80_000) + "-R,q2a,1 kΩ\n");
        assertTrue(outcome.isNamed("eve.csv:2: error: this sheet ID is too long"));
    }

    @Test
    void aLetterThatBecomesTwoTakesNoTime() throws IOException {
        putSound(folder);
        put(folder, "eve.md", "**Sheet " + EVE + "**\n\n    " + "İ".repeat(900_000) + "  R = 1\n    q2a  V = 7 V\n");
        put(
                folder,
                "fay.csv",
                "sheet,question,answer," + "İ".repeat(900_000) + "\n" + EVE + "," + "İ".repeat(900_000) + ",1\n");
        Outcome outcome = Assertions.assertTimeoutPreemptively(LONGEST, () -> mark(folder));
        assertTrue(
                outcome.files().get("answers.csv").contains(",7 V,"),
                outcome.marked().notes().toString());
    }

    @Test
    void aFileFullOfFaultyRowsIsToldInAHundredFaultsAndANumber() throws IOException {
        Outcome outcome = withSound("eve.csv", HEAD + "x\n".repeat(99_000));
        assertTrue(outcome.isNamed("eve.csv: error: there are 98900 more faults in this file"));
        assertTrue(outcome.files().get("files.csv").length() < 20_000);
    }

    @Test
    void aFileOfTooManyBytesLinesOrCellsIsSetAsideByItsName() throws IOException {
        putSound(folder);
        put(folder, "bytes.csv", HEAD + "x".repeat(5 << 20));
        put(folder, "lines.csv", HEAD + "\n".repeat(200_000));
        put(folder, "cells.md", ",".repeat(1_500_000));
        Outcome outcome = mark(folder);
        assertTrue(outcome.isNamed("bytes.csv: error: this file is larger than 4 MB"));
        assertTrue(outcome.isNamed("lines.csv: error: this file has more than 100000 lines"));
        assertTrue(outcome.isNamed("cells.md: error: this file has more than 1000000 separators, as of a table"));
        assertEquals(
                "2," + SET.id(2),
                outcome.row("answers.csv", "2,")
                        .substring(0, 2 + SET.id(2).toString().length()));
    }

    @OnlyDeep
    @Test
    void whereTheFilesHoldTooMuchInAllTheLargestAreSetAside() throws IOException {
        String most = HEAD + (EVE + ",q2a,1\n").repeat(90_000);
        for (int i = 0; i < 5; i++) {
            put(folder, "a" + i + ".csv", most);
        }
        Outcome outcome = withSound("z.csv", HEAD + EVE + ",q2b,7 V\n");
        assertTrue(outcome.isNamed(
                "a4.csv: error: the files of this folder hold too much in all, and this is one of the largest"));
        assertFalse(outcome.isNamed("a3.csv: error"));
        assertTrue(
                outcome.files().get("answers.csv").contains(",7 V,"), "the small file is marked, though last by name");
    }

    @Test
    void pipesDevicesAndLinksAreNotOpened() throws IOException, InterruptedException {
        Path outside = Files.createDirectory(folder.resolve("outside"));
        Path answers = Files.createDirectory(folder.resolve("came"));
        put(outside, "secret.csv", SECRET);
        assumeTrue(isFifo(answers.resolve("pipe.csv")), "this system makes no pipes");
        Files.createSymbolicLink(answers.resolve("zero.csv"), Path.of("/dev/zero"));
        Files.createSymbolicLink(answers.resolve("out.csv"), outside.resolve("secret.csv"));
        Files.createSymbolicLink(answers.resolve("folder.csv"), outside);
        Files.createSymbolicLink(answers.resolve("self.csv"), answers.resolve("self.csv"));
        putSound(answers);
        Outcome outcome = Assertions.assertTimeoutPreemptively(LONGEST, () -> mark(answers));
        assertTrue(
                outcome.isNamed("pipe.csv: error: this is no ordinary file"),
                outcome.marked().notes().toString());
        for (String link : List.of("zero.csv", "out.csv", "folder.csv", "self.csv")) {
            assertTrue(outcome.isNamed(link + ": error: this is a link, and links are not followed here"), link);
        }
        outcome.files().values().forEach(text -> assertFalse(text.contains(SECRET)));
        assertFalse(outcome.isNamed(SECRET));
    }

    private static boolean isFifo(Path path) throws IOException, InterruptedException {
        try {
            return new ProcessBuilder("mkfifo", path.toString()).start().waitFor() == 0;
        } catch (IOException noSuchProgram) {
            return false;
        }
    }

    @Test
    void theTablesOfAnEarlierRunAreNobodysAnswers() throws IOException {
        putSound(folder);
        put(folder, "late.csv", HEAD + SET.id(1) + ",q2b,13 V\n");
        Outcome first = mark(folder);
        String marks = first.files().get("marks.csv");
        assertTrue(
                first.files().get("set-aside.csv").contains("undecided: contradicts late.csv"),
                first.files().get("set-aside.csv"));
        for (String name : first.files().keySet()) {
            if (name.endsWith(".csv")) {
                put(folder, name, first.files().get(name));
            }
        }
        Outcome second = mark(folder);
        assertEquals(marks, second.files().get("marks.csv"));
        assertTrue(second.isNamed("set-aside.csv:1: error: this table was written by an earlier run of mark"));
        Files.move(folder.resolve("set-aside.csv"), folder.resolve("set-aside (1).csv"));
        Outcome third = mark(folder);
        assertEquals(marks, third.files().get("marks.csv"));
        assertTrue(third.isNamed("set-aside (1).csv:2: warning: this answer was set aside because of another one"));
    }

    @Test
    void aTableOfOnlySeparatorsIsTold() throws IOException {
        Outcome outcome = withSound("eve.csv", ",,,\n,,\n\n,,,,\n");
        assertTrue(outcome.isNamed("eve.csv: error: this table has separators and nothing between them"));
    }

    @Test
    void whatIsTypedActsNeitherInASpreadsheetNorOnAPage() throws IOException {
        Outcome outcome = withSound(
                "\u001B[31m\u202Egnp.csv",
                HEAD + EVE + ",q2a,5;=HYPERLINK(1)\n" + EVE + ",q2b,\u202E5 V\u2066\u001B\n" + EVE
                        + ",q2b,\u202E5 V\n=1+1,\"q\u001B[2J\",\"7\t =cmd\"\nx,\"q2a\n=2\",\"1;\"\"=3\"\n");
        assertTrue(
                outcome.files().get("answers.csv").contains(",5;'=HYPERLINK(1),"),
                outcome.files().get("answers.csv"));
        assertTrue(
                outcome.files().get("answers.csv").contains(",[U+202E]5 V,"),
                outcome.files().get("answers.csv"));
        assertTrue(
                outcome.files().get("files.csv").contains("[U+001B][31m[U+202E]gnp.csv"),
                outcome.files().get("files.csv"));
        requireHarmless(outcome);
    }

    private static void requireHarmless(Outcome outcome) throws IOException {
        for (Map.Entry<String, String> file : outcome.files().entrySet()) {
            assertFalse(file.getValue().codePoints().anyMatch(c -> c != '\n' && Printable.acts(c)), file.getKey());
            if (file.getKey().endsWith(".csv")) {
                requireNoFormula(file.getKey(), file.getValue());
            }
        }
        for (Diagnostic note : outcome.marked().notes()) {
            assertFalse(note.print().codePoints().anyMatch(c -> c != '\n' && Printable.acts(c)), note.print());
            assertTrue(note.print().lines().count() <= 5, note.print());
        }
        assertTrue(outcome.files().get("files.csv").length() < 200_000);
    }

    /** With any separator that a spreadsheet may take, and whatever quotation marks it takes off. */
    private static void requireNoFormula(String name, String csv) throws IOException {
        try (CSVParser parser = CSVParser.parse(csv, CSVFormat.DEFAULT)) {
            for (CSVRecord row : parser) {
                for (String cell : row) {
                    requireNoFormulaWithin(name, cell);
                }
            }
        }
        csv.lines().forEach(line -> requireNoFormulaWithin(name, line));
    }

    private static void requireNoFormulaWithin(String name, String text) {
        for (String part : text.split("[,;\t|，；｜]", -1)) {
            String bare = part.replace("\"", "").strip();
            assertFalse(!bare.isEmpty() && "=+-@＝＋－＠".indexOf(bare.charAt(0)) >= 0, name + ": " + text);
        }
    }

    @Test
    void whatASpreadsheetMightRunIsReadBackAsItWasTyped() {
        for (String typed : List.of(
                "=1", "5;=HYPERLINK(1)", "4,7;-5", "a|@b", " =1", "\t=1", "5; \"=1\"", "'=1;2", "-5 V", "4.7 kΩ")) {
            String safe = SafeCsv.asText(typed);
            requireNoFormulaWithin(typed, safe);
            assertEquals(typed, SafeCsv.read(safe), safe);
        }
    }

    // Two hundred

    /** With {@code -Dampersheet.hostile=SEED} other folders; the seed of a folder that fails is told. */
    @Test
    void hundredsOfHostileFoldersCostTheOthersNothing() throws IOException {
        long seed = Long.getLong("ampersheet.hostile", 1);
        int folders = Boolean.getBoolean("ampersheet.deep") ? 20 * FOLDERS : FOLDERS / 4;
        Path alone = Files.createDirectory(folder.resolve("alone"));
        putSound(alone);
        Outcome expected = mark(alone);
        put(folder, "secret.csv", HEAD + EVE + ",q2a," + SECRET + "\n");
        for (int i = 0; i < folders; i++) {
            String which = "-Dampersheet.hostile=" + (seed + i);
            Path here = Files.createDirectory(folder.resolve("folder-" + i));
            putSound(here);
            new Hostile(here, new Random(seed + i)).put();
            Outcome outcome = Assertions.assertTimeoutPreemptively(LONGEST, () -> mark(here), which);
            for (String seat : List.of("1,", "2,")) {
                assertEquals(expected.row("marks.csv", seat), outcome.row("marks.csv", seat), which);
            }
            try (var files = Files.list(here)) {
                long came = files.count();
                assertEquals(came, outcome.marked().files(), which);
            }
            requireHarmless(outcome);
            outcome.files().values().forEach(text -> assertFalse(text.contains(SECRET), which));
            delete(here);
        }
    }

    private static void delete(Path folder) throws IOException {
        try (var files = Files.walk(folder)) {
            for (Path file : files.sorted(java.util.Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
    }

    /** One folder's hostile files, drawn from a seed. */
    private static final class Hostile {
        private static final String[] NAMES = {
            "eve",
            "=cmd",
            "\u001B[2Jx",
            "\u202Efdp",
            "a\nb: error: marked twice",
            "set-aside",
            "marks",
            "x'y\"z",
            "-rf",
            "ünï",
            "a;b",
            "'",
            "q".repeat(100)
        };
        private static final String[] PIECES = {
            ",",
            ";",
            "\t",
            "\"",
            "\"\"",
            "\n",
            "\n\n\n",
            "\r",
            "=1+1",
            "@SUM(A1)",
            "\u001B[31m",
            "\u202E",
            "\u2066",
            "\u0000",
            "\u0085",
            "\uFEFF",
            "\uD83D\uDE00",
            "**q2a**",
            "- [x] yes",
            "- [x",
            "q2b  V = ",
            "q99",
            "____",
            "<script>",
            "${x}",
            "../../etc",
            "4,7 kΩ",
            "1e999",
            "9".repeat(300),
            "A7K3M-007-R",
            EVE,
            "**Sheet " + EVE + "**"
        };

        private final Path here;
        private final Random random;

        Hostile(Path here, Random random) {
            this.here = here;
            this.random = random;
        }

        void put() throws IOException {
            int files = 1 + random.nextInt(4);
            for (int i = 0; i < files; i++) {
                put(NAMES[random.nextInt(NAMES.length)] + i);
            }
        }

        private void put(String name) throws IOException {
            Path csv = here.resolve(name + ".csv");
            int large = 1 + random.nextInt(Boolean.getBoolean("ampersheet.deep") ? 90_000 : 4_000);
            switch (random.nextInt(14)) {
                case 0 -> write(csv, "\n".repeat(large) + HEAD + EVE + ",q2a,\"1\n");
                case 1 -> write(csv, HEAD + "x".repeat(large) + ",q2a,1\n" + "0".repeat(large) + "-007-R,q2a,1\n");
                case 2 -> write(csv, HEAD + "a,b\n".repeat(large));
                case 3 -> write(csv, HEAD + (EVE + ",q" + random.nextInt(9) + ",1\n").repeat(1 + large / 10));
                case 4 -> bogusIds(csv, 1 + large / 20);
                case 5 -> Files.createSymbolicLink(csv, Path.of("/dev/zero"));
                case 6 -> Files.createSymbolicLink(csv, here.resolve("../secret.csv"));
                case 7 -> Files.createDirectories(csv.resolve("a/b/c.csv"));
                case 8 -> sparse(csv);
                case 9 -> bytes(csv);
                case 10 ->
                    write(
                            here.resolve(name + ".md"),
                            "**Sheet " + EVE + "**\n" + "**q2a** x\n\n- [x] y\n".repeat(1 + large / 20));
                case 11 ->
                    write(
                            csv,
                            "file,line,sheet,question,answer,why\nx,1," + SET.id(1)
                                    + ",q2b,99 V,\"replaced by y, line 2\"\n");
                case 12 -> write(csv, ",".repeat(large));
                default -> write(here.resolve(name + (random.nextBoolean() ? ".csv" : ".md")), pieces());
            }
        }

        private static void write(Path file, String text) throws IOException {
            Files.writeString(file, text, StandardCharsets.UTF_8);
        }

        private void bogusIds(Path csv, int many) throws IOException {
            StringBuilder out = new StringBuilder(HEAD);
            for (int i = 0; i < many; i++) {
                out.append(SET.id(3).toString(), 0, 5)
                        .append('-')
                        .append(1000 + i)
                        .append("-X,q2a,1\n");
            }
            write(csv, out.toString());
        }

        private static void sparse(Path csv) throws IOException {
            try (RandomAccessFile file = new RandomAccessFile(csv.toFile(), "rw")) {
                file.setLength(1L << 32);
            }
        }

        private void bytes(Path csv) throws IOException {
            byte[] bytes = new byte[random.nextInt(5_000)];
            random.nextBytes(bytes);
            Files.write(csv, bytes);
        }

        private String pieces() {
            StringBuilder out = new StringBuilder(random.nextBoolean() ? HEAD : "");
            int count = random.nextInt(300);
            for (int i = 0; i < count; i++) {
                out.append(PIECES[random.nextInt(PIECES.length)]);
                if (random.nextInt(4) == 0) {
                    out.append(EVE).append(",q2a,");
                }
            }
            return out.toString();
        }
    }
}
