package ampersheet.render.markdown;

import ampersheet.render.Wording;
import ampersheet.sheet.Document;

/** A document as Markdown (CommonMark with tables) that reads well as plain text. */
public final class MarkdownPage {
    private MarkdownPage() {}

    /** Ends with one line end. */
    public static String render(Document document) {
        Page page = new Page();
        page.paragraph("# " + Escaped.text(document.title()));
        boolean key = document.kind() == Document.Kind.KEY;
        String sheet = document.sheetId().isEmpty() ? "" : Wording.SHEET + " " + Escaped.text(document.sheetId());
        if (key) {
            page.paragraph("**" + Wording.KEY_NOTICE + "**");
        }
        if (!document.subtitle().isBlank()) {
            page.paragraph(Escaped.start(document.subtitle()));
        }
        if (!sheet.isEmpty()) {
            page.paragraph("**" + sheet + "**");
        }
        new BlockText(page).write(document.blocks());
        page.paragraph("---");
        page.paragraph(Wording.END_OF + " " + Escaped.text(document.title())
                + (sheet.isEmpty() ? "" : " · " + sheet)
                + (key ? " · **" + Wording.KEY_NOTICE + "**" : ""));
        return page.toString();
    }
}
