package ampersheet.page;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.quantity.Dimension;
import ampersheet.render.Markup;
import ampersheet.render.html.Fragment;
import ampersheet.sheet.Composer;
import ampersheet.sheet.Document;
import ampersheet.sheet.Sheet;

/**
 * A learner's sheet to answer in: it reads answers back, keeps drafts in the browser and saves a file for marking. Of
 * what is expected it knows only the unit of each question, to read 4.7 K as a temperature or as thousands; it cannot
 * judge.
 */
public final class HomeworkPage {
    private HomeworkPage() {}

    /** @param learner printed in the heading; may be empty */
    public static String render(Sheet sheet, String learner) {
        Document document = Composer.sheet(sheet, learner);
        return PageFrame.render(
                document.language(),
                document.title() + " · " + document.sheetId(),
                "sheet homework",
                body(document),
                data(sheet),
                "homework.js");
    }

    private static String body(Document document) {
        Markup page = new Markup();
        page.open("header", "class", "masthead").newline();
        page.open("h1").line(document.title()).close("h1").newline();
        page.open("p", "class", "running")
                .open("span", "class", "reader")
                .line(document.subtitle())
                .close("span")
                .text(" ");
        page.open("span", "class", "sheet-id")
                .text("Sheet ")
                .open("b")
                .line(document.sheetId())
                .close("b")
                .close("span");
        page.close("p").close("header").newline();
        page.element(
                        "p",
                        "Type your answers here. The page reads each one back, so that you see how it is "
                                + "understood; it holds no "
                                + "key and cannot say what is right. Nothing is sent: when you are done, save the "
                                + "answer file at the end and hand it in.",
                        "class",
                        "notice")
                .newline();
        page.open("noscript")
                .element(
                        "p",
                        "Scripts are switched off here: this page can neither read answers back nor save them. "
                                + "Answer on paper, or switch them on.")
                .close("noscript")
                .newline();
        page.open("main").newline();
        page.open("form", "id", "answers", "novalidate", "").newline();
        page.trusted(Fragment.of(document, "", 1)).close("form").newline();
        handingIn(page);
        page.close("main").newline();
        page.open("footer").open("p", "class", "running").open("span").text("End of ");
        page.open("cite").line(document.title()).close("cite").close("span").text(" ");
        page.open("span", "class", "sheet-id")
                .text("Sheet ")
                .open("b")
                .line(document.sheetId())
                .close("b")
                .close("span");
        return page.close("p").close("footer").newline().toString();
    }

    private static void handingIn(Markup page) {
        page.open("section", "class", "keeping", "aria-labelledby", "keeping-title", "hidden", "", "id", "keeping")
                .newline();
        page.element("h2", "Handing in", "id", "keeping-title").newline();
        page.open("p")
                .element("strong", "", "id", "tally")
                .text(" ")
                .element("span", "", "id", "kept")
                .close("p")
                .newline();
        page.open("div", "class", "buttons").newline();
        page.element("button", "Save the answer file", "type", "button", "class", "main", "id", "save")
                .newline();
        page.element("button", "Clear my answers", "type", "button", "id", "clear")
                .newline();
        page.close("div").newline();
        page.open("p", "id", "kept-said", "role", "status").close("p").newline();
        page.open("details")
                .element("summary", "The answer file as text, to copy")
                .newline();
        page.element("label", "Answer file", "for", "file-text").newline();
        page.open("textarea", "id", "file-text", "readonly", "", "rows", "8", "spellcheck", "false")
                .close("textarea");
        page.close("details").close("section").newline();
        page.open("p", "class", "unseen", "id", "read-back", "role", "status")
                .close("p")
                .newline();
    }

    private static String data(Sheet sheet) {
        return Json.write(json -> {
            json.writeStartObject();
            json.writeStringField("sheet", sheet.id().toString());
            json.writeObjectFieldStart("units");
            for (AnswerKey place : sheet.places()) {
                if (!(place.acceptance() instanceof Acceptance.Choice)) {
                    json.writeStringField(
                            place.question(),
                            place.unit().symbol().isEmpty() ? "1" : place.unit().symbol());
                }
            }
            json.writeEndObject();
            json.writeArrayFieldStart("bare");
            for (AnswerKey place : sheet.places()) {
                boolean choice = place.acceptance() instanceof Acceptance.Choice;
                if (!choice && (place.unitPrinted() || place.unit().dimension().equals(Dimension.ONE))) {
                    json.writeString(place.question());
                }
            }
            json.writeEndArray();
            json.writeEndObject();
        });
    }
}
