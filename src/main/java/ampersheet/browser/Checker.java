package ampersheet.browser;

import ampersheet.answer.Judge;
import ampersheet.answer.KeyReader;
import ampersheet.answer.Verdict;
import ampersheet.quantity.QuantityReader;
import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.Reading;
import ampersheet.quantity.Unit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.teavm.jso.JSExport;

/** The functions a page finds in its own script. Texts and lists of texts go in and out, nothing else. */
public final class Checker {
  private Checker() {}

  /** The compiler wants an entry; everything starts from the page. */
  public static void main(String[] arguments) {}

  /**
   * One verdict per question of the problem, in its order, each as five texts: question, rung, what was understood,
   * message, id of the mistake or nothing.
   *
   * @param key as {@link ampersheet.answer.KeyWriter} writes it
   * @param typed question and answer by turns
   */
  @JSExport
  public static String[] judgeAnswers(String key, String[] typed) {
    Map<String, String> answers = new LinkedHashMap<>();
    for (int i = 0; i + 1 < typed.length; i += 2) {
      answers.put(typed[i], typed[i + 1]);
    }
    List<Verdict> verdicts = Judge.judge(KeyReader.read(key), answers);
    String[] told = new String[verdicts.size() * 5];
    int at = 0;
    for (Verdict verdict : verdicts) {
      told[at++] = verdict.question();
      told[at++] = verdict.rung().name();
      told[at++] = verdict.understood();
      told[at++] = verdict.message();
      told[at++] = verdict.mistake().orElse("");
    }
    return told;
  }

  /**
   * How an answer is understood, without judging it: {@code value} and the quantity read back; {@code number}, a number
   * that came without a unit or a prefix, and the same in the unit of the question (but for a share, which may be so many
   * percent or a fraction of 1); {@code ambiguous} and what it could mean; {@code unreadable} and why.
   *
   * @param unit of the question
   */
  @JSExport
  public static String[] readAnswer(String typed, String unit) {
    Unit asked = Unit.parse(unit);
    Reading reading = QuantityReader.read(typed, asked);
    if (reading instanceof Reading.Unreadable unreadable) {
      return new String[] {"unreadable", unreadable.problem()};
    }
    if (reading instanceof Reading.Ambiguous ambiguous) {
      return new String[] {"ambiguous", String.join(" or ", ambiguous.meanings())};
    }
    Reading.Value value = (Reading.Value) reading;
    if (value.unit().isPresent()) {
      return new String[] {"value", written(value, value.unit().get())};
    }
    boolean share = asked.symbol().equals("%");
    if (value.hasPrefix() && !share) {
      return new String[] {"value", written(value, asked)};
    }
    return new String[] {"number", written(value, Unit.ONE), written(value, share ? Unit.ONE : asked)};
  }

  private static String written(Reading.Value value, Unit unit) {
    return QuantityWriter.POINT.plain(value.si(unit), unit, Math.max(1, value.significantFigures())).text();
  }
}
