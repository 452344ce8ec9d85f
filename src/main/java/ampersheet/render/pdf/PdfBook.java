package ampersheet.render.pdf;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.language.Language;
import ampersheet.sheet.Document;
import ampersheet.sheet.Document.LogoBlock;
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
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDMetadata;

/**
 * One PDF of many handouts, laid out one at a time, so that a whole class needs little more memory than one learner.
 * Every handout begins on the front of a leaf; the back of its last one is empty, or in the compact profile ruled. Keys
 * come after all sheets. Tagged after PDF/UA-1 (ISO 14289-1); the same documents give the same bytes.
 */
public final class PdfBook implements Closeable {
    static {
        XRLog.setLoggingEnabled(
                false); // complaints come as diagnostics, see Faults; what else it tells is for its developers
    }

    private static final double POINTS_PER_MILLIMETRE = 72 / 25.4;
    /** Any date will do, as long as it is always the same. */
    private static final int YEAR = 2026;
    /** A problem of so many pages may fit on one if it is set closer. */
    private static final double LITTLE_TOO_LONG = 1.09;
    /** Less by what adding up may round away. */
    private static final double A_PAGE = 1 - 1e-9;

    /** In points: what rounding may add up to where pieces stand in columns. */
    private static final double SPARE = 5;

    /** What is kept of a handout when it is written: stand-ins for its pages and its tag. */
    private record Handout(String name, boolean key, List<COSBase> pages, COSBase tag) {}

    private final String title;
    private final Language language;
    private final Profile profile;
    private final boolean imposed;
    private final Fonts fonts;
    private final ObjectFile file;
    private final StructureTree structure;
    private final COSDictionary pageTree = new COSDictionary();
    private final List<Handout> handouts = new ArrayList<>();
    /** Holds the fonts; every handout is a document of its own until it is written. */
    private final PDDocument pdf;

    /**
     * @param title of the whole
     * @param language of its words
     * @param extra for letters that the shipped fonts lack
     * @param workingFolder where a working file lies until the book is closed
     * @throws DiagnosticException if there can be no working file
     */
    public PdfBook(String title, Language language, Profile profile, Optional<ExtraFont> extra, Path workingFolder) {
        this(title, language, profile, false, extra, workingFolder);
    }

    private PdfBook(
            String title,
            Language language,
            Profile profile,
            boolean imposed,
            Optional<ExtraFont> extra,
            Path workingFolder) {
        this.title = title;
        this.language = language;
        this.profile = profile;
        this.imposed = imposed;
        try {
            this.pdf = new PDDocument();
            this.fonts = new Fonts(pdf, extra);
        } catch (IOException failure) {
            throw new UncheckedIOException("the fonts for print cannot be read", failure);
        }
        this.file = new ObjectFile(workingFolder);
        this.structure = new StructureTree(file);
        fonts.objects().forEach(file::reserve);
        file.reserve(pageTree);
    }

    /**
     * Of handouts on folded paper, each to become a booklet: two pages on a side, in the order in which they are
     * printed and not in that in which they are read. So it is for the printer only, and has no tags.
     *
     * @throws DiagnosticException if there can be no working file
     */
    public static PdfBook ofBooklets(String title, Language language, Optional<ExtraFont> extra, Path workingFolder) {
        return new PdfBook(title, language, Profile.COMPACT, true, extra, workingFolder);
    }

    /**
     * Lays out one more sheet or key.
     *
     * @throws DiagnosticException if it has a character that the fonts do not have
     */
    public void add(Document document) {
        try (PDDocument handout = new PDDocument();
                PDDocument withBack = new PDDocument()) {
            layOut(document, handout, false);
            boolean backIsEmpty = handout.getNumberOfPages() % 2 == 1;
            if (backIsEmpty) {
                layOut(document, withBack, true);
            }
            keep(document, backIsEmpty ? withBack : handout);
        } catch (IOException failure) {
            throw new UncheckedIOException("a handout could not be laid out", failure);
        }
    }

    /** Lays out what comes before all sheets, a key or not: whoever prints sees it first. */
    public void addFirst(Document document) {
        add(document);
        lastToFirst();
    }

    private void lastToFirst() {
        Handout last = handouts.remove(handouts.size() - 1);
        handouts.add(0, new Handout(last.name(), false, last.pages(), last.tag()));
    }

    /**
     * Lays out what comes before cards, which are printed on one side.
     *
     * @throws DiagnosticException if it has a character that the fonts do not have
     */
    public void addBeforeCards(Document document) {
        try (PDDocument handout = new PDDocument()) {
            layOut(document, handout, false);
            keep(document, handout);
            lastToFirst();
        } catch (IOException failure) {
            throw new UncheckedIOException("what goes with cards could not be laid out", failure);
        }
    }

