package ampersheet.figure;

import ampersheet.chain.DataPath;
import ampersheet.chain.DataPath.Outcome.Traced;
import ampersheet.chain.DataPath.Stop;
import ampersheet.chain.Panel;
import ampersheet.chain.Tile;
import ampersheet.circuit.GridPoint;
import ampersheet.figure.LabelPlacer.Side;
import ampersheet.figure.LabelPlacer.Spot;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * Lays a panel out at one distance between pixels. Inside a tile the data's leads run on an inner rim and the return line
 * on an outer one; data keeps to the left of its direction and the return line to the right, so that lines of neighbours
 * meet however the tiles are turned, and never cross.
 */
final class ChainDrawing {
  private static final double OUTER_RIM = 6;
  private static final double ROW_GAP = 16;
  private static final double ROW_GAP_WITH_LINES = 28;
  private static final double ROW_GAP_WITH_CABLES = 36;
  private static final String CORNER = "top left corner of the tile when upright";

  /** Between lines of one row, each with its numbers. */
  private static final double LINE_GAP = 58;
  private static final double INNER_LANE = 9;
  private static final double ELLIPSIS = 44;
  private static final double NUMBER_ROOM = 24;
  private static final double ROW_NUMBER_ROOM = 13;
  /** From the tile to a controller beside it: the row numbers, and a port's name well away from them. */
  private static final double TO_CONTROLLER = NUMBER_ROOM + 42;
  private static final double PORT_NAME_FROM_TILE = NUMBER_ROOM + 10;
  private static final double CORNER_MARK = 8;
  private static final double CONTROLLER_HEIGHT = 34;
  private static final double HEAD = 7;
  /** Closer than this only where a page is narrow, because its drawings are enlarged. */
  private static final double CLOSE_PITCH = 5;

  private final Panel panel;
  private final Tile tile;
  private final Traced path;
  private final List<ChainFigure.Mark> marks;
  private final double pitch;
  private final boolean elided;
  private final int tilesInLine;
  private final boolean outlineOnly;
  private final boolean controllerAbove;

  private final Drawing drawing = new Drawing();
  private final LabelPlacer placer = new LabelPlacer(drawing);
  private final double innerRim;
  private final double port;
  private final double margin;
  private final double gap;
  /** From the middle of a side to its ports: level with no number. */
  private final double portAcross;
  private final double portDown;
  private final double rowGap;
  private final Map<Integer, Box> boxes = new LinkedHashMap<>();
  /** Tiles drawn, by column and row of tiles. */
  private final Map<GridPoint, Box> boxAt = new LinkedHashMap<>();
  private final Map<Integer, List<Stop>> stopsOf = new LinkedHashMap<>();
  private final Box extent;

  /**
   * @param pitch pixels of the page between pixels of the panel
   * @param elided whether tiles in the middle of the rows are left out
   * @param tilesInLine after so many tiles a single row goes on in a line below
   * @param controllerAbove whether the controller stands over the first tile instead of beside it
   * @param outlineOnly without pixels, to see how large it would be
   */
  ChainDrawing(Panel panel, Traced path, List<ChainFigure.Mark> marks, double pitch, boolean elided,
      int tilesInLine, boolean controllerAbove, boolean outlineOnly) {
    this.panel = panel;
    this.tile = panel.tile();
    this.path = path;
    this.marks = marks;
    this.pitch = pitch;
    this.elided = elided;
    this.tilesInLine = tilesInLine;
    this.outlineOnly = outlineOnly;
    this.controllerAbove = controllerAbove && firstInput().horizontal();
    this.innerRim = panel.returnLine() ? OUTER_RIM + 5 : OUTER_RIM;
    this.port = panel.returnLine() ? 6 : 0;
    this.margin = innerRim + Math.max(pitch < CLOSE_PITCH ? 5 : 7, Math.min(14, pitch * 0.55));
    this.gap = pitch >= 18 ? 30 : 18;
    this.portAcross = clearOfNumbers(tile.columns(), columnStep());
    this.portDown = clearOfNumbers(tile.rows(), step(ROW_NUMBER_ROOM));
    this.rowGap = panel.cabled() ? ROW_GAP_WITH_CABLES
        : path.links().stream().allMatch(DataPath.Link::isShort) ? ROW_GAP : ROW_GAP_WITH_LINES;
    path.stops().forEach(stop -> stopsOf.computeIfAbsent(stop.place(), p -> new ArrayList<>()).add(stop));
    placeTiles();
    Box all = boxes.values().iterator().next();
    for (Box box : boxes.values()) {
      all = all.with(box);
    }
    this.extent = all;
    draw();
  }

