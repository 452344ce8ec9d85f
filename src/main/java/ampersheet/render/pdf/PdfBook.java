package ampersheet.render.pdf;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.sheet.Document;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.ProblemBlock;
import com.openhtmltopdf.outputdevice.helper.ExternalResourceControlPriority;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.util.XRLog;
import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.GregorianCalendar;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TimeZone;
import java.util.TreeMap;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.io.IOUtils;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentCatalog;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDMetadata;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkInfo;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;

/**
 * One PDF of many handouts, laid out one at a time, so that a whole class needs little more memory than one learner.
 * Every handout begins on the front of a leaf; one of odd pages is followed by an empty one. Keys come after all sheets.
 * Tagged after PDF/UA-1 (ISO 14289-1); the same documents give the same bytes.
 */
public final class PdfBook implements Closeable {
  static {
    XRLog.setLoggingEnabled(false); // complaints come as diagnostics, see Faults; what else it tells is for its developers
  }

  private static final double POINTS_PER_MILLIMETRE = 72 / 25.4;
  /** Any date will do, as long as it is always the same. */
  private static final int YEAR = 2026;

  private record Handout(boolean key, List<PDPage> pages, COSDictionary tags) {}

  private final String title;
  private final String language;
  private final Profile profile;
  private final PDDocument pdf;
  private final Fonts fonts;
  private final StructureTree structure = new StructureTree();
  private final List<Handout> handouts = new ArrayList<>();

  /** @param title of the whole; @param language tag of its words */
  public PdfBook(String title, String language, Profile profile) {
    this.title = title;
    this.language = language;
    this.profile = profile;
    try {
      this.pdf = new PDDocument(IOUtils.createTempFileOnlyStreamCache());
      this.fonts = new Fonts(pdf);
    } catch (IOException failure) {
      throw new UncheckedIOException("the fonts for print cannot be read", failure);
    }
  }

  /**
   * Lays out one more sheet or key.
   *
   * @throws DiagnosticException if it has a character that the fonts do not have
   */
  public void add(Document document) {
    try {
      int before = pdf.getNumberOfPages();
      layOut(document);
      List<PDPage> pages = new ArrayList<>();
      for (int i = before; i < pdf.getNumberOfPages(); i++) {
        pages.add(pdf.getPage(i));
      }
      COSDictionary tags = structure.take(pdf, pages);
      if (pages.size() % 2 == 1) {
        pages.add(emptyPage(document.paper()));
      }
      handouts.add(new Handout(document.kind() == Document.Kind.KEY, pages, tags));
    } catch (IOException failure) {
      throw new UncheckedIOException("a handout could not be laid out", failure);
    }
  }

  /** Sides of paper, empty ones included. */
  public int sides() {
    return handouts.stream().mapToInt(handout -> handout.pages().size()).sum();
  }

  private void layOut(Document document) throws IOException {
    Faults faults = new Faults();
    PageBreaks breaks = document.kind() == Document.Kind.SHEET ? breaks(document, faults) : PageBreaks.NONE;
    String xhtml = PrintMarkup.of(document, profile, breaks);
    refuseMissing(xhtml, document);
    try (PdfBoxRenderer renderer = builder(xhtml, faults).buildPdfRenderer()) {
      renderer.layout();
      renderer.createPDFWithoutClosing();
    }
    faults.refuse(document);
  }

  /** Where pages begin, found by measuring every problem first. */
  private PageBreaks breaks(Document document, Faults faults) throws IOException {
    try (PdfBoxRenderer renderer = builder(PrintMarkup.endless(document, profile), faults).buildPdfRenderer()) {
      renderer.layout();
      Map<String, Double> heights = new TreeMap<>();
      double above = Double.MAX_VALUE;
      for (Block block : document.blocks()) {
        if (block instanceof ProblemBlock problem) {
          Box box = renderer.getSharedContext().getBoxById(PrintMarkup.PROBLEM_ID + problem.number());
          heights.put(problem.number(), (double) box.getHeight() / renderer.getDotsPerPoint());
          above = Math.min(above, box.getAbsY() / (double) renderer.getDotsPerPoint());
        }
      }
      return PageBreaks.of(document, above, heights, PrintStyle.textHeight(document.paper()) * POINTS_PER_MILLIMETRE);
    }
  }

