package ampersheet.figure;

import ampersheet.circuit.GridPoint;
import ampersheet.circuit.PartKind;
import ampersheet.circuit.PlacedPart;
import ampersheet.circuit.Schematic;
import ampersheet.figure.LabelPlacer.Side;
import ampersheet.figure.LabelPlacer.Spot;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** Lays a schematic out at one grid step: bodies and leads first, then dots, signs, names and values around them. */
final class CircuitDrawing {
  /** Pixels per step of the grid, across and up. */
  record Step(double across, double up) {}

  private static final double TERMINAL_RADIUS = 3.5;
  private static final double JUNCTION_RADIUS = 3;
  private static final Box REGULATOR = Box.centred(new Point(0, 0), 92, 50);

  private final Schematic schematic;
  private final Map<String, Label> labels;
  private final SymbolStyle style;
  private final Set<String> emphasised;
  private final Step step;

  private final Drawing drawing = new Drawing();
  private final LabelPlacer placer = new LabelPlacer(drawing);
  private final Map<GridPoint, Integer> endsAt = new TreeMap<>(
      Comparator.comparingInt(GridPoint::x).thenComparingInt(GridPoint::y));
  private final Set<GridPoint> openTerminals = new LinkedHashSet<>();
  /** In which directions conductors leave a grid point, rounded to the eight winds. */
  private final Map<GridPoint, Set<String>> windsAt = new LinkedHashMap<>();
  private final Map<String, Box> bodies = new LinkedHashMap<>();
  private final List<Runnable> marks = new ArrayList<>();
  private final Box extent;
  private boolean squeezed;
  private boolean displaced;

  CircuitDrawing(Schematic schematic, Map<String, Label> labels, SymbolStyle style, Set<String> emphasised,
      Step step) {
    this.schematic = schematic;
    this.labels = labels;
    this.style = style;
    this.emphasised = emphasised;
    this.step = step;
    this.extent = extent();
    draw();
  }

  Drawing drawing() {
    return drawing;
  }

  /** Whether something did not fit at this grid step. */
  boolean crowded() {
    return squeezed || placer.crowded();
  }

  /** Whether a value had to stand aside of its part's middle. */
  boolean displaced() {
    return displaced;
  }

  private void draw() {
    countEnds();
    List<PlacedPart> grounds = new ArrayList<>();
    for (PlacedPart part : schematic.parts()) {
      switch (part.kind()) {
        case GROUND -> grounds.add(part);
        case NODE -> { }
        default -> body(part);
      }
    }
    grounds.forEach(this::ground);
    dots();
    marks.forEach(Runnable::run);
    for (PlacedPart part : schematic.parts()) {
      if (part.kind() == PartKind.NODE) {
        nodeName(part);
      }
    }
    bodies.forEach(this::label);
  }

  /** A switch that yields a value: a kind without a symbol does not compile. */
  private boolean body(PlacedPart part) {
    return switch (part.kind()) {
      case SOURCE, RESISTOR, LOAD, SINK, LED, DIODE, ZENER, REFERENCE, CAPACITOR, VOLTMETER, AMMETER ->
          twoTerminals(part);
      case NMOS, PMOS -> transistor(part, "drain", "gate", "source");
      case TRIMPOT -> trimpot(part);
      case REGULATOR -> regulator(part);
      case WIRE -> wire(part);
      case GROUND, NODE -> throw new IllegalArgumentException(part.kind() + " is drawn after the conductors");
    };
  }

  private Point pixel(GridPoint point) {
    return new Point(point.x() * step.across(), -point.y() * step.up());
  }

  private Box extent() {
    Point[] points = schematic.parts().stream().flatMap(part -> part.ends().values().stream()).map(this::pixel)
        .toArray(Point[]::new);
    if (points.length == 0) {
      throw new IllegalArgumentException("a schematic without parts cannot be drawn");
    }
    return Box.around(points);
  }

  private Stroke stroke(PlacedPart part) {
    return emphasised.contains(part.name()) ? Stroke.EMPHASISED : Stroke.LINE;
  }

  private Lettering name(PlacedPart part) {
    Label label = labels.get(part.name());
    if (label == null) {
      return new Lettering(List.of(), Lettering.BODY, false);
    }
    Lettering name = Lettering.plain(label.name(), Lettering.BODY);
    return emphasised.contains(part.name()) ? name.inBold() : name;
  }

