package ampersheet.problem;

import ampersheet.answer.Acceptance;
import ampersheet.answer.KnownMistake;
import ampersheet.answer.UsualAcceptance;
import ampersheet.formula.Condition;
import ampersheet.formula.Evaluation;
import ampersheet.formula.Expression;
import ampersheet.formula.Notation;
import ampersheet.formula.PlainText;
import ampersheet.formula.Step;
import ampersheet.formula.Values;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Quantity;
import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.Unit;
import ampersheet.source.Languages;
import ampersheet.template.ExtraLowVoltage;
import ampersheet.template.Premises.LimitedQuantity;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.Ask;
import ampersheet.template.ProblemTemplate.ChoiceAsk;
import ampersheet.template.ProblemTemplate.ChoiceOption;
import ampersheet.template.ProblemTemplate.Mistake;
import ampersheet.template.ProblemTemplate.QuantityAsk;
import ampersheet.template.ProblemTemplate.StepLine;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Works the steps as a learner reads them, and hears every objection that needs no model: requirements, values that are
 * not numbers, jumps too near, printed digits in doubt, mistakes that could pass for the key or for each other.
 */
final class FirstRoute {
    /** Volts of direct current up to which touching is not protected against (IEV 826-12, from memory). */
    /** Of a step that nobody asks for. */
    private static final Unit VOLT = Unit.parse("V");

    private final ProblemTemplate template;
    private final Set<String> drawn = new LinkedHashSet<>();
    private final List<WatchedStep> steps;
    private final List<WatchedMistake> mistakes;
    private final List<QuantityAsk> quantities;
    private final List<WatchedChoice> choices;
    private final List<DesignChoices> designs;
    /** What is accepted at each step that can be got wrong, in order. */
    private final Map<String, Acceptance> judged;

    /** A line of a step, with the comparisons and calls at which it jumps. */
    private record WatchedCase(Step.Case line, List<Condition.Comparison> comparisons, List<Expression.Call> jumps) {}

    private record WatchedStep(String id, List<WatchedCase> cases) {}

    private record WatchedMistake(
            Mistake mistake, List<Condition.Comparison> comparisons, List<Expression.Call> jumps) {}

    private record WatchedChoice(ChoiceAsk ask, List<Condition.Comparison> comparisons) {}

    FirstRoute(ProblemTemplate template, List<DesignChoices> designs) {
        this.template = template;
        this.designs = designs;
        template.givens().forEach(given -> drawn.add(given.name()));
        template.constants().forEach(constant -> drawn.add(constant.name()));
        this.steps =
                template.working().steps().stream().map(FirstRoute::watched).toList();
        this.mistakes = template.mistakes().stream().map(FirstRoute::watched).toList();
        List<QuantityAsk> quantities = new ArrayList<>();
        List<WatchedChoice> choices = new ArrayList<>();
        for (Ask ask : template.asks()) {
            if (ask instanceof QuantityAsk quantity) {
                quantities.add(quantity);
            } else if (ask instanceof ChoiceAsk choice) {
                List<Condition.Comparison> comparisons = new ArrayList<>();
                choice.options().forEach(option -> comparisons.addAll(Boundaries.comparisons(option.when())));
                choices.add(new WatchedChoice(choice, comparisons));
            }
        }
        this.quantities = List.copyOf(quantities);
        this.choices = List.copyOf(choices);
        this.judged = Mistakes.judgedSteps(template);
    }

    private static WatchedStep watched(Step step) {
        return new WatchedStep(
                step.id(),
                step.cases().stream()
                        .map(line -> new WatchedCase(
                                line,
                                line.when().map(Boundaries::comparisons).orElse(List.of()),
                                Boundaries.jumps(line.is())))
                        .toList());
    }

    private static WatchedMistake watched(Mistake mistake) {
        List<Expression.Call> jumps = new ArrayList<>();
        mistake.is().ifPresent(is -> jumps.addAll(Boundaries.jumps(is)));
        mistake.instead().values().forEach(wrong -> jumps.addAll(Boundaries.jumps(wrong)));
        return new WatchedMistake(
                mistake, mistake.when().map(Boundaries::comparisons).orElse(List.of()), jumps);
    }

