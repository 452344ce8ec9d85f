package ampersheet.render.pdf;

import ampersheet.render.Markup;
import ampersheet.sheet.Document;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.Caution;
import ampersheet.sheet.Document.FigureBlock;
import ampersheet.sheet.Document.ProblemBlock;
import java.util.List;

/** Writes pages of bench cards. */
final class CardPages {
    private final PrintMarkup print;
    private final Markup markup;
    private final Document document;

    /** @param markup into which the blocks of the print go */
    CardPages(PrintMarkup print, Markup markup, Document document) {
        this.print = print;
        this.markup = markup;
        this.document = document;
    }

    /** @param look class of the page */
    void write(List<CardMarkup> page, String look) {
        markup.open("div", "class", look).newline();
        List<String> places = CardMarkup.places(page);
        for (int i = 0; i < page.size(); i++) {
            card(page.get(i), places.get(i));
        }
        CutMarks marks = new CutMarks(document.paper(), page);
        String alt = document.language().say("print.cut-marks");
        print.drawing(marks, alt, marks.width(), marks.height(), "class", "marks");
        markup.close("div").newline();
    }

    private void card(CardMarkup card, String place) {
        ProblemBlock block = card.block();
        markup.open(
                        "div",
                        "class",
                        "card " + CardMarkup.name(card.size()) + " " + place,
                        "id",
                        PrintMarkup.PROBLEM_ID + block.number(),
                        "style",
                        "font-size: " + card.setting().points() + "pt")
                .newline();
        markup.open("h1")
                .line(block.number() + "\u2002" + block.title())
                .close("h1")
                .newline();
        markup.open("p", "class", "tags")
                .line(document.subtitle() + " · " + String.join(" · ", block.tags()))
                .close("p")
                .newline();
        print.cautions(block.blocks().stream().filter(Caution.class::isInstance).toList());
        List<Block> rest = block.blocks().stream()
                .filter(part -> !(part instanceof Caution))
                .toList();
        boolean lying = card.size() == CardSize.HALF;
        boolean beside = card.hasFigureBeside(document.paper());
        if (lying && !beside) {
            onCard(rest.subList(0, 1), card);
        }
        if (lying) {
            int half = beside ? 2 : 3;
            markup.open("div", "class", "column").newline();
            onCard(rest.subList(beside ? 0 : 1, half), card);
            markup.close("div").open("div", "class", "column").newline();
            onCard(rest.subList(half, rest.size()), card);
            markup.close("div").newline();
        } else {
            onCard(rest, card);
        }
        markup.close("div").newline();
    }

    private void onCard(List<Block> blocks, CardMarkup card) {
        for (Block block : blocks) {
            if (block instanceof FigureBlock figure) {
                print.drawing(figure.figure(), FigureSize.onCard(figure.figure(), card, document.paper()));
            } else {
                block.accept(print);
            }
        }
    }
}
