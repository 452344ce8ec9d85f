package ampersheet.template;

import ampersheet.formula.Condition;
import ampersheet.formula.Expression;
import ampersheet.formula.Spelling;
import ampersheet.formula.Step;
import ampersheet.formula.Symbol;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Unit;
import ampersheet.source.Faults;
import ampersheet.source.Fields;
import ampersheet.source.Yaml;
import ampersheet.template.ProblemTemplate.StepLine;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** Reads the steps a learner works through. */
final class StepsSection {
    /** A step with what is told of it. */
    record Read(Step step, StepLine line) {}

    private final Names names;
    private final Formulas formulas;
    private final Numbers numbers;
    private final Wording wording;
    private final Faults faults;
    private final List<String> teaches;
    private final WorstCase worstCase;
    private final BlankStep blankStep;

    /** @param blankStep that knows the givens and constants */
    StepsSection(
            Names names,
            Formulas formulas,
            Wording wording,
            List<String> teaches,
            WorstCase worstCase,
            BlankStep blankStep,
            Faults faults) {
        this.names = names;
        this.formulas = formulas;
        this.numbers = new Numbers(faults);
        this.wording = wording;
        this.teaches = teaches;
        this.worstCase = worstCase;
        this.blankStep = blankStep;
        this.faults = faults;
    }

    /** @param later its own name and those of the steps after it */
    private record Head(Yaml.Scalar id, Fields fields, Optional<Unit> unit, Symbol symbol, Set<String> later) {}

    /** Names first, so that a step used too early is told as that. */
    List<Read> read(List<Yaml.Mapping> items) {
        List<Head> heads = new ArrayList<>();
        for (Yaml.Mapping item : items) {
            Fields fields = new Fields(item, "a step", faults);
            Optional<Yaml.Scalar> id = fields.needText("id", "the name of the step, such as R");
            Optional<Unit> unit = fields.needText("unit", "the unit it is printed in, or \"1\" for a plain number")
                    .flatMap(numbers::unit);
            id.ifPresent(name -> {
                boolean declared = names.declare(name, Names.Kind.STEP, unit.map(Unit::dimension), List.of());
                Head head = new Head(
                        name, fields, unit, GivensSection.symbol(name, fields, names, faults), new TreeSet<>());
                heads.add(head);
                if (declared) {
                    heads.forEach(earlier -> earlier.later().add(name.text()));
                }
            });
        }
        List<Read> steps = new ArrayList<>();
        heads.forEach(head -> step(head, steps).ifPresent(steps::add));
        return steps;
    }

    /** @param before steps read so far; a worst case puts the ends of its tolerances there */
    private Optional<Read> step(Head head, List<Read> before) {
        Fields fields = head.fields();
        String id = head.id().text();
        Optional<String> meaning =
                wording.needText(fields, "meaning", "what the step finds, such as voltage across the resistor");
        Optional<String> principle = principle(fields);
        Formulas.Rule rule = earlierThan(id, head.later());
        List<Step.Case> cases = new ArrayList<>();
        List<String> reasons = new ArrayList<>();
        if (fields.has("cases")) {
            if (fields.has("is")) {
                faults.error(
                        fields.placeOf("is"),
                        "the step has both a formula and cases",
                        "is: or cases:",
                        "Keep one of the two.");
            }
            fields.value("because");
            if (fields.has("because")) {
                faults.error(
                        fields.placeOf("because"),
                        "a step with cases gives a reason in each case",
                        "because: in each case",
                        "Move the reason into the cases.");
            }
            cases(head, rule, cases, reasons);
        } else if (fields.has("largest") || fields.has("smallest")) {
            extreme(head, principle, before).ifPresent(formula -> cases.add(new Step.Case(Optional.empty(), formula)));
            wording.needText(fields, "because", "why the worst case matters").ifPresent(reasons::add);
        } else {
            formula(fields, head, rule)
                    .ifPresent(formula -> cases.add(new Step.Case(Optional.empty(), formula.expression())));
            wording.needText(fields, "because", "why this formula holds").ifPresent(reasons::add);
        }
        Optional<String> noMistake = wording.text(fields, "no_mistake");
        fields.finish();
        if (meaning.isEmpty()
                || principle.isEmpty()
                || head.unit().isEmpty()
                || cases.isEmpty()
                || reasons.size() != cases.size()
                || names.get(id).isEmpty()) {
            return Optional.empty();
        }
        Step step = new Step(id, cases);
        return Optional.of(new Read(
                step,
                new StepLine(
                        id,
                        meaning.get(),
                        head.symbol(),
                        head.unit().get(),
                        principle.get(),
                        reasons,
                        blankStep.of(step, head.unit().get()),
                        noMistake)));
    }

