package ampersheet.source;

import ampersheet.language.Language;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.BinaryOperator;
import java.util.stream.Stream;

/** A language that is nobody's: the English sentences, some of them changed. */
public final class OtherLanguage {
    private OtherLanguage() {}

    /** @param changed from a key and its sentence, with the slots in it, to the sentence instead */
    public static Language of(BinaryOperator<String> changed) {
        Language english = Languages.ENGLISH;
        Map<String, String> sentences = new TreeMap<>();
        for (String key : english.keys()) {
            String[] slots = english.slots(key).stream()
                    .flatMap(slot -> Stream.of(slot, "{" + slot + "}"))
                    .toArray(String[]::new);
            sentences.put(key, changed.apply(key, english.say(key, slots)));
        }
        return new Language("x-other", sentences);
    }
}