  Drawing drawing() {
    return drawing;
  }

  private Compass firstInput() {
    return Compass.of(tile.input(), panel.places().get(panel.first()).quarterTurns());
  }

  private void draw() {
    for (int place : boxes.keySet()) {
      tile(place);
    }
    if (!outlineOnly) {
      boxes.keySet().forEach(this::pixels);
    }
    links();
    controller();
    end();
    columnNumbers();
    rowNumbers();
    portNames();
    marks.forEach(this::mark);
    legend();
  }

  // Tiles

  private double tileWidth() {
    return 2 * margin + (tile.columns() - 1) * pitch;
  }

  private double tileHeight() {
    return 2 * margin + (tile.rows() - 1) * pitch;
  }

  private void placeTiles() {
    Set<Integer> columns = new TreeSet<>();
    panel.places().forEach(place -> columns.add(place.column()));
    List<Integer> shown = new ArrayList<>(elided ? shownColumns(columns) : columns);
    Map<Integer, Double> left = new LinkedHashMap<>();
    double x = 0;
    for (int i = 0; i < shown.size(); i++) {
      boolean first = i % tilesInLine == 0;
      x = first ? 0 : x;
      boolean jump = elided && !first && shown.get(i) != shown.get(i - 1) + 1;
      int steps = first ? 0 : elided ? 1 : shown.get(i) - shown.get(i - 1);
      x += steps * (tileWidth() + gap) + (jump ? ELLIPSIS : 0);
      left.put(shown.get(i), x);
    }
    for (int i = 0; i < panel.places().size(); i++) {
      Panel.Place place = panel.places().get(i);
      if (left.containsKey(place.column())) {
        int line = shown.indexOf(place.column()) / tilesInLine;
        double y = place.row() * (tileHeight() + rowGap) + line * (tileHeight() + LINE_GAP);
        double at = left.get(place.column());
        Box box = new Box(at, y, at + tileWidth(), y + tileHeight());
        boxes.put(i, box);
        boxAt.put(new GridPoint(place.column(), place.row()), box);
      }
    }
  }

  /** The first, the last and those with a mark; of a single row the second too. */
  private Set<Integer> shownColumns(Set<Integer> columns) {
    List<Integer> all = new ArrayList<>(columns);
    Set<Integer> shown = new TreeSet<>(List.of(all.get(0), all.get(all.size() - 1)));
    if (panel.places().stream().allMatch(place -> place.row() == panel.places().get(0).row())) {
      shown.add(all.get(1));
    }
    marks.forEach(mark -> shown.add(mark.x() / tile.columns()));
    return shown;
  }

  private void tile(int place) {
    Box box = boxes.get(place);
    drawing.add(name(place), new Shape.Outline(corners(box), 5, Stroke.LINE));
    if (!anyTurned()) {
      return;
    }
    int turned = panel.places().get(place).quarterTurns();
    List<Point> corners = corners(box);
    Point corner = corners.get(turned);
    drawing.filled(name(place), corner.towards(corners.get((turned + 1) % 4), CORNER_MARK), corner,
        corner.towards(corners.get((turned + 3) % 4), CORNER_MARK));
  }

  /** Only then a tile's corner tells something. */
  private boolean anyTurned() {
    return panel.places().stream().anyMatch(place -> place.quarterTurns() != 0);
  }

  private static List<Point> corners(Box box) {
    return List.of(new Point(box.left(), box.top()), new Point(box.right(), box.top()),
        new Point(box.right(), box.bottom()), new Point(box.left(), box.bottom()));
  }

  private String name(int place) {
    return "tile " + panel.places().get(place).column() + " " + panel.places().get(place).row();
  }

  private Compass input(int place) {
    return Compass.of(tile.input(), panel.places().get(place).quarterTurns());
  }

  private Compass output(int place) {
    return Compass.of(tile.output(), panel.places().get(place).quarterTurns());
  }

  /** Between its ports. */
  private Point middle(int place, Compass side) {
    Point middle = side.middle(boxes.get(place));
    return side.horizontal() ? middle.plus(0, portDown) : middle.plus(portAcross, 0);
  }

  /** From the middle of so many pixels to the nearest place half-way between two that are numbered. */
  private double clearOfNumbers(int pixels, int step) {
    if (pixels <= step) {
      return 0;
    }
    double middle = (pixels - 1) / 2.0;
    double between = step / 2.0 + step * Math.floor(middle / step);
    return (between - middle) * pitch;
  }

