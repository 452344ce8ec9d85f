package ampersheet.answer;

import ampersheet.quantity.QuantityReader;
import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.Reading;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Judges typed answers against a key. */
public final class Judge {
  private Judge() {}

  /**
   * One verdict per question of the problem, in its order. A later answer is also compared with what follows from the
   * learner's own earlier ones.
   *
   * @param typed by question; a question that is missing or empty is {@link Rung#BLANK}
   */
  public static List<Verdict> judge(ProblemKey key, Map<String, String> typed) {
    EarlierAnswers earlier = new EarlierAnswers(key);
    List<Verdict> verdicts = new ArrayList<>();
    for (AnswerKey answer : key.answers()) {
      String text = typed.get(answer.question());
      verdicts.add(judge(answer, text == null ? "" : text, earlier));
    }
    return List.copyOf(verdicts);
  }

  private static Verdict judge(AnswerKey key, String typed, EarlierAnswers earlier) {
    if (isBlank(typed)) {
      return told(key, typed, Rung.BLANK, "", "No answer yet.");
    }
    if (key.acceptance() instanceof Acceptance.Choice choice) {
      return ChosenOption.judge(key, choice, typed);
    }
    Reading reading = QuantityReader.read(typed, key.unit());
    if (reading instanceof Reading.Unreadable unreadable) {
      return told(key, typed, Rung.UNREADABLE, "", unreadable.problem());
    }
    if (reading instanceof Reading.Ambiguous ambiguous) {
      return told(key, typed, Rung.AMBIGUOUS, "", Sentences.ambiguous(ambiguous.meanings()));
    }
    return new Ladder(key, (Reading.Value) reading, earlier).judge();
  }

  private static boolean isBlank(String typed) {
    for (int i = 0; i < typed.length(); i++) {
      if (typed.charAt(i) > ' ' && typed.charAt(i) != QuantityWriter.NO_BREAK_SPACE) {
        return false;
      }
    }
    return true;
  }

  static Verdict told(AnswerKey key, String typed, Rung rung, String understood, String message) {
    return new Verdict(key.question(), typed, rung, understood, message, Optional.empty());
  }
}