  // Conductors

  private void countEnds() {
    for (PlacedPart part : schematic.parts()) {
      if (part.kind() != PartKind.NODE) {
        part.ends().values().forEach(end -> endsAt.merge(end, 1, Integer::sum));
      }
    }
    for (PlacedPart part : schematic.parts()) {
      if (part.kind() == PartKind.NODE && endsAt.getOrDefault(part.end("at"), 0) <= 2) {
        openTerminals.add(part.end("at"));
      }
    }
  }

  /** From a grid point along the points; it stops at the edge of the circle where the point is an open terminal. */
  private void lead(PlacedPart part, GridPoint end, Point... rest) {
    List<Point> points = new ArrayList<>();
    points.add(pixel(end));
    for (Point point : rest) {
      if (points.get(points.size() - 1).distanceTo(point) > 0.01) {
        points.add(point);
      }
    }
    if (points.size() < 2) {
      return;
    }
    noteWind(end, points.get(1));
    points.set(0, edge(end, points.get(1)));
    drawing.line(part.name(), stroke(part), points.toArray(new Point[0]));
  }

  private Point edge(GridPoint end, Point next) {
    return openTerminals.contains(end) ? pixel(end).towards(next, TERMINAL_RADIUS) : pixel(end);
  }

  private void noteWind(GridPoint end, Point next) {
    Point here = pixel(end);
    double length = here.distanceTo(next);
    long east = Math.round((next.x() - here.x()) / length);
    long south = Math.round((next.y() - here.y()) / length);
    windsAt.computeIfAbsent(end, e -> new TreeSet<>()).add(east + "," + south);
  }

  private boolean wire(PlacedPart part) {
    GridPoint from = part.end("from");
    GridPoint to = part.end("to");
    if (from.equals(to)) {
      return true;
    }
    List<Point> points = new ArrayList<>(List.of(pixel(from)));
    if (from.x() != to.x() && from.y() != to.y()) {
      points.add(pixel(corner(from, to)));
    }
    points.add(pixel(to));
    noteWind(from, points.get(1));
    noteWind(to, points.get(points.size() - 2));
    points.set(0, edge(from, points.get(1)));
    points.set(points.size() - 1, edge(to, points.get(points.size() - 2)));
    drawing.line("", stroke(part), points.toArray(new Point[0]));
    return true;
  }

  /** A slanting wire is drawn round a corner, where it can by a corner at which no other part ends. */
  private GridPoint corner(GridPoint from, GridPoint to) {
    GridPoint first = new GridPoint(to.x(), from.y());
    return endsAt.containsKey(first) ? new GridPoint(from.x(), to.y()) : first;
  }

  private void dots() {
    Set<GridPoint> named = new LinkedHashSet<>();
    for (PlacedPart part : schematic.parts()) {
      if (part.kind() == PartKind.NODE && named.add(part.end("at"))) {
        if (openTerminals.contains(part.end("at"))) {
          drawing.circle(part.name(), Stroke.LINE, pixel(part.end("at")), TERMINAL_RADIUS);
        } else {
          drawing.dot(part.name(), pixel(part.end("at")), TERMINAL_RADIUS);
        }
      }
    }
    windsAt.forEach((point, winds) -> {
      if (winds.size() >= 3 && !named.contains(point)) {
        drawing.dot("", pixel(point), JUNCTION_RADIUS);
      }
    });
  }

  // Bodies

  private boolean twoTerminals(PlacedPart part) {
    return onAxis(part, part.end("from"), part.end("to"));
  }

  private boolean onAxis(PlacedPart part, GridPoint from, GridPoint to) {
    Frame frame = Frame.between(pixel(from), pixel(to));
    if (pointsAtLabel(frame)) {
      frame = frame.flipped();
    }
    return onAxis(part, from, to, frame);
  }

  private boolean onAxis(PlacedPart part, GridPoint from, GridPoint to, Frame unscaled) {
    double half = PartSymbol.halfLength(part.kind(), unscaled, name(part));
    double room = pixel(from).distanceTo(pixel(to)) / 2 - 4;
    squeezed |= room < half;
    Frame frame = room < half ? unscaled.scaled(Math.max(room, 2) / half) : unscaled;
    PartSymbol symbol = new PartSymbol(drawing, part.name(), frame, style, stroke(part));
    symbol.draw(part.kind(), name(part));
    bodies.put(part.name(), drawing.bounds(part.name()));
    lead(part, from, frame.at(-half, 0));
    lead(part, to, frame.at(half, 0));
    signs(part.kind(), part.name(), frame, half, symbol);
    return true;
  }