  private Point dataIn(int place) {
    Compass flow = input(place).opposite();
    return flow.left(middle(place, input(place)), port);
  }

  private Point returnOut(int place) {
    Compass flow = input(place).opposite();
    return flow.left(middle(place, input(place)), -port);
  }

  private Point dataOut(int place) {
    return output(place).left(middle(place, output(place)), port);
  }

  private Point returnIn(int place) {
    return output(place).left(middle(place, output(place)), -port);
  }

  // Pixels and the lines between them

  private double radius() {
    return pitch < CLOSE_PITCH ? 0.32 * pitch : dotted() ? 2.3 : Math.min(7, 0.27 * pitch);
  }

  /** Close together, pixels are dots on the line instead of circles between its pieces. */
  private boolean dotted() {
    return pitch < 15;
  }

  private Point pixel(int x, int y) {
    int column = x / tile.columns();
    int row = y / tile.rows();
    Box box = boxAt.get(new GridPoint(column, row));
    if (box == null) {
      throw new IllegalArgumentException("no tile is drawn at column " + x + ", row " + y);
    }
    return new Point(box.left() + margin + (x - column * tile.columns()) * pitch,
        box.top() + margin + (y - row * tile.rows()) * pitch);
  }

  private void pixels(int place) {
    List<Stop> stops = stopsOf.get(place);
    String name = name(place);
    for (Stop stop : stops) {
      Point centre = pixel(stop.x(), stop.y());
      if (dotted()) {
        drawing.dot(name, centre, radius());
      } else {
        drawing.circle(name, Stroke.LINE, centre, radius());
      }
    }
    for (int i = 1; i < stops.size(); i++) {
      between(place, stops.get(i - 1), stops.get(i), showsHead(stops, i));
    }
    leads(place, pixel(stops.get(0).x(), stops.get(0).y()),
        pixel(stops.get(stops.size() - 1).x(), stops.get(stops.size() - 1).y()));
    if (panel.returnLine()) {
      returnLine(place);
    }
  }

  /** On every piece where there is room, else once in each line of pixels. */
  private boolean showsHead(List<Stop> stops, int i) {
    if (pitch >= 18) {
      return true;
    }
    int lineLength = linesAreRows(stops.get(0).place()) ? columnsAsTurned(stops.get(0).place())
        : rowsAsTurned(stops.get(0).place());
    return i % lineLength == (lineLength + 1) / 2 % lineLength;
  }

  private int columnsAsTurned(int place) {
    return panel.places().get(place).quarterTurns() % 2 == 0 ? tile.columns() : tile.rows();
  }

  private int rowsAsTurned(int place) {
    return panel.places().get(place).quarterTurns() % 2 == 0 ? tile.rows() : tile.columns();
  }

  private boolean linesAreRows(int place) {
    return tile.along() == Tile.Along.ROWS == (panel.places().get(place).quarterTurns() % 2 == 0);
  }

  private void between(int place, Stop from, Stop to, boolean head) {
    Point a = pixel(from.x(), from.y());
    Point b = pixel(to.x(), to.y());
    List<Point> points = new ArrayList<>(List.of(a));
    boolean neighbours = Math.abs(from.x() - to.x()) + Math.abs(from.y() - to.y()) == 1;
    if (!neighbours) {
      Point middle = new Point((a.x() + b.x()) / 2, (a.y() + b.y()) / 2);
      boolean rows = linesAreRows(place);
      points.add(rows ? new Point(a.x(), middle.y()) : new Point(middle.x(), a.y()));
      points.add(rows ? new Point(b.x(), middle.y()) : new Point(middle.x(), b.y()));
    }
    points.add(b);
    if (!dotted()) {
      points.set(0, a.towards(points.get(1), radius()));
      points.set(points.size() - 1, b.towards(points.get(points.size() - 2), radius()));
    }
    String name = name(place);
    Point[] line = points.toArray(new Point[0]);
    if (!head && neighbours) {
      drawing.line(name, Stroke.FINE, line);
    } else if (!neighbours) {
      drawing.line(name, Stroke.FINE, line);
      Point middle = new Point((line[1].x() + line[2].x()) / 2, (line[1].y() + line[2].y()) / 2);
      double size = Math.min(headLength(), line[1].distanceTo(line[2]));
      drawing.arrowHead(name, line[1], middle.towards(line[2], size / 2), size);
    } else if (dotted()) {
      drawing.line(name, Stroke.FINE, line);
      double half = headLength() / 2;
      Point middle = new Point((a.x() + b.x()) / 2, (a.y() + b.y()) / 2);
      drawing.arrowHead(name, a, middle.towards(b, half), headLength());
    } else {
      drawing.arrow(name, Stroke.FINE, headLength(), line);
    }
  }

