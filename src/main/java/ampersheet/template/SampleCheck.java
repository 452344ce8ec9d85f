package ampersheet.template;

import ampersheet.answer.Acceptance;
import ampersheet.diagnostic.Place;
import ampersheet.formula.Evaluation;
import ampersheet.formula.Step;
import ampersheet.formula.Values;
import ampersheet.formula.Working;
import ampersheet.quantity.Quantity;
import ampersheet.quantity.QuantityWriter;
import ampersheet.source.Faults;
import ampersheet.template.ProblemTemplate.Ask;
import ampersheet.template.ProblemTemplate.ChoiceAsk;
import ampersheet.template.ProblemTemplate.Given;
import ampersheet.template.ProblemTemplate.QuantityAsk;
import ampersheet.template.ProblemTemplate.QuantityGiven;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Works the steps with samples of the givens, and tells what no formula shows by itself. */
final class SampleCheck {
    private final List<Given> givens;
    private final List<StepsSection.Read> steps;
    private final Map<String, Place> stepPlaces;
    private final Faults faults;
    private final List<Values> worked = new ArrayList<>();

    SampleCheck(
            List<Given> givens,
            List<StepsSection.Read> steps,
            Map<String, Place> stepPlaces,
            List<Values> samples,
            Faults faults) {
        this.givens = givens;
        this.steps = steps;
        this.stepPlaces = stepPlaces;
        this.faults = faults;
        for (Values sample : samples) {
            work(sample).ifPresent(worked::add);
        }
    }

    /** Samples that could be worked to the end: givens and steps. */
    List<Values> worked() {
        return worked;
    }

    private Optional<Values> work(Values givens) {
        Values known = givens;
        for (StepsSection.Read read : steps) {
            Step step = read.step();
            Values now = known;
            Optional<Step.Case> applying = step.cases().stream()
                    .filter(each -> each.when().isEmpty()
                            || Evaluation.holds(each.when().get(), now))
                    .findFirst();
            Place place = stepPlaces.get(step.id());
            if (applying.isEmpty()) {
                once(
                        place,
                        "no case of the step " + step.id() + " applies with " + shown(givens),
                        "one case that applies, whatever is drawn",
                        "Add a case without when: at the end, or exclude these givens under require:.");
                return Optional.empty();
            }
            Quantity value = Evaluation.evaluate(applying.get().is(), known);
            if (!Double.isFinite(value.value())) {
                once(
                        place,
                        "the step " + step.id() + " has no finite value with " + shown(givens),
                        "a number, whatever is drawn",
                        "Exclude these givens under require:.");
                return Optional.empty();
            }
            known = known.with(step.id(), value);
        }
        return Optional.of(known);
    }

    private void once(Place place, String problem, String expected, String next) {
        if (faults.isQuietAt(place)) {
            faults.warning(place, problem, expected, next);
        }
    }

    /** @param places where each is asked */
    void asks(List<Ask> asks, Map<String, Place> places) {
        for (Ask ask : asks) {
            Place place = places.get(ask.of());
            if (ask instanceof ChoiceAsk choice) {
                oneOptionHolds(choice, place);
            } else if (ask instanceof QuantityAsk quantity && quantity.acceptance() instanceof Acceptance.Count) {
                worked.stream()
                        .filter(values -> !isWhole(values.quantity(ask.of()).value()))
                        .findFirst()
                        .ifPresent(values -> faults.error(
                                place,
                                ask.of() + " is asked as a count, but is not whole with " + shown(values),
                                "a step that gives whole numbers",
                                "Round it in a step with floor, ceiling or round, or ask within a tolerance."));
            }
        }
    }

    /** @param place of the curve's section */
    void curve(CurvePlan plan, Place place) {
        Working working =
                new Working(steps.stream().map(StepsSection.Read::step).toList());
        for (Values values : worked) {
            Optional<String> fault = CurveTrace.of(plan, working, values).fault();
            if (fault.isPresent()) {
                faults.error(
                        place,
                        fault.get() + " with " + shown(values),
                        "lines with finite values, on which every point lies, whatever is drawn",
                        "Correct the formulas of the lines, of the points or of the ends of the axis.");
                return;
            }
        }
    }

    private static boolean isWhole(double value) {
        return Math.abs(value - Math.rint(value)) <= 1e-9 * Math.max(1, Math.abs(value));
    }

    /** Whether the conditions use a step that was told of as faulty and so has no value. */
    private boolean restsOnAFaultyStep(ChoiceAsk choice, Values values) {
        return choice.options().stream()
                .flatMap(option -> Evaluation.names(option.when()).stream())
                .anyMatch(name -> stepPlaces.containsKey(name)
                        && !values.has(name)
                        && !values.words().containsKey(name));
    }

    private void oneOptionHolds(ChoiceAsk choice, Place place) {
        for (Values values : worked) {
            if (restsOnAFaultyStep(choice, values)) {
                return;
            }
            List<String> holding = choice.options().stream()
                    .filter(option -> Evaluation.holds(option.when(), values))
                    .map(option -> "\"" + option.text() + "\"")
                    .toList();
            if (holding.size() != 1) {
                faults.error(
                        place,
                        (holding.isEmpty()
                                        ? "no option of " + choice.of() + " is right"
                                        : "the options " + String.join(" and ", holding) + " are right at once")
                                + " with " + shown(values),
                        "exactly one option that holds, whatever is drawn",
                        "Correct the conditions of the options.");
                return;
            }
        }
    }

    private String shown(Values values) {
        return givens.stream()
                .map(given -> given.name() + " = "
                        + (given instanceof QuantityGiven quantity
                                ? QuantityWriter.POINT
                                        .plain(values.quantity(given.name()).value(), quantity.unit(), 4)
                                        .text()
                                : values.words().get(given.name())))
                .collect(Collectors.joining(", "));
    }
}
