package ampersheet.render.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.sheet.CheckLetters;
import ampersheet.sheet.Composer;
import ampersheet.sheet.Document;
import ampersheet.sheet.Document.Paper;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Sheet;
import ampersheet.sheet.SheetMaker;
import ampersheet.template.ChosenTemplates;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Test;

/**
 * Whoever asked for large print can read all of it: sizes of letters as another reader of PDF finds them in the file.
 * 18 point is where guidance on large print begins (UK Association for Accessible Formats, Minimum Standards: Clear and
 * Large Print, from memory); a raised or lowered letter has its meaning from the one beside it and may have 14, and so
 * may the side notes and axis numbers of drawings. A build looks at every thirteenth template, {@code -Pdeep} at all.
 */
class LargePrintTest {
    private static final double LEAST = 18;
    private static final double LEAST_RAISED_OR_LOWERED = 14;
    /** Sizes in the file are rounded. */
    private static final double ROUNDING = 0.05;

    private static final int EVERY = Boolean.getBoolean("ampersheet.deep") ? 1 : 26;
    private static final TemplateFiles FILES = TemplateFiles.builtIn();
    private static final TemplateLibrary LIBRARY = new TemplateLibrary(List.of(FILES));

    @Test
    void nothingThatALearnerMustReadIsSmallerThanEighteenPoint() throws IOException {
        Map<String, String> small = new TreeMap<>();
        int looked = 0;
        List<String> names = ChosenTemplates.of(FILES);
        for (int i = 0; i < names.size(); i += EVERY) {
            String template = names.get(i);
            for (String support : List.of("", ", example: yes, support: faded")) {
                for (Page page : pages(sheet(template, support))) {
                    looked += page.letters().size();
                    page.tooSmall()
                            .forEach(letter -> small.merge(
                                    template + support + " %.1f pt".formatted(letter.size()),
                                    letter.text(),
                                    (all, one) -> all.length() < 60 ? all + one : all));
                }
            }
        }
        assertTrue(looked > 1000, "only " + looked + " letters were read");
        assertEquals(Map.of(), small);
    }

    private record Letter(String text, double x, double y, double width, double size) {
        boolean isBeside(Letter other) {
            return Math.abs(y - other.y) < other.size
                    && x - (other.x + other.width) < 3 * size
                    && other.x - (x + width) < 3 * size;
        }
    }

    /** @param drawn places of letters in drawings, whose numbers and side notes are set smaller than their names */
    private record Page(List<Letter> letters, Set<String> drawn) {
        List<Letter> tooSmall() {
            List<Letter> large = letters.stream()
                    .filter(letter -> letter.size() >= LEAST - ROUNDING)
                    .toList();
            return letters.stream()
                    .filter(letter -> letter.size() < LEAST - ROUNDING)
                    .filter(letter -> letter.size() < LEAST_RAISED_OR_LOWERED - ROUNDING
                            || !isDrawn(letter)
                                    && large.stream()
                                            .noneMatch(other ->
                                                    letter.isBeside(other) && Math.abs(letter.y() - other.y()) > 1))
                    .toList();
        }

        /** The two readers of a page may round a place apart. */
        private boolean isDrawn(Letter letter) {
            for (int dx = -1; dx <= 1; dx++) {
                for (int dy = -1; dy <= 1; dy++) {
                    if (drawn.contains(place(letter.x() + dx, letter.y() + dy))) {
                        return true;
                    }
                }
            }
            return false;
        }

        static String place(double x, double y) {
            return Math.round(x) + " " + Math.round(y);
        }
    }

    private static Document sheet(String template, String support) {
        String plan = "title: Large print\nproblems:\n  - {template: " + template + support + "}\n";
        Sheet sheet = new SheetMaker(ProblemSet.of(PlanReader.read("plan.yaml", plan), LIBRARY)).sheet(1);
        Document document = Composer.sheet(sheet, "Ada", Profile.LARGE.widestDrawing(Paper.A4))
                .on(Paper.A4);
        return support.isEmpty() ? CheckLetters.addedTo(document, sheet) : document;
    }

    private static List<Page> pages(Document document) throws IOException {
        byte[] file = PdfBookTest.book(Profile.LARGE, document);
        Map<Integer, Set<String>> drawn = new TreeMap<>();
        PrintedTag.read(file)
                .forEach(
                        "Figure",
                        figure -> figure.letters()
                                .forEach(letter -> drawn.computeIfAbsent(letter.page(), page -> new TreeSet<>())
                                        .add(Page.place(letter.x(), letter.y()))));
        List<Page> pages = new ArrayList<>();
        try (PDDocument pdf = Loader.loadPDF(file)) {
            for (int number = 1; number <= pdf.getNumberOfPages(); number++) {
                pages.add(new Page(letters(pdf, number), drawn.getOrDefault(number, Set.of())));
            }
        }
        return pages;
    }

    private static List<Letter> letters(PDDocument pdf, int page) throws IOException {
        List<Letter> letters = new ArrayList<>();
        PDFTextStripper reader = new PDFTextStripper() {
            @Override
            protected void processTextPosition(TextPosition at) {
                if (at.getUnicode().codePoints().noneMatch(Character::isSpaceChar)) {
                    letters.add(new Letter(
                            at.getUnicode(), at.getXDirAdj(), at.getYDirAdj(), at.getWidthDirAdj(), at.getYScale()));
                }
            }
        };
        reader.setStartPage(page);
        reader.setEndPage(page);
        reader.getText(pdf);
        return letters;
    }
}
