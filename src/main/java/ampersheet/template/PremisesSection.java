package ampersheet.template;

import ampersheet.circuit.PartKind;
import ampersheet.formula.Spelling;
import ampersheet.formula.TradeWords;
import ampersheet.model.CircuitPlan;
import ampersheet.model.CircuitPlan.PlannedPart;
import ampersheet.model.ModelPlan;
import ampersheet.model.Reality;
import ampersheet.source.Faults;
import ampersheet.source.Fields;
import ampersheet.source.Yaml;
import ampersheet.template.Premises.Assumption;
import ampersheet.template.Premises.LimitedQuantity;
import ampersheet.template.Premises.Table;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** Reads what a template takes for granted, which limits of the trade its quantities keep, and what tables it needs. */
final class PremisesSection {
    private final Names names;
    private final Formulas formulas;
    private final Wording wording;
    private final TemplateFiles files;
    private final Faults faults;

    PremisesSection(Names names, Formulas formulas, Wording wording, TemplateFiles files, Faults faults) {
        this.names = names;
        this.formulas = formulas;
        this.wording = wording;
        this.files = files;
        this.faults = faults;
    }

    /** @param skill that the template practises */
    Premises read(Fields fields, List<ModelPlan> models, Optional<String> skill) {
        RealitySection reality = new RealitySection(names, formulas, wording, models, faults);
        Optional<CircuitPlan> circuit = models.stream()
                .filter(CircuitPlan.class::isInstance)
                .map(CircuitPlan.class::cast)
                .findFirst();
        List<Assumption> assumptions = new ArrayList<>();
        fields.groups("assumes", "{that: the input draws no current, really: ...}")
                .forEach(item -> assumption(new Fields(item, "an assumption", faults), reality)
                        .ifPresent(assumptions::add));
        List<LimitedQuantity> limits = new ArrayList<>();
        List<Yaml.Mapping> limited = fields.groups("limits", "{limit: junction-temperature, of: Tj}");
        Optional<Map<String, TradeLimit>> beside =
                files.limits().map(text -> TradeLimits.read(files.shownLimits(), text));
        if (!limited.isEmpty()) {
            Map<String, TradeLimit> known = beside.orElseGet(PremisesSection::builtIn);
            limited.forEach(
                    item -> limit(new Fields(item, "a limit", faults), known).ifPresent(limits::add));
        }
        return new Premises(
                assumptions,
                limits,
                partLimits(circuit, beside.orElse(Map.of())),
                tables(fields),
                after(fields, skill));
    }

    private static Map<String, TradeLimit> builtIn() {
        TemplateFiles files = TemplateFiles.builtIn();
        return files.limits()
                .map(text -> TradeLimits.read(files.shownLimits(), text))
                .orElse(Map.of());
    }

    private Optional<Assumption> assumption(Fields fields, RealitySection reality) {
        Optional<String> that =
                wording.needText(fields, "that", "what is taken for granted, such as the input draws no current");
        Optional<String> really = wording.needText(fields, "really", "which way reality departs from it, and how far");
        if (that.isPresent() && that.get().endsWith(".")) {
            faults.error(
                    fields.placeOf("that"),
                    "the assumption ends in a full stop",
                    "a clause that goes on in a list",
                    "Take the full stop away.");
        }
        Optional<Reality> real = fields.group("real").flatMap(reality::read);
        fields.finish();
        return that.isPresent() && really.isPresent()
                ? Optional.of(new Assumption(that.get(), really.get(), real))
                : Optional.empty();
    }

    private Optional<LimitedQuantity> limit(Fields fields, Map<String, TradeLimit> known) {
        Optional<Yaml.Scalar> id = fields.needText("limit", "the id of a limit, such as junction-temperature");
        Optional<Yaml.Scalar> of = fields.needText("of", "the quantity it limits, such as Tj");
        Optional<String> onPurpose = wording.text(fields, "on_purpose");
        Optional<Formulas.Checked> formula = of.flatMap(text -> formulas.expression(text, Formulas.ALL_NAMES));
        fields.finish();
        if (id.isEmpty() || formula.isEmpty()) {
            return Optional.empty();
        }
        TradeLimit limit = known.get(id.get().text());
        if (limit == null) {
            faults.error(
                    id.get().place(),
                    "there is no limit " + id.get().text(),
                    Guess.among(new TreeSet<>(known.keySet()), "a limit"),
                    Guess.of(id.get().text(), new TreeSet<>(known.keySet()), "Name a limit of the file of limits."));
            return Optional.empty();
        }
        if (formula.get().dimension().isPresent()
                && !formula.get().dimension().get().equals(limit.unit().dimension())) {
            faults.error(
                    of.get().place(),
                    "the formula gives "
                            + TradeWords.plural(formula.get().dimension().get()) + ", but the limit " + limit.id()
                            + " is in " + Numbers.shown(limit.unit()),
                    "a formula that gives " + TradeWords.plural(limit.unit().dimension()),
                    "Correct the formula, or name another limit.");
            return Optional.empty();
        }
        return Optional.of(
                new LimitedQuantity(limit, formula.get().expression(), of.get().text(), onPurpose));
    }

    /** Those of parts that the circuit has. */
    private static List<TradeLimit> partLimits(Optional<CircuitPlan> circuit, Map<String, TradeLimit> beside) {
        Set<PartKind> kinds = EnumSet.noneOf(PartKind.class);
        circuit.ifPresent(plan -> plan.parts().stream().map(PlannedPart::kind).forEach(kinds::add));
        return beside.values().stream()
                .filter(limit -> limit.parts().keySet().stream().anyMatch(kinds::contains))
                .toList();
    }

    private List<Table> tables(Fields fields) {
        List<Table> tables = new ArrayList<>();
        for (Yaml item : fields.list("tables").map(Yaml.Sequence::items).orElse(List.of())) {
            Set<String> words = new TreeSet<>();
            boolean found = false;
            for (Table table : Table.values()) {
                words.add(table.word());
                if (item instanceof Yaml.Scalar text && text.text().equals(table.word())) {
                    tables.add(table);
                    found = true;
                }
            }
            if (!found) {
                faults.error(item.place(), "there is no such table", Spelling.list(words), "Name one of these.");
            }
        }
        return tables;
    }

    private List<String> after(Fields fields, Optional<String> skill) {
        List<String> after = new ArrayList<>();
        for (Yaml item : fields.list("after").map(Yaml.Sequence::items).orElse(List.of())) {
            if (!(item instanceof Yaml.Scalar text) || text.text().isBlank()) {
                faults.error(
                        item.place(),
                        "this item of after is " + item.kind(),
                        "the name of a skill, as another template writes it",
                        "Write the skill that this one builds on.");
            } else if (skill.isPresent() && skill.get().equals(text.text())) {
                faults.error(
                        text.place(),
                        "the skill comes after itself",
                        "the skills that are learned before",
                        "Take it out.");
            } else if (after.contains(text.text())) {
                faults.error(
                        text.place(),
                        "\"" + text.text() + "\" stands here a second time",
                        "every skill once",
                        "Remove it.");
            } else {
                after.add(text.text());
            }
        }
        return after;
    }
}
