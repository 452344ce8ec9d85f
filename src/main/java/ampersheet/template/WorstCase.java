package ampersheet.template;

import ampersheet.diagnostic.Place;
import ampersheet.formula.Condition;
import ampersheet.formula.Evaluation;
import ampersheet.formula.Expression;
import ampersheet.formula.NoValue;
import ampersheet.formula.Step;
import ampersheet.formula.Symbol;
import ampersheet.formula.Values;
import ampersheet.formula.Working;
import ampersheet.language.Language;
import ampersheet.quantity.Quantity;
import ampersheet.source.Faults;
import ampersheet.source.Yaml;
import ampersheet.template.ProblemTemplate.Constant;
import ampersheet.template.ProblemTemplate.Given;
import ampersheet.template.ProblemTemplate.QuantityGiven;
import ampersheet.template.ProblemTemplate.StepLine;
import ampersheet.template.ProblemTemplate.Tolerance;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Works out a worst case by its corner: for each quantity with a tolerance, whether the step rises or falls with it;
 * then the step's own formula with every such quantity at the end that counts. The ends become steps of their own, so
 * that a learner reads which corner it is, and why.
 */
final class WorstCase {
    /** Draws on which the direction must be the same. */
    private static final int SAMPLES = 200;
    /** Relative; less is rounding. */
    private static final double MOVES = 1e-12;
    /** Names, numbers and operators of a worst case; steps put into steps can double at each. */
    private static final int LONGEST = 500;

    private static final int NOWHERE = 0;

    private final Names names;
    private final Faults faults;
    private final List<QuantityGiven> tolerated = new ArrayList<>();
    private final Collection<String> noted;
    private final List<Values> samples;
    /** Steps at the end of a tolerance, by id. */
    private final Set<String> ends = new LinkedHashSet<>();

    private final Language language;
    /** Faults told here. */
    private int own;

    /**
     * @param noted givens that have a tolerance by their author's words, read or not
     * @param requirements over givens and constants
     */
    WorstCase(
            Names names,
            List<Given> givens,
            Collection<String> noted,
            List<Constant> constants,
            List<Condition> requirements,
            Language language,
            Faults faults) {
        this.language = language;
        this.names = names;
        this.noted = noted;
        this.faults = faults;
        for (Given given : givens) {
            if (given instanceof QuantityGiven quantity && quantity.tolerance().isPresent()) {
                tolerated.add(quantity);
            }
        }
        // Of numbers that could not be read there are no samples.
        this.samples = tolerated.isEmpty() || othersAreAtFault()
                ? List.of()
                : new Samples(givens, constants, requirements).find(SAMPLES).found();
    }

    /**
     * The formula of the worst case of a step.
     *
     * @param of the step whose largest or smallest value is worked
     * @param by the step that works it
     * @param principle told of the ends
     * @param before steps read so far; new ends are added
     */
    Optional<Expression> formula(
            boolean largest, Yaml.Scalar of, Yaml.Scalar by, String principle, List<StepsSection.Read> before) {
        Optional<StepsSection.Read> step = read(before, of.text());
        if (othersAreAtFault()) {
            // The numbers are at fault, so that no corner can be found; what is worked with the ends is told no second
            // fault.
            noted.forEach(given -> declareEnds(given, by));
            if (names.get(of.text()).filter(Names.Named::isStep).isPresent()) {
                return Optional.empty();
            }
        }
        if (step.isEmpty()) {
            error(
                    of.place(),
                    "there is no step " + of.text() + " before this one",
                    "an earlier step",
                    "Name the step whose worst case is worked, and put it before this one.");
            return Optional.empty();
        }
        Map<String, Integer> directions = directions(of, before);
        if (directions.isEmpty()) {
            if (faults.isQuietAt(of.place())) {
                error(
                        of.place(),
                        of.text() + " does not move with anything that has a tolerance",
                        "a step that follows from a given with tolerance:",
                        "Give the quantities it follows from a tolerance.");
            }
            return Optional.empty();
        }
        Map<String, Expression> put = new LinkedHashMap<>();
        for (QuantityGiven given : tolerated) {
            Integer direction = directions.get(given.name());
            if (direction != null) {
                end(given, direction > 0, largest, step.get().line(), by, principle, before)
                        .ifPresent(id -> put.put(given.name(), new Expression.Name(id, NOWHERE)));
            }
        }
        return put.size() < directions.size() ? Optional.empty() : new Inlining(put, of, before).whole();
    }

    private void error(Place place, String problem, String expected, String nextAction) {
        int before = faults.errors();
        faults.error(place, problem, expected, nextAction);
        own += faults.errors() - before;
    }

    private boolean othersAreAtFault() {
        return faults.errors() > own;
    }

    private void declareEnds(String given, Yaml.Scalar by) {
        for (String id : List.of(given + "max", given + "min")) {
            if (ends.add(id) && names.get(id).isEmpty()) {
                names.declareFor(by, id, names.get(given).flatMap(Names.Named::dimension));
                names.use(id);
            }
        }
    }

