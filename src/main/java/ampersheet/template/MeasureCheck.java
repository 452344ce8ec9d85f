package ampersheet.template;

import ampersheet.circuit.PartKind;
import ampersheet.formula.Evaluation;
import ampersheet.formula.Expression;
import ampersheet.formula.FormulaFault;
import ampersheet.formula.Scope;
import ampersheet.formula.TradeWords;
import ampersheet.model.Argument;
import ampersheet.model.Measure;
import ampersheet.model.Measures;
import ampersheet.model.ModelKind;
import ampersheet.quantity.Dimension;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** Whether a template may ask for a measure: of a model that it has, with the names of things and with quantities. */
final class MeasureCheck {
    private MeasureCheck() {}

    /** The measures that may be meant: where two models have one of that name, those whose things it names. */
    static List<Measure> meant(Expression.Call call, Things things) {
        List<Measure> named = Measures.named(call.function(), call.arguments().size());
        List<Measure> ofModels = named.stream()
                .filter(measure -> things.models().contains(measure.kind()))
                .toList();
        List<Measure> fitting = ofModels.stream()
                .filter(measure -> namesItsThings(call, measure, things))
                .toList();
        return !fitting.isEmpty() ? fitting : !ofModels.isEmpty() ? ofModels : named;
    }

    private static boolean namesItsThings(Expression.Call call, Measure measure, Things things) {
        for (int i = 0; i < call.arguments().size(); i++) {
            Argument wanted = measure.arguments().get(i);
            if (wanted.dimension().isEmpty()
                    && !(call.arguments().get(i) instanceof Expression.Name name
                            && things.of(wanted).contains(name.id()))) {
                return false;
            }
        }
        return true;
    }

    /** The things measures can name, and the models there are. */
    record Things(
            Set<ModelKind> models,
            Set<String> circuitNodes,
            Map<String, Optional<PartKind>> parts,
            Set<String> heatNodes,
            Set<String> heatFlows) {
        Set<String> of(Argument argument) {
            return switch (argument) {
                case CIRCUIT_NODE -> circuitNodes;
                case PART -> parts.keySet();
                case STRIP -> partsOf(PartKind.STRIP);
                case PANEL -> partsOf(PartKind.PANEL);
                case STRIP_OR_PANEL -> partsOf(PartKind.STRIP, PartKind.PANEL);
                case HEAT_NODE -> heatNodes;
                case HEAT_FLOW -> heatFlows;
                default -> Set.of();
            };
        }

        /** With those whose kind could not be read, which is told already. */
        private Set<String> partsOf(PartKind... kinds) {
            Set<String> names = new TreeSet<>();
            parts.forEach((name, kind) -> {
                if (kind.isEmpty() || List.of(kinds).contains(kind.get())) {
                    names.add(name);
                }
            });
            return names;
        }
    }

    /** Whether the template has the model, and things of it that can be named. */
    private static boolean isUsable(Measure measure, Things things) {
        return things.models().contains(measure.kind())
                && measure.arguments().stream()
                        .allMatch(wanted -> wanted.dimension().isPresent()
                                || !things.of(wanted).isEmpty());
    }

    /** A measure of that dimension as it could stand in this template. */
    static Optional<String> example(Dimension dimension, Things things) {
        for (Measure measure : Measures.all()) {
            if (measure.dimension().equals(dimension) && isUsable(measure, things)) {
                List<String> arguments = new ArrayList<>();
                for (Argument wanted : measure.arguments()) {
                    arguments.add(
                            wanted.dimension().isPresent() ? wanted.word() : new TreeSet<>(things.of(wanted)).last());
                }
                return Optional.of(measure.name() + "(" + String.join(", ", arguments) + ")");
            }
        }
        return Optional.empty();
    }

    /** Dimensions by name and number of arguments, for {@link Evaluation#check}. */
    static final Scope.Measures DIMENSIONS =
            (measure, arguments) -> Measures.first(measure, arguments.size()).map(Measure::dimension);

