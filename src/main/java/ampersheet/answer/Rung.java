package ampersheet.answer;

/** The ladder of verdicts, in the order tried; the first that fits is given. */
public enum Rung {
  BLANK,
  UNREADABLE,
  AMBIGUOUS,
  WRONG_DIMENSION,
  UNIT_MISSING,
  CORRECT,
  TOO_COARSE,
  POWER_OF_TEN,
  SIGN,
  RECIPROCAL,
  KNOWN_MISTAKE,
  CONSISTENT_WITH_EARLIER,
  UNEXPLAINED
}
