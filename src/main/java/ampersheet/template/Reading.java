package ampersheet.template;

import ampersheet.diagnostic.Place;
import ampersheet.diagnostic.Printable;
import ampersheet.formula.Condition;
import ampersheet.formula.Spelling;
import ampersheet.language.Language;
import ampersheet.source.Faults;
import ampersheet.source.Fields;
import ampersheet.source.Languages;
import ampersheet.source.SourceText;
import ampersheet.source.Yaml;
import ampersheet.source.YamlReader;
import ampersheet.template.ProblemTemplate.Ask;
import ampersheet.template.ProblemTemplate.Constant;
import ampersheet.template.ProblemTemplate.Given;
import ampersheet.template.ProblemTemplate.Mistake;
import ampersheet.template.ProblemTemplate.Proof;
import ampersheet.template.ProblemTemplate.StepLine;
import ampersheet.template.ProblemTemplate.Words;
import java.util.ArrayList;
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
    private final Language language;
    private final Sizes sizes = new Sizes();

    Reading(TemplateFiles files, String name, Language language, Faults faults) {
        this.language = language;
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
        return mapping(source).flatMap(mapping -> read(translated(mapping), text));
    }

    /** With the words of its language put in; those of English are its own. */
    private Yaml.Mapping translated(Yaml.Mapping mapping) {
        if (language.equals(Languages.ENGLISH)) {
            return mapping;
        }
        String file = TemplateFiles.problem(language);
        Optional<String> words = files.text(name, file);
        if (words.isEmpty()) {
            faults.error(
                    Place.inFile(files.shown(name, file)),
                    "the template has no words in the language " + language.code(),
                    "its texts in this language",
                    "Write the file, or leave the template out of a plan in this language.");
            return mapping;
        }
        return mapping(new SourceText(files.shown(name, file), words.get()))
                .map(translation -> Translation.into(mapping, translation, faults))
                .orElse(mapping);
    }

    private Optional<Yaml.Mapping> mapping(SourceText source) {
        Optional<Yaml> root = YamlReader.read(source, faults);
        if (root.isPresent() && !(root.get() instanceof Yaml.Mapping)) {
            faults.error(
                    root.get().place(),
                    "the template is " + root.get().kind(),
                    "keys such as title, givens and steps",
                    "Write the template, beginning from one that exists.");
        }
        return root.filter(Yaml.Mapping.class::isInstance).map(Yaml.Mapping.class::cast);
    }

    private Optional<ProblemTemplate> read(Yaml.Mapping mapping, String text) {
        Map<String, String> fingerprinted =
                new TreeMap<>(Map.of(TemplateFiles.PROBLEM, TemplateVersion.ofASheet(mapping, text)));
        Fields fields = new Fields(mapping, "a template", faults);
        Head head = head(fields);
        Numerics numerics = numerics(fields, head.teaches());
        Asked asked = asked(fields, numerics.steps());
        ModelSections.Read modelled = new ModelSections(names, formulas, wording, sizes, faults).read(fields);
        List<Proof> proofs = proofs(fields, numerics, asked, modelled);
        List<String> cautions = cautions(fields);
        Premises premises = new PremisesSection(names, formulas, wording, files, faults)
                .read(fields, modelled.plans(), head.skill());
        if (!language.equals(Languages.ENGLISH)) {
            String words = TemplateFiles.problem(language);
            files.text(name, words).ifPresent(own -> fingerprinted.put(words, own));
        }
        TemplateVersion.limits(premises).ifPresent(limits -> fingerprinted.put(TemplateFiles.LIMITS, limits));
        boolean hasCurve = fields.has("curve");
        fields.finish();
        Map<String, String> statements = statements(fingerprinted);
        int beforeCurve = faults.count();
        Optional<CurvePlan> curve = hasCurve ? curve(fields, numerics, asked) : Optional.empty();
        boolean curveIsSound = faults.count() == beforeCurve;
        unused();
        if (numerics.sound() && !files.areChecked()) {
            trySamples(fields, numerics, asked, modelled, curveIsSound ? curve : Optional.empty());
        }
        if (faults.hasErrors()) {
            return Optional.empty();
        }
        List<StepLine> lines =
                numerics.steps().stream().map(StepsSection.Read::line).toList();
        QuantitySymbols symbols = QuantitySymbols.of(language, numerics.givens(), numerics.constants(), lines);
        return Optional.of(new ProblemTemplate(
                name,
                head.title().orElseThrow(),
                name.substring(0, name.indexOf('/')),
                head.skill().orElseThrow(),
                head.level(),
                head.teaches(),
                symbols.givens(numerics.givens()),
                symbols.constants(numerics.constants()),
                List.copyOf(numerics.requirements().keySet()),
                numerics.working(),
                symbols.lines(lines),
                asked.asks(),
                asked.section().designs().designs(),
                asked.mistakes(),
                modelled.plans(),
                symbols.curve(curve),
                proofs,
                cautions,
                premises,
                new Words(language, statements),
                TemplateVersion.of(fingerprinted)));
    }

    /** What a template says of itself first. */
    private record Head(Optional<String> title, Optional<String> skill, int level, List<String> teaches) {}

    private Head head(Fields fields) {
        Optional<String> title = wording.needText(fields, "title", "the title, as printed above the problem")
                .map(Printable::line);
        Optional<String> skill = wording.needText(fields, "skill", "what it practises, such as series resistor")
                .map(Printable::line);
        int level = fields.needText(
                        "level", "0 first evening, 1 first lesson, 2 practice, 3 several ideas at once, 4 design task")
                .flatMap(number -> new Numbers(faults).whole(number, 0, 4))
                .orElse(1);
        return new Head(title, skill, level, texts(fields, "teaches", "the laws and rules the steps use"));
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
        WorstCase worstCase = new WorstCase(
                names, givens, tolerances.noted(), constants, requireSection().readable(fields), language, faults);
        fields.has("require");
        fields.need("steps", "the steps a learner works through");
        List<StepsSection.Read> steps = new StepsSection(
                        names, formulas, wording, teaches, worstCase, new BlankStep(givens, constants), faults)
                .read(fields.groups(
                        "steps", "{id: R, meaning: ..., is: ..., unit: ohm, principle: ..., because: ...}"));
        // After the steps, so that a step in a requirement is told as that.
        Map<Condition, Place> requirements = requireSection().read(fields);
        return new Numerics(givens, constants, requirements, steps, faults.count() == before);
    }

    private record Asked(AsksSection section, List<Ask> asks, List<Mistake> mistakes) {}

    private Asked asked(Fields fields, List<StepsSection.Read> steps) {
        AsksSection section = new AsksSection(names, formulas, wording, vocabulary(), steps, language, faults);
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

    private List<Proof> proofs(Fields fields, Numerics numerics, Asked asked, ModelSections.Read modelled) {
        ProofSection section = new ProofSection(names, formulas, wording, modelled, numerics.givens(), faults);
        List<Proof> proofs = section.read(fields.groups("proof", "{of: R, measure: current(D1), equals: If}"));
        section.requireFor(needed(asked.section(), modelled.taken()));
        return proofs;
    }

    private Optional<CurvePlan> curve(Fields fields, Numerics numerics, Asked asked) {
        CurveSection section = new CurveSection(
                names, formulas, wording, asked.section().asked().keySet(), numerics, faults);
        return fields.group("curve").flatMap(section::read);
    }

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
                String code = tag.isEmpty() ? Languages.ENGLISH.code() : tag.substring(1);
                if (tag.isEmpty() || code.equals(language.code())) {
                    fingerprinted.put(file, text);
                }
                statements.put(code, text.strip());
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
        if (!statements.isEmpty() && !statements.containsKey(language.code()) && !language.equals(Languages.ENGLISH)) {
            String file = STATEMENT + "." + language.code() + STATEMENT_END;
            faults.error(
                    Place.inFile(files.shown(name, file)),
                    "the template has no statement in the language " + language.code(),
                    "the same scene in this language",
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

    private RequireSection requireSection() {
        return new RequireSection(names, formulas, faults);
    }

    private void trySamples(
            Fields fields, Numerics numerics, Asked asked, ModelSections.Read modelled, Optional<CurvePlan> curve) {
        List<Condition> requirements = List.copyOf(numerics.requirements().keySet());
        Samples.Outcome outcome = new Samples(numerics.givens(), numerics.constants(), requirements).find(SAMPLES);
        if (outcome.found().isEmpty()) {
            requireSection().impossible(outcome, numerics.requirements());
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
}
