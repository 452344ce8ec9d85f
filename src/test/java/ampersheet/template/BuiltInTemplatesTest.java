package ampersheet.template;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import ampersheet.diagnostic.Diagnostic;
import java.util.List;
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
}
