package ampersheet.quantity;

/** Whole numbers below a hundred in words, and the first twelve ordinals, at the start of what was typed. */
final class NumberWords {
    private static final String[] CARDINALS = {
        "zero",
        "one",
        "two",
        "three",
        "four",
        "five",
        "six",
        "seven",
        "eight",
        "nine",
        "ten",
        "eleven",
        "twelve",
        "thirteen",
        "fourteen",
        "fifteen",
        "sixteen",
        "seventeen",
        "eighteen",
        "nineteen",
    };
    private static final String[] TENS = {"twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"};
    private static final String[] ORDINALS = {
        "first",
        "second",
        "third",
        "fourth",
        "fifth",
        "sixth",
        "seventh",
        "eighth",
        "ninth",
        "tenth",
        "eleventh",
        "twelfth",
    };
    /** With one of these behind it, a number means another one. */
    private static final String[] LARGER = {
        "hundred",
        "hundreds",
        "thousand",
        "thousands",
        "million",
        "millions",
        "billion",
        "dozen",
        "dozens",
        "score",
        "half",
        "halves",
        "third",
        "thirds",
        "quarter",
        "quarters",
        "point",
        "and",
    };

    private NumberWords() {}

    /**
     * The text with such a number in digits; the text itself where it starts with none.
     *
     * @throws TypedNumber.Fault where it starts with a number in words that is not read
     */
    static String inDigits(String text) throws TypedNumber.Fault {
        int start = text.startsWith("-") || text.startsWith("+") ? 1 : 0;
        while (start < text.length() && text.charAt(start) == ' ') {
            start++;
        }
        int end = wordEnd(text, start);
        String word = word(text, start, end);
        int tens = tens(word);
        int number = tens < 0 ? number(word) : 10 * (tens + 2);
        if (number < 0) {
            int after = end < text.length() ? end + 1 : end;
            boolean article = word.equals("a") || word.equals("an") || word.startsWith("ein") && word.length() <= 5;
            if (changesTheNumber(article ? word(text, after, wordEnd(text, after)) : word)) {
                throw inWords();
            }
            return text;
        }
        boolean joined = tens >= 0 && end + 1 < text.length() && (text.charAt(end) == '-' || text.charAt(end) == ' ');
        if (joined) {
            int unitsEnd = wordEnd(text, end + 1);
            int units = indexOf(CARDINALS, word(text, end + 1, unitsEnd));
            if (units > 0 && units < 10) {
                number += units;
                end = unitsEnd;
            }
        }
        int next = end < text.length() && (text.charAt(end) == ' ' || text.charAt(end) == '-') ? end + 1 : end;
        String following = word(text, next, wordEnd(text, next));
        if (changesTheNumber(following) || number(following) >= 0 || tens(following) >= 0) {
            throw inWords();
        }
        return text.substring(0, start) + number + text.substring(end);
    }

    /** Whether the word makes another number of the one before it: {@code 5 dozen}. */
    static boolean changesTheNumber(String word) {
        String lower = TypedText.lowerCase(word);
        return indexOf(LARGER, lower) >= 0 || indexOf(GermanWords.LARGER, lower) >= 0;
    }

    static TypedNumber.Fault inWords() {
        return new TypedNumber.Fault("reading.words");
    }

    private static int number(String word) {
        int cardinal = either(CARDINALS, GermanWords.CARDINALS, word);
        int ordinal = either(ORDINALS, GermanWords.ORDINALS, word);
        return cardinal >= 0 ? cardinal : ordinal < 0 ? -1 : ordinal + 1;
    }

    private static int tens(String word) {
        return either(TENS, GermanWords.TENS, word);
    }

    private static int either(String[] words, String[] others, String word) {
        return Math.max(indexOf(words, word), indexOf(others, word));
    }

    private static int wordEnd(String text, int from) {
        int end = from;
        while (end < text.length()
                && (text.charAt(end) >= 'a' && text.charAt(end) <= 'z'
                        || text.charAt(end) >= 'A' && text.charAt(end) <= 'Z'
                        || "äöüÄÖÜß".indexOf(text.charAt(end)) >= 0)) {
            end++;
        }
        return end;
    }

    private static String word(String text, int from, int to) {
        return TypedText.lowerCase(text.substring(from, to));
    }

    private static int indexOf(String[] words, String word) {
        for (int i = 0; i < words.length; i++) {
            if (words[i].equals(word)) {
                return i;
            }
        }
        return -1;
    }
}
