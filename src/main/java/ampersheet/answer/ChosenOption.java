package ampersheet.answer;

import ampersheet.quantity.Letters;
import java.util.List;
import java.util.Optional;

/** Finds the option a learner means: by its words, its letter, its number, or its first letter for yes and no. */
final class ChosenOption {
    /** Letters that stand for a word, as they are typed in English and in German. */
    private static final String[][] LETTERS = {{"y", "yes"}, {"n", "no"}, {"j", "ja"}, {"n", "nein"}};

    private ChosenOption() {}

    static Verdict judge(AnswerKey key, Acceptance.Choice choice, String typed, Sentences sentences) {
        List<Acceptance.Option> options = choice.options();
        int chosen = find(options, folded(typed));
        if (chosen < 0) {
            return Judge.told(key, typed, Rung.UNREADABLE, "", sentences.options(options));
        }
        Acceptance.Option option = options.get(chosen);
        if (chosen == key.rightOption()) {
            return Judge.told(key, typed, Rung.CORRECT, option.text(), sentences.right(false, false, false));
        }
        String explanation = option.explanation().isEmpty() ? sentences.wrongOption() : option.explanation();
        return new Verdict(
                key.question(), typed, Rung.KNOWN_MISTAKE, option.text(), explanation, Optional.of("option-" + chosen));
    }

    /** Words come before letters and numbers: an option may itself be a letter or a number. */
    private static int find(List<Acceptance.Option> options, String typed) {
        boolean letters = true;
        boolean numbers = true;
        for (int i = 0; i < options.size(); i++) {
            String text = folded(options.get(i).text());
            if (text.equals(typed)) {
                return i;
            }
            letters &= text.length() != 1 || !isLetter(text.charAt(0));
            numbers &= text.isEmpty() || !isDigit(text.charAt(0));
        }
        for (String[] letter : LETTERS) {
            int found = typed.equals(letter[0]) ? find(options, letter[1]) : -1;
            if (found >= 0) {
                return found;
            }
        }
        String mark = withoutParentheses(typed);
        if (mark.length() != 1) {
            return -1;
        }
        char c = mark.charAt(0);
        int index = letters && isLetter(c) ? c - 'a' : numbers && isDigit(c) ? c - '1' : -1;
        return index < options.size() ? index : -1;
    }

    /** Lower case, single spaces, no full stop at the end; ASCII only, whatever the language of the machine. */
    private static String folded(String text) {
        StringBuilder out = new StringBuilder();
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            boolean space = c <= ' ' || c == '\u00A0' || c == '\u202F' || c == '\u2009';
            if (!space) {
                out.append(inPlainLetters(c));
            } else if (out.length() > 0 && out.charAt(out.length() - 1) != ' ') {
                out.append(' ');
            }
        }
        int end = out.length();
        while (end > 0 && (out.charAt(end - 1) == ' ' || out.charAt(end - 1) == '.')) {
            end--;
        }
        return out.substring(0, end);
    }

    /** Umlauts are typed as two letters where a keyboard has none. */
    private static String inPlainLetters(char c) {
        return switch (c) {
            case 'ä', 'Ä' -> "ae";
            case 'ö', 'Ö' -> "oe";
            case 'ü', 'Ü' -> "ue";
            case 'ß' -> "ss";
            default -> String.valueOf(Letters.small(c));
        };
    }

    private static String withoutParentheses(String typed) {
        int from = typed.startsWith("(") ? 1 : 0;
        int to = typed.endsWith(")") ? typed.length() - 1 : typed.length();
        return from < to ? typed.substring(from, to) : "";
    }

    private static boolean isLetter(char c) {
        return c >= 'a' && c <= 'z';
    }

    private static boolean isDigit(char c) {
        return c >= '1' && c <= '9';
    }
}
