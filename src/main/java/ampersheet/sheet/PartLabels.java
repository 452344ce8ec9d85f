package ampersheet.sheet;

import ampersheet.circuit.PartKind;
import ampersheet.circuit.PartValue;
import ampersheet.figure.HeatFigure;
import ampersheet.figure.Label;
import ampersheet.formula.Expression;
import ampersheet.formula.Notation;
import ampersheet.formula.Symbol;
import ampersheet.language.Language;
import ampersheet.model.CircuitPlan;
import ampersheet.model.CircuitPlan.PlannedPart;
import ampersheet.model.HeatPlan;
import ampersheet.quantity.QuantityWriter.Printed;
import ampersheet.template.ProblemTemplate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * What stands beside the parts of a figure: a given with its value where it belongs, and of a value that is asked or
 * worked only the symbol.
 */
final class PartLabels {
    private static final String EQUALS = "= ";

    private final SheetProblem problem;
    private final ProblemTemplate template;
    private final Notation givens;
    private final Map<String, Symbol> workedSymbols = new TreeMap<>();

    PartLabels(SheetProblem problem) {
        this.problem = problem;
        this.template = problem.template();
        this.givens = ProblemText.of(problem, problem.problem().givens());
        template.lines().forEach(line -> workedSymbols.put(line.id(), line.symbol()));
    }

    Map<String, Label> ofCircuit() {
        Map<String, Label> labels = new LinkedHashMap<>();
        for (PlannedPart part : template.model(CircuitPlan.class).orElseThrow().parts()) {
            if (part.kind() == PartKind.WIRE || part.kind() == PartKind.GROUND) {
                continue;
            }
            if (part.kind() == PartKind.NODE) {
                part.caption()
                        .or(() -> Optional.of(called(part.name())).filter(called -> !called.equals(part.name())))
                        .ifPresent(caption -> labels.put(part.name(), new Label(caption, List.of())));
                continue;
            }
            List<Label.Line> lines = new ArrayList<>();
            for (PartValue value : PartValue.PRINTED) {
                Expression formula = part.values().get(value);
                if (formula != null) {
                    boolean plain = part.kind().needed().contains(value) && !value.isOfTheModel();
                    line(formula, plain).ifPresent(lines::add);
                }
            }
            labels.put(part.name(), new Label(part.caption().orElseGet(() -> called(part.name())), lines));
        }
        return labels;
    }

    Map<String, Label> ofHeat() {
        HeatPlan plan = template.model(HeatPlan.class).orElseThrow();
        Map<String, Label> labels = new LinkedHashMap<>();
        plan.ambients().forEach(ambient -> labels.put(ambient.name(), label(ambient.name(), ambient.at())));
        plan.nodes().forEach(node -> {
            node.capacity()
                    .flatMap(capacity -> line(capacity, true))
                    .ifPresent(line -> labels.put(
                            HeatFigure.capacityOf(node.name()), new Label(called(node.name()), List.of(line))));
            List<Label.Line> initial = node.initial()
                    .flatMap(at -> line(at, false))
                    .map(line -> List.of(atFirst(line, problem.plan().language())))
                    .orElse(List.of());
            labels.put(node.name(), new Label(called(node.name()), initial));
        });
        plan.resistances()
                .forEach(resistance ->
                        labels.put(resistance.name(), label(resistance.name(), resistance.kelvinPerWatt())));
        plan.losses().forEach(loss -> labels.put(loss.name(), label(loss.name(), loss.watts())));
        return labels;
    }

    /**
     * Without the moment, the node looks held at the temperature from which it starts; short, for it stands in the
     * node.
     */
    private static Label.Line atFirst(Label.Line initial, Language language) {
        boolean known = initial.text().startsWith(EQUALS);
        return new Label.Line(
                known ? Optional.empty() : initial.symbol(),
                language.say(
                        "sheet.figure.at-first",
                        "value",
                        known ? initial.text().substring(EQUALS.length()) : initial.text()));
    }

    /** Names that are words of the trade, such as junction or heat, in the language of the sheet. */
    private String called(String name) {
        return problem.plan().language().name(name);
    }

    private Label label(String name, Expression formula) {
        return new Label(called(name), line(formula, true).map(List::of).orElse(List.of()));
    }

    /** @param plain whether a bare number is worth printing */
    private Optional<Label.Line> line(Expression formula, boolean plain) {
        if (formula instanceof Expression.Name name) {
            Printed given = givens.values().get(name.id());
            if (given != null) {
                return Optional.of(new Label.Line(Optional.of(givens.symbol(name.id())), EQUALS + given.text()));
            }
            return Optional.ofNullable(workedSymbols.get(name.id()))
                    .map(symbol -> new Label.Line(Optional.of(symbol), ""));
        }
        if (formula instanceof Expression.Constant constant && plain) {
            return Optional.of(new Label.Line(
                    Optional.empty(),
                    problem.writer()
                            .plain(constant.si(), constant.unit(), ProblemText.FIGURES)
                            .text()));
        }
        return Optional.empty();
    }
}
