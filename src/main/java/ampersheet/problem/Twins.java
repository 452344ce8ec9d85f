package ampersheet.problem;

import ampersheet.formula.NoValue;
import ampersheet.formula.Step;
import ampersheet.formula.Values;
import ampersheet.practice.Twin;
import ampersheet.practice.Twin.Change;
import ampersheet.practice.Twin.Turn;
import ampersheet.practice.Twin.Way;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Elementary;
import ampersheet.quantity.Quantity;
import ampersheet.quantity.Unit;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.Given;
import ampersheet.template.ProblemTemplate.QuantityAsk;
import ampersheet.template.ProblemTemplate.QuantityGiven;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Which way an asked value goes when one given of a problem is changed and nothing else: found by solving again, by
 * both routes. Only what can be told without numbers is asked: a given that is a quantity of its own and stays among
 * the values that are drawn, a change of at least 5 % or none at all, the same sentences beside the lines.
 */
public final class Twins {
    /** Less is not seen without numbers. */
    private static final double LEAST_CHANGE = 0.05;

    private static final double NO_CHANGE = 1e-9;
    /** Every fourth question is about a given that does not enter: whoever knows may not be asked by rote. */
    private static final int TURNS = 4;
    /** What matters to a learner's answers only, and there are none here. */
    private static final Set<Refusal> NO_MATTER =
            EnumSet.of(Refusal.MISTAKE_TOO_CLOSE, Refusal.MISTAKES_TOO_CLOSE, Refusal.ROUNDING_AMBIGUOUS);

    private final Workshop workshop;
    private final ProblemTemplate template;

    private record Candidate(QuantityGiven given, String asked) {}

    public Twins(Workshop workshop) {
        this.workshop = workshop;
        this.template = workshop.template();
    }

    /**
     * The twin of a problem; by turns about other givens and other asked values.
     *
     * @param which from 0, of the problems of this template
     * @return empty where nothing of it can be asked so, as of a design
     */
    public Optional<Twin> of(Problem problem, int which) {
        List<Candidate> entering = candidates(true);
        List<Candidate> other = candidates(false);
        boolean stays = which % TURNS == TURNS - 1;
        return Stream.concat(
                        turned(stays ? other : entering, which).stream(),
                        turned(stays ? entering : other, which).stream())
                .map(candidate -> twin(problem, candidate))
                .flatMap(Optional::stream)
                .findFirst();
    }

    private static List<Candidate> turned(List<Candidate> candidates, int which) {
        List<Candidate> turned = new ArrayList<>();
        for (int i = 0; i < candidates.size(); i++) {
            turned.add(candidates.get((which + i) % candidates.size()));
        }
        return turned;
    }

    /** @param entering whether the asked value follows from the given by the steps */
    private List<Candidate> candidates(boolean entering) {
        List<Candidate> candidates = new ArrayList<>();
        if (!template.designs().isEmpty()) {
            return candidates;
        }
        for (Given given : template.givens()) {
            Set<String> following = template.working().following(Set.of(given.name()));
            if (!(given instanceof QuantityGiven quantity) || !canBeChanged(quantity) || following.isEmpty()) {
                continue;
            }
            template.asks().stream()
                    .filter(ask -> ask instanceof QuantityAsk && following.contains(ask.of()) == entering)
                    .forEach(ask -> candidates.add(new Candidate(quantity, ask.of())));
        }
        return candidates;
    }

    /** Twice as warm means nothing in degrees Celsius, nor does twice the number of a row. */
    private static boolean canBeChanged(QuantityGiven given) {
        boolean counted = given.unit().dimension().equals(Dimension.ONE)
                && given.values().stream().allMatch(Elementary::isWhole);
        return given.unit().offset() == 0 && !counted;
    }

    private Optional<Twin> twin(Problem problem, Candidate candidate) {
        return Stream.of(Change.values())
                .map(change -> twin(problem, candidate, change))
                .flatMap(Optional::stream)
                .findFirst();
    }

    private Optional<Twin> twin(Problem problem, Candidate candidate, Change change) {
        String name = candidate.given().name();
        Quantity before = problem.givens().quantity(name);
        Quantity after = new Quantity(before.value() * change.factor(), before.dimension());
        boolean someOfIt = problem.values().quantity(candidate.asked()).value() > 0;
        if (!someOfIt || !isLegal(candidate.given(), before.value(), after.value())) {
            return Optional.empty();
        }
        Values changed = problem.givens().with(name, after);
        Optional<List<Turn>> turns = turns(problem.values(), changed, candidate, change);
        return turns.filter(found -> confirmed(problem, changed, candidate.asked(), wayOf(found)))
                .map(found -> new Twin(change, candidate.given().meaning(), number(candidate.asked()), found));
    }

