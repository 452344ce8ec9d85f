package ampersheet.problem;

import ampersheet.answer.Acceptance;
import ampersheet.circuit.Netlist;
import ampersheet.circuit.OperatingPoint;
import ampersheet.circuit.PlacedPart;
import ampersheet.formula.Evaluation;
import ampersheet.formula.Values;
import ampersheet.model.CircuitModel;
import ampersheet.model.ModelPlans;
import ampersheet.model.Models;
import ampersheet.model.Unsolved;
import ampersheet.problem.Objections.RefusedDraw;
import ampersheet.problem.Problem.Answer;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Elementary;
import ampersheet.quantity.Quantity;
import ampersheet.quantity.QuantityWriter;
import ampersheet.source.Languages;
import ampersheet.template.CurveTrace;
import ampersheet.template.ExtraLowVoltage;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.Ask;
import ampersheet.template.ProblemTemplate.ChoiceAsk;
import ampersheet.template.ProblemTemplate.DesignAsk;
import ampersheet.template.ProblemTemplate.Proof;
import ampersheet.template.ProblemTemplate.QuantityAsk;
import ampersheet.template.TradeLimit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Supplier;

/**
 * Turns numbers into a worked and proven problem of one template, or says why not. The first route works the steps as a
 * learner reads them; the second asks the solved models; what they do not agree on is not published.
 *
 * <p>Immutable; may be used by several threads.
 */
public final class Workshop {
    private final ProblemTemplate template;
    private final ModelPlans plans;
    private final FirstRoute firstRoute;
    private final List<DesignChoices> designs;
    private final Map<String, Acceptance> acceptances;

    public Workshop(ProblemTemplate template) {
        this.template = template;
        this.plans = new ModelPlans(template.models());
        this.designs = template.designs().stream()
                .map(design -> new DesignChoices(template, design))
                .toList();
        this.firstRoute = new FirstRoute(template, designs);
        this.acceptances = new LinkedHashMap<>();
        for (Ask ask : template.asks()) {
            if (ask instanceof QuantityAsk quantity) {
                acceptances.put(quantity.of(), quantity.acceptance());
            }
        }
    }

    public ProblemTemplate template() {
        return template;
    }

    /**
     * Works drawn givens, by all the rules for draws.
     *
     * @param givens every given and constant of the template
     */
    public Attempt work(Values givens) {
        return work(givens, Objections.FIRST_ENDS, List::of);
    }

    /**
     * Works givens that somebody chose. What a draw would be refused for becomes a note. Only what cannot be worked at
     * all, has no second route that agrees, a design whose own choice fails, or what is not extra-low voltage, is
     * refused.
     *
     * @param givens every given and constant of the template
     */
    public Attempt workChosen(Values givens) {
        Objections.Noted noted = new Objections.Noted();
        return work(givens, noted, noted::notes);
    }

    /** Whether the first route has no objection; no model is solved. */
    boolean passesFirstRoute(Values givens) {
        try {
            firstRoute.work(givens, Objections.FIRST_ENDS_UNTOLD);
            return true;
        } catch (RefusedDraw refused) {
            return false;
        }
    }

    /** Steps whose second route follows the first when that is made wrong on purpose. */
    List<String> leaning(Problem problem) {
        return Independence.leaning(this, plans, problem.givens(), problem.values());
    }

    private Attempt work(Values givens, Objections objections, Supplier<List<Attempt.Refused>> notes) {
        try {
            Draft draft = firstRoute.work(givens, objections);
            return prove(draft, objections, notes);
        } catch (RefusedDraw refused) {
            return refused.asAttempt();
        } catch (Unsolved unsolved) {
            return new Attempt.Refused(Refusal.MODEL_UNSOLVED, unsolved.getMessage());
        }
    }

