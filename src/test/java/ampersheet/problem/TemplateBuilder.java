package ampersheet.problem;

import ampersheet.answer.Acceptance;
import ampersheet.circuit.GridPoint;
import ampersheet.circuit.PartKind;
import ampersheet.circuit.PartValue;
import ampersheet.formula.Condition;
import ampersheet.formula.Expression;
import ampersheet.formula.FormulaReader;
import ampersheet.formula.Step;
import ampersheet.formula.Symbol;
import ampersheet.formula.Working;
import ampersheet.model.ChainPlan;
import ampersheet.model.CircuitPlan;
import ampersheet.model.CircuitPlan.PlannedPart;
import ampersheet.model.HeatPlan;
import ampersheet.model.ModelPlan;
import ampersheet.quantity.Unit;
import ampersheet.source.Languages;
import ampersheet.template.Premises;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.Ask;
import ampersheet.template.ProblemTemplate.Given;
import ampersheet.template.ProblemTemplate.Mistake;
import ampersheet.template.ProblemTemplate.Proof;
import ampersheet.template.ProblemTemplate.QuantityAsk;
import ampersheet.template.ProblemTemplate.QuantityGiven;
import ampersheet.template.ProblemTemplate.StepLine;
import ampersheet.template.ProblemTemplate.Way;
import ampersheet.template.ProblemTemplate.WordGiven;
import ampersheet.template.ProblemTemplate.Words;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

/** Builds templates in code, so that a test can hold one that no reader would let through. */
final class TemplateBuilder {
    private final String name;
    private final List<Given> givens = new ArrayList<>();
    private final List<Condition> requirements = new ArrayList<>();
    private final List<Step> steps = new ArrayList<>();
    private final List<StepLine> lines = new ArrayList<>();
    private final List<Ask> asks = new ArrayList<>();
    private final List<Mistake> mistakes = new ArrayList<>();
    private final List<PlannedPart> parts = new ArrayList<>();
    private final List<Proof> proofs = new ArrayList<>();
    private final List<String> cautions = new ArrayList<>();
    private final Map<String, String> statements = new LinkedHashMap<>(Map.of("en", "Words."));
    private Optional<HeatPlan> heat = Optional.empty();
    private Optional<ChainPlan> chain = Optional.empty();

    TemplateBuilder(String name) {
        this.name = name;
    }

    /** One LED and its resistor on a supply: the resistance, the next E24 value, and the power in that. */
    static TemplateBuilder indicator() {
        return new TemplateBuilder("current-limiting/one-indicator")
                .given("Vs", "V", 5, 6, 9, 12, 15, 24)
                .given(
                        "Vf",
                        "V",
                        IntStream.rangeClosed(17, 34)
                                .mapToDouble(tenths -> tenths / 10.0)
                                .toArray())
                .given("If", "mA", IntStream.rangeClosed(2, 20).asDoubleStream().toArray())
                .require("Vs - Vf >= 1.2 V")
                .step("Vr", "V", "Vs - Vf")
                .step("R", "ohm", "Vr / If")
                .step("Rn", "ohm", "next_up(R, E24)")
                .step("P", "W", "Vr ^ 2 / Rn")
                .ask("R", new Acceptance.Within(0.02, 0))
                .ask("Rn", new Acceptance.Preferred(ampersheet.quantity.PreferredSeries.E24))
                .ask("P", new Acceptance.Within(0.02, 0))
                .mistake("no-forward-voltage", "R", "Vs / If")
                .mistake("only-forward-voltage", "R", "Vf / If")
                .mistake("rounded-down", "Rn", "next_down(R, E24)")
                .mistake("supply-power", "P", "Vs * Vr / Rn")
                .part(PartKind.SOURCE, "V1", "volts", "Vs", 0, 0, 0, 4)
                .part(PartKind.RESISTOR, "R1", "ohms", "Rn", 0, 4, 4, 4)
                .led("D1", "Vf", "If", 4, 4, 4, 0)
                .wire(4, 0, 0, 0)
                .ground(0, 0)
                .proof("R", "Rn", "current(D1)", new Way.Root(FormulaReader.expression("If")), 1e-4)
                .proof(
                        "Rn",
                        "Rn",
                        "current(D1)",
                        new Way.Smallest(
                                new ProblemTemplate.Members.Series(ampersheet.quantity.PreferredSeries.E24),
                                Condition.Relation.AT_MOST,
                                FormulaReader.expression("If")),
                        1e-4)
                .proof("P", "P", "power(R1)", new Way.Direct(), 0.05);
    }

