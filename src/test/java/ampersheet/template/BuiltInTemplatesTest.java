package ampersheet.template;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import ampersheet.diagnostic.Diagnostic;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

class BuiltInTemplatesTest {
  private final TemplateFiles files = TemplateFiles.builtIn();

  @Test
  void theProgramCarriesTemplates() {
    assertFalse(files.names().isEmpty());
  }

  @TestFactory
  List<DynamicTest> everyBuiltInTemplateReadsWithoutErrorsOrWarnings() {
    return files.names().stream()
        .map(name -> DynamicTest.dynamicTest(name, () -> assertEquals("",
            TemplateReader.check(files, name).diagnostics().stream().map(Diagnostic::print)
                .collect(Collectors.joining()))))
        .toList();
  }

  /** Who has only other numbers to work with can still copy a neighbour's method: a pool needs another problem as well. */
  @Test
  void everySkillIsPractisedByTwoTemplatesOrMore() {
    Map<String, List<String>> bySkill = new TreeMap<>();
    files.names().forEach(name ->
        bySkill.computeIfAbsent(TemplateReader.read(files, name).skill(), skill -> new ArrayList<>()).add(name));
    bySkill.values().removeIf(templates -> templates.size() > 1);
    assertEquals(Map.of(), bySkill);
  }
}