  private PdfRendererBuilder builder(String xhtml, Faults faults) {
    PdfRendererBuilder builder = new PdfRendererBuilder();
    builder.usePDDocument(pdf);
    builder.usePdfUaAccessibility(true);
    builder.useExternalResourceAccessControl((address, kind) -> false, ExternalResourceControlPriority.RUN_BEFORE_RESOLVING_URI);
    builder.useExternalResourceAccessControl((address, kind) -> false, ExternalResourceControlPriority.RUN_AFTER_RESOLVING_URI);
    builder.withDiagnosticConsumer(faults::hear);
    builder.useSVGDrawer(new FigureDrawer(profile.sansSerif() ? Fonts.SANS : Fonts.SERIF));
    fonts.register(builder);
    builder.withHtmlContent(xhtml, null);
    return builder;
  }

  private void refuseMissing(String xhtml, Document document) {
    Set<String> missing = fonts.missing(xhtml);
    if (!missing.isEmpty()) {
      throw new DiagnosticException(Diagnostic.error(Place.inFile(Faults.name(document)),
          "the fonts for print have no letter for " + String.join(" ", missing),
          "letters of the Latin, Greek or Cyrillic alphabet, and the signs of the trade",
          "Write the name or the title in such letters, or hand out the HTML page instead."));
    }
  }

  private PDPage emptyPage(Document.Paper paper) {
    PDPage page = new PDPage(new PDRectangle((float) (PrintStyle.width(paper) * POINTS_PER_MILLIMETRE),
        (float) (PrintStyle.height(paper) * POINTS_PER_MILLIMETRE)));
    page.setResources(new PDResources());
    pdf.addPage(page);
    return page;
  }

  /** Writes the whole; nothing can be added afterwards. */
  public void write(OutputStream out) throws IOException {
    List<Handout> inOrder = new ArrayList<>(handouts.stream().filter(handout -> !handout.key()).toList());
    handouts.stream().filter(Handout::key).forEach(inOrder::add);
    COSArray pages = new COSArray();
    inOrder.forEach(handout -> handout.pages().forEach(page -> pages.add(page.getCOSObject())));
    PDDocumentCatalog catalog = pdf.getDocumentCatalog();
    catalog.getPages().getCOSObject().setItem(COSName.KIDS, pages);
    structure.finish(pdf, language, inOrder.stream().map(Handout::tags).toList());
    catalog.setLanguage(language);
    PDMarkInfo marked = new PDMarkInfo();
    marked.setMarked(true);
    catalog.setMarkInfo(marked);
    PDViewerPreferences preferences = new PDViewerPreferences(new COSDictionary());
    preferences.setDisplayDocTitle(true);
    catalog.setViewerPreferences(preferences);
    describe(catalog);
    pdf.setDocumentId(0L);
    pdf.save(out);
  }

  private void describe(PDDocumentCatalog catalog) throws IOException {
    GregorianCalendar date = new GregorianCalendar(TimeZone.getTimeZone("UTC"), Locale.ROOT);
    date.clear();
    date.set(YEAR, 0, 1);
    PDDocumentInformation information = new PDDocumentInformation();
    information.setTitle(title);
    information.setProducer("Ampersheet");
    information.setCreationDate(date);
    pdf.setDocumentInformation(information);
    PDMetadata metadata = new PDMetadata(pdf);
    metadata.importXMPMetadata(Xmp.packet(title, YEAR + "-01-01T00:00:00Z").getBytes(StandardCharsets.UTF_8));
    catalog.setMetadata(metadata);
  }

  @Override
  public void close() {
    try {
      pdf.close();
    } catch (IOException failure) {
      throw new UncheckedIOException("the handouts' working file could not be closed", failure);
    }
  }
}
