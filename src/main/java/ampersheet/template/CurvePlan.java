package ampersheet.template;

import ampersheet.formula.Expression;
import ampersheet.formula.Symbol;
import ampersheet.quantity.Unit;
import java.util.List;

/**
 * A plot that the worked solution shows: lines over a quantity that runs, and the asked points on them. Where the
 * quantity that runs is a given, a constant or a step, the steps are worked again for each of its values.
 *
 * @param from where the horizontal axis begins; formula over givens, constants and steps
 * @param to where it ends, at least
 */
public record CurvePlan(Axis across, Axis up, Expression from, Expression to, List<Line> lines, List<Point> points) {
    public CurvePlan {
        lines = List.copyOf(lines);
        points = List.copyOf(points);
    }

    /** @param quantity a given, constant or step, or a name that only the curve has; @param unit its numbers are in */
    public record Axis(String quantity, String meaning, Symbol symbol, Unit unit) {}

    /**
     * @param name printed beside it; empty where there is one line
     * @param is over givens, constants, steps and the quantity that runs
     */
    public record Line(String name, Expression is) {}

    /**
     * An asked value where it lies on a line; both places are formulas over givens, constants and steps.
     *
     * @param of the asked step
     */
    public record Point(String of, Expression across, Expression up) {}
}
