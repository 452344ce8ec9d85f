package ampersheet.render.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

class CostlyCurvesTest {
  private static final double PAGE = 100;

  private static Set<String> costly(double with, double curve) {
    return CostlyCurves.in(Map.of("a", with), Map.of("a", curve), Map.of(), PAGE);
  }

  @Test
  void aCurveThatFitsOnThePageStays() {
    assertEquals(Set.of(), costly(99, 30));
    assertEquals(Set.of(), costly(180, 30));
  }

  @Test
  void aCurveForWhichTheExampleWouldTakeAnotherPageGoes() {
    assertEquals(Set.of("a"), costly(101, 30));
    assertEquals(Set.of("a"), costly(210, 30));
  }

  @Test
  void aCurveGoesIfExampleAndTwinFitOnOnePageWithoutIt() {
    Map<String, Double> heights = Map.of("a", 70.0, "b", 40.0);
    assertEquals(Set.of("a"), CostlyCurves.in(heights, Map.of("a", 20.0), Map.of("a", "b"), PAGE));
    assertEquals(Set.of(), CostlyCurves.in(heights, Map.of("a", 5.0), Map.of("a", "b"), PAGE));
  }
}
