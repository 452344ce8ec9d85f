package ampersheet.figure;

import ampersheet.circuit.PartKind;
import ampersheet.circuit.PlacedPart;
import ampersheet.circuit.Schematic;
import ampersheet.figure.LabelPlacer.Side;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** Lays a schematic out at one spacing: bodies and leads first, then dots, signs, names and values around them. */
final class CircuitDrawing {
    /** Between a body and what belongs to other parts. */
    private static final double CLEARANCE = 8;

    /**
     * How much room there is.
     *
     * @param narrow whether width is dear: labels stand where they find room, but no line may come between a part and
     *     its own
     * @param beside on which side of a part its label goes first, where not as usual
     */
    record Room(Spacing spacing, boolean narrow, Map<String, Side> beside) {}

    private final Schematic schematic;
    private final Room room;
    private final Drawing drawing = new Drawing();
    private final Conductors conductors;
    private final CircuitTexts texts;
    private final CircuitBodies bodies;

    CircuitDrawing(Schematic schematic, Map<String, Label> labels, CircuitFigure.Manner manner, Spacing spacing) {
        this(schematic, labels, manner, new Room(spacing, false, Map.of()));
    }

    /** For a narrow page. @param beside on which side of a part its label goes first, where not as usual */
    CircuitDrawing(
            Schematic schematic,
            Map<String, Label> labels,
            CircuitFigure.Manner manner,
            Spacing spacing,
            Map<String, Side> beside) {
        this(schematic, labels, manner, new Room(spacing, true, beside));
    }

    private CircuitDrawing(Schematic schematic, Map<String, Label> labels, CircuitFigure.Manner manner, Room room) {
        this.schematic = schematic;
        this.room = room;
        this.conductors = new Conductors(schematic, room.spacing(), drawing);
        this.texts = new CircuitTexts(schematic, labels, conductors, drawing, room);
        this.bodies = new CircuitBodies(drawing, manner, room.narrow(), conductors, texts);
        draw();
    }

    Drawing drawing() {
        return drawing;
    }

    /** Whether every text has a place of its own. */
    boolean legible() {
        return texts.legible();
    }

    /** How many texts, signs and bodies have no place of their own. */
    int faults() {
        return texts.faults();
    }

    /** The parts that would look better with more room. */
    Set<PlacedPart> cramped() {
        return texts.cramped();
    }

    Spacing spacing() {
        return room.spacing();
    }

    Map<String, Side> beside() {
        return room.beside();
    }

    boolean vertical(PlacedPart part) {
        return conductors.vertical(part);
    }

    /** Components in the outer columns, with the side that faces inwards. */
    Map<String, Side> inwards(boolean leftmost) {
        Box extent = room.spacing().extent();
        Map<String, Side> sides = new TreeMap<>();
        bodies.bodies().forEach((name, body) -> {
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
        return bodies.bodies().keySet().stream()
                .filter(name -> drawing.shapes(name).stream()
                        .anyMatch(shape -> shape instanceof Shape.Words
                                && (shape.bounds().left() < whole.left() + 1
                                        || shape.bounds().right() > whole.right() - 1)))
                .toList();
    }

    private void draw() {
        List<PlacedPart> grounds = new ArrayList<>();
        for (PlacedPart part : schematic.parts()) {
            switch (part.kind()) {
                case GROUND -> grounds.add(part);
                case NODE -> {}
                default -> bodies.body(part);
            }
        }
        grounds.forEach(bodies::ground);
        conductors.dots();
        bodies.marks();
        for (PlacedPart part : schematic.parts()) {
            if (part.kind() == PartKind.NODE) {
                texts.nodeName(part);
            }
        }
        bodies.bodies().forEach((name, body) -> texts.crowded(drawing.othersIn(body.grown(CLEARANCE), name)));
        bodies.bodies().forEach(texts::label);
    }
}
