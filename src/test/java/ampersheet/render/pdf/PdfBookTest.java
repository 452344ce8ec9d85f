package ampersheet.render.pdf;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.OnlyDeep;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.sheet.CheckLetters;
import ampersheet.sheet.Composer;
import ampersheet.sheet.Document;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.FigureBlock;
import ampersheet.sheet.Document.Paper;
import ampersheet.sheet.Document.ProblemBlock;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Sheet;
import ampersheet.sheet.SheetMaker;
import ampersheet.sheet.SmallLibrary;
import ampersheet.source.Languages;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TimeZone;
import java.util.TreeMap;
import javax.xml.transform.TransformerException;
import javax.xml.transform.TransformerFactory;
import javax.xml.transform.dom.DOMSource;
import javax.xml.transform.stream.StreamResult;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.cos.COSNumber;
import org.apache.pdfbox.pdfparser.PDFStreamParser;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

class PdfBookTest {
    private static final String PLAN = """
      title: Lanterns
      problems:
        - {template: current-limiting/indicator, example: yes}
        - {template: voltage-dividers/plain-divider, support: faded}
        - {template: voltage-dividers/plain-divider}
      """;
    private static final Sheet SHEET =
            new SheetMaker(ProblemSet.of(PlanReader.read("plan.yaml", PLAN), SmallLibrary.open())).sheet(1);

    private static Document sheet() {
        return CheckLetters.addedTo(Composer.sheet(SHEET, "Ada"), SHEET);
    }

    private static Document key() {
        return Composer.key(SHEET, "Ada");
    }

    static byte[] book(Profile profile, Document... documents) throws IOException {
        try (PdfBook book = new PdfBook("Tonight", Languages.ENGLISH, profile, Optional.empty(), Path.of("target"))) {
            for (Document document : documents) {
                book.add(document);
            }
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            book.write(out);
            return out.toByteArray();
        }
    }

