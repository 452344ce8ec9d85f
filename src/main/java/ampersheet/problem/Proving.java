package ampersheet.problem;

import ampersheet.answer.Acceptance;
import ampersheet.answer.KnownMistake;
import ampersheet.model.Reality;
import ampersheet.problem.Problem.Answer;
import ampersheet.problem.ProofReport.Disagreement;
import ampersheet.problem.ProofReport.MadeMistake;
import ampersheet.problem.ProofReport.ProvenValue;
import ampersheet.problem.ProofReport.RealShift;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.Mistake;
import ampersheet.template.ProblemTemplate.Proof;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.LongStream;

/** Solves many draws of a template by both routes, fills its words, and keeps the worst of everything. */
public final class Proving {
    /** Draws worked at once; fewer at first, so that what is wrong with every draw is told after few. */
    private static final int STRIDE = 512;

    private static final int FIRST_STRIDE = 32;
    /** Worked besides those still wanted, because some are refused. */
    private static final int AHEAD = 4;

    private static final int DISAGREEMENTS_SHOWN = 10;
    /** Refusals in a row after which no more is tried. */
    private static final int PATIENCE = 20_000;
    /**
     * The same where models are solved for each: a wrong number is told within seconds, not when all draws are through.
     */
    private static final int PATIENCE_WITH_MODELS = 200;
    /** One disagreement is no proof; so many say all there is to say. */
    private static final int DISAGREEMENTS_TOLD = 100;

    private static final double REFUSALS_TOLERATED = 0.3;
    private static final int DRAWS_TESTED_FOR_INDEPENDENCE = 3;
    private static final int DRAWS_HELD_AGAINST_REALITY = 20;
    private static final long COUNTED_AT_MOST = 100_000;

    private final Workshop workshop;
    private final ProblemTemplate template;
    private final Map<String, Acceptance> acceptances;

    private final Tally tally = new Tally();
    private final List<Disagreement> disagreements = new ArrayList<>();
    private final Map<String, Worst> worst = new LinkedHashMap<>();
    private final Map<String, Closest> closest = new LinkedHashMap<>();
    private final Map<String, RealShift> realities = new LinkedHashMap<>();
    private final List<String> leaning = new ArrayList<>();
    private final List<String> unfilled = new ArrayList<>();

    private record Tried(long position, Attempt attempt) {}

    private record Worst(double share, Answer answer, String givens) {}

    private record Closest(long made, double separation, String to, String givens) {
        static final Closest NEVER = new Closest(0, Double.POSITIVE_INFINITY, "", "");
    }

    private Proving(Workshop workshop) {
        this.workshop = workshop;
        this.template = workshop.template();
        this.acceptances = Mistakes.judgedSteps(template);
        template.mistakes().forEach(mistake -> closest.put(mistake.id(), Closest.NEVER));
    }

    /**
     * Uses all processors; the report does not depend on how many there are.
     *
     * @param wanted accepted problems after which to stop; fewer if the template has no more
     */
    public static ProofReport prove(Workshop workshop, String seed, int wanted) {
        return prove(workshop, seed, wanted, COUNTED_AT_MOST);
    }

    /**
     * @param counted combinations of the givens that are looked at to count the variants; of more, the number is
     *     estimated
     */
    static ProofReport prove(Workshop workshop, String seed, int wanted, long counted) {
        return new Proving(workshop).run(seed, wanted, counted);
    }

