package ampersheet.figure;

import ampersheet.circuit.PlacedPart;
import ampersheet.circuit.Schematic;
import ampersheet.figure.LabelPlacer.Side;
import ampersheet.figure.LabelPlacer.Spot;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Signs, letters, names and values beside the bodies of a circuit; counts what finds no place of its own. */
final class CircuitTexts {
    /** Between two texts, so that they do not read as one. */
    private static final double BETWEEN_TEXTS = 8;

    private static final double OWN_TEXTS = 5;
    private static final double SIGN = 8;
    /** A sign that is a letter, with white around it. */
    private static final double LARGE_SIGN = 14;

    private final Schematic schematic;
    private final Map<String, Label> labels;
    private final Conductors conductors;
    private final Drawing drawing;
    private final LabelPlacer placer;
    private final Box extent;
    private final CircuitDrawing.Room room;
    /** Parts whose body or text has too little room, in order. */
    private final Set<PlacedPart> cramped = new LinkedHashSet<>();
    /** Texts, signs and bodies without a place of their own; texts on lines count twice. */
    private int faults;

    private boolean legible = true;

    CircuitTexts(
            Schematic schematic,
            Map<String, Label> labels,
            Conductors conductors,
            Drawing drawing,
            CircuitDrawing.Room room) {
        this.schematic = schematic;
        this.labels = labels;
        this.conductors = conductors;
        this.drawing = drawing;
        this.placer = new LabelPlacer(drawing);
        this.extent = room.spacing().extent();
        this.room = room;
    }

    Set<PlacedPart> cramped() {
        return cramped;
    }

    int faults() {
        return faults;
    }

    boolean legible() {
        return legible;
    }

    /** Notes so many bodies that are in each other's way. */
    void crowded(int more) {
        faults += more;
    }

    Lettering name(PlacedPart part) {
        Label label = labels.get(part.name());
        if (label == null) {
            return new Lettering(List.of(), Lettering.BODY, false);
        }
        return Lettering.plain(label.name(), Lettering.BODY);
    }

    void require(PlacedPart part, boolean roomy) {
        if (!roomy) {
            cramped.add(part);
        }
    }

    /** Puts text beside a part and notes if there was no room for it, or only at a spot farther down the list. */
    void text(PlacedPart part, List<Lettering> lines, Point centre, List<Spot> spots, int good) {
        int taken = placer.place(
                part.name(),
                lines,
                spots,
                spot -> !room.narrow()
                        || !drawing.comesBetween(centre, spot.at(), part.name())
                                && !drawing.hasWords(
                                        LabelPlacer.box(lines, spot), BETWEEN_TEXTS, OWN_TEXTS, part.name()));
        legible &= taken < spots.size();
        faults += Math.max(0, taken - spots.size() + 1);
        require(part, taken < good);
    }

    void sign(PlacedPart part, String sign, Frame frame, double u) {
        drawing.words(
                part.name(),
                Lettering.plain(sign, Lettering.BODY),
                signPlace(part, frame, u, room.narrow() ? LARGE_SIGN : SIGN));
    }

    Point signPlace(PlacedPart part, Frame frame, double u) {
        return signPlace(part, frame, u, SIGN);
    }

