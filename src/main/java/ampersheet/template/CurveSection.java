package ampersheet.template;

import ampersheet.formula.Expression;
import ampersheet.formula.Symbol;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Unit;
import ampersheet.source.Faults;
import ampersheet.source.Fields;
import ampersheet.source.Yaml;
import ampersheet.template.ProblemTemplate.Given;
import ampersheet.template.ProblemTemplate.QuantityGiven;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;

/**
 * Reads the plot of the worked solution. It is read when nothing else of the template is left to read, so that a name
 * of its own is known to nothing but its lines.
 */
final class CurveSection {
    private static final int MOST_LINES = 4;
    private static final Formulas.Rule OF_THE_DRAW = (named, mention) -> named.kind() != Names.Kind.AXIS
            ? Optional.empty()
            : Optional.of(new Formulas.Refusal(
                    named.id() + " has no one value: it is what the axis shows",
                    "givens, constants and steps",
                    "Say it with the quantities of the problem."));

    private final Names names;
    private final Formulas formulas;
    private final Wording wording;
    private final Faults faults;
    private final Numbers numbers;
    private final TreeSet<String> asked;
    private final List<StepsSection.Read> steps;
    private final Map<String, CurvePlan.Axis> known = new LinkedHashMap<>();

    /** @param asked steps that a question asks for */
    CurveSection(
            Names names,
            Formulas formulas,
            Wording wording,
            Collection<String> asked,
            Numerics numerics,
            Faults faults) {
        this.names = names;
        this.formulas = formulas;
        this.wording = wording;
        this.asked = new TreeSet<>(asked);
        this.steps = numerics.steps();
        this.faults = faults;
        this.numbers = new Numbers(faults);
        for (Given given : numerics.givens()) {
            if (given instanceof QuantityGiven quantity) {
                know(quantity.name(), quantity.meaning(), quantity.symbol(), quantity.unit());
            }
        }
        numerics.constants()
                .forEach(constant -> know(constant.name(), constant.meaning(), constant.symbol(), constant.unit()));
        numerics.steps()
                .forEach(step -> know(
                        step.line().id(),
                        step.line().meaning(),
                        step.line().symbol(),
                        step.line().unit()));
    }

    private void know(String name, String meaning, Symbol symbol, Unit unit) {
        known.put(name, new CurvePlan.Axis(name, meaning, symbol, unit));
    }

    Optional<CurvePlan> read(Yaml.Mapping section) {
        Fields fields = new Fields(section, "the curve", faults);
        fields.need("across", "the quantity that runs, such as {quantity: t, meaning: time, unit: s, to: 5 * tau}");
        fields.need("up", "the quantity drawn over it, such as {quantity: T, meaning: temperature, unit: degC}");
        Optional<Fields> acrossFields =
                fields.group("across").map(group -> new Fields(group, "the horizontal axis", faults));
        Optional<Fields> upFields = fields.group("up").map(group -> new Fields(group, "the vertical axis", faults));
        Optional<CurvePlan.Axis> up = upFields.flatMap(this::axis);
        upFields.ifPresent(Fields::finish);
        Optional<CurvePlan.Axis> across = acrossFields.flatMap(this::axis);
        Optional<Expression> from =
                acrossFields.flatMap(axis -> end(axis, across, "from", "where it begins, such as 0"));
        Optional<Expression> to =
                acrossFields.flatMap(axis -> end(axis, across, "to", "where it ends, such as 5 * tau"));
        acrossFields.ifPresent(Fields::finish);
        List<CurvePlan.Point> points = points(fields, across, up);
        across.ifPresent(axis -> worksAgain(axis, acrossFields.get()));
        List<CurvePlan.Line> lines = lines(fields, up);
        fields.finish();
        return across.isPresent() && up.isPresent() && from.isPresent() && to.isPresent() && !lines.isEmpty()
                ? Optional.of(new CurvePlan(across.get(), up.get(), from.get(), to.get(), lines, points))
                : Optional.empty();
    }

