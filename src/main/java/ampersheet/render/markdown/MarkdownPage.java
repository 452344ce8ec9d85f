package ampersheet.render.markdown;

import ampersheet.language.Language;
import ampersheet.sheet.Document;
import java.util.Map;
import java.util.Optional;

/** A document as Markdown (CommonMark with tables) that reads well as plain text. */
public final class MarkdownPage {
    private MarkdownPage() {}

    /**
     * A page that shows its figures.
     *
     * @param figures SVG by the names of files that lie beside the page, in the order of the page
     */
    public record Illustrated(String text, Map<String, String> figures) {}

    /** Ends with one line end. */
    public static String render(Document document) {
        return render(document, new FigureFiles(Optional.empty()));
    }

    /** @param name what the names of the files begin with: {@code seat-007} for {@code seat-007-1.svg} */
    public static Illustrated illustrated(Document document, String name) {
        FigureFiles figures = new FigureFiles(Optional.of(name));
        String text = render(document, figures);
        return new Illustrated(text, figures.files());
    }

    private static String render(Document document, FigureFiles figures) {
        Page page = new Page();
        page.paragraph("# " + Escaped.text(document.title()));
        boolean key = document.kind() == Document.Kind.KEY;
        Language language = document.language();
        String sheet = document.sheetId().isEmpty()
                ? ""
                : language.say("print.sheet", "sheet", Escaped.text(document.sheetId()));
        String notice = key ? "**" + language.say("print.key-notice") + "**" : "";
        if (key) {
            page.paragraph(notice);
        }
        if (!document.subtitle().isBlank()) {
            page.paragraph(Escaped.start(document.subtitle()));
        }
        if (!sheet.isEmpty()) {
            page.paragraph("**" + sheet + "**");
        }
        new BlockText(page, figures, language).write(document.blocks());
        page.paragraph("---");
        page.paragraph(language.say("print.end", "title", Escaped.text(document.title()))
                + (sheet.isEmpty() ? "" : " · " + sheet)
                + (key ? " · " + notice : ""));
        return page.toString();
    }
}
