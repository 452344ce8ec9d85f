package ampersheet.template;

import ampersheet.diagnostic.Place;
import ampersheet.diagnostic.Printable;
import ampersheet.formula.Condition;
import ampersheet.formula.Evaluation;
import ampersheet.formula.FormulaFault;
import ampersheet.formula.FormulaReader;
import ampersheet.formula.Scope;
import ampersheet.formula.Spelling;
import ampersheet.formula.Working;
import ampersheet.model.AssemblyPlan;
import ampersheet.model.CircuitPlan;
import ampersheet.model.ModelKind;
import ampersheet.model.ModelPlan;
import ampersheet.source.Faults;
import ampersheet.source.Fields;
import ampersheet.source.SourceText;
import ampersheet.source.Yaml;
import ampersheet.source.YamlReader;
import ampersheet.template.ProblemTemplate.Ask;
import ampersheet.template.ProblemTemplate.Constant;
import ampersheet.template.ProblemTemplate.Given;
import ampersheet.template.ProblemTemplate.Mistake;
import ampersheet.template.ProblemTemplate.Proof;
import ampersheet.template.ProblemTemplate.Words;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** One reading of one template: section after section, each checked against the names before it. */
final class Reading {
    /** Draws that are worked to see what formulas alone do not show. */
    private static final int SAMPLES = 100;

    static final String STATEMENT = "statement";
    static final String STATEMENT_END = ".md.ftl";

    private final TemplateFiles files;
    private final String name;
    private final Faults faults;
    private final Names names;
    private final Formulas formulas;
    private final Wording wording;
    private final Sizes sizes = new Sizes();

    Reading(TemplateFiles files, String name, Faults faults) {
        this.files = files;
        this.name = name;
        this.faults = faults;
        this.names = new Names(faults);
        this.formulas = new Formulas(names, faults);
        this.wording = new Wording(faults);
    }

    /** The template, as far as it could be read; only without errors is it one. */
    Optional<ProblemTemplate> read(String text) {
        SourceText source = new SourceText(files.shown(name, TemplateFiles.PROBLEM), text);
        Optional<Yaml> root = YamlReader.read(source, faults);
        Map<String, String> fingerprinted = new TreeMap<>(Map.of(TemplateFiles.PROBLEM, text));
        if (root.isEmpty()) {
            return Optional.empty();
        }
        if (!(root.get() instanceof Yaml.Mapping mapping)) {
            faults.error(
                    root.get().place(),
                    "the template is " + root.get().kind(),
                    "keys such as title, givens and steps",
                    "Write the template, beginning from one that exists.");
            return Optional.empty();
        }
        fingerprinted.put(TemplateFiles.PROBLEM, ofASheet(mapping, text));
        Fields fields = new Fields(mapping, "a template", faults);
        Head head = head(fields);
        Numerics numerics = numerics(fields, head.teaches());
        Asked asked = asked(fields, numerics.steps());
        Modelled modelled = modelled(fields);
        ProofSection proofSection = new ProofSection(
                names,
                formulas,
                wording,
                modelled.things(),
                modelled.taken(),
                modelled.sound(),
                numerics.givens(),
                faults);
        List<Proof> proofs = proofSection.read(fields.groups("proof", "{of: R, measure: current(D1), equals: If}"));
        proofSection.requireFor(needed(asked.section(), modelled.taken()));
        List<String> cautions = cautions(fields);
        Premises premises = new PremisesSection(names, formulas, wording, files, faults)
                .read(fields, modelled.plans(), head.skill());
        fingerprint(premises).ifPresent(limits -> fingerprinted.put(TemplateFiles.LIMITS, limits));
        boolean hasCurve = fields.has("curve");
        fields.finish();
        Map<String, String> statements = statements(fingerprinted);
        int beforeCurve = faults.count();
        Optional<CurvePlan> curve = !hasCurve
                ? Optional.empty()
                : fields.group("curve")
                        .flatMap(new CurveSection(
                                names,
                                formulas,
                                wording,
                                asked.section().asked().keySet(),
                                numerics.givens(),
                                numerics.constants(),
                                numerics.steps(),
                                faults)::read);
        boolean curveIsSound = faults.count() == beforeCurve;
        unused();

        if (numerics.sound()) {
            trySamples(fields, numerics, asked, modelled, curveIsSound ? curve : Optional.empty());
        }
        if (faults.hasErrors()) {
            return Optional.empty();
        }
        return Optional.of(new ProblemTemplate(
                name,
                head.title().orElseThrow(),
                name.substring(0, name.indexOf('/')),
                head.skill().orElseThrow(),
                head.level(),
                head.teaches(),
                numerics.givens(),
                numerics.constants(),
                List.copyOf(numerics.requirements().keySet()),
                numerics.working(),
                numerics.steps().stream().map(StepsSection.Read::line).toList(),
                asked.asks(),
                asked.section().designs().designs(),
                asked.mistakes(),
                modelled.plans(),
                curve,
                proofs,
                cautions,
                premises,
                new Words(statements),
                fingerprint(fingerprinted)));
    }

