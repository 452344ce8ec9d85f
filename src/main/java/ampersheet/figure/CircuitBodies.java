package ampersheet.figure;

import ampersheet.circuit.GridPoint;
import ampersheet.circuit.PartKind;
import ampersheet.circuit.PlacedPart;
import ampersheet.figure.LabelPlacer.Side;
import ampersheet.figure.LabelPlacer.Spot;
import ampersheet.language.Language;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The parts of a circuit: each body, turned and moved as its ends lie, with the leads to them. */
final class CircuitBodies {
    private static final double SHORTEST_LEAD = 8;
    private static final Box REGULATOR = Box.centred(new Point(0, 0), 92, 50);
    private static final Box UPRIGHT_REGULATOR = Box.centred(new Point(0, 0), 64, 68);

    private final Drawing drawing;
    private final SymbolStyle style;
    private final Language language;
    private final boolean narrow;
    private final Conductors conductors;
    private final CircuitTexts texts;
    private final Map<String, Box> bodies = new LinkedHashMap<>();
    /** Signs and letters, put beside the bodies when all of them stand. */
    private final List<Runnable> marks = new ArrayList<>();

    CircuitBodies(
            Drawing drawing, CircuitFigure.Manner manner, boolean narrow, Conductors conductors, CircuitTexts texts) {
        this.drawing = drawing;
        this.style = manner.style();
        this.language = manner.language();
        this.narrow = narrow;
        this.conductors = conductors;
        this.texts = texts;
    }

    /** Where bodies stand, by the name of the part. */
    Map<String, Box> bodies() {
        return bodies;
    }

    void marks() {
        marks.forEach(Runnable::run);
    }

    /** A switch that yields a value: a kind without a symbol does not compile. */
    boolean body(PlacedPart part) {
        return switch (part.kind()) {
            case SOURCE,
                    RESISTOR,
                    LOAD,
                    CABLE,
                    SINK,
                    LED,
                    DIODE,
                    ZENER,
                    REFERENCE,
                    SWITCH,
                    CAPACITOR,
                    VOLTMETER,
                    AMMETER -> twoTerminals(part);
            case NMOS, PMOS -> transistor(part, "drain", "gate", "source", PartSymbol.GATE);
            case NPN -> transistor(part, "collector", "base", "emitter", PartSymbol.BASE);
            case STRIP, PANEL -> copper(part);
            case TRIMPOT -> trimpot(part);
            case REGULATOR -> regulator(part);
            case WIRE -> conductors.wire(part);
            case GROUND, NODE -> throw new IllegalArgumentException(part.kind() + " is drawn after the conductors");
        };
    }

    private boolean twoTerminals(PlacedPart part) {
        return onAxis(part, part.end("from"), part.end("to"));
    }

    private boolean onAxis(PlacedPart part, GridPoint from, GridPoint to) {
        Frame frame = Frame.between(conductors.pixel(from), conductors.pixel(to));
        boolean turned = part.kind() != PartKind.SWITCH && texts.pointsAtLabel(frame);
        return onAxis(part, from, to, turned ? frame.flipped() : frame);
    }

    private boolean onAxis(PlacedPart part, GridPoint from, GridPoint to, Frame unscaled) {
        double half = PartSymbol.halfLength(part, unscaled, texts.name(part));
        double shortest = Math.min(
                conductors.pixel(from).distanceTo(unscaled.origin()),
                conductors.pixel(to).distanceTo(unscaled.origin()));
        double room = shortest - 4;
        texts.require(part, shortest >= half + SHORTEST_LEAD);
        texts.crowded(room < half ? 1 : 0);
        Frame frame = room < half ? unscaled.scaled(Math.max(room, 2) / half) : unscaled;
        PartSymbol symbol = new PartSymbol(drawing, part.name(), frame, style);
        symbol.draw(part, texts.name(part));
        bodies.put(part.name(), drawing.bounds(part.name()));
        conductors.lead(part, from, frame.at(-half, 0));
        conductors.lead(part, to, frame.at(half, 0));
        signs(part, frame, half, symbol);
        return true;
    }

