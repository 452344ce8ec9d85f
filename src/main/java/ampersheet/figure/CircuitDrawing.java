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
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** Lays a schematic out at one spacing: bodies and leads first, then dots, signs, names and values around them. */
final class CircuitDrawing {
  private static final double TERMINAL_RADIUS = 3.5;
  private static final double JUNCTION_RADIUS = 3;
  private static final double SHORTEST_LEAD = 8;
  /** Between a body and what belongs to other parts. */
  private static final double CLEARANCE = 8;
  /** Between two texts, so that they do not read as one. */
  private static final double BETWEEN_TEXTS = 8;
  private static final double OWN_TEXTS = 5;
  private static final double SIGN = 8;
  /** A sign that is a letter, with white around it. */
  private static final double LARGE_SIGN = 14;
  private static final Box REGULATOR = Box.centred(new Point(0, 0), 92, 50);
  private static final Box UPRIGHT_REGULATOR = Box.centred(new Point(0, 0), 64, 68);

  private final Schematic schematic;
  private final Map<String, Label> labels;
  private final SymbolStyle style;
  private final Spacing spacing;
  /** Whether width is dear: labels stand where they find room, but no line may come between a part and its own. */
  private final boolean narrow;
  /** On which side of a part its label goes first, where not as usual. */
  private final Map<String, Side> beside;

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
  /** Parts whose body or text has too little room, in order. */
  private final Set<PlacedPart> cramped = new LinkedHashSet<>();
  /** Texts, signs and bodies without a place of their own; texts on lines count twice. */
  private int faults;
  private boolean legible = true;

  CircuitDrawing(Schematic schematic, Map<String, Label> labels, SymbolStyle style,
      Spacing spacing) {
    this(schematic, labels, style, spacing, false, Map.of());
  }

  /** For a narrow page. @param beside on which side of a part its label goes first, where not as usual */
  CircuitDrawing(Schematic schematic, Map<String, Label> labels, SymbolStyle style,
      Spacing spacing, Map<String, Side> beside) {
    this(schematic, labels, style, spacing, true, beside);
  }

  private CircuitDrawing(Schematic schematic, Map<String, Label> labels, SymbolStyle style,
      Spacing spacing, boolean narrow, Map<String, Side> beside) {
    this.schematic = schematic;
    this.labels = labels;
    this.style = style;
    this.spacing = spacing;
    this.narrow = narrow;
    this.beside = beside;
    this.extent = spacing.extent();
    draw();
  }

  Drawing drawing() {
    return drawing;
  }

  /** Whether every text has a place of its own. */
  boolean legible() {
    return legible;
  }

  /** How many texts, signs and bodies have no place of their own. */
  int faults() {
    return faults;
  }

  Spacing spacing() {
    return spacing;
  }

  Map<String, Side> beside() {
    return beside;
  }

  /** Components in the outer columns, with the side that faces inwards. */
  Map<String, Side> inwards(boolean leftmost) {
    Map<String, Side> sides = new TreeMap<>();
    bodies.forEach((name, body) -> {
      double x = body.centre().x();
      if (leftmost ? x < extent.left() + 1 : x > extent.right() - 1) {
        sides.put(name, leftmost ? Side.RIGHT : Side.LEFT);
      }
    });
    return sides;
  }

  /** Parts whose label reaches farthest to the left or right. */
  List<String> outermost() {
    Box whole = drawing.bounds();
    return bodies.keySet().stream().filter(name -> drawing.shapes(name).stream().anyMatch(
        shape -> shape instanceof Shape.Words
            && (shape.bounds().left() < whole.left() + 1 || shape.bounds().right() > whole.right() - 1))).toList();
  }

  /** The parts that would look better with more room. */
  Set<PlacedPart> cramped() {
    return cramped;
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
    bodies.forEach((name, body) -> faults += drawing.othersIn(body.grown(CLEARANCE), name));
    bodies.forEach(this::label);
  }

