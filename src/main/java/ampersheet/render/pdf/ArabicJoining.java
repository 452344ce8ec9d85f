package ampersheet.render.pdf;

import java.text.Normalizer;
import java.util.Map;
import java.util.TreeMap;

/**
 * Joins the letters of Arabic, Persian and their kin: each is replaced by the character for its form at that place.
 * Rules R2 to R7 and the ligatures of lam with alef: The Unicode Standard, section 9.2. Which forms a letter has is
 * read off the names and decompositions of the presentation forms, so that it holds for every letter that has them.
 */
final class ArabicJoining {
    private static final char LAM = '\u0644';
    private static final char NON_JOINER = '\u200C';
    private static final char JOINER = '\u200D';
    private static final char TATWEEL = '\u0640';

    /** A letter's forms, 0 where it has none. */
    private record Forms(char isolated, char last, char first, char middle) {
        static final Forms NONE = new Forms('\0', '\0', '\0', '\0');

        boolean joinsBefore() {
            return last != 0;
        }

        boolean joinsAfter() {
            return first != 0;
        }

        Forms with(String form, char c) {
            return switch (form) {
                case "ISOLATED" -> isolated == 0 ? new Forms(c, last, first, middle) : this;
                case "FINAL" -> last == 0 ? new Forms(isolated, c, first, middle) : this;
                case "INITIAL" -> first == 0 ? new Forms(isolated, last, c, middle) : this;
                case "MEDIAL" -> middle == 0 ? new Forms(isolated, last, first, c) : this;
                default -> this;
            };
        }
    }

    private static final Map<String, Forms> FORMS = forms();

    private ArabicJoining() {}

    private static Map<String, Forms> forms() {
        Map<String, Forms> forms = new TreeMap<>();
        read(forms, 0xFE70, 0xFEFC); // first, for it holds the usual forms of the letters that are in both blocks
        read(forms, 0xFB50, 0xFBFF);
        return forms;
    }

    private static void read(Map<String, Forms> forms, int from, int to) {
        for (int c = from; c <= to; c++) {
            String name = Character.getName(c);
            String letters = Normalizer.normalize(Character.toString(c), Normalizer.Form.NFKC);
            boolean ligature = letters.length() == 2 && letters.charAt(0) == LAM;
            if (name != null && name.endsWith(" FORM") && (letters.length() == 1 || ligature)) {
                String[] words = name.split(" ");
                char form = (char) c;
                forms.merge(
                        letters,
                        Forms.NONE.with(words[words.length - 2], form),
                        (before, unused) -> before.with(words[words.length - 2], form));
            }
        }
    }

    private static Forms of(char letter) {
        return FORMS.getOrDefault(String.valueOf(letter), Forms.NONE);
    }

    /** @return the text in its order of writing, letters joined; what has no form stays as it is */
    static String join(String text) {
        StringBuilder joined = new StringBuilder(text.length());
        boolean before = false;
        for (int i = 0; i < text.length(); i++) {
            char letter = text.charAt(i);
            if (isMark(letter)) {
                joined.append(letter);
                continue;
            }
            int end = i + 1;
            Forms forms = of(letter);
            Forms ligature =
                    end < text.length() ? FORMS.getOrDefault(text.substring(i, end + 1), Forms.NONE) : Forms.NONE;
            if (letter == LAM && ligature != Forms.NONE) {
                forms = ligature;
                end++;
            }
            boolean after = forms.joinsAfter() && joinsBackwards(text, end);
            char form = form(forms, before && forms.joinsBefore(), after);
            joined.append(form == 0 ? text.substring(i, end) : String.valueOf(form));
            before = forms.joinsAfter() || letter == TATWEEL || letter == JOINER;
            i = end - 1;
        }
        return joined.toString();
    }

    private static char form(Forms forms, boolean before, boolean after) {
        if (before) {
            return after ? forms.middle() : forms.last();
        }
        return after ? forms.first() : forms.isolated();
    }

    /** Whether the next letter holds hands with the one before it; vowel signs stand over letters and part none. */
    private static boolean joinsBackwards(String text, int from) {
        int next = from;
        while (next < text.length() && isMark(text.charAt(next))) {
            next++;
        }
        return next < text.length()
                && (of(text.charAt(next)).joinsBefore() || text.charAt(next) == TATWEEL || text.charAt(next) == JOINER);
    }

    private static boolean isMark(char c) {
        return Character.getType(c) == Character.NON_SPACING_MARK
                || Character.getType(c) == Character.FORMAT && c != NON_JOINER && c != JOINER;
    }

    /** @return the letters that were joined, as they are written */
    static String part(String text) {
        StringBuilder parted = new StringBuilder(text.length());
        text.chars()
                .forEach(c -> parted.append(
                        c >= 0xFB50 && c <= 0xFEFC
                                ? Normalizer.normalize(Character.toString(c), Normalizer.Form.NFKC)
                                : Character.toString(c)));
        return parted.toString();
    }

    /** Whether a letter would have to be joined and has no forms to do it with. */
    static boolean isWithoutForms(int c) {
        return Character.UnicodeScript.of(c) == Character.UnicodeScript.ARABIC
                && Character.isLetter(c)
                && (c < 0xFB50 || c > 0xFEFC)
                && (c > 0xFFFF || of((char) c) == Forms.NONE)
                && c != 0x0621
                && c != TATWEEL;
    }
}