    private boolean copper(PlacedPart part) {
        Point plus = conductors.pixel(part.end("plus"));
        Point minus = conductors.pixel(part.end("minus"));
        Frame along = Frame.between(plus, minus);
        Point start = along.at(0, -1);
        boolean readsOnwards = along.vertical()
                ? start.x() < along.origin().x()
                : start.y() < along.origin().y();
        Frame frame = readsOnwards ? along : along.flipped();
        double half = CopperSymbol.halfLength(part.kind());
        texts.require(part, plus.distanceTo(minus) / 2 >= half + 2 * SHORTEST_LEAD);
        new CopperSymbol(drawing, part, frame, narrow, language.say("figure.circuit.drawn.feed")).draw();
        bodies.put(part.name(), drawing.bounds(part.name()));
        conductors.lead(part, part.end("plus"), frame.at(-half, 0));
        conductors.lead(part, part.end("minus"), frame.at(half, 0));
        marks.add(() -> texts.sign(part, "+", frame, -half - 12));
        marks.add(() -> texts.sign(part, "\u2212", frame, half + 12));
        return true;
    }

    private void signs(PlacedPart part, Frame frame, double half, PartSymbol symbol) {
        PartKind kind = part.kind();
        boolean outside = kind == PartKind.SOURCE && style == SymbolStyle.IEC;
        if (outside || kind == PartKind.VOLTMETER || kind == PartKind.AMMETER) {
            double plusEnd = kind == PartKind.SOURCE ? half + 6 : -half - 6;
            marks.add(() -> symbol.plus(texts.signPlace(part, frame, plusEnd)));
            if (outside) {
                marks.add(() -> symbol.minus(texts.signPlace(part, frame, -half - 6)));
            }
        }
        switch (kind) {
            case LED, DIODE, ZENER, REFERENCE -> {
                marks.add(() -> texts.pin(part, "A", frame, -half - 7));
                marks.add(() -> texts.pin(part, "K", frame, half + 7));
            }
            default -> {}
        }
    }

