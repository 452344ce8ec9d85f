package ampersheet.answer;

/**
 * A wrong method and the value it gives with this problem's numbers.
 *
 * @param id unique in its template
 * @param value in coherent SI units
 * @param explanation one or two sentences for the learner: what was probably done, and what to do instead
 */
public record KnownMistake(String id, double value, String explanation) {}
