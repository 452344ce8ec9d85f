package ampersheet.language;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The sentences of the program in one language, by key, such as {@code verdict.right}. What stands before the first
 * point of a key is the face that says it.
 *
 * <p>A sentence has slots in braces, {@code {question}}; what fills them comes by name, so that another language may
 * have them in another order. What depends on a number has two forms, {@code key.one} and {@code key.other}.
 */
public final class Language {
    private static final int NUMBERS_IN_WORDS = 12;
    private static final char BETWEEN = '\t';
    /** Unicode's line separator stands for a line feed where a sentence is a line. */
    private static final char LINE = '\u2028';

    private final String code;
    private final Map<String, String> sentences;

    /**
     * @param code tag of the language as pages tell it, such as {@code en}
     * @param sentences by key, in the order in which they are to travel
     */
    public Language(String code, Map<String, String> sentences) {
        this.code = code;
        this.sentences = new LinkedHashMap<>(sentences);
    }

    public String code() {
        return code;
    }

    /** Whether there is such a sentence. */
    public boolean has(String key) {
        return sentences.containsKey(key);
    }

    /**
     * The sentence, filled.
     *
     * @param filled name and text by turns, for each slot of the sentence; more is no fault, since another language may
     *     need it
     * @throws IllegalStateException if there is no such sentence, or a slot has no text
     */
    public String say(String key, String... filled) {
        String sentence = sentences.get(key);
        if (sentence == null) {
            throw new IllegalStateException("the language " + code + " has no sentence " + key);
        }
        return filled(key, sentence, filled);
    }

    public String say(Saying saying) {
        List<String> filled = new ArrayList<>(saying.filled());
        for (Saying.Within within : saying.within()) {
            filled.add(within.slot());
            filled.add(say(within.said()));
        }
        return say(saying.key(), filled.toArray(new String[0]));
    }

    /** One after another. */
    public String say(List<Saying> sayings) {
        StringBuilder out = new StringBuilder();
        for (Saying saying : sayings) {
            out.append(out.length() == 0 ? "" : " ").append(say(saying));
        }
        return out.toString();
    }

    /** Sentences one after another; what is empty is not said. */
    public static String joined(String... said) {
        StringBuilder out = new StringBuilder();
        for (String one : said) {
            out.append(out.length() == 0 || one.isEmpty() ? "" : " ").append(one);
        }
        return out.toString();
    }

    /**
     * The form of a sentence for a number: {@code key.one} or {@code key.other}. Besides the slots of {@link #say} it
     * may have {@code {count}}, the number in digits, and {@code {number}}, the same as {@link #number} writes it.
     */
    public String count(String key, int count, String... filled) {
        String[] all = new String[filled.length + 4];
        System.arraycopy(filled, 0, all, 0, filled.length);
        all[filled.length] = "count";
        all[filled.length + 1] = Integer.toString(count);
        all[filled.length + 2] = "number";
        all[filled.length + 3] = number(count);
        return say(key + (count == 1 ? ".one" : ".other"), all);
    }

    /** Up to twelve in words. */
    public String number(int number) {
        return number >= 0 && number <= NUMBERS_IN_WORDS ? say("number." + number) : Integer.toString(number);
    }

    /**
     * What the language calls a skill, a rule or a topic of the trade that templates name in English; the English where
     * it has no name of its own.
     */
    public String name(String english) {
        String key = "name." + keyOf(english);
        return has(key) ? say(key) : english;
    }

    /** What a mistake of templates is called, by its id; empty where the language has no name of its own for it. */
    public String mistake(String id) {
        String key = "name.mistake." + id;
        return has(key) ? say(key) : "";
    }

    /** What a rule of the trade does, as in "adds up the currents at a node"; empty where nothing is told of it. */
    public String does(String rule) {
        String key = "rule." + keyOf(rule);
        return has(key) ? say(key) : "";
    }

