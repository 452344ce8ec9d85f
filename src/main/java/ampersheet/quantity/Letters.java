package ampersheet.quantity;

/** The letters A to Z without regard to case, the same in every locale. */
public final class Letters {
    private Letters() {}

    public static char small(char c) {
        return c >= 'A' && c <= 'Z' ? (char) (c + 'a' - 'A') : c;
    }

    public static boolean sameButForCase(String a, String b) {
        if (a.length() != b.length()) {
            return false;
        }
        for (int i = 0; i < a.length(); i++) {
            if (small(a.charAt(i)) != small(b.charAt(i))) {
                return false;
            }
        }
        return true;
    }
}
