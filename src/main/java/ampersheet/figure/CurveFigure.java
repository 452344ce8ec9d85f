package ampersheet.figure;

import ampersheet.figure.LabelPlacer.Side;
import ampersheet.figure.LabelPlacer.Spot;
import ampersheet.formula.Symbol;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Plots curves over two linear axes, with points that are asked about or pointed at. */
public final class CurveFigure {
  private static final double WIDTH = 380;
  private static final double HEIGHT = 230;
  private static final double TICK = 5;
  /** Curves differ in their dashes, not in colour. */
  private static final List<Stroke> STROKES = List.of(new Stroke(2, ""), new Stroke(2, "8 4"), new Stroke(2, "2 4"),
      new Stroke(2, "10 3 2 3"));

  private CurveFigure() {}

  /** @param unit as printed after a solidus (t / s); "1" for a plain number; values are in this unit */
  public record Axis(Symbol symbol, String unit, double from, double to) {
    List<Lettering.Run> runs() {
      List<Lettering.Run> runs = new ArrayList<>(Lettering.symbol(symbol));
      if (!unit.equals("1")) {
        runs.add(new Lettering.Run("\u00A0/\u00A0" + unit, Lettering.Face.UPRIGHT));
      }
      return runs;
    }

    String plain() {
      return unit.equals("1") ? symbol.plain() : symbol.plain() + " in " + unit;
    }
  }

  /** In the units of the axes. */
  public record Sample(double x, double y) {}

  /** @param name printed at the curve's right end; may be empty for a single curve; @param samples by rising x */
  public record Curve(String name, List<Sample> samples) {
    public Curve {
      samples = List.copyOf(samples);
      if (samples.size() < 2) {
        throw new IllegalArgumentException("a curve needs two samples at least");
      }
      for (int i = 1; i < samples.size(); i++) {
        if (samples.get(i).x() <= samples.get(i - 1).x()) {
          throw new IllegalArgumentException("samples of a curve need rising x, but sample " + i + " does not rise");
        }
      }
    }
  }

  /** Which axes a dashed line leads to from a point; without one, the reader is to find the value. */
  public enum Guides { NONE, TO_X, TO_Y, BOTH }

  /** A ringed point with a short label. */
  public record Mark(double x, double y, String label, Guides guides) {}

  /** @throws IllegalArgumentException if there is no curve, an axis is empty, or a mark lies outside the axes */
  public static Figure draw(String title, Axis x, Axis y, List<Curve> curves, List<Mark> marks, String idPrefix) {
    if (curves.isEmpty()) {
      throw new IllegalArgumentException("a plot needs a curve");
    }
    Plot plot = new Plot(x, y);
    for (Mark mark : marks) {
      if (mark.x() < x.from() || mark.x() > x.to() || mark.y() < y.from() || mark.y() > y.to()) {
        throw new IllegalArgumentException("the mark " + mark.label() + " lies outside the axes");
      }
    }
    Drawing drawing = plot.draw(curves, marks);
    String summary = "A plot of " + y.plain() + " against " + x.plain() + " with "
        + English.count(curves.size(), "curve", "curves") + ".";
    return new Figure(drawing.svg(title, summary, idPrefix), title, summary, plot.table(curves),
        plot.walk(curves, marks));
  }

  static Drawing layOut(Axis x, Axis y, List<Curve> curves, List<Mark> marks) {
    return new Plot(x, y).draw(curves, marks);
  }

  private static final class Plot {
    private final Axis x;
    private final Axis y;
    private final Scale across;
    private final Scale up;
    private final Drawing drawing = new Drawing();
    private final LabelPlacer placer = new LabelPlacer(drawing);

    Plot(Axis x, Axis y) {
      this.x = x;
      this.y = y;
      this.across = new Scale(x.from(), x.to(), 8);
      this.up = new Scale(y.from(), y.to(), 6);
    }

    private double px(double value) {
      return (value - x.from()) / (x.to() - x.from()) * WIDTH;
    }

    private double py(double value) {
      return (y.from() - value) / (y.to() - y.from()) * HEIGHT;
    }

    Drawing draw(List<Curve> curves, List<Mark> marks) {
      axes();
      for (int i = 0; i < curves.size(); i++) {
        curve(curves.get(i), STROKES.get(i % STROKES.size()));
      }
      for (Mark mark : marks) {
        guides(mark);
      }
      for (Mark mark : marks) {
        mark(mark);
      }
      for (Curve curve : curves) {
        name(curve);
      }
      return drawing;
    }

    private void axes() {
      Point origin = new Point(0, 0);
      drawing.arrow("axes", Stroke.LINE, 8, origin, new Point(WIDTH + 16, 0));
      drawing.arrow("axes", Stroke.LINE, 8, origin, new Point(0, -HEIGHT - 16));
      for (double tick : across.ticks()) {
        drawing.line("axes", Stroke.FINE, new Point(px(tick), 0), new Point(px(tick), TICK));
        Lettering number = Lettering.plain(across.print(tick), Lettering.SMALL);
        drawing.add("axes", new Shape.Words(number, new Point(px(tick), TICK + 13), Lettering.Anchor.MIDDLE, false));
      }
      for (double tick : up.ticks()) {
        drawing.line("axes", Stroke.FINE, new Point(-TICK, py(tick)), new Point(0, py(tick)));
        Lettering number = Lettering.plain(up.print(tick), Lettering.SMALL);
        drawing.add("axes", new Shape.Words(number, new Point(-TICK - 3, py(tick) + 4), Lettering.Anchor.END, false));
      }
      drawing.add("axes", new Shape.Words(new Lettering(x.runs(), Lettering.BODY, false), new Point(WIDTH + 16, 34),
          Lettering.Anchor.END, false));
      drawing.add("axes", new Shape.Words(new Lettering(y.runs(), Lettering.BODY, false), new Point(10, -HEIGHT - 12),
          Lettering.Anchor.START, false));
    }

