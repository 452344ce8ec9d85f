package ampersheet.problem;

import ampersheet.formula.Evaluation;
import ampersheet.formula.NoValue;
import ampersheet.formula.Values;
import ampersheet.problem.Problem.Answer;
import ampersheet.quantity.Quantity;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.Ask;
import ampersheet.template.ProblemTemplate.ChoiceAsk;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Would the second route notice a slip in the first? Every operator, function and number of the steps is changed in
 * turn, and the changed template is worked with the numbers of problems that are right. It survives if a problem with
 * another key is accepted.
 */
public final class MutationCheck {
    /**
     * @param problems to try each mutant on, unless it is caught before
     * @param caughtOften after so many draws on which a mutant was caught, it is believed to be caught always
     */
    record Thoroughness(int problems, int caughtOften) {}

    static final Thoroughness USUAL = new Thoroughness(32, 4);

    /** In multiples of the gap that the proof allows: less than this nothing could notice. */
    private static final double NOTICEABLE = 2;
    /** The gap of a proof that states none. */
    private static final double SHOWN = 1e-4;

    private final Workshop workshop;
    private final List<Problem> problems;

    private final int caughtOften;

    private MutationCheck(Workshop workshop, List<Problem> problems, int caughtOften) {
        this.workshop = workshop;
        this.problems = problems;
        this.caughtOften = caughtOften;
    }

    /**
     * Uses all processors; the report does not depend on how many there are.
     *
     * @param seed another seed draws other numbers
     */
    public static MutationReport run(Workshop workshop, String seed) {
        return run(workshop, seed, USUAL);
    }

    static MutationReport run(Workshop workshop, String seed, Thoroughness thoroughness) {
        ProblemTemplate template = workshop.template();
        Draws draws = new Draws(workshop, seed);
        int wanted = (int) Math.min(thoroughness.problems(), draws.size());
        List<Problem> problems =
                IntStream.range(0, wanted).mapToObj(draws::draw).toList();
        MutationCheck check = new MutationCheck(workshop, problems, thoroughness.caughtOften());
        List<Mutant> mutants = Mutant.of(template);
        List<MutationReport.Fate> fates =
                mutants.parallelStream().map(check::fateOf).toList();
        return new MutationReport(fates);
    }

    private MutationReport.Fate fateOf(Mutant mutant) {
        if (!mutant.unitsFit()) {
            return new MutationReport.Fate(mutant.step(), mutant.change(), MutationReport.End.WRONG_UNITS, "");
        }
        ProblemTemplate mutated = workshop.template().withWorking(mutant.working());
        Workshop wrong = new Workshop(mutated);
        int caught = 0;
        for (Problem problem : problems) {
            Optional<String> changed = changedAnswer(problem, mutant);
            if (changed.isPresent()) {
                Attempt attempt = wrong.workChosen(problem.givens());
                if (isPublished(attempt)) {
                    return new MutationReport.Fate(
                            mutant.step(),
                            mutant.change(),
                            MutationReport.End.SURVIVED,
                            Notations.givensInOneLine(mutated, problem.givens()) + ": " + changed.get());
                }
                if (++caught == caughtOften) {
                    break;
                }
            }
        }
        return new MutationReport.Fate(
                mutant.step(),
                mutant.change(),
                caught > 0 ? MutationReport.End.CAUGHT : MutationReport.End.WITHOUT_EFFECT,
                "");
    }

    /** Neither refused nor found to disagree; what only the drawing of numbers would refuse, other numbers may pass. */
    private static boolean isPublished(Attempt attempt) {
        return attempt instanceof Attempt.Worked worked
                && worked.notes().stream()
                        .noneMatch(note ->
                                note.reason() == Refusal.ROUTES_DISAGREE || note.reason() == Refusal.MODEL_UNSOLVED);
    }

    /** What the first asked value that is another now was and is; empty if a learner would see the same key. */
    private Optional<String> changedAnswer(Problem problem, Mutant mutant) {
        Values values;
        try {
            Optional<String> failing = failingDesign(problem, mutant);
            if (failing.isPresent()) {
                return failing;
            }
            values = mutant.working().work(problem.givens(), chosen(problem.values()));
        } catch (NoValue noCase) {
            return Optional.of("no case applies");
        }
        for (int i = 0; i < problem.answers().size(); i++) {
            Answer answer = problem.answers().get(i);
            Ask ask = workshop.template().asks().get(i);
            if (ask instanceof ChoiceAsk choice) {
                if (!Evaluation.holds(choice.options().get((int) answer.value()).when(), values)) {
                    return Optional.of(answer.of() + " has another right option");
                }
            } else if (isAnother(values.quantity(answer.of()).value(), answer.value(), answer.allowed())) {
                return Optional.of(answer.of() + " becomes "
                        + values.quantity(answer.of()).value() + " instead of " + answer.value());
            }
        }
        return Optional.empty();
    }

    private static boolean isAnother(double now, double right, double allowed) {
        double size = right == 0 ? 1 : Math.abs(right);
        return !(Math.abs(now - right) <= NOTICEABLE * allowed * size);
    }

    /** What stands for the blanks of designs: another choice that is right is no slip. */
    private Map<String, Quantity> chosen(Values values) {
        Map<String, Quantity> chosen = new LinkedHashMap<>();
        workshop.template()
                .designs()
                .forEach(design -> design.steps().forEach(step -> chosen.put(step, values.quantity(step))));
        return chosen;
    }

    /** Whether the mutant's own choice is wrong, or it would judge the right one by other values. */
    private Optional<String> failingDesign(Problem problem, Mutant mutant) {
        ProblemTemplate template = workshop.template();
        if (template.designs().isEmpty()) {
            return Optional.empty();
        }
        Values own = template.working()
                .work(problem.givens(), chosen(mutant.working().work(problem.givens())));
        Values judging = mutant.working().work(problem.givens(), chosen(problem.values()));
        for (ProblemTemplate.Design design : template.designs()) {
            for (ProblemTemplate.Criterion criterion : design.criteria()) {
                if (!Evaluation.holds(criterion.where(), own)) {
                    return Optional.of("the choice worked for " + design.id() + " fails " + criterion.id());
                }
                double right = problem.values().quantity(criterion.shown()).value();
                double now = judging.quantity(criterion.shown()).value();
                if (isAnother(now, right, SHOWN)) {
                    return Optional.of(criterion.shown() + ", by which choices are judged, becomes " + now
                            + " instead of " + right);
                }
            }
        }
        return Optional.empty();
    }
}
