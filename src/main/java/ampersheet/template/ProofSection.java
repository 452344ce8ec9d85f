package ampersheet.template;

import ampersheet.diagnostic.Place;
import ampersheet.formula.Condition;
import ampersheet.formula.Condition.Relation;
import ampersheet.formula.Expression;
import ampersheet.formula.FormulaFault;
import ampersheet.formula.FormulaReader;
import ampersheet.formula.Spelling;
import ampersheet.formula.TradeWords;
import ampersheet.quantity.Dimension;
import ampersheet.source.Faults;
import ampersheet.source.Fields;
import ampersheet.source.Yaml;
import ampersheet.template.ProblemTemplate.Given;
import ampersheet.template.ProblemTemplate.Proof;
import ampersheet.template.ProblemTemplate.QuantityGiven;
import ampersheet.template.ProblemTemplate.Tolerance;
import ampersheet.template.ProblemTemplate.Way;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** Reads the second routes, and sees that none leans on the first. */
final class ProofSection {
    private static final String TOLERANCES = "tolerances";
    /** All corners are solved, two for each tolerance, multiplied. */
    private static final int MOST_TOLERANCES = 8;

    private final Names names;
    private final Formulas formulas;
    private final Wording wording;
    private final MeasureCheck.Things things;
    private final Taken taken;
    private final boolean modelsAreSound;
    private final List<Given> givens;
    private final Faults faults;
    private final Set<String> proven = new TreeSet<>();
    private final ProofRules rules;

    ProofSection(
            Names names,
            Formulas formulas,
            Wording wording,
            ModelSections.Read models,
            List<Given> givens,
            Faults faults) {
        this.names = names;
        this.formulas = formulas;
        this.wording = wording;
        this.things = models.things();
        this.taken = models.taken();
        this.modelsAreSound = models.sound();
        this.givens = givens;
        this.faults = faults;
        this.rules = new ProofRules(proven, things);
    }

    List<Proof> read(List<Yaml.Mapping> items) {
        List<Proof> proofs = new ArrayList<>();
        for (Yaml.Mapping item : items) {
            new One(new Fields(item, "a proof", faults)).read().ifPresent(proofs::add);
        }
        return proofs;
    }

    /** @param needed steps that need a second route, each with the place that needs it and what it is there */
    void requireFor(Map<String, Need> needed) {
        needed.forEach((step, need) -> {
            if (!proven.contains(step)) {
                String example = names.get(step)
                        .flatMap(Names.Named::dimension)
                        .flatMap(dimension -> MeasureCheck.example(dimension, things))
                        .orElse("current(D1), equals: If");
                faults.error(
                        need.place(),
                        "the step " + step + " " + need.why() + ", but has no proof",
                        "a second route under proof:, such as {of: " + step + ", measure: " + example + "}",
                        "Add a proof of " + step + " by a model.");
            }
        });
    }

    /** @param why such as {@code is asked} */
    record Need(Place place, String why) {}

    /** A formula with what is known of it. */
    private record Measured(Expression expression, Mentions mentions, Optional<Dimension> dimension) {}

    /** One proof. */
    private final class One {
        private final Fields fields;
        private Optional<Names.Named> step = Optional.empty();
        private Optional<Names.Named> varied = Optional.empty();
        private boolean search;

        One(Fields fields) {
            this.fields = fields;
        }

