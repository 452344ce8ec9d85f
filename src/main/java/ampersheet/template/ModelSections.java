package ampersheet.template;

import ampersheet.diagnostic.Place;
import ampersheet.model.AssemblyPlan;
import ampersheet.model.CircuitPlan;
import ampersheet.model.ModelKind;
import ampersheet.model.ModelPlan;
import ampersheet.source.Faults;
import ampersheet.source.Fields;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** Reads the models of a template, whichever it has, and what measures may name of them. */
final class ModelSections {
    /**
     * @param circuit one with which nothing is wrong
     * @param parts the place of each of the circuit's parts
     * @param sound whether nothing is wrong with any of them; else which names they take is not known
     */
    record Read(
            List<ModelPlan> plans,
            Optional<CircuitPlan> circuit,
            List<Place> parts,
            MeasureCheck.Things things,
            Taken taken,
            boolean sound) {}

    private final Names names;
    private final Formulas formulas;
    private final Wording wording;
    private final Sizes sizes;
    private final Faults faults;

    /** @param sizes that are noted here and looked at once draws are worked */
    ModelSections(Names names, Formulas formulas, Wording wording, Sizes sizes, Faults faults) {
        this.names = names;
        this.formulas = formulas;
        this.wording = wording;
        this.sizes = sizes;
        this.faults = faults;
    }

    Read read(Fields fields) {
        Taken taken = new Taken();
        Set<ModelKind> models = new TreeSet<>();
        int before = faults.count();
        CircuitSection circuitSection =
                new CircuitSection(new ModelValues(ModelKind.CIRCUIT, names, formulas, taken), wording, sizes, faults);
        List<ModelPlan> plans = new ArrayList<>();
        Optional<CircuitPlan> circuit = Optional.empty();
        if (fields.has("circuit")) {
            models.add(ModelKind.CIRCUIT);
            circuit = Optional.of(
                    circuitSection.read(fields.groups("circuit", "{resistor: R1, from: [0, 4], to: [4, 4], ohms: R}")));
            circuit.ifPresent(plans::add);
        }
        boolean circuitIsSound = faults.count() == before;
        HeatSection heatSection = new HeatSection(new ModelValues(ModelKind.HEAT, names, formulas, taken), faults);
        if (fields.has("heat")) {
            plans.add(heatSection.read(
                    fields.placeOf("heat"),
                    fields.groups("heat", "{node: junction}"),
                    new MeasureCheck.Things(
                            models, circuitSection.nodes(), circuitSection.parts(), Set.of(), Set.of())));
            models.add(ModelKind.HEAT);
        }
        if (fields.has("chain")) {
            models.add(ModelKind.CHAIN);
            ChainSection section = new ChainSection(
                    formulas, new ModelValues(ModelKind.CHAIN, names, formulas, taken), wording, sizes, faults);
            fields.group("chain").flatMap(section::read).ifPresent(plans::add);
        }
        assembly(fields, models, taken).ifPresent(plans::add);
        MeasureCheck.Things things = new MeasureCheck.Things(
                models,
                circuitSection.nodes(),
                circuitSection.parts(),
                heatSection.nodeNames(),
                heatSection.flowNames());
        return new Read(
                plans,
                circuitIsSound ? circuit : Optional.empty(),
                circuitSection.places(),
                things,
                taken,
                faults.count() == before);
    }

    /** One at most: a problem is about one way to join tiles. */
    private Optional<AssemblyPlan> assembly(Fields fields, Set<ModelKind> models, Taken taken) {
        Optional<AssemblyPlan> read = Optional.empty();
        for (Map.Entry<String, ModelKind> kind : AssemblySection.KEYS.entrySet()) {
            if (!fields.has(kind.getKey())) {
                continue;
            }
            if (models.stream().anyMatch(AssemblySection.KEYS::containsValue)) {
                faults.error(
                        fields.placeOf(kind.getKey()),
                        "the template has two of edge, branches, row and net",
                        "one of them",
                        "Remove one, or write two templates.");
                models.add(kind.getValue());
                continue;
            }
            models.add(kind.getValue());
            AssemblySection section = new AssemblySection(
                    formulas, new ModelValues(kind.getValue(), names, formulas, taken), wording, sizes, faults);
            read = fields.group(kind.getKey()).flatMap(group -> section.read(kind.getValue(), group));
        }
        return read;
    }
}