  /** A switch that yields a value: a kind without a symbol does not compile. */
  private boolean body(PlacedPart part) {
    return switch (part.kind()) {
      case SOURCE, RESISTOR, LOAD, CABLE, SINK, LED, DIODE, ZENER, REFERENCE, SWITCH, CAPACITOR, VOLTMETER, AMMETER ->
          twoTerminals(part);
      case NMOS, PMOS -> transistor(part, "drain", "gate", "source", PartSymbol.GATE);
      case NPN -> transistor(part, "collector", "base", "emitter", PartSymbol.BASE);
      case STRIP, PANEL -> copper(part);
      case TRIMPOT -> trimpot(part);
      case REGULATOR -> regulator(part);
      case WIRE -> wire(part);
      case GROUND, NODE -> throw new IllegalArgumentException(part.kind() + " is drawn after the conductors");
    };
  }

  private Point pixel(GridPoint point) {
    return spacing.pixel(point);
  }

  private Lettering name(PlacedPart part) {
    Label label = labels.get(part.name());
    if (label == null) {
      return new Lettering(List.of(), Lettering.BODY, false);
    }
    return Lettering.plain(label.name(), Lettering.BODY);
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
    drawing.line(part.name(), Stroke.LINE, points.toArray(new Point[0]));
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
    noteWind(from, pixel(to));
    noteWind(to, pixel(from));
    drawing.line("", Stroke.LINE, edge(from, pixel(to)), edge(to, pixel(from)));
    return true;
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
    boolean turned = part.kind() != PartKind.SWITCH && pointsAtLabel(frame);
    return onAxis(part, from, to, turned ? frame.flipped() : frame);
  }

  private boolean onAxis(PlacedPart part, GridPoint from, GridPoint to, Frame unscaled) {
    double half = PartSymbol.halfLength(part.kind(), unscaled, name(part));
    double shortest = Math.min(pixel(from).distanceTo(unscaled.origin()), pixel(to).distanceTo(unscaled.origin()));
    double room = shortest - 4;
    require(part, shortest >= half + SHORTEST_LEAD);
    faults += room < half ? 1 : 0;
    Frame frame = room < half ? unscaled.scaled(Math.max(room, 2) / half) : unscaled;
    PartSymbol symbol = new PartSymbol(drawing, part.name(), frame, style);
    symbol.draw(part, name(part));
    bodies.put(part.name(), drawing.bounds(part.name()));
    lead(part, from, frame.at(-half, 0));
    lead(part, to, frame.at(half, 0));
    signs(part, frame, half, symbol);
    return true;
  }

  private boolean copper(PlacedPart part) {
    Point plus = pixel(part.end("plus"));
    Point minus = pixel(part.end("minus"));
    Frame along = Frame.between(plus, minus);
    Point start = along.at(0, -1);
    boolean readsOnwards = along.vertical() ? start.x() < along.origin().x() : start.y() < along.origin().y();
    Frame frame = readsOnwards ? along : along.flipped();
    double half = CopperSymbol.halfLength(part.kind());
    require(part, plus.distanceTo(minus) / 2 >= half + 2 * SHORTEST_LEAD);
    new CopperSymbol(drawing, part, frame, narrow).draw();
    bodies.put(part.name(), drawing.bounds(part.name()));
    lead(part, part.end("plus"), frame.at(-half, 0));
    lead(part, part.end("minus"), frame.at(half, 0));
    marks.add(() -> sign(part, "+", frame, -half - 12));
    marks.add(() -> sign(part, "\u2212", frame, half + 12));
    return true;
  }

