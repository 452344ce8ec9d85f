package ampersheet.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;

import ampersheet.circuit.PartKind;
import ampersheet.model.CircuitPlan;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/**
 * A diode's ends are marked A and K in a drawing; a node with one of these names beside it would be taken for an end.
 */
class PolarityMarksTest {
    private static final Set<PartKind> MARKED = Set.of(PartKind.LED, PartKind.DIODE, PartKind.ZENER);

    @Test
    void noNodeIsCalledAsTheEndOfADiodeInTheSameCircuit() {
        TemplateLibrary library = new TemplateLibrary(List.of(TemplateFiles.builtIn()));
        assertEquals(
                List.of(),
                library.names().stream()
                        .filter(name -> mayBeMistaken(library.template(name)))
                        .toList());
    }

    private static boolean mayBeMistaken(ProblemTemplate template) {
        return template.model(CircuitPlan.class)
                .map(CircuitPlan::parts)
                .filter(parts -> parts.stream().anyMatch(part -> MARKED.contains(part.kind())))
                .filter(parts -> parts.stream()
                        .anyMatch(part -> part.kind() == PartKind.NODE
                                && Set.of("A", "K").contains(part.caption().orElse(part.name()))))
                .isPresent();
    }
}
