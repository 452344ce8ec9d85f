package ampersheet.marking;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;

/**
 * Finds names in what people typed, however they are spelled: in any case, with or without accents or with the letters
 * written for them, in any order, in one word or hyphenated, letter by letter, or as initials. Rather a word too many
 * is taken for a name than one too few.
 */
final class NameSpellings {
    /** Shorter ones are part of too many words that are none. */
    private static final int SHORTEST_WITHIN = 4;
    /** What may stand between letters that belong together. */
    private static final String JOINTS = " .-'’‐‑\u00A0\u202F";
    /** Letters that are no other letter with a mark on it, and what is typed for them. */
    private static final String[][] LETTERS = {
        {"ł", "l"},
        {"ø", "o"},
        {"đ", "d"},
        {"ð", "d"},
        {"þ", "th"},
        {"æ", "ae"},
        {"œ", "oe"},
        {"ħ", "h"},
        {"ŧ", "t"},
        {"ı", "i"},
    };

    private static final String[][] WRITTEN_OUT = {{"ä", "ae"}, {"ö", "oe"}, {"ü", "ue"}, {"å", "aa"}, {"ø", "oe"}};

    private final Set<String> words = new TreeSet<>();
    private final Set<Integer> lengthsWithin = new TreeSet<>();
    private final Set<String> initials = new TreeSet<>();

    /** Letters that stand together. */
    private record Word(String letters, boolean capitals, boolean joined) {
        boolean isOneLetter() {
            return letters.codePointCount(0, letters.length()) == 1;
        }
    }

    NameSpellings(List<String> names) {
        names.forEach(name -> {
            add(words(plain(name)));
            add(words(writtenOut(name)));
        });
        words.forEach(word -> {
            if (word.length() >= SHORTEST_WITHIN) {
                lengthsWithin.add(word.length());
            }
        });
    }

    private void add(List<Word> name) {
        StringBuilder firsts = new StringBuilder();
        String before = "";
        for (Word word : name) {
            if (!word.isOneLetter()) {
                words.add(word.letters());
            }
            if (!before.isEmpty()) {
                words.add(before + word.letters());
            }
            before = word.letters();
            firsts.appendCodePoint(word.letters().codePointAt(0));
        }
        if (name.size() > 1) {
            initials.add(sorted(firsts.toString()));
        }
    }

    /** @param said what may stand there whoever is in the class, such as the unit that was read */
    boolean in(String text, String said) {
        Set<String> allowed = new TreeSet<>();
        words(plain(said)).forEach(word -> allowed.add(word.letters()));
        return in(words(plain(text)), allowed) || in(words(writtenOut(text)), allowed);
    }

    private boolean in(List<Word> typed, Set<String> allowed) {
        StringBuilder together = new StringBuilder();
        StringBuilder spelled = new StringBuilder();
        for (Word word : typed) {
            if (!word.joined() || !word.isOneLetter()) {
                spelled.setLength(0);
            }
            if (word.isOneLetter()) {
                spelled.append(word.letters());
            }
            if (allowed.contains(word.letters())) {
                together.setLength(0);
                continue;
            }
            String letters = word.isOneLetter() ? spelled.toString() : word.letters();
            boolean initial = word.capitals() && letters.length() > 1 && initials.contains(sorted(letters));
            if (initial || words.contains(letters)) {
                return true;
            }
            together.append(word.letters());
        }
        return within(together.toString());
    }

    private boolean within(String letters) {
        for (int length : lengthsWithin) {
            for (int from = 0; from + length <= letters.length(); from++) {
                if (words.contains(letters.substring(from, from + length))) {
                    return true;
                }
            }
        }
        return false;
    }

    private static List<Word> words(String text) {
        List<Word> words = new ArrayList<>();
        int from = -1;
        boolean joined = false;
        for (int i = 0; i <= text.length(); i += i < text.length() ? Character.charCount(text.codePointAt(i)) : 1) {
            boolean letter = i < text.length() && Character.isLetter(text.codePointAt(i));
            if (letter && from < 0) {
                from = i;
            } else if (!letter && from >= 0) {
                String letters = text.substring(from, i);
                words.add(new Word(folded(letters), letters.codePoints().noneMatch(Character::isLowerCase), joined));
                from = -1;
                joined = true;
            }
            joined &= letter || i == text.length() || JOINTS.indexOf(text.charAt(i)) >= 0;
        }
        return words;
    }

    /** In small letters; a sharp s becomes two. */
    private static String folded(String letters) {
        // Letter by letter: where one becomes two, the whole text at once would take time with its square.
        StringBuilder folded = new StringBuilder();
        letters.codePoints()
                .forEach(c -> folded.append(
                        Character.toString(c).toUpperCase(Locale.ROOT).toLowerCase(Locale.ROOT)));
        String small = folded.toString();
        for (String[] letter : LETTERS) {
            small = small.replace(letter[0], letter[1]);
        }
        return small;
    }

    /** Without the marks on letters. */
    private static String plain(String text) {
        StringBuilder out = new StringBuilder();
        Normalizer.normalize(text, Normalizer.Form.NFKD).codePoints().forEach(c -> {
            int type = Character.getType(c);
            if (type != Character.NON_SPACING_MARK && type != Character.ENCLOSING_MARK && type != Character.FORMAT) {
                out.appendCodePoint(c);
            }
        });
        return out.toString();
    }

    private static String writtenOut(String text) {
        String out = Normalizer.normalize(text, Normalizer.Form.NFC);
        for (String[] letter : WRITTEN_OUT) {
            out = out.replace(letter[0], letter[1])
                    .replace(letter[0].toUpperCase(Locale.ROOT), letter[1].toUpperCase(Locale.ROOT));
        }
        return plain(out);
    }

    private static String sorted(String letters) {
        return letters.codePoints()
                .sorted()
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString();
    }
}
