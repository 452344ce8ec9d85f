package ampersheet.figure;

import ampersheet.figure.LabelPlacer.Side;
import ampersheet.figure.LabelPlacer.Spot;
import ampersheet.formula.Symbol;
import ampersheet.language.Language;
import ampersheet.quantity.DecimalMarker;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Plots curves over two linear axes, with the points that are asked for. */
public final class CurveFigure {
    private static final double WIDTH = 320;
    private static final double HEIGHT = 160;
    private static final double NARROWEST = 170;
    private static final double NARROWER = 12;
    private static final double TICK = 5;
    /** Lines nearer to each other are seen as one. */
    private static final double CLOSE = 3;
    /** A point of a curve that lies nearer to the straight line between its neighbours is left out. */
    private static final double STRAIGHT = 0.001;
    /** Curves differ in their dashes, not in colour. */
    private static final List<Stroke> STROKES = List.of(
            new Stroke(2), new Stroke(2, 8.0, 4.0), new Stroke(2, 2.0, 4.0), new Stroke(2, 10.0, 3.0, 2.0, 3.0));

    private CurveFigure() {}

    /**
     * @param meaning such as {@code time}; printed before the symbol
     * @param unit as printed after a solidus (t / s, ISO 80000-1); empty for a plain number; ends are in this unit
     */
    public record Axis(String meaning, Symbol symbol, String unit, double from, double to) {
        List<Lettering.Run> runs() {
            List<Lettering.Run> runs = new ArrayList<>();
            runs.add(new Lettering.Run(meaning + "\u00A0", Lettering.Face.UPRIGHT));
            runs.addAll(Lettering.symbol(symbol));
            if (!unit.isEmpty()) {
                runs.add(new Lettering.Run("\u00A0/\u00A0" + unit, Lettering.Face.UPRIGHT));
            }
            return runs;
        }

        /** As a sentence tells it: {@code time t in s}. */
        String told(Language language) {
            return unit.isEmpty()
                    ? language.say("figure.curve.axis", "meaning", meaning, "symbol", symbol.plain())
                    : language.say("figure.curve.axis-in", "meaning", meaning, "symbol", symbol.plain(), "unit", unit);
        }

        /** The symbol alone, for the head of a table. */
        String brief(Language language) {
            return unit.isEmpty()
                    ? symbol.plain()
                    : language.say("figure.curve.head-in", "symbol", symbol.plain(), "unit", unit);
        }
    }

    /** In the units of the axes. */
    public record Sample(double x, double y) {
        /** The point at a share of the straight way to another. */
        Sample towards(Sample other, double share) {
            return new Sample(x + (other.x - x) * share, y + (other.y - y) * share);
        }
    }

    /** @param name printed at the curve's right end; may be empty for a single curve; @param samples by rising x */
    public record Curve(String name, List<Sample> samples) {
        public Curve {
            samples = List.copyOf(samples);
            if (samples.size() < 2) {
                throw new IllegalArgumentException("a curve needs two samples at least");
            }
            for (int i = 1; i < samples.size(); i++) {
                if (samples.get(i).x() <= samples.get(i - 1).x()) {
                    throw new IllegalArgumentException(
                            "samples of a curve need rising x, but sample " + i + " does not rise");
                }
            }
        }
    }

    /** A ringed point from which dashed lines lead to both axes; its label is what is asked, with its value. */
    public record Mark(double x, double y, Label.Line label) {}

    /** Curves, at least one, and marks within the axes. */
    public record Plot(Axis x, Axis y, List<Curve> curves, List<Mark> marks, DecimalMarker marker) {
        /** @throws IllegalArgumentException if there is no curve, or a mark lies outside the axes */
        public Plot {
            curves = List.copyOf(curves);
            marks = List.copyOf(marks);
            if (curves.isEmpty()) {
                throw new IllegalArgumentException("a plot needs a curve");
            }
            for (Mark mark : marks) {
                if (mark.x() < x.from() || mark.x() > x.to() || mark.y() < y.from() || mark.y() > y.to()) {
                    throw new IllegalArgumentException(
                            "the mark " + mark.label().plain() + " lies outside the axes");
                }
            }
        }
    }

    /** @param setting with a width that the plot is drawn narrower for */
    public static Figure draw(String title, Plot plot, Figure.Setting setting) {
        Layout layout = Layout.within(plot, setting.widest());
        CurveWords words = new CurveWords(plot, layout.across, layout.up, setting.language());
        return new Figure(
                layout.drawing.picture(title, words.summary(), setting.idPrefix()),
                title,
                words.summary(),
                words.table(),
                words.walk());
    }

