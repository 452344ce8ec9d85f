package ampersheet.problem;

import ampersheet.formula.Condition;
import ampersheet.formula.Condition.Relation;
import ampersheet.formula.ConditionFold;
import ampersheet.formula.Evaluation;
import ampersheet.formula.Expression;
import ampersheet.formula.FormulaFault;
import ampersheet.formula.Step;
import ampersheet.formula.Working;
import ampersheet.quantity.Elementary;
import ampersheet.quantity.Unit;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.Constant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A template's steps with one operator, function or number changed: what an author's slip would make of them.
 *
 * @param step whose line is changed
 * @param change what was written and what stands there now
 * @param working all steps, the changed one among them
 * @param unitsFit whether the reader of templates would let it pass
 */
record Mutant(String step, String change, Working working, boolean unitsFit) {
    /** Numbers that are no whole counts are made so much larger. */
    private static final double LARGER = 1.1;

    private static final Unit ONE = Unit.parse("1");

    private static final Map<String, String> OPPOSITE = opposites();

    /** A part of a formula in another form. */
    private record Changed<T>(T now, String change) {}

    private static Map<String, String> opposites() {
        Map<String, String> opposite = new LinkedHashMap<>();
        opposite.put("min", "max");
        opposite.put("max", "min");
        opposite.put("floor", "ceiling");
        opposite.put("ceiling", "floor");
        opposite.put("round", "floor");
        opposite.put("next_up", "next_down");
        opposite.put("next_down", "next_up");
        opposite.put("nearest", "next_up");
        opposite.put("sin", "cos");
        opposite.put("cos", "sin");
        opposite.put("exp", "ln");
        opposite.put("ln", "log10");
        opposite.put("log10", "ln");
        opposite.put("parallel", "max");
        opposite.put("mod", "min");
        return opposite;
    }

    /** Every mutant of a template. */
    static List<Mutant> of(ProblemTemplate template) {
        List<Mutant> mutants = new ArrayList<>();
        List<Step> steps = template.working().steps();
        for (int at = 0; at < steps.size(); at++) {
            Step step = steps.get(at);
            for (Changed<Step> changed : changes(step, template)) {
                List<Step> others = new ArrayList<>(steps);
                others.set(at, changed.now());
                mutants.add(new Mutant(
                        step.id(), changed.change(), new Working(others), unitsFit(changed.now(), template)));
            }
        }
        return List.copyOf(mutants);
    }

    private static boolean unitsFit(Step step, ProblemTemplate template) {
        try {
            for (Step.Case line : step.cases()) {
                line.when().ifPresent(when -> Evaluation.check(when, template.scope()));
                if (!Evaluation.check(line.is(), template.scope())
                        .equals(template.line(step.id()).unit().dimension())) {
                    return false;
                }
            }
            return true;
        } catch (FormulaFault wrongUnits) {
            return false;
        }
    }

    private static List<Changed<Step>> changes(Step step, ProblemTemplate template) {
        List<Changed<Step>> changes = new ArrayList<>();
        for (int i = 0; i < step.cases().size(); i++) {
            Step.Case line = step.cases().get(i);
            changes.add(with(step, i, new Step.Case(line.when(), more(line.is())), "the whole line times 1.1"));
            for (Changed<Expression> formula : changes(line.is(), template)) {
                changes.add(with(step, i, new Step.Case(line.when(), formula.now()), formula.change()));
            }
            if (line.when().isPresent()) {
                for (Changed<Condition> when : changes(line.when().get())) {
                    changes.add(with(step, i, new Step.Case(Optional.of(when.now()), line.is()), when.change()));
                }
            }
        }
        return changes;
    }

    private static Changed<Step> with(Step step, int at, Step.Case line, String change) {
        List<Step.Case> lines = new ArrayList<>(step.cases());
        lines.set(at, line);
        return new Changed<>(new Step(step.id(), lines), change);
    }

    /** The one change that every line has, whatever it computes. */
    private static Expression more(Expression line) {
        return new Expression.Product(
                new Expression.Constant(LARGER, ONE, "1.1", line.position()), line, line.position());
    }

