package ampersheet.marking;

import ampersheet.diagnostic.Place;

/**
 * What stands in one place for an answer in a returned file.
 *
 * @param sheet the sheet's ID as written there
 * @param question such as {@code q2a}, in small letters
 * @param text as typed; empty where nothing was typed
 * @param onSheet whether it stands on a filled-in sheet, where a printed unit may still follow it
 */
record TypedAnswer(String sheet, String question, String text, Place place, boolean onSheet) {
    TypedAnswer withText(String other) {
        return new TypedAnswer(sheet, question, other, place, onSheet);
    }
}
