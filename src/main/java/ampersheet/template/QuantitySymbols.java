package ampersheet.template;

import ampersheet.formula.Symbol;
import ampersheet.language.Language;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Unit;
import ampersheet.template.ProblemTemplate.Constant;
import ampersheet.template.ProblemTemplate.Given;
import ampersheet.template.ProblemTemplate.QuantityGiven;
import ampersheet.template.ProblemTemplate.StepLine;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.stream.Stream;

/**
 * The letters that a language's schools and data sheets have for a quantity where others have V and θ: voltage is U in
 * German, a thermal resistance R with th. IEC 60027-1 gives U and V side by side (from memory). Where two symbols of a
 * template would become one, all stay as they are.
 */
final class QuantitySymbols {
    private static final Dimension THERMAL_RESISTANCE = Dimension.TEMPERATURE.over(Dimension.POWER);
    private static final String THETA = "\u03b8";

    private final BiFunction<Symbol, Unit, Symbol> called;

    private QuantitySymbols(BiFunction<Symbol, Unit, Symbol> called) {
        this.called = called;
    }

    static QuantitySymbols of(Language language, List<Given> givens, List<Constant> constants, List<StepLine> lines) {
        String voltage = language.say("common.symbol.voltage");
        String heat = language.say("common.symbol.thermal-resistance");
        BiFunction<Symbol, Unit, Symbol> called = (symbol, unit) -> {
            if (unit.dimension().equals(Dimension.VOLTAGE) && symbol.letters().endsWith("V")) {
                String before = symbol.letters().substring(0, symbol.letters().length() - 1);
                return new Symbol(before + voltage, symbol.subscript());
            }
            boolean theta = unit.dimension().equals(THERMAL_RESISTANCE)
                    && symbol.letters().equals(THETA);
            return theta && !heat.equals(THETA)
                    ? new Symbol(heat.substring(0, 1), heat.substring(1) + symbol.subscript())
                    : symbol;
        };
        Set<Symbol> all = new LinkedHashSet<>();
        boolean apart = Stream.of(
                        givens.stream()
                                .filter(QuantityGiven.class::isInstance)
                                .map(QuantityGiven.class::cast)
                                .map(given -> called.apply(given.symbol(), given.unit())),
                        constants.stream().map(constant -> called.apply(constant.symbol(), constant.unit())),
                        lines.stream().map(line -> called.apply(line.symbol(), line.unit())))
                .flatMap(symbols -> symbols)
                .allMatch(all::add);
        return new QuantitySymbols(apart ? called : (symbol, unit) -> symbol);
    }

    List<Given> givens(List<Given> givens) {
        return givens.stream()
                .map(given -> given instanceof QuantityGiven quantity
                        ? new QuantityGiven(
                                quantity.name(),
                                quantity.meaning(),
                                called.apply(quantity.symbol(), quantity.unit()),
                                quantity.unit(),
                                quantity.values(),
                                quantity.tolerance())
                        : given)
                .toList();
    }

    List<Constant> constants(List<Constant> constants) {
        return constants.stream()
                .map(constant -> new Constant(
                        constant.name(),
                        constant.meaning(),
                        called.apply(constant.symbol(), constant.unit()),
                        constant.unit(),
                        constant.si()))
                .toList();
    }

    List<StepLine> lines(List<StepLine> lines) {
        return lines.stream()
                .map(line -> new StepLine(
                        line.id(),
                        line.meaning(),
                        called.apply(line.symbol(), line.unit()),
                        line.unit(),
                        line.principle(),
                        line.reasons(),
                        line.acceptance(),
                        line.noMistake()))
                .toList();
    }

    Optional<CurvePlan> curve(Optional<CurvePlan> curve) {
        return curve.map(plan -> new CurvePlan(
                axis(plan.across()), axis(plan.up()), plan.from(), plan.to(), plan.lines(), plan.points()));
    }

    private CurvePlan.Axis axis(CurvePlan.Axis axis) {
        return new CurvePlan.Axis(
                axis.quantity(), axis.meaning(), called.apply(axis.symbol(), axis.unit()), axis.unit());
    }
}
