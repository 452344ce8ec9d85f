package ampersheet.reference;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Every published value of {@code reference-checks/}, against what the program makes of the same numbers. */
class ReferenceChecksTest {
  private static final List<ReferenceCheck> CHECKS = ReferenceFiles.all();

  @TestFactory
  Stream<DynamicTest> theProgramFindsThePublishedValue() {
    return CHECKS.stream().map(check -> DynamicTest.dynamicTest(check.id(), () -> {
      List<String> disagreements = check.disagreements();
      if (!disagreements.isEmpty()) {
        fail(check.told(disagreements));
      }
    }));
  }

  @Test
  void everyRowHasANameOfItsOwn() {
    assertEquals(CHECKS.size(), CHECKS.stream().map(ReferenceCheck::id).distinct().count());
  }

  @Test
  void thereAreManyRowsForEveryKind() {
    assertTrue(CHECKS.size() >= 150, "only " + CHECKS.size() + " rows");
  }

  @Test
  void aValueThatIsWrongByMoreThanTheToleranceIsToldWithItsSource() {
    for (ReferenceCheck check : CHECKS) {
      String formula = check.expected().keySet().iterator().next();
      List<Double> wrong = check.expected().get(formula).stream().map(value -> value * (1 + 3 * check.within()) + 1e-9)
          .toList();
      ReferenceCheck spoiled = new ReferenceCheck(check.file(), check.id(), check.what(), check.source(), check.status(),
          check.grade(), check.note(), check.subject(), java.util.Map.of(formula, wrong), check.within());
      List<String> disagreements = spoiled.disagreements();
      assertTrue(!disagreements.isEmpty(), check.id() + " cannot fail");
      String told = spoiled.told(disagreements);
      assertTrue(told.contains(check.source()) && told.contains(check.status()) && told.contains(formula), told);
    }
  }
}
