package ampersheet.answer;

import java.util.List;
import java.util.Map;

/** Judges typed answers against a key. */
public final class Judge {
  private Judge() {}

  /**
   * One verdict per question of the problem, in its order.
   *
   * @param typed by question; a question that is missing or empty is {@link Rung#BLANK}
   */
  public static List<Verdict> judge(ProblemKey key, Map<String, String> typed) {
    throw new UnsupportedOperationException("being written");
  }
}
