package ampersheet.render.html;

import ampersheet.render.Markup;
import ampersheet.render.ProseMarkup;
import ampersheet.render.Wording;
import ampersheet.sheet.Document.Question;

/** Ruled lines, high enough to write on, and boxes to tick. */
record RuledPlaces(Markup markup) implements Places {
    @Override
    public void place(String id, String label, String symbol, String meaning, String hint) {
        markup.open("p", "class", "place").open("b").line(label).close("b").text(" ");
        markup.trusted(symbol);
        StringBuilder name = new StringBuilder(Wording.PLACE_FOR).append(' ').append(label);
        if (!meaning.isEmpty()) {
            name.append(", ").append(meaning);
        }
        if (!hint.isEmpty()) {
            name.append(": ").append(hint);
        }
        markup.element("span", "", "class", "blank", "role", "img", "aria-label", name.toString());
        if (!hint.isEmpty()) {
            markup.text(" ").open("span", "class", "hint").line(hint).close("span");
        }
        markup.close("p").newline();
    }

    @Override
    public void options(Question question, String id) {
        markup.open("p", "class", "prompt")
                .open("b")
                .line(question.id())
                .close("b")
                .text(" ");
        ProseMarkup.writeLine(question.prompt(), markup);
        markup.close("p").newline();
        markup.element("p", Wording.TICK_ONE, "class", "hint")
                .newline()
                .open("ul", "class", "options", "role", "list")
                .newline();
        for (String option : question.options()) {
            markup.open("li")
                    .element("span", "", "class", "box", "aria-hidden", "true")
                    .text(" ")
                    .line(option)
                    .close("li")
                    .newline();
        }
        markup.close("ul").newline();
    }
}
