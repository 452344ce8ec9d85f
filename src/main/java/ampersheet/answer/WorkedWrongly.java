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

    private final ProblemKey problem;
    private final Sentences sentences;
    private final AnswerKey key;
    private final Map<String, Quantity> chosen;
    private final List<UsualSlip> slips = new ArrayList<>();

    /** @param chosen values of accepted designs, from which the key's own follows */
    WorkedWrongly(ProblemKey problem, AnswerKey key, Map<String, Quantity> chosen) {
        this.problem = problem;
        this.sentences = problem.sentences();
        this.key = key;
        this.chosen = chosen;
    }

    /** @param settled steps that were answered rightly */
    List<UsualSlip> carried(Set<String> settled) {
        slips.clear();
        Set<String> designed = problem.working().following(chosen.keySet());
        for (AnswerKey earlier : problem.answers()) {
            String step = earlier.step();
            if (!designed.contains(step)
                    && !settled.contains(step)
                    && problem.working().following(Set.of(step)).contains(key.step())) {
                for (KnownMistake mistake : earlier.mistakes()) {
                    instead(
                            Rung.CARRIED_MISTAKE,
                            step,
                            mistake.value(),
                            earlier.unit().dimension(),
                            sentences.carried(earlier.question(), mistake.explanation()));
                }
            }
        }
        return slips;
    }

    /** None for counts and preferred values. */
    List<UsualSlip> misplaced() {
        slips.clear();
        if (!(key.acceptance() instanceof Acceptance.Within)) {
            return slips;
        }
        Values worked = problem.working().work(problem.givens(), chosen);
        Set<String> needed = new LinkedHashSet<>(Set.of(key.step()));
        Set<String> last = Set.of();
        List<Step> steps = problem.working().steps();
        for (int i = steps.size() - 1; i >= 0; i--) {
            Step step = steps.get(i);
            if (needed.contains(step.id()) && !chosen.containsKey(step.id())) {
                needed.addAll(step.uses());
                last = step.id().equals(key.step()) ? step.uses() : last;
            }
        }
        for (String name : needed) {
            // Of the steps only what stands in the formula of what is asked.
            boolean given = problem.givens().has(name);
            if (worked.has(name) && (given || last.contains(name))) {
                misplaced(name, worked.quantity(name), given);
            }
        }
        return slips;
    }

    private void misplaced(String name, Quantity value, boolean given) {
        Dimension dimension = value.dimension();
        double v = value.value();
        if (dimension.equals(Dimension.ONE)) {
            if (given) {
                misplaced(name, 1, dimension, sentences.leftOut(problem.the(name)));
                if (v > 0 && v < 1) {
                    misplaced(name, 1 - v, dimension, sentences.restOfShare(problem.the(name)));
                }
            }
            return;
        }
        if (!isTemperature(value)) {
            misplaced(name, 0, dimension, sentences.leftOut(problem.the(name)));
        }
        for (Map.Entry<String, Quantity> other : problem.givens().quantities().entrySet()) {
            Quantity like = other.getValue();
            if (like.dimension().equals(dimension)
                    && like.value() != v
                    && isTemperature(like) == isTemperature(value)) {
                misplaced(
                        name,
                        like.value(),
                        dimension,
                        sentences.inPlaceOf(problem.the(other.getKey()), problem.the(name)));
            }
        }
    }

    private void misplaced(String name, double value, Dimension dimension, String says) {
        instead(Rung.MISPLACED_GIVEN, name, value, dimension, says);
    }

    private static boolean isTemperature(Quantity quantity) {
        return quantity.dimension().equals(Dimension.TEMPERATURE) && quantity.value() > LOWEST_TEMPERATURE;
    }

    /** What the steps give with another value of a given, or of a step. */
    private void instead(Rung rung, String name, double wrong, Dimension dimension, String says) {
        Quantity instead = new Quantity(wrong, dimension);
        Map<String, Quantity> values = new LinkedHashMap<>(chosen);
        values.put(name, instead);
        double value;
        try {
            value = problem.working()
                    .work(problem.givens().with(name, instead), values)
                    .quantity(key.step())
                    .value();
        } catch (NoValue noValue) {
            return; // nobody gets anywhere with such a value
        }
        double size = Math.abs(value);
        double wanted = Math.abs(key.expected());
        if (size <= ABSURD * wanted && size * ABSURD >= wanted) {
            slips.add(new UsualSlip(rung, value, 0, says));
        }
    }
}