    private void curve(Curve curve, Stroke stroke) {
      List<Point> run = new ArrayList<>();
      for (int i = 1; i < curve.samples().size(); i++) {
        Optional<Sample[]> inside = inside(curve.samples().get(i - 1), curve.samples().get(i));
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
        run.add(pixel(inside.get()[1]));
      }
      if (run.size() > 1) {
        drawing.add("curve " + curve.name(), new Shape.Line(run, stroke));
      }
    }

    private Point pixel(Sample sample) {
      return new Point(px(sample.x()), py(sample.y()));
    }

    /** The piece of a straight line between samples that lies within the axes. */
    private Optional<Sample[]> inside(Sample a, Sample b) {
      double[] fractions = {0, 1};
      if (cut(fractions, a.x(), b.x(), x.from(), x.to()) && cut(fractions, a.y(), b.y(), y.from(), y.to())) {
        return Optional.of(new Sample[] {between(a, b, fractions[0]), between(a, b, fractions[1])});
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

    private static Sample between(Sample a, Sample b, double fraction) {
      return new Sample(a.x() + (b.x() - a.x()) * fraction, a.y() + (b.y() - a.y()) * fraction);
    }

    private void guides(Mark mark) {
      Point at = pixel(new Sample(mark.x(), mark.y()));
      if (mark.guides() == Guides.TO_X || mark.guides() == Guides.BOTH) {
        drawing.line("mark " + mark.label(), Stroke.DASHED, at.plus(0, 4), new Point(at.x(), 0));
      }
      if (mark.guides() == Guides.TO_Y || mark.guides() == Guides.BOTH) {
        drawing.line("mark " + mark.label(), Stroke.DASHED, at.plus(-4, 0), new Point(0, at.y()));
      }
    }

    private void mark(Mark mark) {
      Point at = pixel(new Sample(mark.x(), mark.y()));
      drawing.circle("mark " + mark.label(), Stroke.STRONG, at, 4);
      if (!mark.label().isEmpty()) {
        List<Spot> spots = new ArrayList<>();
        for (double gap = 5; gap <= 25; gap += 4) {
          for (double dy : new double[] {-gap - 5, gap + 5}) {
            spots.add(new Spot(at.plus(-gap, dy), Side.LEFT));
            spots.add(new Spot(at.plus(gap, dy), Side.RIGHT));
          }
        }
        placer.place("mark " + mark.label(), List.of(Lettering.plain(mark.label(), Lettering.BODY).inBold()), spots);
      }
    }

    /** At the last point within the axes, outside them where possible. */
    private void name(Curve curve) {
      List<Shape> lines = drawing.shapes("curve " + curve.name());
      if (curve.name().isEmpty() || lines.isEmpty() || !(lines.get(lines.size() - 1) instanceof Shape.Line line)) {
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

    /** Each curve's height at the numbers of the horizontal axis, as exact as one could read it off. */
    Figure.Table table(List<Curve> curves) {
      List<String> head = new ArrayList<>(List.of(x.plain()));
      for (Curve curve : curves) {
        head.add(curve.name().isEmpty() ? y.plain() : y.plain() + ", " + curve.name());
      }
      List<List<String>> rows = new ArrayList<>();
      for (double tick : across.ticks()) {
        List<String> row = new ArrayList<>(List.of(across.print(tick)));
        for (Curve curve : curves) {
          row.add(height(curve, tick).filter(h -> h >= y.from() && h <= y.to()).map(up::printBetween)
              .orElse("outside"));
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
          return Optional.of(between(a, b, (at - a.x()) / (b.x() - a.x())).y());
        }
      }
      return Optional.empty();
    }

    List<String> walk(List<Curve> curves, List<Mark> marks) {
      List<String> sentences = new ArrayList<>();
      sentences.add("The horizontal axis shows " + x.plain() + " from " + across.printBetween(x.from()) + " to "
          + across.printBetween(x.to()) + ", the vertical axis " + y.plain() + " from " + up.printBetween(y.from())
          + " to " + up.printBetween(y.to()) + ".");
      for (Curve curve : curves) {
        sentences.add((curve.name().isEmpty() ? "The curve " : "The curve " + curve.name() + " ") + course(curve) + ".");
      }
      for (Mark mark : marks) {
        String at = switch (mark.guides()) {
          case NONE -> "";
          case TO_X -> " at " + x.symbol().plain() + " = " + across.printBetween(mark.x());
          case TO_Y -> " at " + y.symbol().plain() + " = " + up.printBetween(mark.y());
          case BOTH -> " at " + x.symbol().plain() + " = " + across.printBetween(mark.x()) + ", " + y.symbol().plain()
              + " = " + up.printBetween(mark.y());
        };
        sentences.add("A point is marked " + mark.label() + at + ".");
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
      String verb = rises && falls ? "rises and falls" : rises ? "rises" : falls ? "falls" : "stays level";
      return verb + " from " + up.printBetween(first.y()) + " to " + up.printBetween(last.y());
    }
  }
}
