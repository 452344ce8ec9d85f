package ampersheet.figure;

import ampersheet.chain.Panel;
import ampersheet.figure.LabelPlacer.Side;
import ampersheet.figure.LabelPlacer.Spot;
import ampersheet.language.Language;
import java.util.ArrayList;
import java.util.List;

/**
 * The lines between tiles, from the controller to the last output: data keeps to the left of its direction and the
 * return line to the right, so that lines of neighbours meet however the tiles are turned, and never cross.
 */
final class PanelWiring {
    private static final double INNER_LANE = 9;
    /** From the tile to a controller beside it: the row numbers, and a port's name well away from them. */
    private static final double TO_CONTROLLER = ChainLayout.NUMBER_ROOM + 42;

    private static final double PORT_NAME_FROM_TILE = ChainLayout.NUMBER_ROOM + 10;
    private static final double CONTROLLER_HEIGHT = 34;
    private static final double HEAD = ChainDrawing.HEAD;

    private final ChainLayout lay;
    private final Drawing drawing;
    private final LabelPlacer placer;
    private final Language language;

    PanelWiring(ChainLayout lay, Drawing drawing, LabelPlacer placer, Language language) {
        this.lay = lay;
        this.drawing = drawing;
        this.placer = placer;
        this.language = language;
    }

    void links() {
        List<Integer> order = lay.path.tileOrder();
        for (int i = 1; i < order.size(); i++) {
            int from = order.get(i - 1);
            int to = order.get(i);
            if (lay.boxes.containsKey(from) && lay.boxes.containsKey(to)) {
                link(from, to);
            } else if (lay.boxes.containsKey(from)) {
                ellipsis(from);
            } else if (lay.boxes.containsKey(to)) {
                drawing.arrow("", Stroke.LINE, HEAD, lay.input(to).from(lay.dataIn(to), 16), lay.dataIn(to));
                if (lay.panel.returnLine()) {
                    drawing.arrow(
                            "",
                            Stroke.DASHED,
                            HEAD,
                            lay.returnOut(to),
                            lay.input(to).from(lay.returnOut(to), 16));
                }
            }
        }
    }

    /** The line goes on to tiles that are not drawn. */
    private void ellipsis(int from) {
        Compass out = lay.output(from);
        drawing.arrow("", Stroke.LINE, HEAD, lay.dataOut(from), out.from(lay.dataOut(from), 16));
        if (lay.panel.returnLine()) {
            drawing.arrow("", Stroke.DASHED, HEAD, out.from(lay.returnIn(from), 16), lay.returnIn(from));
        }
        Point middle = out.from(lay.middle(from, out), lay.leftOut() / 2);
        for (int i = -1; i <= 1; i++) {
            drawing.dot("", out.from(middle, 7 * i), 1.6);
        }
    }

    /**
     * The data's line, and the return line beside it: straight over the edge between two tiles; else round by lanes
     * outside, and to the far end of the next row through the gap between the rows. The data keeps to the left all the
     * way.
     */
    private void link(int from, int to) {
        Compass out = lay.output(from);
        Compass in = lay.input(to);
        Point start = lay.middle(from, out);
        Point end = lay.middle(to, in);
        boolean aligned =
                out.horizontal() ? Math.abs(start.y() - end.y()) < 0.01 : Math.abs(start.x() - end.x()) < 0.01;
        if (out == in.opposite() && aligned) {
            drawing.arrow("", Stroke.LINE, HEAD, lay.dataOut(from), lay.dataIn(to));
            if (lay.panel.returnLine()) {
                drawing.arrow("", Stroke.DASHED, HEAD, lay.returnOut(to), lay.returnIn(from));
            }
            return;
        }
        boolean turnsRight = out.dx * (end.y() - start.y()) - out.dy * (end.x() - start.x()) > 0;
        boolean outerAtEnd = out == in == turnsRight;
        double onward = Math.signum(out.horizontal() ? end.y() - start.y() : end.x() - start.x());
        Point middle = Box.around(start, end).centre();
        double aside = lay.panel.returnLine() ? (turnsRight ? 4 : -4) * onward : 0;
        drawing.arrow(
                "",
                Stroke.LINE,
                HEAD,
                detour(
                        new Port(from, lay.dataOut(from), out, turnsRight),
                        new Port(to, lay.dataIn(to), in, outerAtEnd),
                        middle.plus(aside, aside)));
        if (lay.panel.returnLine()) {
            drawing.arrow(
                    "",
                    Stroke.DASHED,
                    HEAD,
                    detour(
                            new Port(to, lay.returnOut(to), in, !outerAtEnd),
                            new Port(from, lay.returnIn(from), out, !turnsRight),
                            middle.plus(-aside, -aside)));
        }
    }

    /**
     * Where a line leaves or enters a tile.
     *
     * @param place of the tile
     * @param outer whether it runs in the outer of two lanes before that side
     */
    private record Port(int place, Point at, Compass side, boolean outer) {}

    private Point beyond(Port port) {
        return port.side()
                .from(port.at(), lane(port.place(), port.side()) + (port.outer() && !lay.panel.cabled() ? 8 : 0));
    }

    /** @param middle in the gap between two rows, or columns, where the line runs back */
    private Point[] detour(Port from, Port to, Point middle) {
        Compass out = from.side();
        Compass in = to.side();
        Point start = beyond(from);
        Point end = beyond(to);
        List<Point> points = new ArrayList<>(List.of(from.at()));
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
        points.add(to.at());
        return ChainLayout.distinct(points);
    }