    /** A name as a part of a key: its letters and digits in small letters, joined by hyphens. */
    public static String keyOf(String name) {
        StringBuilder key = new StringBuilder();
        for (int i = 0; i < name.length(); i++) {
            char c = name.charAt(i) >= 'A' && name.charAt(i) <= 'Z'
                    ? (char) (name.charAt(i) + 'a' - 'A')
                    : name.charAt(i);
            if (c >= 'a' && c <= 'z' || c >= '0' && c <= '9') {
                key.append(c);
            } else if (c == ' ' || c == '-') {
                key.append('-');
            }
        }
        return key.toString();
    }

    /** {@code a}, {@code a and b}, {@code a, b and c}; nothing for none. */
    public String all(List<String> items) {
        return joined(items, say("list.and"));
    }

    /** {@code a}, {@code a or b}, {@code a, b or c}; nothing for none. */
    public String either(List<String> items) {
        return joined(items, say("list.or"));
    }

    private String joined(List<String> items, String last) {
        String comma = say("list.comma");
        StringBuilder out = new StringBuilder();
        for (int i = 0; i < items.size(); i++) {
            out.append(i == 0 ? "" : i == items.size() - 1 ? last : comma).append(items.get(i));
        }
        return out.toString();
    }

    private String filled(String key, String sentence, String[] filled) {
        int open = sentence.indexOf('{');
        if (open < 0) {
            return sentence;
        }
        StringBuilder out = new StringBuilder();
        int at = 0;
        while (open >= 0) {
            int close = sentence.indexOf('}', open);
            if (close < 0) {
                throw new IllegalStateException("a brace is not closed in " + key + " of the language " + code);
            }
            out.append(sentence.substring(at, open)).append(slot(key, sentence.substring(open + 1, close), filled));
            at = close + 1;
            open = sentence.indexOf('{', at);
        }
        return out.append(sentence.substring(at)).toString();
    }

    private String slot(String key, String name, String[] filled) {
        for (int i = 0; i + 1 < filled.length; i += 2) {
            if (filled[i].equals(name)) {
                return filled[i + 1];
            }
        }
        throw new IllegalStateException("nothing is given for {" + name + "} in " + key + " of the language " + code);
    }

    /** The names of the slots of a sentence, in its order, each as often as it stands there. */
    public List<String> slots(String key) {
        List<String> names = new ArrayList<>();
        String sentence = sentences.get(key);
        for (int open = sentence.indexOf('{'); open >= 0; open = sentence.indexOf('{', open + 1)) {
            names.add(sentence.substring(open + 1, sentence.indexOf('}', open)));
        }
        return List.copyOf(names);
    }

    /** All keys, in order. */
    public List<String> keys() {
        return List.copyOf(sentences.keySet());
    }

    /**
     * Some of the sentences as one text, for {@link #read}: a line for each, its key and a tab before it.
     *
     * @param beginnings of their keys: a face, or more; an empty one is the beginning of all
     */
    public String written(List<String> beginnings) {
        StringBuilder out = new StringBuilder();
        for (Map.Entry<String, String> one : sentences.entrySet()) {
            String key = one.getKey();
            if (beginsWithOneOf(key, beginnings)) {
                out.append(key)
                        .append(BETWEEN)
                        .append(one.getValue().replace('\n', LINE))
                        .append('\n');
            }
        }
        return out.toString();
    }

    private static boolean beginsWithOneOf(String key, List<String> beginnings) {
        for (String beginning : beginnings) {
            if (beginning.isEmpty() || key.equals(beginning) || key.startsWith(beginning + ".")) {
                return true;
            }
        }
        return false;
    }

    /** Reads what {@link #written} wrote. */
    public static Language read(String code, String written) {
        Map<String, String> sentences = new LinkedHashMap<>();
        int at = 0;
        while (at < written.length()) {
            int end = written.indexOf('\n', at);
            int tab = written.indexOf(BETWEEN, at);
            if (end < 0 || tab < 0 || tab > end) {
                throw new IllegalArgumentException("a line of sentences has no key, or no end");
            }
            sentences.put(
                    written.substring(at, tab), written.substring(tab + 1, end).replace(LINE, '\n'));
            at = end + 1;
        }
        return new Language(code, sentences);
    }

    @Override
    public String toString() {
        return code;
    }
}
