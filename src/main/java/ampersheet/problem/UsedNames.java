package ampersheet.problem;

import ampersheet.formula.Condition;
import ampersheet.formula.Evaluation;
import ampersheet.formula.Expression;
import ampersheet.formula.Step;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.ChoiceAsk;
import ampersheet.template.ProblemTemplate.ChoiceOption;
import ampersheet.template.ProblemTemplate.Mistake;
import ampersheet.template.ProblemTemplate.Proof;
import ampersheet.template.ProblemTemplate.QuantityGiven;
import ampersheet.template.ProblemTemplate.Way;
import java.util.LinkedHashSet;
import java.util.Set;

/** The names that formulas and models use. */
final class UsedNames {
    private final Set<String> names = new LinkedHashSet<>();

    private UsedNames() {}

    static Set<String> of(ProblemTemplate template) {
        UsedNames used = new UsedNames();
        template.requirements().forEach(used::condition);
        for (Step step : template.working().steps()) {
            for (Step.Case line : step.cases()) {
                line.when().ifPresent(used::condition);
                used.expression(line.is());
            }
        }
        template.givens().forEach(given -> {
            if (given instanceof QuantityGiven quantity) {
                quantity.tolerance().ifPresent(tolerance -> used.expression(tolerance.amount()));
            }
        });
        template.asks().forEach(ask -> {
            if (ask instanceof ChoiceAsk choice) {
                choice.options().stream().map(ChoiceOption::when).forEach(used::condition);
            }
        });
        template.designs().forEach(design -> design.criteria().forEach(criterion -> used.condition(criterion.where())));
        for (Mistake mistake : template.mistakes()) {
            mistake.is().ifPresent(used::expression);
            mistake.instead().values().forEach(used::expression);
            mistake.when().ifPresent(used::condition);
        }
        template.models().forEach(plan -> {
            used.names.addAll(plan.names());
            plan.marks().forEach(mark -> {
                used.expression(mark.x());
                used.expression(mark.y());
            });
        });
        template.proofs().forEach(used::proof);
        template.premises().limits().forEach(limited -> used.expression(limited.of()));
        return used.names;
    }

    /** What the models and the proofs take: all that the second route knows of. */
    static Set<String> bySecondRoute(ProblemTemplate template) {
        UsedNames used = new UsedNames();
        template.models().forEach(plan -> used.names.addAll(plan.names()));
        template.proofs().forEach(used::proof);
        return used.names;
    }

    private void proof(Proof proof) {
        expression(proof.measure());
        proof.with().values().forEach(this::expression);
        if (proof.way() instanceof Way.Root root) {
            expression(root.target());
        } else if (proof.way() instanceof Way.Extreme extreme) {
            extreme.tolerances().forEach(tolerance -> expression(tolerance.amount()));
        } else if (proof.way() instanceof Way.Smallest smallest) {
            expression(smallest.bound());
        } else if (proof.way() instanceof Way.Largest largest) {
            expression(largest.bound());
        }
    }

    private void expression(Expression expression) {
        names.addAll(Evaluation.names(expression));
    }

    private void condition(Condition condition) {
        names.addAll(Evaluation.names(condition));
    }
}
