package ampersheet.source;

import ampersheet.language.Language;
import java.util.List;

/**
 * What is told to whoever runs the program: by its commands, by the desk, and about her plan, lists and folders. It is
 * said in one language, whatever language her sheets are in; authors of templates are told by the reader at hand.
 */
public final class Told {
    /** Lists and numbers; of the desk, of the commands, about a plan or course, about files that come in or go out. */
    private static final List<String> FACES = List.of("common", "desk", "command", "plan", "folder");

    private static final Language LANGUAGE = Languages.read("en", FACES);

    private Told() {}

    /** @see Language#say(String, String...) */
    public static String say(String key, String... filled) {
        return LANGUAGE.say(key, filled);
    }

    /** @see Language#count(String, int, String...) */
    public static String count(String key, int count, String... filled) {
        return LANGUAGE.count(key, count, filled);
    }

    /** @see Language#all(List) */
    public static String all(List<String> items) {
        return LANGUAGE.all(items);
    }

    /** @see Language#either(List) */
    public static String either(List<String> items) {
        return LANGUAGE.either(items);
    }

    static Language language() {
        return LANGUAGE;
    }
}
