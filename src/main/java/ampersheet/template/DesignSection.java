package ampersheet.template;

import ampersheet.answer.Acceptance;
import ampersheet.diagnostic.Place;
import ampersheet.formula.Condition;
import ampersheet.formula.Working;
import ampersheet.quantity.PreferredSeries;
import ampersheet.quantity.Unit;
import ampersheet.source.Faults;
import ampersheet.source.Fields;
import ampersheet.source.Yaml;
import ampersheet.template.ProblemTemplate.Ask;
import ampersheet.template.ProblemTemplate.Criterion;
import ampersheet.template.ProblemTemplate.Design;
import ampersheet.template.ProblemTemplate.DesignAsk;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** Reads design tasks: blanks that a learner is free to fill, and the criteria that they must meet together. */
final class DesignSection {
    /** Every choice of every draw is judged before it is asked; more would take seconds for each sheet. */
    static final int MOST_CHOICES = 20_000;

    private static final String BLANK = "{step: R1, exactly: E24, from: 1 kohm, to: 1 Mohm}";
    private static final String CRITERION = "{id: current, where: I <= Imax, shows: I, says: ...}";

    private final AsksSection asks;
    private final Names names;
    private final Formulas formulas;
    private final Numbers numbers;
    private final Wording wording;
    private final Map<String, StepsSection.Read> steps;
    private final Faults faults;
    private final List<Design> read = new ArrayList<>();
    private final Set<String> blanks = new TreeSet<>();
    /** Steps on which a criterion hangs, with the place of the condition. */
    private final Map<String, Place> conditions = new TreeMap<>();

    DesignSection(
            AsksSection asks,
            Names names,
            Formulas formulas,
            Wording wording,
            Map<String, StepsSection.Read> steps,
            Faults faults) {
        this.asks = asks;
        this.names = names;
        this.formulas = formulas;
        this.numbers = new Numbers(faults);
        this.wording = wording;
        this.steps = steps;
        this.faults = faults;
    }

    /** Steps that stand for blanks. */
    Set<String> blanks() {
        return blanks;
    }

    /** Steps that follow from blanks. */
    Set<String> following() {
        return new Working(steps.values().stream().map(StepsSection.Read::step).toList()).following(blanks);
    }

    /** Steps other than blanks that need a second route since a criterion hangs on them. */
    Map<String, Place> conditions() {
        return conditions;
    }

    List<Design> designs() {
        return read;
    }

    List<Ask> read(Fields fields) {
        Optional<Yaml.Scalar> id = fields.text("design");
        id.ifPresent(this::isNew);
        Optional<Yaml.Scalar> prompt = fields.needText("prompt", "the task, a full sentence");
        prompt.ifPresent(asks::checkPrompt);
        fields.need("blanks", "what is to be chosen, such as " + BLANK);
        List<Blank> chosen = new ArrayList<>();
        for (Yaml.Mapping item : fields.groups("blanks", BLANK)) {
            blank(new Fields(item, "a blank", faults)).ifPresent(chosen::add);
        }
        fewEnough(fields.placeOf("blanks"), chosen);
        fields.need("criteria", "what the choice must meet, such as " + CRITERION);
        Set<String> following = following();
        List<Criterion> criteria = new ArrayList<>();
        for (Yaml.Mapping item : fields.groups("criteria", CRITERION)) {
            criterion(new Fields(item, "a criterion", faults), following, criteria)
                    .ifPresent(criteria::add);
        }
        fields.finish();
        if (id.isEmpty() || prompt.isEmpty() || chosen.isEmpty() || criteria.isEmpty()) {
            return List.of();
        }
        read.add(new Design(id.get().text(), chosen.stream().map(Blank::step).toList(), criteria));
        List<Ask> asked = new ArrayList<>();
        for (Blank blank : chosen) {
            String own = "Your **"
                    + MarkdownFormat.escape(steps.get(blank.step()).line().meaning()) + "**:";
            asked.add(new DesignAsk(
                    blank.step(),
                    asked.isEmpty() ? prompt.get().text().strip() + " " + own : own,
                    id.get().text(),
                    blank.acceptance()));
        }
        return asked;
    }

    private record Blank(String step, Acceptance.Designed acceptance) {}

    private void isNew(Yaml.Scalar id) {
        if (!read.isEmpty()) {
            faults.error(
                    id.place(),
                    "the template has a second design task",
                    "one design task in a problem",
                    "Make two templates of it.");
        } else if (!FileNames.isFolder(id.text())) {
            faults.error(
                    id.place(),
                    "\"" + id.text() + "\" is not the id of a design",
                    "lower-case letters, digits and hyphens, such as pair",
                    "Correct the id.");
        }
    }

