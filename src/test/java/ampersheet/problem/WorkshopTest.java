package ampersheet.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.formula.Values;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Quantity;
import ampersheet.template.ProblemTemplate;
import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;

class WorkshopTest {

  /** T. R. Kuphaldt, Lessons in Electric Circuits, vol. III (Semiconductors), ch. 3: 24 V, 1.6 V, 20 mA gives 1120 ohms. */
  @Test
  void aPublishedIndicatorGivesItsPublishedResistance() {
    Attempt.Worked worked = chosen(TemplateBuilder.indicator().build(), 24, 1.6, 20e-3);
    Problem.Answer resistance = worked.problem().answers().get(0);
    assertEquals(1120, resistance.value(), 1e-9);
    assertEquals(1120, resistance.second(), 1e-6);
    assertTrue(resistance.agrees());
    Problem.Answer fitted = worked.problem().answers().get(1);
    assertEquals(1200, fitted.value());
    assertEquals(1200, fitted.second());
    assertEquals("[]", worked.notes().toString());
  }

  private static Attempt.Worked chosen(ProblemTemplate template, double vs, double vf, double amps) {
    return assertInstanceOf(Attempt.Worked.class, new Workshop(template).workChosen(indicator(vs, vf, amps)));
  }

  static Values indicator(double vs, double vf, double amps) {
    Map<String, Quantity> givens = new LinkedHashMap<>();
    givens.put("Vs", new Quantity(vs, Dimension.VOLTAGE));
    givens.put("Vf", new Quantity(vf, Dimension.VOLTAGE));
    givens.put("If", new Quantity(amps, Dimension.CURRENT));
    return Values.of(givens, Map.of());
  }
}