        Optional<Proof> read() {
            Optional<Yaml.Scalar> of = fields.needText("of", "the step that is proven");
            of.ifPresent(name -> {
                step = names.get(name.text()).filter(Names.Named::isStep);
                if (step.isEmpty()) {
                    AsksSection.unknownStep(name, names, faults);
                }
            });
            boolean extreme = isExtreme("largest") || isExtreme("smallest");
            search = !extreme && (fields.has("equals") || fields.has("smallest") || fields.has("largest"));
            varied();
            Map<String, Expression> with = with();
            Optional<Measured> measure = Optional.empty();
            Optional<Way> way = Optional.empty();
            if (extreme) {
                measure = measure();
                mustMatch(measure, step.flatMap(Names.Named::dimension));
                way = measure.flatMap(this::extreme);
            } else if (fields.has("smallest") || fields.has("largest")) {
                ProofWalk walk = new ProofWalk(fields, step, faults);
                Optional<Condition.Comparison> where = where();
                if (where.isPresent()) {
                    boolean onLeft =
                            !Mentions.of(where.get().left(), names).measures().isEmpty();
                    Expression measured =
                            onLeft ? where.get().left() : where.get().right();
                    measure = Optional.of(new Measured(measured, Mentions.of(measured, names), Optional.empty()));
                    way = walk.read(where.get(), onLeft);
                } else {
                    walk.members();
                }
            } else {
                measure = measure();
                way = fields.has("equals") ? root(measure) : direct(measure, with.keySet());
            }
            measure.ifPresent(this::isReal);
            ProofGap.Allowed tolerance =
                    new ProofGap(wording, faults).read(fields, step.flatMap(Names.Named::dimension));
            Optional<String> shares = wording.text(fields, "shares");
            fields.finish();
            of.ifPresent(name -> proven.add(name.text()));
            if (step.isEmpty() || measure.isEmpty() || way.isEmpty() || search && varied.isEmpty()) {
                return Optional.empty();
            }
            return Optional.of(new Proof(
                    step.get().id(),
                    varied.orElse(step.get()).id(),
                    with,
                    measure.get().expression(),
                    way.get(),
                    tolerance.within(),
                    tolerance.floor(),
                    tolerance.because(),
                    shares));
        }

        private void varied() {
            Optional<Yaml.Scalar> text = fields.text("varies");
            varied = search ? step : Optional.empty();
            if (text.isEmpty()) {
                return;
            }
            String name = text.get().text();
            if (!search) {
                faults.error(
                        fields.placeOf("varies"),
                        "nothing is searched here, so that nothing varies",
                        "equals:, smallest: or largest: with it",
                        "Remove varies:, or say what to search for.");
                return;
            }
            varied = names.get(name).filter(named -> named.kind() != Names.Kind.WORD);
            if (varied.isEmpty()) {
                Set<String> known = new TreeSet<>();
                names.all().forEach(named -> known.add(named.id()));
                faults.error(
                        text.get().place(),
                        "there is no quantity " + name,
                        Guess.among(known, "a quantity"),
                        Guess.of(name, known, "Name a quantity the model takes."));
                return;
            }
            names.use(name);
            if (step.isPresent()
                    && step.get().dimension().isPresent()
                    && varied.get().dimension().isPresent()
                    && !step.get().dimension().equals(varied.get().dimension())) {
                faults.error(
                        text.get().place(),
                        name + " has not the unit of " + step.get().id(),
                        "a quantity of the same kind, since what is found for it is the value of "
                                + step.get().id(),
                        "Vary another quantity.");
            }
        }

        private Map<String, Expression> with() {
            Map<String, Expression> with = new LinkedHashMap<>();
            fields.group("with").ifPresent(group -> {
                for (Yaml.Entry entry : group.entries()) {
                    String id = entry.key().text();
                    Optional<Names.Named> named = names.get(id).filter(known -> known.kind() != Names.Kind.WORD);
                    if (named.isEmpty() || modelsAreSound && !taken.byAny().contains(id)) {
                        faults.error(
                                entry.key().place(),
                                named.isEmpty()
                                        ? "there is no quantity " + id
                                        : "no model takes " + id + " as a value: another value changes nothing",
                                Guess.among(taken.byAny(), "a name that a model takes"),
                                Guess.of(id, taken.byAny(), "Name a value of the model."));
                    } else if (entry.value() instanceof Yaml.Scalar text
                            && !text.text().isBlank()) {
                        formulas.expression(
                                        text,
                                        rules.proven("another value for a model"),
                                        named.get().dimension(),
                                        isIn(named.get()))
                                .ifPresent(formula -> with.put(id, formula.expression()));
                    } else {
                        faults.error(
                                entry.key().place(),
                                "the value of \"" + id + "\" is "
                                        + entry.value().kind(),
                                "a formula",
                                "Write a formula.");
                    }
                }
            });
            return with;
        }

