package ampersheet.figure;

import ampersheet.figure.LabelPlacer.Side;
import ampersheet.figure.LabelPlacer.Spot;
import ampersheet.thermal.HeatNetwork;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Draws a heat network like a circuit: temperature for voltage, heat flow for current, losses as sources of flow. */
final class HeatDrawing {
    private static final double NODE_RADIUS = 3.5;
    private static final double RESISTOR_HALF = 21;
    /** From a path to its label at most. */
    private static final double REACH = 20;

    private static final double FARTHEST = 45;

    private final HeatNetwork network;
    private final Map<String, Label> labels;
    private final SymbolStyle style;
    private final HeatLanes lanes;
    private final double across;
    private final double down;
    /** Whether nodes get their names first, and labels of paths then stand farther away where they must. */
    private final boolean narrow;

    private final Drawing drawing = new Drawing();
    private final LabelPlacer placer = new LabelPlacer(drawing);
    private boolean cramped;
    private boolean legible = true;

    /**
     * @param across pixels from column to column
     * @param down pixels from lane to lane
     * @param narrow whether nodes get their names first, and labels of paths then stand farther away where they must
     */
    HeatDrawing(
            HeatNetwork network,
            Map<String, Label> labels,
            SymbolStyle style,
            double across,
            double down,
            boolean narrow) {
        this.network = network;
        this.labels = labels;
        this.style = style;
        this.lanes = new HeatLanes(network);
        this.across = across;
        this.down = down;
        this.narrow = narrow;
        draw();
    }

    Drawing drawing() {
        return drawing;
    }

    boolean cramped() {
        return cramped;
    }

    /** Whether every text has a place of its own. */
    boolean legible() {
        return legible;
    }

    private void draw() {
        lanes.paths().forEach(this::path);
        lanes.nodes().forEach(this::node);
        lanes.capacityLane().forEach(this::capacity);
        network.ambients().forEach(ambient -> ambientSymbol(ambient.name()));
        if (narrow) {
            network.nodes().forEach(node -> nodeText(node.name()));
        }
        for (HeatLanes.Path path : lanes.paths()) {
            Label label = label(path.name());
            boolean symbolled =
                    label.lines().stream().anyMatch(line -> line.symbol().isPresent());
            text(
                    path.name(),
                    Lettering.block(label, !symbolled),
                    LabelPlacer.around(
                            drawing.bounds(path.name()), 5, narrow ? FARTHEST : REACH, Side.ABOVE, Side.BELOW),
                    2);
        }
        lanes.capacityLane().keySet().forEach(node -> {
            Label label = labels.get(capacityKey(node));
            if (label != null) {
                boolean symbolled =
                        label.lines().stream().anyMatch(line -> line.symbol().isPresent());
                text(
                        capacityKey(node),
                        Lettering.block(label, !symbolled),
                        LabelPlacer.around(drawing.bounds(capacityKey(node)), 6, 26, Side.RIGHT, Side.LEFT),
                        2);
            }
        });
        if (!narrow) {
            network.nodes().forEach(node -> nodeText(node.name()));
        }
        for (HeatNetwork.Ambient ambient : network.ambients()) {
            text(
                    ambient.name(),
                    Lettering.block(label(ambient.name()), true),
                    LabelPlacer.around(drawing.bounds(ambient.name()), 6, 26, Side.RIGHT, Side.BELOW, Side.ABOVE),
                    1);
        }
    }

    static String capacityKey(String node) {
        return node + ".capacity";
    }

    private Label label(String name) {
        return labels.getOrDefault(name, new Label(name, List.of()));
    }

    private void text(String part, List<Lettering> lines, List<Spot> spots, int good) {
        if (!lines.isEmpty()) {
            int taken = placer.place(part, lines, spots);
            cramped |= taken >= good;
            legible &= taken < spots.size();
        }
    }

    private Point at(int column, int lane) {
        return new Point(column * across, lane * down);
    }

