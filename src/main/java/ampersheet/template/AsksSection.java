package ampersheet.template;

import ampersheet.answer.Acceptance;
import ampersheet.diagnostic.Place;
import ampersheet.formula.Condition;
import ampersheet.formula.Expression;
import ampersheet.formula.Step;
import ampersheet.language.Language;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.PreferredSeries;
import ampersheet.source.Faults;
import ampersheet.source.Fields;
import ampersheet.source.Yaml;
import ampersheet.template.ProblemTemplate.Ask;
import ampersheet.template.ProblemTemplate.ChoiceAsk;
import ampersheet.template.ProblemTemplate.ChoiceOption;
import ampersheet.template.ProblemTemplate.QuantityAsk;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;

/** Reads what is asked, and what counts as the right answer. */
final class AsksSection {
    private static final int FIGURES = 3;
    private static final int MOST_FIGURES = 6;
    /** A wider tolerance would take most wrong methods for right. */
    private static final double WIDEST = 0.1;

    private final Names names;
    private final Formulas formulas;
    private final Numbers numbers;
    private final Wording wording;
    private final StatementCheck.Vocabulary vocabulary;
    private final Language language;
    private final Faults faults;
    private final Map<String, StepsSection.Read> steps = new LinkedHashMap<>();
    private final DesignSection designs;
    private final Map<String, Place> asked = new TreeMap<>();
    /** Steps on which a choice depends, with the place of the condition. */
    private final Map<String, Place> conditions = new TreeMap<>();

    /** @param language of the template, for questions that it leaves to the program */
    AsksSection(
            Names names,
            Formulas formulas,
            Wording wording,
            StatementCheck.Vocabulary vocabulary,
            List<StepsSection.Read> steps,
            Language language,
            Faults faults) {
        this.names = names;
        this.formulas = formulas;
        this.numbers = new Numbers(faults);
        this.wording = wording;
        this.vocabulary = vocabulary;
        this.language = language;
        this.faults = faults;
        steps.forEach(step -> this.steps.put(step.step().id(), step));
        this.designs = new DesignSection(this, names, formulas, wording, this.steps, faults);
    }

    List<Ask> read(List<Yaml.Mapping> items) {
        List<Ask> asks = new ArrayList<>();
        for (Yaml.Mapping item : items) {
            Fields fields = new Fields(item, "a question", faults);
            long kinds = List.of("step", "choice", "design").stream()
                    .filter(fields::has)
                    .count();
            if (kinds != 1) {
                faults.error(
                        fields.place(),
                        kinds > 1
                                ? "the question asks for more than one of step, choice and design"
                                : "the question does not say what it asks for",
                        "step:, choice: or design:",
                        "Name the step, the choice or the design.");
            } else if (fields.has("design")) {
                asks.addAll(designs.read(fields));
            } else {
                (fields.has("choice") ? choice(fields) : quantity(fields)).ifPresent(asks::add);
            }
        }
        choicesFollowFromNoDesign();
        asks.forEach(this::isShortEnough);
        return asks;
    }

    /** With what the program adds to it. */
    private void isShortEnough(Ask ask) {
        Place place = asked.get(ask.of());
        if (ask.prompt().length() > StatementReader.LONGEST && faults.isQuietAt(place)) {
            faults.error(
                    place,
                    "the question is longer than " + StatementReader.LONGEST + " characters",
                    "one or two short sentences",
                    "Shorten the prompt, or the meaning of the step.");
        }
    }

    /** Which option is right must not hang on what a learner chose. */
    private void choicesFollowFromNoDesign() {
        conditions.forEach((step, place) -> {
            if (designs.blanks().contains(step) || designs.following().contains(step)) {
                faults.error(
                        place,
                        "the right option would hang on the values that a learner chooses for the design",
                        "conditions on what the design does not change",
                        "Ask for the quantity instead of a choice.");
            }
        });
    }

    DesignSection designs() {
        return designs;
    }

    /** Asked steps and choices, with the places where they are asked. */
    Map<String, Place> asked() {
        return asked;
    }

    Map<String, Place> conditions() {
        return conditions;
    }

