package ampersheet.render.qti;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.KnownMistake;
import ampersheet.quantity.SignificantFigures;
import ampersheet.quantity.Unit;
import java.util.ArrayList;
import java.util.List;

/**
 * The ladder of verdicts for one number, as comparisons with fixed values: the first rule with a comparison that holds
 * gives credit and feedback. All values and tolerances are in the unit printed behind the blank.
 *
 * <p>Every tolerance is absolute and lies around the first value, never around the response: a relative one is not
 * symmetrical in this format, and none at all for negative values.
 */
final class ScoringRules {
  static final double HALF_CREDIT = 0.5;
  private static final double INNER_HALF = 0.5;
  private static final int EXACT_DIGITS = 15;
  private static final double COARSEST = 0.05;
  private static final int[] POWERS = {1, 2, 3, 6, 9};

  private final AnswerKey key;
  private final Unit unit;
  private final double expected;
  private final List<Rule> rules = new ArrayList<>();

  private ScoringRules(AnswerKey key) {
    this.key = key;
    this.unit = key.unit();
    this.expected = printed(key, key.expected());
  }

  /** @param feedback identifier of what is said */
  record Rule(List<Comparison> anyOf, String feedback, double credit) {
    Rule {
      anyOf = List.copyOf(anyOf);
    }
  }

  /** Whether something lies within a tolerance of a value. */
  sealed interface Comparison {
    double tolerance();

    /** The response with the key. */
    record WithKey(double tolerance) implements Comparison {}

    /** The response with another value. */
    record WithValue(double value, double tolerance) implements Comparison {}

    /** A number divided by the response with the key. */
    record Reciprocal(double numerator, double tolerance) implements Comparison {}
  }

  static List<Rule> of(AnswerKey key) {
    ScoringRules rules = new ScoringRules(key);
    rules.write();
    return List.copyOf(rules.rules);
  }

  /** In the unit printed, without the last bits that only a change of unit brought in: a platform may show it. */
  static double printed(AnswerKey key, double si) {
    return SignificantFigures.round(key.unit().fromSi(si), EXACT_DIGITS);
  }

  /** Identifier of what is said of a modelled mistake. */
  static String mistake(int index) {
    return "MISTAKE_" + (index + 1);
  }

  private void write() {
    Acceptance acceptance = key.acceptance();
    rules.add(new Rule(List.of(new Comparison.WithKey(tolerance(key.expected(), 1))), Feedback.CORRECT.name(), 1));
    mistakes(INNER_HALF);
    if (acceptance instanceof Acceptance.Within) {
      add(Feedback.TOO_COARSE, coarse(), HALF_CREDIT);
    }
    double wanted = unit.offset() == 0 ? key.expected() : expected;
    double band = acceptance.band(key.expected());
    if (Math.abs(wanted) > band) {
      double near = perUnit(band + Acceptance.LAST_BITS * Math.abs(wanted));
      add(Feedback.POWER_OF_TEN, powers(near), 0);
      add(Feedback.SIGN, List.of(new Comparison.WithValue(-expected, near)), 0);
      if (acceptance instanceof Acceptance.Within && unit.offset() == 0) {
        add(Feedback.RECIPROCAL, reciprocals(near), 0);
      }
    }
    mistakes(1);
  }

  private void add(Feedback feedback, List<? extends Comparison> anyOf, double credit) {
    if (!anyOf.isEmpty()) {
      rules.add(new Rule(List.copyOf(anyOf), feedback.name(), credit));
    }
  }

  /** Each mistake's own explanation helps more than a general one: in the inner half of its band it comes first. */
  private void mistakes(double part) {
    for (int i = 0; i < key.mistakes().size(); i++) {
      KnownMistake mistake = key.mistakes().get(i);
      rules.add(new Rule(List.of(new Comparison.WithValue(printed(key, mistake.value()), tolerance(mistake.value(), part))),
          mistake(i), 0));
    }
  }

  private double tolerance(double si, double part) {
    return perUnit(part * key.acceptance().band(si) + Acceptance.LAST_BITS * Math.abs(si));
  }

  private double perUnit(double si) {
    return si / unit.factor();
  }

  private List<Comparison> coarse() {
    List<Comparison> coarse = new ArrayList<>();
    for (int figures = 1; figures < key.figures(); figures++) {
      double rounded = SignificantFigures.round(expected, figures);
      if (Math.abs(rounded - expected) <= COARSEST * Math.abs(expected)) {
        coarse.add(new Comparison.WithValue(rounded, Acceptance.SAME * Math.abs(rounded)));
      }
    }
    return coarse;
  }

  private List<Comparison> powers(double near) {
    List<Comparison> powers = new ArrayList<>();
    for (int power : POWERS) {
      double factor = 1;
      for (int i = 0; i < power; i++) {
        factor *= 10;
      }
      powers.add(new Comparison.WithValue(expected * factor, near * factor));
      powers.add(new Comparison.WithValue(expected / factor, near / factor));
    }
    return powers;
  }

  /** Whoever divides upside down may do it in the unit printed or in the coherent one. */
  private List<Comparison> reciprocals(double near) {
    Comparison inUnit = new Comparison.Reciprocal(1, near);
    double factor = unit.factor() * unit.factor();
    return factor == 1 ? List.of(inUnit) : List.of(inUnit, new Comparison.Reciprocal(1 / factor, near));
  }
}
