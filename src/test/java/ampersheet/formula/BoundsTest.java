package ampersheet.formula;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Map;
import org.junit.jupiter.api.Test;

class BoundsTest {
  private static Interval bounds(String formula, Map<String, Interval> intervals) {
    return Bounds.of(FormulaReader.expression(formula), intervals);
  }

  private static void assertBounds(double low, double high, Interval interval) {
    assertEquals(low, interval.low(), 1e-12 * Math.abs(low));
    assertEquals(high, interval.high(), 1e-12 * Math.abs(high));
  }

  /** Worked by hand: 10 kΩ and 20 kΩ of 5 % on 9 V; the extremes lie at opposite ends of the tolerances. */
  @Test
  void aDividerIsBoundedExactlyIfEachNameStandsOnce() {
    Map<String, Interval> parts = Map.of("R1", Interval.around(10_000, 0.05), "R2", Interval.around(20_000, 0.05),
        "Vs", Interval.exactly(9));
    assertBounds(9 / (1 + 10_500.0 / 19_000), 9 / (1 + 9_500.0 / 21_000), bounds("Vs / (1 + R1 / R2)", parts));
    assertBounds(9 * 19_000 / 31_500.0, 9 * 21_000 / 28_500.0, bounds("Vs * R2 / (R1 + R2)", parts));
    assertBounds(1 / (1 / 9_500.0 + 1 / 19_000.0), 1 / (1 / 10_500.0 + 1 / 21_000.0),
        bounds("parallel(R1, R2)", parts));
  }

  @Test
  void powersAndFunctionsFollowTheirShape() {
    Map<String, Interval> x = Map.of("x", new Interval(-2, 3), "y", new Interval(2, 4));
    assertBounds(0, 9, bounds("x ^ 2", x));
    assertBounds(-8, 27, bounds("x ^ 3", x));
    assertBounds(1 / 16.0, 1 / 4.0, bounds("y ^ -2", x));
    assertBounds(0, 3, bounds("abs(x)", x));
    assertBounds(-2, 2, bounds("min(x, 2)", x));
    assertBounds(Math.sqrt(2), 2, bounds("sqrt(y)", x));
    assertBounds(2.2, 4.7, bounds("next_up(y + 0.1, E6)", x));
    assertBounds(-1, 1, bounds("sin(10 * y)", x));
    assertBounds(2, 4, bounds("mod(y, 5)", x));
    assertBounds(0, 5, bounds("mod(y + 2, 5)", x));
  }

  @Test
  void nothingIsPromisedWhereADenominatorMayBeZero() {
    Map<String, Interval> x = Map.of("x", new Interval(-1, 1));
    assertEquals(Interval.EVERYTHING, bounds("1 / x", x));
    assertEquals(Interval.EVERYTHING, bounds("ln(x)", x));
    assertEquals(Interval.EVERYTHING, bounds("tan(2 * x)", x));
  }

  @Test
  void missingIntervalsAndExchangedBoundsAreRefused() {
    assertThrows(IllegalArgumentException.class, () -> bounds("x", Map.of()));
    assertThrows(IllegalArgumentException.class, () -> bounds("current(D1)", Map.of()));
    assertThrows(IllegalArgumentException.class, () -> new Interval(2, 1));
    assertThrows(IllegalArgumentException.class, () -> new Interval(Double.NaN, 1));
  }
}