    static Drawing layOut(Plot plot, double widest) {
        return Layout.within(plot, widest).drawing;
    }

    private static final class Layout {
        private final Axis x;
        private final Axis y;
        private final List<Curve> curves;
        private final List<Mark> marks;
        private final Scale across;
        private final Scale up;
        private final double width;
        private final Drawing drawing = new Drawing();
        private final LabelPlacer placer = new LabelPlacer(drawing);

        /** Axes as long as labels and names beside them leave room for. */
        static Layout within(Plot plot, double widest) {
            Layout layout = new Layout(plot, WIDTH);
            for (double width = WIDTH;
                    layout.drawing.bounds().width() > widest && width >= NARROWEST;
                    width -= NARROWER) {
                layout = new Layout(plot, width);
            }
            return layout;
        }

        private Layout(Plot plot, double width) {
            this.x = plot.x();
            this.y = plot.y();
            this.curves = plot.curves();
            this.marks = plot.marks();
            this.width = width;
            this.across = new Scale(x.from(), x.to(), 8, plot.marker());
            this.up = new Scale(y.from(), y.to(), 5, plot.marker());
            draw();
        }

        private double px(double value) {
            return (value - x.from()) / (x.to() - x.from()) * width;
        }

        private double py(double value) {
            return (y.from() - value) / (y.to() - y.from()) * HEIGHT;
        }

        private void draw() {
            axes();
            for (int i = 0; i < curves.size(); i++) {
                curve(curves.get(i), STROKES.get(i % STROKES.size()));
            }
            guides();
            // All of them before the first label: it would not know of the circles to come.
            for (Mark mark : marks) {
                drawing.circle(part(mark), Stroke.STRONG, pixel(new Sample(mark.x(), mark.y())), 4);
            }
            marks.forEach(this::label);
            for (Curve curve : curves) {
                name(curve);
            }
        }

        private void axes() {
            Point origin = new Point(0, 0);
            drawing.arrow("axes", Stroke.LINE, 8, origin, new Point(width + 16, 0));
            drawing.arrow("axes", Stroke.LINE, 8, origin, new Point(0, -HEIGHT - 16));
            for (double tick : across.ticks()) {
                drawing.line("axes", Stroke.FINE, new Point(px(tick), 0), new Point(px(tick), TICK));
                Lettering number = Lettering.plain(across.print(tick), Lettering.SMALL);
                drawing.add(
                        "axes",
                        new Shape.Words(number, new Point(px(tick), TICK + 13), Lettering.Anchor.MIDDLE, false));
            }
            for (double tick : up.ticks()) {
                drawing.line("axes", Stroke.FINE, new Point(-TICK, py(tick)), new Point(0, py(tick)));
                Lettering number = Lettering.plain(up.print(tick), Lettering.SMALL);
                drawing.add(
                        "axes",
                        new Shape.Words(number, new Point(-TICK - 3, py(tick) + 4), Lettering.Anchor.END, false));
            }
            drawing.add(
                    "axes",
                    new Shape.Words(
                            new Lettering(x.runs(), Lettering.BODY, false),
                            new Point(width + 16, 34),
                            Lettering.Anchor.END,
                            false));
            drawing.add(
                    "axes",
                    new Shape.Words(
                            new Lettering(y.runs(), Lettering.BODY, false),
                            new Point(10, -HEIGHT - 12),
                            Lettering.Anchor.START,
                            false));
        }

        private void curve(Curve curve, Stroke stroke) {
            List<Point> run = new ArrayList<>();
            for (int i = 1; i < curve.samples().size(); i++) {
                Optional<Sample[]> inside =
                        inside(curve.samples().get(i - 1), curve.samples().get(i));
                if (inside.isEmpty()) {
                    continue;
                }
                Point start = pixel(inside.get()[0]);
                if (!run.isEmpty() && run.get(run.size() - 1).distanceTo(start) > 0.01) {
                    drawing.add("curve " + curve.name(), new Shape.Line(run, stroke));
                    run.clear();
                }
                if (run.isEmpty()) {
                    run.add(start);
                }
                addStraightened(run, pixel(inside.get()[1]));
            }
            if (run.size() > 1) {
                drawing.add("curve " + curve.name(), new Shape.Line(run, stroke));
            }
        }

        private static void addStraightened(List<Point> run, Point next) {
            if (run.size() >= 2) {
                Point before = run.get(run.size() - 2);
                Point last = run.get(run.size() - 1);
                double across = (next.x() - before.x()) * (last.y() - before.y())
                        - (next.y() - before.y()) * (last.x() - before.x());
                if (Math.abs(across) <= STRAIGHT * before.distanceTo(next)) {
                    run.remove(run.size() - 1);
                }
            }
            run.add(next);
        }