  /** Whether v points to where the label goes. */
  private boolean pointsAtLabel(Frame frame) {
    Point side = frame.at(0, 1);
    Side label = sides(Box.around(frame.origin()), frame.vertical())[0];
    return switch (label) {
      case RIGHT -> side.x() > frame.origin().x();
      case LEFT -> side.x() < frame.origin().x();
      case ABOVE -> side.y() < frame.origin().y();
      case BELOW -> side.y() > frame.origin().y();
    };
  }

  private void signs(PartKind kind, String part, Frame frame, double half, PartSymbol symbol) {
    boolean outside = kind == PartKind.SOURCE && style == SymbolStyle.IEC;
    if (outside || kind == PartKind.VOLTMETER || kind == PartKind.AMMETER) {
      double plusEnd = kind == PartKind.SOURCE ? half + 6 : -half - 6;
      marks.add(() -> symbol.plus(placer.free(8, besideLead(frame, plusEnd))));
      if (outside) {
        marks.add(() -> symbol.minus(placer.free(8, besideLead(frame, -half - 6))));
      }
    }
    switch (kind) {
      case LED, DIODE, ZENER, REFERENCE -> {
        marks.add(() -> pin(part, "A", frame, -half - 7));
        marks.add(() -> pin(part, "K", frame, half + 7));
      }
      default -> { }
    }
  }

  private static List<Point> besideLead(Frame frame, double u) {
    List<Point> centres = new ArrayList<>();
    for (double along = 0; along <= 6; along += 2) {
      for (double across : new double[] {9, -9, 11, -11}) {
        centres.add(frame.at(u + (u > 0 ? along : -along), across));
      }
    }
    return centres;
  }

  /** A small letter beside a lead, on the side to which v points, if there is room. */
  private void pin(String part, String letter, Frame frame, double u) {
    Point towards = frame.at(0, 1);
    boolean first = frame.vertical() ? towards.x() > frame.origin().x() : towards.y() < frame.origin().y();
    Side preferred = frame.vertical() ? first ? Side.RIGHT : Side.LEFT : first ? Side.ABOVE : Side.BELOW;
    Side other = frame.vertical() ? first ? Side.LEFT : Side.RIGHT : first ? Side.BELOW : Side.ABOVE;
    List<Spot> spots = new ArrayList<>();
    for (Side side : List.of(preferred, other)) {
      for (double along = 0; along <= 12; along += 3) {
        Point lead = frame.at(u + (u < 0 ? -along : along), 0);
        spots.addAll(LabelPlacer.around(Box.centred(lead, 1.5, 1.5), 3, 3, side).subList(0, 1));
      }
    }
    placer.place(part, List.of(Lettering.plain(letter, Lettering.SMALL)), spots);
  }

  /** The letter of a third terminal, beside its lead, which runs along v. */
  private void sidePin(String part, String letter, Point lead) {
    placer.place(part, List.of(Lettering.plain(letter, Lettering.SMALL)),
        LabelPlacer.around(Box.centred(lead, 1.5, 1.5), 3, 14, Side.ABOVE, Side.BELOW, Side.LEFT, Side.RIGHT));
  }

  private boolean transistor(PlacedPart part, String top, String control, String bottom) {
    GridPoint from = part.end(top);
    GridPoint to = part.end(bottom);
    Point first = pixel(from);
    Point last = pixel(to);
    boolean upright = Math.abs(last.y() - first.y()) >= Math.abs(last.x() - first.x());
    Point foot = upright ? new Point(first.x(), last.y()) : new Point(last.x(), first.y());
    Frame frame = Frame.between(first, foot).facing(pixel(part.end(control)));
    double half = PartSymbol.halfLength(part.kind(), frame, name(part));
    double reach = first.distanceTo(foot) / 2;
    squeezed |= reach < half + 4;
    new PartSymbol(drawing, part.name(), frame, style, stroke(part)).draw(part.kind(), name(part));
    bodies.put(part.name(), drawing.bounds(part.name()));
    lead(part, from, frame.at(-half, 0));
    lead(part, to, foot, frame.at(half, 0));
    Point gate = sideLead(part, part.end(control), frame, 17, 14);
    String initials = control.substring(0, 1) + top.substring(0, 1) + bottom.substring(0, 1);
    marks.add(() -> sidePin(part.name(), upper(initials, 0), gate));
    marks.add(() -> pin(part.name(), upper(initials, 1), frame, -half - 8));
    marks.add(() -> pin(part.name(), upper(initials, 2), frame, half + 8));
    return true;
  }

