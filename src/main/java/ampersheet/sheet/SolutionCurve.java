package ampersheet.sheet;

import ampersheet.answer.AnswerKey;
import ampersheet.figure.CurveFigure;
import ampersheet.figure.Figure;
import ampersheet.figure.Label;
import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.Unit;
import ampersheet.template.CurvePlan;
import ampersheet.template.CurveTrace;
import ampersheet.template.ProblemTemplate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The plot of a worked solution: how what is asked hangs on another quantity, and where this problem lies. */
final class SolutionCurve {
    /** Of the height of the curve, that stays free above it, and below where the axis does not begin at zero. */
    private static final double FREE = 0.06;
    /** Lines that stay above this share of their highest value would leave the lower half of the plot empty. */
    private static final double FROM_ZERO = 0.6;

    private final SheetProblem problem;
    private final CurveTrace trace;
    private final Unit across;
    private final Unit up;

    private SolutionCurve(SheetProblem problem, CurveTrace trace) {
        this.problem = problem;
        this.trace = trace;
        this.across = unit(trace.plan().across().unit(), Math.max(Math.abs(trace.from()), Math.abs(trace.to())));
        this.up = unit(trace.plan().up().unit(), Math.max(Math.abs(trace.lowest()), Math.abs(trace.highest())));
    }

    /** @param widest width in pixels that is not exceeded */
    static Optional<Figure> of(SheetProblem problem, double widest) {
        return plot(problem)
                .map(plot -> CurveFigure.draw(
                        ModelFigures.title(problem.plan().language().say("sheet.figure.curve"), problem),
                        plot,
                        new Figure.Setting(
                                ModelFigures.idOf(problem) + "k",
                                widest,
                                problem.plan().language())));
    }

    static Optional<CurveFigure.Plot> plot(SheetProblem problem) {
        return problem.problem().curve().map(trace -> new SolutionCurve(problem, trace).plot());
    }

    /** With the prefix that suits the largest number of the axis. */
    private static Unit unit(Unit unit, double largest) {
        String printed = QuantityWriter.POINT.rounded(largest, unit, 3).unit();
        return unit.prefixable() && !printed.equals(unit.symbol()) ? Unit.parse(printed) : unit;
    }

    private CurveFigure.Plot plot() {
        List<CurveFigure.Curve> curves = new ArrayList<>();
        for (int line = 0; line < trace.lines().size(); line++) {
            curves.add(new CurveFigure.Curve(
                    trace.plan().lines().get(line).name(),
                    trace.lines().get(line).stream()
                            .map(sample -> new CurveFigure.Sample(across.fromSi(sample.x()), up.fromSi(sample.y())))
                            .toList()));
        }
        return new CurveFigure.Plot(
                horizontal(),
                vertical(),
                curves,
                trace.points().stream().map(this::mark).toList(),
                problem.writer().marker());
    }

    private CurveFigure.Axis horizontal() {
        CurvePlan.Axis axis = trace.plan().across();
        return new CurveFigure.Axis(
                axis.meaning(), axis.symbol(), across.symbol(), across.fromSi(trace.from()), across.fromSi(trace.to()));
    }

    private CurveFigure.Axis vertical() {
        CurvePlan.Axis axis = trace.plan().up();
        double lowest = up.fromSi(trace.lowest());
        double highest = up.fromSi(trace.highest());
        double height = highest > lowest ? highest - lowest : Math.max(1, Math.abs(highest));
        boolean fromZero = up.offset() == 0 && lowest >= 0 && lowest < FROM_ZERO * highest;
        return new CurveFigure.Axis(
                axis.meaning(),
                axis.symbol(),
                up.symbol(),
                fromZero ? 0 : lowest - FREE * height,
                highest + FREE * height);
    }

    private CurveFigure.Mark mark(CurveTrace.Point point) {
        ProblemTemplate.StepLine line = problem.template().line(point.of());
        AnswerKey key = problem.answers().stream()
                .filter(answer -> answer.step().equals(point.of()))
                .findFirst()
                .orElseThrow();
        return new CurveFigure.Mark(
                across.fromSi(point.x()),
                up.fromSi(point.y()),
                new Label.Line(Optional.of(line.symbol()), "= " + ProblemText.answer(key, problem.writer())));
    }
}