    static String text(byte[] pdf, int page) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PDFTextStripper stripper = new PDFTextStripper();
            stripper.setStartPage(page);
            stripper.setEndPage(page);
            return stripper.getText(document);
        }
    }

    private static Document named(Document sheet, String name) {
        return new Document(
                sheet.kind(), sheet.language(), sheet.title(), name, sheet.sheetId(), sheet.paper(), sheet.blocks());
    }

    @Test
    void severalHandoutsAndKeysInOneFilePassTheCheckerOfPdfUa() throws Exception {
        boolean all = Boolean.getBoolean("ampersheet.deep");
        for (Profile profile : all ? Profile.values() : new Profile[] {Profile.COMPACT}) {
            Accessible.check(book(profile, sheet(), key(), sheet()));
        }
    }

    @Test
    void theCheckerOfPdfUaWouldFindAFault() throws Exception {
        byte[] pdf = book(Profile.REGULAR, sheet());
        try (PDDocument document = Loader.loadPDF(pdf)) {
            document.getDocumentCatalog().setMetadata(null);
            document.getDocumentCatalog().setStructureTreeRoot(null);
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            document.save(out);
            assertNotEquals(List.of(), Accessible.faults(out.toByteArray()));
        }
    }

    @Test
    void theSameDocumentsGiveTheSameBytesUnderAnyLocaleAndTimeZone() throws IOException {
        byte[] first = book(Profile.REGULAR, sheet(), key());
        Locale locale = Locale.getDefault();
        TimeZone zone = TimeZone.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag("tr-TR"));
            TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Kiritimati"));
            assertArrayEquals(first, book(Profile.REGULAR, sheet(), key()));
        } finally {
            Locale.setDefault(locale);
            TimeZone.setDefault(zone);
        }
    }

    @Test
    void everyHandoutBeginsOnTheFrontOfALeafAndCountsItsOwnPages() throws IOException {
        byte[] pdf = book(Profile.REGULAR, sheet(), key(), named(sheet(), "Bo"));
        try (PDDocument document = Loader.loadPDF(pdf)) {
            int sheets = 0;
            for (int page = 1; page <= document.getNumberOfPages(); page++) {
                String text = text(pdf, page);
                if (text.contains("page 1 of ")) {
                    assertEquals(1, page % 2, "a handout begins on the back of a leaf, page " + page);
                    sheets++;
                }
                boolean key = text.contains("Key — not for handing out");
                assertFalse(key && sheets < 3, "a key lies among the sheets, page " + page);
            }
            assertEquals(3, sheets);
            assertEquals(0, document.getNumberOfPages() % 2);
        }
    }

    @Test
    void aCurveStaysInAnExampleOnlyIfItCostsNoPageAndAlwaysInTheKey() throws IOException {
        Sheet curves = new SheetMaker(ProblemSet.of(
                        PlanReader.read("plan.yaml", """
        title: Curves on paper
        problems:
          - {template: thermal-rise/hot-driver, example: yes}
          - {template: current-limiting/capacitor-inrush, example: yes}
          - {template: thermal-rise/trace-rise, example: yes}
        """), new TemplateLibrary(List.of(TemplateFiles.builtIn()))))
                .sheet(1);
        Document document = CheckLetters.addedTo(Composer.sheet(curves, "Ada"), curves);
        List<Block> without = document.blocks().stream()
                .map(block -> block instanceof ProblemBlock problem
                        ? problem.holding(problem.blocks().stream()
                                .filter(part -> !(part instanceof FigureBlock figure
                                        && figure.figure().title().startsWith("Curve")))
                                .toList())
                        : block)
                .toList();
        byte[] sheet = book(Profile.REGULAR, document);
        byte[] plain = book(
                Profile.REGULAR,
                new Document(
                        document.kind(),
                        document.language(),
                        document.title(),
                        document.subtitle(),
                        document.sheetId(),
                        document.paper(),
                        without));
        assertEquals(sides(plain), sides(sheet));
        int kept = wholeText(sheet).split("Curve of problem", -1).length - 1;
        assertTrue(kept == 1 || kept == 2, kept + " of three curves stayed: this sheet tells nothing");
        String key = wholeText(book(Profile.REGULAR, Composer.key(curves, "Ada")));
        for (int problem = 1; problem <= 6; problem++) {
            assertTrue(key.contains("Curve of problem " + problem), "the key lacks the curve of problem " + problem);
        }
    }

    private static int sides(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return document.getNumberOfPages();
        }
    }

    private static String wholeText(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
        }
    }

    @Test
    void paperIsA4OrLetter() throws IOException {
        assertPaper(210, 297, sheet().on(Paper.A4)); // ISO 216
        assertPaper(215.9, 279.4, sheet().on(Paper.LETTER)); // ANSI/ASME Y14.1, size A
    }

    private static void assertPaper(double width, double height, Document document) throws IOException {
        try (PDDocument pdf = Loader.loadPDF(book(Profile.REGULAR, document))) {
            for (PDPage page : pdf.getPages()) {
                PDRectangle size = page.getMediaBox();
                assertEquals(width, size.getWidth() / 72 * 25.4, 0.1);
                assertEquals(height, size.getHeight() / 72 * 25.4, 0.1);
            }
        }
    }

    @Test
    void aNameWithLettersThatNoFontHasIsRefusedInsteadOfPrintedWrong() {
        DiagnosticException refused =
                assertThrows(DiagnosticException.class, () -> book(Profile.REGULAR, named(sheet(), "田中")));
        assertTrue(refused.getMessage().contains("田"), refused.getMessage());
        assertTrue(refused.getMessage().contains("next: "), refused.getMessage());
    }

    @Test
    void aNameCannotReachOutOfItsPlace() throws Exception {
        String hostile = "\"><svg><image href='file:///etc/passwd'/></svg><script>alert(1)</script>& Bo";
        byte[] pdf = book(Profile.REGULAR, named(sheet(), hostile));
        assertTrue(text(pdf, 1).replaceAll("\\s+", "").contains(hostile.replaceAll("\\s+", "")), text(pdf, 1));
        Accessible.check(pdf);
    }

    /**
     * What the page setter prints is read back by another reader of PDF and compared with the document, letter by
     * letter.
     */
    @OnlyDeep
    @Test
    void everyLetterOfTheDocumentIsOnPaper() throws IOException {
        for (Profile profile : Profile.values()) {
            for (Document document : List.of(sheet(), key())) {
                byte[] pdf = book(profile, document);
                Map<String, Integer> expected = new TreeMap<>();
                PrintMarkup.Print print = PrintMarkup.of(document, profile);
                if (profile == Profile.COMPACT && document.kind() == Document.Kind.SHEET) {
                    Xhtml.lettersOf(packed(document, print), expected);
                } else {
                    Xhtml.lettersOf(print.xhtml(), expected);
                }
                print.drawings().forEach(drawing -> Xhtml.count(drawing.letters(), expected));
                Map<String, Integer> printed = new TreeMap<>();
                try (PDDocument read = Loader.loadPDF(pdf)) {
                    int pages = 0;
                    for (int page = 1; page <= read.getNumberOfPages(); page++) {
                        String text = text(pdf, page);
                        Xhtml.count(text, printed);
                        for (String empty : List.of(
                                Languages.ENGLISH.say("print.left-empty.facing"),
                                Languages.ENGLISH.say("print.left-empty.back"))) {
                            Xhtml.count(text.replaceAll("\\s+", " ").contains(empty) ? empty : "", expected);
                        }
                        pages += text.isBlank() ? 0 : 1;
                    }
                    for (int page = 1; page <= pages; page++) {
                        Xhtml.count("Sheet " + document.sheetId() + "page " + page + " of " + pages, expected);
                        Xhtml.count(document.kind() == Document.Kind.KEY ? "Key — not for handing out" : "", expected);
                    }
                }
                assertEquals(expected, printed, profile + " " + document.kind());
            }
        }
    }

    @Test
    void everyHandoutHasALineInTheOutlineThatLeadsToItsFirstPage() throws IOException {
        byte[] pdf = book(Profile.COMPACT, named(sheet(), "Ada"), key(), named(sheet(), "Bo"));
        try (PDDocument document = Loader.loadPDF(pdf)) {
            List<String> lines = new ArrayList<>();
            for (var item : document.getDocumentCatalog().getDocumentOutline().children()) {
                int page = document.getPages().indexOf(item.findDestinationPage(document)) + 1;
                lines.add(item.getTitle().replaceAll(" · .*", "") + " "
                        + text(pdf, page).contains("page 1 of"));
            }
            assertEquals(3, lines.size(), lines.toString());
            assertEquals("Ada true", lines.get(0));
            assertEquals("Bo true", lines.get(1));
            assertTrue(lines.get(2).endsWith(" true"), lines.get(2));
        }
    }

    /** The words of the packed pages, which are those of the sheet but for cautions that point to one above. */
    private static String packed(Document document, PrintMarkup.Print print) throws IOException {
        try (PdfBook book =
                new PdfBook("Tonight", Languages.ENGLISH, Profile.COMPACT, Optional.empty(), Path.of("target"))) {
            MarkupTree packed = book.markup(document);
            assertEquals(
                    words(MarkupTree.of(print)
                            .nodes()
                            .getElementsByTagName("body")
                            .item(0)),
                    words(packed.nodes().getElementsByTagName("body").item(0)));
            StringWriter xhtml = new StringWriter();
            TransformerFactory.newDefaultInstance()
                    .newTransformer()
                    .transform(new DOMSource(packed.nodes()), new StreamResult(xhtml));
            return xhtml.toString().replaceFirst("<\\?xml[^>]*>", "");
        } catch (TransformerException failure) {
            throw new IllegalStateException(failure);
        }
    }

    private static String words(org.w3c.dom.Node node) {
        if (node instanceof org.w3c.dom.Element element
                && (element.hasAttribute(PrintMarkup.CAUTION)
                        || element.getAttribute("class").equals(PageAssembly.CONTINUED))) {
            return "";
        }
        if (node instanceof org.w3c.dom.Text) {
            return node.getTextContent().strip();
        }
        StringBuilder words = new StringBuilder();
        for (org.w3c.dom.Node child = node.getFirstChild(); child != null; child = child.getNextSibling()) {
            words.append(words(child));
        }
        return words.toString();
    }

    /** Monochrome and copied twice, a page still shows everything: black only, no line thinner than 0.35 mm. */
    @Test
    void everyLineIsBlackAndNoneIsThin() throws IOException {
        try (PDDocument document = Loader.loadPDF(book(Profile.REGULAR, sheet(), key()))) {
            int lines = 0;
            for (PDPage page : document.getPages()) {
                List<Object> tokens = new PDFStreamParser(page).parse();
                double scale = 1;
                double width = 1;
                for (int i = 0; i < tokens.size(); i++) {
                    if (tokens.get(i) instanceof Operator operator) {
                        switch (operator.getName()) {
                            case "w" -> width = ((COSNumber) tokens.get(i - 1)).floatValue();
                            case "cm" -> scale = ((COSNumber) tokens.get(i - 6)).floatValue();
                            case "S", "s" -> {
                                lines++;
                                assertTrue(
                                        width * Math.abs(scale) / 72 * 25.4 >= 0.35, "a line of " + width + " points");
                            }
                            case "rg", "RG" ->
                                assertEquals(
                                        List.of(0f, 0f, 0f),
                                        List.of(number(tokens, i - 3), number(tokens, i - 2), number(tokens, i - 1)));
                            case "g", "G" -> assertEquals(0f, number(tokens, i - 1));
                            default -> {}
                        }
                    }
                }
            }
            assertTrue(lines > 20, lines + " lines seen");
        }
    }

    private static float number(List<Object> tokens, int at) {
        return ((COSNumber) tokens.get(at)).floatValue();
    }

    @Test
    void theCodeAtTheHeadIsTheSheetId() throws Exception {
        String id = sheet().sheetId();
        QrImage image = QrImage.of(SheetCode.of(id));
        assertEquals(id, image.decoded());
    }

    @Test
    void whatAPageHasLeftIsRuledButNotBelowAnExampleWhereThereIsNothingToWrite() throws IOException {
        Sheet sheet = new SheetMaker(ProblemSet.of(
                        PlanReader.read("plan.yaml", """
        title: Examples first
        problems:
          - {template: current-limiting/one-indicator, example: yes}
          - {template: voltage-dividers/loaded-divider, example: yes}
          - {template: current-limiting/shared-current, support: full}
        """), new TemplateLibrary(List.of(TemplateFiles.builtIn()))))
                .sheet(1);
        int ruled = 0;
        int bare = 0;
        try (PdfBook book =
                new PdfBook("Tonight", Languages.ENGLISH, Profile.COMPACT, Optional.empty(), Path.of("target"))) {
            NodeList places = book.markup(Composer.sheet(sheet, "Ada")).nodes().getElementsByTagName("div");
            for (int i = 0; i < places.getLength(); i++) {
                Element place = (Element) places.item(i);
                if (place.getAttribute("class").equals("free") && place.getPreviousSibling() != null) {
                    ruled++;
                    Element above = (Element) place.getPreviousSibling();
                    boolean answered = isAnswered((Element) place.getParentNode()) || isAnswered(above);
                    assertTrue(answered, "ruled below " + above.getTextContent());
                } else if (place.getAttribute("class").equals("column") && !isAnswered(place)) {
                    bare++;
                }
            }
        }
        assertTrue(ruled > 0 && bare > 0, ruled + " ruled, " + bare + " with examples only: this sheet tells nothing");
    }

    /** Whether part of problem 2 or 4 stands here: the others are worked. */
    private static boolean isAnswered(Element place) {
        NodeList parts = place.getElementsByTagName("div");
        for (int i = 0; i < parts.getLength(); i++) {
            Element part = (Element) parts.item(i);
            if (part.getAttribute("id").matches("problem-[24]")
                    || part.getAttribute("class").matches("question|problem .*tail")) {
                return true;
            }
        }
        return false;
    }

    /** An example and its twin on one page, or on the two pages of a spread: an even page and the one after it. */
    @Test
    void anExampleLiesBesideItsTwin() throws IOException {
        for (Profile profile : List.of(Profile.REGULAR, Profile.EASY)) {
            byte[] pdf = book(profile, sheet());
            int example = pageWith(pdf, "q1a");
            int twin = pageWith(pdf, "q2a");
            assertTrue(
                    example == twin || example % 2 == 0 && twin == example + 1,
                    profile + ": the example is on page " + example + ", its twin on " + twin);
        }
    }

    private static int pageWith(byte[] pdf, String text) throws IOException {
        for (int page = 1; ; page++) {
            if (text(pdf, page).contains(text)) {
                return page;
            }
        }
    }
}
