package ampersheet.problem;

import ampersheet.answer.Acceptance;
import ampersheet.formula.Condition;
import ampersheet.formula.Evaluation;
import ampersheet.formula.NoValue;
import ampersheet.formula.Step;
import ampersheet.formula.Values;
import ampersheet.model.Models;
import ampersheet.model.Unsolved;
import ampersheet.problem.Problem.JudgedDesign;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Quantity;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.Ask;
import ampersheet.template.ProblemTemplate.Criterion;
import ampersheet.template.ProblemTemplate.Design;
import ampersheet.template.ProblemTemplate.DesignAsk;
import ampersheet.template.ProblemTemplate.Proof;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Judges every choice that a design task leaves open, before it is asked: by the formulas, as the check will; and where
 * one comes near a limit, by the solved models as well. A choice on which the two routes might differ refuses the draw.
 */
final class DesignChoices {
    /** A choice this near a limit, relative, is solved. */
    private static final double NEAR_A_LIMIT = 1e-3;
    /** With a gap between the routes that the template states, so many times that gap. */
    private static final double GAPS = 3;
    /** What formulas hold for equal: the limit itself, which belongs to one side by the author's own sign. */
    private static final double ON_THE_LIMIT = 1e-12;
    /** What a solver may be off. */
    private static final double SOLVED = 1e-7;

    private final ProblemTemplate template;
    private final Design design;
    private final List<DesignAsk> blanks = new ArrayList<>();
    private final List<Dimension> dimensions = new ArrayList<>();
    private final Set<String> following;
    /** Steps between the blanks and the criteria, in order. */
    private final List<Step> worked = new ArrayList<>();

    private final List<Condition.Comparison> comparisons = new ArrayList<>();
    private final List<Proof> proofs = new ArrayList<>();
    private final double near;

    DesignChoices(ProblemTemplate template, Design design) {
        this.template = template;
        this.design = design;
        for (Ask ask : template.asks()) {
            if (ask instanceof DesignAsk blank && blank.design().equals(design.id())) {
                blanks.add(blank);
                dimensions.add(template.line(blank.of()).unit().dimension());
            }
        }
        this.following = template.working().following(design.steps());
        Set<String> needed = new LinkedHashSet<>();
        for (Criterion criterion : design.criteria()) {
            needed.addAll(Evaluation.names(criterion.where()));
            comparisons.addAll(Boundaries.comparisons(criterion.where()));
        }
        List<Step> steps = template.working().steps();
        for (int i = steps.size() - 1; i >= 0; i--) {
            Step step = steps.get(i);
            if (needed.contains(step.id())
                    && following.contains(step.id())
                    && !design.steps().contains(step.id())) {
                worked.add(0, step);
                needed.addAll(step.uses());
            }
        }
        double widest = 0;
        for (Proof proof : template.proofs()) {
            if (worked.stream().anyMatch(step -> step.id().equals(proof.of()))) {
                proofs.add(proof);
                widest = Math.max(widest, proof.within());
            }
        }
        this.near = Math.max(NEAR_A_LIMIT, GAPS * widest);
    }

    Design design() {
        return design;
    }

    /** Whether the worked values may be chosen and meet every criterion. */
    void checkWorked(Values values, Objections objections) {
        for (DesignAsk blank : blanks) {
            double value = values.quantity(blank.of()).value();
            if (!blank.acceptance().allows(value)) {
                objections.raise(
                        Refusal.DESIGN_MISSED,
                        () -> blank.of() + " is worked as " + value
                                + ", which is none of the values that may be chosen");
            }
        }
        for (Criterion criterion : design.criteria()) {
            if (!Evaluation.holds(criterion.where(), values)) {
                objections.raise(
                        Refusal.DESIGN_MISSED,
                        () -> "the worked values of " + String.join(" and ", design.steps()) + " fail the criterion "
                                + criterion.id());
            }
        }
    }

    /** Whether the worked values meet every criterion by what the solved models give, too. */
    boolean holdsBySecondRoute(Draft draft, Values found) {
        Values known = chosen(
                found, design.steps().stream().map(draft.values()::quantity).toList());
        return design.criteria().stream().allMatch(criterion -> Evaluation.holds(criterion.where(), known));
    }

    private Values chosen(Values values, List<Quantity> choice) {
        Values with = values;
        for (int i = 0; i < choice.size(); i++) {
            with = with.with(blanks.get(i).of(), choice.get(i));
        }
        return with;
    }

    /**
     * @param models of the worked values
     * @param found what the second route found, for what does not hang on the choice
     */
    JudgedDesign judge(Draft draft, Models models, Values found, Objections objections) {
        return new Judging(draft, models, found, objections).judge();
    }

    private final class Judging {
        private final Draft draft;
        private final Models models;
        private final Values found;
        private final Objections objections;
        private final Values base;
        private int choices;
        private int accepted;
        private int solved;
        private boolean objected;

