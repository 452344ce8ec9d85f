package ampersheet.sheet;

/** The hybrid check character system MOD 37,36 of ISO/IEC 7064 over the digits and the letters A to Z. */
final class CheckCharacter {
    private static final String ALPHABET = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ";

    private CheckCharacter() {}

    /** The character to be put behind {@code text}. */
    static char of(String text) {
        return ALPHABET.charAt((37 - carried(text)) % 36);
    }

    /** Whether the last character of {@code text} is the check character of those before it. */
    static boolean fits(String text) {
        int last = text.length() - 1;
        return last >= 0 && of(text.substring(0, last)) == text.charAt(last);
    }

    private static int carried(String text) {
        int carried = 36;
        for (int i = 0; i < text.length(); i++) {
            int value = ALPHABET.indexOf(text.charAt(i));
            if (value < 0) {
                throw new IllegalArgumentException("no digit and no letter A to Z: " + text);
            }
            int sum = (carried + value) % 36;
            carried = 2 * (sum == 0 ? 36 : sum) % 37;
        }
        return carried;
    }
}
