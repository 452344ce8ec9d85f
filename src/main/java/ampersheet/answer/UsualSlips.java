package ampersheet.answer;

import ampersheet.formula.Evaluation;
import ampersheet.formula.Expression;
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
import java.util.Optional;
import java.util.Set;

/**
 * What an answer may be that no modelled mistake explains, in the order of {@link Rung}: a temperature taken for a
 * rise, the calculated value for the fitted one, a given or another step, voltage and current of two different parts,
 * what follows from a mistake in an earlier question or from a misplaced given, a value that only rounding sets apart.
 *
 * <p>Whoever hears that a value belongs to another question has a right answer to that question, but learns nothing
 * about the one at hand. What follows from a design is left out: its key is only one of many.
 */
public final class UsualSlips {
    private static final double NEAR = 0.05;
    /** Below this, counts lie so close that five percent of one says nothing. */
    private static final double MANY = 100;

    private static final double CELSIUS_ZERO = 273.15;
    /** Values of temperatures are in kelvin; what is less than −100 °C is a difference. */
    private static final double LOWEST_TEMPERATURE = 173.15;

    private static final List<String> FITTING = List.of("next_up", "next_down", "nearest", "floor", "ceiling", "round");

    private final ProblemKey problem;
    private final Sentences sentences;
    private final AnswerKey key;
    private final Map<String, Quantity> chosen;
    private final Set<String> settled;
    private final Values worked;
    private final Set<String> ofDesigns = new LinkedHashSet<>();
    private final List<UsualSlip> slips = new ArrayList<>();

    private UsualSlips(ProblemKey problem, AnswerKey key, Map<String, Quantity> chosen, Set<String> settled) {
        this.problem = problem;
        this.sentences = problem.sentences();
        this.key = key;
        this.chosen = chosen;
        this.settled = settled;
        this.worked = problem.working().work(problem.givens(), chosen);
        for (DesignKey design : problem.designs()) {
            ofDesigns.addAll(design.steps());
        }
        ofDesigns.addAll(problem.working().following(ofDesigns));
    }

    public static List<UsualSlip> of(ProblemKey problem, AnswerKey key) {
        return of(problem, key, Map.of(), Set.of());
    }

    /**
     * @param chosen values of accepted designs, from which the key's own follows
     * @param settled steps that were answered rightly, so that no mistake of theirs is carried on
     */
    static List<UsualSlip> of(ProblemKey problem, AnswerKey key, Map<String, Quantity> chosen, Set<String> settled) {
        if (key.acceptance() instanceof Acceptance.Choice || key.acceptance() instanceof Acceptance.Designed) {
            return List.of();
        }
        UsualSlips usual = new UsualSlips(problem, key, chosen, settled);
        usual.temperatures();
        usual.fitted();
        usual.otherQuantities();
        usual.pairs();
        usual.workedWrongly();
        usual.near();
        return List.copyOf(usual.slips);
    }

    /** What goes into the step asked for first: another step where there is one, else a given; empty for neither. */
    static Optional<String> firstInput(ProblemKey problem, AnswerKey key) {
        Set<String> steps = new LinkedHashSet<>();
        for (Step step : problem.working().steps()) {
            steps.add(step.id());
        }
        for (Step step : problem.working().steps()) {
            if (step.id().equals(key.step())) {
                Set<String> uses = step.uses();
                for (String name : uses) {
                    if (steps.contains(name)) {
                        return Optional.of(name);
                    }
                }
                for (String name : uses) {
                    if (problem.givens().has(name)) {
                        return Optional.of(name);
                    }
                }
            }
        }
        return Optional.empty();
    }

    private void temperatures() {
        if (!key.unit().dimension().equals(Dimension.TEMPERATURE) || !(key.acceptance() instanceof Acceptance.Within)) {
            return;
        }
        double k = key.expected();
        boolean rise = key.unit().offset() == 0;
        for (Map.Entry<String, Quantity> given : problem.givens().quantities().entrySet()) {
            if (!given.getValue().dimension().equals(Dimension.TEMPERATURE)) {
                continue;
            }
            double si = given.getValue().value();
            String what = the(given.getKey());
            if (si < LOWEST_TEMPERATURE) {
                temperature(k + si, sentences.differenceMiscounted(what));
                temperature(k - si, sentences.differenceMiscounted(what));
            } else if (rise) {
                temperature(k + si - CELSIUS_ZERO, sentences.temperatureForRise(what));
                temperature(k + si, sentences.temperatureForRise(what));
            } else {
                temperature(k - (si - CELSIUS_ZERO), sentences.riseForTemperature(what));
                temperature(k - si, sentences.riseForTemperature(what)); // the same, written in kelvin
                temperature(k + (si - CELSIUS_ZERO), sentences.addedTwice(what));
            }
        }
        temperature(k + CELSIUS_ZERO, rise ? sentences.zeroInDifference() : sentences.zeroInCelsius());
        temperature(k - CELSIUS_ZERO, rise ? sentences.zeroInDifference() : sentences.zeroInCelsius());
    }

    private void temperature(double value, String says) {
        add(Rung.RISE_OR_TEMPERATURE, value, key.acceptance().band(key.expected()), says);
    }