    private static List<Changed<Expression>> changes(Expression formula, ProblemTemplate template) {
        List<Changed<Expression>> changes = new ArrayList<>(here(formula, template));
        for (int i = 0; i < formula.parts().size(); i++) {
            for (Changed<Expression> part : changes(formula.parts().get(i), template)) {
                List<Expression> parts = new ArrayList<>(formula.parts());
                parts.set(i, part.now());
                changes.add(new Changed<>(formula.withParts(parts), part.change()));
            }
        }
        return changes;
    }

    private static List<Changed<Expression>> here(Expression formula, ProblemTemplate template) {
        int at = formula.position();
        if (formula instanceof Expression.Sum sum) {
            return List.of(new Changed<>(new Expression.Difference(sum.left(), sum.right(), at), "+ to -"));
        } else if (formula instanceof Expression.Difference difference) {
            return List.of(new Changed<>(new Expression.Sum(difference.left(), difference.right(), at), "- to +"));
        } else if (formula instanceof Expression.Product product) {
            return List.of(new Changed<>(new Expression.Quotient(product.left(), product.right(), at), "* to /"));
        } else if (formula instanceof Expression.Quotient quotient) {
            return List.of(
                    new Changed<>(new Expression.Product(quotient.numerator(), quotient.denominator(), at), "/ to *"));
        } else if (formula instanceof Expression.Negative negative) {
            return List.of(new Changed<>(negative.of(), "- left out"));
        } else if (formula instanceof Expression.Constant constant) {
            return List.of(changed(constant));
        } else if (formula instanceof Expression.Name name && isConstant(name, template)) {
            return List.of(new Changed<>(more(name), name.id() + " to 1.1 * " + name.id()));
        } else if (formula instanceof Expression.Call call) {
            return changes(call);
        }
        return List.of();
    }

    private static List<Changed<Expression>> changes(Expression.Call call) {
        String other = OPPOSITE.get(call.function());
        if (other != null) {
            return List.of(new Changed<>(
                    new Expression.Call(other, call.arguments(), call.position()), call.function() + " to " + other));
        }
        boolean passesThrough =
                call.function().equals("sqrt") || call.function().equals("abs");
        return passesThrough
                ? List.of(new Changed<>(call.arguments().get(0), call.function() + " left out"))
                : List.of();
    }

    private static Changed<Expression> changed(Expression.Constant constant) {
        double number = constant.number();
        double other = Elementary.isWhole(number) ? number + 1 : number * LARGER;
        Expression now = new Expression.Constant(other, constant.unit(), Double.toString(other), constant.position());
        return new Changed<>(now, constant.asWritten() + " to " + other);
    }

    private static boolean isConstant(Expression.Name name, ProblemTemplate template) {
        return template.constants().stream().map(Constant::name).anyMatch(name.id()::equals);
    }

    private static List<Changed<Condition>> changes(Condition condition) {
        return List.of(condition.fold(new Slip()));
    }

    /** The one change that is tried in each kind of condition. */
    private static final class Slip implements ConditionFold<Changed<Condition>> {
        @Override
        public Changed<Condition> comparison(Condition.Comparison comparison) {
            Relation other = opposite(comparison.relation());
            return new Changed<>(
                    new Condition.Comparison(comparison.left(), other, comparison.right(), comparison.position()),
                    comparison.relation().asWritten() + " to " + other.asWritten());
        }

        @Override
        public Changed<Condition> both(Condition.Both both) {
            return new Changed<>(new Condition.Either(both.left(), both.right(), both.position()), "and to or");
        }

        @Override
        public Changed<Condition> either(Condition.Either either) {
            return new Changed<>(new Condition.Both(either.left(), either.right(), either.position()), "or to and");
        }

        @Override
        public Changed<Condition> not(Condition.Not not) {
            return new Changed<>(not.of(), "not left out");
        }
    }

    private static Relation opposite(Relation relation) {
        return switch (relation) {
            case LESS -> Relation.AT_LEAST;
            case AT_MOST -> Relation.MORE;
            case MORE -> Relation.AT_MOST;
            case AT_LEAST -> Relation.LESS;
            case EQUAL -> Relation.UNEQUAL;
            case UNEQUAL -> Relation.EQUAL;
        };
    }
}