    Point signPlace(PlacedPart part, Frame frame, double u, double size) {
        List<Point> centres = besideLead(frame, u);
        Optional<Point> free = placer.free(size, centres);
        require(part, free.isPresent());
        faults += free.isPresent() ? 0 : 1;
        return free.orElse(centres.get(0));
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

    /** Whether v points to where the label goes. */
    boolean pointsAtLabel(Frame frame) {
        Point side = frame.at(0, 1);
        Side label = sides(Box.around(frame.origin()), frame.vertical())[0];
        return switch (label) {
            case RIGHT -> side.x() > frame.origin().x();
            case LEFT -> side.x() < frame.origin().x();
            case ABOVE -> side.y() < frame.origin().y();
            case BELOW -> side.y() > frame.origin().y();
        };
    }

    /** A small letter beside a lead, on the side to which v points, if there is room. */
    void pin(PlacedPart part, String letter, Frame frame, double u) {
        Point towards = frame.at(0, 1);
        boolean first = frame.vertical()
                ? towards.x() > frame.origin().x()
                : towards.y() < frame.origin().y();
        Side preferred = frame.vertical() ? first ? Side.RIGHT : Side.LEFT : first ? Side.ABOVE : Side.BELOW;
        Side other = frame.vertical() ? first ? Side.LEFT : Side.RIGHT : first ? Side.BELOW : Side.ABOVE;
        List<Spot> spots = new ArrayList<>();
        for (Side side : List.of(preferred, other)) {
            for (double along = 0; along <= 12; along += 3) {
                Point lead = frame.at(u + (u < 0 ? -along : along), 0);
                spots.addAll(LabelPlacer.around(Box.centred(lead, 1.5, 1.5), 3, 3, side)
                        .subList(0, 1));
            }
        }
        text(part, List.of(Lettering.plain(letter, Lettering.SMALL)), frame.at(u, 0), spots, spots.size());
    }

    /** The letter of a third terminal, beside its lead, which runs along v. */
    void sidePin(PlacedPart part, String letter, Point lead) {
        List<Spot> spots =
                LabelPlacer.around(Box.centred(lead, 1.5, 1.5), 3, 14, Side.ABOVE, Side.BELOW, Side.LEFT, Side.RIGHT);
        text(part, List.of(Lettering.plain(letter, Lettering.SMALL)), lead, spots, spots.size());
    }

    void nodeName(PlacedPart part) {
        Label label = labels.getOrDefault(part.name(), new Label(part.name(), List.of()));
        Point at = conductors.pixel(part.end("at"));
        Side across = at.x() < extent.centre().x() ? Side.LEFT : Side.RIGHT;
        Side other = across == Side.LEFT ? Side.RIGHT : Side.LEFT;
        Box circle = Box.centred(at, 2 * Conductors.TERMINAL_RADIUS, 2 * Conductors.TERMINAL_RADIUS);
        List<Spot> spots = new ArrayList<>();
        for (double gap = 4; gap <= 14; gap += 2) {
            for (double dx : new double[] {gap, -gap}) {
                for (double dy : new double[] {-gap - 4, gap + 4}) {
                    boolean right = across == Side.RIGHT == dx > 0;
                    spots.add(new Spot(
                            at.plus(right ? gap : -gap, dy - (dy < 0 ? 2 : -2)), right ? Side.RIGHT : Side.LEFT));
                }
            }
        }
        List<Spot> beside = LabelPlacer.around(circle, 4, 4, across, Side.ABOVE, Side.BELOW, other);
        List<Spot> all = new ArrayList<>(beside.subList(0, 4));
        all.addAll(spots);
        all.addAll(LabelPlacer.around(circle, 4, 24, across, Side.ABOVE, Side.BELOW, other));
        text(part, lines(part, label), at, all, all.size());
    }

    void label(String name, Box body) {
        Label label = labels.get(name);
        PlacedPart part = schematic.parts().stream()
                .filter(p -> p.name().equals(name))
                .findFirst()
                .orElseThrow();
        if (label == null) {
            return;
        }
        List<Lettering> lines = lines(part, label);
        if (!lines.isEmpty()) {
            boolean vertical = conductors.vertical(part);
            List<Spot> spots = new ArrayList<>();
            if (room.beside().containsKey(name)) {
                spots.addAll(LabelPlacer.around(body, 6, 31, room.beside().get(name)));
            }
            spots.addAll(LabelPlacer.around(body, 6, 31, sides(body, vertical)));
            if (room.narrow() && vertical) {
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

    /**
     * The same side for all, as far as it goes: to the right of upright parts and above lying ones; outside at the
     * edges.
     */
    Side[] sides(Box body, boolean vertical) {
        boolean leftmost = body.centre().x() < extent.left() + 1;
        boolean lowest = extent.height() > 1 && body.centre().y() > extent.bottom() - 1;
        Side across = leftmost ? Side.LEFT : Side.RIGHT;
        Side opposite = leftmost ? Side.RIGHT : Side.LEFT;
        Side upright = lowest ? Side.BELOW : Side.ABOVE;
        Side inward = lowest ? Side.ABOVE : Side.BELOW;
        return vertical
                ? new Side[] {across, opposite, upright, inward}
                : new Side[] {upright, inward, across, opposite};
    }

    List<Lettering> ofGround(PlacedPart part) {
        Label label = labels.get(part.name());
        return label == null ? List.of(Lettering.plain("0\u00A0V", Lettering.SMALL)) : lines(part, label);
    }

    private static List<Lettering> lines(PlacedPart part, Label label) {
        return Lettering.block(label, !PartSymbol.isBox(part));
    }
}
