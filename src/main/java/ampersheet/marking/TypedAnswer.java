package ampersheet.marking;

import ampersheet.diagnostic.Place;

/**
 * What stands in one place for an answer in a returned file.
 *
 * @param question such as {@code q2a}, in small letters
 * @param text as typed; empty where nothing was typed
 * @param onSheet whether it stands on a filled-in sheet, where a printed unit may still follow it
 */
record TypedAnswer(Origin origin, String question, String text, Place place, boolean onSheet) {
    TypedAnswer(String sheet, String question, String text, Place place, boolean onSheet) {
        this(Origin.ofSheet(sheet), question, text, place, onSheet);
    }

    /** The sheet's ID as written there; may be empty. */
    String sheet() {
        return origin.sheet();
    }

    boolean isBlank() {
        return text.isEmpty();
    }

    TypedAnswer withText(String other) {
        return new TypedAnswer(origin, question, other, place, onSheet);
    }

    /** Whether the same was typed, but for blanks. */
    boolean saysTheSameAs(TypedAnswer other) {
        return unspaced(text).equals(unspaced(other.text));
    }

    /** The text itself where it has none. */
    static String unspaced(String text) {
        StringBuilder out = new StringBuilder(text.length());
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            // No blank lies beyond the characters that one unit holds.
            if (!Character.isWhitespace(c) && !Character.isSpaceChar(c)) {
                out.append(c);
            }
        }
        return out.length() == text.length() ? text : out.toString();
    }
}