    /** @throws Objections.RefusedDraw as {@code objections} decides */
    Draft work(Values givens, Objections objections) {
        limitVoltages(givens, objections);
        require(givens, objections);
        Values values = workSteps(givens, objections);
        keepLimits(values, objections);
        for (QuantityAsk ask : quantities) {
            checkRounding(ask, values, objections);
        }
        Map<String, Integer> chosen = new LinkedHashMap<>();
        for (WatchedChoice choice : choices) {
            watch(
                    choice.comparisons(),
                    List.of(),
                    values,
                    objections,
                    "the choice " + choice.ask().of());
            chosen.put(choice.ask().of(), right(choice.ask(), values, objections));
        }
        designs.forEach(design -> design.checkWorked(values, objections));
        return new Draft(givens, values, separated(values, objections), chosen);
    }

    private void limitVoltages(Values givens, Objections objections) {
        givens.quantities().forEach((name, quantity) -> {
            if (quantity.dimension().equals(Dimension.VOLTAGE) && Math.abs(quantity.value()) > ExtraLowVoltage.VOLTS) {
                objections.raise(
                        Refusal.ABOVE_EXTRA_LOW_VOLTAGE,
                        () -> name + " is " + volts(quantity.value()) + ", " + ExtraLowVoltage.ABOVE);
            }
        });
    }

    /** Of what is told on purpose no draw is refused. */
    private void keepLimits(Values values, Objections objections) {
        for (LimitedQuantity limited : template.premises().limits()) {
            double value = Evaluation.evaluate(limited.of(), values).value();
            if (limited.onPurpose().isEmpty() && !limited.limit().allows(value)) {
                objections.raise(
                        Refusal.OUTSIDE_LIMITS,
                        () -> "the " + limited.limit().meaning() + ", " + limited.asWritten() + ", is "
                                + limited.limit().text(value, Languages.ENGLISH) + "; usual is "
                                + limited.limit().told(Languages.ENGLISH));
            }
        }
    }

    private void require(Values givens, Objections objections) {
        for (Condition requirement : template.requirements()) {
            if (!Evaluation.holds(requirement, givens)) {
                objections.raise(Refusal.REQUIREMENT, () -> {
                    Notation notation = Notations.of(template, Languages.ENGLISH, givens, QuantityWriter.POINT, 4);
                    return PlainText.symbolic(requirement, notation) + " does not hold: "
                            + PlainText.substituted(requirement, notation);
                });
            }
        }
    }

    private Values workSteps(Values givens, Objections objections) {
        Values known = givens;
        for (WatchedStep step : steps) {
            Quantity value =
                    Evaluation.evaluate(applying(step, known, objections).line().is(), known);
            if (!Double.isFinite(value.value())) {
                objections.raise(
                        Refusal.NOT_A_NUMBER, () -> "step " + step.id() + " has no finite value with these numbers");
            }
            known = known.with(step.id(), value);
        }
        return known;
    }

    private WatchedCase applying(WatchedStep step, Values known, Objections objections) {
        for (WatchedCase line : step.cases()) {
            watch(line.comparisons(), List.of(), known, objections, "the case of step " + step.id());
            if (line.line().when().isEmpty()
                    || Evaluation.holds(line.line().when().get(), known)) {
                watch(List.of(), line.jumps(), known, objections, "step " + step.id());
                return line;
            }
        }
        objections.raise(Refusal.NO_CASE, () -> "no case of step " + step.id() + " applies with these numbers");
        throw new IllegalStateException("nothing can be worked without step " + step.id());
    }

    private void watch(
            List<Condition.Comparison> comparisons,
            List<Expression.Call> jumps,
            Values values,
            Objections objections,
            String what) {
        for (Condition.Comparison comparison : comparisons) {
            if (Boundaries.near(comparison, values, drawn)) {
                objections.raise(Refusal.NEAR_A_BOUNDARY, () -> what + " hangs on two values that are all but equal");
            }
        }
        for (Expression.Call jump : jumps) {
            if (Boundaries.near(jump, values)) {
                objections.raise(
                        Refusal.NEAR_A_BOUNDARY,
                        () -> what + ": what " + jump.function() + " is taken of lies on the edge between two results");
            }
        }
    }

