package ampersheet.issue;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.OnlyDeep;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.issue.Handouts.Keys;
import ampersheet.issue.Handouts.Wish;
import ampersheet.render.pdf.Profile;
import ampersheet.sheet.ArchivedClass;
import ampersheet.sheet.ClassAnswers;
import ampersheet.sheet.Document.Paper;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Roster;
import ampersheet.sheet.RosterReader;
import ampersheet.sheet.SheetMaker;
import ampersheet.sheet.SmallLibrary;
import ampersheet.source.Languages;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.PDFTextStripperByArea;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class HandoutsTest {
    private static final String PLAN = """
      title: Lanterns
      problems:
        - {template: current-limiting/indicator, example: yes}
        - {template: voltage-dividers/plain-divider}
      """;
    private static final Roster CLASS = RosterReader.read("class.csv", "seat,name\n1,Ada\n2,Bo\n7,Cem\n");

    private static final String DEMO = demo();

    @TempDir
    private Path folder;

    private static String demo() {
        try {
            return Files.readString(Path.of("problem-templates/demo/plan.yaml"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Handouts.Printed print(Roster roster, Path out, Keys keys) {
        return Handouts.print(
                PlanReader.read("plan.yaml", PLAN),
                roster,
                SmallLibrary.open(),
                out,
                new Wish(Paper.A4, Profile.REGULAR, keys, true));
    }

    private static String text(Path pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(Files.readAllBytes(pdf))) {
            return new PDFTextStripper().getText(document);
        }
    }

    private List<String> names() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString())
                    .filter(name -> name.endsWith(".pdf"))
                    .sorted()
                    .toList();
        }
    }

    @Test
    void everyLearnerHasAHandoutWithTheirNameAndTheKeysComeLast() throws IOException {
        Path out = folder.resolve("tonight.pdf");
        Handouts.Printed printed = print(CLASS, out, Keys.LAST);
        assertEquals(List.of("tonight.pdf"), names());
        assertEquals(3, printed.sheets());
        assertEquals(3, printed.written(), "the sheets, a table for answers and their archive");
        assertTrue(
                printed.archive().getFileName().toString().startsWith("tonight-issued-"),
                printed.archive().toString());
        assertEquals(3, ArchivedClass.read(printed.archive()).sheets().size());
        String text = text(out);
        int firstKey = text.indexOf("Key: Lanterns");
        for (String name : List.of("Ada", "Bo", "Cem")) {
            int sheet = text.indexOf(name + " · Seat");
            assertTrue(sheet >= 0 && sheet < firstKey, name);
            assertTrue(text.indexOf(name + " · Seat", firstKey) > firstKey, name);
        }
    }

    @Test
    void besideTheSheetsLiesAnEmptyTableForAnswersThatStaysOnceItIsFilledIn() throws IOException {
        Path out = folder.resolve("tonight.pdf");
        Handouts.Printed printed = print(CLASS, out, Keys.GRID);
        assertTrue(printed.grid().getFileName().toString().startsWith("tonight-answer-grid-"));
        List<String> lines = Files.readAllLines(printed.grid());
        assertEquals(4, lines.size());
        assertTrue(lines.get(0).startsWith("sheet,seat,name,q"), lines.get(0));
        assertTrue(lines.get(3).matches("[0-9A-Z-]+,7,Cem,+"), lines.get(3));
        assertEquals(0, print(CLASS, out, Keys.GRID).written());
        String filled = Files.readString(printed.grid()).replaceAll("Cem,", "Cem,4.7 kohm");
        Files.writeString(printed.grid(), filled);
        assertEquals(0, print(CLASS, out, Keys.GRID).written());
        assertEquals(filled, Files.readString(printed.grid()));
    }

    @Test
    void keysLieInAFileOfTheirOwnOrAreLeftOut() throws IOException {
        print(CLASS, folder.resolve("tonight.pdf"), Keys.APART);
        assertEquals(List.of("tonight-keys.pdf", "tonight.pdf"), names());
        assertFalse(text(folder.resolve("tonight.pdf")).contains("not for handing out"));
        assertFalse(text(folder.resolve("tonight-keys.pdf")).contains("Tick one"));
        print(CLASS, folder.resolve("bare.pdf"), Keys.NONE);
        assertEquals(List.of("bare.pdf", "tonight-keys.pdf", "tonight.pdf"), names());
        assertFalse(text(folder.resolve("bare.pdf")).contains("not for handing out"));
    }

    @OnlyDeep
    @Test
    void printedAgainItIsTheSameFileAndIsLeftAlone() throws IOException {
        Path out = folder.resolve("tonight.pdf");
        print(CLASS, out, Keys.LAST);
        byte[] first = Files.readAllBytes(out);
        assertEquals(0, print(CLASS, out, Keys.LAST).written());
        assertArrayEquals(first, Files.readAllBytes(out));
    }

    @Test
    void aNameThatCannotBePrintedLeavesNoFile() throws IOException {
        Roster roster = RosterReader.read("class.csv", "seat,name\n1,Ada\n2,田中\n");
        assertThrows(DiagnosticException.class, () -> print(roster, folder.resolve("tonight.pdf"), Keys.LAST));
        assertEquals(List.of(), names());
    }

    @Test
    void oneLearnerNeedsNotEveryTemplateOfAPool() {
        String pool = "title: Lanterns\nproblems:\n"
                + "  - {pool: [current-limiting/indicator, voltage-dividers/plain-divider]}\n";
        Handouts.Printed printed = Handouts.print(
                PlanReader.read("plan.yaml", pool),
                new Roster(List.of(new Roster.Seat(1, ""))),
                SmallLibrary.open(),
                folder.resolve("one.pdf"),
                new Wish(Paper.A4, Profile.REGULAR, Keys.NONE, true));
        assertEquals(1, printed.sheets());
    }

    @Test
    void onRequestEachSheetAndKeyIsIssuedAsPdfToo() throws IOException {
        Roster one = RosterReader.read("class.csv", "seat,name\n3,Ada\n");
        Issue.issue(
                ProblemSet.of(PlanReader.read("plan.yaml", PLAN), SmallLibrary.open()),
                one,
                folder,
                1,
                new Issue.Besides(false, true));
        assertTrue(text(folder.resolve("sheets/seat-003.pdf")).contains("Ada · Seat 3"));
        assertTrue(text(folder.resolve("keys/seat-003.pdf")).contains("not for handing out"));
    }

    @OnlyDeep
    @Test
    void theAnswersOfAClassStandInAGridBehindTheSheets() throws IOException {
        Path out = folder.resolve("tonight.pdf");
        print(CLASS, out, Keys.GRID);
        String text = text(out);
        int grid = text.indexOf("Answers: Lanterns");
        assertTrue(grid > text.lastIndexOf("Cem · Seat 7"), "behind all sheets");
        String answers = text.substring(grid);
        assertFalse(answers.contains("Worked steps"), answers);
        SheetMaker maker = new SheetMaker(ProblemSet.of(PlanReader.read("plan.yaml", PLAN), SmallLibrary.open()));
        for (Roster.Seat seat : CLASS.seats()) {
            ClassAnswers.Row row = ClassAnswers.row(seat, maker.sheet(seat.number()), true);
            String line = answers.lines()
                    .filter(one -> one.startsWith(row.sheetId() + " " + seat.name()))
                    .findFirst()
                    .orElseThrow();
            assertFalse(row.answers().isEmpty());
            row.answers().values().forEach(answer -> assertTrue(plain(line).contains(plain(answer)), line));
        }
    }

    private static String plain(String text) {
        return text.replace('\u00a0', ' ');
    }

    @Test
    void howMuchPaperItTakesIsToldBeforeAnythingIsWritten() throws IOException {
        Path out = folder.resolve("tonight.pdf");
        List<PaperCount> told = new ArrayList<>();
        Handouts.Printed printed = Handouts.print(
                ProblemSet.of(PlanReader.read("plan.yaml", PLAN), SmallLibrary.open()),
                CLASS,
                out,
                new Wish(Paper.A4, Profile.REGULAR, Keys.LAST, true),
                Output.Terms.NONE,
                count -> {
                    assertFalse(Files.exists(out));
                    told.add(count);
                    return false;
                });
        assertEquals(0, printed.written());
        assertEquals(List.of(), names(), "nothing was written");
        PaperCount count = told.get(0);
        assertEquals(3, count.sheets());
        assertTrue(
                count.sentence(Languages.ENGLISH).startsWith("3 sheets of " + count.most() + " sides, " + count.keys()),
                "told");
        assertTrue(count.compact().orElseThrow() < count.most(), count.toString());
        assertTrue(count.saving().orElseThrow().contains("--profile compact"), count.toString());
    }

    @Test
    void theHostHasTheFirstLeafAndItIsNoSheet() throws IOException {
        Path out = folder.resolve("tonight.pdf");
        Handouts.print(
                PlanReader.read("plan.yaml", PLAN),
                CLASS,
                SmallLibrary.open(),
                out,
                new Wish(Paper.A4, Profile.COMPACT, Keys.GRID, true, true, false, Optional.empty()));
        String text = text(out);
        assertTrue(text.indexOf("For the host: Lanterns") < text.indexOf("Ada"), "first of all");
        for (String told : List.of(
                "To say at the start", "How long it takes", "Slips to expect", "ask back", "not for handing out")) {
            assertTrue(text.contains(told), told);
        }
    }

    @Test
    void examplesForAllStandBeforeTheSheetsAndOnNoneOfThem() throws IOException {
        Path out = folder.resolve("tonight.pdf");
        Handouts.print(
                PlanReader.read("plan.yaml", PLAN),
                CLASS,
                SmallLibrary.open(),
                out,
                new Wish(Paper.A4, Profile.COMPACT, Keys.GRID, true, false, true, Optional.empty()));
        String text = text(out);
        assertTrue(text.indexOf("Worked examples: Lanterns") < text.indexOf("Ada"), "first of all");
        assertEquals(1, text.split("Worked steps", -1).length - 1, "worked once");
        assertEquals(3, text.split("Its worked example is problem 1 of the examples for all", -1).length - 1);
    }

    /** Of each side of a file what stands to the left and to the right of its middle. */
    private static List<List<String>> halves(Path pdf) throws IOException {
        List<List<String>> sides = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(Files.readAllBytes(pdf))) {
            for (PDPage page : document.getPages()) {
                PDFTextStripperByArea reader = new PDFTextStripperByArea();
                float half = page.getMediaBox().getWidth() / 2;
                float height = page.getMediaBox().getHeight();
                reader.addRegion("left", new Rectangle2D.Float(0, 0, half, height));
                reader.addRegion("right", new Rectangle2D.Float(half, 0, half, height));
                reader.extractRegions(page);
                sides.add(List.of(reader.getTextForRegion("left"), reader.getTextForRegion("right")));
            }
        }
        return sides;
    }

    @Test
    void aBookletHasItsPagesInFoldingOrderAndTheHostsLeavesLieBesideIt() throws IOException {
        Path out = folder.resolve("tonight.pdf");
        Wish wish = new Wish(Paper.A4_FOLDED, Profile.COMPACT, Keys.GRID, true, true, false, Optional.empty());
        Handouts.Printed printed =
                Handouts.print(PlanReader.read("plan.yaml", PLAN), CLASS, SmallLibrary.open(), out, wish);
        assertEquals(List.of("tonight-keys.pdf", "tonight.pdf"), names());
        List<List<String>> sides = halves(out);
        int at = 0;
        for (String name : List.of("Ada", "Bo", "Cem")) {
            String cover = sides.get(at).get(1);
            assertTrue(cover.contains(name + " · Seat"), cover);
            Matcher counted = Pattern.compile("page 1 of (\\d+)").matcher(cover);
            assertTrue(counted.find(), cover);
            int pages = Integer.parseInt(counted.group(1));
            assertEquals(0, pages % 4, "whole leaves");
            for (int side = 0; side < pages / 2; side++) {
                int outer = pages - side;
                int inner = side + 1;
                List<Integer> expected = side % 2 == 0 ? List.of(outer, inner) : List.of(inner, outer);
                for (int half = 0; half < 2; half++) {
                    String text = sides.get(at + side).get(half);
                    assertTrue(text.contains("page " + expected.get(half) + " of " + pages), text);
                }
            }
            at += pages / 2;
        }
        assertEquals(sides.size(), at, "nothing besides the booklets");
        String keys = text(folder.resolve("tonight-keys.pdf"));
        assertTrue(keys.indexOf("For the host: Lanterns") < keys.indexOf("Answers: Lanterns"), keys);
        assertFalse(text(out).contains("not for handing out"));
        assertEquals(2, printed.files().size());
        byte[] first = Files.readAllBytes(out);
        Files.delete(out);
        Handouts.print(PlanReader.read("plan.yaml", PLAN), CLASS, SmallLibrary.open(), out, wish);
        assertArrayEquals(first, Files.readAllBytes(out));
    }

    @Test
    void aBookletIsNoFileForScreenReadersAndDoesNotSaySo() throws IOException {
        Path out = folder.resolve("tonight.pdf");
        Handouts.print(
                PlanReader.read("plan.yaml", PLAN),
                CLASS,
                SmallLibrary.open(),
                out,
                new Wish(Paper.LETTER_FOLDED, Profile.COMPACT, Keys.NONE, true));
        assertEquals(List.of("tonight.pdf"), names(), "nothing for the host was asked for");
        try (PDDocument document = Loader.loadPDF(Files.readAllBytes(out))) {
            PDRectangle page = document.getPage(0).getMediaBox();
            assertEquals(11 * 72, page.getWidth(), 0.5);
            assertEquals(8.5 * 72, page.getHeight(), 0.5);
            assertNull(document.getDocumentCatalog().getStructureTreeRoot());
            String about =
                    new String(document.getDocumentCatalog().getMetadata().toByteArray(), StandardCharsets.UTF_8);
            assertFalse(about.contains("pdfuaid:part"), about);
        }
    }

    @Test
    void theDemoTakesAtMostEightSidesALearnerAndSixLeavesOfAnswers() {
        List<PaperCount> told = new ArrayList<>();
        int learners = Boolean.getBoolean("ampersheet.deep") ? 12 : 1;
        List<Roster.Seat> seats = new ArrayList<>();
        for (int seat = 1; seat <= learners; seat++) {
            seats.add(new Roster.Seat(seat, ""));
        }
        Handouts.print(
                ProblemSet.of(
                        PlanReader.read("plan.yaml", DEMO), new TemplateLibrary(List.of(TemplateFiles.builtIn()))),
                new Roster(seats),
                folder.resolve("demo.pdf"),
                new Wish(Paper.A4, Profile.COMPACT, Keys.GRID, true),
                Output.Terms.NONE,
                count -> !told.add(count));
        assertTrue(told.get(0).most() <= 8, told.toString());
        assertTrue(told.get(0).keys() <= 12, told.toString());
    }
}
