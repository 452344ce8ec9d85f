package ampersheet.template;

import ampersheet.diagnostic.Place;
import ampersheet.formula.Condition;
import ampersheet.formula.Evaluation;
import ampersheet.formula.FormulaFault;
import ampersheet.formula.FormulaReader;
import ampersheet.formula.Scope;
import ampersheet.source.Faults;
import ampersheet.source.Fields;
import ampersheet.source.Yaml;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads what the givens of a draw must meet, and tells which of it cannot be met. */
final class RequireSection {
    private static final Formulas.Rule BEFORE_THE_STEPS = (named, mention) -> !named.isStep()
            ? Optional.empty()
            : Optional.of(new Formulas.Refusal(
                    "the step " + named.id() + " is worked only after a draw was accepted",
                    "givens and constants",
                    "Write the formula of " + named.id() + " with the givens."));

    private final Names names;
    private final Formulas formulas;
    private final Faults faults;

    RequireSection(Names names, Formulas formulas, Faults faults) {
        this.names = names;
        this.formulas = formulas;
        this.faults = faults;
    }

    /** With the place of each. */
    Map<Condition, Place> read(Fields fields) {
        Map<Condition, Place> requirements = new LinkedHashMap<>();
        for (Yaml item : fields.list("require").map(Yaml.Sequence::items).orElse(List.of())) {
            if (item instanceof Yaml.Scalar text && !text.text().isBlank()) {
                formulas.condition(text, BEFORE_THE_STEPS)
                        .ifPresent(condition -> requirements.put(condition, text.place()));
            } else {
                faults.error(
                        item.place(),
                        "this item of require is " + item.kind(),
                        "a condition, such as \"Vs - Vf >= 1.2 V\"",
                        "Write a condition, in quotes.");
            }
        }
        return requirements;
    }

    /** Those over givens and constants, without a word about the others: they are told after the steps. */
    List<Condition> readable(Fields fields) {
        List<Condition> readable = new ArrayList<>();
        fields.value("require")
                .filter(Yaml.Sequence.class::isInstance)
                .map(Yaml.Sequence.class::cast)
                .ifPresent(list -> {
                    for (Yaml item : list.items()) {
                        try {
                            if (item instanceof Yaml.Scalar text) {
                                Condition condition = FormulaReader.condition(text.text());
                                Evaluation.check(condition, names.scope(named -> true, Scope.NO_MEASURES));
                                readable.add(condition);
                            }
                        } catch (FormulaFault toldLater) {
                            continue;
                        }
                    }
                });
        return readable;
    }

    /** Points at the requirement that most combinations fail first. */
    void impossible(Samples.Outcome outcome, Map<Condition, Place> requirements) {
        int worst = 0;
        for (int i = 1; i < outcome.failedFirst().size(); i++) {
            worst = outcome.failedFirst().get(i) > outcome.failedFirst().get(worst) ? i : worst;
        }
        Place place = List.copyOf(requirements.values()).get(worst);
        faults.error(
                place,
                (outcome.all()
                                ? "none of the " + outcome.tried() + " combinations of the givens meets"
                                : "none of " + outcome.tried() + " combinations tried meets")
                        + (requirements.size() == 1
                                ? " this requirement"
                                : " all requirements; " + outcome.failedFirst().get(worst)
                                        + " of them fail at this one"),
                "a constraint that can be met",
                "Loosen it, or widen the ranges of the givens.");
    }
}