    private Optional<Ask> quantity(Fields fields) {
        Yaml.Scalar name = fields.text("step").orElse(null);
        Optional<Yaml.Scalar> within = fields.text("within");
        Optional<Yaml.Scalar> exactly = fields.text("exactly");
        int figures = fields.text("figures")
                .flatMap(text -> numbers.whole(text, 1, MOST_FIGURES))
                .orElse(FIGURES);
        Optional<Yaml.Scalar> prompt = fields.text("prompt");
        prompt.ifPresent(this::checkPrompt);
        fields.finish();
        if (name == null) {
            return Optional.empty();
        }
        if (!names.get(name.text()).map(Names.Named::isStep).orElse(false)) {
            unknownStep(name, names, faults);
            return Optional.empty();
        }
        names.use(name.text());
        isAskedOnce(name);
        if (within.isPresent() == exactly.isPresent()) {
            faults.error(
                    fields.place(),
                    within.isPresent()
                            ? "the answer is wanted both within and exactly"
                            : "it is not said what counts as the right answer",
                    "within: 2 %, within: 1 K, exactly: E24 or exactly: count",
                    within.isPresent() ? "Keep one of the two." : "Add within: or exactly:.");
            return Optional.empty();
        }
        StepsSection.Read step = steps.get(name.text());
        if (step == null) {
            return Optional.empty();
        }
        Optional<Acceptance> acceptance =
                within.isPresent() ? within(within.get(), step) : exactly(exactly.get(), step);
        return acceptance.map(accepted -> new QuantityAsk(
                name.text(),
                prompt.map(text -> text.text().strip())
                        .orElse(sentence(step.line().meaning())),
                accepted,
                figures));
    }

    static void unknownStep(Yaml.Scalar name, Names names, Faults faults) {
        TreeSet<String> known = new TreeSet<>();
        names.all().stream().filter(Names.Named::isStep).forEach(step -> known.add(step.id()));
        faults.error(
                name.place(),
                names.get(name.text()).isPresent()
                        ? name.text() + " is "
                                + names.get(name.text()).get().kind().told() + ", not a step"
                        : "there is no step " + name.text(),
                Guess.among(known, "a step"),
                Guess.of(name.text(), known, "Name a step."));
    }

    void isAskedOnce(Yaml.Scalar name) {
        Place first = asked.putIfAbsent(name.text(), name.place());
        if (first != null) {
            faults.error(
                    name.place(),
                    name.text() + " is asked a second time",
                    "every quantity once; it is asked in line " + first.line(),
                    "Remove one of the two.");
        }
    }

    void checkPrompt(Yaml.Scalar prompt) {
        StatementCheck.check(prompt.text(), prompt::at, vocabulary, wording, faults);
    }

    private String sentence(String meaning) {
        String rest = meaning.substring(meaning.indexOf(' ') + 1);
        boolean hasArticle = language.say("common.the", "what", rest).equals(meaning);
        return language.say("problem.question", "what", MarkdownFormat.escape(hasArticle ? rest : meaning));
    }

    private Optional<Acceptance> within(Yaml.Scalar text, StepsSection.Read step) {
        Optional<Expression.Constant> read = numbers.constant(text);
        if (read.isEmpty()) {
            return Optional.empty();
        }
        Expression.Constant tolerance = read.get();
        Dimension dimension = step.line().unit().dimension();
        String id = step.line().id();
        boolean relative = tolerance.unit().symbol().equals("%");
        if (tolerance.number() <= 0) {
            faults.error(text.place(), "the tolerance is not above zero", "a tolerance such as 2 %", "Widen it.");
        } else if (!relative && !tolerance.unit().dimension().equals(dimension)) {
            faults.error(
                    text.place(),
                    Numbers.isBare(tolerance)
                            ? "the tolerance has no unit"
                            : "the tolerance is not in the unit of " + id,
                    "a percentage, or an amount in " + Numbers.shown(step.line().unit()),
                    "Write for example 2 %.");
        } else if (!relative && tolerance.unit().offset() != 0) {
            faults.error(
                    text.place(),
                    "a tolerance of temperatures is a difference",
                    "an amount in K",
                    "Write " + tolerance.asWritten() + " K.");
        } else if (relative && step.line().unit().offset() != 0) {
            faults.error(
                    text.place(),
                    "a percentage of a temperature depends on where its scale begins",
                    "an amount in K",
                    "Write for example within: 1 K.");
        } else if (relative && tolerance.si() > WIDEST) {
            faults.error(
                    text.place(),
                    "the tolerance is wider than 10 %",
                    "a tolerance that tells methods apart, such as 2 %",
                    "Narrow it.");
        } else if (!isCoarse(text, tolerance, relative, step)) {
            return Optional.of(
                    relative ? new Acceptance.Within(tolerance.si(), 0) : new Acceptance.Within(0, tolerance.si()));
        }
        return Optional.empty();
    }

    /** Whether the tolerance reaches half way to the next value that the step can have. */
    private boolean isCoarse(
            Yaml.Scalar text, Expression.Constant tolerance, boolean relative, StepsSection.Read step) {
        Optional<PreferredSeries> series = series(step);
        String id = step.line().id();
        if (relative && series.isPresent() && tolerance.si() >= smallestGap(series.get()) / 2) {
            faults.error(
                    text.place(),
                    id + " is a value of " + series.get() + ", and within this tolerance lie two of them",
                    "exactly: " + series.get(),
                    "Ask for the preferred value exactly.");
            return true;
        }
        if (!relative && tolerance.si() >= 0.5 && isWhole(step.step())) {
            faults.error(
                    text.place(),
                    id + " is a whole number, and within this tolerance lie two of them",
                    "exactly: count",
                    "Ask for the count exactly.");
            return true;
        }
        return false;
    }

