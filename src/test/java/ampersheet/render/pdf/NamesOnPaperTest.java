package ampersheet.render.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.sheet.Composer;
import ampersheet.sheet.Document;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Sheet;
import ampersheet.sheet.SheetMaker;
import ampersheet.sheet.SmallLibrary;
import ampersheet.source.Languages;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Names in any writing stand on paper in the right order and joined, or are refused. */
class NamesOnPaperTest {
    private static final String PLAN = "title: Names\nproblems: [{template: voltage-dividers/plain-divider}]\n";
    private static final Sheet SHEET =
            new SheetMaker(ProblemSet.of(PlanReader.read("plan.yaml", PLAN), SmallLibrary.open())).sheet(1);

    @TempDir
    private static Path folder;

    private static byte[] book(String name, Optional<ExtraFont> extra) throws IOException {
        try (PdfBook book = new PdfBook("Names", Languages.ENGLISH, Profile.REGULAR, extra, folder)) {
            Document sheet = Composer.sheet(SHEET, name);
            book.add(sheet);
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            book.write(out);
            return out.toByteArray();
        }
    }

    /**
     * Another reader of PDF, which turns letters around again and takes joined ones apart: what somebody would copy.
     */
    @ParameterizedTest
    @ValueSource(strings = {"محمد بن علي", "דנה כהן", "Ada محمد Lovelace", "گلناز پارسا", "علاء", "שרה (מדריכה)"})
    void aNameThatRunsFromRightToLeftIsReadBackAsItWasWritten(String name) throws IOException {
        assertTrue(
                PdfBookTest.text(book(name, Optional.empty()), 1).contains(name),
                PdfBookTest.text(book(name, Optional.empty()), 1));
    }

    /** By the Unicode charts of the presentation forms: MEEM initial, HAH medial, MEEM medial, DAL final. */
    @Test
    void arabicLettersAreJoinedAndStandFromRightToLeft() throws IOException {
        List<String> letters = new ArrayList<>();
        try (PDDocument pdf = Loader.loadPDF(book("محمد", Optional.empty()))) {
            new PDFTextStripper() {
                @Override
                protected void processTextPosition(TextPosition text) {
                    if (text.getUnicode().codePoints().anyMatch(c -> c >= 0xFB50)) {
                        letters.add(text.getUnicode() + "@" + Math.round(text.getX()));
                    }
                    super.processTextPosition(text);
                }
            }.getText(pdf);
        }
        assertEquals(
                "ﺪﻤﺤﻣ", letters.stream().map(letter -> letter.substring(0, 1)).reduce("", String::concat));
        List<Integer> places = letters.stream()
                .map(letter -> Integer.parseInt(letter.substring(2)))
                .toList();
        assertEquals(places.stream().sorted().toList(), places);
    }

    @Test
    void aHandoutWithArabicPassesTheCheckerOfPdfUa() throws Exception {
        Accessible.check(book("محمد بن علي", Optional.empty()));
    }

    @Test
    void aNameThatWouldBePrintedWrongIsToldLetterByLetter() {
        try (PrintableLetters book = new PrintableLetters(Optional.empty())) {
            assertEquals(Set.of(), book.missingIn("Ada Nguyễn Łucja Ωmega Юля"));
            assertEquals(Set.of(), book.missingIn("محمد دانا"));
            assertEquals(Set.of("李", "明"), book.missingIn("李明"));
            assertEquals(new TreeSet<>(List.of("न", "ि", "त", "ा")), book.missingIn("निता"));
            assertEquals(Set.of("U+202E"), book.missingIn("Ada\u202Eecalevol"));
            assertEquals(Set.of("ݐ"), book.missingIn("ݐ"));
        }
    }

    @Test
    void aGivenFontSetsWhatTheShippedOnesLack() throws IOException {
        ExtraFont extra = new ExtraFont("han.ttf", fontOfTwoLetters());
        assertTrue(PdfBookTest.text(book("李明 Ada", Optional.of(extra)), 1).contains("李明 Ada"));
        try (PrintableLetters book = new PrintableLetters(Optional.of(extra))) {
            assertEquals(Set.of("王"), book.missingIn("王明"));
        }
    }

    @Test
    void whatIsNoFontIsToldByItsFile() {
        DiagnosticException refused = assertThrows(
                DiagnosticException.class, () -> new ExtraFont("notes.ttf", "not a font at all".getBytes()));
        assertTrue(refused.getMessage().contains("notes.ttf"), refused.getMessage());
    }

    /** The font for signs with another table of characters: 明 (U+660E) and 李 (U+674E) look like A and B. */
    private static byte[] fontOfTwoLetters() throws IOException {
        byte[] font;
        try (InputStream in = Resources.open("fonts/DejaVuSans.ttf")) {
            font = in.readAllBytes();
        }
        ByteBuffer table = ByteBuffer.allocate(4 + 8 + 16 + 2 * 12);
        table.putShort((short) 0)
                .putShort((short) 1)
                .putShort((short) 3)
                .putShort((short) 10)
                .putInt(12);
        table.putShort((short) 12)
                .putShort((short) 0)
                .putInt(16 + 2 * 12)
                .putInt(0)
                .putInt(2);
        table.putInt(0x660E)
                .putInt(0x660E)
                .putInt(36)
                .putInt(0x674E)
                .putInt(0x674E)
                .putInt(37);
        ByteBuffer all =
                ByteBuffer.allocate(font.length + table.capacity()).put(font).put(table.array());
        for (int entry = 12; entry < 12 + 16 * all.getShort(4); entry += 16) {
            if (all.getInt(entry) == 0x636D6170) { // cmap
                all.putInt(entry + 8, font.length).putInt(entry + 12, table.capacity());
            }
        }
        return all.array();
    }
}
