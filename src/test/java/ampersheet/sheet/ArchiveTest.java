package ampersheet.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.answer.AnswerKey;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is written of a class is read again, and what somebody made of it is refused or does no harm. */
class ArchiveTest {
    private static final String PLAN = """
      title: Lanterns
      order: mixed
      problems:
        - {template: current-limiting/indicator, example: yes}
        - {pool: [current-limiting/indicator, voltage-dividers/plain-divider], support: faded}
      """;
    private static final int SEATS = 5;

    @TempDir
    private Path folder;

    private static SheetMaker maker() {
        return SmallLibrary.maker(PLAN);
    }

    private static IssuedArchive archive(SheetMaker maker) {
        List<ArchivedSheet> sheets = new ArrayList<>();
        for (int seat = 1; seat <= SEATS; seat++) {
            sheets.add(ArchivedSheet.of(maker.sheet(seat), maker.set().places(seat)));
        }
        return IssuedArchive.of(maker.set(), sheets, Optional.empty());
    }

    private static byte[] bytes(IssuedArchive archive) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        archive.write(out);
        return out.toByteArray();
    }

    private Path written(Map<String, String> files) throws IOException {
        Path file = folder.resolve("issued.zip");
        try (OutputStream out = Files.newOutputStream(file);
                ZipOutputStream zip = new ZipOutputStream(out, StandardCharsets.UTF_8)) {
            for (Map.Entry<String, String> entry : files.entrySet()) {
                zip.putNextEntry(new ZipEntry(entry.getKey()));
                zip.write(entry.getValue().getBytes(StandardCharsets.UTF_8));
            }
        }
        return file;
    }

    /** Compressed, as somebody who packs it again will have it. */
    private Path changed(String name, UnaryOperator<String> change) throws IOException {
        Map<String, String> files = new LinkedHashMap<>(archive(maker()).files());
        files.compute(name, (key, text) -> change.apply(text == null ? "" : text));
        return written(files);
    }

    private String refusal(Path file) {
        return assertThrows(DiagnosticException.class, () -> ArchivedClass.read(file))
                .getMessage();
    }

    private static ArchivedSheets open(Path file) {
        return new ArchivedSheets(ArchivedClass.read(file), SmallLibrary.open());
    }

    private static List<String> told(Sheet sheet) {
        List<String> told = new ArrayList<>();
        for (SheetProblem problem : sheet.problems()) {
            told.add(problem.number() + " " + problem.template().name() + " " + problem.support() + " "
                    + problem.example() + " " + problem.problem().givens().quantities()
                    + problem.problem().givens().words());
            for (AnswerKey key : problem.key().answers()) {
                told.add(key.question() + " " + Double.toHexString(key.expected()));
            }
        }
        return told;
    }

    @Test
    void theSameClassGivesTheSameBytes() throws IOException {
        assertEquals(
                new String(bytes(archive(maker())), StandardCharsets.ISO_8859_1),
                new String(bytes(archive(maker())), StandardCharsets.ISO_8859_1));
    }

    @Test
    void sheetsAndKeysAreThoseThatWereIssued() throws IOException {
        SheetMaker maker = maker();
        Path file = Files.write(folder.resolve("issued.zip"), bytes(archive(maker)));
        ArchivedSheets read = open(file);
        for (int seat = 1; seat <= SEATS; seat++) {
            Sheet issued = maker.sheet(seat);
            ClassSheets.IssuedSheet again =
                    read.issued(read.readId(issued.id().toString()).seat());
            assertEquals(issued.id(), again.sheet().id());
            assertEquals(told(issued), told(again.sheet()));
            assertEquals(maker.set().places(seat), again.places());
            assertEquals(List.of(), again.remarks());
            assertEquals(
                    Composer.sheet(issued, "").blocks().toString(),
                    Composer.sheet(again.sheet(), "").blocks().toString());
        }
    }

    @Test
    void itIsReadWhenItWasPackedAgainAndAFileOfTheDesktopLiesInIt() throws IOException {
        Map<String, String> files = new LinkedHashMap<>(archive(maker()).files());
        files.put("__MACOSX/._plan.yaml", "whatever");
        files.put("templates/.hidden", "whatever");
        assertEquals(SEATS, ArchivedClass.read(written(files)).sheets().size());
    }

    @Test
    void templatesWithOtherLimitsBesideThemLieInAFolderOfTheirOwn() throws IOException {
        Path own = folder.resolve("own");
        for (String file : List.of("problem.yaml", "statement.md.ftl")) {
            Files.createDirectories(own.resolve(SmallLibrary.INDICATOR));
            Files.copy(
                    SmallLibrary.FOLDER.resolve(SmallLibrary.INDICATOR).resolve(file),
                    own.resolve(SmallLibrary.INDICATOR).resolve(file));
        }
        String limits =
                "limits:\n  - {id: led-current, meaning: current of an LED, unit: mA, most: 30, source: \"common "
                        + "practice, no source\"}\n";
        Files.writeString(own.resolve("limits.yaml"), limits);
        TemplateLibrary both =
                new TemplateLibrary(List.of(TemplateFiles.in(own), TemplateFiles.in(SmallLibrary.FOLDER)));
        IssuedArchive archive = archive(new SheetMaker(ProblemSet.of(PlanReader.read("plan.yaml", PLAN), both)));
        assertEquals(limits, archive.files().get("templates/limits.yaml"));
        assertTrue(
                archive.files().containsKey("templates/current-limiting/indicator/problem.yaml"),
                archive.files().keySet().toString());
        assertTrue(archive.files().containsKey("templates-2/voltage-dividers/plain-divider/problem.yaml"));
        assertFalse(archive.files().containsKey("templates-2/limits.yaml"));
        ArchivedSheets read = open(Files.write(folder.resolve("issued.zip"), bytes(archive)));
        assertEquals(List.of(), read.issued(1).remarks());
    }

    @Test
    void anIdOfAnotherSetOrSeatIsRefused() throws IOException {
        ArchivedSheets read = open(Files.write(folder.resolve("issued.zip"), bytes(archive(maker()))));
        String other = assertThrows(
                        DiagnosticException.class,
                        () -> read.readId(maker().set().id(SEATS + 1).toString()))
                .getMessage();
        assertTrue(other.contains("this archive holds no sheet for seat 6"), other);
        String foreign = SmallLibrary.maker(PLAN.replace("Lanterns", "Others"))
                .set()
                .id(1)
                .toString();
        assertTrue(assertThrows(DiagnosticException.class, () -> read.readId(foreign))
                .getMessage()
                .contains("another plan"));
        Plan lanterns = PlanReader.read("plan.yaml", PLAN);
        read.requirePlan(lanterns);
        assertThrows(
                DiagnosticException.class,
                () -> read.requirePlan(PlanReader.read("plan.yaml", PLAN.replace("Lanterns", "X"))));
    }

    @Test
    void otherNumbersUnderTheSameIdAreNotWrittenOver() throws IOException {
        SheetMaker maker = maker();
        Path file = changed(IssuedArchive.NUMBERS, text -> text.replaceFirst(",Vs,[0-9.]+,", ",Vs,4.5,"));
        ArchivedSheet first = ArchivedSheet.of(maker.sheet(1), maker.set().places(1));
        String told = assertThrows(
                        DiagnosticException.class,
                        () -> IssuedArchive.requireSameNumbers(Optional.of(ArchivedClass.read(file)), first))
                .getMessage();
        assertTrue(told.contains("holds other numbers for the sheet " + first.id()), told);
        IssuedArchive.requireSameNumbers(
                Optional.of(ArchivedClass.read(file)),
                ArchivedSheet.of(maker.sheet(2), maker.set().places(2)));
    }

    @Test
    void whatIsNoArchiveIsRefused() throws IOException {
        assertTrue(refusal(folder).contains("this is a folder"));
        assertTrue(refusal(folder.resolve("nothing.zip")).contains("there is no such file"));
        assertTrue(refusal(Files.writeString(folder.resolve("text.zip"), "no zip"))
                .contains("this file is no archive, or it is damaged"));
        Map<String, String> without = new LinkedHashMap<>(archive(maker()).files());
        without.remove(IssuedArchive.NUMBERS);
        assertTrue(refusal(written(without)).contains("it holds no numbers.csv"));
        assertTrue(refusal(changed(IssuedArchive.FORM_FILE, text -> "2\n"))
                .contains("a form that this version of the program does not know: 2"));
        byte[] whole = bytes(archive(maker()));
        Path half = Files.write(folder.resolve("half.zip"), java.util.Arrays.copyOf(whole, whole.length / 2));
        assertTrue(refusal(half).contains("damaged"));
    }

    @Test
    void noNameLeadsOutOfIt() throws IOException {
        for (String name :
                List.of("../plan.yaml", "/etc/plan.yaml", "templates/../../x/problem.yaml", "templates\\a\\b", "..")) {
            assertTrue(refusal(changed(name, text -> "x")).contains("a file whose name leads out of it"), name);
        }
        assertEquals(List.of("issued.zip"), List.of(folder.toFile().list()), "and nothing is unpacked");
    }

    @Test
    void whatSwellsIsNotRead() throws IOException {
        assertTrue(refusal(changed(IssuedArchive.PLAN, text -> text + "#".repeat(300_000)))
                .contains("larger than any such file"));
        Path huge = changed("templates/a/b/problem.yaml", text -> " ".repeat(50_000_000));
        assertTrue(
                Files.size(huge) < 1_000_000 && refusal(huge).contains("larger than any such file"),
                "a small file that swells");
        Map<String, String> many = new LinkedHashMap<>(archive(maker()).files());
        for (int i = 0; i < 5_001; i++) {
            many.put("x/" + i, "");
        }
        assertTrue(refusal(written(many)).contains("it holds more than 5000 files"));
    }

    @Test
    void tablesThatNobodyCouldReadAgainAreNotPacked() throws IOException {
        Path table = folder.resolve("large.csv");
        try (RandomAccessFile large = new RandomAccessFile(table.toFile(), "rw")) {
            large.setLength((64 << 20) + 1); // nothing is in it, and it takes no place
            String told = assertThrows(
                            DiagnosticException.class,
                            () -> IssuedArchive.requireReadable(Path.of("issued.zip"), Map.of("answers.csv", table)))
                    .getMessage();
            assertTrue(told.contains("issued.zip") && told.contains("Divide the class list"), told);
            large.setLength(64 << 20);
        }
        IssuedArchive.requireReadable(Path.of("issued.zip"), Map.of("answers.csv", table));
    }

    @Test
    void damagedTablesAreToldWithTheirLines() throws IOException {
        String id = maker().set().id(1).toString();
        Map<String, UnaryOperator<String>> damages = new LinkedHashMap<>();
        damages.put(
                "sheets.csv:2: error: this line tells no problem of a sheet",
                text -> text.replaceFirst(",1,1,", ",9,1,"));
        damages.put("sheets.csv:2: error: this line has not 5 columns", text -> text.replaceFirst(",1,1,", ",1,"));
        damages.put(
                "this problem stands here a second time",
                text -> text + text.lines().skip(1).findFirst().orElseThrow() + "\n");
        damages.put("its first line does not name the columns", text -> text.substring(text.indexOf('\n') + 1));
        for (Map.Entry<String, UnaryOperator<String>> damage : damages.entrySet()) {
            String told = refusal(changed(IssuedArchive.SHEETS, damage.getValue()));
            assertTrue(told.contains(damage.getKey()), damage.getKey() + "\n" + told);
        }
        String numbers =
                refusal(changed(IssuedArchive.NUMBERS, text -> text.replaceFirst(",Vs,[0-9.]+,", ",Vs,twelve,")));
        assertTrue(numbers.contains("numbers.csv:2: error: this line tells no number"), numbers);
        String unit = refusal(changed(IssuedArchive.NUMBERS, text -> text.replaceFirst(",V,", ",furlong,")));
        assertTrue(unit.contains("this line tells no number"), unit);
        String stray = refusal(changed(IssuedArchive.ANSWERS, text -> text + id + ",77,q77,R,1,V,1 V\n"));
        assertTrue(stray.contains("this line belongs to no problem of sheets.csv"), stray);
    }

    @Test
    void aNumberThatWasNeverDrawnIsNotWorked() throws IOException {
        ArchivedSheets read =
                open(changed(IssuedArchive.NUMBERS, text -> text.replaceFirst(",Vs,[0-9.]+,", ",Vs,1e9,")));
        ClassSheets.IssuedSheet sheet = read.issued(1);
        assertEquals(1, sheet.lost().size());
        assertEquals(
                "The template has givens that the sheet does not show.",
                sheet.lost().get(0).why());
        assertEquals(2, sheet.sheet().problems().size());
        assertTrue(
                sheet.remarks().get(0).problem().startsWith("there is no key to problem "),
                sheet.remarks().toString());
    }

    @Test
    void theTemplateAtHandStandsInForOneThatCannotBeReadAnyMore() throws IOException {
        UnaryOperator<String> unread = text -> text + "no_such_key: 1\n";
        ArchivedSheets read = open(changed("templates/current-limiting/indicator/problem.yaml", unread));
        ClassSheets.IssuedSheet sheet = read.issued(1);
        assertEquals(List.of(), sheet.lost());
        assertEquals(told(maker().sheet(1)), told(sheet.sheet()));
        assertTrue(
                sheet.remarks()
                        .get(0)
                        .problem()
                        .startsWith("the archive's template current-limiting/indicator cannot be read"),
                sheet.remarks().toString());
        Path none = changed("templates/current-limiting/indicator/problem.yaml", unread);
        ArchivedSheets alone = new ArchivedSheets(ArchivedClass.read(none), new TemplateLibrary(List.of()));
        ClassSheets.IssuedSheet lost = alone.issued(1);
        assertTrue(
                lost.lost().get(0).why().startsWith("The archive's template cannot be read: "),
                lost.lost().toString());
        assertEquals(
                maker().sheet(1).problems().stream()
                        .filter(problem -> problem.template().name().equals(SmallLibrary.INDICATOR))
                        .count(),
                lost.lost().size());
    }

    @Test
    void aKeyThatTheProgramItselfWorksOtherwiseIsTold() throws IOException {
        ArchivedSheets read = open(changed(IssuedArchive.ANSWERS, text -> text.replaceFirst(",R,[0-9.e]+,", ",R,1,")));
        List<String> remarks = read.issued(1).remarks().stream()
                .map(remark -> remark.problem())
                .toList();
        assertTrue(
                remarks.size() == 1
                        && remarks.get(0).contains("this version of the program works the same template to"),
                remarks.toString());
    }
}