    private Attempt prove(Draft draft, Objections objections, Supplier<List<Attempt.Refused>> notes) {
        Models models = plans.with(draft.values());
        solve(models, objections);
        SecondRoute secondRoute = new SecondRoute(models, draft.givens(), draft.values(), objections);
        Map<String, Answer> proven = new LinkedHashMap<>();
        for (Proof proof : template.proofs()) {
            Answer answer = compare(proof, find(proof, secondRoute, objections), draft, objections);
            proven.merge(proof.of(), answer, Workshop::worse);
        }
        List<Models> states = new ArrayList<>(List.of(models));
        states.addAll(secondRoute.otherStates());
        List<Answer> answers = new ArrayList<>();
        for (Ask ask : template.asks()) {
            answers.add(
                    ask instanceof ChoiceAsk choice
                            ? choose(choice, draft, secondRoute.known(), objections)
                            : ask instanceof DesignAsk blank
                                    ? accept(blank, draft, secondRoute.known(), objections)
                                    : Optional.ofNullable(proven.remove(ask.of()))
                                            .orElseGet(() -> unproven(ask.of(), draft, objections)));
        }
        List<Problem.JudgedDesign> judged = designs.stream()
                .map(design -> design.judge(draft, models, secondRoute.known(), objections))
                .toList();
        Problem problem = new Problem(
                template,
                draft.givens(),
                draft.values(),
                answers,
                models.list(),
                curve(draft, objections),
                judged,
                CautionsCalledFor.in(template, draft.values(), states),
                draft.mistakes());
        return new Attempt.Worked(problem, List.copyOf(proven.values()), notes.get());
    }

    private Optional<CurveTrace> curve(Draft draft, Objections objections) {
        Optional<CurveTrace> curve =
                template.curve().map(plan -> CurveTrace.of(plan, template.working(), draft.values()));
        Optional<String> fault = curve.flatMap(CurveTrace::fault);
        fault.ifPresent(told -> objections.raise(Refusal.POINT_OFF_ITS_CURVE, () -> told));
        return fault.isPresent() ? Optional.empty() : curve;
    }

    /** The drawn circuit must have a solution that is safe to touch, whatever is asked about it. */
    private void solve(Models models, Objections objections) {
        Optional<CircuitModel> drawn = models.find(CircuitModel.class);
        if (drawn.isEmpty()) {
            return;
        }
        CircuitModel circuit = drawn.get();
        OperatingPoint point;
        try {
            point = circuit.operatingPoint();
        } catch (Unsolved unsolved) {
            objections.raise(Refusal.MODEL_UNSOLVED, () -> "the circuit has no solution: " + unsolved.getMessage());
            return;
        }
        keepPartLimits(circuit, point, objections);
        double lowest = 0;
        double highest = 0;
        for (String node : circuit.netlist().nodes()) {
            lowest = Math.min(lowest, point.voltage(node));
            highest = Math.max(highest, point.voltage(node));
        }
        if (highest - lowest > ExtraLowVoltage.VOLTS * (1 + Boundaries.NEAR)) {
            String between = FirstRoute.volts(highest - lowest);
            objections.raise(
                    Refusal.ABOVE_EXTRA_LOW_VOLTAGE,
                    () -> "two nodes of the circuit are " + between + " apart, " + ExtraLowVoltage.ABOVE);
        }
    }

    /** Every part of the drawn circuit, whatever the problem is about. */
    private void keepPartLimits(CircuitModel circuit, OperatingPoint point, Objections objections) {
        for (TradeLimit limit : template.premises().partLimits()) {
            for (Netlist.Connected connected : circuit.netlist().parts()) {
                PlacedPart part = connected.part();
                OptionalDouble measured = limit.measured(part, point);
                if (measured.isEmpty()) {
                    continue;
                }
                double value = measured.getAsDouble();
                if (!limit.allows(value)) {
                    objections.raise(
                            Refusal.OUTSIDE_LIMITS,
                            () -> "the " + limit.meaning() + ", of " + part.name() + ", is "
                                    + limit.text(value, Languages.ENGLISH) + "; usual is "
                                    + limit.told(Languages.ENGLISH));
                }
            }
        }
    }

    private static double find(Proof proof, SecondRoute secondRoute, Objections objections) {
        try {
            double found = secondRoute.find(proof);
            if (Double.isNaN(
                    found)) { // nothing divided by nothing, as the resistance of a part without voltage and current
                throw new Unsolved("what is measured leaves it open");
            }
            return found;
        } catch (Unsolved unsolved) {
            objections.raise(
                    Refusal.MODEL_UNSOLVED, () -> "no second route to " + proof.of() + ": " + unsolved.getMessage());
            return Double.NaN;
        }
    }