  private double headLength() {
    return dotted() ? Math.max(4, pitch - 2 * radius() - 1) : Math.min(7, pitch - 2 * radius() - 2);
  }

  /**
   * The data's way from the input to the first pixel and from the last to the output, along the inner rim; where the two
   * must pass each other, the second runs a little further inside.
   */
  private void leads(int place, Point first, Point last) {
    Rim rim = new Rim(boxes.get(place).grown(-innerRim));
    Rim within = new Rim(boxes.get(place).grown(-innerRim - 3.5));
    double in = rim.place(input(place), dataIn(place));
    Rim.Way bestIn = null;
    Rim.Way bestOut = null;
    double least = Double.MAX_VALUE;
    for (double enter : approaches(rim, first)) {
      for (double leave : approaches(rim, last)) {
        for (int turn = 0; turn < 4; turn++) {
          Rim.Way inward = rim.way(in, enter, turn % 2 == 0);
          Rim.Way outward = rim.way(leave, rim.place(output(place), dataOut(place)), turn / 2 == 0);
          double cost = inward.length() + outward.length() + (inward.touches(outward) ? 1e6 : 0);
          if (cost < least) {
            least = cost;
            bestIn = inward;
            bestOut = outward;
          }
        }
      }
    }
    if (least >= 1e6) {
      least = Double.MAX_VALUE;
      for (double leave : approaches(within, last)) {
        for (boolean clockwise : new boolean[] {true, false}) {
          Rim.Way outward = within.way(leave, within.place(output(place), dataOut(place)), clockwise);
          if (outward.length() < least) {
            least = outward.length();
            bestOut = outward;
          }
        }
      }
    }
    List<Point> entering = new ArrayList<>(List.of(dataIn(place)));
    entering.addAll(bestIn.points());
    Point ahead = entering.get(entering.size() - 1);
    entering.add(dotted() ? first : first.towards(ahead, radius()));
    drawing.line(name(place), Stroke.FINE, distinct(entering));
    List<Point> leaving = new ArrayList<>(bestOut.points());
    leaving.add(0, dotted() ? last : last.towards(leaving.get(0), radius()));
    leaving.add(dataOut(place));
    drawing.line(name(place), Stroke.FINE, distinct(leaving));
  }

  /** Places on the rim straight across from a pixel at the edge. */
  private List<Double> approaches(Rim rim, Point pixel) {
    List<Double> places = new ArrayList<>();
    double reach = margin - (rim.box().left() - boxes.values().stream().filter(box -> box.contains(pixel)).findFirst()
        .orElseThrow().left()) + 0.1;
    for (Compass side : Compass.values()) {
      if (side.along(side.middle(rim.box())) - side.along(pixel) <= reach) {
        places.add(rim.place(side, pixel));
      }
    }
    return places;
  }

  private void returnLine(int place) {
    Rim rim = new Rim(boxes.get(place).grown(-OUTER_RIM));
    List<Point> points = new ArrayList<>(List.of(returnIn(place)));
    points.addAll(rim.way(rim.place(output(place), returnIn(place)), rim.place(input(place), returnOut(place)), true)
        .points());
    points.add(returnOut(place));
    drawing.line(name(place), Stroke.DASHED, distinct(points));
  }

  private static Point[] distinct(List<Point> points) {
    List<Point> distinct = new ArrayList<>();
    for (Point point : points) {
      if (distinct.isEmpty() || distinct.get(distinct.size() - 1).distanceTo(point) > 0.01) {
        distinct.add(point);
      }
    }
    return distinct.toArray(new Point[0]);
  }

  // Lines between tiles

  private void links() {
    List<Integer> order = path.tileOrder();
    for (int i = 1; i < order.size(); i++) {
      int from = order.get(i - 1);
      int to = order.get(i);
      if (boxes.containsKey(from) && boxes.containsKey(to)) {
        link(from, to);
      } else if (boxes.containsKey(from)) {
        ellipsis(from);
      } else if (boxes.containsKey(to)) {
        drawing.arrow("", Stroke.LINE, HEAD, input(to).from(dataIn(to), 16), dataIn(to));
        if (panel.returnLine()) {
          drawing.arrow("", Stroke.DASHED, HEAD, returnOut(to), input(to).from(returnOut(to), 16));
        }
      }
    }
  }

