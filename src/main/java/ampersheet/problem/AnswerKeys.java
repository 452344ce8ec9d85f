package ampersheet.problem;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.ProblemKey;
import ampersheet.problem.Problem.Answer;
import ampersheet.quantity.Unit;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.Ask;
import ampersheet.template.ProblemTemplate.ChoiceAsk;
import ampersheet.template.ProblemTemplate.QuantityAsk;
import java.util.ArrayList;
import java.util.List;

/** The key of a problem, for those who judge answers. */
public final class AnswerKeys {
  private AnswerKeys() {}

  /**
   * @param question of the whole problem, such as {@code q3}; its parts are {@code q3a}, {@code q3b} … if it asks for more
   *     than one thing
   * @param unitPrinted whether the sheet prints the unit behind each blank
   */
  public static ProblemKey keyOf(Problem problem, String question, boolean unitPrinted) {
    List<String> questions = questions(problem.template(), question);
    List<AnswerKey> keys = new ArrayList<>();
    for (int i = 0; i < questions.size(); i++) {
      keys.add(key(problem, problem.template().asks().get(i), problem.answers().get(i), questions.get(i),
          unitPrinted));
    }
    return new ProblemKey(keys, problem.givens(), problem.template().working());
  }

  /** The names of the questions of a problem, in the order asked. */
  public static List<String> questions(ProblemTemplate template, String question) {
    int count = template.asks().size();
    List<String> questions = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      questions.add(count == 1 ? question : question + (char) ('a' + i));
    }
    return List.copyOf(questions);
  }

  private static AnswerKey key(Problem problem, Ask ask, Answer answer, String question, boolean unitPrinted) {
    if (ask instanceof QuantityAsk quantity) {
      return new AnswerKey(question, ask.of(), answer.value(), problem.template().line(ask.of()).unit(),
          quantity.figures(), unitPrinted, quantity.acceptance(), answer.mistakes());
    }
    List<Acceptance.Option> options = ((ChoiceAsk) ask).options().stream()
        .map(option -> new Acceptance.Option(option.text(), option.otherwise()))
        .toList();
    return new AnswerKey(question, ask.of(), answer.value(), Unit.parse("1"), 0, unitPrinted,
        new Acceptance.Choice(options), List.of());
  }
}
