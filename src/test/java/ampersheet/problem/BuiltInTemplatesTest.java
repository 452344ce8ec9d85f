package ampersheet.problem;

import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.template.ChosenTemplates;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateReader;
import java.util.List;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** Some draws of every template in the jar; the command {@code prove} does thousands. */
class BuiltInTemplatesTest {

  @TestFactory
  List<DynamicTest> everyTemplateIsProven() {
    TemplateFiles files = TemplateFiles.builtIn();
    return ChosenTemplates.of(files).stream()
        .map(name -> DynamicTest.dynamicTest(name, () -> {
          ProofReport report = Proving.prove(new Workshop(TemplateReader.read(files, name)), "some", 60);
          assertTrue(report.passed(), report.print());
          assertTrue(report.tally().refusalRate() < 0.3, report.print());
          assertTrue(report.tally().accepted() == 60 || report.exhausted(), report.print());
          report.mistakes().forEach(mistake -> assertTrue(mistake.closest() > 1, report.print()));
        }))
        .toList();
  }
}
