package ampersheet.sheet;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.formula.Notation;
import ampersheet.formula.Values;
import ampersheet.problem.Notations;
import ampersheet.problem.Problem;
import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.Unit;

/** How the numbers of a problem are printed. */
final class ProblemText {
  /** Of a value that has no short exact decimal; one more than most questions ask for. */
  static final int FIGURES = 4;
  private static final int EXACT_FIGURES = 9;
  private static final Unit PERCENT = Unit.parse("%");
  /** A smaller gap between the routes is rounding of the arithmetic and not worth a number. */
  private static final double ROUNDING = 1e-6;

  private ProblemText() {}

  /** @param values those that may be printed; other names print as symbols */
  static Notation of(SheetProblem problem, Values values) {
    return Notations.of(problem.template(), values, problem.writer(), FIGURES);
  }

  /** As a right answer is written. */
  static String answer(AnswerKey key, QuantityWriter writer) {
    return value(key, key.expected(), writer);
  }

  private static String value(AnswerKey key, double value, QuantityWriter writer) {
    if (key.acceptance() instanceof Acceptance.Choice choice) {
      return choice.options().get((int) value).text();
    }
    return key.acceptance() instanceof Acceptance.Within
        ? writer.rounded(value, key.unit(), key.figures()).text()
        : writer.plain(value, key.unit(), EXACT_FIGURES).text();
  }

  /** With more figures than asked for, to be compared. */
  static String precise(AnswerKey key, double value, QuantityWriter writer) {
    if (key.acceptance() instanceof Acceptance.Choice choice) {
      return choice.options().get((int) value).text();
    }
    return writer.working(value, key.unit(), Math.max(FIGURES, key.figures() + 1)).text();
  }

  static String accepted(AnswerKey key, QuantityWriter writer) {
    if (key.acceptance() instanceof Acceptance.Within within) {
      double band = within.band(key.expected());
      return precise(key, key.expected() - band, writer) + " to " + precise(key, key.expected() + band, writer);
    } else if (key.acceptance() instanceof Acceptance.Preferred preferred) {
      return "exactly this value of " + preferred.series();
    } else if (key.acceptance() instanceof Acceptance.Count) {
      return "exactly this number";
    }
    return "this option";
  }

  static String secondRoute(AnswerKey key, Problem.Answer answer, QuantityWriter writer) {
    String second = precise(key, answer.second(), writer);
    if (key.acceptance() instanceof Acceptance.Choice || answer.gap() == 0) {
      return second + ", the same";
    }
    if (answer.gap() < ROUNDING) {
      return second + ", apart by less than " + writer.plain(ROUNDING, PERCENT, 1).text();
    }
    return second + ", apart by " + gap(answer, writer) + "; the model allows " + share(answer.allowed(), writer);
  }

  private static String gap(Problem.Answer answer, QuantityWriter writer) {
    return share(answer.gap(), writer);
  }

  private static String share(double of, QuantityWriter writer) {
    return writer.plain(of, PERCENT, 2).text();
  }
}