    private ProofReport run(String seed, int wanted, long counted) {
        Draws draws = new Draws(workshop, seed);
        long next = 0;
        while (tally.accepted() < wanted && next < draws.size() && !hopeless()) {
            long until = Math.min(
                    draws.size(),
                    next + Math.min(Math.min(STRIDE, FIRST_STRIDE + next), AHEAD + wanted - tally.accepted()));
            List<Tried> tried = LongStream.range(next, until)
                    .parallel()
                    .mapToObj(position -> new Tried(position, draws.at(position)))
                    .toList();
            for (Tried one : tried) {
                if (tally.accepted() < wanted && !hopeless()) {
                    note(one, draws);
                    next++;
                }
            }
        }
        boolean exhausted = next == draws.size();
        Variants variants = exhausted
                ? new Variants(draws.size(), tally.accepted(), Variants.Basis.PROVEN)
                : Variants.count(workshop, hopeless() ? 0 : counted);
        return new ProofReport(
                template.name(),
                seed,
                wanted,
                tally.copy(),
                exhausted,
                disagreements,
                values(),
                mistakes(),
                leaning,
                unfilled,
                OptionProof.of(template),
                onPurpose(),
                withoutMistakes(),
                List.copyOf(realities.values()),
                variants,
                warnings());
    }

    private boolean hopeless() {
        return tally.refusedInARow() >= PATIENCE
                || tally.refusedByModelsInARow() >= PATIENCE_WITH_MODELS
                || tally.refused(Refusal.ROUTES_DISAGREE) >= DISAGREEMENTS_TOLD;
    }

    private void note(Tried tried, Draws draws) {
        tally.add(tried.attempt());
        if (tried.attempt() instanceof Attempt.Refused refused) {
            if (refused.reason() == Refusal.ROUTES_DISAGREE && disagreements.size() < DISAGREEMENTS_SHOWN) {
                disagreements.add(new Disagreement(givens(tried, draws), refused.detail()));
            }
        } else if (tried.attempt() instanceof Attempt.Worked worked) {
            worked.problem().answers().forEach(answer -> compare(answer, tried, draws));
            worked.supporting().forEach(answer -> compare(answer, tried, draws));
            worked.problem()
                    .mistakes()
                    .forEach((step, mistakes) -> separate(
                            step, worked.problem().values().quantity(step).value(), mistakes, tried, draws));
            if (unfilled.size() < DISAGREEMENTS_SHOWN) {
                FilledWords.fault(worked.problem())
                        .ifPresent(fault -> unfilled.add(givens(tried, draws) + ": " + fault));
            }
            if (tally.accepted() <= DRAWS_HELD_AGAINST_REALITY) {
                drop(worked.problem(), givens(tried, draws));
            }
            if (tally.accepted() <= DRAWS_TESTED_FOR_INDEPENDENCE) {
                for (String step : workshop.leaning(worked.problem())) {
                    if (!leaning.contains(step)) {
                        leaning.add(step);
                    }
                }
            }
        }
    }

    /** Works the problem without each of its idealisations. */
    private void drop(Problem problem, String givens) {
        List<Reality> dropped = template.premises().assumptions().stream()
                .flatMap(one -> one.real().stream())
                .toList();
        List<List<RealShift>> found = dropped.parallelStream()
                .map(reality -> RealityCheck.shifts(problem, reality).stream()
                        .map(shift -> real(reality.named(), shift, givens))
                        .toList())
                .toList();
        found.forEach(shifts -> shifts.forEach(shift -> realities.merge(
                shift.named() + " " + shift.of(),
                shift,
                (one, next) -> next.tolerances() > one.tolerances() ? next : one)));
    }

    private RealShift real(String named, RealityCheck.Shift shift, String givens) {
        double change = Math.abs(shift.farthest() - shift.key());
        if (!(acceptances.get(shift.of()) instanceof Acceptance.Within within)) {
            return new RealShift(named, shift.of(), change, change == 0 ? 0 : Double.POSITIVE_INFINITY, givens);
        } else if (Double.isNaN(change)) {
            return new RealShift(named, shift.of(), Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, givens);
        }
        boolean absolute = shift.key() == 0 || template.line(shift.of()).unit().offset() != 0;
        return new RealShift(
                named,
                shift.of(),
                absolute ? change : change / Math.abs(shift.key()),
                change / within.band(shift.key()),
                givens);
    }

