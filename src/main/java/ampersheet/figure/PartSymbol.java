package ampersheet.figure;

import ampersheet.circuit.PartKind;
import ampersheet.circuit.PartValue;
import ampersheet.circuit.PlacedPart;
import java.util.ArrayList;
import java.util.List;

/**
 * Bodies of parts in a frame of their own, without the leads. Shapes after IEC 60617 and IEEE 315: a resistor is a
 * rectangle 3:1 or a zigzag with three peaks each side; a diode's triangle stands on the anode side and points at the
 * bar of the cathode, with the conductor drawn through it in IEC; an ideal voltage source is a circle with the
 * conductor drawn through, an ideal current source a circle with a line across. A fuse is a rectangle 3:1 with the
 * conductor drawn through, a motor a circle with M, a lamp a circle with a cross.
 */
final class PartSymbol {
    static final double METER_RADIUS = 15;
    /** How far a transistor's control terminal stands from the line between its other two. */
    static final double GATE = 17;

    static final double BASE = 12;
    private static final double RESISTOR_HALF = 21;
    private static final double RESISTOR_RISE = 7;

    static final String SYMBOL = "symbol";
    private static final String BODY = "body";

    private final Drawing drawing;
    private final String part;
    private final Frame frame;
    private final SymbolStyle style;

    PartSymbol(Drawing drawing, String part, Frame frame, SymbolStyle style) {
        this.drawing = drawing;
        this.part = part;
        this.frame = frame;
        this.style = style;
    }

    /** Half of the body's length along the part. */
    static double halfLength(PlacedPart placed, Frame frame, Lettering name) {
        return switch (placed.kind()) {
            case RESISTOR, TRIMPOT, CABLE -> RESISTOR_HALF;
            case LOAD ->
                switch (placed.word(SYMBOL)) {
                    case "fuse" -> RESISTOR_HALF;
                    case "motor", "lamp" -> METER_RADIUS;
                    default ->
                        (frame.vertical()
                                        ? loadBox(name).height()
                                        : loadBox(name).width())
                                / 2;
                };
            case SOURCE, SINK, VOLTMETER, AMMETER -> METER_RADIUS;
            case LED, DIODE, ZENER -> 8;
            case REFERENCE -> 17;
            case CAPACITOR -> 3.5;
            case NMOS, PMOS, NPN -> 11;
            case SWITCH -> 16;
            case REGULATOR, STRIP, PANEL, WIRE, GROUND, NODE ->
                throw new IllegalArgumentException(placed.kind() + " has no body on an axis");
        };
    }

    void draw(PlacedPart placed, Lettering name) {
        switch (placed.kind()) {
            case RESISTOR, TRIMPOT -> resistor();
            case LOAD -> load(placed, name);
            case CABLE -> cable(placed.values().getOrDefault(PartValue.GAUGE, Stroke.THINNEST_GAUGE));
            case SOURCE -> voltageSource();
            case SINK -> currentSource();
            case LED -> led();
            case DIODE -> diode();
            case ZENER -> zener();
            case REFERENCE -> reference();
            case CAPACITOR -> capacitor();
            case VOLTMETER -> meter("V");
            case AMMETER -> meter("A");
            case NMOS -> mosfet(true, placed);
            case PMOS -> mosfet(false, placed);
            case NPN -> npn();
            case SWITCH -> contact(isClosed(placed));
            case REGULATOR, STRIP, PANEL, WIRE, GROUND, NODE ->
                throw new IllegalArgumentException(placed.kind() + " has no body on an axis");
        }
    }

    void resistor() {
        switch (style) {
            case IEC -> rectangle();
            case IEEE -> {
                List<Point> points = new ArrayList<>();
                points.add(frame.at(-RESISTOR_HALF, 0));
                for (int peak = 0; peak < 6; peak++) {
                    points.add(
                            frame.at(-RESISTOR_HALF + 3.5 + 7 * peak, peak % 2 == 0 ? RESISTOR_RISE : -RESISTOR_RISE));
                }
                points.add(frame.at(RESISTOR_HALF, 0));
                drawing.add(part, new Shape.Line(points, Stroke.LINE));
            }
        }
    }