    private void keep(Document document, PDDocument handout) throws IOException {
        if (imposed) {
            try (PDDocument folded = Imposition.of(handout)) {
                keep(document, pages(folded), new COSDictionary());
            }
        } else {
            COSDictionary tag = structure.take(handout);
            List<COSBase> pages = pages(handout);
            file.write(tag);
            keep(document, pages, standIn(tag));
        }
    }

    private List<COSBase> pages(PDDocument handout) throws IOException {
        List<COSBase> pages = new ArrayList<>();
        for (PDPage page : handout.getPages()) {
            page.getCOSObject().setItem(COSName.PARENT, pageTree);
            file.write(page.getCOSObject());
            pages.add(standIn(page.getCOSObject()));
        }
        return pages;
    }

    private void keep(Document document, List<COSBase> pages, COSBase tag) {
        boolean key = document.kind() == Document.Kind.KEY;
        handouts.add(new Handout(Outline.title(document), key, pages, tag));
    }

    /** For each size of cards the width in pixels that a drawing may have. */
    public static List<Double> cardWidths(Profile profile, Document.Paper paper) {
        return CardSize.of(profile).stream()
                .map(size -> size.widestDrawing(paper, profile))
                .toList();
    }

    /**
     * Puts problems on cards, each on the smallest on which it can be read.
     *
     * @param bySize the same cards with drawings for each of {@link #cardWidths}
     * @return numbers of those that have more to say than the largest holds; they are left out
     * @throws DiagnosticException if it has a character that the fonts do not have
     */
    public List<String> addCards(List<Document> bySize) {
        List<String> tooLong = new ArrayList<>();
        try (PDDocument handout = new PDDocument()) {
            Faults faults = new Faults();
            List<CardMarkup> cards = fittedCards(bySize, tooLong, faults);
            if (!cards.isEmpty()) {
                Document document = bySize.get(0);
                set(MarkupTree.of(CardMarkup.of(document, profile, cards)), faults, handout);
                faults.refuse(document);
                keep(document, handout);
            }
        } catch (IOException failure) {
            throw new UncheckedIOException("cards could not be laid out", failure);
        }
        return tooLong;
    }

    /** Refers to the same object and holds nothing of it. */
    private static COSBase standIn(COSBase written) {
        COSDictionary standIn = new COSDictionary();
        standIn.setKey(written.getKey());
        return standIn;
    }

    /** Sides of paper, empty ones included. */
    public int sides() {
        return handouts.stream().mapToInt(handout -> handout.pages().size()).sum();
    }

    private void layOut(Document document, PDDocument handout, boolean oneMore) throws IOException {
        Faults faults = new Faults();
        MarkupTree markup = markup(document, faults);
        if (oneMore) {
            markup.leaveBackEmpty(document.language());
        }
        set(markup, faults, handout);
        faults.refuse(document);
    }

    void set(MarkupTree markup, Faults faults, PDDocument into) throws IOException {
        try (PdfBoxRenderer renderer = builder(markup, faults, into).buildPdfRenderer()) {
            renderer.createPDFWithoutClosing();
        }
    }

    /** What is set in the end, page breaks and all. */
    MarkupTree markup(Document document) throws IOException {
        return markup(document, new Faults());
    }

    private MarkupTree markup(Document document, Faults faults) throws IOException {
        PrintMarkup.Print print = PrintMarkup.of(document, profile);
        refuseMissing(print, document);
        MarkupTree markup = MarkupTree.of(print);
        if (document.kind() == Document.Kind.SHEET) {
            markup.style(PrintStyle.endless(document, profile));
            if (profile.columns()) {
                markup = packed(document, markup, faults);
                markup.style(PrintStyle.of(document, profile));
                return markup;
            }
            List<PageBreaks.Start> starts = breaks(document, markup, faults);
            markup.style(PrintStyle.of(document, profile));
            markup.breakBefore(starts, document.language());
        }
        return markup;
    }

    /** @param endless on one page as long as need be */
    private MarkupTree packed(Document document, MarkupTree endless, Faults faults) throws IOException {
        double page = PrintStyle.textHeight(document.paper(), profile) * POINTS_PER_MILLIMETRE;
        try (PdfBoxRenderer renderer = builder(endless, faults, pdf).buildPdfRenderer()) {
            renderer.layout();
            List<Piece> pieces =
                    Pieces.of(renderer, ids(document, ProblemBlock::followsExample), Map.of(), Set.of(), page);
            boolean folded = document.paper().isFolded();
            List<PackedPages.Page> pages = new ArrayList<>(PackedPages.of(pieces, page - SPARE, folded));
            while (pages.size() % (folded ? Imposition.PAGES_OF_A_LEAF : 2) != 0) {
                pages.add(new PackedPages.Page(List.of(), page - SPARE)); // what the last leaf has left, to work on
            }
            double width = PrintStyle.textWidth(document.paper(), profile);
            PageAssembly.Room room = new PageAssembly.Room(width, ids(document, ProblemBlock::isWorked));
            return PageAssembly.of(endless, pieces, pages, room, document.language());
        }
    }