    /** By given: 1 where the step rises with it, -1 where it falls; none where it does not move. */
    private Map<String, Integer> directions(Yaml.Scalar of, List<StepsSection.Read> before) {
        Working working =
                new Working(before.stream().map(StepsSection.Read::step).toList());
        Map<String, Integer> directions = new LinkedHashMap<>();
        for (QuantityGiven given : tolerated) {
            Tolerance tolerance = given.tolerance().orElseThrow();
            boolean rises = false;
            boolean falls = false;
            for (Values sample : samples) {
                double low = worked(working, sample, given.name(), tolerance.low(), of.text());
                double high = worked(working, sample, given.name(), tolerance.high(), of.text());
                double least = MOVES * (Math.abs(low) + Math.abs(high));
                rises |= high - low > least;
                falls |= low - high > least;
            }
            if (rises && falls) {
                error(
                        of.place(),
                        "whether " + of.text() + " rises or falls with " + given.name()
                                + " depends on the numbers drawn",
                        "ranges in which the corner is always the same",
                        "Narrow the ranges of the givens, or work the corners in steps with cases.");
                return Map.of();
            }
            if (rises || falls) {
                directions.put(given.name(), rises ? 1 : -1);
            }
        }
        return directions;
    }

    private static double worked(Working working, Values sample, String given, Expression end, String step) {
        try {
            Quantity value = Evaluation.evaluate(end, sample);
            return working.work(sample.with(given, value)).quantity(step).value();
        } catch (NoValue noValue) {
            // Such a draw is refused; it says nothing about the direction.
            return Double.NaN;
        }
    }

    private Optional<String> end(
            QuantityGiven given,
            boolean rises,
            boolean largest,
            StepLine of,
            Yaml.Scalar by,
            String principle,
            List<StepsSection.Read> before) {
        boolean high = largest == rises;
        String id = given.name() + (high ? "max" : "min");
        if (ends.contains(id)) {
            return Optional.of(id);
        }
        if (!names.declareFor(by, id, Optional.of(given.unit().dimension()))) {
            return Optional.empty();
        }
        names.use(id);
        names.use(given.name());
        ends.add(id);
        Symbol symbol = new Symbol(
                given.symbol().letters(),
                (given.symbol().subscript().isEmpty() ? "" : given.symbol().subscript() + ",")
                        + (high ? "max" : "min"));
        names.declareSymbol(id, symbol, by.place());
        Tolerance tolerance = given.tolerance().orElseThrow();
        before.add(new StepsSection.Read(
                Step.of(id, high ? tolerance.high() : tolerance.low()),
                new StepLine(
                        id,
                        language.say(high ? "problem.worst.highest" : "problem.worst.lowest", "what", given.meaning()),
                        symbol,
                        given.unit(),
                        principle,
                        List.of(language.say(
                                rises
                                        ? largest ? "problem.worst.rises.largest" : "problem.worst.rises.smallest"
                                        : largest ? "problem.worst.falls.largest" : "problem.worst.falls.smallest",
                                "what",
                                of.meaning())),
                        BlankStep.within(given.unit()),
                        Optional.of("a given at the end of its tolerance"))));
        return Optional.of(id);
    }

    /** Puts the steps that move in as formulas, down to the ends. */
    private final class Inlining {
        private final Map<String, Expression> put;
        private final Yaml.Scalar of;
        private final List<StepsSection.Read> before;
        private final Set<String> moving;
        private int written;

        Inlining(Map<String, Expression> put, Yaml.Scalar of, List<StepsSection.Read> before) {
            this.put = put;
            this.of = of;
            this.before = before;
            this.moving =
                    new Working(before.stream().map(StepsSection.Read::step).toList()).following(put.keySet());
        }

        /** Empty after a fault. */
        Optional<Expression> whole() {
            Optional<Expression> whole = inlined(new Expression.Name(of.text(), NOWHERE));
            if (written > LONGEST) {
                error(
                        of.place(),
                        "with all the steps before it put in, the formula of " + of.text() + " has more than " + LONGEST
                                + " terms",
                        "a worst case that fits on a line",
                        "Work the corners in steps of your own.");
                return Optional.empty();
            }
            return whole;
        }

        private Optional<Expression> inlined(Expression expression) {
            if (++written > LONGEST) {
                return Optional.empty();
            }
            if (expression instanceof Expression.Name name) {
                if (put.containsKey(name.id())) {
                    return Optional.of(put.get(name.id()));
                }
                Optional<StepsSection.Read> step = read(before, name.id());
                if (step.isEmpty() || !moving.contains(name.id())) {
                    return Optional.of(expression);
                }
                if (step.get().step().cases().size() > 1) {
                    error(
                            of.place(),
                            of.text() + " follows from " + name.id() + ", a step with cases",
                            "steps with one formula on the way",
                            "Work the corners in steps of your own.");
                    return Optional.empty();
                }
                return inlined(step.get().step().cases().get(0).is());
            }
            List<Expression> parts = new ArrayList<>();
            for (Expression part : expression.parts()) {
                Optional<Expression> inlined = inlined(part);
                if (inlined.isEmpty()) {
                    return Optional.empty();
                }
                parts.add(inlined.get());
            }
            return Optional.of(expression.withParts(parts));
        }
    }

    private static Optional<StepsSection.Read> read(List<StepsSection.Read> before, String id) {
        return before.stream().filter(read -> read.step().id().equals(id)).findFirst();
    }
}