    private void rectangle() {
        drawing.outlined(
                part,
                Stroke.LINE,
                frame.at(-RESISTOR_HALF, RESISTOR_RISE),
                frame.at(RESISTOR_HALF, RESISTOR_RISE),
                frame.at(RESISTOR_HALF, -RESISTOR_RISE),
                frame.at(-RESISTOR_HALF, -RESISTOR_RISE));
    }

    /** A conductor whose length matters: a heavy line between two marks, the heavier the thicker the wire. */
    private void cable(double gauge) {
        line(-RESISTOR_HALF, -RESISTOR_RISE, -RESISTOR_HALF, RESISTOR_RISE);
        line(RESISTOR_HALF, -RESISTOR_RISE, RESISTOR_HALF, RESISTOR_RISE);
        drawing.line(part, Stroke.ofGauge(gauge), frame.at(-RESISTOR_HALF, 0), frame.at(RESISTOR_HALF, 0));
    }

    void capacitor() {
        line(-3.5, -11, -3.5, 11);
        line(3.5, -11, 3.5, 11);
    }

    /** Heat or current: a circle with an arrow in it. */
    void arrowInCircle() {
        drawing.circle(part, Stroke.LINE, frame.at(0, 0), METER_RADIUS * frame.scale());
        drawing.arrow(part, Stroke.LINE, 8 * frame.scale(), frame.at(-9, 0), frame.at(10, 0));
    }

    /** Whether its name stands inside it. */
    static boolean isBox(PlacedPart placed) {
        return placed.kind() == PartKind.LOAD && placed.word(SYMBOL).equals("box");
    }

    private void load(PlacedPart placed, Lettering name) {
        switch (placed.word(SYMBOL)) {
            case "fuse" -> {
                rectangle();
                line(-RESISTOR_HALF, 0, RESISTOR_HALF, 0);
            }
            case "motor" -> meter("M");
            case "lamp" -> {
                drawing.circle(part, Stroke.LINE, frame.at(0, 0), METER_RADIUS * frame.scale());
                double arm = METER_RADIUS * Math.sqrt(0.5);
                line(-arm, -arm, arm, arm);
                line(-arm, arm, arm, -arm);
            }
            default -> box(name);
        }
    }

    private void box(Lettering name) {
        drawing.rectangle(
                part,
                Stroke.LINE,
                Box.centred(frame.origin(), loadBox(name).width(), loadBox(name).height()));
        if (!name.runs().isEmpty()) {
            drawing.words(part, name, frame.origin());
        }
    }

    private static Box loadBox(Lettering name) {
        return Box.centred(new Point(0, 0), Math.max(44, name.width() + 14), 32);
    }

    private void voltageSource() {
        drawing.circle(part, Stroke.LINE, frame.at(0, 0), METER_RADIUS * frame.scale());
        switch (style) {
            case IEC -> line(-METER_RADIUS, 0, METER_RADIUS, 0);
            case IEEE -> {
                plus(frame.at(7.5, 0));
                minus(frame.at(-7.5, 0));
            }
        }
    }

    /** Signs stand upright whichever way the part lies. */
    void plus(Point centre) {
        double arm = 4 * frame.scale();
        drawing.line(part, Stroke.LINE, centre.plus(-arm, 0), centre.plus(arm, 0));
        drawing.line(part, Stroke.LINE, centre.plus(0, -arm), centre.plus(0, arm));
    }

    void minus(Point centre) {
        double arm = 4 * frame.scale();
        drawing.line(part, Stroke.LINE, centre.plus(-arm, 0), centre.plus(arm, 0));
    }

    private void currentSource() {
        switch (style) {
            case IEC -> {
                drawing.circle(part, Stroke.LINE, frame.at(0, 0), METER_RADIUS * frame.scale());
                line(0, -METER_RADIUS, 0, METER_RADIUS);
                drawing.arrowHead(part, frame.at(METER_RADIUS, 0), frame.at(METER_RADIUS + 13, 0), 10 * frame.scale());
            }
            case IEEE -> arrowInCircle();
        }
    }

    private void triangle() {
        drawing.outlined(part, Stroke.LINE, frame.at(-8, 9), frame.at(8, 0), frame.at(-8, -9));
        if (style == SymbolStyle.IEC) {
            line(-8, 0, 8, 0);
        }
    }

