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
  TOO_COARSE,
  POWER_OF_TEN,
  SIGN,
  RECIPROCAL,
  KNOWN_MISTAKE,
  /** A design that was read and worked, and fails a criterion; {@link Verdict#mistake} is the criterion's id. */
  CRITERION_MISSED,
  CONSISTENT_WITH_EARLIER,
  UNEXPLAINED
}