    private void checkRounding(QuantityAsk ask, Values values, Objections objections) {
        StepLine line = template.line(ask.of());
        double value = values.quantity(ask.of()).value();
        if (ask.acceptance() instanceof Acceptance.Within
                && Boundaries.roundingTie(value, line.unit(), ask.figures())) {
            objections.raise(
                    Refusal.ROUNDING_AMBIGUOUS,
                    () -> ask.of() + " lies halfway between two values of " + ask.figures() + " figures: "
                            + QuantityWriter.POINT
                                    .plain(value, line.unit(), ask.figures() + 2)
                                    .text());
        }
    }

    /** The index of the one option that holds. */
    static int right(ChoiceAsk choice, Values values, Objections objections) {
        int right = -1;
        int holding = 0;
        List<ChoiceOption> options = choice.options();
        for (int i = options.size() - 1; i >= 0; i--) {
            if (Evaluation.holds(options.get(i).when(), values)) {
                right = i;
                holding++;
            }
        }
        if (holding != 1) {
            String count = holding == 0 ? "none" : "more than one";
            objections.raise(
                    Refusal.NO_CASE,
                    () -> count + " of the options of the choice " + choice.of()
                            + " holds with these numbers; exactly one must");
        }
        return right;
    }

    /** The mistakes that can be made, by step, once they are told apart from the key and from each other. */
    private Map<String, List<KnownMistake>> separated(Values values, Objections objections) {
        Map<String, List<KnownMistake>> made = new LinkedHashMap<>();
        judged.keySet().forEach(step -> made.put(step, new ArrayList<>()));
        for (WatchedMistake watched : mistakes) {
            Mistake mistake = watched.mistake();
            watch(watched.comparisons(), watched.jumps(), values, objections, "mistake " + mistake.id());
            Mistakes.make(mistake, template.working(), values)
                    .ifPresent(known -> made.get(mistake.of()).add(known));
        }
        judged.forEach((step, acceptance) -> {
            double key = values.quantity(step).value();
            List<KnownMistake> of = made.get(step);
            for (int i = 0; i < of.size(); i++) {
                KnownMistake mistake = of.get(i);
                if (!acceptance.apart(key, mistake.value())) {
                    objections.raise(
                            Refusal.MISTAKE_TOO_CLOSE,
                            () -> "mistake " + mistake.id() + " gives " + printed(step, mistake.value())
                                    + ", too close to the key, " + printed(step, key));
                }
                for (KnownMistake other : of.subList(i + 1, of.size())) {
                    if (!acceptance.apart(mistake.value(), other.value())) {
                        objections.raise(
                                Refusal.MISTAKES_TOO_CLOSE,
                                () -> "mistakes " + mistake.id() + " and " + other.id() + " give "
                                        + printed(step, mistake.value()) + " and " + printed(step, other.value()));
                    }
                }
            }
        });
        addEarlier(made, values);
        return made;
    }

    /**
     * A later step that went wrong through an earlier one is known at the earlier one as well, as far as it can be told
     * apart there; nothing is refused for it.
     */
    private void addEarlier(Map<String, List<KnownMistake>> made, Values values) {
        for (WatchedMistake watched : mistakes) {
            Mistake mistake = watched.mistake();
            if (made.get(mistake.of()).stream().noneMatch(known -> known.id().equals(mistake.id()))) {
                continue;
            }
            for (String step : mistake.instead().keySet()) {
                Acceptance acceptance = judged.get(step);
                if (step.equals(mistake.of()) || acceptance == null) {
                    continue;
                }
                Optional<KnownMistake> earlier = Mistakes.make(mistake, step, template.working(), values);
                boolean apart = earlier.isPresent()
                        && acceptance.apart(
                                values.quantity(step).value(), earlier.get().value())
                        && made.get(step).stream()
                                .allMatch(known -> acceptance.apart(
                                        known.value(), earlier.get().value()));
                if (apart) {
                    made.get(step).add(earlier.get());
                }
            }
        }
    }

    private String printed(String step, double si) {
        StepLine line = template.line(step);
        int figures = quantities.stream()
                .filter(ask -> ask.of().equals(step))
                .mapToInt(QuantityAsk::figures)
                .findFirst()
                .orElse(UsualAcceptance.FIGURES);
        return QuantityWriter.POINT.plain(si, line.unit(), figures + 1).text();
    }

    static String volts(double volts) {
        return QuantityWriter.POINT.plain(volts, VOLT, 4).text();
    }
}
