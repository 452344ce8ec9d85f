package ampersheet.answer;

import ampersheet.formula.Values;
import ampersheet.formula.Working;
import java.util.List;

/**
 * Everything needed to judge the answers of one problem.
 *
 * @param answers in the order asked
 * @param givens the drawn numbers
 * @param working the steps, from which a later answer is worked again with the learner's own earlier value
 * @param designs the design tasks whose blanks are among the answers
 */
public record ProblemKey(List<AnswerKey> answers, Values givens, Working working, List<DesignKey> designs) {
  public ProblemKey {
    answers = List.copyOf(answers);
    designs = List.copyOf(designs);
  }

  /** Without design tasks. */
  public ProblemKey(List<AnswerKey> answers, Values givens, Working working) {
    this(answers, givens, working, List.of());
  }
}