        private Point pixel(Sample sample) {
            return new Point(px(sample.x()), py(sample.y()));
        }

        /** The piece of a straight line between samples that lies within the axes. */
        private Optional<Sample[]> inside(Sample a, Sample b) {
            double[] fractions = {0, 1};
            if (cut(fractions, a.x(), b.x(), x.from(), x.to()) && cut(fractions, a.y(), b.y(), y.from(), y.to())) {
                return Optional.of(new Sample[] {a.towards(b, fractions[0]), a.towards(b, fractions[1])});
            }
            return Optional.empty();
        }

        private static boolean cut(double[] fractions, double a, double b, double low, double high) {
            if (a == b) {
                return a >= low && a <= high;
            }
            double atLow = (low - a) / (b - a);
            double atHigh = (high - a) / (b - a);
            fractions[0] = Math.max(fractions[0], Math.min(atLow, atHigh));
            fractions[1] = Math.min(fractions[1], Math.max(atLow, atHigh));
            return fractions[0] < fractions[1];
        }

        /**
         * No guide runs along another, along an axis or along a level curve: two dashed lines together look like a full
         * one.
         */
        private void guides() {
            for (Mark mark : marks) {
                Point at = pixel(new Sample(mark.x(), mark.y()));
                boolean below = marks.stream()
                        .map(other -> pixel(new Sample(other.x(), other.y())))
                        .anyMatch(other -> Math.abs(other.x() - at.x()) < CLOSE && other.y() < at.y());
                if (!below && at.x() >= CLOSE) {
                    drawing.line(part(mark), Stroke.DASHED, at.plus(0, 4), new Point(at.x(), 0));
                }
                boolean level = curves.stream()
                        .anyMatch(curve ->
                                curve.samples().stream().allMatch(sample -> Math.abs(py(sample.y()) - at.y()) < CLOSE));
                if (!level && at.x() >= CLOSE && -at.y() >= CLOSE) {
                    drawing.line(part(mark), Stroke.DASHED, at.plus(-4, 0), new Point(0, at.y()));
                }
            }
        }

        private static String part(Mark mark) {
            return "mark " + mark.label().plain();
        }

        private void label(Mark mark) {
            Point at = pixel(new Sample(mark.x(), mark.y()));
            List<Lettering> label =
                    List.of(Lettering.of(mark.label(), Lettering.BODY).inBold());
            List<Spot> spots = new ArrayList<>();
            Side inwards = at.x() < width / 2 ? Side.RIGHT : Side.LEFT;
            for (double gap = 5; gap <= 85; gap += 4) {
                for (double dy : new double[] {-gap - 5, gap + 5, 0}) {
                    for (Side side : List.of(inwards, inwards == Side.LEFT ? Side.RIGHT : Side.LEFT)) {
                        double away = dy == 0 ? 2 * gap : gap;
                        spots.add(new Spot(at.plus(side == Side.LEFT ? -away : away, dy), side));
                    }
                }
            }
            spots.sort(Comparator.comparingInt(spot -> distance(LabelPlacer.box(label, spot))));
            placer.place(part(mark), label, spots);
        }

        /**
         * Beyond the vertical axis a label would push the whole plot aside; below the horizontal one it belongs to no
         * point.
         */
        private static int distance(Box label) {
            return label.bottom() > 0 ? 2 : label.left() < 0 ? 1 : 0;
        }

        /** At the last point within the axes, outside them where possible. */
        private void name(Curve curve) {
            List<Shape> lines = drawing.shapes("curve " + curve.name());
            if (curve.name().isEmpty()
                    || lines.isEmpty()
                    || !(lines.get(lines.size() - 1) instanceof Shape.Line line)) {
                return;
            }
            Point end = line.points().get(line.points().size() - 1);
            List<Spot> spots = new ArrayList<>();
            for (double dy = 0; dy <= 40; dy += 4) {
                spots.add(new Spot(end.plus(6, dy), Side.RIGHT));
                spots.add(new Spot(end.plus(6, -dy), Side.RIGHT));
            }
            for (double dx = 0; dx <= 80; dx += 8) {
                spots.add(new Spot(end.plus(-dx, -6), Side.ABOVE));
                spots.add(new Spot(end.plus(-dx, 6), Side.BELOW));
            }
            placer.place("curve " + curve.name(), List.of(Lettering.plain(curve.name(), Lettering.BODY)), spots);
        }
    }
}
