package ampersheet.render.pdf;

import ampersheet.sheet.Document;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.Paper;
import ampersheet.sheet.Document.ProblemBlock;
import ampersheet.sheet.Document.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * Bench cards on paper: four quarters of a page, or halves, or whole pages, with marks for cutting.
 *
 * @param block what is on the card
 * @param size its share of the page
 * @param setting how large it is set
 */
record CardMarkup(ProblemBlock block, CardSize size, CardSize.Setting setting) {
    /** Rows in which something is written by hand, in millimetres. */
    private static final double WRITTEN = 8;
    /** So many are left on a card that is too long for the largest size with all of its readings. */
    private static final List<Integer> FEWER_READINGS = List.of(3, 2);

    static List<ProblemBlock> cards(Document document) {
        return document.blocks().stream()
                .filter(ProblemBlock.class::isInstance)
                .map(block -> (ProblemBlock) block)
                .toList();
    }

    /** Under each other on an endless page, each as high as its content. */
    static PrintMarkup.Print measured(Document document, Profile profile, List<CardMarkup> cards) {
        return PrintMarkup.cards(document, profile, style(document.paper(), profile, true), List.of(cards));
    }

    /** On pages, in the order of the sheet as far as quarters and halves allow. */
    static PrintMarkup.Print of(Document document, Profile profile, List<CardMarkup> cards) {
        return PrintMarkup.cards(document, profile, style(document.paper(), profile, false), pages(cards));
    }

    /** Halves of a page hold one lying card or two quarters; a quarter waits for the next one. */
    private static List<List<CardMarkup>> pages(List<CardMarkup> cards) {
        List<List<CardMarkup>> halves = new ArrayList<>();
        List<List<CardMarkup>> wholes = new ArrayList<>();
        List<CardMarkup> waiting = null;
        for (CardMarkup card : cards) {
            if (card.size == CardSize.WHOLE) {
                wholes.add(List.of(card));
            } else if (card.size == CardSize.HALF) {
                halves.add(List.of(card));
            } else if (waiting == null) {
                waiting = new ArrayList<>(List.of(card));
                halves.add(waiting);
            } else {
                waiting.add(card);
                waiting = null;
            }
        }
        List<List<CardMarkup>> pages = new ArrayList<>();
        for (int i = 0; i < halves.size(); i += 2) {
            List<CardMarkup> page = new ArrayList<>(halves.get(i));
            if (i + 1 < halves.size()) {
                page.addAll(halves.get(i + 1));
            }
            pages.add(page);
        }
        pages.addAll(wholes);
        return pages;
    }

    /** Where each card of a page stands on it. */
    static List<String> places(List<CardMarkup> page) {
        List<String> places = new ArrayList<>();
        int quarters = 0;
        for (CardMarkup card : page) {
            String side = card.size == CardSize.QUARTER && quarters % 2 == 1 ? "east" : "west";
            boolean alone = card.size == CardSize.QUARTER && quarters % 2 == 0 && isLastOfHalf(page, card);
            places.add(side + (quarters < 2 ? " north" : " south"));
            quarters += card.size == CardSize.QUARTER && !alone ? 1 : 2;
        }
        return places;
    }

    private static boolean isLastOfHalf(List<CardMarkup> page, CardMarkup card) {
        int next = page.indexOf(card) + 1;
        return next == page.size() || page.get(next).size != CardSize.QUARTER;
    }

    /** Whether its figure is narrow enough for the card, or for one of its columns. */
    boolean holdsFigure(Paper paper) {
        return block.blocks().stream()
                .filter(Document.FigureBlock.class::isInstance)
                .map(figure -> FigureSize.onCard(((Document.FigureBlock) figure).figure(), this, paper))
                .allMatch(figure -> figure.width() <= size.inside(paper) + 0.01);
    }

    /**
     * All that is tried for the cards, best first: small ones before large ones, large letters before small ones, the
     * figure beside the words before the figure above them.
     *
     * @param bySize the same cards with drawings for each size
     */
    static List<List<CardMarkup>> trials(List<Document> bySize, Profile profile) {
        List<List<CardMarkup>> trials = new ArrayList<>();
        List<CardSize> sizes = CardSize.of(profile);
        for (int i = 0; i < sizes.size(); i++) {
            CardSize size = sizes.get(i);
            for (CardSize.Setting setting : size.settings(profile)) {
                if (size == CardSize.HALF) {
                    trials.add(trial(bySize.get(0), size, setting).stream()
                            .filter(card -> card.hasFigureBeside(bySize.get(0).paper()))
                            .toList());
                }
                trials.add(trial(bySize.get(i), size, setting));
            }
        }
        List<CardMarkup> last = trials.get(trials.size() - 1);
        for (int readings : FEWER_READINGS) {
            trials.add(last.stream().map(card -> card.withReadings(readings)).toList());
        }
        return trials;
    }

