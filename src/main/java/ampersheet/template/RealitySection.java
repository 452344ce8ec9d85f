package ampersheet.template;

import ampersheet.circuit.PartKind;
import ampersheet.formula.Expression;
import ampersheet.formula.TradeWords;
import ampersheet.model.CircuitPlan;
import ampersheet.model.HeatPlan;
import ampersheet.model.ModelPlan;
import ampersheet.model.Reality;
import ampersheet.quantity.Dimension;
import ampersheet.source.Faults;
import ampersheet.source.Fields;
import ampersheet.source.Yaml;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** Reads what the models are without an idealisation. */
final class RealitySection {
    private static final String EXAMPLE = "such as {named: an input that draws 1 µA, draws: {R2: 1 uA}}";

    private final Names names;
    private final Formulas formulas;
    private final Wording wording;
    private final Faults faults;
    private final Set<String> parts = new TreeSet<>();
    private final Set<String> nodes = new TreeSet<>();
    private final Set<String> taken = new TreeSet<>();

    RealitySection(Names names, Formulas formulas, Wording wording, List<ModelPlan> models, Faults faults) {
        this.names = names;
        this.formulas = formulas;
        this.wording = wording;
        this.faults = faults;
        names.all().stream()
                .filter(named -> named.kind() == Names.Kind.GIVEN || named.kind() == Names.Kind.CONSTANT)
                .forEach(named -> taken.add(named.id()));
        for (ModelPlan model : models) {
            taken.addAll(model.names());
            if (model instanceof CircuitPlan circuit) {
                circuit.parts().stream().filter(RealitySection::hasTwoEnds).forEach(part -> parts.add(part.name()));
            } else if (model instanceof HeatPlan heat) {
                heat.nodes().forEach(node -> nodes.add(node.name()));
            }
        }
    }

    private static boolean hasTwoEnds(CircuitPlan.PlannedPart part) {
        return part.kind() != PartKind.WIRE && part.kind().terminals().size() >= 2;
    }

    Optional<Reality> read(Yaml.Mapping group) {
        Fields fields = new Fields(group, "what happens really", faults);
        Optional<String> named =
                wording.needText(fields, "named", "what goes on after \"with\", such as a source of 0.1 Ω");
        Map<String, Expression> values = values(fields);
        Map<String, Expression> series = things(fields, "series", parts, "a part of the circuit", Dimension.RESISTANCE);
        Map<String, Expression> beside = things(fields, "beside", parts, "a part of the circuit", Dimension.RESISTANCE);
        Map<String, Expression> draws = things(fields, "draws", parts, "a part of the circuit", Dimension.CURRENT);
        Map<String, Expression> warms = things(fields, "warms", nodes, "a node of the heat network", Dimension.POWER);
        Map<String, Expression> within =
                things(fields, "within", taken, "a given, a constant or a step that a model takes", Dimension.ONE);
        if (within.size() > Reality.MOST_CORNERS) {
            faults.error(
                    fields.placeOf("within"),
                    within.size() + " names lie off at once",
                    "at most " + Reality.MOST_CORNERS + ", because every corner is solved",
                    "Name those that matter most.");
        }
        fields.finish();
        if (values.isEmpty()
                && series.isEmpty()
                && beside.isEmpty()
                && draws.isEmpty()
                && warms.isEmpty()
                && within.isEmpty()) {
            faults.error(
                    fields.place(),
                    "nothing is other than in the models",
                    "values:, series:, beside:, draws:, warms: or within:, " + EXAMPLE,
                    "Say what is other, or take \"real\" away.");
            return Optional.empty();
        }
        return named.map(with -> new Reality(with, values, series, beside, draws, warms, within));
    }

    private Map<String, Expression> values(Fields fields) {
        Map<String, Expression> read = new LinkedHashMap<>();
        fields.group("values")
                .ifPresent(group -> group.entries().forEach(entry -> {
                    String name = entry.key().text();
                    Optional<Dimension> dimension = names.get(name)
                            .filter(named -> taken.contains(name))
                            .flatMap(Names.Named::dimension);
                    if (dimension.isEmpty()) {
                        strange(entry.key(), taken, "a given, a constant or a step that a model takes");
                    } else {
                        formula(entry, "the value of " + name, dimension.get())
                                .ifPresent(formula -> read.put(name, formula));
                    }
                }));
        return read;
    }

    private Map<String, Expression> things(
            Fields fields, String key, Set<String> known, String what, Dimension dimension) {
        Map<String, Expression> read = new LinkedHashMap<>();
        fields.group(key)
                .ifPresent(group -> group.entries().forEach(entry -> {
                    if (known.contains(entry.key().text())) {
                        formula(entry, key + " of " + entry.key().text(), dimension)
                                .ifPresent(formula -> read.put(entry.key().text(), formula));
                    } else {
                        strange(entry.key(), known, what);
                    }
                }));
        return read;
    }

    private Optional<Expression> formula(Yaml.Entry entry, String what, Dimension dimension) {
        if (!(entry.value() instanceof Yaml.Scalar text) || text.text().isBlank()) {
            faults.error(
                    entry.value().place(),
                    what + " is " + entry.value().kind(),
                    "a number or a formula",
                    "Write a number or a formula.");
            return Optional.empty();
        }
        return formulas.expression(
                        text,
                        Formulas.ALL_NAMES,
                        Optional.of(dimension),
                        what + " takes " + TradeWords.plural(dimension))
                .map(Formulas.Checked::expression);
    }

    private void strange(Yaml.Scalar key, Set<String> known, String what) {
        faults.error(
                key.place(),
                key.text() + " is not " + what,
                Guess.among(known, what),
                Guess.of(key.text(), known, "Use one of these names."));
    }
}
