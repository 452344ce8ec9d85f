package ampersheet.page;

import ampersheet.language.Language;
import ampersheet.quantity.DecimalMarker;
import ampersheet.render.Markup;
import ampersheet.render.html.Fragment;
import ampersheet.sheet.Document.Block;
import java.util.List;

/**
 * What a learner looks up while working: values, how to type, rules, words. It lies over the page when a button asks
 * for it and leaves the reader where she was; until then it takes no room.
 *
 * @param how to answer, as the sheet tells it; may be empty
 * @param tables to look values up in
 * @param rules in general form; none where a sheet shows no rules
 * @param words that occur on the page
 */
record LookUpDialog(
        List<Block> how, List<Block> tables, WordList rules, WordList words, Language language, DecimalMarker marker) {
    /** What a keyboard lacks, and what else is understood: what is typed, and what it is read as. */
    static final String[][] FORMS = {
        {"4.7 kohm", "4.7 kΩ"},
        {"4k7", "4.7 kΩ"},
        {"4.7k", "4.7 kΩ"},
        {"470 R", "470 Ω"},
        {"220 uF", "220 µF"},
        {"65 degC", "65 °C"},
        {"65 C", "65 °C"},
        {"2.5 mm2", "2.5 mm²"},
        {"4.7e3 ohm", "4.7×10³ Ω"},
        {"4.7*10^3 ohm", "4.7×10³ Ω"},
        {"1,5 V", "1.5 V"}
    };

    /** What is read of markup: neither its tags nor the letters of its drawings. */
    static String wordsOf(String markup) {
        return markup.replaceAll("(?s)<svg.*?</svg>|<[^>]*>", " ");
    }

    /** @param place tells its two buttons apart: an id is used once */
    static void button(Markup page, String place, Language language) {
        page.element(
                        "button",
                        language.say("page.look-up"),
                        "type",
                        "button",
                        "class",
                        "look-up-opens",
                        "id",
                        "look-up-" + place)
                .newline();
    }

    void write(Markup page) {
        page.open("dialog", "id", "look-up", "aria-labelledby", "look-up-title").newline();
        page.open("div", "class", "head");
        page.element("h2", language.say("page.look-up"), "id", "look-up-title");
        page.element("button", language.say("page.close"), "type", "button", "id", "look-up-close")
                .close("div")
                .newline();
        if (!how.isEmpty()) {
            page.element("h3", language.say("page.look-up.how-to-answer")).newline();
            page.trusted(Fragment.of(how, language, "how-", 3));
        }
        page.trusted(Fragment.of(tables, language, "table-", 2));
        page.open("div", "class", "on-screen").newline();
        page.element("h3", language.say("page.look-up.how-to-type")).newline();
        typing(page);
        list(page, language.say("page.look-up.rules"), rules);
        list(page, language.say("page.look-up.words"), words);
        page.close("div").close("dialog").newline();
    }

    private void typing(Markup page) {
        page.open("table", "class", "typing").newline();
        page.open("thead").open("tr");
        page.element("th", language.say("page.look-up.type"), "scope", "col").text(" ");
        page.element("th", language.say("page.look-up.read-as"), "scope", "col");
        page.close("tr").close("thead").newline().open("tbody").newline();
        for (String[] form : FORMS) {
            page.open("tr")
                    .element("td", marked(form[0]))
                    .text(" ")
                    .element("td", marked(form[1]))
                    .close("tr")
                    .newline();
        }
        page.close("tbody").close("table").newline();
        page.element("p", language.say("page.look-up.typing", "share", marked("0.44")))
                .newline();
    }

    private String marked(String text) {
        return marker == DecimalMarker.COMMA ? text.replace('.', ',') : text;
    }

    private static void list(Markup page, String title, WordList list) {
        if (list.meanings().isEmpty()) {
            return;
        }
        page.element("h3", title).newline().open("dl").newline();
        list.meanings()
                .forEach((name, meaning) ->
                        page.element("dt", name).element("dd", meaning).newline());
        page.close("dl").newline();
    }
}
