package ampersheet.language;

import java.util.List;

/**
 * A sentence that is not said yet: its key and what fills it. For what is found where no language is known, such as a
 * typed number that cannot be read.
 *
 * @param filled name and text by turns
 */
public record Saying(String key, List<String> filled) {
    public Saying {
        filled = List.copyOf(filled);
    }

    public static Saying of(String key, String... filled) {
        return new Saying(key, List.of(filled));
    }
}
