package ampersheet.problem;

import ampersheet.formula.Condition;
import ampersheet.formula.Evaluation;
import ampersheet.formula.Expression;
import ampersheet.formula.Step;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.AssemblyPlan;
import ampersheet.template.ProblemTemplate.ChainPlan;
import ampersheet.template.ProblemTemplate.ChoiceAsk;
import ampersheet.template.ProblemTemplate.ChoiceOption;
import ampersheet.template.ProblemTemplate.CircuitPlan;
import ampersheet.template.ProblemTemplate.HeatPlan;
import ampersheet.template.ProblemTemplate.Layout;
import ampersheet.template.ProblemTemplate.Mistake;
import ampersheet.template.ProblemTemplate.PlannedPart;
import ampersheet.template.ProblemTemplate.Proof;
import ampersheet.template.ProblemTemplate.QuantityGiven;
import ampersheet.template.ProblemTemplate.Way;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
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
    template.circuit().ifPresent(plan -> used.names.addAll(in(plan)));
    template.heat().ifPresent(plan -> used.names.addAll(in(plan)));
    template.chain().ifPresent(plan -> {
      used.names.addAll(in(plan));
      plan.marks().forEach(mark -> {
        used.expression(mark.x());
        used.expression(mark.y());
      });
    });
    template.assembly().ifPresent(plan -> {
      used.names.addAll(in(plan));
      if (plan instanceof AssemblyPlan.Branches branches) {
        branches.marks().forEach(mark -> {
          used.expression(mark.x());
          used.expression(mark.y());
        });
      }
    });
    template.proofs().forEach(used::proof);
    template.premises().limits().forEach(limited -> used.expression(limited.of()));
    return used.names;
  }

  /** What the models and the proofs take: all that the second route knows of. */
  static Set<String> bySecondRoute(ProblemTemplate template) {
    UsedNames used = new UsedNames();
    template.circuit().ifPresent(plan -> used.names.addAll(in(plan)));
    template.heat().ifPresent(plan -> used.names.addAll(in(plan)));
    template.chain().ifPresent(plan -> used.names.addAll(in(plan)));
    template.assembly().ifPresent(plan -> used.names.addAll(in(plan)));
    template.proofs().forEach(used::proof);
    return used.names;
  }

  /** With the words that stand for word givens. */
  static Set<String> in(CircuitPlan plan) {
    UsedNames used = new UsedNames();
    for (PlannedPart part : plan.parts()) {
      part.values().values().forEach(used::expression);
      used.names.addAll(part.words().values());
    }
    return used.names;
  }

  static Set<String> in(HeatPlan plan) {
    UsedNames used = new UsedNames();
    plan.ambients().forEach(ambient -> used.expression(ambient.at()));
    plan.nodes().forEach(node -> {
      used.expression(node.capacity());
      used.expression(node.initial());
    });
    plan.resistances().forEach(resistance -> used.expression(resistance.kelvinPerWatt()));
    plan.losses().forEach(loss -> used.expression(loss.watts()));
    return used.names;
  }

  /** With the words that stand for word givens. */
  static Set<String> in(ChainPlan plan) {
    UsedNames used = new UsedNames();
    used.expression(plan.tileColumns());
    used.expression(plan.tileRows());
    used.names.addAll(List.of(plan.order(), plan.start(), plan.along(), plan.input(), plan.output()));
    if (plan.layout() instanceof Layout.Rows rows) {
      used.expression(rows.columns());
      used.expression(rows.rows());
    } else if (plan.layout() instanceof Layout.Cabled cabled) {
      used.expression(cabled.columns());
      used.expression(cabled.rows());
      used.expression(cabled.turnedColumn());
      used.expression(cabled.turnedRow());
      used.expression(cabled.quarterTurns());
    } else if (plan.layout() instanceof Layout.Places places) {
      places.places().forEach(place -> {
        used.expression(place.column());
        used.expression(place.row());
        used.expression(place.quarterTurns());
      });
    }
    used.expression(plan.bitsPerPixel());
    used.expression(plan.bitTime());
    used.expression(plan.resetTime());
    used.expression(plan.chains());
    used.expression(plan.frames());
    return used.names;
  }

  static Set<String> in(AssemblyPlan plan) {
    UsedNames used = new UsedNames();
    plan.values().forEach(used::expression);
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

  private void expression(Optional<Expression> expression) {
    expression.ifPresent(this::expression);
  }

  private void expression(Expression expression) {
    names.addAll(Evaluation.names(expression));
  }

  private void condition(Condition condition) {
    names.addAll(Evaluation.names(condition));
  }
}