    /** A bare number is in the axis's unit. */
    private Optional<Expression> end(Fields fields, Optional<CurvePlan.Axis> axis, String key, String expected) {
        Optional<Yaml.Scalar> text = fields.needText(key, expected);
        if (text.isPresent() && axis.isPresent() && Numbers.isNumber(text.get().text())) {
            Optional<Expression.Constant> number = numbers.constant(text.get()).filter(Numbers::isBare);
            if (number.isPresent()) {
                return Optional.of(new Expression.Constant(
                        number.get().number(), axis.get().unit(), number.get().asWritten(), 0));
            }
        }
        return text.flatMap(formula -> on(formula, axis, OF_THE_DRAW));
    }

    /**
     * A quantity of the problem brings its symbol and unit along, and its meaning where none is said; another has them
     * here.
     */
    private Optional<CurvePlan.Axis> axis(Fields fields) {
        Optional<Yaml.Scalar> quantity = fields.needText("quantity", "a given or step, or a name of the curve's own");
        if (quantity.isPresent() && known.containsKey(quantity.get().text())) {
            names.use(quantity.get().text());
            Optional<String> meaning = wording.text(fields, "meaning");
            for (String key : List.of("symbol", "unit")) {
                if (fields.has(key)) {
                    faults.error(
                            fields.placeOf(key),
                            quantity.get().text() + " has its " + key + " already",
                            "quantity: alone",
                            "Remove the " + key + ", or take a name of the curve's own.");
                }
            }
            CurvePlan.Axis own = known.get(quantity.get().text());
            return Optional.of(
                    new CurvePlan.Axis(own.quantity(), meaning.orElse(own.meaning()), own.symbol(), own.unit()));
        }
        Optional<String> meaning = wording.needText(fields, "meaning", "what the axis shows, such as time");
        Optional<Unit> unit = fields.needText("unit", "the unit of its numbers, or \"1\" for plain numbers")
                .flatMap(numbers::unit);
        if (quantity.isEmpty()) {
            return Optional.empty();
        }
        Symbol symbol = GivensSection.symbol(quantity.get(), fields, names, faults);
        if (!names.declare(quantity.get(), Names.Kind.AXIS, unit.map(Unit::dimension), List.of())) {
            return Optional.empty();
        }
        names.use(quantity.get().text());
        return meaning.isPresent() && unit.isPresent()
                ? Optional.of(new CurvePlan.Axis(quantity.get().text(), meaning.get(), symbol, unit.get()))
                : Optional.empty();
    }

    /** Steps are worked with values that no draw has: one case of each must apply whatever these are. */
    private void worksAgain(CurvePlan.Axis across, Fields fields) {
        if (known.containsKey(across.quantity())) {
            steps.stream()
                    .map(StepsSection.Read::step)
                    .filter(step ->
                            step.cases().get(step.cases().size() - 1).when().isPresent())
                    .findFirst()
                    .ifPresent(step -> faults.error(
                            fields.placeOf("quantity"),
                            "the steps are worked again for every " + across.quantity() + ", and no case of the step "
                                    + step.id() + " may apply then",
                            "a last case without when: in each step",
                            "Take when: off the last case of " + step.id() + "."));
        }
    }

    private List<CurvePlan.Point> points(Fields fields, Optional<CurvePlan.Axis> across, Optional<CurvePlan.Axis> up) {
        List<CurvePlan.Point> points = new ArrayList<>();
        fields.need("points", "the asked values, such as [{of: t, up: T1}]");
        for (Yaml.Mapping item : fields.groups("points", "{of: t, up: T1}")) {
            Fields point = new Fields(item, "a point", faults);
            Optional<Yaml.Scalar> of = point.needText("of", "the asked step that it shows");
            Optional<Yaml.Scalar> written = of.filter(text -> !asked.contains(text.text()));
            written.ifPresent(text -> faults.error(
                    text.place(),
                    text.text() + " is not asked for",
                    Guess.among(asked, "an asked step"),
                    Guess.of(text.text(), asked, "Name an asked step.")));
            Optional<Expression> x = place(point, "across", across, of);
            Optional<Expression> y = place(point, "up", up, of);
            point.finish();
            if (of.isPresent() && written.isEmpty() && x.isPresent() && y.isPresent()) {
                points.add(new CurvePlan.Point(of.get().text(), x.get(), y.get()));
            }
        }
        if (points.isEmpty()
                && fields.list("points").map(list -> list.items().isEmpty()).orElse(false)) {
            faults.error(
                    fields.placeOf("points"), "the curve shows no asked value", "at least one point", "Add a point.");
        }
        return points;
    }

