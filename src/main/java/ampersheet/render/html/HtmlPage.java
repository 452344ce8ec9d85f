package ampersheet.render.html;

import ampersheet.render.Markup;
import ampersheet.render.Slots;
import ampersheet.sheet.Document;

/**
 * A document as one self-contained, accessible HTML file that prints well: no request leaves it, no script runs in it.
 * The same bytes are well-formed XML, so that other programs can read a sheet without an HTML parser.
 */
public final class HtmlPage {
    private static final String NOTHING_FROM_OUTSIDE =
            "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'";

    private HtmlPage() {}

    public static String render(Document document) {
        String body = body(document);
        Markup markup = Markup.inLongLines();
        markup.trusted("<!DOCTYPE html>\n");
        markup.open(
                        "html",
                        "xmlns",
                        "http://www.w3.org/1999/xhtml",
                        "lang",
                        document.language().code(),
                        "xml:lang",
                        document.language().code())
                .newline();
        head(document, StyleSheet.of(document, body), markup);
        return markup.trusted(body).close("html").newline().toString();
    }

    private static String body(Document document) {
        Markup markup = Markup.inLongLines();
        markup.open(
                        "body",
                        "class",
                        switch (document.kind()) {
                            case SHEET -> "sheet";
                            case KEY -> "key";
                            case INDEX -> "index";
                            case FEEDBACK -> "feedback";
                            case REPORT -> "index report";
                        })
                .newline();
        masthead(document, markup);
        markup.open("main").newline();
        new BlockMarkup(document, markup).write();
        markup.close("main").newline();
        foot(document, markup);
        return markup.close("body").newline().toString();
    }

    private static void head(Document document, String style, Markup markup) {
        markup.open("head").newline();
        markup.single("meta", "charset", "UTF-8").newline();
        markup.single("meta", "http-equiv", "Content-Security-Policy", "content", NOTHING_FROM_OUTSIDE)
                .newline();
        markup.single("meta", "name", "viewport", "content", "width=device-width, initial-scale=1")
                .newline();
        markup.single("meta", "name", "color-scheme", "content", "light dark").newline();
        StringBuilder title = new StringBuilder();
        if (document.kind() == Document.Kind.KEY) {
            title.append(document.language().say("print.key-notice")).append(" · ");
        }
        title.append(document.title());
        if (!document.sheetId().isEmpty()) {
            title.append(" · ").append(document.sheetId());
        }
        markup.open("title").line(title.toString()).close("title").newline();
        markup.open("style").newline().trusted(style).close("style").newline();
        markup.close("head").newline();
    }

    private static void masthead(Document document, Markup markup) {
        markup.open("header", "class", "masthead").newline();
        if (document.kind() == Document.Kind.KEY) {
            markup.element("p", document.language().say("print.key-notice"), "class", "key-notice")
                    .newline();
        }
        markup.trusted(Fragment.logo(document));
        markup.open("h1").line(document.title()).close("h1").newline();
        if (!document.subtitle().isEmpty() || !document.sheetId().isEmpty()) {
            markup.open("p", "class", "running");
            markup.open("span", "class", "reader")
                    .line(document.subtitle())
                    .close("span")
                    .text(" ");
            sheetId(document, markup);
            markup.close("p").newline();
        }
        markup.close("header").newline();
    }

    private static void foot(Document document, Markup markup) {
        markup.open("footer").newline();
        markup.open("p", "class", "running");
        markup.open("span");
        Slots.write(
                document.language().say("print.end", "title", Slots.mark(0)),
                markup::text,
                () -> markup.open("cite").line(document.title()).close("cite"));
        markup.close("span").text(" ");
        if (document.kind() == Document.Kind.KEY) {
            markup.element("strong", document.language().say("print.key-notice"))
                    .text(" ");
        }
        sheetId(document, markup);
        markup.close("p").newline().close("footer").newline();
    }

    /** Nothing on a page without one. */
    static void sheetId(Document document, Markup markup) {
        if (!document.sheetId().isEmpty()) {
            markup.open("span", "class", "sheet-id");
            Slots.write(
                    document.language().say("print.sheet", "sheet", Slots.mark(0)),
                    markup::text,
                    () -> markup.open("b").line(document.sheetId()).close("b"));
            markup.close("span");
        }
    }
}
