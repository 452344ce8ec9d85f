package ampersheet.template;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.diagnostic.Diagnostic;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
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
                .map(name -> DynamicTest.dynamicTest(
                        name,
                        () -> assertEquals(
                                "",
                                TemplateReader.check(files, name).diagnostics().stream()
                                        .map(Diagnostic::print)
                                        .collect(Collectors.joining()))))
                .toList();
    }

    /**
     * Who has only other numbers to work with can still copy a neighbour's method: a pool needs another problem as
     * well.
     */
    @Test
    void everySkillIsPractisedByTwoTemplatesOrMore() {
        Map<String, List<String>> bySkill = new TreeMap<>();
        files.names()
                .forEach(name -> bySkill.computeIfAbsent(
                                TemplateReader.read(files, name).skill(), skill -> new ArrayList<>())
                        .add(name));
        bySkill.values().removeIf(templates -> templates.size() > 1);
        assertEquals(Map.of(), bySkill);
    }

    /** By skill, what each of its templates says to come before. */
    private Map<String, Set<List<String>>> after() {
        Map<String, Set<List<String>>> after = new TreeMap<>();
        files.names().forEach(name -> {
            ProblemTemplate template = TemplateReader.read(files, name);
            after.computeIfAbsent(template.skill(), skill -> new LinkedHashSet<>())
                    .add(template.premises().after());
        });
        return after;
    }

    @Test
    void templatesOfASkillNameTheSameSkillsToComeBeforeAndThereAreSuch() {
        Map<String, Set<List<String>>> after = after();
        List<String> wrong = new ArrayList<>();
        after.forEach((skill, said) -> {
            if (said.size() > 1) {
                wrong.add(skill + ": " + said);
            }
            said.forEach(list -> list.stream()
                    .filter(name -> !after.containsKey(name))
                    .forEach(name -> wrong.add(skill + " comes after " + name + ", which nothing practises")));
        });
        assertEquals(List.of(), wrong);
        assertTrue(after.values().stream().anyMatch(said -> !said.contains(List.of())), "some skill builds on another");
    }

    @Test
    void skillsBuildOnEachOtherWithoutACircle() {
        Map<String, Set<List<String>>> left = after();
        while (!left.isEmpty()) {
            List<String> next = left.entrySet().stream()
                    .filter(entry ->
                            entry.getValue().stream().flatMap(List::stream).noneMatch(left::containsKey))
                    .map(Map.Entry::getKey)
                    .toList();
            assertFalse(next.isEmpty(), "a circle among " + left);
            next.forEach(left::remove);
        }
    }
}