    /** Among the values that are drawn. */
    private static boolean isLegal(QuantityGiven given, double before, double after) {
        double least = given.values().stream().mapToDouble(value -> value).min().orElseThrow();
        double most = given.values().stream().mapToDouble(value -> value).max().orElseThrow();
        return before > 0 && after >= least * (1 - NO_CHANGE) && after <= most * (1 + NO_CHANGE);
    }

    private static Way wayOf(List<Turn> turns) {
        return turns.isEmpty() ? Way.STAYS : turns.get(turns.size() - 1).way();
    }

    private int number(String step) {
        List<Step> steps = template.working().steps();
        for (int i = 0; i < steps.size(); i++) {
            if (steps.get(i).id().equals(step)) {
                return i + 1;
            }
        }
        throw new IllegalArgumentException("no step " + step);
    }

    /**
     * By the steps; empty if one on the way takes another case, if the change is too small to see, or if nobody could
     * tell without numbers whether a preferred value or a count goes on to its next.
     */
    private Optional<List<Turn>> turns(Values values, Values givens, Candidate candidate, Change change) {
        Values changed;
        try {
            changed = template.working().work(givens);
        } catch (NoValue none) {
            return Optional.empty();
        }
        Set<String> way = way(candidate);
        List<Turn> turns = new ArrayList<>();
        for (Step step : template.working().steps()) {
            if (!way.contains(step.id())) {
                continue;
            }
            Unit unit = template.line(step.id()).unit();
            Optional<Way> turn = turn(
                    unit.fromSi(values.quantity(step.id()).value()),
                    unit.fromSi(changed.quantity(step.id()).value()));
            int applying = step.applying(values);
            boolean asked = step.id().equals(candidate.asked());
            boolean jumps = !Boundaries.jumps(step.cases().get(applying).is()).isEmpty();
            if (applying != step.applying(changed)
                    || turn.isEmpty()
                    || jumps && (!change.isLarge() || turn.get() == Way.STAYS)
                    || asked && isTooSmall(values, changed, step.id())) {
                return Optional.empty();
            }
            turns.add(new Turn(number(step.id()), turn.get()));
        }
        return Optional.of(turns);
    }

    /** Steps that follow from the given, as far as the asked value follows from them. */
    private Set<String> way(Candidate candidate) {
        Set<String> way = new LinkedHashSet<>();
        for (String step : template.working().following(Set.of(candidate.given().name()))) {
            if (step.equals(candidate.asked())
                    || template.working().following(Set.of(step)).contains(candidate.asked())) {
                way.add(step);
            }
        }
        return way.contains(candidate.asked()) ? way : Set.of();
    }

    /** Of values below zero it is not plain what rising means. */
    private static Optional<Way> turn(double before, double after) {
        if (!(before >= 0 && after >= 0)) {
            return Optional.empty();
        }
        if (Math.abs(after - before) <= NO_CHANGE * before) {
            return Optional.of(Way.STAYS);
        }
        return Optional.of(after > before ? Way.RISES : Way.FALLS);
    }

    private boolean isTooSmall(Values values, Values changed, String step) {
        Unit unit = template.line(step).unit();
        double before = unit.fromSi(values.quantity(step).value());
        double change = Math.abs(unit.fromSi(changed.quantity(step).value()) - before);
        return change > NO_CHANGE * before && change < LEAST_CHANGE * before;
    }

    /** Solved again as a problem of its own: nothing speaks against it, and the second route goes the same way. */
    private boolean confirmed(Problem problem, Values changed, String asked, Way way) {
        if (!(workshop.workChosen(changed) instanceof Attempt.Worked worked)
                || worked.notes().stream().anyMatch(note -> !NO_MATTER.contains(note.reason()))) {
            return false;
        }
        Problem.Answer before = answer(problem, asked);
        Problem.Answer after = answer(worked.problem(), asked);
        double change = after.second() - before.second();
        return switch (way) {
            case RISES -> change > 0;
            case FALLS -> change < 0;
            case STAYS -> Math.abs(change) <= (before.allowed() + after.allowed()) * Math.abs(before.second());
        };
    }

    private static Problem.Answer answer(Problem problem, String asked) {
        return problem.answers().stream()
                .filter(answer -> answer.of().equals(asked))
                .findFirst()
                .orElseThrow();
    }
}
