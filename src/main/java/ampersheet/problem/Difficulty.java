package ampersheet.problem;

import ampersheet.answer.KnownMistake;
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
 * The fingerprint of a variant, what makes it harder than another of its template: two variants with the same one are
 * fair to swap. Narrow ranges of numbers alone do not see to that.
 *
 * @param steps lines of the working
 * @param inversions divisions, roots, logarithms and parallel connections in the lines that apply
 * @param prefixCrossings lines whose numbers have different prefixes, such as volts over milliamperes
 * @param digits significant digits of the givens, as printed
 * @param nonTerminating results that have no short exact decimal
 * @param branches which case applied, for each step with several, and whether {@code nearest} went up (1) or down (0)
 * @param nearest how far the answer of the nearest modelled mistake lies from the right one
 */
public record Difficulty(
        int steps,
        int inversions,
        int prefixCrossings,
        int digits,
        int nonTerminating,
        List<Integer> branches,
        Nearness nearest) {
    /** To be raised when other points are given, since plans that deal evenly then give everybody other variants. */
    public static final int POINTS_VERSION = 1;

    // What each adds to the points. Common practice, no source: what is read, turned round or carried weighs double.
    private static final int A_STEP = 2;
    private static final int AN_INVERSION = 2;
    private static final int A_CROSSING = 2;
    private static final int A_CASE = 1;
    private static final int AN_UNENDING_RESULT = 1;
    private static final int A_DIGIT = 1;

    private static final int FIGURES = 3;

    public Difficulty {
        branches = List.copyOf(branches);
    }

    /** Classes of distance, relative to the right answer: what lies near is not noticed by how large a result is. */
    public enum Nearness {
        /** Below 5 %. */
        NEAR("below-5-percent", 2),
        /** From 5 % to 20 %. */
        MIDDLING("5-to-20-percent", 1),
        /** Beyond 20 %, or no mistake gives a value here. */
        FAR("beyond-20-percent", 0);

        private static final double NEAR_BELOW = 0.05;
        private static final double FAR_BEYOND = 0.2;

        private final String id;
        private final int points;

        Nearness(String id, int points) {
            this.id = id;
            this.points = points;
        }

        public String id() {
            return id;
        }

        private static Nearness of(double distance) {
            return distance < NEAR_BELOW ? NEAR : distance <= FAR_BEYOND ? MIDDLING : FAR;
        }
    }

    /** How hard it is in all, as one number: a sum of what is counted, to compare and to balance variants by. */
    public int points() {
        return A_STEP * steps
                + AN_INVERSION * inversions
                + A_CROSSING * prefixCrossings
                + A_CASE * branches.size()
                + AN_UNENDING_RESULT * nonTerminating
                + A_DIGIT * digits
                + nearest.points;
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
                branches,
                Nearness.of(nearestMistake(problem)));
    }

    /** Of a right answer of zero nothing is a share. */
    private static double nearestMistake(Problem problem) {
        double nearest = Double.POSITIVE_INFINITY;
        for (Problem.Answer answer : problem.answers()) {
            for (KnownMistake mistake : answer.mistakes()) {
                if (answer.value() != 0) {
                    nearest = Math.min(nearest, Math.abs(mistake.value() - answer.value()) / Math.abs(answer.value()));
                }
            }
        }
        return nearest;
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
