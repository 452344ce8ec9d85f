package ampersheet.figure;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** A rectangle as a way round: places on it are distances from its top left corner, clockwise. */
record Rim(Box box) {
    double length() {
        return 2 * (box.width() + box.height());
    }

    /** Where on the rim the point lies that is nearest to {@code point} on the side given. */
    double place(Compass side, Point point) {
        double width = box.width();
        double height = box.height();
        double x = Math.max(0, Math.min(width, point.x() - box.left()));
        double y = Math.max(0, Math.min(height, point.y() - box.top()));
        return switch (side) {
            case NORTH -> x;
            case EAST -> width + y;
            case SOUTH -> width + height + (width - x);
            case WEST -> 2 * width + height + (height - y);
        };
    }

    Point at(double place) {
        double rest = wrapped(place);
        double width = box.width();
        double height = box.height();
        if (rest <= width) {
            return new Point(box.left() + rest, box.top());
        }
        if (rest <= width + height) {
            return new Point(box.right(), box.top() + rest - width);
        }
        if (rest <= 2 * width + height) {
            return new Point(box.right() - (rest - width - height), box.bottom());
        }
        return new Point(box.left(), box.bottom() - (rest - 2 * width - height));
    }

    /** From one place to another, round the corners between, clockwise or the other way. */
    Way way(double from, double to, boolean clockwise) {
        double start = clockwise ? wrapped(from) : wrapped(to);
        double length = wrapped((clockwise ? to - from : from - to));
        return new Way(start, length, clockwise);
    }

    private double wrapped(double place) {
        double rest = place - Math.floor(place / length()) * length();
        return rest >= length() ? 0 : rest;
    }

    /** A stretch of the rim: {@code length} clockwise from {@code start}, gone in one direction or the other. */
    final class Way {
        private final double start;
        private final double length;
        private final boolean clockwise;

        private Way(double start, double length, boolean clockwise) {
            this.start = start;
            this.length = length;
            this.clockwise = clockwise;
        }

        double length() {
            return length;
        }

        boolean touches(Way other) {
            return wrapped(other.start - start) <= length || wrapped(start - other.start) <= other.length;
        }

        List<Point> points() {
            List<Point> points = new ArrayList<>();
            double[] corners = {0, box.width(), box.width() + box.height(), 2 * box.width() + box.height()};
            points.add(at(start));
            for (int round = 0; round < 2; round++) {
                for (double corner : corners) {
                    double ahead = corner + round * Rim.this.length() - start;
                    if (ahead > 0 && ahead < length) {
                        points.add(at(corner));
                    }
                }
            }
            points.add(at(start + length));
            if (!clockwise) {
                Collections.reverse(points);
            }
            return points;
        }
    }
}
