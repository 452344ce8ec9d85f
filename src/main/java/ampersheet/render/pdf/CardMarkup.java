package ampersheet.render.pdf;

import ampersheet.sheet.Document;
import ampersheet.sheet.Document.Paper;
import ampersheet.sheet.Document.ProblemBlock;
import java.util.List;
import java.util.Map;

/** Four cards on a sheet of paper, each a quarter of it (A6 on A4), with marks for cutting. */
final class CardMarkup {
    static final int PER_PAGE = 4;
    private static final double SMALLEST = 7.5;
    private static final double PADDING_ABOVE_AND_BELOW = 9;

    private CardMarkup() {}

    /** @param points size of each card's lettering, by number of its problem */
    static PrintMarkup.Print of(Document document, Profile profile, Map<String, Double> points) {
        return PrintMarkup.cards(document, profile, style(document.paper(), profile, SMALLEST, false), points);
    }

    /** Under each other on an endless page, each as high as its content. */
    static PrintMarkup.Print measured(Document document, Profile profile, double points) {
        return PrintMarkup.cards(document, profile, style(document.paper(), profile, points, true), Map.of());
    }

    static List<ProblemBlock> cards(Document document) {
        return document.blocks().stream()
                .filter(ProblemBlock.class::isInstance)
                .map(block -> (ProblemBlock) block)
                .toList();
    }

    /** Where a card stands on its page. */
    static String place(int index) {
        return (index % 2 == 0 ? "west" : "east") + (index % PER_PAGE < 2 ? " north" : " south");
    }

    static double height(Paper paper) {
        return PrintStyle.height(paper) / 2;
    }

    private static String style(Paper paper, Profile profile, double points, boolean measured) {
        double w = PrintStyle.width(paper);
        double h = PrintStyle.height(paper);
        String family = profile.sansSerif() ? Fonts.SANS : Fonts.SERIF;
        String placed = ".four { position: relative; width: " + w + "mm; height: " + (h - 0.4)
                + "mm; page-break-inside: avoid; }\n"
                + ".more { page-break-before: always; }\n"
                + ".card { position: absolute; height: " + (h / 2 - PADDING_ABOVE_AND_BELOW - 1) + "mm; }\n"
                + ".west { left: 0; } .east { left: " + w / 2 + "mm; } .north { top: 0; } .south { top: " + h / 2
                + "mm; }\n"
                + ".marks { position: absolute; left: 0; top: 0; }\n";
        return "@page { size: " + w + "mm " + (measured ? PrintStyle.ENDLESS : h) + "mm; margin: 0; }\n"
                + "body { font-family: '" + family + "', " + Fonts.FALLBACK + "; font-size: " + points
                + "pt; line-height: 1.18; }\n"
                + PrintStyle.common()
                + ".card { width: " + (w / 2 - 14) + "mm; padding: 4.5mm 7mm; }\n"
                + (measured ? ".marks { display: none; }\n" : placed);
    }
}
