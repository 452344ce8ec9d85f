package ampersheet.page;

import ampersheet.language.Language;
import ampersheet.render.Markup;

/** A sentence with one slot that holds an element: what stands before it and behind it. */
record Around(String before, String after) {
    private static final char PLACE = '\uFFFC';

    static Around of(Language language, String key, String slot) {
        String sentence = language.say(key, slot, String.valueOf(PLACE));
        int at = sentence.indexOf(PLACE);
        return new Around(sentence.substring(0, at), sentence.substring(at + 1));
    }

    /** @param element writes what stands in the slot */
    void write(Markup page, Runnable element) {
        page.text(before);
        element.run();
        page.text(after);
    }
}