  /** The line goes on to tiles that are not drawn. */
  private void ellipsis(int from) {
    Compass out = output(from);
    drawing.arrow("", Stroke.LINE, HEAD, dataOut(from), out.from(dataOut(from), 16));
    if (panel.returnLine()) {
      drawing.arrow("", Stroke.DASHED, HEAD, out.from(returnIn(from), 16), returnIn(from));
    }
    Point middle = out.from(middle(from, out), (gap + ELLIPSIS) / 2);
    for (int i = -1; i <= 1; i++) {
      drawing.dot("", out.from(middle, 7 * i), 1.6);
    }
  }

  /**
   * The data's line, and the return line beside it: straight over the edge between two tiles; else round by lanes outside,
   * and to the far end of the next row through the gap between the rows. The data keeps to the left all the way.
   */
  private void link(int from, int to) {
    Compass out = output(from);
    Compass in = input(to);
    Point start = middle(from, out);
    Point end = middle(to, in);
    boolean aligned = out.horizontal() ? Math.abs(start.y() - end.y()) < 0.01 : Math.abs(start.x() - end.x()) < 0.01;
    if (out == in.opposite() && aligned) {
      drawing.arrow("", Stroke.LINE, HEAD, dataOut(from), dataIn(to));
      if (panel.returnLine()) {
        drawing.arrow("", Stroke.DASHED, HEAD, returnOut(to), returnIn(from));
      }
      return;
    }
    boolean turnsRight = out.dx * (end.y() - start.y()) - out.dy * (end.x() - start.x()) > 0;
    boolean outerAtEnd = out == in == turnsRight;
    double onward = Math.signum(out.horizontal() ? end.y() - start.y() : end.x() - start.x());
    Point middle = Box.around(start, end).centre();
    double aside = panel.returnLine() ? (turnsRight ? 4 : -4) * onward : 0;
    drawing.arrow("", Stroke.LINE, HEAD,
        detour(from, dataOut(from), out, turnsRight, to, dataIn(to), in, outerAtEnd, middle.plus(aside, aside)));
    if (panel.returnLine()) {
      drawing.arrow("", Stroke.DASHED, HEAD,
          detour(to, returnOut(to), in, !outerAtEnd, from, returnIn(from), out, !turnsRight,
              middle.plus(-aside, -aside)));
    }
  }

  /** @param middle in the gap between two rows, or columns, where the line runs back */
  private Point[] detour(int fromPlace, Point from, Compass out, boolean outerAtStart, int toPlace, Point to, Compass in,
      boolean outerAtEnd, Point middle) {
    Point start = out.from(from, lane(fromPlace, out) + (outerAtStart && !panel.cabled() ? 8 : 0));
    Point end = in.from(to, lane(toPlace, in) + (outerAtEnd && !panel.cabled() ? 8 : 0));
    List<Point> points = new ArrayList<>(List.of(from));
    if (out == in) {
      double far = Math.max(out.along(start), out.along(end));
      points.add(out.from(start, far - out.along(start)));
      points.add(in.from(end, far - in.along(end)));
    } else if (out == in.opposite()) {
      boolean rows = out.horizontal();
      points.add(start);
      points.add(rows ? new Point(start.x(), middle.y()) : new Point(middle.x(), start.y()));
      points.add(rows ? new Point(end.x(), middle.y()) : new Point(middle.x(), end.y()));
      points.add(end);
    } else {
      points.add(start);
      points.add(out.horizontal() ? new Point(start.x(), end.y()) : new Point(end.x(), start.y()));
      points.add(end);
    }
    points.add(to);
    return distinct(points);
  }

  /** Cables between tiles run close to them, where no numbers are. */
  private double lane(int place, Compass side) {
    Panel.Place at = panel.places().get(place);
    boolean inside = side == Compass.NORTH && at.row() > 0 || side == Compass.WEST && at.column() > 0;
    return panel.cabled() && inside ? INNER_LANE : lane(side);
  }

  /** How far outside a side the first lane runs: beyond the numbers, where there are some. */
  private double lane(Compass side) {
    return switch (side) {
      case NORTH -> 20;
      case WEST -> NUMBER_ROOM + 3;
      case EAST, SOUTH -> 9;
    };
  }