    private void compare(Answer answer, Tried tried, Draws draws) {
        double share = answer.gap() / answer.allowed();
        Worst known = worst.get(answer.of());
        if (known == null || share > known.share()) {
            worst.put(answer.of(), new Worst(share, answer, givens(tried, draws)));
        }
    }

    private void separate(String step, double key, List<KnownMistake> mistakes, Tried tried, Draws draws) {
        Acceptance acceptance = acceptances.get(step);
        for (KnownMistake mistake : mistakes) {
            boolean ofThisStep = template.mistakes().stream()
                    .anyMatch(one -> one.id().equals(mistake.id()) && one.of().equals(step));
            if (!ofThisStep) {
                continue;
            }
            Closest known = closest.get(mistake.id());
            double separation = Mistakes.separation(acceptance, key, mistake.value());
            String to = "the key";
            for (KnownMistake other : mistakes) {
                double apart = Mistakes.separation(acceptance, mistake.value(), other.value());
                if (other != mistake && apart < separation) {
                    separation = apart;
                    to = other.id();
                }
            }
            boolean closer = separation < known.separation();
            closest.put(
                    mistake.id(),
                    new Closest(
                            known.made() + 1,
                            closer ? separation : known.separation(),
                            closer ? to : known.to(),
                            closer ? givens(tried, draws) : known.givens()));
        }
    }

    private String givens(Tried tried, Draws draws) {
        return Notations.givensInOneLine(template, draws.givens(tried.position()));
    }

    private List<ProvenValue> values() {
        List<ProvenValue> values = new ArrayList<>();
        worst.forEach((step, found) -> values.add(new ProvenValue(
                step,
                template.asks().stream().anyMatch(ask -> ask.of().equals(step)),
                found.answer().gap(),
                found.answer().allowed(),
                found.givens(),
                because(step))));
        return values;
    }

    private String because(String step) {
        for (Proof proof : template.proofs()) {
            if (proof.of().equals(step) && !proof.because().isEmpty()) {
                return proof.because();
            }
        }
        return "";
    }

    private List<MadeMistake> mistakes() {
        List<MadeMistake> made = new ArrayList<>();
        for (Mistake mistake : template.mistakes()) {
            Closest found = closest.get(mistake.id());
            made.add(new MadeMistake(
                    mistake.id(), mistake.of(), found.made(), found.separation(), found.to(), found.givens()));
        }
        return made;
    }

    private List<String> onPurpose() {
        List<String> onPurpose = new ArrayList<>();
        template.premises()
                .limits()
                .forEach(limited -> limited.onPurpose()
                        .ifPresent(reason ->
                                onPurpose.add(limited.limit().id() + " of " + limited.asWritten() + ": " + reason)));
        return onPurpose;
    }

    private List<String> withoutMistakes() {
        List<String> without = new ArrayList<>();
        for (String step : Mistakes.judgedSteps(template).keySet()) {
            boolean has = template.mistakes().stream()
                    .anyMatch(mistake ->
                            mistake.of().equals(step) || mistake.instead().containsKey(step));
            if (!has) {
                without.add(step
                        + template.line(step)
                                .noMistake()
                                .map(reason -> ": " + reason)
                                .orElse(""));
            }
        }
        return without;
    }

    private List<String> warnings() {
        List<String> warnings = new ArrayList<>();
        if (tally.refusalRate() > REFUSALS_TOLERATED) {
            warnings.add(String.format(
                    Locale.ROOT,
                    "%.0f %% of the draws are refused; narrow the ranges so that it is less than 30 %%",
                    100 * tally.refusalRate()));
        }
        closest.forEach((id, found) -> {
            if (found.made() == 0 && tally.accepted() > 0) {
                warnings.add("mistake " + id + " was never made in " + tally.accepted()
                        + " problems; take it out, or widen what it needs");
            }
        });
        return warnings;
    }
}
