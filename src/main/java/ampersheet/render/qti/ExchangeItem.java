package ampersheet.render.qti;

import ampersheet.answer.ProblemKey;
import ampersheet.sheet.Document.ProblemBlock;
import ampersheet.sheet.Document.Steps;

/**
 * One variant of a problem, its numbers frozen.
 *
 * @param identifier of letters, digits and hyphens, unique in its package
 * @param block as on a sheet, bare, with the units printed
 * @param key whose answers stand in the order of the block's questions
 */
public record ExchangeItem(String identifier, String language, ProblemBlock block, ProblemKey key, Steps working) {

    /** {@code A} for the first question; identifiers of its response and its outcomes end in it. */
    static String letter(int question) {
        return Character.toString('A' + question);
    }
}
