package ampersheet.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.page.PracticeSet.Skill;
import ampersheet.problem.Problem;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.SheetMaker;
import ampersheet.sheet.SmallLibrary;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class PracticeSetTest {
  private static final String PLAN = """
      title: Lanterns
      seed: practice
      problems:
        - {pool: [current-limiting/indicator, voltage-dividers/plain-divider], count: 2}
      """;

  private static ProblemSet set() {
    return ProblemSet.of(PlanReader.read("plan.yaml", PLAN), SmallLibrary.open());
  }

  private static String numbers(Problem problem) {
    return problem.template().name() + problem.givens().quantities();
  }

  @Test
  void everySkillHasItsVariantsAndAnExampleOfEachTemplateAllDifferent() {
    PracticeSet practice = PracticeSet.of(set(), 30);
    assertEquals(2, practice.skills().size());
    Set<String> seen = new HashSet<>();
    for (Skill skill : practice.skills()) {
      assertEquals(30, skill.variants().size());
      skill.templates().forEach(practised -> assertTrue(seen.add(numbers(practised.example()))));
      skill.variants().forEach(variant -> assertTrue(seen.add(numbers(variant.problem())), numbers(variant.problem())));
    }
    assertEquals(62, seen.size());
  }

  @Test
  void whatIsPractisedIsOnNoSheetOfTheClass() {
    Set<String> handedOut = new HashSet<>();
    SheetMaker maker = new SheetMaker(set());
    for (int seat = 1; seat <= 40; seat++) {
      maker.sheet(seat).problems().forEach(problem -> handedOut.add(numbers(problem.problem())));
    }
    assertEquals(80, handedOut.size());
    for (Skill skill : PracticeSet.of(set(), 40).skills()) {
      skill.variants().forEach(variant -> assertFalse(handedOut.contains(numbers(variant.problem()))));
      skill.templates().forEach(practised -> assertFalse(handedOut.contains(numbers(practised.example()))));
    }
  }

  @Test
  void everyAskedValueOfASetIsProven() {
    for (Skill skill : PracticeSet.of(set(), 20).skills()) {
      skill.variants().forEach(variant ->
          assertEquals(List.of(), variant.problem().answers().stream().filter(answer -> !answer.agrees()).toList()));
    }
  }
}