        private static String isIn(Names.Named named) {
            return named.id() + " is in "
                    + named.dimension().map(TradeWords::plural).orElse("something else");
        }

        private Optional<Measured> measure() {
            if (fields.has("where")) {
                faults.error(
                        fields.placeOf("where"),
                        "where: stands without a series to walk through",
                        "measure:, or smallest: or largest: with where:",
                        "Write measure:, or add smallest: or largest:.");
                fields.text("where");
                if (!fields.has("measure")) {
                    return Optional.empty();
                }
            }
            return fields.needText("measure", "what is read off the solved model, such as current(D1)")
                    .flatMap(text -> formulas.expression(text, rules.measuring(varied, position -> false)))
                    .map(formula -> new Measured(formula.expression(), formula.mentions(), formula.dimension()));
        }

        private Optional<Way> direct(Optional<Measured> measure, Set<String> replaced) {
            if (step.isPresent() && measure.isPresent()) {
                mustMatch(measure, step.get().dimension());
                boolean putIn = taken.by(measure.get().mentions(), things)
                        .contains(step.get().id());
                if (putIn && !replaced.contains(step.get().id())) {
                    faults.error(
                            fields.placeOf("measure"),
                            "the model takes " + step.get().id()
                                    + " as a value, so that measuring it only gives back what was put in",
                            "a search with equals:, smallest: or largest:, or a model built from givens",
                            "Build the model without " + step.get().id() + ", or search for it.");
                }
            }
            return Optional.of(new Way.Direct());
        }

        private boolean isExtreme(String key) {
            return fields.value(key)
                    .filter(value ->
                            value instanceof Yaml.Scalar text && text.text().equals(TOLERANCES))
                    .isPresent();
        }

        private Optional<Way> extreme(Measured measure) {
            Set<String> takenHere = taken.by(measure.mentions(), things);
            List<Tolerance> tolerances = new ArrayList<>();
            for (Given given : givens) {
                boolean moves = takenHere.contains(given.name())
                        || measure.mentions().names().stream()
                                .anyMatch(mention -> mention.name().equals(given.name()));
                if (moves && given instanceof QuantityGiven quantity) {
                    quantity.tolerance().ifPresent(tolerances::add);
                }
            }
            if (tolerances.isEmpty() || tolerances.size() > MOST_TOLERANCES) {
                faults.error(
                        fields.placeOf(isExtreme("largest") ? "largest" : "smallest"),
                        tolerances.isEmpty()
                                ? "nothing that this measure hangs on has a tolerance"
                                : "this measure hangs on " + tolerances.size() + " quantities with a tolerance",
                        "1 to " + MOST_TOLERANCES + " givens with tolerance:, which the model takes",
                        "Give the parts a tolerance.");
                return Optional.empty();
            }
            return Optional.of(new Way.Extreme(isExtreme("largest"), tolerances));
        }

        private Optional<Way> root(Optional<Measured> measure) {
            Optional<Yaml.Scalar> text = fields.text("equals");
            Optional<Dimension> needed = measure.flatMap(Measured::dimension);
            return text.flatMap(formula -> formulas.expression(
                            formula,
                            rules.proven("what the measure shall equal"),
                            needed,
                            "the measure gives "
                                    + needed.map(TradeWords::plural).orElse("something else")))
                    .map(formula -> new Way.Root(formula.expression()));
        }