    private static double smallestGap(PreferredSeries series) {
        List<Double> members = series.mantissas();
        double gap = 10 / members.get(members.size() - 1) - 1;
        for (int i = 1; i < members.size(); i++) {
            gap = Math.min(gap, members.get(i) / members.get(i - 1) - 1);
        }
        return gap;
    }

    /** The series of which the step's value is a member, whatever case applies. */
    private static Optional<PreferredSeries> series(StepsSection.Read step) {
        return step.line().acceptance() instanceof Acceptance.Preferred preferred
                ? Optional.of(preferred.series())
                : Optional.empty();
    }

    private static boolean isWhole(Step step) {
        return step.cases().stream()
                .allMatch(each -> each.is() instanceof Expression.Call call
                        && List.of("floor", "ceiling", "round").contains(call.function()));
    }

    Optional<Acceptance> exactly(Yaml.Scalar text, StepsSection.Read step) {
        String id = step.line().id();
        if (text.text().equals("count")) {
            if (!step.line().unit().dimension().equals(Dimension.ONE)) {
                faults.error(
                        text.place(),
                        id + " is in " + Numbers.shown(step.line().unit()) + ", not a count",
                        "a step with unit \"1\"",
                        "Ask for it within a tolerance.");
            }
            return Optional.of(new Acceptance.Count());
        }
        Optional<PreferredSeries> series = GivensSection.series(text, faults);
        series.ifPresent(wanted -> {
            Optional<PreferredSeries> worked = series(step);
            if (worked.isEmpty()) {
                faults.warning(
                        text.place(),
                        "the formula of " + id + " does not give a preferred value",
                        "next_up(x, " + wanted + "), next_down(x, " + wanted + ") or nearest(x, " + wanted + ")",
                        "Work it with one of these, or ask for it within a tolerance.");
            } else if (!wanted.mantissas().containsAll(worked.get().mantissas())) {
                faults.error(
                        text.place(),
                        id + " is a value of " + worked.get() + ", which need not be one of " + wanted,
                        "exactly: " + worked.get(),
                        "Use one series in both places.");
            }
        });
        return series.map(Acceptance.Preferred::new);
    }

    private Optional<Ask> choice(Fields fields) {
        Yaml.Scalar id = fields.text("choice").orElse(null);
        Optional<Yaml.Scalar> prompt = fields.needText("prompt", "the question, a full sentence");
        prompt.ifPresent(this::checkPrompt);
        fields.need("options", "at least two options");
        List<Yaml.Mapping> items = fields.groups("options", "{text: \"yes\", when: Tj > Tmax, otherwise: ...}");
        if (fields.has("options") && items.size() < 2) {
            faults.error(
                    fields.placeOf("options"),
                    "the choice has " + (items.isEmpty() ? "no option" : "only one option"),
                    "at least two options",
                    "Add the other options.");
        }
        List<ChoiceOption> options = new ArrayList<>();
        TreeSet<String> texts = new TreeSet<>();
        for (Yaml.Mapping item : items) {
            option(new Fields(item, "an option", faults), texts).ifPresent(options::add);
        }
        fields.finish();
        if (id == null) {
            return Optional.empty();
        }
        if (names.get(id.text()).isPresent()) {
            faults.error(
                    id.place(),
                    "the name " + id.text() + " already is "
                            + names.get(id.text()).get().kind().told(),
                    "a name of its own",
                    "Rename the choice.");
        }
        isAskedOnce(id);
        return options.size() < 2
                ? Optional.empty()
                : prompt.map(text -> new ChoiceAsk(id.text(), text.text().strip(), options));
    }

    private Optional<ChoiceOption> option(Fields fields, TreeSet<String> texts) {
        Optional<String> text = wording.needText(fields, "text", "the words of the option");
        if (text.isPresent() && !texts.add(text.get())) {
            faults.error(
                    fields.placeOf("text"),
                    "two options have the same text",
                    "every option once",
                    "Change or remove it.");
        }
        Optional<Yaml.Scalar> written = fields.needText("when", "the condition under which this option is right");
        Optional<Condition> when = written.flatMap(condition -> formulas.condition(condition, Formulas.ALL_NAMES));
        if (when.isPresent()) {
            for (Mentions.Mention mention : Mentions.of(when.get(), names).names()) {
                if (names.get(mention.name()).map(Names.Named::isStep).orElse(false)) {
                    conditions.putIfAbsent(mention.name(), written.get().at(mention.position()));
                }
            }
        }
        Optional<String> otherwise =
                wording.needText(fields, "otherwise", "what is said to a learner who chose this wrongly");
        fields.finish();
        return text.isPresent() && when.isPresent() && otherwise.isPresent()
                ? Optional.of(new ChoiceOption(text.get(), when.get(), otherwise.get()))
                : Optional.empty();
    }
}