    /** Where nothing is said, the value of the axis's own quantity; where the axis has none, the asked value itself. */
    private Optional<Expression> place(
            Fields point, String key, Optional<CurvePlan.Axis> axis, Optional<Yaml.Scalar> of) {
        Optional<Yaml.Scalar> said = point.text(key);
        if (axis.isEmpty() || of.isEmpty()) {
            return Optional.empty();
        }
        if (said.isPresent()) {
            return on(said.get(), axis, OF_THE_DRAW);
        }
        if (point.has(key)) {
            return Optional.empty();
        }
        String own = axis.get().quantity();
        String name = known.containsKey(own) ? own : of.get().text();
        Optional<Dimension> dimension = names.get(name).flatMap(Names.Named::dimension);
        if (dimension.isPresent() && !dimension.get().equals(axis.get().unit().dimension())) {
            faults.error(
                    point.place(),
                    "the point does not say where it lies " + (key.equals("up") ? "in height" : "across"),
                    key + ": a formula",
                    "Add " + key + ":.");
            return Optional.empty();
        }
        return Optional.of(new Expression.Name(name, 0));
    }

    private List<CurvePlan.Line> lines(Fields fields, Optional<CurvePlan.Axis> up) {
        List<CurvePlan.Line> lines = new ArrayList<>();
        if (!fields.has("lines")) {
            if (up.isPresent() && known.containsKey(up.get().quantity())) {
                return List.of(
                        new CurvePlan.Line("", new Expression.Name(up.get().quantity(), 0)));
            }
            fields.need("lines", "what is drawn, such as [{is: Ta + dT * (1 - exp(-t / tau))}]");
            return lines;
        }
        List<Yaml.Mapping> items = fields.groups("lines", "{name: with a fan, is: Ta + P * R}");
        Formulas.Rule withoutHeight = (named, mention) -> named.kind() == Names.Kind.AXIS
                        && up.filter(axis -> axis.quantity().equals(named.id())).isPresent()
                ? Optional.of(new Formulas.Refusal(
                        named.id() + " is what the lines are to give",
                        "givens, constants, steps and the quantity that runs",
                        "Write the formula that gives " + named.id() + "."))
                : Optional.empty();
        for (Yaml.Mapping item : items) {
            Fields line = new Fields(item, "a line", faults);
            Optional<String> name = items.size() > 1
                    ? wording.needText(line, "name", "what is printed beside it")
                    : wording.text(line, "name").or(() -> Optional.of(""));
            Optional<Expression> is = line.needText("is", "a formula of the quantity that runs")
                    .flatMap(text -> on(text, up, withoutHeight));
            line.finish();
            if (name.isPresent() && is.isPresent()) {
                lines.add(new CurvePlan.Line(name.get(), is.get()));
            }
        }
        if (items.size() > MOST_LINES) {
            faults.error(
                    fields.placeOf("lines"),
                    "the curve has " + items.size() + " lines",
                    "at most " + MOST_LINES + ", which can be told apart",
                    "Leave some out.");
        }
        return lines;
    }

    private Optional<Expression> on(Yaml.Scalar text, Optional<CurvePlan.Axis> axis, Formulas.Rule rule) {
        Optional<Dimension> dimension = axis.map(read -> read.unit().dimension());
        return formulas.expression(
                        text,
                        rule,
                        dimension,
                        "the axis is in "
                                + axis.map(read -> Numbers.shown(read.unit())).orElse(""))
                .map(Formulas.Checked::expression);
    }
}