    private Optional<Blank> blank(Fields fields) {
        Optional<Yaml.Scalar> name = fields.needText("step", "the step that works one right value for this blank");
        Optional<Yaml.Scalar> exactly = fields.needText("exactly", "a preferred series, or count");
        Optional<Yaml.Scalar> from = fields.needText("from", "the smallest value that may be chosen");
        Optional<Yaml.Scalar> to = fields.needText("to", "the largest value that may be chosen");
        fields.finish();
        if (name.isEmpty()) {
            return Optional.empty();
        }
        String id = name.get().text();
        if (!names.get(id).map(Names.Named::isStep).orElse(false)) {
            AsksSection.unknownStep(name.get(), names, faults);
            return Optional.empty();
        }
        names.use(id);
        asks.isAskedOnce(name.get());
        blanks.add(id);
        StepsSection.Read step = steps.get(id);
        if (step == null || exactly.isEmpty() || from.isEmpty() || to.isEmpty()) {
            return Optional.empty();
        }
        Unit unit = step.line().unit();
        Optional<Double> low =
                numbers.in(unit, from.get()).map(BigDecimal::doubleValue).map(unit::toSi);
        Optional<Double> high =
                numbers.in(unit, to.get()).map(BigDecimal::doubleValue).map(unit::toSi);
        Optional<Acceptance> exact = asks.exactly(exactly.get(), step);
        if (low.isEmpty() || high.isEmpty() || exact.isEmpty()) {
            return Optional.empty();
        }
        if (low.get() >= high.get() || exact.get() instanceof Acceptance.Preferred && low.get() <= 0) {
            faults.error(
                    from.get().place(),
                    "there is nothing to choose from " + from.get().text() + " to "
                            + to.get().text(),
                    "from: below to:, and above zero for a series",
                    "Correct the range.");
            return Optional.empty();
        }
        Optional<PreferredSeries> series = exact.get() instanceof Acceptance.Preferred preferred
                ? Optional.of(preferred.series())
                : Optional.empty();
        return Optional.of(new Blank(id, new Acceptance.Designed(series, low.get(), high.get())));
    }

    private void fewEnough(Place place, List<Blank> chosen) {
        double choices = 1;
        for (Blank blank : chosen) {
            Acceptance.Designed range = blank.acceptance();
            boolean tooWide = range.series().isEmpty()
                    ? range.to() - range.from() > MOST_CHOICES
                    : range.to() / range.from() > 1e9;
            choices *= tooWide ? Double.POSITIVE_INFINITY : range.members().size();
        }
        if (choices > MOST_CHOICES) {
            faults.error(
                    place,
                    "the blanks leave " + (Double.isInfinite(choices) ? "far too many" : Long.toString((long) choices))
                            + " choices",
                    "at most " + MOST_CHOICES + ", since each is judged before the problem is asked",
                    "Narrow the ranges, or take a coarser series.");
        }
    }

    private Optional<Criterion> criterion(Fields fields, Set<String> following, List<Criterion> before) {
        Optional<Yaml.Scalar> id = fields.needText("id", "a name for the criterion, such as current");
        id.filter(text -> !FileNames.isFolder(text.text())
                        || before.stream().anyMatch(other -> other.id().equals(text.text())))
                .ifPresent(text -> faults.error(
                        text.place(),
                        "\"" + text.text() + "\" is not the id of a criterion",
                        "lower-case letters, digits and hyphens, every id once",
                        "Correct the id."));
        Optional<Yaml.Scalar> written = fields.needText("where", "the condition that a right choice meets");
        Optional<Condition> where = written.flatMap(text -> formulas.condition(text, Formulas.ALL_NAMES));
        Optional<Yaml.Scalar> shows = fields.needText("shows", "the step whose value is told when the criterion fails");
        Optional<String> says = wording.needText(fields, "says", "what is wrong when the criterion fails");
        fields.finish();
        if (where.isEmpty()) {
            return Optional.empty();
        }
        Set<String> used = new LinkedHashSet<>();
        for (Mentions.Mention mention : Mentions.of(where.get(), names).names()) {
            if (names.get(mention.name()).map(Names.Named::isStep).orElse(false)) {
                used.add(mention.name());
                if (!blanks.contains(mention.name())) {
                    conditions.putIfAbsent(mention.name(), written.get().at(mention.position()));
                }
            }
        }
        if (used.stream().noneMatch(name -> following.contains(name) || blanks.contains(name))) {
            faults.error(
                    written.get().place(),
                    "the criterion does not hang on what is chosen",
                    "a condition on a step that follows from a blank",
                    "Take it out, or put it under require:.");
        }
        shows.filter(text -> !used.contains(text.text()))
                .ifPresent(text -> faults.error(
                        text.place(),
                        "the criterion does not use " + text.text(),
                        Guess.among(new TreeSet<>(used), "a step of its condition"),
                        Guess.of(text.text(), new TreeSet<>(used), "Name a step of the condition.")));
        return id.isPresent() && shows.isPresent() && says.isPresent()
                ? Optional.of(
                        new Criterion(id.get().text(), where.get(), shows.get().text(), says.get()))
                : Optional.empty();
    }
}
