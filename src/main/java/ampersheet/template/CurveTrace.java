package ampersheet.template;

import ampersheet.formula.Evaluation;
import ampersheet.formula.Expression;
import ampersheet.formula.Values;
import ampersheet.formula.Working;
import ampersheet.quantity.Quantity;
import ampersheet.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The curve of one problem; all numbers in coherent SI units.
 *
 * @param from where the horizontal axis begins
 * @param to where it ends; behind the last point, wherever the plan has it end
 * @param lines in the order of the plan, the samples of each by rising x and at the same places for all
 * @param points in the order of the plan
 */
public record CurveTrace(CurvePlan plan, double from, double to, List<List<Sample>> lines, List<Point> points) {
    /** Samples at the least; between them, more where a line bends. */
    private static final int INTERVALS = 16;

    private static final int HALVINGS = 6;
    /** Of the curve's height: how far a straight piece may run beside the line. */
    private static final double STRAIGHT = 0.001;
    /** Of the curve's height: farther apart, a point and its line come from two different laws. */
    private static final double ON_THE_LINE = 1e-6;
    /** Of the axis, that stay free behind the last point. */
    private static final double BEHIND = 0.08;

    public CurveTrace {
        lines = lines.stream().map(List::copyOf).toList();
        points = List.copyOf(points);
    }

    public record Sample(double x, double y) {}

    /**
     * @param of the asked step
     * @param off how far from the nearest line it lies, in height
     */
    public record Point(String of, double x, double y, double off) {}

    /** @param values givens, constants and steps of the problem */
    public static CurveTrace of(CurvePlan plan, Working working, Values values) {
        Run run = new Run(plan, working, values);
        double from = run.value(plan.from());
        double to = run.value(plan.to());
        List<Point> points = plan.points().stream().map(run::point).toList();
        for (Point point : points) {
            to = point.x() > to ? point.x() + BEHIND * (point.x() - from) : to;
        }
        return new CurveTrace(plan, from, to, run.lines(from, to), points);
    }

    private record Run(CurvePlan plan, Working working, Values values) {
        double value(Expression formula) {
            return Evaluation.evaluate(formula, values).value();
        }

        /** Everything that is known when the quantity that runs has this value. */
        Values at(double x) {
            Unit unit = plan.across().unit();
            Quantity running = new Quantity(x, unit.dimension());
            Values there = values.with(plan.across().quantity(), running);
            return values.has(plan.across().quantity())
                    ? working.work(there, Map.of(plan.across().quantity(), running))
                    : there;
        }

        Point point(CurvePlan.Point planned) {
            double x = value(planned.across());
            double y = value(planned.up());
            Values there = at(x);
            double off = Double.POSITIVE_INFINITY;
            for (CurvePlan.Line line : plan.lines()) {
                double apart = Math.abs(Evaluation.evaluate(line.is(), there).value() - y);
                off = apart < off ? apart : off;
            }
            return new Point(planned.of(), x, y, off);
        }

        /** The height of every line at one place. */
        Column column(double x) {
            Values there = at(x);
            return new Column(
                    x,
                    plan.lines().stream()
                            .map(line -> Evaluation.evaluate(line.is(), there).value())
                            .toList());
        }

        List<List<Sample>> lines(double from, double to) {
            List<Column> coarse = new ArrayList<>();
            for (int i = 0; i <= INTERVALS; i++) {
                coarse.add(column(from + (to - from) * i / INTERVALS));
            }
            double lowest = coarse.stream()
                    .flatMap(column -> column.heights().stream())
                    .min(Double::compare)
                    .orElse(0.0);
            double highest = coarse.stream()
                    .flatMap(column -> column.heights().stream())
                    .max(Double::compare)
                    .orElse(0.0);
            List<Column> fine = new ArrayList<>(List.of(coarse.get(0)));
            for (int i = 1; i <= INTERVALS; i++) {
                refine(coarse.get(i - 1), coarse.get(i), STRAIGHT * (highest - lowest), HALVINGS, fine);
                fine.add(coarse.get(i));
            }
            List<List<Sample>> lines = new ArrayList<>();
            for (int i = 0; i < plan.lines().size(); i++) {
                int line = i;
                lines.add(fine.stream()
                        .map(column -> new Sample(column.x(), column.heights().get(line)))
                        .toList());
            }
            return lines;
        }

        /** Adds what lies between two places, by rising x: nothing where all lines run straight. */
        private void refine(Column left, Column right, double straight, int halvings, List<Column> into) {
            if (halvings == 0) {
                return;
            }
            Column middle = column((left.x() + right.x()) / 2);
            boolean bends = false;
            for (int line = 0; line < middle.heights().size(); line++) {
                double chord = (left.heights().get(line) + right.heights().get(line)) / 2;
                bends |= Math.abs(middle.heights().get(line) - chord) > straight;
            }
            if (bends) {
                refine(left, middle, straight, halvings - 1, into);
                into.add(middle);
                refine(middle, right, straight, halvings - 1, into);
            }
        }
    }

    private record Column(double x, List<Double> heights) {}

    public double lowest() {
        return lines.stream().flatMap(List::stream).mapToDouble(Sample::y).min().orElseThrow();
    }

    public double highest() {
        return lines.stream().flatMap(List::stream).mapToDouble(Sample::y).max().orElseThrow();
    }

    /** What keeps the curve from being drawn, in words; empty if nothing does. */
    public Optional<String> fault() {
        if (!(to > from) || Double.isInfinite(from) || Double.isInfinite(to)) {
            return Optional.of("the horizontal axis of the curve has no length");
        }
        if (lines.stream().flatMap(List::stream).anyMatch(sample -> !Double.isFinite(sample.y()))) {
            return Optional.of("a line of the curve has no finite value somewhere on its axis");
        }
        for (Point point : points) {
            if (!(point.off() <= ON_THE_LINE * Math.max(highest() - lowest(), Math.abs(point.y())))) {
                return Optional.of("the point " + point.of() + " lies on no line of the curve");
            }
            if (point.x() < from) {
                return Optional.of("the point " + point.of() + " lies before the beginning of the curve's axis");
            }
        }
        return Optional.empty();
    }
}
