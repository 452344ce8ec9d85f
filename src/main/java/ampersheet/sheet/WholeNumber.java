package ampersheet.sheet;

import java.util.OptionalInt;

/** A count as it stands in a table: digits and nothing else. */
final class WholeNumber {
    private static final int MOST_DIGITS = 9;

    private WholeNumber() {}

    /** Empty for anything but one to nine digits. */
    static OptionalInt read(String written) {
        if (written.isEmpty() || written.length() > MOST_DIGITS) {
            return OptionalInt.empty();
        }
        int value = 0;
        for (int i = 0; i < written.length(); i++) {
            char c = written.charAt(i);
            if (c < '0' || c > '9') {
                return OptionalInt.empty();
            }
            value = value * 10 + (c - '0');
        }
        return OptionalInt.of(value);
    }
}
