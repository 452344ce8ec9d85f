package ampersheet.answer;

/** The ladder of verdicts, in the order tried; the first that fits is given. */
public enum Rung {
    BLANK,
    UNREADABLE,
    AMBIGUOUS,
    WRONG_DIMENSION,
    /** A blank of a design whose other blanks are not there yet, or cannot be read: nothing is said against it. */
    INCOMPLETE,
    UNIT_MISSING,
    CORRECT,
    /** The right number of degrees Celsius, written with K: the scale begins elsewhere. */
    OTHER_SCALE,
    TOO_COARSE,
    POWER_OF_TEN,
    SIGN,
    RECIPROCAL,
    KNOWN_MISTAKE,
    /** A design that was read and worked, and fails a criterion; {@link Verdict#mistake} is the criterion's id. */
    CRITERION_MISSED,
    CONSISTENT_WITH_EARLIER,
    /**
     * A rise for a temperature or the reverse, a difference too many or too few, or 273.15 where it does not belong.
     */
    RISE_OR_TEMPERATURE,
    /** From the calculated value where the preferred or rounded one counts, or the reverse. */
    EXACT_OR_FITTED,
    /** The value of another quantity of the problem: a given, or another step. */
    OTHER_QUANTITY,
    /** For a power: a voltage and a current of the problem that do not belong together. */
    WRONG_PAIR,
    /** What follows rightly from a modelled mistake in an earlier question. */
    CARRIED_MISTAKE,
    /** A given that was left out, exchanged for its rest up to the whole, or another one put in its place. */
    MISPLACED_GIVEN,
    /** Within 5 %, but outside the tolerance. */
    NEAR_MISS,
    UNEXPLAINED
}
