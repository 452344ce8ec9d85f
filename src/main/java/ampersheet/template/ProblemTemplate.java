package ampersheet.template;

import ampersheet.answer.Acceptance;
import ampersheet.formula.Condition;
import ampersheet.formula.Expression;
import ampersheet.formula.Scope;
import ampersheet.formula.Symbol;
import ampersheet.formula.Working;
import ampersheet.language.Language;
import ampersheet.model.ModelPlan;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Unit;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * A checked template: every name resolves, every formula has its dimension, every asked value has a proof.
 *
 * @param name {@code family/name}, as in the folder
 * @param skill what it practises; templates of one skill can stand in for each other in a pool
 * @param level 0 first evening, 1 first lesson, to 4 design task
 * @param givens drawn, in order
 * @param constants not drawn but printed, such as a property of copper
 * @param lines what is told of each step, in the order of {@code working}
 * @param models at most one of each kind: circuit, heat path, chain, other tiles
 * @param curve of the worked solution; it decides nothing
 * @param designs the design tasks among the asks, at most one
 * @param cautions ids of caution boxes that always show
 * @param premises what the problem rests on without asking for it
 * @param fingerprint SHA-256 in hex over the template's files: its version
 */
public record ProblemTemplate(
        String name,
        String title,
        String family,
        String skill,
        int level,
        List<String> teaches,
        List<Given> givens,
        List<Constant> constants,
        List<Condition> requirements,
        Working working,
        List<StepLine> lines,
        List<Ask> asks,
        List<Design> designs,
        List<Mistake> mistakes,
        List<ModelPlan> models,
        Optional<CurvePlan> curve,
        List<Proof> proofs,
        List<String> cautions,
        Premises premises,
        Words words,
        String fingerprint) {

    public ProblemTemplate {
        teaches = List.copyOf(teaches);
        givens = List.copyOf(givens);
        constants = List.copyOf(constants);
        requirements = List.copyOf(requirements);
        lines = List.copyOf(lines);
        asks = List.copyOf(asks);
        designs = List.copyOf(designs);
        mistakes = List.copyOf(mistakes);
        models = List.copyOf(models);
        proofs = List.copyOf(proofs);
        cautions = List.copyOf(cautions);
    }

    /** A given of the problem: a quantity drawn from values, or a word drawn from words. */
    public sealed interface Given {
        String name();

        String meaning();
    }

    /**
     * @param values in SI, ascending or in the author's order; every one that may be drawn
     * @param tolerance how far the real quantity may lie from the value drawn
     */
    public record QuantityGiven(
            String name, String meaning, Symbol symbol, Unit unit, List<Double> values, Optional<Tolerance> tolerance)
            implements Given {
        public QuantityGiven {
            values = List.copyOf(values);
        }

        /** Exactly what is drawn. */
        public QuantityGiven(String name, String meaning, Symbol symbol, Unit unit, List<Double> values) {
            this(name, meaning, symbol, unit, values, Optional.empty());
        }
    }

    /**
     * The quantity lies between {@code low} and {@code high}, formulas over givens and constants.
     *
     * @param amount a constant, or the name of the given or constant that holds it: a share of the value, or an amount
     *     in its unit
     */
    public record Tolerance(String of, Expression amount, Expression low, Expression high) {}

    /**
     * @param values as formulas and conditions name them
     * @param said what those are called that are called otherwise where they are printed, by value
     */
    public record WordGiven(String name, String meaning, List<String> values, Map<String, String> said)
            implements Given {
        public WordGiven {
            values = List.copyOf(values);
            said = inOrder(said);
        }

        /** What a value is called where it is printed. */
        public String said(String value) {
            return said.getOrDefault(value, value);
        }
    }

    /** @param si value in coherent SI units */
    public record Constant(String name, String meaning, Symbol symbol, Unit unit, double si) {}

    /**
     * What is told of a step.
     *
     * @param reasons one per case of the step: why this formula
     * @param principle the law or rule that gives the line, one of {@code teaches}
     * @param acceptance of an answer where a sheet leaves the step blank without asking for it
     * @param noMistake why no wrong method is modelled; empty where nobody said so
     */
    public record StepLine(
            String id,
            String meaning,
            Symbol symbol,
            Unit unit,
            String principle,
            List<String> reasons,
            Acceptance acceptance,
            Optional<String> noMistake) {
        public StepLine {
            reasons = List.copyOf(reasons);
        }

        /** Any value near enough is accepted. */
        public StepLine(String id, String meaning, Symbol symbol, Unit unit, String principle, List<String> reasons) {
            this(id, meaning, symbol, unit, principle, reasons, BlankStep.within(unit), Optional.empty());
        }
    }

    /** A question of the problem. */
    public sealed interface Ask {
        /** Step id, or the id of the choice. */
        String of();

        /** A full sentence in Markdown; made from the step's meaning where the author gives none. */
        String prompt();
    }

    /** @param figures significant figures asked for */
    public record QuantityAsk(String of, String prompt, Acceptance acceptance, int figures) implements Ask {}

    /** One blank of a design: the step's value is only one of those that are right. */
    public record DesignAsk(String of, String prompt, String design, Acceptance.Designed acceptance) implements Ask {}

    /**
     * A design task: whatever meets the criteria is right.
     *
     * @param steps that its blanks stand for
     */
    public record Design(String id, List<String> steps, List<Criterion> criteria) {
        public Design {
            steps = List.copyOf(steps);
            criteria = List.copyOf(criteria);
        }
    }

    /**
     * @param where over givens, constants and steps, worked with the values chosen
     * @param shown the step whose value is told to a learner whose choice fails
     */
    public record Criterion(String id, Condition where, String shown, String says) {}

    /** Exactly one option's condition holds. */
    public record ChoiceAsk(String of, String prompt, List<ChoiceOption> options) implements Ask {
        public ChoiceAsk {
            options = List.copyOf(options);
        }
    }

    /** @param otherwise said to a learner who chose this when it does not hold */
    public record ChoiceOption(String text, Condition when, String otherwise) {}

    /**
     * A modelled wrong method for a step, asked or not.
     *
     * @param is the wrong formula over givens and steps; or empty, and then
     * @param instead steps worked wrongly, from which the asked step follows by the right formulas
     * @param when the mistake exists only if this holds (a wrong branch); empty: always
     */
    public record Mistake(
            String id,
            String of,
            Optional<Expression> is,
            Map<String, Expression> instead,
            Optional<Condition> when,
            String says) {
        public Mistake {
            instead = inOrder(instead);
        }
    }

    /**
     * The second route to an asked or used step.
     *
     * @param of step id
     * @param varies name that the search of {@link Root}, {@link Smallest} and {@link Largest} varies in the model; the
     *     step itself unless said
     * @param with names that take other values in the model for this proof only
     * @param measure over measures of the models: {@code current(D1)}, {@code temperature(junction)}, {@code turn(x,
     *     y)}
     * @param way how the value follows from the measure
     * @param within relative gap allowed between the two routes
     * @param floor absolute gap allowed, SI
     * @param because why the routes may differ, where the gap is wider than arithmetic needs; printed by prove
     * @param shares the law on which both routes rest, so that the second only checks the method around it; empty: none
     */
    public record Proof(
            String of,
            String varies,
            Map<String, Expression> with,
            Expression measure,
            Way way,
            double within,
            double floor,
            String because,
            Optional<String> shares) {
        public Proof {
            with = inOrder(with);
        }
    }

    public sealed interface Way {
        /** The measure is the value. */
        record Direct() implements Way {}

        /**
         * The value is the root: the measure, as a function of the varied value in the model, equals {@code target}.
         */
        record Root(Expression target) implements Way {}

        /** The value is the smallest member of the series for which the condition on the measure holds. */
        record Smallest(Members members, Condition.Relation relation, Expression bound) implements Way {}

        /** The value is the largest member of the series for which the condition on the measure holds. */
        record Largest(Members members, Condition.Relation relation, Expression bound) implements Way {}

        /**
         * What the measure can become while quantities lie anywhere within their tolerances.
         *
         * @param largest whether the value is the largest it can become, or the smallest
         * @param tolerances of all quantities that vary
         */
        record Extreme(boolean largest, List<Tolerance> tolerances) implements Way {
            public Extreme {
                tolerances = List.copyOf(tolerances);
            }
        }
    }

    /** What Smallest and Largest walk through: a preferred series, or whole numbers up to a limit. */
    public sealed interface Members {
        record Series(ampersheet.quantity.PreferredSeries series) implements Members {}

        record WholeNumbers(int from, int to) implements Members {}
    }

    /**
     * The statement's words, checked when read.
     *
     * @param language of all other words of the template
     * @param statements one FreeMarker text by language tag, {@code en} always
     */
    public record Words(Language language, Map<String, String> statements) {
        public Words {
            statements = inOrder(statements);
        }
    }

    /** A copy that keeps the order of the template: {@link Map#copyOf} would have another order in every run. */
    private static <V> Map<String, V> inOrder(Map<String, V> map) {
        return Collections.unmodifiableMap(new LinkedHashMap<>(map));
    }

    /** Of its words. */
    public Language language() {
        return words.language();
    }

    /** What drawn words are called where they are printed. */
    public Map<String, String> said(Map<String, String> words) {
        Map<String, String> said = new LinkedHashMap<>(words);
        for (Given given : givens) {
            if (given instanceof WordGiven word) {
                said.computeIfPresent(given.name(), (name, value) -> word.said(value));
            }
        }
        return said;
    }

    /** Dimensions of all givens, constants and steps. */
    public Scope scope() {
        Map<String, Dimension> quantities = new LinkedHashMap<>();
        Map<String, Set<String>> choices = new LinkedHashMap<>();
        for (Given given : givens) {
            if (given instanceof QuantityGiven quantity) {
                quantities.put(given.name(), quantity.unit().dimension());
            } else if (given instanceof WordGiven word) {
                choices.put(given.name(), new TreeSet<>(word.values()));
            }
        }
        constants.forEach(
                constant -> quantities.put(constant.name(), constant.unit().dimension()));
        lines.forEach(line -> quantities.put(line.id(), line.unit().dimension()));
        return new Scope(quantities, choices, Scope.NO_MEASURES);
    }

    /** The same template, but its givens may be drawn from other values. */
    public ProblemTemplate withGivens(List<Given> other) {
        return new ProblemTemplate(
                name,
                title,
                family,
                skill,
                level,
                teaches,
                other,
                constants,
                requirements,
                working,
                lines,
                asks,
                designs,
                mistakes,
                models,
                curve,
                proofs,
                cautions,
                premises,
                words,
                fingerprint);
    }

    /**
     * The same template, but its steps are worked in another way; everything else stays, the proofs above all. Its
     * curve goes: a wrong working is to be caught by the second route, not by a point beside its line.
     */
    public ProblemTemplate withWorking(Working other) {
        return new ProblemTemplate(
                name,
                title,
                family,
                skill,
                level,
                teaches,
                givens,
                constants,
                requirements,
                other,
                lines,
                asks,
                designs,
                mistakes,
                models,
                Optional.empty(),
                proofs,
                cautions,
                premises,
                words,
                fingerprint);
    }

    /** The plan of the model of that kind, if it has one. */
    public <P extends ModelPlan> Optional<P> model(Class<P> kind) {
        return models.stream().filter(kind::isInstance).map(kind::cast).findFirst();
    }

    /** Whether the step stands for a blank of a design. */
    public boolean isDesigned(String step) {
        return designs.stream().anyMatch(design -> design.steps().contains(step));
    }

    /** Whether the step, no blank itself, has another value after another design. */
    public boolean followsDesign(String step) {
        return !isDesigned(step)
                && designs.stream()
                        .anyMatch(design -> working.following(design.steps()).contains(step));
    }

    public StepLine line(String step) {
        return lines.stream()
                .filter(line -> line.id().equals(step))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no step " + step));
    }

    /** Product of the numbers of values of all givens, before constraints; {@link Long#MAX_VALUE} if it is more. */
    public long spaceOfGivens() {
        return Samples.space(givens);
    }
}