    private boolean transistor(PlacedPart part, String top, String control, String bottom, double side) {
        GridPoint from = part.end(top);
        GridPoint to = part.end(bottom);
        Point first = conductors.pixel(from);
        Point last = conductors.pixel(to);
        boolean upright = Math.abs(last.y() - first.y()) >= Math.abs(last.x() - first.x());
        Point foot = upright ? new Point(first.x(), last.y()) : new Point(last.x(), first.y());
        Frame middle = Frame.between(first, foot).facing(conductors.pixel(part.end(control)));
        double half = PartSymbol.halfLength(part, middle, texts.name(part));
        texts.require(part, first.distanceTo(foot) / 2 >= half + SHORTEST_LEAD);
        Frame frame = opposite(
                middle, first.distanceTo(foot) / 2 - half - SHORTEST_LEAD, conductors.pixel(part.end(control)));
        new PartSymbol(drawing, part.name(), frame, style).draw(part, texts.name(part));
        bodies.put(part.name(), drawing.bounds(part.name()));
        conductors.lead(part, from, frame.at(-half, 0));
        conductors.lead(part, to, foot, frame.at(half, 0));
        Point gate = sideLead(part, part.end(control), frame, side, side - 3);
        String initials = control.substring(0, 1) + top.substring(0, 1) + bottom.substring(0, 1);
        marks.add(() -> texts.sidePin(part, upper(initials, 0), gate));
        marks.add(() -> texts.pin(part, upper(initials, 1), frame, -half - 8));
        marks.add(() -> texts.pin(part, upper(initials, 2), frame, half + 8));
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
     * The lead of a third terminal, from {@code v} at the body's side straight out, then along to where the grid has
     * it.
     *
     * @param along how far from the middle it may leave the body
     * @return a point on the lead, near the body
     */
    private Point sideLead(PlacedPart part, GridPoint end, Frame frame, double v, double along) {
        Point point = conductors.pixel(end);
        double u = Math.max(-along, Math.min(along, frame.u(point)));
        double far = frame.v(point);
        if (far >= v + 4) {
            conductors.lead(part, end, frame.at(u, far), frame.at(u, v));
        } else {
            u = 0;
            double out = v + 14;
            conductors.lead(part, end, frame.at(frame.u(point), out), frame.at(u, out), frame.at(u, v));
        }
        return frame.at(u, v + 8);
    }

    /** The wiper's arrow meets the body from the side on which the wiper ends. */
    private boolean trimpot(PlacedPart part) {
        GridPoint wiper = part.end("wiper");
        Frame middle = Frame.between(conductors.pixel(part.end("from")), conductors.pixel(part.end("to")))
                .facing(conductors.pixel(wiper));
        double reach = conductors.pixel(part.end("from")).distanceTo(middle.origin());
        double room = reach - PartSymbol.halfLength(part, middle, texts.name(part)) - SHORTEST_LEAD;
        Frame axis = middle.v(conductors.pixel(wiper)) > 1 ? opposite(middle, room, conductors.pixel(wiper)) : middle;
        onAxis(part, part.end("from"), part.end("to"), axis);
        double tip = 8;
        sideLead(part, wiper, axis, tip + 6, 12);
        double u = axis.v(conductors.pixel(wiper)) >= tip + 10
                ? Math.max(-12, Math.min(12, axis.u(conductors.pixel(wiper))))
                : 0;
        drawing.arrowHead(part.name(), axis.at(u, tip + 8), axis.at(u, tip), 8);
        return true;
    }

    private boolean regulator(PlacedPart part) {
        Point in = conductors.pixel(part.end("in"));
        Point out = conductors.pixel(part.end("out"));
        Point ground = conductors.pixel(part.end("ground"));
        Frame middle = Frame.between(in, out);
        boolean lying = !middle.vertical();
        Box size = lying ? REGULATOR : UPRIGHT_REGULATOR;
        double half = (lying ? size.width() : size.height()) / 2;
        double room = in.distanceTo(out) / 2 - half - SHORTEST_LEAD;
        texts.require(part, room >= 0);
        Frame axis = opposite(middle, room, ground);
        Box box = Box.centred(axis.origin(), size.width(), size.height());
        String name = part.name();
        drawing.rectangle(name, Stroke.LINE, box);
        Frame facing = axis.facing(ground);
        pinName(name, language.say("figure.circuit.drawn.in"), facing.at(-half, 0), box);
        pinName(name, language.say("figure.circuit.drawn.out"), facing.at(half, 0), box);
        double side = (lying ? box.height() : box.width()) / 2;
        bodies.put(name, drawing.bounds(name));
        conductors.lead(part, part.end("in"), axis.at(-half, 0));
        conductors.lead(part, part.end("out"), axis.at(half, 0));
        Point foot = sideLead(part, part.end("ground"), facing, side, half - 22);
        double u = facing.u(foot);
        pinName(name, language.say("figure.circuit.drawn.ground"), facing.at(u, side), box);
        return true;
    }

    /** Inside the box, beside the pin. */
    private void pinName(String part, String text, Point pin, Box box) {
        Lettering lettering = Lettering.plain(text, Lettering.SMALL);
        double inX = Math.max(
                box.left() + 4 + lettering.width() / 2, Math.min(box.right() - 4 - lettering.width() / 2, pin.x()));
        double inY = Math.max(box.top() + 10, Math.min(box.bottom() - 10, pin.y()));
        drawing.words(part, lettering, new Point(inX, inY));
    }

    void ground(PlacedPart part) {
        GridPoint at = part.end("at");
        Point here = conductors.pixel(at);
        int[] wind = {0, 1};
        for (int[] free : new int[][] {{0, 1}, {-1, 0}, {1, 0}, {0, -1}}) {
            if (!conductors.leaves(at, free[0], free[1])) {
                wind = free;
                break;
            }
        }
        Frame frame = new Frame(here, wind[0], wind[1], false, 1);
        drawing.outlined(part.name(), Stroke.LINE, frame.at(13, -9), frame.at(13, 9), frame.at(23, 0));
        Box body = drawing.bounds(part.name());
        conductors.lead(part, at, frame.at(13, 0));
        List<Lettering> lines = texts.ofGround(part);
        if (!lines.isEmpty()) {
            List<Spot> spots = LabelPlacer.around(body, 3, 20, Side.RIGHT, Side.LEFT, Side.BELOW, Side.ABOVE);
            marks.add(() -> texts.text(part, lines, body.centre(), spots, spots.size()));
        }
    }
}