    private void otherQuantities() {
        for (Map.Entry<String, Quantity> other : worked.quantities().entrySet()) {
            String name = other.getKey();
            if (!name.equals(key.step())
                    && !ofDesigns.contains(name)
                    && other.getValue().dimension().equals(key.unit().dimension())) {
                double value = asTyped(other.getValue());
                add(Rung.OTHER_QUANTITY, value, reach(value), otherQuantity(name));
            }
        }
    }

    /** A difference typed in °C and a temperature typed in K have the same number. */
    private double asTyped(Quantity quantity) {
        boolean temperature = quantity.dimension().equals(Dimension.TEMPERATURE);
        if (!temperature
                || (quantity.value() < LOWEST_TEMPERATURE) == (key.unit().offset() == 0)) {
            return quantity.value();
        }
        return quantity.value() < LOWEST_TEMPERATURE
                ? quantity.value() + CELSIUS_ZERO
                : quantity.value() - CELSIUS_ZERO;
    }

    private String otherQuantity(String name) {
        if (problem.givens().has(name)) {
            return sentences.aGiven(the(name));
        }
        return problem.working().following(Set.of(name)).contains(key.step())
                ? sentences.onTheWay(the(name))
                : sentences.anotherQuantity(the(name));
    }

    private void fitted() {
        for (Step step : problem.working().steps()) {
            Expression is = step.cases().get(step.applying(worked)).is();
            if (ofDesigns.contains(step.id())
                    || !(is instanceof Expression.Call call)
                    || !FITTING.contains(call.function())) {
                continue;
            }
            Expression before = call.arguments().get(0);
            Quantity exact = Evaluation.evaluate(before, worked);
            if (step.id().equals(key.step())) {
                add(
                        Rung.EXACT_OR_FITTED,
                        exact.value(),
                        Math.abs(exact.value()) * Acceptance.ROUNDED_BY_HAND,
                        sentences.notYetFitted());
                continue;
            }
            follows(step.id(), exact, sentences.exactForFitted(the(step.id())));
            if (before instanceof Expression.Name name && !problem.givens().has(name.id())) {
                follows(
                        name.id(),
                        worked.quantity(step.id()),
                        sentences.fittedForExact(the(step.id()), the(name.id())));
            }
        }
    }

    /** What the steps give with another value in the place of a step's own. */
    private void follows(String step, Quantity instead, String says) {
        if (!problem.working().following(Set.of(step)).contains(key.step())) {
            return;
        }
        Map<String, Quantity> values = new LinkedHashMap<>(chosen);
        values.put(step, instead);
        double value;
        try {
            value = problem.working()
                    .work(problem.givens(), values)
                    .quantity(key.step())
                    .value();
        } catch (NoValue noValue) {
            return; // nobody gets anywhere with such a value
        }
        add(Rung.EXACT_OR_FITTED, value, reach(value), says);
    }

    private void pairs() {
        if (!key.unit().dimension().equals(Dimension.POWER)) {
            return;
        }
        for (Map.Entry<String, Quantity> voltage : of(Dimension.VOLTAGE)) {
            for (Map.Entry<String, Quantity> current : of(Dimension.CURRENT)) {
                double product = voltage.getValue().value() * current.getValue().value();
                add(
                        Rung.WRONG_PAIR,
                        product,
                        reach(product),
                        sentences.wrongPair(the(voltage.getKey()), the(current.getKey())));
            }
        }
    }

    private List<Map.Entry<String, Quantity>> of(Dimension dimension) {
        List<Map.Entry<String, Quantity>> found = new ArrayList<>();
        for (Map.Entry<String, Quantity> one : worked.quantities().entrySet()) {
            if (one.getValue().dimension().equals(dimension) && !ofDesigns.contains(one.getKey())) {
                found.add(one);
            }
        }
        return found;
    }

    private void workedWrongly() {
        WorkedWrongly wrongly = new WorkedWrongly(problem, key, chosen);
        List<UsualSlip> found = new ArrayList<>(wrongly.carried(settled));
        found.addAll(wrongly.misplaced());
        for (UsualSlip slip : found) {
            add(slip.rung(), slip.value(), reach(slip.value()), slip.says());
        }
    }

    private void near() {
        double wanted = key.unit().offset() == 0 ? key.expected() : key.unit().fromSi(key.expected());
        boolean measured = key.acceptance() instanceof Acceptance.Within;
        boolean many = key.acceptance() instanceof Acceptance.Count && Math.abs(wanted) >= MANY;
        if (measured || many) {
            slips.add(new UsualSlip(
                    Rung.NEAR_MISS,
                    key.expected(),
                    NEAR * Math.abs(wanted),
                    measured ? sentences.nearMiss(key.figures()) : sentences.nearCount()));
        }
    }

    /**
     * As near as a person rounds; less than the tolerance of an answer, so that chance does not find what is not meant.
     */
    private double reach(double value) {
        Acceptance acceptance = key.acceptance();
        if (!(acceptance instanceof Acceptance.Within)) {
            return acceptance.band(value);
        }
        return key.unit().offset() == 0
                ? Math.abs(value) * Acceptance.ROUNDED_BY_HAND
                : acceptance.band(value) * Acceptance.HALF;
    }

    private void add(Rung rung, double value, double reach, String says) {
        if (Double.isFinite(value) && value != 0 && !key.acceptance().accepts(key.expected(), value)) {
            slips.add(new UsualSlip(rung, value, reach, says));
        }
    }

    private String the(String name) {
        return problem.the(name);
    }
}
