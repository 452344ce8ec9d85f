package ampersheet.marking;

import ampersheet.language.Language;
import ampersheet.language.Saying;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A sentence that is said more than once, and not always in one language: of a file that came in, the report tells in
 * the language of the sheets, and the command as it tells everything.
 */
@FunctionalInterface
interface Sentence {
    Sentence NOTHING = language -> "";

    String in(Language language);

    /** @param filled name and text by turns, as {@link Language#say} takes them */
    static Sentence of(String key, String... filled) {
        return language -> language.say(key, filled);
    }

    static Sentence of(Saying saying) {
        return language -> language.say(saying);
    }

    /** One after another; what is empty is not said. */
    static String joined(String... sentences) {
        return Stream.of(sentences).filter(one -> !one.isEmpty()).collect(Collectors.joining(" "));
    }

    /** What other rooms tell in one language only. */
    static Sentence asItIs(String text) {
        return language -> text;
    }
}
