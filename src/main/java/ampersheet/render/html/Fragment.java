package ampersheet.render.html;

import ampersheet.formula.MathMl;
import ampersheet.formula.Spoken;
import ampersheet.language.Language;
import ampersheet.render.Markup;
import ampersheet.render.Slots;
import ampersheet.render.SpokenLines;
import ampersheet.render.Wording;
import ampersheet.sheet.Document;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.StepBlock;
import java.util.List;

/** Part of a page that somebody else frames: blocks with fields to type in, and the look they need. */
public final class Fragment {
    private static final String MATH = "<math displaystyle=\"true\" aria-label=\"";

    private static final double PIXELS_PER_MILLIMETRE = 96 / 25.4;

    private Fragment() {}

    /**
     * @param idPrefix letters and hyphens that no other fragment of the page begins its ids with
     * @param under level of the heading that this stands under
     */
    public static String of(List<Block> blocks, Language language, String idPrefix, int under) {
        return of(new Document(Document.Kind.SHEET, language, "", "", "", Document.Paper.A4, blocks), idPrefix, under);
    }

    /** The blocks of a document, with its sheet ID where its problems show it. */
    public static String of(Document document, String idPrefix, int under) {
        Markup markup = Markup.inLongLines();
        new BlockMarkup(document, markup, new TypedPlaces(markup, document.language()), idPrefix)
                .under(under)
                .write();
        return markup.toString();
    }

    /** The blocks of a document as they are printed, with ruled places instead of fields. */
    public static String printed(Document document, String idPrefix, int under) {
        Markup markup = Markup.inLongLines();
        new BlockMarkup(document, markup, new RuledPlaces(markup, document.language()), idPrefix)
                .under(under)
                .write();
        return markup.toString();
    }

    /** The picture over a page; empty where it has none. */
    public static String logo(Document document) {
        return document.logo()
                .map(block -> Markup.inLongLines()
                        .single(
                                "img",
                                "class",
                                "logo",
                                "src",
                                block.address(),
                                "alt",
                                block.alt(),
                                "width",
                                pixels(block.width()),
                                "height",
                                pixels(block.height()))
                        .newline()
                        .toString())
                .orElse("");
    }

    private static String pixels(double millimetres) {
        return Long.toString(Math.max(1, Math.round(millimetres * PIXELS_PER_MILLIMETRE)));
    }

    /** The look of {@link #logo}, for those pages that have one. */
    public static String logoStyle() {
        return StyleSheet.LOGO;
    }

    /** A step without its numbers, in words: what it finds, by which rule, and why. */
    public static String rule(StepBlock step) {
        Markup markup = Markup.inLongLines();
        markup.open("p").line(Wording.capitalised(step.meaning())).text(": ");
        markup.open("strong").line(step.principle()).close("strong").text(". ");
        markup.line(Wording.sentence(step.reason())).close("p");
        return markup.toString();
    }

    /** A step without its numbers, in symbols, with the case that applies. */
    public static String symbols(StepBlock step, Language language) {
        Markup markup = Markup.inLongLines();
        step.condition().ifPresent(condition -> {
            markup.open("p", "class", "case");
            Slots.write(
                    language.say("print.case.symbols", "symbols", Slots.mark(0)),
                    markup::text,
                    () -> markup.trusted(MATH + Spoken.symbolic(condition, step.notation()) + "\">"
                            + MathMl.symbolic(condition, step.notation()) + "</math>"));
            markup.close("p");
        });
        markup.open("p", "class", "line", "role", "group", "aria-label", step.meaning());
        String spoken = Spoken.symbolic(step.formula().orElseThrow(), step.notation());
        markup.trusted(MATH + new SpokenLines(step.symbol(), language).equal(spoken) + "\">"
                        + MathMl.symbol(step.symbol()) + "<mo>=</mo>"
                        + MathMl.symbolic(step.formula().orElseThrow(), step.notation()) + "</math>")
                .close("p");
        return markup.toString();
    }

    /** The style sheet of every page; it begins with names for all colours in light and dark. */
    public static String style(Language language) {
        return StyleSheet.common(language);
    }
}