  private void controller() {
    int first = panel.first();
    Compass side = input(first);
    Lettering name = Lettering.plain("controller", Lettering.SMALL);
    double width = name.width() + 14;
    Box box;
    if (controllerAbove) {
      double inner = side.from(dataIn(first), lane(side)).x();
      double outer = side.from(returnOut(first), lane(side) + 10).x();
      double bottom = extent.top() - NUMBER_ROOM;
      double left = side == Compass.WEST ? outer - 8 : outer + 8 - width;
      box = new Box(left, bottom - 24, left + width, bottom);
      boolean dataInside = side == Compass.WEST;
      double dataX = dataInside || !panel.returnLine() ? inner : outer;
      double returnX = dataInside ? outer : inner;
      drawing.arrow("controller", Stroke.LINE, HEAD, new Point(dataX, bottom), new Point(dataX, dataIn(first).y()),
          dataIn(first));
      if (panel.returnLine()) {
        drawing.arrow("controller", Stroke.DASHED, HEAD, returnOut(first), new Point(returnX, returnOut(first).y()),
            new Point(returnX, bottom));
      }
    } else {
      double distance = side == Compass.WEST ? TO_CONTROLLER : 40;
      double half = (side.horizontal() ? width : CONTROLLER_HEIGHT) / 2;
      box = Box.centred(side.from(middle(first, side), distance + half), width, CONTROLLER_HEIGHT);
      drawing.arrow("controller", Stroke.LINE, HEAD, side.from(dataIn(first), distance), dataIn(first));
      if (panel.returnLine()) {
        drawing.arrow("controller", Stroke.DASHED, HEAD, returnOut(first), side.from(returnOut(first), distance));
      }
    }
    drawing.rectangle("controller", Stroke.LINE, box);
    drawing.words("controller", name, box.centre());
  }

  /** The last tile's output: back into the return line, or open. */
  private void end() {
    int last = path.tileOrder().get(path.tileOrder().size() - 1);
    if (!boxes.containsKey(last)) {
      return;
    }
    Compass out = output(last);
    if (panel.returnLine()) {
      double reach = lane(out) + 6;
      drawing.arrow("", Stroke.DASHED, HEAD, dataOut(last), out.from(dataOut(last), reach),
          out.from(returnIn(last), reach), returnIn(last));
    } else {
      drawing.arrow("", Stroke.LINE, HEAD, dataOut(last), out.from(dataOut(last), lane(out) + 17));
    }
  }

  private void portNames() {
    int first = panel.first();
    portName("IN", dataIn(first), input(first), 1, fromController(lane(input(first)), 1));
    if (panel.returnLine()) {
      portName("RET", returnOut(first), input(first), -1, fromController(lane(input(first)) + 10, -1));
    }
    int last = path.tileOrder().get(path.tileOrder().size() - 1);
    if (boxes.containsKey(last)) {
      Compass side = output(last);
      double end = lane(side) + (panel.returnLine() ? 9 : 20);
      portName("OUT", dataOut(last), side, 1,
          side == Compass.WEST ? List.of(new Spot(side.from(dataOut(last), end), Side.LEFT)) : List.of());
    }
  }

  /**
   * Where the name of a port of the first tile is nobody's row number: beside a line that comes down from a controller
   * above, else before the numbers, the data's name over its line and the return line's under it.
   */
  private List<Spot> fromController(double lane, int leftOrRight) {
    int first = panel.first();
    Compass side = input(first);
    Point port = leftOrRight > 0 ? dataIn(first) : returnOut(first);
    List<Spot> spots = new ArrayList<>();
    if (controllerAbove) {
      boolean right = leftOrRight > 0 == (side == Compass.WEST);
      double x = side.from(port, lane).x() + (right ? 3 : -3);
      for (double down = 6; down <= 30; down += 3) {
        spots.add(new Spot(new Point(x, extent.top() - NUMBER_ROOM + down), right ? Side.RIGHT : Side.LEFT));
      }
    } else if (side == Compass.WEST) {
      for (double off = 7; off <= 16; off += 3) {
        spots.add(new Spot(side.from(port, PORT_NAME_FROM_TILE).plus(0, -leftOrRight * off), Side.LEFT));
      }
    }
    return spots;
  }

  /** @param better rather than beside the line near the port */
  private void portName(String name, Point port, Compass side, int leftOrRight, List<Spot> better) {
    List<Lettering> lines = List.of(Lettering.plain(name, Lettering.SMALL));
    List<Spot> spots = new ArrayList<>(better);
    for (double off = 3; off <= 21; off += 3) {
      for (double along = 4; along <= 34; along += 3) {
        Point at = side.from(port, along);
        if (side.horizontal()) {
          boolean east = side == Compass.EAST;
          double dy = -leftOrRight * (off + 6);
          spots.add(new Spot(at.plus(0, dy), east ? Side.RIGHT : Side.LEFT));
          spots.add(new Spot(at.plus(0, -dy), east ? Side.RIGHT : Side.LEFT));
        } else {
          spots.add(new Spot(at.plus(-off, 0), Side.LEFT));
          spots.add(new Spot(at.plus(off, 0), Side.RIGHT));
        }
      }
    }
    placer.place("", lines, spots);
  }

