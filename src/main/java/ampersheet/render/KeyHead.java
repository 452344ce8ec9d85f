package ampersheet.render;

import ampersheet.language.Language;
import java.util.List;

/** The head of the table of a key. */
public final class KeyHead {
    private KeyHead() {}

    /** Names of its columns, from the question to the second route. */
    public static List<String> in(Language language) {
        return List.of(
                language.say("print.answers.question"),
                language.say("print.answers.answer"),
                language.say("print.answers.accepted"),
                language.say("print.answers.second-route"));
    }
}
