package ampersheet.sheet;

import ampersheet.language.Language;
import java.util.List;

/** Things between each of which stands the same word: "K or T or X". */
final class OneOrOther {
    private OneOrOther() {}

    static String or(List<String> things, Language language) {
        String all = things.isEmpty() ? "" : things.get(0);
        for (int i = 1; i < things.size(); i++) {
            all = language.say("sheet.one-or-other", "one", all, "other", things.get(i));
        }
        return all;
    }

    static String and(List<String> things, Language language) {
        String all = things.isEmpty() ? "" : things.get(0);
        for (int i = 1; i < things.size(); i++) {
            all = language.say("sheet.one-and-other", "one", all, "other", things.get(i));
        }
        return all;
    }
}