  // Numbers, marks, legend

  private void columnNumbers() {
    Map<Integer, Point> at = new LinkedHashMap<>();
    boolean lines = tilesInLine < boxes.size();
    boxes.forEach((place, box) -> {
      int first = panel.places().get(place).column() * tile.columns();
      for (int i = 0; i < tile.columns(); i++) {
        at.putIfAbsent(first + i, new Point(box.left() + margin + i * pitch, (lines ? box : extent).top() - 10));
      }
    });
    Set<Integer> marked = new TreeSet<>();
    marks.forEach(mark -> marked.add(mark.x()));
    int step = columnStep();
    marked.forEach(column -> number(column, at.get(column), true, true));
    at.forEach((column, point) -> {
      if (column % step == 0 && !marked.contains(column)) {
        number(column, point, true, false);
      }
    });
  }

  private int columnStep() {
    int last = panel.places().stream().mapToInt(place -> place.column() * tile.columns() + tile.columns() - 1).max()
        .orElseThrow();
    return step(Lettering.plain("" + last, Lettering.SMALL).width() + 5);
  }

  /** Where all pixels lie in one row, it needs no number. */
  private boolean hasRows() {
    return tile.rows() > 1 || panel.places().stream().anyMatch(place -> place.row() > 0);
  }

  private void rowNumbers() {
    if (!hasRows()) {
      return;
    }
    Map<Integer, Double> at = new LinkedHashMap<>();
    boxes.forEach((place, box) -> {
      int first = panel.places().get(place).row() * tile.rows();
      for (int i = 0; i < tile.rows(); i++) {
        at.putIfAbsent(first + i, box.top() + margin + i * pitch);
      }
    });
    Set<Integer> marked = new TreeSet<>();
    marks.forEach(mark -> marked.add(mark.y()));
    int step = step(ROW_NUMBER_ROOM);
    marked.forEach(row -> number(row, new Point(extent.left() - 6, at.get(row)), false, true));
    at.forEach((row, y) -> {
      if (row % step == 0 && !marked.contains(row)) {
        number(row, new Point(extent.left() - 6, y), false, false);
      }
    });
  }

  private int step(double room) {
    for (int step : new int[] {1, 2, 5, 10, 20}) {
      if (step * pitch >= room) {
        return step;
      }
    }
    return 50;
  }

  /** Where a line runs, left out or set so little higher or lower that it is still at its own row. */
  private void number(int value, Point at, boolean above, boolean bold) {
    Lettering text = Lettering.plain(Integer.toString(value), Lettering.SMALL);
    Lettering lettering = bold ? text.inBold() : text;
    for (double shift : new double[] {0, -3, 3, -5, 5, -9, 9, -13, 13}) {
      if (Math.abs(shift) > (bold ? 13 : 0.3 * pitch)) {
        continue;
      }
      Point baseline = at.plus(0, 0.34 * Lettering.SMALL + (above ? 0 : shift));
      Shape.Words words = new Shape.Words(lettering, baseline,
          above ? Lettering.Anchor.MIDDLE : Lettering.Anchor.END, false);
      if (drawing.isFree(words.bounds().grown(1))) {
        drawing.add("", words);
        return;
      }
    }
  }

  private void mark(ChainFigure.Mark mark) {
    Point centre = pixel(mark.x(), mark.y());
    String name = "mark " + mark.x() + " " + mark.y();
    double ring = radius() + (dotted() ? 3.2 : 4);
    drawing.circle(name, Stroke.STRONG, centre, ring);
    if (mark.label().isEmpty()) {
      return;
    }
    List<Lettering> lines = List.of(Lettering.plain(mark.label(), Lettering.BODY).inBold());
    for (double diagonal : new double[] {1, -1}) {
      Point at = centre.plus(pitch / 2, diagonal * -pitch / 2);
      Box box = LabelPlacer.box(lines, new Spot(at.plus(-lines.get(0).width() / 2, 0), Side.RIGHT));
      if (drawing.isFree(box.grown(1))) {
        placer.place(name, lines, List.of(new Spot(at.plus(-lines.get(0).width() / 2, 0), Side.RIGHT)));
        return;
      }
    }
    if (boxes.size() == 1 || !besideItsTile(name, centre, ring, lines)) {
      callOut(name, centre, ring, lines);
    }
  }

