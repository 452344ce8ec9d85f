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

    static String unspaced(String text) {
        StringBuilder out = new StringBuilder();
        text.codePoints()
                .filter(c -> !Character.isWhitespace(c) && !Character.isSpaceChar(c))
                .forEach(out::appendCodePoint);
        return out.toString();
    }
}