    /** Cables between tiles run close to them, where no numbers are. */
    private double lane(int place, Compass side) {
        Panel.Place at = lay.panel.places().get(place);
        boolean inside = side == Compass.NORTH && at.row() > 0 || side == Compass.WEST && at.column() > 0;
        return lay.panel.cabled() && inside ? INNER_LANE : lane(side);
    }

    /** How far outside a side the first lane runs: beyond the numbers, where there are some. */
    private double lane(Compass side) {
        return switch (side) {
            case NORTH -> 20;
            case WEST -> ChainLayout.NUMBER_ROOM + 6;
            case EAST, SOUTH -> 9;
        };
    }

    void controller() {
        int first = lay.panel.first();
        Compass side = lay.input(first);
        Lettering name = Lettering.plain(language.say("figure.chain.drawn.controller"), Lettering.SMALL);
        double width = name.width() + 14;
        Box box;
        if (lay.controllerAbove) {
            double inner = side.from(lay.dataIn(first), lane(side)).x();
            double outer = side.from(lay.returnOut(first), lane(side) + 10).x();
            double bottom = lay.extent.top() - ChainLayout.NUMBER_ROOM;
            double left = side == Compass.WEST ? outer - 8 : outer + 8 - width;
            box = new Box(left, bottom - 24, left + width, bottom);
            boolean dataInside = side == Compass.WEST;
            double dataX = dataInside || !lay.panel.returnLine() ? inner : outer;
            double returnX = dataInside ? outer : inner;
            drawing.arrow(
                    "controller",
                    Stroke.LINE,
                    HEAD,
                    new Point(dataX, bottom),
                    new Point(dataX, lay.dataIn(first).y()),
                    lay.dataIn(first));
            if (lay.panel.returnLine()) {
                drawing.arrow(
                        "controller",
                        Stroke.DASHED,
                        HEAD,
                        lay.returnOut(first),
                        new Point(returnX, lay.returnOut(first).y()),
                        new Point(returnX, bottom));
            }
        } else {
            double distance = side == Compass.WEST ? TO_CONTROLLER : 40;
            double half = (side.horizontal() ? width : CONTROLLER_HEIGHT) / 2;
            box = Box.centred(side.from(lay.middle(first, side), distance + half), width, CONTROLLER_HEIGHT);
            drawing.arrow("controller", Stroke.LINE, HEAD, side.from(lay.dataIn(first), distance), lay.dataIn(first));
            if (lay.panel.returnLine()) {
                drawing.arrow(
                        "controller",
                        Stroke.DASHED,
                        HEAD,
                        lay.returnOut(first),
                        side.from(lay.returnOut(first), distance));
            }
        }
        drawing.rectangle("controller", Stroke.LINE, box);
        drawing.words("controller", name, box.centre());
    }

    /** The last tile's output: back into the return line, or open. */
    void end() {
        int last = lay.path.tileOrder().get(lay.path.tileOrder().size() - 1);
        if (!lay.boxes.containsKey(last)) {
            return;
        }
        Compass out = lay.output(last);
        if (lay.panel.returnLine()) {
            double reach = lane(out) + 6;
            drawing.arrow(
                    "",
                    Stroke.DASHED,
                    HEAD,
                    lay.dataOut(last),
                    out.from(lay.dataOut(last), reach),
                    out.from(lay.returnIn(last), reach),
                    lay.returnIn(last));
        } else {
            drawing.arrow("", Stroke.LINE, HEAD, lay.dataOut(last), out.from(lay.dataOut(last), lane(out) + 17));
        }
    }

    void portNames() {
        int first = lay.panel.first();
        portName(
                language.say("figure.chain.drawn.in"),
                lay.dataIn(first),
                lay.input(first),
                1,
                fromController(lane(lay.input(first)), 1));
        if (lay.panel.returnLine()) {
            portName(
                    language.say("figure.chain.drawn.return"),
                    lay.returnOut(first),
                    lay.input(first),
                    -1,
                    fromController(lane(lay.input(first)) + 10, -1));
        }
        int last = lay.path.tileOrder().get(lay.path.tileOrder().size() - 1);
        if (lay.boxes.containsKey(last)) {
            Compass side = lay.output(last);
            double end = lane(side) + (lay.panel.returnLine() ? 9 : 20);
            portName(
                    language.say("figure.chain.drawn.out"),
                    lay.dataOut(last),
                    side,
                    1,
                    side == Compass.WEST ? List.of(new Spot(side.from(lay.dataOut(last), end), Side.LEFT)) : List.of());
        }
    }

    /**
     * Where the name of a port of the first tile is nobody's row number: beside a line that comes down from a
     * controller above, else before the numbers, the data's name over its line and the return line's under it.
     */
    private List<Spot> fromController(double lane, int leftOrRight) {
        int first = lay.panel.first();
        Compass side = lay.input(first);
        Point port = leftOrRight > 0 ? lay.dataIn(first) : lay.returnOut(first);
        List<Spot> spots = new ArrayList<>();
        if (lay.controllerAbove) {
            boolean right = leftOrRight > 0 == (side == Compass.WEST);
            double x = side.from(port, lane).x() + (right ? 3 : -3);
            for (double down = 6; down <= 30; down += 3) {
                spots.add(new Spot(
                        new Point(x, lay.extent.top() - ChainLayout.NUMBER_ROOM + down),
                        right ? Side.RIGHT : Side.LEFT));
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
}
