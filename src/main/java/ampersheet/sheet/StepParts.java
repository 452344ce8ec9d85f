package ampersheet.sheet;

import ampersheet.circuit.PartKind;
import ampersheet.figure.HeatFigure;
import ampersheet.formula.Evaluation;
import ampersheet.formula.Expression;
import ampersheet.formula.Step;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.PlannedPart;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** What of the figures a step is about: the parts whose values it uses or finds, and where its result could be read off. */
public final class StepParts {
  private final ProblemTemplate template;
  /** The formulas that give each element of the figures its values, under the name by which it is drawn. */
  private final Map<String, List<Expression>> drawn = new LinkedHashMap<>();

  private StepParts(ProblemTemplate template) {
    this.template = template;
    template.circuit().ifPresent(plan -> plan.parts().forEach(this::part));
    template.heat().ifPresent(plan -> {
      plan.losses().forEach(loss -> drawn.put(loss.name(), List.of(loss.watts())));
      plan.nodes().forEach(node -> {
        drawn.put(node.name(), List.of());
        node.capacity().ifPresent(capacity -> drawn.put(HeatFigure.capacityOf(node.name()), List.of(capacity)));
      });
      plan.resistances().forEach(resistance -> drawn.put(resistance.name(), List.of(resistance.kelvinPerWatt())));
      plan.ambients().forEach(ambient -> drawn.put(ambient.name(), List.of(ambient.at())));
    });
  }

  private void part(PlannedPart part) {
    if (part.kind() != PartKind.WIRE && part.kind() != PartKind.GROUND) {
      drawn.put(part.name(), List.copyOf(part.values().values()));
    }
  }

  /** For each step, in order, the names by which the figures' elements are drawn; none where a step is about no one part. */
  public static Map<String, List<String>> of(ProblemTemplate template) {
    StepParts parts = new StepParts(template);
    Map<String, List<String>> byStep = new LinkedHashMap<>();
    template.working().steps().forEach(step -> byStep.put(step.id(), parts.usedBy(step)));
    return byStep;
  }

  private List<String> usedBy(Step step) {
    Set<String> quantities = new LinkedHashSet<>(step.uses());
    template.lines().forEach(line -> quantities.remove(line.id()));
    quantities.add(step.id());
    Set<String> readOff = new LinkedHashSet<>();
    template.proofs().stream().filter(proof -> proof.of().equals(step.id())).forEach(proof -> {
      quantities.add(proof.varies());
      namesIn(proof.measure(), readOff);
    });
    List<String> used = new ArrayList<>();
    drawn.forEach((name, formulas) -> {
      boolean takes = formulas.stream().flatMap(formula -> Evaluation.names(formula).stream()).anyMatch(quantities::contains);
      if (takes || readOff.contains(name)) {
        used.add(name);
      }
    });
    return used;
  }

  private static void namesIn(Expression expression, Set<String> names) {
    if (expression instanceof Expression.Name name) {
      names.add(name.id());
    }
    expression.parts().forEach(part -> namesIn(part, names));
  }
}
