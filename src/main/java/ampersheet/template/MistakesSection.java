package ampersheet.template;

import ampersheet.diagnostic.Place;
import ampersheet.formula.Condition;
import ampersheet.formula.Evaluation;
import ampersheet.formula.Expression;
import ampersheet.formula.Step;
import ampersheet.formula.TradeWords;
import ampersheet.quantity.Dimension;
import ampersheet.source.Faults;
import ampersheet.source.Fields;
import ampersheet.source.Yaml;
import ampersheet.template.ProblemTemplate.Mistake;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** Reads the known mistakes. */
final class MistakesSection {
    private final Names names;
    private final Formulas formulas;
    private final Wording wording;
    private final Faults faults;
    private final Set<String> asked;
    private final Set<String> designed;
    private final Map<String, Step> steps = new LinkedHashMap<>();
    private final Map<String, Place> ids = new TreeMap<>();

    MistakesSection(
            Names names,
            Formulas formulas,
            Wording wording,
            Set<String> asked,
            Set<String> designed,
            List<StepsSection.Read> steps,
            Faults faults) {
        this.names = names;
        this.formulas = formulas;
        this.wording = wording;
        this.asked = asked;
        this.designed = designed;
        this.faults = faults;
        steps.forEach(step -> this.steps.put(step.step().id(), step.step()));
    }

    List<Mistake> read(List<Yaml.Mapping> items) {
        List<Mistake> mistakes = new ArrayList<>();
        for (Yaml.Mapping item : items) {
            mistake(new Fields(item, "a mistake", faults)).ifPresent(mistakes::add);
        }
        return mistakes;
    }

    private Optional<Mistake> mistake(Fields fields) {
        Optional<Yaml.Scalar> id = fields.needText("id", "a name for the mistake, such as no-forward-voltage");
        id.ifPresent(this::isNew);
        Optional<Yaml.Scalar> of = fields.needText("of", "the step it gets wrong");
        Optional<Yaml.Scalar> step = of.filter(this::canBeWrong);
        Optional<Dimension> dimension =
                step.flatMap(text -> names.get(text.text())).flatMap(Names.Named::dimension);
        boolean whole = fields.has("is");
        if (whole == fields.has("instead")) {
            faults.error(
                    fields.place(),
                    whole
                            ? "the mistake has both a formula and wrong steps"
                            : "the mistake does not say what is worked wrongly",
                    "is: a formula, or instead: {step: formula}",
                    whole ? "Keep one of the two." : "Add is: or instead:.");
        }
        Optional<Expression> is = fields.text("is")
                .flatMap(text -> formulas.expression(
                        text,
                        Formulas.ALL_NAMES,
                        dimension,
                        isIn(of.map(Yaml.Scalar::text).orElse("the step"), dimension)))
                .map(Formulas.Checked::expression);
        Map<String, Expression> instead = instead(fields, step);
        Optional<Condition> when = fields.text("when").flatMap(text -> formulas.condition(text, Formulas.ALL_NAMES));
        Optional<String> says = wording.needText(fields, "says", "what is said to a learner who made it");
        fields.finish();
        boolean complete =
                id.isPresent() && step.isPresent() && says.isPresent() && (is.isPresent() || !instead.isEmpty());
        return complete
                ? Optional.of(new Mistake(id.get().text(), step.get().text(), is, instead, when, says.get()))
                : Optional.empty();
    }

    private static String isIn(String step, Optional<Dimension> dimension) {
        return step + " is in " + dimension.map(TradeWords::plural).orElse("something else");
    }

    private void isNew(Yaml.Scalar id) {
        if (!FileNames.isFolder(id.text())) {
            faults.error(
                    id.place(),
                    "\"" + id.text() + "\" is not the id of a mistake",
                    "lower-case letters, digits and hyphens, such as no-forward-voltage",
                    "Correct the id.");
        }
        Place first = ids.putIfAbsent(id.text(), id.place());
        if (first != null) {
            faults.error(
                    id.place(),
                    "the id " + id.text() + " stands here a second time",
                    "every id once; the first stands in line " + first.line(),
                    "Rename one of the two.");
        }
    }

    private boolean canBeWrong(Yaml.Scalar of) {
        Optional<Names.Named> named = names.get(of.text());
        if (asked.contains(of.text()) && named.isEmpty()) {
            faults.error(
                    of.place(),
                    of.text() + " is a choice; its options say themselves what is wrong",
                    "a step",
                    "Put the words into the option's otherwise:.");
            return false;
        }
        if (named.isEmpty() || !named.get().isStep()) {
            AsksSection.unknownStep(of, names, faults);
            return false;
        }
        if (designed.contains(of.text())) {
            faults.error(
                    of.place(),
                    of.text() + " is a blank of a design; its criteria say themselves what is wrong",
                    "a step",
                    "Put the words into a criterion's says:.");
            return false;
        }
        return true;
    }

    private Map<String, Expression> instead(Fields fields, Optional<Yaml.Scalar> of) {
        Map<String, Expression> instead = new LinkedHashMap<>();
        Optional<Yaml.Mapping> group = fields.group("instead");
        if (group.isEmpty()) {
            return instead;
        }
        boolean matters = false;
        for (Yaml.Entry entry : group.get().entries()) {
            String id = entry.key().text();
            Optional<Names.Named> named = names.get(id).filter(Names.Named::isStep);
            if (named.isEmpty()) {
                AsksSection.unknownStep(entry.key(), names, faults);
                matters = true;
                continue;
            }
            if (!(entry.value() instanceof Yaml.Scalar text) || text.text().isBlank()) {
                faults.error(
                        entry.key().place(),
                        "the wrong step " + id + " has no formula",
                        "a formula",
                        "Write it after the colon.");
                matters = true;
                continue;
            }
            matters |= of.isEmpty() || dependsOn(of.get().text(), id);
            formulas.expression(
                            text,
                            before(named.get()),
                            named.get().dimension(),
                            isIn(id, named.get().dimension()))
                    .ifPresent(formula -> instead.put(id, formula.expression()));
        }
        if (!matters) {
            faults.error(
                    group.get().place(),
                    of.get().text() + " does not depend on what is worked wrongly here",
                    "a step from which " + of.get().text() + " follows",
                    "Name a step that leads to it.");
        }
        return instead;
    }

    /** A wrong step stands in the place of the right one, so it may use what the right one may, and itself. */
    private static Formulas.Rule before(Names.Named replaced) {
        return (named, mention) -> !named.isStep() || named.order() <= replaced.order()
                ? Optional.empty()
                : Optional.of(new Formulas.Refusal(
                        "the step " + named.id() + " is worked only after " + replaced.id(),
                        "givens, constants and earlier steps",
                        "Use an earlier step."));
    }

    private boolean dependsOn(String id, String on) {
        if (id.equals(on)) {
            return true;
        }
        Step step = steps.get(id);
        if (step == null) {
            return true;
        }
        for (Step.Case each : step.cases()) {
            Set<String> used = new TreeSet<>(Evaluation.names(each.is()));
            each.when().ifPresent(when -> used.addAll(Evaluation.names(when)));
            for (String name : used) {
                if (names.get(name).map(Names.Named::isStep).orElse(false) && !name.equals(id) && dependsOn(name, on)) {
                    return true;
                }
            }
        }
        return false;
    }
}
