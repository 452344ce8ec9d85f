package ampersheet.problem;

import ampersheet.answer.Acceptance;
import ampersheet.answer.KnownMistake;
import ampersheet.formula.Evaluation;
import ampersheet.formula.Expression;
import ampersheet.formula.NoValue;
import ampersheet.formula.Step;
import ampersheet.formula.Values;
import ampersheet.formula.Working;
import ampersheet.quantity.Dimension;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.Mistake;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * A working in which exactly one line is wrong, by a modelled mistake; each later line goes on rightly from what it
 * gives.
 *
 * @param step the id of the wrong line
 * @param mistake id
 * @param shown the problem as it is worked so: nobody may take it for a proven one
 */
public record FaultyWorking(String step, String mistake, Problem shown) {
    /** Whether a line follows from the wrong one. */
    public boolean isCarriedOn() {
        return !shown.template().working().following(Set.of(step)).isEmpty();
    }

    /** All that can be made of a problem, in the order of the template's mistakes. */
    public static List<FaultyWorking> of(Problem problem) {
        if (!problem.template().designs().isEmpty()) {
            return List.of();
        }
        return problem.template().mistakes().stream()
                .map(mistake -> of(problem, mistake))
                .flatMap(Optional::stream)
                .toList();
    }

    private static Optional<FaultyWorking> of(Problem problem, Mistake mistake) {
        ProblemTemplate template = problem.template();
        boolean oneLine = mistake.is().isPresent() || mistake.instead().size() == 1;
        boolean made = problem.mistakes().getOrDefault(mistake.of(), List.of()).stream()
                .map(KnownMistake::id)
                .anyMatch(mistake.id()::equals);
        if (!oneLine || !made) {
            return Optional.empty();
        }
        String step = mistake.is().isPresent()
                ? mistake.of()
                : mistake.instead().keySet().iterator().next();
        Expression wrong = mistake.is().orElseGet(() -> mistake.instead().get(step));
        if (!canStandInALine(wrong, step, problem)) {
            return Optional.empty();
        }
        Working working = new Working(template.working().steps().stream()
                .map(right -> right.id().equals(step) ? Step.of(step, wrong) : right)
                .toList());
        try {
            Values values = working.work(problem.givens());
            return isPlausible(problem, step, values)
                    ? Optional.of(new FaultyWorking(step, mistake.id(), shown(problem, working, values)))
                    : Optional.empty();
        } catch (NoValue none) {
            return Optional.empty();
        }
    }

    /** Of givens and earlier lines only, and without a unit put in to make the formula fit, which would show it up. */
    private static boolean canStandInALine(Expression wrong, String step, Problem problem) {
        Set<String> before = new LinkedHashSet<>(problem.givens().quantities().keySet());
        for (Step earlier : problem.template().working().steps()) {
            if (earlier.id().equals(step)) {
                break;
            }
            before.add(earlier.id());
        }
        return before.containsAll(Evaluation.names(wrong)) && all(wrong).noneMatch(FaultyWorking::isUnit);
    }

    private static Stream<Expression> all(Expression expression) {
        return Stream.concat(Stream.of(expression), expression.parts().stream().flatMap(FaultyWorking::all));
    }

    private static boolean isUnit(Expression expression) {
        return expression instanceof Expression.Constant constant
                && !constant.unit().dimension().equals(Dimension.ONE);
    }

    /** No answer could be right and wrong at once, and no value gives itself away by its sign. */
    private static boolean isPlausible(Problem problem, String step, Values values) {
        Acceptance acceptance = Mistakes.judgedSteps(problem.template()).get(step);
        double right = problem.values().quantity(step).value();
        if (!acceptance.apart(right, values.quantity(step).value())) {
            return false;
        }
        for (Step each : problem.template().working().steps()) {
            double value = values.quantity(each.id()).value();
            double proper = problem.values().quantity(each.id()).value();
            if (!Double.isFinite(value) || value <= 0 && proper > 0) {
                return false;
            }
        }
        return true;
    }

    private static Problem shown(Problem problem, Working working, Values values) {
        List<Problem.Answer> answers = new ArrayList<>();
        for (Problem.Answer answer : problem.answers()) {
            boolean isStep = values.quantities().containsKey(answer.of());
            double value = isStep ? values.quantity(answer.of()).value() : answer.value();
            answers.add(new Problem.Answer(answer.of(), value, value, 0, 0, true, List.of()));
        }
        return new Problem(
                problem.template().withWorking(working),
                problem.givens(),
                values,
                answers,
                problem.models(),
                Optional.empty(),
                List.of(),
                problem.cautions(),
                Map.of());
    }
}
