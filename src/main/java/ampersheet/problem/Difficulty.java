package ampersheet.problem;

import ampersheet.formula.Evaluation;
import ampersheet.formula.Expression;
import ampersheet.formula.Notation;
import ampersheet.formula.Step;
import ampersheet.formula.Values;
import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.QuantityWriter.Printed;
import ampersheet.template.ProblemTemplate.Given;
import ampersheet.template.ProblemTemplate.QuantityGiven;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What makes one variant of a template harder than another: two variants of equal difficulty are fair to swap. Narrow
 * ranges of numbers alone do not see to that.
 *
 * @param steps lines of the working
 * @param inversions divisions, roots, logarithms and parallel connections in the lines that apply
 * @param prefixCrossings lines whose numbers have different prefixes, such as volts over milliamperes
 * @param digits significant digits of the givens, as printed
 * @param nonTerminating results that have no short exact decimal
 * @param branches which case applied, for each step with several, and whether {@code nearest} went up (1) or down (0)
 */
public record Difficulty(
        int steps, int inversions, int prefixCrossings, int digits, int nonTerminating, List<Integer> branches) {
    private static final int FIGURES = 3;

    public Difficulty {
        branches = List.copyOf(branches);
    }

    public static Difficulty of(Problem problem) {
        Values values = problem.values();
        Notation notation =
                Notations.of(problem.template(), problem.template().language(), values, QuantityWriter.POINT, FIGURES);
        int inversions = 0;
        int crossings = 0;
        int nonTerminating = 0;
        List<Integer> branches = new ArrayList<>();
        for (Step step : problem.template().working().steps()) {
            int applying = step.applying(values);
            Expression line = step.cases().get(applying).is();
            if (step.cases().size() > 1) {
                branches.add(applying);
            }
            inversions += inversions(line);
            crossings += crosses(step.id(), line, problem, notation) ? 1 : 0;
            Printed result = notation.values().get(step.id());
            nonTerminating += result.exact() ? 0 : 1;
            for (Expression.Call jump : Boundaries.jumps(line)) {
                if (jump.function().equals("nearest")) {
                    boolean up = Evaluation.evaluate(jump, values).value()
                            > Evaluation.evaluate(jump.arguments().get(0), values)
                                    .value();
                    branches.add(up ? 1 : 0);
                }
            }
        }
        return new Difficulty(
                problem.template().working().steps().size(),
                inversions,
                crossings,
                digits(problem, notation),
                nonTerminating,
                branches);
    }

    private static int inversions(Expression expression) {
        int own = expression instanceof Expression.Quotient
                        || expression instanceof Expression.Call call
                                && Set.of("parallel", "sqrt", "ln", "log10").contains(call.function())
                ? 1
                : 0;
        for (Expression part : expression.parts()) {
            own += inversions(part);
        }
        return own;
    }

    private static boolean crosses(String step, Expression line, Problem problem, Notation notation) {
        Map<String, String> bases = new LinkedHashMap<>();
        problem.template().givens().forEach(given -> {
            if (given instanceof QuantityGiven quantity) {
                bases.put(given.name(), quantity.unit().base());
            }
        });
        problem.template()
                .constants()
                .forEach(constant -> bases.put(constant.name(), constant.unit().base()));
        problem.template()
                .lines()
                .forEach(told -> bases.put(told.id(), told.unit().base()));
        Set<String> prefixes = new LinkedHashSet<>();
        Set<String> names = new LinkedHashSet<>(Evaluation.names(line));
        names.add(step);
        for (String name : names) {
            Printed printed = notation.values().get(name);
            if (printed != null && !printed.unit().isEmpty()) {
                String base = bases.get(name);
                prefixes.add(
                        printed.unit().endsWith(base)
                                ? printed.unit().substring(0, printed.unit().length() - base.length())
                                : "");
            }
        }
        return prefixes.size() > 1;
    }

    private static int digits(Problem problem, Notation notation) {
        int digits = 0;
        for (Given given : problem.template().givens()) {
            Printed printed = notation.values().get(given.name());
            if (printed != null) {
                digits += significantDigits(printed.number());
            }
        }
        return digits;
    }

    /** Of 0.047: 2; of 4700: 2, since its zeros only place the decimal marker. */
    private static int significantDigits(String number) {
        int digits = 0;
        int zeros = 0;
        boolean started = false;
        for (char c : number.toCharArray()) {
            if (c >= '1' && c <= '9') {
                digits += zeros + 1;
                zeros = 0;
                started = true;
            } else if (c == '0' && started) {
                zeros++;
            }
        }
        return digits;
    }
}
