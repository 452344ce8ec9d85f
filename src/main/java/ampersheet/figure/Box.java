package ampersheet.figure;

/** An upright rectangle in pixels, y downwards. */
record Box(double left, double top, double right, double bottom) {
    static Box around(Point... points) {
        Box box = new Box(points[0].x(), points[0].y(), points[0].x(), points[0].y());
        for (Point point : points) {
            box = box.with(point);
        }
        return box;
    }

    static Box centred(Point centre, double width, double height) {
        return new Box(
                centre.x() - width / 2, centre.y() - height / 2, centre.x() + width / 2, centre.y() + height / 2);
    }

    double width() {
        return right - left;
    }

    double height() {
        return bottom - top;
    }

    Point centre() {
        return new Point((left + right) / 2, (top + bottom) / 2);
    }

    Box with(Point point) {
        return new Box(
                Math.min(left, point.x()),
                Math.min(top, point.y()),
                Math.max(right, point.x()),
                Math.max(bottom, point.y()));
    }

    Box with(Box other) {
        return new Box(
                Math.min(left, other.left),
                Math.min(top, other.top),
                Math.max(right, other.right),
                Math.max(bottom, other.bottom));
    }

    Box grown(double by) {
        return new Box(left - by, top - by, right + by, bottom + by);
    }

    boolean overlaps(Box other) {
        return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
    }

    boolean contains(Point point) {
        return point.x() > left && point.x() < right && point.y() > top && point.y() < bottom;
    }

    /** False where both points lie beyond the same side: a line between them is far from the box. */
    boolean mayBeMetBy(Point a, Point b) {
        return !(a.x() < left && b.x() < left
                || a.x() > right && b.x() > right
                || a.y() < top && b.y() < top
                || a.y() > bottom && b.y() > bottom);
    }

    /** Whether the straight line from {@code a} to {@code b} passes through the inside: cut at each side in turn. */
    boolean crossedBy(Point a, Point b) {
        if (!mayBeMetBy(a, b)) {
            return false;
        }
        double dx = b.x() - a.x();
        double dy = b.y() - a.y();
        double[] towards = {-dx, dx, -dy, dy};
        double[] room = {a.x() - left, right - a.x(), a.y() - top, bottom - a.y()};
        double enter = 0;
        double leave = 1;
        for (int side = 0; side < 4; side++) {
            if (towards[side] == 0) {
                if (room[side] <= 0) {
                    return false;
                }
            } else {
                double cut = room[side] / towards[side];
                if (towards[side] < 0) {
                    enter = Math.max(enter, cut);
                } else {
                    leave = Math.min(leave, cut);
                }
            }
        }
        return enter < leave;
    }
}
