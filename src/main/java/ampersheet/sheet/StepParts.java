package ampersheet.sheet;

import ampersheet.circuit.PartKind;
import ampersheet.figure.HeatFigure;
import ampersheet.formula.Evaluation;
import ampersheet.formula.Expression;
import ampersheet.formula.Step;
import ampersheet.model.CircuitPlan;
import ampersheet.model.CircuitPlan.PlannedPart;
import ampersheet.model.HeatPlan;
import ampersheet.model.Measures;
import ampersheet.model.ModelKind;
import ampersheet.template.ProblemTemplate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What of the figures a step is about: the parts whose values it uses or finds, and where its result could be read off.
 * Names are those by which the figures' elements are drawn.
 */
public final class StepParts {
    private final ProblemTemplate template;
    /** The formulas that give each element of the figures its values, under the name by which it is drawn. */
    private final Map<String, List<Expression>> drawn = new LinkedHashMap<>();

    private StepParts(ProblemTemplate template) {
        this.template = template;
    }

    private StepParts withCircuit() {
        template.model(CircuitPlan.class).ifPresent(plan -> plan.parts().forEach(this::part));
        return this;
    }

    private StepParts withHeatPath() {
        template.model(HeatPlan.class).ifPresent(plan -> {
            plan.losses().forEach(loss -> drawn.put(loss.name(), List.of(loss.watts())));
            plan.nodes().forEach(node -> {
                drawn.put(node.name(), List.of());
                node.capacity().ifPresent(capacity -> drawn.put(HeatFigure.capacityOf(node.name()), List.of(capacity)));
            });
            plan.resistances().forEach(resistance -> drawn.put(resistance.name(), List.of(resistance.kelvinPerWatt())));
            plan.ambients().forEach(ambient -> drawn.put(ambient.name(), List.of(ambient.at())));
        });
        return this;
    }

    private void part(PlannedPart part) {
        if (part.kind() != PartKind.WIRE && part.kind() != PartKind.GROUND) {
            drawn.put(part.name(), List.copyOf(part.values().values()));
        }
    }

    /** For each step, in order, what it is about; nothing where it is about no one part. */
    public static Map<String, List<String>> of(ProblemTemplate template) {
        StepParts parts = new StepParts(template).withCircuit().withHeatPath();
        Map<String, List<String>> byStep = new LinkedHashMap<>();
        template.working().steps().forEach(step -> byStep.put(step.id(), parts.usedBy(step)));
        return byStep;
    }

    /**
     * For each part of the circuit where a step's result belongs, the numbers of those steps: its value, or what a
     * meter shows.
     */
    static Map<String, List<Integer>> foundInCircuit(ProblemTemplate template) {
        return new StepParts(template).withCircuit().found(ModelKind.CIRCUIT);
    }

    /** As in the circuit, for the elements of the heat path. */
    static Map<String, List<Integer>> foundInHeatPath(ProblemTemplate template) {
        return new StepParts(template).withHeatPath().found(ModelKind.HEAT);
    }

    /** @param figure the model whose figure it is; a part of the circuit and one of the heat path may share a name */
    private Map<String, List<Integer>> found(ModelKind figure) {
        Map<String, List<Integer>> found = new LinkedHashMap<>();
        for (int i = 0; i < template.lines().size(); i++) {
            for (String name : foundBy(template.lines().get(i).id(), figure)) {
                found.computeIfAbsent(name, key -> new ArrayList<>()).add(i + 1);
            }
        }
        return found;
    }

    private Set<String> foundBy(String step, ModelKind figure) {
        Set<String> at = new LinkedHashSet<>();
        drawn.forEach((name, formulas) -> {
            if (formulas.stream().anyMatch(formula -> isName(formula, step))) {
                at.add(name);
            }
        });
        for (ProblemTemplate.Proof proof : template.proofs()) {
            if (!proof.of().equals(step)) {
                continue;
            }
            if (proof.way() instanceof ProblemTemplate.Way.Direct) {
                readOff(proof.measure(), figure).filter(drawn::containsKey).ifPresent(at::add);
            } else {
                drawn.forEach((name, formulas) -> {
                    if (formulas.stream().anyMatch(formula -> isName(formula, proof.varies()))) {
                        at.add(name);
                    }
                });
            }
        }
        return at;
    }

    /** The one thing whose measure it is. */
    private static Optional<String> readOff(Expression measure, ModelKind figure) {
        return measure instanceof Expression.Call call
                        && !call.arguments().isEmpty()
                        && Measures.named(call.function(), call.arguments().size()).stream()
                                .anyMatch(one -> one.kind() == figure)
                        && call.arguments().get(0) instanceof Expression.Name thing
                ? Optional.of(thing.id())
                : Optional.empty();
    }

    private static boolean isName(Expression formula, String id) {
        return formula instanceof Expression.Name name && name.id().equals(id);
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
            boolean takes = formulas.stream()
                    .flatMap(formula -> Evaluation.names(formula).stream())
                    .anyMatch(quantities::contains);
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