    private void diode() {
        triangle();
        line(8, -9, 8, 9);
    }

    /** Two arrows leave on the side of v. */
    private void led() {
        diode();
        for (double start : new double[] {-5, 4}) {
            drawing.arrow(part, Stroke.LINE, 6.5 * frame.scale(), frame.at(start, 11), frame.at(start + 8, 22));
        }
    }

    private void zener() {
        triangle();
        switch (style) {
            case IEC -> drawing.line(part, Stroke.LINE, frame.at(8, -9), frame.at(8, 9), frame.at(3, 9));
            case IEEE ->
                drawing.line(part, Stroke.LINE, frame.at(12, -12), frame.at(8, -9), frame.at(8, 9), frame.at(4, 12));
        }
    }

    /** A reference is a small circuit that acts as a zener: the zener in a box. */
    private void reference() {
        zener();
        line(-17, 0, -8, 0);
        line(8, 0, 17, 0);
        drawing.outlined(part, Stroke.LINE, frame.at(-17, 17), frame.at(17, 17), frame.at(17, -17), frame.at(-17, -17));
    }

    private void meter(String letter) {
        drawing.circle(part, Stroke.LINE, frame.at(0, 0), METER_RADIUS * frame.scale());
        drawing.words(part, Lettering.plain(letter, Lettering.BODY), frame.at(0, 0));
    }

    /**
     * u from drain to source, v towards the gate: the broken line is the channel that a voltage has to make first, the
     * arrow on the body points from p to n.
     */
    private void mosfet(boolean nChannel, PlacedPart placed) {
        double channel = 11;
        line(-16, channel, -7, channel);
        line(-4.5, channel, 4.5, channel);
        line(7, channel, 16, channel);
        line(-14, GATE, 14, GATE);
        drawing.line(part, Stroke.LINE, frame.at(-11, 0), frame.at(-11, channel));
        drawing.line(part, Stroke.LINE, frame.at(11, 0), frame.at(11, channel));
        drawing.line(part, Stroke.LINE, frame.at(11, 0), frame.at(0, 0), frame.at(0, channel));
        if (nChannel) {
            drawing.arrowHead(part, frame.at(0, 0), frame.at(0, channel - 1), 8 * frame.scale());
        } else {
            drawing.arrowHead(part, frame.at(0, channel), frame.at(0, 1), 8 * frame.scale());
        }
        if (placed.word(BODY).equals("shown")) {
            bodyDiode(nChannel ? -1 : 1);
        }
    }

    /**
     * Beside the channel, across from the gate.
     *
     * @param way 1 if it conducts from drain to source, -1 if from source to drain
     */
    private void bodyDiode(int way) {
        double away = -15;
        double half = 5 * way;
        drawing.line(part, Stroke.LINE, frame.at(-11, 0), frame.at(-11, away), frame.at(11, away), frame.at(11, 0));
        drawing.outlined(part, Stroke.LINE, frame.at(-half, away + 6), frame.at(half, away), frame.at(-half, away - 6));
        line(half, away - 6, half, away + 6);
        drawing.dot(part, frame.at(-11, 0), 2.5 * frame.scale());
        drawing.dot(part, frame.at(11, 0), 2.5 * frame.scale());
    }

    /** u from collector to emitter, v towards the base; the arrow on the emitter shows the way of the current. */
    private void npn() {
        line(-13, BASE, 13, BASE);
        line(-11, 0, -5, BASE);
        drawing.arrow(part, Stroke.LINE, 8 * frame.scale(), frame.at(5, BASE), frame.at(11, 0.5));
    }

    static boolean isClosed(PlacedPart placed) {
        return placed.values().getOrDefault(PartValue.CLOSED, 0.0) > 0.5;
    }

    private void contact(boolean closed) {
        drawing.circle(part, Stroke.LINE, frame.at(-13, 0), 3 * frame.scale());
        drawing.circle(part, Stroke.LINE, frame.at(13, 0), 3 * frame.scale());
        if (closed) {
            line(-13, 3, 17, 3);
        } else {
            line(-10.6, 1.8, 13, 13);
        }
    }

    private void line(double u1, double v1, double u2, double v2) {
        drawing.line(part, Stroke.LINE, frame.at(u1, v1), frame.at(u2, v2));
    }
}
