package ampersheet.render.html;

import ampersheet.language.Language;
import ampersheet.render.Markup;
import ampersheet.render.ProseMarkup;
import ampersheet.sheet.Document.Question;

/**
 * Fields to type in and options to choose, each with a line below for what is said of the answer. The page's script
 * finds a place by {@code data-question}, the name that stands before it.
 */
record TypedPlaces(Markup markup, Language language) implements Places {
    @Override
    public void place(String id, String label, String symbol, String meaning, String hint) {
        markup.open("div", "class", "place typed", "data-question", label).newline();
        markup.open("label", "for", id)
                .open("span", "class", "label")
                .line(shown(label))
                .close("span");
        if (!meaning.isEmpty()) {
            markup.open("span", "class", "unseen")
                    .text(": ")
                    .line(meaning)
                    .text(", ")
                    .close("span");
        }
        markup.text(" ").trusted(symbol).close("label");
        markup.single(
                "input",
                "id",
                id,
                "type",
                "text",
                "autocomplete",
                "off",
                "autocapitalize",
                "off",
                "autocorrect",
                "off",
                "spellcheck",
                "false",
                "aria-describedby",
                id + "-said");
        if (!hint.isEmpty()) {
            markup.text(" ").open("span", "class", "hint").line(hint).close("span");
        }
        said(id);
    }

    /** On a page to practise with, a place in the working is named "step 2": so the checker knows it. */
    private String shown(String label) {
        return label.startsWith("step ")
                ? language.say("practice.place.step", "step", label.substring("step ".length()))
                : label;
    }

    @Override
    public void options(Question question, String id) {
        markup.open(
                        "fieldset",
                        "class",
                        "choice typed",
                        "data-question",
                        question.id(),
                        "aria-describedby",
                        id + "-said")
                .newline();
        markup.open("legend", "class", "prompt")
                .open("b", "class", "label")
                .line(question.id())
                .close("b")
                .text(" ");
        ProseMarkup.writeLine(question.prompt(), markup);
        markup.close("legend").newline();
        for (String option : question.options()) {
            markup.open("label")
                    .single("input", "type", "radio", "name", id, "value", option)
                    .text(" ");
            markup.open("span").line(option).close("span").close("label").newline();
        }
        markup.open("p", "class", "said", "id", id + "-said")
                .close("p")
                .close("fieldset")
                .newline();
    }

    private void said(String id) {
        markup.open("p", "class", "said", "id", id + "-said")
                .close("p")
                .close("div")
                .newline();
    }
}
