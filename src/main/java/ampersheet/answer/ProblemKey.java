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
 */
public record ProblemKey(List<AnswerKey> answers, Values givens, Working working) {
  public ProblemKey {
    answers = List.copyOf(answers);
  }
}