    /** What a template says of itself first. */
    private record Head(Optional<String> title, Optional<String> skill, int level, List<String> teaches) {}

    private Head head(Fields fields) {
        Optional<String> title = wording.needText(fields, "title", "the title, as printed above the problem")
                .map(Printable::line);
        Optional<String> skill = wording.needText(fields, "skill", "what it practises, such as series resistor")
                .map(Printable::line);
        int level = fields.needText("level", "1 first lesson, 2 practice, 3 several ideas at once, 4 design task")
                .flatMap(number -> new Numbers(faults).whole(number, 1, 4))
                .orElse(1);
        return new Head(title, skill, level, texts(fields, "teaches", "the laws and rules the steps use"));
    }

    /**
     * What can be worked without a model.
     *
     * @param requirements with the place of each
     * @param sound whether nothing is wrong with any of it
     */
    private record Numerics(
            List<Given> givens,
            List<Constant> constants,
            Map<Condition, Place> requirements,
            List<StepsSection.Read> steps,
            boolean sound) {
        Working working() {
            return new Working(steps.stream().map(StepsSection.Read::step).toList());
        }
    }

    private Numerics numerics(Fields fields, List<String> teaches) {
        int before = faults.count();
        Tolerances tolerances = new Tolerances(formulas, faults);
        GivensSection givensSection = new GivensSection(names, wording, tolerances, faults);
        fields.need("givens", "the quantities that are drawn");
        List<Given> drawn = fields.group("givens").map(givensSection::givens).orElse(List.of());
        List<Constant> constants =
                fields.group("constants").map(givensSection::constants).orElse(List.of());
        List<Given> givens = tolerances.of(drawn);
        WorstCase worstCase =
                new WorstCase(names, givens, tolerances.noted(), constants, readableRequirements(fields), faults);
        fields.has("require");
        fields.need("steps", "the steps a learner works through");
        List<StepsSection.Read> steps = new StepsSection(
                        names, formulas, wording, teaches, worstCase, new BlankStep(givens, constants), faults)
                .read(fields.groups(
                        "steps", "{id: R, meaning: ..., is: ..., unit: ohm, principle: ..., because: ...}"));
        // After the steps, so that a step in a requirement is told as that.
        Map<Condition, Place> requirements = requirements(fields);
        return new Numerics(givens, constants, requirements, steps, faults.count() == before);
    }

    private record Asked(AsksSection section, List<Ask> asks, List<Mistake> mistakes) {}

    private Asked asked(Fields fields, List<StepsSection.Read> steps) {
        AsksSection section = new AsksSection(names, formulas, wording, vocabulary(), steps, faults);
        fields.need("asks", "what is asked");
        List<Ask> asks = section.read(fields.groups("asks", "{step: R, within: 2 %}"));
        if (fields.has("asks") && asks.isEmpty() && section.asked().isEmpty()) {
            faults.error(fields.placeOf("asks"), "nothing is asked", "at least one question", "Ask for a step.");
        }
        List<Mistake> mistakes = new MistakesSection(
                        names,
                        formulas,
                        wording,
                        section.asked().keySet(),
                        section.designs().blanks(),
                        steps,
                        faults)
                .read(fields.groups("mistakes", "{id: no-forward-voltage, of: R, is: Vs / If, says: ...}"));
        return new Asked(section, asks, mistakes);
    }

    /**
     * The models, and what measures may name of them.
     *
     * @param circuit one with which nothing is wrong, with the place of each of its parts
     * @param sound whether nothing is wrong with any of them
     */
    private record Modelled(
            List<ModelPlan> plans,
            Optional<CircuitPlan> circuit,
            List<Place> parts,
            MeasureCheck.Things things,
            Taken taken,
            boolean sound) {}

    private Modelled modelled(Fields fields) {
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
        return new Modelled(
                plans,
                circuitIsSound ? circuit : Optional.empty(),
                circuitSection.places(),
                things,
                taken,
                faults.count() == before);
    }

