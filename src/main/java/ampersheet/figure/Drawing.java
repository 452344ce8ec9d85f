package ampersheet.figure;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Shapes by part, in order; becomes one SVG element just large enough for them. */
final class Drawing {
    private static final double MARGIN = 4;
    /** Lines that meet in a point are all there, and none is between it and its name. */
    private static final double NEAR = 4;

    private final Map<String, List<Shape>> byPart = new LinkedHashMap<>();
    private final List<Shape> all = new ArrayList<>();
    /** No ink of the shape at the same index lies outside. */
    private final List<Box> reach = new ArrayList<>();
    /** Of everything in it; null as long as it is empty. */
    private Box bounds;

    void add(String part, Shape shape) {
        byPart.computeIfAbsent(part, p -> new ArrayList<>()).add(shape);
        all.add(shape);
        Box box = shape.bounds();
        reach.add(box.grown(1));
        bounds = bounds == null ? box : bounds.with(box);
    }

    void line(String part, Stroke stroke, Point... points) {
        add(part, new Shape.Line(List.of(points), stroke));
    }

    void outlined(String part, Stroke stroke, Point... points) {
        add(part, new Shape.Polygon(List.of(points), stroke, false));
    }

    void filled(String part, Point... points) {
        add(part, new Shape.Polygon(List.of(points), Stroke.LINE, true));
    }

    void rectangle(String part, Stroke stroke, Box box) {
        outlined(
                part,
                stroke,
                new Point(box.left(), box.top()),
                new Point(box.right(), box.top()),
                new Point(box.right(), box.bottom()),
                new Point(box.left(), box.bottom()));
    }

    void circle(String part, Stroke stroke, Point centre, double radius) {
        add(part, new Shape.Circle(centre, radius, stroke, false));
    }

    void dot(String part, Point centre, double radius) {
        add(part, new Shape.Circle(centre, radius, Stroke.LINE, true));
    }

    /** A filled head whose tip lies at {@code tip}, coming from {@code from}. */
    void arrowHead(String part, Point from, Point tip, double length) {
        Point back = tip.towards(from, length);
        double nx = (tip.y() - back.y()) * 0.42;
        double ny = (back.x() - tip.x()) * 0.42;
        filled(part, tip, back.plus(nx, ny), back.plus(-nx, -ny));
    }

    /** A line with a head at its last point; it ends inside the head, so that the tip stays sharp. */
    void arrow(String part, Stroke stroke, double headLength, Point... points) {
        Point tip = points[points.length - 1];
        Point before = points[points.length - 2];
        Point[] shaft = points.clone();
        shaft[points.length - 1] = tip.towards(before, Math.min(headLength - 1, tip.distanceTo(before)));
        line(part, stroke, shaft);
        arrowHead(part, before, tip, headLength);
    }

    /** Text inside a body, where it belongs. */
    void words(String part, Lettering lettering, Point centre) {
        Point baseline = centre.plus(0, lettering.size() * 0.34);
        add(part, new Shape.Words(lettering, baseline, Lettering.Anchor.MIDDLE, true));
    }

    /** This drawing with the other one below it. */
    Drawing above(Drawing lower, double gap) {
        Drawing both = new Drawing();
        byPart.forEach((part, shapes) -> shapes.forEach(shape -> both.add(part, shape)));
        double dx = frame().left() - lower.frame().left();
        double dy = bounds().bottom() + gap - lower.bounds().top();
        lower.byPart.forEach((part, shapes) -> shapes.forEach(shape -> both.add(part, shape.moved(dx, dy))));
        return both;
    }

    /** As they are now; read while nothing is drawn. */
    List<Shape> shapes() {
        return Collections.unmodifiableList(all);
    }

    List<Shape> shapes(String part) {
        return List.copyOf(byPart.getOrDefault(part, List.of()));
    }

    boolean isFree(Box box) {
        for (int i = 0; i < all.size(); i++) {
            if (reach.get(i).overlaps(box) && all.get(i).meets(box)) {
                return false;
            }
        }
        return true;
    }

    /** How many shapes have ink in the box. */
    int crowd(Box box) {
        int crowd = 0;
        for (int i = 0; i < all.size(); i++) {
            if (reach.get(i).overlaps(box) && all.get(i).meets(box)) {
                crowd++;
            }
        }
        return crowd;
    }

    /** How many parts other than the owner have lines in the box. */
    int othersIn(Box box, String owner) {
        int others = 0;
        for (Map.Entry<String, List<Shape>> part : byPart.entrySet()) {
            boolean in = !part.getKey().equals(owner)
                    && part.getValue().stream().anyMatch(shape -> !(shape instanceof Shape.Words) && shape.meets(box));
            others += in ? 1 : 0;
        }
        return others;
    }

    /** Whether other parts have text nearer to the box than {@code apart}, or the owner nearer than {@code own}. */
    boolean hasWords(Box box, double apart, double own, String owner) {
        return byPart.entrySet().stream()
                .anyMatch(part -> part.getValue().stream()
                        .anyMatch(shape -> shape instanceof Shape.Words
                                && shape.meets(box.grown(part.getKey().equals(owner) ? own : apart))));
    }

    /** Whether a straight line from near one point to the other meets a line of another part than the owner. */
    boolean comesBetween(Point from, Point to, String owner) {
        for (Map.Entry<String, List<Shape>> part : byPart.entrySet()) {
            if (!part.getKey().equals(owner)) {
                for (Shape shape : part.getValue()) {
                    if (!(shape instanceof Shape.Words) && meets(shape, from, to)) {
                        return true;
                    }
                }
            }
        }
        return false;
    }

    private static boolean meets(Shape shape, Point from, Point to) {
        if (!shape.bounds().grown(2).crossedBy(from, to)) {
            return false;
        }
        double length = from.distanceTo(to);
        for (double along = NEAR; along < length; along += 2) {
            if (shape.meets(Box.around(from.towards(to, along)).grown(1.5))) {
                return true;
            }
        }
        return false;
    }

    Box bounds() {
        return bounds;
    }

    Box bounds(String part) {
        List<Shape> shapes = byPart.get(part);
        Box box = shapes.get(0).bounds();
        for (Shape shape : shapes) {
            box = box.with(shape.bounds());
        }
        return box;
    }

    /** Of the SVG element, with its margins. */
    double width() {
        return Math.ceil(frame().width());
    }

    /** The same with something more in it. */
    double widthWith(Box more) {
        return Math.ceil(frame(bounds().with(more)).width());
    }

    private Box frame() {
        return frame(bounds());
    }

    private static Box frame(Box bounds) {
        Box tight = bounds.grown(MARGIN);
        return new Box(Math.floor(tight.left()), Math.floor(tight.top()), tight.right(), tight.bottom());
    }

    /** @param idPrefix makes the ids unique in a page */
    Picture picture(String title, String description, String idPrefix) {
        Box box = frame();
        List<Shape> inOrder = byPart.values().stream().flatMap(List::stream).toList();
        return new Picture(
                Xml.escape(idPrefix),
                width(),
                Math.ceil(box.height()),
                new Point(box.left(), box.top()),
                inOrder,
                look -> new SvgElement(byPart, box, idPrefix, look).write(title, description));
    }
}
