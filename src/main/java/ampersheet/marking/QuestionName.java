package ampersheet.marking;

/** Names of questions as sheets print them: {@code q3}, {@code q3a}, {@code q3s2}. */
final class QuestionName {
    private QuestionName() {}

    /** @param name in small letters */
    static boolean is(String name) {
        int i = 1;
        while (i < name.length() && isDigit(name.charAt(i))) {
            i++;
        }
        if (!name.startsWith("q") || i == 1 || i > 4) {
            return false;
        }
        String part = name.substring(i);
        boolean step = part.length() > 1
                && part.length() < 5
                && part.charAt(0) == 's'
                && part.chars().skip(1).allMatch(c -> isDigit((char) c));
        return part.isEmpty() || part.length() == 1 && part.charAt(0) >= 'a' && part.charAt(0) <= 'z' || step;
    }

    private static boolean isDigit(char c) {
        return c >= '0' && c <= '9';
    }
}
