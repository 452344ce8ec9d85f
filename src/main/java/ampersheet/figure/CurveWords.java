package ampersheet.figure;

import ampersheet.figure.CurveFigure.Axis;
import ampersheet.figure.CurveFigure.Curve;
import ampersheet.figure.CurveFigure.Mark;
import ampersheet.figure.CurveFigure.Plot;
import ampersheet.figure.CurveFigure.Sample;
import ampersheet.language.Language;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Says a plot in words: its axes, the course of each line, the points that are marked. */
final class CurveWords {
    private final Axis x;
    private final Axis y;
    private final List<Curve> curves;
    private final List<Mark> marks;
    private final Scale across;
    private final Scale up;
    private final Language language;

    CurveWords(Plot plot, Scale across, Scale up, Language language) {
        this.x = plot.x();
        this.y = plot.y();
        this.curves = plot.curves();
        this.marks = plot.marks();
        this.across = across;
        this.up = up;
        this.language = language;
    }

    String summary() {
        return language.count(
                "figure.curve.summary", curves.size(), "vertical", y.told(language), "horizontal", x.told(language));
    }

    /** Each curve's height at the numbers of the horizontal axis, as exact as one could read it off. */
    Figure.Table table() {
        List<String> head = new ArrayList<>(List.of(x.brief(language)));
        for (Curve curve : curves) {
            String axis = y.brief(language);
            head.add(
                    curve.name().isEmpty()
                            ? axis
                            : language.say("figure.curve.head-of-line", "axis", axis, "line", curve.name()));
        }
        List<List<String>> rows = new ArrayList<>();
        for (double tick : across.ticks()) {
            List<String> row = new ArrayList<>(List.of(across.print(tick)));
            for (Curve curve : curves) {
                row.add(height(curve, tick)
                        .filter(h -> h >= y.from() && h <= y.to())
                        .map(up::printBetween)
                        .orElseGet(() -> language.say("figure.curve.outside")));
            }
            rows.add(row);
        }
        return new Figure.Table(head, rows);
    }

    private static Optional<Double> height(Curve curve, double at) {
        for (int i = 1; i < curve.samples().size(); i++) {
            Sample a = curve.samples().get(i - 1);
            Sample b = curve.samples().get(i);
            if (at >= a.x() && at <= b.x()) {
                return Optional.of(a.towards(b, (at - a.x()) / (b.x() - a.x())).y());
            }
        }
        return Optional.empty();
    }

    List<String> walk() {
        List<String> sentences = new ArrayList<>();
        sentences.add(language.say(
                "figure.curve.axes",
                "horizontal",
                x.told(language),
                "left",
                across.printBetween(x.from()),
                "right",
                across.printBetween(x.to()),
                "vertical",
                y.told(language),
                "low",
                up.printBetween(y.from()),
                "high",
                up.printBetween(y.to())));
        curves.forEach(curve -> sentences.add(course(curve)));
        for (Mark mark : marks) {
            sentences.add(language.say(
                    "figure.curve.marked",
                    "label",
                    mark.label().plain(),
                    "across",
                    x.symbol().plain(),
                    "x",
                    across.printBetween(mark.x()),
                    "up",
                    y.symbol().plain(),
                    "y",
                    up.printBetween(mark.y())));
        }
        return sentences;
    }

    private String course(Curve curve) {
        boolean rises = false;
        boolean falls = false;
        for (int i = 1; i < curve.samples().size(); i++) {
            rises |= curve.samples().get(i).y() > curve.samples().get(i - 1).y();
            falls |= curve.samples().get(i).y() < curve.samples().get(i - 1).y();
        }
        Sample first = curve.samples().get(0);
        Sample last = curve.samples().get(curve.samples().size() - 1);
        return language.say(
                curve.name().isEmpty() ? course(rises, falls) : named(rises, falls),
                "line",
                curve.name(),
                "first",
                up.printBetween(first.y()),
                "last",
                up.printBetween(last.y()));
    }

    private static String course(boolean rises, boolean falls) {
        if (rises && falls) {
            return "figure.curve.line-rises-and-falls";
        }
        return rises ? "figure.curve.line-rises" : falls ? "figure.curve.line-falls" : "figure.curve.line-stays-level";
    }

    private static String named(boolean rises, boolean falls) {
        if (rises && falls) {
            return "figure.curve.named-line-rises-and-falls";
        }
        return rises
                ? "figure.curve.named-line-rises"
                : falls ? "figure.curve.named-line-falls" : "figure.curve.named-line-stays-level";
    }
}