  private void sign(PlacedPart part, String sign, Frame frame, double u) {
    drawing.words(part.name(), Lettering.plain(sign, Lettering.BODY),
        signPlace(part, frame, u, narrow ? LARGE_SIGN : SIGN));
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

  private void require(PlacedPart part, boolean roomy) {
    if (!roomy) {
      cramped.add(part);
    }
  }

  /** Puts text beside a part and notes if there was no room for it, or only at a spot farther down the list. */
  private void text(PlacedPart part, List<Lettering> lines, Point centre, List<Spot> spots, int good) {
    int taken = placer.place(part.name(), lines, spots,
        spot -> !narrow || !drawing.comesBetween(centre, spot.at(), part.name())
            && !drawing.hasWords(LabelPlacer.box(lines, spot), BETWEEN_TEXTS, OWN_TEXTS, part.name()));
    legible &= taken < spots.size();
    faults += Math.max(0, taken - spots.size() + 1);
    require(part, taken < good);
  }

  private Point signPlace(PlacedPart part, Frame frame, double u) {
    return signPlace(part, frame, u, SIGN);
  }

  private Point signPlace(PlacedPart part, Frame frame, double u, double size) {
    List<Point> centres = besideLead(frame, u);
    Optional<Point> free = placer.free(size, centres);
    require(part, free.isPresent());
    faults += free.isPresent() ? 0 : 1;
    return free.orElse(centres.get(0));
  }

  private void signs(PlacedPart part, Frame frame, double half, PartSymbol symbol) {
    PartKind kind = part.kind();
    boolean outside = kind == PartKind.SOURCE && style == SymbolStyle.IEC;
    if (outside || kind == PartKind.VOLTMETER || kind == PartKind.AMMETER) {
      double plusEnd = kind == PartKind.SOURCE ? half + 6 : -half - 6;
      marks.add(() -> symbol.plus(signPlace(part, frame, plusEnd)));
      if (outside) {
        marks.add(() -> symbol.minus(signPlace(part, frame, -half - 6)));
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
  private void pin(PlacedPart part, String letter, Frame frame, double u) {
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
    text(part, List.of(Lettering.plain(letter, Lettering.SMALL)), frame.at(u, 0), spots, spots.size());
  }

  /** The letter of a third terminal, beside its lead, which runs along v. */
  private void sidePin(PlacedPart part, String letter, Point lead) {
    List<Spot> spots = LabelPlacer.around(Box.centred(lead, 1.5, 1.5), 3, 14, Side.ABOVE, Side.BELOW, Side.LEFT,
        Side.RIGHT);
    text(part, List.of(Lettering.plain(letter, Lettering.SMALL)), lead, spots, spots.size());
  }

  private boolean transistor(PlacedPart part, String top, String control, String bottom, double side) {
    GridPoint from = part.end(top);
    GridPoint to = part.end(bottom);
    Point first = pixel(from);
    Point last = pixel(to);
    boolean upright = Math.abs(last.y() - first.y()) >= Math.abs(last.x() - first.x());
    Point foot = upright ? new Point(first.x(), last.y()) : new Point(last.x(), first.y());
    Frame middle = Frame.between(first, foot).facing(pixel(part.end(control)));
    double half = PartSymbol.halfLength(part.kind(), middle, name(part));
    require(part, first.distanceTo(foot) / 2 >= half + SHORTEST_LEAD);
    Frame frame = opposite(middle, first.distanceTo(foot) / 2 - half - SHORTEST_LEAD, pixel(part.end(control)));
    new PartSymbol(drawing, part.name(), frame, style).draw(part, name(part));
    bodies.put(part.name(), drawing.bounds(part.name()));
    lead(part, from, frame.at(-half, 0));
    lead(part, to, foot, frame.at(half, 0));
    Point gate = sideLead(part, part.end(control), frame, side, side - 3);
    String initials = control.substring(0, 1) + top.substring(0, 1) + bottom.substring(0, 1);
    marks.add(() -> sidePin(part, upper(initials, 0), gate));
    marks.add(() -> pin(part, upper(initials, 1), frame, -half - 8));
    marks.add(() -> pin(part, upper(initials, 2), frame, half + 8));
    return true;
  }

  /** Moved along the part, by {@code room} at most, so that the third terminal's lead runs straight. */
  private static Frame opposite(Frame frame, double room, Point third) {
    double shift = Math.max(-room, Math.min(room, frame.u(third)));
    return room <= 0 ? frame : frame.movedAlong(shift);
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
    Frame middle = Frame.between(pixel(part.end("from")), pixel(part.end("to"))).facing(pixel(wiper));
    double reach = pixel(part.end("from")).distanceTo(middle.origin());
    double room = reach - PartSymbol.halfLength(part.kind(), middle, name(part)) - SHORTEST_LEAD;
    Frame axis = middle.v(pixel(wiper)) > 1 ? opposite(middle, room, pixel(wiper)) : middle;
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
    Frame middle = Frame.between(in, out);
    boolean lying = !middle.vertical();
    Box size = lying ? REGULATOR : UPRIGHT_REGULATOR;
    double half = (lying ? size.width() : size.height()) / 2;
    double room = in.distanceTo(out) / 2 - half - SHORTEST_LEAD;
    require(part, room >= 0);
    Frame axis = opposite(middle, room, ground);
    Box box = Box.centred(axis.origin(), size.width(), size.height());
    String name = part.name();
    drawing.rectangle(name, Stroke.LINE, box);
    Frame facing = axis.facing(ground);
    pinName(name, "IN", facing.at(-half, 0), box);
    pinName(name, "OUT", facing.at(half, 0), box);
    double side = (lying ? box.height() : box.width()) / 2;
    bodies.put(name, drawing.bounds(name));
    lead(part, part.end("in"), axis.at(-half, 0));
    lead(part, part.end("out"), axis.at(half, 0));
    Point foot = sideLead(part, part.end("ground"), facing, side, half - 22);
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
    drawing.outlined(part.name(), Stroke.LINE, frame.at(13, -9), frame.at(13, 9), frame.at(23, 0));
    Box body = drawing.bounds(part.name());
    lead(part, at, frame.at(13, 0));
    Label label = labels.get(part.name());
    List<Lettering> lines = label == null ? List.of(Lettering.plain("0\u00A0V", Lettering.SMALL)) : lines(part, label);
    if (!lines.isEmpty()) {
      List<Spot> spots = LabelPlacer.around(body, 3, 20, Side.RIGHT, Side.LEFT, Side.BELOW, Side.ABOVE);
      marks.add(() -> text(part, lines, body.centre(), spots, spots.size()));
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
    text(part, lines(part, label), at, all, all.size());
  }

  private void label(String name, Box body) {
    Label label = labels.get(name);
    PlacedPart part = schematic.parts().stream().filter(p -> p.name().equals(name)).findFirst().orElseThrow();
    if (label == null) {
      return;
    }
    List<Lettering> lines = lines(part, label);
    if (!lines.isEmpty()) {
      boolean vertical = vertical(part);
      List<Spot> spots = new ArrayList<>();
      if (beside.containsKey(name)) {
        spots.addAll(LabelPlacer.around(body, 6, 31, beside.get(name)));
      }
      spots.addAll(LabelPlacer.around(body, 6, 31, sides(body, vertical)));
      if (narrow && vertical) {
        spots.addAll(besideLeads(body));
      }
      text(part, lines, body.centre(), spots, 2);
    }
  }

  /** Nearer to the axis of an upright part than its body is wide. */
  private static List<Spot> besideLeads(Box body) {
    List<Spot> spots = new ArrayList<>();
    for (double away = 12; away <= 48; away += 6) {
      for (double y : new double[] {body.bottom() + away, body.top() - away}) {
        spots.add(new Spot(new Point(body.centre().x() + 6, y), Side.RIGHT));
        spots.add(new Spot(new Point(body.centre().x() - 6, y), Side.LEFT));
      }
    }
    return spots;
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

  boolean vertical(PlacedPart part) {
    Point from = pixel(part.end(CircuitWords.first(part)));
    Point to = pixel(part.end(CircuitWords.last(part)));
    return Math.abs(to.y() - from.y()) > Math.abs(to.x() - from.x());
  }

  private static List<Lettering> lines(PlacedPart part, Label label) {
    return Lettering.block(label, part.kind() != PartKind.LOAD);
  }
}
