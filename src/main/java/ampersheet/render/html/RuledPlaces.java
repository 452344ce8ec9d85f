package ampersheet.render.html;

import ampersheet.language.Language;
import ampersheet.render.Markup;
import ampersheet.render.ProseMarkup;
import ampersheet.sheet.Document.Question;

/** Ruled lines, high enough to write on, and boxes to tick. */
record RuledPlaces(Markup markup, Language language) implements Places {
    @Override
    public void place(String id, String label, String symbol, String meaning, String hint) {
        markup.open("p", "class", "place").open("b").line(label).close("b").text(" ");
        markup.trusted(symbol);
        markup.element("span", "", "class", "blank", "role", "img", "aria-label", name(label, meaning, hint));
        if (!hint.isEmpty()) {
            markup.text(" ").open("span", "class", "hint").line(hint).close("span");
        }
        markup.close("p").newline();
    }

    private String name(String question, String meaning, String hint) {
        if (meaning.isEmpty()) {
            return hint.isEmpty()
                    ? language.say("print.place", "question", question)
                    : language.say("print.place.hint", "question", question, "hint", hint);
        }
        return hint.isEmpty()
                ? language.say("print.place.meaning", "question", question, "meaning", meaning)
                : language.say("print.place.meaning-and-hint", "question", question, "meaning", meaning, "hint", hint);
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
        markup.element("p", language.say("print.tick-one"), "class", "hint")
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