    /** Whether an argument names a thing of the model rather than a quantity. */
    static boolean namesAThing(Expression.Call call, int argument) {
        Optional<Measure> measure =
                Measures.first(call.function(), call.arguments().size());
        return measure.map(known -> known.arguments().get(argument).dimension().isEmpty())
                .orElse(Measures.isMeasure(call.function()));
    }

    /** @throws FormulaFault if there is no such measure, model or thing, or an argument has the wrong dimension */
    static void check(Expression.Call call, Things things, Scope quantities) {
        List<Measure> meant = meant(call, things);
        if (meant.isEmpty()) {
            throw unknown(call, things);
        }
        Measure measure = meant.stream()
                .filter(one -> quantitiesFit(call, one, quantities))
                .findFirst()
                .orElse(meant.get(0));
        if (!things.models().contains(measure.kind())) {
            throw new FormulaFault(
                    call.position(),
                    measure.name() + " is a measure of " + measure.kind().told() + ", and this template has none",
                    "a measure of " + toldAll(things.models()),
                    "Add the model under " + measure.kind().key() + ":, or use another measure.");
        }
        for (int i = 0; i < measure.arguments().size(); i++) {
            check(call.arguments().get(i), measure.arguments().get(i), things, quantities);
        }
    }

    private static boolean quantitiesFit(Expression.Call call, Measure measure, Scope quantities) {
        for (int i = 0; i < call.arguments().size(); i++) {
            Optional<Dimension> wanted = measure.arguments().get(i).dimension();
            if (wanted.isPresent()
                    && !Evaluation.check(call.arguments().get(i), quantities).equals(wanted.get())) {
                return false;
            }
        }
        return true;
    }

    private static void check(Expression given, Argument wanted, Things things, Scope quantities) {
        if (wanted.dimension().isPresent()) {
            Dimension dimension = Evaluation.check(given, quantities);
            if (!dimension.equals(wanted.dimension().get())) {
                throw new FormulaFault(
                        given.position(),
                        "this is in " + TradeWords.plural(dimension),
                        wanted.told(),
                        "Give " + wanted.told() + " here.");
            }
            return;
        }
        Set<String> names = things.of(wanted);
        if (given instanceof Expression.Name name && names.contains(name.id())) {
            return;
        }
        String typed = given instanceof Expression.Name name ? name.id() : "";
        throw new FormulaFault(
                given.position(),
                typed.isEmpty() ? "this is not the name of " + wanted.told() : typed + " is not " + wanted.told(),
                Guess.among(names, wanted.told()),
                Guess.of(
                        typed,
                        names,
                        wanted == Argument.CIRCUIT_NODE
                                ? "Name the node with {node: name, at: [x, y]}, or use one that is named."
                                : "Use one of these names."));
    }

    private static FormulaFault unknown(Expression.Call call, Things things) {
        List<String> shapes = new ArrayList<>();
        Set<String> names = new TreeSet<>();
        for (Measure measure : Measures.all()) {
            names.add(measure.name());
            if (measure.name().equals(call.function())) {
                shapes.add(measure.shape());
            }
        }
        if (!shapes.isEmpty()) {
            return new FormulaFault(
                    call.position(),
                    call.function() + " does not take " + count(call.arguments().size()),
                    String.join(" or ", shapes),
                    "Give it these.");
        }
        Set<String> usable = new TreeSet<>();
        Measures.all().stream()
                .filter(measure -> isUsable(measure, things))
                .forEach(measure -> usable.add(measure.name()));
        return new FormulaFault(
                call.position(),
                "there is no function or measure " + call.function(),
                Guess.among(usable, "a measure of a model"),
                Guess.of(call.function(), names, "Use one of the measures."));
    }

    private static String count(int arguments) {
        return arguments == 0 ? "no argument" : arguments == 1 ? "one argument" : arguments + " arguments";
    }

    private static String toldAll(Set<ModelKind> models) {
        List<String> told = new ArrayList<>();
        for (ModelKind model : ModelKind.values()) {
            if (models.contains(model)) {
                told.add(model.told());
            }
        }
        return told.isEmpty() ? "a model" : String.join(" or ", told);
    }
}