    private Answer compare(Proof proof, double second, Draft draft, Objections objections) {
        Quantity first = draft.values().quantity(proof.of());
        Acceptance acceptance = acceptances.get(proof.of());
        Answer answer = mustBeEqual(proof, first, acceptance)
                ? Gap.exact(proof.of(), first.value(), second, draft.mistakes())
                : Gap.within(proof, first.value(), second, draft.mistakes());
        if (!answer.agrees() && !Double.isNaN(second)) {
            objections.raise(
                    Refusal.ROUTES_DISAGREE,
                    () -> proof.of() + " is " + printed(proof.of(), first.value()) + " by the steps and "
                            + printed(proof.of(), second) + " by the model");
        }
        return answer;
    }

    /** Counts and preferred values agree or they do not: one in ten thousand is a gap between two counts, too. */
    private static boolean mustBeEqual(Proof proof, Quantity first, Acceptance acceptance) {
        if (acceptance != null) {
            return !(acceptance instanceof Acceptance.Within);
        }
        return proof.because().isEmpty()
                && first.dimension().equals(Dimension.ONE)
                && Elementary.isWhole(first.value());
    }

    private static Answer worse(Answer one, Answer other) {
        if (one.agrees() != other.agrees()) {
            return one.agrees() ? other : one;
        }
        return one.gap() * other.allowed() >= other.gap() * one.allowed() ? one : other;
    }

    /** Weighs the options again, now with what the second route found. */
    private Answer choose(ChoiceAsk choice, Draft draft, Values known, Objections objections) {
        int right = draft.chosen().get(choice.of());
        for (String name : namesIn(choice)) {
            Quantity found = known.quantities().get(name);
            boolean isStep = template.working().steps().stream()
                    .anyMatch(step -> step.id().equals(name));
            if (isStep && (found == null || Double.isNaN(found.value()))) {
                objections.raise(
                        Refusal.MODEL_UNSOLVED,
                        () -> "there is no second route to " + name + ", on which the choice " + choice.of()
                                + " hangs");
                return Gap.exact(choice.of(), right, Double.NaN, draft.mistakes());
            }
        }
        int rightBySecond = FirstRoute.right(choice, known, objections);
        Answer answer = Gap.exact(choice.of(), right, rightBySecond, draft.mistakes());
        if (!answer.agrees()) {
            objections.raise(
                    Refusal.ROUTES_DISAGREE,
                    () -> "the right option of " + choice.of() + " is \""
                            + choice.options().get(right).text() + "\" by the steps and \""
                            + choice.options().get(rightBySecond).text()
                            + "\" by the model");
        }
        return answer;
    }

    /** A blank of a design has no one value to find: the second route says whether the worked one is right. */
    private Answer accept(DesignAsk blank, Draft draft, Values known, Objections objections) {
        DesignChoices design = designs.stream()
                .filter(one -> one.design().id().equals(blank.design()))
                .findFirst()
                .orElseThrow();
        double worked = draft.values().quantity(blank.of()).value();
        boolean right = design.holdsBySecondRoute(draft, known);
        if (!right) {
            objections.raise(
                    Refusal.ROUTES_DISAGREE,
                    () -> "the worked values of the design " + blank.design() + " fail a criterion by the model");
        }
        return Gap.exact(blank.of(), worked, right ? worked : Double.NaN, draft.mistakes());
    }

    private static Set<String> namesIn(ChoiceAsk choice) {
        Set<String> names = new LinkedHashSet<>();
        choice.options().forEach(option -> names.addAll(Evaluation.names(option.when())));
        return names;
    }

    private Answer unproven(String of, Draft draft, Objections objections) {
        objections.raise(Refusal.MODEL_UNSOLVED, () -> "there is no second route to " + of);
        return Gap.exact(of, draft.values().quantity(of).value(), Double.NaN, draft.mistakes());
    }

    private String printed(String step, double si) {
        return QuantityWriter.POINT.plain(si, template.line(step).unit(), 6).text();
    }
}
