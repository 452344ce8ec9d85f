package ampersheet.render.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkedContentReference;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureNode;
import org.apache.pdfbox.pdmodel.documentinterchange.markedcontent.PDMarkedContent;
import org.apache.pdfbox.text.PDFMarkedContentExtractor;
import org.apache.pdfbox.text.TextPosition;

/** A file read back by another reader of PDF: its tags in order, and where the letters of each stand on the pages. */
final class PrintedTag {
    /** @param page from 1; {@code y} of the baseline from the page's top, all in points */
    record Letter(int page, String text, double x, double y, double width, double size) {
        double top() {
            return y - 0.8 * size;
        }

        double bottom() {
            return y + 0.2 * size;
        }
    }

    final String type;
    final PrintedTag parent;
    final List<PrintedTag> inside = new ArrayList<>();
    private final List<Letter> own = new ArrayList<>();

    private PrintedTag(String type, PrintedTag parent) {
        this.type = type;
        this.parent = parent;
    }

    static PrintedTag read(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            Map<COSDictionary, Integer> numbers = new IdentityHashMap<>();
            List<Map<Integer, List<Letter>>> letters = new ArrayList<>(List.of(Map.of()));
            for (PDPage page : document.getPages()) {
                int number = letters.size();
                numbers.put(page.getCOSObject(), number);
                PDFMarkedContentExtractor extractor = new PDFMarkedContentExtractor();
                extractor.setSuppressDuplicateOverlappingText(false);
                extractor.processPage(page);
                Map<Integer, List<Letter>> marked = new TreeMap<>();
                extractor.getMarkedContents().forEach(content -> letters(content, number, marked));
                letters.add(marked);
            }
            PrintedTag root = new PrintedTag("root", null);
            root.add(document.getDocumentCatalog().getStructureTreeRoot(), numbers, letters);
            return root;
        }
    }

    private static void letters(PDMarkedContent content, int page, Map<Integer, List<Letter>> marked) {
        for (Object part : content.getContents()) {
            if (part instanceof TextPosition at) {
                marked.computeIfAbsent(content.getMCID(), id -> new ArrayList<>())
                        .add(new Letter(
                                page,
                                at.getUnicode(),
                                at.getXDirAdj(),
                                at.getYDirAdj(),
                                at.getWidthDirAdj(),
                                at.getFontSizeInPt()));
            } else if (part instanceof PDMarkedContent nested) {
                letters(nested, page, marked);
            }
        }
    }

    private void add(
            PDStructureNode node, Map<COSDictionary, Integer> numbers, List<Map<Integer, List<Letter>>> letters) {
        for (Object kid : node.getKids()) {
            if (kid instanceof PDStructureElement element) {
                PrintedTag tag = new PrintedTag(element.getStructureType(), this);
                inside.add(tag);
                tag.add(element, numbers, letters);
            } else {
                PDPage page = kid instanceof PDMarkedContentReference reference
                        ? reference.getPage()
                        : ((PDStructureElement) node).getPage();
                int id = kid instanceof PDMarkedContentReference reference ? reference.getMCID() : (Integer) kid;
                PrintedTag text = new PrintedTag("", this);
                text.own.addAll(letters.get(numbers.get(page.getCOSObject())).getOrDefault(id, List.of()));
                inside.add(text);
            }
        }
    }

    /** This and all that is in it, in reading order. */
    Stream<PrintedTag> all() {
        return Stream.concat(Stream.of(this), inside.stream().flatMap(PrintedTag::all));
    }

    Stream<PrintedTag> all(String wanted) {
        return all().filter(tag -> tag.type.matches(wanted));
    }

    void forEach(String wanted, Consumer<PrintedTag> look) {
        all(wanted).forEach(look);
    }

    /** That can be seen. */
    List<Letter> letters() {
        return all().flatMap(tag -> tag.own.stream())
                .filter(letter -> !letter.text().isBlank() && !letter.text().equals("\u00a0"))
                .toList();
    }

    String text() {
        StringBuilder text = new StringBuilder();
        all().flatMap(tag -> tag.own.stream()).forEach(letter -> text.append(letter.text()));
        return text.toString();
    }

    int firstPage() {
        return letters().stream().mapToInt(Letter::page).min().orElseThrow();
    }

    int lastPage() {
        return letters().stream().mapToInt(Letter::page).max().orElseThrow();
    }

    boolean onOnePage() {
        return letters().isEmpty() || firstPage() == lastPage();
    }

    /**
     * Whether all of it can be seen without turning a leaf: on one page, or on a left page, of an even number, and the
     * next.
     */
    boolean inSight() {
        return firstPage() / 2 == lastPage() / 2;
    }

    /** Height of what stands on its pages, together. */
    double height() {
        double height = 0;
        for (int page = firstPage(); page <= lastPage(); page++) {
            int here = page;
            List<Letter> letters =
                    letters().stream().filter(letter -> letter.page() == here).toList();
            if (!letters.isEmpty()) {
                height += letters.stream().mapToDouble(Letter::bottom).max().orElseThrow()
                        - letters.stream().mapToDouble(Letter::top).min().orElseThrow();
            }
        }
        return height;
    }
}
