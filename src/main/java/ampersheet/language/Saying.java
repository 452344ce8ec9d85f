package ampersheet.language;

import java.util.ArrayList;
import java.util.List;

/**
 * A sentence that is not said yet: its key and what fills it. For what is found where no language is known, such as a
 * typed number that cannot be read, and for what is said in more than one language: of a file that came in, the report
 * tells in the language of the sheets, and a command as it tells everything.
 *
 * @param filled name and text by turns
 * @param within what fills further slots and is said in the same language
 */
public record Saying(String key, List<String> filled, List<Within> within) {
    /** A sentence, or a part of one, in a slot of another. */
    public record Within(String slot, Saying said) {}

    public Saying {
        filled = List.copyOf(filled);
        within = List.copyOf(within);
    }

    public static Saying of(String key, String... filled) {
        return new Saying(key, List.of(filled), List.of());
    }

    /** As {@link Language#count} says it, without the number in words. */
    public static Saying count(String key, int count, String... filled) {
        List<String> all = new ArrayList<>(List.of(filled));
        all.add("count");
        all.add(Integer.toString(count));
        return new Saying(key + (count == 1 ? ".one" : ".other"), all, List.of());
    }

    public Saying with(String slot, Saying said) {
        List<Within> all = new ArrayList<>(within);
        all.add(new Within(slot, said));
        return new Saying(key, filled, all);
    }
}