    /** The text without {@code after}: what is learned before a skill changes no sheet, and so no sheet's ID. */
    private static String ofASheet(Yaml.Mapping mapping, String text) {
        StringBuilder left = new StringBuilder();
        int line = 1;
        int from = 0;
        while (from < text.length()) {
            int end = text.indexOf('\n', from) < 0 ? text.length() : text.indexOf('\n', from) + 1;
            if (mapping.flow() || !isAfter(mapping, line)) {
                left.append(text, from, end);
            }
            from = end;
            line++;
        }
        return left.toString();
    }

    /** Whether a line belongs to {@code after}: from its key to the next one's. */
    private static boolean isAfter(Yaml.Mapping mapping, int line) {
        boolean within = false;
        for (Yaml.Entry entry : mapping.entries()) {
            if (entry.key().place().line() <= line) {
                within = entry.key().text().equals("after");
            }
        }
        return within;
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
                        "the template has two of edge, branches and row",
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

    private List<String> texts(Fields fields, String key, String expected) {
        fields.need(key, expected);
        Set<String> texts = new TreeSet<>();
        List<String> inOrder = new ArrayList<>();
        for (Yaml item : fields.list(key).map(Yaml.Sequence::items).orElse(List.of())) {
            if (!(item instanceof Yaml.Scalar text) || text.text().isBlank()) {
                faults.error(item.place(), "this item of " + key + " is " + item.kind(), "a text", "Write a text.");
            } else if (!texts.add(text.text())) {
                faults.error(
                        text.place(),
                        "\"" + text.text() + "\" stands here a second time",
                        "every item once",
                        "Remove it.");
            } else {
                wording.check(text.text(), text::at);
                inOrder.add(text.text());
            }
        }
        return inOrder;
    }

    /** With the place of each. */
    private Map<Condition, Place> requirements(Fields fields) {
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
    private List<Condition> readableRequirements(Fields fields) {
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

    private static final Formulas.Rule BEFORE_THE_STEPS = (named, mention) -> !named.isStep()
            ? Optional.empty()
            : Optional.of(new Formulas.Refusal(
                    "the step " + named.id() + " is worked only after a draw was accepted",
                    "givens and constants",
                    "Write the formula of " + named.id() + " with the givens."));

    private Map<String, ProofSection.Need> needed(AsksSection asks, Taken taken) {
        Map<String, ProofSection.Need> needed = new TreeMap<>();
        asks.asked().forEach((step, place) -> {
            if (names.get(step).map(Names.Named::isStep).orElse(false)) {
                needed.put(step, new ProofSection.Need(place, "is asked"));
            }
        });
        asks.conditions()
                .forEach((step, place) -> needed.putIfAbsent(step, new ProofSection.Need(place, "decides a choice")));
        asks.designs()
                .conditions()
                .forEach((step, place) -> needed.putIfAbsent(step, new ProofSection.Need(place, "decides a design")));
        taken.steps()
                .forEach((step, place) ->
                        needed.putIfAbsent(step, new ProofSection.Need(place, "is a value of a model")));
        // What a learner is free to choose has no one value to find; the second route solves the models with it.
        needed.keySet().removeAll(asks.designs().blanks());
        return needed;
    }

    private List<String> cautions(Fields fields) {
        List<String> cautions = new ArrayList<>();
        for (Yaml item : fields.list("cautions").map(Yaml.Sequence::items).orElse(List.of())) {
            if (item instanceof Yaml.Scalar id && Cautions.IDS.contains(id.text())) {
                cautions.add(id.text());
            } else {
                String written = item instanceof Yaml.Scalar id ? id.text() : "";
                faults.error(
                        item.place(),
                        "there is no caution " + (written.isEmpty() ? "like this" : written),
                        Spelling.list(Cautions.IDS),
                        Guess.of(written, Cautions.IDS, "Use one of these."));
            }
        }
        return cautions;
    }

    private Map<String, String> statements(Map<String, String> fingerprinted) {
        Map<String, String> statements = new TreeMap<>();
        for (String file : files.files(name)) {
            if (!file.startsWith(STATEMENT) || !file.endsWith(STATEMENT_END)) {
                continue;
            }
            String tag = file.substring(STATEMENT.length(), file.length() - STATEMENT_END.length());
            if (!tag.isEmpty() && !tag.matches("\\.[a-z]{2,3}(-[A-Za-z0-9]{2,8})?")) {
                continue;
            }
            files.text(name, file).ifPresent(text -> {
                fingerprinted.put(file, text);
                statements.put(tag.isEmpty() ? "en" : tag.substring(1), text.strip());
                statement(new SourceText(files.shown(name, file), text));
            });
        }
        if (!fingerprinted.containsKey(STATEMENT + STATEMENT_END)) {
            faults.error(
                    Place.inFile(files.shown(name, STATEMENT + STATEMENT_END)),
                    "the template has no statement",
                    "two to five short sentences that set a scene",
                    "Write the file.");
        }
        return statements;
    }

    private void statement(SourceText source) {
        if (source.text().isBlank()) {
            faults.error(
                    source.at(0),
                    "the statement is empty",
                    "two to five short sentences that set a scene",
                    "Write them.");
            return;
        }
        StatementCheck.check(source.text(), source::at, vocabulary(), wording, faults);
    }

    private StatementCheck.Vocabulary vocabulary() {
        return new StatementCheck.Vocabulary() {
            @Override
            public Optional<Set<String>> wordsOf(String id) {
                return names.get(id)
                        .filter(named -> named.kind() == Names.Kind.WORD)
                        .map(named -> new TreeSet<>(named.words()));
            }

            @Override
            public boolean isPrinted(String id) {
                return names.get(id).map(named -> !named.isStep()).orElse(false);
            }

            @Override
            public boolean isStep(String id) {
                return names.get(id).map(Names.Named::isStep).orElse(false);
            }

            @Override
            public Set<String> printable() {
                Set<String> printable = new TreeSet<>();
                names.all().stream().filter(named -> !named.isStep()).forEach(named -> printable.add(named.id()));
                return printable;
            }

            @Override
            public void use(String id) {
                names.use(id);
            }
        };
    }

    private void unused() {
        for (Names.Named named : names.all()) {
            if (!names.isUsed(named.id())) {
                faults.warning(
                        named.place(),
                        "nothing uses " + named.id() + ", " + named.kind().told(),
                        named.isStep()
                                ? "a step that is asked, or that leads to one"
                                : "a formula, a model or a statement with it",
                        "Use it, or remove it.");
            }
        }
    }

    private void trySamples(
            Fields fields, Numerics numerics, Asked asked, Modelled modelled, Optional<CurvePlan> curve) {
        List<Condition> requirements = List.copyOf(numerics.requirements().keySet());
        Samples.Outcome outcome = new Samples(numerics.givens(), numerics.constants(), requirements).find(SAMPLES);
        if (outcome.found().isEmpty()) {
            impossible(outcome, numerics.requirements());
            return;
        }
        int beforeSizes = faults.count();
        sizes.check(numerics.givens(), requirements, numerics.working(), outcome.found(), faults);
        if (faults.count() > beforeSizes) {
            return;
        }
        Map<String, Place> stepPlaces = new TreeMap<>();
        names.all().forEach(named -> stepPlaces.put(named.id(), named.place()));
        SampleCheck check = new SampleCheck(numerics.givens(), numerics.steps(), stepPlaces, outcome.found(), faults);
        check.asks(asked.asks(), asked.section().asked());
        modelled.circuit().ifPresent(plan -> new CircuitCheck(plan, modelled.parts(), faults).check(check.worked()));
        curve.ifPresent(plan -> check.curve(plan, fields.placeOf("curve")));
    }

    /** Points at the requirement that most combinations fail first. */
    private void impossible(Samples.Outcome outcome, Map<Condition, Place> requirements) {
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

    /** Limits decide which draws are refused, so that they belong to the version of the template. */
    private static Optional<String> fingerprint(Premises premises) {
        StringBuilder limits = new StringBuilder();
        premises.limits()
                .forEach(limited -> limits.append(limited.limit().id())
                        .append(' ')
                        .append(limited.limit().told())
                        .append('\n'));
        premises.partLimits()
                .forEach(limit -> limits.append(limit.id())
                        .append(' ')
                        .append(limit.told())
                        .append('\n'));
        return limits.isEmpty() ? Optional.empty() : Optional.of(limits.toString());
    }

    private static String fingerprint(Map<String, String> texts) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            texts.forEach((file, text) -> {
                byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
                digest.update((file + "\n" + bytes.length + "\n").getBytes(StandardCharsets.UTF_8));
                digest.update(bytes);
            });
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java platform has SHA-256", impossible);
        }
    }
}
