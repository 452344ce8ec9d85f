package ampersheet.render;

import ampersheet.formula.PlainText;
import ampersheet.sheet.Document.StepBlock;

/**
 * Which lines of a worked step say something new: {@code symbol = formula}, {@code = numbers put in}, {@code = result}.
 * A line that would only repeat the one before is left out.
 *
 * @param width of the longest line in characters of plain text
 */
public record Derivation(boolean formula, boolean numbers, boolean result, int width) {

  /** @param step one that is shown */
  public static Derivation of(StepBlock step) {
    String result = step.result().orElseThrow().text();
    if (step.formula().isEmpty()) {
      return new Derivation(false, false, true, result.length());
    }
    String letters = PlainText.symbolic(step.formula().get(), step.notation());
    String numbers = PlainText.substituted(step.formula().get(), step.notation());
    boolean exact = step.result().get().exact();
    boolean numbersAreNew = !numbers.equals(letters) && !(exact && numbers.equals(result));
    boolean resultIsNew = !(exact && letters.equals(result));
    return new Derivation(true, numbersAreNew, resultIsNew, Math.max(letters.length(), numbersAreNew ? numbers.length() : 0));
  }
}