  private static String upper(String letters, int index) {
    return String.valueOf(Character.toUpperCase(letters.charAt(index)));
  }

  /**
   * The lead of a third terminal, from {@code v} at the body's side straight out, then along to where the grid has it.
   *
   * @param along how far from the middle it may leave the body
   * @return a point on the lead, near the body
   */
  private Point sideLead(PlacedPart part, GridPoint end, Frame frame, double v, double along) {
    Point point = pixel(end);
    double u = Math.max(-along, Math.min(along, frame.u(point)));
    double far = frame.v(point);
    if (far >= v + 4) {
      lead(part, end, frame.at(u, far), frame.at(u, v));
    } else {
      u = 0;
      double out = v + 14;
      lead(part, end, frame.at(frame.u(point), out), frame.at(u, out), frame.at(u, v));
    }
    return frame.at(u, v + 8);
  }

  /** The wiper's arrow meets the body from the side on which the wiper ends. */
  private boolean trimpot(PlacedPart part) {
    GridPoint wiper = part.end("wiper");
    Frame axis = Frame.between(pixel(part.end("from")), pixel(part.end("to"))).facing(pixel(wiper));
    onAxis(part, part.end("from"), part.end("to"), axis);
    double tip = 8;
    sideLead(part, wiper, axis, tip + 6, 12);
    double u = axis.v(pixel(wiper)) >= tip + 10 ? Math.max(-12, Math.min(12, axis.u(pixel(wiper)))) : 0;
    drawing.arrowHead(part.name(), axis.at(u, tip + 8), axis.at(u, tip), 8);
    return true;
  }

  private boolean regulator(PlacedPart part) {
    Point in = pixel(part.end("in"));
    Point out = pixel(part.end("out"));
    Point ground = pixel(part.end("ground"));
    Frame axis = Frame.between(in, out);
    boolean lying = !axis.vertical();
    Box box = lying ? Box.centred(axis.origin(), REGULATOR.width(), REGULATOR.height())
        : Box.centred(axis.origin(), 64, 68);
    double half = (lying ? box.width() : box.height()) / 2;
    squeezed |= in.distanceTo(out) / 2 < half + 6;
    String name = part.name();
    drawing.rectangle(name, stroke(part), box);
    Frame facing = axis.facing(ground);
    pinName(name, "IN", facing.at(-half, 0), box);
    pinName(name, "OUT", facing.at(half, 0), box);
    double side = (lying ? box.height() : box.width()) / 2;
    bodies.put(name, drawing.bounds(name));
    lead(part, part.end("in"), axis.at(-half, 0));
    lead(part, part.end("out"), axis.at(half, 0));
    Point foot = sideLead(part, part.end("ground"), facing, side, 12);
    double u = facing.u(foot);
    pinName(name, "GND", facing.at(u, side), box);
    return true;
  }

  /** Inside the box, beside the pin. */
  private void pinName(String part, String text, Point pin, Box box) {
    Lettering lettering = Lettering.plain(text, Lettering.SMALL);
    double inX = Math.max(box.left() + 4 + lettering.width() / 2,
        Math.min(box.right() - 4 - lettering.width() / 2, pin.x()));
    double inY = Math.max(box.top() + 10, Math.min(box.bottom() - 10, pin.y()));
    drawing.words(part, lettering, new Point(inX, inY));
  }

  // Ground, names, values