    /** Each card at the largest setting of the smallest size that holds what it has to say. */
    private List<CardMarkup> fittedCards(List<Document> bySize, List<String> tooLong, Faults faults)
            throws IOException {
        Map<String, CardMarkup> fitted = new TreeMap<>();
        for (List<CardMarkup> trial : CardMarkup.trials(bySize, profile)) {
            List<CardMarkup> open = trial.stream()
                    .filter(card -> !fitted.containsKey(card.block().number()))
                    .toList();
            if (!open.isEmpty()) {
                Document document = bySize.get(0);
                PrintMarkup.Print measured = CardMarkup.measured(document, profile, open);
                refuseMissing(measured, document);
                Map<String, Double> heights = heights(measured, open, faults);
                open.stream()
                        .filter(card -> heights.get(card.block().number())
                                <= card.room(document.paper()) * POINTS_PER_MILLIMETRE)
                        .forEach(card -> fitted.put(card.block().number(), card));
            }
        }
        List<CardMarkup> inOrder = new ArrayList<>();
        for (ProblemBlock card : CardMarkup.cards(bySize.get(0))) {
            if (fitted.containsKey(card.number())) {
                inOrder.add(fitted.get(card.number()));
            } else {
                tooLong.add(card.number());
            }
        }
        return inOrder;
    }

    /** Of each problem, in points. */
    private Map<String, Double> heights(PrintMarkup.Print print, List<CardMarkup> cards, Faults faults)
            throws IOException {
        Map<String, Double> heights = new TreeMap<>();
        try (PdfBoxRenderer renderer =
                builder(MarkupTree.of(print), faults, pdf).buildPdfRenderer()) {
            renderer.layout();
            for (CardMarkup card : cards) {
                String number = card.block().number();
                Box box = renderer.getSharedContext().getBoxById(PrintMarkup.PROBLEM_ID + number);
                heights.put(number, box.getHeight() / (double) renderer.getDotsPerPoint());
            }
        }
        return heights;
    }

    /**
     * Where pages begin, found by measuring every problem first. One that is a little too long for a page is set closer
     * if it fits then; a worked example goes without its curve if that saves a page.
     *
     * @param endless on one page as long as need be
     */
    private List<PageBreaks.Start> breaks(Document document, MarkupTree endless, Faults faults) throws IOException {
        double page = PrintStyle.textHeight(document.paper(), profile) * POINTS_PER_MILLIMETRE;
        try (PdfBoxRenderer renderer = builder(endless, faults, pdf).buildPdfRenderer()) {
            renderer.layout();
            Map<String, Double> measured = Pieces.heights(renderer);
            Map<String, Double> closer = setCloser(measured, page, endless, faults);
            Map<String, Double> curves = Pieces.curves(renderer);
            Set<String> twins = ids(document, ProblemBlock::followsExample);
            Map<String, Double> lower = closer;
            Set<String> without = Set.of();
            PageBreaks.Plan plan = PageBreaks.of(Pieces.of(renderer, twins, lower, without, page), page);
            for (String id : curves.keySet()) {
                Map<String, Double> lowerYet = new TreeMap<>(lower);
                double rest = measured.get(id) - curves.get(id);
                lowerYet.remove(id);
                if (rest <= page) {
                    lowerYet.put(id, rest);
                }
                Set<String> fewer = new TreeSet<>(without);
                fewer.add(id);
                PageBreaks.Plan other = PageBreaks.of(Pieces.of(renderer, twins, lowerYet, fewer, page), page);
                if (other.cost() <= plan.cost() - A_PAGE) {
                    plan = other;
                    lower = lowerYet;
                    without = fewer;
                }
            }
            closer.keySet().removeAll(without);
            endless.setCloser(closer.keySet());
            endless.removeCurves(without);
            return plan.starts();
        }
    }

    /** Heights of those that are a little too long for a page and fit on it when they are set closer. */
    private Map<String, Double> setCloser(Map<String, Double> measured, double page, MarkupTree endless, Faults faults)
            throws IOException {
        Map<String, Double> closer = new TreeMap<>(measured);
        closer.values().removeIf(height -> height <= page || height > LITTLE_TOO_LONG * page);
        if (!closer.isEmpty()) {
            try (PdfBoxRenderer renderer =
                    builder(endless.closer(closer.keySet()), faults, pdf).buildPdfRenderer()) {
                renderer.layout();
                closer.putAll(Pieces.heights(renderer));
            }
            closer.values().removeIf(height -> height > page);
        }
        return closer;
    }

