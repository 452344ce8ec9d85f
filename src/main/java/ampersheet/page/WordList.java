package ampersheet.page;

import ampersheet.language.Language;
import ampersheet.source.Remembered;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.function.Predicate;
import java.util.regex.Pattern;

/**
 * What names mean, in lines of {@code name: meaning}: words of the trade, or rules. Of these, a page shows what occurs
 * in it.
 *
 * @param endings which a word may have where it is not alone, as a regular expression
 */
record WordList(Map<String, String> meanings, String endings) {
    private static final Remembered<String, WordList> READ = new Remembered<>(20);

    /** Rules of the trade in general form. */
    static WordList rules(Language language) {
        return of("rules.txt", language);
    }

    static WordList words(Language language) {
        return of("words.txt", language);
    }

    private static WordList of(String file, Language language) {
        String path = "/ampersheet/language/" + language.code() + "/" + file;
        return READ.of(path, name -> read(name, language.say("page.look-up.endings")));
    }

    private static WordList read(String name, String endings) {
        try (InputStream in = WordList.class.getResourceAsStream(name)) {
            Map<String, String> meanings = new LinkedHashMap<>();
            new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.startsWith("#"))
                    .forEach(line -> {
                        int colon = line.indexOf(": ");
                        meanings.put(line.substring(0, colon), line.substring(colon + 2));
                    });
            return new WordList(meanings, endings);
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read " + name, e);
        }
    }

    WordList among(Collection<String> names) {
        return only(names::contains);
    }

    /**
     * Those that stand in the text as a word of its own, in the singular or plural; in capitals or not, unless they are
     * an abbreviation.
     */
    WordList in(String text) {
        return only(name -> Pattern.compile(
                        "(?<![\\p{L}-])" + Pattern.quote(name) + endings + "(?![\\p{L}-])",
                        name.equals(name.toUpperCase(Locale.ROOT))
                                ? 0
                                : Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE)
                .matcher(text)
                .find());
    }

    private WordList only(Predicate<String> which) {
        Map<String, String> some = new LinkedHashMap<>();
        meanings.forEach((name, meaning) -> {
            if (which.test(name)) {
                some.put(name, meaning);
            }
        });
        return new WordList(some, endings);
    }
}