        Judging(Draft draft, Models models, Values found, Objections objections) {
            this.draft = draft;
            this.models = models;
            this.found = found;
            this.objections = objections;
            this.base = unchosen(draft.values());
        }

        /** Only what the criteria need: this is worked again for every choice. */
        private Values unchosen(Values values) {
            Set<String> needed = new LinkedHashSet<>();
            design.criteria().forEach(criterion -> needed.addAll(Evaluation.names(criterion.where())));
            worked.forEach(step -> needed.addAll(step.uses()));
            Map<String, Quantity> kept = new LinkedHashMap<>(values.quantities());
            kept.keySet().retainAll(needed);
            kept.keySet().removeAll(following);
            return Values.of(kept, values.words());
        }

        JudgedDesign judge() {
            choose(List.of());
            return new JudgedDesign(design.id(), choices, accepted, solved);
        }

        private void choose(List<Quantity> choice) {
            if (choice.size() == blanks.size()) {
                judge(choice);
                return;
            }
            Acceptance.Designed blank = blanks.get(choice.size()).acceptance();
            for (double member : blank.members()) {
                List<Quantity> more = new ArrayList<>(choice);
                more.add(new Quantity(member, dimensions.get(choice.size())));
                choose(more);
            }
        }

        private void judge(List<Quantity> choice) {
            choices++;
            Values values = chosen(base, choice);
            try {
                for (Step step : worked) {
                    values = values.with(
                            step.id(),
                            Evaluation.evaluate(
                                    step.cases().get(step.applying(values)).is(), values));
                }
            } catch (NoValue leadsNowhere) {
                // The check tells such a choice that it leads to no result.
                return;
            }
            boolean right = true;
            for (Criterion criterion : design.criteria()) {
                right &= Evaluation.holds(criterion.where(), values);
            }
            accepted += right ? 1 : 0;
            double margin = Double.POSITIVE_INFINITY;
            for (Condition.Comparison comparison : comparisons) {
                double of = Boundaries.margin(comparison, values);
                if (of > ON_THE_LIMIT && of <= Boundaries.NEAR) {
                    object(Refusal.NEAR_A_BOUNDARY, choice, "meets a limit to within rounding");
                }
                margin = Math.min(margin, of);
            }
            if (margin <= near) {
                solve(choice, values);
            }
        }

        private void solve(List<Quantity> choice, Values values) {
            solved++;
            Map<String, Quantity> own = new LinkedHashMap<>();
            for (int i = 0; i < choice.size(); i++) {
                own.put(blanks.get(i).of(), choice.get(i));
            }
            Set<String> changed = new LinkedHashSet<>(own.keySet());
            changed.addAll(following);
            Values first = template.working().work(draft.givens(), own);
            SecondRoute route = new SecondRoute(models.with(first, changed), chosen(found, choice), first, objections);
            for (Proof proof : proofs) {
                double second;
                try {
                    second = route.find(proof);
                } catch (Unsolved unsolved) {
                    object(
                            Refusal.MODEL_UNSOLVED,
                            choice,
                            "has no second route to " + proof.of() + ": " + unsolved.getMessage());
                    return;
                }
                Problem.Answer compared =
                        Gap.within(proof, first.quantity(proof.of()).value(), second, Map.of());
                if (!compared.agrees()) {
                    object(
                            Refusal.ROUTES_DISAGREE,
                            choice,
                            "gives " + proof.of() + " = " + compared.value() + " by the steps and " + second
                                    + " by the model");
                }
            }
            for (Criterion criterion : design.criteria()) {
                if (Evaluation.holds(criterion.where(), values) != Evaluation.holds(criterion.where(), route.known())
                        && !isOnTheLimit(criterion, values, route.known())) {
                    object(
                            Refusal.NEAR_A_BOUNDARY,
                            choice,
                            "lies so near the limit of " + criterion.id() + " that the two routes differ on it");
                }
            }
        }

        /** Formulas find the sides equal, and the solver cannot tell them apart. */
        private boolean isOnTheLimit(Criterion criterion, Values values, Values known) {
            return Boundaries.comparisons(criterion.where()).stream()
                    .anyMatch(comparison -> Boundaries.margin(comparison, values) <= ON_THE_LIMIT
                            && Boundaries.margin(comparison, known) <= SOLVED);
        }

        /** Once for a problem: one choice is enough to refuse it. */
        private void object(Refusal reason, List<Quantity> choice, String why) {
            if (!objected) {
                objected = true;
                objections.raise(reason, () -> {
                    List<String> named = new ArrayList<>();
                    for (int i = 0; i < choice.size(); i++) {
                        named.add(blanks.get(i).of() + " = " + choice.get(i).value());
                    }
                    return "the choice " + String.join(", ", named) + " " + why;
                });
            }
        }
    }
}
