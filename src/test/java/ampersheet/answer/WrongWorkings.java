package ampersheet.answer;

import ampersheet.formula.NoValue;
import ampersheet.formula.Step;
import ampersheet.formula.Values;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Quantity;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What a problem's steps give with one value wrong, for {@link LadderProbe}: by trying, not by the judge's own search.
 */
record WrongWorkings(ProblemKey problem, AnswerKey key) {

    List<Double> carried() {
        List<Double> values = new ArrayList<>();
        for (AnswerKey earlier : problem.answers()) {
            for (KnownMistake mistake : earlier.mistakes()) {
                if (!earlier.step().equals(key.step())) {
                    values.add(with(
                            problem.givens(),
                            Map.of(
                                    earlier.step(),
                                    new Quantity(mistake.value(), earlier.unit().dimension()))));
                }
            }
        }
        return changed(values);
    }

    List<Double> misplaced() {
        List<Double> values = new ArrayList<>();
        if (!(key.acceptance() instanceof Acceptance.Within)) {
            return values;
        }
        Map<String, Quantity> givens = problem.givens().quantities();
        givens.forEach((name, given) -> instead(given, true)
                .forEach(other -> values.add(with(problem.givens().with(name, other), Map.of()))));
        Map<String, Quantity> worked =
                new LinkedHashMap<>(problem.working().work(problem.givens()).quantities());
        worked.keySet().removeAll(givens.keySet());
        for (Step step : problem.working().steps()) {
            if (step.id().equals(key.step())) {
                worked.keySet().retainAll(step.uses());
            }
        }
        worked.forEach((name, value) ->
                instead(value, false).forEach(other -> values.add(with(problem.givens(), Map.of(name, other)))));
        return changed(values);
    }

    private List<Quantity> instead(Quantity value, boolean given) {
        List<Quantity> instead = new ArrayList<>();
        boolean temperature = isTemperature(value);
        if (value.dimension().equals(Dimension.ONE)) {
            if (given) {
                instead.add(new Quantity(1, Dimension.ONE));
                if (value.value() > 0 && value.value() < 1) {
                    instead.add(new Quantity(1 - value.value(), Dimension.ONE));
                }
            }
            return instead;
        }
        if (!temperature) {
            instead.add(new Quantity(0, value.dimension()));
        }
        for (Quantity other : problem.givens().quantities().values()) {
            if (other.dimension().equals(value.dimension()) && isTemperature(other) == temperature) {
                instead.add(other);
            }
        }
        return instead;
    }

    private static boolean isTemperature(Quantity quantity) {
        return quantity.dimension().equals(Dimension.TEMPERATURE) && quantity.value() > 173.15;
    }

    private double with(Values givens, Map<String, Quantity> instead) {
        if (problem.working().steps().stream().noneMatch(step -> step.id().equals(key.step()))) {
            return key.expected();
        }
        try {
            return problem.working().work(givens, instead).quantity(key.step()).value();
        } catch (NoValue nothingFollows) {
            return Double.NaN;
        }
    }

    /** Without what leaves the key as it is, or is absurd. */
    private List<Double> changed(List<Double> values) {
        double wanted = Math.abs(key.expected());
        values.removeIf(value -> Math.abs(value - key.expected()) <= 1e-12 * wanted
                || !(Math.abs(value) <= 1e6 * wanted)
                || Math.abs(value) < 1e-6 * wanted);
        return values;
    }
}