    private static Set<String> ids(Document document, Predicate<ProblemBlock> which) {
        return CardMarkup.cards(document).stream()
                .filter(which)
                .map(problem -> PrintMarkup.PROBLEM_ID + problem.number())
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private PdfRendererBuilder builder(MarkupTree markup, Faults faults, PDDocument into) {
        PdfRendererBuilder builder = new PdfRendererBuilder();
        builder.usePDDocument(into);
        builder.usePdfUaAccessibility(true);
        for (ExternalResourceControlPriority when : ExternalResourceControlPriority.values()) {
            builder.useExternalResourceAccessControl((address, kind) -> address.startsWith(LogoBlock.WITHIN), when);
        }
        builder.withDiagnosticConsumer(faults::hear);
        builder.useUnicodeLineBreaker(new LineBreaks());
        builder.useSVGDrawer(new FigureDrawer(markup.drawings(), profile.sansSerif() ? Fonts.SANS : Fonts.SERIF));
        fonts.register(builder);
        if (markup.runsRightToLeft()) {
            builder.useUnicodeBidiSplitter(Writing.Directions::new);
            builder.useUnicodeBidiReorderer(new Writing());
        }
        builder.withW3cDocument(markup.nodes(), null);
        return builder;
    }

    private void refuseMissing(PrintMarkup.Print print, Document document) {
        Set<String> missing = fonts.missing(print.letters());
        if (!missing.isEmpty()) {
            throw new DiagnosticException(Diagnostic.error(
                    Place.inFile(Faults.name(document)),
                    say("folder.font.missing", "letters", String.join(" ", missing)),
                    say("folder.font.missing.expected"),
                    say("folder.font.missing.next")));
        }
    }

    /** Writes the whole; nothing can be added afterwards. */
    public void write(OutputStream out) throws IOException {
        List<Handout> inOrder = new ArrayList<>(
                handouts.stream().filter(handout -> !handout.key()).toList());
        handouts.stream().filter(Handout::key).forEach(inOrder::add);
        COSArray pages = new COSArray();
        inOrder.forEach(handout -> handout.pages().forEach(pages::add));
        pageTree.setName(COSName.TYPE, "Pages");
        pageTree.setInt(COSName.COUNT, pages.size());
        pageTree.setItem(COSName.KIDS, pages);
        file.write(pageTree);
        if (!imposed) {
            structure.finish(language.code(), inOrder.stream().map(Handout::tag).toList());
        }
        fonts.write(file);
        COSDictionary outline = Outline.written(
                inOrder.stream()
                        .map(handout ->
                                new Outline.Line(handout.name(), handout.pages().get(0)))
                        .toList(),
                file);
        file.finish(catalog(outline), information(), out);
    }

    private COSDictionary catalog(COSDictionary outline) throws IOException {
        COSDictionary marked = new COSDictionary();
        marked.setBoolean("Marked", true);
        COSDictionary preferences = new COSDictionary();
        preferences.setBoolean("DisplayDocTitle", true);
        PDMetadata metadata = new PDMetadata(pdf);
        metadata.importXMPMetadata(
                Xmp.packet(title, YEAR + "-01-01T00:00:00Z", !imposed).getBytes(StandardCharsets.UTF_8));
        COSDictionary catalog = new COSDictionary();
        catalog.setName(COSName.TYPE, "Catalog");
        catalog.setItem(COSName.PAGES, pageTree);
        if (!imposed) {
            catalog.setItem(COSName.STRUCT_TREE_ROOT, structure.root());
        }
        catalog.setString(COSName.LANG, language.code());
        if (!imposed) {
            catalog.setItem(COSName.MARK_INFO, marked);
        }
        catalog.setItem(COSName.VIEWER_PREFERENCES, preferences);
        catalog.setItem(COSName.METADATA, metadata);
        catalog.setItem(COSName.OUTLINES, outline);
        return catalog;
    }

    private COSDictionary information() {
        COSDictionary information = new COSDictionary();
        information.setString(COSName.TITLE, title);
        information.setString(COSName.PRODUCER, "Ampersheet");
        information.setString(COSName.CREATION_DATE, "D:" + YEAR + "0101000000Z");
        return information;
    }

    @Override
    public void close() {
        try {
            file.close();
            pdf.close();
        } catch (IOException failure) {
            throw new UncheckedIOException("the handouts' working file could not be closed", failure);
        }
    }
}