    TemplateBuilder given(String name, String unit, double... inUnit) {
        Unit parsed = Unit.parse(unit);
        givens.add(new QuantityGiven(
                name,
                "given " + name,
                new Symbol(name, ""),
                parsed,
                Arrays.stream(inUnit).map(parsed::toSi).boxed().toList()));
        return this;
    }

    TemplateBuilder word(String name, String... words) {
        givens.add(new WordGiven(name, "word " + name, List.of(words), Map.of()));
        return this;
    }

    TemplateBuilder require(String condition) {
        requirements.add(FormulaReader.condition(condition));
        return this;
    }

    TemplateBuilder step(String id, String unit, String is) {
        steps.add(Step.of(id, FormulaReader.expression(is)));
        lines.add(new StepLine(
                id, "step " + id, new Symbol(id, ""), Unit.parse(unit), "a principle", List.of("a reason")));
        return this;
    }

    /** @param cases conditions and formulas in turn */
    TemplateBuilder stepByCases(String id, String unit, String... cases) {
        List<Step.Case> read = new ArrayList<>();
        for (int i = 0; i < cases.length; i += 2) {
            read.add(new Step.Case(
                    Optional.of(FormulaReader.condition(cases[i])), FormulaReader.expression(cases[i + 1])));
        }
        steps.add(new Step(id, read));
        lines.add(new StepLine(
                id,
                "step " + id,
                new Symbol(id, ""),
                Unit.parse(unit),
                "a principle",
                read.stream().map(line -> "a reason").toList()));
        return this;
    }

    TemplateBuilder ask(String of, Acceptance acceptance) {
        asks.add(new QuantityAsk(of, "What is " + of + "?", acceptance, 3));
        return this;
    }

    /** @param options texts and conditions in turn */
    TemplateBuilder choice(String of, String... options) {
        List<ProblemTemplate.ChoiceOption> read = new ArrayList<>();
        for (int i = 0; i < options.length; i += 2) {
            read.add(new ProblemTemplate.ChoiceOption(options[i], FormulaReader.condition(options[i + 1]), "because"));
        }
        asks.add(new ProblemTemplate.ChoiceAsk(of, "Which?", read));
        return this;
    }

    TemplateBuilder mistake(String id, String of, String is) {
        mistakes.add(new Mistake(
                id, of, Optional.of(FormulaReader.expression(is)), Map.of(), Optional.empty(), "says " + id));
        return this;
    }

    TemplateBuilder mistakeInstead(String id, String of, String step, String wrong, String when) {
        mistakes.add(new Mistake(
                id,
                of,
                Optional.empty(),
                Map.of(step, FormulaReader.expression(wrong)),
                Optional.of(FormulaReader.condition(when)),
                "says " + id));
        return this;
    }

    TemplateBuilder part(PartKind kind, String name, String value, String formula, int x1, int y1, int x2, int y2) {
        return part(kind, name, Map.of(valueNamed(value), FormulaReader.expression(formula)), x1, y1, x2, y2);
    }

    /** By its key, which is shorter to write in a test. */
    private static PartValue valueNamed(String key) {
        return PartValue.valueOf(key.toUpperCase(Locale.ROOT));
    }

    TemplateBuilder led(String name, String volts, String amps, int x1, int y1, int x2, int y2) {
        Map<PartValue, Expression> values = new LinkedHashMap<>();
        values.put(PartValue.VOLTS, FormulaReader.expression(volts));
        values.put(PartValue.AMPS, FormulaReader.expression(amps));
        return part(PartKind.LED, name, values, x1, y1, x2, y2);
    }