    private void path(HeatLanes.Path path) {
        Point from = at(path.from(), path.lane());
        Point to = at(path.to(), path.lane());
        if (path.loss()) {
            Frame frame = new Frame(to.plus(-across * 0.6, 0), 1, 0, false, 1);
            new PartSymbol(drawing, path.name(), frame, style).arrowInCircle();
            drawing.line("", Stroke.LINE, frame.at(PartSymbol.METER_RADIUS, 0), to);
            return;
        }
        boolean wholeMiddle = (path.to() - path.from()) % 2 == 1;
        Point centre = wholeMiddle ? new Point((from.x() + to.x()) / 2, from.y()) : from.plus(across / 2, 0);
        Frame frame = new Frame(centre, 1, 0, false, 1);
        new PartSymbol(drawing, path.name(), frame, style).resistor();
        drawing.line("", Stroke.LINE, from, frame.at(-RESISTOR_HALF, 0));
        drawing.line("", Stroke.LINE, frame.at(RESISTOR_HALF, 0), to);
    }

    private void node(String node) {
        int column = lanes.column(node);
        int[] bar = lanes.bar(node);
        if (bar[1] > bar[0]) {
            drawing.line("", Stroke.LINE, at(column, bar[0]), at(column, bar[1]));
        }
        boolean ambient = network.ambients().stream().anyMatch(a -> a.name().equals(node));
        for (int lane = bar[0]; lane <= bar[1]; lane++) {
            if (!ambient && lane == bar[0]) {
                drawing.dot("", at(column, lane), NODE_RADIUS);
            } else if (meeting(node, lane, bar) >= 3) {
                drawing.dot("", at(column, lane), 3);
            }
        }
    }

    /** How many lines meet on a node's bar at a lane. */
    private int meeting(String node, int lane, int[] bar) {
        int count = (lane > bar[0] ? 1 : 0) + (lane < bar[1] ? 1 : 0);
        for (HeatLanes.Path path : lanes.paths()) {
            if (path.lane() == lane && (path.left().equals(node) || path.right().equals(node))) {
                count++;
            }
        }
        boolean capacity = lanes.capacityLane().containsKey(node) && lane == bar[1];
        boolean symbol = lane == symbolLane(node)
                && network.ambients().stream().anyMatch(a -> a.name().equals(node));
        return count + (capacity ? 1 : 0) + (symbol ? 1 : 0);
    }

    private int symbolLane(String ambient) {
        return lanes.bar(ambient)[0];
    }

    /** Store of heat between a node and the surroundings. */
    private void capacity(String node, int lane) {
        int column = lanes.column(node);
        Point top = at(column, lanes.bar(node)[1]);
        Point foot = at(column, lane).plus(0, 4);
        Frame frame = Frame.between(foot.plus(0, -down), foot).movedAlong(6);
        String part = capacityKey(node);
        new PartSymbol(drawing, part, frame, style).capacitor();
        drawing.line("", Stroke.LINE, top, frame.at(-3.5, 0));
        drawing.line("", Stroke.LINE, frame.at(3.5, 0), foot);
        fixed("", foot, 0, 1);
    }

    private void ambientSymbol(String ambient) {
        Point at = at(lanes.column(ambient), symbolLane(ambient));
        Point end = at.plus(16, 0);
        drawing.line("", Stroke.LINE, at, end);
        fixed(ambient, end, 1, 0);
    }

    /** Three bars, each shorter: held at one temperature, as earth is held at one potential. */
    private void fixed(String part, Point at, int dx, int dy) {
        for (int i = 0; i < 3; i++) {
            double half = 11 - 4 * i;
            Point middle = at.plus(5 * i * dx, 5 * i * dy);
            drawing.line(part, Stroke.LINE, middle.plus(half * dy, -half * dx), middle.plus(-half * dy, half * dx));
        }
    }

    private void nodeText(String node) {
        int[] bar = lanes.bar(node);
        Point top = at(lanes.column(node), bar[0]);
        Box dot = Box.centred(top, 2 * NODE_RADIUS, 2 * NODE_RADIUS);
        List<Lettering> lines = Lettering.block(label(node), true);
        List<Spot> spots = new ArrayList<>();
        if (bar[0] == bar[1] && !lanes.capacityLane().containsKey(node)) {
            spots.add(LabelPlacer.around(dot, 9, 9, Side.BELOW).get(0));
        }
        spots.addAll(LabelPlacer.around(dot, 5, 10, Side.ABOVE));
        for (double gap = 5; gap <= 15; gap += 5) {
            spots.add(new Spot(top.plus(gap, down * 0.3 + gap), Side.RIGHT));
            spots.add(new Spot(top.plus(-gap, down * 0.3 + gap), Side.LEFT));
        }
        text(node, lines, spots, 1);
    }
}
