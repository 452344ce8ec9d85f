package ampersheet.answer;

import ampersheet.formula.NoValue;
import ampersheet.formula.Step;
import ampersheet.formula.Values;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Quantity;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What the steps give when they are worked rightly with one value wrong: what a modelled mistake of an earlier question
 * gave, or a given that was left out or stands in the place of another.
 *
 * <p>What is told is true whatever was done: that this value comes out so. Counts and preferred values lie so close
 * that nearly every one would come out somehow; for these only carried mistakes are looked for.
 */
final class WorkedWrongly {
    /** Nobody writes down what is so much too large or too small. */
    private static final double ABSURD = 1e6;
    /** In kelvin; what is more is a temperature and no difference. */
    private static final double LOWEST_TEMPERATURE = 173.15;

    /** A value reached, and what is said of it. */
    record Reached(double value, String says) {}

    private final ProblemKey problem;
    private final AnswerKey key;
    private final Map<String, Quantity> chosen;
    private final Values worked;
    private final List<Reached> reached = new ArrayList<>();

    private WorkedWrongly(ProblemKey problem, AnswerKey key, Map<String, Quantity> chosen) {
        this.problem = problem;
        this.key = key;
        this.chosen = chosen;
        this.worked = problem.working().work(problem.givens(), chosen);
    }

    /**
     * @param chosen values of accepted designs, from which the key's own follows
     * @param settled steps that were answered rightly
     */
    static List<Reached> carried(ProblemKey problem, AnswerKey key, Map<String, Quantity> chosen, Set<String> settled) {
        WorkedWrongly wrongly = new WorkedWrongly(problem, key, chosen);
        Set<String> designed = problem.working().following(chosen.keySet());
        for (AnswerKey earlier : problem.answers()) {
            if (!designed.contains(earlier.step())
                    && !settled.contains(earlier.step())
                    && problem.working().following(Set.of(earlier.step())).contains(key.step())) {
                for (KnownMistake mistake : earlier.mistakes()) {
                    wrongly.step(
                            earlier.step(),
                            new Quantity(mistake.value(), earlier.unit().dimension()),
                            Sentences.carried(earlier.question(), mistake.explanation()));
                }
            }
        }
        return List.copyOf(wrongly.reached);
    }

    /** @param chosen values of accepted designs, from which the key's own follows */
    static List<Reached> misplaced(ProblemKey problem, AnswerKey key, Map<String, Quantity> chosen) {
        WorkedWrongly wrongly = new WorkedWrongly(problem, key, chosen);
        if (key.acceptance() instanceof Acceptance.Within) {
            wrongly.givens();
            wrongly.lastInputs();
        }
        return List.copyOf(wrongly.reached);
    }

    private void givens() {
        for (String name : needed()) {
            if (!problem.givens().has(name)) {
                continue;
            }
            Quantity given = problem.givens().quantity(name);
            if (given.dimension().equals(Dimension.ONE)) {
                given(name, new Quantity(1, Dimension.ONE), Sentences.leftOut(problem.the(name)));
                if (given.value() > 0 && given.value() < 1) {
                    given(
                            name,
                            new Quantity(1 - given.value(), Dimension.ONE),
                            Sentences.restOfShare(problem.the(name)));
                }
                continue;
            }
            if (!isTemperature(given)) {
                given(name, new Quantity(0, given.dimension()), Sentences.leftOut(problem.the(name)));
            }
            problem.givens().quantities().forEach((other, quantity) -> {
                if (isLike(given, quantity)) {
                    given(name, quantity, Sentences.inPlaceOf(problem.the(other), problem.the(name)));
                }
            });
        }
    }

    /** The steps, also those of designs, that stand in the formula of what is asked. */
    private void lastInputs() {
        for (Step step : problem.working().steps()) {
            if (!step.id().equals(key.step())) {
                continue;
            }
            for (String name : step.uses()) {
                if (problem.givens().has(name) || !worked.has(name)) {
                    continue;
                }
                Quantity input = worked.quantity(name);
                if (!input.dimension().equals(Dimension.ONE) && !isTemperature(input)) {
                    step(name, new Quantity(0, input.dimension()), Sentences.leftOut(problem.the(name)));
                }
                problem.givens().quantities().forEach((other, quantity) -> {
                    if (!input.dimension().equals(Dimension.ONE) && isLike(input, quantity)) {
                        step(name, quantity, Sentences.inPlaceOf(problem.the(other), problem.the(name)));
                    }
                });
            }
        }
    }

    /** What the step asked for follows from. */
    private Set<String> needed() {
        Set<String> needed = new LinkedHashSet<>(Set.of(key.step()));
        List<Step> steps = problem.working().steps();
        for (int i = steps.size() - 1; i >= 0; i--) {
            if (needed.contains(steps.get(i).id())
                    && !chosen.containsKey(steps.get(i).id())) {
                needed.addAll(steps.get(i).uses());
            }
        }
        return needed;
    }

    private static boolean isLike(Quantity one, Quantity other) {
        return one.dimension().equals(other.dimension())
                && one.value() != other.value()
                && isTemperature(one) == isTemperature(other);
    }

    private static boolean isTemperature(Quantity quantity) {
        return quantity.dimension().equals(Dimension.TEMPERATURE) && quantity.value() > LOWEST_TEMPERATURE;
    }

    private void given(String name, Quantity instead, String says) {
        reach(problem.givens().with(name, instead), chosen, says);
    }

    private void step(String name, Quantity instead, String says) {
        Map<String, Quantity> values = new LinkedHashMap<>(chosen);
        values.put(name, instead);
        reach(problem.givens(), values, says);
    }

    private void reach(Values givens, Map<String, Quantity> instead, String says) {
        try {
            double value =
                    problem.working().work(givens, instead).quantity(key.step()).value();
            double size = Math.abs(value);
            double wanted = Math.abs(key.expected());
            if (size <= ABSURD * wanted && size * ABSURD >= wanted) {
                reached.add(new Reached(value, says));
            }
        } catch (NoValue noValue) {
            // Nobody gets anywhere with such a value.
        }
    }
}
