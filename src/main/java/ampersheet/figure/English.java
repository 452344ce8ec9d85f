package ampersheet.figure;

import java.util.List;

/** Numbers and lists as English prose has them. */
final class English {
    private static final List<String> SMALL = List.of(
            "no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve");

    private English() {}

    static String number(int count) {
        return count >= 0 && count < SMALL.size() ? SMALL.get(count) : Integer.toString(count);
    }

    static String count(int count, String singular, String plural) {
        return number(count) + " " + (count == 1 ? singular : plural);
    }

    static String list(List<String> phrases) {
        int n = phrases.size();
        return switch (n) {
            case 0 -> "nothing";
            case 1 -> phrases.get(0);
            default -> String.join(", ", phrases.subList(0, n - 1)) + " and " + phrases.get(n - 1);
        };
    }
}