    /** A strip or panel, plus above minus. @param values names and formulas in turn */
    TemplateBuilder copper(PartKind kind, String name, String feed, int x, int high, int low, String... values) {
        Map<PartValue, Expression> formulas = new LinkedHashMap<>();
        for (int i = 0; i < values.length; i += 2) {
            formulas.put(valueNamed(values[i]), FormulaReader.expression(values[i + 1]));
        }
        parts.add(new PlannedPart(
                kind,
                name,
                Map.of("plus", new GridPoint(x, high), "minus", new GridPoint(x, low)),
                formulas,
                Map.of("feed", feed),
                Optional.empty()));
        return this;
    }

    TemplateBuilder wire(int x1, int y1, int x2, int y2) {
        return part(PartKind.WIRE, "wire " + parts.size(), Map.of(), x1, y1, x2, y2);
    }

    TemplateBuilder ground(int x, int y) {
        return at(PartKind.GROUND, "ground " + parts.size(), x, y);
    }

    TemplateBuilder node(String name, int x, int y) {
        return at(PartKind.NODE, name, x, y);
    }

    private TemplateBuilder part(
            PartKind kind, String name, Map<PartValue, Expression> values, int x1, int y1, int x2, int y2) {
        parts.add(new PlannedPart(
                kind,
                name,
                Map.of("from", new GridPoint(x1, y1), "to", new GridPoint(x2, y2)),
                values,
                Optional.empty()));
        return this;
    }

    private TemplateBuilder at(PartKind kind, String name, int x, int y) {
        parts.add(new PlannedPart(kind, name, Map.of("at", new GridPoint(x, y)), Map.of(), Optional.empty()));
        return this;
    }

    TemplateBuilder heat(HeatPlan plan) {
        heat = Optional.of(plan);
        return this;
    }

    TemplateBuilder chain(ChainPlan plan) {
        chain = Optional.of(plan);
        return this;
    }

    TemplateBuilder proof(String of, String varies, String measure, Way way, double within) {
        return proof(of, varies, Map.of(), measure, way, within, "");
    }

    TemplateBuilder proof(
            String of,
            String varies,
            Map<String, Expression> with,
            String measure,
            Way way,
            double within,
            String because) {
        proofs.add(new Proof(
                of, varies, with, FormulaReader.expression(measure), way, within, 0, because, Optional.empty()));
        return this;
    }

    TemplateBuilder caution(String id) {
        cautions.add(id);
        return this;
    }

    TemplateBuilder statement(String language, String words) {
        statements.put(language, words);
        return this;
    }

    TemplateBuilder choiceAsking(String of, String prompt) {
        asks.add(new ProblemTemplate.ChoiceAsk(
                of,
                prompt,
                List.of(
                        new ProblemTemplate.ChoiceOption("yes", FormulaReader.condition("1 < 2"), "no"),
                        new ProblemTemplate.ChoiceOption("no", FormulaReader.condition("1 >= 2"), "no"))));
        return this;
    }

    ProblemTemplate build() {
        return new ProblemTemplate(
                name,
                "A title",
                name.substring(0, name.indexOf('/')),
                "a skill",
                1,
                List.of("a principle"),
                givens,
                List.of(),
                requirements,
                new Working(steps),
                lines,
                asks,
                List.of(),
                mistakes,
                models(),
                Optional.empty(),
                proofs,
                cautions,
                new Premises(List.of(), List.of(), List.of(), List.of(), List.of()),
                new Words(Languages.ENGLISH, statements),
                "0".repeat(64));
    }

    private List<ModelPlan> models() {
        List<ModelPlan> models = new ArrayList<>();
        if (!parts.isEmpty()) {
            models.add(new CircuitPlan(parts));
        }
        heat.ifPresent(models::add);
        chain.ifPresent(models::add);
        return models;
    }
}