  private void ground(PlacedPart part) {
    GridPoint at = part.end("at");
    Set<String> taken = windsAt.getOrDefault(at, Set.of());
    Point here = pixel(at);
    int[] wind = {0, 1};
    for (int[] free : new int[][] {{0, 1}, {-1, 0}, {1, 0}, {0, -1}}) {
      if (!taken.contains(free[0] + "," + free[1])) {
        wind = free;
        break;
      }
    }
    Frame frame = new Frame(here, wind[0], wind[1], false, 1);
    drawing.outlined(part.name(), stroke(part), frame.at(13, -9), frame.at(13, 9), frame.at(23, 0));
    Box body = drawing.bounds(part.name());
    lead(part, at, frame.at(13, 0));
    Label label = labels.get(part.name());
    List<Lettering> lines = label == null ? List.of(Lettering.plain("0\u00A0V", Lettering.SMALL)) : lines(part, label);
    if (!lines.isEmpty()) {
      marks.add(() -> placer.place(part.name(), lines,
          LabelPlacer.around(body, 3, 20, Side.RIGHT, Side.LEFT, Side.BELOW, Side.ABOVE)));
    }
  }

  private void nodeName(PlacedPart part) {
    Label label = labels.getOrDefault(part.name(), new Label(part.name(), List.of()));
    Point at = pixel(part.end("at"));
    Side across = at.x() < extent.centre().x() ? Side.LEFT : Side.RIGHT;
    Side other = across == Side.LEFT ? Side.RIGHT : Side.LEFT;
    Box circle = Box.centred(at, 2 * TERMINAL_RADIUS, 2 * TERMINAL_RADIUS);
    List<Spot> spots = new ArrayList<>();
    for (double gap = 4; gap <= 14; gap += 2) {
      for (double dx : new double[] {gap, -gap}) {
        for (double dy : new double[] {-gap - 4, gap + 4}) {
          boolean right = across == Side.RIGHT == dx > 0;
          spots.add(new Spot(at.plus(right ? gap : -gap, dy - (dy < 0 ? 2 : -2)), right ? Side.RIGHT : Side.LEFT));
        }
      }
    }
    List<Spot> beside = LabelPlacer.around(circle, 4, 4, across, Side.ABOVE, Side.BELOW, other);
    List<Spot> all = new ArrayList<>(beside.subList(0, 4));
    all.addAll(spots);
    all.addAll(LabelPlacer.around(circle, 4, 24, across, Side.ABOVE, Side.BELOW, other));
    placer.place(part.name(), lines(part, label), all);
  }

  private void label(String name, Box body) {
    Label label = labels.get(name);
    PlacedPart part = schematic.parts().stream().filter(p -> p.name().equals(name)).findFirst().orElseThrow();
    if (label == null) {
      return;
    }
    List<Lettering> lines = lines(part, label);
    if (!lines.isEmpty()) {
      int spot = placer.place(name, lines, LabelPlacer.around(body, 6, 31, sides(body, vertical(part))));
      displaced |= spot >= 4;
    }
  }

  /** The same side for all, as far as it goes: to the right of upright parts and above lying ones; outside at the edges. */
  private Side[] sides(Box body, boolean vertical) {
    boolean leftmost = body.centre().x() < extent.left() + 1;
    boolean lowest = extent.height() > 1 && body.centre().y() > extent.bottom() - 1;
    Side across = leftmost ? Side.LEFT : Side.RIGHT;
    Side opposite = leftmost ? Side.RIGHT : Side.LEFT;
    Side upright = lowest ? Side.BELOW : Side.ABOVE;
    Side inward = lowest ? Side.ABOVE : Side.BELOW;
    return vertical ? new Side[] {across, opposite, upright, inward} : new Side[] {upright, inward, across, opposite};
  }

  private boolean vertical(PlacedPart part) {
    List<String> terminals = part.kind().terminals();
    Point from = pixel(part.end(terminals.get(0)));
    Point to = pixel(part.end(terminals.get(part.kind() == PartKind.NMOS || part.kind() == PartKind.PMOS ? 2 : 1)));
    return Math.abs(to.y() - from.y()) > Math.abs(to.x() - from.x());
  }

  /** The name, unless the first line's symbol says it already (R1 and R₁), then the values. */
  private List<Lettering> lines(PlacedPart part, Label label) {
    List<Lettering> lines = new ArrayList<>();
    boolean said = label.lines().stream().flatMap(line -> line.symbol().stream())
        .anyMatch(symbol -> (symbol.letters() + symbol.subscript()).equals(label.name()));
    if (!said && !label.name().isEmpty() && part.kind() != PartKind.LOAD) {
      lines.add(name(part).runs().isEmpty() ? Lettering.plain(label.name(), Lettering.BODY) : name(part));
    }
    for (Label.Line line : label.lines()) {
      lines.add(Lettering.of(line, Lettering.BODY));
    }
    return lines;
  }
}
