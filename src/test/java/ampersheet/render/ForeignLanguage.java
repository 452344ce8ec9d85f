package ampersheet.render;

import ampersheet.language.Language;
import ampersheet.sheet.Document;
import ampersheet.source.Languages;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A language in which every word that the program says is unlike English, and what is left of English in a page. */
public final class ForeignLanguage {
    private static final Pattern SLOT_OR_LETTER = Pattern.compile("\\{[^}]*}|[A-Za-z]");
    private static final Pattern WORD = Pattern.compile("[A-Za-z]{2,}");
    /**
     * What a renderer does not say itself: styles, what is in a drawing, whose own tag (the group) stays, and formulas
     * as they are spoken.
     */
    private static final Pattern UNREAD =
            Pattern.compile("(?s)<style>.*?</style>|(<svg [^>]*>).*?(?=</svg>)|<math [^>]*>|<abbr [^>]*>");

    /** Nor that. */
    private static final Set<String> OF_FORMULAS = Set.of("above");

    private static final Pattern TAG = Pattern.compile("<[^>]*>");
    private static final Pattern READ_ALOUD = Pattern.compile(" (?:aria-label|alt|data-label|title)=\"([^\"]*)\"");

    private ForeignLanguage() {}

    public static Language made() {
        Map<String, String> sentences = new LinkedHashMap<>();
        List<String> faces = Languages.ENGLISH.keys().stream()
                .map(key -> key.substring(0, key.indexOf('.')))
                .distinct()
                .toList();
        for (String line : Languages.ENGLISH.written(faces).split("\n")) {
            String sentence = line.substring(line.indexOf('\t') + 1);
            sentences.put(
                    line.substring(0, line.indexOf('\t')),
                    SLOT_OR_LETTER
                            .matcher(sentence)
                            .replaceAll(found -> found.group().startsWith("{")
                                    ? Matcher.quoteReplacement(found.group())
                                    : "\u0436"));
        }
        return new Language("xx", sentences);
    }

    /** The same document in it. */
    public static Document of(Document document) {
        return new Document(
                document.kind(),
                made(),
                document.title(),
                document.subtitle(),
                document.sheetId(),
                document.paper(),
                document.blocks());
    }

    /** Words of what was made of the document that are none of its own. */
    public static Set<String> english(Document document, String made) {
        Set<String> own = words(document.toString());
        String markup = UNREAD.matcher(made).replaceAll("$1 ");
        StringBuilder read =
                new StringBuilder(TAG.matcher(markup).replaceAll(" ").replaceAll("&[a-z]+;", " "));
        Matcher spoken = READ_ALOUD.matcher(markup);
        while (spoken.find()) {
            read.append(' ').append(spoken.group(1));
        }
        Set<String> left = words(read.toString());
        left.removeAll(own);
        left.removeAll(OF_FORMULAS);
        return left;
    }

    private static Set<String> words(String text) {
        Set<String> words = new TreeSet<>();
        Matcher word = WORD.matcher(text);
        while (word.find()) {
            words.add(word.group().toLowerCase(Locale.ROOT));
        }
        return words;
    }
}
