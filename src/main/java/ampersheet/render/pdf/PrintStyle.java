package ampersheet.render.pdf;

import ampersheet.language.Language;
import ampersheet.render.CssString;
import ampersheet.render.Slots;
import ampersheet.sheet.Document;
import ampersheet.sheet.Document.Paper;
import java.util.ArrayList;
import java.util.List;

/** The look of pages on paper. */
final class PrintStyle {
    private static final String COMMON = Resources.text("print.css");
    static final double ENDLESS = 50_000;
    /** Of the running head of most pages. */
    static final double HEAD_POINTS = 10;

    /** What comes before the problems is set closer, so that it takes one page with the table of check letters. */
    private static final String EASY =
            "body { letter-spacing: 0.04em; } em { font-style: normal; font-weight: bold; }\n"
                    + "body > .prose { line-height: 1.4; } table.grid { line-height: 1.02; } .grid th, .grid td { "
                    + "padding: 0.15mm 0; }\n";

    private static final String LARGE =
            "em { font-style: normal; font-weight: bold; } .setting .figure { display: block; }\n"
                    + ".granted, .tags, .caption, .why, .hint, .check, table, .look-up table, .half.beside table.grid { "
                    + "font-size: 1em; }\n"
                    + "sub, sup { font-size: 0.8em; }\n";

    private static final String COMPACT = Resources.text("compact.css");

    /**
     * The table of check letters, the only grid of a sheet: a rule at every fifth row leads the eye as well as at each.
     */
    private static final String CHECK_LETTERS =
            ".grid th, .grid td { padding: 0; } .grid tbody th, .grid tbody td { border-bottom-width: 0; }\n"
                    + ".grid tbody tr:nth-child(5n) th, .grid tbody tr:nth-child(5n) td { border-bottom-width: 0.35mm; }\n";

    /** A folded page has one column. */
    private static final String FOLDED =
            ".narrow { width: auto; } .column { display: block; width: auto; }\n.look-up th, .look-up td { padding-left: "
                    + "2mm; }\n";

    /** Of a folded page, in millimetres. */
    private static final double FOLDED_SIDE_MARGIN = 11;

    /** Width of a column, as a share of the page's; compact.css has the same. */
    static final double COLUMN = 0.484;

    private PrintStyle() {}

    static String of(Document document, Profile profile) {
        return of(document, profile, height(document.paper()));
    }

    /** On a page so long that nothing is broken. */
    static String endless(Document document, Profile profile) {
        return of(document, profile, ENDLESS);
    }

    private static String of(Document document, Profile profile, double pageHeight) {
        String family = profile.sansSerif() ? Fonts.SANS : Fonts.SERIF;
        boolean key = document.kind() == Document.Kind.KEY;
        String head = document.sheetId().isEmpty()
                ? document.title()
                : document.language().say("print.sheet", "sheet", document.sheetId());
        double headPoints = key ? HEAD_POINTS : profile.headPoints();
        return "@page { size: " + width(document.paper()) + "mm " + pageHeight + "mm; margin: "
                + profile.topMargin() + "mm " + sideMargin(document.paper(), profile) + "mm " + profile.bottomMargin()
                + "mm;\n"
                + margin("top-left", CssString.of(head), headPoints)
                + margin("top-center", CssString.of(key ? document.language().say("print.key-notice") : ""), headPoints)
                + margin("top-right", pageOf(document.language()), headPoints)
                + "}\n"
                + "body { font-family: '" + family + "', " + Fonts.FALLBACK + "; font-size: "
                + (key ? profile.keyPoints() : profile.points()) + "pt; line-height: "
                + profile.leading() + "; }\n"
                + COMMON
                + ".closer { line-height: " + profile.closeLeading() + "; }\n"
                + (profile == Profile.COMPACT ? COMPACT : "")
                + (profile == Profile.COMPACT && document.kind() == Document.Kind.SHEET ? CHECK_LETTERS : "")
                + (document.paper().isFolded() ? FOLDED : "")
                + (profile == Profile.EASY ? EASY : "")
                + (profile == Profile.LARGE ? LARGE : "");
    }

    /** The page's number as the style sheet counts it. */
    private static String pageOf(Language language) {
        List<String> content = new ArrayList<>();
        Slots.write(
                language.say("print.page-of", "page", Slots.mark(0), "pages", Slots.mark(1)),
                text -> content.add(CssString.of(text)),
                () -> content.add("counter(page)"),
                () -> content.add("counter(pages)"));
        return String.join(" ", content);
    }

    private static String margin(String where, String content, double points) {
        return "@" + where + " { content: " + content + "; font-family: '" + Fonts.SANS + "', " + Fonts.FALLBACK
                + "; font-size: " + points + "pt; vertical-align: bottom; padding-bottom: 4mm; }\n";
    }

    /** What does not depend on paper and profile. */
    static String common() {
        return COMMON;
    }

    static double textWidth(Paper paper, Profile profile) {
        return width(paper) - 2 * sideMargin(paper, profile);
    }

    private static double sideMargin(Paper paper, Profile profile) {
        return paper.isFolded() ? FOLDED_SIDE_MARGIN : profile.sideMargin();
    }

    /** Of two columns side by side, where compact.css has the same share, or of the only one. */
    static double columnWidth(Paper paper, Profile profile) {
        return (paper.isFolded() ? 1 : COLUMN) * textWidth(paper, profile);
    }

    static double textHeight(Paper paper, Profile profile) {
        return height(paper) - profile.topMargin() - profile.bottomMargin();
    }

    /** In millimetres: ISO 216 and US Letter. */
    static double width(Paper paper) {
        if (paper.isFolded()) {
            return height(paper.leaf()) / 2;
        }
        return paper == Paper.LETTER ? 215.9 : 210;
    }

    static double height(Paper paper) {
        if (paper.isFolded()) {
            return width(paper.leaf());
        }
        return paper == Paper.LETTER ? 279.4 : 297;
    }
}