        private Optional<Condition.Comparison> where() {
            if (fields.has("smallest") && fields.has("largest")) {
                faults.error(
                        fields.placeOf("largest"),
                        "smallest: and largest: exclude each other",
                        "one of the two",
                        "Remove one of the two.");
            }
            for (String other : List.of("measure", "equals")) {
                if (fields.has(other)) {
                    faults.error(
                            fields.placeOf(other),
                            other + ": has no place beside smallest: and largest:",
                            "where: \"measure <= bound\"",
                            "Put the comparison under where:.");
                }
            }
            Optional<Yaml.Scalar> text = fields.needText("where", "the condition, such as \"current(D1) <= If\"");
            if (text.isEmpty()) {
                return Optional.empty();
            }
            try {
                Condition condition = FormulaReader.condition(text.get().text());
                if (!(condition instanceof Condition.Comparison comparison)
                        || comparison.relation() == Relation.EQUAL
                        || comparison.relation() == Relation.UNEQUAL) {
                    faults.error(
                            text.get().at(condition.position()),
                            "this is not one bound on a measure",
                            "one comparison with < <= > or >=, such as \"current(D1) <= If\"",
                            "Write one comparison.");
                    return Optional.empty();
                }
                boolean left = !Mentions.of(comparison.left(), names).measures().isEmpty();
                boolean right =
                        !Mentions.of(comparison.right(), names).measures().isEmpty();
                if (left == right) {
                    faults.error(
                            text.get().at(comparison.position()),
                            left ? "both sides measure the model" : "neither side measures a model",
                            "a measure on one side, its bound on the other",
                            "Compare a measure with givens and constants.");
                    return Optional.empty();
                }
                formulas.condition(
                        text.get(), rules.measuring(varied, position -> (position > comparison.position()) == left));
                return Optional.of(comparison);
            } catch (FormulaFault fault) {
                faults.error(text.get().at(fault.position()), fault.getMessage(), fault.expected(), fault.nextAction());
                return Optional.empty();
            }
        }

        private void mustMatch(Optional<Measured> measure, Optional<Dimension> needed) {
            if (measure.isPresent()
                    && measure.get().dimension().isPresent()
                    && needed.isPresent()
                    && !measure.get().dimension().equals(needed)) {
                faults.error(
                        fields.placeOf("measure"),
                        "the measure is in "
                                + TradeWords.plural(measure.get().dimension().get()) + ", but "
                                + step.get().id()
                                + " is in " + TradeWords.plural(needed.get()),
                        "a measure in " + TradeWords.plural(needed.get()),
                        "Correct the measure, or use equals:.");
            }
        }

        /** A second route asks a model, and a search changes something that the model or the measure depends on. */
        private void isReal(Measured measure) {
            String key = fields.has("where") ? "where" : "measure";
            if (measure.mentions().measures().isEmpty()) {
                faults.error(
                        fields.placeOf(key),
                        "the measure reads nothing off a model: it is the first route again",
                        "a measure of a model, such as current(D1)",
                        "Measure the solved model.");
            }
            if (search && varied.isPresent()) {
                String id = varied.get().id();
                Set<String> takenHere = taken.by(measure.mentions(), things);
                boolean occurs = takenHere.contains(id)
                        || measure.mentions().names().stream()
                                .anyMatch(mention ->
                                        mention.inMeasure() && mention.name().equals(id));
                if (!occurs && modelsAreSound) {
                    Set<String> sameKind = new TreeSet<>();
                    takenHere.stream()
                            .filter(name -> names.get(name)
                                    .flatMap(Names.Named::dimension)
                                    .equals(varied.get().dimension()))
                            .forEach(sameKind::add);
                    faults.error(
                            fields.has("varies") ? fields.placeOf("varies") : fields.placeOf("of"),
                            "the model takes no " + id + " as a value: varying it changes nothing",
                            "varies: with a value of the model"
                                    + (sameKind.isEmpty() ? "" : ", such as " + Spelling.list(sameKind)),
                            "Add varies:, or let the model take " + id + ".");
                }
            }
        }
    }
}
