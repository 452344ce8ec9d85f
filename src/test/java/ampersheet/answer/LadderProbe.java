package ampersheet.answer;

import ampersheet.formula.Values;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Quantity;
import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.SignificantFigures;
import ampersheet.quantity.Unit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * For any problem key, what a learner would have to type to reach each rung; rungs that the numbers leave no room for are
 * left out. Values are worked out here from the key, not by the judge.
 *
 * @param typed everything typed, the probed question among it
 * @param mistake id expected with {@link Rung#KNOWN_MISTAKE}, else empty
 */
public record LadderProbe(Rung rung, String question, Map<String, String> typed, String mistake) {
  private static final double[] SOMEHOW_WRONG = {1.37, 0.61, 1.83, 0.43, 2.71, 3.37, 0.29, 5.3, 7.7};

  public static List<LadderProbe> of(ProblemKey problem) {
    List<LadderProbe> probes = new ArrayList<>();
    for (AnswerKey key : problem.answers()) {
      new Probing(problem, key, probes).probe();
    }
    return probes;
  }

  /** The verdict on the probed question. */
  public Verdict verdict(ProblemKey problem) {
    for (Verdict verdict : Judge.judge(problem, typed)) {
      if (verdict.question().equals(question)) {
        return verdict;
      }
    }
    throw new AssertionError("no verdict for " + question);
  }

  private record Probing(ProblemKey problem, AnswerKey key, List<LadderProbe> probes) {

    void probe() {
      add(Rung.BLANK, "", "");
      add(Rung.UNREADABLE, "quite a lot", "");
      if (key.acceptance() instanceof Acceptance.Choice choice) {
        options(choice);
      } else {
        quantity();
      }
    }

    private void options(Acceptance.Choice choice) {
      for (int i = 0; i < choice.options().size(); i++) {
        boolean right = i == (int) key.expected();
        add(right ? Rung.CORRECT : Rung.KNOWN_MISTAKE, choice.options().get(i).text(), right ? "" : "option-" + i);
      }
    }

    private void quantity() {
      double k = key.expected();
      add(Rung.AMBIGUOUS, "4,700", "");
      add(Rung.WRONG_DIMENSION, key.unit().dimension().equals(Dimension.MASS) ? "5 V" : "5 kg", "");
      if (!key.unitPrinted() && !key.unit().dimension().equals(Dimension.ONE)) {
        add(Rung.UNIT_MISSING, QuantityWriter.POINT.plain(key.unit().fromSi(k), Unit.ONE, 12).text(), "");
      }
      add(Rung.CORRECT, written(k), "");
      for (KnownMistake mistake : key.mistakes()) {
        add(Rung.KNOWN_MISTAKE, written(mistake.value()), mistake.id());
      }
      coarse();
      first(Rung.POWER_OF_TEN, scaled(1e3), scaled(1e-3), scaled(1e6), scaled(1e-6), scaled(1e2), scaled(1e-2));
      if (key.acceptance() instanceof Acceptance.Within) {
        if (Math.abs(number(k)) > 2 * band(k)) {
          first(Rung.SIGN, fromNumber(-number(k)));
        }
        if (key.unit().offset() == 0 && k != 0 && !isPowerOfTen(1 / k)) {
          first(Rung.RECIPROCAL, 1 / k);
        }
      }
      for (double factor : SOMEHOW_WRONG) {
        double value = key.acceptance() instanceof Acceptance.Count ? Math.floor(k * factor) + 7 : scaled(factor);
        if (isUnexplained(value)) {
          add(Rung.UNEXPLAINED, written(value), "");
          break;
        }
      }
      consistent();
    }

    private void coarse() {
      if (!(key.acceptance() instanceof Acceptance.Within)) {
        return;
      }
      double wanted = key.unit().fromSi(key.expected());
      for (int figures = 1; figures < key.figures(); figures++) {
        double coarse = SignificantFigures.round(wanted, figures);
        double si = key.unit().toSi(coarse);
        boolean outside = Math.abs(si - key.expected()) > band(key.expected()) * 1.001;
        if (outside && Math.abs(coarse - wanted) < 0.0499 * Math.abs(wanted) && isClearOfMistakes(si)) {
          add(Rung.TOO_COARSE, written(si), "");
          return;
        }
      }
    }

    /** A wrong earlier answer and what follows from it. */
    private void consistent() {
      for (AnswerKey earlier : problem.answers()) {
        if (earlier.question().equals(key.question())) {
          return;
        }
        if (earlier.acceptance() instanceof Acceptance.Choice) {
          continue;
        }
        for (double factor : SOMEHOW_WRONG) {
          double wrong = earlier.acceptance() instanceof Acceptance.Count
              ? Math.floor(earlier.expected() * factor) + 7
              : earlier.unit().toSi(SignificantFigures.round(earlier.unit().fromSi(earlier.expected()) * factor, 3));
          double follows = worked(earlier, wrong);
          boolean finite = follows - follows == 0;
          if (finite && isUnexplained(follows) && new Probing(problem, earlier, probes).isUnexplained(wrong)) {
            Map<String, String> typed = new LinkedHashMap<>();
            typed.put(earlier.question(), new Probing(problem, earlier, probes).written(wrong));
            typed.put(key.question(), written(follows));
            probes.add(new LadderProbe(Rung.CONSISTENT_WITH_EARLIER, key.question(), typed, ""));
            return;
          }
        }
      }
    }

    private double worked(AnswerKey earlier, double wrong) {
      try {
        Values values = problem.working().work(problem.givens(),
            Map.of(earlier.step(), new Quantity(wrong, earlier.unit().dimension())));
        return values.quantity(key.step()).value();
      } catch (IllegalStateException | IllegalArgumentException nothingFollows) {
        return Double.NaN;
      }
    }

    private void first(Rung rung, double... candidates) {
      for (double candidate : candidates) {
        if (isClearOfMistakes(candidate) && Math.abs(candidate - key.expected()) > 3 * band(key.expected())) {
          add(rung, written(candidate), "");
          return;
        }
      }
    }

    private boolean isUnexplained(double value) {
      double k = key.expected();
      boolean reciprocal = near(value, 1 / k) || near(value, key.unit().toSi(1 / key.unit().fromSi(k)));
      return Math.abs(value - k) > 0.06 * Math.abs(k) + 3 * band(k) && isClearOfMistakes(value) && !isPowerOfTen(value)
          && !near(value, fromNumber(-number(k))) && !reciprocal;
    }

    private boolean isPowerOfTen(double value) {
      for (int power = -9; power <= 9; power++) {
        if (near(value, scaled(Math.pow(10, power)))) {
          return true;
        }
      }
      return false;
    }

    private boolean isClearOfMistakes(double value) {
      for (KnownMistake mistake : key.mistakes()) {
        if (Math.abs(value - mistake.value()) <= 2 * band(mistake.value())) {
          return false;
        }
      }
      return true;
    }

    private boolean near(double a, double b) {
      return Math.abs(a - b) <= 2 * Math.max(band(a), band(b));
    }

    private double band(double value) {
      return key.acceptance().band(value);
    }

    private double scaled(double factor) {
      return fromNumber(number(key.expected()) * factor);
    }

    private double number(double si) {
      return key.unit().offset() == 0 ? si : key.unit().fromSi(si);
    }

    private double fromNumber(double number) {
      return key.unit().offset() == 0 ? number : key.unit().toSi(number);
    }

    private String written(double si) {
      return QuantityWriter.POINT.plain(si, key.unit(), 12).text();
    }

    private void add(Rung rung, String text, String mistake) {
      probes.add(new LadderProbe(rung, key.question(), Map.of(key.question(), text), mistake));
    }
  }
}
