package ampersheet.marking;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.Verdict;
import ampersheet.sheet.SheetProblem;
import java.util.Optional;

/**
 * What probably led to an answer that is not right. The same id in two problems means the same cause: a modelled mistake
 * keeps its id across templates, a slip has one for all of them, an option belongs to its question alone.
 *
 * @param says to the learner, one or two sentences
 * @param modelled whether the template models it, as opposed to a slip that can happen in any problem
 */
record Cause(String id, String says, boolean modelled) {

  /** Empty where the answer is right, cannot be read, or is not explained. */
  static Optional<Cause> of(SheetProblem problem, AnswerKey key, Verdict verdict) {
    return switch (verdict.rung()) {
      case KNOWN_MISTAKE -> Optional.of(new Cause(key.acceptance() instanceof Acceptance.Choice
          ? problem.template().name() + " " + key.step() + " " + verdict.mistake().orElseThrow()
          : verdict.mistake().orElseThrow(), verdict.message(), true));
      case WRONG_DIMENSION -> slip("another quantity", "The answer's unit belongs to another quantity.");
      case UNIT_MISSING -> slip("unit missing", "The number is right, but its unit is missing.");
      case TOO_COARSE -> slip("rounded too far", "The method looks right, but the number is rounded too far.");
      case POWER_OF_TEN -> slip("power of ten", "The digits are right, but not the power of ten.");
      case SIGN -> slip("sign", "The size is right, but not the sign.");
      case RECIPROCAL -> slip("upside down", "A division is upside down.");
      case CONSISTENT_WITH_EARLIER -> verdict.carriedFrom().isEmpty()
          ? slip("rounded on the way", "A rounded value was used to go on with.") : Optional.empty();
      case BLANK, UNREADABLE, AMBIGUOUS, CORRECT, UNEXPLAINED -> Optional.empty();
    };
  }

  private static Optional<Cause> slip(String id, String says) {
    return Optional.of(new Cause(id, says, false));
  }
}