    /** The formula of another step, with every tolerance at the end that makes it largest or smallest. */
    private Optional<Expression> extreme(Head head, Optional<String> principle, List<Read> before) {
        Fields fields = head.fields();
        boolean largest = fields.has("largest");
        for (String other : List.of("is", largest ? "smallest" : "cases")) {
            if (fields.has(other)) {
                faults.error(
                        fields.placeOf(other),
                        "the step says twice how it is worked",
                        "one of is:, largest: and smallest:",
                        "Keep one of them.");
            }
            fields.value(other);
        }
        Optional<Yaml.Scalar> of = fields.text(largest ? "largest" : "smallest");
        if (of.isEmpty() || principle.isEmpty() || head.unit().isEmpty()) {
            return Optional.empty();
        }
        names.use(of.get().text());
        Optional<Dimension> dimension = names.get(of.get().text()).flatMap(Names.Named::dimension);
        if (dimension.isPresent() && !dimension.get().equals(head.unit().get().dimension())) {
            faults.error(
                    of.get().place(),
                    head.id().text() + " has not the unit of " + of.get().text(),
                    "the unit of the step whose worst case it is",
                    "Correct the unit.");
            return Optional.empty();
        }
        return worstCase.formula(largest, of.get(), head.id(), principle.get(), before);
    }

    private void cases(Head head, Formulas.Rule rule, List<Step.Case> cases, List<String> reasons) {
        List<Yaml.Mapping> items = head.fields().groups("cases", "{when: x < 2, is: x, because: ...}");
        if (items.size() < 2) {
            faults.error(
                    head.fields().placeOf("cases"),
                    "the step has " + (items.isEmpty() ? "no case" : "only one case"),
                    "at least two cases",
                    "Add a case, or write is: without cases.");
        }
        for (int i = 0; i < items.size(); i++) {
            Fields fields = new Fields(items.get(i), "a case", faults);
            Optional<Condition> when = fields.text("when").flatMap(text -> formulas.condition(text, rule));
            if (!fields.has("when") && i + 1 < items.size()) {
                faults.error(
                        fields.place(),
                        "this case always applies, so that the cases after it never do",
                        "when: in every case but the last",
                        "Add when:, or make it the last case.");
            }
            Optional<Formulas.Checked> formula = formula(fields, head, rule);
            Optional<String> because = wording.needText(fields, "because", "why this formula holds in this case");
            fields.finish();
            if (formula.isPresent() && because.isPresent()) {
                cases.add(new Step.Case(when, formula.get().expression()));
                reasons.add(because.get());
            }
        }
    }

    private Optional<Formulas.Checked> formula(Fields fields, Head head, Formulas.Rule rule) {
        Optional<Dimension> dimension = head.unit().map(Unit::dimension);
        return fields.needText("is", "the formula, such as Vs - Vf")
                .flatMap(text -> formulas.expression(
                        text,
                        rule,
                        dimension,
                        "the unit of " + head.id().text() + " is "
                                + head.unit().map(Numbers::shown).orElse("")));
    }

    private Optional<String> principle(Fields fields) {
        Optional<Yaml.Scalar> principle = fields.needText("principle", "the law or rule, one of teaches");
        Set<String> known = new TreeSet<>(teaches);
        // With nothing to choose from, teaches: has a fault of its own.
        if (principle.isPresent()
                && !known.isEmpty()
                && !known.contains(principle.get().text())) {
            String text = principle.get().text();
            faults.error(
                    principle.get().place(),
                    "\"" + text + "\" is not among what the template teaches",
                    Spelling.list(known),
                    Guess.of(text, known, "Add it to teaches:, or use one of these."));
            return Optional.empty();
        }
        return principle.map(Yaml.Scalar::text);
    }

    private static Formulas.Rule earlierThan(String id, Set<String> later) {
        return (named, mention) -> {
            if (!named.isStep() || !later.contains(named.id())) {
                return Optional.empty();
            }
            return Optional.of(
                    named.id().equals(id)
                            ? new Formulas.Refusal(
                                    "the step " + id + " uses itself",
                                    "givens, constants and earlier steps",
                                    "Use the quantities it is worked from.")
                            : new Formulas.Refusal(
                                    "the step " + named.id() + " is worked only after " + id,
                                    "givens, constants and earlier steps",
                                    "Move " + named.id() + " before " + id + ", or use an earlier step."));
        };
    }
}
