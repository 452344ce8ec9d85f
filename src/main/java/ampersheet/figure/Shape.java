package ampersheet.figure;

import java.util.ArrayList;
import java.util.List;

/** Something drawn; it knows where its ink is, so that no label is put on it. */
sealed interface Shape {
    Box bounds();

    /** Whether any ink, or the inside of a closed body, lies in the box. */
    boolean meets(Box box);

    Shape moved(double dx, double dy);

    /** Hands it to the pen, moved by {@code (dx, dy)}. */
    void draw(Pen pen, double dx, double dy);

    /** An open line through points. */
    record Line(List<Point> points, Stroke stroke) implements Shape {
        public Line {
            points = List.copyOf(points);
        }

        @Override
        public Box bounds() {
            return Box.around(points.toArray(new Point[0])).grown(stroke.width() / 2);
        }

        @Override
        public boolean meets(Box box) {
            return crosses(points, false, box.grown(stroke.width() / 2));
        }

        @Override
        public Shape moved(double dx, double dy) {
            return new Line(points.stream().map(point -> point.plus(dx, dy)).toList(), stroke);
        }

        @Override
        public void draw(Pen pen, double dx, double dy) {
            pen.line(shifted(points, dx, dy), stroke.rounded());
        }
    }

    /** A closed body with straight sides, outlined or filled. */
    record Polygon(List<Point> points, Stroke stroke, boolean filled) implements Shape {
        public Polygon {
            points = List.copyOf(points);
        }

        @Override
        public Box bounds() {
            return Box.around(points.toArray(new Point[0])).grown(filled ? 0 : stroke.width() / 2);
        }

        @Override
        public boolean meets(Box box) {
            return crosses(points, true, box.grown(stroke.width() / 2)) || bounds().contains(box.centre());
        }

        @Override
        public Shape moved(double dx, double dy) {
            return new Polygon(points.stream().map(point -> point.plus(dx, dy)).toList(), stroke, filled);
        }

        @Override
        public void draw(Pen pen, double dx, double dy) {
            pen.polygon(shifted(points, dx, dy), stroke.rounded(), filled);
        }
    }

    record Circle(Point centre, double radius, Stroke stroke, boolean filled) implements Shape {
        @Override
        public Box bounds() {
            return Box.centred(centre, 2 * reach(), 2 * reach());
        }

        /** A dot has no outline. */
        private double reach() {
            return radius + (filled ? 0 : stroke.width() / 2);
        }

        @Override
        public boolean meets(Box box) {
            double reach = reach();
            double dx = Math.max(0, Math.max(box.left() - centre.x(), centre.x() - box.right()));
            double dy = Math.max(0, Math.max(box.top() - centre.y(), centre.y() - box.bottom()));
            return dx * dx + dy * dy < reach * reach;
        }

        @Override
        public Shape moved(double dx, double dy) {
            return new Circle(centre.plus(dx, dy), radius, stroke, filled);
        }

        @Override
        public void draw(Pen pen, double dx, double dy) {
            pen.circle(shifted(centre, dx, dy), Decimals.rounded(radius), stroke.rounded(), filled);
        }
    }

    /** A closed outline with rounded corners; what stands inside it is no collision. */
    record Outline(List<Point> corners, double radius, Stroke stroke) implements Shape {
        public Outline {
            corners = List.copyOf(corners);
        }

        @Override
        public Box bounds() {
            return Box.around(corners.toArray(new Point[0])).grown(stroke.width() / 2);
        }

        @Override
        public boolean meets(Box box) {
            return crosses(corners, true, box.grown(stroke.width() / 2));
        }

        @Override
        public Shape moved(double dx, double dy) {
            return new Outline(
                    corners.stream().map(corner -> corner.plus(dx, dy)).toList(), radius, stroke);
        }

        @Override
        public void draw(Pen pen, double dx, double dy) {
            List<Pen.Corner> rounded = new ArrayList<>();
            int n = corners.size();
            for (int i = 0; i < n; i++) {
                Point corner = corners.get(i);
                Point before = corners.get((i + n - 1) % n);
                Point after = corners.get((i + 1) % n);
                Point in = corner.towards(before, Math.min(radius, corner.distanceTo(before) / 2));
                Point out = corner.towards(after, Math.min(radius, corner.distanceTo(after) / 2));
                rounded.add(new Pen.Corner(shifted(in, dx, dy), shifted(corner, dx, dy), shifted(out, dx, dy)));
            }
            pen.outline(rounded, stroke.rounded());
        }
    }

    /**
     * One line of text.
     *
     * @param bounds measured once: a drawing asks every label for them again and again
     */
    record Words(Lettering lettering, Point baseline, Lettering.Anchor anchor, boolean insideBody, Box bounds)
            implements Shape {
        Words(Lettering lettering, Point baseline, Lettering.Anchor anchor, boolean insideBody) {
            this(lettering, baseline, anchor, insideBody, measured(lettering, baseline, anchor));
        }

        private static Box measured(Lettering lettering, Point baseline, Lettering.Anchor anchor) {
            double width = lettering.width();
            double left = switch (anchor) {
                case START -> baseline.x();
                case MIDDLE -> baseline.x() - width / 2;
                case END -> baseline.x() - width;
            };
            return new Box(left, baseline.y() - lettering.ascent(), left + width, baseline.y() + lettering.descent());
        }

        @Override
        public boolean meets(Box box) {
            return bounds.overlaps(box);
        }

        @Override
        public Shape moved(double dx, double dy) {
            return new Words(lettering, baseline.plus(dx, dy), anchor, insideBody);
        }

        @Override
        public void draw(Pen pen, double dx, double dy) {
            pen.words(lettering, shifted(baseline, dx, dy), anchor);
        }
    }

    private static boolean crosses(List<Point> points, boolean closed, Box box) {
        for (int i = 1; i < points.size(); i++) {
            if (box.crossedBy(points.get(i - 1), points.get(i))) {
                return true;
            }
        }
        return closed && box.crossedBy(points.get(points.size() - 1), points.get(0));
    }

    private static List<Point> shifted(List<Point> points, double dx, double dy) {
        return points.stream().map(point -> shifted(point, dx, dy)).toList();
    }

    private static Point shifted(Point point, double dx, double dy) {
        return new Point(Decimals.rounded(point.x() + dx), Decimals.rounded(point.y() + dy));
    }
}
