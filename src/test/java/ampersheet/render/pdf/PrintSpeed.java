package ampersheet.render.pdf;

import ampersheet.sheet.CheckLetters;
import ampersheet.sheet.Composer;
import ampersheet.sheet.Document;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Sheet;
import ampersheet.sheet.SheetMaker;
import ampersheet.source.Languages;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import com.openhtmltopdf.outputdevice.helper.ExternalResourceControlPriority;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.StringWriter;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.xml.transform.OutputKeys;
import javax.xml.transform.Transformer;
import javax.xml.transform.TransformerException;
import javax.xml.transform.TransformerFactory;
import javax.xml.transform.dom.DOMSource;
import javax.xml.transform.stream.StreamResult;
import org.apache.pdfbox.pdmodel.PDDocument;

/**
 * Not a test: how fast handouts are made, from the plan to the file, compared with the page setting library alone on
 * the same markup with the same faces. In processor time of one thread, both in one run by turns.
 *
 * <p>{@code java -cp … ampersheet.render.pdf.PrintSpeed PLAN [SEATS]}
 */
final class PrintSpeed {
    private static final int ROUNDS = 8;

    private PrintSpeed() {}

    public static void main(String[] arguments) throws IOException {
        int seats = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 12;
        String plan = Files.readString(Path.of(arguments[0]));
        TemplateLibrary library = new TemplateLibrary(List.of(TemplateFiles.builtIn()));
        for (int round = 1; round <= ROUNDS; round++) {
            long start = now();
            int pages = whole(plan, library, seats);
            double whole = (now() - start) / 1e9;
            List<PrintMarkup.Print> markup = markup(plan, library, seats);
            start = now();
            int alone = alone(markup);
            double library0 = (now() - start) / 1e9;
            System.out.println("round " + round + ": whole path " + pages + " sides, " + pages / whole
                    + " a second; library alone " + alone + " pages, " + alone / library0 + " a second; ratio of times "
                    + library0 / whole);
        }
    }

    private static long now() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    }

    private static Document document(SheetMaker maker, int seat) {
        Sheet sheet = maker.sheet(seat);
        return CheckLetters.addedTo(Composer.sheet(sheet, ""), sheet);
    }

    private static int whole(String plan, TemplateLibrary library, int seats) throws IOException {
        SheetMaker maker = new SheetMaker(ProblemSet.of(PlanReader.read("plan.yaml", plan), library));
        try (PdfBook book =
                new PdfBook("Speed", Languages.ENGLISH, Profile.REGULAR, Optional.empty(), Path.of("target"))) {
            for (int seat = 1; seat <= seats; seat++) {
                book.add(document(maker, seat));
            }
            book.write(OutputStream.nullOutputStream());
            return book.sides();
        }
    }

    private static List<PrintMarkup.Print> markup(String plan, TemplateLibrary library, int seats) throws IOException {
        SheetMaker maker = new SheetMaker(ProblemSet.of(PlanReader.read("plan.yaml", plan), library));
        List<PrintMarkup.Print> markup = new ArrayList<>();
        try (PdfBook book =
                new PdfBook("Speed", Languages.ENGLISH, Profile.REGULAR, Optional.empty(), Path.of("target"))) {
            for (int seat = 1; seat <= seats; seat++) {
                StringWriter written = new StringWriter();
                Transformer writer = TransformerFactory.newInstance().newTransformer();
                writer.setOutputProperty(OutputKeys.OMIT_XML_DECLARATION, "yes");
                MarkupTree tree = book.markup(document(maker, seat));
                writer.transform(new DOMSource(tree.nodes()), new StreamResult(written));
                markup.add(new PrintMarkup.Print(written.toString(), tree.drawings()));
            }
        } catch (TransformerException failure) {
            throw new IllegalStateException(failure);
        }
        return markup;
    }

    /** Each page as its users write it: one document, saved by the library. */
    private static int alone(List<PrintMarkup.Print> markup) throws IOException {
        int pages = 0;
        for (PrintMarkup.Print print : markup) {
            try (PDDocument document = new PDDocument()) {
                PdfRendererBuilder builder = new PdfRendererBuilder();
                builder.usePDDocument(document);
                builder.usePdfUaAccessibility(true);
                builder.useExternalResourceAccessControl(
                        (address, kind) -> false, ExternalResourceControlPriority.RUN_BEFORE_RESOLVING_URI);
                builder.useSVGDrawer(new FigureDrawer(print.drawings(), Fonts.SERIF));
                new Fonts(document, java.util.Optional.empty()).register(builder);
                builder.withHtmlContent(print.xhtml(), null);
                try (PdfBoxRenderer renderer = builder.buildPdfRenderer()) {
                    renderer.createPDFWithoutClosing();
                }
                document.save(new ByteArrayOutputStream());
                pages += document.getNumberOfPages();
            }
        }
        return pages;
    }
}