    /** With the most telling only. */
    private CardMarkup withReadings(int most) {
        List<Block> fewer = block.blocks().stream()
                .map(part -> part instanceof Table table && table.rows().size() > most
                        ? new Table(table.caption(), table.head(), table.rows().subList(0, most))
                        : part)
                .toList();
        return new CardMarkup(block.holding(fewer), size, setting);
    }

    private static List<CardMarkup> trial(Document document, CardSize size, CardSize.Setting setting) {
        return cards(document).stream()
                .map(card -> new CardMarkup(card, size, setting))
                .filter(card -> card.holdsFigure(document.paper()))
                .toList();
    }

    /** Height for what stands on it, padding included, in millimetres. */
    double room(Paper paper) {
        return size.height(paper) - 1;
    }

    /** Whether it lies, and its figure stands in the left column. */
    boolean hasFigureBeside(Paper paper) {
        return size == CardSize.HALF
                && block.blocks().stream()
                        .filter(Document.FigureBlock.class::isInstance)
                        .map(figure -> FigureSize.onCard(((Document.FigureBlock) figure).figure(), this, paper))
                        .allMatch(figure -> figure.width() <= size.column(paper) + 0.01);
    }

    private static String style(Paper paper, Profile profile, boolean measured) {
        double w = PrintStyle.width(paper);
        double h = PrintStyle.height(paper);
        String family = profile.sansSerif() ? Fonts.SANS : Fonts.SERIF;
        StringBuilder sizes = new StringBuilder();
        for (CardSize size : CardSize.values()) {
            String name = "." + name(size);
            sizes.append(name)
                    .append(" { width: ")
                    .append(size.inside(paper))
                    .append("mm; ")
                    .append(
                            measured
                                    ? ""
                                    : "position: absolute; height: "
                                            + (size.height(paper) - 2 * CardSize.ABOVE_AND_BELOW - 1) + "mm; ")
                    .append("}\n");
        }
        String placed = ".page { position: relative; width: " + w + "mm; height: " + (h - 0.4)
                + "mm; page-break-inside: avoid; }\n"
                + ".more { page-break-before: always; }\n"
                + ".west { left: 0; } .east { left: " + w / 2 + "mm; } .north { top: 0; } .south { top: " + h / 2
                + "mm; }\n"
                + ".marks { position: absolute; left: 0; top: 0; }\n";
        return "@page { size: " + w + "mm " + (measured ? PrintStyle.ENDLESS : h) + "mm; margin: 0; }\n"
                + "body { font-family: '" + family + "', " + Fonts.FALLBACK
                + "; font-size: 10pt; line-height: 1.16; }\n"
                + PrintStyle.common()
                + ".card { padding: " + CardSize.ABOVE_AND_BELOW + "mm " + CardSize.SIDE + "mm; }\n"
                + sizes
                + ".column { display: inline-block; vertical-align: top; width: "
                + CardSize.HALF.column(paper) + "mm; } .column + .column { margin-left: 4.5mm; }\n"
                + ".card ul { list-style-type: none; padding: 0; margin: 1mm 0; } .card ol { margin: 1mm 0; }\n"
                + ".card .caution { margin: 1mm 0; padding: 0.5mm 1.5mm; }\n"
                + ".card table { font-size: 1em; margin-bottom: 0.7mm; } .card tbody tr { height: " + WRITTEN
                + "mm; }\n"
                + ".card thead th { padding-bottom: 0.3mm; white-space: nowrap; }\n"
                + ".card tbody td, .card tbody th { height: " + WRITTEN + "mm; vertical-align: middle; "
                + "padding: 0.3mm 1.2mm 0.3mm 0; }\n"
                + ".card td:nth-child(2) { width: 27mm; }\n"
                + ".card td:last-child, .card thead th:last-child { border-left: 0.35mm solid #000; "
                + "padding-left: 1mm; }\n"
                + ".card td:last-child { border-bottom-width: 0.7mm; width: 19mm; }\n"
                + (measured ? ".marks { display: none; }\n" : placed);
    }

    static String name(CardSize size) {
        return Map.of(CardSize.QUARTER, "quarter", CardSize.HALF, "half-page", CardSize.WHOLE, "whole-page")
                .get(size);
    }
}