  /** The label in a gap next to the tile, so that its line crosses no other tile and no numbers; false without room. */
  private boolean besideItsTile(String name, Point centre, double ring, List<Lettering> lines) {
    Box box = boxes.values().stream().filter(tile -> tile.contains(centre)).findFirst().orElseThrow();
    List<Spot> spots = new ArrayList<>();
    for (double slide = -1; slide <= 1; slide += 0.125) {
      double y = box.centre().y() + slide * box.height() / 2;
      double x = box.centre().x() + slide * box.width() / 2;
      spots.add(new Spot(new Point(box.right() + 4, y), Side.RIGHT));
      spots.add(new Spot(new Point(x, box.bottom() + 3), Side.BELOW));
      if (box.left() > extent.left()) {
        spots.add(new Spot(new Point(box.left() - 4, y), Side.LEFT));
      }
      if (box.top() > extent.top()) {
        spots.add(new Spot(new Point(x, box.top() - 3), Side.ABOVE));
      }
    }
    Spot best = null;
    double least = Double.MAX_VALUE;
    for (Spot spot : spots) {
      double cost = drawing.obstacles(centre.towards(spot.at(), ring + 3), spot.at())
          + centre.distanceTo(spot.at()) / 20;
      if (cost < least && isSlanting(centre, spot.at()) && drawing.isFree(LabelPlacer.box(lines, spot).grown(1))) {
        least = cost;
        best = spot;
      }
    }
    if (best != null) {
      drawing.line(name, Stroke.FINE, centre.towards(best.at(), ring), best.at().towards(centre, 1));
      placer.place(name, lines, List.of(best));
    }
    return best != null;
  }

  /** Level or upright it would look like a data line. */
  private static boolean isSlanting(Point from, Point to) {
    double across = Math.abs(to.x() - from.x());
    double down = Math.abs(to.y() - from.y());
    return Math.min(across, down) >= 0.2 * Math.max(across, down);
  }

  /** The label outside, at the end of a slanting line that no data line is taken for and that crosses little. */
  private void callOut(String name, Point centre, double ring, List<Lettering> lines) {
    Spot best = null;
    double least = Double.MAX_VALUE;
    for (double slant : new double[] {0.3, -0.3, 0.5, -0.5, 0.8, -0.8}) {
      double up = centre.y() - extent.top() + NUMBER_ROOM + 2;
      double down = extent.bottom() + 12 - centre.y();
      double right = extent.right() + 34 - centre.x();
      for (Spot spot : List.of(new Spot(centre.plus(slant * up, -up), Side.ABOVE),
          new Spot(centre.plus(slant * down, down), Side.BELOW),
          new Spot(centre.plus(right, slant * right), Side.RIGHT))) {
        double cost = drawing.obstacles(centre.towards(spot.at(), ring + 3), spot.at())
            + centre.distanceTo(spot.at()) / 100
            + drawing.crowd(LabelPlacer.box(lines, spot).grown(2)) * 1000;
        if (cost < least) {
          least = cost;
          best = spot;
        }
      }
    }
    drawing.line(name, Stroke.FINE, centre.towards(best.at(), ring), best.at().towards(centre, 2));
    placer.place(name, lines, List.of(best));
  }

  private void legend() {
    Box whole = drawing.bounds();
    double x = whole.left();
    double y = whole.bottom() + 18;
    double limit = Math.max(whole.right(), whole.left() + 300);
    List<String> texts = new ArrayList<>(List.of("data"));
    if (panel.returnLine()) {
      texts.add("return line");
    }
    if (anyTurned()) {
      texts.add(CORNER);
    }
    String numbers = hasRows() ? "numbers: columns above, rows at the left" : "numbers: pixels from the left";
    texts.add(numbers);
    for (String text : texts) {
      Lettering lettering = Lettering.plain(text, Lettering.SMALL);
      double sample = text.equals(numbers) ? -6 : text.equals(CORNER) ? 14 : 32;
      if (x > whole.left() && x + sample + 6 + lettering.width() > limit) {
        x = whole.left();
        y += 18;
      }
      switch (text) {
        case "data" -> drawing.arrow("legend", Stroke.LINE, HEAD, new Point(x, y), new Point(x + sample, y));
        case "return line" ->
            drawing.arrow("legend", Stroke.DASHED, HEAD, new Point(x, y), new Point(x + sample, y));
        case CORNER -> drawing.filled("legend", new Point(x, y - 5), new Point(x + 10, y - 5), new Point(x, y + 5));
        default -> { }
      }
      drawing.add("legend", new Shape.Words(lettering, new Point(x + sample + 6, y + 4), Lettering.Anchor.START,
          false));
      x += sample + 6 + lettering.width() + 22;
    }
  }
}
