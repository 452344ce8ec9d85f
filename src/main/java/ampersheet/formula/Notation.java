package ampersheet.formula;

import ampersheet.language.Language;
import ampersheet.quantity.DecimalMarker;
import ampersheet.quantity.QuantityWriter.Printed;
import java.util.Map;

/**
 * What a fold prints for each name.
 *
 * @param symbols by name; a name not in it is printed by {@link Symbol#of}
 * @param values by name, for the line with the numbers put in
 * @param words printed for word givens, and by {@link #asWord} for the words that they may be
 * @param marker the decimal marker of the constants in the formula
 * @param language of the words between the symbols, and in which a formula is read aloud
 */
public record Notation(
        Map<String, Symbol> symbols,
        Map<String, Printed> values,
        Map<String, String> words,
        DecimalMarker marker,
        Language language) {
    /** Under what a word of a formula stands among {@link #words}, where no name can. */
    public static String asWord(String word) {
        return "= " + word;
    }

    public Symbol symbol(String name) {
        Symbol given = symbols.get(name);
        return given != null ? given : Symbol.of(name);
    }
}
